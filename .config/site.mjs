// Builds the static site in dist/: the tryout page, the page Excel shows, the functions' metadata and help, the manifest, the icons.
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { cacheFolder, defaultBase, distFolder, functionsSource, root } from './paths.mjs';
import { bundledFolders, faultsIn, noticesText, readPackage } from './notices.mjs';
import { hashOf } from './sources.mjs';

const stampPath = join(cacheFolder, 'site.json');
const sources = [
  'src',
  'manifest',
  '.config',
  'webpack.config.js',
  'tsconfig.json',
  'package.json',
  'package-lock.json',
];

/** The site's address as given by a person, without a slash at its end. Excel takes nothing but https. */
export function checkedBase(text) {
  let url;
  try {
    url = new URL(text);
  } catch {
    throw new Error(`base is "${text}", which is no address: give one such as https://example.org/setwright.`);
  }
  if (url.protocol !== 'https:') throw new Error(`base is "${text}": Excel only loads add-ins from an https address.`);
  if (url.search || url.hash) throw new Error(`base is "${text}": leave out everything from the ? or # on.`);
  return url.href.replace(/\/+$/, '');
}

/** The base named on the command line, as `--env base=…`, `--env=base=…` or `--base=…`. */
export function baseFrom(words) {
  const named = words.map((word) => /^(?:--env=|--)?base=(.*)$/.exec(word)?.[1]).find((value) => value !== undefined);
  return named === undefined ? defaultBase : checkedBase(named);
}

/** Everything of the site that webpack does not make, into `folder`, with addresses under `base`. */
export async function writePlainFiles(folder, base) {
  const [{ readSource, metadataText }, { manifestXml }] = await Promise.all([
    import('./metadata.mjs'),
    import('./manifest.mjs'),
  ]);
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const template = readFileSync(join(root, 'manifest/manifest.xml'), 'utf8');
  const { metadata } = readSource();
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'functions.json'), metadataText(metadata, base));
  writeFileSync(join(folder, 'manifest.xml'), manifestXml(template, { base, version }));
  await writeHelp(folder, metadata, version);
  cpSync(join(root, 'manifest/icons'), join(folder, 'icons'), { recursive: true });
}

/** The help site; its style sheet is named after what is in it, so that no browser shows a page in the styles of another version. */
async function writeHelp(folder, metadata, version) {
  const { helpSite, readFacts } = await import('./help/site.mjs');
  const styleText = readFileSync(join(root, '.config/help/help.css'));
  const styles = `assets/help/help.${createHash('sha256').update(styleText).digest('hex').slice(0, 10)}.css`;
  const sourceText = readFileSync(functionsSource, 'utf8');
  const pages = helpSite({ metadata, sourceText, facts: await readFacts(), version, styles });
  for (const [path, text] of [...pages, [styles, styleText]]) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

async function runWebpack(onProgress) {
  const [{ default: webpack }, { default: configurations }] = await Promise.all([
    import('webpack'),
    import('../webpack.config.js'),
  ]);
  const parts = configurations({}, { mode: 'production' });
  const done = parts.map(() => 0);
  parts.forEach((part, index) => {
    const report = (fraction) => {
      done[index] = Math.max(done[index], fraction);
      onProgress(done.reduce((sum, each) => sum + each, 0) / parts.length);
    };
    (part.plugins ??= []).push(new webpack.ProgressPlugin(report));
  });
  const compiler = webpack(parts);
  const stats = await new Promise((resolve, reject) =>
    compiler.run((error, result) => (error ? reject(error) : resolve(result))),
  );
  const packages = bundledFolders(stats.stats).map(readPackage);
  await new Promise((resolve) => compiler.close(resolve));
  if (stats.hasErrors() || stats.hasWarnings()) console.error(stats.toString('errors-warnings'));
  if (stats.hasErrors()) throw new Error('The site could not be built: see above.');
  const faults = faultsIn(packages);
  if (faults.length > 0) throw new Error(`The site would hold what must not ship:\n${faults.join('\n')}`);
  return packages;
}

/** One line that says how far the build is: redrawn on a terminal, said once elsewhere. */
function progressLine() {
  const { stderr } = process;
  let shown = '';
  if (!stderr.isTTY) console.error('Building the site ...');
  return {
    show(fraction) {
      const line = `Building the site ... ${Math.floor(fraction * 100)} %`;
      if (!stderr.isTTY || line === shown) return;
      shown = line;
      stderr.write(`\r${line}`);
    },
    end: () => shown && stderr.write(`\r${' '.repeat(shown.length)}\r`),
  };
}

/** Builds dist/ unless it already holds these sources with this base. Answers whether it had to. */
export async function buildSite({ base = defaultBase, force = false } = {}) {
  const wanted = JSON.stringify({ base, sources: hashOf(sources) });
  const present = existsSync(join(distFolder, 'index.html')) && existsSync(stampPath);
  if (!force && present && readFileSync(stampPath, 'utf8') === wanted) return false;
  rmSync(stampPath, { force: true });
  rmSync(distFolder, { recursive: true, force: true });
  const progress = progressLine();
  let packages;
  try {
    packages = await runWebpack(progress.show);
  } finally {
    progress.end();
  }
  writeFileSync(join(distFolder, 'notices.txt'), noticesText(packages));
  await writePlainFiles(distFolder, base);
  mkdirSync(cacheFolder, { recursive: true });
  writeFileSync(stampPath, wanted);
  return true;
}
