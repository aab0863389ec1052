/** Moments about the balance scale's fulcrum. Positions are measured from the outer end of the cap. */
import { FULCRUM_INCHES, POINT_GRAM_INCHES, POINTS_AT_A0 } from '../constants';

/**
 * Moment of a mass about the fulcrum, in g·in: `m (x − 14)`.
 *
 * Source: definition of a moment; the 14 in fulcrum is the scale's.
 *
 * @param grams mass
 * @param inches where it sits, from the cap
 * @param fulcrumInches where the fulcrum stands
 */
export function momentGramInches(grams: number, inches: number, fulcrumInches = FULCRUM_INCHES): number {
  return grams * (inches - fulcrumInches);
}

/**
 * Points by which a mass moves the reading: `m (x − 14) / P`; minus at the grip, plus at the head.
 *
 * Source: definition; P = 1.75 oz·in (*memory*).
 *
 * @param grams mass, negative when it is taken away
 * @param inches where it sits, from the cap
 * @example massPoints(5, 4.2) //=> -0.9877
 */
export function massPoints(grams: number, inches: number): number {
  return momentGramInches(grams, inches) / POINT_GRAM_INCHES;
}

/**
 * Points above A0 of a whole club: `m (b − 14) / P − 92`.
 *
 * Source: D0 = 213.5 oz·in (*memory*), supported by posted readings.
 *
 * @param totalGrams mass of the club
 * @param balanceInches its balance point from the cap
 * @example clubPoints(460, 27.21) //=> 30.48
 */
export function clubPoints(totalGrams: number, balanceInches: number): number {
  return massPoints(totalGrams, balanceInches) - POINTS_AT_A0;
}

/**
 * Moment about the fulcrum of a club that reads so many points, in g·in.
 *
 * @param points points above A0
 */
export function readingMoment(points: number): number {
  return (points + POINTS_AT_A0) * POINT_GRAM_INCHES;
}
