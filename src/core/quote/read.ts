/** The cells of a quote, read and checked; everything that is wrong with them at once. */
import { readAmount, type AmountCell, type AmountLimits, type Decimal } from '../decimal';
import { currencyOf, type Currency } from '../money';
import { fail, type Issue, type Result } from '../result';
import { readPercent } from './percent';
import { UNTAXED, type Discount, type QuoteInput, type QuoteLine, type QuoteTerms, type TaxRate } from './types';

/** Ends that no shop comes near; what is beyond is a slip (*practice*, all). */
export const AMOUNT_LIMITS: AmountLimits = { low: 0, high: 1_000_000_000 };
export const QUANTITY_LIMITS: AmountLimits = { low: 0, high: 100_000 };
/** A sheet's last date, 9999-12-31. */
const LAST_DATE = 2_958_465;
const MOST_DAYS = 3650;

export type ReadDiscount = ({ readonly percent: Decimal } | { readonly amount: Decimal }) & { readonly field: string };

export interface ReadRate {
  readonly name: string;
  readonly percent: Decimal;
}

export interface ReadLine {
  readonly from: QuoteLine;
  readonly quantity: Decimal;
  readonly unitPrice: Decimal;
  readonly unitCost: Decimal | undefined;
  readonly discount: ReadDiscount | undefined;
  readonly rate: ReadRate | undefined;
}

export interface ReadTerms {
  readonly currency: Currency;
  /** What a line without a word about tax is taxed by. */
  readonly usualRate: ReadRate | undefined;
  readonly rates: readonly ReadRate[];
  readonly setDiscount: ReadDiscount | undefined;
  readonly jobDiscount: ReadDiscount | undefined;
  readonly deposit: ReadDiscount | undefined;
  readonly minimum: Decimal | undefined;
  readonly validUntil: number | undefined;
}

export interface ReadQuote {
  readonly lines: readonly ReadLine[];
  readonly terms: ReadTerms;
}

/** Gathers issues, so that a person hears of all of them at once. */
interface Gathered {
  readonly issues: Issue[];
  /** The value, or undefined and one issue more. */
  take<T>(result: Result<T>): T | undefined;
}

function gathering(): Gathered {
  const issues: Issue[] = [];
  return {
    issues,
    take(result) {
      if (result.ok) return result.value;
      issues.push(result.issue);
      return undefined;
    },
  };
}

/** What a quote is worked out from; or what is wrong with it, all of it. */
export function readQuote(input: QuoteInput): { readonly read: ReadQuote } | { readonly issues: readonly Issue[] } {
  const gathered = gathering();
  const terms = readTerms(input, gathered);
  if (input.lines.length === 0) gathered.issues.push({ code: 'noRows', field: 'The quote', expected: 'lines' });
  const rates = terms?.rates ?? [];
  const lines = input.lines.map((line, at) => readLine(line, at, rates, gathered));
  gathered.issues.push(...itemsTwice(input.lines));
  const whole = lines.flatMap((line) => line ?? []);
  if (!terms || gathered.issues.length > 0) return { issues: gathered.issues };
  return { read: { lines: whole, terms } };
}

/** `Line 3 (Fit a grip)`: how a line is called where something is wrong with it. */
function nameOf(line: QuoteLine, at: number): string {
  return `Line ${at + 1} (${line.description})`;
}

function readLine(
  line: QuoteLine,
  at: number,
  rates: readonly ReadRate[],
  { take, issues }: Gathered,
): ReadLine | undefined {
  const name = nameOf(line, at);
  const quantity = take(readAmount(line.quantity, `${name}, quantity`, QUANTITY_LIMITS));
  const unitPrice = take(readAmount(line.unitPrice, `${name}, price`, AMOUNT_LIMITS));
  const unitCost = readIfGiven(line.unitCost, (cell) => take(readAmount(cell, `${name}, cost`, AMOUNT_LIMITS)));
  const discount = line.discount && readDiscount(line.discount, `${name}, discount`, take);
  const rate = rateOf(line.tax, rates);
  if (rate === 'unknown') {
    const expected = [...rates.map((each) => each.name), UNTAXED].join(', ');
    issues.push({ code: 'unknownChoice', field: `${name}, tax`, got: line.tax ?? null, expected });
    return undefined;
  }
  if (!quantity || !unitPrice) return undefined;
  return { from: line, quantity, unitPrice, unitCost, discount, rate };
}

function isGiven(cell: AmountCell): boolean {
  return cell !== undefined && cell !== null && !(typeof cell === 'string' && cell.trim() === '');
}

