import { describe, expect, test } from 'vitest';
import { FUNCTIONS } from '../../src/functions/implementations';
import { refusal } from './refusal';

const MM_PER_INCH = 25.4; // NIST SP 811, exact
const GRAMS_PER_POINT_INCH = 1.75 * 28.349523125; // one point, g·in: 1.75 oz·in, trade.md has it from memory

/** A cell left blank: null on one platform, 0 on the other. */
const BLANK = Symbol('blank cell');

function call(id: string, args: readonly unknown[]): unknown {
  const implementation = FUNCTIONS[id] as ((...cells: unknown[]) => unknown) | undefined;
  if (!implementation) throw new Error(`No function ${id}`);
  return implementation(...args);
}

function underBoth(id: string, args: readonly unknown[]): [unknown, unknown] {
  const filled = (blank: null | 0) => args.map((each) => (each === BLANK ? blank : each));
  return [call(id, filled(null)), call(id, filled(0))];
}

/** ID, arguments, what is expected, how near, where that comes from. */
type Case = [id: string, args: unknown[], expected: number, within: number, source: string];

const numbers: Case[] = [
  ['TAPEGRAMS', [], 1.76, 0.005, 'the default layer, trade practice: 10.5 in × 2 in × 130 g/m²'],
  ['TAPEGRAMS', [BLANK, BLANK, BLANK], 1.76, 0.005, 'the same with blank cells'],
  ['TAPEGRAMS', [10, 1, 100], 0.64516, 1e-12, '10 in² of 645.16 mm² at 100 g/m²: 0.0064516 m² × 100'],
  ['GRIPMASS', [50, BLANK], 50, 0, 'no layers'],
  ['GRIPMASS', [50, 2, BLANK], 50 + 2 * 1.76129, 0.00002, 'grip and two default layers'],
  ['GRIPMASS', [50, 3, 2], 56, 0, '50 + 3 × 2'],
  ['MASSPOINTS', [-5, 4.2], 1, 0.1, '+5 g at the grip is −1 point, within 10 %: club-making handout (practice)'],
  ['MASSPOINTS', [2, 39], 1, 0.1, '+2 g at the head is +1 at 39 in, within 10 %: club-making handout (practice)'],
  ['MASSPOINTS', [22, 355 / MM_PER_INCH], 0, 0.05, '22 g at 355 mm moves nothing: MDPI Proceedings 2020, 49, 81'],
  ['MASSPOINTS', [BLANK, 40], 0, 0, 'no mass moves nothing'],
  ['BALANCECHANGE', [50, 25], 5, 0.3, 'grip 50 → 25 g: published club-making blog, 2010'],
  ['BALANCECHANGE', [50, 50, 2, 2, BLANK, BLANK, BLANK, BLANK], 0, 0, 'like for like'],
  ['BALANCECHANGE', [50, 60], (-10 * 9.8) / GRAMS_PER_POINT_INCH, 1e-12, '10 g at 4.2 in, 9.8 in before the fulcrum'],
  ['BALANCECHANGE', [50, 50, 0, 1, 4.2, 4.2, 2, 10], (-2 * 9) / GRAMS_PER_POINT_INCH, 1e-12, '2 g at 5 in, half of 10'],
  [
    'BALANCECHANGE',
    [50, 50, BLANK, BLANK, 4, 5],
    50 / GRAMS_PER_POINT_INCH,
    1e-12,
    'the same 50 g an inch nearer the head',
  ],
  ['LENGTHCHANGE', [374, 0.125], 0.94, 0.005, '⅛ in on a 374 g body: worked figure of the trade notes (derived)'],
  ['LENGTHCHANGE', [300, 0.5, BLANK, BLANK], 3, 0.3, '½ in of length is 3 points: club-making handout (practice)'],
  [
    'LENGTHCHANGE',
    [300, 0.5, 6, 1],
    150 / GRAMS_PER_POINT_INCH - (6 * 13) / GRAMS_PER_POINT_INCH,
    1e-12,
    '300 g moved ½ in, less 6 g at 13 in before the fulcrum',
  ],
  ['COMPENSATION', [-1.975, 45], 3.5, 0.5, 'grip +10 g: 3–4 g at driver length (practice, no source)'],
  ['COMPENSATION', [-1.975, 37, BLANK], 4.26, 0.01, '98 g·in over a lever of 23 in (derived); about 4 at iron length'],
  ['COMPENSATION', [-2, 45, 43], (2 * GRAMS_PER_POINT_INCH) / 29, 1e-12, 'a tip plug 2 in short: lever 29 in'],
  ['COMPENSATION', [BLANK, 45], 0, 0, 'nothing moved'],
  ['COUNTERWEIGHT', [1], 3.8, 0.05, '3.8 g a point at 1 in (derived)'],
  ['COUNTERWEIGHT', [2, BLANK], (2 * GRAMS_PER_POINT_INCH) / 13, 1e-12, 'two points over a lever of 13 in'],
  ['COUNTERWEIGHT', [1, 4], GRAMS_PER_POINT_INCH / 10, 1e-12, 'one point over a lever of 10 in'],
  ['TOPOINTS', ['D3'], 33, 0, 'ten points a letter from A0'],
  ['TOPOINTS', ['d 3,5'], 33.5, 1e-12, 'ten points a letter from A0'],
  ['OUTSIDEDIAMETER', [0.9, 0.58, 0.6], 0.913, 0.00005, 'rubber keeps its volume: √(.81 − .3364 + .36) (derived)'],
  ['OUTSIDEDIAMETER', [0.9, 0.58, 0.6, BLANK, BLANK, 1], 0.92, 1e-12, 'D. Eagar, "Grip Sizing", 2009: .900 → .920'],
  ['OUTSIDEDIAMETER', [0.9, 0.58, 0.58, 2, 1, 'Additive'], 0.92, 1e-12, 'two layers add .020: Eagar 2009'],
  [
    'OUTSIDEDIAMETER',
    [0.9, 0.6, 0.6, 0, 11.25 / 10.5],
    0.8832,
    0.00005,
    'stretched ¾ in over 10.5: √(.45/1.0714 + .36)',
  ],
  ['TAPELAYERS', [0.9, 0.6, 0.6, 0.92, 1], 2, 0, '.010 a layer, Eagar 2009'],
  ['TAPELAYERS', [0.9, 0.62, 0.58, 0.9, 1], 4, 0, 'a .620 core on .580 is filled by four layers (derived)'],
  ['TAPELAYERS', [0.9, 0.6, 0.6, 0.9, BLANK], 0, 0, 'already there'],
  ['INERTIACHANGE', [22, 355 / MM_PER_INCH], 27.7, 0.05, '22 g at 355 mm: 0.022 × 35.5² (derived)'],
  ['INERTIACHANGE', [10, BLANK], 0, 0, 'at the axis'],
];

