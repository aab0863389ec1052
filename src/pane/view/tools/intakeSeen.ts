/** What the intake screen shows of a shop, and of a job that is being begun. Pure but for the day, which is told. */
import { readClubList, type ClubList } from '../../../workbook/clubList';
import { readDay } from '../../../workbook/days';
import { intakeFault } from '../../../workbook/fillIntake';
import { folded } from '../../../workbook/headings';
import { lastTimes, type LastTime } from '../../../workbook/history';
import type { IntakeFault, JobFault, JobRequest } from '../../../workbook/intakeOutcomes';
import { namedJobs, nextJob } from '../../../workbook/jobNumber';
import type { Shop } from '../../../workbook/shop';
import { jobRows } from '../../../workbook/shopRows';
import { jobFault } from '../../../workbook/startJob';
import { lastOfJob } from '../../../workbook/takeLast';
import type { IntakeForm } from '../../state/tools';

/** A job that is being begun. */
export interface NewJobSeen {
  readonly list: ClubList;
  readonly last: readonly LastTime[];
  readonly dueFault: boolean;
  /** Nothing was typed yet: what is missing need not be said. */
  readonly untouched: boolean;
  readonly fault: JobFault | undefined;
  /** What is asked for; null while something in it cannot be read. */
  readonly request: JobRequest | null;
}

export function newJobSeen(shop: Shop, form: IntakeForm, today: number): NewJobSeen {
  const { tables } = shop;
  const list = readClubList(form.clubs);
  const clubs = list.clubs.map(({ name }) => name);
  const last = lastTimes(tables, { customer: form.customer, clubs, besides: null });
  const due = form.due === '' ? null : readDay(form.due);
  const request: JobRequest = {
    job: form.job.trim() || null,
    suggested: suggestedJob(shop),
    customer: knownName(shop, form.customer),
    due: due ?? null,
    today,
    clubs: list.clubs,
    hand: form.hand || null,
    firstTag: form.firstTag,
    authorisedBy: form.authorisedBy,
    last: form.asLast ? last : [],
  };
  const dueFault = due === undefined;
  return {
    list,
    last,
    dueFault,
    untouched: form.customer.trim() === '' || form.clubs.trim() === '',
    fault: jobFault(tables, request, request.job),
    request: dueFault || list.faults.length > 0 ? null : request,
  };
}

/** The name as the shop spells it already. */
function knownName(shop: Shop, typed: string): string {
  return customersOf(shop).find((name) => folded(name) === folded(typed)) ?? typed.trim();
}

/** Whose clubs came in before, each once, for typing a name. */
export function customersOf({ tables }: Shop): string[] {
  const names = new Map<string, string>();
  for (const { customer } of jobRows(tables)) if (customer !== '') names.set(folded(customer), customer);
  return [...names.values()].sort((one, other) => one.localeCompare(other));
}

/** The number a job would get; that one was given before, to a job that is gone, is known only when it is begun, and said then. */
export function suggestedJob({ tables }: Shop): string {
  return nextJob(namedJobs(tables), null);
}

/** What is to be said of a job that is there. */
export interface JobSeenAtCounter {
  readonly fault: IntakeFault | undefined;
  readonly customer: string;
  readonly last: readonly LastTime[];
}

export function jobSeen({ tables }: Shop, job: string): JobSeenAtCounter {
  return {
    fault: intakeFault(tables, job),
    customer: jobRows(tables).find((each) => folded(each.job) === folded(job))?.customer ?? '',
    last: lastOfJob(tables, job).map(({ last }) => last),
  };
}
