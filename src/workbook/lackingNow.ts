/** What a table lacks that was made before some of our columns were. */
import { matchHeaders } from './records';
import type { Column, TableSchema } from './schema';

/** Headings of ours that a table lacks and that it had from the start: a workbook made earlier cannot have those that came later. */
export function lackingNow(schema: TableSchema, headings: readonly unknown[]): string[] {
  const found = matchHeaders(schema, headings);
  return schema.columns.filter(({ key, later }: Column) => !later && !found.has(key)).map(({ header }) => header);
}
