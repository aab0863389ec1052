/** How the shelves stand against every open job, from the tables. Pure. */
import {
  drained,
  entriesOf,
  isGripped,
  ok,
  onOrderOf,
  orderOf,
  placedOrders,
  stockStateSteps,
  type Issue,
  type JobNeeds,
  type Movement,
  type PlacedOrder,
  type Progress,
  type Result,
  type StockAsked,
  type StockState,
  type SupplierOrder,
} from '../core/index';
import { folded } from './headings';
import { openNeedsSteps } from './jobNeeds';
import { movementSteps } from './movements';
import { openJobsSteps, type OpenJob, type OpenJobs } from './openJobs';
import { listedTwice, readShelves, type Shelved } from './shelves';
import { inOwnNames, ownLists } from './ownNames';
import { rowName } from './records';
import { CLUBS } from './schema';
import type { Shop, ShopTables } from './shop';
import { jobRows } from './shopRows';

export interface StockSeen {
  readonly state: StockState;
  /** What open jobs need, in the order of Jobs. */
  readonly jobs: readonly JobNeeds[];
  /** What is to be ordered, by supplier. */
  readonly orders: readonly SupplierOrder[];
  /** Every order that was placed. */
  readonly placed: readonly PlacedOrder[];
  readonly shelved: readonly Shelved[];
  readonly asked: StockAsked;
  /** Counts that cannot be read, things listed twice, and needs that no table lists. */
  readonly problems: readonly Issue[];
}

/** How the shelves stand: what is free, short, on order and to be ordered, and what is reserved for nobody. */
export function stockOf({ tables }: Pick<Shop, 'tables'>, known?: Result<OpenJobs>): Result<StockSeen> {
  return drained(stockSteps(tables, known));
}

/**
 * {@link stockOf} in steps, some for each job.
 *
 * @param known the jobs as planned; planned here where it is left out
 * @returns why nothing can be told: no job can be planned, or a row of the ledger cannot be read
 */
export function* stockSteps(tables: ShopTables, known?: Result<OpenJobs>): Generator<Progress, Result<StockSeen>> {
  const open = known ?? (yield* openJobsSteps(tables));
  if (!open.ok) return open;
  const pause = { done: 0, of: open.value.jobs.length };
  yield pause;
  const ledger = tables.Movements ? yield* movementSteps(tables.Movements) : ok<readonly Movement[]>([]);
  if (!ledger.ok) return ledger;
  const shelved = readShelves(tables);
  yield pause;
  const jobs = yield* openNeedsSteps(tables, open.value.jobs);
  const doneJobs = new Set(jobRows(tables).flatMap(({ done, job }) => (done ? [folded(job)] : [])));
  const placed = placedOrders(ledger.value);
  const stocked = shelved.map((each) => each.stocked);
  const asked = { stocked, jobs, entries: entriesOf(ledger.value), doneJobs, onOrder: onOrderOf(placed) };
  const state = yield* stockStateSteps(asked);
  const problems = [
    ...shelved.flatMap(({ issues }) => issues),
    ...listedTwice(shelved),
    ...open.value.jobs.flatMap((job) => unlistedIn(job, tables.Clubs?.headers ?? [])),
  ];
  const own = ownLists({ Stock: tables.Stock?.headers });
  const told = problems.map((issue) => inOwnNames(issue, own));
  return ok({ state, jobs, orders: orderOf(state.items), placed, shelved, asked, problems: told });
}

/** Clubs that name a grip which Stock does not list: they can be planned no further, and nothing is kept for them. */
function unlistedIn({ planned: { plan, input } }: OpenJob, headers: readonly string[]): Issue[] {
  const gripped = new Set(plan.clubs.flatMap((club) => (isGripped(club) ? [club.row] : [])));
  return input.clubs.flatMap(({ row, sheetRow, newItem }): Issue[] => {
    if (newItem === undefined || gripped.has(row)) return [];
    return [{ code: 'unknownItem', field: `${rowName(CLUBS.name, headers, sheetRow)}, New grip`, got: newItem }];
  });
}
