/** Taking over one of the shop's own constants: into Tape, Stock or Settings, the old value told. */
import {
  DEFAULT_SETTINGS,
  illegal,
  legalRange,
  roundTo,
  type Issue,
  type Offer,
  type ShopSettings,
} from '../core/index';
import { addRows, roomNeeded } from './addRows';
import { columnsAt, folded } from './headings';
import type { InTheWay, NotDone, Occupied } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { BlockSeen, Cell, Change, TableSeen, WorkbookPort } from './port';
import { readSettings, settingValues } from './readSettings';
import { columnOf, SETTING_ROWS, SETTINGS, STOCK, TAPE, type TableSchema } from './schema';
import { matrixOf, shopTables, tableQueries, type ShopTables } from './shop';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';
import type { TableCell } from './tableCell';

export interface ConstantTaken {
  readonly done: true;
  /** Where it stands now: `Tape`, `Build-up tape`, `Weighed strip (g)`. */
  readonly table: string;
  readonly row: string;
  readonly heading: string;
  /** What the cell held; null where it was blank. */
  readonly was: Cell;
  readonly now: number;
}

export type ConstantDone =
  | ConstantTaken
  | NotDone
  | Occupied
  /** no tape weighs that, no grip balances there, or may by the interval */
  | { readonly done: false; readonly reason: 'impossible'; readonly issue: Issue }
  /** Stock or Tape has no row of that name any more */
  | { readonly done: false; readonly reason: 'rowGone'; readonly table: string; readonly row: string }
  /** there is already that value */
  | { readonly done: false; readonly reason: 'sameAlready'; readonly table: string; readonly row: string };

const DECIMALS: Readonly<Record<Offer['field'], number>> = { layerGrams: 2, balanceInches: 2, balanceRatio: 3 };

/** Which cells a constant goes into. */
interface Aim {
  readonly schema: TableSchema;
  readonly by: string;
  readonly row: string;
  readonly values: Readonly<Record<string, number>>;
  /** The one of them that is told. */
  readonly told: string;
}

type Offered = Pick<Offer, 'field' | 'item' | 'suggested' | 'low' | 'high'>;

/** Writes what was offered, if it can be at all. A formula of the shop's is replaced only when they agreed. */
export async function takeConstant(
  port: WorkbookPort,
  offer: Offered,
  agreed: InTheWay | null = null,
): Promise<ConstantDone> {
  return politely(async (): Promise<ConstantDone> => {
    const tables = shopTables(await port.read(tableQueries()));
    const issue = impossible(tables, offer);
    if (issue) return { done: false, reason: 'impossible', issue };
    const aim = aimOf(tables, offer);
    const table = Object.values(tables).find((each) => each && folded(each.name) === folded(aim.schema.name));
    if (!table) return { done: false, reason: 'tableMissing', table: aim.schema.name };
    const at = columnsAt(aim.schema, table.headers);
    const lacking = [aim.by, ...Object.keys(aim.values)].filter((key) => at(key) < 0);
    if (lacking.length > 0) {
      const headers = lacking.map((key) => columnOf(aim.schema, key).header);
      return { done: false, reason: 'columnMissing', table: table.name, headers };
    }
    const row = table.rows.findIndex((cells) => folded(cells[at(aim.by)]) === folded(aim.row)) + 1;
    const now = aim.values[aim.told] ?? 0;
    const end = { table: table.name, row: aim.row, heading: table.headers[at(aim.told)] ?? '' };
    if (row === 0) {
      if (aim.schema !== SETTINGS) return { done: false, reason: 'rowGone', table: table.name, row: aim.row };
      await addSetting(port, table, aim, now);
      return { done: true, ...end, was: null, now };
    }
    const wanted = Object.entries(aim.values).map(([key, value]): TableCell => ({ row, column: at(key), value }));
    const cells = changedCells(table, wanted);
    if (cells.length === 0) return { done: false, reason: 'sameAlready', table: table.name, row: aim.row };
    const question = askFirst(null, formulaCells(table, cells), agreed);
    if (question) return question;
    await write(port, writeCells(table, cells, [at(aim.by)]), [table], labelOf(aim));
    return { done: true, ...end, was: heldCell(table, row, at(aim.told)), now };
  });
}

