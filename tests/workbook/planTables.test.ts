import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayIssue } from '../../src/words/issues';
import { BASIS_WORDS, sayNote } from '../../src/words/notes';
import { planCells } from '../../src/workbook/planCells';
import { planTables, type TablesIn } from '../../src/workbook/planTables';
import {
  CLUBS,
  SETTINGS,
  STARTING_WEIGHTS,
  STOCK,
  TABLES,
  TAPE,
  WEIGHTS,
  type TableSchema,
} from '../../src/workbook/schema';

type Line = Readonly<Record<string, unknown>>;

/** A table of a schema by the keys of its columns. */
function table(schema: TableSchema, ...lines: Line[]): unknown[][] {
  return [
    schema.columns.map(({ header }) => header),
    ...lines.map((line) => schema.columns.map(({ key }) => line[key] ?? null)),
  ];
}

/** An invented grip and iron. */
const GRIP = {
  item: 'G',
  core: 0.6,
  profile: 'Round',
  mass: 60,
  upperDiameter: 0.9,
  lowerDiameter: 0.82,
  length: 10.5,
  balance: 4.2,
  cap: 0.125,
  onHand: 9,
};
const IRON = {
  job: 'A',
  club: '7 iron',
  kind: 'Iron',
  newItem: 'g',
  layers: 0,
  length: 37,
  butt: 0.6,
  reading: 'D2',
  mass: 420,
  oldItem: 'worn',
  oldMass: 50,
  oldMassKnown: 'Catalogue',
  oldCap: 0.125,
};

function planned(tables: TablesIn) {
  const result = planTables(tables);
  if (!result.ok) throw new Error(sayIssue(result.issue));
  const { plan, input, problems } = result.value;
  return {
    plan,
    input,
    said: problems.map(sayIssue),
    notes: plan.clubs.map((club) => club.notes.map(sayNote)),
    first: plan.clubs[0]!,
    club: input.clubs[0]!,
  };
}

const one = (more: Line = {}, grip: Line = {}) =>
  planned({ clubs: table(CLUBS, { ...IRON, ...more }), stock: table(STOCK, { ...GRIP, ...grip }) });

