/** When check-ins say enough. */
import { fail, type Issue } from '../result';

/** Usual confidence of an interval: it misses the truth once in twenty (*practice*). */
export const CONFIDENCE = 0.95;

/** Fewest clubs more than there are unknowns: with fewer, the t quantile alone makes an interval twice as wide (*practice*). */
export const LEAST_FREEDOM = 3;

/**
 * Highest condition number, columns brought to length 1, at which two unknowns still count as told apart (D. Belsley, E. Kuh and R. Welsch,
 * "Regression Diagnostics", 1980: harm from about 30; *from memory*).
 */
export const MOST_CONDITION = 30;

/** Chance that a sound set of check-ins has a club flagged (*practice*). */
export const FLAG_LEVEL = 0.05;

export function tooFew(field: string, got: number, least: number): { readonly ok: false; readonly issue: Issue } {
  return fail({ code: 'tooFew', field, got, expected: 'check-ins', detail: least });
}
