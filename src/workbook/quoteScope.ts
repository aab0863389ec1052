/** Quotes from the tables as they stand: a job's, its options beside each other, and one at the counter without a plan. */
import {
  counterQuote,
  minutesOf,
  quoteOf,
  type ClubKind,
  type Issue,
  type Minutes,
  type Money,
  type NamedQuote,
  type Quote,
  type QuoteInput,
  type SetPlan,
} from '../core/index';
import { lastRound } from './benchJob';
import type { Choices } from './choices';
import { folded } from './headings';
import { inOwnNames } from './ownNames';
import { planScope, scopeRows } from './planScope';
import type { TableSeen } from './port';
import { quoteInput, readMoney, readTerms, shopIssues } from './readMoney';
import type { MoneyRead, MoneyTables, TableIn, TermsChosen } from './readMoney';
import { matrixOf } from './shop';
import type { ShopTables } from './shop';

/** A job as it would be quoted now. */
export interface JobQuote {
  /** undefined: something has to be mended first. */
  readonly quote: Quote | undefined;
  /** What it is made from; undefined where the job cannot be planned. */
  readonly input: QuoteInput | undefined;
  readonly issues: readonly Issue[];
  readonly minutes: Minutes;
  /** Clubs that get no new grip and are not charged. */
  readonly uncharged: readonly string[];
  /** Lines that Discounts takes something off and this way of doing the job has not. */
  readonly notTakenOff: readonly string[];
}

function tableIn(table: TableSeen | null): TableIn | undefined {
  return table ? { matrix: matrixOf(table), headerRow: table.at.row + 1 } : undefined;
}

/** The shop's tables as prices are read from them. */
export function moneyTables({
  Clubs,
  Stock,
  Weights,
  Rates,
  Taxes,
  Discounts,
  Jobs,
  Settings,
}: ShopTables): MoneyTables {
  return {
    clubs: tableIn(Clubs),
    stock: tableIn(Stock),
    weights: tableIn(Weights),
    rates: tableIn(Rates),
    taxes: tableIn(Taxes),
    discounts: tableIn(Discounts),
    jobs: tableIn(Jobs),
    settings: tableIn(Settings),
  };
}

/** What a job is quoted by. */
export interface JobAsked {
  readonly job: string;
  readonly terms: TermsChosen;
  /** What is to be decided for its clubs and does not stand in Clubs yet. */
  readonly choices?: Choices | undefined;
}

/**
 * Quotes a whole job as Clubs has it, or as it will be with choices that are not filled yet.
 *
 * @param read the same for any number of jobs of these tables; read anew where it is left out
 */
export function quoteJob(tables: ShopTables, asked: JobAsked, read = readMoney(moneyTables(tables))): JobQuote {
  const { job, terms, choices = {} } = asked;
  const scoped = tables.Clubs && scopeRows(tables.Clubs, { job });
  if (!scoped || scoped.rows.length === 0) {
    return noQuote(inOwnNames({ code: 'noRows', field: 'Clubs', expected: `clubs of job ${job}` }, read.own));
  }
  const round = lastRound(tables, job);
  if (round > 1) return noQuote(notCharged(job, round));
  const planned = planScope(tables, scoped, choices);
  const isOption = decides(choices);
  return planned.ok ? quotePlan(read, planned.value.plan, { job, terms, isOption }) : noQuote(planned.issue);
}

/** Whether something is decided at all. */
export function decides(choices: Choices): boolean {
  return Object.keys(choices).some((key) => key !== 'exceptPutters');
}

/** What comes back under warranty was charged the first time. */
function notCharged(job: string, round: number): Issue {
  const expected = `it is a redo under warranty, round ${round} in Checkin, and nothing of it is charged. Its first quote stays as it is`;
  return { code: 'contradiction', field: `A quote for job ${job}`, expected };
}

function noQuote(issue: Issue): JobQuote {
  return {
    quote: undefined,
    input: undefined,
    issues: [issue],
    minutes: { minutes: 0, missing: [] },
    uncharged: [],
    notTakenOff: [],
  };
}

