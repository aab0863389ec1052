/** A file that was read, as the embedded spreadsheet loads it. */
import type { ICellData, IColumnData, IRowData, IStyleData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import { BooleanNumber, CellValueType, VerticalAlign } from '@univerjs/core';
import { wouldChange } from '../../safeCell';
import { columnLetters } from '../../shared/address';
import type { CellFormula, KeptInCell } from '../opened';
import { pageKey } from '../pages';
import { columnsShown, usualRows, widthInPixels } from '../measures';
import { cellData, everyCellsStyle } from '../snapshot';
import type { BesideCell, OpenedBook, OpenedSheet } from './book';
import { BLANK, ERROR, FILLED, NUMBER, TEXT, TRUTH } from './book';
import { lookName } from './lookName';
import { styleOfLook } from './looks';

/** Room below and beside what is used. */
const SPARE_ROWS = 100;
/** A point is 1/72 in, a pixel 1/96. */
const PIXELS_PER_POINT = 96 / 72;
/** Of a width five of seven pixels are no digit. */
const EDGE_DIGITS = 5 / 7;
/** Cells between two breaths of the page. */
const AT_ONCE = 3000;

/** Lets the page draw and take input; told how many cells are made so far. */
export type Breathe = (made: number) => Promise<void>;

/** Where a sheet of the file stands among the sheets; it keeps the id when it gets another name. */
export function sheetIdOf(index: number): string {
  return `sheet${index + 1}`;
}

/**
 * The workbook's data.
 *
 * @param breathe is awaited now and then, so that a page stays alive meanwhile
 */
export async function contentOf(
  book: OpenedBook,
  breathe: Breathe = () => Promise.resolve(),
): Promise<Partial<IWorkbookData>> {
  const styles = Object.fromEntries(book.styles.map((look, i) => [lookName(i + 1), styleOfLook(look, book.font)]));
  const sheets: Record<string, Partial<IWorksheetData>> = {};
  let before = 0;
  for (const [index, sheet] of book.sheets.entries()) {
    const id = sheetIdOf(index);
    const cellData = await cellsOf(book, sheet, id, (made) => breathe(before + made));
    sheets[id] = { ...sheetData(book, sheet), id, cellData };
    before += sheet.cells.rows.length;
  }
  return {
    name: 'Workbook',
    sheetOrder: Object.keys(sheets),
    styles,
    sheets,
    custom: settingsOf(book),
  };
}

function settingsOf({ state, sheets }: OpenedBook): Record<string, string> {
  const pages = (state?.pages ?? []).flatMap(({ sheet, setup }) => {
    const index = sheets.findIndex(({ name }) => name === sheet);
    return index < 0 ? [] : [[pageKey(sheetIdOf(index)), JSON.stringify(setup)] as const];
  });
  return { ...state?.settings, ...Object.fromEntries(pages) };
}

function sheetData({ state, font }: OpenedBook, sheet: OpenedSheet): Partial<IWorksheetData> {
  const usual: IStyleData = state ? everyCellsStyle : { ff: font.name, fs: font.size, vt: VerticalAlign.BOTTOM };
  const { rows, columns } = sheet.frozen;
  const { view, usualWidth } = sheet;
  return {
    name: sheet.name,
    rowCount: Math.max(usualRows, sheet.rowCount + SPARE_ROWS),
    columnCount: columnsShown(sheet.columnCount),
    defaultStyle: usual,
    ...(usualWidth !== null && { defaultColumnWidth: filePixels(usualWidth) }),
    rowData: rowData(sheet),
    columnData: columnData(sheet),
    mergeData: sheet.merges.map(({ startRow, startCol, endRow, endCol }) => {
      return { startRow, startColumn: startCol, endRow, endColumn: endCol };
    }),
    freeze: { xSplit: columns, ySplit: rows, startRow: rows || -1, startColumn: columns || -1 },
    hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    showGridlines: view.gridlines ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    zoomRatio: view.zoom / 100,
    rightToLeft: view.rightToLeft ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    ...(view.tabColour !== null && { tabColor: `#${view.tabColour}` }),
  };
}

function filePixels(width: number): number {
  return widthInPixels(Math.max(0, width - EDGE_DIGITS));
}

function rowData({ heights, hiddenRows }: OpenedSheet): Record<number, IRowData> {
  const rows: Record<number, IRowData> = {};
  for (const [row, { points, fitted }] of heights) {
    const pixels = points * PIXELS_PER_POINT;
    rows[row] = fitted ? { h: pixels, ia: BooleanNumber.TRUE, ah: pixels } : { h: pixels, ia: BooleanNumber.FALSE };
  }
  for (const row of hiddenRows) rows[row] = { ...rows[row], hd: BooleanNumber.TRUE };
  return rows;
}

function columnData({ widths, hiddenColumns, columnCount }: OpenedSheet): Record<number, IColumnData> {
  const last = columnsShown(columnCount);
  const columns: Record<number, IColumnData> = {};
  for (const [column, width] of widths) if (column < last) columns[column] = { w: filePixels(width) };
  for (const column of hiddenColumns) {
    if (column < last) columns[column] = { ...columns[column], hd: BooleanNumber.TRUE };
  }
  return columns;
}

type Matrix = Record<number, Record<number, ICellData>>;

async function cellsOf(book: OpenedBook, sheet: OpenedSheet, sheetId: string, breathe: Breathe): Promise<Matrix> {
  const { rows, columns, kinds, values, styles } = sheet.cells;
  const matrix: Matrix = {};
  const put = (row: number, column: number, data: ICellData): void => {
    (matrix[row] ??= {})[column] = data;
  };
  for (let i = 0; i < rows.length; i++) {
    if (i % AT_ONCE === AT_ONCE - 1) await breathe(i);
    const [row, column, kind, style] = [rows[i] ?? 0, columns[i] ?? 0, kinds[i] ?? BLANK, styles[i] ?? 0];
    const entered = kind >= FILLED ? {} : enteredValue(kind, values[i] ?? 0, book.texts);
    const beside = sheet.beside.get(`${row},${column}`);
    const locked = style > 0 && sheet.asItWas.protection ? book.styles[style - 1]?.protection : undefined;
    const filedText =
      kind === TEXT && !beside?.formula ? filedTextOf(sheet, book.texts[values[i] ?? 0], row, column) : null;
    const more =
      beside || locked || filedText ? besideData(beside, { locked, filedText }, entered, sheetId, row, column) : {};
    put(row, column, { ...entered, ...more, ...(style > 0 && { s: lookName(style) }) });
  }
  for (const table of sheet.tables) {
    if (!table.totals) continue;
    const row = table.row + table.rows;
    for (let column = table.column; column < table.column + table.columns; column++) {
      const data = matrix[row]?.[column] ?? {};
      put(row, column, { ...data, custom: { ...data.custom, totals: table.name } satisfies KeptInCell });
    }
  }
  return matrix;
}

/** What a copy is to remember of a text: only where the file has the mark of texts, or has it not, otherwise than we should set it. */
function filedTextOf(
  { marked }: OpenedSheet,
  text: string | undefined,
  row: number,
  column: number,
): KeptInCell['filedText'] | null {
  if (text === undefined) return null;
  const isMarked = marked.size > 0 && marked.has(`${columnLetters(column)}${row + 1}`);
  return isMarked === wouldChange(text) ? null : { text, marked: isMarked };
}

/** What is entered for a value. */
function enteredValue(kind: number, value: number, texts: readonly string[]): ICellData {
  if (kind === NUMBER) return { v: value, t: CellValueType.NUMBER };
  if (kind === TRUTH) return { v: value, t: CellValueType.BOOLEAN };
  const text = texts[value] ?? '';
  if (kind === TEXT) return cellData(text) ?? {};
  return kind === ERROR ? { v: text } : {};
}

function besideData(
  beside: BesideCell | undefined,
  { locked: protection, filedText }: { locked: KeptInCell['protection']; filedText: KeptInCell['filedText'] | null },
  entered: ICellData,
  sheetId: string,
  row: number,
  column: number,
): ICellData {
  const { formula, comment, link, runs } = beside ?? {};
  const kept: KeptInCell = {
    ...(formula && { formula: { ...formula, sheetId, row, column, value: valueIn(entered) } satisfies CellFormula }),
    ...(comment && { comment }),
    ...(link && { link }),
    ...(runs && { runs }),
    ...(protection && { protection }),
    ...(filedText && { filedText }),
  };
  return {
    ...(formula?.entered != null && { f: formula.entered }),
    ...(Object.keys(kept).length > 0 && { custom: { ...kept } }),
  };
}

function valueIn({ v, t }: ICellData): CellFormula['value'] {
  if (v === undefined || v === null) return null;
  return t === CellValueType.BOOLEAN ? Boolean(Number(v)) : v;
}
