/** How options of one job stand beside each other in a sheet: a column for each, a row for each kind of work. */
import { decimalText, moneyNumber, type Money, type NamedQuote, type Quote, type QuoteComparison } from '../core/index';
import { alikeLines, LINE_CLASS_WORDS } from '../words/money';
import { OPTIONS_SHEET } from '../words/quoteHead';
import type { JobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change } from './port';
import { moneyFormat } from './quoteSheet';
import { HEADER_LOOK, LABEL_INK, rowHeights, type SheetColumn } from './sheetLooks';
import { brokenLines } from './shared/brokenLines';
import { GREY } from './palette';

export interface OptionsHead extends JobFacts {
  /** Date serial. */
  readonly date: number;
}

export interface OptionsPage {
  readonly cells: readonly (readonly Cell[])[];
  /** First row of the facts, and how many there are; the date is the last one. */
  readonly facts: { readonly from: number; readonly rows: number };
  /** Row of the options' names. */
  readonly head: number;
  /** Rows of amounts below the row that names the grips. */
  readonly amounts: number;
  readonly totalRow: number;
  readonly options: number;
}

const LABEL_WIDTH = 28;
/** Characters of a page that options share. */
const SHARED_WIDTH = 68;

function columnsFor(options: number): SheetColumn[] {
  const width = Math.floor(SHARED_WIDTH / Math.max(options, 2));
  return [
    { header: OPTIONS_SHEET.what, width: LABEL_WIDTH, wrap: true },
    ...Array.from({ length: options }, () => ({ header: '', width, wrap: true })),
  ];
}

/** The cells of the whole page. */
export function optionsPage(head: OptionsHead, quotes: readonly NamedQuote[], compared: QuoteComparison): OptionsPage {
  const across = quotes.length + 1;
  const row = (...cells: readonly Cell[]): Cell[] => Array.from({ length: across }, (_, at) => cells[at] ?? null);
  const facts = [
    [OPTIONS_SHEET.job, head.job],
    [OPTIONS_SHEET.customer, head.customer || null],
    [OPTIONS_SHEET.date, head.date],
  ].filter(([, value]) => value !== null);
  const top = [row(head.shop || null), row(), row(OPTIONS_SHEET.title), ...facts.map((fact) => row(...fact)), row()];
  const amounts = amountRows(quotes, compared);
  const total = amounts.findIndex(({ isTotal }) => isTotal);
  const cells = [
    ...top,
    row(OPTIONS_SHEET.what, ...compared.names),
    row(OPTIONS_SHEET.grips, ...quotes.map(({ quote }) => gripsText(quote))),
    ...amounts.map(({ label, money }) => row(label, ...money.map(moneyNumber))),
    row(),
    ...alikeLines(compared).flatMap((text) => brokenLines(text, LABEL_WIDTH + SHARED_WIDTH).map((line) => row(line))),
    row(OPTIONS_SHEET.foot),
  ];
  return {
    cells,
    facts: { from: 3, rows: facts.length },
    head: top.length,
    amounts: amounts.length,
    totalRow: top.length + 2 + total,
    options: quotes.length,
  };
}

/** `12 × G-58` and `1 × P-10`, in a line each. */
function gripsText({ lines }: Quote): string {
  const grips = lines.filter((line) => line.class === 'grip');
  return (
    grips.map(({ quantity, item }) => `${decimalText(quantity)} × ${item ?? ''}`).join('\n') || OPTIONS_SHEET.noGrips
  );
}

interface AmountRow {
  readonly label: string;
  readonly money: readonly Money[];
  readonly isTotal?: boolean;
}

function amountRows(quotes: readonly NamedQuote[], compared: QuoteComparison): AmountRow[] {
  const { classes, tax, total, prices, currency, names } = compared;
  const withTax = prices === 'withTax';
  const taxed = tax.amounts.some(({ minor }) => minor !== 0n);
  const totalRow: AmountRow = { label: OPTIONS_SHEET.total(currency.code), money: total.amounts, isTotal: true };
  const taxRow: AmountRow = { label: withTax ? OPTIONS_SHEET.taxIn : OPTIONS_SHEET.tax, money: tax.amounts };
  return [
    // What costs nothing in any of them tells them apart in nothing.
    ...classes
      .filter(({ amounts }) => amounts.some(({ minor }) => minor !== 0n))
      .map((each) => ({ label: LINE_CLASS_WORDS[each.class], money: each.amounts })),
    ...(taxed && !withTax
      ? [{ label: OPTIONS_SHEET.beforeTax, money: quotes.map(({ quote }) => quote.price) }, taxRow]
      : []),
    totalRow,
    ...(taxed && withTax ? [taxRow] : []),
    { label: OPTIONS_SHEET.difference(names[0] ?? ''), money: total.differences },
  ];
}

function format(where: Block, how: CellFormat): Change {
  return { do: 'format', at: where, format: how };
}

/** Looks, widths and page of options that stand at `at`. */
export function dressOptions(at: Block, page: OptionsPage, { currency }: QuoteComparison): Change[] {
  const part = (down: number, across: number, rows: number, columns: number): Block => {
    return { sheet: at.sheet, row: at.row + down, column: at.column + across, rows, columns };
  };
  const { facts, head, amounts, totalRow, options, cells } = page;
  const columns = columnsFor(options);
  const body = head + 1;
  const money = moneyFormat({ currency }, 0);
  return [
    // Other options than before: what was bold or wrapped need not be so any more.
    format(at, { bold: false, italic: false, align: 'left', wrap: false }),
    format(part(0, 0, 1, 1), { bold: true, size: 13 }),
    format(part(2, 0, 1, 1), { bold: true, size: 18 }),
    format(part(facts.from, 0, facts.rows, 1), { ink: LABEL_INK }),
    format(part(facts.from, 1, facts.rows, 1), { bold: true, number: '@' }),
    format(part(facts.from + facts.rows - 1, 1, 1, 1), { number: 'yyyy-mm-dd' }),
    format(part(head, 0, 1, options + 1), { ...HEADER_LOOK }),
    format(part(head, 1, 1, options), { align: 'right' }),
    format(part(body, 1, 1, options), { align: 'right', wrap: true, vertical: 'top' }),
    format(part(body, 0, 1, 1), { vertical: 'top' }),
    format(part(body + 1, 1, amounts - 1, options), { align: 'right', number: money }),
    format(part(body + amounts, 1, 1, options), { align: 'right', number: `+${money};"−"${money};"–"` }),
    format(part(totalRow, 0, 1, options + 1), { bold: true, rule: GREY.rule }),
    format(part(cells.length - 1, 0, 1, 1), { italic: true, ink: LABEL_INK }),
    ...rowHeights(part(head, 0, 1, 1), columns, cells.slice(head, body + 1), true),
    { do: 'widths', sheet: at.sheet, column: at.column, widths: columns.map(({ width }) => width) },
    {
      do: 'page',
      sheet: at.sheet,
      setup: { landscape: false, area: at, titleRows: { row: at.row + head, rows: 1 }, footer: OPTIONS_SHEET.title },
    },
  ];
}
