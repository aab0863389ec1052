import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serve, divided } from '../../../src/core/choose/serve';
import { shortageIn } from '../../../src/core/choose/shortage';
import { assign } from '../../../src/workbook/assignment';

const subsets = (count: number): number[][] =>
  Array.from({ length: 2 ** count }, (_, bits) =>
    Array.from({ length: count }, (__, at) => at).filter((at) => bits & (1 << at)),
  );

/** What clubs can take of five items, and how many there are of each; small counts, so that some are short. */
const someTakes = fc.record({
  takes: fc.array(fc.subarray([0, 1, 2, 3, 4], { minLength: 1 }), { minLength: 1, maxLength: 7 }),
  onHand: fc.array(fc.option(fc.integer({ min: 0, max: 2 }), { nil: undefined, freq: 8 }), {
    minLength: 5,
    maxLength: 5,
  }),
});
type Some = { takes: number[][]; onHand: (number | undefined)[] };

function served({ takes, onHand }: Some) {
  const clubs = takes.map((_, at) => at);
  const cost = (club: number, item: number) => (takes[club]!.includes(item) ? 1n : undefined);
  return serve(clubs, { items: [0, 1, 2, 3, 4], onHand: (item) => onHand[item], cost }, assign);
}

/** The size of the smallest set of items that has more clubs depending on it than pieces, by trying all. */
function smallest({ takes, onHand }: Some): number | undefined {
  const short = subsets(5).filter((items) => {
    const needed = takes.filter((each) => each.every((item) => items.includes(item))).length;
    return needed > items.reduce((sum, item) => sum + (onHand[item] ?? Infinity), 0);
  });
  return short.length === 0 ? undefined : Math.min(...short.map((items) => items.length));
}

describe('items that are too few', () => {
  it('are named with the clubs that depend on them', () => {
    // three clubs take only A or B, of which there are two; a fourth could take C as well
    const takes = [[0], [1], [0, 1], [0, 2]];
    expect(shortageIn({ takes, onHand: [1, 1, 5] }, [0, 1, undefined, 2])).toEqual({
      items: [0, 1],
      needed: 3,
      onHand: 2,
    });
  });

  it('are the fewest, though the unserved club reaches more by exchanging', () => {
    // two clubs take only A (one piece); a third has it, and would have to give it up for B, which a fourth needs
    const takes = [[0], [0], [0, 1], [1]];
    const placed = [undefined, undefined, 0, 1];
    expect(shortageIn({ takes, onHand: [1, 1] }, placed)).toEqual({ items: [0], needed: 2, onHand: 1 });
  });

  it('are none where nothing is short or nothing was counted', () => {
    expect(shortageIn({ takes: [[0]], onHand: [1] }, [0])).toBeUndefined();
    expect(shortageIn({ takes: [[0], [0]], onHand: [undefined] }, [0, 0])).toBeUndefined();
  });

  it('are as few as trying all sets finds, and there are some whenever a club is left out', () => {
    fc.assert(
      fc.property(someTakes, (some) => {
        const { placed, unserved } = served(some);
        const short = shortageIn(some, placed);
        expect(short?.items.length).toBe(smallest(some));
        expect(short !== undefined).toBe(unserved > 0);
        if (!short) return;
        const depend = some.takes.filter((each) => each.every((item) => short.items.includes(item)));
        expect(short.needed).toBe(depend.length);
        expect(short.onHand).toBe(short.items.reduce((sum, item) => sum + some.onHand[item]!, 0));
        expect(short.needed).toBeGreaterThan(short.onHand);
      }),
      { numRuns: 300 },
    );
  });

  it('are still named where clubs and items are too many to try all', () => {
    // 41 clubs in a ring: each takes its own item or the next, of 40; one club more than pieces
    const takes = Array.from({ length: 41 }, (_, at) => [at % 40, (at + 1 + (at % 3)) % 40]);
    const onHand = Array.from({ length: 40 }, () => 1);
    const clubs = takes.map((_, at) => at);
    const items = onHand.map((_, at) => at);
    const cost = (club: number, item: number) => (takes[club]!.includes(item) ? 1n : undefined);
    const { placed } = serve(clubs, { items, onHand: () => 1, cost }, assign);
    const short = shortageIn({ takes, onHand }, placed);
    expect(short?.needed).toBeGreaterThan(short?.onHand ?? NaN);
  });
});

