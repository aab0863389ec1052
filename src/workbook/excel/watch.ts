import { inBatch } from './host';
import type { ExcelHost } from './host';
import type { Quiet } from './takeBack';

export interface Watching extends Quiet {
  watch(changed: (sheet: string) => void): () => void;
}

/** Tells of cells that a person changed; a host without such events never calls back, and nothing else suffers. */
export function createWatching(host: ExcelHost): Watching {
  let watchers = 0;
  const listen = (changed: (sheet: string) => void): (() => void) => {
    let stopped = false;
    const registered = register(host, (event) => (stopped ? Promise.resolve() : tell(host, event, changed)));
    watchers += 1;
    return () => {
      if (stopped) return;
      stopped = true;
      watchers -= 1;
      void registered.then((handler) => (handler ? unregister(host, handler) : undefined)).catch(() => undefined);
    };
  };
  // Where nobody listens the switch is left alone: a batch that fails would leave it off.
  const turn = (context: Excel.RequestContext, on: boolean): void => {
    if (watchers > 0) context.runtime.enableEvents = on;
  };
  return { watch: listen, begin: (context) => turn(context, false), end: (context) => turn(context, true) };
}

type Handler = OfficeExtension.EventHandlerResult<Excel.WorksheetChangedEventArgs>;

async function register(
  host: ExcelHost,
  handle: (event: Excel.WorksheetChangedEventArgs) => Promise<void>,
): Promise<Handler | null> {
  try {
    return await inBatch(host, async (context) => {
      const handler = context.workbook.worksheets.onChanged.add(handle);
      await context.sync();
      return handler;
    });
  } catch {
    return null;
  }
}

async function unregister(host: ExcelHost, handler: Handler): Promise<void> {
  const previousObjects = handler.context as unknown as OfficeExtension.ClientRequestContext;
  await inBatch(
    host,
    async (context) => {
      handler.remove();
      await context.sync();
    },
    { previousObjects },
  );
}

async function tell(
  host: ExcelHost,
  event: Excel.WorksheetChangedEventArgs,
  changed: (sheet: string) => void,
): Promise<void> {
  // Newer hosts say themselves who it was.
  if (event.triggerSource === 'ThisLocalAddin') return;
  try {
    const name = await inBatch(host, async (context) => {
      const sheet = context.workbook.worksheets.getItem(event.worksheetId).load('name');
      await context.sync();
      return sheet.name;
    });
    changed(name);
  } catch {
    // The sheet is gone already; its deletion is no change of a cell.
  }
}
