/** The quote: lines, discounts, tax, deposit and margin, every shown line adding up to the shown total. */
import { timesDecimal } from '../decimal';
import { moneyOf, subtractMoney, sumMoney, type Currency, type Money } from '../money';
import { fail, ok, type Issue, type Result } from '../result';
import { pricedLines, type Priced, type Told } from './amounts';
import { amountRule, takenOff } from './discount';
import { readQuote, type ReadRate, type ReadTerms } from './read';
import { parts, taxesOf } from './tax';
import type { Margin, Quote, QuotedLine, QuoteInput, QuoteNote, Rounding, TaxSum } from './types';

/** Everything that is wrong with what a quote is to be made from; empty where it can be made. */
export function quoteIssues(input: QuoteInput): readonly Issue[] {
  const checked = readQuote(input);
  if ('issues' in checked) return checked.issues;
  const told: Told = { notes: [], issues: [] };
  pricedLines(checked.read, input.rounding, told);
  return told.issues;
}

/**
 * Works out a quote.
 *
 * In this order: quantity × unit price, rounded to the minor unit; the line's own discount; the discount on the grips; the discount on
 * the job; the minimum charge; tax. A discount over several lines is one amount, rounded once and shared among them by what they come
 * to; one of more than there is to take it off is refused. What is shared or rounded together is shared by largest remainder, so that lines add up to the total, to the last minor unit.
 *
 * @param input lines and terms, cells as they stand in the sheet
 * @returns the first issue where something is wrong; `quoteIssues` has them all
 */
export function quoteOf(input: QuoteInput): Result<Quote> {
  const checked = readQuote(input);
  if ('issues' in checked) {
    const [issue = { code: 'noRows', field: 'The quote', expected: 'lines' } as const] = checked.issues;
    return fail(issue);
  }
  const { terms } = checked.read;
  const told: Told = { notes: [], issues: [] };
  const priced = pricedLines(checked.read, input.rounding, told);
  const [over] = told.issues;
  return over ? fail(over) : ok(summed(taxed(priced, terms.currency, input), input, terms, told.notes));
}

/** Tax, rate by rate. */
function taxed(lines: readonly Priced[], currency: Currency, { prices, rounding }: QuoteInput): QuotedLine[] {
  const taxes = new Map<Priced, bigint>();
  for (const [rate, members] of byRate(lines)) {
    if (!rate) continue;
    const each = taxesOf(
      members.map(({ price }) => price),
      rate.percent,
      prices,
      rounding,
    );
    members.forEach((line, at) => taxes.set(line, each[at] ?? 0n));
  }
  return lines.map((line) => quoted(line, taxes.get(line) ?? 0n, currency, { prices, rounding }));
}

function byRate(lines: readonly Priced[]): Map<ReadRate | undefined, Priced[]> {
  const groups = new Map<ReadRate | undefined, Priced[]>();
  for (const each of lines) groups.set(each.line.rate, [...(groups.get(each.line.rate) ?? []), each]);
  return groups;
}

function quoted(
  priced: Priced,
  tax: bigint,
  currency: Currency,
  { prices, rounding }: Pick<QuoteInput, 'prices' | 'rounding'>,
): QuotedLine {
  const { from, quantity, unitPrice, unitCost, rate } = priced.line;
  const money = (minor: bigint): Money => ({ minor, currency });
  const { net, tax: taxAmount, gross } = parts(priced.price, tax, prices, currency);
  const cost = unitCost && moneyOf(timesDecimal(quantity, unitCost), currency, amountRule(rounding.rule));
  return {
    class: from.class,
    description: from.description,
    item: from.item,
    quantity,
    unitPrice,
    full: money(priced.full),
    lineDiscount: money(priced.lineDiscount),
    discountReason: from.discount?.reason,
    amount: money(priced.amount),
    setDiscount: money(priced.setDiscount),
    jobDiscount: money(priced.jobDiscount),
    price: money(priced.price),
    tax: rate?.name,
    taxPercent: rate?.percent,
    net,
    taxAmount,
    gross,
    cost,
    margin: cost && subtractMoney(net, cost),
    rows: from.rows ?? [],
  };
}

/** The sums, each of them the sum of what the lines show. */
function summed(lines: readonly QuotedLine[], input: QuoteInput, terms: ReadTerms, notes: QuoteNote[]): Quote {
  const { currency } = terms;
  const sum = (pick: (line: QuotedLine) => Money): Money => sumMoney(lines.map(pick), currency);
  const whole = sum(({ gross }) => gross);
  const deposit = depositOf(whole, terms, input.rounding, notes);
  const tax = sum(({ taxAmount }) => taxAmount);
  if (input.rounding.rule === 'down' && tax.minor > 0n) notes.push({ note: 'roundedDown', at: input.rounding.at });
  return {
    currency,
    prices: input.prices,
    rounding: input.rounding,
    lines,
    full: sum(({ full }) => full),
    lineDiscount: sum(({ lineDiscount }) => lineDiscount),
    amount: sum(({ amount }) => amount),
    setDiscount: sum(({ setDiscount }) => setDiscount),
    jobDiscount: sum(({ jobDiscount }) => jobDiscount),
    price: sum(({ price }) => price),
    taxes: taxSums(lines, currency),
    net: sum(({ net }) => net),
    tax,
    total: whole,
    deposit,
    balance: subtractMoney(whole, deposit),
    issued: input.issued,
    validUntil: terms.validUntil,
    margin: marginOf(lines, currency),
    notes,
  };
}

function depositOf(whole: Money, terms: ReadTerms, { rule }: Rounding, notes: QuoteNote[]): Money {
  const { wanted, taken } = takenOff(terms.deposit, whole.minor, terms.currency, rule);
  const money = (minor: bigint): Money => ({ minor, currency: terms.currency });
  if (wanted !== taken) notes.push({ note: 'depositOver', wanted: money(wanted), taken: money(taken) });
  return money(taken);
}

function taxSums(lines: readonly QuotedLine[], currency: Currency): TaxSum[] {
  const groups = new Map<string | undefined, QuotedLine[]>();
  for (const line of lines) groups.set(line.tax, [...(groups.get(line.tax) ?? []), line]);
  return [...groups].map(([name, members]) => ({
    name,
    percent: members[0]?.taxPercent,
    net: sumMoney(
      members.map(({ net }) => net),
      currency,
    ),
    tax: sumMoney(
      members.map(({ taxAmount }) => taxAmount),
      currency,
    ),
  }));
}

function marginOf(lines: readonly QuotedLine[], currency: Currency): Margin {
  const missing = lines.filter(({ margin }) => margin === undefined).map(({ description }) => description);
  const known = sumMoney(
    lines.flatMap(({ margin }) => margin ?? []),
    currency,
  );
  return { known, whole: missing.length === 0 ? known : undefined, missing };
}
