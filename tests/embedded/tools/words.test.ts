import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import english from '@univerjs/sheets-formula/locale/en-US';
import uiEnglish from '@univerjs/preset-sheets-core/locales/en-US';
import { CALCULATING, withWords } from '../../../src/workbook/embedded/tools/words';

test('every state of calculating that the spreadsheet shows has words: its own lack them, and it would show their keys', async () => {
  const source = await readFile(createRequire(import.meta.url).resolve('@univerjs/sheets-formula'), 'utf8');
  const asked = [...source.matchAll(/["'`]sheets-formula\.progress\.([\w-]+)["'`]/g)].map(([, key]) => key);
  expect(asked.length).toBeGreaterThan(0);
  expect(Object.keys(CALCULATING).sort()).toEqual([...new Set(asked)].sort());
  // Once it brings its own they need not be said here any more.
  expect(JSON.stringify(english)).not.toContain('"progress":');
});

test('before a sheet is deleted the spreadsheet says that Undo does not bring it back, and all its other words stay', () => {
  const own = uiEnglish['sheets-ui'];
  const words = withWords(own);
  const { deleteSheetContent, deleteLargeSheetContent, ...rest } = words.sheetConfig;
  const { deleteSheetContent: before, deleteLargeSheetContent: beforeLarge, ...restBefore } = own.sheetConfig;
  for (const said of [deleteSheetContent, deleteLargeSheetContent])
    expect(said).toContain('does not bring this sheet back');
  // Under these keys the spreadsheet asks: another version may have others.
  expect([typeof before, typeof beforeLarge]).toEqual(['string', 'string']);
  expect(rest).toEqual(restBefore);
  expect({ ...words, sheetConfig: null }).toEqual({ ...own, sheetConfig: null });
});
