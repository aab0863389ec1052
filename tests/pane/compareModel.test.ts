import { describe, expect, test } from 'vitest';
import {
  compareGrips,
  countOfTried,
  COUNTS,
  DEFAULT_SETTINGS,
  planSet,
  type PlanInput,
  type Tried,
} from '../../src/core/index';
import { aboutText, countText, layersText, sizeErrorText, tiedName } from '../../src/pane/compareText';
import {
  comparePlot,
  filterChoices,
  itemsTicked,
  ordered,
  readFilters,
  takenOfSolved,
} from '../../src/pane/state/compareModel';
import { EMPTY_TOOLS, type CompareForm } from '../../src/pane/state/tools';
import { inputOf } from '../core/choose/sets';
import { aGrip } from '../core/make';
import { clubPlan } from './clubs';
import { demoPane, planOf } from './demoPane';

const filters = (change: Partial<CompareForm>) => readFilters({ ...EMPTY_TOOLS.compare, ...change });

function tried(key: string, change: Partial<Tried> = {}): Tried {
  return {
    candidate: { key, items: key.split(' + ').map((item) => aGrip({ item })), matched: key.includes('+') },
    fits: [],
    weightKnown: true,
    clubs: 3,
    fewestLayers: 0,
    mostLayers: 2,
    sizeErrorInches: -0.004,
    meanSizeErrorInches: 0.002,
    largestChangePoints: -2.5,
    meanChangePoints: 1.2,
    clubsOut: 1,
    headGrams: 6,
    buttGrams: 0,
    massAddedGrams: 12,
    price: 22.5,
    piecesShort: 0,
    unbeaten: true,
    bestAt: [],
    ...change,
  };
}
const UNKNOWN = {
  sizeErrorInches: undefined,
  meanSizeErrorInches: undefined,
  largestChangePoints: undefined,
  meanChangePoints: undefined,
  massAddedGrams: undefined,
  price: undefined,
  piecesShort: undefined,
} as const;
const input = (change: Partial<PlanInput['settings']> = {}): PlanInput => inputOf([], [], change);

describe('narrowing down', () => {
  test('leaves everything in while nothing is chosen', () => {
    expect(filters({})).toEqual({ filters: { onHandOnly: false }, priceFault: false });
  });

  test('takes what is chosen, a price with point or comma', () => {
    const form = { profile: 'ribbed', texture: 'Cord', core: '0.58', mostPrice: ' 8,50 ', onHandOnly: true } as const;
    expect(filters(form)).toEqual({
      filters: { profile: 'ribbed', texture: 'Cord', coreInches: 0.58, mostPrice: 8.5, onHandOnly: true },
      priceFault: false,
    });
    expect(filters({ mostPrice: '0' }).filters.mostPrice).toBe(0);
  });

  test('says of a price that is none, and lets any price pass until then', () => {
    for (const mostPrice of ['cheap', '-1', '8.5.0'])
      expect(filters({ mostPrice })).toEqual({ filters: { onHandOnly: false }, priceFault: true });
    expect(filters({ mostPrice: ' ' }).priceFault).toBe(false);
  });

  test('offers what Stock holds, each once and in order', async () => {
    const { concerned } = planOf(await demoPane('R-201'));
    expect(filterChoices(concerned)).toEqual({
      textures: ['Cord', 'Foam', 'Rubber'],
      cores: [...new Set(concerned.stock.map(({ coreInches }) => coreInches))].filter((core) => core).sort(),
    });
    const twice = inputOf(
      [],
      [{ texture: 'cord' }, { texture: 'Cord', coreInches: undefined }, { texture: undefined }],
    );
    expect(filterChoices(twice).textures).toHaveLength(1);
  });

  test('on the demo’s full bag lets through only what was asked for', async () => {
    const { concerned } = planOf(await demoPane('R-201'));
    const items = (change: Partial<CompareForm>) =>
      compareGrips(concerned, filters(change).filters).tried.flatMap(({ candidate }) => candidate.items);
    expect(items({ texture: 'Cord' }).every(({ texture }) => texture === 'Cord')).toBe(true);
    expect(items({ mostPrice: '5.5' }).every(({ price }) => price !== undefined && price <= 5.5)).toBe(true);
    for (const change of [{ texture: 'Cord' }, { mostPrice: '5.5' }, { profile: 'ribbed' }, { core: '0.6' }] as const) {
      expect(items(change).length).toBeGreaterThan(0);
      expect(items(change).length).toBeLessThan(items({}).length);
    }
  });
});

