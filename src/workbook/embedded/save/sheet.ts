/** One sheet of the embedded spreadsheet as a sheet of a workbook file. */
import type { ICellData, IStyleData, Nullable, Worksheet } from '@univerjs/core';
import { BooleanNumber } from '@univerjs/core';
import type { Cell as FileCell, CellStyle, ColumnDef, WriteSheet } from 'hucre/xlsx';
import type { Progress } from '../../../core/index';
import type { Block, Seen } from '../../port';
import { beginsFormula, wouldChange } from '../../safeCell';
import { addressOf, blockOf, holdsCell } from '../../shared/address';
import type { OpenedSheet } from '../open/book';
import { filedLook } from '../open/lookName';
import { openedFile, standsAsFiled, type CellFormula, type KeptInCell } from '../opened';
import { keptPage } from '../pages';
import { cellSteps } from '../cells';
import { isProtected, spillsOn } from '../seeing';
import { pixelsPerCharacter, widthInPixels } from '../measures';
import type { Spreadsheet } from '../spreadsheet';
import { allTables } from '../tables';
import type { Table } from '../tables';
import { fileText } from './fileText';
import { fittedHeight } from './fitted';
import { lookOf, withFiledLook } from './look';
import { filedPaper, paper, usualPaper, type FileName, type Paper } from './paper';
import { TABLES } from '../../schema';
import { plainFormula, type Namable } from './plainFormula';
import { QUOTED_FORMAT } from './quoted';
import { dropDownsOf, highlightsOf } from './rules';
import { fileTable } from './tables';
import type { FiledTable, FileTable } from './tables';

/** A sheet for the file, and what of it cannot be kept there. */
export interface FileSheet {
  readonly sheet: WriteSheet;
  readonly names: FileName[];
  /** Formulas whose values were taken in their stead: ours, and others that not every program knows. */
  readonly ourFormulas: number;
  readonly otherFormulas: number;
  /** Formulas of an opened file that are kept though they are not calculated here. */
  readonly keptFormulas: number;
  readonly rulesLeftOut: number;
}

/** Rows that are looked through at a stretch: of each cell the looks are put together anew. */
const ROWS_A_STEP = 20;
/** Rows of which only the height is asked, at a stretch. */
const HEIGHTS_A_STEP = 1000;

/** The share of a sheet that is done, of one whole. */
function progress(done: number, of: number, from: number, to: number): Progress {
  return { done: from + ((to - from) * done) / Math.max(1, of), of: 1 };
}

