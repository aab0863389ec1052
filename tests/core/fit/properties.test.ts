import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_SETTINGS,
  fromSample,
  mistakenUnit,
  RANGES,
  reaching,
  startDiameter,
  type Move,
  type SampleAnswers,
  type SizeGuideRow,
  type StartSize,
} from '../../../src/core/index';
import { aClub, aGrip, planOf, valueOf } from '../make';

const LAYER = 0.01; // .010 a layer: D. Eagar, "Grip Sizing", 2009

const row = (handInches: number, diameterInches: number, fingerInches?: number): SizeGuideRow => ({
  handInches,
  fingerInches,
  diameterInches,
});

const size = (inches: number): StartSize => ({
  inches,
  byHandInches: inches,
  byFingerInches: undefined,
  beyond: [],
  disagree: false,
});

it('every hand in millimetres or centimetres is taken for what it is', () => {
  fc.assert(
    fc.property(fc.double({ min: 5.01, max: 9.99, noNaN: true }), (inches) => {
      for (const [unit, factor] of [
        ['mm', 25.4],
        ['cm', 2.54],
      ] as const) {
        const mistaken = mistakenUnit(inches * factor, RANGES.handInches);
        expect(mistaken?.unit).toBe(unit);
        expect(mistaken?.inches).toBeCloseTo(inches, 9);
      }
    }),
  );
});

describe('for any guide and any hand', () => {
  const step = fc.record({
    hand: fc.integer({ min: 5, max: 60 }),
    size: fc.integer({ min: 0, max: 60 }),
    finger: fc.boolean(),
  });
  const guides = fc.array(step, { minLength: 1, maxLength: 8 }).map((steps) => {
    let hand = 500;
    let size = 800;
    return steps.map((each): SizeGuideRow => {
      hand += each.hand;
      size += each.size;
      return row(hand / 100, size / 1000, each.finger ? (hand * 0.42) / 100 : undefined);
    });
  });
  const lengths = fc.double({ min: 5, max: 10, noNaN: true });
  const fingers = fc.option(fc.double({ min: 2, max: 4.9, noNaN: true }), { nil: undefined });

  it('a longer hand never starts from a smaller size, nor a longer finger', () => {
    fc.assert(
      fc.property(guides, lengths, lengths, fingers, fingers, (guide, a, b, f, g) => {
        const at = (handInches: number, fingerInches?: number) =>
          valueOf(startDiameter(guide, { handInches, fingerInches })).inches;
        expect(at(Math.max(a, b), f)).toBeGreaterThanOrEqual(at(Math.min(a, b), f) - 1e-12);
        if (f === undefined || g === undefined) return;
        expect(at(a, Math.max(f, g))).toBeGreaterThanOrEqual(at(a, Math.min(f, g)) - 1e-12);
      }),
    );
  });

  it('it lies between its neighbours, and at the ends is held', () => {
    fc.assert(
      fc.property(guides, lengths, (guide, handInches) => {
        const { inches, beyond } = valueOf(startDiameter(guide, { handInches }));
        const shorter = guide.filter((each) => each.handInches <= handInches).map((each) => each.diameterInches);
        const longer = guide.filter((each) => each.handInches >= handInches).map((each) => each.diameterInches);
        const end = shorter.length === 0 ? 'below' : longer.length === 0 ? 'above' : undefined;
        expect(beyond).toEqual(end ? [{ measure: 'hand', end }] : []);
        const low = Math.max(...shorter, guide[0]?.diameterInches ?? NaN);
        const high = Math.min(...longer, guide.at(-1)?.diameterInches ?? NaN);
        expect(inches).toBeGreaterThanOrEqual(low - 1e-12);
        expect(inches).toBeLessThanOrEqual(high + 1e-12);
      }),
    );
  });

  it('the size is the mean of what hand and finger say', () => {
    fc.assert(
      fc.property(guides, lengths, fingers, (guide, handInches, fingerInches) => {
        const start = valueOf(startDiameter(guide, { handInches, fingerInches }));
        const said = [start.byHandInches, start.byFingerInches ?? start.byHandInches];
        expect(start.inches).toBeCloseTo(((said[0] ?? NaN) + (said[1] ?? NaN)) / 2, 12);
        expect(start.disagree).toBe(Math.abs((said[0] ?? NaN) - (said[1] ?? NaN)) > 0.01 + 1e-9);
      }),
    );
  });
});

