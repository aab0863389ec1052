/** How everything on the shelves stands against what open jobs need. */
import { drained } from '../choose/steps';
import type { Progress } from '../choose/types';
import { groupedBy } from '../plan/together';
import { entriesByJob, keysOf, usedUp } from './ledger';
import { itemKey, lessOf, sameWord, sumOf } from './quantity';
import type { Entry, ItemState, JobNeeds, Lack, Stocked, StockState, Stranded } from './types';

export interface StockAsked {
  readonly stocked: readonly Stocked[];
  /** Open jobs, in the order of the sheet. */
  readonly jobs: readonly JobNeeds[];
  readonly entries: ReadonlyMap<string, Entry>;
  /** Jobs that are listed and done, in lower case: the others are gone. */
  readonly doneJobs: ReadonlySet<string>;
  /** What is ordered and not here yet, by thing. */
  readonly onOrder?: ReadonlyMap<string, number> | undefined;
}

/** Jobs by the day they are promised for; of one day, and of none, in the order of the sheet. */
export function byDue<T extends { readonly due: number | undefined }>(jobs: readonly T[]): T[] {
  return [...jobs].sort((one, other) => (one.due ?? Infinity) - (other.due ?? Infinity) || 0);
}

/** What one job wants of one thing, and has reserved. */
interface Claim {
  readonly job: string;
  readonly due: number | undefined;
  /** Needed and not used yet. */
  readonly wanted: number;
  readonly reserved: number;
}

/** What open jobs still want, by job. */
type Wanted = ReadonlyMap<string, ReadonlyMap<string, number>>;

/**
 * Sets what is on hand and on order against what is reserved and needed.
 *
 * A piece that is reserved is kept for its job. What is free goes to the open jobs in the order they are due, a job without a day
 * last; where more is reserved than there is, the job due last goes without. What is on order is waited for in the same order.
 */
export function stockState(asked: StockAsked): StockState {
  return drained(stockStateSteps(asked));
}

/** {@link stockState} in steps, one for each job and one for each thing. */
export function* stockStateSteps(asked: StockAsked): Generator<Progress, StockState> {
  const wanted = new Map<string, ReadonlyMap<string, number>>();
  const byJob = entriesByJob(asked.entries);
  const claims = new Map<string, Claimed[]>();
  const inOrder = byDue(asked.jobs);
  for (const [done, job] of inOrder.entries()) {
    yield { done, of: inOrder.length };
    const name = sameWord(job.job);
    const still = wantedOf(job, byJob.get(name) ?? []);
    wanted.set(name, still);
    addClaims(claims, job, still, asked.entries);
  }
  const listed = new Map<string, Stocked>();
  for (const each of asked.stocked) if (!listed.has(itemKey(each))) listed.set(itemKey(each), each);
  const reserved = reservedByItem(asked.entries);
  const keys = [...new Set([...listed.keys(), ...claims.keys()])];
  const items: ItemState[] = [];
  for (const [done, key] of keys.entries()) {
    yield { done, of: keys.length };
    const { shelf, item } = listed.get(key) ?? claims.get(key)?.[0]?.of ?? { shelf: 'grip', item: '' };
    const own = (claims.get(key) ?? []).map(({ claim }) => claim);
    const onOrder = asked.onOrder?.get(key) ?? 0;
    const of = { shelf, item, stocked: listed.get(key), reserved: reserved.get(key) ?? 0, onOrder };
    items.push(itemState({ ...of, claims: own }));
  }
  return { items, stranded: strandedOf(asked, wanted) };
}

function reservedByItem(entries: ReadonlyMap<string, Entry>): ReadonlyMap<string, number> {
  const groups = groupedBy(entries.values(), itemKey);
  return new Map([...groups].map(([key, group]) => [key, sumOf(group.map(({ reserved }) => reserved))]));
}

type Claimed = { readonly of: Pick<Stocked, 'shelf' | 'item'>; readonly claim: Claim };

