// npm run dev [-- --port=3000]: both pages, rebuilt and reloaded as the sources change.
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cacheFolder } from './paths.mjs';
import { writePlainFiles } from './site.mjs';

export const devFolder = join(cacheFolder, 'dev');

/**
 * Serves both pages from memory at `port` and answers when they can be loaded. `https` holds a certificate where Excel is to load them.
 * The functions' metadata and help are as they were at the start: they are cached by Excel anyway.
 */
export async function startDevServer({ port, https }) {
  const [{ default: webpack }, { default: WebpackDevServer }, { default: configurations }] = await Promise.all([
    import('webpack'),
    import('webpack-dev-server'),
    import('../webpack.config.js'),
  ]);
  const base = `${https ? 'https' : 'http'}://localhost:${port}`;
  await writePlainFiles(devFolder, base);
  const compiler = webpack(configurations({}, { mode: 'development' }));
  const built = new Promise((done) => compiler.hooks.done.tap('dev', done));
  const server = new WebpackDevServer(
    {
      host: 'localhost',
      port,
      server: https ? { type: 'https', options: https } : 'http',
      static: { directory: devFolder, watch: false },
      // The pages' policy allows neither the overlay's inline styles nor modules swapped in by evaluation: reload instead.
      hot: false,
      client: { overlay: false },
      headers: { 'Access-Control-Allow-Origin': '*' },
    },
    compiler,
  );
  await server.start();
  await built;
  return { base, stop: () => server.stop() };
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const port = Number(process.argv.map((word) => /^--port=(\d+)$/.exec(word)?.[1]).find(Boolean) ?? 3000);
  try {
    const { base } = await startDevServer({ port });
    console.log(`The tryout page is at ${base}/, the pane's page at ${base}/pane.html (Ctrl+C ends it).`);
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
