/**
 * A workbook file as it was read: plain data, so that a worker can hand it over. Cells stand in columns of numbers, which are handed over
 * without being copied; what few cells have stands beside them.
 */
import type {
  Cell as FileCell,
  CellStyle,
  ConditionalRule,
  DataValidation,
  Sheet as FileSheet,
  WorkbookProperties,
} from 'hucre/xlsx';
import type { KeptState } from '../keptState';
import type { Unkept } from './unkept';

export type { CellStyle, ConditionalRule, DataValidation, WorkbookProperties };

/** What a cell holds. */
export const BLANK = 0;
export const NUMBER = 1;
export const TEXT = 2;
export const TRUTH = 3;
export const ERROR = 4;
/** Added where a formula of another cell fills the cell: entered there as well, its value would stand in the formula's way. */
export const FILLED = 8;

/** The cells of a sheet, one after another. */
export interface CellColumns {
  readonly rows: Uint32Array;
  readonly columns: Uint16Array;
  readonly kinds: Uint8Array;
  /** A number, 0 or 1, or the place of a text in `texts`. */
  readonly values: Float64Array;
  /** One more than the place of a style in `styles`; 0 for none. */
  readonly styles: Uint32Array;
}

export interface FileFormula {
  /** As the file has it, without `=`. */
  readonly file: string;
  /** As it is entered here, with `=`; null where the cell keeps the value that the file had. */
  readonly entered: string | null;
  /** The cells that it fills, where it fills several: `A2:A9`. */
  readonly fills?: string;
  /** Whether it fills as many cells as it needs, rather than just those. */
  readonly dynamic?: boolean;
}

/** What stands beside a cell's value. */
export interface BesideCell {
  readonly formula?: FileFormula;
  readonly comment?: NonNullable<FileCell['comment']>;
  readonly link?: NonNullable<FileCell['hyperlink']>;
  /** Text with several looks in one cell. */
  readonly runs?: NonNullable<FileCell['richText']>;
}

export interface OpenedTable {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** Headings and body, without a row of totals. */
  readonly rows: number;
  readonly columns: number;
  readonly totals: boolean;
  readonly filtered: boolean;
  readonly style: string | null;
  readonly stripes: boolean;
  readonly totalsOf: readonly { readonly function?: string; readonly formula?: string; readonly label?: string }[];
}

/** What a copy gets back of a sheet as it was, for nothing here shows it. */
export type SheetBeside = Pick<
  FileSheet,
  | 'pageSetup'
  | 'headerFooter'
  | 'protection'
  | 'autoFilter'
  | 'rowBreaks'
  | 'colBreaks'
  | 'outlineProperties'
  | 'sparklines'
  | 'splitPane'
>;

export interface OpenedSheet {
  readonly name: string;
  readonly hidden: boolean;
  readonly veryHidden: boolean;
  readonly cells: CellColumns;
  /** By `row,column`. */
  readonly beside: ReadonlyMap<string, BesideCell>;
  readonly rowCount: number;
  readonly columnCount: number;
  /** Widths in digits of the usual font. */
  readonly widths: ReadonlyMap<number, number>;
  readonly hiddenColumns: readonly number[];
  /** Cells, as `A1`, that the file marks as text whatever stands in them. */
  readonly marked: ReadonlySet<string>;
  readonly usualWidth: number | null;
  /** Heights in points; `fitted` where the program that wrote the file fitted the row to its text. */
  readonly heights: ReadonlyMap<number, { readonly points: number; readonly fitted: boolean }>;
  readonly hiddenRows: readonly number[];
  readonly outline: {
    readonly rows: ReadonlyMap<number, number>;
    readonly columns: ReadonlyMap<number, number>;
  };
  readonly merges: readonly { startRow: number; startCol: number; endRow: number; endCol: number }[];
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly tables: readonly OpenedTable[];
  readonly checks: readonly DataValidation[];
  readonly highlights: readonly ConditionalRule[];
  readonly view: { gridlines: boolean; zoom: number; rightToLeft: boolean; tabColour: string | null };
  readonly asItWas: SheetBeside;
}

export interface OpenedName {
  readonly name: string;
  readonly refersTo: string;
  /** The sheet it belongs to; null for the whole workbook. */
  readonly sheet: string | null;
}

export interface OpenedBook {
  readonly sheets: readonly OpenedSheet[];
  readonly texts: readonly string[];
  readonly styles: readonly CellStyle[];
  readonly names: readonly OpenedName[];
  readonly shownSheet: number;
  readonly font: { readonly name: string; readonly size: number };
  readonly properties: WorkbookProperties;
  readonly locked: { readonly lockStructure?: boolean; readonly lockWindows?: boolean } | null;
  /** Whether the file counts days from 1904; here they count from 1900, and dates are moved. */
  readonly from1904: boolean;
  readonly unkept: readonly Unkept[];
  readonly comments: number;
  readonly runs: number;
  /** null where the file was not saved here. */
  readonly state: KeptState | null;
}
