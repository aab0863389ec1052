import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Receipt } from '../../../src/workbook/port';
import { buildReceipt } from '../../../src/workbook/shared/receipt';
import { drained } from '../../../src/core/index';
import { isPacked, keptReceiptSteps, packReceipt, unpackReceipt } from '../../../src/workbook/shared/packed';

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

const NONE: Receipt = {
  label: 'Fill',
  written: [],
  madeSheets: [],
  madeTables: [],
  madeNames: [],
  movedNames: [],
  dressed: [],
};

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

  it('of a block of several parts unpacks to what it was, column by column or not', () => {
    const at = { sheet: 'Plan', row: 3, column: 2, rows: 250, columns: 3 };
    const cells = fc.tuple(grid(before, 250, 3), grid(put, 250, 3));
    fc.assert(
      fc.property(cells, ([was, now]) => {
        const receipt = { ...NONE, written: [{ at, before: was, put: now }] };
        expect(unpackReceipt(packReceipt(receipt))).toEqual(JSON.parse(JSON.stringify(receipt)));
      }),
      { numRuns: 10 },
    );
  });

  it('is read as workbooks kept it before', () => {
    // Written by the version before, of the receipt below.
    const text =
      'receipt-packed-1:{"label":"Fill","madeSheets":["Plan"],"madeTables":[],"madeNames":["x"],"movedNames":[],"dressed":[],"written":' +
      '[{"at":{"sheet":"Plan","row":0,"column":0,"rows":2,"columns":4},"rows":{"table":"Clubs","by":["Club"],"called":[["7"],null],' +
      '"headings":["a","b","c","d"]},"whole":true,"before":[[null,3],{"formula":"=1+1"},[[0],2],true,0],' +
      '"put":[[[1],2],1.5,[{"skip":true},2],{"call":"SETPLAN"},null,[2]]}],"texts":["a","within","out"]}';
    const receipt: Receipt = {
      ...{ label: 'Fill', madeSheets: ['Plan'], madeTables: [], madeNames: ['x'], movedNames: [], dressed: [] },
      written: [
        {
          at: { sheet: 'Plan', row: 0, column: 0, rows: 2, columns: 4 },
          rows: { table: 'Clubs', by: ['Club'], called: [['7'], null], headings: ['a', 'b', 'c', 'd'] },
          whole: true,
          before: [
            [null, null, null, { formula: '=1+1' }],
            ['a', 'a', true, 0],
          ],
          put: [
            ['within', 'within', 1.5, { skip: true }],
            [{ skip: true }, { call: 'SETPLAN' }, null, 'out'],
          ],
        },
      ],
    };
    expect(isPacked(text)).toBe(true);
    expect(unpackReceipt(text)).toEqual(receipt);
    expect(unpackReceipt(packReceipt(receipt))).toEqual(receipt);
  });

  it('that was cut off anywhere is no receipt, and is not taken for a shorter one', () => {
    const at = { sheet: 'Plan', row: 0, column: 0, rows: 120, columns: 2 };
    const cells = Array.from({ length: 120 }, (_, i) => [`club ${i % 5}`, i]);
    const text = packReceipt({ ...NONE, written: [{ at, before: cells.map(() => [null, null]), put: cells }] });
    for (let end = 0; end < text.length; end += 7) {
      expect(() => drained(keptReceiptSteps(text.slice(0, end))), `cut off at ${end}`).toThrow(SyntaxError);
    }
  });

  it('of a long plan over blank cells is hardly longer than the plan', () => {
    const at = { sheet: 'Plan', row: 0, column: 0, rows: 5000, columns: 20 };
    const cells = Array.from({ length: 5000 }, (_, i) =>
      Array.from({ length: 20 }, (_cell, j) => (j % 2 ? i + j / 8 : 'within')),
    );
    const blank = cells.map((line) => line.map(() => null));
    const receipt: Receipt = { ...NONE, written: [{ at, before: blank, put: cells }] };
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