/** What one job claims, by thing; asked in the order the jobs are due. */
function addClaims(
  found: Map<string, Claimed[]>,
  of: JobNeeds,
  still: ReadonlyMap<string, number>,
  entries: StockAsked['entries'],
): void {
  const { job, due, needs } = of;
  const keyOf = keysOf(of);
  for (const [key, group] of groupedBy(needs, itemKey)) {
    const first = group[0] as (typeof group)[number];
    const own = group.map(keyOf);
    const wanted = sumOf(own.map((each) => still.get(each) ?? 0));
    const reserved = sumOf(own.map((each) => entries.get(each)?.reserved ?? 0));
    const claims = found.get(key) ?? [];
    claims.push({ of: { shelf: first.shelf, item: first.item }, claim: { job, due, wanted, reserved } });
    found.set(key, claims);
  }
}

interface ItemAsked extends Pick<ItemState, 'shelf' | 'item' | 'stocked' | 'reserved' | 'onOrder'> {
  readonly claims: readonly Claim[];
}

function itemState({ claims, ...of }: ItemAsked): ItemState {
  const { stocked, reserved, onOrder } = of;
  const onHand = stocked?.onHand;
  const needed = sumOf(claims.map(({ wanted }) => wanted));
  const common = { ...of, onHand, needed };
  if (onHand === undefined) return { ...common, free: undefined, left: undefined, lacks: [], low: false };
  const free = lessOf(onHand, reserved);
  const left = lessOf(free, sumOf(claims.map((claim) => Math.max(0, lessOf(claim.wanted, claim.reserved)))));
  const coming = sumOf([left, onOrder]);
  const low = coming < 0 || (stocked?.reorderAt !== undefined && coming <= stocked.reorderAt);
  return { ...common, free, left, lacks: lacksOf(claims, free, onOrder), low };
}

/** Of what is free and of what is on order, the earliest due first; of what is reserved beyond what there is, the latest due loses first. */
function lacksOf(claims: readonly Claim[], free: number, onOrder: number): Lack[] {
  let lost = Math.max(0, -free);
  const kept = [...claims].reverse().map((claim) => {
    const loses = Math.min(lost, claim.reserved);
    lost = lessOf(lost, loses);
    return { ...claim, reserved: lessOf(claim.reserved, loses) };
  });
  let pool = Math.max(0, free);
  let coming = onOrder;
  return kept.reverse().flatMap(({ job, due, wanted, reserved }) => {
    const open = Math.max(0, lessOf(wanted, reserved));
    const given = Math.min(open, pool);
    pool = lessOf(pool, given);
    if (open <= given) return [];
    const quantity = lessOf(open, given);
    const waits = Math.min(quantity, coming);
    coming = lessOf(coming, waits);
    return [{ job, due, quantity, onOrder: waits }];
  });
}

/** What is reserved for jobs that are not open, or for what an open job does not need. */
function strandedOf({ entries, doneJobs }: StockAsked, open: Wanted): Stranded[] {
  const held = [...entries].flatMap(([key, entry]) => {
    if (entry.reserved === 0) return [];
    const excess = lessOf(entry.reserved, open.get(sameWord(entry.job))?.get(key) ?? 0);
    return excess > 0 ? [{ ...entry, reserved: excess }] : [];
  });
  return [...groupedBy(held, ({ job }) => sameWord(job))].map(([key, group]) => ({
    job: group[0]?.job ?? '',
    why: open.has(key) ? ('unneeded' as const) : doneJobs.has(key) ? ('done' as const) : ('gone' as const),
    entries: group,
  }));
}

/** The needs of jobs without what they have used already. */
export function stillNeeded(jobs: readonly JobNeeds[], entries: ReadonlyMap<string, Entry>): JobNeeds[] {
  const byJob = entriesByJob(entries);
  return jobs.map((job) => {
    const wanted = wantedOf(job, byJob.get(sameWord(job.job)) ?? []);
    const keyOf = keysOf(job);
    const needs = job.needs.flatMap((need) => {
      const quantity = wanted.get(keyOf(need)) ?? 0;
      return quantity > 0 ? [{ ...need, quantity }] : [];
    });
    return { ...job, needs };
  });
}

/**
 * What an open job still wants, by the key of its entries.
 *
 * @param entries of that job
 */
export function wantedOf(of: JobNeeds, entries: readonly Entry[]): ReadonlyMap<string, number> {
  const { used } = usedUp(of, entries);
  const keyOf = keysOf(of);
  return new Map(
    of.needs.map((need) => {
      const key = keyOf(need);
      return [key, Math.max(0, lessOf(need.quantity, used.get(key) ?? 0))];
    }),
  );
}
