/** Sentences for how the jobs at the bench end. */
import type { BenchPageDone, CheckInDone, CloseDone, JobNotReady, JudgeDone, RedoDone } from '../workbook/benchDone';
import type { CannotTake } from '../core/index';
import type { NotDone } from '../workbook/outcomes';
import { sayIssue } from './issues';
import { listed } from './listed';
import { NO_CLUBS, sayNotDone, sayOccupied } from './outcomes';
import { countOf } from './readings';
import { sayRenamed } from './stock';

function sayNotReady(end: JobNotReady | NotDone): string {
  if (end.reason === 'noClubs') return NO_CLUBS;
  return end.reason === 'notPlanned' ? sayIssue(end.issue) : sayNotDone(end);
}

/** How filling a page of a job ended. @param what the page, `Ticket` */
function sayPage(end: BenchPageDone, what: string): string {
  if (end.done)
    return `${what} of ${countOf(end.clubs, 'club')} filled into ${end.sheet}. Fill it again after a change.`;
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'noGrips':
      return 'No club of this job has a grip chosen. Fill a plan with a grip first.';
    case 'noRoom':
      return `The page would run over the edge of the sheet.`;
    default:
      return sayNotReady(end);
  }
}

/** How filling a bench ticket ended. */
export function sayTicket(end: BenchPageDone): string {
  return sayPage(end, 'Ticket');
}

/** How filling club labels ended. */
export function sayLabels(end: BenchPageDone): string {
  return sayPage(end, 'Labels');
}

/** How filling a pick-up slip ended. */
export function saySlip(end: BenchPageDone): string {
  return sayPage(end, 'Pick-up slip');
}

/** How starting a check-in ended. */
export function sayCheckIn(end: CheckInDone): string {
  if (!end.done) return sayNotReady(end);
  return end.added > 0
    ? `${countOf(end.added, 'row')} begun in Checkin for job ${end.job}. Type what is measured, then judge it.`
    : `Every club of job ${end.job} that gets a grip has its row in Checkin already.`;
}

/** How judging a check-in ended; whether the job may be closed is said by the caller. */
export function sayJudged(end: JudgeDone): string {
  if (end.done && end.cells === 0) return `Checkin says so already for job ${end.job}.`;
  if (end.done) return `${countOf(end.cells, 'cell')} of Checkin changed for job ${end.job}.`;
  if (end.reason === 'occupied') return sayOccupied(end);
  if (end.reason === 'notStarted') return 'Checkin has no row of this job. Start the check-in first.';
  return sayNotReady(end);
}

function notListed(job: string): string {
  return `Jobs has no row for job ${job}. Add the row, then try again.`;
}

/** How closing a job ended, where nothing of its check-in stands against it. */
export function sayClosed(end: Exclude<CloseDone, { reason: 'open' }>): string {
  if (end.done) {
    if (end.already) return `Job ${end.job} is Done in Jobs already. Nothing was changed.`;
    const used = end.movements
      ? ` What it used was taken from stock: ${countOf(end.movements, 'row')} in Movements.`
      : '';
    return [`Job ${end.job} is Done in Jobs.${used}`, ...sayRenamed(end.renamed ?? [])].join(' ');
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'jobNotListed':
      return notListed(end.job);
    case 'unreadable':
      return `${sayIssue(end.issue)} Nothing was written; then close the job.`;
    case 'cannotTake':
      return sayTooFew(end.cannot);
    default:
      return sayNotReady(end);
  }
}

function sayTooFew({ issues, tooFew }: CannotTake): string {
  const short = tooFew.map(({ item, onHand, wanted }) => `${item} (${onHand} on hand, ${wanted} used)`);
  return [
    ...issues.map(sayIssue),
    ...(short.length > 0 ? [`By the tables there is too little of ${listed(short)}.`] : []),
    'Nothing was written; set the count right in Stock, then close the job.',
  ].join(' ');
}

/** How beginning a redo ended. */
export function sayRedo(end: RedoDone): string {
  if (end.done) {
    return `Round ${end.round} of job ${end.job} is begun in Checkin for ${listed(end.clubs)}, and the job is Open again. Nothing is charged; fill their ticket next.`;
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'notClosed':
      return `Job ${end.job} is not closed, so nothing of it comes back. Put its clubs right in the check-in that is open.`;
    case 'nothingChosen':
      return 'No club is chosen. Choose those that came back.';
    case 'clubsUnknown':
      return `This job has no ${listed(end.clubs)} with a grip. Nothing was written; look at Clubs.`;
    case 'jobNotListed':
      return notListed(end.job);
    default:
      return sayNotReady(end);
  }
}
