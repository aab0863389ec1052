/** Which items are too few for the clubs that can take nothing else. */

/** Clubs (by position) and the items (by position) that each can take. */
export interface Takes {
  readonly takes: readonly (readonly number[])[];
  /** undefined: not counted, so never too few. */
  readonly onHand: readonly (number | undefined)[];
}

export interface Shortage {
  readonly items: readonly number[];
  readonly needed: number;
  readonly onHand: number;
}

/** Sets of items that are looked at before a shortage which may not be the smallest is good enough. */
const MOST_SETS = 1 << 14;

/** A set of items, a bit each. */
type Items = bigint;

/**
 * The fewest items that cannot serve the clubs which can take only these; of equally few, the first found.
 *
 * Where not every club can be served, some items have more clubs that depend on them than there are on hand (P. Hall, "On
 * Representatives of Subsets", 1935). A smallest such set is what some of the clubs can take together, and these hang together by
 * what they share; such unions are looked at from the smallest up. Where there are very many, the set that the unserved club reaches
 * by exchanging is taken: it is short, but may not be the smallest.
 *
 * @param placed a largest possible service: for each club its item, undefined where it has none
 */
export function shortageIn({ takes, onHand }: Takes, placed: readonly (number | undefined)[]): Shortage | undefined {
  const kinds = new Map<Items, number>();
  for (const items of takes) {
    if (items.some((item) => onHand[item] === undefined)) continue;
    const kind = bitsOf(items);
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  }
  for (const set of unionsBySize([...kinds.keys()])) {
    const short = shortOf(set, kinds, onHand);
    if (short) return short;
  }
  return shortOf(bitsOf(reached(takes, placed)), kinds, onHand);
}

function shortOf(set: Items, kinds: ReadonlyMap<Items, number>, onHand: Takes['onHand']): Shortage | undefined {
  let needed = 0;
  for (const [kind, clubs] of kinds) if ((kind & set) === kind) needed += clubs;
  const items = onHand.flatMap((_, item) => (set & (1n << BigInt(item)) ? [item] : []));
  const there = items.reduce((sum, item) => sum + (onHand[item] ?? 0), 0);
  return needed > there ? { items, needed, onHand: there } : undefined;
}

/** Unions of sets that overlap, the smallest first; no more than {@link MOST_SETS}. */
function* unionsBySize(sets: readonly Items[]): Generator<Items> {
  const seen = new Set(sets);
  const waiting: Items[][] = [];
  const wait = (set: Items): void => void (waiting[countIn(set)] ??= []).push(set);
  sets.forEach(wait);
  for (let size = 0; size < waiting.length; size += 1) {
    // a union is larger than what it was made of, so the list of this size is whole
    for (const set of waiting[size] ?? []) {
      yield set;
      for (const other of sets) {
        const union = set | other;
        if (union === set || (set & other) === 0n || seen.size >= MOST_SETS || seen.has(union)) continue;
        seen.add(union);
        wait(union);
      }
    }
  }
}

/** Items that the first unserved club could have if clubs exchanged theirs; all of them are given out. */
function reached(takes: readonly (readonly number[])[], placed: readonly (number | undefined)[]): number[] {
  const unserved = placed.findIndex((item) => item === undefined);
  const items = new Set(takes[unserved] ?? []);
  for (const item of items) {
    placed.forEach((has, club) => {
      if (has === item) for (const other of takes[club] ?? []) items.add(other);
    });
  }
  return [...items];
}

function bitsOf(items: readonly number[]): Items {
  return items.reduce((bits, item) => bits | (1n << BigInt(item)), 0n);
}

function countIn(set: Items): number {
  let count = 0;
  for (let rest = set; rest > 0n; rest &= rest - 1n) count += 1;
  return count;
}
