// npm run pictures: builds and serves the site, then runs tests/browser/pictures.ts, which takes the documents' pictures of it.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { needBrowser } from './browser.mjs';
import { bundle } from './bundle.mjs';
import { serveSite } from './serve.mjs';
import { buildSite } from './site.mjs';

/** Runs while this process goes on serving. */
function runScript(script, env) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [script, ...process.argv.slice(2)], {
      stdio: 'inherit',
      env: { ...process.env, ...env },
    });
    child.on('exit', (code) => resolve(code ?? 1));
  });
}

try {
  const CHROME_PATH = needBrowser();
  await buildSite();
  const site = await serveSite();
  const script = fileURLToPath(await bundle('tests/browser/pictures.ts', 'pictures'));
  process.exitCode = await runScript(script, { CHROME_PATH, SETWRIGHT_SITE: site.address });
  await site.close();
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
