/** A workbook as plain data, and the same as the embedded spreadsheet wants it. */
import type { ICellData, IObjectMatrixPrimitiveType, IStyleData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import { BooleanNumber, CellValueType, VerticalAlign } from '@univerjs/core';
import type { Cell } from '../port';
import { wouldChange } from '../safeCell';
import { CELL_PADDING, usualColumns, usualRows, widthInPixels } from './measures';

/** A cell as written down: a value, or a formula with its leading `=`. Text is always text. */
export type SnapshotCell = Cell | { readonly formula: string };

/** One sheet as plain data; rows and columns count from 0. */
export interface SheetSnapshot {
  readonly name: string;
  readonly cells: readonly (readonly SnapshotCell[])[];
  /** Column widths in characters of the default font. */
  readonly widths?: readonly number[];
  readonly frozenRows?: number;
  /** Rows set in bold, as headings are. */
  readonly boldRows?: readonly number[];
  /** Tables to lay over the cells; the first row of each holds its headers. */
  readonly tables?: readonly {
    readonly name: string;
    readonly row: number;
    readonly column: number;
    readonly rows: number;
    readonly columns: number;
  }[];
  /** How large the sheet is to be; grown when a write needs more. */
  readonly rowCount?: number;
  readonly columnCount?: number;
}

/** A value as the spreadsheet keeps it; the type is given with it, so that `'007'` and `'=x'` stay text. */
export function cellData(cell: SnapshotCell): ICellData | null {
  if (cell === null) return null;
  // Forced where opening the cell and leaving it again would turn the text into something else.
  if (typeof cell === 'string')
    return { v: cell, t: wouldChange(cell) ? CellValueType.FORCE_STRING : CellValueType.STRING };
  if (typeof cell === 'boolean') return { v: cell ? 1 : 0, t: CellValueType.BOOLEAN };
  if (typeof cell === 'number') return { v: cell, t: CellValueType.NUMBER };
  return { f: cell.formula };
}

/** Drop-downs set their text in the middle and off the left edge; so everything stands there, or rows and columns would not line up. */
export const everyCellsStyle: IStyleData = { vt: VerticalAlign.MIDDLE, pd: CELL_PADDING };

/** The whole workbook as the embedded spreadsheet loads it. */
export function workbookData(sheets: readonly SheetSnapshot[]): Partial<IWorkbookData> {
  const entries = sheets.map((sheet, index) => [`sheet${index + 1}`, sheet] as const);
  return {
    name: 'Workbook',
    sheetOrder: entries.map(([id]) => id),
    styles: { heading: { bl: BooleanNumber.TRUE } satisfies IStyleData },
    sheets: Object.fromEntries(entries.map(([id, sheet]) => [id, worksheetData(id, sheet)])),
  };
}

function worksheetData(id: string, sheet: SheetSnapshot): Partial<IWorksheetData> {
  const widest = Math.max(0, ...sheet.cells.map((row) => row.length));
  const frozenRows = sheet.frozenRows ?? 0;
  return {
    id,
    name: sheet.name,
    rowCount: Math.max(sheet.rowCount ?? usualRows, sheet.cells.length),
    columnCount: Math.max(sheet.columnCount ?? usualColumns, widest),
    cellData: matrixOf(sheet),
    columnData: Object.fromEntries((sheet.widths ?? []).map((width, column) => [column, { w: widthInPixels(width) }])),
    defaultStyle: everyCellsStyle,
    freeze: { xSplit: 0, ySplit: frozenRows, startRow: frozenRows || -1, startColumn: -1 },
  };
}

function matrixOf(sheet: SheetSnapshot): IObjectMatrixPrimitiveType<ICellData> {
  const bold = new Set(sheet.boldRows ?? []);
  const matrix: IObjectMatrixPrimitiveType<ICellData> = {};
  sheet.cells.forEach((cells, row) => {
    const line: Record<number, ICellData> = {};
    cells.forEach((cell, column) => {
      const data = cellData(cell);
      if (data) line[column] = bold.has(row) ? { ...data, s: 'heading' } : data;
    });
    matrix[row] = line;
  });
  return matrix;
}
