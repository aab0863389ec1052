/**
 * A port for the pane while the spreadsheet is on its way: what stands in the workbook is told at once, from data; whatever changes
 * the workbook waits for the spreadsheet. From then on everything goes there.
 */
import type { WorkbookPort } from '../workbook/port';
import { PortError } from '../workbook/port';

/** @param spreadsheet the port of the spreadsheet, once it is there; what is asked for meanwhile fails when it does not come */
export function comingPort(data: WorkbookPort, spreadsheet: Promise<WorkbookPort>): WorkbookPort {
  let now = data;
  const there = spreadsheet.then(
    (port) => (now = port),
    () => {
      throw new PortError('host');
    },
  );
  // The page itself says what became of it; whoever asks for a change hears that nothing was written.
  there.catch(() => undefined);
  return {
    capabilities: data.capabilities,
    read: (queries) => now.read(queries),
    selection: () => now.selection(),
    recall: (key) => now.recall(key),
    apply: async (changes, looked, options) => (await there).apply(changes, looked, options),
    revert: async (receipt) => (await there).revert(receipt),
    remember: async (key, value) => (await there).remember(key, value),
    watch: (changed) => {
      let stop: (() => void) | null = null;
      let stopped = false;
      there.then(
        (port) => {
          if (!stopped) stop = port.watch(changed);
        },
        () => undefined,
      );
      return () => {
        stopped = true;
        stop?.();
      };
    },
  };
}
