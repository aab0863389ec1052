/** What a ± is made of, in words. */
import type { SpreadParts } from '../core/index';

/** Each part by its cause, as it follows "± by". */
export const SPREAD_WORDS: Readonly<Record<keyof SpreadParts, string>> = {
  oldMass: 'old grip mass',
  oldBalance: 'old balance point',
  newMass: 'new grip mass',
  newBalance: 'new balance point',
  tape: 'tape',
  cap: 'cap',
  length: 'length',
  body: 'club mass',
  reading: 'scale',
};

/** What a person can look into: a grip as a whole, where the sheet tells mass and balance point apart. */
const CAUSES: readonly (readonly [string, readonly (keyof SpreadParts)[]])[] = [
  ['old grip', ['oldMass', 'oldBalance']],
  ['new grip', ['newMass', 'newBalance']],
  ['tape', ['tape']],
  ['cap', ['cap']],
  ['length', ['length']],
  ['club mass', ['body']],
  ['scale', ['reading']],
];

/** Causes that show in a tenth of a point, the largest first: `old grip 0.8, new grip 0.4`. */
export function saySpread(parts: SpreadParts): string {
  return CAUSES.map(([cause, keys]) => ({ cause, points: Math.hypot(...keys.map((key) => parts[key])) }))
    .filter(({ points }) => points >= 0.05)
    .sort((one, other) => other.points - one.points)
    .map(({ cause, points }) => `${cause} ${points.toFixed(1)}`)
    .join(', ');
}
