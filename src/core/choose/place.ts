/**
 * Which weighed grip goes on which club, so that readings land closest to what is held.
 *
 * Grips of one model scatter by a few grams, and a club's gap is a straight line in its grip's mass. The best placing is the one with
 * the least sum of squared gaps; a library finds it, which is handed in.
 */
import { ODD_MASS_GRAMS, ODD_MASS_SPREADS, RANGES } from '../constants';
import { planSet } from '../plan/planSet';
import type { ClubPlan, PlanInput } from '../plan/types';
import { ok, type Result } from '../result';
import type { Assign } from './types';
import { groupsOf, type Group, type WeighedGrip } from './weighedGroups';

/** A club with the grip it gets. */
export interface PlacedClub {
  readonly row: number;
  readonly name: string;
  readonly item: string | undefined;
  /** undefined: its item was not weighed, or no weighed one was left; planned with the mass in Stock then. */
  readonly grip: WeighedGrip | undefined;
  readonly plan: ClubPlan;
  /** With the mass in Stock. */
  readonly before: ClubPlan;
}

/** How even a way of placing leaves the clubs whose items were weighed; undefined where none of them is held at anything. */
export interface Evenness {
  /** Largest gap by size, points. */
  readonly largestGap: number | undefined;
  /** Root of the mean of the squared gaps, points. */
  readonly rmsGap: number | undefined;
  /** Largest gap less smallest, points. */
  readonly rangePoints: number | undefined;
  /** Weight that the plans then add, grams. */
  readonly headGrams: number;
  readonly buttGrams: number;
}

/** A mass far from what Stock says of its item. */
export interface OddMass {
  readonly grip: WeighedGrip;
  readonly item: string;
  readonly stockGrams: number;
}

export interface Placement {
  /** Every club of the set, in its order. */
  readonly placed: readonly PlacedClub[];
  /** Weighed grips that no club gets, as typed. */
  readonly left: readonly WeighedGrip[];
  /** Rows of clubs whose item was weighed, and for which none was left. */
  readonly unserved: readonly number[];
  readonly odd: readonly OddMass[];
  /** Put on in the order typed. */
  readonly delivered: Evenness;
  readonly asPlaced: Evenness;
}

/** Which grip is on which club, by the club's position in the set. */
type Placing = ReadonlyMap<number, WeighedGrip>;

/**
 * Places weighed grips on the clubs of a set.
 *
 * Formula: least `Σ gap²` over the clubs that are held at something, each gap being `held − gripped` with that very grip; where
 * clubs outnumber grips, those left without count with the mass in Stock, and those held at nothing go without first. Grips that weigh
 * the same, and clubs that gain the same, are taken in the order typed and in the order of the set. Source: the linear assignment
 * problem.
 *
 * @param input the set; what a club's new grip weighed before is passed over where its item is among the weighed ones
 * @param weighed grams, each with its item where clubs get more than one
 * @param assign least-cost pairs of a matrix
 * @returns the placing, or why there is none: nothing weighed, no club for it, an item that is not said or not known
 */
export function placeGrips(input: PlanInput, weighed: readonly WeighedGrip[], assign: Assign): Result<Placement> {
  const sorted = groupsOf(input, weighed);
  if (!sorted.ok) return sorted;
  const { groups } = sorted.value;
  const concerned = new Set(groups.flatMap(({ clubs }) => clubs));
  const plans = (placing: Placing): readonly ClubPlan[] => planSet(withGrips(input, concerned, placing)).clubs;
  const before = plans(new Map());
  const lines = gapLines(groups, plans);
  const placing = merged(groups.map((group) => bestPlacing(group, lines, before, assign)));
  const after = plans(placing);
  const asTyped = plans(merged(groups.map((group) => typedPlacing(group, lines))));
  const at = [...concerned].sort((a, b) => a - b);
  const on = new Set(placing.values());
  return ok({
    placed: input.clubs.map((club, index) => ({
      row: club.row,
      name: club.name,
      item: club.newItem,
      grip: placing.get(index),
      plan: planAt(after, index),
      before: planAt(before, index),
    })),
    left: weighed.filter((grip) => !on.has(grip)),
    unserved: at.filter((index) => !placing.has(index)).map((index) => input.clubs[index]?.row ?? 0),
    odd: groups.flatMap((group) => oddMasses(group, input)),
    delivered: evenness(at.map((index) => planAt(asTyped, index))),
    asPlaced: evenness(at.map((index) => planAt(after, index))),
  });
}

