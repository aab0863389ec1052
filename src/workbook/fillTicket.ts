/** Filling a job's bench ticket into a sheet of its own, as values to be printed. */
import { benchTicket } from '../core/index';
import { planJob } from './benchJob';
import { fillPage, type MakePage } from './fillPage';
import { jobFacts } from './jobFacts';
import type { InTheWay, TicketDone } from './outcomes';
import type { WorkbookPort } from './port';
import { readBench } from './readBench';
import { CLUBS } from './schema';
import { pageSheetName } from './sheetName';
import type { Shop } from './shop';
import { dressTicket, ticketPage } from './ticketSheet';

/** Writes the ticket of a job from its clubs as they stand in Clubs. Filled again, it is rewritten in place. */
export async function fillTicket(
  port: WorkbookPort,
  shop: Shop,
  { job, agreed }: { readonly job: string; readonly agreed?: InTheWay | undefined },
): Promise<TicketDone> {
  let clubs = 0;
  const make: MakePage<Exclude<TicketDone, { done: true } | { reason: 'port' | 'occupied' | 'noRoom' }>> = (tables) => {
    if (!tables.Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    const planned = planJob(tables, job);
    if (!planned) return { done: false, reason: 'noClubs' };
    if (!planned.ok) return { done: false, reason: 'notPlanned', issue: planned.issue };
    const ticket = benchTicket(planned.value.plan, planned.value.input, readBench(tables).ask);
    if (ticket.clubs.length === 0) return { done: false, reason: 'noGrips' };
    clubs = ticket.clubs.length;
    const page = ticketPage(jobFacts(tables, job), ticket);
    return {
      ...page,
      key: `ticket:job:${job.trim().toLowerCase()}`,
      job,
      sheetName: (taken) => pageSheetName('Ticket', job, taken),
      dress: (at) => dressTicket(at, page),
      label: `Bench ticket of job ${job}`,
    };
  };
  const end = await fillPage(port, shop, make, agreed);
  return end.done ? { ...end, clubs } : end;
}
