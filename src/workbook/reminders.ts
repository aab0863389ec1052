/** Which customers are due for a reminder. Pure: what day it is today is told. */
import { monthsLater } from './days';
import { folded } from './headings';
import { settingValues } from './readSettings';
import { CLUBS, REMIND_AFTER_MONTHS } from './schema';
import { matrixOf, type ShopTables } from './shop';
import { jobRows, tableRows, textOf, type JobRow } from './shopRows';

/** A customer whose grips are due. */
export interface Reminder {
  readonly customer: string;
  /** The last job that was closed. */
  readonly job: string;
  readonly closed: number;
  readonly clubs: number;
  /** Grips that were fitted then, each once. */
  readonly items: readonly string[];
  /** Since when. */
  readonly due: number;
}

export interface Reminders {
  /** The longest due first. */
  readonly due: readonly Reminder[];
  readonly months: number;
  /** Jobs that are done and say neither when they were closed nor who the customer is: nothing can be told of them. */
  readonly undated: readonly string[];
  /** Customers who are not due yet. */
  readonly later: number;
  /** Customers with a job that is not done: they are not reminded. */
  readonly open: number;
}

/**
 * Customers whose last closed job lies further back than the shop's setting, and who have no job open.
 *
 * @param today a day as workbooks count
 */
export function dueReminders(tables: ShopTables, today: number): Reminders {
  const months = remindAfterMonths(tables);
  const jobs = jobRows(tables);
  const named = jobs.filter(({ customer }) => customer !== '');
  const openFor = new Set(named.filter(({ done }) => !done).map(({ customer }) => folded(customer)));
  const dated = named.filter(({ done, closed }) => done && closed !== undefined);
  const last = new Map<string, JobRow>();
  for (const job of dated) {
    const known = last.get(folded(job.customer));
    if (!known || (job.closed ?? 0) >= (known.closed ?? 0)) last.set(folded(job.customer), job);
  }
  const waiting = [...last].filter(([customer]) => !openFor.has(customer)).map(([, job]) => job);
  const all = waiting.map((job) => reminderOf(tables, job, months));
  return {
    due: all.filter(({ due }) => due <= today).sort((one, other) => one.due - other.due),
    months,
    undated: jobs
      .filter(({ done, closed, customer }) => done && (closed === undefined || customer === ''))
      .map(({ job }) => job),
    later: all.filter(({ due }) => due > today).length,
    open: [...last.keys()].filter((customer) => openFor.has(customer)).length,
  };
}

function remindAfterMonths({ Settings }: ShopTables): number {
  const read = settingValues(Settings && matrixOf(Settings));
  const value = read.ok ? read.value.values.get('remindAfter') : undefined;
  return typeof value === 'number' ? Math.round(value) : REMIND_AFTER_MONTHS;
}

function reminderOf(tables: ShopTables, { job, customer, closed = 0 }: JobRow, months: number): Reminder {
  const clubs = tableRows(tables, CLUBS).filter((row) => folded(textOf(row, 'job')) === folded(job));
  const items = clubs.map((row) => textOf(row, 'newItem')).filter((item) => item !== '');
  return {
    customer,
    job,
    closed,
    clubs: clubs.length,
    items: [...new Set(items)],
    due: monthsLater(closed, months),
  };
}
