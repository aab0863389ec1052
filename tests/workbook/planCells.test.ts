import { describe, expect, it } from 'vitest';
import type { Club, Grip } from '../../src/core/index';
import { clubCells, PLAN_COLUMNS, planCells, planHeaders } from '../../src/workbook/planCells';
import { aClub, aGrip, planOf, planOne, type Shop } from '../core/make';

/** Cells of one club by the column's key. */
function cells(club: Partial<Club> = {}, grip: Partial<Grip> = {}, shop: Shop = {}): Record<string, string | number> {
  const row = clubCells(planOne(club, grip, shop));
  return Object.fromEntries(PLAN_COLUMNS.map(({ key }, at) => [key, row[at] ?? 'missing']));
}

describe('columns', () => {
  it('the bench’s come first, detail after; their order is what sheets were filled with', () => {
    expect(PLAN_COLUMNS.map(({ key, header }) => `${key}: ${header}`)).toMatchInlineSnapshot(`
      [
        "club: Club",
        "item: New grip",
        "layers: Layers",
        "lowerLayers: Lower layers",
        "readingBefore: Reads now",
        "readingGripped: With new grip",
        "verdict: As gripped",
        "grams: Add (g)",
        "readingAfter: Finished",
        "verdictAfter: As finished",
        "where: Where",
        "when: When",
        "massAfter: Total mass (g)",
        "notes: Notes",
        "kind: Kind",
        "hold: Hold",
        "held: Held reading",
        "basis: Known from",
        "spread: ± (pt)",
        "spread.oldMass: ± by old grip mass (pt)",
        "spread.oldBalance: ± by old balance point (pt)",
        "spread.newMass: ± by new grip mass (pt)",
        "spread.newBalance: ± by new balance point (pt)",
        "spread.tape: ± by tape (pt)",
        "spread.cap: ± by cap (pt)",
        "spread.length: ± by length (pt)",
        "spread.body: ± by club mass (pt)",
        "spread.reading: ± by scale (pt)",
        "upper: Upper diameter (in)",
        "upperLow: Upper from (in)",
        "upperHigh: Upper to (in)",
        "lower: Lower diameter (in)",
        "lowerLow: Lower from (in)",
        "lowerHigh: Lower to (in)",
        "growth: Size estimator",
        "fittedBefore: Grip and tape before (g)",
        "fittedAfter: Grip and tape after (g)",
        "fittedChange: Change (g)",
        "change: Change (pt)",
        "changeGrip: by grip (pt)",
        "changeTape: by tape (pt)",
        "changeCap: by cap (pt)",
        "changeLength: by length (pt)",
        "changeButt: by butt weight (pt)",
        "exact: Exact weight (g)",
        "inertia: Inertia change (kg·cm²)",
        "tape: Build-up tape (in)",
        "twoWay: Two-way tape (in)",
        "length: Length after (in)",
        "rules: Rules",
      ]
    `);
    const bench = PLAN_COLUMNS.map(({ bench: isBench }) => Boolean(isBench));
    expect(bench.lastIndexOf(true)).toBe(bench.indexOf(false) - 1);
  });

  it('every key and header stands once', () => {
    expect(new Set(PLAN_COLUMNS.map(({ key }) => key)).size).toBe(PLAN_COLUMNS.length);
    expect(new Set(planHeaders()).size).toBe(PLAN_COLUMNS.length);
  });

  it('two hold verdicts', () => {
    expect(PLAN_COLUMNS.filter(({ verdict }) => verdict).map(({ key }) => key)).toEqual(['verdict', 'verdictAfter']);
  });
});

