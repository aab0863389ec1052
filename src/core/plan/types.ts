/**
 * What goes into a plan and what comes out: numbers and codes only, no words.
 *
 * Lengths, diameters and positions in inches, masses in grams, readings in points above A0, inertia in kg·cm².
 * `undefined` is "not known".
 */
import type { Estimator } from '../fit/diameter';
import type { Issue } from '../result';

export type ClubKind = 'driver' | 'wood' | 'hybrid' | 'iron' | 'wedge' | 'putter' | 'junior';
export type Profile = 'round' | 'ribbed';
/** What a grip is made for: any club but putters, putters alone, or juniors' clubs alone. */
export type GripUse = 'clubs' | 'putters' | 'juniors';
export type Hold = 'asArrived' | 'target' | 'nothing';

/** One club of the set, as it arrived and as its owner wants it. */
export interface Club {
  /** Body row of the club in its table, from 1. */
  readonly row: number;
  /** Row of the sheet, for messages. */
  readonly sheetRow: number;
  /** Which bag it belongs to: only clubs of one bag are looked at together. */
  readonly job: string | undefined;
  readonly name: string;
  readonly kind: ClubKind | undefined;
  readonly lengthInches: number | undefined;
  readonly buttInches: number | undefined;
  readonly taperPerInch: number | undefined;
  /** Points above A0. */
  readonly reading: number | undefined;
  readonly massGrams: number | undefined;
  readonly oldItem: string | undefined;
  readonly oldGripGrams: number | undefined;
  /** Where `oldGripGrams` comes from. */
  readonly oldMassFrom: OldMassFrom;
  readonly oldLayers: number;
  readonly oldBalanceInches: number | undefined;
  readonly oldCapInches: number | undefined;
  readonly buttWeightGrams: number;
  readonly buttWeightLeaves: boolean;
  /** Points above A0, after stripping. */
  readonly bareReading: number | undefined;
  readonly bareGrams: number | undefined;
  readonly newItem: string | undefined;
  /** The client brings the new grip. */
  readonly ownGrip?: boolean | undefined;
  /** Mass of the very grip that goes on, as weighed; undefined: what Stock says of the item. */
  readonly newGripGrams?: number | undefined;
  /** undefined: solve from the target diameter, else none. */
  readonly layers: number | undefined;
  readonly lowerLayers: number;
  readonly targetInches: number | undefined;
  readonly hold: Hold | undefined;
  /** Points above A0. */
  readonly target: number | undefined;
  readonly tolerancePoints: number | undefined;
  /** Name of a way of weighting; undefined: the shop's usual one. */
  readonly way: string | undefined;
  readonly lengthChangeInches: number;
  /** Mass that an extension adds at the butt; negative: the piece cut off. */
  readonly plugGrams: number;
  /** Cells of this row that could not be read; the plan carries on without them. */
  readonly issues: readonly Issue[];
}

/** One grip of the stock list. */
export interface Grip {
  readonly item: string;
  readonly description: string | undefined;
  readonly coreInches: number | undefined;
  readonly profile: Profile | undefined;
  readonly gripGrams: number | undefined;
  readonly spreadGrams: number | undefined;
  readonly upperInches: number | undefined;
  readonly lowerInches: number | undefined;
  readonly lengthInches: number | undefined;
  readonly balanceInches: number | undefined;
  readonly capInches: number | undefined;
  /** undefined: not counted. */
  readonly onHand: number | undefined;
  /** Grips of one model differ in size and core only. */
  readonly model?: string | undefined;
  /** Moulded size, as the shop writes it. */
  readonly size?: string | undefined;
  readonly texture?: string | undefined;
  /** undefined: for any club. */
  readonly use?: GripUse | undefined;
  /** What the shop charges for one, in the sheet's currency. */
  readonly price?: number | undefined;
  /** Calliper readings of one that was fitted, and the seat it was fitted on. */
  readonly fittedUpperInches?: number | undefined;
  readonly fittedLowerInches?: number | undefined;
  /** undefined: a butt of its own core size. */
  readonly fittedButtInches?: number | undefined;
  readonly fittedLayers?: number | undefined;
}

/** One way of putting weight on a club. */
export interface Way {
  readonly name: string;
  readonly end: 'head' | 'butt';
  /** From that end. */
  readonly inches: number;
  readonly stepGrams: number;
  readonly gripOff: boolean;
  readonly limitGrams: number | undefined;
}

/** A tape: one strip laid lengthwise. */
export interface Tape {
  readonly stripInches: number;
  readonly gsm: number;
  readonly thicknessInches: number;
}

