/** Looks that every page of ours has in common: labels, header row, columns, and rows as high as their texts need. */
import type { Block, Cell, CellFormat, Change } from './port';
import { wrappedLines } from './shared/wrappedLines';

/** One column of a page. */
export interface SheetColumn {
  readonly header: string;
  /** Width in characters. */
  readonly width: number;
  readonly format?: string;
  readonly wrap?: boolean;
  readonly align?: 'left' | 'center' | 'right';
}

export const LABEL_INK = '#4A5563';

export const HEADER_LOOK: CellFormat = {
  bold: true,
  wrap: true,
  vertical: 'bottom',
  fill: '#E3E9EF',
  ink: '#1F2A37',
  rule: '#6B7785',
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
  return rows.slice(0, MOST_FITTED).flatMap((row, down): Change[] => {
    const lines = Math.max(1, ...row.map((cell, across) => linesIn(cell, columns[across], down === 0)));
    if (lines === 1 && !every) return [];
    const where = { sheet: at.sheet, row: at.row + down, column: at.column, rows: 1, columns: 1 };
    return [{ do: 'format', at: where, format: { height: lines * LINE_POINTS } }];
  });
}

function linesIn(cell: Cell, column: SheetColumn | undefined, header: boolean): number {
  if (typeof cell !== 'string' || !column || !(header || column.wrap)) return 1;
  return wrappedLines(cell, Math.floor(column.width * (header ? BOLD_ROOM : 1)));
}
