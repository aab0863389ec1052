/** Filling a page of values (a comparison, later a quote or a ticket) into a sheet of its own: one read, one write. */
import type { InTheWay, NotDone, Occupied } from './outcomes';
import { foreignCells, putOver } from './pageCells';
import { blockAt, fits, lookAgain, ownSheet, rememberPages, standsThere, untilKnown, withOlder } from './pagePlace';
import type { LookAgain, Target } from './pagePlace';
import { cellPrints, owners, rowPrints } from './planOwners';
import type { Owner } from './planOwners';
import { LAST_FILL_KEY } from './planPlaces';
import type { PlanEntry } from './planPlaces';
import { politely } from './polite';
import { PortError } from './port';
import type { Block, BlockSeen, Cell, Change, NameSeen, WorkbookPort } from './port';
import { TABLES } from './schema';
import { shopTables, tableQueries, tablesSeen } from './shop';
import type { Shop, ShopTables } from './shop';
import { askFirst } from './tableCells';

/** What is to stand in a sheet. */
export interface Page {
  /** Which page it is, among plans and all others: `compare:job:1042`. The same key again rewrites its page in place. */
  readonly key: string;
  readonly job: string | null;
  /** What a new sheet for it is called; not as any of those that are taken. */
  readonly sheetName: (taken: readonly string[]) => string;
  readonly cells: readonly (readonly Cell[])[];
  /** Rows that are a list, known as ours row by row; all others are, cell by cell. */
  readonly list: { readonly from: number; readonly rows: number };
  readonly dress: (at: Block) => readonly Change[];
  /** What taking it back is called. */
  readonly label: string;
}

export interface PageFilled {
  readonly done: true;
  readonly sheet: string;
  readonly block: Block;
}

export type PageDone =
  | PageFilled
  | NotDone
  | Occupied
  /** the page would run over the edge of the sheet */
  | { readonly done: false; readonly reason: 'noRoom' };

/** A page made from the tables as they are, or why there is none. */
export type MakePage<No extends { readonly done: false }> = (tables: ShopTables) => Page | No;

/**
 * Writes a page into a sheet of its own, or over itself where it stands already. Only blank cells, its own cells and those that
 * the person agreed to are written over.
 *
 * @param make called with the tables as last read, and again with what they hold when the page is written
 */
export async function fillPage<No extends { readonly done: false }>(
  port: WorkbookPort,
  shop: Shop,
  make: MakePage<No>,
  agreed?: InTheWay,
): Promise<PageDone | No> {
  return politely(async (): Promise<PageDone | No> => {
    const end = await untilKnown<PageDone | No>(port, shop, (known, tries, namesInUse) =>
      attempt({ port, known, make, agreed, tries, namesInUse }),
    );
    return end ?? { done: false, reason: 'port', error: new PortError('notLookedAt') };
  });
}

interface Attempt<No extends { readonly done: false }> {
  readonly port: WorkbookPort;
  readonly known: Shop;
  readonly make: MakePage<No>;
  readonly agreed: InTheWay | undefined;
  readonly tries: number;
  readonly namesInUse: readonly string[];
}

async function attempt<No extends { readonly done: false }>(of: Attempt<No>): Promise<PageDone | No | LookAgain> {
  const { port, known, make, agreed, tries, namesInUse } = of;
  const guess = make(known.tables);
  if ('done' in guess) return guess;
  const target = ownSheet(known, namesInUse, guess.key, guess.sheetName);
  const block = blockAt(target, sizeOf(guess));
  if (!fits(block)) return { done: false, reason: 'noRoom' };
  const look = await lookAt(port, target, block);
  // A page over a table is never meant: this is not asked but refused.
  if (!target.place && look.area.tables.length > 0) {
    return { done: false, reason: 'port', error: new PortError('tableInTheWay', look.area.tables) };
  }
  const page = make(look.tables);
  if ('done' in page) return page;
  if (page.key !== guess.key || !sameSize(page, guess) || !standsThere(target, look.name)) {
    return lookAgain(target, look.name);
  }
  const owner = owners(look.area, target.place);
  const question = askFirst(block, foreignCells(look.area, owner, block), agreed);
  // What is kept about our own cells may be out of date: then theirs and ours are told apart once more.
  if (question && tries === 1) return { namesInUse: [] };
  return question ?? write({ port, known, target, block, look, owner, page });
}

function sizeOf({ cells }: Page): Pick<Block, 'rows' | 'columns'> {
  return { rows: cells.length, columns: Math.max(1, ...cells.map((row) => row.length)) };
}

function sameSize(one: Page, other: Page): boolean {
  const [a, b] = [sizeOf(one), sizeOf(other)];
  return a.rows === b.rows && a.columns === b.columns;
}

interface Look {
  readonly tables: ShopTables;
  readonly name: NameSeen;
  /** The page's block, and what an older, larger page took. */
  readonly area: BlockSeen;
}

async function lookAt(port: WorkbookPort, target: Target, block: Block): Promise<Look> {
  const [name, area, ...tables] = await port.read([
    { read: 'name', name: target.name },
    { read: 'block', at: withOlder(target, block) },
    ...tableQueries(),
  ]);
  return { name, area, tables: shopTables(tables.slice(0, TABLES.length)) };
}

interface Ready {
  readonly port: WorkbookPort;
  readonly known: Shop;
  readonly target: Target;
  readonly block: Block;
  readonly look: Look;
  readonly owner: Owner[][];
  readonly page: Page;
}

async function write({ port, known, target, block, look, owner, page }: Ready): Promise<PageFilled> {
  await port.apply(
    [
      { do: 'sheet', name: target.sheet },
      ...page.dress(block),
      { do: 'write', at: look.area.at, cells: putOver(owner, page.cells) },
      { do: 'name', name: target.name, at: block },
      ...rememberPages(known, [entryOf(target, page)]),
      { do: 'show', at: { ...block, rows: 1, columns: 1 } },
    ],
    [look.area, ...tablesSeen(look.tables)],
    { label: page.label, receiptKey: LAST_FILL_KEY },
  );
  return { done: true, sheet: block.sheet, block };
}

function entryOf({ name }: Target, { key, job, cells, list }: Page): PlanEntry {
  const end = list.from + list.rows;
  return {
    name,
    key,
    job,
    ownSheet: true,
    cellPrints: cellPrints([...cells.slice(0, list.from), ...cells.slice(end)]),
    rowPrints: rowPrints(cells.slice(list.from, end)),
  };
}