/** How the shop works. */
export interface ShopSettings {
  readonly tolerancePoints: number;
  readonly putRight: 'outOfTolerance' | 'always';
  readonly headWay: string;
  readonly buttWay: string;
  readonly headLimitGrams: number;
  readonly leastGrams: number;
  readonly tapedInches: number;
  readonly buildUp: Tape;
  readonly twoWay: Tape;
  readonly twoWayUnderNew: boolean;
  readonly capInches: number;
  readonly growth: Estimator;
  /** How far from a target diameter still counts as the right size. */
  readonly sizeToleranceInches: number;
  /** More layers than this are not built up where a grip is chosen: another size is. */
  readonly mostLayers: number;
  readonly lowerTapeStartInches: number;
  readonly oldSpreadGrams: number;
  readonly newSpreadGrams: number;
  /** Where a grip balances that nobody tried, as a part of its length. */
  readonly gripBalanceRatio: number;
  readonly balanceSpreadInches: number;
  readonly readingSpreadPoints: number;
  /** A fraction: 0.1 is ten per cent. */
  readonly tapeSpread: number;
  readonly competition46: boolean;
}

export interface PlanInput {
  readonly clubs: readonly Club[];
  readonly stock: readonly Grip[];
  readonly ways: readonly Way[];
  readonly settings: ShopSettings;
}

/**
 * Where an old grip's mass comes from: a catalogue, a scale, or what another club's grip of the same model weighed when that club
 * was stripped. One model scatters, so a mass that is like another's is less sure than one that was weighed.
 */
export type OldMassFrom = 'estimate' | 'weighed' | 'alike';

/** How the old grip is known; bare: nothing about it is needed. */
export type Basis = OldMassFrom | 'bare';

/**
 * How the finished reading stands to what is held: within tolerance by at least its ±, likely within, cannot tell, or outside by
 * more than its ±. The ± adds independent errors by their squares, so it is less than all of them together.
 * `notHeld` where nothing is held; `unknown` where no reading can be predicted.
 */
export type Verdict = 'within' | 'likely' | 'cannotTell' | 'out' | 'notHeld' | 'unknown';

/**
 * Everything that moves the reading from as arrived to gripped, in points, each part on its own; the parts add up to `total`.
 * From a bare club `grip` is what is left of the measured change when the other parts are taken out.
 */
export interface Shift {
  readonly grip: number;
  readonly tape: number;
  readonly twoWay: number;
  readonly cap: number;
  readonly length: number;
  readonly buttWeight: number;
  readonly total: number;
}

/**
 * What the ± of a gap is made of, in points: how far each error may move it, its lever counted in. The errors are independent, so the
 * ± is the root of the sum of their squares. Nothing is below 0; 0 where an error does not count.
 */
export interface SpreadParts {
  readonly oldMass: number;
  readonly oldBalance: number;
  readonly newMass: number;
  readonly newBalance: number;
  /** Build-up, old and new. */
  readonly tape: number;
  /** A cap that nobody measured. */
  readonly cap: number;
  /** A length change, which is measured as it is made. */
  readonly length: number;
  /** A body that nobody weighed. */
  readonly body: number;
  /** The balance scale. */
  readonly reading: number;
}

/** An outside diameter with its range between the two estimators. */
export interface Diameter {
  /** By the estimator the shop chose. */
  readonly inches: number;
  readonly lowInches: number;
  readonly highInches: number;
}

/** What puts the reading right. */
export interface Remedy {
  /** Exact grams for the whole gap. */
  readonly exactGrams: number;
  /** What the bench adds: a multiple of the way's step; 0 when nothing is worth adding. */
  readonly grams: number;
  readonly way: string;
  readonly end: 'head' | 'butt';
  /** Position from the butt. */
  readonly inches: number;
  readonly gripOff: boolean;
  /** Why nothing is added, when `grams` is 0. */
  readonly none: 'withinTolerance' | 'belowLeast' | undefined;
  readonly overLimit: boolean;
}

