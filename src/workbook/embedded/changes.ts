/** Each change of the port as deeds of the embedded spreadsheet. */
import type { ICellData, IObjectMatrixPrimitiveType, Worksheet } from '@univerjs/core';
import { generateRandomId, mergeWorksheetSnapshotWithDefault } from '@univerjs/core';
import { IDefinedNamesService, RemoveDefinedNameMutation, SetDefinedNameMutation } from '@univerjs/engine-formula';
import {
  InsertSheetMutation,
  InsertSheetUndoMutationFactory,
  RemoveSheetMutation,
  SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  SetFrozenMutation,
  SetFrozenMutationFactory,
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  SetStyleCommand,
  SetWorksheetColWidthMutation,
  SetWorksheetColWidthMutationFactory,
  SetWorksheetColumnCountMutation,
  SetWorksheetColumnCountUndoMutationFactory,
  SetWorksheetRowCountMutation,
  SetWorksheetRowCountUndoMutationFactory,
} from '@univerjs/sheets';
import type { Argument, Block, Call, Change, Dressed, Put } from '../port';
import { PortError } from '../port';
import { fixed, sameBlock, sameName } from '../shared/address';
import type { BeforeCell } from '../shared/looked';
import { tableBlock } from '../shared/refuse';
import { columnsBeside } from '../shared/widen';
import { worksheetNamed } from './cells';
import { choicesOff, choicesOn, everyCell, highlightsOff, highlightsOn, styleOf, styleWithout } from './dress';
import { formulaOf, withSpareRows } from './formula';
import type { Deed, Journal } from './journal';
import { spareRows, usualColumns, usualRows, widthInPixels } from './measures';
import { cellData, everyCellsStyle } from './snapshot';
import type { Spreadsheet } from './spreadsheet';
import { layTable, resizeTable, tableNamed } from './tables';

/** What one application of changes needs to know of itself. */
export interface Work {
  readonly spreadsheet: Spreadsheet;
  readonly journal: Journal;
}

/** Throws a PortError for what the workbook itself stands against, before anything is written. */
export function refuseHere(spreadsheet: Spreadsheet, changes: readonly Change[]): void {
  for (const change of changes) {
    if (change.do === 'name') refuseOddName(change.name);
    if (change.do !== 'table') continue;
    const namesake = tableNamed(spreadsheet, change.name);
    if (namesake && !sameBlock(namesake.at, tableBlock(change.at))) throw new PortError('tableInTheWay', [change.name]);
  }
}

/** Makes one change; throws when the spreadsheet refuses. */
export function perform(work: Work, change: Change): void {
  switch (change.do) {
    case 'sheet':
      return makeSheet(work, change.name);
    case 'write':
      return write(work, change.at, change.cells);
    case 'table':
      return makeTable(work, change.name, tableBlock(change.at));
    case 'lengthen':
      return lengthen(work, change);
    case 'widen':
      return widen(work, change);
    case 'format':
      return format(work, change);
    case 'widths':
      return widths(work, change);
    case 'freezeRows':
      return freeze(work, change.sheet, change.rows, change.columns);
    case 'choices':
      return choices(work, change);
    case 'highlight':
      return runAll(work, highlightsOn(sheetToWrite(work, change.at), change.at, change.rules));
    case 'name':
      return placeName(work, change.name, change.at);
    case 'page':
    case 'show':
    case 'remember':
      // No changes to cells: the port does these, and keeps the page for a copy that is printed elsewhere.
      return;
  }
}

/** Takes highlights of ours away where new ones will come, before the first of them is made. */
export function clearOldHighlights(work: Work, changes: readonly Change[]): void {
  for (const change of changes) {
    if (change.do !== 'highlight') continue;
    const worksheet = worksheetNamed(work.spreadsheet, change.at.sheet);
    if (worksheet) runAll(work, highlightsOff(work.spreadsheet, worksheet, change.at));
  }
}

function runAll(work: Work, deeds: readonly Deed[]): void {
  for (const deed of deeds) work.journal.run(deed);
}