/** Describes a sheet, in steps; `tableNames` are those of the tables so far, and get those of this sheet added. */
export function* fileSheet(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  known: Namable,
  tableNames: string[],
): Generator<Progress, FileSheet> {
  const name = worksheet.getName();
  const sheetId = worksheet.getSheetId();
  const size = yield* sizeOf(spreadsheet, worksheet);
  const { values, formulas } = yield* shared(cellSteps(spreadsheet, worksheet, size), size.rows, 0.1, 0.2);
  const tables = allTables(spreadsheet).filter((table) => table.worksheet === worksheet);
  const file = openedFile(spreadsheet);
  const filed = file?.sheets.get(sheetId) ?? null;
  const unmoved = file?.moved.has(sheetId) === false ? filed : null;
  const allInPlace = file !== null && standsAsFiled(spreadsheet, file);
  const fileTables = tables.map((table) => {
    const asFiledTable = filedTable(filed, worksheet, table);
    // Our blank rows are for a spreadsheet whose tables do not grow by themselves; elsewhere they would be printed, stripe by stripe.
    const isOurs = asFiledTable.table === null && TABLES.some(({ name: ours }) => ours === table.name);
    const rows = isOurs ? filledRows(values, formulas, table) : table.at.rows;
    const cut = { ...table, at: { ...table.at, rows } };
    const made = fileTable(cut, headerOf(values, table), tableNames, asFiledTable);
    tableNames.push(made.definition.name);
    return made;
  });
  const spills = spillsOn(spreadsheet, worksheet);
  const counts = { ours: 0, others: 0, kept: 0 };
  const formulaAt = (row: number, column: number): FileFormula | null => {
    const entered = formulas[row]?.[column] ?? null;
    const kept = keptInCell(worksheet, row, column)?.formula;
    const spill = spills.find((block) => block.row === row && block.column === column) ?? null;
    const filedFormula =
      kept && asFiled(kept, { entered, value: values[row]?.[column] ?? null, spill, row, column }, sheetId);
    if (filedFormula && (kept?.entered !== null || allInPlace)) {
      if (kept?.entered === null) counts.kept += 1;
      return filedFormula;
    }
    if (entered === null) {
      if (kept?.entered === null && filedFormula) counts.others += 1;
      return null;
    }
    // A formula that fills many cells does so in few other programs.
    const plain = spill ? null : plainFormula(entered, known);
    if (plain === null) counts[/REGRIP\./i.test(entered) ? 'ours' : 'others'] += 1;
    return plain === null ? null : { formula: plain };
  };
  const filling = cellsOf(worksheet, size, values, tables, formulaAt, filed && file ? file.book.styles : null);
  const cells = yield* shared(filling, size.rows, 0.2, 0.9);
  tables.forEach((table, i) => head(cells, table, fileTables[i]));
  const columns = columnsOf(worksheet, size.columns, unmoved, filed);
  const rows = rowsOf(worksheet, size.rows, unmoved);
  const rowDefs = yield* shared(rows, size.rows, 0.9, 1);
  const printed = printedAs(
    spreadsheet,
    worksheet,
    tables[0]?.at.row ?? null,
    inchesWide(columns.slice(0, size.columns)),
  );
  const dropDowns = dropDownsOf(spreadsheet, sheetId, known);
  const highlights = highlightsOf(spreadsheet, sheetId, known);
  const frozen = worksheet.getFreeze();
  const [frozenRows, frozenColumns] = [Math.max(0, frozen.ySplit), Math.max(0, frozen.xSplit)];
  return {
    sheet: {
      name,
      cells,
      columns,
      rowDefs,
      merges: worksheet.getMergeData().map(({ startRow, startColumn, endRow, endColumn }) => {
        return { startRow, startCol: startColumn, endRow, endCol: endColumn };
      }),
      tables: fileTables.map(({ definition }) => definition),
      dataValidations: dropDowns.said,
      conditionalRules: highlights.said,
      ...(frozenRows + frozenColumns > 0 && { freezePane: { rows: frozenRows, columns: frozenColumns } }),
      ...(worksheet.isSheetHidden() === BooleanNumber.TRUE &&
        (filed?.veryHidden ? { veryHidden: true } : { hidden: true })),
      ...viewOf(worksheet),
      ...(filed && besideSheet(filed, unmoved !== null, allInPlace, isProtected(spreadsheet, worksheet))),
      ...printed.sheet,
    },
    names: printed.names,
    ourFormulas: counts.ours,
    otherFormulas: counts.others,
    keptFormulas: counts.kept,
    rulesLeftOut: dropDowns.leftOut + highlights.leftOut,
  };
}

/** Steps that say how many rows are done, as a share of the sheet. */
function* shared<T>(steps: Generator<number, T>, rows: number, from: number, to: number): Generator<Progress, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield progress(step.value, rows, from, to);
  }
}

function printedAs(spreadsheet: Spreadsheet, worksheet: Worksheet, titleRow: number | null, inches: number): Paper {
  const name = worksheet.getName();
  const page = keptPage(spreadsheet, worksheet.getSheetId());
  if (page) return paper(name, page);
  const file = openedFile(spreadsheet);
  const filed = file?.sheets.get(worksheet.getSheetId());
  return file && filed
    ? filedPaper(name, filed.asItWas, !file.moved.has(worksheet.getSheetId()))
    : usualPaper(name, titleRow, inches);
}

/**
 * What a copy gets back of a sheet that nothing here shows; without what hangs on places where cells have been moved since. Small charts
 * may show cells of other sheets.
 */
function besideSheet(
  { asItWas }: OpenedSheet,
  inPlace: boolean,
  allInPlace: boolean,
  isLocked: boolean,
): Partial<WriteSheet> {
  const { protection, autoFilter, rowBreaks, colBreaks, outlineProperties, sparklines, splitPane } = asItWas;
  return {
    ...(protection && isLocked && { protection }),
    ...(outlineProperties && { outlineProperties }),
    ...(splitPane && { splitPane }),
    ...(inPlace && autoFilter && { autoFilter }),
    ...(inPlace && rowBreaks && { rowBreaks }),
    ...(inPlace && colBreaks && { colBreaks }),
    ...(allInPlace && sparklines && { sparklines }),
  };
}

