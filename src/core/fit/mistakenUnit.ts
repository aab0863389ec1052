/** A length that was measured in another unit than it was typed as. */
import { CM_PER_INCH, MM_PER_INCH } from '../units';

/** What a number most likely is, and the inches it then stands for. */
export interface MistakenUnit {
  readonly unit: 'mm' | 'cm';
  readonly inches: number;
}

/**
 * The metric unit in which a number that cannot be inches would be within range; undefined where it is within range as it stands, or
 * in no unit.
 *
 * Formula: `value / 25.4` or `value / 2.54`. Source: NIST SP 811.
 *
 * @param value as typed
 * @param range what is accepted in inches; where both units would do, millimetres win
 * @example mistakenUnit(193, { low: 5, high: 10 }) //=> { unit: 'mm', inches: 7.598 }
 */
export function mistakenUnit(
  value: number,
  range: { readonly low: number; readonly high: number },
): MistakenUnit | undefined {
  const within = (inches: number): boolean => inches >= range.low && inches <= range.high;
  if (within(value)) return undefined;
  if (within(value / MM_PER_INCH)) return { unit: 'mm', inches: value / MM_PER_INCH };
  return within(value / CM_PER_INCH) ? { unit: 'cm', inches: value / CM_PER_INCH } : undefined;
}
