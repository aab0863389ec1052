import { describe, expect, it } from 'vitest';
import {
  balanceChange,
  clubPoints,
  compensationGrams,
  counterweightGrams,
  formatReading,
  lengthPoints,
  massInertia,
  massPoints,
  momentGramInches,
  parallelAxis,
  parseReading,
  POINT_GRAM_INCHES,
  readingMoment,
  roundTo,
  shiftInertia,
} from '../../src/core/index';
import { issueOf, P, valueOf } from './make';

describe('reading a reading', () => {
  it.each([
    ['A0', 0], // the scale's light end
    ['D0', 30], // ten points a letter
    ['D2', 32],
    ['d3', 33],
    ['D 3.5', 33.5],
    ['D3,5', 33.5],
    [' c9.7 ', 29.7],
    ['G9.9', 69.9], // the heavy end
    ['D2.25', 32.25],
  ])('%j is %d points', (text, points) => {
    expect(valueOf(parseReading(text))).toBeCloseTo(points, 12);
  });

  it.each(['', 'D', '2', 'H1', 'D10', 'D-1', 'D2.', 'D.5', 'DD2', 'D2x', 'xD2', 'D2.3.4', '3D'])(
    '%j is not one',
    (text) => {
      expect(issueOf(parseReading(text))).toEqual({
        code: 'notReading',
        field: 'reading',
        got: text,
        expected: 'a letter A to G and a number, such as D2.5',
      });
    },
  );

  it('names the field it was asked to', () => {
    expect(issueOf(parseReading('x', 'Target reading')).field).toBe('Target reading');
  });
});

describe('writing a reading', () => {
  it.each([
    [0, 1, 'A0.0'],
    [-0, 1, 'A0.0'],
    [-0.04, 1, 'A0.0'], // rounds to nought, not to minus nought
    [32.4, 1, 'D2.4'],
    [39.94, 1, 'D9.9'],
    [39.96, 1, 'E0.0'], // the letter is carried
    [39.5, 0, 'E0'],
    [39.49, 0, 'D9'],
    [69.94, 1, 'G9.9'],
    [32.005, 2, 'D2.01'], // 32.005 is 32.00499… in binary
    [32.4567, 4, 'D2.4567'],
  ])('%d points with %d decimals: %s', (points, decimals, reading) => {
    expect(valueOf(formatReading(points, decimals))).toBe(reading);
  });

  it('has one decimal when nothing is said', () => {
    expect(valueOf(formatReading(32.44))).toBe('D2.4');
  });

  it.each([
    [-0.05, -0.1],
    [-67, -67],
    [69.95, 70],
    [70, 70],
  ])('%d points are off the scale', (points, rounded) => {
    expect(issueOf(formatReading(points))).toEqual({
      code: 'offScale',
      field: 'points',
      got: points,
      expected: 'A0 to G9.9',
      detail: rounded,
    });
  });

  it('what is no number is off the scale', () => {
    expect(formatReading(NaN).ok).toBe(false);
    expect(formatReading(Infinity).ok).toBe(false);
  });
});

describe('rounding', () => {
  it.each([
    [1.005, 2, 1.01], // 1.005 is 1.00499… in binary
    [-1.005, 2, -1.01], // half away from nought on both sides
    [2.5, 0, 3],
    [-2.5, 0, -3],
    [1234.5678, 0, 1235],
    [0.1 + 0.2, 7, 0.3],
    [2.675, 2, 2.68], // 2.67499…
    [1e-9, 7, 0],
    [-1e-9, 7, 0],
    [NaN, 1, NaN],
    [-Infinity, 1, -Infinity],
  ])('%d at %d decimals is %d', (value, decimals, rounded) => {
    expect(Object.is(roundTo(value, decimals), rounded)).toBe(true);
  });
});

describe('moments', () => {
  it('a mass times its distance from the fulcrum, 14 in or where it is said to stand', () => {
    expect(momentGramInches(5, 4.2)).toBeCloseTo(-49, 10); // 5 × (4.2 − 14)
    expect(momentGramInches(5, 4.2, 12)).toBeCloseTo(-39, 10); // 5 × (4.2 − 12), the 12-inch scale
  });

  it('points are that over 1.75 oz·in', () => {
    expect(POINT_GRAM_INCHES).toBeCloseTo(P, 10);
    expect(massPoints(5, 4.2)).toBeCloseTo(-49 / P, 12);
    expect(massPoints(10, 14)).toBe(0);
    expect(massPoints(2, 39)).toBeCloseTo(50 / P, 12); // 2 × 25
  });

  it('a whole club: D0 has 213.5 oz·in, which is 122 points above no moment and so 92 at A0', () => {
    expect(clubPoints(460, 27.21)).toBeCloseTo((460 * 13.21) / P - 92, 10);
    expect(clubPoints(270, 18.6)).toBeCloseTo((270 * 4.6) / P - 92, 10); // −66.97: a short light club
    expect(readingMoment(30)).toBeCloseTo(213.5 * 28.349523125, 8);
    expect(readingMoment(0)).toBeCloseTo(161 * 28.349523125, 8);
  });
});

