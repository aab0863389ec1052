import { PortError } from '../port';
import type { Block, BlockSeen, Change, Receipt, Written } from '../port';
import { blockOf, fixed, holdsCell, nameCells, named, overlap, sameBlock, sameName } from '../shared/address';
import { cellNow, holds as holdsPut, isBlank, isSkip } from '../shared/cellNow';
import type { Place } from '../shared/cellNow';
import { afterResizing, tableNamed } from '../shared/lengthen';
import { packReceipt } from '../shared/packed';
import { planRevert } from '../shared/revert';
import type { Now, RevertPlan } from '../shared/revert';
import { columnsBeside } from '../shared/widen';
import { tableBlock } from '../shared/refuse';
import { aligned } from './aligned';
import type { Applying } from './applying';
import { putAsFound } from './asFound';
import { attempted, isThrough, withoutPersons } from './attempted';
import type { Part } from './attempted';
import { hostWords } from './errors';
import { foundAgain, isDisplaced } from './foundAgain';
import type { FoundBlock } from './foundAgain';
import { ChangedMeanwhile } from './guard';
import { inBatch } from './host';
import { insertedSince } from './inserted';
import { askFreshTables, askNow, askResized, askRows } from './now';
import type { FreshTable, Resized } from './now';
import { standsNow } from './places';
import type { Moved } from './places';
import { askAll } from './read';
import { startRevertGuard } from './revertGuard';
import type { RevertGuard } from './revertGuard';
import { addedRows, putsOf, selfFilled, unfilled } from './selfFilled';
import { setSetting } from './settings';
import { holds } from './standing';
import type { Stood } from './standing';
import { listenAgain, takeBack } from './takeBack';
import { rangeOf } from './writeCells';

/** How far a batch came, and what a person moved meanwhile. */
export interface HowFar {
  readonly moved: Moved;
  readonly parts: readonly Part[];
  /** Where tables stood right before they were made longer or wider. */
  readonly sizes: ReadonlyMap<string, Block>;
}

/** What was there before a failed batch, as far as its answer told. */
export interface Before {
  readonly stood: Stood | null;
  readonly settings: ReadonlyMap<string, string | null> | null;
}

/**
 * Puts back what a failed batch may have done, and throws: `putBack` when all is as before, `notLookedAt` when all is but what a person did
 * meanwhile, and `halfWritten`, naming cells, when something could not be put back. Whatever the batch did not reach is found to be as it
 * was, and is not written.
 */
export async function putBack(
  applying: Applying,
  receipt: Receipt,
  before: Before & HowFar,
  cause: unknown,
): Promise<never> {
  const far = { ...before, stood: before.stood ?? applying.stood };
  let plan: PlanBack;
  try {
    // What was put over rows that a person sorted by then comes first: among it may be what was put before that, in its new place.
    if (before.moved.size === 0 && before.parts.some(({ through }) => through)) {
      const parts = before.parts.filter(({ through }) => !through);
      await putBackOnce(
        { ...applying, changes: [], options: { label: '' } },
        onlyCells(receipt),
        { ...far, parts },
        cause,
      );
    }
    plan = await putBackOnce(applying, receipt, far, cause);
  } catch (error) {
    await keepForUndo(applying, receipt);
    await listenAgain(applying.host, applying.quiet);
    throw new PortError('halfWritten', touched(receipt), `${hostWords(cause)}; ${hostWords(error)}`);
  }
  if (plan.left.length > 0) {
    await keepForUndo(applying, receipt);
    throw new PortError('halfWritten', plan.left, hostWords(cause));
  }
  if (plan.theirs.length > 0) throw new PortError('notLookedAt', plan.theirs);
  throw new PortError('putBack', [], hostWords(cause));
}

/** How often it is begun anew because a person did something meanwhile. */
const mostTries = 3;

async function putBackOnce(applying: Applying, receipt: Receipt, before: Far, cause: unknown): Promise<PlanBack> {
  for (let tries = 1; ; tries += 1) {
    const { plan, far } = await planSurely(applying, receipt, before, cause);
    const guarding: { guard: RevertGuard | null } = { guard: null };
    try {
      await writeBack(applying, plan, far, guarding);
      return plan;
    } catch (error) {
      if (!(error instanceof ChangedMeanwhile) || tries === mostTries || !guarding.guard) throw error;
      await putAsFound(applying.host, guarding.guard.taken(error));
    }
  }
}

