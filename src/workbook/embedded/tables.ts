/** Tables of the embedded spreadsheet: finding them, laying them, and letting them grow as Excel's do. */
import type { Worksheet } from '@univerjs/core';
import { generateRandomId } from '@univerjs/core';
import type { ITableInfoWithUnitId, ITableRange } from '@univerjs/sheets-table';
import { TableManager } from '@univerjs/sheets-table';
import type { Block } from '../port';
import { readCells } from './cells';
import type { Deed, Step } from './journal';
import { openedFile, type KeptInCell } from './opened';
import type { Spreadsheet } from './spreadsheet';

/** A table where it stands. */
export interface Table {
  readonly id: string;
  readonly name: string;
  readonly worksheet: Worksheet;
  /** Header row included. */
  readonly at: Block;
  readonly filtered: boolean;
}

// Below the commands on purpose: they refuse a table that bears its sheet's name, and ours all do, as Excel allows.
const addTable = 'sheet.mutation.add-table';
const deleteTable = 'sheet.mutation.delete-table';
const setTable = 'sheet.mutation.set-sheet-table';

export function allTables(spreadsheet: Spreadsheet): Table[] {
  const manager = spreadsheet.injector.get(TableManager);
  return manager.getTableList(spreadsheet.id).flatMap((info) => tableFrom(spreadsheet, manager, info) ?? []);
}

export function tableNamed(spreadsheet: Spreadsheet, name: string): Table | null {
  const wanted = name.toLowerCase();
  return allTables(spreadsheet).find((table) => table.name.toLowerCase() === wanted) ?? null;
}

function tableFrom(spreadsheet: Spreadsheet, manager: TableManager, info: ITableInfoWithUnitId): Table | null {
  const worksheet = spreadsheet.workbook.getWorkbook().getSheetBySheetId(info.subUnitId);
  if (!worksheet) return null;
  const filters = manager.getTableById(spreadsheet.id, info.id)?.getTableFilters();
  return {
    id: info.id,
    name: info.name,
    worksheet,
    at: blockOfRange(worksheet.getName(), info.range),
    filtered: (filters?.getFilterOutRows()?.size ?? 0) > 0 || filteredInFile(spreadsheet, worksheet, info),
  };
}

/** Whether an opened file had a filter on the table and rows that it hid are still hidden. */
function filteredInFile(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  { name, range }: ITableInfoWithUnitId,
): boolean {
  const tables = openedFile(spreadsheet)?.sheets.get(worksheet.getSheetId())?.tables;
  if (!tables?.some((table) => table.name === name && table.filtered)) return false;
  for (let row = range.startRow + 1; row <= range.endRow; row++) if (!worksheet.getRowRawVisible(row)) return true;
  return false;
}

/** How a table is laid over a block, and how that is taken back. */
export function layTable(spreadsheet: Spreadsheet, worksheet: Worksheet, name: string, at: Block): Deed {
  const manager = spreadsheet.injector.get(TableManager);
  const range = rangeOfBlock(at);
  const place = { unitId: spreadsheet.id, subUnitId: worksheet.getSheetId() };
  const tableId = generateRandomId();
  const header = manager.getColumnHeader(spreadsheet.id, place.subUnitId, range, 'Column');
  return {
    steps: [{ id: addTable, params: { ...place, tableId, name, range, header, options: {} } }],
    back: [{ id: deleteTable, params: { ...place, tableId } }],
  };
}

/** How a table is taken away, its cells left as they are; and how it comes back. */
export function liftTable(table: Table): Deed {
  const place = { unitId: table.worksheet.getUnitId(), subUnitId: table.worksheet.getSheetId(), tableId: table.id };
  const again = { ...place, name: table.name, range: rangeOfBlock(table.at), options: {} };
  return { steps: [{ id: deleteTable, params: place }], back: [{ id: addTable, params: again }] };
}

/** How a table is stretched or shrunk to a block, and back. */
export function resizeTable(table: Table, at: Block): Deed {
  const step = (block: Block): Step => ({
    id: setTable,
    params: {
      unitId: table.worksheet.getUnitId(),
      subUnitId: table.worksheet.getSheetId(),
      tableId: table.id,
      config: { updateRange: { newRange: rangeOfBlock(block) } },
    },
  });
  return { steps: [step(at)], back: [step(table.at)] };
}

/**
 * The block a table would take up in Excel, where a row typed right below joins it: rows below count as long as one of
 * the table's columns holds something and no other table begins there.
 */
export function grownBlock(spreadsheet: Spreadsheet, table: Table): Block {
  const { at, worksheet } = table;
  const others = allTables(spreadsheet).filter((other) => other.id !== table.id && other.worksheet === worksheet);
  let rows = at.rows;
  for (; at.row + rows < worksheet.getRowCount(); rows++) {
    const next: Block = { ...at, row: at.row + rows, rows: 1 };
    if (others.some((other) => touches(other.at, next))) break;
    if (isTotals(worksheet, next)) break;
    const { values, formulas } = readCells(spreadsheet, worksheet, next);
    // What a formula spills there is no entry of a person's.
    const entered = values[0]?.some((value, column) => value !== null && isEntered(worksheet, next, column)) ?? false;
    if (!entered && !formulas[0]?.some((formula) => formula !== null)) break;
  }
  return { ...at, rows };
}

/** Whether the row holds the totals that an opened file has below a table. */
function isTotals(worksheet: Worksheet, { row, column }: Block): boolean {
  const kept = worksheet.getCellMatrix().getValue(row, column)?.custom as KeptInCell | undefined;
  return kept?.totals !== undefined;
}

function isEntered(worksheet: Worksheet, line: Block, column: number): boolean {
  const cell = worksheet.getCellMatrix().getValue(line.row, line.column + column);
  return Boolean(cell && (cell.p ?? (cell.v !== null && cell.v !== undefined && cell.v !== '')));
}

function touches(one: Block, other: Block): boolean {
  return (
    one.row < other.row + other.rows &&
    other.row < one.row + one.rows &&
    one.column < other.column + other.columns &&
    other.column < one.column + one.columns
  );
}

export function rangeOfBlock(at: Block): ITableRange {
  return {
    startRow: at.row,
    endRow: at.row + at.rows - 1,
    startColumn: at.column,
    endColumn: at.column + at.columns - 1,
  };
}

export function blockOfRange(sheet: string, range: ITableRange): Block {
  return {
    sheet,
    row: range.startRow,
    column: range.startColumn,
    rows: range.endRow - range.startRow + 1,
    columns: range.endColumn - range.startColumn + 1,
  };
}
