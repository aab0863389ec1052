/** Where weight goes and how much of it, in steps that exist. */
import { compensationGrams } from '../balance/compensation';
import { massPoints } from '../balance/moment';
import { roundTo } from '../balance/reading';
import type { Issue } from '../result';
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
    if (isWanted(gap, settings)) notes.push({ note: 'lengthUnknown' });
    return undefined;
  }
  const inches = end === 'head' ? (gap.lengthInches ?? 0) - way.inches : way.inches;
  const exact = compensationGrams(-gap.points, inches);
  if (!exact.ok || exact.value < 0) {
    if (isWanted(gap, settings)) notes.push({ note: 'issue', issue: misplaced(way) });
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

/** A way whose place lies at the fulcrum or on its other side, where weight would make things worse. */
function misplaced(way: Way): Issue {
  const expected = `${way.inches} in from the ${way.end} is at or past the fulcrum, where no weight puts this club right`;
  return { code: 'contradiction', field: `Weights, ${way.name}`, got: way.inches, expected };
}

function isWithin(gap: Pick<Gap, 'points' | 'tolerancePoints'>): boolean {
  return Math.abs(gap.points) <= gap.tolerancePoints + 1e-9;
}

/** Whether anything would be added if it could be. */
export function isWanted(gap: Pick<Gap, 'points' | 'tolerancePoints'>, settings: ShopSettings): boolean {
  return settings.putRight === 'always' ? gap.points !== 0 : !isWithin(gap);
}

function reasonForNone(gap: Gap, exact: number, way: Way, settings: ShopSettings): Remedy['none'] {
  const within = isWithin(gap);
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
