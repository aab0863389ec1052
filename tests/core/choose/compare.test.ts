import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compareGrips,
  compareSteps,
  COUNTS,
  countOfTried,
  planSet,
  plansOfTried,
  type Club,
  type ClubPlan,
  type Comparison,
  type Grip,
  type PlanInput,
  type ShopSettings,
  type Tried,
} from '../../../src/core/index';
import { P } from '../make';
import { inputOf, someFilters, someInput } from './sets';

const triedOf = (
  clubs: readonly Partial<Club>[],
  stock: readonly Partial<Grip>[],
  settings: Partial<ShopSettings> = {},
): Tried[] => [...compareGrips(inputOf(clubs, stock, settings)).tried];

const only = (
  clubs: readonly Partial<Club>[],
  grip: Partial<Grip> = {},
  settings: Partial<ShopSettings> = {},
): Tried => {
  const [tried] = triedOf(clubs, [grip], settings);
  if (!tried) throw new Error('nothing tried');
  return tried;
};

describe('what a grip does to a set', () => {
  // 60 g for 50 g at 4.2 in: −98 g·in; 52 g: −19.6 g·in
  const clubs: Partial<Club>[] = [{}, { oldGripGrams: 58, lengthInches: 38 }];

  it('changes, clubs out, weight and mass', () => {
    const tried = only(clubs);
    expect(tried.largestChangePoints).toBeCloseTo(-98 / P, 10);
    expect(tried.meanChangePoints).toBeCloseTo((98 + 19.6) / 2 / P, 10);
    expect(tried.clubsOut).toBe(1);
    // 98 g·in over 23 in is 4.26 g, in half grams 4.5
    expect(tried.headGrams).toBe(4.5);
    expect(tried.buttGrams).toBe(0);
    expect(tried.massAddedGrams).toBe(10 + 2 + 4.5);
    expect(tried.clubs).toBe(2);
    expect(tried.fits).toHaveLength(2);
  });

  it('a lighter grip takes weight at the butt, and mass added is negative', () => {
    // 50 − 38 = 12 g at 4.2 in: 117.6 g·in up, at 1 in from the cap 117.6 / 13 = 9.05 g, in whole grams 9
    const tried = only([{}], { gripGrams: 38 });
    expect(tried.largestChangePoints).toBeCloseTo(117.6 / P, 10);
    expect(tried.headGrams).toBe(0);
    expect(tried.buttGrams).toBe(9);
    expect(tried.massAddedGrams).toBe(-12 + 9);
    expect(countOfTried(tried, 'weight')).toBe(9);
    expect(countOfTried(tried, 'massAdded')).toBe(-3);
    expect(countOfTried(tried, 'largestChange')).toBeCloseTo(117.6 / P, 10);
  });

  it('a club at which nothing is held is never out', () => {
    expect(only([{ hold: 'nothing' }]).clubsOut).toBe(0);
    expect(only([{}, {}]).clubsOut).toBe(2);
  });

  it('mass added is not known where an old grip’s is not, nor a change', () => {
    const tried = only([{ oldGripGrams: undefined, oldItem: undefined }]);
    expect(tried.massAddedGrams).toBeUndefined();
    expect(tried.largestChangePoints).toBeUndefined();
    expect(tried.meanChangePoints).toBeUndefined();
    expect(tried.clubsOut).toBe(0);
  });

  it('weight that cannot be reckoned does not count as none', () => {
    const tried = only([{ lengthInches: undefined }]);
    expect(tried.headGrams).toBe(0);
    expect(countOfTried(tried, 'weight')).toBeUndefined();
    expect(countOfTried(only([{ lengthInches: undefined }], { gripGrams: 51 }), 'weight')).toBe(0);
  });
});