/** A plan of putting back; where something is not as it ought to be, rows may have been put in or sorted right after the write failed. */
async function planSurely(
  applying: Applying,
  receipt: Receipt,
  far: Far,
  cause: unknown,
): Promise<{ readonly plan: PlanBack; readonly far: Far }> {
  const plan = await planBack(applying, receipt, far, cause);
  if (far.moved.size > 0 || plan.left.length + plan.theirs.length === 0) return { plan, far };
  const { host, changes, looked } = applying;
  const places = placesOf(receipt, changes, looked, far.stood);
  const inserted = await insertedSince(host, attempted(receipt, far.parts).written, places, far.parts);
  if (!inserted && plan.left.length === 0) return { plan, far };
  // What was put shows elsewhere by now: so it was written.
  const written = { ...far, parts: far.parts.map((part) => ({ ...part, through: true })) };
  const again = inserted ? { ...far, ...inserted } : written;
  const second = await planBack(applying, receipt, again, cause);
  return second.left.length === 0 ? { plan: second, far: again } : { plan, far };
}

function onlyCells({ label, written }: Receipt): Receipt {
  return { label, written, madeSheets: [], madeTables: [], madeNames: [], movedNames: [], dressed: [] };
}

/** What Undo needs to take the rest back later; where not even that can be kept, nothing more can be done. */
async function keepForUndo({ host, changes, options }: Applying, receipt: Receipt): Promise<void> {
  const { receiptKey } = options;
  if (receiptKey === undefined) return;
  try {
    await inBatch(host, async (context) => {
      setSetting(context, receiptKey, packReceipt(receipt));
      for (const change of changes) if (change.do === 'remember') setSetting(context, change.key, change.value);
      await context.sync();
    });
  } catch {
    // The cells are named.
  }
}

function touched(receipt: Receipt): string[] {
  return [...receipt.written.map(({ at }) => named(at)), ...receipt.madeSheets, ...receipt.madeTables];
}

type Far = Before & HowFar & { readonly stood: Stood };

interface PlanBack extends RevertPlan {
  /** What it was made from. */
  readonly now: Now;
  readonly stands: Stood;
  /** Tables that became longer or wider, as they stand and as they are to be. */
  readonly resized: readonly Smaller[];
  /** Cells that a person changed before they were to be written, or since. */
  readonly theirs: readonly string[];
}

async function planBack(applying: Applying, receipt: Receipt, before: Far, cause: unknown): Promise<PlanBack> {
  const { host, changes, looked } = applying;
  const { stood: stoodBefore, moved, parts, sizes } = before;
  const added = addedRows(changes, looked);
  const asSeen: Receipt = {
    ...receipt,
    madeSheets: receipt.madeSheets.filter((name) => !holds(stoodBefore.sheets, name)),
    madeNames: receipt.madeNames.filter((name) => !holds(stoodBefore.names, name)),
    // Found by where they stand instead: a table may have been made and not been named.
    madeTables: [],
    // Put back as their formulas were, to the letter.
    movedNames: [],
    // Where they stood: what was sorted meanwhile is looked for below.
    written: [
      ...receipt.written.map(({ at, before: was, put }) => ({ at, before: was, put })),
      ...headingsPut(changes, looked),
      // Last, so that they are found again.
      ...added,
    ],
    // By their headings as cells: a table may not have reached them yet.
    widened: [],
  };
  const corrected = cause instanceof ChangedMeanwhile ? cause.corrected(asSeen) : asSeen;
  const asPut = attempted(corrected, parts);
  const lost: string[] = [];
  const standing = { ...asPut, written: asPut.written.map((each) => ({ ...each, at: standsNow(moved, each.at) })) };
  const { answer, stood } = await askAll(host, (asking) => {
    const now = askNow(asking, standing);
    const lists = receipt.written.map(({ at, rows }) =>
      rows && !moved.has(named(at)) && isThrough(at, parts) ? askRows(asking, rows, at) : null,
    );
    const tables = askFreshTables(asking, changes, looked, (at) => standsNow(moved, at));
    const resized = askResized(asking, changes, looked, ({ name, at }) => {
      return moved.get(named(at)) ?? sizes.get(name.toLowerCase()) ?? at;
    });
    return () => ({ now: now(), lists: lists.map((list) => list?.()), tables: tables(), resized: resized() });
  });
  const now = { ...answer.now(stood), tables: answer.tables(stoodBefore.tables) };
  const placed = asPut.written.map((each, i) => {
    const block = now.blocks[i];
    if (!block?.sheetExists || !moved.has(named(each.at))) return each;
    const [again, isLost] = aligned(corrected.written[i] ?? each, block, parts);
    if (isLost) lost.push(named(block.at));
    return again;
  });
  const from = placed.length - added.length;
  const filled = placed.map((block, i) =>
    i < from
      ? []
      : selfFilled(
          block,
          now.blocks[i],
          answer.resized.map(({ was }) => was),
          { ...asPut, written: placed },
        ),
  );
  const blocks = now.blocks.map((block) => unfilled(block, filled.flat()));
  const theirs: Place[] = [];
  // A sheet that was not made has nothing to be put back.
  const found = placed.flatMap((each, i): FoundBlock[] => {
    const [block, was] = [blocks[i], asPut.written[i]];
    if (!block?.sheetExists) return [];
    if (was && moved.has(named(was.at))) return [{ written: each, block }];
    const again = foundAgain({ written: each, block, parts, rows: receipt.written[i]?.rows, list: answer.lists[i] });
    lost.push(...again.lost);
    return again.found.map((one) => {
      const [ours, persons] = withoutPersons(one.written, one.block);
      if (isDisplaced(one.written, one.block)) lost.push(named(one.block.at));
      else theirs.push(...persons);
      return { ...one, written: ours };
    });
  });
  const asFound = { ...asPut, written: found.map(({ written }) => written) };
  const plan = planRevert(asFound, { ...now, blocks: found.map(({ block }) => block) });
  const blanked = placed.flatMap((block, i) =>
    filled[i]?.length ? [{ at: block.at, cells: putsOf(block, filled[i]) }] : [],
  );
  // A table in whose new rows or columns a person put something keeps these, columns with their headings.
  const grown = answer.resized.map((each) => asSmallAs(each, usedBeyond(each, blocks, placed)));
  theirs.push(...grown.flatMap(({ used }) => used));
  const isKeptHeading = ({ at }: { readonly at: Block }): boolean =>
    grown.some(({ was, to }) => was.at.columns < to.columns && overlap(at, { ...to, ...headingsBeyond(was.at, to) }));
  // Where rows were moved, looks that were given stay: nobody knows any more whose they would be taken from.
  // On a sheet that was protected meanwhile none can be taken, and none of what is to be put back may fail for it.
  const sheets = [...[...moved.values()].map(({ sheet }) => sheet), ...stood.protectedSheets];
  const undress = plan.undress.filter(({ at }) => !sheets.some((sheet) => sameName(sheet, at.sheet)));
  const whole: PlanBack = {
    ...plan,
    left: [...plan.left, ...lost],
    undress,
    puts: [...plan.puts.filter((put) => !isKeptHeading(put)), ...blanked],
    now: { ...now, blocks: [...now.blocks, ...answer.lists.filter((list) => list !== undefined)] },
    stands: stood,
    resized: grown.filter(({ now: all, to }) => !sameBlock(all, to)),
    theirs: [...new Set(nameCells(theirs))],
  };
  return withoutProtected(whole, now.tables);
}

