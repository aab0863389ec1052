/** The clubs of a job as they go back: each with its plan and what was measured of it. */
import { benchTicket, type CheckedClub, type TicketClub } from '../core/index';
import { judgedJob } from './benchJob';
import type { JobAtHand } from './fillBenchPage';
import { readBench } from './readBench';
import type { ClubPlan } from '../core/index';

export interface HandedClub {
  readonly plan: ClubPlan;
  readonly checked: CheckedClub | undefined;
  readonly ticket: TicketClub | undefined;
}

/** In the order of Clubs. */
export function handedClubs({ tables, job, planned, round }: JobAtHand): readonly HandedClub[] {
  const { plan, input } = planned;
  const { checkIn } = judgedJob(tables, job, planned);
  const ticket = benchTicket(plan, input, readBench(tables).ask);
  return plan.clubs
    .filter(({ row }) => round.rows.has(row))
    .map((club) => ({
      plan: club,
      checked: checkIn.clubs.find(({ row }) => row === club.row),
      ticket: ticket.clubs.find(({ row }) => row === club.row),
    }));
}
