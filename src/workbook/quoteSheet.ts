/** How a quote stands in its sheet: head, lines, sums and terms; never a margin. */
import { decimalText, moneyNumber, type Money, type Quote, type QuotedLine } from '../core/index';
import { QUOTE_SHEET } from '../words/quoteHead';
import { moneyText } from '../words/money';
import type { JobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change } from './port';
import { pageBreaks, type Together } from './shared/pageBreaks';
import { HEADER_LOOK, LABEL_INK, rowHeights, rowPoints, type SheetColumn } from './sheetLooks';
import { brokenLines } from './shared/brokenLines';
import { GREY } from './palette';

export interface QuoteHead extends JobFacts {
  readonly number: number;
  readonly revision: number;
  /** Which of several options was chosen; '' where there were none. */
  readonly option: string;
  readonly address: readonly string[];
  readonly terms: string;
}

/** The cells of a page, and where its parts stand in it: rows counted from its first. */
export interface QuotePage {
  readonly cells: readonly (readonly Cell[])[];
  /** Rows of the address. */
  readonly address: number;
  /** Row of the title; the facts (number, job, dates) begin below it, the customer at their left. */
  readonly title: number;
  readonly facts: number;
  /** Of the facts, those that are dates: the last ones. */
  readonly dates: number;
  /** Header row of the lines. */
  readonly head: number;
  readonly lines: number;
  /** Among the lines, what is taken off the one above. */
  readonly off: readonly number[];
  readonly sums: number;
  readonly totalRow: number;
  /** Row of the word above the terms; null without terms. */
  readonly termsRow: number | null;
}

const COLUMNS: readonly SheetColumn[] = [
  { header: QUOTE_SHEET.description, width: 44, wrap: true },
  { header: QUOTE_SHEET.quantity, width: 10 },
  { header: QUOTE_SHEET.unitPrice, width: 13 },
  { header: QUOTE_SHEET.tax, width: 15, wrap: true },
  { header: QUOTE_SHEET.amount, width: 14 },
];

export const QUOTE_COLUMNS = COLUMNS.length;
export const QUOTE_HEADERS: readonly string[] = COLUMNS.map(({ header }) => header);
const LAST = COLUMNS.length - 1;
/** Facts stand at the right: their names here, what they are at the edge. */
const FACT_COLUMN = 2;
/** Characters that go into one line of the terms: letters are narrower than the digits that columns are measured in. */
const TERMS_WIDTH = 104;

/** The cells of the whole page. */
export function quotePage(head: QuoteHead, quote: Quote): QuotePage {
  const facts = factsOf(head, quote);
  const lines = quote.lines.flatMap((line) => lineCells(line, quote));
  const sums = sumCells(quote);
  const terms =
    head.terms.trim() === ''
      ? []
      : head.terms
          .trim()
          .split(/\r?\n/)
          .flatMap((line) => brokenLines(line, TERMS_WIDTH));
  const letterhead = [head.shop || null, ...head.address].map((line) => row(line));
  const top = [...letterhead, row(), row(QUOTE_SHEET.title), ...factCells(facts, head.customer), row()];
  const header = top.length;
  const firstSum = header + 1 + lines.length + 1;
  const cells = [
    ...top,
    COLUMNS.map((column) => column.header),
    ...lines.map((line) => line.cells),
    row(),
    ...sums.map(({ label, money }) => row(label, LAST, moneyNumber(money))),
    ...(terms.length > 0 ? [row(), row(QUOTE_SHEET.terms), ...terms.map((line) => row(line || null))] : []),
  ];
  return {
    cells,
    address: head.address.length,
    title: letterhead.length + 1,
    facts: facts.length,
    dates: [quote.issued, quote.validUntil].filter((date) => date !== undefined).length,
    head: header,
    lines: lines.length,
    off: lines.flatMap(({ isOff }, at) => (isOff ? [at] : [])),
    sums: sums.length,
    totalRow: firstSum + sums.findIndex(({ isTotal }) => isTotal),
    termsRow: terms.length > 0 ? firstSum + sums.length + 1 : null,
  };
}

function row(label: Cell = null, across = 1, value: Cell = null): Cell[] {
  const cells = COLUMNS.map((): Cell => null);
  cells[0] = label;
  cells[across] = value ?? cells[across] ?? null;
  return cells;
}

interface LineCells {
  readonly cells: Cell[];
  readonly isOff: boolean;
}

