/** Lists that a workbook holds and that might stand for tables of ours: its tables, and cells in use on sheets without one. */
import type { Block, BlockSeen, NameSeen, Query, Seen, SheetContents, TableSeen, WorkbookPort } from '../port';
import { overlap, sameName } from '../shared/address';
import { TABLES } from '../schema';
import { LIST_TABLES } from './listTables';
import { CONNECTABLE, HEADINGS } from '../tables/headings';
import { ALWAYS, paced, type GoOn } from '../pace';
import { bestTableSteps, likenessOf } from './likeness';
import type { Connection } from './connections';
import { placeBelow, rowsGoingOn } from './rowsBelow';
import { LOOKED_ROWS } from './shape';
import { headingLines } from './standIn';
import type { HeadingRow, Likeness } from './types';

/** Rows that are looked at to tell what a list is. */
const SAMPLE_ROWS = 200;
/** Sheets beyond these are not looked at unasked. */
const MOST_LISTS = 40;
/** Columns beyond these belong to no list of things that are kept. */
const MOST_COLUMNS = 120;

/** A list of the shop's, as far as it has to be known to choose it. */
export interface List {
  /** The table's name; null for cells that are no table. */
  readonly table: string | null;
  readonly at: Block;
  /** Which of our tables it looks like; null where it looks like none. */
  readonly like: string | null;
  /** How many of our columns were found. */
  readonly columns: number;
}

/** A list with its cells. */
export interface ListRead {
  readonly list: List;
  /** Headings first, or whatever stands above them. */
  readonly rows: readonly (readonly Seen[])[];
}

/**
 * Lists of a workbook, those that look like something of ours first.
 *
 * @param goOn asked between the tables that a list is held against; stopped, the rest is not looked at
 */
export async function findLists(port: WorkbookPort, goOn: GoOn = ALWAYS): Promise<List[]> {
  const [contents] = await port.read([{ read: 'contents' }]);
  const places = contents.flatMap(placesOn).slice(0, MOST_LISTS);
  if (places.length === 0) return [];
  const blocks = await port.read(places.map(({ at }) => ({ read: 'block', at: sampleOf(at) }) as const));
  const lists: List[] = [];
  for (const [i, { table, at }] of places.entries()) {
    const best = await likest((blocks[i] as BlockSeen).values, goOn);
    const columns = best ? best.likeness.proposals.filter(({ position }) => position !== null).length : 0;
    lists.push({ table, at, like: best?.table ?? null, columns });
  }
  return [...lists.filter(({ like }) => like !== null), ...lists.filter(({ like }) => like === null)];
}

const CANDIDATES = LIST_TABLES.filter(({ name }) => (CONNECTABLE as readonly string[]).includes(name));

/** The table that a list looks most like, of those that it can stand for. */
async function likest(rows: readonly (readonly Seen[])[], goOn: GoOn) {
  return (await paced(bestTableSteps(rows, CANDIDATES), goOn)) ?? null;
}

function sampleOf(at: Block): Block {
  return { ...at, rows: Math.min(at.rows, SAMPLE_ROWS), columns: Math.min(at.columns, MOST_COLUMNS) };
}

function isOurs(name: string): boolean {
  return sameName(name, HEADINGS.name) || TABLES.some((schema) => sameName(schema.name, name));
}

/** Tables that are not ours, and the used cells of a sheet on which no table stands. */
function placesOn({ name, used, tables }: SheetContents): Pick<List, 'table' | 'at'>[] {
  const theirs = tables.filter((table) => !isOurs(table.name)).map((table) => ({ table: table.name, at: table.at }));
  if (tables.length > 0 || !used || used.rows < 2 || used.columns < 2) return theirs;
  return [{ table: null, at: { ...used, sheet: name } }];
}

/**
 * Where lists stand that are known by name, tables or named cells, by that name; those that stand nowhere any more are left out. They
 * are found on hidden sheets as well, and however many lists there are.
 */
export async function placesOfLists(
  port: WorkbookPort,
  names: readonly string[],
): Promise<ReadonlyMap<string, Pick<List, 'table' | 'at'>>> {
  if (names.length === 0) return new Map();
  const answers: readonly unknown[] = await port.read<readonly Query[]>([
    ...names.map((name) => ({ read: 'name', name }) as const),
    ...names.map((name) => ({ read: 'table', table: name }) as const),
  ]);
  const placed = names.flatMap((name, i): (readonly [string, Pick<List, 'table' | 'at'>])[] => {
    const table = answers[names.length + i] as TableSeen | null;
    const { at } = answers[i] as NameSeen;
    if (table) return [[name, { table: table.name, at: table.at }]];
    return at ? [[name, { table: null, at }]] : [];
  });
  return new Map(placed);
}

