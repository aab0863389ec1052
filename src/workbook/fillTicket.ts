/** A job's bench ticket. */
import { benchTicket } from '../core/index';
import type { BenchPageDone } from './benchDone';
import { fillBenchPage, type BenchPage, type PageAsked } from './fillBenchPage';
import type { WorkbookPort } from './port';
import { readBench } from './readBench';
import type { Shop } from './shop';
import { dressTicket, ticketPage } from './ticketSheet';

const TICKET: BenchPage = {
  key: 'ticket',
  sheet: 'Ticket',
  label: (job) => `Bench ticket of job ${job}`,
  make: ({ tables, facts, planned: { plan, input }, round }) => {
    const again = round.number > 1 ? round.rows : undefined;
    const page = ticketPage(facts, benchTicket(plan, input, { ...readBench(tables).ask, again }));
    return { ...page, dress: (at) => dressTicket(at, page) };
  },
};

export function fillTicket(port: WorkbookPort, shop: Shop, asked: PageAsked): Promise<BenchPageDone> {
  return fillBenchPage(port, shop, TICKET, asked);
}
