/** Every way in which the jobs at the bench can end. Data only: `src/words/benchOutcomes.ts` says it in sentences. */
import type { CannotTake, Closing, Issue, Renamed } from '../core/index';
import type { NotDone, Occupied } from './outcomes';
import type { Block } from './port';

/** A job that the bench cannot be given. */
export type JobNotReady =
  /** Clubs has none of its clubs */
  | { readonly done: false; readonly reason: 'noClubs' }
  | { readonly done: false; readonly reason: 'notPlanned'; readonly issue: Issue };

/** A page for the bench or the counter: ticket, labels, slip. */
export type BenchPageDone =
  | { readonly done: true; readonly sheet: string; readonly block: Block; readonly clubs: number }
  | NotDone
  | Occupied
  | JobNotReady
  /** no club of the job has a grip chosen */
  | { readonly done: false; readonly reason: 'noGrips' }
  | { readonly done: false; readonly reason: 'noRoom' };

export type CheckInDone =
  /** `added`: rows that were begun; none where all have theirs */
  { readonly done: true; readonly job: string; readonly added: number } | NotDone | JobNotReady;

export type JudgeDone =
  | { readonly done: true; readonly job: string; readonly cells: number; readonly closing: Closing }
  | NotDone
  | Occupied
  | JobNotReady
  /** Checkin has no row of the job */
  | { readonly done: false; readonly reason: 'notStarted' };

export type CloseDone =
  /** `already`: it was Done before, and nothing was changed; `movements`: rows that the ledger got, null where there is no ledger */
  | {
      readonly done: true;
      readonly job: string;
      readonly already: boolean;
      readonly movements: number | null;
      /** Clubs whose piece was taken before, when they were called otherwise. */
      readonly renamed?: readonly Renamed[] | undefined;
    }
  | NotDone
  | Occupied
  | JobNotReady
  | { readonly done: false; readonly reason: 'open'; readonly closing: Closing }
  /** a count or a row of the ledger cannot be read */
  | { readonly done: false; readonly reason: 'unreadable'; readonly issue: Issue }
  /** by the tables less is there than was used */
  | { readonly done: false; readonly reason: 'cannotTake'; readonly cannot: CannotTake }
  | { readonly done: false; readonly reason: 'jobNotListed'; readonly job: string };

export type RedoDone =
  | { readonly done: true; readonly job: string; readonly round: number; readonly clubs: readonly string[] }
  | NotDone
  | Occupied
  | JobNotReady
  /** it has not been closed, so its clubs are put right as they are */
  | { readonly done: false; readonly reason: 'notClosed'; readonly job: string }
  | { readonly done: false; readonly reason: 'nothingChosen' }
  /** clubs that the job has not, or that get no grip */
  | { readonly done: false; readonly reason: 'clubsUnknown'; readonly clubs: readonly string[] }
  | { readonly done: false; readonly reason: 'jobNotListed'; readonly job: string };