/** A list that a person points at: the table that the selection lies in, or the cells in use around it. */
export async function listAtSelection(port: WorkbookPort): Promise<Pick<List, 'table' | 'at'> | null> {
  const { at } = await port.selection();
  const [contents] = await port.read([{ read: 'contents' }]);
  const sheet = contents.find(({ name }) => sameName(name, at.sheet));
  const table = sheet?.tables.find((each) => overlap(each.at, at) !== null);
  if (table) return { table: table.name, at: table.at };
  if (!sheet?.used) return null;
  // One cell means the whole list around it; several are meant as they are.
  const meant = at.rows > 1 && at.columns > 1 ? overlap(at, sheet.used) : sheet.used;
  return meant && meant.rows > 1 ? { table: null, at: meant } : null;
}

/** Rows above plain cells that may hold their headings. */
const ROWS_ABOVE = LOOKED_ROWS - 1;

/**
 * The cells of a connected list as a person may match it again: with the rows above it, in which the right headings may stand, unless a
 * table is among them, and with those that go on below it.
 *
 * @returns the list, and which of its rows are its headings now
 */
export async function readConnected(
  port: WorkbookPort,
  list: Pick<List, 'table' | 'at'>,
  connection: Connection,
  goOn: GoOn = ALWAYS,
): Promise<{ readonly read: ListRead; readonly taken: HeadingRow } | null> {
  const { table, at } = list;
  if (table !== null) {
    const read = await readList(port, list, goOn);
    return read && { read, taken: HEADINGS_OF_TABLE };
  }
  const above = Math.min(at.row, ROWS_ABOVE);
  const around: Block = { ...at, row: at.row - above, rows: at.rows + above };
  const place = placeBelow(at);
  const [seen, below] = await port.read<readonly Query[]>([
    { read: 'block', at: { ...around, rows: above + 1 } },
    ...(place ? [{ read: 'block', at: place } as const] : []),
  ]);
  const free = (seen as BlockSeen).tables.length === 0;
  const first = free ? above : 0;
  const alone = await readList(port, { table, at: free ? around : at }, goOn);
  if (!alone) return null;
  const own = alone.rows.slice(first);
  const lines = headingLines(connection, own);
  const read = longer(
    alone,
    below as BlockSeen | undefined,
    rowsGoingOn(own, lines - 1, below as BlockSeen | undefined),
  );
  return { read, taken: { row: first + lines - 1, lines } };
}

/** The list with the first rows of what stands below it. */
function longer({ list, rows }: ListRead, below: BlockSeen | undefined, more: number): ListRead {
  const { at } = list;
  return {
    list: { ...list, at: { ...at, rows: at.rows + more } },
    rows: [...rows, ...(below?.values.slice(0, more) ?? [])],
  };
}

/** A table says itself which row its headings are. */
const HEADINGS_OF_TABLE: HeadingRow = { row: 0, lines: 1 };

/** All cells of a list. */
export async function readList(
  port: WorkbookPort,
  { table, at }: Pick<List, 'table' | 'at'>,
  goOn: GoOn = ALWAYS,
): Promise<ListRead | null> {
  if (table !== null) {
    const [seen] = await port.read([{ read: 'table', table }]);
    return seen && listRead(table, seen.at, [seen.headers, ...seen.rows], goOn);
  }
  const within = { ...at, columns: Math.min(at.columns, MOST_COLUMNS) };
  const [seen] = await port.read([{ read: 'block', at: within }]);
  return seen.sheetExists ? listRead(null, within, seen.values, goOn) : null;
}

async function listRead(
  table: string | null,
  at: Block,
  rows: readonly (readonly Seen[])[],
  goOn: GoOn,
): Promise<ListRead> {
  const best = await likest(rows.slice(0, SAMPLE_ROWS), goOn);
  return { list: { table, at, like: best?.table ?? null, columns: 0 }, rows };
}

/** How a list would be matched to a table of ours, below the headings that a person took, if any. */
export function likenessTo(table: string, { list, rows }: ListRead, chosen?: HeadingRow): Likeness | null {
  const schema = LIST_TABLES.find(({ name }) => sameName(name, table));
  return schema ? likenessOf(schema, rows, list.table === null ? chosen : HEADINGS_OF_TABLE) : null;
}
