/** Which outside diameter a hand starts from: the size guide. */
import { RANGES, TAPE_THICKNESS } from '../constants';
import { fail, ok, type Issue, type Result } from '../result';
import { mistakenUnit } from './mistakenUnit';

/** One row of a size guide: a hand of this length, the middle finger that usually goes with it, and the diameter to start from. */
export interface SizeGuideRow {
  readonly handInches: number;
  readonly fingerInches: number | undefined;
  /** Outside diameter 2 in below the cap. */
  readonly diameterInches: number;
}

/**
 * The size guide a new workbook starts with; every row is the shop's to change.
 *
 * Source: *common practice, no source*. A hand of the median man (7.6 in, 193 mm: ANSUR II, Natick/TR-15/007) starts from the usual
 * standard diameter .900, one of about 8.5 in from the usual midsize .960. Shorter hands go down by .03 to .05 an inch, longer ones up
 * by .05 to .08. A middle finger is about 0.42 of the hand (*practice*).
 */
export const DEFAULT_SIZE_GUIDE: readonly SizeGuideRow[] = [
  { handInches: 5.5, fingerInches: 2.3, diameterInches: 0.81 },
  { handInches: 6.25, fingerInches: 2.6, diameterInches: 0.85 },
  { handInches: 7, fingerInches: 2.95, diameterInches: 0.88 },
  { handInches: 7.6, fingerInches: 3.2, diameterInches: 0.9 },
  { handInches: 8, fingerInches: 3.35, diameterInches: 0.92 },
  { handInches: 8.5, fingerInches: 3.55, diameterInches: 0.96 },
  { handInches: 9.25, fingerInches: 3.9, diameterInches: 1.02 },
];

/** A hand as it was measured. */
export interface HandMeasures {
  /** Wrist crease to the tip of the middle finger. */
  readonly handInches: number;
  /** Middle finger, from its crease at the palm. */
  readonly fingerInches?: number | undefined;
}

/** A measure that no row of the guide reaches. */
export interface Beyond {
  readonly measure: 'hand' | 'finger';
  readonly end: 'below' | 'above';
}

/** The outside diameter a hand starts from. */
export interface StartSize {
  /** The mean of both where both are known. */
  readonly inches: number;
  readonly byHandInches: number;
  /** undefined: no finger was measured, or the guide has fewer than two. */
  readonly byFingerInches: number | undefined;
  /** Measures that lie beyond the guide, for which the size at its end is held. */
  readonly beyond: readonly Beyond[];
  /** Hand and finger ask for sizes more than a layer apart. */
  readonly disagree: boolean;
}

/**
 * Outside diameter, in inches, that a hand starts from: a starting point, which a sample grip corrects.
 *
 * Formula: linear between the rows of the guide by hand length, and likewise by finger where at least two rows have one; the mean of
 * both; at the guide's ends its last size is held. Source: *practice*.
 *
 * @param guide rows in any order, of which at least two need a finger for fingers to count
 * @param layerInches what one layer adds to the seat
 * @returns the size; `unitMistaken` for millimetres or centimetres, `outOfRange`, `contradiction` for a finger as long as the hand;
 *   `noRows`, `duplicate` or `contradiction` for a guide that gives no one size
 * @example startDiameter(DEFAULT_SIZE_GUIDE, { handInches: 7.6, fingerInches: 3.2 }) //=> .900
 */
export function startDiameter(
  guide: readonly SizeGuideRow[],
  hand: HandMeasures,
  layerInches = 2 * TAPE_THICKNESS.value,
): Result<StartSize> {
  const wrong = handIssue(hand) ?? guideIssue(guide);
  if (wrong) return fail(wrong);
  const byHand = between(handPoints(guide), hand.handInches);
  const byFinger = hand.fingerInches === undefined ? undefined : between(fingerPoints(guide), hand.fingerInches);
  if (!byHand) return fail(NO_ROWS);
  return ok({
    inches: byFinger ? (byHand.inches + byFinger.inches) / 2 : byHand.inches,
    byHandInches: byHand.inches,
    byFingerInches: byFinger?.inches,
    beyond: [beyondOf('hand', byHand), beyondOf('finger', byFinger)].flatMap((each) => each ?? []),
    disagree: byFinger !== undefined && Math.abs(byFinger.inches - byHand.inches) > layerInches + 1e-9,
  });
}

