/** Finished clubs against their plan. */
import { verdictOf } from '../plan/spread';
import type { Club, ClubPlan, PlanInput, SetPlan } from '../plan/types';
import { asFitted, isGripKnown } from './asFitted';
import { expectedOf, shelfOf, strippedAgain, type Shelf } from './expected';
import { decisionIssue, gripIssue, sortMeasured } from './measured';
import { nextSteps } from './nextSteps';
import { isGripped, pilotOf, unplannable } from './pilot';
import type { CheckedClub, CheckIn, Closing, MeasuredClub, Off, Predicted } from './types';
import type { Issue } from '../result';

/**
 * What was measured of a job's clubs, held against the plan.
 *
 * Two questions are kept apart: whether a club came out as predicted (beyond the prediction's ± something was done otherwise, or measured
 * wrong), and whether it reads within tolerance of what is held, by what was measured, with the scale's own ±. A club within tolerance
 * by at least that ±, and as predicted, is accepted; one that is out can only be put right or waived with a reason; between the two a
 * person decides.
 *
 * @param plan the set as planned
 * @param input what it was planned from
 * @param measured rows of the check-in, as typed; grams, points
 * @returns each club that gets a grip, in the order of the plan, what to do next, and everything wrong with what was typed
 */
export function checkIn(plan: SetPlan, input: PlanInput, measured: readonly MeasuredClub[]): CheckIn {
  const sorted = sortMeasured(plan, measured);
  const byRow = new Map(input.clubs.map((club) => [club.row, club]));
  const shelf = shelfOf(input);
  const clubs = plan.clubs.filter(isGripped).flatMap((planned) => {
    const club = byRow.get(planned.row);
    const typed = sorted.byRow.get(planned.row);
    return club ? [checked(planned, club, shelf, typed?.measured, typed?.issues ?? [])] : [];
  });
  const pilot = pilotOf(plan);
  return {
    clubs,
    pilot,
    waitForPilot: clubs.some(({ row, state }) => row === pilot?.row && state === 'open'),
    issues: [
      ...sorted.issues,
      ...unplannable(plan).flatMap(({ issues }) => issues),
      ...clubs.flatMap(({ issues }) => issues),
    ],
  };
}

/** A job closes when every club is accepted, or waived with a reason, and nothing typed is in doubt. */
export function canClose({ clubs, issues }: Pick<CheckIn, 'clubs' | 'issues'>): Closing {
  const open = clubs.filter(({ state }) => state === 'open').map(({ row, name }) => ({ row, name }));
  const waived = new Set(clubs.filter(({ state }) => state === 'waived').flatMap((club) => club.issues));
  const standing = issues.filter((issue) => !waived.has(issue));
  return { closes: clubs.length > 0 && open.length === 0 && standing.length === 0, open, issues: standing };
}

function checked(
  planned: ClubPlan,
  arrived: Club,
  shelf: Shelf,
  measured: MeasuredClub | undefined,
  readWrong: readonly Issue[],
): CheckedClub {
  const typedWrong =
    measured && !planned.ownGrip && !isGripKnown(measured, shelf) ? [...readWrong, gripIssue(measured)] : readWrong;
  const { plan, club } = asFitted(planned, arrived, measured, shelf);
  const expected = {
    ...expectedOf(plan, club, shelf, measured),
    ...(measured?.isAgain ? strippedAgain(planned, arrived, shelf) : {}),
  };
  const off = {
    bareReading: offOf(measured?.bareReading, expected.bareReading),
    bareGrams: offOf(measured?.bareGrams, expected.bareGrams),
    reading: offOf(measured?.reading, expected.reading),
    massGrams: offOf(measured?.massGrams, expected.massGrams),
  };
  const gap = gapOf(plan, measured, shelf);
  const verdict = plan.hold === 'nothing' ? 'notHeld' : verdictOf(gap?.points, gap?.spread, plan.tolerancePoints);
  const isRead = measured?.reading !== undefined;
  const isWeighed = measured?.massGrams !== undefined;
  const found = { plan, club, off, gapPoints: gap?.points, verdict, isRead, isWeighed };
  const next = nextSteps(found, shelf);
  const wrong = measured && decisionIssue(measured, verdict === 'out', isRead || (verdict === 'notHeld' && isWeighed));
  const issues = wrong ? [...typedWrong, wrong] : typedWrong;
  const isSound = typedWrong.length === 0 && next.length === 0 && (verdict === 'within' || verdict === 'notHeld');
  return {
    row: plan.row,
    name: plan.name,
    measured,
    fitted: {
      item: planned.ownGrip ? (measured?.item ?? plan.item) : plan.item,
      layers: plan.layers,
      lowerLayers: plan.lowerLayers,
      remedy: plan.remedy,
    },
    expected,
    off,
    hold: plan.hold,
    heldReading: plan.heldReading,
    tolerancePoints: plan.tolerancePoints,
    gapPoints: gap?.points,
    gapSpreadPoints: gap?.spread,
    verdict,
    next,
    state: stateOf(measured, wrong !== undefined, typedWrong.length > 0, isSound),
    reason: measured?.decision === 'waive' ? measured.reason : undefined,
    issues,
  };
}

function stateOf(
  measured: MeasuredClub | undefined,
  decidedWrong: boolean,
  typedWrong: boolean,
  isSound: boolean,
): CheckedClub['state'] {
  if (!measured || decidedWrong) return 'open';
  if (measured.decision === 'waive') return 'waived';
  if (typedWrong) return 'open';
  return measured.decision === 'accept' || isSound ? 'accepted' : 'open';
}

/** A measurement that is as predicted by exactly its ± is no surprise, whatever binary fractions say. */
function offOf(measured: number | undefined, predicted: Predicted | undefined): Off | undefined {
  if (measured === undefined || predicted === undefined) return undefined;
  const by = measured - predicted.value;
  return { by, spread: predicted.spread, surprising: Math.abs(by) > predicted.spread + 1e-9 };
}

/** What is missing to what is held; against a reading that was measured as well, the scale errs twice. */
function gapOf(
  { hold, heldReading }: ClubPlan,
  measured: MeasuredClub | undefined,
  { settings }: Shelf,
): { points: number; spread: number } | undefined {
  if (hold === 'nothing' || heldReading === undefined || measured?.reading === undefined) return undefined;
  const spread = settings.readingSpreadPoints * (hold === 'asArrived' ? Math.SQRT2 : 1);
  return { points: heldReading - measured.reading, spread };
}
