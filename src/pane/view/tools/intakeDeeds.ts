/** What is done over the counter: a job begun, its sheet filled, last time's grips taken over, reminders written. */
import { fillIntake } from '../../../workbook/fillIntake';
import { fillReminders } from '../../../workbook/fillReminders';
import type { JobRequest } from '../../../workbook/intakeOutcomes';
import { startJob } from '../../../workbook/startJob';
import { takeLast } from '../../../workbook/takeLast';
import { sayIntake, sayJob, sayLast, sayReminders } from '../../../words/intake';
import type { Deed } from '../../state/deed';

/** @param begun is told the number that the job got */
export function beginDeed(request: JobRequest, begun: (job: string) => void): Deed {
  return {
    doing: 'Beginning the job…',
    done: 'Job begun',
    failed: 'The job was not begun',
    run: async (port) => {
      const end = await startJob(port, request);
      if (end.done) begun(end.job);
      return { end, text: sayJob(end) };
    },
  };
}

export function intakeDeed(job: string): Deed {
  return {
    doing: 'Filling the intake sheet…',
    done: 'Intake sheet filled',
    failed: 'The intake sheet was not filled',
    run: async (port, shop, over) => {
      const end = await fillIntake(port, shop, { job, agreed: over ?? undefined });
      return { end, text: sayIntake(end) };
    },
  };
}

export function takeLastDeed(job: string): Deed {
  return {
    doing: 'Taking over…',
    done: 'Taken over',
    failed: 'Nothing was taken over',
    run: async (port, _shop, over) => {
      const end = await takeLast(port, job, over);
      return { end, text: sayLast(end) };
    },
  };
}

export function remindersDeed(today: number): Deed {
  return {
    doing: 'Writing the reminders…',
    done: 'Reminders written',
    failed: 'No reminders were written',
    run: async (port, shop, over) => {
      const end = await fillReminders(port, shop, { today, agreed: over ?? undefined });
      return { end, text: sayReminders(end) };
    },
  };
}
