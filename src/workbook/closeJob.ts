/** Closing a job once all of it is accepted or waived. */
import { canClose } from '../core/index';
import type { CloseDone } from './benchDone';
import { judgedJob } from './benchJob';
import { lastJudging } from './checkInJobs';
import { columnsAt } from './headings';
import { lookAtJob } from './jobAtBench';
import { closedCells, jobStatus, statusCell } from './jobStatus';
import type { InTheWay, Occupied } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { Block, WorkbookPort } from './port';
import { JOBS } from './schema';
import type { ShopTables } from './shop';
import { useReady, type UseReady } from './stockJobs';
import type { StockAct } from './stockWrites';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';

/**
 * Sets the job's Status to Done and the date it was closed, and takes what it used from stock, all in one write and only when every club is
 * accepted or waived; else says what is open. A job that is Done already is left as it is. How each club stands is written into Checkin once
 * more, around what a person typed there.
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
    if (status.isDone) return { done: true, job, already: true, movements: 0 };
    const judged = judgedJob(tables, job, planned);
    const closing = canClose(judged.checkIn);
    if (!closing.closes) return { done: false, reason: 'open', closing };
    const { jobs } = status;
    const cells = changedCells(jobs, [statusCell(status, 'Done'), ...closedCells(status, today)]);
    const formulas = formulaCells(jobs, cells);
    const used = await stockUsed(port, tables, job, { today, agreed });
    if (used && 'done' in used) return used.reason === 'occupied' ? withMore(used, formulas) : used;
    const question = askFirst(null, formulas, agreed);
    if (question) return question;
    await port.apply(
      [
        ...(await lastJudging(port, ready, judged, job)),
        ...(used?.changes ?? []),
        ...writeCells(jobs, cells, [columnsAt(JOBS, jobs.headers)('job')]),
        { do: 'remember', key: PLANS_BEFORE_KEY, value: '' },
      ],
      [jobs, checkin, ...(used?.looked ?? [])],
      { label: `Job ${job} closed`, receiptKey: LAST_FILL_KEY },
    );
    const movements = used && used.movements.length;
    return { done: true, job, already: false, movements, renamed: used?.renamed };
  });
}

type NotUsed = Exclude<Awaited<ReturnType<typeof useReady>>, UseReady>;

/** What stock the job takes; null in a workbook that keeps no ledger. */
async function stockUsed(
  port: WorkbookPort,
  tables: ShopTables,
  job: string,
  act: StockAct,
): Promise<UseReady | NotUsed | null> {
  return tables.Movements ? useReady(port, tables, job, act) : null;
}

/** One question about all cells, so that one answer is enough. */
function withMore(question: Occupied, more: readonly Block[]): Occupied {
  const cells = [...question.inTheWay.cells, ...more];
  return askFirst(question.inTheWay.place, cells, null) ?? question;
}
