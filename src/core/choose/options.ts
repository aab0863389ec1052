/** How a club can be fitted with an item: the best way of it, or what keeps it from that. */
import { isWanted } from '../plan/remedy';
import { measuresOn } from '../plan/size';
import type { Club, ClubPlan, Grip, ShopSettings } from '../plan/types';
import { isPrice, PER_GRAM, PER_INCH, PER_MONEY, PER_POINT, wholeParts } from './exact';
import { coreFit, fewestLayers, suits } from './fits';
import { ownLayers, type SetBench } from './setBench';
import type { Aim } from './types';

/** A way of fitting that is possible; costs as whole numbers, most important first. */
export interface Option {
  readonly layers: number;
  readonly plan: ClubPlan;
  readonly costs: readonly number[];
}

/** What keeps an item off a club, in the order in which it is looked at. */
export type Blocked =
  | { readonly why: 'use' }
  | { readonly why: 'core' }
  | { readonly why: 'diameter' }
  | { readonly why: 'size'; readonly nearestInches: number; readonly offInches: number }
  | { readonly why: 'unknown' }
  | { readonly why: 'weight'; readonly grams: number; readonly limitGrams: number };

export type Fit = { readonly option: Option } | { readonly blocked: Blocked };

/** A club, an item and what they are judged by. */
export interface Pairing {
  readonly at: number;
  readonly club: Club;
  readonly grip: Grip;
  /** Position in the list, for a tie. */
  readonly place: number;
}

/** The cheapest way of fitting an item to a club, by the aims in their order, then by {@link costsOf}'s ties. */
export function fitOf(pairing: Pairing, bench: SetBench, settings: ShopSettings, aims: readonly Aim[]): Fit {
  const { at, club, grip } = pairing;
  if (!suits(grip, club.kind)) return { blocked: { why: 'use' } };
  if (coreFit(grip, club.buttInches, settings) !== 'fits') return { blocked: { why: 'core' } };
  const tries = layersToTry(club, grip, settings);
  if ('why' in tries) return { blocked: tries };
  let best: Option | undefined;
  let blocked: Blocked = { why: 'unknown' };
  for (const layers of tries) {
    const plan = bench.plan(at, grip, layers);
    const over = overLimitOf(plan);
    if (over) {
      if (blocked.why !== 'weight' || over.grams < blocked.grams) blocked = over;
    } else if (isReckoned(plan, settings)) {
      const costs = costsOf(plan, pairing, aims);
      const isSound = costs.every((cost) => Number.isSafeInteger(cost));
      if (isSound && (!best || isLess(costs, best.costs))) best = { layers, plan, costs };
    }
  }
  return best ? { option: best } : { blocked };
}

/** Layers that bring the grip within the shop's size tolerance of the target; without a target the club's own. */
function layersToTry(club: Club, grip: Grip, settings: ShopSettings): readonly number[] | Blocked {
  const { buttInches, targetInches, taperPerInch, lowerLayers } = club;
  if (targetInches === undefined) return [ownLayers(club, grip, settings)];
  if (buttInches === undefined) return { why: 'unknown' };
  const near: number[] = [];
  let nearestInches: number | undefined;
  let offInches = Infinity;
  for (let layers = fewestLayers(grip, buttInches, settings); layers <= settings.mostLayers; layers += 1) {
    const measured = measuresOn(grip, { buttInches, layers, taperPerInch, lowerLayers }, settings).upper?.inches;
    if (measured === undefined) return { why: 'diameter' };
    const off = Math.abs(measured - targetInches);
    if (off < offInches) [nearestInches, offInches] = [measured, off];
    // .910 − .900 is .010000000000000009
    if (off <= settings.sizeToleranceInches + 1e-9) near.push(layers);
    else if (measured > targetInches) break;
  }
  if (near.length > 0 || nearestInches === undefined) return near;
  return { why: 'size', nearestInches, offInches };
}

function overLimitOf(plan: ClubPlan): Extract<Blocked, { why: 'weight' }> | undefined {
  if (!plan.remedy?.overLimit) return undefined;
  for (const note of plan.notes) {
    if (note.note === 'overLimit') return { why: 'weight', grams: note.grams, limitGrams: note.limitGrams };
  }
  return undefined;
}

/** Whether all that the aims ask is known: nothing is held, or the gap is known and so is what puts it right where it must be. */
function isReckoned(plan: ClubPlan, settings: ShopSettings): boolean {
  const { hold, gapPoints, tolerancePoints, remedy } = plan;
  if (hold === 'nothing') return true;
  if (gapPoints === undefined) return false;
  return remedy !== undefined || !isWanted({ points: gapPoints, tolerancePoints }, settings);
}

/** Whole numbers of each cost: weight in milligrams, deviation in millionths of a point, price in ten-thousandths. */
export const COSTS_OF: Readonly<Record<Aim, (plan: ClubPlan) => readonly number[]>> = {
  weight: (plan) => [wholeParts(plan.remedy?.grams ?? 0, PER_GRAM)],
  deviation: (plan) => [wholeParts(Math.abs(plan.gapPoints ?? 0), PER_POINT)],
  // what has no price cannot be called cheap: fewest of these first, then the least that is known
  price: ({ grip }) => (isPrice(grip?.price) ? [0, Math.max(0, wholeParts(grip.price, PER_MONEY))] : [1, 0]),
};

/** What an option costs, by the aims; between options that cost the same, nearer to its size, then less tape, then the earlier item. */
function costsOf(plan: ClubPlan, { club, place }: Pairing, aims: readonly Aim[]): number[] {
  const off =
    club.targetInches === undefined ? 0 : Math.abs((plan.upper?.inches ?? club.targetInches) - club.targetInches);
  return [...aims.flatMap((aim) => COSTS_OF[aim](plan)), wholeParts(off, PER_INCH), plan.layers, place];
}

function isLess(one: readonly number[], other: readonly number[]): boolean {
  for (const [at, cost] of one.entries()) {
    const against = other[at] ?? 0;
    if (cost !== against) return cost < against;
  }
  return false;
}

/** Packs lists of costs into one whole number each, so that sums of up to so many compare as the lists of sums do. */
export function packing(all: Iterable<readonly number[]>, count: number): (costs: readonly number[]) => bigint {
  const most: number[] = [];
  for (const costs of all) costs.forEach((cost, at) => (most[at] = Math.max(most[at] ?? 0, cost)));
  const units: bigint[] = [];
  let unit = 1n;
  for (let at = most.length - 1; at >= 0; at -= 1) {
    units[at] = unit;
    unit *= BigInt(most[at] ?? 0) * BigInt(count) + 1n;
  }
  return (costs) => costs.reduce((sum, cost, at) => sum + BigInt(cost) * (units[at] ?? 0n), 0n);
}
