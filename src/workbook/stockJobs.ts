/** Reserving for jobs, releasing, taking what a job used, and what else happens to the shelves: each one read and one write. */
import {
  fail,
  happenTo,
  ok,
  plainNumber,
  releaseFor,
  reserveFor,
  stockState,
  takeFor,
  entriesOf,
  type Happening,
  type Issue,
  type Movement,
  type Result,
  type Shelf,
  type Stocked,
  type Taken,
} from '../core/index';
import { folded, lackingHeaders } from './headings';
import { ALWAYS, paced, STOPPED, type GoOn, type Stopped } from './pace';
import { readMovements, rowsEntered } from './movements';
import type { InTheWay, NotDone, Occupied } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { BlockSeen, Change, TableSeen, WorkbookPort } from './port';
import { MOVEMENTS } from './tables/movements';
import { readShelves, shelfTable, type Shelved } from './shelves';
import { shopTables, tableQueries, type ShopTables } from './shop';
import type { MoveDone, ReleaseDone, ReserveDone, UseDone } from './stockDone';
import { needsOfJob, stockOf, stockSteps } from './stockScope';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';

type Missing = Exclude<NotDone, { reason: 'port' }>;
type Unreadable = Extract<UseDone, { reason: 'unreadable' }>;

const unreadable = (issue: Issue): Unreadable => ({ done: false, reason: 'unreadable', issue });

async function lookAtAll(port: WorkbookPort): Promise<ShopTables> {
  return shopTables(await port.read(tableQueries()));
}

/** The ledger as a table that rows can be written into. */
function ledgerIn({ Movements: table }: ShopTables): TableSeen | Missing {
  if (!table) return { done: false, reason: 'tableMissing', table: MOVEMENTS.name };
  const headers = lackingHeaders(table.headers, MOVEMENTS, false);
  return headers.length > 0 ? { done: false, reason: 'columnMissing', table: MOVEMENTS.name, headers } : table;
}

interface ToWrite {
  readonly ledger: TableSeen;
  readonly movements: readonly Movement[];
  readonly counts?: readonly { readonly stocked: Stocked; readonly onHand: number }[];
  readonly shelved?: readonly Shelved[];
  readonly today: number;
  readonly note?: string;
  readonly agreed: InTheWay | null;
}

/** Changes, and what was looked at for them. */
export interface StockChanges {
  readonly changes: readonly Change[];
  readonly looked: readonly (TableSeen | BlockSeen)[];
}

/** Rows of the ledger and new counts, as changes of one write. Throws a PortError. */
async function toWrite(port: WorkbookPort, of: ToWrite): Promise<StockChanges | Occupied> {
  const { ledger, movements, counts = [], shelved = [], today, note = '', agreed } = of;
  const rows = await rowsEntered(port, ledger, movements, { date: today, note });
  const cells = counts.flatMap(({ stocked, onHand }) => {
    const place = shelved.find((each) => each.stocked === stocked && each.column >= 0);
    return place ? [{ place, cell: { row: place.row, column: place.column, value: onHand } }] : [];
  });
  const tables = [...new Set(cells.map(({ place }) => place.table))];
  const perTable = tables.map((table) => ({
    table,
    named: cells.flatMap(({ place }) => (place.table === table ? [place.nameColumn] : [])).slice(0, 1),
    cells: changedCells(
      table,
      cells.filter(({ place }) => place.table === table).map(({ cell }) => cell),
    ),
  }));
  const question = askFirst(
    null,
    perTable.flatMap((each) => formulaCells(each.table, each.cells)),
    agreed,
  );
  if (question) return question;
  const counted = perTable.flatMap((each) => writeCells(each.table, each.cells, each.named));
  return { changes: [...rows.changes, ...counted], looked: [ledger, ...rows.looked, ...tables] };
}

async function write(port: WorkbookPort, of: ToWrite, label: string): Promise<Occupied | null> {
  if (of.movements.length === 0) return null;
  const ready = await toWrite(port, of);
  if ('done' in ready) return ready;
  await port.apply([...ready.changes, { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }], ready.looked, {
    label,
    receiptKey: LAST_FILL_KEY,
  });
  return null;
}

/* ------------------------------------------------------------------ reserving */

/** What reserving is asked with. */
export interface StockAct {
  /** Day as a workbook counts it. */
  readonly today: number;
  readonly agreed?: InTheWay | null | undefined;
}

/**
 * Reserves for jobs what they need and is there: of those named the earliest due first, what other jobs have reserved stays theirs. Done
 * again it changes nothing; after a change of plan the difference is reserved or released. Any number of jobs takes one read and one
 * write, and a read more where the ledger has to grow.
 *
 * @param jobs their names; null: every open job
 * @param goOn asked between the jobs that are worked out; stopped, nothing is written
 */
