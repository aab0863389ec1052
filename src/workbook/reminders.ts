/** Which customers are due for a reminder. Pure: what day it is today is told. */
import { groupedBy } from '../core/index';
import { monthsLater } from './days';
import { folded } from './headings';
import { settingValues } from './readSettings';
import type { Row } from './records';
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
  /** Those of them who would be due: the job may have been forgotten. The oldest first. */
  readonly held: readonly HeldBack[];
}

/** A customer who would be due, were it not for a job that is not done. */
export interface HeldBack {
  readonly customer: string;
  /** The oldest of their jobs that are not done. */
  readonly job: string;
  /** Day it came in; else the day it is due; undefined where Jobs says neither. */
  readonly since: { readonly is: 'received' | 'due'; readonly day: number; readonly daysAgo: number } | undefined;
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
  const openFor = oldestOpen(named);
  const dated = named.filter(({ done, closed }) => done && closed !== undefined);
  const last = new Map<string, JobRow>();
  for (const job of dated) {
    const known = last.get(folded(job.customer));
    if (!known || (job.closed ?? 0) >= (known.closed ?? 0)) last.set(folded(job.customer), job);
  }
  const waiting = [...last].filter(([customer]) => !openFor.has(customer)).map(([, job]) => job);
  // Clubs is read once: read for each customer anew, hundreds of them held up the pane.
  const clubs = groupedBy(tableRows(tables, CLUBS), (row) => folded(textOf(row, 'job')));
  const all = waiting.map((job) => reminderOf(job, clubs.get(folded(job.job)) ?? [], months));
  return {
    due: all.filter(({ due }) => due <= today).sort((one, other) => one.due - other.due),
    months,
    undated: jobs
      .filter(({ done, closed, customer }) => done && (closed === undefined || customer === ''))
      .map(({ job }) => job),
    later: all.filter(({ due }) => due > today).length,
    open: [...last.keys()].filter((customer) => openFor.has(customer)).length,
    held: [...last]
      .flatMap(([customer, { closed = 0 }]) => {
        const open = openFor.get(customer);
        return open && monthsLater(closed, months) <= today ? [heldBack(open, today)] : [];
      })
      .sort((one, other) => (one.since?.day ?? 0) - (other.since?.day ?? 0)),
  };
}

/** The oldest job of each customer that is not done. */
function oldestOpen(jobs: readonly JobRow[]): Map<string, JobRow> {
  const oldest = new Map<string, JobRow>();
  for (const job of jobs) {
    const key = folded(job.customer);
    const known = oldest.get(key);
    if (!job.done && (!known || sinceOf(job) < sinceOf(known))) oldest.set(key, job);
  }
  return oldest;
}

/** A job of which no day is known may be the oldest of all. */
function sinceOf({ received, due }: JobRow): number {
  return received ?? due ?? -Infinity;
}

function heldBack({ customer, job, received, due }: JobRow, today: number): HeldBack {
  const day = received ?? due;
  if (day === undefined) return { customer, job, since: undefined };
  const is = received === undefined ? 'due' : 'received';
  return { customer, job, since: { is, day, daysAgo: Math.floor(today) - Math.floor(day) } };
}

function remindAfterMonths({ Settings }: ShopTables): number {
  const read = settingValues(Settings && matrixOf(Settings));
  const value = read.ok ? read.value.values.get('remindAfter') : undefined;
  return typeof value === 'number' ? Math.round(value) : REMIND_AFTER_MONTHS;
}

function reminderOf({ job, customer, closed = 0 }: JobRow, clubs: readonly Row[], months: number): Reminder {
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
