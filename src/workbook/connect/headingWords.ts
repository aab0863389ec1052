/** A heading as words: abbreviations written out, without unit, case, marks and endings, so that headings can be compared. */
import { OTHER_TONGUES } from './otherTongues';
import { UNSEEN, unitNamed } from './units';

/** One way to read a heading. */
export interface HeadingWords {
  readonly words: readonly string[];
  /** The unit it names, `%` among them; null where it names none. */
  readonly unit: ReturnType<typeof unitNamed> | null;
  /** Whether the heading says nothing but the unit. */
  readonly unitOnly: boolean;
}

/** Short forms and words that mean one thing in a heading. *Common practice, no source.* */
const MEANT: Readonly<Record<string, string>> = {
  wt: 'weight',
  wgt: 'weight',
  wght: 'weight',
  weigth: 'weight',
  mass: 'weight',
  masse: 'weight',
  dia: 'diameter',
  diam: 'diameter',
  dm: 'diameter',
  ø: 'diameter',
  '⌀': 'diameter',
  od: 'outside diameter',
  id: 'inner diameter',
  inside: 'inner',
  internal: 'inner',
  outer: 'outside',
  qty: 'quantity',
  qnty: 'quantity',
  quant: 'quantity',
  desc: 'description',
  descr: 'description',
  len: 'length',
  lgth: 'length',
  lg: 'length',
  lngth: 'length',
  no: 'number',
  nr: 'number',
  num: 'number',
  '#': 'number',
  '№': 'number',
  sz: 'size',
  wo: 'work order',
  bal: 'balance',
  cust: 'customer',
  supp: 'supplier',
  vend: 'vendor',
  sw: 'swing weight',
  swt: 'swing weight',
  swingweight: 'swing weight',
  min: 'minimum',
  prc: 'price',
  rrp: 'retail',
  msrp: 'retail',
  thk: 'thickness',
  thick: 'thickness',
  tol: 'tolerance',
  tgt: 'target',
  lh: 'left',
  rh: 'right',
  caliper: 'calliper',
  labor: 'labour',
  molded: 'moulded',
  grips: 'grip',
  stk: 'stock',
  pt: 'point',
  pts: 'point',
  cog: 'cg',
  txt: 'texture',
  mdl: 'model',
  reord: 'reorder',
  pcs: 'piece',
  rdg: 'reading',
};

/** Words that tell no heading from another. */
const IDLE = new Set(['of', 'the', 'a', 'an', 'per', 'and', 'to', 'is', 'for', 'with', 'our', 'de', 'del']);

const BRACKETED = /[([{]\s*([^)\]}]*?)\s*[)\]}]/g;
const MARKED_UNIT = /(\d)?(''|["″”])/;

/** A heading as it stands, without marks of direction, line breaks and spaces doubled. */
export function headingText(cell: unknown): string {
  if (typeof cell !== 'string' && typeof cell !== 'number') return '';
  return String(cell).replace(UNSEEN, '').replace(/\s+/g, ' ').trim();
}

/** Every way to read a heading: with its last or first word as a unit, and without. The likelier one comes first. */
export function readingsOf(heading: string): readonly HeadingWords[] {
  const known = READ.get(heading);
  if (known) return known;
  const read = readHeading(heading);
  if (READ.size > MOST_KEPT) READ.clear();
  READ.set(heading, read);
  return read;
}

/** The same few headings are compared with every column of every table. */
const READ = new Map<string, readonly HeadingWords[]>();
const MOST_KEPT = 5000;

function readHeading(heading: string): readonly HeadingWords[] {
  const bracketed = takeBracketed(headingText(heading));
  const raw = rawWords(bracketed.rest);
  if (bracketed.unit) return [worded(raw, bracketed.unit)];
  const plain = worded(raw, null);
  const [first = '', last = ''] = [raw[0], raw.at(-1)];
  const trailing = raw.length > 0 ? unitNamed(last) : undefined;
  // in and m alone are words, grams alone are a unit
  if (trailing && (raw.length > 1 || (last !== 'in' && last !== 'm'))) {
    const before = raw.slice(0, -1);
    // weight in grams
    const shorter = before.at(-1) === 'in' && last !== 'in' ? before.slice(0, -1) : before;
    // in stock, date in: the word is no unit there as often as it is one
    return last === 'in' ? [plain, worded(shorter, trailing)] : [worded(shorter, trailing), plain];
  }
  const leading = raw.length > 0 && first !== 'in' ? unitNamed(first) : undefined;
  return leading ? [worded(raw.slice(1), leading), plain] : [plain];
}

function takeBracketed(text: string): { readonly rest: string; readonly unit: HeadingWords['unit'] } {
  let unit: HeadingWords['unit'] = null;
  const rest = text.replace(BRACKETED, (_, inside: string) => {
    const named =
      unitNamed(inside) ?? unitNamed(inside.replace(/^in\s+/i, '')) ?? unitNamed(inside.split(/[\s,;]+/)[0] ?? '');
    if (!named || unit) return ` ${inside} `;
    unit = named;
    return ' ';
  });
  return { rest, unit };
}

/** Lower-case words as they stand, units among them. */
function rawWords(text: string): string[] {
  return text
    .replace(MARKED_UNIT, (_, digit: string | undefined) => `${digit ?? ''} in `)
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/m\/m\b/gi, 'mm')
    .replace(/\bo\/?h\b/gi, 'on hand')
    .replace(/\bre-order/gi, 'reorder')
    .replace(/(\d)(in|mm|cm)\b/gi, '$1 $2')
    .replace(/@/g, ' at ')
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase()
    .replace(/[’']s\b/g, '')
    .replace(/([⌀#№±%]|(?<!\p{L})ø(?=mm|cm|in|\P{L}|$))/gu, ' $1 ')
    .split(/[^\p{L}\p{N}ø⌀#№±%]+/u)
    .filter(Boolean);
}

function worded(raw: readonly string[], unit: HeadingWords['unit']): HeadingWords {
  const words = raw.flatMap((word) => meant(word).split(' '));
  const telling = words.filter((word) => !IDLE.has(word));
  return { words: telling.length > 0 ? telling : words, unit, unitOnly: raw.length === 0 && unit !== null };
}

function meant(word: string): string {
  const one = singular(word);
  return MEANT[word] ?? OTHER_TONGUES[word] ?? MEANT[one] ?? OTHER_TONGUES[one] ?? one;
}

/** Without the s of a plural. */
function singular(word: string): string {
  if (word.length > 4 && word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}
