/** Many jobs in one go: their quotes issued, their pieces reserved, their plans filled, each for all of them in one write. */
import type { Money, Quote } from '../core/index';
import { fillPlans, type JobLeft } from './fillPlans';
import { folded } from './headings';
import { issueQuotes } from './issueQuote';
import type { FillDone, NotDone } from './outcomes';
import type { GoOn, Stopped } from './pace';
import type { BlockSeen, WorkbookPort } from './port';
import { moneyNumber } from '../core/index';
import type { IssueDone } from './quoteDone';
import { onSheet, QUOTE_ROWS_LOOKED } from './quoteOnSheet';
import { latestOf, readRegister, type Registered } from './quoteRegister';
import { moneyTables, quoteJob } from './quoteScope';
import { QUOTE_COLUMNS } from './quoteSheet';
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

/**
 * A job's quote: issued now; there already and still as the tables say, line by line, or by its total alone where its sheet is gone; or there,
 * and other than they say, or other on its sheet than it was issued, which a person has to look at.
 */
export type QuoteEnd =
  | IssueDone
  | (Standing & { readonly done: true; readonly stands: true; readonly byTotal?: string })
  | (Standing & { readonly done: false; readonly reason: 'saysOther'; readonly was: number; readonly now: Money })
  | (Standing & { readonly done: false; readonly reason: 'linesOther'; readonly what: string })
  | (Standing & { readonly done: false; readonly reason: 'sheetEdited'; readonly sheet: string });

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
  readonly step: (what: 'quote' | 'reserve' | 'plan', worked: number, of: number) => void;
  readonly signal: AbortSignal;
  /** Lets the page draw and take input. */
  readonly rest: () => Promise<void>;
  /** Milliseconds of a clock; replaced in tests. */
  readonly now?: () => number;
}

/**
 * Quotes are issued first, then pieces reserved, then plans filled: what *Undo* takes back is the last of them. A job of which
 * something cannot be done is left out there and named; the others go on. Each of the three is worked out in slices and written at once: stopped
 * before that, nothing of it is written, and what was written before stays whole.
 */
export async function runBatch(port: WorkbookPort, asked: BatchAsked, going: BatchGoing): Promise<BatchDone> {
  const { jobs, today } = asked;
  const done: { -readonly [Key in keyof BatchDone]: BatchDone[Key] } = {
    quotes: undefined,
    reserved: undefined,
    plans: undefined,
    stopped: false,
  };
  const { goesOn, during } = pacing(going, () => (done.stopped = true));
  if (asked.quote && (await goesOn())) {
    const goOn = during('quote');
    done.quotes = await quoteAll(port, await readShop(port), asked, (worked) =>
      goOn({ done: worked, of: jobs.length }),
    );
  }
  if (asked.reserve && (await goesOn())) {
    const end = await reserveJobs(port, jobs, { today }, during('reserve'));
    if (!isStopped(end)) done.reserved = end;
  }
  if (asked.plan && (await goesOn())) {
    const label = `Plans of ${jobs.length} jobs`;
    const end = await fillPlans(port, await readShop(port), { jobs, label, goOn: during('plan') });
    if (end.done) {
      done.plans = { filled: new Map(end.filled.map(({ job, ...filled }) => [job, filled])), left: end.left };
    } else if (!isStopped(end)) done.plans = end;
  }
  return done;
}

/** Longer than this at a stretch and a keystroke is felt to lag. */
const SLICE_MS = 12;

/** Rests whenever a slice is used up, and stops for good once it is told to. */
function pacing({ step, signal, rest, now = () => performance.now() }: BatchGoing, stopped: () => void) {
  let since = -Infinity;
  const goesOn = async (): Promise<boolean> => {
    if (now() - since >= SLICE_MS) {
      await rest();
      since = now();
    }
    if (signal.aborted) stopped();
    return !signal.aborted;
  };
  const during = (what: Parameters<BatchGoing['step']>[0]): GoOn => {
    step(what, 0, 1);
    return (progress) => {
      step(what, progress.done, progress.of);
      return goesOn();
    };
  };
  return { goesOn, during };
}

function isStopped(end: { readonly done: boolean; readonly reason?: string }): end is Stopped {
  return !end.done && end.reason === 'stopped';
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
  const standing = await standingQuotes(port, shop, { jobs, today });
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

/** Finds the quote of a job that holds today, and whether it says what the tables say. Their sheets are read in one go. */
async function standingQuotes(
  port: WorkbookPort,
  { tables }: Shop,
  { jobs, today }: Pick<BatchAsked, 'jobs' | 'today'>,
): Promise<(job: string) => QuoteEnd | undefined> {
  const register = tables.Quotes ? readRegister(tables.Quotes) : null;
  const quotes = register?.ok ? register.value.filter(({ isVoid }) => !isVoid) : [];
  const holding = jobs.flatMap((job) => {
    const latest = latestOf(quotes, job);
    return latest && (latest.validUntil ?? Infinity) >= Math.floor(today) ? [[folded(job), latest] as const] : [];
  });
  const sheets = await sheetsOf(
    port,
    holding.map(([, latest]) => latest),
  );
  const latestByJob = new Map(holding);
  const read = readMoney(moneyTables(tables));
  return (job) => {
    const latest = latestByJob.get(folded(job));
    if (!latest) return undefined;
    const { quote } = quoteJob(tables, { job, terms: { issued: today } }, read);
    return quote ? standsAs(latest, quote, sheets.get(latest.sheet)) : undefined;
  };
}

async function sheetsOf(port: WorkbookPort, quotes: readonly Registered[]): Promise<ReadonlyMap<string, BlockSeen>> {
  const names = [...new Set(quotes.map(({ sheet }) => sheet).filter((sheet) => sheet !== ''))];
  if (names.length === 0) return new Map();
  const seen = await port.read(
    names.map((sheet) => {
      const at = { sheet, row: 0, column: 0, rows: QUOTE_ROWS_LOOKED, columns: QUOTE_COLUMNS };
      return { read: 'block', at } as const;
    }),
  );
  return new Map(names.map((name, at) => [name, seen[at] as BlockSeen]));
}

/** Another total counts before another line: it is what the client would be asked to pay. */
function standsAs(latest: Registered, quote: Quote, seen: BlockSeen | undefined): QuoteEnd {
  const { number, revision, sheet, total } = latest;
  const id = { number, revision };
  const found = onSheet(seen, quote, total);
  if (found.says === 'edited') return { done: false, reason: 'sheetEdited', ...id, sheet };
  const isSame = total === moneyNumber(quote.total) && folded(latest.currency) === folded(quote.total.currency.code);
  if (!isSame) return { done: false, reason: 'saysOther', ...id, was: total ?? 0, now: quote.total };
  if (found.says === 'other') return { done: false, reason: 'linesOther', ...id, what: found.what };
  return { done: true, stands: true, ...id, ...(found.says === 'gone' ? { byTotal: sheet } : {}) };
}
