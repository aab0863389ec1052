import { expect, it } from 'vitest';
import { foundAgain } from '../../../src/workbook/excel/foundAgain';
import type { BlockSeen, Written } from '../../../src/workbook/port';

const at = { sheet: 'Sheet1', row: 4, column: 2, rows: 4, columns: 1 };

function stands(texts: readonly (string | null)[]): BlockSeen {
  const values = texts.map((text) => [text]);
  return {
    at,
    values,
    formulas: values.map(() => [null]),
    sheetExists: true,
    protected: false,
    merged: [],
    tables: [],
  };
}

/** The first two rows went into a request that went through, the others into none. */
const written: Written = {
  at,
  before: [['old a'], ['old b'], ['new a'], [null]],
  put: [['new a'], ['new b'], ['later'], ['later still']],
};
const parts = [{ at: { ...at, rows: 2 }, through: true }];

it('finds rows that were sorted by what was put into them', () => {
  const { found, lost } = foundAgain({
    written: { ...written, before: [['old a'], ['old b'], ['old c'], [null]] },
    block: stands(['new b', 'old c', 'new a', null]),
    parts,
    rows: undefined,
    list: undefined,
  });
  expect(lost).toEqual([]);
  expect(found[1]?.written.before).toEqual([['old b'], [null], ['old a'], [null]]);
});

it('takes no row for one of ours where another holds the same of a person’s own', () => {
  const { found, lost } = foundAgain({
    written,
    // Ours and the person's stand in the second and in the last row: nobody knows which is which.
    block: stands(['new b', 'new a', null, 'new a']),
    parts,
    rows: undefined,
    list: undefined,
  });
  expect(lost).toEqual(["'Sheet1'!C5:C8"]);
  expect(found).toHaveLength(1);
});
