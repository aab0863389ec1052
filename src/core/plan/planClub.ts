/** The plan of one club. */
import { BUTT_WEIGHT_INCHES, FULCRUM_INCHES, SCALE_LETTERS } from '../constants';
import { readingMoment } from '../balance/moment';
import { massInertia, shiftInertia } from '../balance/inertia';
import { fittedGrams } from '../grip/mass';
import { ruleBreaches } from '../rules/check';
import { wornGrip } from './lesson';
import { massFrom, newFitted, oldFitted, type Fitted } from './oldGrip';
import { remedyFor, remedyPoints } from './remedy';
import {
  bodyOf,
  leavingGrams,
  lowerTape,
  pointsFromBare,
  removedGrams,
  shiftFromOld,
  shiftMeasured,
  type Body,
  type LowerTape,
} from './shift';
import { sizing, type Sizing } from './size';
import { isOver, spreadParts, spreadPoints, verdictOf } from './spread';
import type {
  Basis,
  Club,
  ClubPlan,
  Diameter,
  Grip,
  Hold,
  Note,
  Remedy,
  Shift,
  ShopSettings,
  Verdict,
  Way,
} from './types';

/** What a club is planned with. */
export interface Bench {
  readonly grip: Grip | undefined;
  readonly stock: ReadonlyMap<string, Grip>;
  readonly ways: ReadonlyMap<string, Way>;
  readonly settings: ShopSettings;
}

/** What is held when the owner does not say: a target where one is given, nothing for putters and juniors, else as it was (*practice*). */
export function holdOf(club: Club): Hold {
  if (club.hold) return club.hold;
  if (club.target !== undefined) return 'target';
  return club.kind === 'putter' || club.kind === 'junior' ? 'nothing' : 'asArrived';
}

/** What a club comes to with its new grip: all that a choice among grips looks at. */
export interface Settled {
  readonly size: Sizing;
  readonly old: Fitted;
  readonly fresh: Fitted;
  readonly lower: LowerTape;
  readonly body: Body;
  readonly moved: Moved;
  readonly held: Held;
  readonly tolerancePoints: number;
  readonly lengthAfterInches: number | undefined;
  readonly remedy: Remedy | undefined;
}

/** What goes onto a club. */
export interface Fitting {
  readonly grip: Grip;
  /** undefined: solved from the club's target diameter, else none. */
  readonly layers: number | undefined;
  /** Mass of the very grip, where it was weighed. */
  readonly weighedGrams: number | undefined;
}

/** Settles size, change and remedy of a club that gets a grip; what is noted on the way is put into `notes`. */
function settled(
  club: Club,
  { grip, layers, weighedGrams }: Fitting,
  old: Fitted,
  { settings, ways }: Pick<Bench, 'settings' | 'ways'>,
  notes: Note[],
  shared: readonly Note[],
): Settled {
  const size = sizing(club, grip, settings, layers);
  notes.push(...size.notes);
  const fresh = newFitted(grip, size.layers, settings, weighedGrams);
  const lower = lowerTape(club, fresh, settings);
  const body = bodyOf(club, old);
  if (body.contradicts && !shared.some(({ note }) => note === 'bareContradicts'))
    notes.push({ note: 'massContradicts' });
  const moved = move(club, old, fresh, lower, body, notes);
  const held = holding(club, moved, notes);
  const tolerancePoints = club.tolerancePoints ?? settings.tolerancePoints;
  const lengthAfterInches =
    club.lengthInches === undefined
      ? undefined
      : club.lengthInches + club.lengthChangeInches + fresh.capInches - old.capInches;
  const remedy =
    held.gap === undefined
      ? undefined
      : remedyFor({ points: held.gap, tolerancePoints, lengthInches: lengthAfterInches }, club, ways, settings, notes);
  return { size, old, fresh, lower, body, moved, held, tolerancePoints, lengthAfterInches, remedy };
}

/** What a choice among grips looks at of a club's plan. */
export interface Tryout {
  readonly layers: number;
  readonly layersSolved: boolean;
  readonly upper: Diameter | undefined;
  readonly changePoints: number | undefined;
  readonly fittedChangeGrams: number | undefined;
  readonly remedy: Remedy | undefined;
  /** Out of tolerance with the grip alone, whatever its ±; never where nothing is held or known. */
  readonly out: boolean;
}

/**
 * The part of {@link planClub} that a choice among thousands of plans looks at, of a club with another fitting than its own; what is
 * only read in a plan is not worked out.
 */
