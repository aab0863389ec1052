import { all, create, type FactoryFunctionMap, type Matrix } from 'mathjs';
import { gammaln, linearRegression, sampleStandardDeviation, tTest } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { conditionNumber } from '../../src/core/calibrate/condition';
import { leastSquares, leftOutResiduals, outliers } from '../../src/core/calibrate/leastSquares';
import { centralT, tQuantile } from '../../src/core/calibrate/studentT';
import { numbersFrom } from '../core/choose/placing/sets';
import { longley, noInt1, norris } from './strd';

/** Least squares and t against mathjs 15.2.0, simple-statistics 7.12.1 and certified values, which no one here wrote. */

const math = create(all as FactoryFunctionMap);

/** How many digits agree: −log₁₀ of the relative error. */
function digits(ours: number, theirs: number): number {
  return ours === theirs ? 16 : -Math.log10(Math.abs(ours - theirs) / Math.abs(theirs));
}

describe('least squares against certified values', () => {
  test.each([
    ['Norris', norris, 11],
    ['NoInt1', noInt1, 12],
    ['Longley', longley, 9], // condition number of some 40,000: a few digits are lost to whoever computes it
  ])('%s', (_, { rows, measured, certified }, least) => {
    const fit = leastSquares(rows, measured);
    if (!fit) throw new Error('a fit was expected');
    certified.coefficients.forEach((value, at) => expect(digits(fit.coefficients[at]!, value)).toBeGreaterThan(least));
    certified.errors.forEach((value, at) => expect(digits(fit.errors[at]!, value)).toBeGreaterThan(least));
    expect(digits(fit.deviation, certified.deviation)).toBeGreaterThan(least);
    expect(fit.freedom).toBe(certified.freedom);
  });
});

function scattered(seed: number, rows: number, unknowns: number): { x: number[][]; y: number[] } {
  const from = numbersFrom(seed * 7919);
  return {
    x: Array.from({ length: rows }, () => Array.from({ length: unknowns }, () => from(-5, 60))),
    y: Array.from({ length: rows }, () => from(-100, 700)),
  };
}

describe('least squares against mathjs', () => {
  test.each([
    [4, 1],
    [6, 2],
    [14, 3],
    [60, 5],
  ])('%i clubs, %i unknowns: normal equations by its matrices', (rows, unknowns) => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const { x, y } = scattered(seed * 31 + rows, rows, unknowns);
      const fit = leastSquares(x, y);
      if (!fit) throw new Error('a fit was expected');
      const X = math.matrix(x);
      const inverse = math.inv(math.multiply(math.transpose(X), X)) as Matrix;
      const beta = math.multiply(inverse, math.multiply(math.transpose(X), math.matrix(y))) as Matrix;
      const hat = math.multiply(X, math.multiply(inverse, math.transpose(X))) as Matrix;
      const residuals = math.subtract(math.matrix(y), math.multiply(X, beta)) as Matrix;
      const variance = Number(math.dot(residuals, residuals)) / (rows - unknowns);
      for (let at = 0; at < unknowns; at += 1) {
        expect(fit.coefficients[at]).toBeCloseTo(Number(beta.get([at])), 7);
        expect(fit.errors[at]).toBeCloseTo(Math.sqrt(variance * Number(inverse.get([at, at]))), 7);
      }
      for (let at = 0; at < rows; at += 1) expect(fit.leverages[at]).toBeCloseTo(Number(hat.get([at, at])), 10);
      expect(fit.deviation).toBeCloseTo(Math.sqrt(variance), 8);
    }
  });

  test.each([2, 3, 5])('condition number of %i columns, by the eigenvalues of its normal matrix', (unknowns) => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const { x, y } = scattered(seed * 17 + unknowns, 12, unknowns);
      const lengths = x[0]!.map((_, at) => Math.hypot(...x.map((row) => row[at]!)));
      const unit = math.matrix(x.map((row) => row.map((value, at) => value / lengths[at]!)));
      const { values } = math.eigs(math.multiply(math.transpose(unit), unit) as Matrix);
      const eigen = (values as Matrix).toArray() as number[];
      const theirs = Math.sqrt(Math.max(...eigen) / Math.min(...eigen));
      expect(leastSquares(x, y)!.condition / theirs).toBeCloseTo(1, 8);
    }
  });

  test('leaving each row out, by fits without it', () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const { x, y } = scattered(seed, 9, 3);
      const fast = leftOutResiduals(leastSquares(x, y)!);
      y.forEach((value, at) => {
        const rest = leastSquares(
          x.filter((_, other) => other !== at),
          y.filter((_, other) => other !== at),
        )!;
        expect(fast[at]).toBeCloseTo(value - Number(math.dot(x[at]!, [...rest.coefficients])), 7);
      });
    }
  });
});

