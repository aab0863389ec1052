import type { TableSchema } from '../../workbook/schema';

/** A table as a sheet holds it: header row first, `''` where a cell is blank. */
export type DemoTable = (string | number)[][];

type KeyOf<T extends TableSchema> = T['columns'][number]['key'];

/** One row by our names of its columns; what is left out is blank. */
export type DemoRow<T extends TableSchema> = Readonly<Partial<Record<KeyOf<T>, string | number>>>;

/** Lays rows out under a table's own headers, so that the demo follows when a column is added or moved. */
export function asTable<T extends TableSchema>(schema: T, rows: readonly DemoRow<T>[]): DemoTable {
  const headers = schema.columns.map((column) => column.header);
  const body = rows.map((row) => schema.columns.map((column) => row[column.key as KeyOf<T>] ?? ''));
  return [headers, ...body];
}
