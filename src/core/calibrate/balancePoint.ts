/** Where a grip balances, from clubs read bare and finished. */
import { POINT_GRAM_INCHES } from '../constants';
import { untriedBalance } from '../plan/oldGrip';
import type { Grip, ShopSettings } from '../plan/types';
import { ok, type Result } from '../result';
import { halfWidth, leastSquares, leftOutResiduals, outliers, rootMeanSquare, type Fit } from './leastSquares';
import { FLAG_LEVEL, LEAST_FREEDOM, tooFew } from './limits';
import { balanceMoment, gripGramsOf, type Pair } from './pairs';
import type { BalanceEstimate } from './types';

/** Mass of an inch of build-up strip, and how far that may be off. */
export interface TapeKnown {
  readonly gramsPerInch: number;
  readonly spreadPerInch: number;
}

/** What one balance point is worked out for. */
interface Asked {
  readonly field: string;
  readonly item: string | undefined;
  readonly now: number;
  /** What the unknown is multiplied with to give a position: 1 in, or the grip's length. */
  readonly per: (pair: Pair) => number | undefined;
}

/** Where an item balances by what Stock says, as a plan takes it. */
export function balanceNow(grip: Grip | undefined, settings: ShopSettings): number {
  return grip?.balanceInches ?? untriedBalance(grip?.lengthInches, settings);
}

/**
 * Balance point of one item, in inches from its cap.
 *
 * Formula: `moment = m b + e` by least squares through the origin, what the tape does to the moment taken out; interval `± t s.e.`, widened by
 * what the tape's own ± does to it. It speaks of scatter alone: a cap that is measured wrong by δ shifts the balance point by
 * `−body × δ / grip` (1/64 in on 374 g and 50 g: 0.12 in), and the two together still give the readings. Source: moments; least squares.
 *
 * @param pairs clubs with that item
 * @param now where a plan takes it to balance
 * @returns `tooFew` without four clubs whose cap is known
 */
export function balancePoint(
  item: string,
  pairs: readonly Pair[],
  now: number,
  tape: TapeKnown,
  confidence: number,
): Result<BalanceEstimate> {
  return estimated({ field: `Balance point of ${item}`, item, now, per: () => 1 }, pairs, tape, confidence);
}

/** Balance point of all grips together, as a part of their length: for items of which too few were fitted. */
export function balanceRatio(
  pairs: readonly Pair[],
  now: number,
  tape: TapeKnown,
  confidence: number,
): Result<BalanceEstimate> {
  const per = ({ club }: Pair): number | undefined => club.gripInches;
  const field = 'Balance point as a part of the length';
  return estimated({ field, item: undefined, now, per }, pairs, tape, confidence);
}

/** One equation, `moment = lever × unknown`; both follow from the tape's mass. */
interface Equation {
  readonly pair: Pair;
  readonly per: number;
}

function equations(asked: Asked, pairs: readonly Pair[]): Equation[] {
  return pairs.flatMap((pair) => {
    const per = asked.per(pair);
    return per === undefined || pair.momentGramInches === undefined ? [] : [{ pair, per }];
  });
}

function fitOf(list: readonly Equation[], gramsPerInch: number): { fit: Fit | undefined; moments: number[] } {
  const moments = list.map(({ pair }) => balanceMoment(pair, gramsPerInch) ?? 0);
  const levers = list.map(({ pair, per }) => [per * gripGramsOf(pair, gramsPerInch)]);
  return { fit: leastSquares(levers, moments), moments };
}

function estimated(asked: Asked, pairs: readonly Pair[], tape: TapeKnown, confidence: number): Result<BalanceEstimate> {
  const list = equations(asked, pairs);
  const least = 1 + LEAST_FREEDOM;
  const { fit, moments } = fitOf(list, tape.gramsPerInch);
  if (list.length < least || !fit) return tooFew(asked.field, list.length, least);
  const value = fit.coefficients[0] ?? 0;
  const half = Math.hypot(halfWidth(fit, 0, confidence), tapeShift(list, value, tape));
  const without = leftOutResiduals(fit);
  const flagged = outliers(fit, moments, FLAG_LEVEL);
  const kept = list.filter((_, at) => !flagged.includes(at)).map(({ pair }) => pair);
  const again = flagged.length > 0 ? estimated(asked, kept, tape, confidence) : undefined;
  const before = list.map(({ pair, per }, at) => {
    const moment = moments[at] ?? 0;
    return (moment - asked.now * per * gripGramsOf(pair, tape.gramsPerInch)) / POINT_GRAM_INCHES;
  });
  return ok({
    item: asked.item,
    value,
    low: value - half,
    high: value + half,
    confidence,
    pairs: list.length,
    deviation: fit.deviation / POINT_GRAM_INCHES,
    flagged: flagged.map((at) => ({
      club: list[at]?.pair.club.club ?? '',
      off: (without[at] ?? 0) / POINT_GRAM_INCHES,
    })),
    withoutFlagged: again?.ok ? again.value.value : undefined,
    now: asked.now,
    errorBefore: rootMeanSquare(before),
    errorAfter: rootMeanSquare(without.flatMap((error) => (error === undefined ? [] : [error / POINT_GRAM_INCHES]))),
  });
}

/** How far the tape's ± shifts the balance point: tape lies near where a grip balances, so it is little. */
function tapeShift(list: readonly Equation[], value: number, { gramsPerInch, spreadPerInch }: TapeKnown): number {
  if (spreadPerInch === 0) return 0;
  const moved = fitOf(list, gramsPerInch + spreadPerInch).fit?.coefficients[0];
  return moved === undefined ? 0 : moved - value;
}
