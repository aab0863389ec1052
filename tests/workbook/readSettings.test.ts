import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, type ShopSettings } from '../../src/core/index';
import { sayIssue } from '../../src/words/issues';
import { readSettings } from '../../src/workbook/readSettings';
import { SETTING_ROWS, SETTINGS, STARTING_TAPE, TAPE } from '../../src/workbook/schema';

type Cells = (string | number | boolean | null | undefined)[];

function read(rows: Cells[] | null, tape: Cells[] | null = null) {
  const result = readSettings(rows && [['Setting', 'Value'], ...rows], tape);
  if (!result.ok) throw new Error(sayIssue(result.issue));
  return { settings: result.value.settings, said: result.value.problems.map(sayIssue) };
}

const tapes = (...rows: Cells[]): Cells[] => [TAPE.columns.slice(0, 5).map(({ header }) => header), ...rows];

describe('settings', () => {
  it('none given: the defaults', () => {
    expect(read(null)).toEqual({ settings: DEFAULT_SETTINGS, said: [] });
    expect(readSettings(undefined, undefined)).toEqual(readSettings(null, null));
    expect(read([])).toEqual({ settings: DEFAULT_SETTINGS, said: [] });
  });

  it('as a new workbook holds them, they are the defaults', () => {
    const rows = SETTING_ROWS.map(({ name, initial }): Cells => [name, initial]);
    const tape = [TAPE.columns.map(({ header }) => header), ...STARTING_TAPE.map((row) => [...row])];
    expect(read(rows, tape)).toEqual({ settings: DEFAULT_SETTINGS, said: [] });
  });

  it.each<[string, string | number | boolean, Partial<ShopSettings>]>([
    ['Tolerance', 0.5, { tolerancePoints: 0.5 }],
    ['TOLERANCE', '0,5', { tolerancePoints: 0.5 }],
    ['Put right', 'Whenever a step helps', { putRight: 'always' }],
    ['Put right', 'when out of tolerance', { putRight: 'outOfTolerance' }],
    ['Head weighting', 'Tip plug', { headWay: 'Tip plug' }],
    ['Butt weighting', 'Cap weight', { buttWay: 'Cap weight' }],
    ['Head weight limit', 4, { headLimitGrams: 4 }],
    ['Head weight limit', 'None', { headLimitGrams: 0 }],
    ['Scale reading ±', ' none ', { readingSpreadPoints: 0 }],
    ['Layer mass ±', 'NONE', { tapeSpread: 0 }],
    ['Layer mass ±', '5 %', { tapeSpread: 0.05 }],
    ['Least weight worth adding', 2, { leastGrams: 2 }],
    ['Taped length', 9, { tapedInches: 9 }],
    ['Two-way strip under new grips', 'No', { twoWayUnderNew: false }],
    ['Two-way strip under new grips', 'yes', { twoWayUnderNew: true }],
    ['Cap thickness when not known', 0.1, { capInches: 0.1 }],
    ['Size estimator', 'Additive', { growth: 'additive' }],
    ['Size estimator', 'by volume', { growth: 'volume' }],
    ['Lower-hand tape starts', 6, { lowerTapeStartInches: 6 }],
    ['Catalogue mass ±', 3, { oldSpreadGrams: 3 }],
    ['New grip mass ±', 1, { newSpreadGrams: 1 }],
    ['Balance point, part of length', 0.42, { gripBalanceRatio: 0.42 }],
    ['Balance point ±', 0.1, { balanceSpreadInches: 0.1 }],
    ['Scale reading ±', 0.1, { readingSpreadPoints: 0.1 }],
    ['Layer mass ±', 20, { tapeSpread: 0.2 }], // per cent
    ['Local rule: 46 in limit', 'Yes', { competition46: true }],
    ['Shop name', 'Anything', {}],
  ])('%s: %s', (name, value, changed) => {
    expect(read([[name, value]])).toEqual({ settings: { ...DEFAULT_SETTINGS, ...changed }, said: [] });
  });

  it.each([null, '', undefined, '  '])('blank as %j is the default', (blank) => {
    const rows = SETTING_ROWS.map(({ name }): Cells => [name, blank]);
    expect(read(rows)).toEqual({ settings: DEFAULT_SETTINGS, said: [] });
  });

  it.each([0, '0', '0,0'])('a blank that came as %j is the default', (zero) => {
    const rows = SETTING_ROWS.map(({ name }): Cells => [name, zero]);
    expect(read(rows)).toEqual({ settings: DEFAULT_SETTINGS, said: [] });
  });

  it('those that may be nothing take None for it and say so; the others do not', () => {
    for (const row of SETTING_ROWS) {
      if (row.kind !== 'number') continue;
      const { said } = read([[row.name, 'None']]);
      expect(said, row.name).toHaveLength(row.low === 0 ? 0 : 1);
      expect(row.meaning.includes('None: '), row.name).toBe(row.low === 0);
    }
  });

  it('rows are counted from where each header stands', () => {
    const list = tapes(['Build-up tape', 'Build-up', 9], ['Two-way tape', 'Two-way', 2]);
    const result = readSettings(
      [
        ['Setting', 'Value'],
        ['Tolerance', 50],
      ],
      list,
      { settings: 4, tape: 7 },
    );
    expect(result.ok && result.value.problems.map(({ field }) => field)).toEqual([
      'Settings row 5, Tolerance',
      'Tape row 8, Strip width (in)',
    ]);
  });

  it.each([
    ['Tolerance', 'tight', 'Settings row 2, Tolerance is “tight”, not a number. Give 0.1 to 10 points.'],
    ['Tolerance', 50, 'Settings row 2, Tolerance is “50”. Give 0.1 to 10 points.'],
    ['Layer mass ±', 60, 'Settings row 2, Layer mass ± is “60”. Give None, or up to 50 %.'],
    [
      'Put right',
      'never',
      'Settings row 2, Put right is “never”. Give When out of tolerance or Whenever a step helps.',
    ],
    ['Local rule: 46 in limit', 'maybe', 'Settings row 2, Local rule: 46 in limit is “maybe”. Give Yes or No.'],
    ['Size estimator', '#REF!', 'Settings row 2, Value holds the error “#REF!”. Mend that cell first.'],
  ])('%s: %s falls back to the default and is told', (name, value, sentence) => {
    expect(read([[name, value]])).toEqual({ settings: DEFAULT_SETTINGS, said: [sentence] });
  });

  it('rows that are the shop’s own are left alone, twice and bad as they may be', () => {
    expect(
      read([
        ['Opening hours', '9 to 5'],
        ['Opening hours', '#REF!'],
        [null, 4],
      ]).said,
    ).toEqual([]);
  });

  it('of a setting that stands twice the first value counts, and it is told', () => {
    const { settings, said } = read([
      ['Tolerance', 0.5],
      ['tolerance', 2],
    ]);
    expect(settings.tolerancePoints).toBe(0.5);
    expect(said).toEqual([
      'Settings row 3, Setting: “tolerance” is there twice; the first one counts. Rename or remove this one.',
    ]);
    expect(
      read([
        ['Tolerance', null],
        ['Tolerance', 2],
      ]).settings.tolerancePoints,
    ).toBe(2);
  });

  it('a table without its columns is refused', () => {
    expect(readSettings([['What', 'Value']], null)).toMatchObject({
      ok: false,
      issue: { code: 'missingColumn', field: 'Settings', expected: 'Setting' },
    });
    expect(readSettings(null, [['Roll']])).toMatchObject({
      ok: false,
      issue: { code: 'missingColumn', field: 'Tape', expected: 'Tape' },
    });
    expect(readSettings([SETTINGS.columns.map(({ header }) => header)], null).ok).toBe(true);
  });
});

