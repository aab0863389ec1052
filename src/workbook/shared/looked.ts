import { PortError } from '../port';
import type { Block, BlockSeen, Cell, Seen, TableSeen } from '../port';
import { holdsCell, nameCells, overlap, sameName } from './address';

/** What a port was shown before a change. */
export type Looked = readonly (BlockSeen | TableSeen)[];

/** What a cell held before: its value, or what has to be entered to have it again (a formula, an error constant). */
export type BeforeCell = Cell | { readonly formula: string };

/** A block of a sheet that does not exist: blank, and nothing in the way. */
export function nothingThere(at: Block): BlockSeen {
  const lines = <T>(cell: T): T[][] => Array.from({ length: at.rows }, () => Array<T>(at.columns).fill(cell));
  return {
    at,
    values: lines(null),
    formulas: lines(null),
    sheetExists: false,
    protected: false,
    merged: [],
    tables: [],
  };
}

export function isTable(seen: BlockSeen | TableSeen): seen is TableSeen {
  return 'headers' in seen;
}

export function isError(seen: Seen): seen is { readonly error: string } {
  return typeof seen === 'object' && seen !== null;
}

/** What to keep of a seen cell so that it can be put back. An error constant is kept as what one would type: `#N/A`. */
export function toBefore(value: Seen, formula: string | null): BeforeCell {
  if (formula !== null) return { formula };
  return isError(value) ? { formula: value.error } : value;
}

/**
 * What each cell of a block held, from what was looked at; `undefined` where nobody looked.
 *
 * Everything on a sheet that was seen not to exist is blank. A cell filled by a formula elsewhere holds nothing itself, so
 * it counts as blank: putting its value back would stand in that formula's way.
 */
export function whatWasThere(at: Block, looked: Looked): (BeforeCell | undefined)[][] {
  const nowhere = isNowhere(at, looked);
  const found: (BeforeCell | undefined)[][] = Array.from({ length: at.rows }, () =>
    Array<BeforeCell | undefined>(at.columns).fill(nowhere ? null : undefined),
  );
  if (nowhere) return found;
  for (const seen of inOrder(looked)) copySeen(seen, at, found);
  return found;
}

/** Whether a block is of a sheet that was seen not to exist. */
function isNowhere(at: Block, looked: Looked): boolean {
  return looked.some((seen) => !isTable(seen) && !seen.sheetExists && sameName(seen.at.sheet, at.sheet));
}

/** Blocks last: where a table and a block both show a cell, the block knows more. */
function inOrder(looked: Looked): Looked {
  return [...looked].sort((a, b) => Number(isTable(b)) - Number(isTable(a)));
}

function copySeen(seen: BlockSeen | TableSeen, at: Block, found: (BeforeCell | undefined)[][]): void {
  const shared = overlap(seen.at, at);
  if (!shared) return;
  for (let row = shared.row; row < shared.row + shared.rows; row += 1) {
    const line = found[row - at.row];
    if (line) copyLine(seen, row, shared, line, at.column);
  }
}

function copyLine(
  seen: BlockSeen | TableSeen,
  row: number,
  { column: from, columns }: Block,
  line: (BeforeCell | undefined)[],
  left: number,
): void {
  const lineOf = { seen, ...lineSeen(seen, row - seen.at.row) };
  for (let column = from; column < from + columns; column += 1) line[column - left] = cellSeen(lineOf, row, column);
}

interface LineSeen {
  readonly values: readonly Seen[] | undefined;
  readonly formulas: readonly (string | null)[] | undefined;
}

/** One row of what was seen, its headings where it is the first of a table. */
function lineSeen(seen: BlockSeen | TableSeen, down: number): LineSeen {
  if (!isTable(seen)) return { values: seen.values[down], formulas: seen.formulas[down] };
  if (down === 0) return { values: seen.headers, formulas: undefined };
  return { values: seen.rows[down - 1], formulas: seen.formulas?.[down - 1] };
}

function cellSeen(
  { seen, values, formulas }: LineSeen & { readonly seen: BlockSeen | TableSeen },
  row: number,
  column: number,
): BeforeCell {
  if (!isTable(seen) && seen.spills && filledFromElsewhere(seen, row, column)) return null;
  const across = column - seen.at.column;
  return toBefore(values?.[across] ?? null, formulas?.[across] ?? null);
}

/** Whether a cell shows a value that a formula in another cell put there. */
export function filledFromElsewhere(seen: BlockSeen, row: number, column: number): boolean {
  return (seen.spills ?? []).some(
    (spill) => holdsCell(spill, seen.at.sheet, row, column) && !(spill.row === row && spill.column === column),
  );
}

/** Whether everything in a block was looked at and is blank, and no formula fills it from elsewhere either. */
export function isSeenBlank(at: Block, looked: Looked): boolean {
  const filled = looked.some((seen) => !isTable(seen) && (seen.spills ?? []).some((spill) => overlap(spill, at)));
  return !filled && everySeen(at, looked, (cell) => cell === null);
}

/** Whether every cell of a block passes, as `whatWasThere` answers them; nothing is built, and the first that fails decides. */
function everySeen(at: Block, looked: Looked, passes: (cell: BeforeCell | undefined) => boolean): boolean {
  if (isNowhere(at, looked)) return passes(null);
  const over = inOrder(looked).filter((seen) => overlap(seen.at, at) !== null);
  for (let row = at.row; row < at.row + at.rows; row += 1) {
    const lines = over.flatMap((seen) => {
      const down = row - seen.at.row;
      return down >= 0 && down < seen.at.rows ? [{ seen, ...lineSeen(seen, down) }] : [];
    });
    for (let column = at.column; column < at.column + at.columns; column += 1) {
      const top = lines.findLast(({ seen: { at: all } }) => column >= all.column && column < all.column + all.columns);
      if (!passes(top && cellSeen(top, row, column))) return false;
    }
  }
  return true;
}

/** A cell that nobody looked at. */
export type Unseen = Readonly<Record<'row' | 'column', number>> & { readonly sheet: string };

/** Cells of `at` that nobody looked at, among those that `concerned` picks. */
export function unseenCells(
  at: Block,
  before: readonly (readonly (BeforeCell | undefined)[])[],
  concerned: (down: number, across: number) => boolean = () => true,
): Unseen[] {
  const unseen: Unseen[] = [];
  before.forEach((line, down) => {
    line.forEach((cell, across) => {
      if (cell === undefined && concerned(down, across)) {
        unseen.push({ sheet: at.sheet, row: at.row + down, column: at.column + across });
      }
    });
  });
  return unseen;
}

/** Throws `notLookedAt`, naming the cells of `at` that nobody looked at. */
export function demandLooked(at: Block, before: readonly (readonly (BeforeCell | undefined)[])[]): void {
  const unseen = unseenCells(at, before);
  if (unseen.length > 0) throw new PortError('notLookedAt', nameCells(unseen));
}
