/** A small invented shop, put into a workbook through whatever port it has. */
import type { BlockSeen, Cell, TableSeen, WorkbookPort } from '../../src/workbook/port';
import { setUp } from '../../src/workbook/setUp';
import { RATE_ROWS, STOCK_PRICES, WAY_PRICES } from '../workbook/pricedWorkshop';
import { club, STOCK_ROWS } from '../workbook/workshop';

export type Row = Readonly<Record<string, Cell>>;
export type ShopRows = Readonly<Record<string, readonly Row[]>>;

export const TODAY = 46_100;

/** What people call things in the shop. */
export interface ShopNames {
  readonly job: string;
  /** A job whose club was here before. */
  readonly otherJob: string;
  readonly customer: string;
  readonly grip: string;
  readonly otherGrip: string;
  /** The first club of the job. */
  readonly club: string;
  /** Stands wherever anything can be noted. */
  readonly note: string | null;
}

export const PLAIN: ShopNames = {
  job: '1042',
  otherJob: '1044',
  customer: 'Ivo Brandt',
  grip: 'FERN-M',
  otherGrip: 'MOSS-S',
  club: 'Driver',
  note: null,
};

const bare = (row: Row): Row => ({ ...row, 'New grip': null, Layers: null });

/** Headings under which a person writes what they like. */
const NOTED: Readonly<Record<string, readonly string[]>> = {
  Stock: ['Description', 'Model', 'Texture', 'Supplier'],
  Jobs: ['Notes', 'Authorised by'],
  Clubs: ['Tag', 'Damage'],
};

/** Two jobs under way, one that came back, two that are done. */
export function shopRows(names: ShopNames): ShopRows {
  const { job, otherJob, customer, club: first, note } = names;
  const grips = [names.grip, names.otherGrip];
  const clubRow = (...of: Parameters<typeof club>): Row => ({
    ...(club(...of) as Row),
    'New grip': names.grip,
    'Old grip': names.otherGrip,
  });
  const rows: ShopRows = {
    Stock: STOCK_ROWS.map(
      (row, at) =>
        ({ ...row, ...STOCK_PRICES[at], Item: grips[at] ?? row.Item, 'Reorder at': at === 2 ? 5 : null }) as Row,
    ),
    Jobs: [
      { Job: job, Customer: customer, Due: TODAY + 9 },
      { Job: '1043', Customer: 'Tamsin Orrell' },
      { Job: otherJob, Customer: customer },
      { Job: '1040', Customer: customer, Status: 'Done', Closed: 45_500 },
      { Job: '1041', Customer: 'Mara Selby', Status: 'Done', Closed: 45_400 },
    ],
    Clubs: [
      clubRow(job, first, 'Driver', 45.5, 0.6, 'D3', 305),
      clubRow(job, '7 iron', 'Iron', 37, 0.6, 'D2', 415),
      clubRow(job, 'Pitching wedge', 'Wedge', 35.5, 0.61, 'D3.5', 445),
      clubRow('1043', '7 iron', 'Iron', 37, 0.58, 'D1', 410),
      clubRow('', 'Old putter', 'Putter', 34, 0.58, 'E1', 520),
      bare(clubRow(otherJob, first, 'Driver', 45, 0.6, 'D2', 305)),
      clubRow('1040', first, 'Driver', 45, 0.6, 'D2', 305),
      clubRow('1041', 'Driver', 'Driver', 45, 0.6, 'D3', 305),
    ],
    Rates: RATE_ROWS as readonly Row[],
    Weights: WAY_PRICES as readonly Row[],
    Taxes: [{ Tax: 'Sales', 'Percent (%)': 20 }],
  };
  if (note === null) return rows;
  const noted = Object.entries(rows).map(([name, each]) => {
    const headers = NOTED[name] ?? [];
    return [name, each.map((row, at) => ({ ...row, ...Object.fromEntries(headers.map((h) => [h, `${note}${at}`])) }))];
  });
  return Object.fromEntries(noted) as ShopRows;
}

function shopSettings({ note }: ShopNames): Readonly<Record<string, Cell>> {
  const usual = { Currency: 'EUR', 'Shop name': note ?? 'Invented workshop' };
  return note === null ? usual : { ...usual, Address: `${note}; Sampletown`, Terms: `${note} and no more` };
}

/** Sets a workbook up and fills its tables, as a person would who types below their ends. */
export async function makeShop(port: WorkbookPort, names: ShopNames = PLAIN): Promise<void> {
  const end = await setUp(port);
  if (!end.done) throw new Error(`not set up: ${end.reason}`);
  for (const [name, each] of Object.entries(shopRows(names))) await fillBody(port, name, each);
  const table = await tableOf(port, 'Settings');
  for (const [name, value] of Object.entries(shopSettings(names))) {
    const row = table.rows.findIndex(([setting]) => setting === name) + 1;
    if (row === 0) throw new Error(`no setting ${name}`);
    await typeInto(port, 'Settings', row, { Value: value });
  }
}

async function tableOf(port: WorkbookPort, name: string): Promise<TableSeen> {
  const [table] = await port.read([{ read: 'table', table: name }]);
  if (!table) throw new Error(`no table ${name}`);
  return table;
}

/** Writes rows into the body of a table from its top, making it longer where it must be. */
export async function fillBody(port: WorkbookPort, name: string, rows: readonly Row[]): Promise<void> {
  const table = await tableOf(port, name);
  const more = rows.length - table.rows.length;
  const below = { ...table.at, row: table.at.row + table.at.rows, rows: Math.max(1, more) };
  const looked: (TableSeen | BlockSeen)[] = [table];
  if (more > 0) looked.push(...(await port.read([{ read: 'block', at: below }])));
  const cells = rows.map((row) => {
    const odd = Object.keys(row).filter((header) => !table.headers.includes(header));
    if (odd.length > 0) throw new Error(`${name} has no column ${odd.join(', ')}`);
    return table.headers.map((header) => row[header]);
  });
  const at = { ...table.at, row: table.at.row + 1, rows: rows.length };
  await port.apply(
    [...(more > 0 ? [{ do: 'lengthen', table: name, rows: more } as const] : []), { do: 'write', at, cells }],
    looked,
    { label: 'typed' },
  );
}

/** Types into cells of a body row, from 1. */
export async function typeInto(port: WorkbookPort, name: string, row: number, values: Row): Promise<void> {
  const table = await tableOf(port, name);
  const at = { ...table.at, row: table.at.row + row, rows: 1 };
  const cells = [table.headers.map((header) => values[header])];
  await port.apply([{ do: 'write', at, cells }], [table], { label: 'typed' });
}
