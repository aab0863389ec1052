import { describe, expect, it } from 'vitest';
import {
  AIMS,
  COUNTS,
  SIZES_DIFFER,
  type CannotServe,
  type Limit,
  type NotTried,
  type Solution,
} from '../../src/core/index';
import * as words from '../../src/words/choose';
import { aClub, planOne } from '../core/make';

const different = (list: Readonly<Record<string, string>>, keys: readonly string[]): void => {
  expect(Object.keys(list).sort()).toEqual([...keys].sort());
  expect(new Set(Object.values(list)).size).toBe(keys.length);
  for (const word of Object.values(list)) expect(word).toMatch(/^\S.*\S$/);
};

describe('words of choosing', () => {
  it('are there for every count, aim and freedom of size', () => {
    different(words.COUNT_WORDS, COUNTS);
    different(words.COUNT_MEANING, COUNTS);
    different(words.AIM_WORDS, AIMS);
    different(words.AIM_MEANING, AIMS);
    different(words.SIZES_DIFFER_WORDS, SIZES_DIFFER);
    different(words.SIZES_DIFFER_MEANING, SIZES_DIFFER);
  });

  it('say what a grip is best at', () => {
    expect(words.bestAtText([])).toBe('');
    expect(words.bestAtText(['price'])).toBe('best at price');
    expect(words.bestAtText(['sizeError', 'largestChange', 'short'])).toBe('best at size, change and stock');
  });

  it.each([
    [12.5, '12.50'],
    [9, '9.00'],
    [4.125, '4.125'],
    [0.3, '0.30'],
  ])('a price of %d is %s', (price, text) => {
    expect(words.priceText(price)).toBe(text);
  });
});

const NOT_TRIED: Record<NotTried['why'], readonly [NotTried, string]> = {
  noMass: [{ why: 'noMass', item: 'OS-S58' }, 'OS-S58: its mass is not known. Weigh one and give Mass in Stock.'],
  noCore: [{ why: 'noCore', item: 'OS-S58' }, 'OS-S58: its core is not known. Give Core in Stock.'],
  loose: [
    { why: 'loose', item: 'OS-S62', club: '7 iron' },
    'OS-S62: too loose on 7 iron. It takes more layers to fill its core than Most layers in Settings allows.',
  ],
  tight: [{ why: 'tight', item: 'OS-S58', club: '7 iron' }, 'OS-S58: too tight on 7 iron.'],
  otherUse: [{ why: 'otherUse', item: 'PT-1' }, 'PT-1: made for other clubs.'],
  filtered: [{ why: 'filtered', item: 'OS-S58' }, 'OS-S58: left out by what you narrowed down to.'],
};

const LIMITS: Record<Limit['limit'], readonly (readonly [CannotServe, string])[]> = {
  use: [[{ model: 'Ostrel', limit: { limit: 'use', club: 'Putter' } }, 'Putter: Ostrel is not made for it.']],
  lacks: [
    [
      { model: 'Ostrel', limit: { limit: 'lacks', item: 'OS-M60', lacks: 'mass' } },
      'OS-M60: its mass is not known. Weigh one and give Mass in Stock.',
    ],
    [
      { model: 'Ostrel', limit: { limit: 'lacks', item: 'OS-M60', lacks: 'core' } },
      'OS-M60: its core is not known. Give Core in Stock.',
    ],
    [
      { model: 'Ostrel', limit: { limit: 'lacks', item: 'OS-M60', lacks: 'diameter' } },
      'OS-M60: its outside diameter is not known. Gauge one and give it in Stock.',
    ],
  ],
  core: [
    [
      { model: 'Ostrel', limit: { limit: 'core', club: '7 iron', buttInches: 0.65 } },
      '7 iron: no core of Ostrel goes on its .650 butt.',
    ],
  ],
  size: [
    [
      {
        model: 'Ostrel',
        limit: { limit: 'size', club: '7 iron', targetInches: 0.96, nearestInches: 0.975, item: 'OS-M60' },
      },
      '7 iron: no layers bring Ostrel within .010 of .960; OS-M60 comes nearest at .975.',
    ],
    [
      {
        model: 'Ostrel',
        size: 'Midsize',
        limit: { limit: 'size', club: '7 iron', targetInches: 0.96, nearestInches: 0.975, item: 'OS-M60' },
      },
      '7 iron: no layers bring Ostrel Midsize within .010 of .960; OS-M60 comes nearest at .975.',
    ],
  ],
  weight: [
    [
      { model: 'Ostrel', limit: { limit: 'weight', club: '7 iron', grams: 9.5, limitGrams: 8, item: 'OS-M60' } },
      '7 iron: with OS-M60 it takes 9.5 g, over the limit of 8 g.',
    ],
  ],
  stock: [
    [
      { model: 'Ostrel', limit: { limit: 'stock', items: ['OS-M58', 'OS-M60'], needed: 9, onHand: 7 } },
      'Ostrel: 9 clubs can take only OS-M58 or OS-M60, and 7 are on hand.',
    ],
    [
      { model: 'Ostrel', size: 'Midsize', limit: { limit: 'stock', items: ['OS-M58'], needed: 2, onHand: 1 } },
      'Ostrel Midsize: 2 clubs can take only OS-M58, and 1 is on hand.',
    ],
    [
      { model: 'Ostrel', limit: { limit: 'stock', items: ['OS-M58'], needed: 1, onHand: 0 } },
      'Ostrel: 1 club can take only OS-M58, and none is on hand.',
    ],
  ],
  unknown: [
    [
      { model: 'Ostrel', limit: { limit: 'unknown', club: '7 iron' } },
      '7 iron: too little is known of it. Its row in the plan says what is missing.',
    ],
  ],
};

