/** How a range's rows and columns, and our own columns, are called in a sentence. */
import type { TableSchema } from '../columns';
import { columnOf } from '../schema';
import { columnLetters } from '../shared/address';
import { ourUnit } from './units';

export interface SaidNames {
  /** Our heading of a column, by its key. */
  header(key: string): string;
  /** Our unit of a column, by its key. */
  unit(key: string): string | null;
  /** The shop's heading of a column of the range, or its letters where it has none. */
  column(position: number): string;
  /** The column's letters in the sheet. */
  letters(position: number): string;
  /** The row's number in the sheet. */
  sheetRow(row: number): number;
}

/**
 * @param headings as a likeness has them
 * @param start where the range begins in its sheet, from 0
 */
export function saidNames(
  schema: TableSchema,
  headings: readonly string[],
  start: { readonly row: number; readonly column: number },
): SaidNames {
  const letters = (position: number): string => columnLetters(start.column + position);
  return {
    header: (key) => columnOf(schema, key).header,
    unit: (key) => ourUnit(columnOf(schema, key)),
    column: (position) => headings[position] || `column ${letters(position)}`,
    letters,
    sheetRow: (row) => start.row + row + 1,
  };
}