function viewOf(worksheet: Worksheet): Pick<WriteSheet, 'view'> {
  const { showGridlines, zoomRatio, rightToLeft, tabColor } = worksheet.getConfig();
  const colour = /^#([0-9a-f]{6})$/i.exec(tabColor)?.[1];
  const view = {
    ...(showGridlines === BooleanNumber.FALSE && { showGridLines: false }),
    ...(zoomRatio !== 1 && { zoomScale: Math.round(zoomRatio * 100) }),
    ...(rightToLeft === BooleanNumber.TRUE && { rightToLeft: true }),
    ...(colour !== undefined && { tabColor: { rgb: colour.toUpperCase() } }),
  };
  return Object.keys(view).length > 0 ? { view } : {};
}

/** Rows of a table down to the last that holds something, its headings among them. */
function filledRows(
  values: readonly (readonly Seen[])[],
  formulas: readonly (readonly (string | null)[])[],
  { at }: Table,
): number {
  const isFilled = (line: readonly unknown[] = []): boolean =>
    line.slice(at.column, at.column + at.columns).some((cell) => cell !== null && cell !== undefined);
  let rows = at.rows;
  while (rows > 1 && !isFilled(values[at.row + rows - 1]) && !isFilled(formulas[at.row + rows - 1])) rows -= 1;
  return rows;
}

/** The table as the file has it; its row of totals counts as long as it stands right below. */
function filedTable(sheet: OpenedSheet | null, worksheet: Worksheet, { name, at }: Table): FiledTable {
  const table = sheet?.tables.find((each) => each.name === name) ?? null;
  return { table, totals: keptInCell(worksheet, at.row + at.rows, at.column)?.totals !== undefined };
}

/** As far as anything stands on the sheet or can be seen of it, tables whole. */
function* sizeOf(spreadsheet: Spreadsheet, worksheet: Worksheet): Generator<Progress, Block> {
  const filed = openedFile(spreadsheet)?.sheets.has(worksheet.getSheetId()) === true;
  let [rows, columns] = [1, 1];
  const reach = (row: number, column: number): void => {
    rows = Math.max(rows, row);
    columns = Math.max(columns, column);
  };
  const lines = Object.entries(worksheet.getCellMatrix().getMatrix());
  for (const [at, [row, line]] of lines.entries()) {
    for (const column in line ?? {})
      reachCell(worksheet, Number(row), Number(column), line?.[Number(column)], filed, reach);
    if (at % HEIGHTS_A_STEP === 0) yield progress(at, lines.length, 0, 0.1);
  }
  const blocks = [
    ...spillsOn(spreadsheet, worksheet),
    ...allTables(spreadsheet).flatMap((table) => (table.worksheet === worksheet ? [table.at] : [])),
  ];
  for (const at of blocks) reach(at.row + at.rows, at.column + at.columns);
  return { sheet: worksheet.getName(), row: 0, column: 0, rows, columns };
}

function reachCell(
  worksheet: Worksheet,
  row: number,
  column: number,
  cell: Nullable<ICellData>,
  filed: boolean,
  reach: (row: number, column: number) => void,
): void {
  const holds = cell && (cell.f ?? cell.si ?? cell.p ?? (cell.v === '' ? null : cell.v)) !== null;
  if (holds && (cell.f ?? cell.si ?? cell.p ?? cell.v) !== undefined) reach(row + 1, column + 1);
  else if (cell?.custom ?? (cell?.s && (filed || isSeen(ownStyle(worksheet, row, column, cell)))))
    reach(row + 1, column + 1);
}

/**
 * The style that a cell was given, by itself or through its row or column. Asked without the cell, the spreadsheet answers with all that it
 * shows: highlights, the stripes of a table and the colour of a number format lie over it.
 */
