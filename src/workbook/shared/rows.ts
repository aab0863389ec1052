/** Finding rows of a table again by what they are called, after a person sorted it, or added rows or columns. */
import { drained } from '../../core/index';
import { mapSteps } from '../pace';
import type { Block, BlockSeen, Seen, Written, WrittenRows } from '../port';
import { named } from './address';
import { holds, isBack, isSkip } from './cellNow';
import type { Place, PutCell } from './cellNow';
import { isError } from './looked';
import type { BeforeCell } from './looked';

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

/** {@link findRowsSteps} at once. */
export function findRows(written: Written, rows: WrittenRows, table: BlockSeen): FoundAgain {
  return drained(findRowsSteps(written, rows, table));
}

/**
 * Finds the rows and columns of a written block in its table, in steps.
 *
 * A row is found when one row of the table is called so. Of several called so, each may be any of them: they are told apart by what was
 * put into them, unless they all held the same and got the same, so that it does not matter. Where two got the same and held something
 * else, nobody knows which is which, even where they seem to stand as they stood: they may have been sorted.
 *
 * @param table the whole table as it stands now, headings first; a block of a sheet that does not exist when it is gone
 */
export function* findRowsSteps(written: Written, rows: WrittenRows, table: BlockSeen): Generator<void, FoundAgain> {
  const top = rows.headingRows ?? 1;
  const lines = table.sheetExists ? table.values : [];
  const headings = columnNames(lines.slice(0, top));
  const standing = yield* groups(yield* mapSteps(lines.slice(top), (line) => calledBy(line, headings, rows.by)));
  const columns = rows.headings.map((heading) => onlyPlace(headings, heading.trim()));
  const moved: Moved[] = [];
  const again: Again = { written, table, columns, top };
  const notFound: string[] = [];
  const called = yield* groups(rows.called);
  let done = 0;
  for (const [key, block] of called) {
    const used = block.filter((down) => written.put[down]?.some((cell) => !isSkip(cell)));
    if (used.length === 0) continue;
    const isUsed = new Set(used);
    const there = allThere(written, used, columns);
    const now =
      key === HEADING_ROW ? headingLines(block, lines) : yield* whichIsWhich(block, standing.get(key) ?? [], again);
    block.forEach((down, i) => {
      const row = there ? now[i] : undefined;
      if (row !== undefined) move(written, down, columns, moved, row + top);
      else if (isUsed.has(down)) notFound.push(nameRow(written.at, rows, down));
    });
    if ((done += block.length) >= ROWS_A_STEP) {
      done = 0;
      yield;
    }
  }
  return { written: yield* cropped(table.at, moved), notFound: [...new Set(notFound)] };
}

/** Where a heading stands; -1 where it does not, or where nobody can tell which of several is meant. */
function onlyPlace(headings: readonly string[], heading: string): number {
  const at = headings.indexOf(heading);
  return at === headings.lastIndexOf(heading) ? at : -1;
}

/** Rows of headings, counted back from the first row below them: the last of a block is the last of the list. */
function headingLines(block: readonly number[], lines: readonly unknown[]): number[] {
  return lines.length > 0 ? block.map((_, i) => i - block.length) : [];
}

/** What the row of headings is called among the others. */
const HEADING_ROW = 'null';

/** Numbers of the rows that are called the same, by what they are called. */
function* groups(called: readonly (readonly string[] | null)[]): Generator<void, Map<string, number[]>> {
  const found = new Map<string, number[]>();
  for (const [row, texts] of called.entries()) {
    const key = JSON.stringify(texts);
    const known = found.get(key);
    if (known) known.push(row);
    else found.set(key, [row]);
    if (row % KEYS_A_STEP === KEYS_A_STEP - 1) yield;
  }
  return found;
}

/** Names that are put into groups between two looks at the clock. */
const KEYS_A_STEP = 1000;

/** Rows that are looked for between two looks at the clock. */
const ROWS_A_STEP = 100;

/** The same, of those that are called alike: each is held against all others. */
const ROWS_LIKE_IT = 5;

interface Again {
  readonly written: Written;
  /** What stands in it now, its first `top` rows the headings. */
  readonly table: BlockSeen;
  readonly top: number;
  /** Where the columns of the written block stand in it. */
  readonly columns: readonly number[];
}

/** Which row of the table each of the written rows is that are called the same; undefined where nobody can tell. */
function* whichIsWhich(
  block: readonly number[],
  now: readonly number[],
  again: Again,
): Generator<void, (number | undefined)[]> {
  const { written } = again;
  const asMany = now.length === block.length;
  if (asMany && (now.length === 1 || allAlike(written, block))) return [...now];
  // More of them than were written: what one shows by now, one that was not written may have shown all along.
  if (now.length > block.length) return block.map(() => undefined);
  const fitting = yield* mapSteps(block, (down) => now.filter((row) => shows(again, down, row)), ROWS_LIKE_IT);
  const fits = counted(fitting.flat());
  const tell = (down: number, i: number): number | undefined => {
    const [row, ...more] = fitting[i] ?? [];
    const isOnly = row !== undefined && more.length === 0 && fits.get(row) === 1;
    return isOnly ? row : standing(down, now, again);
  };
  const told = yield* mapSteps(block, tell, ROWS_LIKE_IT);
  const times = counted(told);
  return told.map((row) => (times.get(row) === 1 ? row : undefined));
}