describe('a club ten grams heavier', () => {
  it('as cells', () => {
    expect(cells()).toMatchInlineSnapshot(`
      {
        "basis": "Estimate",
        "change": -1.9753419,
        "changeButt": 0,
        "changeCap": 0,
        "changeGrip": -1.9753419,
        "changeLength": 0,
        "changeTape": 0,
        "club": "7 iron",
        "exact": 4.2608696,
        "fittedAfter": 60,
        "fittedBefore": 50,
        "fittedChange": 10,
        "grams": 4.5,
        "growth": "By volume",
        "held": "D2.0",
        "hold": "As it was",
        "inertia": 40.883144,
        "item": "G",
        "kind": "Iron",
        "layers": 0,
        "length": 37,
        "lower": 0.82,
        "lowerHigh": 0.82,
        "lowerLayers": 0,
        "lowerLow": 0.82,
        "massAfter": 434.5,
        "notes": "",
        "readingAfter": "D2.1",
        "readingBefore": "D2.0",
        "readingGripped": "D0.0",
        "rules": "OK",
        "spread": 0.8973174,
        "spread.body": 0,
        "spread.cap": 0,
        "spread.length": 0,
        "spread.newBalance": 0.121,
        "spread.newMass": 0.395,
        "spread.oldBalance": 0.101,
        "spread.oldMass": 0.79,
        "spread.reading": 0,
        "spread.tape": 0,
        "tape": 0,
        "twoWay": 10.5,
        "upper": 0.9,
        "upperHigh": 0.9,
        "upperLow": 0.9,
        "verdict": "Out",
        "verdictAfter": "Likely",
        "when": "Any time",
        "where": "Lead tape (head)",
      }
    `);
  });
});

describe('single cells', () => {
  it('no grip: what is known of the club, blanks for the rest', () => {
    const row = cells({ newItem: undefined });
    expect(row).toMatchObject({
      club: '7 iron',
      item: '',
      layers: '',
      lowerLayers: '',
      readingBefore: 'D2.0',
      readingGripped: '',
      verdict: 'Unknown',
      grams: '',
      where: '',
      when: '',
      readingAfter: '',
      verdictAfter: 'Unknown',
      massAfter: '',
      notes: 'No new grip chosen. Choose one in New grip.',
      kind: 'Iron',
      hold: 'As it was',
      held: 'D2.0',
      basis: '',
      spread: '',
      upper: '',
      growth: '',
      fittedBefore: 50,
      fittedAfter: '',
      change: '',
      tape: '',
      twoWay: '',
      length: 37,
      rules: '',
    });
  });

  it('an item that is not stocked is shown as typed', () => {
    expect(cells({ newItem: 'ghost' })).toMatchObject({ item: 'ghost', layers: '', rules: '' });
  });

  it('weight: where and when only where there is some', () => {
    expect(cells()).toMatchObject({ grams: 4.5, where: 'Lead tape (head)', when: 'Any time' });
    expect(cells({ way: 'Tip plug' })).toMatchObject({ grams: 5, where: 'Tip plug (head)', when: 'Grip off' });
    expect(cells({}, { gripGrams: 35 })).toMatchObject({ where: 'Butt plug (butt)', when: 'Grip off' });
    expect(cells({}, { gripGrams: 50 })).toMatchObject({ grams: 0, where: '', when: '' });
    expect(cells({ kind: 'putter' })).toMatchObject({ grams: '', where: '', when: '' });
  });

  it('off the scale as points, and without a reading blank', () => {
    expect(cells({ reading: -65, kind: 'junior' })).toMatchObject({
      readingBefore: '−65.0 pt',
      readingGripped: '−67.0 pt',
      hold: 'Nothing',
      held: '',
    });
    expect(cells({ reading: undefined })).toMatchObject({
      readingBefore: '',
      readingGripped: '',
      change: -1.9753419,
      grams: 4.5,
    });
  });

  it('tape and two-way strip share a column of points', () => {
    const dry = cells({ layers: 1 }, {}, { settings: { twoWayUnderNew: false } });
    expect(dry.changeTape).toBeCloseTo((21 * 0.00064516 * (130 * -8.75 + 133 * 8.75)) / 49.61166546875, 6);
    expect(dry).toMatchObject({ tape: 10.5, twoWay: 0, layers: 1 });
  });

  it('the parts of a ±: each in its column, to a thousandth', () => {
    const parts = cells(
      { bareReading: 44, bareGrams: 368, layers: 2, lengthChangeInches: 0.5 },
      { capInches: undefined },
    );
    // ± 2 g over 9.8 in, 0.1 in of 60 g, a tenth of two layers over 8.75 in; 1/16 and 1/32 in of 368 g; two readings of ± 0.2
    expect(parts['spread.newMass']).toBeCloseTo(19.6 / 49.6117, 3);
    expect(parts['spread.newBalance']).toBeCloseTo(6 / 49.6117, 3);
    expect(parts['spread.tape']).toBeCloseTo((0.2 * 1.7612868 * 8.75) / 49.6117, 3);
    expect(parts['spread.cap']).toBeCloseTo(23 / 49.6117, 3);
    expect(parts['spread.length']).toBeCloseTo(11.5 / 49.6117, 3);
    expect(parts['spread.reading']).toBeCloseTo(0.2 * Math.SQRT2, 3);
    expect(parts).toMatchObject({ 'spread.oldMass': 0, 'spread.oldBalance': 0, 'spread.body': 0 });
    expect(cells({ oldGripGrams: undefined })['spread.newMass']).toBe('');
  });

  it('a kind that is not known is blank', () => {
    expect(cells({ kind: undefined }).kind).toBe('');
  });

  it('rules: OK or each that is broken', () => {
    expect(cells().rules).toBe('OK');
    expect(cells({ lengthInches: 50 }, { lengthInches: 6 }).rules).toBe(
      'Grip 6.00 in long, under 7 in; Club 50.00 in, over 48 in',
    );
  });

  it('the estimator is named where a diameter stands', () => {
    expect(cells({}, {}, { settings: { growth: 'additive' } })).toMatchObject({ growth: 'Additive', upper: 0.9 });
    expect(cells({ buttInches: undefined })).toMatchObject({ growth: '', upper: '', upperLow: '', upperHigh: '' });
  });

  it('several notes stand one after another', () => {
    expect(cells({ reading: undefined, buttInches: 0.58 }).notes).toBe(
      'Core .600 is loose on a .580 butt and would turn: fit 2 layers or another core. Its reading as it arrived is not known: put the club on the scale. The change in points and the grams that undo it still hold.',
    );
  });

  it('numbers are free of binary noise', () => {
    expect(cells({ layers: 3 }).fittedAfter).toBe(65.2838604); // 60 + 3 × 1.7612868
    expect(cells({ layers: undefined, targetInches: 0.92 }, {}, { settings: { growth: 'additive' } }).upper).toBe(0.92);
  });
});

