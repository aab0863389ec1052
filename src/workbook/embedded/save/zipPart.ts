/** One part of a finished workbook file put in the place of another; all others go over as they are packed. */
import { partsOf } from '../open/zip';

/* Lengths before a part and before its place in the directory, and of the end (APPNOTE.TXT of the zip format, 4.3). */
const LOCAL_BYTES = 30;
const ENTRY_BYTES = 46;
const END_BYTES = 22;
const DEFLATED = 8;

/** The file with other content for a part. Of files as they are made here: no comments, lengths said ahead of each part. */
export async function withPart(file: Uint8Array, name: string, content: Uint8Array): Promise<Uint8Array> {
  const packed = await deflated(content);
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const end = file.length - END_BYTES;
  const made: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let [at, entryAt] = [0, view.getUint32(end + 16, true)];
  for (const part of partsOf(file) ?? []) {
    const before = LOCAL_BYTES + view.getUint16(part.at + 26, true) + view.getUint16(part.at + 28, true);
    const entrySize = ENTRY_BYTES + [28, 30, 32].reduce((sum, where) => sum + view.getUint16(entryAt + where, true), 0);
    const isIt = part.name === name;
    const local = file.slice(part.at, part.at + before + (isIt ? 0 : part.packedBytes));
    const entry = file.slice(entryAt, entryAt + entrySize);
    if (isIt) {
      say(local, 8, content, packed);
      say(entry, 10, content, packed);
    }
    new DataView(entry.buffer).setUint32(42, at, true);
    made.push(local, ...(isIt ? [packed] : []));
    directory.push(entry);
    at += local.length + (isIt ? packed.length : 0);
    entryAt += entrySize;
  }
  const last = file.slice(end);
  new DataView(last.buffer).setUint32(16, at, true);
  return joined([...made, ...directory, last]);
}

/** Says how a part is packed, its sum and its lengths; `from` is where the way of packing stands. */
function say(head: Uint8Array, from: number, content: Uint8Array, packed: Uint8Array): void {
  const view = new DataView(head.buffer);
  view.setUint16(from, DEFLATED, true);
  view.setUint32(from + 6, checkSum(content), true);
  view.setUint32(from + 10, packed.length, true);
  view.setUint32(from + 14, content.length, true);
}

async function deflated(content: Uint8Array): Promise<Uint8Array> {
  const stream = new Blob([content.slice()]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** CRC-32 of the zip format (APPNOTE.TXT, 4.4.7). */
function checkSum(bytes: Uint8Array): number {
  let sum = ~0;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return ~sum >>> 0;
}
