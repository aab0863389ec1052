/** One sheet of the embedded spreadsheet as a sheet of a workbook file. */
import type { IStyleData, Nullable, Worksheet } from '@univerjs/core';
import { BooleanNumber } from '@univerjs/core';
import type { Cell as FileCell, CellStyle, ColumnDef, WriteSheet } from 'hucre/xlsx';
import type { Block, Seen } from '../../port';
import { wouldChange } from '../../safeCell';
import { holdsCell } from '../../shared/address';
import { keptPage } from '../pages';
import { readCells } from '../cells';
import { spillsOn } from '../seeing';
import { pixelsPerCharacter, widthInPixels } from '../snapshot';
import type { Spreadsheet } from '../spreadsheet';
import { allTables } from '../tables';
import type { Table } from '../tables';
import { fileText } from './fileText';
import { lookOf } from './look';
import { paper, usualPaper, type FileName } from './paper';
import { plainFormula, type Namable } from './plainFormula';
import { dropDownsOf, highlightsOf } from './rules';
import { fileTable } from './tables';
import type { FileTable } from './tables';

/** A sheet for the file, and what of it cannot be kept there. */
export interface FileSheet {
  readonly sheet: WriteSheet;
  readonly names: FileName[];
  /** Formulas whose values were taken in their stead: ours, and others that not every program knows. */
  readonly ourFormulas: number;
  readonly otherFormulas: number;
  readonly rulesLeftOut: number;
}

/** Describes a sheet; `tableNames` are those of the tables so far, and get those of this sheet added. */
export function fileSheet(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  known: Namable,
  tableNames: string[],
): FileSheet {
  const name = worksheet.getName();
  const sheetId = worksheet.getSheetId();
  const size = sizeOf(spreadsheet, worksheet);
  const { values, formulas } = readCells(spreadsheet, worksheet, size);
  const tables = allTables(spreadsheet).filter((table) => table.worksheet === worksheet);
  const fileTables = tables.map((table) => {
    const made = fileTable(table, headerOf(values, table), tableNames);
    tableNames.push(made.definition.name);
    return made;
  });
  const spilling = new Set(spillsOn(spreadsheet, worksheet).map(({ row, column }) => `${row},${column}`));
  const counts = { ours: 0, others: 0 };
  const formulaAt = (row: number, column: number): string | null => {
    const entered = formulas[row]?.[column] ?? null;
    if (entered === null) return null;
    // A formula that fills many cells does so in few other programs.
    const plain = spilling.has(`${row},${column}`) ? null : plainFormula(entered, known);
    if (plain === null) counts[/REGRIP\./i.test(entered) ? 'ours' : 'others'] += 1;
    return plain;
  };
  const cells = cellsOf(worksheet, size, values, tables, formulaAt);
  tables.forEach((table, i) => head(cells, table, fileTables[i]));
  const columns = columnsOf(worksheet, size.columns);
  const page = keptPage(spreadsheet, sheetId);
  const printed = page ? paper(name, page) : usualPaper(name, tables[0]?.at.row ?? null, inchesWide(columns));
  const dropDowns = dropDownsOf(spreadsheet, sheetId, known);
  const highlights = highlightsOf(spreadsheet, sheetId, known);
  const frozen = worksheet.getFreeze();
  const [frozenRows, frozenColumns] = [Math.max(0, frozen.ySplit), Math.max(0, frozen.xSplit)];
  return {
    sheet: {
      name,
      cells,
      columns,
      rowDefs: rowsOf(worksheet, size.rows),
      merges: worksheet.getMergeData().map(({ startRow, startColumn, endRow, endColumn }) => {
        return { startRow, startCol: startColumn, endRow, endCol: endColumn };
      }),
      tables: fileTables.map(({ definition }) => definition),
      dataValidations: dropDowns.said,
      conditionalRules: highlights.said,
      ...(frozenRows + frozenColumns > 0 && { freezePane: { rows: frozenRows, columns: frozenColumns } }),
      ...(worksheet.isSheetHidden() === BooleanNumber.TRUE && { hidden: true }),
      ...printed.sheet,
    },
    names: printed.names,
    ourFormulas: counts.ours,
    otherFormulas: counts.others,
    rulesLeftOut: dropDowns.leftOut + highlights.leftOut,
  };
}

/** As far as anything stands on the sheet or can be seen of it, tables whole. */
function sizeOf(spreadsheet: Spreadsheet, worksheet: Worksheet): Block {
  let [rows, columns] = [1, 1];
  const reach = (row: number, column: number): void => {
    rows = Math.max(rows, row);
    columns = Math.max(columns, column);
  };
  worksheet.getCellMatrix().forValue((row, column, cell) => {
    const holds = cell && (cell.f ?? cell.si ?? cell.p ?? (cell.v === '' ? null : cell.v)) !== null;
    if (holds && (cell.f ?? cell.si ?? cell.p ?? cell.v) !== undefined) reach(row + 1, column + 1);
    else if (cell?.s && isSeen(worksheet.getCellStyle(row, column))) reach(row + 1, column + 1);
  });
  const blocks = [
    ...spillsOn(spreadsheet, worksheet),
    ...allTables(spreadsheet).flatMap((table) => (table.worksheet === worksheet ? [table.at] : [])),
  ];
  for (const at of blocks) reach(at.row + at.rows, at.column + at.columns);
  return { sheet: worksheet.getName(), row: 0, column: 0, rows, columns };
}

