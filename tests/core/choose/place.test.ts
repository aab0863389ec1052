import { describe, expect, test } from 'vitest';
import { planSet, placeGrips, type Assign, type Club, type PlanInput, type WeighedGrip } from '../../../src/core/index';
import { assign } from '../../../src/workbook/assignment';
import { aGrip, issueOf, P, valueOf } from '../make';
import { aSet, gapOf, grips, leastByTrial, numbers, numbersFrom, squaresOf } from './placing/sets';

const place = (input: PlanInput, weighed: readonly WeighedGrip[]) => valueOf(placeGrips(input, weighed, assign));
const refused = (input: PlanInput, weighed: readonly WeighedGrip[]) => issueOf(placeGrips(input, weighed, assign));

/** A gram of grip at 4.2 in, 9.8 in before the fulcrum, moves the reading by so many points (moments). */
const POINTS_A_GRAM = 9.8 / P;

/** Clubs that read as they did if their new grip weighs what the old one did. */
const weighing = (...grams: readonly number[]): Partial<Club>[] => grams.map((oldGripGrams) => ({ oldGripGrams }));

describe('what the placing rests on', () => {
  const kinds: Readonly<Record<string, Partial<Club>>> = {
    'held as it was, on an estimate': {},
    'held as it was, weighed': { oldMassFrom: 'weighed' },
    'towards a target': { target: 35 },
    'with another cap, longer, and tape': {
      oldCapInches: 0.25,
      lengthChangeInches: 0.5,
      plugGrams: 6,
      layers: 3,
      lowerLayers: 2,
    },
    'read bare': { bareReading: 43, bareGrams: 367, target: 30 },
    'read bare and held as it was': { bareReading: 43, bareGrams: 367 },
    'with a butt weight that leaves': { buttWeightGrams: 12, buttWeightLeaves: true },
    'of a mass nobody knows': { massGrams: undefined, oldCapInches: 0.2 },
  };

  test.each(Object.entries(kinds))('a gap is a straight line in the mass of the grip: a club %s', (_, club) => {
    const input = aSet([club]);
    const light = gapOf(input, 0, 15) ?? NaN;
    const heavy = gapOf(input, 0, 220) ?? NaN;
    for (let grams = 15; grams <= 220; grams += 4.1) {
      const between = light + ((heavy - light) * (grams - 15)) / 205;
      expect(gapOf(input, 0, grams)).toBeCloseTo(between, 9);
    }
    expect((heavy - light) / 205).toBeCloseTo(POINTS_A_GRAM, 9);
  });
});

