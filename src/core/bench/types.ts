/**
 * What a bench does, club by club, and what it finds when the clubs are done. Masses in grams, lengths and positions in inches from the butt,
 * readings in points above A0, solvent in millilitres.
 */
import type { ClubPlan, ClubKind, Hold, RuleBreach, Verdict } from '../plan/types';
import type { Rate } from '../quote/types';
import type { Issue } from '../result';

/** How an old grip comes off: whole, so that it can go on again, or slit away; `none` where the club came without. */
export type TakeOff = 'salvage' | 'cutOff' | 'none';

/** What makes the two-way tape slip while the grip slides on. */
export type Activator = 'solvent' | 'water' | 'air';

/** What the solvent is; another one where the shop does not say. */
export type Solvent = 'mineralSpirits' | 'isopropylAlcohol';

/** Where the rib of a ribbed grip goes, as on a clock seen from the butt with the face square; under is 6 o’clock. */
export type RibPlace = 'under' | 'five' | 'seven';

/** How the shop, or the job, works at the bench. */
export interface BenchHabits {
  readonly activator: Activator;
  readonly solvent: Solvent | undefined;
  /** For sliding one grip on. */
  readonly solventMl: number;
  readonly takeOff: TakeOff;
  readonly salvageWith: 'air' | 'solvent';
  /** For taking one grip off whole. */
  readonly salvageMl: number;
  /** Ways of weighting that are lead; undefined: those that have lead in their name. */
  readonly leadWays?: readonly string[] | undefined;
}

/** What the plan does not say about one club. */
export interface ClubBench {
  readonly takeOff?: TakeOff | undefined;
  /** The client brings the grip. */
  readonly ownGrip?: boolean | undefined;
  readonly logo?: 'up' | 'down' | undefined;
  readonly hand?: 'left' | 'right' | undefined;
  /** undefined: it may be either, so what is true of graphite is told. */
  readonly shaft?: 'graphite' | 'steel' | undefined;
  /** Where a rib is wanted; `none`: a round grip is. undefined: under, where the grip has one. */
  readonly rib?: RibPlace | 'none' | undefined;
  /** What is written on the tag tied to it. */
  readonly tag?: string | undefined;
  /** What was seen of it when it came in. */
  readonly damage?: string | undefined;
}

/** Of a way of weighting, the minutes for one club. */
export interface TimedWay {
  readonly name: string;
  readonly minutes?: number | undefined;
}

export interface BenchAsk {
  readonly habits: BenchHabits;
  /** By the club's row. */
  readonly clubs?: ReadonlyMap<number, ClubBench> | undefined;
  /** For their minutes; prices do not matter here. */
  readonly rates: readonly Rate[];
  readonly ways: readonly TimedWay[];
  /** Rows of clubs that are done once more, after all were done; undefined: all clubs, for the first time. */
  readonly again?: ReadonlySet<number> | undefined;
}

/** What is to be measured, and how far the truth may be from it when all is done as planned. */
export interface Predicted {
  readonly value: number;
  readonly spread: number;
}

/** undefined: too little is known. */
export interface Expected {
  readonly bareReading: Predicted | undefined;
  readonly bareGrams: Predicted | undefined;
  readonly reading: Predicted | undefined;
  readonly massGrams: Predicted | undefined;
}

/** Why a club is the pilot. */
export type PilotWhy =
  /** it was stripped already and taught what its old grip was, so its prediction is the surest */
  | 'taught'
  /** it was read bare already */
  | 'stripped'
  /** its reading changes as most of the set's do, by the median, among the clubs with the grip that most get */
  | 'median'
  /** no change is known: the first of those with the grip that most get */
  | 'first'
  /** there is no other */
  | 'only';

export interface Pilot {
  readonly row: number;
  readonly why: PilotWhy;
}

export interface TicketTape {
  readonly layers: number;
  /** Length of each strip, which is the taped length. */
  readonly stripInches: number;
  readonly lowerLayers: number;
  /** Where lower-hand strips start and how long each is; undefined without them. */
  readonly lower: { readonly startInches: number; readonly stripInches: number } | undefined;
  /** All build-up strips together. */
  readonly totalInches: number;
  /** The two-way strip; 0: none. */
  readonly twoWayInches: number;
}

