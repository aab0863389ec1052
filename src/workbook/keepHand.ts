/** Keeping what was measured on a hand in the job's row of Jobs. */
import { columnsAt, folded } from './headings';
import type { HandDone, HandMeasures, InTheWay } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { Block, TableSeen, WorkbookPort } from './port';
import { columnOf, JOBS } from './schema';
import { isBlankCell, jobName } from './shop';
import type { Shop } from './shop';
import { askFirst, blockOfCell, changedCells, formulaCells, writeCells } from './tableCells';
import type { TableCell } from './tableCell';

const MEASURES = [
  'handLength',
  'fingerLength',
  'lowerHandLength',
  'lowerFingerLength',
] as const satisfies readonly Exclude<keyof HandMeasures, 'job'>[];

/**
 * Writes the measures of a hand into the row of their job. A formula, and a measure that came into the sheet after the person
 * looked, are replaced only when the person agreed to that very one.
 *
 * @param shop as read when the hand was measured
 * @param hand inches; null leaves a cell as it is
 */
export async function keepHand(
  port: WorkbookPort,
  shop: Shop,
  hand: HandMeasures,
  agreed: InTheWay | null = null,
): Promise<HandDone> {
  return politely(async (): Promise<HandDone> => {
    const [jobs] = await port.read([{ read: 'table', table: JOBS.name }]);
    if (!jobs) return { done: false, reason: 'tableMissing', table: JOBS.name };
    const measured = MEASURES.filter((key) => hand[key] !== null);
    const at = columnsAt(JOBS, jobs.headers);
    const lacking = (['job', ...measured] as const).filter((key) => at(key) < 0);
    if (lacking.length > 0) {
      return { done: false, reason: 'columnMissing', table: JOBS.name, headers: lacking.map(headingOf) };
    }
    const row = rowOfJob(jobs, hand.job);
    if (row === 0) return { done: false, reason: 'jobNotListed', job: jobName(hand.job) };
    const cells = changedCells(
      jobs,
      measured.map((key) => ({ row, column: at(key), value: toHundredths(hand[key]) })),
    );
    const question = askFirst(null, [...formulaCells(jobs, cells), ...cameSince(shop, jobs, hand.job, cells)], agreed);
    if (question) return question;
    if (cells.length > 0) await write(port, jobs, cells, jobName(hand.job));
    return { done: true, job: jobName(hand.job), cells: cells.length };
  });
}

function headingOf(key: string): string {
  return columnOf(JOBS, key).header;
}

/** Body row, from 1, that names the job; the first where several do, 0 where none does. */
function rowOfJob(jobs: TableSeen, job: string): number {
  const at = columnsAt(JOBS, jobs.headers)('job');
  return folded(job) === '' ? 0 : jobs.rows.findIndex((row) => folded(row[at]) === folded(job)) + 1;
}

/** A hundredth of an inch is a quarter of a millimetre: finer than a hand can be measured (common practice, no source). */
function toHundredths(inches: number | null): number | null {
  return inches === null ? null : Math.round(inches * 100) / 100;
}

/** Cells to be written that hold something now which the person was not shown. */
function cameSince(
  { tables: { Jobs: before } }: Shop,
  jobs: TableSeen,
  job: string,
  cells: readonly TableCell[],
): Block[] {
  const was = before?.rows[rowOfJob(before, job) - 1];
  const wasAt = (column: number): number => before?.headers.indexOf(jobs.headers[column] ?? '') ?? -1;
  const changed = cells.filter(({ row, column }) => {
    const now = jobs.rows[row - 1]?.[column];
    return !isBlankCell(now) && JSON.stringify(now) !== JSON.stringify(was?.[wasAt(column)]);
  });
  // A cell with a formula is asked about as such; what it shows may change of itself.
  const formulas = formulaCells(jobs, changed);
  return changed
    .map((cell) => blockOfCell(jobs, cell))
    .filter((cell) => !formulas.some(({ row, column }) => row === cell.row && column === cell.column));
}

async function write(port: WorkbookPort, jobs: TableSeen, cells: readonly TableCell[], job: string): Promise<void> {
  const identity = [columnsAt(JOBS, jobs.headers)('job')];
  await port.apply(
    // No plan is placed here, so taking this back must not touch the places.
    [...writeCells(jobs, cells, identity), { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }],
    [jobs],
    { label: `Hand of job ${job}`, receiptKey: LAST_FILL_KEY },
  );
}
