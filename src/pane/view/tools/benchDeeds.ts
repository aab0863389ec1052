/** What is done for a job at the bench. */
import { judgeCheckIn, startCheckIn } from '../../../workbook/checkInJobs';
import { closeJob } from '../../../workbook/closeJob';
import { dayOf } from '../../../workbook/days';
import { fillLabels, fillSlip } from '../../../workbook/fillHandOver';
import { fillTicket } from '../../../workbook/fillTicket';
import { jobStatus } from '../../../workbook/jobStatus';
import { redoJob } from '../../../workbook/redoJob';
import { sayClosing } from '../../../words/bench';
import { sayCheckIn, sayClosed, sayJudged, sayLabels, sayRedo, saySlip, sayTicket } from '../../../words/benchOutcomes';
import type { Deed } from '../../state/deed';
import { BENCH_WORDS } from './benchWords';

export function ticketDeed(job: string): Deed {
  return {
    doing: 'Filling the ticket…',
    done: 'Ticket filled',
    failed: 'The ticket was not filled',
    run: async (port, shop, over) => {
      const end = await fillTicket(port, shop, { job, agreed: over ?? undefined });
      return { end, text: sayTicket(end) };
    },
  };
}

export function labelsDeed(job: string): Deed {
  return {
    doing: 'Filling the labels…',
    done: 'Labels filled',
    failed: 'The labels were not filled',
    run: async (port, shop, over) => {
      const end = await fillLabels(port, shop, { job, agreed: over ?? undefined });
      return { end, text: sayLabels(end) };
    },
  };
}

export function slipDeed(job: string): Deed {
  return {
    doing: 'Filling the pick-up slip…',
    done: 'Pick-up slip filled',
    failed: 'The pick-up slip was not filled',
    run: async (port, shop, over) => {
      const end = await fillSlip(port, shop, { job, agreed: over ?? undefined });
      const status = jobStatus(shop.tables, job);
      const isOpen = end.done && !('done' in status) && !status.isDone;
      return { end, text: isOpen ? `${saySlip(end)} ${BENCH_WORDS.stillOpen}` : saySlip(end), partly: isOpen };
    },
  };
}

export function startDeed(job: string): Deed {
  return {
    doing: 'Starting the check-in…',
    done: 'Check-in started',
    failed: 'The check-in was not started',
    run: async (port) => {
      const end = await startCheckIn(port, job);
      return { end, text: sayCheckIn(end) };
    },
  };
}

export function judgeDeed(job: string): Deed {
  return {
    doing: 'Judging the check-in…',
    done: 'Check-in judged',
    failed: 'The check-in was not judged',
    run: async (port, _shop, over) => {
      const end = await judgeCheckIn(port, job, over);
      const same = end.done && end.cells === 0;
      return {
        end,
        text: end.done ? `${sayJudged(end)} ${sayClosing(end.closing)}` : sayJudged(end),
        ...(same && { headline: BENCH_WORDS.judgedAlready }),
      };
    },
  };
}

export function closeDeed(job: string): Deed {
  return {
    doing: 'Closing the job…',
    done: 'Job closed',
    failed: 'The job stays open',
    run: async (port, _shop, over) => {
      const end = await closeJob(port, job, dayOf(new Date()), over);
      return { end, text: !end.done && end.reason === 'open' ? sayClosing(end.closing) : sayClosed(end) };
    },
  };
}

/** @param clubs their names as in Clubs */
export function redoDeed(job: string, clubs: readonly string[]): Deed {
  return {
    doing: 'Beginning the redo…',
    done: 'Redo begun',
    failed: 'No redo was begun',
    run: async (port, _shop, over) => {
      const end = await redoJob(port, job, clubs, over);
      return { end, text: sayRedo(end) };
    },
  };
}