function readIfGiven<T>(cell: AmountCell, read: (cell: AmountCell) => T | undefined): T | undefined {
  return isGiven(cell) ? read(cell) : undefined;
}

export function readDiscount(
  discount: Discount,
  of: string,
  take: <T>(result: Result<T>) => T | undefined,
): ReadDiscount | undefined {
  const field = discount.field ?? of;
  if ('percent' in discount) {
    const read = readPercent(discount.percent, discount.field ?? `${of} (%)`);
    const isWord = !read.ok && read.issue.code === 'notNumber';
    const percent = take(isWord ? fail({ ...read.issue, expected: '0 to 100' }) : read);
    return percent && { percent, field };
  }
  const amount = take(readAmount(discount.amount, field, AMOUNT_LIMITS));
  return amount && { amount, field };
}

/** The rate that a name stands for; undefined: untaxed. */
function rateOf(name: string | undefined, rates: readonly ReadRate[]): ReadRate | undefined | 'unknown' {
  if (name === undefined || name.trim() === '') return rates[0];
  const wanted = name.trim().toLowerCase();
  if (wanted === UNTAXED.toLowerCase()) return undefined;
  return rates.find((rate) => rate.name.toLowerCase() === wanted) ?? 'unknown';
}

function readTerms(terms: QuoteTerms, gathered: Gathered): ReadTerms | undefined {
  const { take } = gathered;
  const currency = take(currencyOf(terms.currency));
  const rates = readRates(terms.taxes, gathered);
  const setDiscount = terms.setDiscount && readDiscount(terms.setDiscount, 'Discount on the grips', take);
  const jobDiscount = terms.jobDiscount && readDiscount(terms.jobDiscount, 'Discount on the job', take);
  const deposit = terms.deposit && readDiscount(terms.deposit, 'Deposit', take);
  const minimum = readIfGiven(terms.minimum, (cell) => take(readAmount(cell, 'Minimum charge', AMOUNT_LIMITS)));
  const validUntil = validUntilOf(terms, gathered.issues);
  if (!currency) return undefined;
  return { currency, usualRate: rates[0], rates, setDiscount, jobDiscount, deposit, minimum, validUntil };
}

function readRates(taxes: readonly TaxRate[], { take, issues }: Gathered): ReadRate[] {
  const seen = new Set<string>([UNTAXED.toLowerCase()]);
  return taxes.flatMap((tax) => {
    const name = tax.name.trim();
    const percent = take(readPercent(tax.percent, `Tax ${name} (%)`));
    if (name === '') issues.push({ code: 'blank', field: 'Name of a tax', expected: 'a name' });
    else if (seen.has(name.toLowerCase())) issues.push({ code: 'duplicate', field: 'Taxes', got: name });
    seen.add(name.toLowerCase());
    return percent ? [{ name, percent }] : [];
  });
}

/** Last day on which the quote holds; undefined where nobody set one. */
function validUntilOf({ issued, validDays }: QuoteTerms, issues: Issue[]): number | undefined {
  const date = wholeWithin(issued, 'Date of issue', 1, LAST_DATE, issues);
  const days = wholeWithin(validDays, 'Days a quote holds', 0, MOST_DAYS, issues);
  if (days !== undefined && date === undefined && issued === undefined) {
    issues.push({ code: 'blank', field: 'Date of issue', expected: 'the date from which the quote holds' });
  }
  return date === undefined || days === undefined ? undefined : date + days;
}

function wholeWithin(
  value: number | undefined,
  field: string,
  low: number,
  high: number,
  issues: Issue[],
): number | undefined {
  if (value === undefined) return undefined;
  if (!Number.isInteger(value)) {
    issues.push({ code: 'notWhole', field, got: value });
    return undefined;
  }
  if (value >= low && value <= high) return value;
  issues.push({ code: 'outOfRange', field, got: value, expected: `${low} to ${high}` });
  return undefined;
}

/** An item on two lines is most likely typed twice, and would be taken from stock twice. */
function itemsTwice(lines: readonly QuoteLine[]): Issue[] {
  const first = new Map<string, number>();
  return lines.flatMap((line, at): Issue[] => {
    if (line.item === undefined) return [];
    const key = line.item.trim().toLowerCase();
    const before = first.get(key);
    if (before === undefined) first.set(key, at);
    return before === undefined
      ? []
      : [{ code: 'duplicate', field: `Line ${at + 1}`, got: line.item, detail: before + 1 }];
  });
}
