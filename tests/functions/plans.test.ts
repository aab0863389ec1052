import { describe, expect, test } from 'vitest';
import { clubPlan, setPlan } from '../../src/functions/functions';
import { demoTables } from '../../src/tryout/demo/demoTables';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { refusal } from './refusal';

type Cells = unknown[][];

const GRAMS_PER_POINT_INCH = 1.75 * 28.349523125; // one point, g·in

/** One club: a 50 g grip that was weighed makes room for one of 60 g, everything else alike. */
const clubs: Cells = [
  ['Club', 'Kind', 'New grip', 'Length (in)', 'Butt (in)', 'Reading', 'Old grip mass (g)', 'Old mass from', 'Job'],
  ['Driver', 'Driver', 'R1', 45, 0.6, 'D2', 50, 'Weighed', 'A'],
  ['7 iron', 'Iron', 'R1', 37, 0.6, 'D2', 50, 'Weighed', 'B'],
];
const stock: Cells = [
  ['Item', 'Core (in)', 'Mass (g)', 'Upper diameter (in)', 'Length (in)', 'Balance point (in)', 'On hand'],
  ['R1', 0.6, 60, 0.9, 10.5, 4.2, ''],
];

const at = (key: string): number => PLAN_COLUMNS.findIndex((column) => column.key === key);
const cell = (plan: Cells, row: number, key: string): unknown => plan[row]?.[at(key)];
const column = (plan: Cells, key: string): unknown[] => plan.slice(1).map((row) => row[at(key)]);
const withCell = (cells: Cells, row: number, place: number, value: unknown): Cells =>
  cells.map((each, r) => each.map((old, c) => (r === row && c === place ? value : old)));
const sentence = (call: () => unknown): string => {
  const { code, message } = refusal(call);
  return `${code} ${message}`;
};

describe('SETPLAN', () => {
  test('spills a header row and one row for each club, every cell a number or a text', () => {
    const plan = setPlan(clubs, stock);
    expect(plan).toHaveLength(3);
    expect(plan[0]).toEqual(PLAN_COLUMNS.map(({ header }) => header));
    for (const row of plan) expect(row).toHaveLength(PLAN_COLUMNS.length);
    const odd = plan.flat().filter((each) => typeof each !== 'string' && !Number.isFinite(each));
    expect(odd).toEqual([]);
  });

  test('says what the club will read and what puts it right', () => {
    const plan = setPlan(clubs, stock);
    // 10 g more, 9.8 in before the fulcrum: −98 / 49.61 = −1.975 points; D2 less that is D0.0.
    expect(cell(plan, 1, 'change')).toBeCloseTo(-98 / GRAMS_PER_POINT_INCH, 6);
    expect(cell(plan, 1, 'readingGripped')).toBe('D0.0');
    // The same moment at the head, 45 − 14 = 31 in behind it: 98 / 31 g; on the 7 iron 98 / 23 g.
    expect(cell(plan, 1, 'exact')).toBeCloseTo(98 / 31, 6);
    expect(cell(plan, 2, 'exact')).toBeCloseTo(98 / 23, 6);
  });

  test('names a list of the shop’s own that stands for Stock, its row and its heading; where it stands a formula is not told', () => {
    const own = [stock[0]?.with(0, 'No.') ?? [], stock[1] ?? [], ['', ...(stock[1]?.slice(1) ?? [])]];
    const headings = [
      ['Table', 'Column', 'Your list', 'Your heading', 'Unit'],
      ...(stock[0] ?? []).map((header) => ['Stock', header, 'StoreRoom', header === 'Item' ? 'No.' : header, '']),
    ];
    const plan = setPlan(clubs, own, undefined, undefined, undefined, undefined, headings);
    expect(cell(plan, 1, 'notes')).toBe(
      '“StoreRoom”, row 2 below its headings, under “No.”, Item is blank. Give the item.',
    );
    expect(cell(plan, 1, 'readingGripped')).toBe('D0.0');
  });

  test('plans one job where one is named, whatever its capitals, else every club', () => {
    expect(column(setPlan(clubs, stock, undefined, undefined, undefined, 'b'), 'club')).toEqual(['7 iron']);
    for (const blank of [null, 0, '', undefined]) {
      expect(column(setPlan(clubs, stock, undefined, undefined, undefined, blank), 'club')).toEqual([
        'Driver',
        '7 iron',
      ]);
    }
  });

  test('follows the settings it is given', () => {
    const settings = [
      ['Setting', 'Value'],
      ['Tolerance', 3],
    ];
    expect(column(setPlan(clubs, stock), 'grams')).not.toEqual([0, 0]);
    expect(column(setPlan(clubs, stock, settings), 'grams')).toEqual([0, 0]);
  });

  test('puts weight where Weights and a club say', () => {
    const weights = [
      ['Way', 'End', 'From that end (in)', 'Smallest step (g)'],
      ['Hosel plug', 'Head', 2, 0.5],
    ];
    const settings = [
      ['Setting', 'Value'],
      ['Head weighting', 'Hosel plug'],
    ];
    // 2 in short of the head: lever 45 − 2 − 14 = 29 in.
    expect(cell(setPlan(clubs, stock, settings, weights), 1, 'exact')).toBeCloseTo(98 / 29, 6);
  });

  test('counts the tape it is given', () => {
    const tape = [
      ['Tape', 'Use', 'Strip width (in)', 'Mass per area (g/m²)'],
      ['Build-up tape', 'Build-up', 1, 100],
      ['Two-way tape', 'Two-way', 2, 133],
    ];
    const layered = clubs.map((row, r) => [...row, r === 0 ? 'Layers' : 2]);
    // 2 layers of 10.5 in × 1 in × 645.16 mm²/in² × 100 g/m² = 2 × 0.677418 g.
    const plan = setPlan(layered, stock, undefined, undefined, tape);
    expect(cell(plan, 1, 'fittedAfter')).toBeCloseTo(60 + 2 * 0.677418, 6);
  });

  test('a bad cell is noted in its row and the rest is planned', () => {
    const plan = setPlan(withCell(clubs, 1, 3, '12 feet'), stock);
    expect(cell(plan, 1, 'notes')).toContain('Clubs row 2, Length (in) is “12 feet”, not a number. Give 18 to 52 in.');
    expect(cell(plan, 2, 'exact')).toBeCloseTo(98 / 23, 6);
  });

  test('an error in a cell is noted, in whichever form it arrives', () => {
    for (const error of ['#REF!', { type: 'Error', basicValue: '#REF!' }]) {
      const plan = setPlan(withCell(clubs, 1, 5, error), stock);
      expect(cell(plan, 1, 'notes')).toContain('Clubs row 2, Reading holds the error “#REF!”. Mend that cell first.');
      expect(cell(plan, 2, 'readingGripped')).toBe('D0.0');
    }
  });

  test('a number whose cell has a data type of its own is a number', () => {
    const typed = withCell(clubs, 1, 3, { type: 'FormattedNumber', basicValue: 45, numberFormat: '0.00' });
    expect(setPlan(typed, stock)).toEqual(setPlan(clubs, stock));
  });

  test('refuses what cannot be planned at all, with the reason', () => {
    const noClubColumn = clubs.map((row) => row.slice(1));
    expect(sentence(() => setPlan(noClubColumn, stock))).toBe(
      '#VALUE! There is no column “Club” in Clubs. Add it, or give the header row too.',
    );
    expect(sentence(() => setPlan(clubs.slice(0, 1), stock))).toBe('#N/A Clubs has no clubs. Add at least one.');
    expect(sentence(() => setPlan(clubs, stock, undefined, undefined, undefined, 'Z'))).toBe(
      '#N/A Clubs has no clubs of job Z. Add at least one.',
    );
    expect(sentence(() => setPlan(null as unknown as Cells))).toBe(
      '#VALUE! clubs is blank. Give a table with its header row.',
    );
    expect(sentence(() => setPlan(clubs, stock, undefined, undefined, undefined, true))).toBe(
      '#VALUE! job is TRUE. Give text.',
    );
    expect(sentence(() => setPlan(clubs, [['Item'], ['R1']]))).toMatch(
      /^#VALUE! There is no column “Core \(in\)” in Stock/,
    );
  });
});

