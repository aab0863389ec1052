// npm run build [-- --env base=https://host/path]
import { defaultBase, distFolder } from './paths.mjs';
import { buildSite, checkedBase } from './site.mjs';

/** The base named on the command line, as `--env base=…`, `--env=base=…` or `--base=…`. */
function baseFrom(words) {
  const named = words.map((word) => /^(?:--env=|--)?base=(.*)$/.exec(word)?.[1]).find((value) => value !== undefined);
  return named === undefined ? defaultBase : checkedBase(named);
}

try {
  const base = baseFrom(process.argv.slice(2));
  await buildSite({ base, force: true });
  console.log(`The site is in ${distFolder}, for ${base}; Excel takes it by its manifest.xml.`);
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