describe('tapes', () => {
  it('those that Settings name are taken', () => {
    const list = tapes(['Thick', 'Build-up', 1.5, 200, 0.008], ['Sticky', 'Two-way', 1, 90, 0.004]);
    const { settings, said } = read(
      [
        ['Build-up tape', 'thick'],
        ['Two-way tape', 'STICKY'],
      ],
      list,
    );
    expect(settings.buildUp).toEqual({ stripInches: 1.5, gsm: 200, thicknessInches: 0.008 });
    expect(settings.twoWay).toEqual({ stripInches: 1, gsm: 90, thicknessInches: 0.004 });
    expect(said).toEqual([]);
  });

  it('a blank cell of one takes that of the usual tape for its use', () => {
    const list = tapes(['Build-up tape', 'Build-up', null, null, null], ['Two-way tape', 'Two-way', '', 0, '']);
    expect(read(null, list)).toEqual({ settings: DEFAULT_SETTINGS, said: [] });
  });

  it('bad cells and names that stand twice are told', () => {
    const list = tapes(
      ['Build-up tape', 'Build-up', 9, 130, 0.005],
      ['Two-way tape', 'Two-way', 2, 133, 0.005],
      ['Build-up tape', 'Build-up', 1, 1, 1],
    );
    const { settings, said } = read(null, list);
    expect(settings.buildUp).toEqual(DEFAULT_SETTINGS.buildUp);
    expect(said).toEqual([
      'Tape row 4, Tape: “Build-up tape” is there twice; the first one counts. Rename or remove this one.',
      'Tape row 2, Strip width (in) is 9. Give 0.25 to 4 in.',
      'Tape row 4, Mass per area (g/m²) is 1. Give 40 to 600 g/m².',
      'Tape row 4, Thickness (in) is 1. Give 0.001 to 0.02 in.',
    ]);
  });

  it('one that Tape does not list falls back to the usual and is told', () => {
    const { settings, said } = read([['Build-up tape', 'Silk']], tapes(['Two-way tape', 'Two-way', 2, 133, 0.005]));
    expect(settings.buildUp).toEqual(DEFAULT_SETTINGS.buildUp);
    expect(said).toEqual(['Settings, Build-up tape is “Silk”. Give a tape that Tape lists.']);
  });

  describe('a strip that was weighed', () => {
    const weighed = (line: Readonly<Record<string, Cells[number]>>, rows: Cells[] | null = null) => {
      const cells: Readonly<Record<string, Cells[number]>> = {
        tape: 'Build-up tape',
        use: 'Build-up',
        strip: 2,
        gsm: 130,
        ...line,
      };
      const list = [
        TAPE.columns.map(({ header }) => header),
        TAPE.columns.map(({ key }) => cells[key]),
        ['Two-way tape', 'Two-way', 2, 133, 0.005],
      ];
      const { settings, said } = read(rows, list);
      return { ...settings.buildUp, tapeSpread: settings.tapeSpread, said };
    };

    it('goes before the mass per area: 1.5 g of 10.5 in × 2 in, 0.00064516 m² to the square inch', () => {
      const tape = weighed({ weighedStrip: 1.5 });
      expect(tape.gsm).toBeCloseTo(1.5 / (21 * 0.00064516), 10); // 110.7
      expect(tape).toMatchObject({ stripInches: 2, tapeSpread: DEFAULT_SETTINGS.tapeSpread, said: [] });
      expect(weighed({ weighedStrip: 1.5, gsm: null }).gsm).toBe(tape.gsm);
    });

    it('is as long as it says, else the taped length in Settings; as wide as its row says, else as the usual', () => {
      expect(weighed({ weighedStrip: 1.5, weighedLength: 12 }).gsm).toBeCloseTo(1.5 / (24 * 0.00064516), 10);
      expect(weighed({ weighedStrip: 1.5 }, [['Taped length', 9]]).gsm).toBeCloseTo(1.5 / (18 * 0.00064516), 10);
      expect(weighed({ weighedStrip: 0.8, strip: 1 }).gsm).toBeCloseTo(0.8 / (10.5 * 0.00064516), 10);
      expect(weighed({ weighedStrip: 1.5, strip: null }).gsm).toBeCloseTo(1.5 / (21 * 0.00064516), 10);
    });

    it.each([0, '', null])('blank as %j: the mass per area', (blank) => {
      expect(weighed({ weighedStrip: blank, gsm: 120 })).toMatchObject({ gsm: 120, said: [] });
    });

    it('that no tape weighs is told, and the mass per area counts', () => {
      // 40 and 600 g/m² over 21 in² are 0.542 and 8.129 g
      expect(weighed({ weighedStrip: 15, gsm: 120 })).toMatchObject({
        gsm: 120,
        said: ['Tape row 2, Weighed strip (g) is 15. Give 0.54 to 8.13 g, what a strip of 10.5 × 2 in weighs.'],
      });
      expect(weighed({ weighedStrip: 0.5 })).toMatchObject({ gsm: 130 });
      expect(weighed({ weighedStrip: 0.55 }).said).toEqual([]);
      expect(weighed({ weighedStrip: 8.1 }).said).toEqual([]);
    });

    it('whose length or width could not be read is left out, and only that cell is told', () => {
      expect(weighed({ weighedStrip: 1.5, weighedLength: 300 })).toMatchObject({
        gsm: 130,
        said: ['Tape row 2, Weighed length (in) is 300. Give 3 to 24 in.'],
      });
      expect(weighed({ weighedStrip: 1.5, strip: 50 })).toMatchObject({
        gsm: 130,
        said: ['Tape row 2, Strip width (in) is 50. Give 0.25 to 4 in.'],
      });
      expect(weighed({ weighedStrip: 1.5, price: 'cheap' }).gsm).toBeCloseTo(110.7, 1);
    });
  });
});
