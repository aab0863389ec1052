/** What the rows of a ledger come to; their order does not matter, so that a person may sort them. */
import { groupedBy } from '../plan/together';
import { itemKey, lessOf, sameWord, sumOf } from './quantity';
import type { Entry, JobNeeds, Movement, MovementKind, Need, Renamed } from './types';

/** What tells one entry from all others. */
export function entryKey(of: Pick<Movement, 'job' | 'club' | 'shelf' | 'item' | 'round'>): string {
  return keysOf(of)(of);
}

/** The same for many needs of one job. */
export function keysOf({ job, round }: Pick<Movement, 'job' | 'round'>): (need: Omit<Need, 'quantity'>) => string {
  const name = sameWord(job);
  return (need) => `${name}\n${sameWord(need.club)}\n${itemKey(need)}\n${round}`;
}

/**
 * What is reserved and what was used, by job, club, thing and round. What was used is no longer reserved.
 *
 * @param movements in any order; what belongs to no job is left out
 */
export function entriesOf(movements: readonly Movement[]): ReadonlyMap<string, Entry> {
  const ofJobs = movements.filter(({ job, kind }) => job !== '' && SETTLED.includes(kind));
  return new Map([...groupedBy(ofJobs, entryKey)].map(([key, group]) => [key, entryOf(group)]));
}

const SETTLED: readonly MovementKind[] = ['reserved', 'released', 'used'];

function entryOf(group: readonly Movement[]): Entry {
  const { job, club, shelf, item, round } = group[0] as Movement;
  const total = (kind: MovementKind): number =>
    sumOf(group.filter((each) => each.kind === kind).map(({ quantity }) => quantity));
  const used = total('used');
  const balance = sumOf([total('reserved'), -total('released'), -used]);
  return { job, club, shelf, item, round, reserved: Math.max(0, balance), balance, used };
}

/** The row that brings what is reserved to what is wanted; none where it is so already. */
export function settle(entry: Entry, wanted: number): Movement[] {
  const { job, club, shelf, item, round } = entry;
  const difference = lessOf(wanted, wanted > 0 ? entry.balance : entry.reserved);
  if (difference === 0) return [];
  const kind = difference > 0 ? 'reserved' : 'released';
  return [{ kind, job, club, shelf, item, round, quantity: Math.abs(difference) }];
}

/** What of a job's needs has been used already. */
export interface UsedUp {
  /** By the key of the entry; none where nothing was used. */
  readonly used: ReadonlyMap<string, number>;
  readonly renamed: readonly Renamed[];
}

/**
 * What a job has used of what it needs. Pieces that were taken for a club which the job has no more count for clubs that get the same
 * thing and took none: a club was renamed, and its piece is not taken twice.
 *
 * @param entries of that job; those of other rounds are left out
 */
export function usedUp(of: Pick<JobNeeds, 'job' | 'round' | 'needs'>, entries: readonly Entry[]): UsedUp {
  const { round, needs } = of;
  const taken = entries.filter((entry) => entry.round === round && entry.used > 0);
  if (taken.length === 0) return { used: new Map(), renamed: [] };
  const used = new Map(taken.map((entry) => [entryKey(entry), entry.used]));
  const clubs = new Set(needs.map(({ club }) => sameWord(club)));
  const spare = taken.filter(({ club }) => !clubs.has(sameWord(club))).map((entry) => ({ entry, left: entry.used }));
  if (spare.length === 0) return { used, renamed: [] };
  const keyOf = keysOf(of);
  const renamed = needs.flatMap((need) => {
    const key = keyOf(need);
    return spare.flatMap((from): Renamed[] => {
      const open = lessOf(need.quantity, used.get(key) ?? 0);
      const given = itemKey(from.entry) === itemKey(need) ? Math.min(from.left, open) : 0;
      if (given <= 0) return [];
      from.left = lessOf(from.left, given);
      used.set(key, sumOf([used.get(key) ?? 0, given]));
      return [{ was: from.entry.club, now: need.club, shelf: need.shelf, item: need.item }];
    });
  });
  return { used, renamed };
}

/** Entries by the job they belong to, as it is compared. */
export function entriesByJob(entries: ReadonlyMap<string, Entry>): ReadonlyMap<string, readonly Entry[]> {
  return groupedBy(entries.values(), ({ job }) => sameWord(job));
}
