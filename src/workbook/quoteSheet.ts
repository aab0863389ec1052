/** How a quote stands in its sheet: head, lines, sums and terms; never a margin. */
import { decimalText, moneyNumber, type Money, type Quote } from '../core/index';
import { QUOTE_SHEET } from '../words/quoteHead';
import { moneyText } from '../words/money';
import type { JobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change } from './port';
import { HEADER_LOOK, LABEL_INK, rowHeights, type SheetColumn } from './sheetLooks';

export interface QuoteHead extends JobFacts {
  readonly number: number;
  readonly revision: number;
  readonly terms: string;
}

export interface QuotePage {
  readonly cells: readonly (readonly Cell[])[];
  /** Rows above the header row of the lines. */
  readonly head: number;
  readonly lines: number;
  readonly totalRow: number;
}

const COLUMNS: readonly SheetColumn[] = [
  { header: QUOTE_SHEET.description, width: 42, wrap: true },
  { header: QUOTE_SHEET.quantity, width: 10 },
  { header: QUOTE_SHEET.unitPrice, width: 11 },
  { header: QUOTE_SHEET.tax, width: 14, wrap: true },
  { header: QUOTE_SHEET.amount, width: 13 },
];

const LAST = COLUMNS.length - 1;
/** Characters that go into one line of the terms. */
const TERMS_WIDTH = 82;

/** The cells of the whole page. */
export function quotePage(head: QuoteHead, quote: Quote): QuotePage {
  const top = headCells(head, quote);
  const lines = quote.lines.map((line) => [
    line.description,
    Number(decimalText(line.quantity)),
    Number(decimalText(line.unitPrice)),
    line.tax === undefined || !line.taxPercent ? QUOTE_SHEET.untaxed : `${line.tax}, ${decimalText(line.taxPercent)} %`,
    moneyNumber(line.amount),
  ]);
  const sums = sumCells(quote);
  const terms = head.terms.trim() === '' ? [] : [QUOTE_SHEET.terms, ...broken(head.terms)];
  const cells = [
    ...top,
    COLUMNS.map(({ header }) => header),
    ...lines,
    row(),
    ...sums.map(({ label, money }) => row(label, LAST, moneyNumber(money))),
    ...(terms.length > 0 ? [row(), ...terms.map((line) => row(line))] : []),
  ];
  const total = sums.findIndex(({ isTotal }) => isTotal);
  return { cells, head: top.length, lines: lines.length, totalRow: top.length + lines.length + 2 + total };
}

function row(label: Cell = null, across = 1, value: Cell = null): Cell[] {
  const cells = COLUMNS.map((): Cell => null);
  cells[0] = label;
  cells[across] = value ?? cells[across] ?? null;
  return cells;
}

function headCells({ shop, job, customer, number, revision }: QuoteHead, { issued, validUntil }: Quote): Cell[][] {
  const facts: (readonly [string, Cell])[] = [
    [QUOTE_SHEET.number, number],
    [QUOTE_SHEET.revision, revision > 1 ? revision : null],
    [QUOTE_SHEET.job, job],
    [QUOTE_SHEET.customer, customer || null],
    [QUOTE_SHEET.issued, issued ?? null],
    [QUOTE_SHEET.validUntil, validUntil ?? null],
  ];
  // Always as many rows: what stands where is then the same on every quote.
  return [
    row(shop || null),
    row(QUOTE_SHEET.title),
    ...facts.map(([label, value]) => row(value === null ? null : label, 1, value)),
    row(),
  ];
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

/** A long text in lines that fit the page. */
function broken(text: string): string[] {
  const lines: string[] = [];
  for (const word of text.trim().split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= TERMS_WIDTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** As many decimals as the currency has; a unit price may have more. */
function moneyFormat({ currency: { minorDigits } }: Quote, more: number): string {
  const digits = `${'0'.repeat(minorDigits)}${'#'.repeat(more)}`;
  return digits === '' ? '#,##0' : `#,##0.${digits}`;
}

const DATE = 'yyyy-mm-dd';

/** Looks, widths and page of a quote that stands at `at`. */
export function dressQuote(at: Block, page: QuotePage, quote: Quote): Change[] {
  const part = (down: number, across: number, rows: number, columns: number): Block => {
    return { sheet: at.sheet, row: at.row + down, column: at.column + across, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const { head, lines, totalRow } = page;
  const body = head + 1;
  const after = page.cells.length - body - lines;
  return [
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 18 }),
    format(part(2, 0, 6, 1), { ink: LABEL_INK }),
    format(part(2, 1, 6, 1), { bold: true, align: 'left' }),
    format(part(4, 1, 2, 1), { number: '@' }),
    format(part(6, 1, 2, 1), { number: DATE }),
    format(part(head, 0, 1, COLUMNS.length), HEADER_LOOK),
    format(part(head, 1, 1, 2), { align: 'right' }),
    format(part(head, LAST, 1, 1), { align: 'right' }),
    format(part(body, 0, lines, COLUMNS.length), { vertical: 'top' }),
    format(part(body, 0, lines, 1), { wrap: true }),
    format(part(body, 2, lines, 1), { number: moneyFormat(quote, 2) }),
    format(part(body, 3, lines, 1), { wrap: true }),
    format(part(body, LAST, lines + after, 1), { number: moneyFormat(quote, 0) }),
    format(part(totalRow, 0, 1, COLUMNS.length), { bold: true, rule: '#6B7785' }),
    ...rowHeights(part(head, 0, 1, 1), COLUMNS, page.cells.slice(head, body + lines)),
    { do: 'widths', sheet: at.sheet, column: at.column, widths: COLUMNS.map(({ width }) => width) },
    {
      do: 'page',
      sheet: at.sheet,
      setup: { landscape: false, area: at, titleRows: { row: at.row + head, rows: 1 }, footer: QUOTE_SHEET.title },
    },
  ];
}
