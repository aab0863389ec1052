import { describe, expect, it } from 'vitest';
import { candidatesOf, type Club, type Filters, type Grip } from '../../../src/core/index';
import { inputOf } from './sets';

const candidatesFor = (clubs: readonly Partial<Club>[], stock: readonly Partial<Grip>[], filters: Filters = {}) => {
  const { candidates, notTried } = candidatesOf(inputOf(clubs, stock), filters);
  return { keys: candidates.map(({ key }) => key), candidates, notTried };
};

/** Two butts, and one model of one size in two cores. */
const twoButts: Partial<Club>[] = [{ buttInches: 0.58 }, { buttInches: 0.62, name: '7 iron' }];
const alder = (core: number, more: Partial<Grip> = {}): Partial<Grip> => ({
  item: `A-${core * 1000}`,
  model: 'Alder',
  size: 'Standard',
  coreInches: core,
  ...more,
});

describe('which grips are tried', () => {
  it('every item alone; of an item twice in the list the first', () => {
    const { keys, notTried } = candidatesFor([{}, {}], [{ item: 'X' }, { item: 'Y' }, { item: 'x', coreInches: 0.5 }]);
    expect(keys).toEqual(['X', 'Y']);
    expect(notTried).toEqual([]);
  });

  it('none for no clubs', () => {
    expect(candidatesFor([], [{}])).toMatchObject({ keys: [], notTried: [] });
  });

  it('a size whose core follows the butts, beside those that fit all alone', () => {
    // .580 would stretch by .040 on .620; .620 takes four layers on .580
    const { keys, candidates, notTried } = candidatesFor(twoButts, [alder(0.58), alder(0.62)]);
    expect(keys).toEqual(['A-620', 'A-580 + A-620']);
    expect(candidates[1]).toMatchObject({ matched: true, items: [{ item: 'A-580' }, { item: 'A-620' }] });
    expect(notTried).toEqual([]);
  });

  it('no such size where one core is nearest to every butt, or sizes, models or profiles differ', () => {
    expect(candidatesFor([{ buttInches: 0.6 }, { buttInches: 0.605 }], [alder(0.6), alder(0.62)]).keys).toHaveLength(2);
    for (const more of [{ size: 'Midsize' }, { model: 'Birch' }, { profile: 'ribbed' as const }]) {
      expect(candidatesFor(twoButts, [alder(0.58), alder(0.62, more)]).keys).toEqual(['A-620']);
    }
  });

  it('sizes that nobody wrote are told apart by what they measure', () => {
    const unnamed = { size: undefined };
    const same = candidatesFor(twoButts, [alder(0.58, unnamed), alder(0.62, unnamed)]);
    expect(same.keys).toContain('A-580 + A-620');
    const other = candidatesFor(twoButts, [alder(0.58, unnamed), alder(0.62, { ...unnamed, upperInches: 0.95 })]);
    expect(other.keys).toEqual(['A-620']);
  });
});

describe('the core that suits a butt', () => {
  const worn = (butt: number, ...cores: number[]): (string | undefined)[] => {
    const clubs = [{ buttInches: 0.56 }, { buttInches: butt }];
    const stock = [alder(0.56), ...cores.map((core) => alder(core))];
    const { candidates } = candidatesFor(clubs, stock);
    return candidates.filter(({ matched }) => matched).flatMap(({ items }) => items.map(({ item }) => item));
  };

  it('is one that needs no tape to be filled rather than a nearer one that does', () => {
    expect(worn(0.598, 0.58, 0.6)).toEqual(['A-560', 'A-580']);
  });

  it('is the nearest of those, and of those that need tape', () => {
    expect(worn(0.6, 0.58, 0.6)).toEqual(['A-560', 'A-600']);
    expect(worn(0.595, 0.62, 0.6)).toEqual(['A-560', 'A-600']);
  });

  it('is never one that is tight', () => {
    expect(worn(0.595, 0.62)).toEqual(['A-560', 'A-620']);
    expect(candidatesFor([{ buttInches: 0.6 }, { buttInches: 0.64 }], [alder(0.58), alder(0.6)]).keys).toEqual([]);
  });

  it('follows most of the others where the butt is not known', () => {
    const clubs = [{ buttInches: 0.58 }, { buttInches: 0.62 }, { buttInches: 0.62 }, { buttInches: undefined }];
    const { keys } = candidatesFor(clubs, [alder(0.58, { onHand: 1 }), alder(0.62, { onHand: 3 })], {
      onHandOnly: true,
    });
    expect(keys).toEqual(['A-580 + A-620']);
    expect(candidatesFor([{ buttInches: undefined }], [alder(0.58), alder(0.62)]).keys).toEqual(['A-580', 'A-620']);
  });
});

