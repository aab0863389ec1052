import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = resolve(fileURLToPath(import.meta.url), '../..');

/** Only the tests that are about src/core: each of thousands of mutants runs them. */
export default defineConfig({
  root,
  test: { environment: 'node', watch: false, include: ['tests/{core,reference}/**/*.test.ts'] },
});