describe('a club from its row', () => {
  it('every cell lands where it belongs', () => {
    const { club } = one({
      lowerLayers: 2,
      targetDiameter: 0.95,
      hold: 'Target',
      target: 'D4',
      tolerance: 0.5,
      weighting: 'Tip plug',
      lengthChange: 0.5,
      plug: 6,
      taper: 0.007,
      oldLayers: 1,
      oldBalance: 4,
      oldCap: 0.2,
      buttWeight: 12,
      buttWeightLeaves: 'Yes',
      bareReading: 'E1',
      bareMass: 368,
      layers: 3,
      oldMassKnown: 'Weighed',
    });
    expect(club).toEqual({
      row: 1,
      sheetRow: 2,
      job: 'A',
      name: '7 iron',
      kind: 'iron',
      lengthInches: 37,
      buttInches: 0.6,
      taperPerInch: 0.007,
      reading: 32,
      massGrams: 420,
      oldItem: 'worn',
      oldGripGrams: 50,
      oldMassFrom: 'weighed',
      oldLayers: 1,
      oldBalanceInches: 4,
      oldCapInches: 0.2,
      buttWeightGrams: 12,
      buttWeightLeaves: true,
      bareReading: 41,
      bareGrams: 368,
      newItem: 'g',
      layers: 3,
      lowerLayers: 2,
      targetInches: 0.95,
      hold: 'target',
      target: 34,
      tolerancePoints: 0.5,
      way: 'Tip plug',
      lengthChangeInches: 0.5,
      plugGrams: 6,
      issues: [],
    });
  });

  it('blanks are unknown or none', () => {
    const { club } = planned({ clubs: table(CLUBS, { club: 'bare row' }) });
    expect(club).toEqual({
      row: 1,
      sheetRow: 2,
      job: undefined,
      name: 'bare row',
      kind: undefined,
      lengthInches: undefined,
      buttInches: undefined,
      taperPerInch: undefined,
      reading: undefined,
      massGrams: undefined,
      oldItem: undefined,
      oldGripGrams: undefined,
      oldMassFrom: 'estimate',
      oldLayers: 0,
      oldBalanceInches: undefined,
      oldCapInches: undefined,
      buttWeightGrams: 0,
      buttWeightLeaves: false,
      bareReading: undefined,
      bareGrams: undefined,
      newItem: undefined,
      layers: undefined,
      lowerLayers: 0,
      targetInches: undefined,
      hold: undefined,
      target: undefined,
      tolerancePoints: undefined,
      way: undefined,
      lengthChangeInches: 0,
      plugGrams: 0,
      issues: [],
    });
  });

  it('a club without a name is known by its row, which is told', () => {
    const { first, notes } = one({ club: ' ' });
    expect(first.name).toBe('Row 2');
    expect(notes[0]).toContain('Clubs row 2, Club is blank. Give the club.');
    expect(first.readingGripped).toBeDefined();
  });

  it.each([
    ['As it was', 'asArrived'],
    ['Target', 'target'],
    ['Nothing', 'nothing'],
    [null, 'asArrived'],
  ])('hold %s', (hold, code) => {
    expect(one({ hold }).first.hold).toBe(code);
  });

  it.each([
    ['Catalogue', 'estimate', 'Estimate'],
    ['Weighed', 'weighed', 'Weighed'],
    ['like one stripped', 'alike', 'Alike'],
    [null, 'estimate', 'Estimate'],
  ])('an old mass from %s', (oldMassKnown, code, word) => {
    const { club, first } = one({ oldMassKnown });
    expect([club.oldMassFrom, first.basis]).toEqual([code, code]);
    expect(BASIS_WORDS[first.basis!]).toBe(word);
  });

  it('an old grip like the stripped one’s is less sure than a weighed one, and surer than a catalogue’s', () => {
    const spread = (oldMassKnown: string) => one({ oldMassKnown }).first.spreadPoints!;
    expect(spread('Like one stripped')).toBeGreaterThan(spread('Weighed'));
    expect(spread('Like one stripped')).toBeLessThan(spread('Catalogue'));
  });

  it('no layers beside a target diameter: found; without one: none', () => {
    expect(one({ layers: 0, targetDiameter: 0.92 }).first).toMatchObject({ layers: 3, layersSolved: true });
    expect(one({ layers: null, targetDiameter: 0.92 }).first).toMatchObject({ layers: 3, layersSolved: true });
    expect(one({ layers: 1, targetDiameter: 0.92 }).first).toMatchObject({ layers: 1, layersSolved: false });
    expect(one({ layers: 0 }).first).toMatchObject({ layers: 0, layersSolved: false });
  });

  it('an old grip said to be weighed whose mass is blank is told', () => {
    expect(one({ oldMass: null, oldMassKnown: 'Weighed' }).notes[0]).toContain(
      'Clubs row 2, Old grip mass (g) is blank. Give the mass that was weighed.',
    );
    expect(one({ oldMassKnown: 'Weighed' }).notes[0]).toEqual([]);
    expect(one({ oldMass: null, oldMassKnown: 'Like one stripped' }).notes[0]).toContain(
      'Clubs row 2, Old grip mass (g) is blank. Give the mass that the stripped club showed.',
    );
  });

  it('a bad cell is told with sheet, row and column, and the rest is planned', () => {
    const { notes, first } = planned({
      clubs: table(CLUBS, IRON, { ...IRON, club: '8 iron', length: 12, reading: 'H2' }),
      stock: table(STOCK, GRIP),
    });
    expect(notes[1]).toEqual([
      'Clubs row 3, Length (in) is 12. Give 18 to 52 in.',
      'Clubs row 3, Reading is “H2”, which is not a reading. Give a letter A to G and a number, such as D2.5.',
      'Its reading as it arrived is not known: put the club on the scale. The change in points and the grams that undo it still hold.',
      'Length is not known, so there is no lever for head weight. Give Length.',
    ]);
    expect(first.verdict).toBe('out');
  });
});

