/** Every open job planned, each for itself, from one reading of the tables. */
import {
  benchTicket,
  drained,
  ok,
  planSet,
  type BenchTicket,
  type Issue,
  type Progress,
  type Result,
} from '../core/index';
import { customersOfClubs } from './customers';
import { readDay } from './days';
import { columnsAt, folded } from './headings';
import { headerRowsOf } from './planScope';
import { readPlan, type Planned } from './planTables';
import type { Seen, TableSeen } from './port';
import { readBench } from './readBench';
import { isBlank, rowName, type Matrix } from './records';
import { redoRows, redosOf } from './rounds';
import { JOBS, type JOB_STATES } from './schema';
import { jobName, matricesOf, matrixOf, type ShopTables } from './shop';

export interface OpenJob {
  readonly job: string;
  readonly customer: string;
  /** Day as a workbook counts it; undefined: promised for no day. */
  readonly due: number | undefined;
  readonly state: Exclude<(typeof JOB_STATES)[number], 'Done'>;
  readonly planned: Planned;
  /** 1: the first time; 2 its first redo, and so on. */
  readonly round: number;
  /** Clubs that get a grip, as the bench works on them now: of a redo, those that came back. */
  readonly ticket: BenchTicket;
  /** Clubs of the job in Clubs; of a redo, those that came back. */
  readonly clubs: number;
}

export interface OpenJobs {
  readonly jobs: readonly OpenJob[];
  /** Jobs of the table Jobs that are open and have no clubs. */
  readonly bare: readonly { readonly job: string; readonly customer: string; readonly due: number | undefined }[];
  readonly problems: readonly Issue[];
}

interface JobRow {
  readonly job: string;
  readonly customer: string;
  readonly due: number | undefined;
  readonly state: (typeof JOB_STATES)[number];
}

/**
 * Plans every job that is not done: those of Jobs in their order, then those that only Clubs names, which are open and due on no day.
 *
 * @returns why nothing at all can be planned (a column missing), where that is so
 */
export function openJobs(tables: ShopTables): Result<OpenJobs> {
  return drained(openJobsSteps(tables));
}

/** {@link openJobs} in steps, one for each job. */
export function* openJobsSteps(tables: ShopTables): Generator<Progress, Result<OpenJobs>> {
  const { rows: listed, problems: days } = jobRows(tables);
  const known = new Map(listed.map((row) => [folded(row.job), row]));
  const { Clubs: clubs, Stock: stock, Settings: settings, Weights: weights, Tape: tape } = matricesOf(tables);
  const read =
    clubs && hasRows(clubs)
      ? readPlan({ clubs, stock, settings, weights, tape, headerRows: headerRowsOf(tables) })
      : null;
  if (read && !read.ok) return read;
  const all = read?.value.input.clubs ?? [];
  const customers = customersOfClubs(clubs);
  const byJob = new Map<string, (typeof all)[number][]>();
  for (const club of all) {
    const key = folded(club.job);
    const set = byJob.get(key);
    if (set) set.push(club);
    else byJob.set(key, [club]);
  }
  const unlisted = [...byJob].flatMap(([key, [first]]): JobRow[] => {
    if (key === '' || known.has(key)) return [];
    return [{ job: jobName(first?.job), customer: customers.get(key) ?? '', due: undefined, state: 'Open' }];
  });
  const { ask } = readBench(tables);
  const redos = redosOf(tables);
  const rows = [...known.values(), ...unlisted].filter(({ state }) => state !== 'Done');
  const jobs: OpenJob[] = [];
  for (const [at, row] of rows.entries()) {
    yield { done: at, of: rows.length };
    const set = byJob.get(folded(row.job));
    const { job, customer, due, state } = row;
    if (!set || !read || state === 'Done') continue;
    const input = { ...read.value.input, clubs: set };
    const planned = { plan: planSet(input), input, problems: read.value.problems };
    const redo = redos.get(folded(job));
    const again = redo && redoRows(planned.plan, redo);
    const ticket = benchTicket(planned.plan, input, { ...ask, again });
    jobs.push({
      job,
      customer,
      due,
      state,
      planned,
      round: redo?.number ?? 1,
      ticket,
      clubs: again?.size ?? set.length,
    });
  }
  const bare = rows
    .filter(({ job }) => !byJob.has(folded(job)))
    .map(({ job, customer, due }) => ({ job, customer, due }));
  return ok({ jobs, bare, problems: [...days, ...(read?.value.problems ?? [])] });
}

/** Whether a table holds anything below its headings. */
function hasRows(table: Matrix): boolean {
  return table.slice(1).some((row) => row.some((cell) => !isBlank(cell)));
}

/** Rows of Jobs that name a job; of two that name the same, the first. */
function jobRows({ Jobs: table, Clubs: clubs }: ShopTables): { readonly rows: JobRow[]; readonly problems: Issue[] } {
  const rows = new Map<string, JobRow>();
  const problems: Issue[] = [];
  const at = columnsAt(JOBS, table?.headers ?? []);
  const customers = customersOfClubs(clubs && matrixOf(clubs));
  for (const [down, row] of (table?.rows ?? []).entries()) {
    const job = jobName(row[at('job')]);
    if (job === '' || rows.has(folded(job))) continue;
    const due = dayIn(row[at('due')]);
    const state = stateOf(row[at('status')]);
    if (due === null && state !== 'Done') problems.push(noDay(table as TableSeen, down, row[at('due')]));
    const customer = jobName(row[at('customer')]) || (customers.get(folded(job)) ?? '');
    rows.set(folded(job), { job, customer, due: due ?? undefined, state });
  }
  return { rows: [...rows.values()], problems };
}

/** The day in a cell; undefined where it is blank, null where it says something else. A day written as text counts as such. */
function dayIn(cell: Seen | undefined): number | undefined | null {
  if (typeof cell === 'number') return cell;
  const text = jobName(cell);
  return text === '' ? undefined : (readDay(text) ?? null);
}

function noDay({ at, headers }: TableSeen, down: number, cell: Seen | undefined): Issue {
  const header = headers[columnsAt(JOBS, headers)('due')] ?? 'Due';
  const expected = 'a date, such as 2026-05-15; until then the job counts as due on no day';
  const field = `${rowName(JOBS.name, headers, at.row + down + 2)}, ${header}`;
  return { code: 'unknownChoice', field, got: jobName(cell), expected };
}

/** A blank or another word is no reason to forget a job: it counts as open. */
function stateOf(cell: unknown): JobRow['state'] {
  const word = folded(cell);
  if (word === 'done') return 'Done';
  return word === 'waiting' ? 'Waiting' : 'Open';
}