function planAt(plans: readonly ClubPlan[], index: number): ClubPlan {
  return plans[index] as ClubPlan; // a plan for each club is what planSet promises
}

function merged(placings: readonly Placing[]): Placing {
  return new Map(placings.flatMap((placing) => [...placing]));
}

/** The set with these very grips on; the clubs concerned that get none have what Stock says. */
function withGrips(input: PlanInput, concerned: ReadonlySet<number>, placing: Placing): PlanInput {
  const clubs = input.clubs.map((club, index) =>
    concerned.has(index) ? { ...club, newGripGrams: placing.get(index)?.grams } : club,
  );
  return { ...input, clubs };
}

/* ---------------------------------------------------------------- gaps */

/** A club's gap as a straight line in the mass of its grip; undefined where nothing is held, or the gap is not known. */
interface GapLine {
  readonly grams: number;
  readonly points: number;
  readonly pointsPerGram: number;
}

function gapWith(line: GapLine, grams: number): number {
  return line.points + line.pointsPerGram * (grams - line.grams);
}

/** Two plans with unlike masses tell every club's line. */
function gapLines(
  groups: readonly Group[],
  plans: (placing: Placing) => readonly ClubPlan[],
): ReadonlyMap<number, GapLine> {
  const { low, high } = RANGES.gripGrams;
  const every = (grams: number): Placing =>
    new Map(groups.flatMap(({ clubs }) => clubs.map((index) => [index, { number: 0, grams }] as const)));
  const light = plans(every(low));
  const heavy = plans(every(high));
  const lines = new Map<number, GapLine>();
  for (const index of groups.flatMap(({ clubs }) => clubs)) {
    const points = planAt(light, index).gapPoints;
    const then = planAt(heavy, index).gapPoints;
    if (points === undefined || then === undefined) continue;
    lines.set(index, { grams: low, points, pointsPerGram: (then - points) / (high - low) });
  }
  return lines;
}

/* ---------------------------------------------------------------- placing */

/**
 * Costs are counted in whole billionths of a square point: sums of whole numbers are exact, so that no last bit decides between
 * placings that are equally good.
 */
const COSTS_A_SQUARE_POINT = 1e9;

/** The least sum of squares for one item; the clubs without a gap get what is left, in the order typed. */
function bestPlacing(
  group: Group,
  lines: ReadonlyMap<number, GapLine>,
  before: readonly ClubPlan[],
  assign: Assign,
): Placing {
  const held = group.clubs.filter((index) => lines.has(index));
  const costs = held.map((index) => {
    const line = lines.get(index) as GapLine;
    // what the club costs if it gets none; without a mass in Stock no one knows, for any club of the item
    const without = squared(planAt(before, index).gapPoints ?? 0);
    return group.grips.map(({ grams }) => Math.round((squared(gapWith(line, grams)) - without) * COSTS_A_SQUARE_POINT));
  });
  const found = new Map<number, WeighedGrip>();
  for (const [row, column] of assign(costs)) {
    const index = held[row];
    const grip = group.grips[column];
    if (index !== undefined && grip) found.set(index, grip);
  }
  const placing = clubsInOrder(gripsInOrder(found, group), group, lines);
  const on = new Set(placing.values());
  const left = group.grips.filter((grip) => !on.has(grip));
  const others = group.clubs.filter((index) => !lines.has(index));
  return new Map([...placing, ...zip(others, left)]);
}

