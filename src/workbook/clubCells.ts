/** Putting values into cells of Clubs: only those that change, and no formula of the shop's unasked. */
import type { Block, Change, Put, Seen, TableSeen } from './port';
import { CLUBS } from './schema';
import { nameCells } from './shared/address';
import type { InTheWay, Occupied } from './outcomes';
import { isBlankCell, jobName } from './shop';
import { columnsAt } from './headings';

/** One value for one cell of the body: `row` from 1, `column` from 0. */
export interface ClubCell {
  readonly row: number;
  readonly column: number;
  readonly value: string | number | null;
}

/** Those of the cells that hold something else now. */
export function changedCells(clubs: TableSeen, cells: readonly ClubCell[]): ClubCell[] {
  return cells.filter(({ row, column, value }) => {
    const line = clubs.rows[row - 1];
    return line !== undefined && !sameContent(line[column], value);
  });
}

function sameContent(seen: Seen | undefined, value: string | number | null): boolean {
  return isBlankCell(seen) ? isBlankCell(value) : seen === value;
}

/** Cells among them that hold a formula, which a value would replace. */
export function formulaCells(clubs: TableSeen, cells: readonly ClubCell[]): Block[] {
  return cells
    .filter(({ row, column }) => (clubs.formulas?.[row - 1]?.[column] ?? null) !== null)
    .map(({ row, column }) => blockOfCell(clubs, row, column));
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

function blockOfCell(clubs: TableSeen, row: number, column: number): Block {
  return { sheet: clubs.at.sheet, row: clubs.at.row + row, column: clubs.at.column + column, rows: 1, columns: 1 };
}

/**
 * One write over the smallest block that holds the cells, everything between them left alone; nothing when there are none. Its
 * rows are known by job and club, so that taking back finds them after the table was sorted.
 */
export function writeCells(clubs: TableSeen, cells: readonly ClubCell[]): Change[] {
  if (cells.length === 0) return [];
  const least = (pick: (cell: ClubCell) => number): number =>
    cells.reduce((so, cell) => Math.min(so, pick(cell)), Infinity);
  const most = (pick: (cell: ClubCell) => number): number => cells.reduce((so, cell) => Math.max(so, pick(cell)), 0);
  const top = least(({ row }) => row);
  const left = least(({ column }) => column);
  const rows = most(({ row }) => row) - top + 1;
  const columns = most(({ column }) => column) - left + 1;
  const puts = Array.from({ length: rows }, () => Array<Put>(columns).fill(undefined));
  for (const { row, column, value } of cells) {
    const line = puts[row - top];
    if (line) line[column - left] = value;
  }
  const of = { table: clubs.name, by: identityColumns(clubs).flatMap((column) => clubs.headers[column] ?? []) };
  return [{ do: 'write', at: { ...blockOfCell(clubs, top, left), rows, columns }, cells: puts, of }];
}

/** The columns that tell clubs apart: their job and what they are called. */
function identityColumns(clubs: TableSeen): number[] {
  return ['job', 'club'].map(columnsAt(CLUBS, clubs.headers));
}

/** Names a club by its row, to find out whether it still stands there: its job and what it is called; null past the end. */
export function clubIdentities(clubs: TableSeen): (row: number) => string | null {
  const [job = -1, club = -1] = identityColumns(clubs);
  return (row) => {
    const line = clubs.rows[row - 1];
    return line ? JSON.stringify([jobName(line[job]), jobName(line[club])]) : null;
  };
}

/** Whether every one of the rows holds the same job and club in both readings of the table. */
export function sameClubs(before: TableSeen | null, now: TableSeen, rows: readonly number[]): boolean {
  if (!before) return false;
  const was = clubIdentities(before);
  const is = clubIdentities(now);
  return rows.every((row) => is(row) !== null && is(row) === was(row));
}
