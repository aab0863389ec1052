import { describe, expect, test } from 'vitest';
import { plainFormula } from '../../../src/workbook/embedded/save/plainFormula';

const known = { sheets: ['Stock', "Bob's rack", 'Plan R-201'], names: ['rate_now'] };

describe('a formula goes into the copy', () => {
  test.each([
    '=SUM(B2:B9)',
    '=sum($B$2:B9)*2',
    '=IF(A1="REGRIP.X(",Stock!A1,\'Plan R-201\'!B2)',
    "='Bob''s rack'!A:A+1E5",
    '=rate_now*1.2',
    '=COUNTIF(Stock!$A:$A,"<>")',
    '=TRUE',
    '=LOG10(A1)',
  ])('%s', (formula) => expect(plainFormula(formula, known)).toBe(formula.slice(1)));
});

describe('only its value does', () => {
  test.each([
    ['a function of ours', '=REGRIP.SETPLAN(Clubs!A1:B2)'],
    ['one inside another', '=SUM(REGRIP.LAYERGROWTH(1,2))'],
    ['a function beyond the standard', '=XLOOKUP(A1,B:B,C:C)'],
    ['a table', '=SUM(Clubs[Layers])'],
    ['an array', '={1,2}'],
    ['a spill', '=A1#'],
    ['another workbook', "='[Other.xlsx]Sheet1'!A1"],
    ['a sheet that is not there', '=Gone!A1'],
    ['a name that is not there', '=rate_then*2'],
    ['a call over to another program', "=cmd|'/c calc'!A1"],
    ['an error', '=#REF!+1'],
    ['no formula', 'SUM(A1)'],
  ])('of %s', (_, formula) => expect(plainFormula(formula, known)).toBeNull());
});
