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

/** Sets that are looked at before a shortage that may not be the smallest is good enough. */
const MOST_SETS = 1 << 15;

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
  const counted = takes.filter((items) => items.every((item) => onHand[item] !== undefined));
  const kinds = [...new Map(counted.map((items) => [keyOf(items), [...items].sort(byNumber)])).values()];
  const shortOf = (items: readonly number[]): Shortage | undefined => {
    const within = new Set(items);
    const needed = counted.filter((each) => each.every((item) => within.has(item))).length;
    const there = items.reduce((sum, item) => sum + (onHand[item] ?? 0), 0);
    return needed > there ? { items, needed, onHand: there } : undefined;
  };
  const seen = new Set(kinds.map(keyOf));
  const bySize = new Map<number, number[][]>();
  const wait = (items: number[]): void => {
    const same = bySize.get(items.length);
    if (same) same.push(items);
    else bySize.set(items.length, [items]);
  };
  kinds.forEach(wait);
  for (let size = 0; size <= onHand.length; size += 1) {
    // a union is larger than what it was made of, so the list of this size is whole
    for (const items of bySize.get(size) ?? []) {
      const short = shortOf(items);
      if (short) return short;
      for (const kind of kinds) {
        const union = joined(items, kind);
        if (union.length === items.length || union.length === items.length + kind.length) continue;
        const key = keyOf(union);
        if (seen.has(key) || seen.size >= MOST_SETS) continue;
        seen.add(key);
        wait(union);
      }
    }
  }
  return shortOf(reached(takes, placed));
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
  return [...items].sort(byNumber);
}

function joined(one: readonly number[], other: readonly number[]): number[] {
  return [...new Set([...one, ...other])].sort(byNumber);
}

function keyOf(items: readonly number[]): string {
  return [...items].sort(byNumber).join();
}

function byNumber(a: number, b: number): number {
  return a - b;
}
