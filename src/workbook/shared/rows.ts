/** Finding rows of a table again by what they are called, after a person sorted it, or added rows or columns. */
import type { Block, BlockSeen, Seen, Written, WrittenRows } from '../port';
import { named } from './address';
import { isError } from './looked';

type PutCell = Written['put'][number][number];

/** What a row is called: its cells under some headings, as text; nothing under a heading that is not there. */
export function calledBy(line: readonly Seen[], headings: readonly string[], by: readonly string[]): string[] {
  return by.map((heading) => asText(line[headings.indexOf(heading)] ?? null));
}

function asText(value: Seen): string {
  return isError(value) ? value.error : String(value ?? '').trim();
}

/** What columns are called by one row of headings or more: one above several columns belongs to each of them. */
export function columnNames(headings: readonly (readonly Seen[])[]): string[] {
  const [last = [], ...above] = headings.map((line) => line.map(asText)).reverse();
  return above.reduce<string[]>((names, line) => {
    let over = '';
    return names.map((name, at) => {
      over = line[at] || over;
      return `${over} ${name}`.trim();
    });
  }, last);
}

/** A written block where its rows stand now, and the rows that were not found, or not for certain. */
export interface FoundAgain {
  readonly written: Written;
  readonly notFound: readonly string[];
}

/**
 * Finds the rows and columns of a written block in its table.
 *
 * A row is found when one row of the table is called so. Of several called so, each may be any of them: they are found only when
 * they all held the same and got the same, so that it does not matter which is which.
 *
 * @param table the whole table as it stands now, headings first; a block of a sheet that does not exist when it is gone
 */
export function findRows(written: Written, rows: WrittenRows, table: BlockSeen): FoundAgain {
  const top = rows.headingRows ?? 1;
  const lines = table.sheetExists ? table.values : [];
  const headings = columnNames(lines.slice(0, top));
  const standing = groups(lines.slice(top).map((line) => calledBy(line, headings, rows.by)));
  const columns = rows.headings.map((heading) => onlyPlace(headings, heading.trim()));
  const moved = blankLike(table.at);
  const notFound: string[] = [];
  for (const [key, block] of groups(rows.called)) {
    const used = block.filter((down) => written.put[down]?.some((cell) => !isSkip(cell)));
    if (used.length === 0) continue;
    const now = key === HEADING_ROW ? (lines.length > 0 ? [-1] : []) : (standing.get(key) ?? []);
    if (
      now.length === block.length &&
      (now.length === 1 || allAlike(written, block)) &&
      allThere(written, used, columns)
    ) {
      block.forEach((down, i) => move(written, down, columns, moved, (now[i] ?? 0) + top));
    } else {
      notFound.push(...used.map((down) => nameRow(written.at, rows, down)));
    }
  }
  return { written: cropped(table.at, moved), notFound: [...new Set(notFound)] };
}

/** Where a heading stands; -1 where it does not, or where nobody can tell which of several is meant. */
function onlyPlace(headings: readonly string[], heading: string): number {
  const at = headings.indexOf(heading);
  return at === headings.lastIndexOf(heading) ? at : -1;
}

/** What the row of headings is called among the others. */
const HEADING_ROW = 'null';

/** Numbers of the rows that are called the same, by what they are called. */
function groups(called: readonly (readonly string[] | null)[]): Map<string, number[]> {
  const found = new Map<string, number[]>();
  called.forEach((texts, row) => {
    const key = JSON.stringify(texts);
    found.set(key, [...(found.get(key) ?? []), row]);
  });
  return found;
}

function isSkip(cell: PutCell | undefined): boolean {
  return cell === undefined || (typeof cell === 'object' && cell !== null && 'skip' in cell);
}

function allAlike({ before, put }: Written, rows: readonly number[]): boolean {
  return new Set(rows.map((down) => JSON.stringify([before[down], put[down]]))).size === 1;
}

/** Whether the table still has each column in which something was put. */
function allThere({ put }: Written, rows: readonly number[], columns: readonly number[]): boolean {
  return rows.every((down) => (put[down] ?? []).every((cell, across) => isSkip(cell) || (columns[across] ?? -1) >= 0));
}

interface Cells {
  readonly before: Written['before'][number][number][][];
  readonly put: PutCell[][];
}

function blankLike({ rows, columns }: Block): Cells {
  const lines = <T>(cell: T): T[][] => Array.from({ length: rows }, () => Array<T>(columns).fill(cell));
  return { before: lines<Written['before'][number][number]>(null), put: lines<PutCell>({ skip: true }) };
}

function move({ before, put }: Written, down: number, columns: readonly number[], to: Cells, row: number): void {
  put[down]?.forEach((cell, across) => {
    const column = columns[across] ?? -1;
    const [beforeLine, putLine] = [to.before[row], to.put[row]];
    if (isSkip(cell) || !beforeLine || !putLine) return;
    beforeLine[column] = before[down]?.[across] ?? null;
    putLine[column] = cell;
  });
}

/** The smallest block that holds everything that was put. */
function cropped(at: Block, { before, put }: Cells): Written {
  const rows = put.flatMap((line, down) => (line.every(isSkip) ? [] : [down]));
  const used = Array.from({ length: at.columns }, (_, across) => put.some((line) => !isSkip(line[across])));
  const top = rows[0] ?? 0;
  const left = Math.max(0, used.indexOf(true));
  const bottom = rows.at(-1) ?? 0;
  const right = Math.max(0, used.lastIndexOf(true));
  const cut = <T>(lines: readonly (readonly T[])[]): T[][] =>
    lines.slice(top, bottom + 1).map((line) => line.slice(left, right + 1));
  const block = { row: at.row + top, column: at.column + left, rows: bottom - top + 1, columns: right - left + 1 };
  return { at: { sheet: at.sheet, ...block }, before: cut(before), put: cut(put) };
}

/** @example `Clubs: 1042, Driver`; a row without a name by where it stood */
function nameRow(at: Block, { table, called, headings, headingRows }: WrittenRows, down: number): string {
  const texts = (called[down] ?? headings).filter((text) => text !== '');
  // The name of plain cells is ours: nobody knows them by it.
  const list = headingRows === undefined ? table : at.sheet;
  return texts.length > 0 ? `${list}: ${texts.join(', ')}` : named({ ...at, row: at.row + down, rows: 1 });
}