describe('why one was not tried', () => {
  it('mass or core not known, too loose, too tight, made for others', () => {
    const clubs = [{ buttInches: 0.6 }, { buttInches: 0.631, name: '7 iron' }, { buttInches: 0.49, name: '9 iron' }];
    const { keys, notTried } = candidatesFor(clubs, [
      { item: 'no mass', gripGrams: undefined },
      { item: 'no core', coreInches: undefined },
      { item: 'tight', coreInches: 0.6 },
      // .630 − .0005 − .490 is fourteen layers of .010
      { item: 'loose', coreInches: 0.63 },
      { item: 'putter', use: 'putters' },
    ]);
    expect(keys).toEqual([]);
    expect(notTried).toEqual([
      { why: 'noMass', item: 'no mass' },
      { why: 'noCore', item: 'no core' },
      { why: 'tight', item: 'tight', club: '7 iron' },
      { why: 'loose', item: 'loose', club: '9 iron' },
      { why: 'otherUse', item: 'putter' },
    ]);
  });

  it('a stretch of exactly .030 is none that is tight', () => {
    expect(candidatesFor([{ buttInches: 0.63 }], [{ coreInches: 0.6 }]).keys).toHaveLength(1);
  });

  it('grips for putters go on putters alone, grips for clubs on all but these', () => {
    const stock: Partial<Grip>[] = [{ item: 'p', use: 'putters' }, { item: 'c', use: 'clubs' }, { item: 'any' }];
    expect(candidatesFor([{ kind: 'putter' }], stock).keys).toEqual(['p', 'any']);
    expect(candidatesFor([{ kind: 'iron' }, { kind: undefined }], stock).keys).toEqual(['c', 'any']);
    const mixed = candidatesFor([{ kind: 'iron' }, { kind: 'putter' }], stock);
    expect(mixed.keys).toEqual(['any']);
    expect(mixed.notTried).toEqual([
      { why: 'otherUse', item: 'p' },
      { why: 'otherUse', item: 'c' },
    ]);
  });
});

describe('filters', () => {
  const stock: Partial<Grip>[] = [
    { item: 'one', profile: 'round', texture: 'Cord', coreInches: 0.58, price: 5, onHand: 2 },
    { item: 'two', profile: 'ribbed', texture: 'rubber', coreInches: 0.6, price: 9, onHand: 1 },
    { item: 'blank', profile: undefined, texture: undefined, coreInches: 0.59, price: undefined, onHand: undefined },
  ];
  const kept = (filters: Filters): string[] => candidatesFor([{}, {}], stock, filters).keys;

  it.each<[Filters, string[]]>([
    [{}, ['one', 'two', 'blank']],
    [{ profile: 'round' }, ['one']],
    [{ texture: 'cord' }, ['one']],
    [{ coreInches: 0.6 }, ['two']],
    [{ mostPrice: 9 }, ['one', 'two']],
    [{ mostPrice: 8.99 }, ['one']],
    [{ items: ['TWO', 'blank'] }, ['two', 'blank']],
    [{ onHandOnly: true }, ['one', 'blank']],
    [{ onHandOnly: false }, ['one', 'two', 'blank']],
    [{ profile: 'ribbed', texture: 'cord' }, []],
  ])('%j lets through %j', (filters, items) => {
    expect(kept(filters)).toEqual(items);
  });

  it('what they keep out is said', () => {
    const { notTried } = candidatesFor([{}, {}], stock, { items: ['one'], onHandOnly: true });
    expect(notTried.map(({ why, item }) => `${item} ${why}`)).toEqual(['two filtered', 'blank filtered']);
  });

  it('stock is asked for what a matched size takes of each item', () => {
    const items = (count: number) => [alder(0.58, { onHand: 1 }), alder(0.62, { onHand: count })];
    expect(candidatesFor(twoButts, items(1), { onHandOnly: true }).keys).toEqual(['A-580 + A-620']);
    expect(candidatesFor(twoButts, items(0), { onHandOnly: true }).keys).toEqual([]);
  });
});
