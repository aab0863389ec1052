/** Every grip tried on the whole set at once. */
import { countNeeded } from '../plan/together';
import type { Club, ClubPlan, Grip, PlanInput } from '../plan/types';
import { candidatesOf, wornOf } from './candidates';
import { isOut, judged, type Alone } from './counts';
import { exactSum, PER_GRAM, priceOf } from './exact';
import { ownLayers, setBench, type SetBench } from './setBench';
import { drained } from './steps';
import type { Candidate, Comparison, Filters, Progress } from './types';

/**
 * Tries every candidate on the whole set and says which no other beats, a candidate a step.
 *
 * Each club is planned as {@link planSet} plans it, with layers from its target diameter where it has one, else its own, never
 * fewer than fill the core, and no more found than the shop builds up. One candidate beats another that it is at least as good as on every count and better than on one, to what a
 * shop can tell apart: sizes to .001 in, readings to 0.1 point, masses to 0.5 g, prices exactly; what is not known counts as worst.
 *
 * @param input the clubs concerned, all of stock, ways of weighting and settings; inches, grams, points
 */
export function* compareSteps(input: PlanInput, filters: Filters): Generator<Progress, Comparison> {
  const { candidates, notTried } = candidatesOf(input, filters);
  const planned = plansOn(input, setBench(input));
  const tried: Alone[] = [];
  for (const candidate of candidates) {
    tried.push(tryOn(candidate, input, planned));
    yield { done: tried.length, of: candidates.length };
  }
  return { tried: judged(tried), notTried };
}

/** {@link compareSteps} at once. */
export function compareGrips(input: PlanInput, filters: Filters = {}): Comparison {
  return drained(compareSteps(input, filters));
}

type Planned = (at: number, grip: Grip) => ClubPlan;

/** Plans of clubs with grips, each made once: a size that follows the butts is made of items that are tried alone as well. */
function plansOn({ clubs, settings }: PlanInput, bench: SetBench): Planned {
  const known = new Map<Grip, ClubPlan[]>();
  const plan: Planned = (at, grip) => {
    const club = clubs[at] as Club;
    const sized = club.targetInches === undefined ? undefined : bench.plan(at, grip, undefined);
    if (!sized?.layersSolved) return bench.plan(at, grip, ownLayers(club, grip, settings));
    return sized.layers > settings.mostLayers ? bench.plan(at, grip, settings.mostLayers) : sized;
  };
  return (at, grip) => {
    const plans = known.get(grip) ?? [];
    known.set(grip, plans);
    return (plans[at] ??= plan(at, grip));
  };
}

function tryOn(candidate: Candidate, { clubs, settings }: PlanInput, planned: Planned): Alone {
  const worn = wornOf(candidate, clubs, settings);
  const plans = worn.map((grip, at) => planned(at, grip));
  const layers = plans.map((plan) => plan.layers);
  const remedies = plans.flatMap(({ remedy }) => remedy ?? []);
  const gramsAt = (end: 'head' | 'butt'): number =>
    exactSum(
      remedies.filter((remedy) => remedy.end === end).map(({ grams }) => grams),
      PER_GRAM,
    );
  const errors = clubs.flatMap(({ targetInches }, at) => {
    const measured = plans[at]?.upper?.inches;
    return targetInches === undefined || measured === undefined ? [] : [measured - targetInches];
  });
  const changes = plans.flatMap(({ shift }) => shift?.total ?? []);
  const fitted = plans.flatMap(({ fittedChangeGrams }) => fittedChangeGrams ?? []);
  const headGrams = gramsAt('head');
  const buttGrams = gramsAt('butt');
  return {
    candidate,
    plans,
    clubs: clubs.length,
    fewestLayers: Math.min(...layers),
    mostLayers: Math.max(...layers),
    sizeErrorInches: largest(errors),
    meanSizeErrorInches: meanSize(errors),
    largestChangePoints: largest(changes),
    meanChangePoints: meanSize(changes),
    clubsOut: plans.filter(isOut).length,
    headGrams,
    buttGrams,
    massAddedGrams: fitted.length < plans.length ? undefined : exactSum([...fitted, headGrams, buttGrams], PER_GRAM),
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
