/**
 * The ± against chance: clubs are drawn around what a plan was told, and weighed up again from their masses alone.
 *
 * Every error is normal and independent, with a standard deviation of its ± over {@link K}. Then the ± of a gap has to be K standard
 * deviations of what the gap truly is. Nothing of the plan's own arithmetic is used for the truth: moments are summed over masses.
 */
import { describe, expect, it } from 'vitest';
import type { Club, Grip, ShopSettings, Verdict } from '../../../src/core/index';
import { aClub, aGrip, P, planOne } from '../make';

/** A ± is taken for two standard deviations; since errors add linearly, another number would do as well. */
const K = 2;
const DRAWS = 40_000;
const SEED = 20_240_917;

/** Points from the zero moment to A0; the fulcrum; 10.5 in × 2 in of 130 and of 133 g/m²; a body and a cap that nobody measured (practice). */
const A0 = 92;
const FULCRUM = 14;
const LAYER = 21 * 0.00064516 * 130;
const STRIP = 21 * 0.00064516 * 133;
const TYPICAL_BODY = 374;
const USUAL_CAP = 0.125;

/** What each thing may be off: the shop's settings at first, and what is practice. */
const PLUS_MINUS = {
  oldGrams: 4,
  oldBalance: 0.1,
  newGrams: 2,
  newBalance: 0.1,
  roll: 0.1,
  cap: 1 / 16,
  length: 1 / 32,
  body: 80,
  reading: 0.2,
};
type PlusMinus = typeof PLUS_MINUS;

interface Situation {
  readonly club?: Partial<Club>;
  readonly grip?: Partial<Grip>;
  readonly settings?: Partial<ShopSettings>;
  readonly off?: Partial<PlusMinus>;
}