describe('why a grip was not tried', () => {
  it.each(Object.values(NOT_TRIED))('%j: %s', (left, sentence) => {
    expect(words.sayNotTried(left)).toBe(sentence);
  });
});

describe('what keeps a model from a set', () => {
  it.each(Object.values(LIMITS).flat())('%j: %s', (cannot, sentence) => {
    expect(words.sayCannot(cannot, 0.01)).toBe(sentence);
  });
});

describe('what was found', () => {
  const cannot = (...limits: Limit['limit'][]): CannotServe[] => limits.map((limit) => LIMITS[limit][0]![0]);
  const solved = (more: Partial<Extract<Solution, { solved: true }>> = {}): Solution => ({
    solved: true,
    model: 'Ostrel',
    choices: [1, 2].map((row) => ({ row, club: aClub({ row }), item: 'OS-M60', layers: 2, plan: planOne() })),
    weightGrams: 12.5,
    deviationPoints: 8.26,
    price: 84,
    serving: 3,
    cannot: [],
    ...more,
  });

  it.each<[Solution, string]>([
    [
      solved(),
      'Ostrel on 2 clubs: 12.5 g of weight to add, 8.3 points off in all with the grips alone and price of the grips 84.00. Best of 3 models that serve this set.',
    ],
    [
      solved({ weightGrams: 0, price: undefined, serving: 1, cannot: cannot('core') }),
      'Ostrel on 2 clubs: no weight to add and 8.3 points off in all with the grips alone. No other model serves this set. 1 model cannot.',
    ],
    [
      solved({ serving: 1, price: undefined }),
      'Ostrel on 2 clubs: 12.5 g of weight to add and 8.3 points off in all with the grips alone. It is the only model there is.',
    ],
    [{ solved: false, why: 'noClubs', cannot: [] }, 'No clubs to choose for. Give the job some clubs in Clubs.'],
    [
      { solved: false, why: 'noStock', cannot: [] },
      'Nothing to choose from. Put grips for these clubs in Stock or on the shortlist.',
    ],
    [
      { solved: false, why: 'limits', cannot: cannot('stock') },
      'The one model tried cannot serve this set. Order what is short.',
    ],
    [
      { solved: false, why: 'limits', cannot: cannot('stock', 'size', 'size', 'core', 'weight') },
      'None of the 5 models can serve this set. Change the target diameter or the size tolerance, order what is short or put grips of another core on the shortlist.',
    ],
    [
      { solved: false, why: 'limits', cannot: [LIMITS.size[1]![0]] },
      'The one model tried cannot serve this set. Let sizes differ more.',
    ],
  ])('%j', (solution, sentence) => {
    expect(words.solutionText(solution)).toBe(sentence);
  });

  it('has a way on for every limit', () => {
    for (const limit of Object.keys(LIMITS) as Limit['limit'][]) {
      expect(words.solutionText({ solved: false, why: 'limits', cannot: cannot(limit) })).toMatch(
        /set\. [A-Z].{10,}\.$/,
      );
    }
  });
});
