import { drained } from '../../core/index';
import { PortError } from '../port';
import type { Block, Change, Put, TableSeen } from '../port';
import { contains, nameCells, named, overlap, sameBlock, sameName } from './address';
import { demandLooked, isTable, unseenCells, whatWasThere } from './looked';
import type { Looked, Unseen } from './looked';
import { afterResizing, refuseLengthen } from './lengthen';
import type { Lengthen } from './lengthen';
import { refuseWiden } from './widen';
import type { Widen } from './widen';

type Write = Extract<Change, { do: 'write' }>;
type MakeTable = Extract<Change, { do: 'table' }>;

/**
 * Throws a PortError when a change may not be made, judged by what was looked at alone; both ports call it first.
 *
 * Refused: cells nobody looked at, protected sheets, merged cells, filtered tables, and whatever crosses the edge of a
 * table. Whoever writes on a block that a table touches must have looked at that table too: only then is its edge known.
 */
export function refuseUnsafe(changes: readonly Change[], looked: Looked): void {
  drained(refuseSteps(changes, looked));
}

/** {@link refuseUnsafe} in steps. */
export function* refuseSteps(changes: readonly Change[], looked: Looked): Generator<void, void> {
  let seen = looked;
  for (const change of changes) {
    yield;
    if (change.do === 'write') yield* refuseWrite(change, seen);
    else if (change.do === 'table') refuseTable(change, seen, changes);
    else if (change.do === 'lengthen') refuseLengthen(change, seen);
    else if (change.do === 'widen') refuseWiden(change, seen);
    else refuseProtected(sheetOf(change), seen);
    if (change.do === 'choices') refuseFormulaChoices(change);
    seen = afterResizing(seen, change);
  }
}

/** Words of a drop-down that begin with an equals sign would be taken for a formula that finds them, and nothing can be put before it. */
function refuseFormulaChoices({ at, from }: Extract<Change, { do: 'choices' }>): void {
  if ('table' in from) return;
  const odd = from.find((word) => /^\s*[=＝]/.test(word));
  if (odd !== undefined) {
    throw new PortError('unsupported', [named(at)], `A choice may not begin like a formula: ${odd}`);
  }
}

/** The block a table takes: a table always has at least one body row, a blank one if need be. */
export function tableBlock(at: Block): Block {
  return at.rows < 2 ? { ...at, rows: 2 } : at;
}

/** Whether a table that is asked for stands there already, just so. */
export function standsAlready(change: MakeTable, looked: Looked): boolean {
  return looked.some(
    (seen) => isTable(seen) && sameName(seen.name, change.name) && sameBlock(seen.at, tableBlock(change.at)),
  );
}

function sheetOf(change: Exclude<Change, Write | MakeTable | Lengthen | Widen>): string | null {
  switch (change.do) {
    case 'format':
    case 'choices':
    case 'highlight':
      return change.at.sheet;
    case 'widths':
    case 'freezeRows':
    case 'page':
      return change.sheet;
    default:
      return null;
  }
}

function refuseProtected(sheet: string | null, looked: Looked): void {
  if (sheet !== null && looked.some((seen) => seen.protected && sameName(seen.at.sheet, sheet))) {
    throw new PortError('protected', [sheet]);
  }
}

function* refuseWrite(write: Write, looked: Looked): Generator<void, void> {
  const { at, cells } = write;
  if (cells.length !== at.rows || cells.some((line) => line.length !== at.columns)) {
    throw new RangeError(`The cells for ${named(at)} are not ${at.rows} × ${at.columns}.`);
  }
  refuseOddNumbers(write);
  yield;
  yield* refuseUnseen(write, looked);
  if (!putsAnything(write)) return;
  refuseProtected(at.sheet, looked);
  const putWithin = (area: Block): boolean => anyPut(write, area);
  refuseMerged(at, looked, putWithin);
  refuseTableEdge(write, looked);
}

/** Rows that are looked through at a stretch. */
const ROWS_A_STEP = 500;