const readings: [id: string, args: unknown[], expected: string, source: string][] = [
  ['SWINGWEIGHT', [460, 27.21], 'D0.5', 'posted D0.6 ± 0.15'],
  ['SWINGWEIGHT', [438, 27.66], 'C8.6', 'posted C8.7 ± 0.15'],
  ['SWINGWEIGHT', [418, 28.11], 'C6.9', 'posted C7.0 ± 0.15'],
  ['TOREADING', [39.96], 'E0.0', 'rounded before the letter is chosen'],
  ['TOREADING', [39.96, 2], 'D9.96', 'two decimals'],
  ['TOREADING', [BLANK], 'A0.0', 'points 0 are A0'],
  ['SHIFTREADING', ['D3', -2.568], 'D0.4', 'grip 50 → 63 g on a D3 club: D0.5 ± 0.2 (practice, no source)'],
  ['SHIFTREADING', ['C9.5', 1], 'D0.5', 'a letter is ten points'],
  ['SHIFTREADING', ['D2', BLANK], 'D2.0', 'nothing moved'],
  ['SHIFTREADING', ['D2', 0.25, 2], 'D2.25', 'two decimals'],
  ['FITTEDREADING', ['E4', 50, BLANK], 'D4.1', '44 − 50 × 9.8 / 49.61'],
  ['FITTEDREADING', ['E4', 50, 2, BLANK, BLANK, BLANK, BLANK, BLANK], 'D3.5', '34.12 − 2 × 1.761 × 8.75 / 49.61'],
  ['FITTEDREADING', ['E4', 50, 2, 4.2, 2, 1.8], 'D3.1', '34.12 − 5.8 × 8.75 / 49.61 = 33.10'],
  ['FITTEDREADING', ['E4', 50, 0, BLANK, BLANK, BLANK, 0.125, 320], 'D4.9', '34.12 + 320 × 0.125 / 49.61 = 34.93'],
  ['RULECHECK', [1, 10.5, 45, BLANK], 'OK', 'within the Equipment Rules of 2019'],
  ['RULECHECK', [1, 10.5, 48.5], 'Club 48.50 in, over 48 in', 'Equipment Rules 2019: at most 48 in'],
  ['RULECHECK', [1, 10.5, 48.5, 'putter'], 'OK', 'except putters'],
  [
    'RULECHECK',
    [1.8, 6, 17, 'Putter'],
    'Grip 1.800 in thick, over 1.75 in; Grip 6.00 in long, under 7 in; Club 17.00 in, under 18 in',
    'the other limits hold for putters too',
  ],
];