describe('which clubs', () => {
  const clubs = table(
    CLUBS,
    { ...IRON, job: 'A' },
    { ...IRON, job: 'B', club: '8 iron' },
    {},
    { ...IRON, job: ' a ', club: '9 iron' },
    { ...IRON, job: 7, club: 'PW' },
  );
  const names = (more: Partial<TablesIn>) =>
    planned({ clubs, stock: table(STOCK, GRIP), ...more }).plan.clubs.map(({ row, name }) => `${row} ${name}`);

  it('all of them where no job is asked for; blank rows are skipped', () => {
    const all = ['1 7 iron', '2 8 iron', '4 9 iron', '5 PW'];
    expect(names({})).toEqual(all);
    expect(names({ job: null })).toEqual(all);
    expect(names({ job: ' ' })).toEqual(all);
  });

  it('those of a job, without case or blanks around; a number will do', () => {
    expect(names({ job: 'A' })).toEqual(['1 7 iron', '4 9 iron']);
    expect(names({ job: '7' })).toEqual(['5 PW']);
  });

  it('chosen rows, a job and rows together', () => {
    expect(names({ rows: [2, 3, 4] })).toEqual(['2 8 iron', '4 9 iron']);
    expect(names({ rows: [2, 4], job: 'A' })).toEqual(['4 9 iron']);
  });

  it('rows of the sheet are counted from where the header stands', () => {
    const { notes } = planned({ clubs: table(CLUBS, { ...IRON, length: 12 }), headerRows: { clubs: 4 } });
    expect(notes[0]?.[0]).toBe('Clubs row 5, Length (in) is 12. Give 18 to 52 in.');
  });

  it('and so are those of every other table', () => {
    const { notes, said } = planned({
      clubs: table(CLUBS, IRON),
      stock: table(STOCK, { ...GRIP, length: 99 }, { mass: 50, core: 0.6 }),
      settings: table(SETTINGS, { setting: 'Tolerance', value: 50 }),
      weights: table(WEIGHTS, { way: 'Lead tape', end: 'Head', position: 0, step: 99 }),
      tape: table(TAPE, { tape: 'Build-up tape', strip: 99 }, { tape: 'Two-way tape' }),
      headerRows: { stock: 3, settings: 5, weights: 7, tape: 9 },
    });
    expect(notes[0]?.some((note) => note.startsWith('Stock row 4, Length (in) is 99.'))).toBe(true);
    const places = said.map((sentence) => /^\w+ row \d+/.exec(sentence)?.[0]);
    expect(places).toEqual(['Settings row 6', 'Tape row 10', 'Weights row 8', 'Stock row 5']);
  });

  it('none at all', () => {
    const why = (tables: TablesIn) => {
      const result = planTables(tables);
      return result.ok ? '' : sayIssue(result.issue);
    };
    expect(why({ clubs: table(CLUBS) })).toBe('Clubs has no clubs. Add at least one.');
    expect(why({ clubs, job: 'Z' })).toBe('Clubs has no clubs of job Z. Add at least one.');
    expect(why({ clubs, rows: [] })).toBe('Clubs has no clubs. Add at least one.');
    expect(why({ clubs: [['Kind'], ['Iron']] })).toBe(
      'There is no column “Club” in Clubs. Add it, or give the header row too.',
    );
    expect(why({ clubs, stock: [['Item']] })).toBe(
      'There is no column “Core (in)” in Stock. Add it, or give the header row too.',
    );
    expect(why({ clubs, weights: [['Way', 'End']] })).toBe(
      'There is no column “From that end (in)” in Weights. Add it, or give the header row too.',
    );
    expect(why({ clubs, settings: [['Value']] })).toBe(
      'There is no column “Setting” in Settings. Add it, or give the header row too.',
    );
    expect(why({ clubs, tape: [['Use']] })).toBe(
      'There is no column “Tape” in Tape. Add it, or give the header row too.',
    );
  });
});

