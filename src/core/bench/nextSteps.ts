/** What to do about a finished club that is not as planned. */
import { massPoints } from '../balance/moment';
import { GRIP_BALANCE, POINT_GRAM_INCHES, TYPICAL_BODY_GRAMS } from '../constants';
import { remedyFor } from '../plan/remedy';
import type { Club, ClubPlan, Remedy, Verdict, Way } from '../plan/types';
import type { Shelf } from './expected';
import type { CheckedClub, NextStep, Off } from './types';

/** What is known of a club when the next step is looked for. */
export interface Found {
  readonly plan: ClubPlan;
  readonly club: Club;
  readonly off: CheckedClub['off'];
  readonly gapPoints: number | undefined;
  readonly verdict: Verdict;
  readonly isRead: boolean;
  readonly isWeighed: boolean;
}

/** First what is missing, then what does not add up, then what puts it right. */
export function nextSteps(found: Found, shelf: Shelf): NextStep[] {
  const { off, isRead, isWeighed } = found;
  const steps: NextStep[] = [];
  if (off.bareReading?.surprising || off.bareGrams?.surprising) steps.push({ step: 'replan' });
  if (!isRead || !isWeighed) steps.push({ step: 'measure', reading: !isRead, mass: !isWeighed });
  const doubt = doubtOf(found);
  if (doubt) steps.push(doubt);
  const cure = cureOf(found, shelf);
  if (cure) steps.push(cure);
  return steps;
}

/**
 * What a surprising reading or mass points to.
 *
 * Formula: `Δm (x − 14) / P` is what a mass too many at x does to the reading. Where the measured change of the reading is that of x at the
 * grip, and not that of x at the head, within its ±, the grip is looked at; the other way round the head's weight; else both are
 * measured again. With the mass as it should be, a heavier reading is a longer club: `Δ = points × P / body`. Source: moments.
 */
function doubtOf({ plan, off: { reading, massGrams } }: Found): NextStep | undefined {
  if (massGrams?.surprising) return massDoubt(plan, massGrams, reading);
  if (!reading?.surprising) return undefined;
  const points = reading.by;
  if (points < 0 || !massGrams) return { step: 'readAgain', points };
  return { step: 'seatGrip', inches: (points * POINT_GRAM_INCHES) / bodyGrams(plan), points };
}

function massDoubt(plan: ClubPlan, { by: grams }: Off, reading: Off | undefined): NextStep {
  const isAt = (inches: number | undefined): boolean =>
    reading !== undefined && inches !== undefined && Math.abs(massPoints(grams, inches) - reading.by) <= reading.spread;
  const grip = isAt(plan.grip?.balanceInches ?? GRIP_BALANCE.value);
  const head = isAt(plan.remedy?.end === 'head' ? plan.remedy.inches : plan.lengthAfterInches);
  if (grip === head) return { step: 'weighAgain', grams };
  return grip ? { step: 'checkGrip', grams } : { step: 'checkWeight', grams };
}

function bodyGrams({ massAfterGrams, fittedAfterGrams }: ClubPlan): number {
  if (massAfterGrams === undefined || fittedAfterGrams === undefined) return TYPICAL_BODY_GRAMS;
  return massAfterGrams - fittedAfterGrams;
}

/** Grams to add or take away, for a club that reads outside its tolerance. */
function cureOf({ plan, club, gapPoints, verdict }: Found, shelf: Shelf): NextStep | undefined {
  if (gapPoints === undefined || (verdict !== 'out' && verdict !== 'cannotTell')) return undefined;
  const surplus = takeAway(plan.remedy, gapPoints);
  if (surplus) return surplus;
  const gap = { points: gapPoints, tolerancePoints: plan.tolerancePoints, lengthInches: plan.lengthAfterInches };
  const gripOn = remedyFor(gap, ...withGripOn(club, shelf), []);
  if (gripOn && gripOn.grams > 0) return added(gripOn);
  const gripOff = remedyFor(gap, club, shelf.ways, shelf.settings, []);
  if (!gripOff || gripOff.grams <= 0) return undefined;
  return { step: 'gripOffNeeded', grams: gripOff.grams, way: gripOff.way, takeAway: false };
}

function added({ grams, way, end, inches }: Remedy): NextStep {
  return { step: 'add', grams, way, end, inches };
}

/** Weight that was put on for this very reason comes off first, as far as it goes; in tenths of a gram, since it is trimmed. */
function takeAway(remedy: Remedy | undefined, gapPoints: number): NextStep | undefined {
  if (!remedy || remedy.grams <= 0) return undefined;
  const perGram = massPoints(1, remedy.inches);
  const wanted = -gapPoints / perGram;
  const grams = Math.round(Math.min(wanted, remedy.grams) * 10) / 10;
  if (grams <= 0) return undefined;
  if (remedy.gripOff) return { step: 'gripOffNeeded', grams, way: remedy.way, takeAway: true };
  return { step: 'takeAway', grams, way: remedy.way, inches: remedy.inches };
}

/** The same question with the ways that are left when the grip is on. */
function withGripOn(club: Club, { ways, settings }: Shelf): [Club, Map<string, Way>, Shelf['settings']] {
  const open = new Map([...ways].filter(([, { gripOff }]) => !gripOff));
  const usual = (name: string, end: Way['end']): string =>
    open.has(name.toLowerCase()) ? name : ([...open.values()].find((way) => way.end === end)?.name ?? name);
  const way = club.way !== undefined && open.has(club.way.toLowerCase()) ? club.way : undefined;
  return [
    { ...club, way },
    open,
    { ...settings, headWay: usual(settings.headWay, 'head'), buttWay: usual(settings.buttWay, 'butt') },
  ];
}