export function tryClub(club: Club, fitting: Fitting, bench: Omit<Bench, 'grip'>): Tryout {
  const { grip, layers = 0, weighedGrams } = fitting;
  if ((weighedGrams ?? grip.gripGrams) === undefined) return { ...UNTRIED, layers };
  const old = oldFitted(club, bench.stock, bench.settings);
  const { size, fresh, lower, moved, held, tolerancePoints, remedy } = settled(club, fitting, old, bench, [], []);
  const before = fittedBefore(club, old);
  return {
    layers: size.layers,
    layersSolved: size.solved,
    upper: size.upper,
    changePoints: moved.shift?.total,
    fittedChangeGrams: before === undefined ? undefined : fittedAfter(fresh, lower) - before,
    remedy,
    out: held.gap !== undefined && moved.basis !== undefined && isOver(Math.abs(held.gap), tolerancePoints),
  };
}

const UNTRIED: Omit<Tryout, 'layers'> = {
  layersSolved: false,
  upper: undefined,
  changePoints: undefined,
  fittedChangeGrams: undefined,
  remedy: undefined,
  out: false,
};

/** Plans one club; `shared` are notes that came from looking at the whole set. */
export function planClub(club: Club, bench: Bench, shared: readonly Note[] = []): ClubPlan {
  const notes: Note[] = club.issues.map((issue) => ({ note: 'issue', issue }));
  notes.push(...shared);
  const { grip, settings } = bench;
  const old = oldFitted(club, bench.stock, settings);
  if (!grip || (club.newGripGrams ?? grip.gripGrams) === undefined) {
    const missing = missingGrip(club, grip);
    // where the mass in Stock could not be read, that has been said already
    if (!grip || club.issues.length === 0) notes.push(missing);
    return unplanned(club, old, settings, notes);
  }
  const own = { grip, layers: club.layers, weighedGrams: club.newGripGrams };
  const plan = settled(club, own, old, bench, notes, shared);
  const { size, fresh, lower, body, moved, held, tolerancePoints, remedy } = plan;
  const basis = moved.basis;
  const sameItem = club.oldItem?.toLowerCase() === grip.item.toLowerCase();
  const parts = basis && spreadParts({ basis, hold: held.hold, old, fresh, lower, body, club, sameItem }, settings);
  const spread = parts && spreadPoints(parts);
  const added = remedyPoints(remedy);
  const after = moved.gripped === undefined ? undefined : moved.gripped + added;
  noteOffScale(moved.before, after, notes);
  const weighs = masses(club, old, fresh, lower, body, remedy?.grams ?? 0);
  const verdict = (gap: number | undefined): Verdict =>
    held.hold === 'nothing' ? 'notHeld' : verdictOf(gap, spread, tolerancePoints);
  return {
    row: club.row,
    name: club.name,
    kind: club.kind,
    item: grip.item,
    ownGrip: club.ownGrip,
    grip,
    basis,
    layers: size.layers,
    layersSolved: size.solved,
    lowerLayers: club.lowerLayers,
    hold: held.hold,
    heldReading: held.reading,
    tolerancePoints,
    upper: size.upper,
    lower: size.lower,
    growth: settings.growth,
    fittedBeforeGrams: weighs.fittedBeforeGrams,
    fittedAfterGrams: weighs.fittedAfterGrams,
    fittedChangeGrams: weighs.fittedChangeGrams,
    readingBefore: moved.before,
    shift: moved.shift,
    readingGripped: moved.gripped,
    gapPoints: held.gap,
    spreadPoints: spread,
    spreadParts: parts,
    verdict: verdict(held.gap),
    remedy,
    readingAfter: after,
    verdictAfter: verdict(held.gap === undefined ? undefined : held.gap - added),
    massBeforeGrams: club.massGrams,
    massAfterGrams: weighs.massAfterGrams,
    lengthAfterInches: plan.lengthAfterInches,
    inertiaChange: inertiaOf(club, wornGrip(club, old), fresh, lower, body, remedy),
    tapeInches: size.layers * fresh.tapedInches + lower.inches,
    twoWayInches: settings.twoWayUnderNew ? fresh.tapedInches : 0,
    breaches: breachesOf(club, grip, size, plan.lengthAfterInches, settings),
    notes,
  };
}

function missingGrip(club: Club, grip: Grip | undefined): Note {
  if (!grip && club.ownGrip) return { note: 'ownGrip' };
  if (club.newItem === undefined) return { note: 'noGrip' };
  if (!grip) return { note: 'issue', issue: { code: 'unknownItem', field: 'New grip', got: club.newItem } };
  return { note: 'issue', issue: { code: 'blank', field: `Mass of ${grip.item} in Stock`, expected: '15 to 220 g' } };
}

