import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupsOf } from '../../../src/core/choose/models';
import { packing } from '../../../src/core/choose/options';
import { clubsOf } from './sets';

describe('clubs that have one size together', () => {
  const kinds = ['driver', 'iron', 'hybrid', 'wedge', 'wood', 'putter', 'junior', undefined, 'iron'] as const;
  const clubs = clubsOf(...kinds.map((kind) => ({ kind })));

  it('by group: woods, irons, wedges, putters, and what is none of these', () => {
    expect(groupsOf(clubs, 'byGroup')).toEqual([[0, 2, 4], [1, 8], [3], [5], [6, 7]]);
  });

  it('else all', () => {
    expect(groupsOf(clubs, 'never')).toEqual([kinds.map((_, at) => at)]);
    expect(groupsOf(clubs, 'byClub')).toEqual([kinds.map((_, at) => at)]);
  });
});

describe('costs as one whole number', () => {
  it('sums compare as sums of each cost do, the first that differs deciding', () => {
    const costs = fc.tuple(fc.nat(3), fc.nat(5), fc.nat(1000));
    const three = fc.tuple(costs, costs, costs);
    fc.assert(
      fc.property(three, three, (one, other) => {
        const pack = packing([...one, ...other], 3);
        const packed = (all: typeof one): bigint => all.reduce((sum, each) => sum + pack(each), 0n);
        const sums = (all: typeof one): number[] =>
          [0, 1, 2].map((at) => all.reduce((sum, each) => sum + each[at]!, 0));
        const [a, b] = [sums(one), sums(other)];
        const first = a.findIndex((sum, at) => sum !== b[at]);
        const order = first < 0 ? 0 : Math.sign(a[first]! - b[first]!);
        const difference = packed(one) - packed(other);
        expect(difference > 0n ? 1 : difference < 0n ? -1 : 0).toBe(order);
      }),
      { numRuns: 1000 },
    );
  });
});