function beyondOf(
  measure: Beyond['measure'],
  found: { readonly beyond: Beyond['end'] | undefined } | undefined,
): Beyond | undefined {
  return found?.beyond && { measure, end: found.beyond };
}

/** What is wrong with the measures of a hand, if anything; fields are `handInches` and `fingerInches`. */
export function handIssue({ handInches, fingerInches }: HandMeasures): Issue | undefined {
  const notShorter: Issue | undefined =
    fingerInches === undefined || fingerInches < handInches
      ? undefined
      : {
          code: 'contradiction',
          field: 'fingerInches',
          got: fingerInches,
          expected: 'the middle finger must be shorter than the hand',
        };
  const hand = lengthIssue('handInches', handInches, RANGES.handInches);
  // a hand in no unit, and a finger longer than it: more likely the two are exchanged than each is wrong
  if (hand) return hand.code === 'outOfRange' ? (notShorter ?? hand) : hand;
  if (fingerInches === undefined) return undefined;
  const finger = lengthIssue('fingerInches', fingerInches, RANGES.fingerInches);
  return finger?.code === 'unitMistaken' ? finger : (notShorter ?? finger);
}

function lengthIssue(
  field: string,
  value: number,
  range: { readonly low: number; readonly high: number },
): Issue | undefined {
  if (value >= range.low && value <= range.high) return undefined;
  const mistaken = mistakenUnit(value, range);
  if (mistaken) return { code: 'unitMistaken', field, got: value, expected: mistaken.unit, detail: mistaken.inches };
  return { code: 'outOfRange', field, got: value, expected: `${range.low} to ${range.high} in` };
}

const NO_ROWS: Issue = { code: 'noRows', field: 'guide', expected: 'rows with a hand length and a diameter' };

/** What keeps a guide from giving one size for each hand, if anything; `detail` of the issue is the hand length in question. */
export function guideIssue(guide: readonly SizeGuideRow[]): Issue | undefined {
  const rows = [...guide].sort((one, other) => one.handInches - other.handInches);
  if (rows.length === 0) return NO_ROWS;
  let finger: number | undefined;
  for (const [at, row] of rows.entries()) {
    const before = rows[at - 1];
    if (before && row.handInches === before.handInches) {
      return { code: 'duplicate', field: 'guide', got: row.handInches, detail: row.handInches };
    }
    if (before && row.diameterInches < before.diameterInches) return against(row, 'starts from a smaller diameter');
    if (finger !== undefined && row.fingerInches !== undefined && row.fingerInches <= finger) {
      return against(row, 'does not have a longer finger');
    }
    finger = row.fingerInches ?? finger;
  }
  return undefined;
}

function against({ handInches }: SizeGuideRow, what: string): Issue {
  return {
    code: 'contradiction',
    field: 'guide',
    detail: handInches,
    expected: `the hand of ${handInches} in ${what} than a shorter hand`,
  };
}

type Point = readonly [length: number, diameterInches: number];

function handPoints(guide: readonly SizeGuideRow[]): Point[] {
  return guide.map(({ handInches, diameterInches }): Point => [handInches, diameterInches]);
}

/** One finger alone says nothing of how size goes with it. */
function fingerPoints(guide: readonly SizeGuideRow[]): Point[] {
  const points = guide.flatMap(({ fingerInches, diameterInches }): Point[] =>
    fingerInches === undefined ? [] : [[fingerInches, diameterInches]],
  );
  return points.length < 2 ? [] : points;
}

/** Linear between the neighbours of a length, held at the ends; undefined without points. */
function between(
  points: readonly Point[],
  length: number,
): { readonly inches: number; readonly beyond: Beyond['end'] | undefined } | undefined {
  const sorted = [...points].sort(([one], [other]) => one - other);
  const above = sorted.find(([each]) => each >= length);
  const below = sorted.findLast(([each]) => each <= length);
  if (!above || !below) {
    const end = above ?? below;
    return end && { inches: end[1], beyond: above ? 'below' : 'above' };
  }
  const span = above[0] - below[0];
  const part = span === 0 ? 0 : (length - below[0]) / span;
  return { inches: below[1] + part * (above[1] - below[1]), beyond: undefined };
}
