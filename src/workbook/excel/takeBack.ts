import type { Receipt, Reverted } from '../port';
import { PortError } from '../port';
import { fixed, named } from '../shared/address';
import { planRevert, refuseProtectedRevert, revertedBy } from '../shared/revert';
import type { RevertPlan } from '../shared/revert';
import type { Batch } from './batch';
import { undressRange } from './dress';
import { didNothing, hostWords, toPortError } from './errors';
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
 * Takes a change back: one round trip to look, one to write. Where cells were not as they had been seen any more when they were written over,
 * they are put back as they were found, and it begins anew. Sheets go in a request of their own, once what stands on them was looked at
 * again: what was on a sheet that went could not be put back. Where tables go or become narrower, nothing is looked at again, since that
 * could not be put back either.
 */
export async function revertReceipt(host: ExcelHost, receipt: Receipt, quiet: Quiet): Promise<Reverted> {
  for (let tries = 1; ; tries += 1) {
    const looked = await planFrom(host, receipt);
    const { plan } = looked;
    const guarding: { guard: RevertGuard | null } = { guard: null };
    let sent = 0;
    try {
      await inBatch(host, async (context) => {
        const guard = startRevertGuard(context, host, looked);
        guarding.guard = guard;
        try {
          quiet.begin(context);
          await takeBack(guard.batch, plan, keepsTables(plan) ? guard : undefined);
          quiet.end(context);
          await guard.batch.send();
        } finally {
          // A long one goes in parts, any of which may fail.
          sent = guard.batch.sent();
        }
      });
      return revertedBy(receipt, plan);
    } catch (error) {
      if (sent === 0 || (sent === 1 && didNothing(error))) throw toPortError(error);
      await listenAgain(host, quiet);
      if (error instanceof ChangedMeanwhile && (await guarding.guard?.putAsFound(error))) {
        if (tries < mostTries) continue;
        throw new PortError('notLookedAt', error.cells);
      }
      throw new PortError(
        'halfWritten',
        receipt.written.map(({ at }) => named(at)),
        hostWords(error),
      );
    }
  }
}

function keepsTables({ removeTables, narrow, moveNames }: RevertPlan): boolean {
  return [removeTables, narrow, moveNames].every((list) => list.length === 0);
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
    const plan = planRevert(receipt, now);
    refuseProtectedRevert(plan, now, (sheet) => holds(stood.protectedSheets, sheet));
    const lists = new Set(now.blocks.filter((_, i) => receipt.written[i]?.rows !== undefined));
    return { plan, now, stood, lists };
  } catch (error) {
    throw toPortError(error);
  }
}

/** Puts a plan into the batch, in the order in which it can be done. */
export async function takeBack(batch: Batch, plan: RevertPlan, guard?: RevertGuard): Promise<void> {
  const { workbook } = batch.context;
  // Back to plain cells: deleting the table would take the cells with it.
  for (const name of plan.removeTables) workbook.tables.getItem(name).convertToRange();
  for (const name of plan.removeNames) workbook.names.getItem(name).delete();
  for (const { name, at } of plan.moveNames) workbook.names.getItem(name).formula = `=${fixed(at)}`;
  for (const { name, at } of plan.narrow) workbook.tables.getItem(name).resize(rangeOf(batch.context, at));
  // A heading that is blanked inside a table would be given a name by Excel.
  for (const { blank } of plan.narrow) await writeCells(batch, blank, [Array<null>(blank.columns).fill(null)], asIs);
  for (const put of plan.puts) {
    await guard?.look(put);
    await writeCells(batch, put.at, put.cells, asIs);
  }
  for (const { at, looks } of plan.undress) undressRange(rangeOf(batch.context, at), looks);
  if (guard && plan.deleteSheets.length > 0) {
    for (const name of plan.deleteSheets) await guard.lookAtSheet(name);
    await batch.sendPart();
  }
  for (const name of plan.deleteSheets) workbook.worksheets.getItem(name).delete();
}
