/** What stands in rows that are known to be headings. Apart from how they are found: whoever reads a connected list needs no more. */
import type { Seen } from '../port';
import { isBlank } from '../records';
import { headingText, readingsOf } from './headingWords';
import type { Likeness } from './types';
import { readQuantity } from './units';

export type Rows = readonly (readonly Seen[])[];

export interface Headings extends Pick<Likeness, 'headerRow' | 'headerRows' | 'headings'> {
  /** For each column, what else it may be called by: its heading alone, and with the one above several columns. */
  readonly also: readonly (readonly string[])[];
  /** Whether they are headings at all, as far as one can see. */
  readonly known: boolean;
}

export function filled(cells: readonly Seen[]): Seen[] {
  return cells.filter((cell) => !isBlank(cell));
}

export function isWord(cell: Seen): boolean {
  if (typeof cell !== 'string') return false;
  const read = readQuantity(cell);
  return !read || (read.tail !== '' && read.unit === null);
}

/** `in`, `g` and `mm` below the headings, or above them; among them `code`, `pcs` and the like. */
export function isUnits(cells: readonly Seen[]): boolean {
  const words = filled(cells);
  const units = words.filter((cell) => (readingsOf(headingText(cell))[0]?.unitOnly ?? false) || cell === 'in');
  return units.length > 0 && 2 * units.length >= words.length && words.every(isWord);
}

/**
 * The heading of every column, as a match remembers it.
 *
 * Of two rows of headings, what stands in one column is one heading; a heading above that reaches over the columns to its right is
 * part of theirs where they would be alike without it.
 *
 * @param headerRow the last row of headings, from 0
 */
export function headingsAt(rows: Rows, headerRow: number, lines: 1 | 2): Omit<Headings, 'known'> {
  const below = rows[headerRow] ?? [];
  const above = lines === 2 ? (rows[headerRow - 1] ?? []) : [];
  const width = Math.max(below.length, above.length);
  const own = Array.from({ length: width }, (_, at) => headingText(below[at]));
  const count = new Map<string, number>();
  for (const text of own) count.set(text.toLowerCase(), (count.get(text.toLowerCase()) ?? 0) + 1);
  let over = '';
  // `Item` over `code`, where `Weight` stands over `(oz)`, is Item all the same.
  const units = isUnits(below);
  const headings: string[] = [];
  const also: string[][] = [];
  own.forEach((text, at) => {
    const right = headingText(above[at]);
    over = right || (text === '' ? '' : over);
    const whole = `${over} ${text}`.trim();
    const twice = (count.get(text.toLowerCase()) ?? 0) > 1;
    const heading = right ? `${right} ${text}`.trim() : twice && text !== '' ? whole : text;
    headings.push(heading);
    also.push([...new Set([text, whole, ...(units ? [right] : [])])].filter((name) => name !== '' && name !== heading));
  });
  return { headerRow, headerRows: lines, headings, also };
}
