import { drained } from '../../core/index';
import { PortError } from '../port';
import type { Block, BlockSeen, Dressed, MovedName, Receipt, Reverted } from '../port';
import { contains, holdsCell, nameCells, named, overlap, sameName } from './address';
import { belowHeadings, filledBelow } from './keptHeadings';
import { LIST_STEM } from './limits';
import { cellNow, holds, isBack, isBlank, isSkip } from './cellNow';
import type { Place, PutCell } from './cellNow';
import { cellSet, cellsPut } from './cellSet';
import type { CellSet } from './cellSet';
import type { BeforeCell } from './looked';
import { findRowsSteps } from './rows';
import { narrowing } from './widen';
import type { WidenedNow } from './widen';

/** What stands in the workbook when a change is to be taken back. */
export interface Now {
  /** Each written block of the receipt, in its order; for rows of a table the whole table, wherever it stands now. */
  readonly blocks: readonly BlockSeen[];
  /** Each table that the receipt made wider, in its order, wherever it stands now; null where it is gone. */
  readonly widened: readonly (WidenedNow | null)[];
  /** Names of all sheets. */
  readonly allSheets: readonly string[];
  /** The receipt's made tables that are still there. */
  readonly tables: readonly TableNow[];
  /** The receipt's made sheets that are still there. */
  readonly sheets: readonly SheetNow[];
  /** The receipt's made names that are still there. */
  readonly names: readonly string[];
  /** Where a name points; null where there is none, or where it points nowhere. */
  placeOf(name: string): Block | null;
}

export interface TableNow {
  readonly name: string;
  /** The cells it holds, header row first; `null` when it was made a moment ago, so that nobody can have used it. */
  readonly seen: BlockSeen | null;
}

export interface SheetNow {
  readonly name: string;
  /** All cells in use, `null` when none is. */
  readonly used: BlockSeen | null;
  /** Names of all tables on it. */
  readonly tables: readonly string[];
  /** Anything else that would be lost with it, or that keeps it from going: a chart, a picture, its being the last sheet. */
  readonly keep: boolean;
}

/** What to do to take a change back; the order of the fields is the order of doing. */
export interface RevertPlan extends Omit<Reverted, 'label' | 'changed'> {
  /** Parts of something whole that were changed since: then there is nothing to do. */
  readonly changed: readonly string[];
  /** Turned back into plain cells. */
  readonly removeTables: readonly string[];
  readonly removeNames: readonly string[];
  readonly moveNames: readonly { readonly name: string; readonly at: Block }[];
  /** Tables that become narrower again; their headings beyond are blanked afterwards. */
  readonly narrow: readonly { readonly name: string; readonly at: Block; readonly blank: Block }[];
  /** Cells to put; `undefined` leaves a cell alone. */
  readonly puts: readonly { readonly at: Block; readonly cells: readonly (readonly (BeforeCell | undefined)[])[] }[];
  /** Blocks, each with the looks of ours that go. */
  readonly undress: readonly Dressed[];
  readonly deleteSheets: readonly string[];
}

/**
 * Plans taking back: every cell that still holds what was put gets what it held; a cell that a person changed since is left
 * and named. A table of ours in which a person wrote stays, with its headers; a sheet of ours goes only when nothing else is on it.
 */
export function planRevert(kept: Receipt, now: Now): RevertPlan {
  return drained(planRevertSteps(kept, now));
}

