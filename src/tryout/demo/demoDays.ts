/** The demo's days moved along with the calendar, so that its jobs lie ahead whenever the page is opened. */
import { TABLES } from '../../workbook/schema';
import { mondayOf } from '../../workbook/days';
import type { DemoTable } from './table';

/** The Monday on which the demo takes place, 11 May 2026, as a workbook counts days. */
export const DEMO_MONDAY = 46_153;

/** The tables with every day moved by whole weeks, from the demo's week into that of `today`. */
export function demoOn(
  today: number,
  tables: Readonly<Record<string, DemoTable>>,
): Readonly<Record<string, DemoTable>> {
  const by = mondayOf(today) - DEMO_MONDAY;
  return Object.fromEntries(Object.entries(tables).map(([name, table]) => [name, moved(name, table, by)]));
}

function moved(name: string, table: DemoTable, by: number): DemoTable {
  const columns = TABLES.find((each) => each.name === name)?.columns ?? [];
  const days = new Set(columns.filter(({ kind }) => kind === 'date').map(({ header }) => header));
  const [headers = []] = table;
  return table.map((row) =>
    row.map((cell, at) => (typeof cell === 'number' && days.has(String(headers[at])) ? cell + by : cell)),
  );
}
