/** What a club is to weigh and read at the bench, bare and finished, and how far measuring may be from it. */
import { lengthPoints } from '../balance/change';
import { massPoints } from '../balance/moment';
import { CAP_SPREAD_INCHES, POINT_GRAM_INCHES, TYPICAL_BODY_SPREAD_GRAMS, WEIGHED_SPREAD_GRAMS } from '../constants';
import { newFitted, oldFitted, type Fitted } from '../plan/oldGrip';
import { planClub } from '../plan/planClub';
import { keyed } from '../plan/planSet';
import { remedyPoints } from '../plan/remedy';
import { bodyOf, lowerTape, pointsFromBare, type Body, type LowerTape } from '../plan/shift';
import type { Club, ClubPlan, Grip, PlanInput, ShopSettings, Way } from '../plan/types';
import type { Expected, Predicted } from './types';

/** What clubs are planned with, looked up by name; made once for a job. */
export interface Shelf {
  readonly stock: ReadonlyMap<string, Grip>;
  readonly ways: ReadonlyMap<string, Way>;
  readonly settings: ShopSettings;
}

export function shelfOf({ stock, ways, settings }: PlanInput): Shelf {
  return { stock: keyed(stock, ({ item }) => item), ways: keyed(ways, ({ name }) => name), settings };
}

/** What was measured of a stripped club. */
export interface Bare {
  readonly bareReading?: number | undefined;
  readonly bareGrams?: number | undefined;
}

/** Two measurements by one scale differ by so many times the ± of one: what was predicted from one is compared with the other. */
const TWO = Math.SQRT2;

/** What a club is made of at the bench. */
interface Made {
  readonly club: Club;
  readonly old: Fitted;
  readonly fresh: Fitted;
  readonly lower: LowerTape;
  readonly body: Body;
  readonly settings: ShopSettings;
}

/**
 * What is to be measured of a club. Where it was measured bare at the bench, the finished club is predicted from that, with the weight that
 * was planned; nothing about the old grip is needed then.
 *
 * The ± is that of the plan with the scale counted twice, once for what the prediction starts from and once for what it is compared with.
 * Source: propagation of independent errors.
 */
export function expectedOf(plan: ClubPlan, club: Club, shelf: Shelf, bare: Bare = {}): Expected {
  const { grip } = plan;
  if (!grip) return { bareReading: undefined, bareGrams: undefined, reading: undefined, massGrams: undefined };
  const { stock, ways, settings } = shelf;
  const made = (of: Club): Made => {
    const old = oldFitted(of, stock, settings);
    const fresh = newFitted(grip, plan.layers, settings, of.newGripGrams);
    return { club: of, old, fresh, lower: lowerTape(of, fresh, settings), body: bodyOf(of, old), settings };
  };
  const seen: Club = {
    ...club,
    bareReading: bare.bareReading ?? club.bareReading,
    bareGrams: bare.bareGrams ?? club.bareGrams,
  };
  const isNews = bare.bareReading !== undefined || bare.bareGrams !== undefined;
  const again = isNews ? planClub(seen, { grip, stock, ways, settings }) : plan;
  return {
    bareReading: bareReadingOf(plan, made(club)),
    bareGrams: bareGramsOf(made(club)),
    reading: readingOf(again, plan, settings),
    massGrams: massOf(again, plan, made(seen)),
  };
}

/**
 * What a finished club is to read and weigh once its grip is off again for a redo: all that the first time put on stays, but for grip,
 * tape and strip.
 */
export function strippedAgain(plan: ClubPlan, club: Club, shelf: Shelf): Pick<Expected, 'bareReading' | 'bareGrams'> {
  const { grip, readingGripped, massAfterGrams, fittedAfterGrams, basis } = plan;
  if (!grip || !basis) return { bareReading: undefined, bareGrams: undefined };
  const { settings } = shelf;
  const fresh = newFitted(grip, plan.layers, settings, club.newGripGrams);
  const same = { ...club, lengthChangeInches: 0, plugGrams: 0 };
  const body = bodyOf(club, oldFitted(club, shelf.stock, settings));
  const grams = body.grams + club.plugGrams + (plan.remedy?.grams ?? 0);
  const ons = pointsFromBare(same, fresh, lowerTape(club, fresh, settings), { ...body, grams });
  const finished = expectedOf(plan, club, shelf);
  return {
    bareReading:
      readingGripped === undefined || !finished.reading
        ? undefined
        : { ...finished.reading, value: readingGripped + remedyPoints(plan.remedy) - ons },
    bareGrams:
      massAfterGrams === undefined || fittedAfterGrams === undefined || !finished.massGrams
        ? undefined
        : { ...finished.massGrams, value: massAfterGrams - fittedAfterGrams - fresh.twoWayGrams },
  };
}

/** What the reading would be without the grip: what the grip does to it, taken off again. */
function bareReadingOf({ basis, readingGripped }: ClubPlan, made: Made): Predicted | undefined {
  const { club, old, fresh, lower, body, settings } = made;
  const reading = settings.readingSpreadPoints * TWO;
  if (club.bareReading !== undefined) return { value: club.bareReading, spread: reading };
  if (basis === undefined || readingGripped === undefined) return undefined;
  const tape = massPoints(settings.tapeSpread * old.layers * old.layerGrams, old.tapedInches / 2);
  const spread = Math.hypot(
    massPoints(old.gripSpreadGrams, old.balanceInches),
    ((old.gripGrams ?? 0) * old.balanceSpreadInches) / POINT_GRAM_INCHES,
    tape,
    old.capKnown ? 0 : lengthPoints(body.grams, CAP_SPREAD_INCHES),
    body.guessed ? lengthPoints(TYPICAL_BODY_SPREAD_GRAMS, old.capInches) : 0,
    reading,
  );
  // a length change is in both, so what is left is the club as it is stripped
  return { value: readingGripped - pointsFromBare(club, fresh, lower, body), spread };
}

function bareGramsOf({ old, body, settings }: Made): Predicted | undefined {
  if (body.guessed) return undefined;
  return { value: body.grams, spread: Math.hypot(oldGramsSpread(old, body, settings), WEIGHED_SPREAD_GRAMS * TWO) };
}

/** A body that is what is left of the whole club errs by what was on it. */
function oldGramsSpread(old: Fitted, body: Body, settings: ShopSettings): number {
  return body.fromWhole ? Math.hypot(old.gripSpreadGrams, settings.tapeSpread * old.layers * old.layerGrams) : 0;
}

function readingOf(again: ClubPlan, plan: ClubPlan, settings: ShopSettings): Predicted | undefined {
  if (again.readingGripped === undefined || !again.spreadParts) return undefined;
  const { reading: _scale, ...parts } = again.spreadParts;
  return {
    value: again.readingGripped + remedyPoints(plan.remedy),
    spread: Math.hypot(...Object.values(parts), settings.readingSpreadPoints * TWO),
  };
}

function massOf(again: ClubPlan, plan: ClubPlan, made: Made): Predicted | undefined {
  if (again.massAfterGrams === undefined) return undefined;
  const { old, fresh, lower, body, settings } = made;
  return {
    value: again.massAfterGrams - (again.remedy?.grams ?? 0) + (plan.remedy?.grams ?? 0),
    spread: Math.hypot(
      oldGramsSpread(old, body, settings),
      fresh.gripSpreadGrams,
      settings.tapeSpread * (fresh.layers * fresh.layerGrams + lower.grams),
      WEIGHED_SPREAD_GRAMS * TWO,
    ),
  };
}
