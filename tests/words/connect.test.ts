import { describe, expect, it } from 'vitest';
import { sayBroken, sayConnectWarning } from '../../src/words/connect';
import type { ConnectWarning } from '../../src/workbook/connect/types';
import { JOBS, STOCK } from '../../src/workbook/schema';

const HEADINGS = { headings: ['Item', 'Wt', 'Core', 'Len', '', 'Weight', 'Promised'] };

describe('what a person should know before a table is taken', () => {
  it.each<[ConnectWarning, string]>([
    [
      { warning: 'noHeadings' },
      'No row looks like headings, so the first one was taken for them. Choose the right one, or put a row of headings above.',
    ],
    [
      { warning: 'headingBlank', position: 4, left: 'Len' },
      'Column G has no heading of its own; Len, left of it, may be merged over both. Give it a heading if it is to be used.',
    ],
    [
      { warning: 'headingBlank', position: 4, left: null },
      'Column G holds something but has no heading. Give it a heading if it is to be used.',
    ],
    [
      { warning: 'headingsAlike', heading: 'Weight', positions: [1, 5] },
      '2 columns are headed Weight: D and H. Give each its own heading, or they cannot be told apart later.',
    ],
    [
      { warning: 'lookAlike', key: 'mass', positions: [1, 5] },
      'Mass (g) could be Wt or Weight; Wt was taken. Look at the samples.',
    ],
    [{ warning: 'rowsLeftOut', why: 'totals', from: 7, to: 7 }, 'Row 12 looks like totals and is left out.'],
    [{ warning: 'rowsLeftOut', why: 'notes', from: 8, to: 9 }, 'Rows 13 to 14 look like notes and are left out.'],
    [
      { warning: 'unitGuessed', key: 'mass', position: 1, unit: 'oz' },
      'Wt names no unit. Its values fit ounces; correct it if they are something else.',
    ],
    [
      { warning: 'unitOpen', key: 'length', position: 3, taken: 'in', units: ['in', 'cm'] },
      'Len names no unit, and its values fit inches or centimetres. It was taken for inches; say which it is.',
    ],
    [
      { warning: 'unitContradiction', key: 'mass', position: 1, heading: 'oz', values: 'g' },
      'Wt says ounces, but its values fit grams. The heading was followed; correct the unit if the values are right.',
    ],
    [
      { warning: 'unitsMixed', key: 'core', position: 2, units: [null, 'mm'] },
      'Core holds values in inches and, it seems, in millimetres. Those cannot be read; write all of them in one unit.',
    ],
    [
      { warning: 'neededMissing', key: 'core' },
      'No column looks like Core (in), which is needed. Choose it, or add it to your table.',
    ],
  ])('%j', (warning, sentence) => {
    expect(sayConnectWarning(STOCK, HEADINGS, warning, { row: 4, column: 2 })).toBe(sentence);
  });

  it('tells per cent from parts of one', () => {
    const warning = { warning: 'unitGuessed', key: 'discount', position: 3, unit: 'part' } as const;
    expect(sayConnectWarning(JOBS, HEADINGS, warning)).toBe(
      'Len seems to hold 0.1 for 10 %; correct it if 0.1 means 0.1 %.',
    );
  });

  it('tells days that are clear from days that are not', () => {
    const warning = { warning: 'datesAsText', key: 'due', position: 6, count: 3, unclear: 0 } as const;
    expect(sayConnectWarning(JOBS, HEADINGS, warning)).toBe(
      'Promised holds 3 days written as text. They can each be one day only and are read so.',
    );
    expect(sayConnectWarning(JOBS, HEADINGS, { ...warning, unclear: 2 })).toBe(
      'Promised holds 3 days written as text. Of 2 of them nobody can tell day from month; enter those as dates.',
    );
  });

  it('counts letters as a sheet does', () => {
    const warning = { warning: 'headingBlank', position: 4, left: null } as const;
    const letters = [25, 26, 701, 702].map(
      (column) => /Column (\w+)/.exec(sayConnectWarning(STOCK, HEADINGS, warning, { row: 0, column: column - 4 }))?.[1],
    );
    expect(letters).toEqual(['Z', 'AA', 'ZZ', 'AAA']);
  });

  it('says what broke since', () => {
    expect(sayBroken(STOCK, { key: 'mass', heading: 'Wt (oz)', why: 'gone' })).toBe(
      'The column Wt (oz), which stands for Mass (g), is not there any more. Choose another, or put its heading back.',
    );
    expect(sayBroken(STOCK, { key: 'mass', heading: 'Wt (oz)', why: 'renamed', nowAt: 'Wt', position: 1 })).toBe(
      'The column Wt (oz), which stands for Mass (g), is not there any more; where it stood is now Wt. Say whether that is the same column.',
    );
    expect(sayBroken(STOCK, { key: 'mass', heading: 'Wt', why: 'twice', position: 1 })).toBe(
      'Two columns are headed Wt, and one of them stands for Mass (g). Rename one of them, or choose again.',
    );
  });
});
