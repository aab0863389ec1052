import { describe, expect, it } from 'vitest';
import { CHECK_LEVEL, LEAST_READINGS, scaleCheck, type ReferenceReading } from '../../../src/core/index';
import { issueOf, valueOf } from '../make';
import { normalFrom } from './shops';

const CLUB = { accepted: 32, divisionPoints: 0.1 };

/** Weekly readings of a scale that shows tenths. */
function weekly(count: number, truth: (week: number) => number, sd = 0, seed = 1): ReferenceReading[] {
  const normal = normalFrom(seed);
  return Array.from({ length: count }, (_, week) => ({
    day: 45000 + week * 7,
    points: Math.round((truth(week) + sd * normal()) * 10) / 10,
  }));
}

describe('a scale that reads right', () => {
  it('is fine where it reads the same each time', () => {
    expect(
      valueOf(
        scaleCheck(
          weekly(8, () => 32),
          CLUB,
        ),
      ),
    ).toEqual({
      readings: 8,
      days: 8,
      repeatability: 0,
      drift: { points: expect.closeTo(0, 9), low: expect.closeTo(0, 9), high: expect.closeTo(0, 9), told: false },
      offset: { points: 0, low: 0, high: 0, told: false },
      flagged: [],
      verdict: 'fine',
    });
  });

  it('and where it is off by less than it can show', () => {
    expect(
      valueOf(
        scaleCheck(
          weekly(8, () => 32),
          { ...CLUB, accepted: 31.96 },
        ),
      ).verdict,
    ).toBe('fine');
    expect(
      valueOf(
        scaleCheck(
          weekly(8, () => 32),
          { ...CLUB, accepted: 31.94 },
        ),
      ).verdict,
    ).toBe('recalibrate');
  });

  it('is called wrong in one check of twenty at most', () => {
    const checks = 1000;
    let wrong = 0;
    for (let seed = 1; seed <= checks; seed += 1) {
      const found = valueOf(
        scaleCheck(
          weekly(10, () => 32, 0.2, seed * 7919),
          CLUB,
        ),
      );
      if (found.verdict === 'recalibrate') wrong += 1;
    }
    // chance adds at most 0.014 to the level: 2 √(.05 × .95 / 1000) (*derived*)
    expect(wrong / checks).toBeLessThan(CHECK_LEVEL + 0.014);
    expect(wrong).toBeGreaterThan(0); // the tests are not blind
  });
});

describe('a scale that is off', () => {
  it('by an offset, with its interval', () => {
    const found = valueOf(
      scaleCheck(
        weekly(10, () => 32.5, 0.1, 3),
        CLUB,
      ),
    );
    expect(found).toMatchObject({ verdict: 'recalibrate', offset: { told: true }, drift: { told: false } });
    expect(found.offset.low).toBeLessThan(0.5);
    expect(found.offset.high).toBeGreaterThan(0.5);
  });

  it('by a drift: the offset is that of the last day, not the mean', () => {
    const found = valueOf(
      scaleCheck(
        weekly(11, (week) => 32 + 0.1 * week),
        CLUB,
      ),
    );
    expect(found.verdict).toBe('recalibrate');
    expect(found.drift).toMatchObject({ told: true, points: expect.closeTo(1, 9) });
    expect(found.offset).toMatchObject({ told: true, points: expect.closeTo(1, 9) });
    expect(found.repeatability).toBeCloseTo(0, 9);
  });

  it('downward as well, in whatever order the days stand', () => {
    const down = weekly(11, (week) => 32 - 0.1 * week, 0.05, 9).reverse();
    const found = valueOf(scaleCheck(down, CLUB));
    expect(found.drift?.told).toBe(true);
    expect(found.drift!.points).toBeLessThan(-0.7);
    expect(found.offset.points).toBeLessThan(-0.7);
  });

  it('is found nearly always where it drifts a point in ten weeks', () => {
    let told = 0;
    for (let seed = 1; seed <= 100; seed += 1) {
      const found = valueOf(
        scaleCheck(
          weekly(11, (week) => 32 + 0.1 * week, 0.2, seed * 6007),
          CLUB,
        ),
      );
      if (found.drift?.told) told += 1;
    }
    expect(told).toBeGreaterThan(90);
  });
});

it('readings of one day or two tell an offset and no drift', () => {
  const found = valueOf(
    scaleCheck(
      weekly(6, () => 33).map((reading, at) => ({ ...reading, day: at % 2 })),
      CLUB,
    ),
  );
  expect(found).toMatchObject({ days: 2, drift: undefined, offset: { told: true }, verdict: 'recalibrate' });
});

it('a misread one is flagged and counts', () => {
  const readings = weekly(10, () => 32, 0.1, 4).map((each, at) => (at === 6 ? { ...each, points: 35 } : each));
  expect(valueOf(scaleCheck(readings, CLUB)).flagged).toEqual([6]);
});

it('two readings that are told apart by no more than a division are no drift', () => {
  const creeping = weekly(10, (week) => (week < 5 ? 32 : 32.04)); // both show 32.0
  expect(valueOf(scaleCheck(creeping, CLUB)).verdict).toBe('fine');
});

it('nor is a rise, however straight, that the scale could not have shown', () => {
  const readings = weekly(10, () => 32).map((each, at) => ({ ...each, points: 32 + 0.004 * at }));
  const found = valueOf(scaleCheck(readings, CLUB));
  expect(found.drift!.low).toBeGreaterThan(0);
  expect(found.verdict).toBe('fine');
});

describe('refuses', () => {
  it('too few readings', () => {
    expect(
      issueOf(
        scaleCheck(
          weekly(4, () => 32),
          CLUB,
        ),
      ),
    ).toEqual({
      code: 'tooFew',
      field: 'Reference club',
      got: 4,
      expected: 'readings',
      detail: LEAST_READINGS,
    });
    expect(issueOf(scaleCheck([], CLUB)).code).toBe('tooFew');
  });

  it.each([
    ['a reading off all bounds', [...weekly(6, () => 32), { day: 1, points: 320 }], CLUB, 'Reference reading 7'],
    ['a reading that is none', [...weekly(6, () => 32), { day: 1, points: NaN }], CLUB, 'Reference reading 7'],
    ['a day that is none', [...weekly(6, () => 32), { day: NaN, points: 32 }], CLUB, 'Date of reference reading 7'],
    [
      'a club that should read nothing',
      weekly(6, () => 32),
      { ...CLUB, accepted: NaN },
      'What the reference club should read',
    ],
    ['a scale without divisions', weekly(6, () => 32), { ...CLUB, divisionPoints: 0 }, 'Division of the scale'],
  ])('%s', (_, readings, club, field) => {
    expect(issueOf(scaleCheck(readings, club)).field).toBe(field);
  });
});
