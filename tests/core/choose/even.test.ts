import { describe, expect, test } from 'vitest';
import {
  DEFAULT_SETTINGS,
  evenCosts,
  evenPlan,
  evenTargets,
  heldEven,
  leastSquaresLine,
  lineAt,
  median,
  planSet,
  robustLine,
  type Club,
  type EvenChoice,
  type EvenGroupPlan,
  type EvenWanted,
} from '../../../src/core/index';
import { aGrip } from '../make';
import { aSet } from './placing/sets';

const all = (choice: EvenChoice, values?: EvenWanted['values']): EvenWanted => ({
  woods: choice,
  irons: choice,
  wedges: choice,
  values,
});

const even = (clubs: readonly Partial<Club>[], wanted: EvenWanted, settings = {}) =>
  evenTargets(aSet(clubs).clubs, wanted, { ...DEFAULT_SETTINGS, ...settings });

const only = (clubs: readonly Partial<Club>[], wanted: EvenWanted, settings = {}): EvenGroupPlan => {
  const { groups } = even(clubs, wanted, settings);
  expect(groups).toHaveLength(1);
  return groups[0] as EvenGroupPlan;
};

const targets = (clubs: readonly Partial<Club>[], wanted: EvenWanted, settings = {}) => [
  ...even(clubs, wanted, settings).targets,
];

const irons = (...readings: readonly (number | undefined)[]): Partial<Club>[] =>
  readings.map((reading, at) => ({ reading, lengthInches: 38 - at / 2 }));

describe('lines', () => {
  const points = [
    { x: 35, y: 30 },
    { x: 36, y: 32 },
    { x: 37, y: 31 },
    { x: 38, y: 33 },
  ];

  test('least squares: slope and intercept by hand', () => {
    // means 36.5 and 31.5; Σ dx dy = 2.25 − 0.25 − 0.25 + 2.25 = 4, Σ dx² = 5
    expect(leastSquaresLine(points)).toEqual({ slope: 0.8, intercept: expect.closeTo(31.5 - 0.8 * 36.5, 12) });
  });

  test('a robust line: the middle of all slopes, and of what they leave', () => {
    // slopes 2, 1/2, 1, −1, 1/2, 2: middle (1/2 + 1) / 2; y − 0.75 x = 3.75, 5, 3.25, 4.5: middle 4.125
    expect(robustLine(points)).toEqual({ slope: 0.75, intercept: 4.125 });
  });

  test('a wild point hardly moves it', () => {
    const wild = [...[34, 35, 36, 37, 38, 39].map((x) => ({ x, y: 100 - 2 * x })), { x: 40, y: 60 }];
    expect(robustLine(wild)).toEqual({ slope: -2, intercept: 100 });
  });

  test('there is none through points of one x, or none at all', () => {
    for (const line of [leastSquaresLine, robustLine]) {
      expect(line([])).toBeUndefined();
      expect(line([{ x: 1, y: 2 }])).toBeUndefined();
      expect(line([{ x: 36, y: 2 }, { x: 36, y: 3 }])).toBeUndefined(); // prettier-ignore
    }
    // pairs of equal x have no slope; the others tell it
    expect(robustLine([{ x: 36, y: 2 }, { x: 36, y: 4 }, { x: 37, y: 3 }])).toEqual({ slope: 0, intercept: 3 }); // prettier-ignore
  });

  test('the middle of an even count is between the two in the middle', () => {
    expect(median([4, 1, 3, 2])).toBe(2.5);
    expect(median([3, 1, 2])).toBe(2);
    expect(median([])).toBeUndefined();
    expect(lineAt({ slope: 2, intercept: 1 }, 3)).toBe(7);
  });
});

describe('groups', () => {
  test('woods, irons and wedges apart; putters and juniors in none', () => {
    const kinds = ['driver', 'wood', 'hybrid', 'iron', 'wedge', 'putter', 'junior'] as const;
    const { groups, targets: found } = even(
      kinds.map((kind, at) => ({ kind, reading: 30 + at })),
      all('own'),
    );
    expect(groups.map(({ group, clubs }) => [group, clubs.map(({ row }) => row)])).toEqual([
      ['woods', [1, 2, 3]],
      ['irons', [4]],
      ['wedges', [5]],
    ]);
    expect([...found.keys()]).toEqual([1, 2, 3, 4, 5]);
  });

  test('each bag for itself', () => {
    const { groups } = even(
      [
        { job: 'A', reading: 30 },
        { job: 'B', reading: 34 },
        { job: 'a', reading: 32 },
      ],
      all('one'),
    );
    expect(groups.map(({ job, one }) => [job, one])).toEqual([
      ['A', 31],
      ['B', 34],
    ]);
  });

  test('each group as it is wanted', () => {
    const clubs: Partial<Club>[] = [
      { kind: 'wood', reading: 30 },
      { kind: 'iron', reading: 31 },
      { kind: 'wedge', reading: 35 },
    ];
    const wanted: EvenWanted = { woods: 'own', irons: 'one', wedges: 'own', values: { irons: 33, woods: 40 } };
    expect(targets(clubs, wanted)).toEqual([[1, 30], [2, 33], [3, 35]]); // prettier-ignore
  });

  test('a club without a kind is told', () => {
    const plan = even([{ kind: undefined, name: 'thing' }, {}], all('one'));
    expect(plan.noKind).toEqual([{ row: 1, name: 'thing' }]);
    expect([...plan.targets.keys()]).toEqual([2]);
  });
});