describe('stock', () => {
  it('every cell lands where it belongs', () => {
    const { input } = one({}, { description: 'soft', massSpread: 1.5 });
    expect(input.stock).toEqual([
      {
        item: 'G',
        description: 'soft',
        coreInches: 0.6,
        profile: 'round',
        gripGrams: 60,
        spreadGrams: 1.5,
        upperInches: 0.9,
        lowerInches: 0.82,
        lengthInches: 10.5,
        balanceInches: 4.2,
        capInches: 0.125,
        onHand: 9,
        // what no column tells of; its description stands for its model
        model: 'soft',
        size: undefined,
        texture: undefined,
        use: undefined,
        price: undefined,
        fittedUpperInches: undefined,
        fittedLowerInches: undefined,
        fittedButtInches: undefined,
        fittedLayers: undefined,
      },
    ]);
    const told = { model: 'Moss', size: 'Midsize', texture: 'cord', use: 'Putters', price: 9.5 };
    const fitted = { fittedUpper: 0.95, fittedLower: 0.85, fittedButt: 0.61, fittedLayers: 2 };
    expect(one({}, { description: 'soft', ...told, ...fitted }).input.stock[0]).toMatchObject({
      description: 'soft',
      model: 'Moss',
      size: 'Midsize',
      texture: 'cord',
      use: 'putters',
      price: 9.5,
      fittedUpperInches: 0.95,
      fittedLowerInches: 0.85,
      fittedButtInches: 0.61,
      fittedLayers: 2,
    });
    // a shop's own heading Model may be all there is
    expect(one({}, { model: 'Moss' }).input.stock[0]).toMatchObject({ description: 'Moss', model: 'Moss' });
    expect(one({ newMass: 61.5 }, {}).input.clubs[0]?.newGripGrams).toBe(61.5);
    expect(one({}, { profile: null }).input.stock[0]?.profile).toBeUndefined();
  });

  it('none given: every new grip is unknown, and that is told', () => {
    const { notes, said } = planned({ clubs: table(CLUBS, IRON) });
    expect(notes).toEqual([['New grip is “g”, which Stock does not list. Add it to Stock or choose another.']]);
    expect(said).toEqual([]);
  });

  it('what is wrong with an item is told to the clubs that would get it, and to no others', () => {
    const { notes, said } = planned({
      clubs: table(CLUBS, IRON, { ...IRON, club: '8 iron', newItem: 'H' }),
      stock: table(STOCK, GRIP, { ...GRIP, item: 'h', cap: 3 }),
    });
    expect(notes).toEqual([[], ['Stock row 3, Cap (in) is 3. Give 0.01 to 1 in.']]);
    expect(said).toEqual([]);
  });

  it('an item that stands twice: the first counts', () => {
    const { notes, first } = planned({
      clubs: table(CLUBS, IRON),
      stock: table(STOCK, GRIP, { ...GRIP, item: 'g', mass: 90 }),
    });
    expect(first.fittedAfterGrams).toBe(60);
    expect(notes[0]).toEqual([
      'Stock row 3, Item: “g” is there twice; the first one counts. Rename or remove this one.',
    ]);
  });

  it('a row without an item can be told to no club, so it is told for all', () => {
    const { said, input } = planned({
      clubs: table(CLUBS, IRON),
      stock: table(STOCK, GRIP, { ...GRIP, item: null, mass: 5 }),
    });
    expect(said).toEqual([
      'Stock row 3, Item is blank. Give the item.',
      'Stock row 3, Mass (g) is 5. Give 15 to 220 g.',
    ]);
    expect(input.stock).toHaveLength(1);
  });

  it.each([
    [{ upperDiameter: 0.7, core: 0.72 }, 'Stock row 2 does not fit: a grip that measures .700 has no core of .720.'],
    [{ lowerDiameter: 0.6 }, 'Stock row 2 does not fit: a grip that measures .600 has no core of .600.'],
  ])('a grip no thicker than its bore, %j', (grip, sentence) => {
    expect(one({}, grip).notes[0]).toContain(sentence);
  });

  it('a calliper reading of a fitted grip goes before the catalogue', () => {
    const fitted = { fittedUpper: 0.94, fittedLower: 0.86, fittedButt: 0.61, fittedLayers: 1 };
    const { first, notes } = one({ layers: 2 }, fitted); // .600 and two layers is the seat it was read on
    expect(first.upper).toEqual({
      inches: expect.closeTo(0.94, 10),
      lowInches: expect.closeTo(0.94, 10),
      highInches: expect.closeTo(0.94, 10),
    });
    expect(first.lower?.inches).toBeCloseTo(0.86, 10);
    expect(notes[0]).toEqual([]);
  });

  it.each([
    [
      { fittedUpper: 0.7, fittedButt: 0.7 },
      'Stock row 2 does not fit: a grip fitted on .700, butt and layers, does not measure .700.',
    ],
    [
      { fittedLower: 0.62, fittedButt: 0.6, fittedLayers: 3 },
      'Stock row 2 does not fit: a grip fitted on .630, butt and layers, does not measure .620.',
    ],
    [
      { fittedUpper: 0.9, fittedButt: 0.58, fittedLayers: 1 },
      'Stock row 2 does not fit: a core of .600 is loose on .590, the butt and layers it was fitted on.',
    ],
  ])('a reading of a fitted grip that cannot be, %j: told, and the catalogue counts', (grip, sentence) => {
    const { first, notes } = one({}, grip);
    expect(notes[0]).toContain(sentence);
    expect(first.upper?.inches).toBeCloseTo(0.9, 10);
    expect(first.lower?.inches).toBeCloseTo(0.82, 10);
  });

  it('what it was fitted on counts the shop’s own tape', () => {
    const grip = { ...GRIP, fittedUpper: 0.75, fittedButt: 0.6, fittedLayers: 8 };
    const clubs = table(CLUBS, IRON);
    const thin = planned({ clubs, stock: table(STOCK, grip) }); // on .680
    expect(thin.notes[0]).toEqual([]);
    const tape = table(
      TAPE,
      { tape: 'Build-up tape', use: 'Build-up', thickness: 0.01 },
      { tape: 'Two-way tape', use: 'Two-way' },
    );
    const thick = planned({ clubs, stock: table(STOCK, grip), tape });
    expect(thick.notes[0]?.join()).toContain('a grip fitted on .760, butt and layers, does not measure .750');
  });

  it('without a fitted reading, a butt and layers say nothing', () => {
    expect(one({}, { fittedButt: 0.58, fittedLayers: 0 }).notes[0]).toEqual([]);
  });

  it('sizes that are not given contradict nothing', () => {
    expect(one({}, { upperDiameter: null, lowerDiameter: null }).notes[0]).toEqual([]);
    expect(one({}, { core: null, lowerDiameter: 0.6 }).notes[0]?.join()).not.toContain('does not fit');
  });

  it('a column that counts nothing is blank, and nothing is short', () => {
    expect(one({}, { onHand: null }).notes[0]).toEqual([]);
    expect(one({}, { onHand: 0 }).notes[0]).toEqual(['Stock is short of G: 1 needed, 0 on hand.']);
  });
});