/** A line, and what is taken off it by itself in a row of its own, so that every row is quantity × price. */
function lineCells(line: QuotedLine, { currency }: Quote): LineCells[] {
  const cells: Cell[] = [
    line.description,
    Number(decimalText(line.quantity)),
    Number(decimalText(line.unitPrice)),
    line.tax === undefined || !line.taxPercent ? QUOTE_SHEET.untaxed : `${line.tax}, ${decimalText(line.taxPercent)} %`,
    moneyNumber(line.full),
  ];
  const own: LineCells = { cells, isOff: false };
  if (line.lineDiscount.minor === 0n) return [own];
  const less = moneyNumber({ minor: -line.lineDiscount.minor, currency });
  const { discountReason: reason } = line;
  const label = reason === undefined ? QUOTE_SHEET.lineDiscount : QUOTE_SHEET.lineDiscountFor(reason);
  return [own, { cells: row(label, LAST, less), isOff: true }];
}

type Fact = readonly [string, Cell];

/** Facts that are known; dates come last, together. */
function factsOf({ job, number, revision, option }: QuoteHead, { issued, validUntil }: Quote): readonly Fact[] {
  const facts: readonly Fact[] = [
    [QUOTE_SHEET.number, number],
    [QUOTE_SHEET.revision, revision > 1 ? revision : null],
    [QUOTE_SHEET.job, job || null],
    [QUOTE_SHEET.option, option || null],
    [QUOTE_SHEET.issued, issued ?? null],
    [QUOTE_SHEET.validUntil, validUntil ?? null],
  ];
  return facts.filter(([, value]) => value !== null);
}

/** The customer at the left, facts at the right. */
function factCells(facts: readonly Fact[], customer: string): Cell[][] {
  const left: Cell[] = customer === '' ? [] : [QUOTE_SHEET.customer, customer];
  return facts.map(([label, value], at) => {
    const cells = row(left[at] ?? null);
    cells[FACT_COLUMN] = label;
    cells[LAST] = value;
    return cells;
  });
}

interface Sum {
  readonly label: string;
  readonly money: Money;
  readonly isTotal?: boolean;
}

function sumCells(quote: Quote): Sum[] {
  const { prices, taxes, currency } = quote;
  const off = ({ minor }: Money): Money => ({ minor: -minor, currency });
  const isOff = quote.setDiscount.minor + quote.jobDiscount.minor > 0n;
  const taxed = taxes.flatMap(({ name, percent, net, tax }): Sum[] => {
    if (name === undefined || !percent) return [];
    const says = prices === 'withTax' ? QUOTE_SHEET.taxIncluded : QUOTE_SHEET.taxAdded;
    return [{ label: says(name, decimalText(percent), moneyText(net)), money: tax }];
  });
  const total: Sum = { label: QUOTE_SHEET.total(currency.code), money: quote.total, isTotal: true };
  return [
    ...(isOff ? [{ label: QUOTE_SHEET.sum, money: quote.amount }] : []),
    ...(quote.setDiscount.minor > 0n ? [{ label: QUOTE_SHEET.gripDiscount, money: off(quote.setDiscount) }] : []),
    ...(quote.jobDiscount.minor > 0n ? [{ label: QUOTE_SHEET.jobDiscount, money: off(quote.jobDiscount) }] : []),
    ...(prices === 'beforeTax'
      ? [{ label: QUOTE_SHEET.beforeTax, money: quote.price }, ...taxed, total]
      : [total, ...taxed]),
    ...(quote.deposit.minor > 0n
      ? [
          { label: QUOTE_SHEET.deposit, money: quote.deposit },
          { label: QUOTE_SHEET.balance, money: quote.balance },
        ]
      : []),
  ];
}

/** As many decimals as the currency has; a unit price may have more. */
export function moneyFormat({ currency: { minorDigits } }: Pick<Quote, 'currency'>, more: number): string {
  // Of a currency without decimals `#,##0.##` would show a bare point.
  if (minorDigits === 0 && more > 0) return 'General';
  const digits = `${'0'.repeat(minorDigits)}${'#'.repeat(more)}`;
  return digits === '' ? '#,##0' : `#,##0.${digits}`;
}

const DATE = 'yyyy-mm-dd';

type Part = (down: number, across: number, rows: number, columns: number) => Block;

/** Looks, widths and page of a quote that stands at `at`. */
export function dressQuote(at: Block, page: QuotePage, quote: Quote): Change[] {
  const part: Part = (down, across, rows, columns) => {
    return { sheet: at.sheet, row: at.row + down, column: at.column + across, rows, columns };
  };
  const { head, lines } = page;
  return [
    ...dressHead(part, page),
    ...dressLines(part, page, quote),
    ...rowHeights(part(head, 0, 1, 1), COLUMNS, page.cells.slice(head, head + 1 + lines)),
    { do: 'widths', sheet: at.sheet, column: at.column, widths: COLUMNS.map(({ width }) => width) },
    {
      do: 'page',
      sheet: at.sheet,
      setup: {
        landscape: false,
        area: at,
        titleRows: { row: at.row + head, rows: 1 },
        footer: QUOTE_SHEET.title,
        breaks: quoteBreaks(page).map((row) => at.row + row),
      },
    },
  ];
}

