/** Reserving for jobs, releasing, and taking what a job used: each one read and one write. */
import { entriesOf, releaseFor, reserveFor, stockState, takeFor, type Movement, type Renamed } from '../core/index';
import { folded } from './headings';
import { needsOfJob } from './jobNeeds';
import { readMovements } from './movements';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { WorkbookPort } from './port';
import { readShelves } from './shelves';
import type { ShopTables } from './shop';
import type { ReleaseDone, ReserveDone, UseDone } from './stockDone';
import { stockOf } from './stockScope';
import { badCount, ledgerIn, lookAtAll, toWrite, unreadable, writeStock } from './stockWrites';
import type { StockAct, StockChanges } from './stockWrites';

/* ------------------------------------------------------------------ reserving */

/**
 * Reserves for jobs what they need and is there: of those named the earliest due first, what other jobs have reserved stays theirs. Done
 * again it changes nothing; after a change of plan the difference is reserved or released. Any number of jobs takes one read and one
 * write, and a read more where the ledger has to grow.
 *
 * @param jobs their names; null: every open job
 */
export async function reserveJobs(
  port: WorkbookPort,
  jobs: readonly string[] | null,
  { today, agreed = null }: StockAct,
): Promise<ReserveDone> {
  return politely(async (): Promise<ReserveDone> => {
    const tables = await lookAtAll(port);
    const ledger = ledgerIn(tables);
    if ('done' in ledger) return ledger;
    const seen = stockOf({ tables });
    if (!seen.ok) return unreadable(seen.issue);
    const { asked, shelved } = seen.value;
    const wanted = jobs && new Set(jobs.map(folded));
    const chosen = asked.jobs.map(({ job }) => job).filter((job) => !wanted || wanted.has(folded(job)));
    if (chosen.length === 0) return { done: false, reason: 'noOpenJob', jobs: jobs ?? [] };
    // What cannot be counted is told, and keeps nobody from getting the rest.
    const movements = reserveFor(asked, chosen).filter((movement) => !badCount(shelved, [movement]));
    const question = await writeStock(port, { ledger, movements, today, agreed }, labelOf('Reserved for', chosen));
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
    const question = await writeStock(port, { ledger, movements, today, agreed }, labelOf('Released for', names));
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
  /** Clubs whose piece was taken before, when they were called otherwise. */
  readonly renamed: readonly Renamed[];
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
  const { movements, onHand, renamed } = taken.value;
  const bad = badCount(shelved, movements);
  if (bad) return unreadable(bad);
  if (movements.length === 0) return { changes: [], looked: [], movements, renamed };
  const note = needs.value.round > 1 ? 'Redo under warranty' : '';
  const ready = await toWrite(port, { ledger, movements, counts: onHand, shelved, today, note, agreed });
  return 'done' in ready ? ready : { ...ready, movements, renamed };
}

/** Takes from the shelves what a job used: once, however often it is asked; nothing at all where one thing is not there. */
export async function useStock(port: WorkbookPort, job: string, act: StockAct): Promise<UseDone> {
  return politely(async (): Promise<UseDone> => {
    const ready = await useReady(port, await lookAtAll(port), job, act);
    if ('done' in ready) return ready;
    const { changes, looked, movements, renamed } = ready;
    if (movements.length > 0) {
      await port.apply([...changes, { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }], looked, {
        label: `Stock used for job ${job}`,
        receiptKey: LAST_FILL_KEY,
      });
    }
    return { done: true, job, movements, renamed };
  });
}
