/** How a plan stands in a sheet: its head with the job and a legend, then the plan itself, header row first. */
import type { Verdict } from '../core/index';
import { VERDICT_MEANING, VERDICT_WORDS } from '../words/notes';
import { BASIS_LEGEND, HEAD_WORDS, SPREAD_LEGEND } from '../words/planHead';
import { PLAN_COLUMNS } from './planCells';
import { VERDICT_COLOURS } from './palette';
import { MOST_ROWS } from './shared/limits';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, SCREEN_ROWS } from './sheetLooks';
import type { JobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change, Highlight } from './port';

/** Rows above the plan's header row. */
export const HEAD_ROWS = 9;
/** Rows below the plan that are formatted as well, so that a live plan can grow into them. */
export const SPARE_ROWS = 40;

/** What the head says. */
export interface PlanHead extends JobFacts {
  readonly someClubs: boolean;
}

const VERDICTS = Object.keys(VERDICT_COLOURS) as Verdict[];

/** Column of the legend: clear of the lines about the job, and wide enough for a verdict, since it holds them below. */
const LEGEND_COLUMN = PLAN_COLUMNS.findIndex(({ verdict }) => verdict);

/** The cells of the head, `HEAD_ROWS` × the plan's columns. */
export function headCells(head: PlanHead): Cell[][] {
  const { title, job, customer, due, clubs, someClubs } = HEAD_WORDS;
  const rows: Cell[][] = Array.from({ length: HEAD_ROWS }, () => Array<Cell>(PLAN_COLUMNS.length).fill(null));
  const facts: [Cell, Cell][] = [
    [head.shop || null, null],
    [title, null],
    [job, head.job],
    [customer, head.customer || null],
    [due, head.due],
    [clubs, head.someClubs ? someClubs : null],
  ];
  facts.forEach(([label, value], i) => {
    // A label without a value would only raise a question.
    if (i < 2 || value !== null) fillIn(rows, i, 0, [label, value]);
  });
  VERDICTS.forEach((verdict, i) => {
    fillIn(rows, i, LEGEND_COLUMN, [VERDICT_WORDS[verdict], VERDICT_MEANING[verdict]]);
  });
  fillIn(rows, 6, 0, [BASIS_LEGEND]);
  fillIn(rows, 7, 0, [SPREAD_LEGEND]);
  return rows;
}

function fillIn(rows: Cell[][], row: number, column: number, cells: readonly Cell[]): void {
  rows[row]?.splice(column, cells.length, ...cells);
}

/** Formats of the head; `at` is the whole plan. */
export function dressHead(at: Block): Change[] {
  const format = (row: number, column: number, rows: number, columns: number, how: CellFormat): Change => {
    return {
      do: 'format',
      at: { sheet: at.sheet, row: at.row + row, column: at.column + column, rows, columns },
      format: how,
    };
  };
  return [
    format(0, 0, 1, 1, { bold: true, ink: LABEL_INK }),
    format(1, 0, 1, 1, { bold: true, size: 16 }),
    format(2, 0, 4, 1, { ink: LABEL_INK }),
    format(2, 1, 2, 1, { number: '@', bold: true, align: 'left' }),
    format(4, 1, 1, 1, { number: 'yyyy-mm-dd', bold: true, align: 'left' }),
    ...VERDICTS.map((verdict, i) => format(i, LEGEND_COLUMN, 1, 1, { bold: true, ...VERDICT_COLOURS[verdict] })),
    format(0, LEGEND_COLUMN + 1, VERDICTS.length, 1, { ink: LABEL_INK }),
    format(6, 0, 2, 1, { italic: true, ink: LABEL_INK }),
  ];
}

/** Which rows of the plan's body get verdict highlights, and whether beside those that are there. */
export interface Highlighted {
  readonly fromRow: number;
  readonly beside: boolean;
}

/**
 * Formats of the plan under its head: header row, columns, verdicts, heights. `bodyRows` counts spare rows as well;
 * `highlighted` is null where the highlights stand already.
 */
export function dressBody(
  at: Block,
  bodyRows: number,
  plan: readonly (readonly Cell[])[],
  highlighted: Highlighted | null,
): Change[] {
  const top = at.row + HEAD_ROWS;
  return [
    { do: 'format', at: { ...at, row: top, rows: 1, columns: PLAN_COLUMNS.length }, format: HEADER_LOOK },
    ...headerAlignments({ ...at, row: top }),
    ...PLAN_COLUMNS.flatMap((column, across): Change[] => {
      const body = { sheet: at.sheet, row: top + 1, column: at.column + across, rows: bodyRows, columns: 1 };
      const dressed: Change[] = [{ do: 'format', at: body, format: bodyLook(column) }];
      return column.verdict && highlighted ? [...dressed, highlight(body, highlighted)] : dressed;
    }),
    ...rowHeights({ ...at, row: top }, PLAN_COLUMNS, plan),
  ];
}

/** Headings stand as what is below them does; neighbours that stand alike are set together. */
function headerAlignments(at: Block): Change[] {
  const sides = PLAN_COLUMNS.map(({ align, format, wrap }) => align ?? (format && !wrap ? 'right' : 'left'));
  return sides.flatMap((align, across): Change[] => {
    if (sides[across - 1] === align) return [];
    const end = sides.findIndex((other, i) => i > across && other !== align);
    const columns = (end < 0 ? sides.length : end) - across;
    return [{ do: 'format', at: { ...at, column: at.column + across, rows: 1, columns }, format: { align } }];
  });
}

function highlight(body: Block, { fromRow, beside }: Highlighted): Change {
  const at = { ...body, row: body.row + fromRow, rows: body.rows - fromRow };
  return { do: 'highlight', at, rules: VERDICT_RULES, ...(beside ? { beside } : {}) };
}

const VERDICT_RULES: readonly Highlight[] = VERDICTS.map((verdict) => {
  return { column: 0, equals: [VERDICT_WORDS[verdict]], bold: true, ...VERDICT_COLOURS[verdict] };
});

/**
 * What goes on paper: the columns a bench needs, whole. Of whole columns a spreadsheet prints what is used (*from memory*), so
 * that a club added to a live plan later is printed too.
 */
function printed(at: Block): Block {
  const detail = PLAN_COLUMNS.findIndex(({ bench }) => !bench);
  return { ...at, row: 0, rows: MOST_ROWS, columns: detail < 0 ? PLAN_COLUMNS.length : detail };
}

/** Widths and page of a plan that has a sheet for itself. */
export function dressSheet(at: Block): Change[] {
  const { sheet, column } = at;
  const header = at.row + HEAD_ROWS;
  const widths: Change = { do: 'widths', sheet, column, widths: PLAN_COLUMNS.map(({ width }) => width) };
  return [
    widths,
    {
      do: 'page',
      sheet,
      setup: { landscape: true, area: printed(at), titleRows: { row: header, rows: 1 }, footer: HEAD_WORDS.title },
    },
    // The club stays beside whatever is looked at further right.
    { do: 'freezeRows', sheet, rows: at.rows > SCREEN_ROWS ? header + 1 : 0, columns: column + 1 },
  ];
}
