/** Columns that a table, or a list that stands for one, gets at its right end: what is looked at before, and how wide they are. */
import { headingRowsOf, isStandIn } from './connect/standIn';
import type { BlockSeen, Change, TableSeen, WorkbookPort } from './port';
import { columnsBeside, lookBeforeWidening } from './shared/widen';

/** What stands where the columns are to come, headings and all, and below the table. */
export async function lookBeside(port: WorkbookPort, table: TableSeen, columns: number): Promise<readonly BlockSeen[]> {
  const [body, below] = lookBeforeWidening(table, columns);
  const above = isStandIn(table) ? headingRowsOf(table) - 1 : 0;
  const beside = { ...body, row: body.row - above, rows: body.rows + above };
  return port.read([
    { read: 'block', at: beside, widths: true },
    { read: 'block', at: below },
  ]);
}

/** Letters of room beside a heading. */
const ROOM = 2;

/** A heading beside an empty one is seen whole, beside the next it would be cut. */
export function widthsBeside(
  table: TableSeen,
  headings: readonly string[],
  looked: readonly (TableSeen | BlockSeen)[],
): Change[] {
  if (headings.length === 0) return [];
  const { sheet, column } = columnsBeside(table, headings.length);
  const now = looked.flatMap((seen) => ('widths' in seen ? [seen.widths ?? []] : []))[0] ?? [];
  return headings.flatMap((heading, i): Change[] => {
    const width = heading.length + ROOM;
    // What the owner made wider stays so.
    return (now[i] ?? 0) < width ? [{ do: 'widths', sheet, column: column + i, widths: [width] }] : [];
  });
}
