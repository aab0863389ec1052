// npm run build [-- --env base=https://host/path]
import { distFolder } from './paths.mjs';
import { baseFrom, buildSite } from './site.mjs';

try {
  const base = baseFrom(process.argv.slice(2));
  await buildSite({ base, force: true });
  console.log(`The site is in ${distFolder}, for ${base}; Excel takes it by its manifest.xml.`);
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
