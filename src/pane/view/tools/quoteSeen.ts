/** A quote as its screen shows it: what it would be now, its options, and what was issued before. Pure. */
import {
  compareGrips,
  compareQuotes,
  parseReading,
  plainNumber,
  type Issue,
  type PlanInput,
  type QuoteComparison,
} from '../../../core/index';
import type { Choices } from '../../../workbook/choices';
import { folded } from '../../../workbook/headings';
import { placeOfField } from '../../../workbook/issuePlace';
import { jobFacts } from '../../../workbook/jobFacts';
import type { Block } from '../../../workbook/port';
import { nextNumber, readRegister, type NextNumber, type Registered } from '../../../workbook/quoteRegister';
import {
  decides,
  moneyTables,
  quoteCounter,
  quoteJob,
  type CounterAsked,
  type CounterQuoted,
  type JobQuote,
} from '../../../workbook/quoteScope';
import { readMoney, type TermsChosen } from '../../../workbook/readMoney';
import type { Shop } from '../../../workbook/shop';
import { takenOf } from '../../state/compareModel';
import { readForm, sparingPutters } from '../../state/form';
import { afterEvent, type PaneState } from '../../state/paneState';
import type { CounterForm, KeptOption, QuoteForm, QuoteOf } from '../../state/quoteForm';
import { tiedName } from '../../compareText';
import { QUOTE_WORDS } from './quoteWords';

/** A way of doing the job that can be quoted. */
export interface OptionSeen {
  readonly key: QuoteOf;
  readonly name: string;
  readonly choices: Choices;
}

/** More do not fit beside each other. */
export const MOST_OPTIONS = 3;
/** What Clubs has is always one of them. */
export const MOST_KEPT = MOST_OPTIONS - 1;

export interface QuoteSeen {
  readonly options: readonly OptionSeen[];
  readonly chosen: OptionSeen;
  readonly terms: TermsChosen;
  readonly made: JobQuote;
  /** Those that can be set beside each other; null where there are fewer than two, or one of them cannot be quoted. */
  readonly compared: QuoteComparison | null;
}

/** A job as it would be quoted on a day. */
export function quoteSeen(
  { tables }: Shop,
  job: string,
  form: QuoteForm,
  inPlan: Choices,
  clubKeys: ReadonlyMap<number, string>,
  today: number,
): QuoteSeen {
  const options = optionsOf(form, inPlan, clubKeys);
  const chosen = options.find(({ key }) => key === form.of) ?? (options[0] as OptionSeen);
  const terms = termsOf(form, today);
  const read = readMoney(moneyTables(tables));
  const quoted = options.map((option) => ({
    option,
    made: quoteJob(tables, { job, terms, choices: option.choices }, read),
  }));
  const made = quoted.find(({ option }) => option === chosen)?.made as JobQuote;
  const beside = quoted.slice(0, MOST_OPTIONS);
  const quotes = beside.flatMap(({ option, made: { quote } }) => (quote ? [{ name: option.name, quote }] : []));
  const compared = quotes.length === beside.length && quotes.length > 1 ? compareQuotes(quotes) : null;
  return { options, chosen, terms, made, compared: compared?.ok ? compared.value : null };
}

function optionsOf({ kept }: QuoteForm, inPlan: Choices, clubKeys: ReadonlyMap<number, string>): readonly OptionSeen[] {
  const still = kept.flatMap((option, at): OptionSeen[] =>
    holds(option, clubKeys) ? [{ key: `kept ${at}`, name: option.name, choices: option.choices }] : [],
  );
  return [
    { key: 'clubs', name: QUOTE_WORDS.asInClubs, choices: {} },
    ...still,
    ...(decides(inPlan) ? [{ key: 'plan', name: QUOTE_WORDS.asInPlan, choices: inPlan } as const] : []),
  ];
}

/** Whether the rows that an option speaks of still hold the clubs it was kept for. */
export function holds({ choices, clubKeys }: KeptOption, now: ReadonlyMap<number, string>): boolean {
  return [...(choices.perClub?.keys() ?? [])].every((row) => clubKeys.get(row) === now.get(row));
}

function termsOf(form: QuoteForm, today: number): TermsChosen {
  const typed = (text: string): string | undefined => (text.trim() === '' ? undefined : text);
  const percent = typed(form.lineOffPercent);
  return {
    issued: today,
    discountPercent: typed(form.discount),
    gripDiscountPercent: typed(form.gripDiscount),
    depositPercent: typed(form.deposit),
    validDays: typed(form.validDays),
    lineOff: form.lineOff === '' || percent === undefined ? undefined : { description: form.lineOff, percent },
  };
}

