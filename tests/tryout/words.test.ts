import { describe, expect, test } from 'vitest';
import { sayFound } from '../../src/tryout/open/words';
import { saySaved } from '../../src/tryout/save/words';

type Found = Parameters<typeof sayFound>[0];

const sheet = (rowCount: number, tables: readonly string[] = []) => ({ hidden: false, rowCount, tables });

const found = (...sheets: ReturnType<typeof sheet>[]): string | undefined => {
  return sayFound({ sheets, comments: 0, runs: 0, from1904: false, unkept: [] } as unknown as Found)[0];
};

describe('what the page says of files', () => {
  test('a workbook that holds nothing is told as that', () => {
    expect(found(sheet(0))).toBe('1 sheet, nothing in it.');
    expect(found(sheet(0), sheet(0))).toBe('2 sheets, nothing in them.');
    expect(found(sheet(0), sheet(12, ['Lager']))).toBe('2 sheets, 1 table, at most 12 rows on a sheet.');
  });

  test('a copy is of the time at which it was made: what is done afterwards is not in it', () => {
    expect(saySaved('a-setwright.xlsx', new Date(2026, 10, 27, 9, 5))).toBe(
      'Saved as it was at 09:05: a-setwright.xlsx',
    );
  });
});
