/** The demo workshop, put into a workbook the way its owner would have: set up first, then filled in. */
import type { Block, BlockSeen, Cell, Change, TableSeen, WorkbookPort } from '../workbook/port';
import { columnsAt } from '../workbook/headings';
import { SETTINGS } from '../workbook/schema';
import { setUp } from '../workbook/setUp';
import { demoOn } from './demo/demoDays';
import { demoTables } from './demo/demoTables';
import type { DemoTable } from './demo/table';

/** Names of the sheets, in the order of their tabs. */
export const demoSheets: readonly string[] = Object.keys(demoTables);

/**
 * Makes the tables and fills in the demo's rows.
 *
 * @param today as a workbook counts days; the demo takes place in this week
 */
export async function fillDemo(port: WorkbookPort, today: number): Promise<void> {
  const tables = demoOn(today, demoTables);
  await setUp(port);
  const names = Object.keys(demoTables);
  const looks = names.flatMap((name) => {
    const rows = (tables[name] ?? []).length;
    const at: Block = { sheet: name, row: 0, column: 0, rows: rows + 1, columns: (tables[name]?.[0] ?? []).length };
    return [{ read: 'table', table: name } as const, { read: 'block', at } as const];
  });
  const seen = (await port.read(looks)) as readonly (TableSeen | BlockSeen | null)[];
  const looked = seen.filter((each) => each !== null);
  const changes = names.flatMap((name) => {
    const table = looked.find((each): each is TableSeen => 'headers' in each && each.name === name);
    return table ? [...rowsInto(table, tables[name] ?? []), ...fitted(table)] : [];
  });
  const clubs: Block = { sheet: 'Clubs', row: 1, column: 0, rows: 1, columns: 1 };
  await port.apply([...changes, { do: 'show', at: clubs }], looked, { label: 'Demo' });
}

/** The rows of the demo in the table's body, and what does not fit right below it, where the table grows over it. */
function rowsInto({ at }: TableSeen, demo: DemoTable): Change[] {
  const [, ...rows] = demo;
  const room = at.rows - 1;
  return [rowsAt(at, 1, rows.slice(0, room)), rowsAt(at, at.rows, rows.slice(room))].filter(
    ({ cells }) => cells.length > 0,
  );
}

/** Rows are made as high as their texts when these are told to wrap: that of Settings is told again, now that texts stand in it. */
function fitted({ name, at, headers }: TableSeen): Change[] {
  const across = name === SETTINGS.name ? columnsAt(SETTINGS, headers)('value') : -1;
  if (across < 0) return [];
  return [{ do: 'format', at: { ...at, column: at.column + across, columns: 1 }, format: { wrap: true } }];
}

function rowsAt(table: Block, down: number, rows: DemoTable): Extract<Change, { do: 'write' }> {
  const cells = rows.map((row) => row.map((cell): Cell => (cell === '' ? null : cell)));
  return { do: 'write', at: { ...table, row: table.row + down, rows: rows.length }, cells };
}
