/**
 * Whether cells are still as they were looked at, right before they are written: a person may have typed, sorted or inserted rows since.
 *
 * Of a table, whole rows are compared and its headings: a blank cell alone would not tell that another row stands there by now.
 */
import { PortError } from '../port';
import type { Block, BlockSeen, Change } from '../port';
import { nameCells, overlap, sameBlock, sameName } from './address';
import { filledFromElsewhere, isTable, whatWasThere } from './looked';
import type { BeforeCell, Looked } from './looked';
import { rowsBelow, tableNamed } from './lengthen';
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
}

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
  return lines.length > 0 ? lines : [{ at }];
}

/**
 * Cells of a block that no longer hold what was seen.
 *
 * @param now the block as it stands
 * @param isOurs cells that these changes themselves have put by now
 */
export function changedSince(now: BlockSeen, looked: Looked, isOurs: (place: Place) => boolean = () => false): Place[] {
  // A sheet that was not there is made by the changes, or the making of it fails.
  if (!now.sheetExists) return [];
  const { at } = now;
  const before = whatWasThere(at, looked);
  const found = whatWasThere(at, [now]);
  const changed: Place[] = [];
  before.forEach((line, down) => {
    line.forEach((was, across) => {
      // Nobody looked where nothing is known, so nobody judged by it either. Most cells are as they were, and cost no more than this.
      if (was === undefined || sameEntry(was, found[down]?.[across] ?? null)) return;
      const place = { sheet: at.sheet, row: at.row + down, column: at.column + across };
      if (!isOurs(place) && !isFilled(place, [now, ...looked])) changed.push(place);
    });
  });
  return changed;
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
  const blocks = distinct(changes.flatMap((change) => blocksConcerned(change, looked)));
  const seen = blocks.map((block) => ({ block, now: see(block.at) }));
  const locked = seen.filter(({ now }) => now.protected).map(({ now }) => now.at.sheet);
  if (locked.length > 0) throw new PortError('protected', [...new Set(locked)]);
  const gone = seen.flatMap(({ block, now }) =>
    now.sheetExists && lacksTable(block, now.tables) ? [block.table ?? ''] : [],
  );
  const changed = nameCells(seen.flatMap(({ now }) => changedSince(now, looked)));
  if (gone.length + changed.length > 0) throw new PortError('notLookedAt', [...new Set([...gone, ...changed])]);
}

function distinct(blocks: readonly Concerned[]): Concerned[] {
  return blocks.filter(({ at, table }, i) => {
    return blocks.findIndex((other) => sameBlock(other.at, at) && other.table === table) === i;
  });
}
