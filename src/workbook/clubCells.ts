/** Clubs of the table Clubs, each known by its job and what it is called. */
import { columnsAt } from './headings';
import type { Change, TableSeen } from './port';
import { CLUBS } from './schema';
import { jobName } from './shop';
import { writeCells } from './tableCells';
import type { TableCell } from './tableCell';

/** One write of cells of Clubs; taking it back finds the clubs wherever they stand by then. */
export function writeClubs(clubs: TableSeen, cells: readonly TableCell[]): Change[] {
  return writeCells(clubs, cells, identityColumns(clubs));
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
