/** Taking back the last thing that was filled in. */
import type { UndoDone } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY, PLANS_KEY } from './planPlaces';
import { politely } from './polite';
import type { Receipt, WorkbookPort } from './port';
import { isPacked, unpackReceipt } from './shared/receipt';

/**
 * Puts back what stood in the workbook before the last fill, freeze or lesson; cells that a person changed since are left
 * and listed. It works once: afterwards there is nothing to take back. What was taken from stock goes back as a whole: where a part of it was
 * changed since, nothing is taken back, and it may be tried again.
 */
export async function undoLast(port: WorkbookPort): Promise<UndoDone> {
  return politely(async (): Promise<UndoDone> => {
    const receipt = await recallReceipt(port);
    if (!receipt) return { done: false, reason: 'nothingToUndo' };
    const reverted = await port.revert(receipt);
    const { label, changed } = reverted;
    if (changed) return { done: false, reason: 'changedSince', label, cells: changed };
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
  return (await recallReceipt(port))?.label ?? null;
}

/** The kept receipt; null when there is none, or when it was cut off or written by something else. */
async function recallReceipt(port: WorkbookPort): Promise<Receipt | null> {
  try {
    const text = await port.recall(LAST_FILL_KEY);
    if (text === null) return null;
    const receipt: unknown = isPacked(text) ? unpackReceipt(text) : JSON.parse(text);
    return isReceipt(receipt) ? receipt : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

function isReceipt(value: unknown): value is Receipt {
  const receipt = value as Partial<Receipt> | null;
  if (typeof receipt !== 'object' || receipt === null || typeof receipt.label !== 'string') return false;
  const { written, madeSheets, madeTables, madeNames, movedNames, dressed } = receipt;
  return [written, madeSheets, madeTables, madeNames, movedNames, dressed].every(Array.isArray);
}
