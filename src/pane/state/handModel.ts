/** From what stands in the hand fields to a target diameter. Pure. */
import {
  fromSample,
  MM_PER_INCH,
  mistakenUnit,
  plainNumber,
  RANGES,
  startDiameter,
  type HandTarget,
  type Issue,
  type SampleAnswers,
  type SizeGuideRow,
  type StartSize,
} from '../../core/index';
import type { HandForm, LengthUnit } from './tools';
import type { HandSeen } from './work';

export type MeasureField = 'hand' | 'finger' | 'lowerHand' | 'lowerFinger';
export const MEASURE_FIELDS: readonly MeasureField[] = ['hand', 'finger', 'lowerHand', 'lowerFinger'];

const SEEN: Readonly<Record<MeasureField, keyof HandSeen>> = {
  hand: 'handLength',
  finger: 'fingerLength',
  lowerHand: 'lowerHandLength',
  lowerFinger: 'lowerFingerLength',
};

/** Why a measure cannot be used; `unit` offers what it means in the other unit. */
export type MeasureFault =
  | { readonly fault: 'notNumber' }
  | { readonly fault: 'unit'; readonly typed: number; readonly seems: 'mm' | 'cm' | 'in'; readonly inches: number }
  | { readonly fault: 'outOfRange'; readonly low: number; readonly high: number };

export interface MeasureRead {
  readonly text: string;
  readonly inches: number | undefined;
  /** What it says in inches, also where that cannot be; undefined where it is no number. */
  readonly typedInches: number | undefined;
  readonly fault: MeasureFault | undefined;
}

export interface HandModel {
  readonly measures: Readonly<Record<MeasureField, MeasureRead>>;
  readonly differ: boolean;
  readonly start: StartSize | undefined;
  readonly lowerStart: StartSize | undefined;
  /** Why the hand gives no size: a finger longer than the hand, a guide that cannot be used. */
  readonly issue: Issue | undefined;
  readonly target: HandTarget | undefined;
  /** Whether Jobs lacks what was typed. */
  readonly unkept: boolean;
}

const inchesOf = (value: number, unit: LengthUnit) => (unit === 'mm' ? value / MM_PER_INCH : value);

/** A length as it is shown in a unit: hundredths of an inch, half millimetres. */
export function lengthText(inches: number, unit: LengthUnit): string {
  if (unit === 'in') return String(Math.round(inches * 100) / 100);
  return String(Math.round(inches * MM_PER_INCH * 2) / 2);
}

function rangeOf(field: MeasureField): { readonly low: number; readonly high: number } {
  return field === 'hand' || field === 'lowerHand' ? RANGES.handInches : RANGES.fingerInches;
}

function faultOf(value: number, field: MeasureField, unit: LengthUnit): MeasureFault | undefined {
  const { low, high } = rangeOf(field);
  const inches = inchesOf(value, unit);
  if (inches >= low && inches <= high) return undefined;
  // Typed in inches while millimetres are chosen, or the other way about.
  if (unit === 'mm' && value >= low && value <= high)
    return { fault: 'unit', typed: value, seems: 'in', inches: value };
  const mistaken = mistakenUnit(value, { low, high });
  if (mistaken && mistaken.unit !== unit)
    return { fault: 'unit', typed: value, seems: mistaken.unit, inches: mistaken.inches };
  const ends = [low, high].map((end) => (unit === 'mm' ? end * MM_PER_INCH : end));
  return { fault: 'outOfRange', low: ends[0] ?? low, high: ends[1] ?? high };
}

function readMeasure(form: HandForm, field: MeasureField, seen: HandSeen | undefined): MeasureRead {
  const typed = form[field];
  if (typed === null) {
    const inches = seen?.[SEEN[field]];
    const text = inches === undefined ? '' : lengthText(inches, form.unit);
    return { text, inches, typedInches: inches, fault: undefined };
  }
  if (typed.trim() === '') return { text: typed, inches: undefined, typedInches: undefined, fault: undefined };
  const value = plainNumber(typed);
  if (value === undefined)
    return { text: typed, inches: undefined, typedInches: undefined, fault: { fault: 'notNumber' } };
  const fault = faultOf(value, field, form.unit);
  const typedInches = inchesOf(value, form.unit);
  return { text: typed, inches: fault ? undefined : typedInches, typedInches, fault };
}