/** By the tape and its length as they stand now, which may be others than when it was offered. */
function impossible(tables: ShopTables, { field, item, suggested, low, high }: Offered): Issue | undefined {
  const settings = settingsOf(tables) ?? DEFAULT_SETTINGS;
  const value = roundTo(suggested, DECIMALS[field]);
  return illegal(
    item === undefined ? FIELDS[field] : `${FIELDS[field]} of ${item}`,
    { value, low, high },
    legalRange(field, settings),
  );
}

const FIELDS: Readonly<Record<Offer['field'], string>> = {
  layerGrams: 'Layer mass',
  balanceInches: 'Balance point',
  balanceRatio: 'Balance point as a part of the length',
};

function settingsOf({ Settings, Tape }: ShopTables): ShopSettings | undefined {
  const read = readSettings(Settings && matrixOf(Settings), Tape && matrixOf(Tape));
  return read.ok ? read.value.settings : undefined;
}

function aimOf(tables: ShopTables, { field, item, suggested }: Offered): Aim {
  const value = roundTo(suggested, DECIMALS[field]);
  switch (field) {
    case 'layerGrams': {
      const { name, tapedInches } = buildUpTape(tables);
      const values = { weighedStrip: value, weighedLength: tapedInches };
      return { schema: TAPE, by: 'tape', row: name, values, told: 'weighedStrip' };
    }
    case 'balanceInches':
      return { schema: STOCK, by: 'item', row: item ?? '', values: { balance: value }, told: 'balance' };
    case 'balanceRatio':
      return { schema: SETTINGS, by: 'setting', row: RATIO.name, values: { value }, told: 'value' };
  }
}

const RATIO = SETTING_ROWS.find(({ key }) => key === 'gripBalance') as (typeof SETTING_ROWS)[number];

/** Which row of Tape is the build-up tape, and how long a strip of it is taken to be. */
function buildUpTape(tables: ShopTables): { readonly name: string; readonly tapedInches: number } {
  const values = settingValues(tables.Settings && matrixOf(tables.Settings));
  const name = values.ok ? values.value.values.get('buildUpTape') : undefined;
  return {
    name: typeof name === 'string' ? name : 'Build-up tape',
    tapedInches: (settingsOf(tables) ?? DEFAULT_SETTINGS).tapedInches,
  };
}

/** An older Settings lacks the row: it is added at its end. */
async function addSetting(port: WorkbookPort, table: TableSeen, aim: Aim, value: number): Promise<void> {
  const room = roomNeeded(table, 1);
  const [below = null] = room ? await port.read([{ read: 'block', at: room }]) : [];
  const at = columnsAt(SETTINGS, table.headers);
  const cells = Array<Cell | undefined>(table.headers.length).fill(undefined);
  const put = (key: string, cell: Cell): void => {
    if (at(key) >= 0) cells[at(key)] = cell;
  };
  put('setting', aim.row);
  put('value', value);
  put('meaning', RATIO.meaning);
  await write(port, addRows(table, [cells], below), below ? [table, below] : [table], labelOf(aim));
}

function labelOf({ row }: Aim): string {
  return `Own constant: ${row}`;
}

async function write(
  port: WorkbookPort,
  changes: readonly Change[],
  looked: readonly (TableSeen | BlockSeen)[],
  label: string,
): Promise<void> {
  await port.apply([...changes, { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }], looked, {
    label,
    receiptKey: LAST_FILL_KEY,
  });
}

function heldCell({ rows }: TableSeen, row: number, column: number): Cell {
  const held = rows[row - 1]?.[column];
  return held === undefined || (typeof held === 'object' && held !== null) ? null : held;
}
