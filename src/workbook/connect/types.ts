/** What matching a shop's own table to one of ours is about: which of its columns is which of ours, and in which unit. */
import type { Seen } from '../port';

/**
 * The unit that a shop's numbers are in; `null`: as ours, or without one.
 *
 * `thou` is a thousandth of an inch, `part` a part of one: a cell that shows 10 % holds 0.1.
 */
export type ShopUnit = 'in' | 'mm' | 'cm' | 'm' | 'ft' | 'yd' | 'thou' | 'g' | 'oz' | 'lb' | 'kg' | 'part' | null;

/** A column of the shop's that is known to be one of ours. */
export interface ColumnMatch {
  /** Our column's key. */
  readonly key: string;
  /** The shop's heading as it stands. */
  readonly heading: string;
  /** Column within the range, from 0. */
  readonly position: number;
  readonly unit: ShopUnit;
}

/** What a proposal goes by. */
export type Why =
  /** the heading is ours */
  | 'heading'
  /** the heading is another name of ours, whatever its unit, order and abbreviations */
  | 'synonym'
  /** the heading is like one of ours */
  | 'likeness'
  /** what stands below it */
  | 'values'
  | 'none';

/** Which of the shop's columns one of ours seems to be. */
export interface Proposal {
  readonly key: string;
  readonly position: number | null;
  readonly unit: ShopUnit;
  /** 0 to 1. */
  readonly sureness: number;
  readonly why: Why;
  /** Up to three cells of that column that hold something. */
  readonly samples: readonly Seen[];
  /** How many of the cells that were looked at cannot be read as that column. */
  readonly unread: number;
  /** Columns that would come next, best first. */
  readonly others: readonly number[];
}

/** Rows that are taken for headings: the last of them, from 0, and how many there are. */
export interface HeadingRow {
  readonly row: number;
  readonly lines: 1 | 2;
}

export interface Likeness {
  /** Row within the range that holds the headings, the last of them where there are two; from 0. */
  readonly headerRow: number;
  /** Rows of headings: 2 where a heading is split over two rows, or stands below a heading of several columns. */
  readonly headerRows: 1 | 2;
  /** The heading of every column of the range, as a match remembers it; blank where a column has none. */
  readonly headings: readonly string[];
  /** Last row of the body; totals and notes below it are left out. */
  readonly lastRow: number;
  /** Our table's name. */
  readonly table: string;
  readonly proposals: readonly Proposal[];
  /** Columns that hold something and match nothing. */
  readonly unknown: readonly number[];
  readonly warnings: readonly ConnectWarning[];
}

/** What a person should know before saying yes. Rows and positions are within the range, from 0. */
export type ConnectWarning =
  /** no row looks like headings; the first one was taken for them */
  | { readonly warning: 'noHeadings' }
  /** a column that holds something has no heading of its own; `left` is the heading that may have been merged over it */
  | { readonly warning: 'headingBlank'; readonly position: number; readonly left: string | null }
  /** the row right below the headings looks like their units, and is read as a row of the list */
  | { readonly warning: 'unitsBelow'; readonly row: number }
  /** one heading stands over more than one column */
  | { readonly warning: 'headingsAlike'; readonly heading: string; readonly positions: readonly number[] }
  /** more than one column could be this one as well; the first of `positions` was taken */
  | { readonly warning: 'lookAlike'; readonly key: string; readonly positions: readonly number[] }
  | {
      readonly warning: 'rowsLeftOut';
      readonly why: 'totals' | 'notes';
      readonly from: number;
      readonly to: number;
    }
  /** nothing says the unit, and the values fit this one alone, which is not ours */
  | { readonly warning: 'unitGuessed'; readonly key: string; readonly position: number; readonly unit: ShopUnit }
  /** nothing says the unit, and the values fit more than one; `taken` is one of `units` */
  | {
      readonly warning: 'unitOpen';
      readonly key: string;
      readonly position: number;
      readonly taken: ShopUnit;
      readonly units: readonly ShopUnit[];
    }
  /** the heading says one unit, the values fit another; the heading's was taken */
  | {
      readonly warning: 'unitContradiction';
      readonly key: string;
      readonly position: number;
      readonly heading: ShopUnit;
      readonly values: ShopUnit;
    }
  /** some values fit one unit and some another; the first of `units` was taken */
  | {
      readonly warning: 'unitsMixed';
      readonly key: string;
      readonly position: number;
      readonly units: readonly ShopUnit[];
    }
  /** days written as text; of `unclear` ones nobody can tell day from month */
  | {
      readonly warning: 'datesAsText';
      readonly key: string;
      readonly position: number;
      readonly count: number;
      readonly unclear: number;
    }
  /** a needed column that no column of the shop's seems to be */
  | { readonly warning: 'neededMissing'; readonly key: string };