describe('ways', () => {
  const clubs = table(CLUBS, { ...IRON, weighting: 'Own' });
  const ways = (...rows: Line[]) => planned({ clubs, stock: table(STOCK, GRIP), weights: table(WEIGHTS, ...rows) });

  it('as a new workbook holds them, they are the usual ones', () => {
    const weights = [WEIGHTS.columns.map(({ header }) => header), ...STARTING_WEIGHTS];
    expect(planned({ clubs, weights }).input.ways).toEqual(planned({ clubs }).input.ways);
  });

  it('every cell lands where it belongs', () => {
    const { input, first, said } = ways(
      { way: 'Own', end: 'Head', position: 1, step: 2, gripOff: 'Yes', limit: 5 },
      { way: 'Other', end: 'Butt', position: 0 },
    );
    expect(input.ways).toEqual([
      { name: 'Own', end: 'head', inches: 1, stepGrams: 2, gripOff: true, limitGrams: 5 },
      { name: 'Other', end: 'butt', inches: 0, stepGrams: 1, gripOff: false, limitGrams: undefined },
    ]);
    expect(first.remedy).toMatchObject({ way: 'Own', grams: 4 }); // 98 g·in over 22 in is 4.45 g
    expect(said).toEqual([]);
  });

  it('a limit of 0 is no limit', () => {
    expect(ways({ way: 'Own', end: 'Head', position: 1, limit: 0 }).input.ways[0]?.limitGrams).toBeUndefined();
  });

  it('a row that cannot be read is left out and told; so is a name that stands twice', () => {
    const { input, said } = ways(
      { way: 'Own', end: 'Middle', position: 1 },
      { way: 'Far', end: 'Head' },
      { end: 'Head', position: 1 },
      { way: 'Own', end: 'Head', position: 0 },
    );
    expect(input.ways.map(({ name }) => name)).toEqual(['Own']);
    expect(said).toEqual([
      'Weights row 2, End is “Middle”. Give Head or Butt.',
      'Weights row 3, From that end (in) is blank. Give 0 to 20 in.',
      'Weights row 4, Way is blank. Give the way.',
      'Weights row 5, Way: “Own” is there twice; the first one counts. Rename or remove this one.',
    ]);
  });
});

