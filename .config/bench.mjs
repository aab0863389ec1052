// npm run bench [-- words]: bundles tests/bench/main.ts, as the site's code is bundled, and runs it in a Node of its own.
// The embedded spreadsheet goes into the bundle: Node cannot load some of its packages as they are.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { bundle } from './bundle.mjs';

const script = fileURLToPath(await bundle('tests/bench/main.ts', 'bench', { withPackages: true }));
const { status } = spawnSync(process.execPath, ['--expose-gc', script, ...process.argv.slice(2)], { stdio: 'inherit' });
process.exitCode = status ?? 1;