describe('as many grips as clubs', () => {
  test('each club gets the grip that weighs what its old one did', () => {
    const placed = place(aSet(weighing(48, 50, 52)), grips(52, 48, 50));
    expect(numbers(placed)).toEqual([2, 3, 1]);
    for (const { plan } of placed.placed) expect(plan.gapPoints).toBeCloseTo(0, 9);
    // in the order typed the grips are 4 g heavier, 2 g lighter and 2 g lighter than the old ones
    expect(placed.delivered.largestGap).toBeCloseTo(4 * POINTS_A_GRAM, 9);
    expect(placed.delivered.rmsGap).toBeCloseTo(Math.sqrt((16 + 4 + 4) / 3) * POINTS_A_GRAM, 9);
    expect(placed.delivered.rangePoints).toBeCloseTo(6 * POINTS_A_GRAM, 9);
    expect(placed.asPlaced.largestGap).toBeCloseTo(0, 9);
    expect(placed).toMatchObject({ left: [], unserved: [], odd: [] });
  });

  test('the plan of each club has its own grip, the one before has what Stock says', () => {
    const placed = place(aSet(weighing(48, 52)), grips(53, 47));
    expect(placed.placed.map(({ plan }) => plan.fittedAfterGrams)).toEqual([47, 53]);
    expect(placed.placed.map(({ before }) => before.fittedAfterGrams)).toEqual([50, 50]);
    // weighed, a grip's mass is surer than what Stock says
    expect(placed.placed[0]?.plan.spreadPoints).toBeLessThan(placed.placed[0]?.before.spreadPoints ?? 0);
  });

  test('a mass that a club had from an earlier weighing is passed over', () => {
    const clubs = weighing(48, 52).map((club) => ({ ...club, newGripGrams: 60 }));
    const placed = place(aSet(clubs), grips(53, 47));
    expect(placed.placed.map(({ before }) => before.fittedAfterGrams)).toEqual([50, 50]);
    expect(numbers(placed)).toEqual([2, 1]);
  });

  test('tells the weight that the plans then add', () => {
    // 8 g heavier or lighter than the old grip is 1.58 points, beyond the tolerance of one
    const input = aSet(weighing(48, 56));
    const { delivered, asPlaced } = place(input, grips(56, 48));
    // 8 × 9.8 / (37 − 14) = 3.41 g at the head in steps of 0.5 g; 8 × 9.8 / (14 − 1) = 6.03 g in the butt in steps of 1 g
    expect(delivered).toMatchObject({ headGrams: 3.5, buttGrams: 6 });
    expect(asPlaced).toMatchObject({ headGrams: 0, buttGrams: 0 });
  });

  test('towards targets, the grips make up for heads that are too heavy', () => {
    // both held at D2 (32); the second reads three points more
    const input = aSet([{ target: 32 }, { target: 32, reading: 35 }]);
    const placed = place(input, grips(60, 50));
    expect(numbers(placed)).toEqual([2, 1]);
    expect(placed.placed.map(({ plan }) => plan.gapPoints)).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(10 * POINTS_A_GRAM - 3, 9),
    ]);
  });

  test.each([2, 3, 4, 5, 6])('no other placing has a smaller sum of squares: %i clubs, all tried', (count) => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const { input, weighed } = randomSet(count, count, seed * 1000 + count);
      const placed = place(input, weighed);
      const least = leastByTrial(input, weighed);
      expect(
        squaresOf(
          input,
          placed.placed.map(({ grip }) => grip?.grams),
        ),
      ).toBeCloseTo(least, 7);
      expect(new Set(numbers(placed)).size).toBe(count);
    }
  });
});

/** Clubs of any basis and hold; some are held at nothing, some have too little known. */
function randomSet(clubs: number, count: number, seed: number): { input: PlanInput; weighed: WeighedGrip[] } {
  const from = numbersFrom(seed);
  const input = aSet(
    Array.from({ length: clubs }, (): Partial<Club> => {
      const target = from(0, 1) < 0.5 ? from(28, 36) : undefined;
      const bare = from(0, 1) < 0.2 ? { bareReading: from(40, 44), bareGrams: from(360, 380) } : {};
      return { reading: from(28, 36), oldGripGrams: from(44, 56), oldCapInches: from(0.1, 0.15), target, ...bare };
    }),
  );
  return { input, weighed: grips(...Array.from({ length: count }, () => Math.round(from(450, 550)) / 10)) };
}

describe('more grips than clubs', () => {
  test('the best ones are chosen and the others listed as left, as typed', () => {
    const placed = place(aSet(weighing(50, 51)), grips(58, 51, 42, 50));
    expect(numbers(placed)).toEqual([4, 2]);
    expect(placed.left.map(({ number }) => number)).toEqual([1, 3]);
    expect(placed.unserved).toEqual([]);
  });

  test.each([1, 2, 3, 4])('no other choice has a smaller sum of squares: 6 grips on %i clubs, all tried', (count) => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const { input, weighed } = randomSet(count, 6, seed * 100 + count);
      const placed = place(input, weighed);
      expect(
        squaresOf(
          input,
          placed.placed.map(({ grip }) => grip?.grams),
        ),
      ).toBeCloseTo(leastByTrial(input, weighed), 7);
      expect(placed.left).toHaveLength(6 - count);
    }
  });
});