describe('for any answers', () => {
  const answers: fc.Arbitrary<SampleAnswers> = fc.record({
    fingertips: fc.constantFrom(undefined, 'press', 'touch', 'gap'),
    littleFinger: fc.constantFrom(undefined, 'past', 'short'),
    lowerIndex: fc.constantFrom(undefined, 'sits', 'reaches'),
    squeezes: fc.boolean(),
    errLarger: fc.constantFrom(0, 1, 2),
    pain: fc.boolean(),
  });
  const inches = fc.double({ min: 0.7, max: 1.8, noNaN: true });
  const layer = fc.double({ min: 0.002, max: 0.04, noNaN: true }); // twice the thickness that Tape accepts

  it('whole layers add up to the target, and none are taken from under the lower hand that are not there', () => {
    fc.assert(
      fc.property(inches, fc.option(inches, { nil: undefined }), answers, layer, (upper, lower, given, layerInches) => {
        const target = fromSample(size(upper), lower === undefined ? undefined : size(lower), given, layerInches);
        const sum = (hand: Move['hand']): number =>
          target.moves.filter((move) => move.hand === hand).reduce((all, { layers }) => all + layers, 0);
        expect(target.layersMoved).toBe(sum('upper'));
        expect(target.lowerLayers).toBe(sum('lower'));
        expect(target.lowerLayers).toBeGreaterThanOrEqual(0);
        expect(target.moves.every(({ layers }) => Number.isInteger(layers))).toBe(true);
        expect(target.targetInches).toBeCloseTo(upper + target.layersMoved * layerInches, 12);
        expect(target.startInches).toBe(upper);
      }),
    );
  });

  it('every answer that asks for something has its move, told once', () => {
    fc.assert(
      fc.property(answers, (given) => {
        const { moves } = fromSample(size(0.9), undefined, given, LAYER);
        const asks = [
          given.fingertips === 'press' || given.fingertips === 'gap',
          given.littleFinger === 'short',
          given.lowerIndex === 'reaches',
          given.squeezes,
          given.errLarger > 0,
          given.pain,
        ].filter(Boolean).length;
        const contradict = given.fingertips === 'press' && given.littleFinger === 'short';
        expect(moves).toHaveLength(asks - (contradict ? 1 : 0)); // two answers, one sentence
        expect(new Set(moves.map(({ code }) => code)).size).toBe(moves.length);
      }),
    );
  });

  it('pain and squeezing move no size', () => {
    fc.assert(
      fc.property(answers, (given) => {
        const without = fromSample(size(0.9), undefined, { ...given, pain: false, squeezes: false }, LAYER);
        const target = fromSample(size(0.9), undefined, given, LAYER);
        expect(target.targetInches).toBe(without.targetInches);
        expect(target.lowerLayers).toBe(without.lowerLayers);
      }),
    );
  });
});

it('every number is the one that a plan of that grip and target shows', () => {
  const grips = fc.record({
    coreInches: fc.constantFrom(0.58, 0.6, 0.62),
    upperInches: fc.integer({ min: 840, max: 1100 }).map((each) => each / 1000),
    lowerInches: fc.option(fc.constant(0.82), { nil: undefined }),
    lengthInches: fc.option(fc.constantFrom(10, 10.5, 11), { nil: undefined }),
    fittedUpperInches: fc.option(
      fc.integer({ min: 840, max: 1100 }).map((each) => each / 1000),
      { nil: undefined },
    ),
    fittedLayers: fc.constantFrom(undefined, 0, 2),
  });
  fc.assert(
    fc.property(
      fc.array(grips, { minLength: 1, maxLength: 5 }),
      fc.integer({ min: 820, max: 1050 }),
      fc.constantFrom(0.58, 0.59, 0.6, 0.62),
      fc.integer({ min: 0, max: 3 }),
      fc.constantFrom('volume', 'additive'),
      (all, thousandths, buttInches, lowerLayers, growth) => {
        const stock = all.map((each, at) => aGrip({ item: `G${at}`, ...each }));
        const targetInches = thousandths / 1000;
        const settings = { ...DEFAULT_SETTINGS, growth } as const;
        const ask = { targetInches, buttInches, lowerLayers, taperPerInch: 0.01, stock, settings };
        const { found, nearest } = reaching(ask);
        for (const reach of nearest ? [nearest] : found) {
          const club = aClub({
            newItem: reach.grip.item,
            // what comes nearest may want more layers than the shop builds up; so many are then fitted, and no more
            layers: reach.layers === settings.mostLayers ? reach.layers : undefined,
            targetInches,
            buttInches,
            lowerLayers,
            taperPerInch: 0.01,
          });
          const [plan] = planOf([club], { stock, settings }).clubs;
          expect([reach.layers, reach.upper, reach.lower]).toEqual([plan?.layers, plan?.upper, plan?.lower]);
          expect(reach.fittedGrams).toBeCloseTo(plan?.fittedAfterGrams ?? NaN, 9);
        }
        const errors = found.map(({ errorInches }) => Math.abs(errorInches));
        expect(errors.every((error) => error <= settings.sizeToleranceInches + 1e-9)).toBe(true);
        for (const [at, { layers }] of found.entries()) {
          const before = found[at - 1];
          expect(layers).toBeGreaterThanOrEqual(before?.layers ?? 0);
          if (layers === before?.layers) expect(errors[at]).toBeGreaterThan((errors[at - 1] ?? 0) - 0.0005 - 1e-9);
        }
      },
    ),
  );
});
