/** What candidates are judged by, and which of them no other beats. */
import { CALLIPER_DIVISION_INCHES, WEIGHED_SPREAD_GRAMS } from '../constants';
import { PER_MONEY } from './exact';
import { COUNTS, type Count, type Tried } from './types';

/** A candidate before it is set against the others. */
export type Alone = Omit<Tried, 'unbeaten' | 'bestAt'>;

/**
 * What a shop can tell apart, in the count's own unit: counts are rounded to it before they are set against each other. Sizes: two divisions of a
 * calliper; readings: a tenth of a point, as they are written; masses: what a shop's scale is good for; money: exact.
 */
const TOLD_APART: Readonly<Record<Count, number>> = {
  sizeError: 2 * CALLIPER_DIVISION_INCHES,
  largestChange: 0.1,
  out: 1,
  weight: WEIGHED_SPREAD_GRAMS,
  massAdded: WEIGHED_SPREAD_GRAMS,
  price: 1 / PER_MONEY,
  short: 1,
};

/**
 * What a candidate has of a count, less being better: sizes and changes without their sign, mass added with it (a lighter set adds
 * less). undefined where it is not known; weight is not where a club out of tolerance has none that could be reckoned.
 */
export function countOfTried(tried: Alone, count: Count): number | undefined {
  switch (count) {
    case 'sizeError':
      return bySize(tried.sizeErrorInches);
    case 'largestChange':
      return bySize(tried.largestChangePoints);
    case 'out':
      return tried.clubsOut;
    case 'weight':
      return tried.weightKnown ? tried.headGrams + tried.buttGrams : undefined;
    case 'massAdded':
      return tried.massAddedGrams;
    case 'price':
      return tried.price;
    case 'short':
      return tried.piecesShort;
  }
}

function bySize(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Math.abs(value);
}

/** Counts in steps that can be told apart. What is not known counts as worse than all that is: nothing is claimed for it. */
type Steps = readonly number[];

function stepsOf(tried: Alone): Steps {
  return COUNTS.map((count) => {
    const value = countOfTried(tried, count);
    return value === undefined ? Infinity : Math.round(value / TOLD_APART[count]);
  });
}

/** Which candidates no other beats, what each is best at, and the order in which they are shown. */
export function judged(tried: readonly Alone[]): Tried[] {
  const steps = tried.map(stepsOf);
  const unbeaten = unbeatenAmong(steps);
  const best = COUNTS.map((_, count) => Math.min(...steps.map((each) => each[count] as number)));
  const worst = COUNTS.map((_, count) => Math.max(...steps.map((each) => each[count] as number)));
  const order = (at: number): Steps => [unbeaten.has(at) ? 0 : 1, ...ORDER.map((count) => stepOf(at, count))];
  const stepOf = (at: number, count: Count): number => steps[at]?.[COUNTS.indexOf(count)] as number;
  return tried
    .map((each, at): { tried: Tried; order: Steps } => ({
      tried: {
        ...each,
        unbeaten: unbeaten.has(at),
        bestAt: COUNTS.filter(
          (count, of) => stepOf(at, count) === best[of] && (worst[of] as number) > (best[of] as number),
        ),
      },
      order: order(at),
    }))
    .sort((a, b) => compared(a.order, b.order))
    .map((each) => each.tried);
}

const ORDER = ['out', 'largestChange', 'sizeError'] as const;

/**
 * Positions of those that no other is at least as good as on every count and better on one. Whoever beats stands before the beaten in
 * the order of the counts, and the beaten beat nobody whom their beater does not, so each is set against the unbeaten before it only.
 */
function unbeatenAmong(steps: readonly Steps[]): Set<number> {
  const inOrder = steps.map((_, at) => at).sort((a, b) => compared(steps[a] as Steps, steps[b] as Steps));
  const unbeaten = new Set<number>();
  for (const at of inOrder) {
    const own = steps[at] as Steps;
    let beaten = false;
    for (const other of unbeaten) {
      beaten = beats(steps[other] as Steps, own);
      if (beaten) break;
    }
    if (!beaten) unbeaten.add(at);
  }
  return unbeaten;
}

function beats(one: Steps, other: Steps): boolean {
  return one.every((step, at) => step <= (other[at] as number)) && one.some((step, at) => step < (other[at] as number));
}

/** Which comes first where they first differ; not by subtraction, which infinities make meaningless. */
function compared(one: Steps, other: Steps): number {
  for (const [at, step] of one.entries()) {
    const against = other[at] as number;
    if (step !== against) return step < against ? -1 : 1;
  }
  return 0;
}
