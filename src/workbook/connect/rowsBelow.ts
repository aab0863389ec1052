/** What a row of a list is like, what below it is no row of it, and how many rows go on below plain cells. Pure. */
import type { Block, BlockSeen, Seen } from '../port';
import { cellNumber } from '../records';
import { MOST_ROWS } from '../shared/limits';
import { filled, type Rows } from './headingsAt';

/** A word for a sum, and nothing behind it that could be a name: a grip may be called Total Comfort. */
const TOTALS =
  /^(grand\s+|sub[\s-]*)?(totals?|sum|average|avg|summe|gesamt)\b[\s:.]*((of|in|stock|value|items?|pieces|pcs|quantity|qty|grips?|clubs?|cost|weight|inventory|count|all)\b[\s:.]*)*$/i;
const NOTE_LETTERS = 25;

/** Rows right below a list that are looked at: whether somebody went on there. */
const MOST_BELOW = 100;

/** Where rows would stand that go on below plain cells; null at the end of the sheet. */
export function placeBelow(at: Block): Block | null {
  const row = at.row + at.rows;
  const rows = Math.min(MOST_BELOW, MOST_ROWS - row);
  return rows > 0 ? { ...at, row, rows } : null;
}

/**
 * How many rows go on right below a list that ends above them: up to a blank row, a total or a note. A word alone is a note there.
 *
 * @param rows the list, headings first
 * @param below what stands in {@link placeBelow} of it
 */
export function rowsGoingOn(rows: Rows, headerRow: number, below: BlockSeen | null | undefined): number {
  if (!below || below.tables.length > 0) return 0;
  const usual = usualRow(rows, headerRow);
  const end = below.values.findIndex((row) => {
    const cells = filled(row);
    return cells.length < Math.min(2, usual.cells || 2) || leftOut(cells, usual, false) !== undefined;
  });
  return end < 0 ? below.values.length : end;
}

export interface Usual {
  readonly cells: number;
  readonly words: number;
}

/** How many cells of a row hold something, and how many of these are words: the median of the first rows. */
export function usualRow(rows: Rows, headerRow: number): Usual {
  const cells: number[] = [];
  const words: number[] = [];
  for (let row = headerRow + 1; row < rows.length && cells.length < 60; row += 1) {
    const held = filled(rows[row] ?? []);
    if (held.length === 0) continue;
    cells.push(held.length);
    words.push(held.filter((cell) => typeof cell === 'string').length);
  }
  const middle = (of: number[]): number => of.sort((a, b) => a - b)[of.length >> 1] ?? 0;
  return { cells: middle(cells), words: middle(words) };
}

export function leftOut(cells: readonly Seen[], usual: Usual, afterGap: boolean): 'totals' | 'notes' | undefined {
  const words = cells.filter((cell): cell is string => typeof cell === 'string');
  if (usual.cells < 3) return undefined;
  if (words.some((word) => TOTALS.test(word.trim())) && words.length < Math.max(2, usual.words)) return 'totals';
  if (words.length === 0 && usual.words > 0 && cells.every((cell) => cellNumber(cell) !== undefined)) return 'totals';
  const [only = ''] = words;
  if (
    cells.length === 1 &&
    words.length === 1 &&
    (afterGap || only.length > NOTE_LETTERS || /^(\*|note)/i.test(only))
  ) {
    return 'notes';
  }
  return undefined;
}
