import { describe, expect, it } from 'vitest';
import { likenessOf } from '../../../src/workbook/connect/likeness';
import type { Seen } from '../../../src/workbook/port';
import type { Likeness } from '../../../src/workbook/connect/types';
import { TABLES, type TableSchema } from '../../../src/workbook/schema';
import { sayConnectWarning } from '../../../src/words/connect';

/** Clubs as an invented shop keeps them: a title, groups over several columns, headings, units. */
const GROUPS: readonly Seen[] = ['Who', null, null, 'The club', null, null, null, 'Grips'];
const HEADINGS: readonly Seen[] = [
  'Bag',
  'Client',
  'Came in',
  'Club',
  'Length',
  'Butt dia.',
  'Total wt',
  'Swing wt',
  'Old grip wt',
  'New one',
  'Tape',
  'Remarks',
];
const UNITS: readonly Seen[] = [null, null, null, null, 'in', 'mm', 'g', null, 'oz'];
const ROWS: readonly (readonly Seen[])[] = [
  ['B7', 'Ines Falk', '3.11.2026', 'Driver', 45.5, 15.2, 308, 'D2.5', 1.8, 'G2', 1, null],
  ['B7', 'Ines Falk', '3.11.2026', '3 wood', 43, 15.2, 330, 'D2', 1.8, 'G2', 1, null],
  ['B7', 'Ines Falk', '3.11.2026', '7 iron', 37.25, 15.2, 416, 'D1,8', 1.76, 'G2', 1, null],
  ['B7', 'Ines Falk', '3.11.2026', 'Putter', 34, 14.7, 545, null, 2.6, 'P1', 0, null],
  ['B8', 'Tom Reyes', 'Nov 5 2026', '7 iron', 37, 15.2, 420, 'D1', 1.9, 'G1', 2, 'rust'],
  ['B8', 'Tom Reyes', 'Nov 5 2026', '8 iron', 36.5, 15.2, 428, 'D1.2', '?', 'G1', 2, null],
];
const schemaNamed = (name: string): TableSchema => TABLES.find((table) => table.name === name) ?? TABLES[0]!;
const CLUBS = schemaNamed('Clubs');

const headings = (likeness: Likeness): Record<string, string | null> =>
  Object.fromEntries(
    likeness.proposals.map(({ key, position }) => [
      key,
      position === null ? null : (likeness.headings[position] ?? ''),
    ]),
  );

/** The same list without groups and units, under another word for its first column. */
const headed = (word: string): (readonly Seen[])[] => [[word, ...HEADINGS.slice(1)], ...ROWS];

describe('codes of what a job is about', () => {
  it.each(['Bag', 'Set', 'Bag no.'])('stand for Job under %s', (word) => {
    expect(headings(likenessOf(CLUBS, headed(word)))).toMatchObject({ job: word, target: null, reading: 'Swing wt' });
  });

  it('are no target readings, whatever they are headed', () => {
    expect(headings(likenessOf(CLUBS, headed('Sack')))).toMatchObject({ target: null, reading: 'Swing wt' });
  });

  it('are target readings where the heading says so, and readings tell themselves by their parts of a point', () => {
    expect(headings(likenessOf(CLUBS, headed('Target sw')))).toMatchObject({ target: 'Target sw' });
    const foreign = headed('Bag').map((cells, at) => (at === 0 ? cells.with(7, 'Schwung') : cells));
    expect(headings(likenessOf(CLUBS, foreign))).toMatchObject({ reading: 'Schwung' });
  });
});

