/** The next job's number: one that no table names and that was never given. Pure. */
import { columnsAt, folded } from './headings';
import type { Cell, TableSeen } from './port';
import { JOBS, TABLES, type TableSchema } from './schema';
import { isBlankCell, jobName, type ShopTables, type TableName } from './shop';

/** Key of the workbook's settings under which the last number given is kept, so that a deleted job's is not given again. */
export const LAST_JOB_KEY = 'setwright.lastJob';

const NUMBERED = /^(.*?)(\d{1,15})$/;

/** Every job that any table of ours names, each once; Jobs' own first. */
export function namedJobs(tables: ShopTables): string[] {
  const jobs = new Map<string, string>();
  for (const schema of TABLES) {
    const table = tables[schema.name as TableName];
    const at = table && schema.columns.some(({ key }) => key === 'job') ? columnsAt(schema, table.headers)('job') : -1;
    for (const row of at < 0 ? [] : (table?.rows ?? [])) {
      const job = jobName(row[at]);
      if (job !== '' && !jobs.has(folded(job))) jobs.set(folded(job), job);
    }
  }
  return [...jobs.values()];
}

/**
 * The number after the highest of those written like the last one: after `R-206` comes `R-207`, after `0099` comes `0100`.
 *
 * @param lastGiven what was given last, perhaps to a job that is gone
 * @example nextJob(['R-205', 'R-206', 'Smith'], null) //=> 'R-207'
 */
export function nextJob(jobs: readonly string[], lastGiven: string | null): string {
  const numbers = jobs.flatMap((job) => {
    const found = NUMBERED.exec(job);
    return found ? [{ stem: found[1] ?? '', digits: found[2] ?? '' }] : [];
  });
  const given = lastGiven === null ? null : NUMBERED.exec(lastGiven);
  const last = numbers.at(-1) ?? (given ? { stem: given[1] ?? '', digits: given[2] ?? '' } : undefined);
  if (!last) return '1';
  const alike = numbers.filter(({ stem }) => folded(stem) === folded(last.stem));
  if (given && folded(given[1]) === folded(last.stem)) alike.push({ stem: given[1] ?? '', digits: given[2] ?? '' });
  const highest = alike.reduce((most, { digits }) => Math.max(most, Number(digits)), 0);
  const width = Math.max(...alike.map(({ digits }) => digits.length));
  return `${last.stem}${String(highest + 1).padStart(width, '0')}`;
}

/** What is kept once a number was given: the higher one of a series, else the one given now. */
export function lastGivenAfter(job: string, before: string | null): string {
  const now = NUMBERED.exec(job);
  const was = before === null ? null : NUMBERED.exec(before);
  if (!now) return before ?? job;
  const keepsOld = was && folded(was[1]) === folded(now[1]) && Number(was[2]) > Number(now[2]);
  return keepsOld ? (before ?? job) : job;
}

/**
 * A job's number as a cell: a number where the last job of the table is one, and where the table names none, as Jobs does it.
 * A shop's own sorting and look-ups go on working then.
 */
export function jobCell({ Jobs }: ShopTables, schema: TableSchema, table: TableSeen, job: string): Cell {
  const last = lastJob(schema, table) ?? (Jobs ? lastJob(JOBS, Jobs) : undefined);
  return typeof last === 'number' && String(Number(job)) === job ? Number(job) : job;
}

function lastJob(schema: TableSchema, { headers, rows }: TableSeen): unknown {
  const at = columnsAt(schema, headers)('job');
  return rows
    .map((row) => row[at])
    .filter((cell) => !isBlankCell(cell))
    .at(-1);
}