/** Whether a blank cell with this style shows. */
function isSeen(style: Nullable<IStyleData>): boolean {
  return Boolean(style && (style.bg?.rgb ?? style.bd));
}

function headerOf(values: readonly (readonly Seen[])[], { at }: Table): readonly Seen[] {
  const line = values[at.row] ?? [];
  return Array.from({ length: at.columns }, (_, across) => line[at.column + across] ?? null);
}

type Cells = Map<string, Partial<FileCell>>;

function cellsOf(
  worksheet: Worksheet,
  { sheet, rows, columns }: Block,
  values: readonly (readonly Seen[])[],
  tables: readonly Table[],
  formulaAt: (row: number, column: number) => string | null,
): Cells {
  const cells: Cells = new Map();
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const value = values[row]?.[column] ?? null;
      const style = worksheet.getComposedCellStyle(row, column);
      // Of blank cells those that can be seen count, and those in a table, where an entry is to find its format.
      const counts = value !== null || isSeen(style) || tables.some(({ at }) => holdsCell(at, sheet, row, column));
      if (!counts) continue;
      const formula = formulaAt(row, column);
      cells.set(
        `${row},${column}`,
        formula === null ? valueCell(value, lookOf(style)) : { ...result(value), formula, style: lookOf(style) },
      );
    }
  }
  return cells;
}

function result(value: Seen): Partial<FileCell> {
  return value === null || typeof value === 'object' ? { value: null } : { value: null, formulaResult: value };
}

/** Errors that a file knows as such; text that reads like one must not become one. */
const LIKE_ERROR = /^#[A-Z0-9/_]+[!?]?$/;
/** As text, a program shows only so much. */
const LONGEST_AS_TEXT = 255;

function valueCell(value: Seen, look: CellStyle): Partial<FileCell> {
  if (value !== null && typeof value === 'object') return { value: value.error, style: look };
  if (typeof value !== 'string') return { value, style: look };
  const text = fileText(value);
  // Text that someone who opens the cell and leaves it would turn into something else is formatted as text.
  const asText = !look.numFmt && wouldChange(value) && value.length <= LONGEST_AS_TEXT;
  const wrap = value.includes('\n') ? { alignment: { ...look.alignment, wrapText: true } } : {};
  const style = { ...look, ...wrap, ...(asText && { numFmt: '@' }) };
  return LIKE_ERROR.test(value) ? { value: text, richText: [{ text }], style } : { value: text, style };
}

/** Puts a table's headings as the file wants them; the spreadsheet's own table theme is not in the cells. */
function head(cells: Cells, { at }: Table, table: FileTable | undefined): void {
  table?.headings.forEach((heading, across) => {
    const key = `${at.row},${at.column + across}`;
    const { style } = valueCell(heading, cells.get(key)?.style ?? {});
    cells.set(key, { value: fileText(heading), ...(style && { style }) });
  });
}

/** The file measures a column in digits of its usual font, seven pixels each, and five pixels for the edges. */
const EDGE_DIGITS = 5 / 7;

function columnsOf(worksheet: Worksheet, columns: number): ColumnDef[] {
  const usual = worksheet.getConfig().defaultColumnWidth;
  return Array.from({ length: columns }, (_, column): ColumnDef => {
    const pixels = worksheet.getColumnWidth(column);
    const characters = Math.max(0, pixels - widthInPixels(0)) / pixelsPerCharacter;
    return {
      ...(pixels !== usual && { width: Math.round((characters + EDGE_DIGITS) * 100) / 100 }),
      ...(!worksheet.getColVisible(column) && { hidden: true }),
    };
  });
}

/** Width of a column of which the file says nothing, in digits (ECMA-376 Part 1, 18.3.1.81, for the usual font). */
const UNSAID_WIDTH = 8.43 + EDGE_DIGITS;

function inchesWide(columns: readonly ColumnDef[]): number {
  const digits = columns.reduce((sum, { width, hidden }) => sum + (hidden ? 0 : (width ?? UNSAID_WIDTH)), 0);
  return (digits * 7) / 96;
}

/** A pixel is 1/96 in, a point 1/72. */
const POINTS_PER_PIXEL = 72 / 96;

function rowsOf(worksheet: Worksheet, rows: number): NonNullable<WriteSheet['rowDefs']> {
  const found: NonNullable<WriteSheet['rowDefs']> = new Map();
  const usual = worksheet.getConfig().defaultRowHeight;
  for (let row = 0; row < rows; row++) {
    const pixels = worksheet.getRowHeight(row);
    // What a filter hides comes back: the copy has no filter on.
    const hidden = !worksheet.getRowRawVisible(row);
    // A row of the usual height is left to the program that opens the file.
    if (pixels !== usual || hidden)
      found.set(row, { ...(pixels !== usual && { height: pixels * POINTS_PER_PIXEL }), ...(hidden && { hidden }) });
  }
  return found;
}
