import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holdsCell } from '../../../src/workbook/shared/address';
import { cellSet, cellsPut } from '../../../src/workbook/shared/cellSet';

const sheet = fc.constantFrom('Plan', 'plan', 'Clubs');
const place = fc.record({ sheet, row: fc.integer({ min: 0, max: 5 }), column: fc.integer({ min: 0, max: 5 }) });
const block = fc.record({
  sheet,
  row: fc.integer({ min: 0, max: 4 }),
  column: fc.integer({ min: 0, max: 4 }),
  rows: fc.integer({ min: 1, max: 3 }),
  columns: fc.integer({ min: 1, max: 3 }),
});

describe('a set of cells', () => {
  it('answers as one does who goes through all of them', () => {
    fc.assert(
      fc.property(fc.array(place), place, block, (places, one, at) => {
        const set = cellSet(places);
        const inOne = { ...one, rows: 1, columns: 1 };
        expect(set.has(one.sheet, one.row, one.column)).toBe(
          places.some((each) => holdsCell(inOne, each.sheet, each.row, each.column)),
        );
        expect(set.anyIn(at)).toBe(places.some((each) => holdsCell(at, each.sheet, each.row, each.column)));
        expect(set.anyOn(at.sheet)).toBe(places.some((each) => each.sheet.toLowerCase() === at.sheet.toLowerCase()));
      }),
    );
  });

  it('tells the last column of a sheet from the first of the next row', () => {
    const set = cellSet([{ sheet: 'Plan', row: 0, column: 16_383 }]);
    expect(set.has('Plan', 0, 16_383)).toBe(true);
    expect(set.has('Plan', 1, 0)).toBe(false);
  });
});

describe('the cells of a receipt', () => {
  it('are those into which something was put', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(block, fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }))),
        place,
        (all, one) => {
          const written = all.map(([at, puts]) => {
            const lines = Array.from({ length: at.rows }, (_, down) =>
              Array.from({ length: at.columns }, (_cell, across) =>
                puts[3 * down + across] ? 1 : { skip: true as const },
              ),
            );
            return { at, before: lines.map((line) => line.map(() => null)), put: lines };
          });
          const rest = { label: '', madeSheets: [], madeTables: [], madeNames: [], movedNames: [], dressed: [] };
          const expected = written.some(({ at, put }) => {
            return (
              holdsCell(at, one.sheet, one.row, one.column) && put[one.row - at.row]?.[one.column - at.column] === 1
            );
          });
          expect(cellsPut({ ...rest, written })(one.sheet)(one.row, one.column)).toBe(expected);
        },
      ),
    );
  });
});