/** {@link planRevert} in steps: a plan of thousands of clubs has hundreds of thousands of cells. */
export function* planRevertSteps(kept: Receipt, now: Now): Generator<void, RevertPlan> {
  const found = [];
  for (const [i, written] of kept.written.entries()) {
    const seen = now.blocks[i];
    found.push(written.rows && seen ? yield* findRowsSteps(written, written.rows, seen) : { written, notFound: [] });
  }
  const asFound = { ...kept, written: found.map(({ written }) => written) };
  const whole = kept.written.map((written) => written.whole === true);
  const changed = [
    ...nameCells(yield* changedSteps(...onlyThose(asFound, now, whole))),
    ...kept.written.flatMap(({ at }, i) => (whole[i] && !now.blocks[i]?.sheetExists ? [named(at)] : [])),
    ...found.flatMap(({ notFound: rows }, i) => (whole[i] ? rows : [])),
  ];
  if (changed.length > 0) return { ...NOTHING, changed: [...new Set(changed)] };
  const left = yield* changedSteps(asFound, now);
  const touched = cellSet(left);
  const isPut = cellsPut(asFound);
  const stillOurs = (sheet: string, row: number, column: number): boolean =>
    isPut(sheet)(row, column) && !touched.has(sheet, row, column);
  const filled = asFound.written.map((written, i) =>
    filledBelow(written, kept.written[i]?.rows, now.blocks[i], stillOurs),
  );
  const receipt = {
    ...asFound,
    written: asFound.written.map((written, i) => {
      const [rows, seen] = [kept.written[i]?.rows, now.blocks[i]];
      return rows && seen && filled[i]?.length ? belowHeadings(written, rows, seen) : written;
    }),
  };
  const anyFilled = filled.some((cells) => cells.length > 0);
  const plan = yield* planAtSteps(receipt, now, anyFilled ? yield* changedSteps(receipt, now) : left);
  const narrowed = (receipt.widened ?? []).map((each, i) => narrowing(each, now.widened[i] ?? null, stillOurs));
  const lists = receipt.movedNames.flatMap((moved) => {
    const i = kept.written.findIndex(({ rows }) => rows?.headingRows !== undefined && sameName(rows.table, moved.name));
    const at = narrowList(moved, now.blocks[i], stillOurs);
    return at ? [{ name: moved.name, at }] : [];
  });
  const notFound = found.flatMap(({ notFound: rows }) => rows);
  // What rows hold that were not found is told by naming these.
  const foreign =
    notFound.length > 0 ? [] : filled.flat().filter(({ sheet, row, column }) => !touched.has(sheet, row, column));
  return {
    ...plan,
    moveNames: [...plan.moveNames, ...lists],
    narrow: narrowed.flatMap((each) => ('left' in each ? [] : [each])),
    left: [...plan.left, ...nameCells(foreign), ...narrowed.flatMap((each) => ('left' in each ? each.left : []))],
    notFound,
    changed,
  };
}

/** Throws a PortError where a sheet that taking back would change is protected: before anything is done, not half way. */
export function refuseProtectedRevert(plan: RevertPlan, now: Now, isProtected: (sheet: string) => boolean): void {
  const tables = now.tables.filter(({ name }) => plan.removeTables.includes(name));
  const sheets = [
    ...tables.flatMap(({ seen }) => (seen ? [seen.at.sheet] : [])),
    ...plan.narrow.map(({ at }) => at.sheet),
    ...plan.puts.map(({ at }) => at.sheet),
    ...plan.undress.map(({ at }) => at.sheet),
    ...plan.deleteSheets,
  ];
  const locked = [...new Set(sheets)].filter(isProtected);
  if (locked.length > 0) throw new PortError('protected', locked);
}

/** What taking back by a plan did. */
export function revertedBy({ label }: Receipt, { restored, left, notFound, changed }: RevertPlan): Reverted {
  return { label, restored, left, notFound, ...(changed.length > 0 ? { changed } : {}) };
}

const NOTHING: RevertPlan = {
  removeTables: [],
  removeNames: [],
  moveNames: [],
  puts: [],
  undress: [],
  deleteSheets: [],
  restored: 0,
  left: [],
  notFound: [],
  changed: [],
  narrow: [],
};

/** The same receipt with some of its blocks. */
function onlyThose(receipt: Receipt, now: Now, which: readonly boolean[]): [Receipt, Now] {
  const pick = <T>(all: readonly T[]): T[] => all.filter((_, i) => which[i]);
  return [
    { ...receipt, written: pick(receipt.written) },
    { ...now, blocks: pick(now.blocks) },
  ];
}

