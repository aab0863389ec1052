/**
 * What the Equipment Rules say about grips and length, as far as numbers can tell. The tool warns; a committee or the ruling
 * body decides.
 *
 * Source: R&A / USGA Equipment Rules, effective 1 January 2019, Part 2 section 3 (grips) and the length of clubs;
 * Model Local Rule G-10 for 46 in.
 */
import type { RuleBreach } from '../plan/types';

export const RULES = {
  crossSectionInches: 1.75,
  gripLengthInches: 7,
  clubShortestInches: 18,
  clubLongestInches: 48,
  clubLongest46Inches: 46,
} as const;

/** What is checked; `undefined` is not known and not checked. */
export interface Checked {
  readonly upperInches?: number | undefined;
  readonly lowerInches?: number | undefined;
  readonly gripLengthInches?: number | undefined;
  readonly clubInches?: number | undefined;
  readonly putter?: boolean;
  readonly competition46?: boolean;
}

/** Two calliper readings this close are the same diameter. */
const SAME_INCHES = 0.002;

/** Sums of decimals may miss a limit by this much without breaking it. */
const ROUNDING = 1e-9;

/**
 * Every rule that the numbers given break, none where all is well.
 *
 * @example ruleBreaches({ clubInches: 49 }) //=> [{ rule: 'clubLong', inches: 49 }]
 */
export function ruleBreaches(checked: Checked): RuleBreach[] {
  const { upperInches: upper, lowerInches: lower, gripLengthInches: grip, clubInches: club } = checked;
  const found: RuleBreach[] = [];
  const thickest = Math.max(upper ?? 0, lower ?? 0);
  if (thickest > RULES.crossSectionInches + ROUNDING) found.push({ rule: 'crossSection', inches: thickest });
  if (grip !== undefined && grip < RULES.gripLengthInches - ROUNDING) found.push({ rule: 'gripLength', inches: grip });
  if (club !== undefined && club < RULES.clubShortestInches - ROUNDING) found.push({ rule: 'clubShort', inches: club });
  if (club !== undefined && !checked.putter) {
    if (club > RULES.clubLongestInches + ROUNDING) found.push({ rule: 'clubLong', inches: club });
    else if (checked.competition46 && club > RULES.clubLongest46Inches + ROUNDING)
      found.push({ rule: 'clubLong46', inches: club });
  }
  if (upper !== undefined && lower !== undefined && lower - upper > SAME_INCHES) {
    found.push({ rule: 'reverseTaper', upperInches: upper, lowerInches: lower });
  }
  return found;
}
