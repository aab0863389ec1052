/** Moment of inertia about the butt end: a readout beside the reading. */
import { KG_CM2_PER_G_IN2 } from '../units';

/**
 * Inertia that a mass adds about the butt, in kg·cm²: `m x²`.
 *
 * Source: definition; 1 g·in² = 0.0064516 kg·cm².
 *
 * @param grams mass
 * @param inches where it sits, from the cap
 * @example massInertia(10, 4.2) //=> 1.138
 */
export function massInertia(grams: number, inches: number): number {
  return grams * inches * inches * KG_CM2_PER_G_IN2;
}

/**
 * Inertia about an axis parallel to one through the centre of mass, in any consistent units: `I + m d²`.
 *
 * Source: parallel-axis theorem.
 *
 * @param centralInertia inertia about the centre of mass
 * @param mass mass of the body
 * @param distance between the two axes
 * @example parallelAxis(0.077, 0.394, 0.753) //=> 0.3004
 */
export function parallelAxis(centralInertia: number, mass: number, distance: number): number {
  return centralInertia + mass * distance * distance;
}

/**
 * By how much a body's inertia about the butt changes when the butt moves away from it, in kg·cm²: `m (2 x δ + δ²)`.
 *
 * Source: parallel-axis theorem, applied twice.
 *
 * @param grams mass of the body
 * @param balanceInches its balance point before, from the butt
 * @param addedInches by how much the club gets longer at the butt
 */
export function shiftInertia(grams: number, balanceInches: number, addedInches: number): number {
  return massInertia(grams, balanceInches + addedInches) - massInertia(grams, balanceInches);
}
