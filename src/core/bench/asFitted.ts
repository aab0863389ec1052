/** What went onto a club, as far as the bench said so, in place of what was planned. */
import type { Club, ClubPlan, Remedy, Way } from '../plan/types';
import { remedyPoints } from '../plan/remedy';
import type { Shelf } from './expected';

/** What the bench says of a club beside its measurements. */
export interface Fitting {
  /** All the weight that was put on for its reading; undefined: as planned. */
  readonly onGrams?: number | undefined;
  /** It is done once more: weight, plug and length change of the first time are part of the club that was stripped. */
  readonly isAgain?: boolean | undefined;
  readonly bareReading?: number | undefined;
  readonly bareGrams?: number | undefined;
}

export interface AsFitted {
  readonly plan: ClubPlan;
  readonly club: Club;
}

/**
 * A club and its plan as it was fitted: with the weight that went on, and, where it was stripped for a redo and measured bare, without what
 * the first time had put on already.
 */
export function asFitted(plan: ClubPlan, club: Club, said: Fitting | undefined, shelf: Shelf): AsFitted {
  const isStripped = said?.isAgain === true && (said.bareReading !== undefined || said.bareGrams !== undefined);
  const onGrams = said?.onGrams ?? (isStripped ? 0 : undefined);
  return {
    plan: onGrams === undefined ? plan : withWeight(plan, remedyOf(plan, club, onGrams, shelf)),
    club: isStripped ? { ...club, lengthChangeInches: 0, plugGrams: 0 } : club,
  };
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

/** The planned weight with other grams; where none was planned, at the place of the shop's usual way for the head. */
function remedyOf(
  { remedy, lengthAfterInches }: ClubPlan,
  club: Club,
  grams: number,
  shelf: Shelf,
): Remedy | undefined {
  if (remedy) return { ...remedy, grams, none: undefined, overLimit: false };
  const way = shelf.ways.get((club.way ?? shelf.settings.headWay).toLowerCase());
  if (!way || lengthAfterInches === undefined || grams === 0) return undefined;
  const inches = placeOf(way, lengthAfterInches);
  return {
    exactGrams: grams,
    grams,
    way: way.name,
    end: way.end,
    inches,
    gripOff: way.gripOff,
    none: undefined,
    overLimit: false,
  };
}

function placeOf({ end, inches }: Way, lengthInches: number): number {
  return end === 'head' ? lengthInches - inches : inches;
}
