/** Sentences for how the jobs of the screens that help choosing end. */
import type { CompareDone, HandDone } from '../workbook/outcomes';
import { listed } from './listed';
import { NO_CLUBS, sayNotDone, sayOccupied } from './outcomes';
import { countOf } from './readings';

/** How filling in a comparison ended. */
export function sayCompared(end: CompareDone): string {
  if (end.done) {
    const { sheet, grips, unbeaten } = end;
    return `${countOf(grips, 'grip')} compared in ${sheet}, ${unbeaten} of them unbeaten. The sheet holds values; compare again after a change.`;
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'noClubs':
      return NO_CLUBS;
    case 'nothingTried':
      return 'No grip was tried on these clubs, so there is nothing to fill in. Narrow down less, or complete Stock.';
    case 'outOfDate':
      return `${listed(end.tables)} changed since grips were compared. Nothing was written; compare again.`;
    case 'noRoom':
      return 'The comparison would run over the edge of the sheet. Narrow down what is compared.';
    default:
      return sayNotDone(end);
  }
}

/** How keeping the measures of a hand ended. */
export function sayHand(end: HandDone): string {
  if (end.done) {
    const { job, cells } = end;
    return cells > 0
      ? `Hand of job ${job} kept in Jobs: ${countOf(cells, 'cell')} changed.`
      : `Jobs has these measures for job ${job} already, or there was none to keep.`;
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'jobNotListed':
      return `Jobs has no row for ${end.job ? `job ${end.job}` : 'a job without a name'}. Nothing was written; add the row, then keep the hand.`;
    default:
      return sayNotDone(end);
  }
}