describe('change by another grip', () => {
  it('ten grams at 4.2 in', () => {
    expect(balanceChange({ oldGripGrams: 50, newGripGrams: 60 })).toBeCloseTo(-98 / P, 12); // 10 × −9.8
  });

  it('layers of 1.76 g in the middle of 10.5 in', () => {
    const layer = 10.5 * 2 * 0.0254 ** 2 * 130;
    expect(balanceChange({ oldGripGrams: 50, newGripGrams: 50, oldLayers: 1, newLayers: 4 })).toBeCloseTo(
      (3 * layer * -8.75) / P,
      12,
    );
  });

  it('a longer tape weighs more and balances further down', () => {
    const layer = 15 * 2 * 0.0254 ** 2 * 130;
    expect(balanceChange({ oldGripGrams: 50, newGripGrams: 50, newLayers: 2, tapedInches: 15 })).toBeCloseTo(
      (2 * layer * -6.5) / P, // 7.5 − 14
      12,
    );
  });

  it('each grip has its own balance point; the new one takes the old one’s where none is given', () => {
    const both = { oldGripGrams: 50, newGripGrams: 50, oldBalanceInches: 4, newBalanceInches: 6 };
    expect(balanceChange(both)).toBeCloseTo((50 * -8 - 50 * -10) / P, 12);
    expect(balanceChange({ oldGripGrams: 50, newGripGrams: 60, oldBalanceInches: 4 })).toBeCloseTo(-100 / P, 12);
  });

  it('takes the mass of a layer when it is told', () => {
    expect(balanceChange({ oldGripGrams: 50, newGripGrams: 50, newLayers: 2, layerGrams: 2 })).toBeCloseTo(-35 / P, 12); // 4 × −8.75
  });
});

describe('change by length', () => {
  it('⅛ in of cap on a 374 g body is 0.94 point', () => {
    expect(lengthPoints(374, 0.125)).toBeCloseTo(46.75 / P, 12);
    expect(lengthPoints(374, 0.125)).toBeCloseTo(0.94, 2);
  });

  it('an extension’s own mass sits 1 in from the butt unless told', () => {
    expect(lengthPoints(374, 0.5, 6)).toBeCloseTo((187 + 6 * -13) / P, 12);
    expect(lengthPoints(374, 0.5, 6, 2)).toBeCloseTo((187 + 6 * -12) / P, 12);
    expect(lengthPoints(374, -0.5, -4)).toBeCloseTo((-187 + 4 * 13) / P, 12);
  });
});

describe('compensation', () => {
  it.each([
    [-2, 45, (2 * P) / 31], // 3.2 g at driver length
    [-1, 37, P / 23],
    [1, 37, -P / 23], // the reading rose: take away
    [1, 1, P / 13], // 3.8 g in the butt
    [-1, 35, P / 21], // a tip plug 2 in up needs more
  ])('%d points at %d in', (points, inches, grams) => {
    expect(valueOf(compensationGrams(points, inches))).toBeCloseTo(grams, 12);
  });

  it('nothing is nothing, without a sign', () => {
    expect(Object.is(valueOf(compensationGrams(0, 37)), 0)).toBe(true);
    expect(Object.is(valueOf(compensationGrams(0, 1)), 0)).toBe(true);
  });

  it.each([14, 14.49, 13.51])('is refused at %d in, too near the fulcrum', (inches) => {
    expect(issueOf(compensationGrams(-2, inches))).toEqual({
      code: 'atFulcrum',
      field: 'weightInches',
      got: inches,
      expected: 'a place away from 14 in',
    });
  });

  it.each([14.5, 13.5])('is answered half an inch from it, at %d in', (inches) => {
    expect(compensationGrams(-2, inches).ok).toBe(true);
  });

  it('a counterweight is the same moment in the butt, 1 in from the cap unless told', () => {
    expect(valueOf(counterweightGrams(1))).toBeCloseTo(P / 13, 12); // 3.816
    expect(valueOf(counterweightGrams(2, 3))).toBeCloseTo((2 * P) / 11, 12);
  });
});

describe('inertia', () => {
  it('of a mass about the butt: 1 g·in² is 0.0064516 kg·cm²', () => {
    expect(massInertia(10, 4.2)).toBeCloseTo(10 * 17.64 * 0.0064516, 12); // 1.138
    expect(massInertia(3, 45)).toBeCloseTo(39.19347, 5); // 3 × 2025 × 0.0064516
  });

  it('by the parallel-axis theorem', () => {
    expect(parallelAxis(0.077, 0.394, 0.753)).toBeCloseTo(0.077 + 0.394 * 0.753 ** 2, 12);
  });

  it('of a body moved out: m (2 x δ + δ²)', () => {
    expect(shiftInertia(370, 28, 0.5)).toBeCloseTo(370 * (2 * 28 * 0.5 + 0.25) * 0.0064516, 9);
    expect(shiftInertia(370, 28, 0)).toBe(0);
  });
});