describe('more clubs than grips', () => {
  test('grips go where they help most beside the mass in Stock, and the clubs left without are told', () => {
    // Stock says 50 g: the club that had 56 g gains most by the heavy grip
    const placed = place(aSet(weighing(50, 56, 50)), grips(55));
    expect(numbers(placed)).toEqual([undefined, 1, undefined]);
    expect(placed.unserved).toEqual([1, 3]);
    expect(placed.placed[0]?.plan.fittedAfterGrams).toBe(50);
    // delivered: the grip that was typed first goes on the first club
    expect(placed.delivered.largestGap).toBeCloseTo(6 * POINTS_A_GRAM, 9);
    expect(placed.delivered.rmsGap).toBeCloseTo(Math.sqrt((25 + 36 + 0) / 3) * POINTS_A_GRAM, 9);
    expect(placed.asPlaced.largestGap).toBeCloseTo(1 * POINTS_A_GRAM, 9);
  });

  test.each([1, 2, 3, 4])('no other choice has a smaller sum of squares over the set: %i grips on 6 clubs', (count) => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const { input, weighed } = randomSet(6, count, seed * 10 + count);
      const placed = place(input, weighed);
      expect(
        squaresOf(
          input,
          placed.placed.map(({ grip }) => grip?.grams),
        ),
      ).toBeCloseTo(leastByTrial(input, weighed), 7);
      expect(placed.unserved).toHaveLength(6 - count);
    }
  });

  test('where Stock has no mass, the grips go where they leave the least', () => {
    const input = aSet(weighing(50, 60), { stock: [aGrip({ gripGrams: undefined })] });
    const placed = place(input, grips(59));
    expect(numbers(placed)).toEqual([undefined, 1]);
    expect(placed.placed[0]?.plan.verdict).toBe('unknown');
  });
});

describe('clubs that are held at nothing, or of which too little is known', () => {
  const nothing: Partial<Club> = { hold: 'nothing' };
  const unknown: Partial<Club> = { target: 33, reading: undefined };

  test('get what is left, in the order typed', () => {
    const clubs = [nothing, { oldGripGrams: 52 }, unknown, { oldGripGrams: 48 }];
    const placed = place(aSet(clubs), grips(55, 48, 45, 52));
    expect(numbers(placed)).toEqual([1, 4, 3, 2]);
    expect(placed.asPlaced.largestGap).toBeCloseTo(0, 9);
  });

  test('have theirs in the order of the set as delivered', () => {
    const { delivered } = place(aSet([nothing, { oldGripGrams: 52 }, { oldGripGrams: 48 }]), grips(60, 52, 48));
    expect(delivered.largestGap).toBeCloseTo(0, 9);
  });

  test('go without first where there are not enough', () => {
    const placed = place(aSet([nothing, { oldGripGrams: 52 }, { oldGripGrams: 48 }]), grips(48, 52));
    expect(numbers(placed)).toEqual([undefined, 2, 1]);
    expect(placed.unserved).toEqual([1]);
    // delivered in the order typed, on the same clubs
    expect(placed.delivered.largestGap).toBeCloseTo(4 * POINTS_A_GRAM, 9);
  });

  test('alone have no evenness', () => {
    const placed = place(aSet([nothing, unknown]), grips(50, 51));
    expect(numbers(placed)).toEqual([1, 2]);
    expect(placed.asPlaced).toEqual({
      largestGap: undefined,
      rmsGap: undefined,
      rangePoints: undefined,
      headGrams: 0,
      buttGrams: 0,
    });
  });
});

