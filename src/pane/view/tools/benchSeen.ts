/** A job at the bench, as its screen shows it. Pure. */
import { benchTicket, type BenchTicket, type CheckIn, type Issue } from '../../../core/index';
import { judgedJob, planJob } from '../../../workbook/benchJob';
import { readBench } from '../../../workbook/readBench';
import type { Shop } from '../../../workbook/shop';

/** A job at the bench: its ticket, and its check-in as far as it was measured. */
export interface BenchSeen {
  readonly ticket: BenchTicket;
  /** null while Checkin has no row of the job. */
  readonly checkIn: CheckIn | null;
  /** What is wrong with Rates. */
  readonly problems: readonly Issue[];
}

/** A job at the bench, from Clubs as it stands; null where it has no clubs that can be planned. */
export function benchSeen({ tables }: Shop, job: string): BenchSeen | null {
  const planned = planJob(tables, job);
  if (!planned?.ok) return null;
  const { plan, input } = planned.value;
  const { ask, problems } = readBench(tables);
  const { checkIn, rows } = judgedJob(tables, job, planned.value);
  return { ticket: benchTicket(plan, input, ask), checkIn: rows.length > 0 ? checkIn : null, problems };
}