describe('the order', () => {
  const list = [
    tried('a', { price: 30, largestChangePoints: -4 }),
    tried('b', UNKNOWN),
    tried('c', { price: 10, largestChangePoints: 1 }),
    tried('d', { price: 30, largestChangePoints: 2 }),
  ];
  const keys = (by: CompareForm['orderBy']) => ordered(list, by).map(({ candidate }) => candidate.key);

  test('is the comparison’s own until another one is asked for', () => {
    expect(ordered(list, '')).toBe(list);
  });

  test('puts less first and what is not known last; equals stay as they were', () => {
    expect(keys('price')).toEqual(['c', 'a', 'd', 'b']);
    expect(keys('largestChange')).toEqual(['c', 'd', 'a', 'b']);
    expect(keys('out')).toEqual(['a', 'b', 'c', 'd']);
  });

  test('of several that are not known keeps theirs', () => {
    const unknown = [tried('x', UNKNOWN), tried('y', UNKNOWN), tried('z')];
    expect(ordered(unknown, 'price').map(({ candidate }) => candidate.key)).toEqual(['z', 'x', 'y']);
  });

  test('goes by size where a sign says only which way', () => {
    expect(COUNTS.map((count) => countOfTried(tried('a', { massAddedGrams: -3 }), count))).toEqual([
      0.004, 2.5, 1, 6, -3, 22.5, 0,
    ]);
    const { sizeError, ...rest } = Object.fromEntries(
      COUNTS.map((count) => [count, countOfTried(tried('b', UNKNOWN), count)]),
    );
    expect(sizeError).toBeUndefined();
    expect(rest).toMatchObject({ out: 1, weight: 6 });
  });
});

describe('the plot', () => {
  const { tolerancePoints, sizeToleranceInches } = DEFAULT_SETTINGS;

  test('puts size error in thousandths across and the largest change up, with the tolerances about nothing', () => {
    const plot = comparePlot([tried('a'), tried('b', { unbeaten: false, sizeErrorInches: 0.03 })], input());
    expect(plot).toMatchObject({
      xIs: 'size',
      points: [
        { key: 'a', x: -4, y: -2.5, unbeaten: true },
        { key: 'b', x: 30, y: -2.5, unbeaten: false },
      ],
      within: { x: sizeToleranceInches * 1000, y: tolerancePoints },
    });
  });

  test('shows mass added where no club has a target', () => {
    const plot = comparePlot([tried('a', { sizeErrorInches: undefined }), tried('b', UNKNOWN)], input());
    expect(plot).toMatchObject({ xIs: 'mass', points: [{ key: 'a', x: 12, y: -2.5 }], within: undefined });
  });

  test('has no mark for a grip whose figures are not known, and keeps one whose error is nothing', () => {
    const list = [tried('a', { sizeErrorInches: 0 }), tried('b', { sizeErrorInches: undefined })];
    expect(comparePlot(list, input()).points.map(({ key, x }) => [key, x])).toEqual([['a', 0]]);
  });

  test('reaches over every mark and the tolerances, with room, and its ticks lie on it', () => {
    const lists = [
      [],
      [tried('a', { sizeErrorInches: 0, largestChangePoints: 0 })],
      [tried('a', { sizeErrorInches: -0.08, largestChangePoints: -14 }), tried('b', { largestChangePoints: 3 })],
      [tried('a', { sizeErrorInches: undefined, massAddedGrams: 400 })],
    ];
    for (const list of lists) {
      const { x, y, points, within } = comparePlot(list, input());
      for (const point of points) {
        expect(point.x).toBeGreaterThan(x.low);
        expect(point.x).toBeLessThan(x.high);
        expect(point.y).toBeGreaterThan(y.low);
        expect(point.y).toBeLessThan(y.high);
      }
      for (const [axis, half] of [
        [x, within?.x ?? 0],
        [y, tolerancePoints],
      ] as const) {
        expect(axis.low).toBeLessThan(-half);
        expect(axis.high).toBeGreaterThan(half);
        expect(axis.ticks).toContain(0);
        expect(axis.ticks.every((tick) => tick >= axis.low && tick <= axis.high)).toBe(true);
        expect(axis.ticks.length).toBeGreaterThan(1);
      }
    }
  });
});

test('the shortlist is of items, each once, and of candidates that are still tried', () => {
  const list = [tried('a'), tried('b + c'), tried('c')];
  expect(itemsTicked(['b + c', 'c', 'gone'], list)).toEqual(['b', 'c']);
});