/** The plan for cells whose place is known, of which some were changed. */
function* planAtSteps(
  receipt: Receipt,
  now: Now,
  changed: readonly Place[],
): Generator<void, Omit<RevertPlan, 'notFound' | 'changed' | 'narrow'>> {
  const about: About = { receipt, left: cellSet(changed), isPut: cellsPut(receipt) };
  const kept: UsedTable[] = [];
  for (const { name, seen } of now.tables) {
    if (seen && (yield* isUsedSteps(seen, about))) kept.push({ name, seen });
  }
  const stays = (sheet: string, row: number, column: number): boolean =>
    kept.some(({ seen }) => holdsCell({ ...seen.at, rows: 1 }, sheet, row, column));
  const removeTables = now.tables.map(({ name }) => name).filter((name) => !kept.some((table) => table.name === name));
  const deleteSheets: string[] = [];
  for (const sheet of now.sheets) if (yield* canGoSteps(sheet, about, removeTables)) deleteSheets.push(sheet.name);
  const gone = (sheet: string): boolean => deleteSheets.some((name) => sameName(name, sheet));
  const { puts, restored } = yield* planPutsSteps(receipt, now, stays);
  // The rows of a table that is gone are told one by one.
  const missing = receipt.written.flatMap(({ at, put }, i) =>
    now.blocks[i]?.sheetExists || put.every((line) => line.every(isSkip)) ? [] : [named(at)],
  );
  const undress: Dressed[] = [];
  for (const dressed of receipt.dressed) {
    if (!gone(dressed.at.sheet) && isFree(dressed.at, about.left, kept, now)) undress.push(dressed);
    yield;
  }
  return {
    removeTables,
    removeNames: now.names,
    moveNames: receipt.movedNames.flatMap((moved) => {
      const at = placeBack(moved, now);
      return at && !gone(at.sheet) ? [{ name: moved.name, at }] : [];
    }),
    puts: puts.filter(({ at }) => !gone(at.sheet)),
    undress,
    deleteSheets,
    restored,
    left: [...nameCells(changed), ...missing],
  };
}

interface UsedTable {
  readonly name: string;
  readonly seen: BlockSeen;
}

/** A receipt, and what is asked of its cells. */
interface About {
  readonly receipt: Receipt;
  /** Those that a person changed since. */
  readonly left: CellSet;
  readonly isPut: ReturnType<typeof cellsPut>;
}

function isList(name: string): boolean {
  return name.toLowerCase().startsWith(LIST_STEM.toLowerCase());
}

/** Where a moved name pointed, shifted by what was inserted above it since; null when it does not stand where it was put. */
function placeBack({ name, from, to }: MovedName, now: Now): Block | null {
  const at = now.placeOf(name);
  if (!at || at.rows !== to.rows || at.columns !== to.columns) return null;
  // A list of a person's own that was made larger keeps its blank rows: what they put there since stays in it.
  if (isList(name) && contains(to, from)) return null;
  if (!sameName(from.sheet, to.sheet)) return now.allSheets.some((sheet) => sameName(sheet, from.sheet)) ? from : null;
  const row = from.row + at.row - to.row;
  const column = from.column + at.column - to.column;
  return row < 0 || column < 0 ? null : { ...from, sheet: at.sheet, row, column };
}

/** A list of plain cells without the columns that it got, where these hold nothing of a person's; null where it stays. */
function narrowList(
  { name, from, to }: MovedName,
  seen: BlockSeen | undefined,
  isOurs: (sheet: string, row: number, column: number) => boolean,
): Block | null {
  const added = to.columns - from.columns;
  if (!isList(name) || !contains(to, from) || added <= 0 || !seen?.sheetExists || seen.at.columns <= added) return null;
  const { sheet, row, column, columns } = seen.at;
  const free = seen.values.every((line, down) =>
    line.every((_, across) => {
      if (across < columns - added) return true;
      const place = { sheet, row: row + down, column: column + across };
      return isBlank(cellNow(seen, place)) || isOurs(sheet, place.row, place.column);
    }),
  );
  return free ? { ...seen.at, columns: columns - added } : null;
}

/** Cells that are gone through between two looks at the clock. */
const CELLS_A_STEP = 5000;

