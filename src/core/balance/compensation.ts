/** Grams that bring a reading back. */
import { BUTT_WEIGHT_INCHES, FULCRUM_INCHES, POINT_GRAM_INCHES } from '../constants';
import { fail, ok, type Result } from '../result';

/** Nearer to the fulcrum than this no sensible mass moves the reading. */
const NEAREST_INCHES = 0.5;

/**
 * Grams that undo a change of reading when put at a place on the club.
 *
 * Formula: `m = −Δ P / (x − 14)`. Positive: add there; negative: take away there. Source: moments.
 *
 * @param changePoints by how many points the reading moved
 * @param inches where the grams go, from the cap: about the play length for lead tape or a head screw, about 2 in less for a tip plug
 * @returns grams, or `atFulcrum` within half an inch of the fulcrum
 * @example compensationGrams(-2, 45) //=> { ok: true, value: 3.2 }
 */
export function compensationGrams(changePoints: number, inches: number): Result<number> {
  const lever = inches - FULCRUM_INCHES;
  if (Math.abs(lever) < NEAREST_INCHES) {
    return fail({ code: 'atFulcrum', field: 'weightInches', got: inches, expected: 'a place away from 14 in' });
  }
  const grams = (-changePoints * POINT_GRAM_INCHES) / lever;
  return ok(grams === 0 ? 0 : grams);
}

/**
 * Grams in the butt that undo a reading that rose: `Δ P / (14 − x)`.
 *
 * The same moment as {@link compensationGrams} on the other side of the fulcrum; it changes the number on the scale, neither the
 * feel of the head nor the inertia.
 *
 * @param changePoints by how many points the reading rose
 * @param inches where the weight sits, from the cap; 1 in by default
 * @example counterweightGrams(1) //=> { ok: true, value: 3.816 }
 */
export function counterweightGrams(changePoints: number, inches = BUTT_WEIGHT_INCHES): Result<number> {
  return compensationGrams(changePoints, inches);
}
