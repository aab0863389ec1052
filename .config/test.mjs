// npm test: everything, cheapest first. All of it runs even if something fails, so that one run names all that is wrong.
// Words after -- go to the test runner: npm test -- tests/core.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { needBrowser } from './browser.mjs';
import { cacheFolder, root } from './paths.mjs';

const bin = (...words) => join(root, 'node_modules', ...words);
const eslintFlags = ['--config', '.config/eslint.config.js', '--cache', '--cache-location', '.cache/eslint/'];
const prettierFlags = [
  '--ignore-path',
  '.config/prettierignore',
  '--check',
  '--log-level',
  'warn',
  '--cache',
  '--cache-location',
  '.cache/prettier',
];
const checks = [
  ['lint', bin('eslint/bin/eslint.js'), ...eslintFlags, '--max-warnings', '0', '.'],
  ['format', bin('prettier/bin/prettier.cjs'), ...prettierFlags, '.'],
  ['types', bin('typescript/bin/tsc'), '--noEmit'],
  ['walls', bin('dependency-cruiser/bin/dependency-cruise.mjs'), '--config', '.config/walls.cjs', 'src'],
];

function run(script, words, env = {}) {
  const started = performance.now();
  const { status } = spawnSync(process.execPath, [script, ...words], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  return { passed: status === 0, seconds: ((performance.now() - started) / 1000).toFixed(1) };
}

function runCheck([name, script, ...words]) {
  const { passed, seconds } = run(script, words);
  console.log(`${name}: ${passed ? 'passed' : 'FAILED'} (${seconds} s)`);
  return passed;
}

function runTests(words) {
  const totalsPath = join(cacheFolder, 'totals.json');
  rmSync(totalsPath, { force: true });
  const reporters = ['--reporter=default', `--reporter=${join(root, '.config/totals.mjs')}`];
  const { passed } = run(
    bin('vitest/vitest.mjs'),
    ['run', '--config', '.config/vitest.config.ts', ...reporters, ...words],
    {
      SETWRIGHT_TOTALS: totalsPath,
    },
  );
  const totals = existsSync(totalsPath)
    ? JSON.parse(readFileSync(totalsPath, 'utf8'))
    : { passed: 0, failed: 0, skipped: 0 };
  // The runner may end badly with no test to blame (a set-up that failed): that counts as one.
  return { ...totals, failed: passed ? totals.failed : Math.max(1, totals.failed) };
}

try {
  process.env.CHROME_PATH = needBrowser();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
mkdirSync(cacheFolder, { recursive: true });
const passedChecks = checks.filter(runCheck).length;
const tests = runTests(process.argv.slice(2));
const failed = tests.failed + checks.length - passedChecks;
const skipped = tests.skipped > 0 ? `, ${tests.skipped} skipped` : '';
// Lint, format, types and walls count as one each, so that this line alone says whether all is well.
console.log(`\n${tests.passed + passedChecks} passed, ${failed} failed${skipped}`);
process.exitCode = failed === 0 ? 0 : 1;
