import { describe, expect, it } from 'vitest';
import {
  DEFAULT_SIZE_GUIDE,
  guideIssue,
  handIssue,
  mistakenUnit,
  RANGES,
  startDiameter,
  type SizeGuideRow,
} from '../../../src/core/index';
import { issueOf, valueOf } from '../make';

const row = (handInches: number, diameterInches: number, fingerInches?: number): SizeGuideRow => ({
  handInches,
  fingerInches,
  diameterInches,
});

/** Invented, and easy to reckon with: .05 an inch, then .10; the finger is half of the hand. */
const GUIDE = [row(7, 0.9, 3.5), row(8, 0.95, 4), row(9, 1.05, 4.5)];

describe('a starting diameter', () => {
  it('is that of a row for its hand, and lies between the rows for a hand between', () => {
    expect(valueOf(startDiameter(GUIDE, { handInches: 8 })).inches).toBe(0.95);
    expect(valueOf(startDiameter(GUIDE, { handInches: 7.5 })).inches).toBeCloseTo(0.925, 12); // half-way
    expect(valueOf(startDiameter(GUIDE, { handInches: 8.25 })).inches).toBeCloseTo(0.95 + 0.25 * 0.1, 12);
  });

  it('is the mean of hand and finger', () => {
    const start = valueOf(startDiameter(GUIDE, { handInches: 8, fingerInches: 3.9 }));
    expect(start.byHandInches).toBe(0.95);
    expect(start.byFingerInches).toBeCloseTo(0.9 + 0.8 * 0.05, 12); // .940
    expect(start.inches).toBeCloseTo(0.945, 12);
    expect(start).toMatchObject({ beyond: [], disagree: false }); // exactly a layer apart
  });

  it('tells that hand and finger are more than a layer apart', () => {
    const hand = { handInches: 8, fingerInches: 3.88 }; // .950 and .938
    expect(valueOf(startDiameter(GUIDE, hand)).disagree).toBe(true);
    expect(valueOf(startDiameter(GUIDE, hand, 0.02)).disagree).toBe(false); // thicker tape
  });

  it.each([
    [{ handInches: 6 }, 0.9, 'below'],
    [{ handInches: 9.5 }, 1.05, 'above'],
    [{ handInches: 7, fingerInches: 3.25 }, 0.9, 'below'],
    [{ handInches: 9, fingerInches: 4.75 }, 1.05, 'above'],
    [{ handInches: 7, fingerInches: 3.5 }, 0.9, undefined],
    [{ handInches: 9, fingerInches: 4.5 }, 1.05, undefined],
  ] as const)('%j holds the end of the guide: %d, %s', (hand, inches, beyond) => {
    const start = valueOf(startDiameter(GUIDE, hand));
    expect(start.inches).toBeCloseTo(inches, 12);
    expect(start.beyond.map(({ end }) => end)).toEqual(beyond ? [beyond] : []);
  });

  it('goes by the hand alone where fewer than two rows have a finger', () => {
    const withOne = [row(7, 0.9), row(8, 0.95, 4), row(9, 1.05)];
    for (const guide of [withOne, withOne.map((each) => ({ ...each, fingerInches: undefined }))]) {
      const start = valueOf(startDiameter(guide, { handInches: 8.5, fingerInches: 3 }));
      expect(start).toEqual({
        inches: start.byHandInches,
        byHandInches: 1,
        byFingerInches: undefined,
        beyond: [],
        disagree: false,
      });
    }
    expect(
      valueOf(startDiameter([row(7, 0.9, 3), row(8, 0.95), row(9, 1, 4)], { handInches: 8, fingerInches: 3.5 })),
    ).toMatchObject({ byFingerInches: 0.95, inches: 0.95 }); // across the row that has none
  });

  it('of a guide of one row is its size', () => {
    expect(valueOf(startDiameter([row(8, 0.95)], { handInches: 8 }))).toMatchObject({
      inches: 0.95,
      beyond: [],
    });
    expect(valueOf(startDiameter([row(8, 0.95)], { handInches: 7 }))).toMatchObject({
      inches: 0.95,
      beyond: [{ measure: 'hand', end: 'below' }],
    });
  });
});

