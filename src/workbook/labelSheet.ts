/** How club labels stand in their sheet: three side by side, tinted strips between them to cut along. */
import { gripText, LABEL_WORDS, readsText } from '../words/handOver';
import type { HandedClub } from './handOver';
import type { JobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change } from './port';
import { LABEL_INK } from './sheetLooks';
import { wrappedLines } from './shared/wrappedLines';
import { GREY } from './palette';

const ACROSS = 3;
const LABEL_WIDTH = 27;
const STRIP_WIDTH = 2;
const CUT_TINT = GREY.band;
/** Lines of one label; a strip comes below. */
const LINES = 5;
const BLOCK_ROWS = LINES + 1;
const LINE_POINTS = 15;
const STRIP_POINTS = 8;
const NAME_POINTS = 22;
/**
 * Room for labels on a page, in points: the shorter of the usual papers, 11 inches, less the margins of 0.75 inch that a new sheet has
 * above and below (common practice, no source), and a little for what a printer makes of heights.
 */
const PAGE_POINTS = (11 - 2 * 0.75) * 72 - 14;

export interface LabelCells {
  readonly cells: readonly (readonly Cell[])[];
  readonly list: { readonly from: number; readonly rows: number };
}

/** Column of a label among those side by side, from 0. */
function columnOf(place: number): number {
  return place * 2;
}

export function labelPage(facts: JobFacts, clubs: readonly HandedClub[]): LabelCells {
  const blocks = Math.ceil(clubs.length / ACROSS);
  const cells = Array.from({ length: blocks * BLOCK_ROWS }, (): Cell[] => Array<Cell>(ACROSS * 2 - 1).fill(null));
  clubs.forEach((club, i) => {
    const top = Math.floor(i / ACROSS) * BLOCK_ROWS;
    labelLines(facts, club).forEach((text, line) => {
      const row = cells[top + line];
      if (row) row[columnOf(i % ACROSS)] = text;
    });
  });
  return { cells, list: { from: 0, rows: 0 } };
}

function labelLines({ shop, job, customer }: JobFacts, { plan, checked }: HandedClub): Cell[] {
  return [
    shop || null,
    plan.name,
    LABEL_WORDS.job(job ?? '', customer),
    gripText(plan),
    readsText(checked?.measured?.reading, checked?.expected.reading) ?? null,
  ];
}

/** Looks, widths and page of the labels that stand at `at`. */
export function dressLabels(at: Block, { cells }: LabelCells): Change[] {
  const { sheet, column } = at;
  const part = (row: number, across: number, rows: number, columns: number): Block => {
    return { sheet, row: at.row + row, column: column + across, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const tops = Array.from({ length: cells.length / BLOCK_ROWS }, (_, i) => i * BLOCK_ROWS);
  return [
    format(at, { number: '@', wrap: true, vertical: 'center', align: 'left' }),
    ...tops.flatMap((top): Change[] => [
      ...Array.from({ length: LINES }, (_, line) =>
        format(part(top + line, 0, 1, at.columns), { height: lineHeight(cells[top + line] ?? [], line) }),
      ),
      format(part(top, 0, 1, at.columns), { ink: LABEL_INK }),
      format(part(top + 1, 0, 1, at.columns), { bold: true, size: 14 }),
      format(part(top + LINES, 0, 1, at.columns), { fill: CUT_TINT, height: STRIP_POINTS }),
    ]),
    ...Array.from({ length: ACROSS - 1 }, (_, place) =>
      format(part(0, columnOf(place) + 1, at.rows, 1), { fill: CUT_TINT }),
    ),
    {
      do: 'widths',
      sheet,
      column,
      widths: Array.from({ length: at.columns }, (_, across) => (across % 2 === 0 ? LABEL_WIDTH : STRIP_WIDTH)),
    },
    {
      do: 'page',
      sheet,
      setup: {
        landscape: false,
        area: at,
        breaks: breaksIn(cells, tops).map((row) => at.row + row),
      },
    },
  ];
}

function lineHeight(row: readonly Cell[], line: number): number {
  return line === 1 ? NAME_POINTS : LINE_POINTS * linesOf(row);
}

/** Rows of labels with which a page begins: those that would be cut at its foot. */
function breaksIn(cells: LabelCells['cells'], tops: readonly number[]): number[] {
  const breaks: number[] = [];
  let used = 0;
  for (const top of tops) {
    const lines = Array.from({ length: LINES }, (_, line) => lineHeight(cells[top + line] ?? [], line));
    const height = lines.reduce((sum, each) => sum + each, STRIP_POINTS);
    if (used > 0 && used + height > PAGE_POINTS) {
      breaks.push(top);
      used = 0;
    }
    used += height;
  }
  return breaks;
}

function linesOf(row: readonly Cell[]): number {
  return Math.max(1, ...row.map((cell) => (typeof cell === 'string' ? wrappedLines(cell, LABEL_WIDTH - 1) : 1)));
}
