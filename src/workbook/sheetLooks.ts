/** Looks that every page of ours has in common: labels, header row, columns, and rows as high as their texts need. */
import type { Block, Cell, CellFormat, Change } from './port';
import { wrappedLines } from './shared/wrappedLines';
import { GREY } from './palette';

/** One column of a page. */
export interface SheetColumn {
  readonly header: string;
  /** Width in characters. */
  readonly width: number;
  readonly format?: string;
  readonly wrap?: boolean;
  readonly align?: 'left' | 'center' | 'right';
}

/** Rows on screen at once, about; a longer page keeps its header row in view. */
export const SCREEN_ROWS = 25;

export const LABEL_INK = GREY.soft;

export const HEADER_LOOK: CellFormat = {
  bold: true,
  wrap: true,
  vertical: 'bottom',
  fill: GREY.band,
  ink: GREY.ink,
  rule: GREY.rule,
};

/** How the cells of a column look below its header. */
export function bodyLook({ format, wrap, align }: SheetColumn): CellFormat {
  return { number: format ?? 'General', vertical: 'top', ...(wrap ? { wrap } : {}), ...(align ? { align } : {}) };
}

/** Rows with longer texts are made as high as these need; above this many a sheet is no longer read row by row. */
const MOST_FITTED = 500;
const LINE_POINTS = 15;
/** Bold letters are wider: about a tenth fewer of them go into a line. */
const BOLD_ROOM = 0.9;

/**
 * Heights of a list's rows, header row first; `at` is the cell where it begins. A row of one line is left as it is, unless `every`
 * row is to be set because an older list may have made it higher.
 */
export function rowHeights(
  at: Pick<Block, 'sheet' | 'row' | 'column'>,
  columns: readonly SheetColumn[],
  rows: readonly (readonly Cell[])[],
  every = false,
): Change[] {
  const lines = rows
    .slice(0, MOST_FITTED)
    .map((row, down) => Math.max(1, ...row.map((cell, across) => linesIn(cell, columns[across], down === 0))));
  return runs(lines).flatMap(({ from, count, value }): Change[] => {
    if (value === 1 && !every) return [];
    const where = { sheet: at.sheet, row: at.row + from, column: at.column, rows: count, columns: 1 };
    return [{ do: 'format', at: where, format: { height: value * LINE_POINTS } }];
  });
}

/** How high a row of a list is, in points, by its texts. */
export function rowPoints(columns: readonly SheetColumn[], row: readonly Cell[], isHead = false): number {
  return LINE_POINTS * Math.max(1, ...row.map((cell, across) => linesIn(cell, columns[across], isHead)));
}

/** Equal neighbours together. */
function runs(values: readonly number[]): { from: number; count: number; readonly value: number }[] {
  const found: { from: number; count: number; readonly value: number }[] = [];
  values.forEach((value, at) => {
    const last = found.at(-1);
    if (last?.value === value) last.count += 1;
    else found.push({ from: at, count: 1, value });
  });
  return found;
}

function linesIn(cell: Cell, column: SheetColumn | undefined, header: boolean): number {
  if (typeof cell !== 'string' || !column || !(header || column.wrap)) return 1;
  const room = Math.floor(column.width * (header ? BOLD_ROOM : 1));
  return cell.split('\n').reduce((lines, paragraph) => lines + wrappedLines(paragraph, room), 0);
}
