import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import english from '@univerjs/sheets-formula/locale/en-US';
import { CALCULATING } from '../../../src/workbook/embedded/tools/words';

test('every state of calculating that the spreadsheet shows has words: its own lack them, and it would show their keys', async () => {
  const source = await readFile(createRequire(import.meta.url).resolve('@univerjs/sheets-formula'), 'utf8');
  const asked = [...source.matchAll(/["'`]sheets-formula\.progress\.([\w-]+)["'`]/g)].map(([, key]) => key);
  expect(asked.length).toBeGreaterThan(0);
  expect(Object.keys(CALCULATING).sort()).toEqual([...new Set(asked)].sort());
  // Once it brings its own they need not be said here any more.
  expect(JSON.stringify(english)).not.toContain('"progress":');
});
