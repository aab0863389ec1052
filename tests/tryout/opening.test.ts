/** What is said of a file that stands on the page. */
import { expect, test } from 'vitest';
import { sayKeptValues, sayOtherwise } from '../../src/tryout/open/words';
import type { Shown } from '../../src/workbook/embedded/opened';

const number = (text: string): Shown => ({ kind: 'number', text });

test('a cell that comes out otherwise is told with both values', () => {
  const { title, items } = sayOtherwise([{ at: 'Stock!B7', file: number('12.5'), here: number('13') }]);
  expect(title).toBe('1 cell comes out otherwise here than in the file. Compare before you rely on it:');
  expect(items).toEqual(['Stock!B7: the file kept 12.5, here it comes to 13']);
});

test.each<[Shown, string]>([
  [{ kind: 'text', text: 'D2' }, '“D2”'],
  [{ kind: 'text', text: 'D'.repeat(100) }, `“${'D'.repeat(59)}…”`],
  [{ kind: 'blank', text: '' }, 'nothing'],
  [{ kind: 'error', text: '#N/A' }, '#N/A'],
  [{ kind: 'truth', text: 'FALSE' }, 'FALSE'],
])('%o is said as %s', (file, said) => {
  expect(sayOtherwise([{ at: 'S!A1', file, here: number('1') }]).items).toEqual([
    `S!A1: the file kept ${said}, here it comes to 1`,
  ]);
});

test('of many, some are told and the rest is counted', () => {
  const many = Array.from({ length: 18 }, (_, i) => ({ at: `S!A${i + 1}`, file: number('1'), here: number('2') }));
  const { title, items } = sayOtherwise(many);
  expect(title).toContain('18 cells come out otherwise');
  expect(items).toHaveLength(7);
  expect(items.at(-1)).toBe('and 12 more');
});

test('of cells that keep their values a sheet is named where it begins', () => {
  const [said] = sayKeptValues(['Stock!B1', 'Stock!B2', "'Wall!2'!B2", "'Wall!2'!B3", 'Stock!B4']);
  expect(said).toContain("5 cells (Stock!B1, B2, 'Wall!2'!B2, B3 and Stock!B4) keep the value that the file had");
});

test('of none, nothing is listed', () => {
  expect(sayOtherwise([]).items).toEqual([]);
  expect(sayKeptValues([])).toEqual([]);
});
