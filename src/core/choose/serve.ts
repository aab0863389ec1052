/** Clubs served from counted items at least cost, and groups of clubs divided among sizes. */
import type { Assign } from './types';

/** Cost of an item (by position) on a club (by position); undefined where it cannot go on. */
export type CostOf = (club: number, item: number) => bigint | undefined;

export interface Service {
  /** For each club of the block its item; undefined where stock has none left for it. */
  readonly placed: readonly (number | undefined)[];
  readonly unserved: number;
  /** Of those that are served. */
  readonly cost: bigint;
}

/** What there is to serve from. */
export interface Store {
  readonly items: readonly number[];
  /** undefined: not counted. */
  readonly onHand: (item: number) => number | undefined;
  readonly cost: CostOf;
}

/**
 * Serves as many clubs as can be, and those at least cost.
 *
 * Where every club can have its cheapest item, nothing is cheaper. Else pieces and clubs are paired by `assign`, a pair that cannot be
 * costing more than all others together, so that as few of these as possible are taken.
 */
export function serve(clubs: readonly number[], store: Store, assign: Assign): Service {
  return cheapestEach(clubs, store) ?? paired(clubs, store, assign);
}

function cheapestEach(clubs: readonly number[], { items, onHand, cost }: Store): Service | undefined {
  const used = new Map<number, number>();
  const placed: number[] = [];
  let total = 0n;
  for (const club of clubs) {
    let best: number | undefined;
    let least: bigint | undefined;
    for (const item of items) {
      const own = cost(club, item);
      if (own === undefined || (least !== undefined && own >= least)) continue;
      [best, least] = [item, own];
    }
    if (best === undefined || least === undefined) return undefined;
    const count = (used.get(best) ?? 0) + 1;
    if (count > (onHand(best) ?? Infinity)) return undefined;
    used.set(best, count);
    placed.push(best);
    total += least;
  }
  return { placed, unserved: 0, cost: total };
}

function paired(clubs: readonly number[], { items, onHand, cost }: Store, assign: Assign): Service {
  const pieces = items.flatMap((item) =>
    Array.from({ length: Math.max(0, Math.min(onHand(item) ?? clubs.length, clubs.length)) }, () => item),
  );
  const costs = clubs.map((club) => pieces.map((item) => cost(club, item)));
  const never = costs.flat().reduce<bigint>((sum, each) => sum + (each ?? 0n), 1n);
  const pairs = pieces.length === 0 ? [] : assign(costs.map((row) => row.map((each) => each ?? never)));
  const placed: (number | undefined)[] = clubs.map(() => undefined);
  let total = 0n;
  for (const [club, piece] of pairs) {
    const own = costs[club]?.[piece];
    if (own === undefined) continue;
    placed[club] = pieces[piece];
    total += own;
  }
  return { placed, unserved: placed.filter((item) => item === undefined).length, cost: total };
}

/** Groups divided among sizes: which groups each size takes (bits), and what that costs. */
export interface Division {
  readonly cost: bigint;
  readonly blocks: readonly { readonly groups: number; readonly size: number }[];
}

/**
 * Gives every group one size at least total cost; groups of one size are served together, since they draw on the same items.
 *
 * Sizes are gone through one by one; for every choice of groups it is kept how they are served most cheaply by the sizes so far
 * (dynamic programming over sets). Of equally cheap divisions the one that uses earlier sizes stands.
 *
 * @param costOf cost of some groups (bits) being of one size; undefined where that cannot be
 */
export function divided(
  groups: number,
  sizes: number,
  costOf: (groups: number, size: number) => bigint | undefined,
): Division | undefined {
  const all = 2 ** groups - 1;
  let best: (Division | undefined)[] = Array.from({ length: all + 1 }, () => undefined);
  best[0] = { cost: 0n, blocks: [] };
  for (let size = 0; size < sizes; size += 1) {
    const next = [...best];
    for (let taken = 1; taken <= all; taken += 1) {
      const own = costOf(taken, size);
      if (own === undefined) continue;
      for (let whole = taken; whole <= all; whole = (whole + 1) | taken) {
        const rest = best[whole ^ taken];
        const before = next[whole];
        if (!rest || (before && before.cost <= rest.cost + own)) continue;
        next[whole] = { cost: rest.cost + own, blocks: [...rest.blocks, { groups: taken, size }] };
      }
    }
    best = next;
  }
  return best[all];
}
