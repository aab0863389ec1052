/**
 * What goes into choosing grips for a set and what comes out: numbers and codes only.
 *
 * Lengths and diameters in inches, masses in grams, readings and changes in points, prices in the sheet's currency.
 */
import type { Club, ClubPlan, Grip, PlanInput } from '../plan/types';

/* ---------------------------------------------------------------- comparing */

/** One grip to try on the whole set: an item, or one size of a model with its core matched to each butt. */
export interface Candidate {
  /** Its items, joined: unique among the candidates of one comparison. */
  readonly key: string;
  readonly items: readonly Grip[];
  /** Whether the item follows each club's butt. */
  readonly matched: boolean;
}

/** Narrowing of the stock; undefined: not narrowed. */
export interface Filters {
  readonly profile?: Grip['profile'];
  readonly texture?: string | undefined;
  readonly coreInches?: number | undefined;
  /** Most that one may cost. */
  readonly mostPrice?: number | undefined;
  /** Only what stock can serve the whole set with (an item that nobody counted passes). */
  readonly onHandOnly?: boolean;
  /** Only these items, by name. */
  readonly items?: readonly string[] | undefined;
}

/** What a candidate is judged by; less is better in each. */
export const COUNTS = ['sizeError', 'largestChange', 'out', 'weight', 'massAdded', 'price', 'short'] as const;
export type Count = (typeof COUNTS)[number];

/** What a club of the set gets of a candidate. */
export interface TriedClub {
  readonly row: number;
  readonly item: string;
  readonly layers: number;
  /** Found from the club's target diameter, as a plan finds them. */
  readonly layersSolved: boolean;
}

/** A candidate on the whole set. */
export interface Tried {
  readonly candidate: Candidate;
  /** One for each club, in order. */
  readonly fits: readonly TriedClub[];
  readonly clubs: number;
  readonly fewestLayers: number;
  readonly mostLayers: number;
  /** Measured less wanted, inches, of the club where it is largest by size; undefined where no club has a target, or one that has cannot be gauged. */
  readonly sizeErrorInches: number | undefined;
  /** Mean of the errors by size. */
  readonly meanSizeErrorInches: number | undefined;
  /** Change of the reading with the grip alone, points, signed, of the club where it is largest by size. */
  readonly largestChangePoints: number | undefined;
  /** Mean of the changes by size. */
  readonly meanChangePoints: number | undefined;
  /** Clubs out of tolerance with the grip alone, among those that are held at something. */
  readonly clubsOut: number;
  readonly headGrams: number;
  readonly buttGrams: number;
  /** Whether what puts a club right could be worked out for every club that is out. */
  readonly weightKnown: boolean;
  /** Grip, tape and weight after, less grip and tape before, over the set. */
  readonly massAddedGrams: number | undefined;
  /** Of the grips alone; undefined where an item has none. */
  readonly price: number | undefined;
  /** Pieces that stock lacks; undefined where an item was never counted. */
  readonly piecesShort: number | undefined;
  /** No other candidate is at least as good on every count and better on one. */
  readonly unbeaten: boolean;
  /** Counts in which no other candidate is better, and at least one is worse. */
  readonly bestAt: readonly Count[];
}

/** Why a grip was not tried on the whole set. */
export type NotTried =
  | { readonly why: 'noMass'; readonly item: string }
  | { readonly why: 'noCore'; readonly item: string }
  /** more layers would be needed to fill its core than anyone fits */
  | { readonly why: 'loose'; readonly item: string; readonly club: string }
  | { readonly why: 'tight'; readonly item: string; readonly club: string }
  /** made for other clubs */
  | { readonly why: 'otherUse'; readonly item: string }
  | { readonly why: 'filtered'; readonly item: string };

export interface Comparison {
  /** Unbeaten ones first, by clubs out, then largest change, then size error. */
  readonly tried: readonly Tried[];
  readonly notTried: readonly NotTried[];
}

/* ---------------------------------------------------------------- solving */

export const AIMS = ['weight', 'deviation', 'price'] as const;
/** Least head and butt weight, least total points off with the grip alone, least price of the grips. */
export type Aim = (typeof AIMS)[number];

/** Which clubs may have a moulded size of their own; the model is one throughout. */
export const SIZES_DIFFER = ['never', 'byGroup', 'byClub'] as const;
export type SizesDiffer = (typeof SIZES_DIFFER)[number];

export interface SolveRequest {
  /** The set as it stands; a club's `newItem` and `layers` are what is solved for, its target diameter is kept to. */
  readonly input: PlanInput;
  /** Items that may be chosen; undefined: all of stock. */
  readonly shortlist: readonly string[] | undefined;
  /** Most important first; each at most once. */
  readonly aims: readonly Aim[];
  readonly sizesDiffer: SizesDiffer;
}

/** A limit that keeps a model from serving the set. */
export type Limit =
  /** no item of the model is made for this club */
  | { readonly limit: 'use'; readonly club: string }
  /** without this nobody can say how the item sits; no other item of the model could stand in */
  | { readonly limit: 'lacks'; readonly item: string; readonly lacks: 'mass' | 'core' | 'diameter' }
  /** no item of the model has a core that this butt can take */
  | { readonly limit: 'core'; readonly club: string; readonly buttInches: number }
  /** no layers bring any item near enough to the target */
  | {
      readonly limit: 'size';
      readonly club: string;
      readonly targetInches: number;
      readonly nearestInches: number;
      readonly item: string;
    }
  /** the club would need more weight than the shop's limit */
  | {
      readonly limit: 'weight';
      readonly club: string;
      readonly grams: number;
      readonly limitGrams: number;
      readonly item: string;
    }
  /** these items together cannot serve the clubs that need one of them */
  | { readonly limit: 'stock'; readonly items: readonly string[]; readonly needed: number; readonly onHand: number }
  /** what is needed to plan the club is not known */
  | { readonly limit: 'unknown'; readonly club: string };

/** Why a model cannot serve: the limit that bites first, at the club or items named. */
export interface CannotServe {
  readonly model: string;
  /** The moulded size of which the limit is said, where sizes may not differ and each size of the model has a limit of its own. */
  readonly size?: string | undefined;
  readonly limit: Limit;
}

export interface Choice {
  readonly row: number;
  readonly club: Club;
  readonly item: string;
  readonly layers: number;
  readonly plan: ClubPlan;
}

export interface Solved {
  readonly solved: true;
  readonly model: string;
  readonly choices: readonly Choice[];
  readonly weightGrams: number;
  readonly deviationPoints: number;
  readonly price: number | undefined;
  /** Models that can serve the set, and those that cannot with what keeps them. */
  readonly serving: number;
  readonly cannot: readonly CannotServe[];
}

export type Solution =
  | Solved
  | {
      readonly solved: false;
      /** `noStock`: nothing to choose from; `noClubs`; `limits`: see `cannot`. */
      readonly why: 'noStock' | 'noClubs' | 'limits';
      readonly cannot: readonly CannotServe[];
    };

/** Least-cost pairs of rows and columns of a matrix; a library's work, handed in. */
export type Assign = <T extends number | bigint>(
  costs: readonly (readonly T[])[],
) => readonly (readonly [number, number])[];

/** How far a long calculation has come. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}
