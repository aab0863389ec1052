/** Taking back what was filled in, the newest first. */
import { bareOf } from './connecting';
import type { UndoDone } from './outcomes';
import { atEase, nextTurn } from './pace';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY, PLANS_KEY } from './planPlaces';
import { politely } from './polite';
import type { Change, Receipt, WorkbookPort } from './port';
import { keptReceiptSteps } from './shared/packed';
import { placesKeyOf, receiptKeyOf, STEPS_KEY, stepsIn, withStep, type UndoStep } from './undoSteps';

/* ------------------------------------------------------------------ keeping */

/** About how many characters a written cell takes in a receipt, before and after. */
const CHARACTERS_A_CELL = 8;

/**
 * The port as those who fill use it: each fill can be taken back after those that came later. A fill asks first which there are; what
 * it did, where places were before, and the list with it in, go into its one write.
 */
export function keepingSteps(port: WorkbookPort): WorkbookPort {
  return {
    // Whoever connects lists asks for the workbook as it is.
    ...('bare' in port ? { bare: keepingSteps(bareOf(port)) } : {}),
    capabilities: port.capabilities,
    read: (queries) => port.read(queries),
    apply: async (changes, looked, options) => {
      if (options.receiptKey !== LAST_FILL_KEY) return port.apply(changes, looked, options);
      const before = stepsIn(await port.recall(STEPS_KEY));
      const { steps, step, dropped } = withStep(before, { label: options.label, size: sizeOf(changes) });
      const own = changes.map((change) =>
        change.do === 'remember' && change.key === PLANS_BEFORE_KEY ? { ...change, key: placesKeyOf(step) } : change,
      );
      const begun = JSON.stringify([...steps.slice(0, -1), { ...step, begun: true }]);
      return port.apply(
        [...own, ...forgotten(dropped, step), { do: 'remember', key: STEPS_KEY, value: JSON.stringify(steps) }],
        looked,
        { ...options, receiptKey: receiptKeyOf(step), begun: { key: STEPS_KEY, value: begun } },
      );
    },
    revert: (receipt) => port.revert(receipt),
    selection: () => port.selection(),
    recall: (key) => port.recall(key),
    remember: (key, value) => port.remember(key, value),
    watch: (changed) => port.watch(changed),
  };
}

function sizeOf(changes: readonly Change[]): number {
  return changes.reduce((sum, change) => {
    if (change.do === 'write') return sum + change.at.rows * change.at.columns * CHARACTERS_A_CELL;
    return sum + (change.do === 'remember' && change.key === PLANS_BEFORE_KEY ? change.value.length : 0);
  }, 0);
}

/** What is kept of steps that are dropped takes no room any more; the key of the new one is written anyway. */
function forgotten(dropped: readonly UndoStep[], { slot }: UndoStep): Change[] {
  return dropped
    .filter((each) => each.slot !== slot)
    .flatMap((each) => [receiptKeyOf(each), placesKeyOf(each)])
    .map((key) => ({ do: 'remember', key, value: '' }));
}

/* ------------------------------------------------------------------ taking back */

/** A fill, and where what is kept of it stands. */
interface Kept {
  readonly receipt: Receipt;
  readonly receiptKey: string;
  readonly placesKey: string;
  /** The list once it is taken back; null: it stands in none. */
  readonly steps: readonly UndoStep[] | null;
  /** Whether it was not written to its end, as when the pane was closed meanwhile. */
  readonly begun: boolean;
}

/**
 * Puts back what stood in the workbook before the last fill, freeze or lesson that was not taken back yet; cells that a person changed
 * since are left and listed. Done again, it takes back the one before. What was taken from stock goes back as a whole: where a part of it
 * was changed since, nothing is taken back, and it may be tried again.
 */
export async function undoLast(port: WorkbookPort): Promise<UndoDone> {
  return politely(async (): Promise<UndoDone> => {
    const kept = await newest(port);
    if (!kept) return { done: false, reason: 'nothingToUndo' };
    const reverted = await port.revert(kept.receipt);
    const { label, changed } = reverted;
    if (changed) return { done: false, reason: 'changedSince', label, cells: changed };
    await port.remember(kept.receiptKey, null);
    const places = await port.recall(kept.placesKey);
    // Places are kept last: what stands there otherwise is of a fill before.
    if (places && !kept.begun) await port.remember(PLANS_KEY, places);
    if (places !== null) await port.remember(kept.placesKey, null);
    if (kept.steps) await port.remember(STEPS_KEY, JSON.stringify(kept.steps));
    const next = kept.steps?.at(-1)?.label ?? (await single(port))?.receipt.label ?? null;
    return { done: true, reverted, next, ...(kept.begun ? { begun: true } : {}) };
  });
}

/** The label of what `undoLast` would take back; null when there is nothing. Throws a PortError. */
export async function lastFill(port: WorkbookPort): Promise<string | null> {
  return (await newest(port))?.receipt.label ?? null;
}

/** The newest fill of the list of which what it did is still there, else the one that was kept alone. */
async function newest(port: WorkbookPort): Promise<Kept | null> {
  let steps = stepsIn(await port.recall(STEPS_KEY));
  for (let step = steps.at(-1); step; step = steps.at(-1)) {
    steps = steps.slice(0, -1);
    const receipt = await recallReceipt(port, receiptKeyOf(step));
    // Another pane may have filled at the same moment and used the same key.
    if (receipt?.label === step.label) {
      const keys = { receiptKey: receiptKeyOf(step), placesKey: placesKeyOf(step) };
      return { receipt, ...keys, steps, begun: step.begun === true };
    }
  }
  return single(port);
}

/** What a workbook kept that was filled before several fills were. */
async function single(port: WorkbookPort): Promise<Kept | null> {
  const receipt = await recallReceipt(port, LAST_FILL_KEY);
  return receipt && { receipt, receiptKey: LAST_FILL_KEY, placesKey: PLANS_BEFORE_KEY, steps: null, begun: false };
}

/** Characters of a receipt that is long. */
const LONG = 200_000;

/** A kept receipt; null when there is none, or when it was cut off or written by something else. */
async function recallReceipt(port: WorkbookPort, key: string): Promise<Receipt | null> {
  try {
    const text = await port.recall(key);
    if (!text) return null;
    // To take it over cost a piece of work already.
    if (text.length > LONG) await nextTurn();
    const receipt = await atEase(keptReceiptSteps(text));
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