/** How often each stands in a list. */
function counted<T>(list: readonly T[]): ReadonlyMap<T, number> {
  const times = new Map<T, number>();
  for (const each of list) times.set(each, (times.get(each) ?? 0) + 1);
  return times;
}

/** Whether a row shows what a written one was left with: what was put, and between that what it held. */
function shows(again: Again, down: number, row: number): boolean {
  return eachCell(again, down, row, ({ table, place, was, put }) => {
    if (!isSkip(put)) return holds(table, put, place);
    // The text of a formula may be another in another row.
    return (typeof was === 'object' && was !== null) || isBack(table, was, place);
  });
}

/** The row where a written one stood, if it shows what was put, and no other that is called the same does. */
function standing(down: number, now: readonly number[], again: Again): number | undefined {
  const { written, table, top } = again;
  const [row, ...more] = now.filter((each) =>
    eachCell(again, down, each, ({ place, put }) => isSkip(put) || holds(table, put, place)),
  );
  const still = row !== undefined && table.at.row + top + row === written.at.row + down;
  return still && more.length === 0 ? row : undefined;
}

interface CellAgain {
  readonly table: BlockSeen;
  readonly place: Place;
  readonly was: BeforeCell;
  readonly put: PutCell;
}

/** Whether something is so of each cell of a written row, were it this row of the table; a column that is gone tells nothing. */
function eachCell(
  { written: { before, put }, table, columns, top }: Again,
  down: number,
  row: number,
  isSo: (cell: CellAgain) => boolean,
): boolean {
  const { sheet, row: first, column: left } = table.at;
  return (put[down] ?? []).every((cell, across) => {
    const column = columns[across] ?? -1;
    const place = { sheet, row: first + top + row, column: left + column };
    return column < 0 || isSo({ table, place, was: before[down]?.[across] ?? null, put: cell });
  });
}

function allAlike({ before, put }: Written, rows: readonly number[]): boolean {
  return new Set(rows.map((down) => JSON.stringify([before[down], put[down]]))).size === 1;
}

/** Whether the table still has each column in which something was put. */
function allThere({ put }: Written, rows: readonly number[], columns: readonly number[]): boolean {
  return rows.every((down) => (put[down] ?? []).every((cell, across) => isSkip(cell) || (columns[across] ?? -1) >= 0));
}

/** A cell that was put, where it stands now in the table. */
interface Moved {
  readonly row: number;
  readonly column: number;
  readonly before: BeforeCell;
  readonly put: PutCell;
}

function move({ before, put }: Written, down: number, columns: readonly number[], to: Moved[], row: number): void {
  put[down]?.forEach((cell, across) => {
    if (!isSkip(cell))
      to.push({ row, column: columns[across] ?? -1, before: before[down]?.[across] ?? null, put: cell });
  });
}

/** The smallest block that holds everything that was put. */
function* cropped({ sheet, ...table }: Block, moved: readonly Moved[]): Generator<void, Written> {
  const [top, bottom] = extent(moved, 'row');
  const [left, right] = extent(moved, 'column');
  const at = {
    sheet,
    row: table.row + top,
    column: table.column + left,
    rows: bottom - top + 1,
    columns: right - left + 1,
  };
  yield;
  const lines = Array.from({ length: at.rows }, () => ({
    before: Array<BeforeCell>(at.columns).fill(null),
    put: Array<PutCell>(at.columns).fill({ skip: true }),
  }));
  yield;
  for (const { row, column, before, put } of moved) {
    const line = lines[row - top];
    if (!line) continue;
    line.before[column - left] = before;
    line.put[column - left] = put;
  }
  yield;
  return { at, before: lines.map(({ before }) => before), put: lines.map(({ put }) => put) };
}

/** First and last of the rows, or columns, in which something was put; of nothing, the first. */
function extent(moved: readonly Moved[], which: 'row' | 'column'): readonly [number, number] {
  let [first, last] = [moved[0]?.[which] ?? 0, 0];
  for (const each of moved) {
    first = Math.min(first, each[which]);
    last = Math.max(last, each[which]);
  }
  return [first, last];
}

/** @example `Clubs: 1042, Driver`; a row without a name by where it stood */
function nameRow(at: Block, { table, called, headings, headingRows }: WrittenRows, down: number): string {
  const texts = (called[down] ?? headings).filter((text) => text !== '');
  // The name of plain cells is ours: nobody knows them by it.
  const list = headingRows === undefined ? table : at.sheet;
  return texts.length > 0 ? `${list}: ${texts.join(', ')}` : named({ ...at, row: at.row + down, rows: 1 });
}