/** Something about a club that a person must know or decide; sentences in `src/words/notes.ts`. */
export type Note =
  | { readonly note: 'issue'; readonly issue: Issue }
  | { readonly note: 'noGrip' }
  /** the client brings the grip, and nothing is known of it */
  | { readonly note: 'ownGrip' }
  | { readonly note: 'readingUnknown' }
  /** stripped and held as it was, but nobody read it as it arrived */
  | { readonly note: 'heldUnknown' }
  | { readonly note: 'massUnknown' }
  /** what the club weighs does not fit what sits on it, or what it weighs bare */
  | { readonly note: 'massContradicts' }
  | { readonly note: 'oldGripUnknown' }
  | { readonly note: 'bareMassUnknown' }
  | { readonly note: 'lengthUnknown' }
  | { readonly note: 'bareContradicts' }
  | { readonly note: 'targetUnknown' }
  | { readonly note: 'looseCore'; readonly coreInches: number; readonly buttInches: number; readonly layers: number }
  | { readonly note: 'tightCore'; readonly coreInches: number; readonly buttInches: number }
  | { readonly note: 'overTarget'; readonly inches: number; readonly targetInches: number; readonly layers: number }
  | { readonly note: 'tooManyLayers'; readonly targetInches: number; readonly most: number }
  /** `targetInches`: a size was asked for, and how many layers it takes cannot be said. */
  | { readonly note: 'sizeUnknown'; readonly targetInches?: number }
  | { readonly note: 'overLimit'; readonly grams: number; readonly limitGrams: number }
  | { readonly note: 'offScale'; readonly points: number }
  | { readonly note: 'mixedProfiles'; readonly group: 'woods' | 'irons'; readonly odd: Profile }
  | { readonly note: 'stockShort'; readonly item: string; readonly needed: number; readonly onHand: number }
  | { readonly note: 'duplicateClub'; readonly rows: readonly number[] }
  | { readonly note: 'taught'; readonly grams: number; readonly balanceInches: number };

/** A rule that the finished club breaks; sentences in `src/words/notes.ts`. */
export type RuleBreach =
  | { readonly rule: 'crossSection'; readonly inches: number }
  | { readonly rule: 'gripLength'; readonly inches: number }
  | { readonly rule: 'clubShort'; readonly inches: number }
  | { readonly rule: 'clubLong'; readonly inches: number }
  | { readonly rule: 'clubLong46'; readonly inches: number }
  | { readonly rule: 'reverseTaper'; readonly upperInches: number; readonly lowerInches: number };

/** What a club will be. */
export interface ClubPlan {
  readonly row: number;
  readonly name: string;
  readonly kind: ClubKind | undefined;
  readonly item: string | undefined;
  /** The client brings the new grip; where Stock lists none of that name, `grip` is undefined and it is fitted all the same. */
  readonly ownGrip?: boolean | undefined;
  readonly grip: Grip | undefined;
  readonly basis: Basis | undefined;
  readonly layers: number;
  readonly layersSolved: boolean;
  readonly lowerLayers: number;
  readonly hold: Hold;
  /** What the club must read, if anything. */
  readonly heldReading: number | undefined;
  readonly tolerancePoints: number;
  readonly upper: Diameter | undefined;
  readonly lower: Diameter | undefined;
  readonly growth: Estimator;
  /** Grip and build-up tape as fitted. */
  readonly fittedBeforeGrams: number | undefined;
  readonly fittedAfterGrams: number | undefined;
  readonly fittedChangeGrams: number | undefined;
  readonly readingBefore: number | undefined;
  readonly shift: Shift | undefined;
  readonly readingGripped: number | undefined;
  /** Points still missing to what is held (negative: too many), with the grip alone. */
  readonly gapPoints: number | undefined;
  /** ± of the gap, points. */
  readonly spreadPoints: number | undefined;
  /** What that ± is made of; undefined where it is. */
  readonly spreadParts: SpreadParts | undefined;
  /** How the club stands with the grip alone. */
  readonly verdict: Verdict;
  readonly remedy: Remedy | undefined;
  readonly readingAfter: number | undefined;
  /** How it stands once the remedy is in. */
  readonly verdictAfter: Verdict;
  readonly massBeforeGrams: number | undefined;
  readonly massAfterGrams: number | undefined;
  readonly lengthAfterInches: number | undefined;
  readonly inertiaChange: number | undefined;
  /** Build-up tape used, all layers. */
  readonly tapeInches: number;
  /** Two-way strip used. */
  readonly twoWayInches: number;
  readonly breaches: readonly RuleBreach[];
  readonly notes: readonly Note[];
}

/** What stripping one club taught about its old grip; offered for others with the same one. */
export interface Lesson {
  readonly row: number;
  readonly club: string;
  readonly oldItem: string | undefined;
  /** Everything that came off: old grip, tape, and a butt weight that leaves is taken out. */
  readonly removedGrams: number;
  /** The old grip alone, build-up and two-way strip taken out. */
  readonly gripGrams: number;
  /** Where the old grip balanced, from its cap. */
  readonly balanceInches: number;
  /** Other clubs (rows) that wear the same old grip on an estimate. */
  readonly appliesTo: readonly number[];
}

export interface SetPlan {
  readonly clubs: readonly ClubPlan[];
  readonly lessons: readonly Lesson[];
  /** Grips needed by item. */
  readonly needed: ReadonlyMap<string, number>;
}
