/** How a comparison stands in its sheet: its head, the list of candidates, then what was not tried. */
import type { Comparison } from '../core/index';
import {
  clubsText,
  COMPARE_LEGEND,
  COMPARE_WORDS,
  COUNT_LEGENDS,
  notTriedLines,
  STANDING_MEANING,
  STANDING_WORDS,
} from '../words/compareHead';
import { COMPARE_COLUMNS, compareCells } from './compareCells';
import type { JobFacts } from './jobFacts';
import { VERDICT_COLOURS } from './palette';
import type { Block, Cell, CellFormat, Change, Highlight } from './port';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, SCREEN_ROWS } from './sheetLooks';

/** Rows above the list's header row. */
export const COMPARE_HEAD_ROWS = 11;

/** Column of the lines that tell what the counts mean: clear of the lines about the job. */
const LEGEND_COLUMN = COMPARE_COLUMNS.findIndex(({ key }) => key === 'size');

const STANDINGS = ['unbeaten', 'beaten'] as const;

const STANDING_COLOURS = { unbeaten: VERDICT_COLOURS.within, beaten: VERDICT_COLOURS.notHeld } as const;

/** What the head says besides. */
export interface CompareHead extends JobFacts {
  readonly clubsCompared: number;
  readonly clubsInScope: number;
  /** What was compared, in a sentence. */
  readonly about: string;
}

/** All the cells, and which of their rows are the list, its header row first. */
export interface CompareCells {
  readonly cells: readonly (readonly Cell[])[];
  readonly list: { readonly from: number; readonly rows: number };
}

/** The cells of the whole page. */
export function comparePage(head: CompareHead, comparison: Comparison): CompareCells {
  const list = compareCells(comparison);
  const lines = notTriedLines(comparison);
  const tail = lines.length > 0 ? [null, COMPARE_WORDS.notTried, ...lines] : [];
  return {
    cells: [...headCells(head), ...list, ...tail.map((line) => rowOf([line]))],
    list: { from: COMPARE_HEAD_ROWS, rows: list.length },
  };
}

function headCells(head: CompareHead): Cell[][] {
  const { title, job, customer, clubs, about } = COMPARE_WORDS;
  const facts: (readonly [Cell, Cell])[] = [
    [head.shop || null, null],
    [title, null],
    [job, head.job],
    [customer, head.customer || null],
    [clubs, clubsText(head.clubsCompared, head.clubsInScope)],
  ];
  const rows = Array.from({ length: COMPARE_HEAD_ROWS }, () => rowOf([]));
  facts.forEach(([label, value], i) => {
    // A label without a value would only raise a question.
    if (i < 2 || value !== null) rows[i]?.splice(0, 2, label, value);
  });
  COUNT_LEGENDS.forEach((line, i) => rows[i]?.splice(LEGEND_COLUMN, 1, line));
  rows[7]?.splice(0, 2, about, head.about);
  STANDINGS.forEach((standing, i) => rows[8 + i]?.splice(0, 2, STANDING_WORDS[standing], STANDING_MEANING[standing]));
  rows[10]?.splice(0, 1, COMPARE_LEGEND);
  return rows;
}

function rowOf(cells: readonly Cell[]): Cell[] {
  return COMPARE_COLUMNS.map((_, across) => cells[across] ?? null);
}

/** The same rows for a short list and a long one: highlights are replaced as one, not cut up, when the list gets shorter. */
const HIGHLIGHTED_ROWS = 800;

const STANDING_RULES: readonly Highlight[] = STANDINGS.map((standing) => {
  return {
    column: 0,
    equals: [STANDING_WORDS[standing]],
    bold: standing === 'unbeaten',
    ...STANDING_COLOURS[standing],
  };
});

/** Looks, widths and page of a comparison that stands at `at`. */
export function dressCompare(at: Block, { cells, list }: CompareCells): Change[] {
  const part = (row: number, column: number, rows: number, columns: number): Block => {
    return { sheet: at.sheet, row: at.row + row, column: at.column + column, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const candidates = list.rows - 1;
  const body = list.from + 1;
  const tail = body + candidates;
  return [
    // A shorter or longer list than before: what was bold or in the middle need not be so any more.
    format(at, { bold: false, italic: false, align: 'left' }),
    ...dressHead(part, format),
    format(part(list.from, 0, 1, at.columns), HEADER_LOOK),
    ...COMPARE_COLUMNS.flatMap((column, across) => {
      const align = column.align ?? (column.wrap ? 'left' : 'right');
      return [
        format(part(list.from, across, 1, 1), { align }),
        format(part(body, across, candidates, 1), { ...bodyLook(column), align }),
      ];
    }),
    { do: 'highlight', at: part(body, 0, Math.max(candidates, HIGHLIGHTED_ROWS), 1), rules: STANDING_RULES },
    ...rowHeights(part(list.from, 0, 1, 1), COMPARE_COLUMNS, cells.slice(list.from, tail), true),
    ...(tail + 1 < cells.length ? [format(part(tail + 1, 0, 1, 1), { bold: true })] : []),
    ...dressSheet(at, list.from),
  ];
}

function dressHead(
  part: (row: number, column: number, rows: number, columns: number) => Block,
  format: (where: Block, how: CellFormat) => Change,
): Change[] {
  return [
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 16 }),
    format(part(2, 0, 6, 1), { ink: LABEL_INK }),
    format(part(2, 1, 3, 1), { number: '@', bold: true }),
    format(part(7, 1, 1, 1), { bold: true }),
    format(part(0, LEGEND_COLUMN, COUNT_LEGENDS.length, 1), { ink: LABEL_INK }),
    ...STANDINGS.map((standing, i) =>
      format(part(8 + i, 0, 1, 1), { bold: i === 0, align: 'center', ...STANDING_COLOURS[standing] }),
    ),
    format(part(8, 1, STANDINGS.length, 1), { ink: LABEL_INK }),
    format(part(10, 0, 1, 1), { italic: true, ink: LABEL_INK }),
  ];
}

function dressSheet(at: Block, header: number): Change[] {
  const { sheet, column } = at;
  const titleRows = { row: at.row + header, rows: 1 };
  return [
    { do: 'widths', sheet, column, widths: COMPARE_COLUMNS.map(({ width }) => width) },
    { do: 'page', sheet, setup: { landscape: true, area: at, titleRows, footer: COMPARE_WORDS.title } },
    ...(at.rows > SCREEN_ROWS ? [{ do: 'freezeRows', sheet, rows: titleRows.row + 1 } as const] : []),
  ];
}
