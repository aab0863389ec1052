/** Which outside diameter a hand starts from: the size guide. */

/** One row of a size guide: a hand of this length, the middle finger that usually goes with it, and the diameter to start from. */
export interface SizeGuideRow {
  readonly handInches: number;
  readonly fingerInches: number | undefined;
  /** Outside diameter 2 in below the cap. */
  readonly diameterInches: number;
}

/**
 * The size guide a new workbook starts with; every row is the shop's to change.
 *
 * Source: *common practice, no source*. A hand of the median man (7.6 in, 193 mm: ANSUR II, Natick/TR-15/007) starts from the usual
 * standard diameter .900, one of about 8.5 in from the usual midsize .960; the rest lies on a line through these that flattens towards
 * small hands. A middle finger is about 0.42 of the hand (*practice*).
 */
export const DEFAULT_SIZE_GUIDE: readonly SizeGuideRow[] = [
  { handInches: 5.5, fingerInches: 2.3, diameterInches: 0.81 },
  { handInches: 6.25, fingerInches: 2.6, diameterInches: 0.85 },
  { handInches: 7, fingerInches: 2.95, diameterInches: 0.88 },
  { handInches: 7.6, fingerInches: 3.2, diameterInches: 0.9 },
  { handInches: 8, fingerInches: 3.35, diameterInches: 0.92 },
  { handInches: 8.5, fingerInches: 3.55, diameterInches: 0.96 },
  { handInches: 9.25, fingerInches: 3.9, diameterInches: 1.02 },
];
