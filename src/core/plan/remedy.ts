/** Where weight goes and how much of it, in steps that exist. */
import { compensationGrams } from '../balance/compensation';
import { massPoints } from '../balance/moment';
import { roundTo } from '../balance/reading';
import type { Club, Note, Remedy, ShopSettings, Way } from './types';

/** What is to be put right. */
export interface Gap {
  /** Points still missing; negative: too many. */
  readonly points: number;
  readonly tolerancePoints: number;
  readonly lengthInches: number | undefined;
}

/** The remedy for a gap, or none where the way or the length is not known (which is noted). */
export function remedyFor(
  gap: Gap,
  club: Club,
  ways: ReadonlyMap<string, Way>,
  settings: ShopSettings,
  notes: Note[],
): Remedy | undefined {
  const end = gap.points >= 0 ? 'head' : 'butt';
  const way = wayFor(end, club, ways, settings, notes);
  if (!way) return undefined;
  if (end === 'head' && gap.lengthInches === undefined) {
    notes.push({ note: 'lengthUnknown' });
    return undefined;
  }
  const inches = end === 'head' ? (gap.lengthInches ?? 0) - way.inches : way.inches;
  const exact = compensationGrams(-gap.points, inches);
  if (!exact.ok) {
    notes.push({ note: 'issue', issue: { ...exact.issue, field: `From that end of ${way.name}` } });
    return undefined;
  }
  const none = reasonForNone(gap, exact.value, way, settings);
  const grams = none ? 0 : inSteps(exact.value, way.stepGrams);
  const limit = way.limitGrams ?? (end === 'head' ? settings.headLimitGrams : Infinity);
  const overLimit = grams > limit;
  if (overLimit) notes.push({ note: 'overLimit', grams, limitGrams: limit });
  return { exactGrams: exact.value, grams, way: way.name, end, inches, gripOff: way.gripOff, none, overLimit };
}

/** Points that a remedy moves the reading. */
export function remedyPoints(remedy: Remedy | undefined): number {
  return remedy ? massPoints(remedy.grams, remedy.inches) : 0;
}

function reasonForNone(gap: Gap, exact: number, way: Way, settings: ShopSettings): Remedy['none'] {
  const within = Math.abs(gap.points) <= gap.tolerancePoints + 1e-9;
  if (within && settings.putRight === 'outOfTolerance') return 'withinTolerance';
  const grams = inSteps(exact, way.stepGrams);
  if (grams < settings.leastGrams - 1e-9 || grams === 0) return within ? 'withinTolerance' : 'belowLeast';
  return undefined;
}

/** The multiple of a step that comes nearest, free of binary noise. */
function inSteps(grams: number, step: number): number {
  return roundTo(Math.round(grams / step) * step, 3);
}

function wayFor(
  end: Way['end'],
  club: Club,
  ways: ReadonlyMap<string, Way>,
  settings: ShopSettings,
  notes: Note[],
): Way | undefined {
  const asked = club.way === undefined ? undefined : ways.get(club.way.toLowerCase());
  if (club.way !== undefined && !asked) {
    notes.push({ note: 'issue', issue: { code: 'unknownWay', field: 'Weighting', got: club.way } });
  }
  if (asked?.end === end) return asked;
  const usual = end === 'head' ? settings.headWay : settings.buttWay;
  const way = ways.get(usual.toLowerCase());
  if (!way) {
    const field = end === 'head' ? 'Head weighting' : 'Butt weighting';
    notes.push({ note: 'issue', issue: { code: 'unknownWay', field, got: usual } });
  }
  return way;
}