function* refuseUnseen({ at, cells }: Write, looked: Looked): Generator<void, void> {
  const unseen: Unseen[] = [];
  for (let from = 0; from < at.rows; from += ROWS_A_STEP) {
    const part = { ...at, row: at.row + from, rows: Math.min(ROWS_A_STEP, at.rows - from) };
    const put = (down: number, across: number): boolean => cells[from + down]?.[across] !== undefined;
    unseen.push(...unseenCells(part, whatWasThere(part, looked), put));
    yield;
  }
  if (unseen.length > 0) throw new PortError('notLookedAt', nameCells(unseen));
}

function refuseOddNumbers({ at, cells }: Write): void {
  for (const [down, line] of cells.entries()) {
    const across = line.findIndex((cell) => typeof cell === 'number' && !Number.isFinite(cell));
    if (across < 0) continue;
    const cell = named({ sheet: at.sheet, row: at.row + down, column: at.column + across, rows: 1, columns: 1 });
    throw new RangeError(`${cell} would get ${String(line[across])}, which no cell can hold.`);
  }
}

function anyPut(write: Write, area: Block): boolean {
  const shared = overlap(write.at, area);
  if (!shared) return false;
  const { at, cells } = write;
  return cells
    .slice(shared.row - at.row, shared.row - at.row + shared.rows)
    .some((line) => someDefined(line, shared.column - at.column, shared.columns));
}

function someDefined(line: readonly Put[], from: number, count: number): boolean {
  return line.slice(from, from + count).some((cell) => cell !== undefined);
}

function refuseMerged(at: Block, looked: Looked, concerned: (area: Block) => boolean): void {
  const merged = looked
    .flatMap((seen) => (isTable(seen) ? [] : seen.merged))
    .filter((area) => overlap(area, at) !== null && concerned(area));
  if (merged.length > 0) throw new PortError('merged', [...new Set(merged.map(named))]);
}

function refuseTableEdge(write: Write, looked: Looked): void {
  const tables = looked.filter(isTable);
  for (const table of tables) {
    if (!anyPut(write, table.at)) continue;
    if (!contains(table.at, tight(write))) throw new PortError('tableInTheWay', [table.name]);
    if (table.filtered) throw new PortError('filtered', [table.name]);
  }
  refuseUnseenTables(write.at, looked, tables);
}

/** The smallest block that holds every cell that is put. */
export function tight({ at, cells }: Write): Block {
  let [top, bottom, left, right] = [Infinity, 0, at.columns, 0];
  for (const [down, line] of cells.entries()) {
    const first = line.findIndex(isPut);
    if (first < 0) continue;
    top = Math.min(top, down);
    bottom = down;
    left = Math.min(left, first);
    right = Math.max(right, line.findLastIndex(isPut));
  }
  if (top > bottom) top = 0;
  const { sheet } = at;
  return { sheet, row: at.row + top, column: at.column + left, rows: bottom - top + 1, columns: right - left + 1 };
}

function isPut(cell: Put): boolean {
  return cell !== undefined;
}

/** Whether a write puts anything at all. */
export function putsAnything({ cells }: Pick<Write, 'cells'>): boolean {
  return cells.some((line) => line.some(isPut));
}

function refuseUnseenTables(at: Block, looked: Looked, known: readonly TableSeen[]): void {
  for (const seen of looked) {
    if (isTable(seen) || !overlap(seen.at, at)) continue;
    const unknown = seen.tables.filter((name) => !known.some((table) => sameName(table.name, name)));
    if (unknown.length > 0) throw new PortError('tableInTheWay', unknown);
  }
}

function refuseTable(change: MakeTable, looked: Looked, changes: readonly Change[]): void {
  if (standsAlready(change, looked)) return;
  const at = tableBlock(change.at);
  demandLooked(at, whatWasThere(at, looked));
  refuseProtected(at.sheet, looked);
  refuseMerged(at, looked, () => true);
  const tables = looked.filter(isTable);
  const inTheWay = tables.filter((table) => sameName(table.name, change.name) || overlap(table.at, at));
  if (inTheWay.length > 0)
    throw new PortError(
      'tableInTheWay',
      inTheWay.map((table) => table.name),
    );
  refuseUnseenTables(at, looked, tables);
  const twin = changes.find((other) => other.do === 'table' && other !== change && overlap(tableBlock(other.at), at));
  if (twin?.do === 'table') throw new PortError('tableInTheWay', [twin.name]);
}
