import { PortError } from '../port';
import type { Receipt, TableSeen, Written } from '../port';
import { named } from '../shared/address';
import { afterResizing, tableNamed } from '../shared/lengthen';
import { planRevert } from '../shared/revert';
import type { RevertPlan } from '../shared/revert';
import { columnsBeside } from '../shared/widen';
import type { Applying } from './applying';
import { startBatch } from './batch';
import { hostWords } from './errors';
import { ChangedMeanwhile } from './guard';
import { inBatch } from './host';
import { askFreshTables, askNow, askResized } from './now';
import { askAll } from './read';
import { addedRows, putsOf, selfFilled, unfilled } from './selfFilled';
import { setSetting } from './settings';
import { holds } from './standing';
import type { Stood } from './standing';
import { listenAgain, takeBack } from './takeBack';
import { rangeOf } from './writeCells';

/** What was there before a failed batch, as far as its answer told. */
export interface Before {
  readonly stood: Stood | null;
  readonly settings: ReadonlyMap<string, string | null> | null;
}

/**
 * Puts back what a failed batch may have done, and throws: `putBack` when all is as before, `halfWritten`, naming cells, when
 * that failed too. Whatever the batch did not reach is found to be as it was, and is not written.
 */
export async function putBack(applying: Applying, receipt: Receipt, before: Before, cause: unknown): Promise<never> {
  const stood = before.stood ?? applying.stood;
  let left: readonly string[];
  try {
    const plan = await planBack(applying, receipt, stood, cause);
    await writeBack(applying, plan, stood, before);
    left = plan.left;
  } catch (error) {
    await listenAgain(applying.host, applying.quiet);
    throw new PortError('halfWritten', touched(receipt), `${hostWords(cause)}; ${hostWords(error)}`);
  }
  if (left.length > 0) throw new PortError('halfWritten', left, hostWords(cause));
  throw new PortError('putBack', [], hostWords(cause));
}

function touched(receipt: Receipt): string[] {
  return [...receipt.written.map(({ at }) => named(at)), ...receipt.madeSheets, ...receipt.madeTables];
}

interface PlanBack extends RevertPlan {
  /** Tables that became longer or wider, each as it was. */
  readonly resized: readonly TableSeen[];
}

async function planBack(
  { host, changes, looked }: Applying,
  receipt: Receipt,
  before: Stood,
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
  const ours = cause instanceof ChangedMeanwhile ? cause.corrected(asSeen) : asSeen;
  const { answer, stood } = await askAll(host, (asking) => {
    const now = askNow(asking, ours);
    const tables = askFreshTables(asking, changes, looked);
    const resized = askResized(asking, changes, looked);
    return () => ({ now: now(), tables: tables(), resized: resized() });
  });
  const now = { ...answer.now(stood), tables: answer.tables(before.tables) };
  const from = ours.written.length - added.length;
  const filled = ours.written.map((block, i) =>
    i < from ? [] : selfFilled(block, now.blocks[i], answer.resized, ours),
  );
  // A sheet that was not made has nothing to be put back.
  const written = ours.written.flatMap((block, i) => (now.blocks[i]?.sheetExists ? [block] : []));
  const blocks = now.blocks.filter((block) => block.sheetExists).map((block) => unfilled(block, filled.flat()));
  const plan = planRevert({ ...ours, written }, { ...now, blocks });
  const blanked = ours.written.flatMap((block, i) =>
    filled[i]?.length ? [{ at: block.at, cells: putsOf(block, filled[i]) }] : [],
  );
  return { ...plan, puts: [...plan.puts, ...blanked], resized: answer.resized };
}

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

async function writeBack(applying: Applying, plan: PlanBack, stood: Stood, before: Before): Promise<void> {
  const { host, changes, options, quiet, kept } = applying;
  const held = (key: string): string | null => (before.settings ?? kept).get(key) ?? null;
  await inBatch(host, async (context) => {
    const batch = startBatch(context, host);
    // First, since a heading that is blanked inside a table would be given a name by Excel.
    for (const { name, at } of plan.resized) context.workbook.tables.getItem(name).resize(rangeOf(context, at));
    await takeBack(batch, plan);
    for (const change of changes) {
      if (change.do === 'name') moveNameBack(context, change.name, stood);
      if (change.do === 'remember') setSetting(context, change.key, held(change.key));
    }
    quiet.end(context);
    // The receipt last: as long as anything of this fails, it stays.
    if (options.receiptKey !== undefined) setSetting(context, options.receiptKey, held(options.receiptKey));
    await batch.send();
  });
}

function moveNameBack(context: Excel.RequestContext, name: string, stood: Stood): void {
  const formula = stood.nameFormulas.get(name.toLowerCase());
  if (formula !== undefined) context.workbook.names.getItem(name).formula = formula;
}