interface Moved {
  readonly basis: Basis | undefined;
  readonly before: number | undefined;
  readonly shift: Shift | undefined;
  readonly gripped: number | undefined;
}

/** From as arrived, or from bare where the bare reading is there, to gripped. */
function move(club: Club, old: Fitted, fresh: Fitted, lower: LowerTape, body: Body, notes: Note[]): Moved {
  const before = club.reading;
  const added = old.gripGrams === undefined ? undefined : shiftFromOld(club, old, fresh, lower, body);
  if (club.bareReading !== undefined) {
    if (club.bareGrams === undefined) notes.push({ note: 'bareMassUnknown' });
    const gripped = club.bareReading + pointsFromBare(club, fresh, lower, body);
    const shift =
      before === undefined
        ? undefined
        : shiftMeasured(gripped - before, added ?? shiftFromOld(club, old, fresh, lower, body));
    return { basis: 'bare', before, shift, gripped };
  }
  if (before === undefined) notes.push({ note: 'readingUnknown' });
  if (!added) {
    notes.push({ note: 'oldGripUnknown' });
    return { basis: undefined, before, shift: undefined, gripped: undefined };
  }
  const moves = club.lengthChangeInches !== 0 || Math.abs(fresh.capInches - old.capInches) > 1e-9;
  if (body.guessed && !body.contradicts && moves) notes.push({ note: 'massUnknown' });
  return {
    basis: massFrom(club),
    before,
    shift: added,
    gripped: before === undefined ? undefined : before + added.total,
  };
}

interface Held {
  readonly hold: Hold;
  readonly reading: number | undefined;
  readonly gap: number | undefined;
}

/** What is held, and how many points are missing to it. A club held as it was needs no reading: only the change counts. */
function holding(club: Club, moved: Moved, notes: Note[]): Held {
  const hold = holdOf(club);
  if (hold === 'nothing') return { hold, reading: undefined, gap: undefined };
  if (hold === 'target') {
    if (club.target === undefined) notes.push({ note: 'targetUnknown' });
    const gap = club.target === undefined || moved.gripped === undefined ? undefined : club.target - moved.gripped;
    return { hold, reading: club.target, gap };
  }
  if (moved.basis === 'bare' && club.reading === undefined) notes.push({ note: 'heldUnknown' });
  const gap = moved.shift && 0 - moved.shift.total;
  return { hold, reading: club.reading, gap };
}

function noteOffScale(before: number | undefined, after: number | undefined, notes: Note[]): void {
  const off = [after, before].find(
    (points) => points !== undefined && (points <= -0.05 || points >= SCALE_LETTERS.length * 10 - 0.05),
  );
  if (off !== undefined) notes.push({ note: 'offScale', points: off });
}

type Masses = Pick<ClubPlan, 'fittedBeforeGrams' | 'fittedAfterGrams' | 'fittedChangeGrams' | 'massAfterGrams'>;

/** The finished club is its body and all that goes on; where the body is a guess, nobody knows. */
function masses(club: Club, old: Fitted, fresh: Fitted, lower: LowerTape, body: Body, remedyGrams: number): Masses {
  const before = fittedBefore(club, old);
  const after = fittedAfter(fresh, lower);
  return {
    fittedBeforeGrams: before,
    fittedAfterGrams: after,
    fittedChangeGrams: before === undefined ? undefined : after - before,
    massAfterGrams: body.guessed ? undefined : body.grams + after + fresh.twoWayGrams + club.plugGrams + remedyGrams,
  };
}

/** What comes off; measured where the club was weighed before and after. */
function fittedBefore(club: Club, old: Fitted): number | undefined {
  return removedGrams(club, old) ?? fittedOld(old);
}

function fittedAfter(fresh: Fitted, lower: LowerTape): number {
  return fittedGrams(fresh.gripGrams ?? 0, fresh.layers, fresh.layerGrams) + lower.grams;
}

function fittedOld(old: Fitted): number | undefined {
  return old.gripGrams === undefined ? undefined : fittedGrams(old.gripGrams, old.layers, old.layerGrams);
}