describe('each its own', () => {
  test('is the reading it arrived with, to a tenth', () => {
    expect(targets(irons(31.04, 32.26, undefined), all('own'))).toEqual([[1, 31], [2, 32.3]]); // prettier-ignore
  });
});

describe('one reading', () => {
  test('is the middle of the readings', () => {
    expect(only(irons(31, 32, 35), all('one')).one).toBe(32);
    expect(targets(irons(31, 32), all('one'))).toEqual([[1, 31.5], [2, 31.5]]); // prettier-ignore
    expect(only(irons(31.03, 31.08), all('one')).one).toBe(31.1);
  });

  test('or the owner’s own', () => {
    expect(targets(irons(31, 32), all('one', { irons: 30.04 }))).toEqual([[1, 30], [2, 30]]); // prettier-ignore
    // even where no club was read: those that were stripped are planned towards it
    const bare = [{ reading: undefined, bareReading: 41, bareGrams: 367 }, { reading: undefined }];
    expect(targets(bare, all('one', { irons: 30 }))).toEqual([[1, 30]]);
  });

  test('needs a reading, or the owner’s', () => {
    const { issue } = only(irons(undefined, undefined), all('one'));
    expect(issue).toMatchObject({ code: 'noRows' });
    expect(targets(irons(undefined), all('one'))).toEqual([]);
  });

  test('a club that was never read has no say and no target; one that was read bare gets one', () => {
    const clubs = [...irons(31, 33), { reading: undefined }, { reading: undefined, bareReading: 41, name: 'PW' }];
    const group = only(clubs, all('one'));
    expect(group.unread).toEqual([
      { row: 3, name: 'club 3', lacks: 'reading' },
      { row: 4, name: 'PW', lacks: 'reading' },
    ]);
    expect(targets(clubs, all('one'))).toEqual([[1, 32], [2, 32], [4, 32]]); // prettier-ignore
  });
});

describe('a line by length', () => {
  test('is fitted by least squares and followed to a tenth', () => {
    // y = 32 + (38 − x): 32, 32.5, 33, and 33.5 read as 33.7
    const clubs = irons(32, 32.5, 33, 33.7);
    const { line } = only(clubs, all('line'));
    // means 37.25 and 32.8; Σ dx dy = −0.6 − 0.075 − 0.05 − 0.675, Σ dx² = 1.25
    expect(line?.slope).toBeCloseTo(-1.4 / 1.25, 10);
    expect(line?.intercept).toBeCloseTo(32.8 + (1.4 / 1.25) * 37.25, 9);
    expect(targets(clubs, all('line'))).toEqual([[1, 32], [2, 32.5], [3, 33.1], [4, 33.6]]); // prettier-ignore
  });

  test('a club that stands out is not fitted, and brought to the line', () => {
    const clubs = irons(32, 32.5, 36, 33.5, 34, 34.5);
    const { line, standsOut } = only(clubs, all('line'));
    expect(line).toEqual({ slope: expect.closeTo(-1, 10), intercept: expect.closeTo(70, 8) });
    expect(standsOut).toEqual([{ row: 3, name: 'club 3', reading: 36, points: expect.closeTo(3, 10) }]);
    expect(targets(clubs, all('line'))[2]).toEqual([3, 33]);
  });

  test('needs three lengths that differ', () => {
    const two = irons(32, 33).concat({ reading: 33, lengthInches: 37.501 });
    const group = only(two, all('line'));
    expect(group).toMatchObject({ line: undefined, issue: { code: 'contradiction' } });
    expect(group.issue?.expected).toContain('at least 3 lengths with a reading, and there are 2');
    expect(targets(two, all('line'))).toEqual([]);
    expect(only([...two, { reading: 33, lengthInches: 36 }], all('line')).issue).toBeUndefined();
  });

  test('and three once those that stand out are left out', () => {
    const { issue, standsOut } = only(irons(32, 36, 32), all('line'));
    expect(standsOut.map(({ row }) => row)).toEqual([2]);
    expect(issue?.expected).toContain('and there are 2 once those that stand out are left out');
  });

  test('a club without length has no say and no target, one read bare gets its own', () => {
    const clubs: Partial<Club>[] = [
      ...irons(32, 32.5, 33),
      { lengthInches: undefined, reading: 33 },
      { lengthInches: 36.5, reading: undefined, bareReading: 42 },
      { lengthInches: 36, reading: undefined },
    ];
    const { unread } = only(clubs, all('line'));
    expect(unread.map(({ row, lacks }) => [row, lacks])).toEqual([[4, 'length'], [5, 'reading'], [6, 'reading']]); // prettier-ignore
    expect(targets(clubs, all('line'))).toEqual([[1, 32], [2, 32.5], [3, 33], [5, 33.5]]); // prettier-ignore
  });
});

