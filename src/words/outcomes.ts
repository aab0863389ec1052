/** Sentences for how the jobs on a workbook end: what was done; or what was wrong, where, and what to do. */
import type {
  Amiss,
  Blocked,
  FillDone,
  Filled,
  FreezeDone,
  LessonDone,
  NotDone,
  Occupied,
  SetUpDone,
  UndoDone,
  WhyValues,
} from '../workbook/outcomes';
import { sayIssue } from './issues';
import { listed, MOST_LISTED } from './listed';
import { sayPortError } from './portErrors';
import { countOf } from './readings';

/** What every job may end with. */
export function sayNotDone(end: NotDone): string {
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

export const NO_CLUBS =
  'There are no clubs to plan. Name the job in the Job column of Clubs, or choose rows that hold a club.';

/** Cells of a person's in the way. */
export function sayOccupied({ cells }: Occupied): string {
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

/** In place of the headline of a fill whose formula shows an error. */
export const FILLED_AMISS = 'Plan filled, but it shows an error';

/** What a plan's formula shows in place of a plan, why, and what to do. */
export function sayAmiss({ cell, error, says, unanswered }: Amiss): string {
  if (unanswered) return `${cell} was still being worked out when this was looked at. Look there in a moment.`;
  return `${cell} shows ${error} instead of a plan. ${says ?? WHY_ERROR[error] ?? WHY_UNSAID}`;
}

const WHY_ERROR: Readonly<Record<string, string>> = {
  '#SPILL!': 'Cells that it needs are not blank: clear them, and the plan appears.',
  '#NAME?':
    'The functions of Setwright are not there yet: wait until they are loaded, or load the add-in, and the plan appears.',
};
const WHY_UNSAID = 'Select that cell: the sign beside it says why. Undo takes the plan back.';

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
    const { label, left, notFound } = end.reverted;
    const kept = left.length > 0 ? ` Left as you changed them since: ${listed(left)}.` : '';
    const lost =
      notFound.length > 0 ? ` Left alone, since they were not found for certain: ${rowsListed(notFound)}.` : '';
    const next = end.next === null ? ' Nothing else is left to undo.' : ` Undo takes back next: ${end.next}.`;
    // A plan of many cells may be one formula: how many were put back would tell nobody anything.
    const what = end.begun
      ? `${label} had been begun and not finished. What was written of it is taken back.`
      : `Taken back: ${label}.`;
    return `${what}${kept}${lost}${next}`;
  }
  if (end.reason === 'changedSince') {
    return `${end.label}: nothing was taken back. Movements and what is on hand go back together or not at all, and this was changed since: ${rowsListed(end.cells)}. Put it as it was and undo again, or enter the difference under Stock.`;
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
