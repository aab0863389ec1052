/**
 * Whether cells are still as they were looked at, right before they are written: a person may have typed, sorted or inserted rows since.
 *
 * Of a table, or a list of plain cells, whole rows are compared and its headings: a blank cell alone would not tell that another row
 * stands there by now. Elsewhere only cells that are written: what a person types between them is no matter of ours.
 */
import { PortError } from '../port';
import type { Block, BlockSeen, Change } from '../port';
import { contains, nameCells, overlap, sameBlock, sameName } from './address';
import { filledFromElsewhere, isTable, whatWasThere } from './looked';
import type { BeforeCell, Looked } from './looked';
import { afterResizing, rowsBelow, tableNamed } from './lengthen';
import { putsAnything, tight } from './refuse';
import { columnsBeside } from './widen';

/** One cell. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** A block, and the table whose headings it holds, if it does. */
export interface Concerned {
  readonly at: Block;
  readonly table?: string;
  /** Only the cells that this write puts are compared; left out where all of them are. */
  readonly putBy?: Write;
}

type Write = Extract<Change, { do: 'write' }>;

/** The blocks that must be as they were seen when a change is made, and the tables that must be where they were. */
export function blocksConcerned(change: Change, looked: Looked): Concerned[] {
  if (change.do === 'widen') {
    return [{ at: { ...columnsBeside(tableNamed(change.table, looked), change.headers.length), rows: 1 } }];
  }
  if (change.do === 'lengthen') return [{ at: rowsBelow(tableNamed(change.table, looked), change.rows) }];
  if (change.do !== 'write' || !putsAnything(change)) return [];
  const at = tight(change);
  const tables = looked.filter(isTable).filter((table) => overlap(table.at, at) !== null);
  const lines = tables.flatMap((table): Concerned[] => {
    const { row, rows } = overlap(table.at, at) ?? table.at;
    const heading = { at: { ...table.at, rows: 1 }, table: table.name };
    return row === table.at.row && rows === 1 ? [heading] : [heading, { at: { ...table.at, row, rows } }];
  });
  if (lines.length > 0) return lines;
  const { headingRows } = change.of ?? {};
  return headingRows === undefined ? [{ at, putBy: change }] : listLines(at, headingRows, looked);
}

/**
 * Rows of a list of plain cells as far as they were looked at, and its headings. Whatever was looked at in the same rows counts: new columns
 * stand beside the list, and belong to its rows all the same.
 */
function listLines(at: Block, headingRows: number, looked: Looked): Concerned[] {
  const rows = looked.flatMap((seen) => {
    const shared = isTable(seen) ? null : overlap({ ...seen.at, column: at.column, columns: at.columns }, at);
    return shared ? [{ whole: seen.at, lines: { ...seen.at, row: shared.row, rows: shared.rows } }] : [];
  });
  // What lies within another is told by that.
  const widest = rows.filter(({ lines }, i) => {
    return !rows.some((other, j) => contains(other.lines, lines) && (j < i || !contains(lines, other.lines)));
  });
  return widest.flatMap(({ whole, lines }) => {
    const headings = { ...whole, rows: headingRows };
    return [...(whole.row + headingRows <= lines.row ? [{ at: headings }] : []), { at: lines }];
  });
}

/** Whether a cell is one that is compared. */
export function isCompared({ putBy }: Concerned, { row, column }: Place): boolean {
  return putBy === undefined || putBy.cells[row - putBy.at.row]?.[column - putBy.at.column] !== undefined;
}

/**
 * Cells of a block that no longer hold what was seen.
 *
 * @param now the block as it stands
 * @param isLeft cells that do not count: those that these changes themselves have put by now, and those that they leave alone
 */
export function changedSince(now: BlockSeen, looked: Looked, isLeft: (place: Place) => boolean = () => false): Place[] {
  // A sheet that was not there is made by the changes, or the making of it fails.
  if (!now.sheetExists) return [];
  const { at } = now;
  const before = whatWasThere(at, looked);
  const changed: Place[] = [];
  before.forEach((line, down) => {
    line.forEach((was, across) => {
      // Nobody looked where nothing is known, so nobody judged by it either. Most cells are as they were, and cost no more than this.
      if (was === undefined || isPlainly(was, now, down, across)) return;
      const place = { sheet: at.sheet, row: at.row + down, column: at.column + across };
      const [[is = null] = []] = whatWasThere({ ...place, rows: 1, columns: 1 }, [now]);
      if (sameEntry(was, is)) return;
      if (!isLeft(place) && !isFilled(place, [now, ...looked])) changed.push(place);
    });
  });
  return changed;
}

/** Whether a cell without a formula holds the very value that it held. */
function isPlainly(was: BeforeCell, now: BlockSeen, down: number, across: number): boolean {
  return (now.values[down]?.[across] ?? null) === was && (now.formulas[down]?.[across] ?? null) === null;
}

/** Whether a formula elsewhere fills a cell: what shows there is nobody's entry. */
function isFilled({ sheet, row, column }: Place, seen: Looked): boolean {
  return seen.some(
    (each) => !isTable(each) && sameName(each.at.sheet, sheet) && filledFromElsewhere(each, row, column),
  );
}

/** As text: headings are known as text whatever they are. */
function sameEntry(one: BeforeCell, other: BeforeCell): boolean {
  if (one === other) return true;
  const entered = (cell: BeforeCell): string =>
    typeof cell === 'object' && cell !== null ? cell.formula : String(cell ?? '');
  return entered(one) === entered(other);
}

/** Whether the table is gone whose headings a block held. */
export function lacksTable({ table }: Concerned, tables: readonly string[]): boolean {
  return table !== undefined && !tables.some((name) => sameName(name, table));
}

/** Throws a PortError where anything that is to be written is not as it was seen, or is protected by now. */
export function refuseChanged(changes: readonly Change[], looked: Looked, see: (at: Block) => BlockSeen): void {
  let sofar = looked;
  const concerned = changes.flatMap((change) => {
    const before = sofar;
    // A table that was made wider or longer by then is one with its new cells.
    sofar = afterResizing(sofar, change);
    return blocksConcerned(change, before);
  });
  const blocks = distinct(concerned);
  const seen = blocks.map((block) => ({ block, now: see(block.at) }));
  const locked = seen.filter(({ now }) => now.protected).map(({ now }) => now.at.sheet);
  if (locked.length > 0) throw new PortError('protected', [...new Set(locked)]);
  const gone = seen.flatMap(({ block, now }) =>
    now.sheetExists && lacksTable(block, now.tables) ? [block.table ?? ''] : [],
  );
  const changed = nameCells(
    seen.flatMap(({ block, now }) => changedSince(now, looked, (place) => !isCompared(block, place))),
  );
  if (gone.length + changed.length > 0) throw new PortError('notLookedAt', [...new Set([...gone, ...changed])]);
}

function distinct(blocks: readonly Concerned[]): Concerned[] {
  return blocks.filter(({ at, table, putBy }, i) => {
    const isSame = (other: Concerned): boolean => {
      return sameBlock(other.at, at) && other.table === table && other.putBy === putBy;
    };
    return blocks.findIndex(isSame) === i;
  });
}
