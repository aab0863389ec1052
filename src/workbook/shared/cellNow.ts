/** What a cell holds now, against what was put into it and what it held before. */
import type { BlockSeen, Cell, Seen, Written } from '../port';
import { filledFromElsewhere, isError } from './looked';
import type { BeforeCell } from './looked';

export type PutCell = Written['put'][number][number];

export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Whether a cell was left alone. */
export function isSkip(put: PutCell | undefined): boolean {
  return put === undefined || (typeof put === 'object' && put !== null && 'skip' in put);
}

export function isBlank({ value, formula }: { value: Seen; formula: string | null }): boolean {
  return formula === null && (value === null || value === '');
}

export function cellNow(seen: BlockSeen, place: Place): { value: Seen; formula: string | null } {
  const down = place.row - seen.at.row;
  const across = place.column - seen.at.column;
  if (seen.spills && filledFromElsewhere(seen, place.row, place.column)) return { value: null, formula: null };
  return { value: seen.values[down]?.[across] ?? null, formula: seen.formulas[down]?.[across] ?? null };
}

/** Whether a cell still holds what was put. */
export function holds(seen: BlockSeen, put: PutCell, place: Place): boolean {
  const { value, formula } = cellNow(seen, place);
  if (typeof put === 'object' && put !== null) return 'call' in put && formula !== null && calls(formula, put.call);
  return formula === null && sameValue(value, put);
}

/** Whether a cell holds already what it held before. */
export function isBack(seen: BlockSeen, was: BeforeCell, place: Place): boolean {
  const { value, formula } = cellNow(seen, place);
  if (typeof was !== 'object' || was === null) return formula === null && sameValue(value, was);
  return formula === null ? isError(value) && value.error === was.formula : formula === was.formula;
}

/** Whether a formula begins by calling a function of ours; a file opened without the add-in may show its name altered. */
export function calls(formula: string, name: string): boolean {
  return new RegExp(`^=\\s*@?(?:\\w+[._])?${name}\\s*\\(`, 'i').test(formula);
}

function sameValue(value: Seen, put: Cell): boolean {
  if (typeof value === 'number' && typeof put === 'number') {
    // Fifteen digits are what a spreadsheet promises to keep.
    return Math.abs(value - put) <= 1e-14 * Math.max(Math.abs(value), Math.abs(put));
  }
  if (value === null || put === null) return (value ?? '') === (put ?? '');
  // A number put into a cell that is formatted as text, or into a table's header, reads back as text.
  return value === put || (typeof value === 'string' && value === String(put));
}
