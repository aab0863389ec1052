import { describe, expect, test } from 'vitest';
import { placeGrips, setPlan } from '../../src/functions/functions';
import { demoTables } from '../../src/tryout/demo/demoTables';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { refusal } from './refusal';

type Cells = unknown[][];

const clubs: Cells = [
  ['Club', 'Kind', 'New grip', 'Length (in)', 'Reading', 'Old grip mass (g)', 'Job'],
  ['5 iron', 'Iron', 'R1', 38, 'D2', 48, 'A'],
  ['6 iron', 'Iron', 'R1', 37.5, 'D2', 50, 'A'],
  ['7 iron', 'Iron', 'R1', 37, 'D2', 52, 'B'],
];
const stock: Cells = [
  ['Item', 'Core (in)', 'Mass (g)', 'Balance point (in)'],
  ['R1', 0.6, 50, 4.2],
  ['R2', 0.6, 55, 4.2],
];
const HEADER = ['Club', 'New grip', 'Grip no.', 'Mass (g)', 'Reading', 'Missing (pt)', 'As gripped', 'Notes'];

const column = (cells: Cells, header: string): unknown[] => cells.slice(1).map((row) => row[HEADER.indexOf(header)]);
const sentence = (call: () => unknown): string => {
  const { code, message } = refusal(call);
  return `${code} ${message}`;
};

describe('PLACEGRIPS', () => {
  test('spills a header row and one row for each club', () => {
    // ± 4 g of the old grip, 0.5 g of the weighed one, 0.25 in of either's balance point: 0.87 points together; with two caps that
    // nobody measured, each 1/16 in, more than one
    expect(placeGrips([[52], [48], [50]], clubs, stock)).toEqual([
      HEADER,
      ['5 iron', 'R1', 2, 48, 'D2.0', 0, 'Likely', ''],
      ['6 iron', 'R1', 3, 50, 'D2.0', 0, 'Likely', ''],
      ['7 iron', 'R1', 1, 52, 'D2.0', 0, 'Likely', ''],
    ]);
  });

  test('missing points have the sign of a plan: more mass at the grip, more is missing', () => {
    const [only] = column(placeGrips([[60]], clubs.slice(0, 2), stock), 'Missing (pt)');
    // 12 g more, 9.8 in before the fulcrum, by 49.6117 g·in a point
    expect(only).toBeCloseTo((12 * 9.8) / 49.61166546875, 6);
  });

  test.each(['', null, 0, '  ', undefined])('blanks, here %j, are passed over, and a grip keeps its place', (blank) => {
    const cells = placeGrips([[blank], [52], [blank], [48], [50], [blank]], clubs, stock);
    expect(column(cells, 'Grip no.')).toEqual([4, 5, 2]);
  });

  test.each<[string, Cells]>([
    ['a row', [[52, 48, 50]]],
    ['text with a comma', [['52,0'], ['48,0'], ['50']]],
    ['two columns with the item first', [['R1', 52], ['r1', 48], ['R1', 50]]], // prettier-ignore
    ['two columns whose first is blank', [[null, 52], [0, 48], ['', 50]]], // prettier-ignore
    ['cells with a data type', [[{ type: 'FormattedNumber', basicValue: 52 }], [48], [50]]],
  ])('takes %s', (_, weighed) => {
    expect(column(placeGrips(weighed, clubs, stock), 'Grip no.')).toEqual([2, 3, 1]);
  });

  test('takes one row of an item and its mass, and of two masses', () => {
    expect(column(placeGrips([['R1', 52]], clubs, stock), 'Mass (g)')).toEqual(['', '', 52]);
    expect(column(placeGrips([[52, 48]], clubs, stock), 'Mass (g)')).toEqual([48, '', 52]);
    expect(column(placeGrips(52 as unknown as Cells, clubs, stock), 'Mass (g)')).toEqual(['', '', 52]);
  });

  test('says which clubs have no grip, and why', () => {
    const mixed = [...clubs, ['8 iron', 'Iron', 'R2', 36.5, 'D2', 55, 'A']];
    const cells = placeGrips([['R1', 52]], mixed, stock);
    expect(column(cells, 'Grip no.')).toEqual(['None left', 'None left', 1, 'Not weighed']);
    // planned with the mass in Stock: 2 g more than the old grip
    expect(column(cells, 'Missing (pt)')[0]).toBeCloseTo((2 * 9.8) / 49.61166546875, 6);
  });

  test('notes odd masses, what is left over, and what is wrong with a setting', () => {
    const settings = [['Setting', 'Value'], ['Tolerance', 'tight']]; // prettier-ignore
    const notes = column(placeGrips([[48], [50], [70], [52], [51]], clubs, stock, settings), 'Notes');
    expect(notes[0]).toMatch(/^Settings row 2, Tolerance is “tight”, not a number\./);
    expect(notes[0]).toContain('Left over: grips 3 (70 g) and 5 (51 g).');
    expect(notes[0]).toContain('Grip 3 weighs 70 g, and Stock says 50 g for R1.');
    expect(notes.slice(1)).toEqual(['', '']);
    const odd = column(placeGrips([[48], [70], [50]], clubs, stock), 'Notes');
    expect(odd.slice(0, 2)).toEqual(['', '']);
    expect(odd[2]).toContain('Grip 2 weighs 70 g');
  });

  test('says what is missing where a club cannot be planned', () => {
    const unread = clubs.map((row, at) => (at === 1 ? row.map((each) => (each === 48 ? '' : each)) : row));
    const cells = placeGrips([[52], [48], [50]], unread, stock);
    expect(column(cells, 'As gripped')[0]).toBe('Unknown');
    expect(column(cells, 'Notes')[0]).toContain('The old grip’s mass is not known.');
    expect(column(cells, 'Missing (pt)')[0]).toBe('');
  });

  test('places on one job where one is named', () => {
    const cells = placeGrips([[52], [48]], clubs, stock, undefined, undefined, undefined, 'a');
    expect(column(cells, 'Club')).toEqual(['5 iron', '6 iron']);
    for (const blank of [null, 0, '', undefined]) {
      expect(placeGrips([[52], [48]], clubs, stock, undefined, undefined, undefined, blank)).toHaveLength(4);
    }
  });

  test('refuses what cannot be placed, with the reason', () => {
    expect(sentence(() => placeGrips([[512]], clubs, stock))).toBe(
      '#VALUE! weighedGrams, grip 1 is 512. Give 15 to 220 g.',
    );
    expect(sentence(() => placeGrips([[50], ['heavy']], clubs, stock))).toBe(
      '#VALUE! weighedGrams, grip 2 is “heavy”, not a number. Give 15 to 220 g.',
    );
    expect(sentence(() => placeGrips([['Mass (g)'], [50]], clubs, stock))).toBe(
      '#VALUE! weighedGrams, grip 1 is “Mass (g)”, not a number. Give 15 to 220 g.',
    );
    expect(sentence(() => placeGrips([['#REF!']], clubs, stock))).toBe(
      '#VALUE! weighedGrams, grip 1 holds the error “#REF!”. Mend that cell first.',
    );
    expect(sentence(() => placeGrips([['R9', 50]], clubs, stock))).toBe(
      '#VALUE! Item of grip 1 is “R9”, which Stock does not list. Add it to Stock or choose another.',
    );
    expect(
      sentence(() =>
        placeGrips(
          [
            [50, 51, 52],
            [50, 51, 52],
          ],
          clubs,
          stock,
        ),
      ),
    ).toBe(
      '#VALUE! weighedGrams does not fit: a range of 2 × 3 was given; one column of masses, one row, or two columns of item and mass are needed.',
    );
    for (const blank of [null, 0, '']) {
      expect(sentence(() => placeGrips([[blank]], clubs, stock))).toBe(
        '#N/A Weighed grips has no masses. Add at least one.',
      );
    }
    const two = [...clubs, ['8 iron', 'Iron', 'R2', 36.5, 'D2', 55, 'A']];
    expect(sentence(() => placeGrips([[50]], two, stock))).toBe(
      '#VALUE! Item of grip 1 is blank. Give each grip its item, since these clubs get R1 and R2.',
    );
    expect(sentence(() => placeGrips([['R2', 50]], clubs, stock))).toBe(
      '#N/A Clubs has no clubs that get R2. Add at least one.',
    );
    expect(sentence(() => placeGrips([[50]], clubs.slice(0, 1), stock))).toBe(
      '#N/A Clubs has no clubs. Add at least one.',
    );
    expect(sentence(() => placeGrips([[50]], null as unknown as Cells))).toBe(
      '#VALUE! clubs is blank. Give a table with its header row.',
    );
  });
});