export interface TicketWeight {
  readonly grams: number;
  readonly way: string;
  readonly end: 'head' | 'butt';
  readonly inches: number;
  /** `gripOff`: it goes in before the grip does. */
  /** `onAlready`: the club is done again, and has it from before. */
  readonly when: 'gripOff' | 'gripOn' | 'onAlready';
  readonly overLimit: boolean;
  readonly lead: boolean;
}

/** One club at the bench. */
export interface TicketClub {
  /** From 1, in bench order. */
  readonly order: number;
  /** The client brings the grip. */
  readonly ownGrip: boolean;
  readonly row: number;
  readonly name: string;
  readonly kind: ClubKind | undefined;
  readonly pilot: boolean;
  readonly item: string;
  readonly takeOff: TakeOff;
  /** A butt weight that goes with the old grip, and one that stays. */
  readonly buttWeight: { readonly grams: number; readonly leaves: boolean } | undefined;
  readonly tape: TicketTape;
  readonly align: {
    /** Where the rib goes; `unwanted`: the grip has one that nobody asked for, `lacking`: it has none and one is asked for. */
    readonly rib: RibPlace | 'unwanted' | 'lacking' | undefined;
    readonly logo: 'up' | 'down' | undefined;
    readonly hand: 'left' | 'right' | undefined;
  };
  readonly shaft: 'graphite' | 'steel' | undefined;
  readonly tag: string | undefined;
  readonly damage: string | undefined;
  /** Longer or, below 0, shorter at the butt, before the tape goes on. */
  readonly lengthChangeInches: number;
  readonly plugGrams: number;
  readonly lengthAfterInches: number | undefined;
  readonly weight: TicketWeight | undefined;
  readonly hold: Hold;
  readonly heldReading: number | undefined;
  readonly tolerancePoints: number;
  readonly expected: Expected;
  /** What nobody has measured yet. */
  readonly measure: { readonly before: boolean; readonly bare: boolean };
  readonly solventMl: number;
  readonly minutes: number;
  readonly breaches: readonly RuleBreach[];
}

/** What one job uses up, grips apart. */
export interface Consumables {
  readonly buildUpInches: number;
  readonly twoWayInches: number;
  readonly solventMl: number;
  readonly weights: readonly { readonly way: string; readonly grams: number; readonly clubs: number }[];
}

export interface BenchTicket {
  readonly habits: BenchHabits;
  /** Clubs of a closed job done once more. */
  readonly isAgain: boolean;
  readonly clubs: readonly TicketClub[];
  readonly pilot: Pilot | undefined;
  /** Clubs that no grip was chosen for. */
  readonly left: readonly { readonly row: number; readonly name: string }[];
  /** Clubs whose grip cannot be planned, and why: nothing can be said of what is done to them. */
  readonly unplanned: readonly { readonly row: number; readonly name: string; readonly issues: readonly Issue[] }[];
  readonly grips: readonly { readonly item: string; readonly pieces: number }[];
  readonly consumables: Consumables;
  readonly minutes: {
    readonly clubs: number;
    /** What is done once a job. */
    readonly job: number;
    readonly total: number;
    /** Works whose minutes nobody gave; they count as none. */
    readonly missing: readonly string[];
  };
}

/** A danger that applies; sentences in `src/words/bench.ts`. */
export type CautionCode = 'solvent' | 'air' | 'hookKnife' | 'graphiteDust' | 'lead';

export interface Caution {
  readonly code: CautionCode;
  /** Clubs it applies to, in bench order. */
  readonly clubs: readonly string[];
  readonly solvent?: Solvent | undefined;
}