/** What stands on a sheet that was protected meanwhile cannot be put back; all else can. */
function withoutProtected(plan: PlanBack, fresh: readonly FreshTable[]): PlanBack {
  const isLocked = (sheet: string): boolean => holds(plan.stands.protectedSheets, sheet);
  const tables = fresh.filter(({ name, sheet }) => plan.removeTables.includes(name) && isLocked(sheet));
  const puts = plan.puts.filter(({ at }) => isLocked(at.sheet));
  const resized = plan.resized.filter(({ was }) => isLocked(was.at.sheet));
  return {
    ...plan,
    removeTables: plan.removeTables.filter((name) => !tables.some((table) => table.name === name)),
    puts: plan.puts.filter((put) => !puts.includes(put)),
    resized: plan.resized.filter((each) => !resized.includes(each)),
    left: [
      ...plan.left,
      ...puts.flatMap(({ at, cells }) => namePut(at, cells)),
      ...[...tables, ...resized.map(({ was }) => was)].map(({ name }) => name),
    ],
  };
}

function namePut(at: Block, cells: RevertPlan['puts'][number]['cells']): string[] {
  return nameCells(
    cells.flatMap((line, down) =>
      line.flatMap((cell, across) =>
        cell === undefined ? [] : [{ sheet: at.sheet, row: at.row + down, column: at.column + across }],
      ),
    ),
  );
}

interface Smaller extends Resized {
  readonly to: Block;
  /** Cells that a person filled in what it got. */
  readonly used: readonly Place[];
}

function asSmallAs({ now, was }: Resized, used: readonly Place[]): Smaller {
  const isLower = used.some(({ row }) => row >= was.at.row + was.at.rows);
  const isFurther = used.some(({ column }) => column >= was.at.column + was.at.columns);
  const to = { ...now, rows: isLower ? now.rows : was.at.rows, columns: isFurther ? now.columns : was.at.columns };
  return { now, was, to, used };
}

function headingsBeyond(was: Block, to: Block): Pick<Block, 'column' | 'columns' | 'rows'> {
  return { rows: 1, column: was.column + was.columns, columns: to.columns - was.columns };
}

