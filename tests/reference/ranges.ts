/** What is usual, and what input checks must accept, which reaches further. Grams. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** Usual masses: MacKenzie et al. 2015 (driver heads of 174, 190 and 200 g); P. Dye (grips, shafts, irons). */
export const usualRanges = {
  driverHeadGrams: { low: 174, high: 200, source: 'MacKenzie et al. 2015' },
  gripGrams: { low: 45, high: 60, source: 'P. Dye' },
  shaftGrams: { low: 40, high: 130, source: 'P. Dye' },
  ironHeadGrams: { low: 250, high: 280, source: 'P. Dye' },
} as const satisfies Record<string, Range>;

/** What input checks accept: wedges, putters and juniors are clubs too. */
export const shopRanges = {
  headGrams: { low: 150, high: 420, source: 'common practice, no source' },
  gripGrams: { low: 15, high: 220, source: 'common practice, no source' },
} as const satisfies Record<string, Range>;
