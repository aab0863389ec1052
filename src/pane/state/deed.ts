/** What a screen does on the workbook beyond the plan: it comes with the screen, so that a pane that only plans loads nothing of it. */
import type { InTheWay, Occupied } from '../../workbook/outcomes';
import type { WorkbookPort } from '../../workbook/port';
import type { Shop } from '../../workbook/shop';

/** How a long deed keeps a person informed, and whether they said to stop. */
export interface Going {
  /** Stands in the status line in place of what was said before. */
  readonly say: (text: string) => void;
  readonly signal: AbortSignal;
}

/** One thing done on the workbook, with the words for before and after. */
export interface Deed {
  /** While it runs. @example 'Filling the ticket…' */
  readonly doing: string;
  /** Headline when it is done. @example 'Ticket filled' */
  readonly done: string;
  /** Headline when it is not. @example 'The ticket was not filled' */
  readonly failed: string;
  /** It looks at `going.signal` between its steps, and can be stopped. */
  readonly canStop?: boolean;
  /** It does not look at the shop, and can be done where the workbook could not be read. */
  readonly early?: boolean;
  /**
   * Does it on the shop as it was when it was asked for. What a port throws is said by the pane.
   *
   * @param over cells of a person's that they agreed to write over; null where nothing was asked yet
   */
  readonly run: (port: WorkbookPort, shop: Shop, over: InTheWay | null, going: Going) => Promise<Deeded>;
}

/** How a deed ended. An occupied end is not said: the person is asked, and it is run again with the agreement. */
export interface Deeded {
  readonly end: { readonly done: boolean } | Occupied;
  readonly text: string;
  /** Something was left or blocked: worth a second look. */
  readonly partly?: boolean;
  readonly list?: readonly string[];
  /** In place of the deed's own headline. */
  readonly headline?: string;
}
