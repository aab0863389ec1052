import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = resolve(fileURLToPath(import.meta.url), '../..');
const builtSite = resolve(root, '.config/builtSite.mjs');
const elsewhere = ['reference', 'contract', 'tooling', 'manifest', 'browser', 'bench', 'safety'];

/** One project a kind of test, so that `--project unit` is quick and the browser is started only for those that need it. */
const project = (name: string, include: string[], more: object = {}) => ({
  extends: true as const,
  test: { name, include, ...more },
});

export default defineConfig({
  root,
  cacheDir: resolve(root, '.cache/vite'),
  test: {
    environment: 'node',
    watch: false,
    // Two cores are the least we count on; more workers than that only wait for each other.
    maxWorkers: 2,
    // Generous, since a shared machine may be slow; a test that hangs is found all the same.
    testTimeout: 30_000,
    hookTimeout: 30_000,
    // As long as everything else that is waited for; the usual second is over before a busy machine has drawn a page.
    expect: { poll: { timeout: 30_000 } },
    projects: [
      project('unit', ['tests/**/*.test.{ts,tsx}'], { exclude: elsewhere.map((folder) => `tests/${folder}/**`) }),
      project('reference', ['tests/reference/**/*.test.ts']),
      project('contract', ['tests/contract/**/*.test.ts'], { testTimeout: 60_000, hookTimeout: 60_000 }),
      // Everything that is done on a workbook, with everything that can go wrong in it.
      project('safety', ['tests/safety/**/*.test.ts'], { testTimeout: 300_000, hookTimeout: 300_000 }),
      project('tooling', ['tests/{tooling,manifest}/**/*.test.ts'], {
        exclude: ['**/*.site.test.ts'],
        testTimeout: 60_000,
      }),
      // These look at the finished site, and so build it first.
      project('site', ['tests/**/*.site.test.ts'], { globalSetup: [builtSite], testTimeout: 60_000 }),
      // Two files at a time like all others, each with a browser of its own: one alone leaves half of a small machine idle.
      project('browser', ['tests/browser/**/*.test.ts'], {
        globalSetup: [builtSite],
        testTimeout: 120_000,
        hookTimeout: 120_000,
      }),
    ],
  },
});
