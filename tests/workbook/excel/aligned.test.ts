import { expect, it } from 'vitest';
import { aligned } from '../../../src/workbook/excel/aligned';
import type { BlockSeen, Written } from '../../../src/workbook/port';

it('finds rows again between which one was put in, whatever stands in cells that were left alone', () => {
  const at = { sheet: 'Clubs', row: 1, column: 4, rows: 2, columns: 3 };
  const skip = { skip: true } as const;
  const written: Written = {
    at,
    before: [
      ['old a', { formula: '=A2' }, 1],
      ['old b', { formula: '=A3' }, 2],
    ],
    put: [
      ['new a', skip, 3],
      ['new b', skip, 4],
    ],
  };
  const now: BlockSeen = {
    at: { ...at, rows: 3 },
    values: [
      ['new a', 'x', 3],
      [null, null, null],
      ['new b', 'y', 4],
    ],
    formulas: [
      [null, '=A2', null],
      [null, null, null],
      [null, '=A4', null],
    ],
    ...{ sheetExists: true, protected: false, merged: [], tables: [] },
  };
  const [again, isLost] = aligned(written, now, [{ at, through: true }]);
  expect(isLost).toBe(false);
  expect(again.put).toEqual([
    ['new a', skip, 3],
    [skip, skip, skip],
    ['new b', skip, 4],
  ]);
  expect(again.before[2]).toEqual(['old b', { formula: '=A3' }, 2]);
});
