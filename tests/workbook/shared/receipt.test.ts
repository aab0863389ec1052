import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Receipt } from '../../../src/workbook/port';
import { buildReceipt } from '../../../src/workbook/shared/receipt';
import { isPacked, packReceipt, unpackReceipt } from '../../../src/workbook/shared/packed';

const value = fc.oneof(
  fc.constant(null),
  fc.boolean(),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => n + 0),
  fc.string(),
);
const before = fc.oneof(value, fc.record({ formula: fc.string() }));
const put = fc.oneof(value, fc.record({ call: fc.string() }), fc.constant({ skip: true as const }));

const anyReceipt: fc.Arbitrary<Receipt> = fc
  .array(
    fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })).chain(([rows, columns]) =>
      fc.record({
        at: fc.constant({ sheet: 'Plan', row: 0, column: 0, rows, columns }),
        before: grid(before, rows, columns),
        put: grid(put, rows, columns),
        rows: fc.constant({ table: 'Clubs', by: ['Club'], called: [['7']], headings: ['Mass (g)'] }),
      }),
    ),
    { maxLength: 3 },
  )
  .map((written) => ({
    label: 'Fill',
    written,
    madeSheets: ['Plan'],
    madeTables: [],
    madeNames: ['x'],
    movedNames: [],
    dressed: [],
  }));

function grid<T>(cell: fc.Arbitrary<T>, rows: number, columns: number): fc.Arbitrary<T[][]> {
  const line = fc.array(cell, { minLength: columns, maxLength: columns });
  return fc.array(line, { minLength: rows, maxLength: rows });
}

describe('a packed receipt', () => {
  it('unpacks to what it was', () => {
    fc.assert(
      fc.property(anyReceipt, (receipt) => {
        const text = packReceipt(receipt);
        expect(isPacked(text)).toBe(true);
        // Negative zero is no number of its own in a workbook, nor in JSON.
        expect(unpackReceipt(text)).toEqual(JSON.parse(JSON.stringify(receipt)));
      }),
    );
  });

  it('of a long plan over blank cells is hardly longer than the plan', () => {
    const at = { sheet: 'Plan', row: 0, column: 0, rows: 5000, columns: 20 };
    const cells = Array.from({ length: 5000 }, (_, i) =>
      Array.from({ length: 20 }, (_cell, j) => (j % 2 ? i + j / 8 : 'within')),
    );
    const blank = cells.map((line) => line.map(() => null));
    const receipt: Receipt = {
      label: 'Fill',
      written: [{ at, before: blank, put: cells }],
      madeSheets: [],
      madeTables: [],
      madeNames: [],
      movedNames: [],
      dressed: [],
    };
    expect(packReceipt(receipt).length).toBeLessThan(JSON.stringify(cells).length);
    expect(unpackReceipt(packReceipt(receipt))).toEqual(receipt);
  });

  it('is told from other text', () => {
    expect(isPacked('{"label":"x"}')).toBe(false);
    expect(() => unpackReceipt('{"label":"x"}')).toThrow(SyntaxError);
  });
});

describe('what a receipt says was dressed', () => {
  const at = { sheet: 'Plan', row: 0, column: 0, rows: 2, columns: 1 };
  const standing = { sheets: ['Plan'], tables: [], names: [], placeOf: () => null };
  const seen = { at, formulas: [[null], [null]], sheetExists: true, protected: false, merged: [], tables: [] };
  const format = [{ do: 'format', at, format: { bold: true } }] as const;
  const dressed = (values: (string | null)[][], spills: (typeof at)[]): number =>
    buildReceipt(format, [{ ...seen, values, spills }], 'Fill', standing).dressed.length;

  it('is a blank block, and not one that a formula fills from elsewhere: its looks were there before', () => {
    expect(dressed([[null], [null]], [])).toBe(1);
    expect(dressed([['Out'], ['Likely']], [])).toBe(0);
    expect(dressed([['Out'], ['Likely']], [{ ...at, row: 0, column: -1, columns: 2 }])).toBe(0);
  });
});
