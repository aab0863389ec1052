import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addressOf,
  blockOf,
  columnLetters,
  columnOf,
  fixed,
  nameCells,
  named,
  overlap,
  sameBlock,
  sheetInFormula,
} from '../../../src/workbook/shared/address';
import type { Block } from '../../../src/workbook/port';

const anyBlock = fc.record({
  sheet: fc.constantFrom('Clubs', "Bob's räcke", 'Check-in', 'R', 'Sheet 1', 'true', 'A1'),
  row: fc.nat(1000),
  column: fc.nat(500),
  rows: fc.integer({ min: 1, max: 40 }),
  columns: fc.integer({ min: 1, max: 40 }),
});

describe('addresses', () => {
  // Excel's last column, the 16,384th, is XFD (published limit of the file format).
  it.each([
    [0, 'A'],
    [25, 'Z'],
    [26, 'AA'],
    [701, 'ZZ'],
    [702, 'AAA'],
    [16_383, 'XFD'],
  ])('column %i is %s', (column, letters) => {
    expect(columnLetters(column)).toBe(letters);
    expect(columnOf(letters)).toBe(column);
  });

  it.each([
    ['Clubs', 'Clubs'],
    ["Bob's", "'Bob''s'"],
    ['Check-in', "'Check-in'"],
    ['Sheet1', "'Sheet1'"],
    ['R', "'R'"],
  ])('the sheet %s is %s', (sheet, written) => expect(sheetInFormula(sheet)).toBe(written));

  it('read back as they were written', () => {
    fc.assert(
      fc.property(anyBlock, (block) => {
        expect(blockOf(named(block))).toEqual(block);
        expect(blockOf(`=${fixed(block)}`)).toEqual(block);
        expect(blockOf(addressOf(block), block.sheet)).toEqual(block);
      }),
    );
  });

  it('of whole columns and rows are blocks too', () => {
    expect(blockOf('Clubs!B:C')).toEqual({ sheet: 'Clubs', row: 0, column: 1, rows: 1_048_576, columns: 2 });
    expect(blockOf('$2:$3', 'S')).toEqual({ sheet: 'S', row: 1, column: 0, rows: 2, columns: 16_384 });
  });

  it.each(['', '#REF!', '=#REF!', 'Clubs!#REF!', 'A1:B2,C3', 'Clubs!', 'Sheet2!A1,B2', '1+1'])('%j is none', (text) =>
    expect(blockOf(text)).toBeNull(),
  );

  it('overlap the same way round or the other, and never beyond either', () => {
    fc.assert(
      fc.property(anyBlock, anyBlock, (one, other) => {
        const shared = overlap(one, other);
        const swapped = overlap(other, one);
        expect(shared === null).toBe(swapped === null);
        if (shared && swapped) expect(sameBlock(shared, { ...swapped, sheet: shared.sheet })).toBe(true);
        if (shared) expect(overlap(shared, one)).toEqual({ ...shared, sheet: shared.sheet });
      }),
    );
  });

  it('names neighbours in a column together, each once', () => {
    const cell = (row: number, column: number): Pick<Block, 'sheet' | 'row' | 'column'> => ({
      sheet: 'Clubs',
      row,
      column,
    });
    expect(nameCells([cell(5, 1), cell(4, 1), cell(8, 1), cell(4, 0), cell(4, 1)])).toEqual([
      'Clubs!A5',
      'Clubs!B5:B6',
      'Clubs!B9',
    ]);
    expect(nameCells([])).toEqual([]);
  });
});
