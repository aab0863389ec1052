/** A job at the bench, as its screen shows it. Pure. */
import { benchTicket, type BenchTicket, type CheckedClub, type CheckIn, type Issue } from '../../../core/index';
import { benchRound, judgedJob, planJob, strayRows } from '../../../workbook/benchJob';
import { unjudgedCells } from '../../../workbook/checkInJobs';
import { jobStatus } from '../../../workbook/jobStatus';
import { readBench } from '../../../workbook/readBench';
import type { Shop } from '../../../workbook/shop';

/** A job at the bench: its ticket, and its check-in as far as it was measured. */
export interface BenchSeen {
  readonly ticket: BenchTicket;
  /** Above 1: a redo of the ticket's clubs. */
  readonly round: number;
  /** null while Checkin has no row of the job. */
  readonly checkIn: CheckIn | null;
  /** Clubs of the check-in that the bench works on now. */
  readonly checked: readonly CheckedClub[];
  /** Cells of Checkin that do not say so yet. */
  readonly unjudged: number;
  /** Jobs says that it is done. */
  readonly isDone: boolean;
  /** What is wrong with Rates, and rows of Checkin that belong to no job. */
  readonly problems: readonly Issue[];
}

/** A job at the bench, from Clubs as it stands; null where it has no clubs that can be planned. */
export function benchSeen({ tables }: Shop, job: string): BenchSeen | null {
  const planned = planJob(tables, job);
  if (!planned?.ok) return null;
  const { plan, input } = planned.value;
  const { ask, problems } = readBench(tables);
  const judged = judgedJob(tables, job, planned.value);
  const { checkIn, rows } = judged;
  const round = benchRound(tables, job, planned.value);
  const status = jobStatus(tables, job);
  return {
    ticket: benchTicket(plan, input, { ...ask, again: round.number > 1 ? round.rows : undefined }),
    round: round.number,
    checkIn: rows.length > 0 ? checkIn : null,
    checked: checkIn.clubs.filter(({ row }) => round.rows.has(row)),
    unjudged: unjudgedCells(tables, judged),
    isDone: !('done' in status) && status.isDone,
    problems: [...problems, ...strayRows(tables)],
  };
}