test('a line through points is that of simple-statistics', () => {
  for (let seed = 1; seed <= 50; seed += 1) {
    const from = numbersFrom(seed * 101);
    const points = Array.from({ length: 8 }, (): [number, number] => [from(0, 30), from(40, 60)]);
    const theirs = linearRegression(points);
    const ours = leastSquares(
      points.map(([x]) => [1, x]),
      points.map(([, y]) => y),
    )!;
    expect(ours.coefficients[0]).toBeCloseTo(theirs.b, 8);
    expect(ours.coefficients[1]).toBeCloseTo(theirs.m, 9);
  }
});

test('a mean with its standard error: the t of simple-statistics', () => {
  for (let seed = 1; seed <= 50; seed += 1) {
    const from = numbersFrom(seed * 211);
    const values = Array.from({ length: 9 }, () => from(31, 34));
    const fit = leastSquares(
      values.map(() => [1]),
      values,
    )!;
    expect(fit.deviation).toBeCloseTo(sampleStandardDeviation(values), 10);
    // theirs divides by n, not n − 1, under the root
    const theirs = tTest(values, 32)! * Math.sqrt(8 / 9);
    expect((fit.coefficients[0]! - 32) / fit.errors[0]!).toBeCloseTo(theirs, 8);
  }
});

describe('columns that follow from each other', () => {
  test.each([
    [
      'a column of nothing',
      [
        [0, 1],
        [0, 2],
        [0, 3],
      ],
    ],
    [
      'twice the other',
      [
        [1, 2],
        [2, 4],
        [3, 6],
      ],
    ],
    [
      'the sum of two',
      [
        [1, 2, 3],
        [2, 1, 3],
        [5, 4, 9],
        [7, 1, 8],
      ],
    ],
  ])('%s: no fit', (_, rows) => {
    expect(
      leastSquares(
        rows,
        rows.map(() => 1),
      ),
    ).toBeUndefined();
  });

  test('fewer rows than unknowns: no fit', () => {
    expect(leastSquares([[1, 2]], [1])).toBeUndefined();
    expect(leastSquares([], [])).toBeUndefined();
  });

  test('condition number: 1 at right angles, endless where one is the other', () => {
    expect(
      conditionNumber([
        [3, 0],
        [0, 3],
      ]),
    ).toBeCloseTo(1, 14);
    expect(
      conditionNumber([
        [3, 0],
        [0, 6],
      ]),
    ).toBeCloseTo(2, 14);
    expect(
      conditionNumber([
        [1, 1],
        [1, 1],
      ]),
    ).toBe(Infinity);
  });
});

