/** Rows of a table as records, and what is on the counter: the jobs that are not done. */
import { customersOfClubs } from './customers';
import { folded } from './headings';
import { readTable, type Row } from './records';
import { CLUBS, JOBS, type TableSchema } from './schema';
import { matrixOf, type ShopTables, type TableName } from './shop';

/** Rows of one of our tables; none where it is missing or cannot be read. */
export function tableRows(tables: ShopTables, schema: TableSchema): readonly Row[] {
  const table = tables[schema.name as TableName];
  if (!table) return [];
  const read = readTable(schema, matrixOf(table), table.at.row + 1);
  return read.ok ? read.value.rows : [];
}

export function textOf({ values }: Row, key: string): string {
  return String(values.get(key) ?? '').trim();
}

export function numberOf({ values }: Row, key: string): number | undefined {
  const value = values.get(key);
  return typeof value === 'number' ? value : undefined;
}

/** One job of Jobs, as far as intake and reminders ask. */
export interface JobRow {
  readonly row: Row;
  readonly job: string;
  readonly customer: string;
  readonly done: boolean;
  /** Days; undefined where the cell is blank or holds no date. */
  readonly received: number | undefined;
  readonly due: number | undefined;
  readonly closed: number | undefined;
}

/** Jobs in the order of their table; the first row of a name counts. */
export function jobRows(tables: ShopTables): readonly JobRow[] {
  const seen = new Set<string>();
  const customers = customersOfClubs(tables.Clubs && matrixOf(tables.Clubs));
  return tableRows(tables, JOBS).flatMap((row) => {
    const job = textOf(row, 'job');
    if (job === '' || seen.has(folded(job))) return [];
    seen.add(folded(job));
    return [
      {
        row,
        job,
        customer: textOf(row, 'customer') || (customers.get(folded(job)) ?? ''),
        done: textOf(row, 'status') === 'Done',
        received: numberOf(row, 'received'),
        due: numberOf(row, 'due'),
        closed: numberOf(row, 'closed'),
      },
    ];
  });
}

/** Rows of Clubs that belong to a job. */
export function clubRows(tables: ShopTables, job: string): readonly Row[] {
  return tableRows(tables, CLUBS).filter((row) => folded(textOf(row, 'job')) === folded(job));
}