describe('layers and size', () => {
  it('come from the target, by both hands alike', () => {
    // additive: .900 on .600; .920 takes two layers, .945 four or five, of which the larger
    const clubs = [{ targetInches: 0.92, layers: 7 }, { targetInches: 0.9451 }, { targetInches: undefined }];
    const tried = only(clubs, {}, { growth: 'additive' });
    expect(tried.fits.map(({ layers }) => layers)).toEqual([2, 5, 0]);
    expect([tried.fewestLayers, tried.mostLayers]).toEqual([0, 5]);
    expect(tried.sizeErrorInches).toBeCloseTo(0.0049, 10);
    expect(tried.meanSizeErrorInches).toBeCloseTo(0.00245, 10);
  });

  it('keep the sign of the club that misses most', () => {
    const clubs = [{ targetInches: 0.88 }, { targetInches: 0.904 }];
    expect(only(clubs, {}, { growth: 'additive' }).sizeErrorInches).toBeCloseTo(0.02, 10);
    const short = [{ targetInches: 1.05 }];
    expect(only(short, {}, { growth: 'additive', mostLayers: 12 }).sizeErrorInches).toBeCloseTo(-0.03, 10);
  });

  it('found from a target are no more than the shop builds up; the club’s own are its own', () => {
    const clubs = [{ targetInches: 0.95 }, { layers: 9 }];
    const tried = only(clubs, {}, { growth: 'additive', mostLayers: 3 });
    expect(tried.fits.map(({ layers }) => layers)).toEqual([3, 9]);
    expect(tried.sizeErrorInches).toBeCloseTo(-0.02, 10); // .900 and three layers
  });

  it('without a target are the club’s own, and never fewer than fill the core', () => {
    // .620 on .600: two layers
    expect(only([{ layers: 1 }, { layers: 3 }, {}], { coreInches: 0.62 }).fits.map(({ layers }) => layers)).toEqual([
      2, 3, 2,
    ]);
    const unsized = only([{ layers: 1, targetInches: 0.95 }], { coreInches: 0.62, upperInches: undefined });
    expect(unsized.fits[0]?.layers).toBe(2);
    expect(unsized.sizeErrorInches).toBeUndefined();
    expect(unsized.meanSizeErrorInches).toBeUndefined();
  });
});

describe('a matched size', () => {
  it('puts on each butt its own core', () => {
    const stock: Partial<Grip>[] = [0.58, 0.62].map((coreInches) => ({
      item: String(coreInches),
      model: 'Alder',
      coreInches,
      price: coreInches === 0.58 ? 4.1 : 4.2,
      onHand: 1,
    }));
    const tried = triedOf([{ buttInches: 0.58 }, { buttInches: 0.62 }, { buttInches: 0.625 }], stock);
    const matched = tried.find(({ candidate }) => candidate.matched);
    expect(matched?.fits.map(({ item }) => item)).toEqual(['0.58', '0.62', '0.62']);
    // 4.1 + 4.2 + 4.2 is 12.499999999999998 in binary
    expect(matched?.price).toBe(12.5);
    expect(matched?.piecesShort).toBe(1);
  });
});

describe('price and stock', () => {
  it('prices are summed exactly; one unknown leaves the sum unknown', () => {
    expect(only([{}, {}, {}], { price: 0.1 }).price).toBe(0.3);
    expect(only([{}], { price: 4.1234 }).price).toBe(4.1234);
    expect(only([{}], { price: undefined }).price).toBeUndefined();
    expect(only([{}], { price: NaN }).price).toBeUndefined();
  });

  it('pieces that stock lacks; unknown where nobody counted', () => {
    expect(only([{}, {}, {}], { onHand: 1 }).piecesShort).toBe(2);
    expect(only([{}], { onHand: 5 }).piecesShort).toBe(0);
    expect(only([{}], { onHand: undefined }).piecesShort).toBeUndefined();
  });
});