describe('grips and clubs that are alike', () => {
  /** The same library from the other end: among placings that are equally good it comes upon others. */
  const backwards: Assign = (costs) =>
    assign([...costs].reverse().map((line) => [...line].reverse())).map(([row, column]) => [
      costs.length - 1 - row,
      (costs[0]?.length ?? 0) - 1 - column,
    ]);
  const both = (input: PlanInput, weighed: readonly WeighedGrip[]) => {
    const found = numbers(place(input, weighed));
    expect(numbers(valueOf(placeGrips(input, weighed, backwards)))).toEqual(found);
    return found;
  };

  test('of clubs that gain the same, the first gets the first typed', () => {
    // every pairing costs the same
    const any: Assign = () => [
      [0, 2],
      [1, 0],
      [2, 1],
    ];
    expect(numbers(valueOf(placeGrips(aSet(weighing(50, 50, 50)), grips(52, 48, 50), any)))).toEqual([1, 2, 3]);
  });

  test('whichever of the best placings the library comes upon', () => {
    expect(both(aSet(weighing(52, 48, 52)), grips(50, 50, 50))).toEqual([1, 2, 3]);
    expect(both(aSet(weighing(52, 48)), grips(50, 50, 50))).toEqual([1, 2]);
    expect(both(aSet(weighing(50, 50, 50)), grips(52, 48, 50))).toEqual([1, 2, 3]);
    expect(both(aSet(weighing(54, 54, 54)), grips(52))).toEqual([1, undefined, undefined]);
    expect(both(aSet(weighing(54, 54, 48, 54)), grips(52, 48, 52, 53))).toEqual([1, 3, 2, 4]);
  });

  test('of grips that weigh the same the first typed goes on the first club', () => {
    expect(numbers(place(aSet(weighing(52, 48, 52)), grips(50, 50, 50)))).toEqual([1, 2, 3]);
    expect(numbers(place(aSet(weighing(52, 48)), grips(50, 50, 50)))).toEqual([1, 2]);
  });

  test('of clubs that gain the same the first gets the first typed, and is served first', () => {
    expect(numbers(place(aSet(weighing(50, 50, 50)), grips(52, 48, 50)))).toEqual([1, 2, 3]);
    expect(numbers(place(aSet(weighing(54, 54, 54)), grips(52)))).toEqual([1, undefined, undefined]);
  });
});

describe('which clubs a grip is for', () => {
  const stock = [
    aGrip({ item: 'S58', gripGrams: 50 }),
    aGrip({ item: 'S60', gripGrams: 55 }),
    aGrip({ item: 'PT', gripGrams: 70 }),
  ];
  const set = (clubs: readonly Partial<Club>[]) => aSet(clubs, { stock });

  test('those that get its item, whatever its capitals', () => {
    const input = set([{ newItem: 'S58' }, { newItem: 's60' }, { newItem: 'S58' }]);
    const weighed = [
      { number: 1, item: 'S60', grams: 54 },
      { number: 2, item: 's58', grams: 51 },
    ];
    const placed = place(input, weighed);
    expect(numbers(placed)).toEqual([2, 1, undefined]);
    expect(placed.unserved).toEqual([3]);
  });

  test('without an item it is for the only one that the clubs get, the putter apart', () => {
    const input = set([{ newItem: 'S58' }, { newItem: 'PT', kind: 'putter', newGripGrams: 72 }, { newItem: 'S58' }]);
    const placed = place(input, grips(49, 51));
    expect(numbers(placed)).toEqual([1, undefined, 2]);
    expect(placed.unserved).toEqual([]);
    // the putter's own grip, weighed earlier, stays on it
    expect(placed.placed[1]?.plan.fittedAfterGrams).toBe(72);
  });

  test('the putter’s, if it is named, or if there is nothing but putters', () => {
    const input = set([{ newItem: 'S58' }, { newItem: 'PT', kind: 'putter' }]);
    expect(numbers(place(input, [{ number: 1, item: 'PT', grams: 71 }]))).toEqual([undefined, 1]);
    expect(numbers(place(set([{ newItem: 'PT', kind: 'putter' }]), grips(71)))).toEqual([1]);
  });

  test('asks for items where the clubs get more than one', () => {
    const issue = refused(set([{ newItem: 'S58' }, { newItem: 'S60' }]), grips(50, 51));
    expect(issue).toMatchObject({ code: 'blank', field: 'Item of grip 1' });
    expect(issue.expected).toBe('each grip its item, since these clubs get S58 and S60');
    const many = Array.from({ length: 6 }, (_, at) => ({ newItem: `G${at}` }));
    expect(refused(set(many), grips(50)).expected).toContain('these clubs get G0, G1, G2 and 3 more');
  });

  test('refuses an item that nobody knows; one that no club gets stays on the bench', () => {
    const input = set([{ newItem: 'S58' }]);
    const strange = { number: 4, item: 'S85', grams: 50 };
    expect(refused(input, [strange])).toMatchObject({ code: 'unknownItem', field: 'Item of grip 4', got: 'S85' });
    const spare = { number: 2, item: 'S60', grams: 55 };
    expect(place(input, [...grips(50), spare]).left).toEqual([spare]);
    expect(refused(input, [spare])).toMatchObject({ code: 'noRows', expected: 'clubs that get S60' });
  });

  test('a club whose item Stock does not list takes its grip, and says what is wrong with it', () => {
    const placed = place(set([{ newItem: 'new' }]), grips(50));
    expect(numbers(placed)).toEqual([1]);
    expect(placed.placed[0]?.plan.notes).toContainEqual(
      expect.objectContaining({ issue: expect.objectContaining({ code: 'unknownItem' }) }),
    );
  });
});

