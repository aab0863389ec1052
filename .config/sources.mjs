import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { root } from './paths.mjs';

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name));
}

/** One hash of every file under the paths given (relative to the project), names and contents, so that a needless build is skipped. */
export function hashOf(paths) {
  const hash = createHash('sha256');
  for (const file of paths.flatMap((path) => filesUnder(join(root, path))).sort()) {
    hash.update(relative(root, file).split(sep).join('/')).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}