/** Quotes a set that is planned already. */
export function quotePlan(
  read: MoneyRead,
  plan: SetPlan,
  { job, terms, isOption }: { readonly job: string | null; readonly terms: TermsChosen; readonly isOption?: boolean },
): JobQuote {
  const { input, issues, notTakenOff = [] } = quoteInput(read, plan, job, terms, isOption);
  const made = issues.length === 0 ? quoteOf(input) : undefined;
  const uncharged = plan.clubs
    .filter(({ row, item }) => item === undefined && !read.work.get(row)?.ownGrip)
    .map(({ name }) => name);
  return {
    quote: made?.ok ? made.value : undefined,
    input,
    issues,
    minutes: minutesOf(input.lines),
    uncharged,
    notTakenOff,
  };
}

/** One way of doing a job. */
export interface OptionAsked {
  readonly name: string;
  readonly choices: Choices;
}

/** Options of one job; without issues all of them can be quoted. */
export interface OptionsQuoted {
  readonly quotes: readonly NamedQuote[];
  /** Each with the option that it was found in. */
  readonly issues: readonly (Issue & { readonly option: string })[];
}

/** Quotes a job in several ways. */
export function quoteOptions(
  tables: ShopTables,
  { job, terms, options }: Omit<JobAsked, 'choices'> & { readonly options: readonly OptionAsked[] },
): OptionsQuoted {
  const read = readMoney(moneyTables(tables));
  const made = options.map(({ name, choices }) => ({ name, ...quoteJob(tables, { job, terms, choices }, read) }));
  return {
    quotes: made.flatMap(({ name, quote }) => (quote ? [{ name, quote }] : [])),
    issues: made.flatMap(({ name, issues }) => issues.map((issue) => ({ ...issue, option: name }))),
  };
}

/* ------------------------------------------------------------------ at the counter */

/** Clubs over the counter, before anybody planned anything. */
export interface CounterAsked {
  /** As typed; anything but a whole number is an issue. */
  readonly clubs: number;
  /** undefined: clubs of any kind. */
  readonly kind?: ClubKind | undefined;
  /** An item of Stock; null: the client brings the grips. */
  readonly item: string | null;
  /** Build-up layers on each club. */
  readonly layers: number;
  /** Old grips are kept. */
  readonly salvage: boolean;
  /** Clubs are weighed and read. */
  readonly reading: boolean;
}

export interface CounterQuoted {
  readonly quote: Quote | undefined;
  /** What one club more costs. */
  readonly perClub: Money | undefined;
  readonly issues: readonly Issue[];
}

/** Quotes clubs over the counter by the shop's rates and terms. */
export function quoteCounter(
  tables: ShopTables,
  asked: CounterAsked,
  chosen: TermsChosen,
  read = readMoney(moneyTables(tables)),
): CounterQuoted {
  const no = (issues: readonly Issue[]): CounterQuoted => {
    return { quote: undefined, perClub: undefined, issues: issues.map((issue) => inOwnNames(issue, read.own)) };
  };
  const item = read.stock.value.find((each) => folded(each.item) === folded(asked.item));
  if (asked.item !== null && !item) return no([{ code: 'unknownItem', field: 'Grip', got: asked.item }]);
  const terms = readTerms(read, null, chosen);
  const told = [...terms.issues, ...shopIssues(read), ...(item?.issues ?? [])];
  if (told.length > 0) return no(told);
  if (item && item.price === undefined) {
    return no([
      { code: 'blank', field: `Price of ${item.item} in Stock`, expected: 'an amount, 0 where there is none' },
    ]);
  }
  const made = counterQuote(
    { ...asked, grips: item ? { from: 'shop', item } : { from: 'client' }, terms: terms.value },
    read.rates.value,
  );
  return made.ok ? { ...made.value, issues: [] } : no([made.issue]);
}

/** The terms at the foot of a quote, as Settings gives them. */
export function quoteTermsText(read: MoneyRead): string {
  return String(read.settings.value.get('terms') ?? '');
}

/** Lines of the shop's address, as Settings gives it. */
export function addressLines(read: MoneyRead): readonly string[] {
  const text = String(read.settings.value.get('address') ?? '');
  return text
    .split(/[;\n\r]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .slice(0, MOST_ADDRESS_LINES);
}

const MOST_ADDRESS_LINES = 6;
