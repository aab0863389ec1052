/** How money is written, and every word about a quote: its lines, its sums, what is wrong with it, what to know about it. */
import {
  decimalText,
  moneyDecimal,
  type Issue,
  type LineClass,
  type Money,
  type Quote,
  type QuoteComparison,
  type QuotedLine,
  type QuoteNote,
} from '../core/index';
import { sayIssue } from './issues';
import { listed } from './listed';

/** `84.00 EUR`, `−3.50 EUR`: a point, no marks between thousands, the code behind; nothing is guessed of the reader's country. */
export function moneyText(money: Money): string {
  return `${amountText(money)} ${money.currency.code}`;
}

/** `84.00`, `−3.50`: where the currency stands above it. */
export function amountText(money: Money): string {
  return moneyDecimal(money).replace('-', '−');
}

/** What a line is for, as it heads a group of them. */
export const LINE_CLASS_WORDS: Readonly<Record<LineClass, string>> = {
  grip: 'Grips',
  fitting: 'Fitting',
  buildUp: 'Build-up',
  salvage: 'Salvage',
  disposal: 'Disposal of old grips',
  reading: 'Weighing and reading',
  weight: 'Weight',
  rebalancing: 'Putting readings right',
  length: 'Length change',
  other: 'Other work',
  minimum: 'Minimum charge',
};

/** `13 × 6.50`, or the quantity and the price of one with all their decimals. */
export function quantityText({ quantity, unitPrice }: QuotedLine, { currency }: Quote): string {
  return `${decimalText(quantity)} × ${decimalText(unitPrice, currency.minorDigits)}`;
}

/** `G-58, cord: 13 × 6.50 = 84.50 EUR`, with what is taken off the line by itself. */
export function lineText(line: QuotedLine, quote: Quote): string {
  const off = line.lineDiscount.minor > 0n ? `, less ${moneyText(line.lineDiscount)}: ${moneyText(line.amount)}` : '';
  return `${line.description}: ${quantityText(line, quote)} = ${moneyText(line.full)}${off}`;
}

/** A sum of a quote, with what it is called. */
export interface SumText {
  readonly label: string;
  readonly money: Money;
  readonly isTotal: boolean;
}

/** The sums of a quote in the order in which they are read. */
export function sumTexts(quote: Quote): SumText[] {
  const { prices, taxes, amount, setDiscount, jobDiscount, price, total, deposit, balance } = quote;
  const isOff = setDiscount.minor + jobDiscount.minor > 0n;
  const taxWord = prices === 'withTax' ? 'included' : 'added';
  const sum = (label: string, money: Money, isTotal = false): SumText => ({ label, money, isTotal });
  return [
    ...(isOff ? [sum('Sum of lines', amount)] : []),
    ...(setDiscount.minor > 0n ? [sum('Discount on the grips', negative(setDiscount))] : []),
    ...(jobDiscount.minor > 0n ? [sum('Discount on the job', negative(jobDiscount))] : []),
    ...(prices === 'beforeTax' && taxes.some(({ name }) => name !== undefined) ? [sum('Before tax', price)] : []),
    ...taxes.flatMap(({ name, percent, net, tax }) =>
      name === undefined || !percent
        ? []
        : [sum(`${name}, ${decimalText(percent)} % ${taxWord} on ${moneyText(net)}`, tax)],
    ),
    sum('Total', total, true),
    ...(deposit.minor > 0n ? [sum('Deposit', deposit), sum('Balance due', balance)] : []),
  ];
}

/** The same in lines, each `Total: 101.40 EUR`. */
export function totalLines(quote: Quote): string[] {
  return sumTexts(quote).map(({ label, money }) => `${label}: ${moneyText(money)}`);
}

function negative({ minor, currency }: Money): Money {
  return { minor: -minor, currency };
}

/** Why a quote cannot be made, and what to do. */
export function sayQuoteIssue(issue: Issue): string {
  if (issue.code === 'noRows' && issue.field === 'The quote') {
    return 'No club of this job has a new grip chosen, so there is nothing to charge. Choose one in Plan and fill it.';
  }
  if (issue.code !== 'duplicate') return sayIssue(issue);
  const { field, got, detail } = issue;
  return detail === undefined
    ? `${field}: “${String(got)}” is there twice, so it is not certain which one counts. Rename or remove one.`
    : `${field}: “${String(got)}” is on line ${detail} already. Put both on one line and add the quantities.`;
}

/** What whoever issues a quote must know of it. */
export function sayQuoteNote(note: QuoteNote): string {
  switch (note.note) {
    case 'depositOver':
      return `The deposit is ${moneyText(note.wanted)}, more than the total. ${moneyText(note.taken)} is asked for.`;
    case 'raised':
      return `Raised by ${moneyText(note.by)} to the minimum charge of ${moneyText(note.minimum)}.`;
    case 'roundedDown':
      return note.at === 'line'
        ? 'Tax is rounded down on every line, to a whole minor unit. HMRC allows that on a whole invoice, on a line only to a tenth of a penny, and as a rule not to retailers. Ask your adviser.'
        : 'Tax is rounded down. HMRC allows that to traders who invoice, as a rule not to retailers. Ask your adviser.';
  }
}

/** What the shop keeps; never on the client's sheet. */
export function sayMargin({ margin }: Quote): string {
  if (margin.whole) return `Margin: ${moneyText(margin.whole)}.`;
  return `Margin: ${moneyText(margin.known)} on the lines whose cost is known. Not known for ${listed(margin.missing)}: give a cost.`;
}

/** `“As it is” and “With tape” are alike: the same lines at the same prices.`; a sentence for each group. */
export function alikeLines({ alike }: Pick<QuoteComparison, 'alike'>): string[] {
  return alike.map(
    (names) => `${listed(names.map((name) => `“${name}”`))} are alike: the same lines at the same prices.`,
  );
}

/** What each quote costs, and how much more or less than the first: `['With tape', '90.80', '+6.30']`. */
export function comparisonCells({ names, total }: QuoteComparison): string[][] {
  return names.map((name, at) => {
    const [amount, difference] = [total.amounts[at], total.differences[at]];
    if (!amount || !difference) return [name, '–', '–'];
    const sign = difference.minor > 0n ? '+' : '';
    return [name, amountText(amount), difference.minor === 0n ? '–' : `${sign}${amountText(difference)}`];
  });
}
