/** How far the predicted gap may be off, and what that allows to be said. */
import { FULCRUM_INCHES, POINT_GRAM_INCHES, TYPICAL_BODY_SPREAD_GRAMS } from '../constants';
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
 * drops out of an estimate (only the change counts), and counts twice from a bare club. Source: propagation of independent errors.
 */
export function spreadPoints(uncertain: Uncertain, settings: ShopSettings): number {
  const { basis, hold, old, fresh, body, movedInches } = uncertain;
  const parts = [...fittedParts(fresh, settings)];
  if (basis !== 'bare') parts.push(...fittedParts(old, settings));
  if (body.guessed) parts.push((TYPICAL_BODY_SPREAD_GRAMS * movedInches) / POINT_GRAM_INCHES);
  const reading = settings.readingSpreadPoints;
  if (basis === 'bare' || hold === 'target') parts.push(reading);
  if (basis === 'bare' && hold === 'asArrived') parts.push(reading);
  return Math.sqrt(parts.reduce((total, part) => total + part * part, 0));
}

function fittedParts(fitted: Fitted, settings: ShopSettings): number[] {
  const lever = (inches: number): number => (FULCRUM_INCHES - inches) / POINT_GRAM_INCHES;
  return [
    fitted.gripSpreadGrams * lever(fitted.balanceInches),
    ((fitted.gripGrams ?? 0) * settings.balanceSpreadInches) / POINT_GRAM_INCHES,
    settings.tapeSpread * fitted.layers * fitted.layerGrams * lever(fitted.tapedInches / 2),
  ];
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
