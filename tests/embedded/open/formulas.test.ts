import { describe, expect, test } from 'vitest';
import { enteredFormula, type FormulaPlace } from '../../../src/workbook/embedded/open/fileFormula';
import { shifted } from '../../../src/workbook/embedded/open/shifted';

const place: FormulaPlace = {
  sheet: 'Bench',
  row: 4,
  column: 6,
  tables: [
    {
      name: 'Stock',
      sheet: 'Stock list',
      row: 0,
      column: 0,
      rows: 8,
      totals: true,
      columns: ['Item', 'Mass (g)', "Bob's [own]", 'Price'],
    },
    { name: 'Jobs', sheet: 'Bench', row: 2, column: 0, rows: 10, totals: false, columns: ['Job', 'Due'] },
  ],
};

// How references to tables are written in a file: ECMA-376 Part 1, 18.17.6.4, and Microsoft's published help on structured references.
describe('a formula of a file as it is entered', () => {
  test.each([
    ['SUM(A1:A9)', '=SUM(A1:A9)'],
    ['_xlfn.XLOOKUP(A1,B:B,C:C)', '=XLOOKUP(A1,B:B,C:C)'],
    ['_xlfn._xlws.FILTER(A1:A9,B1:B9)', '=FILTER(A1:A9,B1:B9)'],
    ['SUM(Stock[Price])', "=SUM('Stock list'!$D$2:$D$9)"],
    ['SUM(stock[price])', "=SUM('Stock list'!$D$2:$D$9)"],
    ['Stock[[#All],[Item]:[Mass (g)]]', "='Stock list'!$A$1:$B$10"],
    ['Stock[[#Totals],[Price]]', "='Stock list'!$D$10"],
    ['Stock[#Headers]', "='Stock list'!$A$1:$D$1"],
    ['Stock[]', "='Stock list'!$A$2:$D$9"],
    ["Stock[Bob''s '[own']]", "='Stock list'!$C$2:$C$9"],
    ['Jobs[[#This Row],[Due]]+1', '=$B$5+1'],
    ['Jobs[@Due]+1', '=$B$5+1'],
    ['"Stock[Price]"&A1', '="Stock[Price]"&A1'],
    ["'Stock list'!A1", "='Stock list'!A1"],
  ])('%s: %s', (file, entered) => expect(enteredFormula(file, place)).toBe(entered));

  test.each([
    '[1]Prices!A1',
    "'[2]Last year'!B2*2",
    'Unknown[Price]',
    'Stock[Colour]',
    'Stock[[#Headers],[#Totals]]',
    '_xlfn.ANCHORARRAY(A1)',
  ])('%s is not entered', (file) => expect(enteredFormula(file, place)).toBeNull());

  test('a bracket within a text points at no other workbook', () =>
    expect(enteredFormula('A1&"[1]"', place)).toBe('=A1&"[1]"'));
});

// Relative references move, fixed ones stay: ECMA-376 Part 1, 18.3.1.40 (shared formulas).
describe('a formula moved', () => {
  test.each([
    ['A1+B$1+$C1+$D$1', 2, 1, 'B3+C$1+$C3+$D$1'],
    ['SUM(A1:A9)', 1, 0, 'SUM(A2:A10)'],
    ['SUM(A:A)+SUM(1:1)', 3, 2, 'SUM(C:C)+SUM(4:4)'],
    ['SUM($A:B)+SUM($1:2)', 3, 2, 'SUM($A:D)+SUM($1:5)'],
    ['LOG10(A1)', 1, 0, 'LOG10(A2)'],
    ['Sheet1!A1+\'My A1 sheet\'!B2&"C3"', 1, 0, 'Sheet1!A2+\'My A1 sheet\'!B3&"C3"'],
    ['Rate*A1', 1, 0, 'Rate*A2'],
    ['Stock[A1]+A1', 1, 0, 'Stock[A1]+A2'],
    ['1E5+A1', 1, 0, '1E5+A2'],
  ])('%s by %i down, %i across: %s', (text, down, across, moved) => expect(shifted(text, down, across)).toBe(moved));

  test('past the edge of the sheet it is none', () => {
    expect(shifted('A1', -1, 0)).toBeNull();
    expect(shifted('XFD1', 0, 1)).toBeNull();
  });
});
