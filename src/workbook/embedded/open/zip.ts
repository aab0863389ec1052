/** The parts of a workbook file, by the directory at its end: what they are called and how large they say they are, before any is unpacked. */

/** One part of the file. */
export interface Part {
  readonly name: string;
  readonly method: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly at: number;
}

/* Marks of the format (APPNOTE.TXT of the zip format, 4.3). */
const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
/** The mark, and a comment of the greatest length there is. */
const LAST_OF_END = 22 + 65_535;
const STORED = 0;
const DEFLATED = 8;

/** The directory; null where the bytes are no zip file, or one that was cut off. */
export function partsOf(file: Uint8Array): Part[] | null {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const end = endOf(view);
  if (end === null) return null;
  const parts: Part[] = [];
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    if (at + 46 > view.byteLength || view.getUint32(at, true) !== ENTRY) return null;
    const [name, extra, comment] = [28, 30, 32].map((where) => view.getUint16(at + where, true));
    parts.push({
      name: new TextDecoder().decode(file.subarray(at + 46, at + 46 + (name ?? 0))),
      method: view.getUint16(at + 10, true),
      packedBytes: view.getUint32(at + 20, true),
      bytes: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    });
    at += 46 + (name ?? 0) + (extra ?? 0) + (comment ?? 0);
  }
  return parts;
}

function endOf(view: DataView): number | null {
  for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - LAST_OF_END); at--) {
    if (view.getUint32(at, true) === END) return at;
  }
  return null;
}

/** A part as text; throws where it is broken or grows larger than it says, which only a file made to do harm does. */
export async function textOf(file: Uint8Array, part: Part): Promise<string> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (view.getUint32(part.at, true) !== LOCAL) throw new Error(`${part.name} does not begin where the directory says`);
  const from = part.at + 30 + view.getUint16(part.at + 26, true) + view.getUint16(part.at + 28, true);
  const packed = file.slice(from, from + part.packedBytes);
  if (part.method === STORED) return new TextDecoder().decode(packed);
  if (part.method !== DEFLATED) throw new Error(`${part.name} is packed in a way that is not known`);
  const reader = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  const decoder = new TextDecoder();
  let [text, bytes] = ['', 0];
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    bytes += read.value.byteLength;
    if (bytes > part.bytes) throw new Error(`${part.name} is larger than it says`);
    text += decoder.decode(read.value, { stream: true });
  }
  return text + decoder.decode();
}