/** Evenly spread numbers from a seed (the 32-bit generator with an odd step, multiplied and shifted). */
function even(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normal numbers of standard deviation 1 (Box and Muller). */
function normal(seed: number): () => number {
  const next = even(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** The gap of the finished club as it truly is, if everything is as far off as chance has it. */
function drawnFrom(situation: Situation): { readonly plan: ReturnType<typeof planOne>; gap(z: () => number): number } {
  const club = aClub(situation.club);
  const grip = aGrip(situation.grip);
  const off = { ...PLUS_MINUS, ...situation.off };
  const plan = planOne(situation.club, situation.grip, { settings: situation.settings ?? {} });
  const toldNew = club.newGripGrams ?? grip.gripGrams ?? NaN;
  const moment = (grams: number, inches: number): number => grams * (inches - FULCRUM);

  const gap = (z: () => number): number => {
    const about = (told: number, plusMinus: number): number => told + (plusMinus / K) * z();
    const oldGrams = about(club.oldGripGrams ?? NaN, off.oldGrams);
    const oldBalance = about(club.oldBalanceInches ?? 4.2, off.oldBalance);
    const newGrams = about(toldNew, off.newGrams);
    const newBalance = about(grip.balanceInches ?? 4.2, off.newBalance);
    const oldTape = club.oldLayers * LAYER * about(1, off.roll);
    const newRoll = about(1, off.roll);
    const newTape = (club.layers ?? 0) * LAYER * newRoll;
    const lowerTape = club.lowerLayers * LAYER * (5.5 / 10.5) * newRoll; // from 5 to 10.5 in
    const unmeasured = about(USUAL_CAP, off.cap);
    const oldCap = club.oldCapInches ?? unmeasured;
    // caps of one item are alike, those of two are not
    const newCap = grip.capInches ?? (club.oldItem === grip.item ? unmeasured : about(USUAL_CAP, off.cap));
    const longer = club.lengthChangeInches === 0 ? 0 : about(club.lengthChangeInches, off.length);
    const typical = about(TYPICAL_BODY, off.body);
    const left = club.massGrams === undefined ? typical : club.massGrams - oldGrams - oldTape - STRIP;
    const bodyGrams = club.bareGrams ?? left;

    const arrived = about(club.reading ?? NaN, off.reading);
    const bare = about(club.bareReading ?? NaN, off.reading);
    const sat = moment(oldGrams, oldBalance) + moment(oldTape + STRIP, 5.25);
    /** The body's moment as if no cap stood before it. */
    const body = club.bareReading === undefined ? (arrived + A0) * P - sat - bodyGrams * oldCap : (bare + A0) * P;
    const grown =
      longer -
      club.lengthChangeInches +
      (newCap - (grip.capInches ?? USUAL_CAP)) -
      (oldCap - (club.oldCapInches ?? USUAL_CAP));
    const added = plan.remedy?.grams ?? 0;
    const place = (plan.remedy?.inches ?? 0) + (plan.remedy?.end === 'head' ? grown : 0);
    const finished =
      body +
      bodyGrams * (newCap + longer) +
      moment(newGrams, newBalance) +
      moment(newTape + STRIP, 5.25) +
      moment(lowerTape, 7.75) +
      moment(club.plugGrams, 1) +
      moment(added, place);
    return (club.hold === 'target' ? (club.target ?? NaN) : arrived) - (finished / P - A0);
  };
  return { plan, gap };
}

/** The gap that the plan predicts for the finished club. */
function predicted({ gapPoints, readingAfter, readingGripped }: ReturnType<typeof planOne>): number {
  return (gapPoints ?? NaN) - ((readingAfter ?? NaN) - (readingGripped ?? NaN));
}

/** Mean and K standard deviations of how far the truth lies from the prediction, and how often within the ±. */
function tried(situation: Situation) {
  const { plan, gap } = drawnFrom(situation);
  const z = normal(SEED);
  const expected = predicted(plan);
  const plusMinus = plan.spreadPoints ?? NaN;
  let sum = 0;
  let squares = 0;
  let covered = 0;
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const error = gap(z) - expected;
    sum += error;
    squares += error * error;
    if (Math.abs(error) <= plusMinus) covered += 1;
  }
  const mean = sum / DRAWS;
  const drawn = K * Math.sqrt(squares / DRAWS - mean * mean);
  return { plan, mean, drawn, plusMinus, covered: covered / DRAWS };
}

const target = { hold: 'target', target: 33 } as const;
const stripped = { bareReading: 44, bareGrams: 368 };
const untried = { oldBalance: 0.25, newBalance: 0.25 };

const SITUATIONS: readonly (readonly [string, Situation])[] = [
  ['estimate, as it was', {}],
  ['estimate, at a target', { club: target }],
  [
    'estimate, no balance point tried',
    { club: { oldBalanceInches: undefined }, grip: { balanceInches: undefined }, off: untried },
  ],
  ['weighed, as it was', { club: { oldMassFrom: 'weighed' }, off: { oldGrams: 0.5 } }],
  ['weighed, at a target', { club: { ...target, oldMassFrom: 'weighed' }, off: { oldGrams: 0.5 } }],
  ['alike, as it was', { club: { oldMassFrom: 'alike' }, off: { oldGrams: 2, oldBalance: 0.25 } }],
  ['alike, at a target', { club: { ...target, oldMassFrom: 'alike' }, off: { oldGrams: 2, oldBalance: 0.25 } }],
  ['bare, as it was', { club: stripped }],
  ['bare, at a target', { club: { ...stripped, ...target } }],
  ['the very grip weighed', { club: { ...stripped, newGripGrams: 63 }, off: { newGrams: 0.5 } }],
  ['tape off and on, at both hands', { club: { oldLayers: 5, layers: 4, lowerLayers: 2 } }],
  ['the old cap known, the new not', { grip: { capInches: undefined } }],
  ['the new cap known, the old not', { club: { oldCapInches: undefined } }],
  ['neither cap known', { club: { oldCapInches: undefined }, grip: { capInches: undefined } }],
  [
    'neither cap known, both of one item',
    { club: { oldCapInches: undefined, oldItem: 'G' }, grip: { capInches: undefined } },
  ],
  ['bare, the new cap not known', { club: stripped, grip: { capInches: undefined } }],
  ['an inch longer, weighed whole', { club: { lengthChangeInches: 1, plugGrams: 12, oldLayers: 4 } }],
  ['an inch shorter, weighed whole', { club: { lengthChangeInches: -1, plugGrams: -3 } }],
  ['an inch longer, weighed bare', { club: { ...stripped, lengthChangeInches: 1 } }],
  ['an inch longer, never weighed', { club: { massGrams: undefined, lengthChangeInches: 1 } }],
  ['bare, an inch longer, weighed only whole', { club: { bareReading: 44, lengthChangeInches: 1, oldLayers: 2 } }],
  ['bare and longer, never weighed', { club: { bareReading: 44, massGrams: undefined, lengthChangeInches: 0.5 } }],
  [
    'all at once, with a shop’s own ±',
    {
      club: { ...target, massGrams: undefined, lengthChangeInches: 0.5, layers: 6, lowerLayers: 3, oldLayers: 2 },
      grip: { capInches: undefined, balanceInches: undefined, spreadGrams: undefined },
      settings: {
        oldSpreadGrams: 3,
        newSpreadGrams: 1,
        balanceSpreadInches: 0.4,
        readingSpreadPoints: 0.5,
        tapeSpread: 0.3,
      },
      off: { oldGrams: 3, newGrams: 1, newBalance: 0.4, reading: 0.5, roll: 0.3 },
    },
  ],
];

/** Of 40 000 draws a standard deviation is known to 1/√80 000, 0.35 %; four of those, and as much for what is not linear. */
const SAMPLING = 4 / Math.sqrt(2 * DRAWS);

describe('the ± of a finished club is K standard deviations of what chance makes of it', () => {
  it.each(SITUATIONS)('%s', (_name, situation) => {
    const { mean, drawn, plusMinus, covered } = tried(situation);
    expect(plusMinus).toBeGreaterThan(0.3);
    expect(Math.abs(drawn / plusMinus - 1)).toBeLessThan(2 * SAMPLING);
    // the prediction is in the middle, and two standard deviations hold 95.45 % of a normal distribution
    expect(Math.abs(mean)).toBeLessThan(4 * (plusMinus / K / Math.sqrt(DRAWS)) + 0.002);
    expect(Math.abs(covered - 0.9545)).toBeLessThan(0.006);
  });
});

describe('each part alone', () => {
  const EXACT = { oldSpreadGrams: 0, newSpreadGrams: 0, balanceSpreadInches: 0, readingSpreadPoints: 0, tapeSpread: 0 };
  const NOTHING = Object.fromEntries(Object.keys(PLUS_MINUS).map((key) => [key, 0])) as PlusMinus;
  const taped = { layers: 4, lowerLayers: 2, oldLayers: 3 };
  const weighedBare = { bareGrams: 368 };
  const lowerLayers = 2 * LAYER * (5.5 / 10.5);

  it.each<readonly [string, keyof PlusMinus, Situation, number]>([
    ['old grip’s mass: 4 g over 9.8 in', 'oldGrams', { settings: { oldSpreadGrams: 4 } }, (4 * 9.8) / P],
    ['new grip’s mass: 2 g over 9.8 in', 'newGrams', { settings: { newSpreadGrams: 2 } }, (2 * 9.8) / P],
    [
      'tape: a tenth of either side’s',
      'roll',
      { club: taped, settings: { tapeSpread: 0.1 } },
      Math.hypot(0.1 * 3 * LAYER * 8.75, 0.1 * (4 * LAYER * 8.75 + lowerLayers * 6.25)) / P,
    ],
    ['a cap: 1/16 in of 368 g', 'cap', { club: { ...weighedBare, oldCapInches: undefined } }, 368 / 16 / P],
    ['a length: 1/32 in of 368 g', 'length', { club: { ...weighedBare, lengthChangeInches: 1 } }, 368 / 32 / P],
    ['a body: 80 g moved ⅛ in', 'body', { club: { massGrams: undefined }, grip: { capInches: 0.25 } }, 10 / P],
    ['the reading, held at a target', 'reading', { club: target, settings: { readingSpreadPoints: 0.2 } }, 0.2],
    ['two readings', 'reading', { club: stripped, settings: { readingSpreadPoints: 0.2 } }, 0.2 * Math.SQRT2],
  ])('%s', (_name, key, situation, points) => {
    const { drawn, plusMinus, plan } = tried({
      club: situation.club ?? {},
      grip: { spreadGrams: undefined, ...situation.grip },
      settings: { ...EXACT, ...situation.settings },
      off: { ...NOTHING, [key]: PLUS_MINUS[key] },
    });
    expect(plusMinus).toBeCloseTo(points, 10);
    expect(Object.values(plan.spreadParts ?? {}).filter((part) => part > 0)).toHaveLength(1);
    expect(Math.abs(drawn / points - 1)).toBeLessThan(SAMPLING);
  });

  it('balance points: a tenth of an inch of 50 and of 60 g', () => {
    const settings = { ...EXACT, balanceSpreadInches: 0.25 };
    const off = { ...NOTHING, oldBalance: 0.1, newBalance: 0.1 };
    const { drawn, plan } = tried({ grip: { spreadGrams: undefined }, settings, off });
    expect(plan.spreadParts).toMatchObject({
      oldBalance: expect.closeTo(5 / P, 10),
      newBalance: expect.closeTo(6 / P, 10),
    });
    expect(Math.abs(drawn / (Math.hypot(5, 6) / P) - 1)).toBeLessThan(SAMPLING);
  });
});

describe('the word for it', () => {
  /** How often clubs of one verdict are truly within a tolerance of 1 point, over targets a quarter of a point apart, nothing added. */
  function shares(situation: Situation): Map<Verdict, { readonly least: number; readonly most: number }> {
    const found = new Map<Verdict, { least: number; most: number }>();
    for (let at = 29; at <= 35; at += 0.25) {
      const club = { ...situation.club, hold: 'target', target: at, way: 'nothing' } as const;
      const { plan, gap } = drawnFrom({ ...situation, club, settings: { headWay: 'none', buttWay: 'none' } });
      const z = normal(SEED);
      let within = 0;
      for (let draw = 0; draw < DRAWS / 4; draw += 1) if (Math.abs(gap(z)) <= 1) within += 1;
      const share = within / (DRAWS / 4);
      const { least, most } = found.get(plan.verdict) ?? { least: 1, most: 0 };
      found.set(plan.verdict, { least: Math.min(least, share), most: Math.max(most, share) });
    }
    return found;
  }

  it.each<readonly [string, Situation]>([
    ['estimate', { club: { reading: 34 } }],
    ['weighed', { club: { reading: 34, oldMassFrom: 'weighed' }, off: { oldGrams: 0.5 } }],
    ['bare', { club: stripped }],
  ])(
    '%s: Within holds nearly always, Likely more often than not, Cannot tell less often, Out hardly ever',
    (_name, situation) => {
      const found = shares(situation);
      // a ± that just fits is left on one side in 2.3 % of all draws; one as large as the tolerance itself on both
      expect(found.get('within')?.least).toBeGreaterThan(0.95);
      expect(found.get('likely')?.least).toBeGreaterThan(0.5);
      expect(found.get('cannotTell')?.most).toBeLessThan(0.5);
      expect(found.get('out')?.most).toBeLessThan(0.03);
    },
  );
});