/** The sheet of a block, made large enough to hold it and, if it is grown, what a person may add below. */
function sheetToWrite(work: Work, at: Block): Worksheet {
  const worksheet = worksheetNamed(work.spreadsheet, at.sheet);
  if (!worksheet) throw new Error(`there is no sheet ${at.sheet}`);
  const place = { unitId: work.spreadsheet.id, subUnitId: worksheet.getSheetId() };
  const accessor = work.spreadsheet.injector;
  if (at.row + at.rows > worksheet.getRowCount()) {
    const params = { ...place, rowCount: at.row + at.rows + spareRows };
    const back = SetWorksheetRowCountUndoMutationFactory(accessor, params);
    work.journal.run(deed(SetWorksheetRowCountMutation.id, params, back));
  }
  if (at.column + at.columns > worksheet.getColumnCount()) {
    const params = { ...place, columnCount: at.column + at.columns };
    const back = SetWorksheetColumnCountUndoMutationFactory(accessor, params);
    work.journal.run(deed(SetWorksheetColumnCountMutation.id, params, back));
  }
  return worksheet;
}

function deed(id: string, params: object, backParams: object, backId = id): Deed {
  return { steps: [{ id, params }], back: [{ id: backId, params: backParams }] };
}

function makeSheet(work: Work, name: string): void {
  if (worksheetNamed(work.spreadsheet, name)) return;
  const sheet = mergeWorksheetSnapshotWithDefault({
    id: generateRandomId(),
    name,
    rowCount: usualRows,
    columnCount: usualColumns,
    defaultStyle: everyCellsStyle,
  });
  const index = work.spreadsheet.workbook.getSheets().length;
  const params = { index, sheet, unitId: work.spreadsheet.id };
  const back = InsertSheetUndoMutationFactory(work.spreadsheet.injector, params);
  work.journal.run(deed(InsertSheetMutation.id, params, back, RemoveSheetMutation.id));
}

function write(work: Work, at: Block, cells: readonly (readonly Put[])[]): void {
  const worksheet = sheetToWrite(work, at);
  const dataOf = (put: Put, row: number, column: number): ICellData | undefined => {
    if (put === undefined) return undefined;
    if (typeof put !== 'object' || put === null) return enter(put);
    const place: Block = { sheet: at.sheet, row, column, rows: 1, columns: 1 };
    const formula = formulaOf(work.spreadsheet, put, place);
    sheetToWrite(work, roomToSpill(work.spreadsheet, put, place));
    return enter({ formula });
  };
  setCells(work, worksheet, at, cells, dataOf);
}

/** Columns that the widest result of ours stays within. */
const widestResult = 80;

/** What a call's result may fill: a sheet does not grow for a formula, it shows `#SPILL!` at its edge. */
function roomToSpill(spreadsheet: Spreadsheet, call: Call, at: Block): Block {
  const rowsOf = (argument: Argument): number => {
    if (argument === null || 'literal' in argument) return 0;
    return 'block' in argument ? argument.block.rows : withSpareRows(spreadsheet, argument, null).rows;
  };
  const rows = Math.max(1, ...call.args.map(rowsOf));
  return rows === 1 ? at : { ...at, rows, columns: widestResult };
}

/** Puts cells back as they were: values, formulas as entered, error constants. */
export function putBefore(work: Work, at: Block, cells: readonly (readonly (BeforeCell | undefined)[])[]): void {
  const dataOf = (cell: BeforeCell | undefined): ICellData | undefined =>
    cell === undefined ? undefined : enter(cell);
  setCells(work, sheetToWrite(work, at), at, cells, dataOf);
}

function setCells<T>(
  work: Work,
  worksheet: Worksheet,
  at: Block,
  cells: readonly (readonly T[])[],
  dataOf: (cell: T, row: number, column: number) => ICellData | undefined,
): void {
  const cellValue: IObjectMatrixPrimitiveType<ICellData> = {};
  cells.forEach((line, down) => {
    const data: Record<number, ICellData> = {};
    line.forEach((cell, across) => {
      const entered = dataOf(cell, at.row + down, at.column + across);
      if (entered) data[at.column + across] = entered;
    });
    cellValue[at.row + down] = data;
  });
  work.journal.run(rangeValues(work.spreadsheet, worksheet, { cellValue }));
}

