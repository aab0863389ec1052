/** What a bare and a finished club say about what went on between. */
import { BUTT_WEIGHT_INCHES, FULCRUM_INCHES, POINT_GRAM_INCHES, RANGES } from '../constants';
import { momentGramInches } from '../balance/moment';
import type { Issue } from '../result';
import type { FinishedClub, Unusable } from './types';

/** A finished club with all that is known taken out: grip and build-up tape are what is left. */
export interface Pair {
  readonly club: FinishedClub;
  /** Grip and build-up tape. */
  readonly fittedGrams: number;
  /** Build-up tape, all layers. */
  readonly tapeInches: number;
  /** Each inch of tape times where it lies, from the cap. */
  readonly tapeMoment: number;
  /** Moment of grip and tape about the fulcrum, in g·in; undefined where the cap is not known. */
  readonly momentGramInches: number | undefined;
}

/**
 * Takes what is known out of what was measured.
 *
 * Formula: `fitted = m₁ − m₀ − two-way − weight − plug`; `moment = P (R₁ − R₀) − m₀ (cap + Δ) − Σ m (x − 14)` over the same.
 * Source: moments, as {@link momentGramInches}.
 */
export function pairOf(club: FinishedClub): Pair {
  const run = Math.max(0, club.tapedInches - club.lowerStartInches);
  const full = club.layers * club.tapedInches;
  const lower = club.lowerLayers * run;
  const known = club.twoWayGrams + club.addedGrams + club.plugGrams;
  return {
    club,
    fittedGrams: club.massGrams - club.bareGrams - known,
    tapeInches: full + lower,
    tapeMoment: (full * club.tapedInches) / 2 + lower * (club.lowerStartInches + run / 2),
    momentGramInches: club.capInches === undefined ? undefined : fittedMoment(club, club.capInches),
  };
}

function fittedMoment(club: FinishedClub, capInches: number): number {
  return (
    (club.reading - club.bareReading) * POINT_GRAM_INCHES -
    club.bareGrams * (capInches + club.lengthChangeInches) -
    momentGramInches(club.twoWayGrams, club.tapedInches / 2) -
    momentGramInches(club.addedGrams, club.addedInches) -
    momentGramInches(club.plugGrams, BUTT_WEIGHT_INCHES)
  );
}

/** Clubs that can be true, and those that cannot. */
export function usablePairs(finished: readonly FinishedClub[]): { pairs: Pair[]; unusable: Unusable[] } {
  const pairs: Pair[] = [];
  const unusable: Unusable[] = [];
  for (const club of finished) {
    const pair = pairOf(club);
    const issue = impossible(pair);
    if (issue) unusable.push({ club: club.club, issue });
    else pairs.push(pair);
  }
  return { pairs, unusable };
}

function impossible({ club, fittedGrams }: Pair): Issue | undefined {
  const numbers = [club.bareReading, club.bareGrams, club.reading, club.massGrams, club.layers, club.tapedInches];
  if (!numbers.every(Number.isFinite)) {
    return { code: 'notNumber', field: `Check-in of ${club.club}`, expected: 'readings and masses, bare and finished' };
  }
  const { low, high } = RANGES.gripGrams;
  const tape = RANGES.layerGrams.high * (club.layers + club.lowerLayers);
  if (fittedGrams >= low && fittedGrams <= high + tape) return undefined;
  const grams = Math.round(fittedGrams * 10) / 10;
  return {
    code: 'contradiction',
    field: `Check-in of ${club.club}`,
    got: fittedGrams,
    expected: `grip and tape would weigh ${grams} g. Weigh it again`,
  };
}

/** Mass of the grip: as weighed loose, else what the tape leaves of grip and tape. */
export function gripGramsOf(pair: Pair, gramsPerInch: number): number {
  return pair.club.gripGrams ?? pair.fittedGrams - gramsPerInch * pair.tapeInches;
}

/**
 * What a balance point is to explain, in g·in: `moment + 14 m − q Σ l (x − 14)`, which is `m b`.
 *
 * Source: the grip's moment `m (b − 14)` is what the tape's leaves.
 */
export function balanceMoment(pair: Pair, gramsPerInch: number): number | undefined {
  if (pair.momentGramInches === undefined) return undefined;
  const tape = gramsPerInch * (pair.tapeMoment - FULCRUM_INCHES * pair.tapeInches);
  return pair.momentGramInches - tape + FULCRUM_INCHES * gripGramsOf(pair, gramsPerInch);
}

/** Items are the same whatever their capitals. */
export function itemKey(item: string): string {
  return item.trim().toLowerCase();
}