describe('the demo', () => {
  const filled = (name: string, blank: unknown): Cells =>
    (demoTables[name] ?? []).map((row) => row.map((each) => (each === '' ? blank : each)));
  const tables = (blank: unknown) =>
    ['Clubs', 'Stock', 'Settings', 'Weights', 'Tape'].map((name) => filled(name, blank)) as [
      Cells,
      Cells,
      Cells,
      Cells,
      Cells,
    ];
  const weighed = [53.1, 51.4, 50.6, 52.2, 54, 51.9, 52.8, 50.9, 53.5, 52.4, 51.1, 52].map((grams) => [grams]);

  test.each(['', null, 0])('its full bag is placed alike with blanks as %j, the putter apart', (blank) => {
    const cells = placeGrips(weighed, ...tables(blank), 'R-201');
    expect(cells).toEqual(placeGrips(weighed, ...tables(''), 'R-201'));
    const numbers = column(cells, 'Grip no.');
    expect(
      numbers
        .slice(0, 12)
        .map(Number)
        .sort((a, b) => a - b),
    ).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(numbers[12]).toBe('Not weighed');
  });

  test('what stands in Clubs as the new grip’s mass gives the same plan', () => {
    const cells = placeGrips(weighed, ...tables(''), 'R-201');
    const [table, ...others] = tables('');
    const at = (table[0] ?? []).indexOf('New grip mass (g)');
    const masses = column(cells, 'Mass (g)');
    let row = 0;
    const bag = table.map((each, number) => {
      if (number === 0 || each[0] !== 'R-201') return each;
      const next = [...each];
      next[at] = masses[row];
      row += 1;
      return next;
    });
    expect(row).toBe(13);
    const plan = setPlan(bag, ...others, 'R-201').slice(1);
    const reads = PLAN_COLUMNS.findIndex(({ key }) => key === 'readingGripped');
    expect(plan.map((each) => each[reads])).toEqual(column(cells, 'Reading'));
  });
});
