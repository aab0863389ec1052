/** How well unknowns can be told apart. */

/** Sweeps after which columns of a few unknowns are at right angles, however they lay (*practice*: six or so do). */
const MOST_SWEEPS = 40;

/**
 * Condition number of a small matrix: its largest singular value by its smallest; Infinity where the smallest is nothing.
 *
 * Formula: one-sided Jacobi: two columns at a time are turned in their plane until all stand at right angles, when their lengths are the
 * singular values. Source: M. R. Hestenes 1958 (*from memory*).
 *
 * @param columns of equal length, as many as there are unknowns
 */
export function conditionNumber(columns: readonly (readonly number[])[]): number {
  const turned = columns.map((column) => [...column]);
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep += 1) {
    let turns = 0;
    for (let one = 0; one < turned.length; one += 1) {
      for (let other = one + 1; other < turned.length; other += 1) {
        if (turn(turned[one] ?? [], turned[other] ?? [])) turns += 1;
      }
    }
    if (turns === 0) break;
  }
  const lengths = turned.map((column) => Math.hypot(...column));
  const least = Math.min(...lengths);
  const most = Math.max(...lengths);
  return least > most * Number.EPSILON ? most / least : Infinity;
}

/** Turns two columns in their plane to a right angle; false where they stand so already. */
function turn(a: number[], b: number[]): boolean {
  const across = dot(a, b);
  const aa = dot(a, a);
  const bb = dot(b, b);
  if (Math.abs(across) <= Number.EPSILON * Math.sqrt(aa * bb)) return false;
  const half = (bb - aa) / (2 * across);
  const tangent = (half < 0 ? -1 : 1) / (Math.abs(half) + Math.hypot(1, half));
  const cosine = 1 / Math.hypot(1, tangent);
  const sine = cosine * tangent;
  a.forEach((value, at) => {
    const beside = b[at] ?? 0;
    a[at] = cosine * value - sine * beside;
    b[at] = sine * value + cosine * beside;
  });
  return true;
}

/** Sum of the products. */
export function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, at) => sum + value * (b[at] ?? 0), 0);
}