/** Cells that a person filled in what a table got. */
function usedBeyond({ now, was }: Resized, blocks: readonly BlockSeen[], written: readonly Written[]): Place[] {
  return blocks.flatMap((block) => {
    const shared = block.sheetExists ? overlap(block.at, now) : null;
    if (!shared) return [];
    const places = Array.from({ length: shared.rows * shared.columns }, (_, i) => ({
      sheet: shared.sheet,
      row: shared.row + Math.floor(i / shared.columns),
      column: shared.column + (i % shared.columns),
    }));
    return places.filter((place) => {
      if (holdsCell(was.at, place.sheet, place.row, place.column) || isBlank(cellNow(block, place))) return false;
      return !written.some(({ at, put }) => {
        const cell = put[place.row - at.row]?.[place.column - at.column];
        return (
          holdsCell(at, place.sheet, place.row, place.column) && !isSkip(cell) && holdsPut(block, cell ?? null, place)
        );
      });
    });
  });
}

/** Every block that a write that fails half way has to be found by again. */
export function placesOf(
  receipt: Receipt,
  changes: Applying['changes'],
  looked: Applying['looked'],
  stood: Stood,
): Block[] {
  // Where a name pointed: it is put back there.
  const names = changes.flatMap((change) => {
    const at = change.do === 'name' ? blockOf(stood.nameFormulas.get(change.name.toLowerCase()) ?? '') : null;
    return at ? [at] : [];
  });
  const resized = changes.flatMap((change) =>
    change.do === 'lengthen' || change.do === 'widen' ? [tableNamed(change.table, looked).at] : [],
  );
  const tables = changes.flatMap((change) => (change.do === 'table' ? [tableBlock(change.at)] : []));
  const written = [...receipt.written, ...headingsPut(changes, looked), ...addedRows(changes, looked)];
  return [...written.map(({ at }) => at), ...resized, ...tables, ...names];
}

const NOWHERE: Block = { sheet: '', row: 0, column: 0, rows: 1, columns: 1 };

/** New columns, as blank cells into which headings were put. */
function headingsPut(changes: Applying['changes'], looked: Applying['looked']): Written[] {
  let seen = looked;
  return changes.flatMap((change) => {
    const before = seen;
    seen = afterResizing(seen, change);
    if (change.do !== 'widen') return [];
    const at = columnsBeside(tableNamed(change.table, before), change.headers.length);
    const body = Array.from({ length: at.rows - 1 }, () => change.headers.map(() => ({ skip: true }) as const));
    const blank = Array.from({ length: at.rows }, () => change.headers.map(() => null));
    return [{ at, before: blank, put: [[...change.headers], ...body] }];
  });
}

async function writeBack(
  applying: Applying,
  plan: PlanBack,
  before: Far,
  guarding: { guard: RevertGuard | null },
): Promise<void> {
  const { host, changes, options, quiet, kept } = applying;
  const held = (key: string): string | null => (before.settings ?? kept).get(key) ?? null;
  const shrunk = plan.resized.map(({ now, was, to }) => ({ name: was.name, from: now, to }));
  await inBatch(host, async (context) => {
    const looked = { plan, now: plan.now, stood: plan.stands, lists: new Set<BlockSeen>(), shrunk };
    const guard = startRevertGuard(context, host, looked);
    guarding.guard = guard;
    const { batch } = guard;
    quiet.begin(context);
    const first = (): void => {
      // Before cells, since a heading that is blanked inside a table would be given a name by Excel.
      for (const { name, to } of shrunk) context.workbook.tables.getItem(name).resize(rangeOf(context, to));
      for (const change of changes) {
        if (change.do === 'name') moveNameBack(context, change, before, plan.stands);
      }
    };
    await takeBack(batch, plan, guard, { first });
    // What is kept goes last, once nothing was found that a person did meanwhile: as long as anything of this fails, the receipt stays.
    if (plan.deleteSheets.length === 0) await batch.sendPart();
    for (const change of changes) {
      if (change.do === 'remember') setSetting(context, change.key, held(change.key));
    }
    quiet.end(context);
    if (options.receiptKey !== undefined) setSetting(context, options.receiptKey, held(options.receiptKey));
    await batch.send();
  });
}

function moveNameBack(
  context: Excel.RequestContext,
  { name, at }: Extract<Change, { do: 'name' }>,
  { stood, moved }: Far,
  stands: Stood,
): void {
  const formula = stood.nameFormulas.get(name.toLowerCase());
  if (formula === undefined) return;
  // One that does not point where we put it was not moved, or follows its cells by now.
  const points = blockOf(stands.nameFormulas.get(name.toLowerCase()) ?? '');
  if (points && ![at, standsNow(moved, at)].some((block) => sameBlock(block, points))) return;
  const now = moved.get(named(blockOf(formula) ?? NOWHERE));
  context.workbook.names.getItem(name).formula = now ? `=${fixed(now)}` : formula;
}
