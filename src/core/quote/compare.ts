/** Quotes side by side: what each costs by class of line, and how far it is from the first. */
import { decimalText } from '../decimal';
import { noMoney, subtractMoney, sumMoney, type Currency, type Money } from '../money';
import { groupedBy } from '../plan/together';
import { fail, ok, type Issue, type Result } from '../result';
import { LINE_CLASSES, type LineClass, type PricesAre, type Quote } from './types';

export interface NamedQuote {
  readonly name: string;
  readonly quote: Quote;
}

/** Amounts of each quote, in order, and what each is above the first. */
export interface QuoteRow {
  readonly amounts: readonly Money[];
  readonly differences: readonly Money[];
}

export interface QuoteComparison {
  readonly names: readonly string[];
  readonly currency: Currency;
  readonly prices: PricesAre;
  /** After every discount, as prices are; a class that no quote has is left out. */
  readonly classes: readonly (QuoteRow & { readonly class: LineClass })[];
  /** Comes on top where prices are before tax; is in them where they are with tax. */
  readonly tax: QuoteRow;
  readonly total: QuoteRow;
  /** Names of those that charge the same, line by line; groups of two or more. */
  readonly alike: readonly (readonly string[])[];
}

/**
 * Sets quotes beside each other.
 *
 * @returns noRows without quotes, duplicate where a name is there twice, contradiction where currencies or kinds of price differ
 */
export function compareQuotes(quotes: readonly NamedQuote[]): Result<QuoteComparison> {
  const [first] = quotes;
  const issue = comparisonIssue(quotes);
  if (issue || !first) return fail(issue ?? { code: 'noRows', field: 'Quotes', expected: 'quotes' });
  const { currency, prices } = first.quote;
  const row = (pick: (quote: Quote) => Money): QuoteRow => {
    const amounts = quotes.map(({ quote }) => pick(quote));
    const base = amounts[0] ?? noMoney(currency);
    return { amounts, differences: amounts.map((amount) => subtractMoney(amount, base)) };
  };
  const used = LINE_CLASSES.filter((each) =>
    quotes.some(({ quote }) => quote.lines.some((line) => line.class === each)),
  );
  return ok({
    names: quotes.map(({ name }) => name),
    currency,
    prices,
    classes: used.map((each) => ({ class: each, ...row((quote) => priceOfClass(quote, each)) })),
    tax: row(({ tax }) => tax),
    total: row(({ total }) => total),
    alike: alikeAmong(quotes),
  });
}

function alikeAmong(quotes: readonly NamedQuote[]): readonly (readonly string[])[] {
  const groups = groupedBy(quotes, ({ quote }) => linesKey(quote)).values();
  return [...groups].filter((group) => group.length > 1).map((group) => group.map(({ name }) => name));
}

/** What is sold and done, for how much; in whatever order. */
function linesKey({ lines }: Quote): string {
  const keys = lines.map(({ class: kind, description, item, quantity, unitPrice, tax, gross }) =>
    [kind, description, item ?? '', decimalText(quantity), decimalText(unitPrice), tax ?? '', gross.minor].join('\t'),
  );
  return keys.sort().join('\n');
}

function priceOfClass({ lines, currency }: Quote, wanted: LineClass): Money {
  return sumMoney(
    lines.flatMap((line) => (line.class === wanted ? line.price : [])),
    currency,
  );
}

function comparisonIssue(quotes: readonly NamedQuote[]): Issue | undefined {
  const [first] = quotes;
  const names = new Set<string>();
  for (const { name, quote } of quotes) {
    if (names.has(name.toLowerCase())) return { code: 'duplicate', field: 'Name of a quote', got: name };
    names.add(name.toLowerCase());
    if (quote.currency.code !== first?.quote.currency.code) return unlike(name, quote.currency.code, 'currency');
    if (quote.prices !== first.quote.prices) return unlike(name, quote.prices, 'kind of price, before tax or with it');
  }
  return undefined;
}

function unlike(name: string, got: string, what: string): Issue {
  return { code: 'contradiction', field: name, got, expected: `quotes are compared in one ${what}` };
}
