/** The clubs of a job as they go back: each with its plan and what was measured of it. */
import { benchTicket, isLead, type CheckedClub, type TicketClub } from '../core/index';
import { judgedJob } from './benchJob';
import type { JobAtHand } from './fillBenchPage';
import { readBench } from './readBench';
import type { ClubPlan } from '../core/index';

export interface HandedClub {
  /** With grip, layers and weight as they were fitted. */
  readonly plan: ClubPlan;
  readonly checked: CheckedClub | undefined;
  readonly ticket: TicketClub | undefined;
  /** The weight that was fitted is lead. */
  readonly hasLead: boolean;
}

/** In the order of Clubs. */
export function handedClubs({ tables, job, planned, round }: JobAtHand): readonly HandedClub[] {
  const { plan, input } = planned;
  const { checkIn } = judgedJob(tables, job, planned);
  const { ask } = readBench(tables);
  const ticket = benchTicket(plan, input, ask);
  return plan.clubs
    .filter(({ row }) => round.rows.has(row))
    .map((club) => {
      const checked = checkIn.clubs.find(({ row }) => row === club.row);
      const fitted = { ...club, ...checked?.fitted };
      const { remedy } = fitted;
      return {
        plan: fitted,
        checked,
        hasLead: remedy !== undefined && remedy.grams > 0 && isLead(remedy.way, ask.habits),
        ticket: ticket.clubs.find(({ row }) => row === club.row),
      };
    });
}