export async function reserveJobs(
  port: WorkbookPort,
  jobs: readonly string[] | null,
  act: StockAct,
): Promise<ReserveDone>;
export async function reserveJobs(
  port: WorkbookPort,
  jobs: readonly string[] | null,
  act: StockAct,
  goOn: GoOn,
): Promise<ReserveDone | Stopped>;
export async function reserveJobs(
  port: WorkbookPort,
  jobs: readonly string[] | null,
  { today, agreed = null }: StockAct,
  goOn: GoOn = ALWAYS,
): Promise<ReserveDone | Stopped> {
  return politely(async (): Promise<ReserveDone | Stopped> => {
    const tables = await lookAtAll(port);
    const ledger = ledgerIn(tables);
    if ('done' in ledger) return ledger;
    const seen = await paced(stockSteps(tables), goOn);
    if (!seen) return STOPPED;
    if (!seen.ok) return unreadable(seen.issue);
    const { asked, shelved } = seen.value;
    const wanted = jobs && new Set(jobs.map(folded));
    const chosen = asked.jobs.map(({ job }) => job).filter((job) => !wanted || wanted.has(folded(job)));
    if (chosen.length === 0) return { done: false, reason: 'noOpenJob', jobs: jobs ?? [] };
    if (!(await goOn({ done: 1, of: 1 }))) return STOPPED;
    // What cannot be counted is told, and keeps nobody from getting the rest.
    const movements = reserveFor(asked, chosen).filter((movement) => !badCount(shelved, [movement]));
    if (!(await goOn({ done: 1, of: 1 }))) return STOPPED;
    const question = await write(port, { ledger, movements, today, agreed }, labelOf('Reserved for', chosen));
    if (question) return question;
    const known = readMovements(ledger);
    const after = stockState({ ...asked, entries: entriesOf([...(known.ok ? known.value : []), ...movements]) });
    const names = new Set(chosen.map(folded));
    return {
      done: true,
      jobs: chosen,
      movements,
      lacks: after.items.flatMap(({ shelf, item, lacks }) =>
        lacks.filter(({ job }) => names.has(folded(job))).map((lack) => ({ ...lack, shelf, item })),
      ),
      problems: seen.value.problems,
    };
  });
}

/** A count that cannot be read, or a thing listed twice, among what is to be moved. */
function badCount(shelved: readonly Shelved[], movements: readonly Movement[]): Issue | undefined {
  const moved = new Set(movements.map(({ shelf, item }) => `${shelf} ${folded(item)}`));
  const concerned = shelved.filter(({ stocked }) => moved.has(`${stocked.shelf} ${folded(stocked.item)}`));
  const issue = concerned.flatMap(({ issues }) => issues)[0];
  if (issue) return issue;
  const twice = concerned.find(
    ({ stocked }, at) =>
      concerned.findIndex(
        (other) => other.stocked.shelf === stocked.shelf && folded(other.stocked.item) === folded(stocked.item),
      ) < at,
  );
  return twice && { code: 'duplicate', field: shelfTable(twice.stocked.shelf), got: twice.stocked.item };
}

function labelOf(what: string, jobs: readonly string[]): string {
  return jobs.length === 1 ? `${what} job ${jobs[0] ?? ''}` : `${what} ${jobs.length} jobs`;
}

/**
 * Gives up everything that is reserved for these jobs, whether they are open, done or gone.
 *
 * @param jobs their names; null: every job that is done or gone, and what open jobs do not need any more
 */
export async function releaseJobs(
  port: WorkbookPort,
  jobs: readonly string[] | null,
  { today, agreed = null }: StockAct,
): Promise<ReleaseDone> {
  return politely(async (): Promise<ReleaseDone> => {
    const tables = await lookAtAll(port);
    const ledger = ledgerIn(tables);
    if ('done' in ledger) return ledger;
    const seen = stockOf({ tables });
    if (!seen.ok) return unreadable(seen.issue);
    const { asked, state } = seen.value;
    const movements = jobs ? releaseFor(asked.entries, jobs) : strandedRows(state.stranded, asked);
    const names = [...new Set(movements.map(({ job }) => job))];
    const question = await write(port, { ledger, movements, today, agreed }, labelOf('Released for', names));
    return question ?? { done: true, jobs: names, movements };
  });
}

type Seen = Extract<ReturnType<typeof stockOf>, { ok: true }>['value'];

function strandedRows(stranded: Seen['state']['stranded'], asked: Seen['asked']): Movement[] {
  const idle = stranded.filter(({ why }) => why !== 'unneeded').map(({ job }) => job);
  const changed = stranded.filter(({ why }) => why === 'unneeded').map(({ job }) => job);
  const excess = reserveFor(asked, changed).filter(({ kind }) => kind === 'released');
  return [...releaseFor(asked.entries, idle), ...excess];
}

/* ------------------------------------------------------------------ using */

export interface UseReady extends StockChanges {
  readonly movements: readonly Movement[];
}