describe('what cannot be placed', () => {
  test.each([
    [grips(), { code: 'noRows', field: 'Weighed grips' }],
    [grips(50, 14.9), { code: 'outOfRange', field: 'Mass of grip 2', got: 14.9, expected: '15 to 220 g' }],
    [grips(220.1), { code: 'outOfRange', field: 'Mass of grip 1' }],
    [grips(NaN), { code: 'outOfRange', field: 'Mass of grip 1' }],
    [
      grips(...Array.from({ length: 501 }, () => 50)),
      { code: 'outOfRange', got: 501, expected: 'at most 500 at a time' },
    ],
  ])('%#', (weighed, issue) => expect(refused(aSet([{}]), weighed)).toMatchObject(issue));

  test('clubs without a new grip', () => {
    expect(refused(aSet([{ newItem: undefined }]), grips(50))).toMatchObject({ code: 'noRows', field: 'Clubs' });
    expect(refused(aSet([]), grips(50))).toMatchObject({ code: 'noRows', field: 'Clubs' });
  });

  test('the ends of the range are masses', () => {
    expect(numbers(place(aSet([{}, {}]), grips(15, 220)))).toEqual([1, 2]);
  });
});

describe('a mass far from what Stock says', () => {
  const odd = (grams: number, stock: Parameters<typeof aGrip>[0], settings = {}) =>
    place(aSet([{}], { stock: [aGrip(stock)], settings }), grips(grams)).odd.map(({ grip }) => grip.number);

  test('is told, and placed all the same', () => {
    const placed = place(aSet([{}]), grips(61));
    expect(placed.odd).toEqual([{ grip: placed.placed[0]?.grip, item: 'G', stockGrams: 50 }]);
    expect(numbers(placed)).toEqual([1]);
  });

  test('if it is off by more than four times the ± of the item', () => {
    expect(odd(58, { gripGrams: 50, spreadGrams: 2 })).toEqual([]);
    expect(odd(58.1, { gripGrams: 50, spreadGrams: 2 })).toEqual([1]);
    expect(odd(41.9, { gripGrams: 50, spreadGrams: 2 })).toEqual([1]);
    expect(odd(61, { gripGrams: 50, spreadGrams: undefined }, { newSpreadGrams: 3 })).toEqual([]);
    expect(odd(63, { gripGrams: 50, spreadGrams: undefined }, { newSpreadGrams: 3 })).toEqual([1]);
  });

  test('and by more than three grams', () => {
    expect(odd(53, { gripGrams: 50, spreadGrams: 0.5 })).toEqual([]);
    expect(odd(53.1, { gripGrams: 50, spreadGrams: 0.5 })).toEqual([1]);
  });

  test('where Stock has a mass at all, and of those left on the bench too', () => {
    expect(odd(90, { gripGrams: undefined })).toEqual([]);
    const placed = place(aSet([{}]), grips(50, 90));
    expect(placed.odd.map(({ grip }) => grip.number)).toEqual([2]);
  });
});

test('the first of an item that Stock lists twice counts, as in a plan', () => {
  const input = aSet([{}], { stock: [aGrip({ gripGrams: 50 }), aGrip({ gripGrams: 90 })] });
  expect(place(input, grips(50)).odd).toEqual([]);
  expect(planSet(input).clubs[0]?.fittedAfterGrams).toBe(50);
});
