/** How far the predicted gap may be off, and what that allows to be said. */
import { massPoints } from '../balance/moment';
import { CAP_SPREAD_INCHES, POINT_GRAM_INCHES, TYPICAL_BODY_SPREAD_GRAMS } from '../constants';
import type { Fitted } from './oldGrip';
import type { Body } from './shift';
import type { Basis, Hold, ShopSettings, Verdict } from './types';

/** What the spread is made of. */
export interface Uncertain {
  readonly basis: Basis;
  readonly hold: Hold;
  readonly old: Fitted;
  readonly fresh: Fitted;
  readonly body: Body;
  /** By how much the body moves out: cap and length change. */
  readonly movedInches: number;
}

/**
 * ± of the gap between the gripped reading and what is held, in points.
 *
 * Formula: root of the sum of squares of each part's ± times its lever: independent errors. A reading that is held "as it was"
 * drops out where the old grip is taken off in thought (only the change counts), and counts twice from a bare club. A cap that
 * nobody measured counts for as much as it may move the body. Source: propagation of independent errors.
 */
export function spreadPoints(uncertain: Uncertain, settings: ShopSettings): number {
  const { basis, hold, old, fresh, body, movedInches } = uncertain;
  const bodyPoints = body.guessed ? (TYPICAL_BODY_SPREAD_GRAMS * movedInches) / POINT_GRAM_INCHES : 0;
  return Math.sqrt(
    fittedVariance(fresh, settings) +
      (basis === 'bare' ? 0 : fittedVariance(old, settings)) +
      squared(bodyPoints) +
      squared(isCapGuessed(uncertain) ? (body.grams * CAP_SPREAD_INCHES) / POINT_GRAM_INCHES : 0) +
      readingsCompared(basis, hold) * squared(settings.readingSpreadPoints),
  );
}

/** Whether the body moves by a cap that nobody measured: from bare by the new one, else by one of the two; both unknown are alike. */
function isCapGuessed({ basis, old, fresh }: Uncertain): boolean {
  return basis === 'bare' ? !fresh.capKnown : old.capKnown !== fresh.capKnown;
}

/** How many scale readings stand between what is predicted and what is held. */
function readingsCompared(basis: Basis, hold: Hold): number {
  if (basis === 'bare') return hold === 'asArrived' ? 2 : 1;
  return hold === 'target' ? 1 : 0;
}

/** Squares of what a grip's mass, its balance point and its tape may each be off, in points. */
function fittedVariance(fitted: Fitted, settings: ShopSettings): number {
  const tapeGrams = settings.tapeSpread * fitted.layers * fitted.layerGrams;
  return (
    squared(massPoints(fitted.gripSpreadGrams, fitted.balanceInches)) +
    squared(((fitted.gripGrams ?? 0) * settings.balanceSpreadInches) / POINT_GRAM_INCHES) +
    squared(massPoints(tapeGrams, fitted.tapedInches / 2))
  );
}

function squared(value: number): number {
  return value * value;
}

/** One word for a gap with its ±. */
export function verdictOf(gap: number | undefined, spread: number | undefined, tolerance: number): Verdict {
  if (gap === undefined || spread === undefined) return 'unknown';
  const off = Math.abs(gap);
  const slack = 1e-9; // a gap of exactly the tolerance is within it, whatever binary fractions say
  if (off + spread <= tolerance + slack) return 'within';
  if (off <= tolerance + slack) return 'likely';
  return off - spread <= tolerance + slack ? 'cannotTell' : 'out';
}
