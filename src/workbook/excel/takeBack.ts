import { atEase } from '../pace';
import type { Receipt, Reverted } from '../port';
import { PortError } from '../port';
import { fixed, named } from '../shared/address';
import { planRevertSteps, refuseProtectedRevert, revertedBy } from '../shared/revert';
import type { RevertPlan } from '../shared/revert';
import type { Batch } from './batch';
import { putAsFound } from './asFound';
import type { AsFound } from './asFound';
import { undressRange } from './dress';
import { didNothing, hostCode, hostWords, toPortError } from './errors';
import { ChangedMeanwhile } from './guard';
import { inBatch } from './host';
import type { ExcelHost } from './host';
import { askNow } from './now';
import { askAll } from './read';
import { startRevertGuard } from './revertGuard';
import type { LookedToRevert, RevertGuard } from './revertGuard';
import { holds } from './standing';
import { asIs, rangeOf, writeCells } from './writeCells';

/** How often it is begun anew because a person did something meanwhile. */
const mostTries = 3;

/**
 * Takes a change back: one round trip to look, one to write. Where something was not as it had been seen any more when it was written over, or
 * something that was to be changed is gone, everything is put back as it was found, and it begins anew. Sheets go in a request of their own,
 * once what stands on them was looked at again: what was on a sheet that went could not be put back.
 */
export async function revertReceipt(host: ExcelHost, receipt: Receipt, quiet: Quiet): Promise<Reverted> {
  for (let tries = 1; ; tries += 1) {
    const looked = await planFrom(host, receipt);
    const { plan } = looked;
    const end = await tryTakingBack(host, looked, quiet);
    if ('done' in end) return revertedBy(receipt, plan);
    const { error } = end;
    if (end.untouched) throw toPortError(error);
    await listenAgain(host, quiet);
    const words = hostWords(error);
    // All else is taken back by then, and there is nothing on them any more.
    if (end.onlySheets && !(error instanceof ChangedMeanwhile))
      throw new PortError('halfWritten', plan.deleteSheets, words);
    const theirs = await putAsFound(host, end.taken).catch((second: unknown) => {
      const cells = receipt.written.map(({ at }) => named(at));
      throw new PortError('halfWritten', cells, `${words}; ${hostWords(second)}`);
    });
    // Begun anew it would end so again.
    if (error instanceof PortError) throw error;
    const cells = [...new Set([...(end.changed?.cells ?? []), ...theirs])];
    const isOvertaken = cells.length > 0 || hostCode(error) === 'ItemNotFound';
    if (isOvertaken && tries < mostTries) continue;
    throw cells.length > 0 ? new PortError('notLookedAt', cells) : new PortError('putBack', [], words);
  }
}

type End =
  | { readonly done: true }
  | {
      readonly error: unknown;
      /** Nothing was done. */
      readonly untouched: boolean;
      /** Only sheets were left to go. */
      readonly onlySheets: boolean;
      readonly taken: AsFound;
      /** What a person did meanwhile, as far as that is known. */
      readonly changed: ChangedMeanwhile | null;
    };

async function tryTakingBack(host: ExcelHost, looked: LookedToRevert, quiet: Quiet): Promise<End> {
  const guarding: { guard: RevertGuard | null } = { guard: null };
  // A long one goes in parts, any of which may fail.
  const sent = (): number => guarding.guard?.batch.sent() ?? 0;
  let onlySheets = false;
  try {
    await inBatch(host, async (context) => {
      const guard = startRevertGuard(context, host, looked);
      guarding.guard = guard;
      quiet.begin(context);
      await takeBack(guard.batch, looked.plan, guard, { onlySheets: () => (onlySheets = true) });
      quiet.end(context);
      await guard.batch.send();
    });
    return { done: true };
  } catch (error) {
    const changed = error instanceof ChangedMeanwhile ? error : (guarding.guard?.salvaged() ?? null);
    const taken = guarding.guard?.taken(changed) ?? { cells: [], names: [], tables: [], parts: [] };
    const untouched = sent() === 0 || (sent() === 1 && didNothing(error));
    return { error, untouched, onlySheets, taken, changed };
  }
}

/** Turns the events back on after a batch that failed before it did so itself; where not even that works, nothing more can be done. */
export async function listenAgain(host: ExcelHost, quiet: Quiet): Promise<void> {
  try {
    await inBatch(host, async (context) => {
      quiet.end(context);
      await context.sync();
    });
  } catch {
    // What is told is why the batch failed, not this.
  }
}

/** Keeps our own writes from being taken for a person's. */
export interface Quiet {
  begin(context: Excel.RequestContext): void;
  end(context: Excel.RequestContext): void;
}

async function planFrom(host: ExcelHost, receipt: Receipt): Promise<LookedToRevert> {
  try {
    const { answer, stood } = await askAll(host, (asking) => askNow(asking, receipt));
    const now = answer(stood);
    const plan = await atEase(planRevertSteps(receipt, now));
    refuseProtectedRevert(plan, now, (sheet) => holds(stood.protectedSheets, sheet));
    const lists = new Set(now.blocks.filter((_, i) => receipt.written[i]?.rows !== undefined));
    return { plan, now, stood, lists };
  } catch (error) {
    throw toPortError(error);
  }
}

/**
 * Puts a plan into the batch, in the order in which it can be done.
 *
 * @param around what is done ahead of everything, and once nothing but sheets is left to go
 */
export async function takeBack(
  batch: Batch,
  plan: RevertPlan,
  guard: RevertGuard,
  around: { readonly first?: () => void; readonly onlySheets?: () => void },
): Promise<void> {
  const { workbook } = batch.context;
  await guard.lookFirst();
  around.first?.();
  // Back to plain cells: deleting the table would take the cells with it.
  for (const name of plan.removeTables) workbook.tables.getItem(name).convertToRange();
  for (const name of plan.removeNames) workbook.names.getItem(name).delete();
  for (const { name, at } of plan.moveNames) workbook.names.getItem(name).formula = `=${fixed(at)}`;
  for (const { name, at } of plan.narrow) workbook.tables.getItem(name).resize(rangeOf(batch.context, at));
  // A heading that is blanked inside a table would be given a name by Excel.
  for (const { blank } of plan.narrow) await writeCells(batch, blank, [Array<null>(blank.columns).fill(null)], asIs);
  for (const put of plan.puts) {
    await guard.look(put);
    await writeCells(batch, put.at, put.cells, asIs);
  }
  for (const { at, looks } of plan.undress) undressRange(rangeOf(batch.context, at), looks);
  if (plan.deleteSheets.length === 0) return;
  for (const name of plan.deleteSheets) await guard.lookAtSheet(name);
  await batch.sendPart();
  around.onlySheets?.();
  for (const name of plan.deleteSheets) workbook.worksheets.getItem(name).delete();
}