test('no layers on a club with a target are said so that the plan finds none', () => {
  // A grip of .900 with no layers on a .600 butt: at .900 none are found; at .960 nine would be.
  const grip = { item: 'G', model: 'M', coreInches: 0.6, upperInches: 0.9, lowerInches: 0.82 };
  const set = inputOf(
    [
      { buttInches: 0.6, targetInches: 0.9 },
      { buttInches: 0.6, targetInches: 0.96 },
      { buttInches: 0.6, targetInches: undefined },
      { buttInches: 0.6, targetInches: 0.92 },
    ],
    [grip],
  );
  const { clubs } = set;
  const plan = clubPlan({ name: '' });
  const choices = [0, 0, 0, 3].map((layers, at) => ({ row: at + 1, club: clubs[at]!, item: 'G', layers, plan }));
  const solved = {
    solved: true,
    model: 'M',
    choices,
    weightGrams: 0,
    deviationPoints: 0,
    price: 0,
    serving: 1,
    cannot: [],
  } as const;
  expect([...takenOfSolved(solved, set)]).toEqual([
    [1, { newItem: 'G', layers: null }],
    [2, { newItem: 'G', layers: 0, targetDiameter: null }],
    [3, { newItem: 'G', layers: 0 }],
    [4, { newItem: 'G', layers: 3 }],
  ]);
  const found = planSet({ ...set, clubs: clubs.map((club) => ({ ...club, newItem: 'G' })) }).clubs;
  expect(found.map(({ layers }) => layers > 0)).toEqual([false, true, false, true]);
});

describe('figures in words', () => {
  test('items of one size stand side by side, layers as a number or from and to', () => {
    expect(tiedName(tried('TB-S58 + TB-S60'))).toBe('TB-S58, TB-S60');
    expect(layersText(tried('a', { fewestLayers: 1, mostLayers: 1 }))).toBe('1 layer');
    expect(layersText(tried('a'))).toBe('0 to 2 layers');
  });

  test('a size error has its sign, and none where it would be .000', () => {
    expect([0.0124, -0.004, 0.0004, -0.0004, 0].map(sizeErrorText)).toEqual(['+.012', '−.004', '.000', '.000', '.000']);
  });

  test('counts are short in the table and full in the details', () => {
    const both = COUNTS.map((count) => [countText(tried('a'), count, false), countText(tried('a'), count, true)]);
    expect(both).toEqual([
      ['−.004', '−.004 in, on average .002 either way'],
      ['−2.5', '−2.5 pt, on average 1.2 either way'],
      ['1', '1 of 3'],
      ['6.0', '6 g at the heads'],
      ['+12.0 g over the set', '+12.0 g over the set'],
      ['22.50 for 3 grips', '22.50 for 3 grips'],
      ['none', 'none'],
    ]);
  });

  test('weight says where it goes', () => {
    const weights = [
      { headGrams: 6.5, buttGrams: 3 },
      { headGrams: 0, buttGrams: 3 },
      { headGrams: 0, buttGrams: 0 },
    ].map((grams) => countText(tried('a', grams), 'weight', true));
    expect(weights).toEqual(['6.5 g at the heads, 3 g in the butts', '3 g in the butts', 'none']);
    expect(countText(tried('a', { headGrams: 0 }), 'weight', false)).toBe('–');
  });

  test('what is not known is a dash, or said', () => {
    const counts = ['sizeError', 'largestChange', 'massAdded', 'price', 'short'] as const;
    expect(counts.map((count) => countText(tried('a', UNKNOWN), count, false))).toEqual(counts.map(() => '–'));
    expect(counts.map((count) => countText(tried('a', UNKNOWN), count, true))).toEqual([
      'not judged',
      ...counts.slice(1).map(() => 'not known'),
    ]);
    expect(countText(tried('a', { piecesShort: 1 }), 'short', true)).toBe('1 piece');
  });

  test('what a comparison is of names its clubs, targets and holds', () => {
    const set = inputOf([{ targetInches: 0.92 }, { targetInches: 0.9 }, { targetInches: 0.92 }, {}], []);
    const holds = ['asArrived', 'target', 'asArrived', 'nothing'];
    expect(aboutText(set, ({ row }) => holds[row - 1] ?? '')).toBe(
      '4 clubs to .920 or .900 ± .010 in; 2 held as they were, 1 at a target reading, 1 held at nothing.',
    );
    expect(aboutText(inputOf([{}], []), () => 'asArrived')).toBe(
      '1 club, sizes not judged (no target diameter); 1 held as they were.',
    );
  });
});
