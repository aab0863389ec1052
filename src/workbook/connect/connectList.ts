/** Writing down that a list of the shop's stands for one of our tables, or that it does so no more. The list itself is not touched. */
import { roomNeeded } from '../addRows';
import { columnsAt } from '../headings';
import type { NotDone } from '../outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from '../planPlaces';
import { politely } from '../polite';
import type { Block, BlockSeen, Change, NameSeen, Put, Query, SheetContents, TableSeen, WorkbookPort } from '../port';
import { isBlank, readTable, type Row } from '../records';
import { HEADER_FORMAT } from '../setUp';
import type { TableSchema } from '../schema';
import { nameCells, named, sameName } from '../shared/address';
import { LIST_STEM } from '../shared/limits';
import { HEADINGS } from '../tables/headings';
import { headingRows, placesKey, placesText, type Connection } from './connections';
import type { List } from './lists';
import { isStandIn, standIn } from './standIn';
import type { ColumnMatch } from './types';

/** What a person said yes to. */
export interface ConnectAsked {
  readonly schema: TableSchema;
  readonly list: Pick<List, 'table' | 'at'>;
  /** Of a plain range: from its headings to its last row; of a table, null. */
  readonly within: Block | null;
  readonly matches: readonly ColumnMatch[];
}

export type ConnectDone =
  | { readonly done: true; readonly table: string; readonly list: string; readonly columns: number }
  | NotDone
  | HeadingsUnwritten
  /** columns that nothing can do without */
  | { readonly done: false; readonly reason: 'needed'; readonly headers: readonly string[] }
  /** the list is not as it was when it was matched */
  | { readonly done: false; readonly reason: 'listChanged' };

/** Why nothing can be written down in Headings. */
export type HeadingsUnwritten =
  /** the sheet Headings holds something else */
  | { readonly done: false; readonly reason: 'sheetInUse'; readonly cells: readonly string[] }
  /** a table Headings has other columns */
  | { readonly done: false; readonly reason: 'otherTable' };

/** Room on a new sheet: headings, and rows for all our tables. */
const NEW_ROWS = 120;
const WIDTH = HEADINGS.columns.length;

export async function connectList(port: WorkbookPort, asked: ConnectAsked): Promise<ConnectDone> {
  return politely(async (): Promise<ConnectDone> => {
    const { schema, matches } = asked;
    const needed = schema.columns.filter(
      ({ key, needed: must }) => must && !matches.some((match) => match.key === key),
    );
    if (needed.length > 0) return { done: false, reason: 'needed', headers: needed.map(({ header }) => header) };
    const list = asked.list.table ?? nameFor(schema);
    const connection: Connection = { schema, list, where: headingsAt(asked), columns: matches };
    const [behind, ...kept] = await lookAt(port, asked);
    if (!behind || !stillFits(connection, behind)) return { done: false, reason: 'listChanged' };
    const change = await headingsWith(port, kept, schema.name, headingRows(connection));
    if ('done' in change) return change;
    const naming: Change[] = asked.within ? [{ do: 'name', name: list, at: asked.within }] : [];
    const places: Change = { do: 'remember', key: placesKey(schema.name), value: placesText(matches) };
    await write(
      port,
      [...change.changes, ...naming, places],
      [...change.looked, behind],
      `Connection of ${schema.name}`,
    );
    const called = asked.within ? named(asked.within) : list;
    return { done: true, table: schema.name, list: called, columns: matches.length };
  });
}

/** Where the headings stand: rows come and go below them. */
function headingsAt({ list, within }: ConnectAsked): string {
  return named({ ...(within ?? list.at), rows: 1 });
}

/** @returns how many rows of Headings were blanked, in `columns` */
export async function disconnectList(port: WorkbookPort, table: string): Promise<ConnectDone> {
  return politely(async (): Promise<ConnectDone> => {
    const kept = await port.read(HEADINGS_QUERIES);
    const change = await headingsWith(port, kept, table, []);
    if ('done' in change) return change;
    await write(port, change.changes, change.looked, `End of the connection of ${table}`);
    return { done: true, table, list: '', columns: change.rows };
  });
}

/** The name of the cells of a plain list. */
export function nameFor({ name }: TableSchema): string {
  return `${LIST_STEM}${name}`;
}