describe('a weighed new grip', () => {
  it('counts for its own item, and for no other', () => {
    const clubs = [{ newItem: 'mine', newGripGrams: 50 }];
    const tried = triedOf(clubs, [{ item: 'MINE' }, { item: 'other' }]);
    const input = inputOf(clubs, [{ item: 'MINE' }, { item: 'other' }]);
    const grams = (each: Tried) => plansOfTried(each, input)[0]?.fittedAfterGrams;
    const after = Object.fromEntries(tried.map((each) => [each.candidate.key, grams(each)]));
    expect(after).toEqual({ MINE: 50, other: 60 });
  });
});

describe('which no other beats', () => {
  const clubs = [{}, {}];
  const named = (tried: readonly Tried[]) =>
    tried.map(({ candidate, unbeaten, bestAt }) => [candidate.key, unbeaten, bestAt.join()]);

  it('one that is as good throughout and better once beats; each unbeaten one says at what it is best', () => {
    const tried = triedOf(clubs, [
      { item: 'dear', gripGrams: 50, price: 9 },
      { item: 'cheap', gripGrams: 60, price: 4 },
      { item: 'beaten', gripGrams: 60, price: 9 },
    ]);
    expect(named(tried)).toEqual([
      ['dear', true, 'largestChange,out,weight,massAdded'],
      ['cheap', true, 'price'],
      ['beaten', false, ''],
    ]);
  });

  it('what a shop cannot tell apart is alike', () => {
    // 0.2 g at 9.8 in is 0.04 point; 2 × 0.1 g of mass
    const alike = triedOf(clubs, [
      { item: 'a', gripGrams: 50 },
      { item: 'b', gripGrams: 50.1 },
    ]);
    expect(named(alike)).toEqual([
      ['a', true, ''],
      ['b', true, ''],
    ]);
    const apart = triedOf(clubs, [
      { item: 'a', price: 4.0001 },
      { item: 'b', price: 4 },
    ]);
    expect(named(apart)).toEqual([
      ['b', true, 'price'],
      ['a', false, ''],
    ]);
  });

  it('what is not known counts as worst', () => {
    const tried = triedOf(clubs, [
      { item: 'a', price: undefined },
      { item: 'b', price: 100 },
    ]);
    expect(named(tried)).toEqual([
      ['b', true, 'price'],
      ['a', false, ''],
    ]);
  });
});

/** The definition, word for word: another at least as good on every count, and better on one. */
function isBeaten(input: PlanInput, one: Tried, all: readonly Tried[]): boolean {
  const counts = (tried: Tried): number[] => {
    const rounded = (value: number | undefined, step: number) =>
      value === undefined ? Number.MAX_VALUE : Math.round(value / step);
    const unreckoned = plansOfTried(tried, input).some(
      ({ hold, gapPoints, tolerancePoints, remedy }) =>
        hold !== 'nothing' && gapPoints !== undefined && Math.abs(gapPoints) > tolerancePoints + 1e-9 && !remedy,
    );
    return [
      rounded(tried.sizeErrorInches === undefined ? undefined : Math.abs(tried.sizeErrorInches), 0.001),
      rounded(tried.largestChangePoints === undefined ? undefined : Math.abs(tried.largestChangePoints), 0.1),
      tried.clubsOut,
      rounded(unreckoned ? undefined : tried.headGrams + tried.buttGrams, 0.5),
      rounded(tried.massAddedGrams, 0.5),
      rounded(tried.price, 0.0001),
      tried.piecesShort ?? Number.MAX_VALUE,
    ];
  };
  const own = counts(one);
  return all.some((other) => {
    const theirs = counts(other);
    return theirs.every((count, at) => count <= own[at]!) && theirs.some((count, at) => count < own[at]!);
  });
}

/** Plans without what only a whole set in one go can note. */
function withoutStock(plans: readonly ClubPlan[]) {
  return plans.map((plan) => ({ ...plan, notes: plan.notes.filter(({ note }) => note !== 'stockShort') }));
}

