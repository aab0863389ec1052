/** Which limit keeps a model from serving a set. */
import type { Club, Grip } from '../plan/types';
import type { Size } from './models';
import type { Blocked, Fit } from './options';
import { divided, serve, type Service, type Store } from './serve';
import { shortageIn } from './shortage';
import type { Assign, CannotServe, Limit } from './types';

/** A model laid out against the clubs of a set. */
export interface Board {
  readonly clubs: readonly Club[];
  readonly items: readonly Grip[];
  readonly fit: (club: number, item: number) => Fit;
  readonly store: (items: readonly number[]) => Store;
  /** Clubs (positions) that share a size. */
  readonly groups: readonly (readonly number[])[];
  readonly sizes: readonly Size[];
  readonly assign: Assign;
}

/** Several limits at once: the first of these is named. What is short in stock comes before what is not known. */
const CAUSES = ['use', 'core', 'diameter', 'size', 'weight', 'unknown'] as const;
/** How far an item came with a club before it was kept off. */
const STAGES = ['use', 'core', 'diameter', 'size', 'unknown', 'weight'] as const;

interface Bites {
  readonly limit: Limit;
  readonly cause: number;
  /** By how much, in the limit's own unit. */
  readonly miss: number;
}

/**
 * The limit that bites first: where a club can take no item of the model in any size; then where all sizes together are too few in
 * stock; then what is not known; then, where sizes may not differ freely, what keeps the size that comes nearest, or the stock of
 * the division into sizes that leaves fewest clubs without a grip.
 */
export function limitOf(board: Board): Omit<CannotServe, 'model'> {
  const all = board.clubs.map((_, at) => at);
  const items = board.items.map((_, at) => at);
  const bites = bitesAt(board, all, items);
  if (bites && bites.limit.limit !== 'unknown') return { limit: bites.limit };
  const known = all.filter((club) => hasOption(board, club, items));
  const short = stockLimit(board, known, items);
  if (short) return { limit: short };
  return bites ? { limit: bites.limit } : (sizeLimit(board) ?? divisionLimit(board));
}

export function hasOption(board: Board, club: number, items: readonly number[]): boolean {
  return items.some((item) => 'option' in board.fit(club, item));
}

/** A group that no one size suits: what keeps the size that comes nearest from it. */
function sizeLimit(board: Board): Omit<CannotServe, 'model'> | undefined {
  for (const group of board.groups) {
    const each = board.sizes.map((size) => ({ size: size.name, bites: bitesAt(board, group, size.items) }));
    if (each.some(({ bites }) => !bites)) continue;
    const [nearest] = each.flatMap(({ size, bites }) => (bites ? [{ size, bites }] : [])).sort(byNearness);
    if (nearest) return { size: nearest.size, limit: nearest.bites.limit };
  }
  return undefined;
}

function byNearness(a: { readonly bites: Bites }, b: { readonly bites: Bites }): number {
  return b.bites.cause - a.bites.cause || a.bites.miss - b.bites.miss;
}

/** Every group has sizes that suit it, but the items of no division are enough. */
function divisionLimit(board: Board): Omit<CannotServe, 'model'> {
  const least = divided(board.groups.length, board.sizes.length, (groups, at) => {
    const service = serviceOf(board, clubsIn(board, groups), board.sizes[at]?.items ?? []);
    return service && BigInt(service.unserved);
  });
  for (const { groups, size } of least?.blocks ?? []) {
    const items = board.sizes[size]?.items ?? [];
    const limit = stockLimit(board, clubsIn(board, groups), items);
    if (limit) return { size: board.sizes[size]?.name, limit };
  }
  // not reached: a model that is short of nothing serves
  return { limit: { limit: 'unknown', club: board.clubs[0]?.name ?? '' } };
}

/** Positions of the clubs of some groups (bits). */
export function clubsIn(board: Board, groups: number): number[] {
  return board.groups.flatMap((group, at) => (groups & (1 << at) ? group : []));
}

/** How clubs are served from some items; undefined where one of them can take none of these. */
export function serviceOf(board: Board, clubs: readonly number[], items: readonly number[]): Service | undefined {
  if (!clubs.every((club) => hasOption(board, club, items))) return undefined;
  return serve(clubs, board.store(items), board.assign);
}

function stockLimit(board: Board, clubs: readonly number[], items: readonly number[]): Limit | undefined {
  const store = board.store(items);
  const { placed, unserved } = serve(clubs, store, board.assign);
  if (unserved === 0) return undefined;
  const takes = clubs.map((club) => items.filter((item) => 'option' in board.fit(club, item)));
  const onHand = board.items.map((_, item) => store.onHand(item));
  const short = shortageIn({ takes, onHand }, placed);
  if (!short) return undefined;
  const named = short.items.map((item) => board.items[item]?.item ?? '');
  return { limit: 'stock', items: named, needed: short.needed, onHand: short.onHand };
}

/** The limit that keeps some of these clubs from these items: of several clubs the first cause, of a club's items the one that came furthest. */
function bitesAt(board: Board, clubs: readonly number[], items: readonly number[]): Bites | undefined {
  let first: Bites | undefined;
  for (const club of clubs) {
    if (hasOption(board, club, items)) continue;
    const bites = furthest(board, club, items);
    if (!first || bites.cause < first.cause) first = bites;
  }
  return first;
}

function furthest(board: Board, at: number, items: readonly number[]): Bites {
  let best: { readonly blocked: Blocked; readonly grip: Grip } | undefined;
  for (const item of items) {
    const fit = board.fit(at, item);
    if ('option' in fit) continue;
    if (!best || isNearer(fit.blocked, best.blocked)) best = { blocked: fit.blocked, grip: board.items[item] as Grip };
  }
  const club = board.clubs[at] as Club;
  if (!best) return { limit: { limit: 'unknown', club: club.name }, cause: CAUSES.indexOf('unknown'), miss: 0 };
  const { blocked, grip } = best;
  return { limit: asLimit(blocked, club, grip), cause: CAUSES.indexOf(blocked.why), miss: missOf(blocked) };
}

function isNearer(one: Blocked, other: Blocked): boolean {
  if (one.why !== other.why) return STAGES.indexOf(one.why) > STAGES.indexOf(other.why);
  return missOf(one) < missOf(other);
}

function missOf(blocked: Blocked): number {
  if (blocked.why === 'size') return blocked.offInches;
  return blocked.why === 'weight' ? blocked.grams - blocked.limitGrams : 0;
}

function asLimit(blocked: Blocked, { name, buttInches, targetInches }: Club, { item }: Grip): Limit {
  switch (blocked.why) {
    case 'use':
      return { limit: 'use', club: name };
    case 'core':
      return { limit: 'core', club: name, buttInches: buttInches ?? NaN };
    case 'diameter':
      return { limit: 'lacks', item, lacks: 'diameter' };
    case 'size': {
      const { nearestInches } = blocked;
      return { limit: 'size', club: name, targetInches: targetInches ?? NaN, nearestInches, item };
    }
    case 'weight':
      return { limit: 'weight', club: name, grams: blocked.grams, limitGrams: blocked.limitGrams, item };
    case 'unknown':
      return { limit: 'unknown', club: name };
  }
}