describe('groups, headings and units in three rows', () => {
  const bags = [['Bags on the counter'], [], GROUPS, HEADINGS, UNITS, ...ROWS];
  const units = (likeness: Likeness) => Object.fromEntries(likeness.proposals.map(({ key, unit }) => [key, unit]));

  it('are read by their headings with the units right below; the groups are left out', () => {
    const likeness = likenessOf(CLUBS, bags);
    expect([likeness.headerRow, likeness.headerRows]).toEqual([4, 2]);
    expect(headings(likeness)).toMatchObject({
      job: 'Bag',
      club: 'Club',
      length: 'Length in',
      oldMass: 'Old grip wt oz',
    });
    expect(units(likeness)).toMatchObject({ length: 'in', butt: 'mm', mass: 'g', oldMass: 'oz' });
    expect(likeness.warnings.map(({ warning }) => warning)).not.toContain('unitsBelow');
  });

  it('keep the groups where headings are alike without them, and the units are named', () => {
    const alike = [
      ['Old grip', null, 'New grip', null, null],
      ['Item', 'Weight', 'Item', 'Weight', 'Club'],
      [null, 'g', null, 'oz', null],
      ['MOSS-S', 50, 'FERN-M', 1.8, '7 iron'],
      ['MOSS-S', 51, 'FERN-M', 1.8, '8 iron'],
    ];
    const likeness = likenessOf(CLUBS, alike);
    expect([likeness.headerRow, likeness.headerRows]).toEqual([1, 2]);
    expect(likeness.warnings).toContainEqual({ warning: 'unitsBelow', row: 2 });
  });

  it('say so where the units are not taken with the headings', () => {
    const likeness = likenessOf(CLUBS, bags, { row: 3, lines: 2 });
    const said = likeness.warnings.map((warning) => sayConnectWarning(CLUBS, likeness, warning));
    expect(said).toContain(
      'Row 5, right below the headings, looks like units, but is read as a row of the list. Choose the headings together with it, or take it out.',
    );
  });
});

describe('a heading that states a unit', () => {
  const jobs = schemaNamed('Jobs');
  const all = (likeness: Likeness, key: string) => {
    const found = likeness.proposals.find((each) => each.key === key);
    return [found?.position ?? null, ...(found?.others ?? [])];
  };

  it('of a mass is offered for no length, and of a length for no mass', () => {
    // values that could be either: a finger of 3 in, a weight of 3 g
    const rows = [
      ['Job', 'Customer', 'Lump (g)', 'Middle finger (g)'],
      ['1', 'Ines Falk', 3.25, 3.1],
      ['2', 'Tom Reyes', 3.5, 3.2],
      ['3', 'Ada Lind', 3, 3.4],
    ];
    expect(all(likenessOf(jobs, rows), 'fingerLength')).toEqual([null]);
    const clubs = [
      ['Job', 'Club', 'Club weight (mm)', 'Length'],
      ['1', '7 iron', 415, 37],
      ['1', '8 iron', 420, 36.5],
    ];
    expect(all(likenessOf(CLUBS, clubs), 'mass')).toEqual([null]);
  });
});

describe('a sum with a word below it', () => {
  const stock = schemaNamed('Stock');
  const grips: readonly (readonly Seen[])[] = [
    ['Item', 'Description', 'Core (in)', 'Mass (g)', 'On hand', 'Price'],
    ['G1', 'Black cord', '.600R', 50, 14, 7.5],
    ['G2', 'Blue soft', '.600R', 52, 26, 8.9],
    ['G3', 'Grey rubber', '.580R', 46, 9, 5.25],
  ];
  const sum: readonly Seen[] = [null, null, null, null, 49, 383];
  const word: readonly Seen[] = [null, null, null, null, null, 'value'];
  const shape = ({ lastRow, warnings }: Likeness) => [
    lastRow,
    warnings.filter((each) => each.warning === 'rowsLeftOut'),
  ];

  it('is no grip, nor is the word, and both are named once', () => {
    const both = [3, [{ warning: 'rowsLeftOut', why: 'totals', from: 4, to: 5 }]];
    expect(shape(likenessOf(stock, [...grips, sum, word]))).toEqual(both);
    const apart = [3, [{ warning: 'rowsLeftOut', why: 'totals', from: 5, to: 6 }]];
    expect(shape(likenessOf(stock, [...grips, [], sum, word]))).toEqual(apart);
  });

  it('is left in where grips follow, and a word alone is left to the reading', () => {
    const more: readonly Seen[] = ['G4', 'Soft light', '.600R', 30, 18, 10];
    expect(shape(likenessOf(stock, [...grips, sum, more]))).toEqual([5, []]);
    expect(shape(likenessOf(stock, [...grips, word]))).toEqual([4, []]);
  });
});