describe('standing out', () => {
  const rows = (group: EvenGroupPlan) => group.standsOut.map(({ row }) => row);

  test('is being off the middle by more than the tolerance where the others agree', () => {
    expect(only(irons(32, 32, 32, 32, 34.3), all('one')).standsOut).toEqual([
      { row: 5, name: 'club 5', reading: 34.3, points: expect.closeTo(2.3, 10) },
    ]);
    expect(rows(only(irons(32, 32, 32, 33), all('own')))).toEqual([]);
    expect(rows(only(irons(32, 32, 32, 33.1), all('own')))).toEqual([4]);
    expect(rows(only(irons(32, 32, 32, 33.1), all('own'), { tolerancePoints: 1.5 }))).toEqual([]);
    expect(rows(only([...irons(32, 32, 32), { reading: 32.8, tolerancePoints: 0.5 }], all('own')))).toEqual([4]);
    expect(rows(only(irons(32, 32, 32, 30.9), all('own')))).toEqual([4]);
  });

  test('and by more than three robust standard deviations where they scatter', () => {
    // off the middle 32 by 2, 1, 0, 1 and 2: the middle of that is 1, so 4.4478 is what one may be off
    expect(rows(only(irons(30, 31, 32, 33, 36.4), all('one')))).toEqual([]);
    expect(rows(only(irons(30, 31, 32, 33, 36.5), all('one')))).toEqual([5]);
  });

  test('is told from the group’s middle even where the owner wants another reading', () => {
    expect(rows(only(irons(32, 32, 32), all('one', { irons: 36 })))).toEqual([]);
  });
});

describe('planning towards the targets', () => {
  const clubs: Partial<Club>[] = [
    { kind: 'driver', reading: 33, lengthInches: 45, target: 20 },
    ...irons(31, 32, 34),
    { kind: 'putter', reading: 50, lengthInches: 34 },
    { kind: 'iron', reading: undefined, lengthInches: 36 },
  ];
  const input = aSet(clubs, { stock: [aGrip({ gripGrams: 50 })] });

  test('holds each club at its target, and leaves the others as they are', () => {
    const { even: found, plan } = evenPlan(input, { woods: 'own', irons: 'one', wedges: 'own' });
    expect(plan.clubs.map(({ hold, heldReading }) => [hold, heldReading])).toEqual([
      ['asArrived', 33],
      ['target', 32],
      ['target', 32],
      ['target', 32],
      ['nothing', undefined],
      ['asArrived', undefined],
    ]);
    // the grip changes nothing, so each club misses what it is off
    expect(plan.clubs.slice(1, 4).map(({ gapPoints }) => gapPoints)).toEqual(
      [1, 0, -2].map((gap) => expect.closeTo(gap, 9)),
    );
    expect(heldEven(input.clubs, found)[4]).toBe(input.clubs[4]);
  });

  test('what each keeps as its own is surer held as it was than as a target of as many points', () => {
    const own = evenPlan(input, all('own')).plan.clubs[1];
    const target = planSet({ ...input, clubs: input.clubs.map((club) => ({ ...club, hold: 'target', target: 31 })) })
      .clubs[1];
    expect(own?.spreadPoints).toBeLessThan(target?.spreadPoints ?? 0);
  });

  test('each choice has its cost, side by side', () => {
    const costs = evenCosts(input).filter(({ group }) => group === 'irons');
    expect(costs.map(({ choice }) => choice)).toEqual(['own', 'one', 'line']);
    expect(costs[0]).toMatchObject({ largestGap: expect.closeTo(0, 9), headGrams: 0, buttGrams: 0, tooHeavy: 0 });
    // one reading, D2: a point is missing to the first, within its tolerance; the third is two points heavy: 2 P / 13 in = 7.6 g
    expect(costs[1]).toMatchObject({ largestGap: expect.closeTo(2, 9), headGrams: 0, buttGrams: 8, tooHeavy: 1 });
    // a line from 30.83 to 33.83 by least squares: nothing is farther off than 0.4
    expect(costs[2]?.largestGap).toBeLessThan(0.5);
    expect(costs[2]).toMatchObject({ tooHeavy: 0, overLimit: 0, issue: undefined });
    const [woods] = evenCosts(input).filter(({ group, choice }) => group === 'woods' && choice === 'line');
    expect(woods?.issue).toMatchObject({ code: 'contradiction' });
  });

  test('by the owner’s value, with the weight that takes', () => {
    const [one] = evenCosts(input, { irons: 38 }).filter(({ group, choice }) => group === 'irons' && choice === 'one');
    // 7, 6 and 4 points are missing: × P / (length − 14), in half grams: 14.5, 12.5, 8.5; each over the limit of 8 g
    expect(one).toMatchObject({ largestGap: expect.closeTo(7, 9), headGrams: 35.5, buttGrams: 0, overLimit: 3 });
  });
});