/** Change of inertia about the butt, remedy included; unknown where the old grip is, or where the body moves and nobody knows where it balances. */
function inertiaOf(
  club: Club,
  old: Fitted,
  fresh: Fitted,
  lower: LowerTape,
  body: Body,
  remedy: ClubPlan['remedy'],
): number | undefined {
  if (old.gripGrams === undefined) return undefined;
  const moved = club.lengthChangeInches + fresh.capInches - old.capInches;
  const shifted = Math.abs(moved) < 1e-9 ? 0 : bodyShift(club, old, body, moved);
  if (shifted === undefined) return undefined;
  return (
    fittedInertia(fresh) -
    fittedInertia(old) +
    massInertia(lower.grams, lower.balanceInches) +
    massInertia(club.plugGrams - leavingGrams(club), BUTT_WEIGHT_INCHES) +
    massInertia(remedy?.grams ?? 0, remedy?.inches ?? 0) +
    shifted
  );
}

function fittedInertia(fitted: Fitted): number {
  return (
    massInertia(fitted.gripGrams ?? 0, fitted.balanceInches) +
    massInertia(fitted.layers * fitted.layerGrams + fitted.twoWayGrams, fitted.tapedInches / 2)
  );
}

/** The body's balance point follows from the reading: its moment is the club's less what sat on it. */
function bodyShift(club: Club, old: Fitted, body: Body, movedInches: number): number | undefined {
  if (body.guessed) return undefined;
  if (club.bareReading !== undefined) {
    const balance = FULCRUM_INCHES + readingMoment(club.bareReading) / body.grams;
    return shiftInertia(body.grams, balance + old.capInches, movedInches);
  }
  if (club.reading === undefined) return undefined;
  const tape = old.layers * old.layerGrams + old.twoWayGrams;
  const sat =
    (old.gripGrams ?? 0) * (old.balanceInches - FULCRUM_INCHES) +
    tape * (old.tapedInches / 2 - FULCRUM_INCHES) +
    leavingGrams(club) * (BUTT_WEIGHT_INCHES - FULCRUM_INCHES);
  const balance = FULCRUM_INCHES + (readingMoment(club.reading) - sat) / body.grams;
  return shiftInertia(body.grams, balance, movedInches);
}

function breachesOf(club: Club, grip: Grip, size: Sizing, lengthAfter: number | undefined, settings: ShopSettings) {
  return ruleBreaches({
    upperInches: size.upper?.inches,
    lowerInches: size.lower?.inches,
    gripLengthInches: grip.lengthInches,
    clubInches: lengthAfter,
    putter: club.kind === 'putter',
    competition46: settings.competition46,
  });
}

/** A club without a grip to fit: what is known of it, and nothing made up. */
function unplanned(club: Club, old: Fitted, settings: ShopSettings, notes: readonly Note[]): ClubPlan {
  const hold = holdOf(club);
  const tape = club.ownGrip ? untriedTape(club, settings) : NO_TAPE;
  return {
    row: club.row,
    name: club.name,
    kind: club.kind,
    item: club.newItem,
    ownGrip: club.ownGrip,
    grip: undefined,
    basis: undefined,
    layers: club.layers ?? 0,
    layersSolved: false,
    lowerLayers: club.lowerLayers,
    hold,
    heldReading: hold === 'nothing' ? undefined : hold === 'target' ? club.target : club.reading,
    tolerancePoints: club.tolerancePoints ?? settings.tolerancePoints,
    upper: undefined,
    lower: undefined,
    growth: settings.growth,
    fittedBeforeGrams: fittedOld(old),
    fittedAfterGrams: undefined,
    fittedChangeGrams: undefined,
    readingBefore: club.reading,
    shift: undefined,
    readingGripped: undefined,
    gapPoints: undefined,
    spreadPoints: undefined,
    spreadParts: undefined,
    verdict: 'unknown',
    remedy: undefined,
    readingAfter: undefined,
    verdictAfter: 'unknown',
    massBeforeGrams: club.massGrams,
    massAfterGrams: undefined,
    lengthAfterInches: club.lengthInches,
    inertiaChange: undefined,
    ...tape,
    breaches: [],
    notes,
  };
}

const NO_TAPE = { tapeInches: 0, twoWayInches: 0 };

/** Tape under a grip of which nothing is known: as long as is usual. */
function untriedTape({ layers = 0, lowerLayers }: Club, settings: ShopSettings): typeof NO_TAPE {
  const { tapedInches, lowerTapeStartInches, twoWayUnderNew } = settings;
  const lower = lowerLayers * Math.max(0, tapedInches - lowerTapeStartInches);
  return { tapeInches: layers * tapedInches + lower, twoWayInches: twoWayUnderNew ? tapedInches : 0 };
}