describe('a set', () => {
  const clubs = [aClub(), aClub({ name: '8 iron', row: 2, sheetRow: 3, newItem: undefined })];
  const notes = PLAN_COLUMNS.findIndex(({ key }) => key === 'notes');

  it('header row first, a row for each club, all as wide', () => {
    const rows = planCells(planOf(clubs));
    expect(rows).toHaveLength(3);
    expect(rows[0]).toEqual(planHeaders());
    for (const row of rows) expect(row).toHaveLength(PLAN_COLUMNS.length);
  });

  it('what is wrong outside the clubs stands before the first club’s notes', () => {
    const problems = [
      { code: 'notNumber', field: 'Settings row 2, Tolerance', got: 'x', expected: '0.1 to 10 points' },
      { code: 'blank', field: 'Weights row 3, Way', expected: 'the way' },
    ] as const;
    const said =
      'Settings row 2, Tolerance is “x”, not a number. Give 0.1 to 10 points. Weights row 3, Way is blank. Give the way.';
    const first = planCells(planOf(clubs), problems);
    expect(first[1]?.[notes]).toBe(said);
    expect(first[2]?.[notes]).toBe('No new grip chosen. Choose one in New grip.');
    const turned = planCells(planOf([...clubs].reverse()), problems);
    expect(turned[1]?.[notes]).toBe(`${said} No new grip chosen. Choose one in New grip.`);
  });

  it('of much that is wrong outside the clubs two are said, and how much more there is: a row stays as high as a row', () => {
    const blank = (row: number) => ({ code: 'blank', field: `Stock row ${row}, Item`, expected: 'the item' }) as const;
    const said = planCells(planOf(clubs), [2, 3, 4, 5, 6, 7, 8].map(blank))[1]?.[notes];
    expect(said).toBe(
      'Stock row 2, Item is blank. Give the item. Stock row 3, Item is blank. Give the item. And 5 more: see the tab Plan.',
    );
  });

  it('no clubs: the header alone', () => {
    expect(planCells(planOf([], { stock: [aGrip()] }), [{ code: 'blank', field: 'x' }])).toEqual([planHeaders()]);
  });
});