export function answersOf(form: HandForm): SampleAnswers {
  const { fingertips, littleFinger, lowerIndex, squeezes, pain, errLarger } = form;
  return {
    ...(fingertips && { fingertips }),
    ...(littleFinger && { littleFinger }),
    ...(lowerIndex && { lowerIndex }),
    squeezes,
    pain,
    errLarger: Number(errLarger) as 0 | 1 | 2,
  };
}

/** Everything the hand screen shows of a hand. */
export function handModel(
  form: HandForm,
  seen: HandSeen | undefined,
  guide: readonly SizeGuideRow[],
  layerInches: number,
): HandModel {
  const read = Object.fromEntries(MEASURE_FIELDS.map((field) => [field, readMeasure(form, field, seen)])) as Record<
    MeasureField,
    MeasureRead
  >;
  const exchanged = notShorter(read.hand, read.finger);
  const lowerExchanged = notShorter(read.lowerHand, read.lowerFinger);
  const measures = {
    ...read,
    ...(exchanged && withoutRangeFaults(read, ['hand', 'finger'])),
    ...(lowerExchanged && withoutRangeFaults(read, ['lowerHand', 'lowerFinger'])),
  };
  const differ = form.differ ?? seen?.lowerHandLength !== undefined;
  const start = exchanged ? undefined : startOf(measures.hand, measures.finger, guide, layerInches);
  const lower =
    differ && !lowerExchanged ? startOf(measures.lowerHand, measures.lowerFinger, guide, layerInches) : undefined;
  const upperSize = start?.ok ? start.value : undefined;
  const lowerSize = lower?.ok ? lower.value : undefined;
  const failed = [start, lower].find((each) => each && !each.ok);
  return {
    measures,
    differ,
    start: upperSize,
    lowerStart: lowerSize,
    issue: exchanged ?? (differ ? lowerExchanged : undefined) ?? (failed && !failed.ok ? failed.issue : undefined),
    target: upperSize && fromSample(upperSize, lowerSize, answersOf(form), layerInches),
    unkept: MEASURE_FIELDS.some((field) => {
      const { inches, fault } = measures[field];
      const wanted = differ || field === 'hand' || field === 'finger';
      return (
        wanted && !fault && inches !== undefined && toHundredths(inches) !== toHundredths(seen?.[SEEN[field]] ?? 0)
      );
    }),
  };
}

/** That a finger is as long as its hand says more than that each of them is out of its range: they may be exchanged. */
function notShorter(hand: MeasureRead, finger: MeasureRead): Issue | undefined {
  if (hand.typedInches === undefined || finger.typedInches === undefined) return undefined;
  if (finger.typedInches < hand.typedInches) return undefined;
  // A finger in another unit beside a hand that is right is asked about as such.
  if (finger.fault?.fault === 'unit' && !hand.fault) return undefined;
  const expected = 'the middle finger must be shorter than the hand';
  return { code: 'contradiction', field: 'fingerInches', got: finger.typedInches, expected };
}

function withoutRangeFaults(
  read: HandModel['measures'],
  fields: readonly MeasureField[],
): Partial<Record<MeasureField, MeasureRead>> {
  return Object.fromEntries(fields.map((field) => [field, { ...read[field], fault: undefined }]));
}

/** As Jobs keeps a measure. */
const toHundredths = (inches: number) => Math.round(inches * 100) / 100;

function startOf(hand: MeasureRead, finger: MeasureRead, guide: readonly SizeGuideRow[], layerInches: number) {
  if (hand.inches === undefined || finger.fault) return undefined;
  const { inches: fingerInches } = finger;
  return startDiameter(
    guide,
    { handInches: hand.inches, ...(fingerInches === undefined ? {} : { fingerInches }) },
    layerInches,
  );
}

/** What is to be kept in Jobs: measures that can be read; null leaves a cell as it is. */
export function toKeep({ measures, differ }: HandModel): { readonly [Key in keyof HandSeen]: number | null } {
  const kept = (field: MeasureField) => {
    const { inches } = measures[field];
    return inches === undefined ? null : toHundredths(inches);
  };
  return {
    handLength: kept('hand'),
    fingerLength: kept('finger'),
    lowerHandLength: differ ? kept('lowerHand') : null,
    lowerFingerLength: differ ? kept('lowerFinger') : null,
  };
}
