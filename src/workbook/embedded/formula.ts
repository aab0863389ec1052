/** Formula text of a call, in the embedded spreadsheet's own references. */
import type { Block, Call } from '../port';
import { fixed } from '../shared/address';
import { callText } from '../shared/call';
import { readCells, worksheetNamed } from './cells';
import { spareRows } from './measures';
import type { Spreadsheet } from './spreadsheet';
import { seeName } from './seeing';
import { tableNamed } from './tables';

/** The formula of a call that is to stand in the cell `at`. Throws when a table it points at does not exist. */
export function formulaOf(spreadsheet: Spreadsheet, call: Call, at: Block): string {
  return callText(call, (argument) =>
    fixed('block' in argument ? argument.block : withSpareRows(spreadsheet, argument, at)),
  );
}

/**
 * The block of a table, or of cells that have a name, with the blank rows below it, as far as they are free of anything else: the
 * spreadsheet's tables do not grow by themselves, so a formula that named the table's present rows would miss what is typed
 * below; our functions pass over blank rows.
 */
export function withSpareRows(
  spreadsheet: Spreadsheet,
  of: { readonly table: string } | { readonly name: string },
  formulaCell: Block | null,
): Block {
  const table = 'table' in of ? tableNamed(spreadsheet, of.table) : namedCells(spreadsheet, of.name);
  if (!table) throw new Error(`there is no table ${'table' in of ? of.table : of.name}`);
  const end = table.at.row + table.at.rows;
  const below = { ...table.at, row: end, rows: Math.min(spareRows, table.worksheet.getRowCount() - end) };
  const { values, formulas } = readCells(spreadsheet, table.worksheet, below);
  let free = values.findIndex((line, down) => line.some((value, across) => value !== null || formulas[down]?.[across]));
  if (free < 0) free = below.rows;
  // A formula below its own table would otherwise read what it writes.
  const ownRow = formulaCell && formulaCell.sheet === table.at.sheet ? formulaCell.row - end : below.rows;
  if (ownRow >= 0) free = Math.min(free, ownRow);
  return { ...table.at, rows: table.at.rows + free };
}

/** Cells that have a name, and the sheet they stand on. */
function namedCells(spreadsheet: Spreadsheet, name: string) {
  const { at } = seeName(spreadsheet, name);
  const worksheet = at && worksheetNamed(spreadsheet, at.sheet);
  return at && worksheet && { at, worksheet };
}
