/**
 * What a workbook is to Setwright: something to read in one round trip and to change in one round trip.
 *
 * Everything here is data. Two implementations exist, `excel/` on Office.js and `embedded/` on the spreadsheet of the
 * try-out page; the same structure suite holds both to this file. Rows and columns count from 0.
 */

/** A cell's value. `null` is a blank cell; an error value arrives as `{ error: '#N/A' }`. */
export type Cell = string | number | boolean | null;
export interface CellError {
  readonly error: string;
}
export type Seen = Cell | CellError;

/** A block of cells on one sheet. */
export interface Block {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/* ---------------------------------------------------------------- reading */

export type Query =
  /** every sheet with its protection */
  | { readonly read: 'sheets' }
  /** what every sheet that is shown holds: its used cells and its tables. Excel takes one round trip more for it. */
  | { readonly read: 'contents' }
  /** a table by name, headers and body */
  | { readonly read: 'table'; readonly table: string }
  /** the values of a block, and what stands in the way of writing it; with the widths of its columns where these are asked for */
  | { readonly read: 'block'; readonly at: Block; readonly widths?: true }
  /** where a defined name points, and what stands there */
  | { readonly read: 'name'; readonly name: string };

export interface SheetSeen {
  readonly name: string;
  readonly protected: boolean;
}

/** A sheet that is shown, as far as one has to know to find lists on it. */
export interface SheetContents {
  readonly name: string;
  /** The smallest block from A1 that holds every cell in use; null where none is. */
  readonly used: Block | null;
  readonly tables: readonly { readonly name: string; readonly at: Block }[];
}

export interface TableSeen {
  readonly name: string;
  /** Where it stands, header row included. */
  readonly at: Block;
  readonly headers: readonly string[];
  /** Body rows; a table whose only body row is blank answers one row of nulls. */
  readonly rows: readonly (readonly Seen[])[];
  /** Formula text of the body's cells, else null, row by row; left out where no cell of the body holds a formula. */
  readonly formulas?: readonly (readonly (string | null)[])[];
  readonly protected: boolean;
  /** Rows hidden by a filter: a write by position would land on the wrong ones. */
  readonly filtered: boolean;
  /** The shop's own table or named cells that stand for one of ours; left out where the table is ours. */
  readonly connectedTo?: string;
  /** Rows that go on right below such named cells and are not read, since the name ends above them; left out where there are none. */
  readonly goesOn?: number;
}

export interface BlockSeen {
  readonly at: Block;
  readonly values: readonly (readonly Seen[])[];
  /** Formula text where a cell holds one, else null. A spilled cell holds none. */
  readonly formulas: readonly (readonly (string | null)[])[];
  /**
   * Areas that one formula fills, its own cell first. Their other cells hold nothing themselves: taking back blanks them
   * and enters the formula again. Left out where there is none.
   */
  readonly spills?: readonly Block[];
  readonly sheetExists: boolean;
  readonly protected: boolean;
  /** Merged areas that touch the block. */
  readonly merged: readonly Block[];
  /** Names of tables that touch the block. */
  readonly tables: readonly string[];
  /** Whether the block holds highlights that the host cannot tell from a person's. */
  readonly highlighted?: boolean;
  /** Why functions of ours show an error, cell by cell; left out where none does or the host cannot tell. */
  readonly reasons?: readonly { readonly row: number; readonly column: number; readonly says: string }[];
  /** Of each column, in characters of the default font; there where they were asked for. */
  readonly widths?: readonly number[];
}

export interface NameSeen {
  readonly name: string;
  /** null when the name does not exist or its cells were deleted. */
  readonly at: Block | null;
}

/** The answer to one query; `null` for a table that does not exist. */
export type Answer<Q extends Query> = Q extends { read: 'sheets' }
  ? readonly SheetSeen[]
  : Q extends { read: 'contents' }
    ? readonly SheetContents[]
    : Q extends { read: 'table' }
      ? TableSeen | null
      : Q extends { read: 'block' }
        ? BlockSeen
        : Q extends { read: 'name' }
          ? NameSeen
          : never;

export type Answers<Qs extends readonly Query[]> = { readonly [K in keyof Qs]: Answer<Qs[K]> };

/* ---------------------------------------------------------------- changing */

/** Something a formula can point at. */
export type Argument =
  /** a whole table with its header row */
  | { readonly table: string }
  | { readonly block: Block }
  /** cells that have a name */
  | { readonly name: string }
  /** a text or number written into the formula */
  | { readonly literal: string | number }
  /** an argument left out */
  | null;

/** A call of one of our worksheet functions; each port writes its own references, nobody else builds formula text. */
export interface Call {
  readonly call: string;
  readonly args: readonly Argument[];
}

/** What is put into a cell: a value, a blank (`null`), a call, or `undefined` to leave the cell alone. Text is always text. */
export type Put = Cell | Call | undefined;

/** Whether a highlight applies, judged by the text or number of one column of the row. */
export interface Highlight {
  /** Column within the block whose cell is judged. */
  readonly column: number;
  readonly equals: readonly string[];
  readonly fill: string;
  readonly ink: string;
  readonly bold?: boolean;
}

export interface CellFormat {
  /** An Excel number format, `0.0` or `@`. */
  readonly number?: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly fill?: string;
  readonly ink?: string;
  readonly size?: number;
  readonly wrap?: boolean;
  readonly align?: 'left' | 'center' | 'right';
  readonly vertical?: 'top' | 'center' | 'bottom';
  /** A thin line below. */
  readonly rule?: string;
  /** Height of the rows in points: a row whose text comes from a formula is not fitted by the host. */
  readonly height?: number;
}

export interface PageSetup {
  readonly landscape: boolean;
  /** The block that is printed. */
  readonly area: Block;
  /** Rows repeated at the top of each page. */
  readonly titleRows?: { readonly row: number; readonly rows: number };
  /** Rows that begin a page, where it is said what is to stay together; in place of those said before. */
  readonly breaks?: readonly number[];
  /** Stands in the middle of the foot; page and pages stand at its right on every printed sheet. */
  readonly footer?: string;
}

export type Change =
  /** make a sheet unless it is there */
  | { readonly do: 'sheet'; readonly name: string }
  /**
   * put cells; the array is `at.rows` × `at.columns`. `of` says that they belong to rows of a table: taking back then finds
   * each row again by what it is called, wherever it stands by then. Writes that are `whole` are taken back together or not at all
   */
  | {
      readonly do: 'write';
      readonly at: Block;
      readonly cells: readonly (readonly Put[])[];
      readonly of?: RowsOf;
      readonly whole?: boolean;
    }
  /**
   * lay a table of that name over a block whose first row holds the headers; of headers alone, it gets a blank row, which
   * must have been looked at too. Nothing is done where that very table stands there already.
   */
  | { readonly do: 'table'; readonly name: string; readonly at: Block }
  /**
   * make a table longer by blank rows at its end. The table and the rows right below it, as wide as it is, must have been looked
   * at, and must be blank: where something stands there, nothing is moved but the change refused (`belowTable`). Changes after it
   * may write into the new rows. Taking back blanks what was written into them; the blank rows stay.
   */
  | { readonly do: 'lengthen'; readonly table: string; readonly rows: number }
  /**
   * make a table wider by blank columns at its right end, under these headings. The table, the cells right of it, as tall as it is,
   * and the row below it must have been looked at; where something stands right of it, nothing is moved but the change refused
   * (`belowTable`). Changes after it may write into the new columns. Taking back makes the table as wide as it was, where the columns
   * hold nothing but their headings by then; else they stay and are named.
   */
  | { readonly do: 'widen'; readonly table: string; readonly headers: readonly string[] }
  | { readonly do: 'format'; readonly at: Block; readonly format: CellFormat }
  /** widths in characters of the default font */
  | { readonly do: 'widths'; readonly sheet: string; readonly column: number; readonly widths: readonly number[] }
  /** keeps rows, and columns where they are said, in sight */
  | { readonly do: 'freezeRows'; readonly sheet: string; readonly rows: number; readonly columns?: number }
  /** a drop-down: fixed words, or the body of a table's column (by its header) */
  | {
      readonly do: 'choices';
      readonly at: Block;
      readonly from: readonly string[] | { readonly table: string; readonly header: string };
      /** What the person is told; other entries are warned about, never refused. */
      readonly hint: string;
    }
  /**
   * highlights of a block, in place of those it has, or `beside` them, where a person's may be among them; the first rule
   * that holds wins
   */
  | { readonly do: 'highlight'; readonly at: Block; readonly rules: readonly Highlight[]; readonly beside?: boolean }
  | { readonly do: 'page'; readonly sheet: string; readonly setup: PageSetup }
  /** place a defined name, or move it */
  | { readonly do: 'name'; readonly name: string; readonly at: Block }
  /** show a sheet and select a block of it */
  | { readonly do: 'show'; readonly at: Block }
  /** keep a value in the workbook's settings */
  | { readonly do: 'remember'; readonly key: string; readonly value: string };

/** Rows of a table, each known by what stands in it under these headings, none of which is written itself. */
export interface RowsOf {
  readonly table: string;
  readonly by: readonly string[];
  /**
   * Of plain cells that have a name, which `table` is then: how many rows of headings they begin with. Rows are found below them, and
   * a column is called by what stands over it in all of them. Left out for a table.
   */
  readonly headingRows?: number;
}

/** Which rows and columns of a table a written block was: its rows by what they are called, its columns by their headings. */
export interface WrittenRows extends RowsOf {
  /** For each row of the block, its cells under the headings `by`, as text; null for rows of headings, the last of which is the list’s last. */
  readonly called: readonly (readonly string[] | null)[];
  readonly headings: readonly string[];
}

/** One written block: what was there and what was put. Serialisable. */
export interface Written {
  readonly at: Block;
  /** Left out where the block is known by its address alone. */
  readonly rows?: WrittenRows;
  /** Taken back with the others that are whole, or none of them is, and nothing else either. */
  readonly whole?: boolean;
  /** Value, or formula text in `{ formula }`; an error constant is what one would type for it, `{ formula: '#N/A' }`. */
  readonly before: readonly (readonly (Cell | { readonly formula: string })[])[];
  /** What was put; `skip` where the cell was left alone, `call` where a formula of ours went in. */
  readonly put: readonly (readonly (Cell | { readonly call: string } | { readonly skip: true })[])[];
}

/** Columns that a table got at its right end. */
export interface Widened {
  readonly table: string;
  /** How many it had before. */
  readonly columns: number;
  readonly headers: readonly string[];
}

/** What a change did: enough to take it back. Kept in the workbook before the first cell is written. */
export interface Receipt {
  readonly label: string;
  readonly written: readonly Written[];
  readonly madeSheets: readonly string[];
  readonly madeTables: readonly string[];
  readonly madeNames: readonly string[];
  /** Names that pointed elsewhere before. */
  readonly movedNames: readonly MovedName[];
  /** Blocks that were blank and got new looks: taking back clears these looks as well, and no others. */
  readonly dressed: readonly Dressed[];
  /** Left out where no table was made wider. */
  readonly widened?: readonly Widened[];
}

/** A defined name that was moved. */
export interface MovedName {
  readonly name: string;
  readonly from: Block;
  readonly to: Block;
}

/** A look that a block can get: a part of its format, a drop-down, highlights, or what a table brings. */
export type Look = keyof CellFormat | 'choices' | 'highlight' | 'table';

export interface Dressed {
  readonly at: Block;
  readonly looks: readonly Look[];
}

/** What taking back did. */
export interface Reverted {
  readonly label: string;
  /** How many cells hold again what they held. */
  readonly restored: number;
  /** Cells changed by a person since, left as they are: `Clubs!T5`. */
  readonly left: readonly string[];
  /** Rows of a table that are gone, or of which several are called so and cannot be told apart; nothing was put back there: `Clubs: 1042, Driver`. */
  readonly notFound: readonly string[];
  /** What was changed since of something that goes only as a whole: nothing at all was taken back. Left out where that is not so. */
  readonly changed?: readonly string[];
}

/** How far a workbook can go. */
export interface Capabilities {
  readonly host: 'excel' | 'embedded';
  /** Whether one formula can fill many cells. */
  readonly spill: boolean;
  readonly pageSetup: boolean;
  readonly undoGroup: boolean;
}

/** Where the person is. `table` is the table that holds the whole selection, if one does. */
export interface Selection {
  readonly at: Block;
  readonly table: string | null;
}

/** Why a read or a change did not happen. */
export type PortErrorCode =
  /** cells were to be written that nobody had looked at first, or that changed since */
  | 'notLookedAt'
  | 'protected'
  | 'merged'
  | 'filtered'
  | 'tableInTheWay'
  /** something stands right below a table that was to be made longer, or beside one that was to be made wider */
  | 'belowTable'
  /** a cell is being edited */
  | 'editing'
  /** a list of the shop's that was connected is no longer as it was: `hostSaid` is the whole sentence */
  | 'connection'
  /** the host refused or failed; everything written was put back */
  | 'putBack'
  /** the host failed and putting back failed too: `cells` names what may have changed */
  | 'halfWritten'
  /** `cells`, or all that was asked for with what is kept for Undo, are longer than the host takes or answers at once */
  | 'tooLong'
  | 'unsupported'
  | 'host';

/** Thrown by a port. `cells` names the cells concerned (`Clubs!T5:T9`), `cause` what the host said. */
export class PortError extends Error {
  readonly code: PortErrorCode;
  readonly cells: readonly string[];
  readonly hostSaid: string;
  constructor(code: PortErrorCode, cells: readonly string[] = [], hostSaid = '') {
    super(`${code}${cells.length ? ` (${cells.join(', ')})` : ''}${hostSaid ? `: ${hostSaid}` : ''}`);
    this.name = 'PortError';
    this.code = code;
    this.cells = cells;
    this.hostSaid = hostSaid;
  }
}

export interface ApplyOptions {
  readonly label: string;
  readonly receiptKey?: string;
  /**
   * Kept with the receipt where the write takes several requests, until one of its changes has something else kept under the same key: it
   * tells whoever finds it that the write was begun, and did not come to its end.
   */
  readonly begun?: { readonly key: string; readonly value: string };
}

export interface WorkbookPort {
  readonly capabilities: Capabilities;
  /** Answers every query from one round trip. */
  read<const Qs extends readonly Query[]>(queries: Qs): Promise<Answers<Qs>>;
  /**
   * Makes every change in one round trip, in order, and keeps the receipt under `receiptKey` ahead of the first write.
   * Every written cell must lie in one of `looked` (the blocks and tables just read): that is where `before` comes from.
   * A block of a sheet or table that `looked` shows not to exist counts as blank.
   * Refuses (PortError) before anything is written when a written block is protected, merged, or (in a table) filtered, or
   * when it crosses the edge of a table; whoever writes where a table is near must have looked at that table. Refuses as well
   * (`notLookedAt`) where cells are not as they were seen any more, in a table the rows that are written and its headings: what a
   * person typed, sorted or inserted meanwhile stands as they left it. On a failure half way, one compensating write puts everything back.
   */
  apply(
    changes: readonly Change[],
    looked: readonly (BlockSeen | TableSeen)[],
    options: ApplyOptions,
  ): Promise<Receipt>;
  /**
   * Puts back what a receipt says was there, except cells that no longer hold what was put; those are listed. Cells of a
   * table's rows are looked for where these rows stand now; other blocks where they stood. Where a cell of a write that is whole
   * was changed, nothing is put back; nor where a sheet that would be changed is protected (`protected`).
   *
   * Looks are put back only as far as this: a part of a format that we gave a blank cell goes back to what a new sheet has,
   * not to what a person had set it to, and widths, heights, frozen rows and page stay. Highlights put beside a person's stay;
   * on blank cells they show nothing.
   */
  revert(receipt: Receipt): Promise<Reverted>;
  selection(): Promise<Selection>;
  /** What is kept under a key, as it is kept; a receipt is read by `keptReceiptSteps` (`shared/packed.ts`). */
  recall(key: string): Promise<string | null>;
  remember(key: string, value: string | null): Promise<void>;
  /**
   * Calls back after a person changed a cell (not after our own writes), with its sheet, or deleted a sheet, with '' for a name;
   * returns how to stop.
   */
  watch(changed: (sheet: string) => void): () => void;
}
