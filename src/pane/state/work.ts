/** What the pane asks of the workbook: one call for each thing a person can do. `workOn.ts` does it through a port. */
import type { Issue, Lesson, Progress, Result, SizeGuideRow } from '../../core/index';
import type { Choices } from '../../workbook/choices';
import type { Adding } from '../../workbook/addColumns';
import type { InTheWay } from '../../workbook/outcomes';
import type { Planned } from '../../workbook/planTables';
import type { WorkbookPort } from '../../workbook/port';
import type { WorkbookAge } from '../../workbook/shop';
import type { Deed, Going } from './deed';

/** One job of the Jobs table, or one that only Clubs names. */
export interface JobSeen {
  readonly job: string;
  readonly customer: string;
  readonly done: boolean;
  /** Body rows of Clubs that belong to it, from 1. */
  readonly rows: readonly number[];
  readonly hand: HandSeen;
}

/** What Jobs keeps of a customer's hands, inches; the lower hand's are blank where both are alike. */
export interface HandSeen {
  readonly handLength: number | undefined;
  readonly fingerLength: number | undefined;
  readonly lowerHandLength: number | undefined;
  readonly lowerFingerLength: number | undefined;
}

/** One grip of Stock as the list of choices shows it. */
export interface GripSeen {
  readonly item: string;
  readonly description: string;
  readonly size: string;
  readonly coreInches: number | undefined;
  readonly gripGrams: number | undefined;
  readonly onHand: number | undefined;
}

/** The shop's workbook at one look. */
export interface ShopSeen<Shop = unknown> {
  /** What the workbook jobs take; the pane only hands it back. */
  readonly shop: Shop;
  /** Tables of ours that are not there; every one of them: nothing was set up yet. */
  readonly missing: readonly string[];
  readonly setUp: boolean;
  /** Which version set it up, against this one. */
  readonly age: WorkbookAge;
  /** Why a table that is there cannot be used as it stands, the most needed table first. */
  readonly faults: readonly Issue[];
  /** Tables for which plain cells stand below which more rows follow, and how many: these are not read. */
  readonly goingOn: readonly (readonly [table: string, rows: number])[];
  readonly jobs: readonly JobSeen[];
  readonly grips: readonly GripSeen[];
  readonly ways: readonly string[];
  /** Job and name of the club in each body row of Clubs, to know it again when rows move. */
  readonly clubKeys: ReadonlyMap<number, string>;
  /** Body rows of Clubs that hold a putter. */
  readonly putterRows: readonly number[];
  readonly guide: readonly SizeGuideRow[];
  /** What is wrong with the size guide. */
  readonly guideProblems: readonly Issue[];
  /** What *Undo* would take back; null: nothing; undefined where that is not known, as of what an older workbook kept. */
  readonly undo?: string | null | undefined;
  /** The list that stands for Clubs, '' for our own table, where no heading of it stands for Job: its clubs belong to none. */
  readonly jobless?: string | undefined;
  /** Clubs that have a name, over all jobs. */
  readonly clubCount: number;
}

export type Who = { readonly by: 'job'; readonly job: string } | { readonly by: 'selection' };
export type Where = 'planSheet' | 'openSheet';

export interface FillAsked {
  readonly who: Who;
  /** Body rows of Clubs that are planned. */
  readonly rows: readonly number[];
  readonly choices: Choices;
  readonly where: Where;
  /** The person saw what stands there and said to write over it; null where nothing was asked yet. */
  readonly agreed: Agreed | null;
}

/** What a person was asked about and agreed to. */
export interface Agreed {
  /** The workbook in which the rows were chosen. */
  readonly seen: ShopSeen;
  /** The place and the cells that were named: no others are written over. */
  readonly over: InTheWay;
}

/** What is done once the person agrees to write over what stands there; the agreement is in it. */
export type Again =
  | { readonly task: 'fill'; readonly asked: FillAsked }
  | { readonly task: 'deed'; readonly deed: Deed; readonly agreed: Agreed | null }
  | { readonly task: 'lesson'; readonly lesson: Lesson; readonly agreed: Agreed | null };

/** What came of something asked: what to say, and what may be asked next. */
export type Outcome =
  | {
      readonly kind: 'done';
      readonly title: string;
      readonly text: string;
      readonly list: readonly string[];
      /** Something was left or blocked: worth a second look. */
      readonly partly: boolean;
    }
  | { readonly kind: 'occupied'; readonly cells: readonly string[]; readonly again: Again }
  | {
      readonly kind: 'failed';
      readonly title: string;
      readonly text: string;
      readonly list: readonly string[];
      /** Said of a look at the workbook: what the next look that succeeds makes untrue. `lists`: a list of the shop's is not as it was. */
      readonly look?: 'lists' | 'other';
      /** What may be done about it with one button. */
      readonly mend?: Mend;
    };

/** Columns that are lacking may be added, and what was asked is done then. */
export interface Mend {
  /** On the button. */
  readonly says: string;
  readonly adding: Adding;
  readonly again: Exclude<Again, { readonly task: 'deed' }>;
}

/** A look at the workbook, or why there was none. */
export type Look =
  { readonly shop: ShopSeen; readonly failed?: undefined } | { readonly shop?: undefined; readonly failed: Outcome };

/** Nothing here throws: what fails comes back as an outcome with its sentence. */
export interface Work {
  read(): Promise<Look>;
  /** Body rows of Clubs that the selection touches; null when it lies elsewhere. */
  selectedRows(seen: ShopSeen): Promise<readonly number[] | null>;
  /** In steps: of a bag it is there at once, of thousands of clubs not. */
  preview(seen: ShopSeen, who: Who, rows: readonly number[], choices: Choices): Generator<Progress, Result<Planned>>;
  isReading(text: string): boolean;
  /** Name of the sheet that *Fill plan* makes or fills again. */
  planSheetOf(seen: ShopSeen, who: Who, rows: readonly number[]): string;
  setUp(): Promise<Outcome>;
  fill(seen: ShopSeen, asked: FillAsked): Promise<Outcome>;
  addColumns(adding: Adding): Promise<Outcome>;
  freeze(seen: ShopSeen, who: Who, rows: readonly number[]): Promise<Outcome>;
  /** Does what a screen brought along. */
  deed(seen: ShopSeen | null, deed: Deed, agreed: Agreed | null, going: Going): Promise<Outcome>;
  /** Reads for a screen what no look shows; what the port throws is thrown. */
  inspect<T>(reading: (port: WorkbookPort) => Promise<T>): Promise<T>;
  undo(): Promise<Outcome>;
  useLesson(seen: ShopSeen, lesson: Lesson, agreed: Agreed | null): Promise<Outcome>;
  watch(changed: () => void): () => void;
}
