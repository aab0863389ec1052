import type { Receipt, Reverted } from '../port';
import { PortError } from '../port';
import { named } from '../shared/address';
import { planRevert } from '../shared/revert';
import type { RevertPlan } from '../shared/revert';
import { startBatch } from './batch';
import type { Batch } from './batch';
import { hostWords, toPortError } from './errors';
import { inBatch } from './host';
import type { ExcelHost } from './host';
import { askNow } from './now';
import { askAll } from './read';
import { rangeOf, writeCells } from './writeCells';

/** Takes a change back: one round trip to look, one to write. */
export async function revertReceipt(host: ExcelHost, receipt: Receipt, quiet: Quiet): Promise<Reverted> {
  const plan = await planFrom(host, receipt);
  let sent = 0;
  try {
    await inBatch(host, async (context) => {
      const batch = startBatch(context);
      quiet.begin(context);
      await takeBack(batch, plan);
      quiet.end(context);
      await batch.send().finally(() => {
        sent = batch.sent();
      });
    });
  } catch (error) {
    if (sent === 0) throw toPortError(error);
    throw new PortError(
      'halfWritten',
      receipt.written.map(({ at }) => named(at)),
      hostWords(error),
    );
  }
  return { label: receipt.label, restored: plan.restored, left: plan.left };
}

/** Keeps our own writes from being taken for a person's. */
export interface Quiet {
  begin(context: Excel.RequestContext): void;
  end(context: Excel.RequestContext): void;
}

async function planFrom(host: ExcelHost, receipt: Receipt): Promise<RevertPlan> {
  try {
    const { answer, stood } = await askAll(host, (asking) => askNow(asking, receipt));
    return planRevert(receipt, answer(stood));
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
  for (const { at, cells } of plan.puts) await writeCells(batch, at, cells);
  for (const at of plan.undress) {
    const range = rangeOf(batch.context, at);
    range.conditionalFormats.clearAll();
    range.dataValidation.clear();
    range.clear('Formats');
  }
  for (const name of plan.deleteSheets) workbook.worksheets.getItem(name).delete();
}
