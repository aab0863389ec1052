/** A redo under warranty: clubs of a closed job come back and are done once more. */
import { isGripped } from '../core/index';
import type { RedoDone } from './benchDone';
import { lastRound } from './benchJob';
import { checkInRow, fittedCells, rowsAdded } from './checkInJobs';
import { columnsAt, folded } from './headings';
import { lookAtJob } from './jobAtBench';
import { jobCell } from './jobNumber';
import { jobStatus, statusCell } from './jobStatus';
import type { InTheWay } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { WorkbookPort } from './port';
import { lastTaken } from './rounds';
import { CHECKIN, columnOf, JOBS } from './schema';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';

/**
 * Gives clubs of a closed job rows of the next round in Checkin and opens the job again. What was measured the first time stays where it is.
 * Nothing is charged: no quote is touched.
 *
 * @param clubs their names as in Clubs
 */
export async function redoJob(
  port: WorkbookPort,
  job: string,
  clubs: readonly string[],
  agreed: InTheWay | null = null,
): Promise<RedoDone> {
  return politely(async (): Promise<RedoDone> => {
    const ready = await lookAtJob(port, job);
    if ('done' in ready) return ready;
    const { tables, checkin, planned } = ready;
    const status = jobStatus(tables, job);
    if ('done' in status) return status;
    if (!status.isDone) return { done: false, reason: 'notClosed', job };
    if (clubs.length === 0) return { done: false, reason: 'nothingChosen' };
    const headers = [columnOf(CHECKIN, 'round').header];
    if (columnsAt(CHECKIN, checkin.headers)('round') < 0) {
      return { done: false, reason: 'columnMissing', table: CHECKIN.name, headers };
    }
    const wanted = new Set(clubs.map(folded));
    const names = planned.plan.clubs.filter((club) => isGripped(club) && wanted.has(folded(club.name)));
    const unknown = clubs.filter((club) => !names.some(({ name }) => folded(name) === folded(club)));
    if (unknown.length > 0) return { done: false, reason: 'clubsUnknown', clubs: unknown };
    const { jobs } = status;
    const cells = changedCells(jobs, [statusCell(status, 'Open')]);
    const question = askFirst(null, formulaCells(jobs, cells), agreed);
    if (question) return question;
    // A number that the ledger has already would take nothing from stock.
    const round = Math.max(lastRound(tables, job), lastTaken(tables, job)) + 1;
    const number = jobCell(tables, CHECKIN, checkin, job);
    const rows = names.map((club) =>
      checkInRow(checkin, { job: number, club: club.name, round, ...fittedCells(club) }),
    );
    const { changes, looked, first } = await rowsAdded(port, checkin, rows);
    await port.apply(
      [
        ...changes,
        ...writeCells(jobs, cells, [columnsAt(JOBS, jobs.headers)('job')]),
        { do: 'remember', key: PLANS_BEFORE_KEY, value: '' },
        { do: 'show', at: first },
      ],
      [checkin, jobs, ...looked],
      { label: `Redo of job ${job}`, receiptKey: LAST_FILL_KEY },
    );
    return { done: true, job, round, clubs: names.map(({ name }) => name) };
  });
}
