/** Which rows of a list a person may take for its headings. Pure. */
import { headingText } from './headingWords';
import { filled, isUnits, isWord, type Rows } from './headingsAt';
import { canStandAbove, LEAST_WORDS, LOOKED_ROWS } from './shape';
import type { HeadingRow } from './types';

/** Why a row cannot hold headings. */
export type NoHeadings = 'empty' | 'numbers';

/**
 * Rows at the top of a list, each on its own or together with the one above it.
 *
 * A row of units is no choice of its own: it belongs to the words above it, or below it where nothing stands above.
 */
export function headingChoices(rows: Rows): HeadingRow[] {
  const choices: HeadingRow[] = [];
  const end = Math.min(rows.length, LOOKED_ROWS);
  for (let row = 0; row < end; row += 1) {
    if (hasUnits(rows, row + 1)) continue;
    const pair = hasUnits(rows, row);
    if (!pair && !couldBe(rows, row)) continue;
    if (!pair) choices.push({ row, lines: 1 });
    if (pair || (areWords(rows, row) && canStandAbove(rows, row))) choices.push({ row, lines: 2 });
  }
  return choices;
}

/** A row of the list itself has numbers in it, a title has a row to itself. */
function couldBe(rows: Rows, row: number): boolean {
  const cells = filled(rows[row] ?? []);
  const widest = Math.max(...rows.slice(0, LOOKED_ROWS).map((each) => filled(each).length));
  return cells.length >= Math.min(2, widest) && cells.filter(isWord).length >= LEAST_WORDS * cells.length;
}

/** Whether a row and the one above it are words and units, and the one above is not taken by the one above that. */
function hasUnits(rows: Rows, row: number): boolean {
  const units = (at: number): boolean => isUnits(rows[at] ?? []);
  if (areWords(rows, row - 1) && units(row)) return true;
  return units(row - 1) && areWords(rows, row) && !hasUnits(rows, row - 1);
}

/** More than a title: words over several columns. */
function areWords(rows: Rows, row: number): boolean {
  const cells = rows[row] ?? [];
  return filled(cells).length > 1 && !isUnits(cells) && whyNone(rows, { row, lines: 1 }) === null;
}

/** Why these rows hold no headings; null where they may. */
export function whyNone(rows: Rows, { row }: HeadingRow): NoHeadings | null {
  const cells = filled(rows[row] ?? []);
  if (cells.length === 0) return 'empty';
  return 2 * cells.filter(isWord).length < cells.length ? 'numbers' : null;
}

/** What stands in rows of headings, column by column. */
export function headingTexts(rows: Rows, { row, lines }: HeadingRow): string[] {
  const [upper, lower] = [lines === 2 ? (rows[row - 1] ?? []) : [], rows[row] ?? []];
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, at) =>
    `${headingText(upper[at])} ${headingText(lower[at])}`.trim(),
  ).filter((text) => text !== '');
}

/** Whether the lower of two rows says nothing of these columns: the upper one alone is known again later, and the lower is read as a row. */
export function lowerSaysNothing(rows: Rows, { row, lines }: HeadingRow, positions: readonly number[]): boolean {
  const lower = rows[row] ?? [];
  return lines === 2 && !isUnits(lower) && positions.every((at) => headingText(lower[at]) === '');
}

export function sameHeadings(one: HeadingRow, other: HeadingRow): boolean {
  return one.row === other.row && one.lines === other.lines;
}
