import { PortError } from '../port';
import type { Selection } from '../port';
import { blockOf, contains } from '../shared/address';
import { inBatch } from './host';
import type { ExcelHost } from './host';

/** Where the person is. A second round trip is made only where a table touches the selection. */
export async function readSelection(host: ExcelHost): Promise<Selection> {
  return inBatch(host, async (context) => {
    const range = context.workbook.getSelectedRange().load('address');
    const touching = range.getTables().load('items/name');
    await context.sync();
    const at = blockOf(range.address);
    if (!at) throw new PortError('unsupported', [range.address], 'The selection is not one block.');
    if (touching.items.length === 0) return { at, table: null };
    const tables = touching.items.map((table) => ({ name: table.name, range: table.getRange().load('address') }));
    await context.sync();
    const holding = tables.find((table) => {
      const whole = blockOf(table.range.address);
      return whole !== null && contains(whole, at);
    });
    return { at, table: holding?.name ?? null };
  });
}
