/** What a layer of build-up tape weighs, from clubs weighed bare and finished. */
import { tapeGrams } from '../grip/mass';
import { groupedBy } from '../plan/together';
import type { ShopSettings } from '../plan/types';
import { fail, ok, type Result } from '../result';
import { halfWidth, leastSquares, leftOutResiduals, outliers, rootMeanSquare, type Fit } from './leastSquares';
import { FLAG_LEVEL, LEAST_FREEDOM, MOST_CONDITION, tooFew } from './limits';
import { itemKey, type Pair } from './pairs';
import type { LayerEstimate, LayerFrom } from './types';

const FIELD = 'Layer mass';

/** What to do about clubs that all have the same tape. */
const VARY = 'Fit some clubs of one item with more or fewer layers';

/** Clubs that have a mass in common which is unknown: the grip of their item, or the two-way strip. */
interface Design {
  readonly from: LayerFrom;
  readonly pairs: readonly Pair[];
  /** What varies with the tape: grip and tape, or tape alone. */
  readonly grams: readonly number[];
  /** Which unknown mass each has in common with others. */
  readonly groups: readonly number[];
  readonly groupCount: number;
}

/**
 * Mass of a layer with its confidence interval.
 *
 * Formula: `grams = a + q × inches of tape + e` by least squares. Where the loose grips were weighed, `grams` is what grip and tape weigh
 * less that grip, and `a` what the two-way strip is off; else `grams` is grip and tape, and `a` the mean grip of each item. One layer is
 * then `q × taped length`. Weighed grips are used alone where they say enough, since they do not scatter as grips do. Source: least
 * squares; interval `± t s.e.`, for errors that are normal and alike.
 *
 * @returns `tooFew` without three clubs more than unknowns; `inseparable` where clubs of one item carry nearly the same tape, so that
 * tape and grip cannot be told apart (condition number over 30)
 */
export function layerMass(pairs: readonly Pair[], settings: ShopSettings, confidence: number): Result<LayerEstimate> {
  const loose = estimated(looseDesign(pairs), settings, confidence);
  return loose.ok ? loose : estimated(alikeDesign(pairs), settings, confidence);
}

function looseDesign(pairs: readonly Pair[]): Design {
  const weighed = pairs.filter(({ club }) => club.gripGrams !== undefined);
  return {
    from: 'looseGrips',
    pairs: weighed,
    grams: weighed.map(({ fittedGrams, club }) => fittedGrams - (club.gripGrams ?? 0)),
    groups: weighed.map(() => 0),
    groupCount: weighed.length > 0 ? 1 : 0,
  };
}

/** A club that is the only one of its item tells nothing of the tape: its grip may weigh anything. */
function alikeDesign(pairs: readonly Pair[]): Design {
  const items = [...groupedBy(pairs, ({ club }) => itemKey(club.item)).values()].filter(({ length }) => length > 1);
  const kept = items.flat();
  return {
    from: 'gripsAlike',
    pairs: kept,
    grams: kept.map(({ fittedGrams }) => fittedGrams),
    groups: items.flatMap((list, at) => list.map(() => at)),
    groupCount: items.length,
  };
}

function fitOf(design: Design): Fit | undefined {
  const rows = design.pairs.map(({ tapeInches }, at) => [
    tapeInches,
    ...Array.from({ length: design.groupCount }, (_, group) => (design.groups[at] === group ? 1 : 0)),
  ]);
  return leastSquares(rows, design.grams);
}

function estimated(design: Design, settings: ShopSettings, confidence: number): Result<LayerEstimate> {
  const least = Math.max(1, design.groupCount) + 1 + LEAST_FREEDOM;
  if (design.pairs.length < least) return tooFew(FIELD, design.pairs.length, least);
  const fit = fitOf(design);
  if (!fit || fit.condition > MOST_CONDITION) {
    const got = fit ? fit.condition : Infinity;
    return fail({ code: 'inseparable', field: FIELD, got, expected: VARY, detail: MOST_CONDITION });
  }
  const perInch = fit.coefficients[0] ?? 0;
  const half = halfWidth(fit, 0, confidence) * settings.tapedInches;
  const value = perInch * settings.tapedInches;
  const without = leftOutResiduals(fit);
  const flagged = outliers(fit, design.grams, FLAG_LEVEL);
  return ok({
    value,
    low: value - half,
    high: value + half,
    confidence,
    pairs: design.pairs.length,
    deviation: fit.deviation,
    flagged: flagged.map((at) => ({ club: design.pairs[at]?.club.club ?? '', off: without[at] ?? 0 })),
    withoutFlagged: flagged.length > 0 ? valueWithout(design, flagged, settings, confidence) : undefined,
    gramsPerInch: perInch,
    from: design.from,
    ...errorsOf(design, fit, tapeGrams(1, settings.buildUp.stripInches, settings.buildUp.gsm)),
  });
}

function valueWithout(
  design: Design,
  flagged: readonly number[],
  settings: ShopSettings,
  confidence: number,
): number | undefined {
  const kept = design.pairs.filter((_, at) => !flagged.includes(at));
  const again = estimated(design.from === 'looseGrips' ? looseDesign(kept) : alikeDesign(kept), settings, confidence);
  return again.ok ? again.value.value : undefined;
}

/** How far each club is from what the others say of it: with the shop's tape, and with the one that was worked out without the club. */
function errorsOf(design: Design, fit: Fit, nowPerInch: number): Pick<LayerEstimate, 'errorBefore' | 'errorAfter'> {
  const after = leftOutResiduals(fit);
  const before = leftOutOffsets(design, nowPerInch);
  const both = after.flatMap((error, at) => {
    const now = before[at];
    return error === undefined || now === undefined ? [] : [{ error, now }];
  });
  return {
    errorBefore: rootMeanSquare(both.map(({ now }) => now)),
    errorAfter: rootMeanSquare(both.map(({ error }) => error)),
  };
}

/** By club: what it weighs beside its tape, less the mean of the others of its group. */
function leftOutOffsets({ grams, groups, groupCount, pairs }: Design, perInch: number): (number | undefined)[] {
  const beside = grams.map((value, at) => value - perInch * (pairs[at]?.tapeInches ?? 0));
  const sums = Array.from({ length: groupCount }, () => ({ sum: 0, count: 0 }));
  beside.forEach((value, at) => {
    const group = sums[groups[at] ?? -1];
    if (!group) return;
    group.sum += value;
    group.count += 1;
  });
  return beside.map((value, at) => {
    const group = sums[groups[at] ?? -1];
    return group && group.count > 1 ? value - (group.sum - value) / (group.count - 1) : undefined;
  });
}