/** A cell's new content, with everything it may have held before cleared; its format stays. */
function enter(cell: BeforeCell): ICellData {
  const blank = { v: null, t: null, f: null, si: null, p: null };
  // An error constant is kept by what one would type for it; it is a value, not a formula.
  if (typeof cell === 'object' && cell !== null && cell.formula.startsWith('#')) return { ...blank, v: cell.formula };
  return { ...blank, ...cellData(cell) };
}

function rangeValues(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  content: { cellValue: IObjectMatrixPrimitiveType<ICellData>; trigger?: string },
): Deed {
  const params = { unitId: worksheet.getUnitId(), subUnitId: worksheet.getSheetId(), ...content };
  return deed(SetRangeValuesMutation.id, params, SetRangeValuesUndoMutationFactory(spreadsheet.injector, params));
}

function makeTable(work: Work, name: string, at: Block): void {
  if (tableNamed(work.spreadsheet, name)) return;
  work.journal.run(layTable(work.spreadsheet, sheetToWrite(work, at), name, at));
}

function lengthen(work: Work, change: Extract<Change, { do: 'lengthen' }>): void {
  const table = tableNamed(work.spreadsheet, change.table);
  if (!table) throw new Error(`there is no table ${change.table}`);
  const at = { ...table.at, rows: table.at.rows + change.rows };
  sheetToWrite(work, at);
  work.journal.run(resizeTable(table, at));
}

function widen(work: Work, { table: name, headers }: Extract<Change, { do: 'widen' }>): void {
  const table = tableNamed(work.spreadsheet, name);
  if (!table) throw new Error(`there is no table ${name}`);
  const at = { ...table.at, columns: table.at.columns + headers.length };
  sheetToWrite(work, at);
  write(work, { ...columnsBeside(table, headers.length), rows: 1 }, [headers]);
  work.journal.run(resizeTable(table, at));
}

/** Makes a table as narrow as it was, and blanks the headings beyond. */
export function narrow(work: Work, name: string, at: Block, blank: Block): void {
  const table = tableNamed(work.spreadsheet, name);
  if (table) work.journal.run(resizeTable(table, at));
  write(work, blank, [Array<null>(blank.columns).fill(null)]);
}

function format(work: Work, change: Extract<Change, { do: 'format' }>): void {
  const worksheet = sheetToWrite(work, change.at);
  const cellValue = everyCell<ICellData>(change.at, { s: styleOf(change.format) });
  // Named as the trigger, the style command keeps formulas from being calculated for a mere change of looks.
  work.journal.run(rangeValues(work.spreadsheet, worksheet, { cellValue, trigger: SetStyleCommand.id }));
}

/** Takes looks of ours off a block, and no others: a part of a format goes back to what a new sheet has. */
export function undress(work: Work, { at, looks }: Dressed): void {
  const worksheet = worksheetNamed(work.spreadsheet, at.sheet);
  if (!worksheet) return;
  const cellValue = everyCell<ICellData>(at, { s: looks.includes('table') ? null : styleWithout(looks) });
  work.journal.run(rangeValues(work.spreadsheet, worksheet, { cellValue, trigger: SetStyleCommand.id }));
  if (looks.includes('choices')) runAll(work, choicesOff(work.spreadsheet, worksheet, at));
  if (looks.includes('highlight')) runAll(work, highlightsOff(work.spreadsheet, worksheet, at));
}