describe('problems outside the clubs', () => {
  it('come from settings and tape, ways and stock', () => {
    const { said } = planned({
      clubs: table(CLUBS, IRON),
      stock: table(STOCK, { ...GRIP, item: null }),
      settings: [
        ['Setting', 'Value'],
        ['Tolerance', 'x'],
      ],
      weights: table(WEIGHTS, { way: 'Own', end: 'Head', position: 99 }),
    });
    expect(said).toEqual([
      'Settings row 2, Tolerance is “x”, not a number. Give 0.1 to 10 points.',
      'Weights row 2, From that end (in) is 99. Give 0 to 20 in.',
      'Stock row 2, Item is blank. Give the item.',
    ]);
  });
});

describe('whatever stands in the cells', () => {
  const cell = fc.oneof(
    {
      weight: 4,
      arbitrary: fc.constantFrom<unknown>(
        null,
        undefined,
        '',
        0,
        'G',
        'D2',
        'Iron',
        'Head',
        'Yes',
        37,
        0.6,
        0.9,
        420,
        50,
        '#N/A',
        true,
        -1,
        NaN,
      ),
    },
    { weight: 1, arbitrary: fc.anything() },
  );
  /** Our headers in any number and order, with rows of any length under them. */
  const matrix = (schema: TableSchema) =>
    fc
      .shuffledSubarray(
        schema.columns.map(({ header }) => header),
        { minLength: 0 },
      )
      .chain((headers) =>
        fc.array(fc.array(cell, { maxLength: headers.length + 1 }), { maxLength: 5 }).map((rows) => [headers, ...rows]),
      );
  const [, clubs, stock, weights, tape, , settings] = TABLES.map(matrix);

  it('a plan comes out or a sentence, nothing throws, and no cell says undefined', () => {
    const tables = fc.record({
      clubs: clubs!,
      stock: fc.option(stock!),
      weights: fc.option(weights!),
      tape: fc.option(tape!),
      settings: fc.option(settings!),
    });
    fc.assert(
      fc.property(tables, (given) => {
        const result = planTables(given);
        if (!result.ok) {
          expect(sayIssue(result.issue)).not.toMatch(/undefined|\[object/);
          return;
        }
        const cells = planCells(result.value.plan, result.value.problems);
        expect(cells).toHaveLength(result.value.plan.clubs.length + 1);
        for (const row of cells)
          for (const each of row) expect(typeof each === 'string' || Number.isFinite(each)).toBe(true);
      }),
      { numRuns: 400 },
    );
  });
});
