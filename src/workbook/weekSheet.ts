/** How the work ahead stands in its sheet: a head, then each week with its jobs. */
import { moneyNumber } from '../core/index';
import { partText, quotedText, shortItemsText, WEEK_SHEET } from '../words/week';
import type { Block, Cell, CellFormat, Change, Highlight } from './port';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, SCREEN_ROWS, type SheetColumn } from './sheetLooks';
import { brokenLines } from './shared/brokenLines';
import type { Week, WeekJob, WeekPart } from './week';
import { GREY } from './palette';

const DATE = 'yyyy-mm-dd';

const COLUMNS = [
  { header: WEEK_SHEET.due, width: 12, format: DATE, align: 'left' },
  { header: WEEK_SHEET.job, width: 11, format: '@', align: 'left' },
  { header: WEEK_SHEET.customer, width: 24, format: '@', wrap: true, align: 'left' },
  { header: WEEK_SHEET.state, width: 10, align: 'left' },
  { header: WEEK_SHEET.short, width: 34, wrap: true, align: 'left' },
  { header: WEEK_SHEET.quote, width: 15, align: 'left' },
  { header: WEEK_SHEET.clubs, width: 7, format: '0', align: 'right' },
  { header: WEEK_SHEET.benchMinutes, width: 9, format: '0', align: 'right' },
  { header: '', width: 13, align: 'right' },
] as const satisfies readonly SheetColumn[];

const LAST = COLUMNS.length - 1;

/** What two of the columns mean, in lines that the page holds side by side. */
const LEGEND = brokenLines(
  WEEK_SHEET.legend,
  COLUMNS.reduce((sum, { width }) => sum + width, 0),
);
const LEGEND_ROW = 5;

/** Rows above the list's header row. */
export const WEEK_HEAD_ROWS = LEGEND_ROW + LEGEND.length + 1;

export interface WeekHead {
  readonly shop: string;
  readonly today: number;
}

export interface WeekCells {
  readonly cells: readonly (readonly Cell[])[];
  readonly list: { readonly from: number; readonly rows: number };
  /** Rows that head a part, from the top of the page. */
  readonly parts: readonly number[];
  /** Decimals of the money. */
  readonly decimals: number;
}

/** The cells of the whole page. */
export function weekPage(head: WeekHead, week: Week): WeekCells {
  const currency = week.parts.flatMap(({ money }) => money ?? [])[0]?.currency;
  const cells: Cell[][] = Array.from({ length: WEEK_HEAD_ROWS }, () => rowOf([]));
  const facts: (readonly [Cell, Cell])[] = [
    [head.shop || null, null],
    [WEEK_SHEET.title, null],
    [WEEK_SHEET.asOf, head.today],
    [WEEK_SHEET.jobs, week.jobs],
    [WEEK_SHEET.minutes, week.minutes],
    ...LEGEND.map((line) => [line, null] as const),
  ];
  facts.forEach(([label, value], at) => cells[at]?.splice(0, 2, label, value));
  const headers = COLUMNS.map(({ header }, at) => (at === LAST ? WEEK_SHEET.total(currency?.code ?? '') : header));
  cells.push(headers);
  const parts: number[] = [];
  for (const part of week.parts) {
    parts.push(cells.length);
    cells.push(partRow(part), ...part.jobs.map(jobRow));
  }
  const list = { from: WEEK_HEAD_ROWS, rows: cells.length - WEEK_HEAD_ROWS };
  const tail = [
    ...(week.parts.length === 0 ? [WEEK_SHEET.none] : []),
    ...(week.bare.length > 0 ? [WEEK_SHEET.bare(week.bare)] : []),
  ];
  return {
    cells: [...cells, ...tail.map((line) => rowOf([line]))],
    list,
    parts,
    decimals: currency?.minorDigits ?? 2,
  };
}

function rowOf(cells: readonly Cell[]): Cell[] {
  return COLUMNS.map((_, across) => cells[across] ?? null);
}

function partRow(part: WeekPart): Cell[] {
  const { monday, jobs, minutes, money } = part;
  const clubs = jobs.reduce((sum, { fitted }) => sum + fitted, 0);
  const total = money ? moneyNumber(money) : null;
  return rowOf([partText(part), monday ?? null, null, null, null, null, clubs, minutes, total]);
}

function jobRow({ due, job, customer, state, fitted, minutes, short, round, money }: WeekJob): Cell[] {
  const now = money.now && moneyNumber(money.now);
  const differs = now !== undefined && money.issued?.total !== undefined && money.issued.total !== now;
  const quoted = `${quotedText({ round, money })}${differs ? ' *' : ''}`;
  return rowOf([
    due ?? null,
    job,
    customer || null,
    state,
    shortItemsText(short) || null,
    quoted,
    fitted,
    minutes,
    now ?? null,
  ]);
}

/** The same rows for a short list and a long one: highlights are replaced as one, not cut up, when the list gets shorter. */
const HIGHLIGHTED_ROWS = 400;

const PART_RULES: readonly Highlight[] = [
  {
    column: 0,
    equals: [WEEK_SHEET.overdue, WEEK_SHEET.week, WEEK_SHEET.noDay],
    fill: GREY.pale,
    ink: GREY.ink,
    bold: true,
  },
];

/** Looks, widths and page of the work ahead that stands at `at`. */
export function dressWeek(at: Block, { cells, list, parts, decimals }: WeekCells): Change[] {
  const part = (row: number, column: number, rows: number, columns: number): Block => {
    return { sheet: at.sheet, row: at.row + row, column: at.column + column, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const body = list.from + 1;
  const rows = cells.length - body;
  const money = decimals === 0 ? '#,##0' : `#,##0.${'0'.repeat(decimals)}`;
  return [
    // A list of other jobs than before: what was bold need not be so any more.
    format(at, { bold: false, italic: false, align: 'left' }),
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 16 }),
    format(part(2, 0, 3, 1), { ink: LABEL_INK }),
    format(part(2, 1, 1, 1), { number: DATE, bold: true }),
    format(part(3, 1, 2, 1), { number: '0', bold: true }),
    format(part(LEGEND_ROW, 0, LEGEND.length, 1), { italic: true, ink: LABEL_INK }),
    format(part(list.from, 0, 1, COLUMNS.length), HEADER_LOOK),
    ...COLUMNS.flatMap((column, across) => [
      format(part(list.from, across, 1, 1), { align: column.align }),
      ...(rows > 0
        ? [format(part(body, across, rows, 1), bodyLook(across === LAST ? { ...column, format: money } : column))]
        : []),
    ]),
    ...parts.flatMap((row) => [
      format(part(row, 0, 1, 1), { number: '@' }),
      format(part(row, 1, 1, 1), { number: DATE }),
    ]),
    { do: 'highlight', at: part(body, 0, Math.max(rows, HIGHLIGHTED_ROWS), COLUMNS.length), rules: PART_RULES },
    ...rowHeights(part(list.from, 0, 1, 1), COLUMNS, cells.slice(list.from, list.from + list.rows), true),
    { do: 'widths', sheet: at.sheet, column: at.column, widths: COLUMNS.map(({ width }) => width) },
    {
      do: 'page',
      sheet: at.sheet,
      setup: {
        landscape: true,
        area: at,
        titleRows: { row: at.row + list.from, rows: 1 },
        footer: WEEK_SHEET.title,
      },
    },
    ...(at.rows > SCREEN_ROWS ? [{ do: 'freezeRows', sheet: at.sheet, rows: at.row + list.from + 1 } as const] : []),
  ];
}