describe('Student’s t', () => {
  /** The density, its constant from the gamma function of simple-statistics, summed by Simpson's rule. */
  function summed(t: number, freedom: number): number {
    const constant = Math.exp(gammaln((freedom + 1) / 2) - gammaln(freedom / 2)) / Math.sqrt(freedom * Math.PI);
    const density = (x: number): number => constant * (1 + (x * x) / freedom) ** (-(freedom + 1) / 2);
    const steps = 2000;
    const width = t / steps;
    let sum = density(0) + density(t);
    for (let at = 1; at < steps; at += 1) sum += (at % 2 === 1 ? 4 : 2) * density(at * width);
    return (2 * width * sum) / 3;
  }

  test.each([1, 2, 3, 4, 5, 8, 13, 40, 99])(
    'its probability with %i degrees of freedom is its density summed',
    (freedom) => {
      for (const t of [0.1, 0.7, 1.3, 2, 3, 5]) expect(centralT(t, freedom)).toBeCloseTo(summed(t, freedom), 7);
    },
  );

  /** Closed forms of the inverse (*derived* from the density). */
  test.each([0.5, 0.8, 0.9, 0.95, 0.99, 0.999])(
    'its quantile at %d: closed forms of 1, 2 and 4 degrees',
    (confidence) => {
      expect(tQuantile(confidence, 1)).toBeCloseTo(Math.tan((Math.PI / 2) * confidence), 8);
      expect(tQuantile(confidence, 2)).toBeCloseTo(confidence * Math.sqrt(2 / (1 - confidence ** 2)), 10);
      const a = 1 - confidence ** 2;
      const q = Math.cos(Math.acos(Math.sqrt(a)) / 3) / Math.sqrt(a);
      expect(tQuantile(confidence, 4)).toBeCloseTo(2 * Math.sqrt(q - 1), 9);
    },
  );

  /** Printed in every table of t; *from memory*. */
  test.each([
    [1, 12.706],
    [3, 3.182],
    [4, 2.776],
    [5, 2.571],
    [10, 2.228],
    [20, 2.086],
    [30, 2.042],
  ])('at 95 in 100, with %i degrees, %d', (freedom, table) => {
    expect(tQuantile(0.95, freedom)).toBeCloseTo(table, 3);
  });

  test('with very many degrees it is the normal one, whose error function mathjs has', () => {
    for (const confidence of [0.5, 0.8, 0.95, 0.99]) {
      expect(math.erf(tQuantile(confidence, 20001) / Math.SQRT2)).toBeCloseTo(confidence, 4);
      expect(math.erf(tQuantile(confidence, 20000) / Math.SQRT2)).toBeCloseTo(confidence, 4);
    }
  });

  test('and back: the probability of a quantile is what was asked', () => {
    for (const freedom of [1, 2, 3, 7, 12, 57, 300]) {
      for (const confidence of [0.01, 0.5, 0.95, 0.9999]) {
        expect(centralT(tQuantile(confidence, freedom), freedom)).toBeCloseTo(confidence, 12);
      }
    }
  });
});

test('directions stay at right angles where one column is nearly the other: leverages of a line by their own formula', () => {
  const x = Array.from({ length: 10 }, (_, at) => 1e6 + at);
  const fit = leastSquares(
    x.map((value) => [1, value]),
    x.map((value) => 3 * value - 5),
  )!;
  // h = 1/n + (x − x̄)² / Σ (x − x̄)², and Σ is 82.5 for ten whole numbers in a row (*derived*)
  fit.leverages.forEach((leverage, at) => expect(leverage).toBeCloseTo(0.1 + (at - 4.5) ** 2 / 82.5, 9));
  expect(fit.leverages.reduce((sum, each) => sum + each, 0)).toBeCloseTo(2, 12);
});

test('rows are found as by leaving each out and taking its t by hand', () => {
  let found = 0;
  for (let seed = 1; seed <= 200; seed += 1) {
    const from = numbersFrom(seed * 7919);
    const values = Array.from({ length: 7 }, (_, at) => from(0, 1) + (at === 2 ? from(0, 4) : 0));
    const byHand = values.flatMap((value, at) => {
      const rest = values.filter((_, other) => other !== at);
      const mean = rest.reduce((sum, each) => sum + each, 0) / 6;
      const t = (value - mean) / (sampleStandardDeviation(rest) * Math.sqrt(1 + 1 / 6));
      return Math.abs(t) > tQuantile(1 - 0.05 / 7, 5) ? [at] : [];
    });
    const rows = values.map(() => [1]);
    expect(outliers(leastSquares(rows, values)!, values, 0.05)).toEqual(byHand);
    found += byHand.length;
  }
  expect(found).toBeGreaterThan(20);
  expect(found).toBeLessThan(180); // the border between found and not was among them
});

test('a row far off is found, by its residual from a fit without it', () => {
  const { rows, measured } = norris;
  expect(outliers(leastSquares(rows, measured)!, measured, 0.05)).toEqual([]);
  const wrong = measured.map((value, at) => (at === 10 ? value + 6 : value));
  expect(outliers(leastSquares(rows, wrong)!, wrong, 0.05)).toEqual([10]);
});
