/** The register of quotes: which number comes next, and where its row goes. Pure. */
import { fail, ok, type Issue, type Result } from '../core/index';
import { columnsAt, folded, lackingHeaders } from './headings';
import type { Cell, TableSeen } from './port';
import { isBlank, readTable } from './records';
import { QUOTES } from './schema';
import { jobName, matrixOf } from './shop';

export interface Registered {
  readonly number: number;
  readonly revision: number;
  readonly job: string;
  readonly isVoid: boolean;
  /** Body row, from 1. */
  readonly row: number;
}

/** Number and revision of the next quote for a job. */
export interface NextNumber {
  readonly number: number;
  readonly revision: number;
  /** Body row of the register that is still free, from 1. */
  readonly row: number;
}

/** Every row of the register; refused where a number in it cannot be read, since it could be given again. */
export function readRegister(table: TableSeen): Result<readonly Registered[]> {
  const read = readTable(QUOTES, matrixOf(table), table.at.row + 1);
  if (!read.ok) return read;
  const bad = read.value.rows.flatMap(({ issues }) => issues)[0];
  if (bad) return fail(bad);
  return ok(
    read.value.rows.map(({ row, values }) => ({
      number: Number(values.get('number')),
      revision: Number(values.get('revision')),
      job: jobName(values.get('job')),
      isVoid: values.get('status') === 'Void',
      row,
    })),
  );
}

/**
 * The next number: the highest and one; or, where the job's latest quote still stands, its number and the next revision.
 *
 * @returns noRows where the register has no free row, or what in it cannot be read
 */
export function nextNumber(table: TableSeen, job: string): Result<NextNumber> {
  const [lacking] = lackingHeaders(table.headers, QUOTES, false);
  if (lacking !== undefined) return fail({ code: 'missingColumn', field: QUOTES.name, expected: lacking });
  const read = readRegister(table);
  if (!read.ok) return read;
  const lastUsed = read.value.reduce((most, { row }) => Math.max(most, row), 0);
  const row = table.rows.findIndex((cells, at) => at >= lastUsed && cells.every(isBlank)) + 1;
  if (row === 0) return fail(registerFull());
  const highest = read.value.reduce((most, { number }) => Math.max(most, number), 0);
  const latest = latestOf(read.value, job);
  if (latest && !latest.isVoid) return ok({ number: latest.number, revision: latest.revision + 1, row });
  return ok({ number: highest + 1, revision: 1, row });
}

/** The quote of a job that counts now: the latest revision of its highest number. */
export function latestOf(quotes: readonly Registered[], job: string): Registered | undefined {
  return quotes
    .filter((each) => folded(each.job) === folded(job))
    .reduce<Registered | undefined>((latest, each) => {
      if (!latest) return each;
      const later = each.number - latest.number || each.revision - latest.revision;
      return later > 0 ? each : latest;
    }, undefined);
}

function registerFull(): Issue {
  return { code: 'noRows', field: QUOTES.name, expected: 'a blank row at its end; drag the corner of the table down' };
}

/** A row of the register under whatever order its headings have. */
export function registerRow(
  table: TableSeen,
  values: Readonly<Record<(typeof QUOTES)['columns'][number]['key'], Cell>>,
): (Cell | undefined)[] {
  const at = columnsAt(QUOTES, table.headers);
  const cells = Array<Cell | undefined>(table.headers.length).fill(undefined);
  for (const [key, value] of Object.entries(values)) {
    if (at(key) >= 0) cells[at(key)] = value;
  }
  return cells;
}
