/** The parts of a zip file as texts, by its central directory: written here so that nothing of the writing library is used. */
import { inflateRawSync } from 'node:zlib';

export function unzip(bytes: Uint8Array): Map<string, string> {
  const data = Buffer.from(bytes);
  const end = data.lastIndexOf(Buffer.from('504b0506', 'hex'));
  if (end < 0) throw new Error('no zip file');
  const parts = new Map<string, string>();
  let at = data.readUInt32LE(end + 16);
  for (let left = data.readUInt16LE(end + 10); left > 0; left--) {
    if (data.readUInt32LE(at) !== 0x02014b50) throw new Error('the directory is broken');
    const [method, packed] = [data.readUInt16LE(at + 10), data.readUInt32LE(at + 20)];
    const [name, extra, comment] = [28, 30, 32].map((where) => data.readUInt16LE(at + where)) as [
      number,
      number,
      number,
    ];
    const local = data.readUInt32LE(at + 42);
    const start = local + 30 + data.readUInt16LE(local + 26) + data.readUInt16LE(local + 28);
    const content = data.subarray(start, start + packed);
    parts.set(
      data.toString('utf8', at + 46, at + 46 + name),
      (method === 8 ? inflateRawSync(content) : content).toString('utf8'),
    );
    at += 46 + name + extra + comment;
  }
  return parts;
}