describe('a hand that cannot be', () => {
  it.each([
    [{ handInches: 193 }, 'handInches', 193, 'mm', 193 / 25.4], // the median man: ANSUR II
    [{ handInches: 19.3 }, 'handInches', 19.3, 'cm', 19.3 / 2.54],
    [{ handInches: 7.6, fingerInches: 81 }, 'fingerInches', 81, 'mm', 81 / 25.4],
    [{ handInches: 7.6, fingerInches: 8.1 }, 'fingerInches', 8.1, 'cm', 8.1 / 2.54],
    [{ handInches: 193, fingerInches: 81 }, 'handInches', 193, 'mm', 193 / 25.4], // one at a time
    [{ handInches: 193, fingerInches: 200 }, 'handInches', 193, 'mm', 193 / 25.4],
  ] as const)('%j: another unit', (hand, field, got, expected, inches) => {
    const issue = issueOf(startDiameter(GUIDE, hand));
    expect(issue).toMatchObject({ code: 'unitMistaken', field, got, expected });
    expect(issue.detail).toBeCloseTo(inches, 12);
  });

  it.each([
    [{ handInches: 4 }, 'handInches', 4, '5 to 10 in'],
    [{ handInches: 11 }, 'handInches', 11, '5 to 10 in'],
    [{ handInches: 1000 }, 'handInches', 1000, '5 to 10 in'],
    [{ handInches: 0 }, 'handInches', 0, '5 to 10 in'],
    [{ handInches: NaN }, 'handInches', NaN, '5 to 10 in'],
    [{ handInches: 8, fingerInches: 1.5 }, 'fingerInches', 1.5, '2 to 5 in'],
    [{ handInches: 8, fingerInches: -3 }, 'fingerInches', -3, '2 to 5 in'],
  ])('%j: out of range', (hand, field, got, expected) => {
    expect(issueOf(startDiameter(GUIDE, hand))).toEqual({ code: 'outOfRange', field, got, expected });
  });

  it.each([
    { handInches: 3.2, fingerInches: 7.6 }, // exchanged
    { handInches: 7.6, fingerInches: 20 }, // in no unit
    { handInches: 5, fingerInches: 5 },
  ])('%j: a finger as long as the hand', (hand) => {
    expect(issueOf(startDiameter(GUIDE, hand))).toEqual({
      code: 'contradiction',
      field: 'fingerInches',
      got: hand.fingerInches,
      expected: 'the middle finger must be shorter than the hand',
    });
  });

  it.each([
    [5, 2],
    [10, 5],
  ])('is not one of %d in with a finger of %d in', (handInches, fingerInches) => {
    expect(handIssue({ handInches, fingerInches })).toBeUndefined();
  });

  it('is told before a guide that cannot be', () => {
    expect(issueOf(startDiameter([], { handInches: 4 })).field).toBe('handInches');
    expect(handIssue({ handInches: 7.6, fingerInches: 3.2 })).toBeUndefined();
  });
});

describe('a number in another unit', () => {
  const hands = RANGES.handInches;

  it.each([
    [5, undefined],
    [10, undefined],
    [10.01, undefined],
    [12.69, undefined],
    [12.7, { unit: 'cm', inches: 5 }],
    [25.4, { unit: 'cm', inches: 10 }],
    [25.5, undefined],
    [126.9, undefined],
    [127, { unit: 'mm', inches: 5 }],
    [254, { unit: 'mm', inches: 10 }],
    [255, undefined],
    [-193, undefined],
    [NaN, undefined],
  ])('%d', (value, expected) => expect(mistakenUnit(value, hands)).toEqual(expected));

  it('is none where it is within range as it stands', () => {
    expect(mistakenUnit(30, { low: 1, high: 100 })).toBeUndefined();
  });
});

describe('a guide', () => {
  it('without rows', () => {
    const issue = { code: 'noRows', field: 'guide', expected: 'rows with a hand length and a diameter' };
    expect(issueOf(startDiameter([], { handInches: 8 }))).toEqual(issue);
    expect(guideIssue([])).toEqual(issue);
  });

  it('with a hand length twice', () => {
    const twice = [...GUIDE, row(8, 0.95)];
    expect(issueOf(startDiameter(twice, { handInches: 8 }))).toEqual({
      code: 'duplicate',
      field: 'guide',
      got: 8,
      detail: 8,
    });
  });

  it('that runs backwards', () => {
    expect(guideIssue([row(7, 0.9), row(8, 0.89)])).toEqual({
      code: 'contradiction',
      field: 'guide',
      detail: 8,
      expected: 'the hand of 8 in starts from a smaller diameter than a shorter hand',
    });
    expect(guideIssue([row(7, 0.9, 3.5), row(7.5, 0.9), row(8, 0.95, 3.5)])).toEqual({
      code: 'contradiction',
      field: 'guide',
      detail: 8,
      expected: 'the hand of 8 in does not have a longer finger than a shorter hand',
    });
  });

  it('may have the same size for two hands, and its rows in any order', () => {
    expect(guideIssue([row(7, 0.9), row(8, 0.9)])).toBeUndefined();
    const hand = { handInches: 7.3, fingerInches: 3.6 };
    const given = [...GUIDE].reverse();
    const before = structuredClone(given);
    expect(startDiameter(given, hand)).toEqual(startDiameter(GUIDE, hand));
    expect(given).toEqual(before);
  });
});

describe('the guide of a new workbook', () => {
  it('can be used, and agrees with itself on a finger of 0.42 of the hand (practice)', () => {
    expect(guideIssue(DEFAULT_SIZE_GUIDE)).toBeUndefined();
    for (let handInches = 5.5; handInches <= 9.25; handInches += 0.05) {
      const start = valueOf(startDiameter(DEFAULT_SIZE_GUIDE, { handInches, fingerInches: 0.42 * handInches }));
      expect([handInches, start.disagree]).toEqual([handInches, false]);
    }
  });
});
