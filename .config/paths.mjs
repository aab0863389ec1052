import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');
export const cacheFolder = join(root, '.cache');
export const distFolder = join(root, 'dist');
export const functionsSource = join(root, 'src/functions/functions.ts');
export const functionsJson = join(root, 'src/functions/functions.json');
export const namespace = 'REGRIP';
/** Where the add-in lives while it is being developed; `npm run build -- --env base=…` names another place. */
export const defaultBase = 'https://localhost:3000';
