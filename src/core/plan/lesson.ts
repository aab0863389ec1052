/** What stripping one club teaches about its old grip. */
import { BUTT_WEIGHT_INCHES, FULCRUM_INCHES, POINT_GRAM_INCHES, RANGES } from '../constants';
import { momentGramInches } from '../balance/moment';
import { massFrom, type Fitted } from './oldGrip';
import { leavingGrams } from './shift';
import { bagOf, groupedBy } from './together';
import type { Club, Lesson } from './types';

/** What came off, worked out; `contradicts` where the four measurements cannot all be true. */
export type Learned = { readonly taught: Omit<Lesson, 'appliesTo'> } | { readonly contradicts: true } | undefined;

/**
 * The old grip's mass and balance point from a club read and weighed as it arrived and again bare.
 *
 * Formula: what came off weighs `Δm` and had the moment `ΔM = P ΔR`; taking out tape, the leaving weight and the body's shift by
 * the cap leaves the grip: `x = 14 + M / m`. Source: moments.
 */
export function lessonOf(club: Club, old: Fitted): Learned {
  const { reading, massGrams, bareReading, bareGrams } = club;
  if (reading === undefined || massGrams === undefined || bareReading === undefined || bareGrams === undefined)
    return undefined;
  const leaving = leavingGrams(club);
  const removedGrams = massGrams - bareGrams - leaving;
  const tape = old.layers * old.layerGrams + old.twoWayGrams;
  const gripGrams = removedGrams - tape;
  const moment =
    (reading - bareReading) * POINT_GRAM_INCHES -
    bareGrams * old.capInches -
    momentGramInches(leaving, BUTT_WEIGHT_INCHES) -
    momentGramInches(tape, old.tapedInches / 2);
  const balanceInches = FULCRUM_INCHES + moment / gripGrams;
  const { gripGrams: grams, gripBalanceInches: balance } = RANGES;
  const sensible =
    gripGrams >= grams.low && gripGrams <= grams.high && balanceInches >= balance.low && balanceInches <= balance.high;
  if (!sensible) return { contradicts: true };
  return { taught: { row: club.row, club: club.name, oldItem: club.oldItem, removedGrams, gripGrams, balanceInches } };
}

/** The old grip as a stripped club showed it, where its four measurements tell; else as it was known before. */
export function wornGrip(club: Club, old: Fitted): Fitted {
  const learned = lessonOf(club, old);
  if (!learned || 'contradicts' in learned) return old;
  const { gripGrams, balanceInches } = learned.taught;
  return { ...old, gripGrams, balanceInches };
}

/** Answers, for a stripped club, which others of its bag wear the same old grip and know it only from an estimate. */
export function learnersAmong(clubs: readonly Club[]): (stripped: Club) => readonly number[] {
  const guessing = clubs.filter(
    (club) => club.oldItem !== undefined && massFrom(club) === 'estimate' && club.bareReading === undefined,
  );
  const rows = new Map<string, number[]>();
  for (const [worn, wearers] of groupedBy(guessing, wornBy)) {
    rows.set(
      worn,
      wearers.map((club) => club.row),
    );
  }
  return (stripped) => rows.get(wornBy(stripped)) ?? [];
}

function wornBy(club: Club): string {
  return `${bagOf(club)}\n${(club.oldItem ?? '').toLowerCase()}`;
}
