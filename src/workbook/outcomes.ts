/**
 * What is asked of the jobs done on a workbook, and every way in which they can end. Data only: `src/words/outcomes.ts`
 * says it in sentences.
 */
import type { Issue } from '../core/index';
import type { Choices } from './choices';
import type { Block, PortError, Reverted } from './port';

/** The clubs concerned: a whole job, or body rows of Clubs counted from 1. */
export type Scope = { readonly job: string } | { readonly rows: readonly number[] };

/** A plan to be written. */
export interface FillRequest {
  readonly scope: Scope;
  readonly choices: Choices;
  /** A sheet of its own, or the sheet and cell the person has open. */
  readonly where: 'planSheet' | 'openSheet';
  /** Where the person is, if the caller knows; asked of the port if `where` needs it. */
  readonly at?: Block;
  /** What `occupied` told the person, who agreed that it may go: this and nothing else. */
  readonly agreed?: InTheWay;
  /** A formula that follows the tables, or values that stay as they are. */
  readonly as: 'live' | 'values';
}

/** Why a live plan was asked for and values were written. */
export type WhyValues = 'asked' | 'selection' | 'large' | 'noSpill';

/** Ends in which nothing was written; shared by all jobs. */
export type NotDone =
  /** the port refused or failed; its code says what state the workbook is in */
  | { readonly done: false; readonly reason: 'port'; readonly error: PortError }
  | { readonly done: false; readonly reason: 'tableMissing'; readonly table: string }
  | {
      readonly done: false;
      readonly reason: 'columnMissing';
      readonly table: string;
      readonly headers: readonly string[];
    };

/** What stands where something is to be written, so that a yes to writing over it covers that and no more. */
export interface InTheWay {
  /** Where the plan is to stand; null where no plan is to be placed. */
  readonly place: Block | null;
  /** The cells, one block each. */
  readonly cells: readonly Block[];
}

/** Cells hold what a person put there; `cells` names them (`Plan 1042!B7`, at most 200). */
export interface Occupied {
  readonly done: false;
  readonly reason: 'occupied';
  readonly cells: readonly string[];
  readonly inTheWay: InTheWay;
}

/** Clubs no longer stand where they stood when they were chosen. */
export interface ClubsMoved {
  readonly done: false;
  readonly reason: 'clubsMoved';
}

export interface Filled {
  readonly done: true;
  readonly sheet: string;
  readonly block: Block;
  readonly clubs: number;
  /** Cells of Clubs that got another value. */
  readonly choicesWritten: number;
  readonly as: 'live' | 'values';
  readonly whyValues: WhyValues | null;
}

export type FillDone =
  | Filled
  | NotDone
  | Occupied
  | ClubsMoved
  /** the scope holds no club */
  | { readonly done: false; readonly reason: 'noClubs' }
  /** the tables cannot be planned from */
  | { readonly done: false; readonly reason: 'notPlanned'; readonly issue: Issue }
  /** the plan would run over the edge of the sheet */
  | { readonly done: false; readonly reason: 'noRoom' };

/** A cell of a plan's formula that shows an error once it was filled. */
export interface Amiss {
  readonly cell: string;
  readonly error: string;
  /** What the function says of it, where the host can tell. */
  readonly says: string | null;
  /** It is no error: the function has not answered yet. */
  readonly unanswered: boolean;
}

export type FreezeDone =
  | { readonly done: true; readonly sheet: string; readonly block: Block; readonly cells: number }
  | NotDone
  /** the place holds no plan any more */
  | { readonly done: false; readonly reason: 'planGone' }
  /** it holds values already */
  | { readonly done: false; readonly reason: 'alreadyValues' }
  /** the formula shows an error (`#SPILL!`, `#NAME?`) instead of a plan */
  | { readonly done: false; readonly reason: 'notCalculated'; readonly cell: string; readonly error: string };

export type UndoDone =
  | {
      readonly done: true;
      readonly reverted: Reverted;
      /** What would be taken back next; null: nothing is left. */
      readonly next: string | null;
      /** It had not been written to its end. */
      readonly begun?: true;
    }
  | NotDone
  | { readonly done: false; readonly reason: 'nothingToUndo' }
  /** it goes back as a whole or not at all, and these cells and rows of it were changed since */
  | {
      readonly done: false;
      readonly reason: 'changedSince';
      readonly label: string;
      readonly cells: readonly string[];
    };

export type LessonDone =
  | {
      readonly done: true;
      /** Rows of Clubs that got the lesson. */
      readonly rows: readonly number[];
      /** Rows left alone, since their old grip was weighed already. */
      readonly weighedAlready: readonly number[];
      readonly cells: number;
    }
  | NotDone
  | Occupied
  | ClubsMoved;

/** Measures of a customer's hands, inches; null leaves what Jobs says. */
export interface HandMeasures {
  readonly job: string;
  readonly handLength: number | null;
  readonly fingerLength: number | null;
  readonly lowerHandLength: number | null;
  readonly lowerFingerLength: number | null;
}

export type HandDone =
  /** `cells`: how many got another value */
  | { readonly done: true; readonly job: string; readonly cells: number }
  | NotDone
  | Occupied
  /** Jobs has no row for that job */
  | { readonly done: false; readonly reason: 'jobNotListed'; readonly job: string };

export type CompareDone =
  | {
      readonly done: true;
      readonly sheet: string;
      readonly block: Block;
      /** Grips that were tried, and those among them that no other beats. */
      readonly grips: number;
      readonly unbeaten: number;
    }
  | NotDone
  | Occupied
  /** the scope holds no club */
  | { readonly done: false; readonly reason: 'noClubs' }
  /** no grip was tried, so there is nothing to write */
  | { readonly done: false; readonly reason: 'nothingTried' }
  /** what the comparison rests on was changed since; `tables` names where */
  | { readonly done: false; readonly reason: 'outOfDate'; readonly tables: readonly string[] }
  /** the page would run over the edge of the sheet */
  | { readonly done: false; readonly reason: 'noRoom' };

/** Why a table was not made. */
export type Blocked =
  /** a table of that name has other headings; `headers` are the ones it lacks */
  | { readonly table: string; readonly why: 'otherTable'; readonly headers: readonly string[] }
  /** a sheet of that name holds something else */
  | { readonly table: string; readonly why: 'sheetInUse'; readonly cells: readonly string[] }
  /** a sheet of that name is protected */
  | { readonly table: string; readonly why: 'protected' };

export type SetUpDone =
  | {
      readonly done: true;
      readonly made: readonly string[];
      readonly kept: readonly string[];
      readonly blocked: readonly Blocked[];
    }
  | { readonly done: false; readonly reason: 'port'; readonly error: PortError };
