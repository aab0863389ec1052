/** Sets and weighed grips for the tests of placing. */
import {
  DEFAULT_SETTINGS,
  DEFAULT_WAYS,
  planSet,
  type Club,
  type Grip,
  type Placement,
  type PlanInput,
  type ShopSettings,
  type WeighedGrip,
} from '../../../../src/core/index';
import { aClub, aGrip } from '../../make';

export interface More {
  readonly stock?: readonly Grip[];
  readonly settings?: Partial<ShopSettings>;
}

/** Clubs numbered from 1, on a stock of one item `G` of 50 g unless another is given. */
export function aSet(clubs: readonly Partial<Club>[], more: More = {}): PlanInput {
  return {
    clubs: clubs.map((club, at) => aClub({ row: at + 1, sheetRow: at + 2, name: `club ${at + 1}`, ...club })),
    stock: more.stock ?? [aGrip({ gripGrams: 50 })],
    ways: DEFAULT_WAYS,
    settings: { ...DEFAULT_SETTINGS, ...more.settings },
  };
}

export function grips(...grams: readonly number[]): WeighedGrip[] {
  return grams.map((each, at) => ({ number: at + 1, grams: each }));
}

/** Numbers of the grips by club; undefined: none. */
export function numbers({ placed }: Placement): (number | undefined)[] {
  return placed.map(({ grip }) => grip?.number);
}

/** The gap that a plan of its own gives one club with one grip; without one, with the mass in Stock. */
export function gapOf(input: PlanInput, at: number, grams: number | undefined): number | undefined {
  const club = input.clubs[at];
  if (!club) return undefined;
  return planSet({ ...input, clubs: [{ ...club, newGripGrams: grams }] }).clubs[0]?.gapPoints;
}

/** Sum of squared gaps that plans of their own give a placing. */
export function squaresOf(input: PlanInput, grams: readonly (number | undefined)[]): number {
  return input.clubs.reduce((sum, _, at) => sum + (gapOf(input, at, grams[at]) ?? 0) ** 2, 0);
}

/** The least sum of squared gaps over every way of putting grips on clubs, none put on twice and none saved up. */
export function leastByTrial(input: PlanInput, weighed: readonly WeighedGrip[]): number {
  const clubs = input.clubs.length;
  const served = Math.min(clubs, weighed.length);
  const cost = input.clubs.map((_, at) => weighed.map(({ grams }) => (gapOf(input, at, grams) ?? 0) ** 2));
  const without = input.clubs.map((_, at) => (gapOf(input, at, undefined) ?? 0) ** 2);
  const used = new Set<number>();
  const least = (at: number, sum: number): number => {
    if (at === clubs) return used.size === served ? sum : Infinity;
    let best = clubs > weighed.length ? least(at + 1, sum + (without[at] ?? 0)) : Infinity;
    for (let grip = 0; grip < weighed.length; grip += 1) {
      if (used.has(grip)) continue;
      used.add(grip);
      best = Math.min(best, least(at + 1, sum + (cost[at]?.[grip] ?? 0)));
      used.delete(grip);
    }
    return best;
  };
  return least(0, 0);
}

/** Numbers that look random and are the same each time (the minimal standard generator of Park and Miller, *from memory*). */
export function numbersFrom(seed: number): (low: number, high: number) => number {
  let state = seed % 2147483647;
  return (low, high) => {
    state = (state * 16807) % 2147483647;
    return low + ((high - low) * state) / 2147483647;
  };
}
