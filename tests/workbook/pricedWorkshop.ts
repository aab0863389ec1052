/** The small invented workshop with prices, a currency and a tax, so that its jobs can be quoted. */
import type { Seen } from '../../src/workbook/port';
import type { MemoryPort } from './memoryPort';
import { workshop } from './workshop';

export const RATE_ROWS: readonly Readonly<Record<string, Seen>>[] = [
  { Work: 'Fit a grip', Per: 'Club', Price: 3.5, Minutes: 8, 'Included layers': 1, Cost: 0.5 },
  { Work: 'Fit a client’s own grip', Per: 'Club', Price: 5, Minutes: 8, Cost: 0.5 },
  { Work: 'Build-up tape', Per: 'Layer', Price: 0.4, Minutes: 1, Cost: 0.1 },
  { Work: 'Take off whole and keep the old grip', Per: 'Club', Price: 1.5, Minutes: 4, Cost: 0 },
  { Work: 'Weigh and read before and after', Per: 'Club', Price: 1, Minutes: 3, Cost: 0 },
  { Work: 'Put a reading right', Per: 'Club', Price: 2.5, Minutes: 5, Cost: 0 },
  { Work: 'Extend or trim', Per: 'Club', Price: 6, Minutes: 15, Cost: 1 },
];

/** In the order of the workshop's grips. */
export const STOCK_PRICES: readonly Readonly<Record<string, Seen>>[] = [
  { Price: 6.5, Cost: 3 },
  { Price: 7, Cost: 3.5 },
  { Price: 8.25, Cost: 4 },
];

/** In the order of the ways that a workbook starts with: what is stuck on is in the price of the work here. */
export const WAY_PRICES: readonly Readonly<Record<string, Seen>>[] = [
  { Price: 0 },
  { Price: 0 },
  { Price: 0 },
  { Price: 0 },
];

/** Types a value beside a setting. */
export function set(port: MemoryPort, setting: string, value: Seen): void {
  const settings = port.tableSeen('Settings');
  const row = (settings?.rows.findIndex((each) => each[0] === setting) ?? -1) + 1;
  if (row === 0) throw new Error(`no setting ${setting}`);
  port.type('Settings', row, 1, value);
}

export async function pricedWorkshop(): Promise<MemoryPort> {
  const port = await workshop();
  port.fillTable('Rates', RATE_ROWS);
  port.fillTable('Taxes', [{ Tax: 'Sales', 'Percent (%)': 20 }]);
  port.fillTable('Stock', STOCK_PRICES);
  port.fillTable('Weights', WAY_PRICES);
  port.fillTable('Jobs', [{ Job: '1042' }, { Job: '1043' }]);
  set(port, 'Currency', 'EUR');
  set(port, 'Shop name', 'Invented workshop');
  return port;
}
