import type { Receipt, Reverted } from '../port';
import { PortError } from '../port';
import { fixed, named } from '../shared/address';
import { planRevert, refuseProtectedRevert, revertedBy } from '../shared/revert';
import type { RevertPlan } from '../shared/revert';
import { startBatch } from './batch';
import type { Batch } from './batch';
import { undressRange } from './dress';
import { didNothing, hostWords, toPortError } from './errors';
import { inBatch } from './host';
import type { ExcelHost } from './host';
import { askNow } from './now';
import { askAll } from './read';
import { holds } from './standing';
import { asIs, rangeOf, writeCells } from './writeCells';

/** Takes a change back: one round trip to look, one to write. */
export async function revertReceipt(host: ExcelHost, receipt: Receipt, quiet: Quiet): Promise<Reverted> {
  const plan = await planFrom(host, receipt);
  let sent = 0;
  try {
    await inBatch(host, async (context) => {
      const batch = startBatch(context, host);
      try {
        quiet.begin(context);
        await takeBack(batch, plan);
        quiet.end(context);
        await batch.send();
      } finally {
        // A long one goes in parts, any of which may fail.
        sent = batch.sent();
      }
    });
  } catch (error) {
    if (sent === 0 || (sent === 1 && didNothing(error))) throw toPortError(error);
    await listenAgain(host, quiet);
    throw new PortError(
      'halfWritten',
      receipt.written.map(({ at }) => named(at)),
      hostWords(error),
    );
  }
  return revertedBy(receipt, plan);
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

async function planFrom(host: ExcelHost, receipt: Receipt): Promise<RevertPlan> {
  try {
    const { answer, stood } = await askAll(host, (asking) => askNow(asking, receipt));
    const now = answer(stood);
    const plan = planRevert(receipt, now);
    refuseProtectedRevert(plan, now, (sheet) => holds(stood.protectedSheets, sheet));
    return plan;
  } catch (error) {
    throw toPortError(error);
  }
}

/** Puts a plan into the batch, in the order in which it can be done. */
export async function takeBack(batch: Batch, plan: RevertPlan): Promise<void> {
  const { workbook } = batch.context;
  // Back to plain cells: deleting the table would take the cells with it.
  for (const name of plan.removeTables) workbook.tables.getItem(name).convertToRange();
  for (const name of plan.removeNames) workbook.names.getItem(name).delete();
  for (const { name, at } of plan.moveNames) workbook.names.getItem(name).formula = `=${fixed(at)}`;
  for (const { name, at } of plan.narrow) workbook.tables.getItem(name).resize(rangeOf(batch.context, at));
  // A heading that is blanked inside a table would be given a name by Excel.
  for (const { blank } of plan.narrow) await writeCells(batch, blank, [Array<null>(blank.columns).fill(null)], asIs);
  for (const { at, cells } of plan.puts) await writeCells(batch, at, cells, asIs);
  for (const { at, looks } of plan.undress) undressRange(rangeOf(batch.context, at), looks);
  for (const name of plan.deleteSheets) workbook.worksheets.getItem(name).delete();
}
