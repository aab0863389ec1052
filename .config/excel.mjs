// npm run excel, npm run excel:stop: puts the add-in, as it is being developed, into the Excel of this machine, and takes it out.
import { join } from 'node:path';
import { devFolder, startDevServer } from './dev.mjs';

const port = 3000;
const manifestPath = join(devFolder, 'manifest.xml');
const elsewhere = [
  'There is no desktop Excel on this kind of machine, so there is nothing to start. Instead:',
  '  1. Put the site where Excel can reach it over https: npm run build -- --env base=https://your.host/path, then upload dist/ there.',
  '  2. In Excel on the web choose Add-ins, More Add-ins, My Add-ins, Upload My Add-in, and give it dist/manifest.xml.',
  'Without Excel, npm start shows the same pane beside an embedded spreadsheet.',
].join('\n');

async function start() {
  const { getHttpsServerOptions } = await import('office-addin-dev-certs');
  const { AppType, startDebugging } = await import('office-addin-debugging');
  console.log(
    'Excel loads add-ins over https only: your system may now ask whether to trust a certificate made on this machine.',
  );
  const https = await getHttpsServerOptions();
  const { base } = await startDevServer({ port, https });
  await startDebugging(manifestPath, { appType: AppType.Desktop, enableDebugging: false });
  console.log(`Excel takes the add-in from ${base}. Leave this running; end it with Ctrl+C, then npm run excel:stop.`);
}

async function stop() {
  const { stopDebugging } = await import('office-addin-debugging');
  await stopDebugging(manifestPath);
}

if (process.platform !== 'win32' && process.platform !== 'darwin') {
  console.error(elsewhere);
  process.exitCode = 1;
} else {
  try {
    await (process.argv[2] === 'stop' ? stop() : start());
  } catch (error) {
    console.error(`Excel could not be ${process.argv[2] === 'stop' ? 'rid of' : 'given'} the add-in: ${error.message}`);
    process.exitCode = 1;
  }
}
