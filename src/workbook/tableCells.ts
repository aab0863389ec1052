/** Putting values into cells of a table: only those that change, and no formula of the shop's unasked. */
import type { Block, Change, Put, Seen, TableSeen } from './port';
import { nameCells } from './shared/address';
import type { InTheWay, Occupied } from './outcomes';
import { isBlankCell } from './shop';
import type { TableCell } from './tableCell';

/** Those of the cells that hold something else now. */
export function changedCells(table: TableSeen, cells: readonly TableCell[]): TableCell[] {
  return cells.filter(({ row, column, value }) => {
    const line = table.rows[row - 1];
    return line !== undefined && !sameContent(line[column], value);
  });
}

function sameContent(seen: Seen | undefined, value: string | number | null): boolean {
  return isBlankCell(seen) ? isBlankCell(value) : seen === value;
}

/** Cells among them that hold a formula, which a value would replace. */
export function formulaCells(table: TableSeen, cells: readonly TableCell[]): Block[] {
  return cells
    .filter(({ row, column }) => (table.formulas?.[row - 1]?.[column] ?? null) !== null)
    .map((cell) => blockOfCell(table, cell));
}

const MOST_NAMED = 200;

/** The question to ask before cells of a person's are written over; null where there are none but those agreed to already. */
export function askFirst(
  place: Block | null,
  cells: readonly Block[],
  agreed: InTheWay | null | undefined,
): Occupied | null {
  const key = ({ sheet, row, column }: Block): string => JSON.stringify([sheet.toLowerCase(), row, column]);
  const known = new Set(agreed?.cells.map(key));
  if (cells.every((cell) => known.has(key(cell)))) return null;
  return { done: false, reason: 'occupied', cells: nameCells(cells).slice(0, MOST_NAMED), inTheWay: { place, cells } };
}

/** Where a cell of the body stands in its sheet. */
export function blockOfCell(table: TableSeen, { row, column }: Pick<TableCell, 'row' | 'column'>): Block {
  return { sheet: table.at.sheet, row: table.at.row + row, column: table.at.column + column, rows: 1, columns: 1 };
}

/**
 * One write over the smallest block that holds the cells, everything between them left alone; nothing when there are none.
 *
 * @param identity columns, counted from 0, by which the table's rows are known, so that taking back finds them after a sort
 */
export function writeCells(table: TableSeen, cells: readonly TableCell[], identity: readonly number[]): Change[] {
  if (cells.length === 0) return [];
  const least = (pick: (cell: TableCell) => number): number =>
    cells.reduce((so, cell) => Math.min(so, pick(cell)), Infinity);
  const most = (pick: (cell: TableCell) => number): number => cells.reduce((so, cell) => Math.max(so, pick(cell)), 0);
  const top = least(({ row }) => row);
  const left = least(({ column }) => column);
  const rows = most(({ row }) => row) - top + 1;
  const columns = most(({ column }) => column) - left + 1;
  const puts = Array.from({ length: rows }, () => Array<Put>(columns).fill(undefined));
  for (const { row, column, value } of cells) {
    const line = puts[row - top];
    if (line) line[column - left] = value;
  }
  const of = { table: table.name, by: identity.flatMap((column) => table.headers[column] ?? []) };
  const at = { ...blockOfCell(table, { row: top, column: left }), rows, columns };
  return [{ do: 'write', at, cells: puts, of }];
}