describe('a number', () => {
  test.each(numbers)('%s of %j is %d ± %d: %s', (id, args, expected, within) => {
    for (const value of underBoth(id, args)) expect(Math.abs(Number(value) - expected)).toBeLessThanOrEqual(within);
  });
});

describe('a text', () => {
  test.each(readings)('%s of %j is %s: %s', (id, args, expected) => {
    expect(underBoth(id, args)).toEqual([expected, expected]);
  });

  test('decimals tell 0 from blank', () => {
    expect(call('TOREADING', [32.4, 0])).toBe('D2');
    expect(call('TOREADING', [32.4, null])).toBe('D2.4');
    expect(call('SHIFTREADING', ['D2', 0.4, 0])).toBe('D2');
    expect(call('SHIFTREADING', ['D2', 0.4, ''])).toBe('D2.4');
  });
});

const reading = 'Give a letter A to G and a number, such as D2.5.';
const refused: [id: string, args: unknown[], sentence: string][] = [
  ['TAPEGRAMS', ['long'], '#VALUE! tapedInches is “long”, not a number. Give 3 to 24 in.'],
  ['TAPEGRAMS', [10, 9], '#VALUE! stripInches is 9. Give 0.25 to 4 in.'],
  ['TAPEGRAMS', [10, 2, -130], '#VALUE! gsm is −130. Give 40 to 600 g/m².'],
  ['GRIPMASS', [500, 0], '#VALUE! gripGrams is 500. Give 15 to 220 g.'],
  ['GRIPMASS', [50, 1.5], '#VALUE! layers is 1.5. Give a whole number, 0 to 12 layers.'],
  ['GRIPMASS', [50], '#VALUE! layers is blank. Give 0 to 12 layers.'],
  ['GRIPMASS', [50, 1, 25], '#VALUE! layerGrams is 25. Give 0.1 to 20 g.'],
  ['MASSPOINTS', ['5 g', 4], '#VALUE! grams is “5 g”, not a number. Give −1000 to 1000 g.'],
  ['MASSPOINTS', [5, 61], '#VALUE! positionInches is 61. Give 0 to 60 in.'],
  ['BALANCECHANGE', [true, 50], '#VALUE! oldGripGrams is TRUE, not a number. Give 15 to 220 g.'],
  ['BALANCECHANGE', [50, NaN], '#VALUE! newGripGrams is “NaN”, not a number. Give 15 to 220 g.'],
  ['BALANCECHANGE', [50, 50, -1], '#VALUE! oldLayers is −1. Give 0 to 12 layers.'],
  ['BALANCECHANGE', [50, 50, 0, 13], '#VALUE! newLayers is 13. Give 0 to 12 layers.'],
  ['BALANCECHANGE', [50, 50, 0, 0, 1], '#VALUE! oldBalanceInches is 1. Give 1.5 to 12 in.'],
  ['BALANCECHANGE', [50, 50, 0, 0, 4, 13], '#VALUE! newBalanceInches is 13. Give 1.5 to 12 in.'],
  ['BALANCECHANGE', [50, 50, 0, 0, 4, 4, 'x'], '#VALUE! layerGrams is “x”, not a number. Give 0.1 to 20 g.'],
  ['BALANCECHANGE', [50, 50, 0, 0, 4, 4, 2, 30], '#VALUE! tapedInches is 30. Give 3 to 24 in.'],
  ['LENGTHCHANGE', [50, 0.5], '#VALUE! bodyGrams is 50. Give 100 to 900 g.'],
  ['LENGTHCHANGE', [300, 12], '#VALUE! addedInches is 12. Give −6 to 6 in.'],
  ['LENGTHCHANGE', [300, 1, 90], '#VALUE! plugGrams is 90. Give −40 to 60 g.'],
  ['LENGTHCHANGE', [300, 1, 6, -1], '#VALUE! plugInches is −1. Give 0 to 60 in.'],
  ['COMPENSATION', [200, 45], '#VALUE! changePoints is 200. Give −150 to 150 points.'],
  ['COMPENSATION', [1, 12], '#VALUE! clubInches is 12. Give 18 to 52 in.'],
  [
    'COMPENSATION',
    [1, 45, 14],
    '#N/A weightInches is 14: at the fulcrum (14 in) no mass changes the reading. Give a place nearer the head or the butt.',
  ],
  [
    'COUNTERWEIGHT',
    [1, 14.2],
    '#N/A weightInches is 14.2: at the fulcrum (14 in) no mass changes the reading. Give a place nearer the head or the butt.',
  ],
  ['SWINGWEIGHT', [50, 27], '#VALUE! totalGrams is 50. Give 150 to 1000 g.'],
  ['SWINGWEIGHT', [460, 13], '#VALUE! balanceInches is 13. Give 14 to 45 in.'],
  // 270 g × 4.6 in / 49.61 − 92 = −67.0: the trade notes' junior club.
  [
    'SWINGWEIGHT',
    [270, 18.6],
    '#N/A The result is −67.0 points from A0, off the scale (A0 to G9.9). Work with the points.',
  ],
  ['TOPOINTS', ['H1'], `#VALUE! reading is “H1”, which is not a reading. ${reading}`],
  ['TOPOINTS', [BLANK], `#VALUE! reading is blank. ${reading}`],
  ['TOREADING', ['D2'], '#VALUE! points is “D2”, not a number. Give −150 to 150 points.'],
  ['TOREADING', [70], '#N/A The result is 70.0 points from A0, off the scale (A0 to G9.9). Work with the points.'],
  ['TOREADING', [30, 7], '#VALUE! decimals is 7. Give 0 to 4 decimals.'],
  ['SHIFTREADING', [BLANK, 1], `#VALUE! reading is blank. ${reading}`],
  [
    'SHIFTREADING',
    ['G9', 1],
    '#N/A The result is 70.0 points from A0, off the scale (A0 to G9.9). Work with the points.',
  ],
  ['FITTEDREADING', [BLANK, 50, 0], `#VALUE! bareReading is blank. ${reading}`],
  ['FITTEDREADING', ['E4', 5, 0], '#VALUE! gripGrams is 5. Give 15 to 220 g.'],
  ['FITTEDREADING', ['E4', 50, 0, 13], '#VALUE! gripBalanceInches is 13. Give 1.5 to 12 in.'],
  ['FITTEDREADING', ['E4', 50, 0, 4, 1.8, 'some'], '#VALUE! twoWayGrams is “some”, not a number. Give 0.1 to 20 g.'],
  ['FITTEDREADING', ['E4', 50, 0, 4, 1.8, 1.8, 2], '#VALUE! capInches is 2. Give 0 to 1 in.'],
  ['FITTEDREADING', ['E4', 50, 0, 4, 1.8, 1.8, 0.1], '#VALUE! bareGrams is blank. Give 100 to 900 g.'],
  [
    'OUTSIDEDIAMETER',
    [0.9, 0.62, 0.58],
    '#N/A coreInches .620 is larger than the butt with its tape: the grip would turn. 4 layers in all fill it.',
  ],
  [
    'OUTSIDEDIAMETER',
    [0.9, 0.62, 0.58, 3],
    '#N/A coreInches .620 is larger than the butt with its tape: the grip would turn. 4 layers in all fill it.',
  ],
  ['OUTSIDEDIAMETER', [23, 0.6, 0.6], '#VALUE! gripInches is 23. Give 0.6 to 2.5 in.'],
  ['OUTSIDEDIAMETER', [0.9, 15, 0.6], '#VALUE! coreInches is 15. Give 0.5 to 0.75 in.'],
  ['OUTSIDEDIAMETER', [0.9, 0.6, 15], '#VALUE! buttInches is 15. Give 0.45 to 0.75 in.'],
  ['OUTSIDEDIAMETER', [0.9, 0.6, 0.6, 0, 2], '#VALUE! stretch is 2. Give 0.8 to 1.3 times its length.'],
  [
    'OUTSIDEDIAMETER',
    [0.9, 0.6, 0.6, 0, 1, 'both'],
    '#VALUE! growth is “both”. Give 1 or Additive, or blank or By volume.',
  ],
  [
    'TAPELAYERS',
    [0.9, 0.6, 0.6, 0.88],
    '#N/A Even with 0 layers the grip measures .900, over the target .880. Choose a smaller grip.',
  ],
  [
    'TAPELAYERS',
    [0.9, 0.62, 0.58, 0.85, 1],
    '#N/A Even with 4 layers the grip measures .900, over the target .850. Choose a smaller grip.',
  ],
  ['TAPELAYERS', [0.9, 0.6, 0.6, 1.2, 1], '#N/A 1.200 in would need more than 12 layers. Choose a larger grip.'],
  ['INERTIACHANGE', [2000, 40], '#VALUE! grams is 2000. Give −1000 to 1000 g.'],
  ['RULECHECK', [1, 10.5, 3], '#VALUE! clubInches is 3. Give 5 to 100 in.'],
  ['RULECHECK', [1, 1, 45], '#VALUE! gripLengthInches is 1. Give 3 to 24 in.'],
  [
    'RULECHECK',
    [1, 10.5, 45, 'spoon'],
    '#VALUE! kind is “spoon”. Give Driver, Wood, Hybrid, Iron, Wedge, Putter, Junior.',
  ],
];