/** What an option that is kept now would be called. */
export function suggestedName({ newItem, layers, perClub }: Choices): string {
  if (newItem) return newItem;
  if (perClub && [...perClub.values()].some((each) => each.newItem !== undefined)) return QUOTE_WORDS.otherGrip;
  return layers ? QUOTE_WORDS.withTape : QUOTE_WORDS.otherWay;
}

/** The same name again gets a number. */
export function withOption(kept: readonly KeptOption[], option: KeptOption): readonly KeptOption[] {
  const taken = [QUOTE_WORDS.asInClubs, QUOTE_WORDS.asInPlan, ...kept.map(({ name }) => name)].map((each) =>
    each.toLowerCase(),
  );
  let name = option.name;
  for (let number = 2; taken.includes(name.toLowerCase()); number += 1) name = `${option.name} ${number}`;
  return [...kept, { ...option, name }].slice(0, MOST_KEPT);
}

/** The grips ticked in Compare as options, each with the choices that *Fit* would take over. */
export function tickedOptions(
  state: PaneState,
  concerned: PlanInput,
  putters: number,
): readonly { readonly name: string; readonly choices: Choices }[] {
  const { shortlist } = state.tools.compare;
  const ticked = compareGrips(concerned).tried.filter(({ candidate }) => shortlist.includes(candidate.key));
  return ticked.slice(0, MOST_KEPT).map((tried) => {
    const taken = takenOf(tried, concerned, state.form);
    const { form } = afterEvent(state, { on: 'take', from: 'compare', ...taken });
    const { choices } = readForm(form, (text) => parseReading(text).ok);
    return { name: tiedName(tried), choices: sparingPutters(choices, form, putters) };
  });
}

/* ------------------------------------------------------------------ what was issued */

export interface IssuedSeen {
  /** Quotes of the job, the latest first. */
  readonly quotes: readonly Registered[];
  readonly next: NextNumber | null;
  /** Why no number can be given. */
  readonly issue: Issue | null;
}

/** What the register says of a job, or with '' of prices at the counter; null where there is no register. */
export function issuedSeen({ tables }: Shop, job: string): IssuedSeen | null {
  if (!tables.Quotes) return null;
  const read = readRegister(tables.Quotes);
  const next = nextNumber(tables.Quotes, job);
  const quotes = read.ok ? read.value.filter((each) => folded(each.job) === folded(job)) : [];
  // The register may be sorted by whoever keeps it.
  const latestFirst = [...quotes].sort((one, other) => other.number - one.number || other.revision - one.revision);
  return { quotes: latestFirst, next: next.ok ? next.value : null, issue: next.ok ? null : next.issue };
}

/** What the head of a page leaves blank that its reader looks for. */
export function blankHead({ tables }: Shop, job: string | null, customer?: string): readonly ('shop' | 'customer')[] {
  const facts = { ...jobFacts(tables, job), ...(customer !== undefined && { customer }) };
  return (['shop', 'customer'] as const).filter((key) => facts[key].trim() === '');
}

/** Where each of these is to be filled in; null where no such cell is there. */
export function placeOfHead({ tables }: Shop, key: 'shop' | 'customer', job: string | null): Block | null {
  if (key === 'shop') return placeOfField('Shop name in Settings', tables);
  return job === null ? null : placeOfField(`Customer of job ${job} in Jobs`, tables);
}

/* ------------------------------------------------------------------ at the counter */

export interface CounterSeen {
  readonly asked: CounterAsked;
  readonly terms: TermsChosen;
  readonly made: CounterQuoted;
}

/** A price at the counter; null while nobody said how many clubs. */
export function counterSeen({ tables }: Shop, form: CounterForm, today: number): CounterSeen | null {
  if (form.clubs.trim() === '') return null;
  const count = (text: string): number => (text.trim() === '' ? 0 : (plainNumber(text) ?? NaN));
  const asked: CounterAsked = {
    clubs: count(form.clubs),
    kind: form.kind === '' ? undefined : form.kind,
    item: form.item === '' ? null : form.item,
    layers: count(form.layers),
    salvage: form.salvage,
    reading: form.reading,
  };
  const terms: TermsChosen = {
    issued: today,
    discountPercent: form.discount.trim() === '' ? undefined : form.discount,
  };
  const issues = [...notNumber(form.clubs, 'Clubs'), ...notNumber(form.layers, 'Layers')];
  const made =
    issues.length > 0 ? { quote: undefined, perClub: undefined, issues } : quoteCounter(tables, asked, terms);
  return { asked, terms, made };
}

/** What was typed for a count and is none: the core is told numbers, and could only say that this one is not. */
function notNumber(typed: string, field: string): Issue[] {
  const isNumber = typed.trim() === '' || plainNumber(typed) !== undefined;
  return isNumber ? [] : [{ code: 'notNumber', field, got: typed.trim(), expected: 'a whole number' }];
}