function widths(work: Work, change: Extract<Change, { do: 'widths' }>): void {
  const { column } = change;
  const columns = change.widths.length;
  const worksheet = sheetToWrite(work, { sheet: change.sheet, row: 0, column, rows: 1, columns });
  const params = {
    unitId: work.spreadsheet.id,
    subUnitId: worksheet.getSheetId(),
    ranges: [
      { startRow: 0, endRow: worksheet.getRowCount() - 1, startColumn: column, endColumn: column + columns - 1 },
    ],
    colWidth: Object.fromEntries(change.widths.map((width, index) => [column + index, widthInPixels(width)])),
  };
  const back = SetWorksheetColWidthMutationFactory(params, worksheet);
  work.journal.run(deed(SetWorksheetColWidthMutation.id, params, back));
}

/** @param columns left as they are where none are said */
function freeze(work: Work, sheet: string, rows: number, columns?: number): void {
  const worksheet = sheetToWrite(work, { sheet, row: 0, column: 0, rows: rows + 1, columns: (columns ?? 0) + 1 });
  const { startColumn, xSplit } =
    columns === undefined ? worksheet.getFreeze() : { startColumn: columns || -1, xSplit: columns };
  const place = { unitId: work.spreadsheet.id, subUnitId: worksheet.getSheetId() };
  const params = { ...place, startColumn, xSplit, startRow: rows > 0 ? rows : -1, ySplit: rows };
  const back = SetFrozenMutationFactory(work.spreadsheet.injector, params);
  work.journal.run(deed(SetFrozenMutation.id, params, back));
}

function choices(work: Work, change: Extract<Change, { do: 'choices' }>): void {
  const worksheet = sheetToWrite(work, change.at);
  const source = 'table' in change.from ? { reference: fixed(columnBody(work, change.from)) } : change.from;
  runAll(work, choicesOn(work.spreadsheet, worksheet, change.at, source, change.hint));
}

/** The body of a table's column with the spare rows below it, found by its header. */
function columnBody(work: Work, from: { readonly table: string; readonly header: string }): Block {
  const whole = withSpareRows(work.spreadsheet, { table: from.table }, null);
  const worksheet = worksheetNamed(work.spreadsheet, whole.sheet);
  for (let column = whole.column; column < whole.column + whole.columns; column++) {
    const header: unknown = worksheet?.getCellMatrix().getValue(whole.row, column)?.v;
    if (header === from.header) return { ...whole, column, columns: 1, row: whole.row + 1, rows: whole.rows - 1 };
  }
  throw new Error(`the table ${from.table} has no column ${from.header}`);
}

/** Places a defined name, or moves it. */
export function placeName(work: Work, name: string, at: Block): void {
  sheetToWrite(work, at);
  const names = work.spreadsheet.injector.get(IDefinedNamesService);
  const all = Object.values(names.getDefinedNameMap(work.spreadsheet.id) ?? {});
  const old = all.find((other) => sameName(other.name, name));
  const params = {
    unitId: work.spreadsheet.id,
    id: old?.id ?? generateRandomId(),
    name: old?.name ?? name,
    formulaOrRefString: fixed(at),
    localSheetId: SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  };
  const back = old ? { unitId: work.spreadsheet.id, ...old } : params;
  work.journal.run(
    deed(SetDefinedNameMutation.id, params, back, old ? SetDefinedNameMutation.id : RemoveDefinedNameMutation.id),
  );
}

/** How a defined name is taken away. */
export function removeName(work: Work, name: string): void {
  const names = work.spreadsheet.injector.get(IDefinedNamesService);
  const old = Object.values(names.getDefinedNameMap(work.spreadsheet.id) ?? {}).find((other) =>
    sameName(other.name, name),
  );
  if (!old) return;
  const params = { unitId: work.spreadsheet.id, ...old };
  work.journal.run(deed(RemoveDefinedNameMutation.id, params, params, SetDefinedNameMutation.id));
}

/** A name must not look like a cell, nor hold what no name may. */
function refuseOddName(name: string): void {
  const looksLikeCell = /^\$?[A-Z]{1,3}\$?\d+$/i.test(name) || /^r\d*c\d*$/i.test(name) || /^[rc]$/i.test(name);
  if (looksLikeCell || !/^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name)) throw new PortError('unsupported', [name]);
}