function planSetWith(input: PlanInput, tried: Tried): readonly ClubPlan[] {
  const clubs = input.clubs.map((club, at): Club => {
    const plan = tried.fits[at]!;
    const same = club.newItem?.toLowerCase() === plan.item.toLowerCase();
    const layers = club.targetInches !== undefined && plan.layersSolved ? undefined : plan.layers;
    return { ...club, newItem: plan.item, newGripGrams: same ? club.newGripGrams : undefined, layers };
  });
  return planSet({ ...input, clubs }).clubs;
}

describe('on random sets', () => {
  const compared = (check: (input: PlanInput, comparison: Comparison) => void) =>
    fc.assert(
      fc.property(someInput, someFilters, (input, filters) => check(input, compareGrips(input, filters))),
      { numRuns: 300 },
    );

  it('unbeaten is what the definition says', () => {
    compared((input, { tried }) => {
      for (const each of tried) expect(each.unbeaten).toBe(!isBeaten(input, each, tried));
      if (tried.length > 0) expect(tried[0]?.unbeaten).toBe(true);
    });
  });

  it('plans are what planSet plans with these items', () => {
    compared((input, { tried }) => {
      for (const each of tried)
        expect(withoutStock(plansOfTried(each, input))).toEqual(withoutStock(planSetWith(input, each)));
    });
  });

  it('layers fill the core, and own layers are kept where there is no target', () => {
    compared((input, { tried }) => {
      const { clubs } = input;
      for (const each of tried) {
        plansOfTried(each, input).forEach((plan, at) => {
          expect(plan.notes.map(({ note }) => note)).not.toContain('looseCore');
          expect(plan.notes.map(({ note }) => note)).not.toContain('tightCore');
          if (clubs[at]?.targetInches === undefined) expect(plan.layers).toBeGreaterThanOrEqual(clubs[at]?.layers ?? 0);
        });
      }
    });
  });

  it('unbeaten ones come first, each part by clubs out', () => {
    compared((_, { tried }) => {
      const rank = tried.map(({ unbeaten, clubsOut }) => (unbeaten ? 0 : 1000) + clubsOut);
      expect(rank).toEqual([...rank].sort((a, b) => a - b));
      expect(new Set(tried.map(({ candidate }) => candidate.key)).size).toBe(tried.length);
    });
  });

  it('what is best at a count is not bettered, and not shared by all', () => {
    compared((_, { tried }) => {
      for (const { bestAt } of tried) {
        for (const count of bestAt) expect(tried.some((other) => !other.bestAt.includes(count))).toBe(true);
      }
      for (const count of COUNTS) {
        const best = tried.filter(({ bestAt }) => bestAt.includes(count)).map((each) => countOfTried(each, count));
        const least = Math.min(...tried.map((each) => countOfTried(each, count) ?? Infinity));
        for (const value of best) expect(value).toBeLessThanOrEqual(least + 0.5);
      }
    });
  });

  it('every item is tried, or it is said why not', () => {
    compared(({ stock }, { tried, notTried }) => {
      const seen = [...tried.flatMap(({ candidate }) => candidate.items), ...notTried].map(({ item }) => item);
      expect([...new Set(seen)].sort()).toEqual(stock.map(({ item }) => item).sort());
      expect(new Set(notTried.map(({ item }) => item)).size).toBe(notTried.length);
    });
  });
});

describe('in steps', () => {
  it('tells after each candidate how far it has come', () => {
    const steps = compareSteps(inputOf([{}], [{ item: 'a' }, { item: 'b' }]), {});
    expect(steps.next().value).toEqual({ done: 1, of: 2 });
    expect(steps.next().value).toEqual({ done: 2, of: 2 });
    const last = steps.next();
    expect(last.done).toBe(true);
    expect(last.value).toEqual(compareGrips(inputOf([{}], [{ item: 'a' }, { item: 'b' }])));
  });
});
