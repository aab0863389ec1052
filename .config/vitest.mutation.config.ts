import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = resolve(fileURLToPath(import.meta.url), '../..');

/**
 * Only the tests that are about src/core, since each of thousands of mutants runs them; they share what they load. Those that draw
 * lots are left out: they take most of the time, and a mutant found by luck is not found.
 */
export default defineConfig({
  root,
  test: {
    environment: 'node',
    watch: false,
    isolate: false,
    include: ['tests/core/**/*.test.ts', 'tests/reference/checks.test.ts'],
    exclude: ['tests/core/**/properties.test.ts', 'tests/core/plan/garbage.test.ts'],
  },
});
