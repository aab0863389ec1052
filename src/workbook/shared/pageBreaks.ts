/** Where pages begin, so that what belongs together is not torn apart. */

/** Rows that stay on one page. */
export interface Together {
  readonly from: number;
  readonly points: number;
}

/**
 * Fills pages in order; what does not fit any more begins the next one.
 *
 * @param room points of a page
 * @param repeated points of the rows that are printed again on top of every page but the first
 * @returns the row that begins each page but the first; what is higher than a page begins one, and is torn by the host
 */
export function pageBreaks(blocks: readonly Together[], room: number, repeated: number): number[] {
  const breaks: number[] = [];
  let used = 0;
  for (const { from, points } of blocks) {
    if (used > 0 && used + points > room) {
      breaks.push(from);
      used = repeated;
    }
    used += points;
  }
  return breaks;
}
