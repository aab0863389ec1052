/** How the shelves stand against every open job, from the tables. Pure. */
import {
  benchTicket,
  drained,
  entriesOf,
  needsOf,
  ok,
  orderOf,
  stockState,
  type Issue,
  type JobNeeds,
  type Movement,
  type Progress,
  type Result,
  type StockAsked,
  type StockState,
  type SupplierOrder,
} from '../core/index';
import { planJob } from './benchJob';
import { folded } from './headings';
import { readMovements } from './movements';
import { openJobsSteps, type OpenJob, type OpenJobs } from './openJobs';
import { readBench } from './readBench';
import { settingValues } from './readSettings';
import { redoRows, redosOf } from './rounds';
import { CLUBS } from './schema';
import { listedTwice, readShelves, type Shelved } from './shelves';
import { matrixOf, type Shop, type ShopTables } from './shop';
import { jobRows, tableRows } from './shopRows';

export interface StockSeen {
  readonly state: StockState;
  /** What open jobs need, in the order of Jobs. */
  readonly jobs: readonly JobNeeds[];
  readonly orders: readonly SupplierOrder[];
  readonly shelved: readonly Shelved[];
  readonly asked: StockAsked;
  /** Counts that cannot be read, things listed twice, and needs that no table lists. */
  readonly problems: readonly Issue[];
}

/** The shelves and the open jobs: what is free, short and to be ordered, and what is reserved for nobody. */
export function stockOf({ tables }: Pick<Shop, 'tables'>, known?: Result<OpenJobs>): Result<StockSeen> {
  return drained(stockSteps(tables, known));
}

/**
 * {@link stockOf} in steps.
 *
 * @param known the jobs as planned; planned here where it is left out
 * @returns why nothing can be told: no job can be planned, or a row of the ledger cannot be read
 */
export function* stockSteps(tables: ShopTables, known?: Result<OpenJobs>): Generator<Progress, Result<StockSeen>> {
  const open = known ?? (yield* openJobsSteps(tables));
  if (!open.ok) return open;
  const ledger = tables.Movements ? readMovements(tables.Movements) : ok<readonly Movement[]>([]);
  if (!ledger.ok) return ledger;
  const shelved = readShelves(tables);
  const jobs = jobNeeds(tables, open.value.jobs);
  const doneJobs = new Set(jobRows(tables).flatMap(({ done, job }) => (done ? [folded(job)] : [])));
  const asked = { stocked: shelved.map(({ stocked }) => stocked), jobs, entries: entriesOf(ledger.value), doneJobs };
  const state = stockState(asked);
  const problems = [
    ...shelved.flatMap(({ issues }) => issues),
    ...listedTwice(shelved),
    ...open.value.jobs.flatMap(unlistedIn),
  ];
  return ok({ state, jobs, orders: orderOf(state.items), shelved, asked, problems });
}

/** Clubs that name a grip which Stock does not list: they can be planned no further, and nothing is kept for them. */
function unlistedIn({ planned: { plan, input } }: OpenJob): Issue[] {
  const gripped = new Set(plan.clubs.flatMap(({ grip, row }) => (grip ? [row] : [])));
  return input.clubs.flatMap(({ row, sheetRow, newItem }): Issue[] => {
    if (newItem === undefined || gripped.has(row)) return [];
    return [{ code: 'unknownItem', field: `Clubs row ${sheetRow}, New grip`, got: newItem }];
  });
}

/** Everything about needs that is read once for all jobs. */
interface Reading {
  readonly ownGrips: ReadonlySet<number>;
  readonly buildUpTape: string;
  readonly twoWayTape: string;
}

function readingOf(tables: ShopTables): Reading {
  const own = tableRows(tables, CLUBS).filter(({ values }) => values.get('ownGrip') === true);
  const settings = settingValues(tables.Settings && matrixOf(tables.Settings));
  const name = (key: 'buildUpTape' | 'twoWayTape', usual: string): string => {
    const value = settings.ok ? settings.value.values.get(key) : undefined;
    return typeof value === 'string' ? value : usual;
  };
  return {
    ownGrips: new Set(own.map(({ row }) => row)),
    buildUpTape: name('buildUpTape', 'Build-up tape'),
    twoWayTape: name('twoWayTape', 'Two-way tape'),
  };
}

function jobNeeds(tables: ShopTables, open: readonly OpenJob[]): JobNeeds[] {
  const reading = readingOf(tables);
  return open.map(({ job, due, round, ticket }) => needsOf({ ...reading, job, due, round, clubs: ticket.clubs }));
}

/** What one job needs, done or not; null where Clubs has none of its clubs. */
export function needsOfJob(tables: ShopTables, job: string): Result<JobNeeds> | null {
  const planned = planJob(tables, job);
  if (!planned?.ok) return planned;
  const { plan, input } = planned.value;
  const redo = redosOf(tables).get(folded(job));
  const { clubs } = benchTicket(plan, input, { ...readBench(tables).ask, again: redo && redoRows(plan, redo) });
  const row = jobRows(tables).find((each) => folded(each.job) === folded(job));
  return ok(needsOf({ ...readingOf(tables), job, due: row?.due, round: redo?.number ?? 1, clubs }));
}