/**
 * What taking from the shelves what a job used comes to, for whoever writes it together with other changes of the job. Nothing is charged
 * by it: a redo under warranty takes its own round. Throws a PortError.
 *
 * @param tables as just read
 */
export async function useReady(
  port: WorkbookPort,
  tables: ShopTables,
  job: string,
  { today, agreed = null }: StockAct,
): Promise<UseReady | Exclude<UseDone, { done: true } | { reason: 'port' }>> {
  const ledger = ledgerIn(tables);
  if ('done' in ledger) return ledger;
  const needs = needsOfJob(tables, job);
  if (!needs) return { done: false, reason: 'noClubs' };
  if (!needs.ok) return unreadable(needs.issue);
  const known = readMovements(ledger);
  if (!known.ok) return unreadable(known.issue);
  const shelved = readShelves(tables);
  const stocked = shelved.map((each) => each.stocked);
  const taken = takeFor({ stocked, entries: entriesOf(known.value) }, needs.value);
  if (!taken.ok) return { done: false, reason: 'cannotTake', cannot: taken.cannot };
  const { movements, onHand }: Taken = taken.value;
  const bad = badCount(shelved, movements);
  if (bad) return unreadable(bad);
  if (movements.length === 0) return { changes: [], looked: [], movements };
  const note = needs.value.round > 1 ? 'Redo under warranty' : '';
  const ready = await toWrite(port, { ledger, movements, counts: onHand, shelved, today, note, agreed });
  return 'done' in ready ? ready : { ...ready, movements };
}

/** Takes from the shelves what a job used: once, however often it is asked; nothing at all where one thing is not there. */
export async function useStock(port: WorkbookPort, job: string, act: StockAct): Promise<UseDone> {
  return politely(async (): Promise<UseDone> => {
    const ready = await useReady(port, await lookAtAll(port), job, act);
    if ('done' in ready) return ready;
    const { changes, looked, movements } = ready;
    if (movements.length > 0) {
      await port.apply([...changes, { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }], looked, {
        label: `Stock used for job ${job}`,
        receiptKey: LAST_FILL_KEY,
      });
    }
    return { done: true, job, movements };
  });
}

/* ------------------------------------------------------------------ what else happens */

export interface MoveAsked {
  readonly shelf: Shelf;
  readonly item: string;
  readonly kind: Happening['kind'];
  /** As typed. */
  readonly quantity: string;
  readonly note: string;
}

/** Something came, was spoiled or was counted: its count and its row in the ledger, together or not at all. */
export async function moveStock(
  port: WorkbookPort,
  asked: MoveAsked,
  { today, agreed = null }: StockAct,
): Promise<MoveDone> {
  return politely(async (): Promise<MoveDone> => {
    const tables = await lookAtAll(port);
    const ledger = ledgerIn(tables);
    if ('done' in ledger) return ledger;
    const shelved = readShelves(tables);
    const place = placeOf(shelved, asked);
    if (!place.ok) return unreadable(place.issue);
    const { stocked, table, column } = place.value;
    if (column < 0) return { done: false, reason: 'columnMissing', table: table.name, headers: ['On hand'] };
    const quantity = readQuantity(asked.quantity);
    if (!quantity.ok) return unreadable(quantity.issue);
    const after = happenTo(stocked, { kind: asked.kind, quantity: quantity.value });
    if (!after.ok) return unreadable(after.issue);
    const { movement, onHand } = after.value;
    const question = await write(
      port,
      { ledger, movements: [movement], counts: [{ stocked, onHand }], shelved, today, note: asked.note.trim(), agreed },
      `${asked.item} ${LABELS[asked.kind]}`,
    );
    return question ?? { done: true, movement, onHand };
  });
}

const LABELS: Readonly<Record<Happening['kind'], string>> = {
  arrived: 'arrived',
  writtenOff: 'written off',
  counted: 'counted',
};

function placeOf(shelved: readonly Shelved[], { shelf, item, kind }: MoveAsked): Result<Shelved> {
  const found = shelved.filter(({ stocked }) => stocked.shelf === shelf && folded(stocked.item) === folded(item));
  const [first] = found;
  if (!first) return fail({ code: 'unknownItem', field: 'Item', got: item });
  if (found.length > 1) return fail({ code: 'duplicate', field: shelfTable(shelf), got: item });
  const [issue] = first.issues;
  // A count mends a cell that cannot be read.
  return issue && kind !== 'counted' ? fail(issue) : ok(first);
}

function readQuantity(text: string): Result<number> {
  if (text.trim() === '') return fail({ code: 'blank', field: 'Quantity', expected: 'how many' });
  const value = plainNumber(text);
  return value === undefined
    ? fail({ code: 'notNumber', field: 'Quantity', got: text, expected: 'a number alone, such as 12 or 2,5' })
    : ok(value);
}
