import { all, bignumber, create, type BigNumber, type FactoryFunctionMap } from 'mathjs';
import { linearRegression, median as theirMedian } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { leastSquaresLine, median, robustLine, type Point } from '../../src/core/index';
import { numbersFrom } from '../core/choose/placing/sets';

/** Least squares and the middle of numbers against simple-statistics 7.12.1, which no one here wrote. */

const pairs = (points: readonly Point[]): [number, number][] => points.map(({ x, y }) => [x, y]);

function scattered(seed: number, count: number, low: number, high: number): Point[] {
  const from = numbersFrom(seed);
  return Array.from({ length: count }, () => ({ x: from(low, high), y: from(25, 40) }));
}

describe('the line with the least sum of squares', () => {
  test.each([3, 4, 7, 14, 200])('through %i clubs of usual lengths', (count) => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const points = scattered(seed * 97 + count, count, 35, 46);
      const theirs = linearRegression(pairs(points));
      const ours = leastSquaresLine(points);
      expect(ours?.slope).toBeCloseTo(theirs.m, 8);
      expect(ours?.intercept).toBeCloseTo(theirs.b, 6);
    }
  });

  /** Lengths a hair apart: sums of their squares share all digits but the last ones. Theirs is asked about the hairs alone. */
  test.each([0.01, 1e-4, 1e-6])('through lengths that differ by %d in or less', (across) => {
    for (let seed = 1; seed <= 10; seed += 1) {
      const near = scattered(seed, 8, 0, across);
      const points = near.map(({ x, y }) => ({ x: 37 + x, y }));
      const theirs = linearRegression(pairs(points.map(({ x, y }) => ({ x: x - 37, y }))));
      const ours = leastSquaresLine(points);
      expect((ours?.slope ?? NaN) / theirs.m).toBeCloseTo(1, 5);
    }
  });

  test('and by arithmetic of 64 digits, through lengths a ten-millionth of an inch apart', () => {
    const math = create(all as FactoryFunctionMap, { number: 'BigNumber', precision: 64 });
    const points = scattered(5, 9, 37, 37 + 1e-7);
    const x = points.map((point) => bignumber(point.x));
    const y = points.map((point) => bignumber(point.y));
    const sum = (list: readonly BigNumber[]): BigNumber =>
      list.reduce((total, each) => math.add(total, each) as BigNumber, bignumber(0));
    const times = (a: readonly BigNumber[], b: readonly BigNumber[]): BigNumber =>
      sum(a.map((each, at) => math.multiply(each, b[at] as BigNumber) as BigNumber));
    const n = bignumber(points.length);
    const exact = Number(
      math.divide(
        math.subtract(math.multiply(n, times(x, y)), math.multiply(sum(x), sum(y))) as BigNumber,
        math.subtract(math.multiply(n, times(x, x)), math.multiply(sum(x), sum(x))) as BigNumber,
      ),
    );
    expect((leastSquaresLine(points)?.slope ?? NaN) / exact).toBeCloseTo(1, 6);
  });
});

describe('the middle', () => {
  test.each([1, 2, 3, 4, 13, 100])('of %i numbers', (count) => {
    const values = scattered(count, count, 0, 1).map(({ y }) => y);
    expect(median(values)).toBe(theirMedian(values));
  });

  test.each([3, 6, 14])('slope of a robust line through %i clubs is theirs of all pairs', (count) => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const points = scattered(seed * 31 + count, count, 35, 46);
      const slopes = points.flatMap((one, at) =>
        points.slice(at + 1).map((other) => (one.y - other.y) / (one.x - other.x)),
      );
      const slope = theirMedian(slopes);
      const ours = robustLine(points);
      expect(ours?.slope).toBeCloseTo(slope, 12);
      expect(ours?.intercept).toBeCloseTo(theirMedian(points.map(({ x, y }) => y - slope * x)), 10);
    }
  });
});
