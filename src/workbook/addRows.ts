/** Rows put at the end of a table: into those that hold nothing first, and where these do not reach, into new ones. */
import type { Block, BlockSeen, Cell, Change, TableSeen } from './port';
import { isBlank } from './records';
import { rowsBelow } from './shared/lengthen';

/** Body rows, from 1, at the end of a table that hold nothing and no formula. */
function endRows({ rows, formulas }: TableSeen): number[] {
  const isFree = (at: number): boolean =>
    (rows[at] ?? []).every(isBlank) && !(formulas?.[at] ?? []).some((text) => text !== null);
  let first = rows.length;
  while (first > 0 && isFree(first - 1)) first -= 1;
  return Array.from({ length: rows.length - first }, (_, at) => first + at + 1);
}

/** The rows below a table that adding so many rows would take; null where its own blank rows are enough. */
export function roomNeeded(table: TableSeen, count: number): Block | null {
  const missing = count - endRows(table).length;
  return missing > 0 ? rowsBelow(table, missing) : null;
}

/**
 * Writes rows one below the other at a table's end, so that a job's clubs stand together.
 *
 * @param below what stands where the table grows, as read; null where it need not
 */
export function addRows(
  table: TableSeen,
  rows: readonly (readonly (Cell | undefined)[])[],
  below: BlockSeen | null,
): Change[] {
  if (rows.length === 0) return [];
  const [first = table.rows.length + 1] = endRows(table);
  const at: Block = { ...table.at, row: table.at.row + first, rows: rows.length };
  return [
    ...(below ? [{ do: 'lengthen', table: table.name, rows: below.at.rows } as const] : []),
    { do: 'write', at, cells: rows },
  ];
}
