/** What lies ahead: open jobs by the week they are due in, with the minutes, the pieces and the money that they come to. Pure. */
import { drained, ok, sumMoney } from '../core/index';
import type { Currency, Issue, Money, Progress, Result, StockState } from '../core/index';
import { mondayOf } from './days';
import { folded } from './headings';
import { openJobsSteps, type OpenJob } from './openJobs';
import type { NotDone, Occupied } from './outcomes';
import type { Block } from './port';
import { readMoney, type TermsChosen } from './readMoney';
import { latestOf, readRegister, type Registered } from './quoteRegister';
import { moneyTables, quotePlan } from './quoteScope';
import type { ShopTables } from './shop';
import { stockSteps } from './stockScope';

/** A thing that a job does not get. */
export interface ShortItem {
  readonly item: string;
  readonly quantity: number;
  /** How much of that is on order. */
  readonly onOrder: number;
  readonly shelf: StockState['items'][number]['shelf'];
}

/** What a job comes to in money. */
export interface WeekMoney {
  /** As its clubs would be quoted now; undefined while something has to be mended first. */
  readonly now: Money | undefined;
  /** The quote that stands; undefined: none was issued. */
  readonly issued: Pick<Registered, 'number' | 'revision' | 'total' | 'currency' | 'validUntil'> | undefined;
  readonly issues: readonly Issue[];
}

export interface WeekJob extends Pick<OpenJob, 'job' | 'customer' | 'due' | 'state' | 'clubs' | 'round'> {
  /** Clubs that get a grip. */
  readonly fitted: number;
  readonly minutes: number;
  /** Work of which Rates tells no minutes. */
  readonly untimed: readonly string[];
  readonly short: readonly ShortItem[];
  readonly money: WeekMoney;
}

/** Jobs that are due in the same week. */
export interface WeekPart {
  readonly when: 'overdue' | 'week' | 'noDay';
  /** Monday of the week, as a workbook counts days; undefined for jobs without a day, and for those overdue. */
  readonly monday: number | undefined;
  readonly jobs: readonly WeekJob[];
  readonly minutes: number;
  /** What is quoted, or would be; undefined where no job has a price. */
  readonly money: Money | undefined;
  /** Jobs whose money is not known. */
  readonly unpriced: number;
}

export interface Week {
  readonly parts: readonly WeekPart[];
  readonly jobs: number;
  readonly minutes: number;
  /** Jobs of the table Jobs without clubs. */
  readonly bare: readonly string[];
  readonly problems: readonly Issue[];
}

/** How writing it ended. */
export type WeekDone =
  | { readonly done: true; readonly sheet: string; readonly block: Block; readonly jobs: number }
  | NotDone
  | Occupied
  /** no job can be planned from the tables */
  | { readonly done: false; readonly reason: 'notPlanned'; readonly issue: Issue }
  | { readonly done: false; readonly reason: 'noRoom' };

export interface WeekAsked {
  readonly tables: ShopTables;
  /** Today, as a workbook counts days. */
  readonly today: number;
}

/**
 * Puts open jobs into weeks by the day they are due, those that should be done already first, those without a day last.
 *
 * Weeks begin on Monday. Source: ISO 8601.
 */
export function weekOf(asked: WeekAsked): Result<Week> {
  return drained(weekSteps(asked));
}

/** {@link weekOf} in steps, some for each job. */
export function* weekSteps({ tables, today }: WeekAsked): Generator<Progress, Result<Week>> {
  const found = yield* openJobsSteps(tables);
  if (!found.ok) return found;
  const { jobs, bare, problems } = found.value;
  const prices = pricesOf(tables, today);
  const stock = yield* stockSteps(tables, found);
  const short: ReadonlyMap<string, readonly ShortItem[]> = stock.ok ? shortByJob(stock.value.state) : new Map();
  const listed: WeekJob[] = [];
  for (const [at, job] of jobs.entries()) {
    yield { done: at, of: jobs.length };
    listed.push(weekJob(job, short.get(folded(job.job)) ?? [], prices(job)));
  }
  // A day that nobody named comes last; of one day the order is that of the sheet.
  listed.sort((one, other) => (one.due ?? Infinity) - (other.due ?? Infinity) || 0);
  const parts = new Map<string, WeekJob[]>();
  for (const job of listed) {
    const key = partOf(job, today);
    const own = parts.get(key);
    if (own) own.push(job);
    else parts.set(key, [job]);
  }
  return ok({
    parts: [...parts].map(([key, own]) => part(key, own)),
    jobs: jobs.length,
    minutes: jobs.reduce((sum, { ticket }) => sum + ticket.minutes.total, 0),
    bare: bare.map(({ job }) => job),
    problems: stock.ok ? problems : [...problems, stock.issue],
  });
}

function weekJob(open: OpenJob, short: readonly ShortItem[], money: WeekMoney): WeekJob {
  const { job, customer, due, state, clubs, round, ticket } = open;
  const { total, missing } = ticket.minutes;
  const fitted = ticket.clubs.length;
  return { job, customer, due, state, clubs, round, fitted, minutes: total, untimed: missing, short, money };
}

function partOf({ due }: WeekJob, today: number): string {
  if (due === undefined) return 'noDay';
  return due < Math.floor(today) ? 'overdue' : String(mondayOf(due));
}

function part(key: string, jobs: readonly WeekJob[]): WeekPart {
  const amounts = jobs.flatMap(({ money }) => money.now ?? []);
  const currency: Currency | undefined = amounts[0]?.currency;
  return {
    when: key === 'overdue' || key === 'noDay' ? key : 'week',
    monday: key === 'overdue' || key === 'noDay' ? undefined : Number(key),
    jobs,
    minutes: jobs.reduce((sum, { minutes }) => sum + minutes, 0),
    money: currency && sumMoney(amounts, currency),
    unpriced: jobs.filter(({ round, money: { now } }) => round === 1 && !now).length,
  };
}

function shortByJob({ items }: StockState): Map<string, ShortItem[]> {
  const found = new Map<string, ShortItem[]>();
  for (const { item, shelf, lacks } of items) {
    for (const { job, quantity, onOrder } of lacks) {
      found.set(folded(job), [...(found.get(folded(job)) ?? []), { item, shelf, quantity, onOrder }]);
    }
  }
  return found;
}

/** What each job costs now, and the quote that stands. A register that cannot be read says nothing here; issuing names what is wrong. */
function pricesOf(tables: ShopTables, today: number): (job: OpenJob) => WeekMoney {
  const read = readMoney(moneyTables(tables));
  const register = tables.Quotes ? readRegister(tables.Quotes) : null;
  const quotes = register?.ok ? register.value.filter(({ isVoid }) => !isVoid) : [];
  const terms: TermsChosen = { issued: Math.floor(today) };
  return ({ job, planned, round }) => {
    // a redo under warranty is not charged
    if (round > 1) return { now: undefined, issued: undefined, issues: [] };
    const { quote, issues } = quotePlan(read, planned.plan, job, terms);
    return { now: quote?.total, issued: latestOf(quotes, job), issues };
  };
}
