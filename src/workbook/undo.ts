/** Taking back the last thing that was filled in. */
import type { UndoDone } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY, PLANS_KEY } from './planPlaces';
import { politely } from './polite';
import type { Receipt, WorkbookPort } from './port';
import { unpackReceipt } from './shared/receipt';

/**
 * Puts back what stood in the workbook before the last fill, freeze or lesson; cells that a person changed since are left
 * and listed. It works once: afterwards there is nothing to take back.
 */
export async function undoLast(port: WorkbookPort): Promise<UndoDone> {
  return politely(async (): Promise<UndoDone> => {
    const receipt = receiptFrom(await port.recall(LAST_FILL_KEY));
    if (!receipt) return { done: false, reason: 'nothingToUndo' };
    const reverted = await port.revert(receipt);
    await port.remember(LAST_FILL_KEY, null);
    const plansBefore = await port.recall(PLANS_BEFORE_KEY);
    if (plansBefore) {
      await port.remember(PLANS_KEY, plansBefore);
      await port.remember(PLANS_BEFORE_KEY, null);
    }
    return { done: true, reverted };
  });
}

/** The label of what `undoLast` would take back; null when there is nothing. Throws a PortError. */
export async function lastFill(port: WorkbookPort): Promise<string | null> {
  return receiptFrom(await port.recall(LAST_FILL_KEY))?.label ?? null;
}

function receiptFrom(text: string | null): Receipt | null {
  if (text === null) return null;
  try {
    return unpackReceipt(text);
  } catch {
    // Cut off or written by something else: there is nothing in it that could be taken back.
    return null;
  }
}
