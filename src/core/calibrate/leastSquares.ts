/** Least squares with a few unknowns, how sure it is of each, and which rows it does not believe. */
import { conditionNumber, dot } from './condition';
import { tQuantile } from './studentT';

/** What fits best. */
export interface Fit {
  readonly coefficients: readonly number[];
  /** What is measured less what is fitted, by row. */
  readonly residuals: readonly number[];
  /** How much of its own fitted value each row decides, 0 to 1. */
  readonly leverages: readonly number[];
  /** Rows less unknowns. */
  readonly freedom: number;
  /** Standard deviation of what is measured about what is fitted; 0 where there is no freedom left to tell. */
  readonly deviation: number;
  /** Standard error of each coefficient. */
  readonly errors: readonly number[];
  /** Condition number of the columns, each brought to length 1. */
  readonly condition: number;
}

/** What is left of a column of length 1 below this is noise: the column follows from the others. */
const NOTHING_LEFT = 1e-12;

/**
 * Coefficients with the least sum of squared residuals, `y = X β + e`.
 *
 * Formula: each column is brought to length 1 and freed of those before it (Gram–Schmidt, done twice, so that the directions Q are at right
 * angles to the last digit); then `R β = Qᵀ y` from the last unknown up. The sums of squares of the normal equations, which lose
 * half the digits, are never formed. `s² = Σ e² / (rows − unknowns)`, standard errors `s` times the row lengths of `R⁻¹`, leverages
 * the squared row lengths of Q. Source: least squares; L. Giraud, J. Langou and M. Rozložník on doing it twice (*from memory*).
 *
 * @param rows one row of X for each measurement, a column for each unknown
 * @param measured y
 * @returns undefined where there are fewer rows than unknowns, or one column follows from the others
 */
export function leastSquares(rows: readonly (readonly number[])[], measured: readonly number[]): Fit | undefined {
  const unknowns = rows[0]?.length ?? 0;
  if (unknowns === 0 || rows.length < unknowns) return undefined;
  const columns = Array.from({ length: unknowns }, (_, at) => rows.map((row) => row[at] ?? 0));
  const lengths = columns.map((column) => Math.hypot(...column));
  if (!lengths.every((length) => length > 0)) return undefined;
  const parts = orthogonal(columns.map((column, at) => column.map((value) => value / (lengths[at] ?? 1))));
  if (!parts) return undefined;
  const { across, right } = parts;
  const inverse = invertedUpper(right);
  const along = across.map((column) => dot(column, measured));
  const coefficients = inverse.map((row, at) => dot(row, along) / (lengths[at] ?? 1));
  const residuals = measured.map((value, at) => value - dot(rows[at] ?? [], coefficients));
  const freedom = rows.length - unknowns;
  const deviation = freedom > 0 ? Math.sqrt(dot(residuals, residuals) / freedom) : 0;
  return {
    coefficients,
    residuals,
    leverages: rows.map((_, at) => across.reduce((sum, column) => sum + (column[at] ?? 0) ** 2, 0)),
    freedom,
    deviation,
    errors: inverse.map((row, at) => (deviation * Math.hypot(...row)) / (lengths[at] ?? 1)),
    condition: conditionNumber(right),
  };
}

/** Columns at right angles, and how the given ones are made of them: `right[j][i]` of column i is in column j. */
function orthogonal(columns: readonly (readonly number[])[]): { across: number[][]; right: number[][] } | undefined {
  const across: number[][] = [];
  const right: number[][] = [];
  for (const column of columns) {
    const rest = [...column];
    const shares = columns.map(() => 0);
    for (let pass = 0; pass < 2; pass += 1) {
      across.forEach((direction, at) => {
        const share = dot(direction, rest);
        shares[at] = (shares[at] ?? 0) + share;
        direction.forEach((value, row) => void (rest[row] = (rest[row] ?? 0) - share * value));
      });
    }
    const length = Math.hypot(...rest);
    if (!(length > NOTHING_LEFT)) return undefined;
    shares[across.length] = length;
    across.push(rest.map((value) => value / length));
    right.push(shares);
  }
  return { across, right };
}

/** Inverse of the upper triangle whose columns these are, by rows. */
function invertedUpper(columns: readonly (readonly number[])[]): number[][] {
  const size = columns.length;
  const inverse = columns.map(() => new Array<number>(size).fill(0));
  for (let column = 0; column < size; column += 1) {
    for (let row = column; row >= 0; row -= 1) {
      let sum = row === column ? 1 : 0;
      for (let at = row + 1; at <= column; at += 1) sum -= (columns[at]?.[row] ?? 0) * (inverse[at]?.[column] ?? 0);
      const line = inverse[row];
      if (line) line[column] = sum / (columns[row]?.[row] ?? 1);
    }
  }
  return inverse;
}

/** Half the width of a confidence interval of one coefficient: `t s.e.`. */
export function halfWidth(fit: Fit, at: number, confidence: number): number {
  return tQuantile(confidence, fit.freedom) * (fit.errors[at] ?? 0);
}

/** What each row misses by when it has no say in the fit: `e / (1 − h)`; undefined for a row without which there is no fit. */
export function leftOutResiduals(fit: Fit): readonly (number | undefined)[] {
  return fit.residuals.map((residual, at) => {
    const left = 1 - (fit.leverages[at] ?? 1);
    return left > 1e-9 ? residual / left : undefined;
  });
}

/** Residuals below this part of what is measured are binary noise, however even the others are. */
const NOISE = 1e-9;

/**
 * Rows that do not belong: those that lie farther from a fit made without them than chance allows.
 *
 * Formula: `t = e / (s₍ᵢ₎ √(1 − h))`, s₍ᵢ₎ without the row; against the t quantile at `1 − level / rows`, since every row is tried. Source:
 * externally studentized residuals with Bonferroni's bound (*from memory*). Two that are wrong alike can hide each other.
 *
 * @returns positions of the rows
 */
export function outliers(fit: Fit, measured: readonly number[], level: number): readonly number[] {
  const freedom = fit.freedom - 1;
  if (freedom < 1) return [];
  const limit = tQuantile(1 - level / measured.length, freedom);
  const noise = NOISE * Math.max(...measured.map(Math.abs));
  const total = fit.freedom * fit.deviation ** 2;
  return leftOutResiduals(fit).flatMap((without, at) => {
    const residual = fit.residuals[at] ?? 0;
    if (without === undefined || Math.abs(residual) <= noise) return [];
    const rest = Math.sqrt(Math.max(0, total - residual * without) / freedom);
    return Math.abs(residual) > limit * rest * Math.sqrt(residual / without) ? [at] : [];
  });
}

/** Root of the mean of the squares; undefined of none. */
export function rootMeanSquare(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : Math.sqrt(dot(values, values) / values.length);
}
