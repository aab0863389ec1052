import { inBatch } from './host';
import type { ExcelHost } from './host';
import type { Quiet } from './takeBack';

export interface Watching extends Quiet {
  watch(changed: (sheet: string) => void): () => void;
}

/** Tells of cells that a person changed, and of sheets that were deleted; a host without such events never calls back, and nothing else suffers. */
export function createWatching(host: ExcelHost): Watching {
  let watchers = 0;
  const listen = (changed: (sheet: string) => void): (() => void) => {
    let stopped = false;
    const heard = (event: Heard): Promise<void> => (stopped ? Promise.resolve() : tell(host, event, changed));
    const registered = register(host, heard);
    watchers += 1;
    return () => {
      if (stopped) return;
      stopped = true;
      watchers -= 1;
      void registered.then((handlers) => (handlers ? unregister(host, handlers) : undefined)).catch(() => undefined);
    };
  };
  // Where nobody listens the switch is left alone: a batch that fails would leave it off.
  const turn = (context: Excel.RequestContext, on: boolean): void => {
    if (watchers > 0) context.runtime.enableEvents = on;
  };
  return { watch: listen, begin: (context) => turn(context, false), end: (context) => turn(context, true) };
}

type Heard = Excel.WorksheetChangedEventArgs | Excel.WorksheetDeletedEventArgs;
type Handlers = readonly [
  OfficeExtension.EventHandlerResult<Excel.WorksheetChangedEventArgs>,
  OfficeExtension.EventHandlerResult<Excel.WorksheetDeletedEventArgs>,
];

async function register(host: ExcelHost, handle: (event: Heard) => Promise<void>): Promise<Handlers | null> {
  try {
    return await inBatch(host, async (context) => {
      const { worksheets } = context.workbook;
      const handlers = [worksheets.onChanged.add(handle), worksheets.onDeleted.add(handle)] as const;
      await context.sync();
      return handlers;
    });
  } catch {
    return null;
  }
}

async function unregister(host: ExcelHost, handlers: Handlers): Promise<void> {
  const previousObjects = handlers[0].context as unknown as OfficeExtension.ClientRequestContext;
  await inBatch(
    host,
    async (context) => {
      for (const handler of handlers) handler.remove();
      await context.sync();
    },
    { previousObjects },
  );
}

async function tell(host: ExcelHost, event: Heard, changed: (sheet: string) => void): Promise<void> {
  if (event.type === 'WorksheetDeleted') {
    // Its name went with it.
    changed('');
    return;
  }
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
    // The sheet is gone already, which is told for itself.
  }
}
