/** How far the predicted gap may be off, and what that allows to be said. */
import { lengthPoints } from '../balance/change';
import { massPoints } from '../balance/moment';
import { CAP_SPREAD_INCHES, LENGTH_SPREAD_INCHES, POINT_GRAM_INCHES, TYPICAL_BODY_SPREAD_GRAMS } from '../constants';
import type { Fitted } from './oldGrip';
import type { Body, LowerTape } from './shift';
import type { Basis, Club, Hold, ShopSettings, SpreadParts, Verdict } from './types';

/** What the spread is made of. */
export interface Uncertain {
  readonly basis: Basis;
  readonly hold: Hold;
  readonly old: Fitted;
  readonly fresh: Fitted;
  readonly lower: LowerTape;
  readonly body: Body;
  readonly club: Pick<Club, 'lengthChangeInches'>;
  /** Old and new grip are of one item. */
  readonly sameItem: boolean;
}

/**
 * How far each error may move the gap between the gripped reading and what is held, in points.
 *
 * Formula: each ± times its lever: `x − 14` for a mass, the mass for a balance point, the body for its cap and its length, by how far
 * it moves for the body's mass. A body that is what is left of the whole club errs against the old grip and tape, whose lever is then
 * `x − 14` and what the body moves. From a bare club nothing of the old grip counts. The layers of one side come from one roll and err
 * alike. The reading drops out where the old grip is taken off in thought and the club held as it was (only the change counts),
 * and counts twice from a bare club held so.
 *
 * Not counted, because each is below 0.05 point (*derived* from the constants): the two-way strip, the gram scale's error of a body that
 * was weighed, what is added to put a reading right, which is weighed out. Taken as they are typed: layers, butt weights, plugs.
 *
 * Source: propagation of independent errors.
 */
export function spreadParts(uncertain: Uncertain, settings: ShopSettings): SpreadParts {
  const { basis, hold, old, fresh, lower, body, club } = uncertain;
  const bare = basis === 'bare';
  const moved = movedInches(uncertain);
  const takenOff = (grams: number, inches: number): number =>
    (bare ? 0 : massPoints(grams, inches)) + (body.fromWhole ? lengthPoints(grams, moved) : 0);
  const oldTape = takenOff(settings.tapeSpread * old.layers * old.layerGrams, old.tapedInches / 2);
  const newTape =
    massPoints(settings.tapeSpread * fresh.layers * fresh.layerGrams, fresh.tapedInches / 2) +
    massPoints(settings.tapeSpread * lower.grams, lower.balanceInches);
  return {
    oldMass: Math.abs(takenOff(old.gripSpreadGrams, old.balanceInches)),
    oldBalance: bare ? 0 : balancePoints(old),
    newMass: Math.abs(massPoints(fresh.gripSpreadGrams, fresh.balanceInches)),
    newBalance: balancePoints(fresh),
    tape: Math.sqrt(squared(oldTape) + squared(newTape)),
    cap: Math.sqrt(capsGuessed(uncertain)) * lengthPoints(body.grams, CAP_SPREAD_INCHES),
    length: club.lengthChangeInches === 0 ? 0 : lengthPoints(body.grams, LENGTH_SPREAD_INCHES),
    body: body.guessed ? Math.abs(lengthPoints(TYPICAL_BODY_SPREAD_GRAMS, moved)) : 0,
    reading: settings.readingSpreadPoints * Math.sqrt(readingsCompared(basis, hold)),
  };
}

/** ± of the gap, in points: the root of the sum of the squares of its parts. */
export function spreadPoints(parts: SpreadParts): number {
  const { oldMass, oldBalance, newMass, newBalance, tape, cap, length, body, reading } = parts;
  return Math.sqrt(
    squared(oldMass) +
      squared(oldBalance) +
      squared(newMass) +
      squared(newBalance) +
      squared(tape) +
      squared(cap) +
      squared(length) +
      squared(body) +
      squared(reading),
  );
}

function squared(value: number): number {
  return value * value;
}

/** By how much the body moves out: cap and length change. */
function movedInches({ basis, old, fresh, club }: Uncertain): number {
  return club.lengthChangeInches + fresh.capInches - (basis === 'bare' ? 0 : old.capInches);
}

/** How many caps that nobody measured move the body: from bare the new one, else each of the two; of one item they are alike (*practice*). */
function capsGuessed({ basis, old, fresh, sameItem }: Uncertain): number {
  const fromNew = fresh.capKnown ? 0 : 1;
  if (basis === 'bare') return fromNew;
  const fromOld = old.capKnown ? 0 : 1;
  return sameItem && fromOld + fromNew === 2 ? 0 : fromOld + fromNew;
}

/** How many scale readings stand between what is predicted and what is held; where nothing is held, the predicted one alone. */
function readingsCompared(basis: Basis, hold: Hold): number {
  if (hold !== 'asArrived') return 1;
  return basis === 'bare' ? 2 : 0;
}

function balancePoints(fitted: Fitted): number {
  return ((fitted.gripGrams ?? 0) * fitted.balanceSpreadInches) / POINT_GRAM_INCHES;
}

/** Whether what is off, without its sign, is more than a tolerance; exactly the tolerance is not, whatever binary fractions say. */
export function isOver(off: number, tolerance: number): boolean {
  return off > tolerance + 1e-9;
}

/** One word for a gap with its ±. */
export function verdictOf(gap: number | undefined, spread: number | undefined, tolerance: number): Verdict {
  if (gap === undefined || spread === undefined) return 'unknown';
  const off = Math.abs(gap);
  if (!isOver(off + spread, tolerance)) return 'within';
  if (!isOver(off, tolerance)) return 'likely';
  return isOver(off - spread, tolerance) ? 'out' : 'cannotTell';
}
