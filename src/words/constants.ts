/** Sentences for how taking over one of the shop's own constants ended. */
import type { ConstantDone } from '../workbook/takeConstant';
import { sayIssue } from './issues';
import { sayNotDone, sayOccupied } from './outcomes';

function heldText(was: string | number | boolean | null): string {
  return was === null || was === '' ? 'blank' : String(was);
}

/** Where it stands now, and what stood there. */
export function sayConstant(end: ConstantDone): string {
  if (end.done) {
    const { table, row, heading, was, now } = end;
    return `${table}, ${row}: ${heading} is ${now} now; it was ${heldText(was)}. Plans follow it; Undo takes it back.`;
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'impossible':
      return `${sayIssue(end.issue)} Nothing was written.`;
    case 'rowGone':
      return `${end.table} has no row ${end.row || 'of that name'} any more. Nothing was written; add the row, or name it in Settings.`;
    case 'sameAlready':
      return `${end.table}, ${end.row} holds that value already. Nothing was written.`;
    default:
      return sayNotDone(end);
  }
}