function rowsAStep(columns: number): number {
  return Math.max(1, Math.floor(CELLS_A_STEP / Math.max(1, columns)));
}

function* changedSteps(receipt: Receipt, now: Now): Generator<void, Place[]> {
  const left: Place[] = [];
  yield* eachPutSteps(receipt, now, (place, was, put, seen) => {
    if (!holds(seen, put, place) && !isBack(seen, was, place)) left.push(place);
  });
  return left;
}

function* planPutsSteps(
  receipt: Receipt,
  now: Now,
  stays: (sheet: string, row: number, column: number) => boolean,
): Generator<void, Pick<RevertPlan, 'puts' | 'restored'>> {
  let restored = 0;
  const puts = receipt.written.map(({ at }) => ({
    at,
    cells: Array.from({ length: at.rows }, () => Array<BeforeCell | undefined>(at.columns).fill(undefined)),
  }));
  yield* eachPutSteps(receipt, now, (place, was, put, seen, block) => {
    if (stays(place.sheet, place.row, place.column)) return;
    const back = isBack(seen, was, place);
    if (!back && !holds(seen, put, place)) return;
    restored += 1;
    const target = puts[block];
    const line = target?.cells[place.row - target.at.row];
    if (!back && target && line) line[place.column - target.at.column] = was;
  });
  return { puts: puts.filter(({ cells }) => cells.some((line) => line.some((cell) => cell !== undefined))), restored };
}

function* eachPutSteps(
  receipt: Receipt,
  now: Now,
  visit: (place: Place, was: BeforeCell, put: PutCell, seen: BlockSeen, block: number) => void,
): Generator<void, void> {
  for (const [block, { at, before, put }] of receipt.written.entries()) {
    const seen = now.blocks[block];
    if (!seen?.sheetExists) continue;
    const rows = rowsAStep(at.columns);
    for (const [down, line] of put.entries()) {
      line.forEach((cell, across) => {
        if (isSkip(cell)) return;
        const place = { sheet: at.sheet, row: at.row + down, column: at.column + across };
        visit(place, before[down]?.[across] ?? null, cell, seen, block);
      });
      if (down % rows === rows - 1) yield;
    }
    yield;
  }
}

/** Whether a person has made a table of ours their own: a cell of it changed, or filled where we had put nothing. */
function* isUsedSteps(seen: BlockSeen, about: About): Generator<void, boolean> {
  if (about.left.anyIn(seen.at)) return true;
  const oursOnTop = about.receipt.written.some(({ at: block }) => overlap(block, { ...seen.at, rows: 1 }));
  return oursOnTop && (yield* foreignSteps(seen, about));
}

/** Whether a seen block holds anything that is not ours. */
function* foreignSteps(seen: BlockSeen, { isPut }: About): Generator<void, boolean> {
  const isOurs = isPut(seen.at.sheet);
  const rows = rowsAStep(seen.at.columns);
  for (const [down, line] of seen.values.entries()) {
    const foreign = line.some((_, across) => {
      const [row, column] = [seen.at.row + down, seen.at.column + across];
      return !isOurs(row, column) && !isBlank(cellNow(seen, { sheet: seen.at.sheet, row, column }));
    });
    if (foreign) return true;
    if (down % rows === rows - 1) yield;
  }
  return false;
}

function* canGoSteps(sheet: SheetNow, about: About, going: readonly string[]): Generator<void, boolean> {
  if (sheet.keep || about.left.anyOn(sheet.name)) return false;
  if (sheet.tables.some((name) => !going.some((other) => sameName(other, name)))) return false;
  return sheet.used === null || !(yield* foreignSteps(sheet.used, about));
}

/** Whether a dressed block can be undressed: nothing of a person's is left in it. */
function isFree(at: Block, left: CellSet, kept: readonly UsedTable[], now: Now): boolean {
  if (!now.allSheets.some((name) => sameName(name, at.sheet))) return false;
  return !left.anyIn(at) && !kept.some(({ seen }) => overlap(seen.at, at));
}
