/** A job's Status in Jobs, and the date it was closed. */
import { columnsAt, folded } from './headings';
import type { NotDone } from './outcomes';
import type { TableSeen } from './port';
import { columnOf, JOBS, type JOB_STATES } from './schema';
import { isBlankCell, type ShopTables } from './shop';
import type { TableCell } from './tableCell';

export interface JobStatus {
  readonly jobs: TableSeen;
  /** Body row, from 1. */
  readonly row: number;
  readonly isDone: boolean;
}

export type NoStatus =
  | Extract<NotDone, { reason: 'tableMissing' | 'columnMissing' }>
  | { readonly done: false; readonly reason: 'jobNotListed'; readonly job: string };

/** The first row of Jobs that names the job. */
export function jobStatus({ Jobs: jobs }: ShopTables, job: string): JobStatus | NoStatus {
  if (!jobs) return { done: false, reason: 'tableMissing', table: JOBS.name };
  const at = columnsAt(JOBS, jobs.headers);
  if (at('status') < 0) {
    return { done: false, reason: 'columnMissing', table: JOBS.name, headers: [columnOf(JOBS, 'status').header] };
  }
  const row = jobs.rows.findIndex((each) => folded(each[at('job')]) === folded(job)) + 1;
  if (row === 0) return { done: false, reason: 'jobNotListed', job };
  return { jobs, row, isDone: folded(jobs.rows[row - 1]?.[at('status')]) === 'done' };
}

export function statusCell({ jobs, row }: JobStatus, status: (typeof JOB_STATES)[number]): TableCell {
  return { row, column: columnsAt(JOBS, jobs.headers)('status'), value: status };
}

/** The date of closing, where Jobs has a column for it and it says none yet: after a redo the first one stays. */
export function closedCells({ jobs, row }: JobStatus, today: number): TableCell[] {
  const column = columnsAt(JOBS, jobs.headers)('closed');
  return column >= 0 && isBlankCell(jobs.rows[row - 1]?.[column]) ? [{ row, column, value: today }] : [];
}
