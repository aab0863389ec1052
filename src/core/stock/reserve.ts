/** Reserving for jobs, releasing what is not wanted, and taking what a job used. */
import { entriesByJob, entryKey, keysOf, settle, usedUp } from './ledger';
import { itemKey, lessOf, sameWord, sumOf } from './quantity';
import { byDue, wantedOf, type StockAsked } from './state';
import type { CannotTake, Entry, JobNeeds, Movement, Need, Stocked, Taken } from './types';
import type { Issue } from '../result';
import { groupedBy } from '../plan/together';

function blankEntry({ job, round }: Pick<JobNeeds, 'job' | 'round'>, { shelf, item, club }: Need): Entry {
  return { job, club, shelf, item, round, reserved: 0, balance: 0, used: 0 };
}

/**
 * The rows that give each chosen job what it needs, as far as it is there: the earliest due first, from what is on hand and not
 * reserved for jobs that were not chosen. What a chosen job has reserved and does not need, or must give up to one due earlier, is
 * released. Asked again, it gives no rows. What is not counted is reserved in full; what no table lists is not.
 *
 * @param chosen jobs, open ones among them count
 */
export function reserveFor({ stocked, jobs, entries }: StockAsked, chosen: readonly string[]): Movement[] {
  const names = new Set(chosen.map(sameWord));
  const open = byDue(jobs.filter(({ job }) => names.has(sameWord(job))));
  const pools = poolsOf(stocked, entries, new Set(open.map(({ job }) => sameWord(job))));
  const byJob = entriesByJob(entries);
  return open.flatMap((job) => reserveOne(job, byJob.get(sameWord(job.job)) ?? [], pools));
}

/** What is there of each thing for the jobs concerned; what no table lists is missing. */
function poolsOf(
  stocked: readonly Stocked[],
  entries: ReadonlyMap<string, Entry>,
  concerned: ReadonlySet<string>,
): Map<string, number> {
  const pools = new Map<string, number>();
  for (const each of stocked) {
    if (!pools.has(itemKey(each))) pools.set(itemKey(each), each.onHand ?? Infinity);
  }
  for (const entry of entries.values()) {
    const pool = pools.get(itemKey(entry));
    const others = pool !== undefined && pool !== Infinity && !concerned.has(sameWord(entry.job));
    if (others) pools.set(itemKey(entry), lessOf(pool, entry.reserved));
  }
  return pools;
}

/** @param entries of that job alone */
function reserveOne(job: JobNeeds, own: readonly Entry[], pools: Map<string, number>): Movement[] {
  const wanted = wantedOf(job, own);
  const entries = new Map(own.map((entry) => [entryKey(entry), entry]));
  const keyOf = keysOf(job);
  const rows = job.needs.flatMap((need) => {
    const key = keyOf(need);
    const thing = itemKey(need);
    const pool = Math.max(0, pools.get(thing) ?? 0);
    const given = Math.min(wanted.get(key) ?? 0, pool);
    if (pool !== Infinity) pools.set(thing, lessOf(pool, given));
    return settle(entries.get(key) ?? blankEntry(job, need), given);
  });
  const unneeded = [...entries].filter(([key]) => !wanted.has(key));
  return [...rows, ...unneeded.flatMap(([, entry]) => settle(entry, 0))];
}

/** The rows that give up everything that is reserved for these jobs, open or not. */
export function releaseFor(entries: ReadonlyMap<string, Entry>, jobs: readonly string[]): Movement[] {
  const names = new Set(jobs.map(sameWord));
  return [...entries.values()].filter(({ job }) => names.has(sameWord(job))).flatMap((entry) => settle(entry, 0));
}

/**
 * Takes from the shelves what a job used in its round and has not been taken yet, and gives up what it had reserved beyond that.
 *
 * @returns nothing taken where a grip is listed nowhere or twice, or less is on hand than was used
 */
export function takeFor(
  { stocked, entries }: Pick<StockAsked, 'stocked' | 'entries'>,
  of: Pick<JobNeeds, 'job' | 'round' | 'needs'>,
): { readonly ok: true; readonly value: Taken } | { readonly ok: false; readonly cannot: CannotTake } {
  const { job, round, needs } = of;
  const before = usedUp(of, entriesByJob(entries).get(sameWord(job)) ?? []);
  const keyOf = keysOf(of);
  const used = needs.flatMap((need): Movement[] => {
    const quantity = lessOf(need.quantity, before.used.get(keyOf(need)) ?? 0);
    return quantity > 0 ? [{ ...need, kind: 'used', job, round, quantity }] : [];
  });
  const shelves = groupedBy(stocked, itemKey);
  const issues = [...groupedBy(used, itemKey)].flatMap(([key, group]) =>
    listingIssue(group[0], shelves.get(key) ?? []),
  );
  const onHand = [...groupedBy(used, itemKey)].flatMap(([key, group]) => {
    const thing = shelves.get(key)?.[0];
    if (thing?.onHand === undefined) return [];
    const wanted = sumOf(group.map(({ quantity }) => quantity));
    return [{ stocked: thing, wanted, onHand: lessOf(thing.onHand, wanted) }];
  });
  const tooFew = onHand
    .filter((each) => each.onHand < 0)
    .map(({ stocked: { item, shelf, onHand: there = 0 }, wanted }) => ({ item, shelf, onHand: there, wanted }));
  if (issues.length > 0 || tooFew.length > 0) return { ok: false, cannot: { issues, tooFew } };
  const movements = [...used, ...givenUp(job, used, entries, round)];
  return { ok: true, value: { movements, onHand, renamed: before.renamed } };
}

/** Tape and weight that no table lists are written down, and counted nowhere. */
function listingIssue(need: Need | undefined, rows: readonly Stocked[]): Issue[] {
  if (!need || (need.shelf !== 'grip' && rows.length === 0)) return [];
  const field = need.shelf === 'grip' ? `Grip of ${need.club}` : 'Item';
  if (rows.length === 0) return [{ code: 'unknownItem', field, got: need.item }];
  return rows.length > 1 ? [{ code: 'duplicate', field: 'Stock', got: need.item }] : [];
}

/** What stays reserved once that was used; a redo leaves the job's own reservations alone. */
function givenUp(
  job: string,
  used: readonly Movement[],
  entries: ReadonlyMap<string, Entry>,
  round: number,
): Movement[] {
  const taken = new Map(used.map((each) => [entryKey(each), each.quantity]));
  return [...entries.values()]
    .filter((entry) => sameWord(entry.job) === sameWord(job) && entry.round === round)
    .flatMap((entry) => {
      const balance = lessOf(entry.balance, taken.get(entryKey(entry)) ?? 0);
      return settle({ ...entry, balance, reserved: Math.max(0, balance) }, 0);
    });
}