const NEW_SHEET: Block = { sheet: HEADINGS.name, row: 0, column: 0, rows: NEW_ROWS, columns: WIDTH };
/** What is read to write down which columns are ours. */
export const HEADINGS_QUERIES = [
  { read: 'table', table: HEADINGS.name },
  { read: 'block', at: NEW_SHEET },
] as const;

export type Kept = readonly [TableSeen | null, BlockSeen];

async function lookAt(port: WorkbookPort, { list, within }: ConnectAsked) {
  const query: Query = within ? { read: 'block', at: within } : ({ read: 'table', table: list.table ?? '' } as const);
  const [behind, table, sheet] = await port.read<readonly Query[]>([query, ...HEADINGS_QUERIES]);
  return [behind as TableSeen | BlockSeen | null, table as TableSeen | null, sheet as BlockSeen] as const;
}

function stillFits(connection: Connection, behind: TableSeen | BlockSeen): boolean {
  const seen = standIn(connection, behind);
  return (
    isStandIn(seen) &&
    connection.columns.every(({ key, position }) => {
      return seen.matches.some((match) => match.key === key && match.position === position);
    })
  );
}

async function write(
  port: WorkbookPort,
  changes: readonly Change[],
  looked: readonly (TableSeen | BlockSeen)[],
  label: string,
): Promise<void> {
  // No plan is placed here, so taking this back must not touch the places.
  const marks: Change = { do: 'remember', key: PLANS_BEFORE_KEY, value: '' };
  await port.apply([...changes, marks], looked, { label, receiptKey: LAST_FILL_KEY });
}

/* ------------------------------------------------------------------ the table Headings */

export interface Headed {
  readonly changes: readonly Change[];
  readonly looked: readonly (TableSeen | BlockSeen)[];
  readonly rows: number;
}

/** What is to be changed for Headings to hold these rows of a table of ours, and no others of it. */
export async function headingsWith(
  port: WorkbookPort,
  [table, sheet]: Kept,
  name: string,
  rows: readonly (readonly string[])[],
): Promise<Headed | HeadingsUnwritten> {
  if (!table) return newHeadings(sheet, rows);
  const read = readTable(HEADINGS, [table.headers, ...table.rows], table.at.row + 1);
  if (!read.ok) return { done: false, reason: 'otherTable' };
  const old = read.value.rows.filter(({ values }) => sameName(String(values.get('table') ?? ''), name));
  const blank = table.rows.flatMap((row, at) => (row.every(isBlank) ? [at + 1] : []));
  const free = [...old.map(({ row }) => row), ...blank];
  const missing = rows.length - free.length;
  const below = missing > 0 ? await roomBelow(port, table, rows.length) : null;
  const { wide, widening } = await withPlaceColumn(port, table, below?.at.rows ?? 0);
  const more = below ? Array.from({ length: below.at.rows }, (_, at) => table.rows.length + at + 1) : [];
  const places = [...free, ...more];
  const changes = places
    .slice(0, Math.max(rows.length, old.length))
    .map((row, at) => rowAt(wide, row, rows[at] ?? null));
  const others = read.value.rows.filter((row) => !old.includes(row));
  const stand = await standingNow(port, wide, others);
  const longer: Change[] = below ? [{ do: 'lengthen', table: table.name, rows: below.at.rows }] : [];
  return {
    changes: [...widening.changes, ...longer, ...changes, ...stand],
    looked: [table, ...widening.looked, ...(below ? [below] : [])],
    rows: old.length,
  };
}

async function roomBelow(port: WorkbookPort, table: TableSeen, rows: number): Promise<BlockSeen | null> {
  const at = roomNeeded(table, rows);
  if (!at) return null;
  const [seen] = await port.read([{ read: 'block', at }]);
  return seen;
}

const WHERE = HEADINGS.columns[2];

