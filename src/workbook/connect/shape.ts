/** Where in a range the headings stand, and where its rows end. */
import type { TableSchema } from '../columns';
import type { Seen } from '../port';
import { isBlank } from '../records';
import { headingFit } from './headingFit';
import { filled, headingsAt, isUnits, isWord, type Headings, type Rows } from './headingsAt';
import { headingText } from './headingWords';
import { leftOut, usualRow } from './rowsBelow';
import type { ConnectWarning, HeadingRow } from './types';

/** Headings stand no further down than this: above them are titles, addresses and blanks. */
export const LOOKED_ROWS = 25;
/** Rows that are compared with our headings, of those that hold words only. */
const MOST_TRIED = 6;
/** A row of headings holds this part of words at least. */
export const LEAST_WORDS = 0.7;
/** Less alike than this, a heading names nothing. */
const NAMES_IT = 0.6;
/** A row above has to explain this much more of the headings before it counts as part of them. */
const WORTH_A_ROW = 0.3;

/** Units have a row to themselves for no other reason than to be part of the headings. */
const UNITS_SPEAK = 0.05;

/**
 * Finds the headings of a range by what they are called.
 *
 * @param chosen the rows that a person took for them: nothing is looked for then
 */
export function headingsIn(schema: TableSchema, rows: Rows, chosen?: HeadingRow): Headings {
  if (chosen) return { ...headingsAt(rows, chosen.row, chosen.lines), known: true };
  const tried = rowsOfWords(rows);
  let best = { row: -1, lines: 1 as 1 | 2, score: 0 };
  for (const row of tried) {
    if (hasUnitsBelow(rows, row)) continue;
    for (const lines of [1, 2] as const) {
      if (lines === 2 && !canStandAbove(rows, row)) continue;
      const found = headingsAt(rows, row, lines);
      const withUnits = isUnits(rows[row] ?? []) || isUnits(rows[row - 1] ?? []);
      const score = scoreOf(schema, found) + (lines === 1 ? 0 : withUnits ? UNITS_SPEAK : -WORTH_A_ROW);
      if (score > best.score + 1e-9) best = { row, lines, score };
    }
  }
  if (best.row < 0) {
    const row =
      tried[0] ??
      Math.max(
        0,
        rows.findIndex((cells) => !cells.every(isBlank)),
      );
    return { ...headingsAt(rows, row, 1), known: tried.length > 0 && looksLikeHeadings(rows, row) };
  }
  return { ...headingsAt(rows, best.row, best.lines), known: true };
}

/**
 * Headings with their units right below are those two rows: groups above them name nothing that they do not. Headings that are alike
 * without the groups are another matter.
 */
function hasUnitsBelow(rows: Rows, row: number): boolean {
  const cells = rows[row] ?? [];
  if (isUnits(cells) || !isUnits(rows[row + 1] ?? []) || !canStandAbove(rows, row + 1)) return false;
  const words = filled(cells).map((cell) => headingText(cell).toLowerCase());
  return new Set(words).size === words.length;
}

/** Words in a language that we do not know: all different, and numbers below some of them. */
function looksLikeHeadings(rows: Rows, row: number): boolean {
  const cells = rows[row] ?? [];
  const words = filled(cells).map((cell) => headingText(cell).toLowerCase());
  const below = rows[row + 1] ?? [];
  const numbers = cells.some((cell, at) => typeof cell === 'string' && typeof below[at] === 'number');
  return words.length > 1 && new Set(words).size === words.length && numbers;
}

/** Rows of the top that hold words alone, or nearly. */
function rowsOfWords(rows: Rows): number[] {
  const found: number[] = [];
  const end = Math.min(rows.length, LOOKED_ROWS);
  let widest = 0;
  for (let row = 0; row < end; row += 1) widest = Math.max(widest, filled(rows[row] ?? []).length);
  for (let row = 0; row < end && found.length < MOST_TRIED; row += 1) {
    const cells = filled(rows[row] ?? []);
    const unitsBelow = isUnits(cells) && filled(rows[row - 1] ?? []).length > 1;
    if (cells.length < Math.min(2, widest) && !unitsBelow) continue;
    if (cells.filter(isWord).length >= LEAST_WORDS * cells.length) found.push(row);
  }
  return found;
}

