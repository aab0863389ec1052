import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { cacheFolder, root } from './paths.mjs';
import { hashOf } from './sources.mjs';

/** Only our own sources go into a bundle; packages are loaded from node_modules as they are. */
const isPackage = (id) => !id.startsWith('.') && !id.startsWith('/') && !/^[A-Za-z]:/.test(id);

/**
 * Bundles a TypeScript entry for Node and answers its address, doing nothing where no source has changed since. It lands one folder
 * below the project's root, as the scripts it may bring from .config do, so that what they find by their own place they still find.
 */
export async function bundle(entry, name, { withPackages = false } = {}) {
  const file = join(cacheFolder, `${name}.bundle.mjs`);
  const stampFile = join(cacheFolder, `${name}.bundle.hash`);
  const wanted = hashOf(['src', dirname(entry), '.config', 'package-lock.json']);
  const fresh = existsSync(file) && existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted;
  if (!fresh) {
    const { rolldown } = await import('rolldown');
    const made = await rolldown({
      input: join(root, entry),
      platform: 'node',
      external: withPackages ? [] : isPackage,
      cwd: root,
    });
    await made.write({ file, format: 'esm', codeSplitting: false });
    await made.close();
    mkdirSync(cacheFolder, { recursive: true });
    writeFileSync(stampFile, wanted);
  }
  return pathToFileURL(file).href;
}
