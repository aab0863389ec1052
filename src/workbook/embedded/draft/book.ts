/** A workbook that is nothing but data as yet, before there is a spreadsheet to hold it. */
import type { Block, Cell, CellFormat } from '../../port';
import { sameName } from '../../shared/address';

export interface DraftSheet {
  readonly name: string;
  /** By row and column; a cell that nobody wrote into is missing. */
  readonly cells: (Cell | undefined)[][];
  /** Later ones lie over earlier ones. */
  readonly formats: { readonly at: Block; readonly format: CellFormat }[];
  /** Column widths in pixels. */
  readonly widths: Map<number, number>;
  /** Heights in pixels of rows that were fitted to their text. */
  readonly heights: Map<number, number>;
  frozenRows: number;
  frozenColumns: number;
}

export interface DraftTable {
  readonly name: string;
  /** Header row included. */
  at: Block;
}

export interface DraftChoices {
  readonly at: Block;
  /** Words, or the cells that hold them. */
  readonly from: readonly string[] | Block;
  readonly hint: string;
}

export interface DraftBook {
  readonly sheets: DraftSheet[];
  readonly tables: DraftTable[];
  readonly choices: DraftChoices[];
  readonly settings: Map<string, string>;
  /** What is selected, on the sheet that is shown. */
  shown: Block;
}

/** A workbook of blank sheets. */
export function blankBook(sheetNames: readonly string[]): DraftBook {
  const shown = { sheet: sheetNames[0] ?? '', row: 0, column: 0, rows: 1, columns: 1 };
  return { sheets: sheetNames.map(blankSheet), tables: [], choices: [], settings: new Map(), shown };
}

export function blankSheet(name: string): DraftSheet {
  return { name, cells: [], formats: [], widths: new Map(), heights: new Map(), frozenRows: 0, frozenColumns: 0 };
}

export function draftSheet({ sheets }: DraftBook, name: string): DraftSheet | null {
  return sheets.find((sheet) => sameName(sheet.name, name)) ?? null;
}

/** What a cell shows; to a reader a text without letters is as good as a blank. */
export function shownIn(sheet: DraftSheet | null, row: number, column: number): Cell {
  const cell = sheet?.cells[row]?.[column];
  return cell === undefined || cell === '' ? null : cell;
}

/** Whether every cell of a row's part is blank. */
export function isBlankRow(sheet: DraftSheet | null, { column, columns }: Block, row: number): boolean {
  for (let at = column; at < column + columns; at += 1) if (shownIn(sheet, row, at) !== null) return false;
  return true;
}