/** A title has a row to itself; headings of several columns are more than one. */
export function canStandAbove(rows: Rows, row: number): boolean {
  const above = filled(rows[row - 1] ?? []);
  return (above.length >= 2 || isUnits(above)) && above.every(isWord);
}

/** Two headings alike cannot be told apart later: a row above them that does is worth having. */
const ALIKE_COSTS = 0.5;

function scoreOf(schema: TableSchema, { headings, also }: Omit<Headings, 'known'>): number {
  const best = new Map<string, number>();
  headings.forEach((heading, at) => {
    let [key, fit] = ['', NAMES_IT];
    for (const column of schema.columns) {
      for (const text of [heading, ...(also[at] ?? [])]) {
        const named = headingFit(schema, column, text).fit;
        if (named > fit) [key, fit] = [column.key, named];
      }
    }
    if (key !== '') best.set(key, Math.max(best.get(key) ?? 0, fit));
  });
  const given = headings.filter((heading) => heading !== '').map((heading) => heading.toLowerCase());
  const alike = given.length - new Set(given).size;
  return [...best.values()].reduce((sum, fit) => sum + fit, 0) - ALIKE_COSTS * alike;
}

/* ------------------------------------------------------------------ where it ends */

export interface Body {
  /** Last row of the body, the header row where there is none. */
  readonly lastRow: number;
  readonly warnings: readonly ConnectWarning[];
}

/** Where the rows end: blanks, totals and notes below them are left out. */
export function bodyOf(rows: Rows, headerRow: number): Body {
  const usual = usualRow(rows, headerRow);
  const left: { why: 'totals' | 'notes'; from: number; to: number }[] = [];
  let last = rows.length - 1;
  let gap = false;
  for (; last > headerRow; last -= 1) {
    const cells = filled(rows[last] ?? []);
    if (cells.length === 0) {
      gap = true;
      continue;
    }
    const why = leftOut(cells, usual, isBlankRow(rows[last - 1]));
    if (!why) break;
    const below = left.at(-1);
    if (below?.why === why && !gap) below.from = last;
    else left.push({ why, from: last, to: last });
    gap = false;
  }
  return {
    lastRow: Math.max(last, headerRow),
    warnings: left.reverse().map((each) => ({ warning: 'rowsLeftOut', ...each })),
  };
}

/**
 * The same without totals further up and what stands below them: rows that look like totals, from which on nothing stands under what
 * a row is called by.
 *
 * @param named where the columns stand that no row can do without
 */
export function aboveTotals(rows: Rows, headerRow: number, body: Body, named: readonly number[]): Body {
  const isNamed = (row: number): boolean => named.some((at) => !isBlank(rows[row]?.[at] ?? null));
  let last = body.lastRow;
  while (last > headerRow && !isNamed(last)) last -= 1;
  // Where nothing is called anything, the column is not that one.
  if (last === headerRow) return body;
  const usual = usualRow(rows, headerRow);
  for (let from = last + 1; from <= body.lastRow; from += 1) {
    if (isBlankRow(rows[from]) || leftOut(filled(rows[from] ?? []), usual, false) !== 'totals') continue;
    let lastRow = from - 1;
    while (isBlankRow(rows[lastRow])) lastRow -= 1;
    const to = Math.max(body.lastRow, ...body.warnings.map((each) => ('to' in each ? each.to : 0)));
    return { lastRow, warnings: [{ warning: 'rowsLeftOut', why: 'totals', from, to }] };
  }
  return body;
}

function isBlankRow(cells: readonly Seen[] | undefined): boolean {
  return cells !== undefined && cells.every(isBlank);
}
