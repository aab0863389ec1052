/** Zip files for tests, written here so that they may be as wrong as a test wants. */
import { deflateRawSync } from 'node:zlib';

/** A zip file of these parts; `says` is how large each says it is. */
export function zipOf(parts: readonly { name: string; content: Uint8Array; says?: number }[]): Uint8Array {
  const locals: Buffer[] = [];
  const entries: Buffer[] = [];
  let at = 0;
  for (const { name, content, says = content.length } of parts) {
    const packed = deflateRawSync(content);
    const head = (mark: number, size: number): Buffer => {
      const made = Buffer.alloc(size);
      made.writeUInt32LE(mark, 0);
      const from = size === 30 ? 8 : 10;
      made.writeUInt16LE(8, from);
      made.writeUInt32LE(packed.length, from + 10);
      made.writeUInt32LE(says, from + 14);
      made.writeUInt16LE(name.length, from + 18);
      return made;
    };
    const entry = head(0x02014b50, 46);
    entry.writeUInt32LE(at, 42);
    const local = Buffer.concat([head(0x04034b50, 30), Buffer.from(name), packed]);
    locals.push(local);
    entries.push(Buffer.concat([entry, Buffer.from(name)]));
    at += local.length;
  }
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(at, 16);
  return new Uint8Array(Buffer.concat([...locals, ...entries, end]));
}
