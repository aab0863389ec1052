/** What intake and reminders are asked, and every way in which they can end; `src/words/intake.ts` says it in sentences. */
import type { LastTime } from './history';
import type { ListedClub } from './clubList';
import type { Block } from './port';
import type { NotDone, Occupied } from './outcomes';
import type { HeldBack } from './reminders';
import type { Tagged } from './tags';

/** A job to be begun. */
export interface JobRequest {
  /** null: the next number. */
  readonly job: string | null;
  /** The number that the person was shown as the next one; null where none was. */
  readonly suggested: string | null;
  readonly customer: string;
  /** Days; null where nothing was promised. */
  readonly due: number | null;
  readonly today: number;
  readonly clubs: readonly ListedClub[];
  readonly hand: 'Right' | 'Left' | null;
  /** Tag of the first club; the others are counted on from it. Blank: no tags. */
  readonly firstTag: string;
  readonly authorisedBy: string;
  /** What is taken over from last time, club by club. */
  readonly last: readonly LastTime[];
}

/** Why a job cannot be begun as it was asked. */
export type JobFault =
  | { readonly why: 'noCustomer' }
  | { readonly why: 'noClubs' }
  | { readonly why: 'duePast'; readonly due: number; readonly today: number }
  | { readonly why: 'jobUsed'; readonly job: string }
  | { readonly why: 'tagNoNumber'; readonly tag: string }
  | { readonly why: 'tagUsed'; readonly tag: string; readonly by: Tagged };

export type JobDone =
  | {
      readonly done: true;
      readonly job: string;
      /** The number that was shown and was given before or meanwhile; null where it is the one that was got. */
      readonly insteadOf: string | null;
      readonly clubs: number;
      readonly takenOver: number;
    }
  | { readonly done: false; readonly reason: 'fault'; readonly fault: JobFault }
  | NotDone;

/** Why an intake sheet is not printed as things stand. */
export type IntakeFault =
  | { readonly why: 'dueFirst'; readonly due: number; readonly received: number }
  | { readonly why: 'sameTag'; readonly pairs: readonly (readonly [Tagged, Tagged])[] };

export type IntakeDone =
  | { readonly done: true; readonly sheet: string; readonly block: Block; readonly clubs: number }
  | NotDone
  | Occupied
  | { readonly done: false; readonly reason: 'jobNotListed'; readonly job: string }
  | { readonly done: false; readonly reason: 'noClubs'; readonly job: string }
  | { readonly done: false; readonly reason: 'fault'; readonly fault: IntakeFault }
  | { readonly done: false; readonly reason: 'noRoom' };

export type LastDone =
  | { readonly done: true; readonly job: string; readonly clubs: number; readonly cells: number }
  | NotDone
  | Occupied
  /** no earlier job of the customer says anything about these clubs */
  | { readonly done: false; readonly reason: 'nothingKnown'; readonly job: string };

export type RemindersDone =
  | {
      readonly done: true;
      readonly sheet: string;
      readonly block: Block;
      readonly customers: number;
      readonly held: readonly HeldBack[];
    }
  | NotDone
  | Occupied
  | { readonly done: false; readonly reason: 'noneDue'; readonly months: number; readonly held: readonly HeldBack[] }
  | { readonly done: false; readonly reason: 'noRoom' };
