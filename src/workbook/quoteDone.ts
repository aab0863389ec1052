/** How the jobs on quotes end. Data only: `src/words/quoteOutcomes.ts` says it. */
import type { Issue, Money } from '../core/index';
import type { NotDone, Occupied } from './outcomes';
import type { Block } from './port';

/** A quote as the register names it. */
export interface QuoteId {
  readonly number: number;
  readonly revision: number;
}

/** It was written, but what was read afterwards is not what was to be there. */
export interface NotVerified extends QuoteId {
  readonly done: false;
  readonly reason: 'notVerified' | 'usedTwice';
  readonly sheet: string;
}

export type IssueDone =
  | (QuoteId & { readonly done: true; readonly sheet: string; readonly total: Money })
  | NotDone
  | NotVerified
  /** something has to be mended first */
  | { readonly done: false; readonly reason: 'notQuoted'; readonly issues: readonly Issue[] }
  /** the tables give another total by now than was shown */
  | { readonly done: false; readonly reason: 'totalChanged'; readonly shown: Money; readonly now: Money }
  /** a number in the register cannot be read, or stands there twice */
  | { readonly done: false; readonly reason: 'registerUnread'; readonly issue: Issue }
  /** the register changed each time it was looked at */
  | { readonly done: false; readonly reason: 'registerBusy' };

export type VoidDone =
  | (QuoteId & { readonly done: true })
  | NotDone
  | Occupied
  | { readonly done: false; readonly reason: 'registerUnread'; readonly issue: Issue }
  | (QuoteId & { readonly done: false; readonly reason: 'notFound' | 'voidAlready' });

export type OptionsDone =
  | {
      readonly done: true;
      readonly sheet: string;
      readonly block: Block;
      readonly options: number;
      readonly alike: readonly (readonly string[])[];
    }
  | NotDone
  | Occupied
  | { readonly done: false; readonly reason: 'noRoom' }
  /** an option cannot be quoted */
  | {
      readonly done: false;
      readonly reason: 'notQuoted';
      readonly issues: readonly (Issue & { readonly option: string })[];
    }
  /** they cannot be set beside each other */
  | { readonly done: false; readonly reason: 'notCompared'; readonly issue: Issue };
