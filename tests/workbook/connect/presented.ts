/** A shop's rows under our headings, in our order and our units, as whoever reads a connected list gets them. */
import { standIn, isStandIn } from '../../../src/workbook/connect/standIn';
import type { ColumnMatch } from '../../../src/workbook/connect/types';
import type { Seen, TableSeen } from '../../../src/workbook/port';
import type { TableSchema } from '../../../src/workbook/schema';

/** @param rows body rows of the list, without headings */
export function presented(
  schema: TableSchema,
  matches: readonly ColumnMatch[],
  rows: readonly (readonly Seen[])[],
): Seen[][] {
  const width = Math.max(...rows.map((row) => row.length), ...matches.map(({ position }) => position + 1));
  // Names of the test's own: two columns of an inventory may be headed alike.
  const headings = Array.from({ length: width }, (_, at) => `column ${at}`);
  const columns = matches.map((match) => ({ ...match, heading: headings[match.position] ?? '' }));
  const list: TableSeen = {
    name: 'List',
    at: { sheet: 'List', row: 0, column: 0, rows: rows.length + 1, columns: width },
    headers: headings,
    rows: rows.map((row) => headings.map((_, at) => row[at] ?? null)),
    protected: false,
    filtered: false,
  };
  const seen = standIn({ schema, list: 'List', columns }, list);
  if (!isStandIn(seen)) throw new Error(JSON.stringify(seen.broken));
  const places = schema.columns.flatMap(({ header }) => {
    const at = seen.headers.indexOf(header);
    return at < 0 ? [] : [at];
  });
  return [seen.headers, ...seen.rows].map((row) => places.map((at) => row[at] ?? null));
}
