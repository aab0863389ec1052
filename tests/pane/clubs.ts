/** Clubs of a plan with only what a test is about; everything else is not known. */
import type { ClubPlan, SetPlan } from '../../src/core/index';

export function clubPlan(change: Partial<ClubPlan> & { readonly name: string }): ClubPlan {
  return {
    row: 1,
    kind: undefined,
    item: undefined,
    grip: undefined,
    basis: undefined,
    layers: 0,
    layersSolved: false,
    lowerLayers: 0,
    hold: 'asArrived',
    heldReading: undefined,
    tolerancePoints: 1,
    upper: undefined,
    lower: undefined,
    growth: 'volume',
    fittedBeforeGrams: undefined,
    fittedAfterGrams: undefined,
    fittedChangeGrams: undefined,
    readingBefore: undefined,
    shift: undefined,
    readingGripped: undefined,
    gapPoints: undefined,
    spreadPoints: undefined,
    spreadParts: undefined,
    verdict: 'unknown',
    remedy: undefined,
    readingAfter: undefined,
    verdictAfter: 'unknown',
    massBeforeGrams: undefined,
    massAfterGrams: undefined,
    lengthAfterInches: undefined,
    inertiaChange: undefined,
    tapeInches: 0,
    twoWayInches: 0,
    breaches: [],
    notes: [],
    ...change,
  };
}

export function setPlan(clubs: readonly ClubPlan[], needed: Readonly<Record<string, number>> = {}): SetPlan {
  return { clubs, lessons: [], needed: new Map(Object.entries(needed)) };
}

export function shiftOf(total: number): NonNullable<ClubPlan['shift']> {
  return { grip: total, tape: 0, twoWay: 0, cap: 0, length: 0, buttWeight: 0, total };
}

export function remedyOf(grams: number, end: 'head' | 'butt' = 'head'): NonNullable<ClubPlan['remedy']> {
  return {
    exactGrams: grams,
    grams,
    way: 'Lead tape',
    end,
    inches: 37,
    gripOff: false,
    none: undefined,
    overLimit: false,
  };
}