describe('a refusal', () => {
  test.each(refused)('%s of %j', (id, args, sentence) => {
    for (const blank of [null, 0] as const) {
      const cells = args.map((each) => (each === BLANK ? blank : each));
      const { code, message } = refusal(() => call(id, cells));
      expect(`${code} ${message}`).toBe(sentence);
    }
  });

  test('a needed cell that is blank is #VALUE! on every platform, and says which', () => {
    for (const blank of [null, 0] as const) {
      const { code, message } = refusal(() => call('TAPELAYERS', [0.9, 0.6, 0.6, blank]));
      expect(code).toBe('#VALUE!');
      expect(message).toMatch(/^targetInches is (blank|0)\. Give 0\.6 to 2\.5 in\.$/);
    }
  });

  test('Excel’s own error class is used where there is one', () => {
    class HostError extends Error {
      constructor(
        readonly code: string,
        message: string,
      ) {
        super(message);
      }
    }
    const host = globalThis as { CustomFunctions?: unknown };
    host.CustomFunctions = { Error: HostError };
    try {
      expect(() => call('GRIPMASS', [500, 0])).toThrow(HostError);
      expect(refusal(() => call('GRIPMASS', [500, 0]))).toEqual({
        code: '#VALUE!',
        message: 'gripGrams is 500. Give 15 to 220 g.',
      });
    } finally {
      delete host.CustomFunctions;
    }
  });
});

test('what COMPENSATION says brings the reading back', () => {
  const change = call('BALANCECHANGE', [50, 63]) as number;
  const grams = call('COMPENSATION', [change, 45]);
  expect((call('MASSPOINTS', [grams, 45]) as number) + change).toBeCloseTo(0, 12);
});
