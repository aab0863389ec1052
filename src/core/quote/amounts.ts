/** What each line comes to before tax is looked at: its amount, what is taken off it, and the minimum charge. */
import { powerOfTen, timesDecimal } from '../decimal';
import {
  minorPerUnit,
  moneyDecimal,
  moneyNumber,
  moneyOf,
  roundedApart,
  roundedTogether,
  type Currency,
} from '../money';
import type { Issue } from '../result';
import { amountRule, onOneScale, sharedDiscount, takenOff } from './discount';
import type { ReadDiscount, ReadLine, ReadQuote, ReadTerms } from './read';
import type { QuoteNote, Rounding } from './types';

/** A line on its way, amounts in minor units. */
export interface Priced {
  readonly line: ReadLine;
  readonly full: bigint;
  readonly lineDiscount: bigint;
  readonly amount: bigint;
  readonly setDiscount: bigint;
  readonly jobDiscount: bigint;
  readonly price: bigint;
}

/** What is noted on the way, and what keeps a quote from being made. */
export interface Told {
  readonly notes: QuoteNote[];
  readonly issues: Issue[];
}

/**
 * Lines priced: amount, own discount, discount on the grips, discount on the job, minimum charge, in this order. A discount of more than
 * there is to take it off is an issue.
 */
export function pricedLines({ lines, terms }: ReadQuote, rounding: Rounding, { notes, issues }: Told): Priced[] {
  const listed = listedLines(lines, terms.currency, rounding, issues);
  const onSet = setDiscounted(listed, terms, rounding, issues);
  const onJob = jobDiscounted(onSet, terms, rounding, issues);
  return raisedToMinimum(onJob, terms, rounding, notes);
}

/** Quantity × unit price, less each line's own discount. */
function listedLines(
  lines: readonly ReadLine[],
  currency: Currency,
  { rule, at }: Rounding,
  issues: Issue[],
): Priced[] {
  const { digits, scale } = onOneScale(lines.map(({ quantity, unitPrice }) => timesDecimal(quantity, unitPrice)));
  const minor = digits.map((each) => each * minorPerUnit(currency));
  const roundAll = at === 'line' ? roundedApart : roundedTogether;
  const fulls = roundAll(minor, powerOfTen(scale), amountRule(rule));
  return lines.map((line, index) => {
    const full = fulls[index] ?? 0n;
    const off = takenOff(line.discount, full, currency, rule);
    issues.push(...overIssue(line.discount, off, { of: `${line.from.description} comes to`, base: full, currency }));
    const amount = full - off.taken;
    return { line, full, lineDiscount: off.taken, amount, setDiscount: 0n, jobDiscount: 0n, price: amount };
  });
}

function setDiscounted(lines: readonly Priced[], terms: ReadTerms, { rule }: Rounding, issues: Issue[]): Priced[] {
  const bases = lines.map(({ line, price }) => (line.from.class === 'grip' ? price : 0n));
  const off = takenOff(terms.setDiscount, total(bases), terms.currency, rule);
  const on = { of: 'the grips come to', base: total(bases), currency: terms.currency };
  issues.push(...overIssue(terms.setDiscount, off, on));
  return withShares(lines, sharedDiscount(off.taken, bases), 'setDiscount');
}

function jobDiscounted(lines: readonly Priced[], terms: ReadTerms, { rule }: Rounding, issues: Issue[]): Priced[] {
  const bases = lines.map(({ price }) => price);
  const off = takenOff(terms.jobDiscount, total(bases), terms.currency, rule);
  const on = { of: 'the job comes to', base: total(bases), currency: terms.currency };
  issues.push(...overIssue(terms.jobDiscount, off, on));
  return withShares(lines, sharedDiscount(off.taken, bases), 'jobDiscount');
}

function withShares(lines: readonly Priced[], shares: readonly bigint[], key: 'setDiscount' | 'jobDiscount'): Priced[] {
  return lines.map((line, at) => {
    const share = shares[at] ?? 0n;
    return { ...line, [key]: share, price: line.price - share };
  });
}

interface DiscountedOn {
  /** As in `what ${of}`. */
  readonly of: string;
  readonly base: bigint;
  readonly currency: Currency;
}

/** Nothing goes below zero: what is taken off a thing is for a person to set right where it is more than the thing comes to. */
function overIssue(
  discount: ReadDiscount | undefined,
  { wanted, taken }: { wanted: bigint; taken: bigint },
  { of, base, currency }: DiscountedOn,
): Issue[] {
  if (!discount || wanted === taken) return [];
  const most = { minor: base, currency };
  const expected = `${moneyDecimal(most)} at most, which is what ${of}`;
  const got = moneyNumber({ minor: wanted, currency });
  return [{ code: 'outOfRange', field: discount.field, got, expected, detail: moneyNumber(most) }];
}

/** A small job is raised to the minimum charge by a line of its own, after every discount. */
function raisedToMinimum(lines: readonly Priced[], terms: ReadTerms, { rule }: Rounding, notes: QuoteNote[]): Priced[] {
  if (!terms.minimum) return [...lines];
  const { currency } = terms;
  const minimum = moneyOf(terms.minimum, currency, amountRule(rule));
  const by = minimum.minor - total(lines.map(({ price }) => price));
  if (by <= 0n) return [...lines];
  notes.push({ note: 'raised', by: { minor: by, currency }, minimum });
  return [...lines, minimumLine(by, terms)];
}

function minimumLine(by: bigint, { currency, usualRate }: ReadTerms): Priced {
  const unitPrice = { digits: by, scale: currency.minorDigits };
  const line: ReadLine = {
    from: { class: 'minimum', description: 'Minimum charge', quantity: 1, unitPrice: null },
    quantity: { digits: 1n, scale: 0 },
    unitPrice,
    unitCost: { digits: 0n, scale: 0 },
    discount: undefined,
    rate: usualRate,
  };
  return { line, full: by, lineDiscount: 0n, amount: by, setDiscount: 0n, jobDiscount: 0n, price: by };
}

function total(minors: readonly bigint[]): bigint {
  return minors.reduce((sum, each) => sum + each, 0n);
}
