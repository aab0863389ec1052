/** Every way in which a job on the shelves can end. Data only: `src/words/stockOutcomes.ts` says it in sentences. */
import type { CannotTake, Issue, Lack, Movement, Renamed, Share, Shelf } from '../core/index';
import type { NotDone, Occupied } from './outcomes';
import type { Block } from './port';

/** A table in which something has to be mended first. */
type Unreadable = { readonly done: false; readonly reason: 'unreadable'; readonly issue: Issue };

export type ReserveDone =
  /** `movements`: the rows written, none where all was so already; `lacks`: what the jobs do not get */
  | {
      readonly done: true;
      readonly jobs: readonly string[];
      readonly movements: readonly Movement[];
      readonly lacks: readonly (Lack & { readonly shelf: Shelf; readonly item: string })[];
      /** What is wrong on the shelves and in Clubs: a grip that Stock does not list, for one. */
      readonly problems: readonly Issue[];
    }
  | NotDone
  | Occupied
  | Unreadable
  /** none of these jobs is open and has clubs */
  | { readonly done: false; readonly reason: 'noOpenJob'; readonly jobs: readonly string[] };

export type ReleaseDone =
  | { readonly done: true; readonly jobs: readonly string[]; readonly movements: readonly Movement[] }
  | NotDone
  | Occupied
  | Unreadable;

export type UseDone =
  /** `movements`: the rows written, none where it was taken already */
  | {
      readonly done: true;
      readonly job: string;
      readonly movements: readonly Movement[];
      /** Clubs whose piece was taken before, when they were called otherwise. */
      readonly renamed: readonly Renamed[];
    }
  | NotDone
  | Occupied
  | Unreadable
  | { readonly done: false; readonly reason: 'noClubs' }
  | { readonly done: false; readonly reason: 'cannotTake'; readonly cannot: CannotTake };

export type MoveDone =
  | {
      readonly done: true;
      /** All of it, whichever orders it counts for. */
      readonly movement: Movement;
      /** undefined: it is not counted */
      readonly onHand: number | undefined;
      /** The orders that what came counts for. */
      readonly shares: readonly Share[];
    }
  | NotDone
  | Occupied
  | Unreadable;

export type PlaceDone =
  /** `order` null: there was nothing to order */
  | {
      readonly done: true;
      readonly order: string | null;
      readonly supplier: string;
      readonly movements: readonly Movement[];
    }
  | NotDone
  | Occupied
  | Unreadable
  /** the tables ask for another order by now than was shown */
  | { readonly done: false; readonly reason: 'orderChanged'; readonly supplier: string };

export type OrderDone =
  /** `movements`: the rows written, none where nothing was to come any more */
  | { readonly done: true; readonly order: string; readonly movements: readonly Movement[] }
  | NotDone
  | Occupied
  | Unreadable;

export type StockPageDone =
  /** `lines`: to be ordered, or to be picked; `onOrder`: lines of orders that are still to come */
  | {
      readonly done: true;
      readonly sheet: string;
      readonly block: Block;
      readonly lines: number;
      readonly onOrder?: number;
    }
  | NotDone
  | Occupied
  | Unreadable
  /** nothing is to be ordered, or to be picked */
  | { readonly done: false; readonly reason: 'nothing' }
  | { readonly done: false; readonly reason: 'noRoom' };
