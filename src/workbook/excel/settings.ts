import { ifArrived } from './arrived';
import { inBatch } from './host';
import type { ExcelHost } from './host';

/** What is kept under a key in the workbook's settings, as it is kept; `null` if nothing is. */
export async function recallSetting(host: ExcelHost, key: string): Promise<string | null> {
  return inBatch(host, async (context) => {
    const asked = askSettings(context, [key]);
    await context.sync();
    return asked()?.get(key) ?? null;
  });
}

/** Keeps a value under a key, or nothing. */
export async function rememberSetting(host: ExcelHost, key: string, value: string | null): Promise<void> {
  await inBatch(host, async (context) => {
    setSetting(context, key, value);
    await context.sync();
  });
}

/** Asks for settings as they are kept; the answer can be had after the round trip, `null` if the host gave none. */
export function askSettings(
  context: Excel.RequestContext,
  keys: readonly string[],
): () => ReadonlyMap<string, string | null> | null {
  const { settings } = context.workbook;
  const asked = keys.map((key) => ({ key, item: settings.getItemOrNullObject(key).load('value') }));
  return () =>
    ifArrived(() => new Map(asked.map(({ key, item }) => [key, item.isNullObject ? null : String(item.value)])));
}

/** Sets or takes away; what is to go is set first, for taking away what is not there would be an error. */
export function setSetting(context: Excel.RequestContext, key: string, value: string | null): void {
  const setting = context.workbook.settings.add(key, value ?? '');
  if (value === null) setting.delete();
}