/** The demo workbook's tables in the order of SETPLAN's arguments. */
function demo(blank: unknown): [Cells, Cells, Cells, Cells, Cells] {
  const filled = (name: string): Cells =>
    (demoTables[name] ?? []).map((row) => row.map((each) => (each === '' ? blank : each)));
  return [filled('Clubs'), filled('Stock'), filled('Settings'), filled('Weights'), filled('Tape')];
}

describe('a workbook whose blank cells arrive otherwise', () => {
  const usual = setPlan(...demo(''));

  test('the demo is planned', () => expect(usual.length).toBeGreaterThan(13));

  test.each([[null], [0]])('as %j it has the same plan', (blank) => {
    expect(setPlan(...demo(blank))).toEqual(usual);
  });

  test.each(['', null, 0])('a blank row below the clubs, its cells %j, is no club', (blank) => {
    const [demoClubs, ...others] = demo(blank);
    const below = demoClubs[0]?.map(() => blank) ?? [];
    expect(setPlan([...demoClubs, below], ...others)).toEqual(usual);
  });
});

describe('CLUBPLAN', () => {
  /** Notes that only the whole set gives rise to, and which row a sentence means. */
  const alone = (row: unknown[] | undefined) => row?.map((each, place) => (place === at('notes') ? '' : each));

  test.each(['', null, 0])('is the row that SETPLAN has for the club; blanks %j', (blank) => {
    const [table, ...others] = demo(blank);
    const header = table.slice(0, 1);
    const plan = setPlan(table, ...others);
    table.slice(1).forEach((club, index) => {
      const one = clubPlan([club], header, ...others);
      expect(one).toHaveLength(1);
      expect(alone(one[0])).toEqual(alone(plan[index + 1]));
    });
  });

  test('has the same notes too where they concern the club alone', () => {
    const header = clubs.slice(0, 1);
    const noReading = withCell(clubs, 2, 5, '');
    const plan = setPlan(noReading, stock);
    expect(String(cell(plan, 2, 'notes'))).toContain('put the club on the scale');
    expect(clubPlan(noReading.slice(2, 3), header, stock)).toEqual(plan.slice(2));
  });

  test('refuses what is no club, with the reason', () => {
    const header = clubs.slice(0, 1);
    const blank = clubs[0]?.map(() => null) ?? [];
    expect(sentence(() => clubPlan([blank], header, stock))).toBe('#N/A Clubs has no clubs. Add at least one.');
    expect(sentence(() => clubPlan([['Driver', 'Driver']], header, stock))).toBe(
      '#VALUE! club does not fit: it is 2 wide and header 9; both must span the same columns.',
    );
    expect(sentence(() => clubPlan(clubs.slice(1), header, stock))).toBe(
      '#VALUE! club does not fit: one row is needed, and 2 were given.',
    );
    expect(sentence(() => clubPlan(clubs.slice(1, 2), null as unknown as Cells, stock))).toBe(
      '#VALUE! header is blank. Give a table with its header row.',
    );
  });
});