/** Headings with the column that says where lists stand: workbooks that were connected before there was one get it where there is room. */
async function withPlaceColumn(port: WorkbookPort, table: TableSeen, more: number) {
  const none = { wide: table, widening: { changes: [], looked: [] } };
  if (columnsAt(HEADINGS, table.headers)(WHERE.key) >= 0) return none;
  const { at } = table;
  const [around] = await port.read([
    { read: 'block', at: { ...at, rows: at.rows + more + 1, columns: at.columns + 1 } },
  ]);
  const isFree = around.values.every((line, down) => down >= at.rows + more || isBlank(line.at(-1) ?? null));
  if (!isFree || table.filtered || around.merged.length > 0) return none;
  const wide: TableSeen = {
    ...table,
    at: { ...at, columns: at.columns + 1 },
    headers: [...table.headers, WHERE.header],
    rows: table.rows.map((row) => [...row, null]),
  };
  const beside: Block = { ...at, column: at.column + at.columns, columns: 1 };
  const changes: Change[] = [
    { do: 'widen', table: table.name, headers: [WHERE.header] },
    { do: 'format', at: beside, format: { number: WHERE.format } },
    { do: 'widths', sheet: at.sheet, column: beside.column, widths: [WHERE.width] },
  ];
  return { wide, widening: { changes, looked: [around] } };
}

/** Where the other lists stand by now, written where it is not what Headings says; of one that is not found it stays. */
async function standingNow(port: WorkbookPort, table: TableSeen, others: readonly Row[]): Promise<Change[]> {
  const place = columnsAt(HEADINGS, table.headers)(WHERE.key);
  const lists = [...new Set(others.map(({ values }) => String(values.get('list') ?? '')))];
  if (place < 0 || lists.length === 0) return [];
  const [contents, ...names] = await port.read<readonly Query[]>([
    { read: 'contents' },
    ...lists.map((name) => ({ read: 'name', name }) as const),
  ]);
  const tables = (contents as readonly SheetContents[]).flatMap((each) => each.tables);
  const stands = new Map(
    lists.map((list, i) => {
      const at = tables.find(({ name }) => sameName(name, list))?.at ?? (names[i] as NameSeen).at;
      return [list, at && named({ ...at, rows: 1 })] as const;
    }),
  );
  return others.flatMap(({ row, values }): Change[] => {
    const now = stands.get(String(values.get('list') ?? ''));
    if (!now || now === String(values.get(WHERE.key) ?? '')) return [];
    const { at } = table;
    return [
      {
        do: 'write',
        at: { ...at, row: at.row + row, rows: 1 },
        cells: [table.headers.map((_, i): Put => (i === place ? now : undefined))],
      },
    ];
  });
}

/** One row of Headings written; null blanks it. Columns of the owner's own stay as they are. */
function rowAt({ at, headers }: TableSeen, row: number, texts: readonly string[] | null): Change {
  const place = columnsAt(HEADINGS, headers);
  const line = headers.map((): Put => undefined);
  HEADINGS.columns.forEach(({ key }, i) => {
    const text = texts?.[i] ?? '';
    if (place(key) >= 0) line[place(key)] = text === '' ? null : text;
  });
  return { do: 'write', at: { ...at, row: at.row + row, rows: 1 }, cells: [line] };
}

function newHeadings(sheet: BlockSeen, rows: readonly (readonly string[])[]): Headed | HeadingsUnwritten {
  const filled = sheet.values.flatMap((line, down) =>
    line.flatMap((value, across) => (isBlank(value) ? [] : [{ sheet: HEADINGS.name, row: down, column: across }])),
  );
  if (filled.length > 0) return { done: false, reason: 'sheetInUse', cells: nameCells(filled) };
  const at = (count: number): Block => ({ ...NEW_SHEET, rows: count });
  const cells: Put[][] = [
    HEADINGS.columns.map(({ header }) => header),
    ...rows.map((row) => row.map((text) => (text === '' ? null : text))),
  ];
  const changes: Change[] = [
    { do: 'sheet', name: HEADINGS.name },
    { do: 'format', at: at(NEW_ROWS), format: { number: '@' } },
    { do: 'write', at: at(cells.length), cells },
    { do: 'table', name: HEADINGS.name, at: at(cells.length) },
    { do: 'format', at: at(1), format: HEADER_FORMAT },
    { do: 'widths', sheet: HEADINGS.name, column: 0, widths: HEADINGS.columns.map(({ width }) => width) },
    { do: 'freezeRows', sheet: HEADINGS.name, rows: 1 },
  ];
  return { changes, looked: [sheet], rows: 0 };
}
