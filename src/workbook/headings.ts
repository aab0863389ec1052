/** Finding our columns among the headings of a table that may be the shop's own. */
import { matchHeaders } from './records';
import type { TableSchema } from './schema';

/** Text as it is compared: without case, spaces doubled or at the ends. @example folded(' Lead  tape ') //=> 'lead tape' */
export function folded(cell: unknown): string {
  if (typeof cell !== 'string' && typeof cell !== 'number') return '';
  return String(cell).trim().replace(/\s+/g, ' ').toLowerCase();
}

/** Where columns of ours stand among headings, by key, counted from 0; -1 for one that is missing. */
export function columnsAt(schema: TableSchema, headings: readonly unknown[]): (key: string) => number {
  const found = matchHeaders(schema, headings);
  return (key) => found.get(key) ?? -1;
}

/** Headings of ours that a table lacks. */
export function lackingHeaders(headings: readonly unknown[], schema: TableSchema, neededOnly: boolean): string[] {
  const found = matchHeaders(schema, headings);
  return schema.columns
    .filter((column) => !found.has(column.key) && (column.needed || !neededOnly))
    .map((column) => column.header);
}
