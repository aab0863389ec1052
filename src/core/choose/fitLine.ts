/** Lines through points and the middle of numbers: what a group of readings has in common. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** `y = intercept + slope x`. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
}

export function lineAt(line: Line, x: number): number {
  return line.intercept + line.slope * x;
}

/** The middle number, or the mean of the two middle ones; undefined of none. */
export function median(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  return upper === undefined || lower === undefined ? undefined : (lower + upper) / 2;
}

/**
 * The line with the least sum of squared errors in y.
 *
 * Formula: `slope = Σ (x − x̄)(y − ȳ) / Σ (x − x̄)²`, through the mean point. Taken about the means, since lengths that lie close
 * together far from zero lose all their digits in `n Σ x² − (Σ x)²`. Source: least squares.
 *
 * @returns undefined where all x are the same, or nothing is given
 */
export function leastSquaresLine(points: readonly Point[]): Line | undefined {
  const x = mean(points.map((point) => point.x));
  const y = mean(points.map((point) => point.y));
  let across = 0;
  let along = 0;
  for (const point of points) {
    across += (point.x - x) * (point.y - y);
    along += (point.x - x) ** 2;
  }
  if (!(along > 0)) return undefined;
  const slope = across / along;
  return { slope, intercept: y - slope * x };
}

/**
 * A line that a few wild points do not move: the median of the slopes of all pairs, and the median of what it leaves.
 *
 * Formula: `slope = median (yⱼ − yᵢ) / (xⱼ − xᵢ)` over pairs whose x differ; `intercept = median (y − slope x)`. Source: H. Theil
 * 1950; P. K. Sen 1968, for equal x (*from memory*).
 *
 * @returns undefined where all x are the same, or nothing is given
 */
export function robustLine(points: readonly Point[]): Line | undefined {
  const slopes: number[] = [];
  points.forEach((one, at) => {
    for (const other of points.slice(at + 1)) {
      if (other.x !== one.x) slopes.push((other.y - one.y) / (other.x - one.x));
    }
  });
  const slope = median(slopes);
  if (slope === undefined) return undefined;
  const intercept = median(points.map(({ x, y }) => y - slope * x));
  return intercept === undefined ? undefined : { slope, intercept };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
