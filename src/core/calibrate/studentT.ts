/** Student's t: how far a mean may be off by chance when its scatter is itself only estimated. */

/**
 * Probability that a t of so many degrees of freedom lies between −t and t.
 *
 * Formula: with `t = √ν tan θ` the density becomes `cos^(ν−1) θ`, whose integral is a finite sum for whole ν:
 * odd ν `2/π [θ + sin θ (cos θ + 2/3 cos³ θ + 2·4/(3·5) cos⁵ θ + …)]`, even ν `sin θ (1 + 1/2 cos² θ + 1·3/(2·4) cos⁴ θ + …)`,
 * up to the power ν − 2. Source: integration by parts; Abramowitz and Stegun 26.7.3 and 26.7.4 (*from memory*).
 *
 * @param t 0 or more
 * @param freedom degrees of freedom ν, a whole number from 1
 * @example centralT(1, 1) //=> 0.5
 */
export function centralT(t: number, freedom: number): number {
  return centralAt(Math.atan(t / Math.sqrt(freedom)), freedom);
}

/**
 * The t that lies this far out: between −t and t is the given part of all cases.
 *
 * Formula: the inverse of {@link centralT}, by halving the angle θ, in which it never falls. Source: as there.
 *
 * @param confidence part of all cases, between 0 and 1: 0.95 for a 95 % interval
 * @param freedom degrees of freedom, a whole number from 1
 * @example tQuantile(0.95, 4) //=> 2.776
 */
export function tQuantile(confidence: number, freedom: number): number {
  let low = 0;
  let high = Math.PI / 2;
  // each step halves the angle that is left; after 60 nothing of it is left that a number could hold
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (centralAt(middle, freedom) < confidence) low = middle;
    else high = middle;
  }
  return Math.sqrt(freedom) * Math.tan((low + high) / 2);
}

function centralAt(angle: number, freedom: number): number {
  const squared = Math.cos(angle) ** 2;
  const odd = freedom % 2 === 1;
  let term = odd ? Math.cos(angle) : 1;
  let sum = 0;
  for (let power = odd ? 1 : 0; power <= freedom - 2; power += 2) {
    sum += term;
    term *= (squared * (power + 1)) / (power + 2);
  }
  const bend = Math.sin(angle) * sum;
  return odd ? (2 / Math.PI) * (angle + bend) : bend;
}
