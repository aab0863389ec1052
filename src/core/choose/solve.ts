/** One model for a whole set: item and layers for each club, exactly the best by the aims in their order. */
import type { ClubPlan, Grip, PlanInput } from '../plan/types';
import { exactSum, PER_GRAM, PER_POINT, priceOf } from './exact';
import { clubsIn, limitOf, serviceOf, type Board } from './limits';
import { groupsOf, modelsOf, sizesOf, type Model } from './models';
import { fitOf, packing, type Fit, type Option } from './options';
import { divided } from './serve';
import { setBench } from './setBench';
import { drained } from './steps';
import type { Assign, CannotServe, Choice, Progress, Solution, Solved, SolveRequest } from './types';

/** A model with all that was worked out about it: for each of its items how every club can be fitted with it. */
interface Tested {
  readonly model: Model;
  readonly fits: readonly (readonly Fit[])[];
}

/** Each club's option, and what they cost together. */
interface Served {
  readonly model: Model;
  readonly options: readonly Option[];
  readonly cost: bigint;
}

/**
 * Chooses one model for a set, and its item and layers for each club, an item or a model a step.
 *
 * Model and profile are one throughout; moulded sizes may differ as asked. An item goes on a club where its use and core suit, some
 * layers bring it within the shop's size tolerance of the target (without a target: the club's own layers, raised to fill the core),
 * and the weight that puts the club right is within its limit. Stock is not exceeded. Among all such choices the one with the least
 * head and butt weight, total of the gaps with the grip alone, and price, in the order of the aims; a set with fewer grips of unknown
 * price counts as cheaper. Ties: nearest to the sizes wanted in total, then least tape, then what stands earlier in Stock.
 *
 * Method: each club's cheapest way with each item; these as one whole number, so that sums compare as the aims do in their order; a
 * least-cost assignment of pieces to clubs for each size and each choice of groups; the cheapest division of groups among sizes.
 */
export function* solveSteps(request: SolveRequest, assign: Assign): Generator<Progress, Solution> {
  const { input, shortlist, aims, sizesDiffer } = request;
  const { clubs, settings } = input;
  if (clubs.length === 0) return { solved: false, why: 'noClubs', cannot: [] };
  const models = modelsOf(input.stock, shortlist, clubs);
  if (models.length === 0) return { solved: false, why: 'noStock', cannot: [] };
  const bench = setBench(input);
  const of = models.reduce((sum, { items }) => sum + items.length, models.length);
  let done = 0;
  let place = 0;
  const tested: Tested[] = [];
  for (const model of models) {
    const fits: Fit[][] = [];
    for (const grip of model.items) {
      fits.push(clubs.map((club, at) => fitOf({ at, club, grip, place }, bench, settings, aims)));
      place += 1;
      yield { done: (done += 1), of };
    }
    tested.push({ model, fits });
  }
  const pack = packing(costsIn(tested), clubs.length);
  const groups = groupsOf(clubs, sizesDiffer);
  let best: Served | undefined;
  const cannot: CannotServe[] = [];
  for (const { model, fits } of tested) {
    const sizes = sizesOf(model, sizesDiffer);
    const outcome = serveModel(model, boardOf(input, { model, fits }, pack, { groups, sizes, assign }));
    if ('limit' in outcome) cannot.push(outcome);
    else if (!best || outcome.cost < best.cost) best = outcome;
    yield { done: (done += 1), of };
  }
  return best ? solved(best, input, models.length, cannot) : { solved: false, why: 'limits', cannot };
}

/** {@link solveSteps} at once. */
export function solveSet(request: SolveRequest, assign: Assign): Solution {
  return drained(solveSteps(request, assign));
}

function* costsIn(tested: readonly Tested[]): Generator<readonly number[]> {
  for (const { fits } of tested) {
    for (const fit of fits.flat()) if ('option' in fit) yield fit.option.costs;
  }
}

function boardOf(
  { clubs }: PlanInput,
  { model, fits }: Tested,
  pack: (costs: readonly number[]) => bigint,
  shared: Pick<Board, 'groups' | 'sizes' | 'assign'>,
): Board {
  const costs = fits.map((each) => each.map((fit) => ('option' in fit ? pack(fit.option.costs) : undefined)));
  return {
    ...shared,
    clubs,
    items: model.items,
    fit: (club, item) => fits[item]?.[club] as Fit,
    store: (items) => ({
      items,
      onHand: (item) => countedOf(model.items[item] as Grip),
      cost: (club, item) => costs[item]?.[club],
    }),
  };
}

function countedOf({ onHand }: Grip): number | undefined {
  return onHand === undefined || !Number.isFinite(onHand) ? undefined : Math.max(0, Math.floor(onHand));
}

/** The model's best choice for the set, or what keeps it from serving. */
function serveModel(model: Model, board: Board): Served | CannotServe {
  if (model.lacks) return { model: model.name, limit: model.lacks };
  const serviceAt = (groups: number, size: number) =>
    serviceOf(board, clubsIn(board, groups), board.sizes[size]?.items ?? []);
  const division = divided(board.groups.length, board.sizes.length, (groups, size) => {
    const service = serviceAt(groups, size);
    return service?.unserved === 0 ? service.cost : undefined;
  });
  if (!division) return { model: model.name, ...limitOf(board) };
  const options: Option[] = [];
  for (const { groups, size } of division.blocks) {
    const placed = serviceAt(groups, size)?.placed ?? [];
    clubsIn(board, groups).forEach((club, at) => {
      const fit = board.fit(club, placed[at] as number);
      if ('option' in fit) options[club] = fit.option;
    });
  }
  return { model, options, cost: division.cost };
}

function solved({ model, options }: Served, { clubs }: PlanInput, of: number, cannot: readonly CannotServe[]): Solved {
  const choices = clubs.map((club, at): Choice => {
    const { layers, plan } = options[at] as Option;
    return { row: club.row, club, item: plan.item ?? '', layers, plan };
  });
  const plans = choices.map(({ plan }) => plan);
  const total = (each: (plan: ClubPlan) => number, per: number): number => exactSum(plans.map(each), per);
  return {
    solved: true,
    model: model.name,
    choices,
    weightGrams: total(({ remedy }) => remedy?.grams ?? 0, PER_GRAM),
    deviationPoints: total(({ gapPoints }) => Math.abs(gapPoints ?? 0), PER_POINT),
    price: priceOf(plans.flatMap(({ grip }) => grip ?? [])),
    serving: of - cannot.length,
    cannot,
  };
}
