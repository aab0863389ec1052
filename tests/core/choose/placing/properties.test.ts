import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeGrips, type Club, type WeighedGrip } from '../../../../src/core/index';
import { assign } from '../../../../src/workbook/assignment';
import { aGrip, valueOf } from '../../make';
import { aSet, squaresOf } from './sets';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const club: fc.Arbitrary<Partial<Club>> = fc.record({
  reading: fc.option(between(20, 45), { nil: undefined }),
  oldGripGrams: fc.option(between(25, 80), { nil: undefined }),
  oldCapInches: fc.constantFrom(0.1, 0.125, 0.14),
  hold: fc.constantFrom('asArrived', 'target', 'nothing', undefined),
  target: fc.option(between(25, 40), { nil: undefined }),
  layers: fc.integer({ min: 0, max: 4 }),
  newItem: fc.constantFrom('G', 'H'),
});
const weighed = fc.array(
  fc.record({ item: fc.constantFrom('G', 'H'), grams: between(20, 90).map((grams) => Math.round(grams * 10) / 10) }),
  { minLength: 1, maxLength: 16 },
);
const trial = fc.record({ clubs: fc.array(club, { minLength: 1, maxLength: 14 }), weighed });

const numbered = (list: readonly Omit<WeighedGrip, 'number'>[]): WeighedGrip[] =>
  list.map((each, at) => ({ number: at + 1, ...each }));

const stock = [aGrip({ item: 'G', gripGrams: 50 }), aGrip({ item: 'H', gripGrams: 55 })];
const setOf = (clubs: readonly Partial<Club>[]) => aSet(clubs, { stock });
const placed = (clubs: readonly Partial<Club>[], list: readonly WeighedGrip[]) => {
  const result = placeGrips(setOf(clubs), list, assign);
  // no club may get what was weighed: that is refused, and nothing to try here
  fc.pre(result.ok || result.issue.code !== 'noRows');
  return valueOf(result);
};

test('a placing puts a grip of the right item on each club as long as there are any, and none twice', () => {
  fc.assert(
    fc.property(trial, ({ clubs, weighed: list }) => {
      const grips = numbered(list);
      const placing = placed(clubs, grips);
      const on = placing.placed.flatMap(({ grip }) => (grip ? [grip] : []));
      expect(new Set(on).size).toBe(on.length);
      expect([...on, ...placing.left].map(({ number }) => number).sort((a, b) => a - b)).toEqual(
        grips.map(({ number }) => number),
      );
      for (const { grip, item } of placing.placed) if (grip) expect(grip.item).toBe(item);
      for (const item of ['G', 'H']) {
        const wearing = clubs.filter(({ newItem }) => newItem === item).length;
        const weighedOf = grips.filter((grip) => grip.item === item).length;
        expect(on.filter((grip) => grip.item === item)).toHaveLength(Math.min(wearing, weighedOf));
      }
    }),
  );
});

test('the clubs are never farther off together than in the order typed', () => {
  fc.assert(
    fc.property(trial, ({ clubs, weighed: list }) => {
      const { delivered, asPlaced } = placed(clubs, numbered(list));
      expect(delivered.rmsGap === undefined).toBe(asPlaced.rmsGap === undefined);
      expect(asPlaced.rmsGap ?? 0).toBeLessThanOrEqual((delivered.rmsGap ?? 0) + 1e-6);
    }),
  );
});

test('the order in which they are typed, and that of the clubs, change nothing in how even the set comes out', () => {
  fc.assert(
    fc.property(trial, fc.infiniteStream(fc.nat()), ({ clubs, weighed: list }, chance) => {
      const shuffled = <T>(all: readonly T[]): T[] =>
        all
          .map((each) => ({ each, key: chance.next().value ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map(({ each }) => each);
      const squares = (of: readonly Partial<Club>[], from: readonly Omit<WeighedGrip, 'number'>[]) =>
        squaresOf(
          setOf(of),
          placed(of, numbered(from)).placed.map(({ grip }) => grip?.grams),
        );
      const usual = squares(clubs, list);
      expect(squares(clubs, shuffled(list))).toBeCloseTo(usual, 6);
      expect(squares(shuffled(clubs), list)).toBeCloseTo(usual, 6);
    }),
    { numRuns: 60 },
  );
});

test('the same grips on the same clubs are placed the same each time', () => {
  fc.assert(
    fc.property(trial, ({ clubs, weighed: list }) => {
      expect(placed(clubs, numbered(list))).toEqual(placed(clubs, numbered(list)));
    }),
    { numRuns: 30 },
  );
});
