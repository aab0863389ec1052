/** What went onto a club, as far as the bench said so, in place of what was planned. */
import { FULCRUM_INCHES } from '../constants';
import { planClub } from '../plan/planClub';
import { remedyPoints } from '../plan/remedy';
import type { Club, ClubPlan, Grip, PlanInput, Remedy, SetPlan, Way } from '../plan/types';
import { shelfOf, type Shelf } from './expected';
import { sortMeasured } from './measured';
import type { MeasuredClub } from './types';

/** What the bench says of a club beside its measurements. What is undefined was done as planned. */
export interface Fitting {
  /** The grip that went on; a plan made later may choose another. */
  readonly item?: string | undefined;
  /** Layers under it; a plan made later may solve others. */
  readonly layers?: number | undefined;
  /** All the weight that was put on for its reading. */
  readonly onGrams?: number | undefined;
  /** Where that weight sits, from the butt. */
  readonly onInches?: number | undefined;
  /** Name of its way of weighting. */
  readonly onWay?: string | undefined;
  /** It is done once more: weight, plug and length change of the first time are part of the club that was stripped. */
  readonly isAgain?: boolean | undefined;
  readonly bareReading?: number | undefined;
  readonly bareGrams?: number | undefined;
}

export interface AsFitted {
  readonly plan: ClubPlan;
  readonly club: Club;
}

/** Whether the grip that went on is one of Stock's, or was not named. */
export function isGripKnown({ item }: Fitting, { stock }: Pick<Shelf, 'stock'>): boolean {
  return item === undefined || stock.has(item.toLowerCase());
}

/**
 * A club and its plan as it was fitted: with the grip, layers and weight that went on, and, where it was stripped for a redo and measured
 * bare, without what the first time had put on already.
 */
export function asFitted(planned: ClubPlan, arrived: Club, said: Fitting | undefined, shelf: Shelf): AsFitted {
  if (!said) return { plan: planned, club: arrived };
  const { plan, club } = withGrip(planned, arrived, said, shelf);
  const isStripped = said.isAgain === true && (said.bareReading !== undefined || said.bareGrams !== undefined);
  const onGrams = said.onGrams ?? (isStripped ? 0 : undefined);
  return {
    plan: onGrams === undefined ? plan : withWeight(plan, remedyOf(plan, club, { ...said, onGrams }, shelf)),
    club: isStripped ? { ...club, lengthChangeInches: 0, plugGrams: 0 } : club,
  };
}

export interface FittedSet {
  readonly plan: SetPlan;
  readonly input: PlanInput;
  /** What the bench said, by the club's row. */
  readonly said: ReadonlyMap<number, MeasuredClub>;
}

/** A whole set as it was fitted, for whoever counts what went onto it. Rows that belong to no club are left out; checking in names them. */
export function fittedSet(plan: SetPlan, input: PlanInput, measured: readonly MeasuredClub[]): FittedSet {
  const shelf = shelfOf(input);
  const sorted = sortMeasured(plan, measured);
  const said = new Map([...sorted.byRow].map(([row, club]) => [row, club.measured]));
  const arrived = new Map(input.clubs.map((club) => [club.row, club]));
  const fitted = plan.clubs.flatMap((planned): AsFitted[] => {
    const club = arrived.get(planned.row);
    return club ? [asFitted(planned, club, said.get(planned.row), shelf)] : [];
  });
  return {
    plan: { ...plan, clubs: fitted.map((of) => of.plan) },
    input: { ...input, clubs: fitted.map((of) => of.club) },
    said,
  };
}

/** Planned again where another grip went on, or other layers, than a plan says now. */
function withGrip(plan: ClubPlan, club: Club, { item, layers = plan.layers }: Fitting, shelf: Shelf): AsFitted {
  const named = item === undefined ? undefined : shelf.stock.get(item.toLowerCase());
  const grip: Grip | undefined = named ?? plan.grip;
  if (!grip || (grip.item === plan.grip?.item && layers === plan.layers)) return { plan, club };
  // a grip that was weighed for the club is not the one that went on, if that is another
  const newGripGrams = grip.item === plan.grip?.item ? club.newGripGrams : undefined;
  const fitted: Club = { ...club, newItem: grip.item, newGripGrams, layers };
  return { plan: planClub(fitted, { grip, ...shelf }), club: fitted };
}

function withWeight(plan: ClubPlan, remedy: Remedy | undefined): ClubPlan {
  const { massAfterGrams, readingGripped } = plan;
  const more = (remedy?.grams ?? 0) - (plan.remedy?.grams ?? 0);
  return {
    ...plan,
    remedy,
    massAfterGrams: massAfterGrams === undefined ? undefined : massAfterGrams + more,
    readingAfter: readingGripped === undefined ? undefined : readingGripped + remedyPoints(remedy),
  };
}

/** What is on, where the bench says; else where it was planned, or else at the place of the shop's usual way for the head. */
function remedyOf(
  { remedy, lengthAfterInches }: ClubPlan,
  club: Club,
  { onGrams: grams, onInches, onWay }: Fitting & { readonly onGrams: number },
  shelf: Shelf,
): Remedy | undefined {
  const said = onWay === undefined ? undefined : shelf.ways.get(onWay.toLowerCase());
  if (remedy && onInches === undefined && (said === undefined || said.name === remedy.way)) {
    return { ...remedy, grams, none: undefined, overLimit: false };
  }
  const usual = shelf.ways.get((remedy?.way ?? club.way ?? shelf.settings.headWay).toLowerCase());
  const way = said ?? usual;
  const inches = onInches ?? (way && placeOf(way, lengthAfterInches));
  if (!way || inches === undefined || grams === 0) return undefined;
  return {
    exactGrams: grams,
    grams,
    way: way.name,
    end: inches < FULCRUM_INCHES ? 'butt' : 'head',
    inches,
    gripOff: way.gripOff,
    none: undefined,
    overLimit: false,
  };
}

function placeOf({ end, inches }: Way, lengthInches: number | undefined): number | undefined {
  if (end === 'butt') return inches;
  return lengthInches === undefined ? undefined : lengthInches - inches;
}
