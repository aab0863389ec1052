/** Closing a job once all of it is accepted or waived. */
import { canClose } from '../core/index';
import type { CloseDone } from './benchDone';
import { judgedJob } from './benchJob';
import { lastJudging } from './checkInJobs';
import { columnsAt } from './headings';
import { lookAtJob } from './jobAtBench';
import { closedCells, jobStatus, statusCell } from './jobStatus';
import type { InTheWay } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { WorkbookPort } from './port';
import { JOBS } from './schema';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';

/**
 * Sets the job's Status to Done and the date it was closed, only when every club is accepted or waived; else says what is open. A job that
 * is Done already is left as it is. How each club stands is written into Checkin once more, around what a person typed there.
 *
 * @param today day as a workbook counts it
 */
export async function closeJob(
  port: WorkbookPort,
  job: string,
  today: number,
  agreed: InTheWay | null = null,
): Promise<CloseDone> {
  return politely(async (): Promise<CloseDone> => {
    const ready = await lookAtJob(port, job);
    if ('done' in ready) return ready;
    const { tables, planned, checkin } = ready;
    const status = jobStatus(tables, job);
    if ('done' in status) return status;
    if (status.isDone) return { done: true, job, already: true };
    const judged = judgedJob(tables, job, planned);
    const closing = canClose(judged.checkIn);
    if (!closing.closes) return { done: false, reason: 'open', closing };
    const { jobs } = status;
    const cells = changedCells(jobs, [statusCell(status, 'Done'), ...closedCells(status, today)]);
    const question = askFirst(null, formulaCells(jobs, cells), agreed);
    if (question) return question;
    await port.apply(
      [
        ...(await lastJudging(port, ready, judged, job)),
        ...writeCells(jobs, cells, [columnsAt(JOBS, jobs.headers)('job')]),
        { do: 'remember', key: PLANS_BEFORE_KEY, value: '' },
      ],
      [jobs, checkin],
      { label: `Job ${job} closed`, receiptKey: LAST_FILL_KEY },
    );
    return { done: true, job, already: false };
  });
}
