import type { WorkbookPort } from '../port';
import { toPortError } from './errors';
import { extrasOf } from './host';
import type { ExcelHost } from './host';
import { askAll, readQueries } from './read';
import { readSelection } from './selection';
import { recallSetting, rememberSetting } from './settings';
import { afterwards } from './standing';
import type { Stood } from './standing';
import { createWatching } from './watch';

/** What writes is loaded once something was read: a pane that is opened should not wait for it. */
const writing = () => import('./apply');
const packing = () => import('../shared/packed');
const takingBack = () => import('./takeBack');

/**
 * The workbook port on Excel. Needs ExcelApi 1.9; what later sets add is used where it is there.
 *
 * @example createExcelPort({ run: (options, batch) => Excel.run(options, batch), isSetSupported })
 */
export function createExcelPort(host: ExcelHost): WorkbookPort {
  const extras = extrasOf(host);
  const watching = createWatching(host);
  // What stands in the workbook, from the last round trip; forgotten whenever it may have changed in ways unknown.
  let stood: Stood | null = null;
  const kept = new Map<string, string | null>();
  const standing = async (): Promise<Stood> => stood ?? (await askAll(host, () => () => null)).stood;
  return {
    capabilities: { host: 'excel', spill: extras.spill, pageSetup: true, undoGroup: extras.undoGroup },
    read: (queries) =>
      saying(async () => {
        const read = await readQueries(host, queries);
        stood = read.stood;
        // What fails to load is said when it is needed.
        Promise.all([writing(), packing(), takingBack()]).catch(() => undefined);
        return read.answers;
      }),
    apply: (changes, looked, options) =>
      saying(async () => {
        const [{ applyChanges }, { packReceipt }] = await Promise.all([writing(), packing()]);
        const known = await standing();
        stood = null;
        const receipt = await applyChanges({
          host,
          extras,
          quiet: watching,
          changes,
          looked,
          options,
          stood: known,
          kept,
        });
        stood = afterwards(known, receipt, changes);
        for (const change of changes) if (change.do === 'remember') kept.set(change.key, change.value);
        if (options.receiptKey !== undefined) kept.set(options.receiptKey, packReceipt(receipt));
        return receipt;
      }),
    revert: (receipt) =>
      saying(async () => {
        const { revertReceipt } = await takingBack();
        stood = null;
        return revertReceipt(host, receipt, watching);
      }),
    selection: () => saying(() => readSelection(host)),
    recall: (key) =>
      saying(async () => {
        const value = await recallSetting(host, key);
        kept.set(key, value);
        return value;
      }),
    remember: (key, value) =>
      saying(async () => {
        await rememberSetting(host, key, value);
        kept.set(key, value);
      }),
    watch: watching.watch,
  };
}

/** Lets nothing but a PortError out; a mistake in what was asked for stays what it is. */
async function saying<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof RangeError || error instanceof TypeError ? error : toPortError(error);
  }
}