/** Put on in the order typed. Where clubs outnumber grips, those held at nothing go without first, then the last ones. */
function typedPlacing({ clubs, grips }: Group, lines: ReadonlyMap<number, GapLine>): Placing {
  const heldFirst = [...clubs].sort((a, b) => Number(lines.has(b)) - Number(lines.has(a)) || a - b);
  const served = heldFirst.slice(0, grips.length).sort((a, b) => a - b);
  return new Map(zip(served, grips));
}

/** Of grips that weigh the same, the first typed goes on the first club. */
function gripsInOrder(placing: Placing, { grips }: Group): Placing {
  const alike = new Map<number, number[]>();
  for (const [index, { grams }] of placing) alike.set(grams, [...(alike.get(grams) ?? []), index]);
  const pairs = [...alike].flatMap(([grams, clubs]) =>
    zip(
      clubs.sort((a, b) => a - b),
      grips.filter((grip) => grip.grams === grams),
    ),
  );
  return new Map(pairs);
}

/** Of clubs that gain the same by every grip, the first one is served first, and gets the first typed of what they have. */
function clubsInOrder(placing: Placing, { clubs }: Group, lines: ReadonlyMap<number, GapLine>): Placing {
  const alike = new Map<string, number[]>();
  for (const index of clubs) {
    const line = lines.get(index);
    if (!line) continue;
    const key = `${line.points.toFixed(9)} ${line.pointsPerGram.toFixed(9)}`;
    alike.set(key, [...(alike.get(key) ?? []), index]);
  }
  const pairs = [...alike.values()].flatMap((same) => {
    const grips = same.flatMap((index) => placing.get(index) ?? []);
    return zip(
      same,
      grips.sort((a, b) => a.number - b.number),
    );
  });
  return new Map(pairs);
}

/** Pairs as far as the shorter list goes. */
function zip<A, B>(left: readonly A[], right: readonly B[]): (readonly [A, B])[] {
  return left.slice(0, right.length).map((each, at) => [each, right[at] as B] as const);
}

/* ---------------------------------------------------------------- what came of it */

/** How even these plans leave the clubs. */
function evenness(plans: readonly ClubPlan[]): Evenness {
  const gaps = plans.flatMap(({ gapPoints }) => (gapPoints === undefined ? [] : [gapPoints]));
  const added = (end: 'head' | 'butt'): number =>
    plans.reduce((sum, { remedy }) => sum + (remedy?.end === end ? remedy.grams : 0), 0);
  const sides = { headGrams: added('head'), buttGrams: added('butt') };
  if (gaps.length === 0) return { largestGap: undefined, rmsGap: undefined, rangePoints: undefined, ...sides };
  const most = gaps.reduce((high, gap) => Math.max(high, gap), -Infinity);
  const least = gaps.reduce((low, gap) => Math.min(low, gap), Infinity);
  return {
    largestGap: Math.max(most, -least),
    rmsGap: Math.sqrt(gaps.reduce((sum, gap) => sum + squared(gap), 0) / gaps.length),
    rangePoints: most - least,
    ...sides,
  };
}

/** Masses that make one ask whether it is this grip, and whether the scale is right. */
function oddMasses({ item, grip, grips }: Group, { settings }: PlanInput): OddMass[] {
  const stockGrams = grip?.gripGrams;
  if (stockGrams === undefined) return [];
  const far = Math.max(ODD_MASS_SPREADS * (grip?.spreadGrams ?? settings.newSpreadGrams), ODD_MASS_GRAMS);
  return grips
    .filter(({ grams }) => Math.abs(grams - stockGrams) > far + 1e-9)
    .map((weighed) => ({ grip: weighed, item, stockGrams }));
}

function squared(value: number): number {
  return value * value;
}
