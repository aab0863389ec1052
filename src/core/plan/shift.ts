/** What moves the reading, part by part. */
import { BUTT_WEIGHT_INCHES, MOST_LAYERS, RANGES, TYPICAL_BODY_GRAMS } from '../constants';
import { lengthPoints } from '../balance/change';
import { massPoints } from '../balance/moment';
import { fittedGrams, tapeGrams } from '../grip/mass';
import type { Fitted } from './oldGrip';
import type { Club, Shift, ShopSettings } from './types';

/** Mass of a lower-hand layer and where it balances. */
export interface LowerTape {
  readonly grams: number;
  readonly inches: number;
  readonly balanceInches: number;
}

/** Lower-hand build-up runs from where it starts to the end of the taped length; all its layers together. */
export function lowerTape(club: Pick<Club, 'lowerLayers'>, fitted: Fitted, settings: ShopSettings): LowerTape {
  const start = settings.lowerTapeStartInches;
  const run = Math.max(0, fitted.tapedInches - start);
  const { stripInches, gsm } = settings.buildUp;
  return {
    grams: club.lowerLayers * tapeGrams(run, stripInches, gsm),
    inches: club.lowerLayers * run,
    balanceInches: start + run / 2,
  };
}

/** The club without grip and tape: measured bare, else what is left of the whole club, else a typical one. */
export interface Body {
  readonly grams: number;
  readonly guessed: boolean;
  /** What is left of the whole club: whatever its old grip and tape are thought too heavy, the body is thought too light. */
  readonly fromWhole: boolean;
  /** What the club weighs cannot be true beside what sits on it, or beside what it weighs bare. */
  readonly contradicts: boolean;
}

export function bodyOf(club: Club, old: Fitted): Body {
  const { massGrams, bareGrams } = club;
  if (bareGrams !== undefined) {
    const contradicts = massGrams !== undefined && removedGrams(club, old) === undefined;
    return { grams: bareGrams, guessed: false, fromWhole: false, contradicts };
  }
  const guess: Body = { grams: TYPICAL_BODY_GRAMS, guessed: true, fromWhole: false, contradicts: false };
  if (massGrams === undefined || old.gripGrams === undefined) return guess;
  const onIt = fittedGrams(old.gripGrams, old.layers, old.layerGrams) + old.twoWayGrams + leavingGrams(club);
  const grams = massGrams - onIt;
  if (grams < RANGES.bodyGrams.low) return { ...guess, contradicts: true };
  return { grams, guessed: false, fromWhole: true, contradicts: false };
}

/** Old grip and build-up tape as they came off, from the masses before and after; undefined where no grip weighs that. */
export function removedGrams(club: Club, old: Fitted): number | undefined {
  if (club.massGrams === undefined || club.bareGrams === undefined) return undefined;
  const grams = club.massGrams - club.bareGrams - old.twoWayGrams - leavingGrams(club);
  const most = RANGES.gripGrams.high + MOST_LAYERS * old.layerGrams;
  return grams >= RANGES.gripGrams.low && grams <= most ? grams : undefined;
}

/** A butt weight that goes with the old grip. */
export function leavingGrams(club: Club): number {
  return club.buttWeightLeaves ? club.buttWeightGrams : 0;
}

/** Points of a grip alone, of its tape and of its two-way strip, as it sits on a club. */
function parts(fitted: Fitted): { grip: number; tape: number; twoWay: number } {
  return {
    grip: massPoints(fitted.gripGrams ?? 0, fitted.balanceInches),
    tape: massPoints(fitted.layers * fitted.layerGrams, fitted.tapedInches / 2),
    twoWay: massPoints(fitted.twoWayGrams, fitted.tapedInches / 2),
  };
}

/**
 * Points by which the reading moves from as arrived to gripped, the old grip being known.
 *
 * Formula: `Σ m (x − 14) / P` over what comes and goes, and `body × Δ / P` for a cap or length that changed. Source: moments.
 */
export function shiftFromOld(club: Club, old: Fitted, fresh: Fitted, lower: LowerTape, body: Body): Shift {
  const was = parts(old);
  const will = parts(fresh);
  const grip = will.grip - was.grip;
  const tape = will.tape - was.tape + massPoints(lower.grams, lower.balanceInches);
  const twoWay = will.twoWay - was.twoWay;
  const cap = lengthPoints(body.grams, fresh.capInches - old.capInches);
  const length = lengthPoints(body.grams, club.lengthChangeInches, club.plugGrams);
  const buttWeight = 0 - massPoints(leavingGrams(club), BUTT_WEIGHT_INCHES);
  return { grip, tape, twoWay, cap, length, buttWeight, total: grip + tape + twoWay + cap + length + buttWeight };
}

/**
 * Points by which the reading moves from bare to gripped; nothing about the old grip is needed.
 *
 * Formula: `Σ m (x − 14) / P + body × (cap + Δ) / P`: the whole new cap moves the body out. Source: moments.
 */
export function pointsFromBare(club: Club, fresh: Fitted, lower: LowerTape, body: Body): number {
  const will = parts(fresh);
  return (
    will.grip +
    will.tape +
    will.twoWay +
    massPoints(lower.grams, lower.balanceInches) +
    lengthPoints(body.grams, fresh.capInches + club.lengthChangeInches, club.plugGrams)
  );
}

/** The parts of a change that was measured rather than added up: the grip takes what the other parts leave. */
export function shiftMeasured(total: number, added: Shift): Shift {
  const { tape, twoWay, cap, length, buttWeight } = added;
  return { ...added, grip: total - tape - twoWay - cap - length - buttWeight, total };
}
