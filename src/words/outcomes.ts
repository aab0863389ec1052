/** Sentences for how the jobs on a workbook end: what was done; or what was wrong, where, and what to do. */
import type {
  Blocked,
  CheckInDone,
  CloseDone,
  CompareDone,
  FillDone,
  Filled,
  FreezeDone,
  HandDone,
  JudgeDone,
  LessonDone,
  NotDone,
  Occupied,
  SetUpDone,
  TicketDone,
  UndoDone,
  WhyValues,
} from '../workbook/outcomes';
import type { PortError, PortErrorCode } from '../workbook/port';
import { sayIssue } from './issues';
import { countOf } from './readings';

/** Seven tables fit. */
const MOST_LISTED = 7;

/** `A1`, `A1 and B2`, `A1, B2 and 5 more`. */
export function listed(things: readonly string[]): string {
  const shown = things.length > MOST_LISTED ? things.slice(0, MOST_LISTED - 1) : things;
  const rest = things.length - shown.length;
  if (rest > 0) return `${shown.join(', ')} and ${rest} more`;
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1) ?? ''}`;
}

/* ------------------------------------------------------------------ what the workbook refused */

const PORT_SENTENCES: Readonly<Record<PortErrorCode, (cells: string, hostSaid: string) => string>> = {
  notLookedAt: (cells) =>
    `${cells || 'Some cells'} changed while this was being prepared. Nothing was written; try again.`,
  protected: (cells) =>
    `${cells ? `The sheet ${cells}` : 'The workbook or one of its sheets'} is protected. ` +
    'Nothing was written; take the protection off and try again.',
  merged: (cells) => `${cells} are merged cells. Nothing was written; unmerge them or choose another place.`,
  filtered: (cells) => `A filter hides rows of ${cells}. Nothing was written; clear the filter and try again.`,
  tableInTheWay: (cells) => `The table ${cells} is in the way. Nothing was written; choose a place clear of it.`,
  editing: () => 'A cell is being edited. Press Enter to finish it, then try again.',
  putBack: (_, hostSaid) =>
    `The workbook refused a step and everything was put back as it was.${said(hostSaid)} Save, then try again.`,
  halfWritten: (cells, hostSaid) =>
    `The workbook failed half way and could not be put back.${said(hostSaid)} Look at ${cells || 'the cells just written'}, ` +
    'then use Undo last fill.',
  unsupported: (_, hostSaid) => `This version of the spreadsheet cannot do that.${said(hostSaid)} Nothing was written.`,
  host: (_, hostSaid) => `The workbook did not answer.${said(hostSaid)} Nothing was written; try again.`,
};

function said(hostSaid: string): string {
  return hostSaid ? ` It said: “${hostSaid.replace(/[.\s]+$/, '')}”.` : '';
}

/** Why a read or a change did not happen. */
export function sayPortError(error: PortError): string {
  return PORT_SENTENCES[error.code](listed(error.cells), error.hostSaid);
}

function sayNotDone(end: NotDone): string {
  switch (end.reason) {
    case 'port':
      return sayPortError(end.error);
    case 'tableMissing':
      return `There is no table ${end.table}. Use Set up this workbook to make it.`;
    case 'columnMissing':
      return (
        `The table ${end.table} has no ${end.headers.length === 1 ? 'column' : 'columns'} ${listed(end.headers)}. ` +
        'Nothing was written; add the heading, or leave that choice as it is.'
      );
  }
}

const CLUBS_MOVED =
  'Clubs has changed since these were chosen: rows were sorted, added or renamed. Nothing was written; look at the plan once more and try again.';

const NO_CLUBS =
  'There are no clubs to plan. Name the job in the Job column of Clubs, or choose rows that hold a club.';

function sayOccupied({ cells }: Occupied): string {
  return `${listed(cells)} ${cells.length === 1 && !cells[0]?.includes(':') ? 'holds' : 'hold'} something of yours. Nothing was written; write over it, or choose another place.`;
}

/* ------------------------------------------------------------------ the jobs */

const WHY_VALUES: Readonly<Record<WhyValues, string>> = {
  asked: '',
  selection: ' It holds values, since only a whole job can follow its tables.',
  large: ' It holds values: so long a plan would slow the workbook down.',
  noSpill: ' It holds values: this spreadsheet cannot fill many cells from one formula.',
};

function sayFilled({ sheet, clubs, choicesWritten, whyValues }: Filled): string {
  const choices = choicesWritten > 0 ? `, ${countOf(choicesWritten, 'cell')} of Clubs changed` : '';
  const kind = whyValues === null ? ' It follows the tables.' : WHY_VALUES[whyValues];
  return `Plan of ${countOf(clubs, 'club')} filled into ${sheet}${choices}.${kind}`;
}

/** How filling a plan ended. */
export function sayFill(end: FillDone): string {
  if (end.done) return sayFilled(end);
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'clubsMoved':
      return CLUBS_MOVED;
    case 'noClubs':
      return NO_CLUBS;
    case 'notPlanned':
      return sayIssue(end.issue);
    case 'noRoom':
      return 'The plan would run over the edge of the sheet. Choose a cell further up and to the left.';
    default:
      return sayNotDone(end);
  }
}

/** How freezing a plan ended. */
export function sayFreeze(end: FreezeDone): string {
  if (end.done)
    return `${countOf(end.cells, 'cell')} in ${end.sheet} now hold values; they no longer follow the tables.`;
  switch (end.reason) {
    case 'planGone':
      return 'This plan is no longer in the workbook. Fill it again.';
    case 'alreadyValues':
      return 'This plan holds values already; there is nothing to freeze.';
    case 'notCalculated':
      return `${end.cell} shows ${end.error || 'nothing'} instead of a plan, so there are no values to keep. ${mend(end.error)}`;
    default:
      return sayNotDone(end);
  }
}

function mend(error: string): string {
  if (error === '#SPILL!') return 'Clear the cells in its way, then freeze.';
  if (error === '#NAME?') return 'Load the add-in, wait for the plan, then freeze.';
  return 'Mend what it complains about, then freeze.';
}

/** How taking back ended. */
export function sayUndo(end: UndoDone): string {
  if (end.done) {
    const { label, restored, left, notFound } = end.reverted;
    const kept = left.length > 0 ? ` Left as you changed them since: ${listed(left)}.` : '';
    const lost =
      notFound.length > 0 ? ` Left alone, since they were not found for certain: ${rowsListed(notFound)}.` : '';
    return `Taken back: ${label} (${countOf(restored, 'cell')}).${kept}${lost}`;
  }
  return end.reason === 'nothingToUndo' ? 'There is no fill to take back.' : sayNotDone(end);
}

/** Each row has commas in its name. */
function rowsListed(rows: readonly string[]): string {
  const shown = rows.slice(0, MOST_LISTED).join('; ');
  return rows.length > MOST_LISTED ? `${shown}; and ${rows.length - MOST_LISTED} more` : shown;
}

/** How using a lesson ended. */
export function sayLesson(end: LessonDone): string {
  if (end.done) {
    const kept =
      end.weighedAlready.length > 0
        ? ` ${countOf(end.weighedAlready.length, 'club')} weighed already kept its own.`
        : '';
    return `Old grip written as like the stripped one for ${countOf(end.rows.length, 'club')}.${kept}`;
  }
  if (end.reason === 'occupied') return sayOccupied(end);
  return end.reason === 'clubsMoved' ? CLUBS_MOVED : sayNotDone(end);
}

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

/** Why a table was not made. */
export function sayBlocked(blocked: Blocked): string {
  const { table } = blocked;
  switch (blocked.why) {
    case 'otherTable':
      return `There is already a table ${table}, without ${listed(blocked.headers)}. It was left as it is; rename it, or give it these headings.`;
    case 'sheetInUse':
      return `The sheet ${table} holds something else (${listed(blocked.cells)}). It was left as it is; rename that sheet, then set up again.`;
    case 'protected':
      return `The sheet ${table} is protected. It was left as it is; take the protection off, then set up again.`;
  }
}

/** How setting up ended, a sentence for each thing worth telling. */
export function saySetUp(end: SetUpDone): string {
  if (!end.done) return sayPortError(end.error);
  const { made, kept, blocked } = end;
  const makes = made.length > 0 ? [`Made ${listed(made)}.`] : [];
  const keeps = kept.length > 0 ? [`Kept as they were: ${listed(kept)}.`] : [];
  const nothing = made.length + blocked.length === 0 ? ['Everything is set up already.'] : [];
  return [...nothing, ...makes, ...(nothing.length > 0 ? [] : keeps), ...blocked.map(sayBlocked)].join(' ');
}