/** Of a page of Letter or A4, less its edges and a little for what a host makes higher: 792 points and 79 of edges for the shorter one. */
const PAGE_POINTS = 705;
/** What is bold and large above the lines is higher than a line, by so much in all. */
const HEAD_POINTS = 15;
/** Lines that stay with the sums, and lines of terms with the word above them. */
const [WITH_SUMS, WITH_TERMS] = [2, 12];

/** Rows that begin a page: a line stays with what is taken off it, the sums with the last lines, the word above terms with the first of them. */
function quoteBreaks({ cells, head, lines, off, sums, termsRow }: QuotePage): readonly number[] {
  const points = cells.map((row, at) => rowPoints(COLUMNS, at >= head && at <= head + lines ? row : [], at === head));
  const together: Together[] = [];
  const keep = (from: number, to: number): void => {
    const added = points.slice(from, to).reduce((sum, each) => sum + each, 0);
    together.push({ from, points: from === 0 ? added + HEAD_POINTS : added });
  };
  const isOff = new Set(off.map((down) => head + 1 + down));
  const starts = points.map((_, at) => at).filter((at) => at > head && at <= head + lines && !isOff.has(at));
  const lastOnes = starts.at(-WITH_SUMS) ?? head + 1;
  const end = head + 1 + lines + 1 + sums;
  const [first = 0, ...others] = starts.filter((at) => at <= lastOnes);
  keep(0, others[0] ?? (first === lastOnes ? end : lastOnes));
  others.forEach((at, i) => keep(at, at === lastOnes ? end : (others[i + 1] ?? end)));
  if (termsRow !== null) {
    const apart = Math.min(cells.length, termsRow + 1 + WITH_TERMS);
    keep(end, apart);
    for (let at = apart; at < cells.length; at += 1) keep(at, at + 1);
  }
  return pageBreaks(together, PAGE_POINTS, points[head] ?? 0);
}

function format(where: Block, how: CellFormat): Change {
  return { do: 'format', at: where, format: how };
}

function dressHead(part: Part, { cells, address, title, facts, dates }: QuotePage): Change[] {
  const first = title + 1;
  // Names of people and jobs are text, whatever they look like; a number in a cell of texts would become one.
  const names = cells
    .slice(first, first + facts)
    .flatMap((line, down) => (typeof line[LAST] === 'string' ? [down] : []));
  return [
    format(part(0, 0, 1, 1), { bold: true, size: 13 }),
    ...(address > 0 ? [format(part(1, 0, address, 1), { ink: LABEL_INK })] : []),
    format(part(title, 0, 1, 1), { bold: true, size: 18 }),
    format(part(first, 0, 1, 1), { ink: LABEL_INK }),
    format(part(first + 1, 0, 1, 1), { bold: true, number: '@' }),
    format(part(first, FACT_COLUMN, facts, 1), { ink: LABEL_INK }),
    format(part(first, LAST, facts, 1), { bold: true, align: 'right' }),
    ...names.map((down) => format(part(first + down, LAST, 1, 1), { number: '@' })),
    ...(dates > 0 ? [format(part(first + facts - dates, LAST, dates, 1), { number: DATE })] : []),
  ];
}

function dressLines(part: Part, page: QuotePage, quote: Quote): Change[] {
  const { head, lines, off, sums, totalRow, termsRow } = page;
  const body = head + 1;
  const money = moneyFormat(quote, 0);
  return [
    format(part(head, 0, 1, COLUMNS.length), HEADER_LOOK),
    format(part(head, 1, 1, 2), { align: 'right' }),
    format(part(head, LAST, 1, 1), { align: 'right' }),
    format(part(body, 0, lines, COLUMNS.length), { vertical: 'top' }),
    format(part(body, 0, lines, 1), { wrap: true }),
    format(part(body, 2, lines, 1), { number: moneyFormat(quote, 2) }),
    format(part(head, 3, lines + 1, 1), { align: 'center' }),
    format(part(body, 3, lines, 1), { wrap: true }),
    ...off.map((down) => format(part(body + down, 0, 1, 1), { italic: true })),
    format(part(body, LAST, lines + 1 + sums, 1), { number: money }),
    format(part(body + lines - 1, 0, 1, COLUMNS.length), { rule: RULE }),
    format(part(totalRow, 0, 1, COLUMNS.length), { bold: true, rule: RULE }),
    ...(termsRow === null ? [] : [format(part(termsRow, 0, 1, 1), { bold: true })]),
  ];
}

const RULE = GREY.rule;
