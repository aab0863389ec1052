import { PortError } from '../port';
import type { Block, Receipt, TableSeen, Written } from '../port';
import { blockOf, fixed, nameCells, named, sameName } from '../shared/address';
import type { Place } from '../shared/cellNow';
import { afterResizing, tableNamed } from '../shared/lengthen';
import { planRevert } from '../shared/revert';
import type { RevertPlan } from '../shared/revert';
import { columnsBeside } from '../shared/widen';
import { tableBlock } from '../shared/refuse';
import { aligned } from './aligned';
import type { Applying } from './applying';
import { attempted, withoutPersons } from './attempted';
import type { Part } from './attempted';
import { startBatch } from './batch';
import { hostWords } from './errors';
import { ChangedMeanwhile } from './guard';
import { inBatch } from './host';
import { askFreshTables, askNow, askResized } from './now';
import { standsNow } from './places';
import type { Moved } from './places';
import { askAll } from './read';
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
 * Puts back what a failed batch may have done, and throws: `putBack` when all is as before, `halfWritten`, naming cells, when
 * that failed too. Whatever the batch did not reach is found to be as it was, and is not written.
 */
export async function putBack(
  applying: Applying,
  receipt: Receipt,
  before: Before & HowFar,
  cause: unknown,
): Promise<never> {
  const stood = before.stood ?? applying.stood;
  let left: readonly string[];
  let theirs: readonly string[];
  try {
    const plan = await planBack(applying, receipt, { ...before, stood }, cause);
    await writeBack(applying, plan, stood, before);
    ({ left, theirs } = plan);
  } catch (error) {
    await listenAgain(applying.host, applying.quiet);
    throw new PortError('halfWritten', touched(receipt), `${hostWords(cause)}; ${hostWords(error)}`);
  }
  if (left.length > 0) throw new PortError('halfWritten', left, hostWords(cause));
  if (theirs.length > 0) throw new PortError('notLookedAt', theirs);
  throw new PortError('putBack', [], hostWords(cause));
}

function touched(receipt: Receipt): string[] {
  return [...receipt.written.map(({ at }) => named(at)), ...receipt.madeSheets, ...receipt.madeTables];
}

interface PlanBack extends RevertPlan {
  /** Tables that became longer or wider, each as it was. */
  readonly resized: readonly TableSeen[];
  /** Cells that a person changed before they were to be written. */
  readonly theirs: readonly string[];
}

async function planBack(
  { host, changes, looked }: Applying,
  receipt: Receipt,
  { stood: before, moved, parts, sizes }: HowFar & { readonly stood: Stood },
  cause: unknown,
): Promise<PlanBack> {
  const added = addedRows(changes, looked);
  const asSeen: Receipt = {
    ...receipt,
    madeSheets: receipt.madeSheets.filter((name) => !holds(before.sheets, name)),
    madeNames: receipt.madeNames.filter((name) => !holds(before.names, name)),
    // Found by where they stand instead: a table may have been made and not been named.
    madeTables: [],
    // Put back as their formulas were, to the letter.
    movedNames: [],
    // Nobody can have sorted anything meanwhile, so every cell is where it was.
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
    const tables = askFreshTables(asking, changes, looked, (at) => standsNow(moved, at));
    const resized = askResized(asking, changes, looked, ({ name, at }) => {
      return moved.get(named(at)) ?? sizes.get(name.toLowerCase()) ?? at;
    });
    return () => ({ now: now(), tables: tables(), resized: resized() });
  });
  const now = { ...answer.now(stood), tables: answer.tables(before.tables) };
  const placed = asPut.written.map((each, i) => {
    const block = now.blocks[i];
    if (!block?.sheetExists || !moved.has(named(each.at))) return each;
    const [again, isLost] = aligned(corrected.written[i] ?? each, block, parts);
    if (isLost) lost.push(named(block.at));
    return again;
  });
  const from = placed.length - added.length;
  const filled = placed.map((block, i) =>
    i < from ? [] : selfFilled(block, now.blocks[i], answer.resized, { ...asPut, written: placed }),
  );
  const blocks = now.blocks.map((block) => unfilled(block, filled.flat()));
  const theirs: Place[] = [];
  // A sheet that was not made has nothing to be put back.
  const written = placed.flatMap((each, i) => {
    const [block, was] = [blocks[i], asPut.written[i]];
    if (!block?.sheetExists) return [];
    if (was && moved.has(named(was.at))) return [each];
    const [ours, persons] = withoutPersons(each, block, parts);
    theirs.push(...persons);
    return [ours];
  });
  const there = blocks.filter((block) => block.sheetExists);
  const plan = planRevert({ ...asPut, written }, { ...now, blocks: there });
  const blanked = placed.flatMap((block, i) =>
    filled[i]?.length ? [{ at: block.at, cells: putsOf(block, filled[i]) }] : [],
  );
  // Where rows were moved, looks that were given stay: nobody knows any more whose they would be taken from.
  // On a sheet that was protected meanwhile none can be taken, and none of what is to be put back may fail for it.
  const sheets = [...[...moved.values()].map(({ sheet }) => sheet), ...stood.protectedSheets];
  const undress = plan.undress.filter(({ at }) => !sheets.some((sheet) => sameName(sheet, at.sheet)));
  return {
    ...plan,
    left: [...plan.left, ...lost],
    undress,
    puts: [...plan.puts, ...blanked],
    resized: answer.resized,
    theirs: nameCells(theirs),
  };
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

/** Headings of new columns, as what was put into blank cells. */
function headingsPut(changes: Applying['changes'], looked: Applying['looked']): Written[] {
  let seen = looked;
  return changes.flatMap((change) => {
    const before = seen;
    seen = afterResizing(seen, change);
    if (change.do !== 'widen') return [];
    const at = { ...columnsBeside(tableNamed(change.table, before), change.headers.length), rows: 1 };
    return [{ at, before: [change.headers.map(() => null)], put: [[...change.headers]] }];
  });
}

async function writeBack(applying: Applying, plan: PlanBack, stood: Stood, before: Before & HowFar): Promise<void> {
  const { host, changes, options, quiet, kept } = applying;
  const held = (key: string): string | null => (before.settings ?? kept).get(key) ?? null;
  await inBatch(host, async (context) => {
    const batch = startBatch(context, host);
    // First, since a heading that is blanked inside a table would be given a name by Excel.
    for (const { name, at } of plan.resized) context.workbook.tables.getItem(name).resize(rangeOf(context, at));
    await takeBack(batch, plan);
    for (const change of changes) {
      if (change.do === 'name') moveNameBack(context, change.name, stood, before.moved);
      if (change.do === 'remember') setSetting(context, change.key, held(change.key));
    }
    quiet.end(context);
    // The receipt last: as long as anything of this fails, it stays.
    if (options.receiptKey !== undefined) setSetting(context, options.receiptKey, held(options.receiptKey));
    await batch.send();
  });
}

function moveNameBack(context: Excel.RequestContext, name: string, stood: Stood, moved: Moved): void {
  const formula = stood.nameFormulas.get(name.toLowerCase());
  if (formula === undefined) return;
  const now = moved.get(named(blockOf(formula) ?? NOWHERE));
  context.workbook.names.getItem(name).formula = now ? `=${fixed(now)}` : formula;
}
