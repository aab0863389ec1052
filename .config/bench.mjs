// npm run bench: bundles tests/bench/main.ts, as the site's code is bundled, and runs it in a Node of its own.
// The embedded spreadsheet goes into the bundle: Node cannot load some of its packages as they are.
// npm run bench -- page [runs] [folders]: how the try-out page starts (tests/bench/coldStart.ts), in a browser. A folder is another
// build of the site, to take turns with this one.
import { spawn, spawnSync } from 'node:child_process';
import { basename, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { needBrowser } from './browser.mjs';
import { bundle } from './bundle.mjs';
import { serveSite } from './serve.mjs';
import { buildSite } from './site.mjs';

const words = process.argv.slice(2);

async function benchOurs() {
  const script = fileURLToPath(await bundle('tests/bench/main.ts', 'bench', { withPackages: true }));
  return spawnSync(process.execPath, ['--expose-gc', script, ...words], { stdio: 'inherit' }).status ?? 1;
}

/** Runs while this process goes on serving. */
function measure(script, env) {
  return new Promise((done) => {
    const child = spawn(process.execPath, [script], { stdio: 'inherit', env: { ...process.env, ...env } });
    child.on('exit', (code) => done(code ?? 1));
  });
}

async function benchPage([runs = '5', ...folders]) {
  const CHROME_PATH = needBrowser();
  await buildSite();
  const others = await Promise.all(
    folders.map(async (folder) => ({ name: basename(resolve(folder)), site: await serveSite(0, resolve(folder)) })),
  );
  const all = [...others, { name: 'this build', site: await serveSite() }];
  const script = fileURLToPath(await bundle('tests/bench/coldStart.ts', 'coldStart'));
  const sites = all.map(({ name, site }) => ({ name, address: site.address }));
  const code = await measure(script, { CHROME_PATH, COLD_START_SITES: JSON.stringify(sites), COLD_START_RUNS: runs });
  for (const { site } of all) await site.close();
  return code;
}

try {
  process.exitCode = words[0] === 'page' ? await benchPage(words.slice(1)) : await benchOurs();
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
