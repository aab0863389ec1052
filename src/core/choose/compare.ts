/** Every grip tried on the whole set at once. */
import type { Tryout } from '../plan/planClub';
import { countNeeded } from '../plan/together';
import type { Club, ClubPlan, Grip, PlanInput } from '../plan/types';
import { candidatesOf, wornOf } from './candidates';
import { judged, type Alone } from './counts';
import { exactSum, PER_GRAM, priceOf } from './exact';
import { ownLayers, setBench, type SetBench } from './setBench';
import { drained } from './steps';
import type { Candidate, Comparison, Filters, Progress, Tried, TriedClub } from './types';

/**
 * Tries every candidate on the whole set and says which no other beats, a candidate a step.
 *
 * Each club is planned as {@link planSet} plans it, with layers from its target diameter where it has one, else its own, never
 * fewer than fill the core, and no more found than the shop builds up. One candidate beats another that it is at least as good as on
 * every count and better than on one, each count rounded to what a shop can tell apart: .001 in, 0.1 point, 0.5 g, prices exactly; what
 * is not known counts as worst.
 *
 * @param input the clubs concerned, all of stock, ways of weighting and settings; inches, grams, points
 */
export function* compareSteps(input: PlanInput, filters: Filters): Generator<Progress, Comparison> {
  const { candidates, notTried } = candidatesOf(input, filters);
  const fitOf = fitsOn(input, setBench(input));
  const tried: Alone[] = [];
  for (const candidate of candidates) {
    tried.push(tryOn(candidate, input, fitOf));
    yield { done: tried.length, of: candidates.length };
  }
  return { tried: judged(tried), notTried };
}

/** {@link compareSteps} at once. */
export function compareGrips(input: PlanInput, filters: Filters = {}): Comparison {
  return drained(compareSteps(input, filters));
}

/** What counts of a club with a grip; the plan itself is not kept: thousands of them would be, and nobody looks at most. */
interface Fit extends TriedClub {
  readonly errorInches: number | undefined;
  readonly changePoints: number | undefined;
  readonly fittedChangeGrams: number | undefined;
  readonly headGrams: number;
  readonly buttGrams: number;
  readonly out: boolean;
  readonly reckoned: boolean;
}

type FitOf = (at: number, grip: Grip) => Fit;

/** Fits of clubs with grips, each worked out once: a size that follows the butts is made of items that are tried alone as well. */
function fitsOn(input: PlanInput, bench: SetBench): FitOf {
  const known = new Map<Grip, (Fit | undefined)[]>();
  return (at, grip) => {
    let fits = known.get(grip);
    if (!fits) known.set(grip, (fits = Array<Fit | undefined>(input.clubs.length).fill(undefined)));
    return (fits[at] ??= fitFrom(wornBy(input, bench.tryOut, at, grip), input.clubs[at] as Club, grip));
  };
}

/** A club with a grip: layers from its target diameter where it has one, else its own. */
function wornBy<T extends { readonly layers: number; readonly layersSolved: boolean }>(
  { clubs, settings }: PlanInput,
  plan: (at: number, grip: Grip, layers: number | undefined) => T,
  at: number,
  grip: Grip,
): T {
  const club = clubs[at] as Club;
  const sized = club.targetInches === undefined ? undefined : plan(at, grip, undefined);
  if (!sized?.layersSolved) return plan(at, grip, ownLayers(club, grip, settings));
  return sized.layers > settings.mostLayers ? plan(at, grip, settings.mostLayers) : sized;
}

function fitFrom(tried: Tryout, { row, targetInches }: Club, { item }: Grip): Fit {
  const { layers, layersSolved, upper, changePoints, fittedChangeGrams, remedy, out } = tried;
  return {
    row,
    item,
    layers,
    layersSolved,
    errorInches: targetInches === undefined || !upper ? undefined : upper.inches - targetInches,
    changePoints,
    fittedChangeGrams,
    headGrams: remedy?.end === 'head' ? remedy.grams : 0,
    buttGrams: remedy?.end === 'butt' ? remedy.grams : 0,
    out,
    reckoned: !out || remedy !== undefined,
  };
}

/**
 * The plans of a candidate as it was tried, one for each club: those that {@link planSet} makes with its items.
 *
 * @param input the set that it was tried on
 */
export function plansOfTried({ candidate }: Pick<Tried, 'candidate'>, input: PlanInput): ClubPlan[] {
  const bench = setBench(input);
  return wornOf(candidate, input.clubs, input.settings).map((grip, at) => wornBy(input, bench.plan, at, grip));
}

function tryOn(candidate: Candidate, { clubs, settings }: PlanInput, fitOf: FitOf): Alone {
  const worn = wornOf(candidate, clubs, settings);
  const fits = worn.map((grip, at) => fitOf(at, grip));
  const layers = fits.map((fit) => fit.layers);
  const known = <T>(values: readonly (T | undefined)[]): T[] => values.filter((value) => value !== undefined);
  const errors = known(fits.map(({ errorInches }) => errorInches));
  // Judged by a part of the clubs a grip would stand better than one that is known on all of them.
  const gauged = errors.length === clubs.filter(({ targetInches }) => targetInches !== undefined).length;
  const changes = known(fits.map(({ changePoints }) => changePoints));
  const fitted = known(fits.map(({ fittedChangeGrams }) => fittedChangeGrams));
  const headGrams = exactSum(
    fits.map((fit) => fit.headGrams),
    PER_GRAM,
  );
  const buttGrams = exactSum(
    fits.map((fit) => fit.buttGrams),
    PER_GRAM,
  );
  return {
    candidate,
    fits,
    clubs: clubs.length,
    fewestLayers: Math.min(...layers),
    mostLayers: Math.max(...layers),
    sizeErrorInches: gauged ? largest(errors) : undefined,
    meanSizeErrorInches: gauged ? meanSize(errors) : undefined,
    largestChangePoints: largest(changes),
    meanChangePoints: meanSize(changes),
    clubsOut: fits.filter(({ out }) => out).length,
    headGrams,
    buttGrams,
    weightKnown: fits.every(({ reckoned }) => reckoned),
    massAddedGrams: fitted.length < fits.length ? undefined : exactSum([...fitted, headGrams, buttGrams], PER_GRAM),
    price: priceOf(worn),
    piecesShort: shortOf(worn),
  };
}

/** The one that is largest by size, with its sign; the first of equals. */
function largest(values: readonly number[]): number | undefined {
  let found: number | undefined;
  for (const value of values) if (found === undefined || Math.abs(value) > Math.abs(found)) found = value;
  return found;
}

function meanSize(values: readonly number[]): number | undefined {
  if (values.length === 0) return undefined;
  return values.reduce((sum, value) => sum + Math.abs(value), 0) / values.length;
}

function shortOf(worn: readonly Grip[]): number | undefined {
  const needed = countNeeded(worn);
  let short = 0;
  for (const { item, onHand } of new Set(worn)) {
    if (onHand === undefined) return undefined;
    short += Math.max(0, (needed.get(item) ?? 0) - onHand);
  }
  return short;
}
