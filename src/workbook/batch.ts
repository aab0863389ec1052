/** Many jobs in one go: their quotes issued, their pieces reserved, their plans filled, each for all of them in one write. */
import type { Money } from '../core/index';
import { fillPlans, type JobLeft } from './fillPlans';
import { folded } from './headings';
import { issueQuotes } from './issueQuote';
import type { FillDone, NotDone } from './outcomes';
import type { WorkbookPort } from './port';
import { moneyNumber } from '../core/index';
import type { IssueDone } from './quoteDone';
import { latestOf, readRegister } from './quoteRegister';
import { moneyTables, quoteJob } from './quoteScope';
import { readMoney } from './readMoney';
import { readShop, type Shop } from './shop';
import type { ReserveDone } from './stockDone';
import { reserveJobs } from './stockJobs';

export interface BatchAsked {
  readonly jobs: readonly string[];
  readonly quote: boolean;
  readonly reserve: boolean;
  readonly plan: boolean;
  /** As a workbook counts days. */
  readonly today: number;
}

/** A quote that stands, by its number. */
interface Standing {
  readonly number: number;
  readonly revision: number;
}

/** A job's quote: issued now; there already and still as the tables say; or there, and of another total than they say, which a person has to look at. */
export type QuoteEnd =
  | IssueDone
  | (Standing & { readonly done: true; readonly stands: true })
  | (Standing & { readonly done: false; readonly reason: 'saysOther'; readonly was: number; readonly now: Money });

/** How each job of the batch ended, and whether it was stopped before all was done. */
export interface BatchDone {
  /** Undefined where quotes were not asked for, or it was stopped before. */
  readonly quotes: ReadonlyMap<string, QuoteEnd> | undefined;
  readonly reserved: ReserveDone | undefined;
  readonly plans:
    { readonly filled: ReadonlyMap<string, FillDone>; readonly left: readonly JobLeft[] } | NotDone | undefined;
  readonly stopped: boolean;
}

/** What a batch says of itself, and asks, while it goes on. */
export interface BatchGoing {
  readonly step: (what: 'quote' | 'reserve' | 'plan', worked: number) => void;
  readonly signal: AbortSignal;
  /** Lets the page draw and take input. */
  readonly rest: () => Promise<void>;
}

/**
 * Quotes are issued first, then pieces reserved, then plans filled: what *Undo last fill* takes back is the last of them. A job of which
 * something cannot be done is left out there and named; the others go on. Stopped, it leaves whole what was done and begins nothing more.
 */
export async function runBatch(port: WorkbookPort, asked: BatchAsked, going: BatchGoing): Promise<BatchDone> {
  const { jobs, today } = asked;
  const done: { -readonly [Key in keyof BatchDone]: BatchDone[Key] } = {
    quotes: undefined,
    reserved: undefined,
    plans: undefined,
    stopped: false,
  };
  const goesOn = async (): Promise<boolean> => {
    await going.rest();
    done.stopped = going.signal.aborted;
    return !done.stopped;
  };
  if (asked.quote && (await goesOn())) {
    done.quotes = await quoteAll(port, await readShop(port), asked, async (worked) => {
      going.step('quote', worked);
      return goesOn();
    });
  }
  if (asked.reserve && (await goesOn())) {
    going.step('reserve', 0);
    done.reserved = await reserveJobs(port, jobs, { today });
  }
  if (asked.plan && (await goesOn())) {
    going.step('plan', 0);
    const end = await fillPlans(port, await readShop(port), { jobs, label: `Plans of ${jobs.length} jobs` });
    done.plans = end.done
      ? { filled: new Map(end.filled.map(({ job, ...filled }) => [job, filled])), left: end.left }
      : end;
  }
  return done;
}

/**
 * Quotes every job that has none, or whose quote holds no longer. A quote that holds is never replaced here: what was agreed with the client
 * (a discount, an option) may be in it. Undefined where it was stopped.
 */
async function quoteAll(
  port: WorkbookPort,
  shop: Shop,
  { jobs, today }: BatchAsked,
  goOn: (worked: number) => Promise<boolean>,
): Promise<ReadonlyMap<string, QuoteEnd> | undefined> {
  const ends = new Map<string, QuoteEnd>();
  const standing = standingQuotes(shop, today);
  const wanted: string[] = [];
  for (const [worked, job] of jobs.entries()) {
    if (!(await goOn(worked))) return undefined;
    const end = standing(job);
    if (end) ends.set(job, end);
    else wanted.push(job);
  }
  const issued = await issueQuotes(
    port,
    wanted.map((job) => ({ what: { job }, terms: { issued: today }, shown: null })),
    (worked) => goOn(jobs.length - wanted.length + worked),
  );
  if (issued.includes(null)) return undefined;
  wanted.forEach((job, at) => ends.set(job, issued[at] as IssueDone));
  return new Map(jobs.flatMap((job) => (ends.has(job) ? [[job, ends.get(job) as QuoteEnd]] : [])));
}

/** Finds the quote of a job that holds today, and whether it says what the tables say. */
function standingQuotes({ tables }: Shop, today: number): (job: string) => QuoteEnd | undefined {
  const register = tables.Quotes ? readRegister(tables.Quotes) : null;
  const quotes = register?.ok ? register.value.filter(({ isVoid }) => !isVoid) : [];
  const read = readMoney(moneyTables(tables));
  return (job) => {
    const latest = latestOf(quotes, job);
    if (!latest || (latest.validUntil ?? Infinity) < Math.floor(today)) return undefined;
    const { quote } = quoteJob(tables, { job, terms: { issued: today } }, read);
    if (!quote) return undefined;
    const { number, revision, total = 0 } = latest;
    const isSame = total === moneyNumber(quote.total) && folded(latest.currency) === folded(quote.total.currency.code);
    return isSame
      ? { done: true, stands: true, number, revision }
      : { done: false, reason: 'saysOther', number, revision, was: total, now: quote.total };
  };
}
