/** Sentences for how the jobs at the bench end. */
import type { CheckInDone, CloseDone, JudgeDone, NotDone, TicketDone } from '../workbook/outcomes';
import { sayIssue } from './issues';
import { NO_CLUBS, sayNotDone, sayOccupied } from './outcomes';
import { countOf } from './readings';

function sayNotReady(end: Extract<CheckInDone, { reason: 'noClubs' | 'notPlanned' }> | NotDone): string {
  if (end.reason === 'noClubs') return NO_CLUBS;
  return end.reason === 'notPlanned' ? sayIssue(end.issue) : sayNotDone(end);
}

/** How filling a bench ticket ended. */
export function sayTicket(end: TicketDone): string {
  if (end.done)
    return `Ticket of ${countOf(end.clubs, 'club')} filled into ${end.sheet}. Fill it again after a change.`;
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'noGrips':
      return 'No club of this job has a grip chosen. Fill a plan with a grip first.';
    case 'noRoom':
      return 'The ticket would run over the edge of the sheet.';
    default:
      return sayNotReady(end);
  }
}

/** How starting a check-in ended. */
export function sayCheckIn(end: CheckInDone): string {
  if (end.done) {
    return end.added > 0
      ? `${countOf(end.added, 'row')} begun in Checkin for job ${end.job}. Type what is measured, then judge it.`
      : `Every club of job ${end.job} that gets a grip has its row in Checkin already.`;
  }
  if (end.reason !== 'noRows') return sayNotReady(end);
  return `Checkin has ${countOf(end.free, 'blank row')} and ${end.needed} are needed. Make the table longer by its lower right corner, or delete rows of old jobs. Nothing was written.`;
}

/** How judging a check-in ended; whether the job may be closed is said by the caller. */
export function sayJudged(end: JudgeDone): string {
  if (end.done) return `${countOf(end.cells, 'cell')} of Checkin changed for job ${end.job}.`;
  if (end.reason === 'occupied') return sayOccupied(end);
  if (end.reason === 'notStarted') return 'Checkin has no row of this job. Start the check-in first.';
  return sayNotReady(end);
}

/** How closing a job ended, where nothing of its check-in stands against it. */
export function sayClosed(end: Exclude<CloseDone, { reason: 'open' }>): string {
  if (end.done) return `Job ${end.job} is Done in Jobs.`;
  if (end.reason === 'occupied') return sayOccupied(end);
  if (end.reason === 'jobNotListed') return `Jobs has no row for job ${end.job}. Add the row, then close it.`;
  return sayNotReady(end);
}