describe('clubs served from counted items', () => {
  const costs = fc.record({
    costs: fc.array(
      fc.array(fc.option(fc.integer({ min: 0, max: 9 }), { nil: undefined }), { minLength: 3, maxLength: 3 }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
    onHand: fc.array(fc.option(fc.integer({ min: 0, max: 2 }), { nil: undefined }), { minLength: 3, maxLength: 3 }),
  });

  it('as many as can be and at least cost, as trying all finds', () => {
    fc.assert(
      fc.property(costs, ({ costs: all, onHand }) => {
        const clubs = all.map((_, at) => at);
        const cost = (club: number, item: number) =>
          all[club]![item] === undefined ? undefined : BigInt(all[club]![item]!);
        const found = serve(clubs, { items: [0, 1, 2], onHand: (item) => onHand[item], cost }, assign);
        let best = { unserved: Infinity, cost: Infinity };
        const go = (club: number, used: readonly number[], unserved: number, sum: number): void => {
          if (club === all.length) {
            if (unserved < best.unserved || (unserved === best.unserved && sum < best.cost))
              best = { unserved, cost: sum };
            return;
          }
          go(club + 1, used, unserved + 1, sum);
          all[club]!.forEach((own, item) => {
            if (own === undefined || used[item]! >= (onHand[item] ?? Infinity)) return;
            go(
              club + 1,
              used.map((count, at) => count + (at === item ? 1 : 0)),
              unserved,
              sum + own,
            );
          });
        };
        go(0, [0, 0, 0], 0, 0);
        expect({ unserved: found.unserved, cost: Number(found.cost) }).toEqual(best);
        const taken = found.placed.filter((item) => item !== undefined);
        expect(taken).toHaveLength(all.length - best.unserved);
        for (const item of [0, 1, 2]) {
          expect(taken.filter((each) => each === item).length).toBeLessThanOrEqual(onHand[item] ?? Infinity);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('groups divided among sizes', () => {
  it('at least cost, as trying all finds', () => {
    const some = fc.array(
      fc.array(fc.option(fc.integer({ min: 0, max: 20 }), { nil: undefined }), { minLength: 8, maxLength: 8 }),
      {
        minLength: 1,
        maxLength: 4,
      },
    );
    fc.assert(
      fc.property(some, (costs) => {
        const costOf = (groups: number, size: number) =>
          costs[size]![groups] === undefined ? undefined : BigInt(costs[size]![groups]!);
        const found = divided(3, costs.length, costOf);
        let best: number | undefined;
        for (let code = 0; code < costs.length ** 3; code += 1) {
          const sizes = [0, 1, 2].map((group) => Math.floor(code / costs.length ** group) % costs.length);
          const blocks = costs.map((_, size) =>
            sizes.reduce((bits, own, group) => bits | (own === size ? 1 << group : 0), 0),
          );
          const sums = blocks.map((groups, size) => (groups === 0 ? 0 : costs[size]![groups]));
          if (sums.some((sum) => sum === undefined)) continue;
          const sum = sums.reduce((total: number, each) => total + each!, 0);
          if (best === undefined || sum < best) best = sum;
        }
        expect(found && Number(found.cost)).toBe(best);
        if (!found) return;
        expect(found.blocks.reduce((bits, { groups }) => bits + groups, 0)).toBe(7);
        expect(found.blocks.reduce((sum, { groups, size }) => sum + costs[size]![groups]!, 0)).toBe(best);
      }),
      { numRuns: 300 },
    );
  });
});