function ownStyle(worksheet: Worksheet, row: number, column: number, cell: Nullable<ICellData>): IStyleData {
  return worksheet.getComposedCellStyleByCellData(row, column, cell);
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

/** A formula in the terms of a file. */
type FileFormula = Pick<FileCell, 'formula' | 'formulaType' | 'formulaRef' | 'formulaDynamic'>;

function keptInCell(worksheet: Worksheet, row: number, column: number): KeptInCell | undefined {
  return worksheet.getCellMatrix().getValue(row, column)?.custom as KeptInCell | undefined;
}

/** What a cell holds now that a formula of an opened file once was in. */
interface NowInCell {
  readonly entered: string | null;
  readonly value: Seen;
  readonly spill: Block | null;
  readonly row: number;
  readonly column: number;
}

/** The file's own formula where it still stands in the cell, or where the cell still shows the value it had; else null. */
function asFiled(kept: CellFormula, now: NowInCell, sheetId: string): FileFormula | null {
  const [wanted = null] = kept.fills === undefined ? [] : [blockOf(kept.fills, now.spill?.sheet ?? 'sheet')];
  if (kept.entered === null) {
    const same = now.entered === null && plainValue(now.value) === kept.value;
    if (!same || kept.sheetId !== sheetId || kept.row !== now.row || kept.column !== now.column) return null;
  } else if (now.entered !== kept.entered || now.spill?.rows !== (wanted && isMany(wanted) ? wanted.rows : undefined))
    return null;
  return {
    formula: kept.file,
    ...(kept.fills !== undefined && {
      formulaType: 'array' as const,
      formulaRef: now.spill ? addressOf(now.spill) : kept.fills,
    }),
    ...(kept.dynamic && { formulaDynamic: true }),
  };
}

function isMany({ rows, columns }: Block): boolean {
  return rows > 1 || columns > 1;
}

function plainValue(value: Seen): string | number | boolean | null {
  return typeof value === 'object' && value !== null ? value.error : value;
}

function* cellsOf(
  worksheet: Worksheet,
  { sheet, rows, columns }: Block,
  values: readonly (readonly Seen[])[],
  tables: readonly Table[],
  formulaAt: (row: number, column: number) => FileFormula | null,
  filedStyles: readonly CellStyle[] | null,
): Generator<number, Cells> {
  const cells: Cells = new Map();
  const look = looksOf();
  const filed = filedStyles !== null;
  for (let row = 0; row < rows; row++) {
    if (row % ROWS_A_STEP === ROWS_A_STEP - 1) yield row;
    for (let column = 0; column < columns; column++) {
      const value = values[row]?.[column] ?? null;
      const raw = worksheet.getCellMatrix().getValue(row, column);
      if (value === null && !raw && filed) continue;
      const style = ownStyle(worksheet, row, column, raw);
      // Of blank cells those that can be seen count, those of a file that look like anything, and those in a table, where an entry
      // is to find its format.
      const own = filed && Boolean(raw?.s ?? raw?.custom);
      const counts =
        value !== null || own || isSeen(style) || tables.some(({ at }) => holdsCell(at, sheet, row, column));
      if (!counts) continue;
      const formula = formulaAt(row, column);
      const asFile = filedStyles && filedLook(filedStyles, raw?.s);
      const whole = asFile ? withFiledLook(look(style), asFile) : look(style);
      const kept = raw?.custom as KeptInCell | undefined;
      const cell =
        formula === null ? valueCell(value, whole, kept?.filedText) : { ...result(value), ...formula, style: whole };
      cells.set(`${row},${column}`, withBeside(cell, value, kept));
    }
  }
  return cells;
}

/** Looks of styles, each worked out once. */
function looksOf(): (style: IStyleData) => CellStyle {
  const known = new Map<string, CellStyle>();
  return (style) => {
    const key = JSON.stringify(style);
    const found = known.get(key) ?? lookOf(style);
    known.set(key, found);
    return found;
  };
}

/** Note, link, several looks in one text, and whether the cell is locked, as an opened file had them. */
function withBeside(cell: Partial<FileCell>, value: Seen, kept: KeptInCell | undefined): Partial<FileCell> {
  if (!kept) return cell;
  const { comment, link, runs, protection } = kept;
  const sameText = runs !== undefined && value === runs.map(({ text }) => text).join('');
  return {
    ...cell,
    ...(comment && { comment }),
    ...(link && { hyperlink: link }),
    ...(sameText && { richText: runs.map((run) => ({ ...run, text: fileText(run.text) })) }),
    ...(protection && { style: { ...cell.style, protection } }),
  };
}

function result(value: Seen): Partial<FileCell> {
  return value === null || typeof value === 'object' ? { value: null } : { value: null, formulaResult: value };
}

/** Errors that a file knows as such; text that reads like one must not become one. */
const LIKE_ERROR = /^#[A-Z0-9/_]+[!?]?$/;

function valueCell(value: Seen, look: CellStyle, filed?: KeptInCell['filedText']): Partial<FileCell> {
  if (value !== null && typeof value === 'object') return { value: value.error, style: look };
  if (typeof value !== 'string') return { value, style: look };
  const text = fileText(value);
  const asText = !look.numFmt && isMarked(value, filed);
  const wrap = value.includes('\n') ? { alignment: { ...look.alignment, wrapText: true } } : {};
  const style = { ...look, ...wrap, ...(asText && { numFmt: QUOTED_FORMAT }) };
  return LIKE_ERROR.test(value) ? { value: text, richText: [{ text }], style } : { value: text, style };
}

/**
 * Text that someone who opens the cell and leaves it would turn into something else is marked as text. A text of the file has the mark as
 * the file has it, but one that begins as a formula always gets it.
 */
function isMarked(text: string, filed: KeptInCell['filedText']): boolean {
  return filed?.text === text ? filed.marked || beginsFormula(text) : wouldChange(text);
}

/** Puts a table's headings as the file wants them; the spreadsheet's own table theme is not in the cells. */
function head(cells: Cells, { at }: Table, table: FileTable | undefined): void {
  table?.headings.forEach((heading, across) => {
    const key = `${at.row},${at.column + across}`;
    const cell = cells.get(key);
    const asItIs = cell?.value === fileText(heading);
    const { style } = asItIs ? cell : valueCell(heading, cell?.style ?? {});
    cells.set(key, { value: fileText(heading), ...(style && { style }) });
  });
}

/** The file measures a column in digits of its usual font, seven pixels each, and five pixels for the edges. */
const EDGE_DIGITS = 5 / 7;

/** @param inPlace the file, as long as its columns stand where they stood */
function columnsOf(
  worksheet: Worksheet,
  columns: number,
  inPlace: OpenedSheet | null,
  filed: OpenedSheet | null,
): ColumnDef[] {
  // A usual width of the file's own is not said anew, so each column says it.
  const usual = filed?.usualWidth == null ? worksheet.getConfig().defaultColumnWidth : null;
  // Columns right of the cells have a width as well, for what will come there.
  const own = inPlace ? [...inPlace.widths.keys(), ...inPlace.hiddenColumns, ...inPlace.outline.columns.keys()] : [];
  const shown = worksheet.getColumnCount();
  const length = own.reduce((most, column) => (column < shown ? Math.max(most, column + 1) : most), columns);
  return Array.from({ length }, (_, column): ColumnDef => {
    const pixels = worksheet.getColumnWidth(column);
    const characters = Math.max(0, pixels - widthInPixels(0)) / pixelsPerCharacter();
    const outlineLevel = inPlace?.outline.columns.get(column);
    return {
      ...(pixels !== usual && { width: Math.round((characters + EDGE_DIGITS) * 100) / 100 }),
      ...(!worksheet.getColVisible(column) && { hidden: true }),
      ...(outlineLevel !== undefined && { outlineLevel }),
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

function* rowsOf(
  worksheet: Worksheet,
  rows: number,
  filed: OpenedSheet | null,
): Generator<number, NonNullable<WriteSheet['rowDefs']>> {
  const found: NonNullable<WriteSheet['rowDefs']> = new Map();
  const usual = worksheet.getConfig().defaultRowHeight;
  for (let row = 0; row < rows; row++) {
    if (row % HEIGHTS_A_STEP === HEIGHTS_A_STEP - 1) yield row;
    const pixels = worksheet.getRowHeight(row);
    // What a filter hides comes back: the copy has no filter on.
    const hidden = !worksheet.getRowRawVisible(row);
    const fitted = filed?.heights.get(row)?.fitted && worksheet.getRowManager().getRow(row)?.ia === BooleanNumber.TRUE;
    const outlineLevel = filed?.outline.rows.get(row);
    const points = pixels * POINTS_PER_PIXEL;
    // A row of the usual height is left to the program that opens the file, unless the file has one for it.
    const unsaid = pixels === usual && !filed?.heights.has(row);
    const height = fitted ? fittedHeight(points) : unsaid ? undefined : points;
    if (height !== undefined || hidden || outlineLevel !== undefined)
      found.set(row, {
        ...(height !== undefined && { height }),
        ...(hidden && { hidden }),
        ...(outlineLevel !== undefined && { outlineLevel }),
      });
  }
  return found;
}
