/** The invented workshop's stock as its owner keeps it: a table of another name, under other headings, in ounces and millimetres. */
import type { Seen } from '../../../src/workbook/port';
import { STOCK } from '../../../src/workbook/schema';
import { connectList, type ConnectAsked, type ConnectDone } from '../../../src/workbook/connect/connectList';
import { beginMatch, asked as askedOf } from '../../../src/pane/view/tools/listsModel';
import { readList } from '../../../src/workbook/connect/lists';
import { setUp } from '../../../src/workbook/setUp';
import { connecting } from '../../../src/workbook/connecting';
import { MemoryPort } from '../memoryPort';
import { CLUB_ROWS, JOB_ROWS, spillPlan, STOCK_ROWS } from '../workshop';

export const OUNCE = 28.349523125;
export const INCH = 25.4;

export const HEADINGS_OF_LIST = [
  'Art. no',
  'Name',
  'Bore Ø (mm)',
  'Wt (oz)',
  'OD upper mm',
  'Length [mm]',
  'Qty',
  'Shelf',
];

function cellsOf(row: Readonly<Record<string, Seen>>): Seen[] {
  const number = (header: string): number => Number(row[header]);
  return [
    row.Item ?? null,
    `Grip ${String(row.Item)}`,
    number('Core (in)') * INCH,
    number('Mass (g)') / OUNCE,
    number('Upper diameter (in)') * INCH,
    number('Length (in)') * INCH,
    row['On hand'] ?? null,
    'left wall',
  ];
}

export const LIST_ROWS: readonly (readonly Seen[])[] = STOCK_ROWS.map(cellsOf);

/** A workbook with the shop's own table Inventory in place of Stock, not yet connected. */
export async function foreignWorkshop(): Promise<MemoryPort> {
  const port = new MemoryPort();
  port.typeTable('Inventory', 'Lager', [HEADINGS_OF_LIST, ...LIST_ROWS]);
  return port;
}

/** The same as plain cells: a title, a blank row, the headings, the rows, a sum below. */
export async function plainWorkshop(): Promise<MemoryPort> {
  const port = new MemoryPort();
  port.addSheet('Lager');
  port.type('Lager', 0, 0, 'What we keep');
  const total: Seen[] = ['Total', null, null, null, null, null, { error: '#REF!' }, null];
  port.typeRows('Lager', 2, 1, [HEADINGS_OF_LIST, ...LIST_ROWS]);
  port.typeRows('Lager', 3 + LIST_ROWS.length, 1, [
    total.map((cell) => (typeof cell === 'object' && cell ? 43 : cell)),
  ]);
  return port;
}

/** What the pane would ask for, with everything that was proposed. */
export async function askedFor(
  port: MemoryPort,
  list: Pick<ConnectAsked['list'], 'table' | 'at'>,
): Promise<ConnectAsked> {
  const read = await readList(port, list);
  const match = read && beginMatch(read, STOCK.name);
  if (!match) throw new Error('nothing to match');
  return askedOf(match);
}

export const INVENTORY = { table: 'Inventory', at: { sheet: 'Lager', row: 0, column: 0, rows: 4, columns: 8 } };
export const PLAIN = { table: null, at: { sheet: 'Lager', row: 0, column: 0, rows: 7, columns: 9 } };

export async function connectStock(port: MemoryPort, list: ConnectAsked['list'] = INVENTORY): Promise<ConnectDone> {
  return connectList(port, await askedFor(port, list));
}

/** Connected, the other tables made, and the jobs and clubs typed in. */
export async function connectedWorkshop(make = foreignWorkshop, list: ConnectAsked['list'] = INVENTORY) {
  const bare = await make();
  await connectStock(bare, list);
  const port = connecting(bare);
  await setUp(port);
  bare.fillTable('Jobs', JOB_ROWS);
  bare.fillTable('Clubs', CLUB_ROWS);
  bare.calculate = spillPlan;
  return { bare, port };
}