/** One row of a check-in, as typed. */
export interface MeasuredClub {
  readonly club: string;
  readonly sheetRow?: number | undefined;
  readonly bareReading?: number | undefined;
  readonly bareGrams?: number | undefined;
  readonly reading?: number | undefined;
  readonly massGrams?: number | undefined;
  /** All the weight that is on for its reading, where that is not as planned. */
  readonly onGrams?: number | undefined;
  /** Where it sits, from the butt, and by which way of weighting. */
  readonly onInches?: number | undefined;
  readonly onWay?: string | undefined;
  /** How much of that this time put on; undefined: all of it, unless the club is done once more, which puts none on. */
  readonly newGrams?: number | undefined;
  /** Grip and layers as they were fitted, where a plan made since may say otherwise. */
  readonly item?: string | undefined;
  readonly layers?: number | undefined;
  /** It is done once more. */
  readonly isAgain?: boolean | undefined;
  readonly decision?: 'accept' | 'waive' | undefined;
  readonly reason?: string | undefined;
}

/** Measured less predicted. */
export interface Off {
  readonly by: number;
  readonly spread: number;
  /** More than the ± explains. */
  readonly surprising: boolean;
}

/** What to do next, in this order; sentences in `src/words/bench.ts`. */
export type NextStep =
  | { readonly step: 'measure'; readonly reading: boolean; readonly mass: boolean }
  /** bare it is not what was thought: its old grip was another, so plan it again from bare */
  | { readonly step: 'replan' }
  /** reads heavier at the head than its mass explains: the club is longer by so much, the grip does not sit home */
  | { readonly step: 'seatGrip'; readonly inches: number; readonly points: number }
  /** reads lighter at the head than its mass explains */
  | { readonly step: 'readAgain'; readonly points: number }
  /** mass and reading are off as if grip or tape weighed so much more */
  | { readonly step: 'checkGrip'; readonly grams: number }
  /** mass and reading are off as if the weight at the head weighed so much more */
  | { readonly step: 'checkWeight'; readonly grams: number }
  /** mass is off by so much and the reading does not say where */
  | { readonly step: 'weighAgain'; readonly grams: number }
  | {
      readonly step: 'add';
      readonly grams: number;
      readonly way: string;
      readonly end: 'head' | 'butt';
      readonly inches: number;
    }
  | { readonly step: 'takeAway'; readonly grams: number; readonly way: string; readonly inches: number }
  /** what would put it right goes in only while the grip is off */
  | { readonly step: 'gripOffNeeded'; readonly grams: number; readonly way: string; readonly takeAway: boolean };

export interface CheckedClub {
  readonly row: number;
  readonly name: string;
  readonly measured: MeasuredClub | undefined;
  /** What is on it, as the bench said, else as planned. */
  readonly fitted: Pick<ClubPlan, 'item' | 'layers' | 'lowerLayers' | 'remedy'>;
  /** From the bare club where it was measured, else as planned. */
  readonly expected: Expected;
  readonly off: {
    readonly bareReading: Off | undefined;
    readonly bareGrams: Off | undefined;
    readonly reading: Off | undefined;
    readonly massGrams: Off | undefined;
  };
  readonly hold: Hold;
  readonly heldReading: number | undefined;
  readonly tolerancePoints: number;
  /** Points still missing to what is held; negative: too many. */
  readonly gapPoints: number | undefined;
  /** ± of measuring that gap. */
  readonly gapSpreadPoints: number | undefined;
  readonly verdict: Verdict;
  readonly next: readonly NextStep[];
  readonly state: 'open' | 'accepted' | 'waived';
  readonly reason: string | undefined;
  readonly issues: readonly Issue[];
}

export interface CheckIn {
  readonly clubs: readonly CheckedClub[];
  readonly pilot: Pilot | undefined;
  /** The pilot is still open: the others wait. */
  readonly waitForPilot: boolean;
  /** Everything wrong with what was typed, also of clubs that are not planned. */
  readonly issues: readonly Issue[];
}

/** Whether a job may be closed, and what stands against it. */
export interface Closing {
  readonly closes: boolean;
  readonly open: readonly { readonly row: number; readonly name: string }[];
  readonly issues: readonly Issue[];
}
