/** Which files are not opened, seen before anything of them is unpacked. */
import { partsOf, type Part } from './zip';

/** Why a file is not opened. */
export type RefusalCode =
  | 'empty'
  /** larger than is read at all */
  | 'tooLarge'
  /** would be larger than is read, once unpacked */
  | 'unpacksTooLarge'
  /** more cells than the page can hold */
  | 'tooManyCells'
  /** needs a password */
  | 'locked'
  /** the format before .xlsx */
  | 'oldFormat'
  /** cells in a binary format: .xlsb */
  | 'binaryCells'
  /** text with separators, or any other text */
  | 'text'
  /** a zip file with something else in it */
  | 'otherFile'
  /** cut off or damaged */
  | 'broken';

/** Thrown for a file that is not opened; `said` is what the reading said, for who wants to know. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly said: string;
  constructor(code: RefusalCode, said = '') {
    super(said === '' ? code : `${code}: ${said}`);
    this.name = 'Refusal';
    this.code = code;
    this.said = said;
  }
}

/** A file of 40,000 rows and twenty columns has some 4 MB. */
export const MOST_FILE_MB = 25;
/** What all parts may be once unpacked; a workbook packs to a tenth or so. */
const MOST_UNPACKED_BYTES = 400_000_000;
/** Above this a page of a usual machine becomes slow or fails. */
export const MOST_CELLS = 2_000_000;

const OLE = [0xd0, 0xcf, 0x11, 0xe0];
/** Names in the old container are written in two bytes a letter. */
const ENCRYPTED = Array.from('EncryptedPackage', (letter) => [letter.charCodeAt(0), 0]).flat();

/** The parts of a workbook file that can be read. Throws a Refusal for any other. */
export function readableParts(file: Uint8Array): Part[] {
  if (file.length === 0) throw new Refusal('empty');
  if (file.length > MOST_FILE_MB * 1_000_000) throw new Refusal('tooLarge');
  if (startsWith(file, OLE)) throw new Refusal(holds(file, ENCRYPTED) ? 'locked' : 'oldFormat');
  if (file[0] !== 0x50 || file[1] !== 0x4b) throw new Refusal('text');
  const parts = partsOf(file);
  if (!parts) throw new Refusal('broken', 'its directory cannot be read');
  const names = new Set(parts.map(({ name }) => name));
  if (names.has('xl/workbook.bin')) throw new Refusal('binaryCells');
  if (!names.has('[Content_Types].xml') || !parts.some(({ name }) => /(^|\/)workbook\d*\.xml$/i.test(name)))
    throw new Refusal('otherFile');
  if (parts.reduce((sum, { bytes }) => sum + bytes, 0) > MOST_UNPACKED_BYTES) throw new Refusal('unpacksTooLarge');
  return parts;
}

function startsWith(file: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, i) => file[i] === byte);
}

function holds(file: Uint8Array, wanted: readonly number[]): boolean {
  const [first = 0] = wanted;
  for (let at = file.indexOf(first); at >= 0; at = file.indexOf(first, at + 1)) {
    if (wanted.every((byte, i) => file[at + i] === byte)) return true;
  }
  return false;
}
