/** What the rows of a ledger come to; their order does not matter, so that a person may sort them. */
import { groupedBy } from '../plan/together';
import { itemKey, lessOf, sameWord, sumOf } from './quantity';
import type { Entry, Movement, MovementKind } from './types';

/** What tells one entry from all others. */
export function entryKey(of: Pick<Movement, 'job' | 'club' | 'shelf' | 'item' | 'round'>): string {
  return [sameWord(of.job), sameWord(of.club), itemKey(of), of.round].join('\n');
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
