/** What everything that is done with the shelves shares: looking at them, and one write of the ledger's rows and new counts. */
import { fail, ok, plainNumber, type Issue, type Movement, type Result, type Shelf, type Stocked } from '../core/index';
import { folded } from './headings';
import { lackingNow } from './lackingNow';
import { rowsEntered } from './movements';
import type { InTheWay, NotDone, Occupied } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import type { BlockSeen, Change, TableSeen, WorkbookPort } from './port';
import { shelfTable, type Shelved } from './shelves';
import { shopTables, tableQueries, type ShopTables } from './shop';
import type { UseDone } from './stockDone';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';
import { MOVEMENTS } from './tables/movements';

/** What reserving is asked with. */
export interface StockAct {
  /** Day as a workbook counts it. */
  readonly today: number;
  readonly agreed?: InTheWay | null | undefined;
}

type Missing = Exclude<NotDone, { reason: 'port' }>;
type Unreadable = Extract<UseDone, { reason: 'unreadable' }>;

export const unreadable = (issue: Issue): Unreadable => ({ done: false, reason: 'unreadable', issue });

export async function lookAtAll(port: WorkbookPort): Promise<ShopTables> {
  return shopTables(await port.read(tableQueries()));
}

/** The ledger as a table that rows can be written into. */
export function ledgerIn({ Movements: table }: ShopTables): TableSeen | Missing {
  if (!table) return { done: false, reason: 'tableMissing', table: MOVEMENTS.name };
  const headers = lackingNow(MOVEMENTS, table.headers);
  return headers.length > 0 ? { done: false, reason: 'columnMissing', table: MOVEMENTS.name, headers } : table;
}

export interface ToWrite {
  readonly ledger: TableSeen;
  readonly movements: readonly Movement[];
  readonly counts?: readonly { readonly stocked: Stocked; readonly onHand: number }[];
  readonly shelved?: readonly Shelved[];
  readonly today: number;
  readonly note?: string;
  readonly agreed: InTheWay | null;
}

/** Changes, and what was looked at for them. */
export interface StockChanges {
  readonly changes: readonly Change[];
  readonly looked: readonly (TableSeen | BlockSeen)[];
}

/** Rows of the ledger and new counts, as changes of one write. Throws a PortError. */
export async function toWrite(port: WorkbookPort, of: ToWrite): Promise<StockChanges | Occupied> {
  const { ledger, movements, counts = [], shelved = [], today, note = '', agreed } = of;
  const rows = await rowsEntered(port, ledger, movements, { date: today, note });
  const cells = counts.flatMap(({ stocked, onHand }) => {
    const place = shelved.find((each) => each.stocked === stocked && each.column >= 0);
    return place ? [{ place, cell: { row: place.row, column: place.column, value: onHand } }] : [];
  });
  const tables = [...new Set(cells.map(({ place }) => place.table))];
  const perTable = tables.map((table) => ({
    table,
    named: cells.flatMap(({ place }) => (place.table === table ? [place.nameColumn] : [])).slice(0, 1),
    cells: changedCells(
      table,
      cells.filter(({ place }) => place.table === table).map(({ cell }) => cell),
    ),
  }));
  const question = askFirst(
    null,
    perTable.flatMap((each) => formulaCells(each.table, each.cells)),
    agreed,
  );
  if (question) return question;
  const counted = perTable
    .flatMap((each) => writeCells(each.table, each.cells, each.named))
    .map((change): Change => (change.do === 'write' ? { ...change, whole: true } : change));
  return { changes: [...rows.changes, ...counted], looked: [ledger, ...rows.looked, ...tables] };
}

export async function writeStock(port: WorkbookPort, of: ToWrite, label: string): Promise<Occupied | null> {
  if (of.movements.length === 0) return null;
  const ready = await toWrite(port, of);
  if ('done' in ready) return ready;
  await port.apply([...ready.changes, { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }], ready.looked, {
    label,
    receiptKey: LAST_FILL_KEY,
  });
  return null;
}

/** A count that cannot be read, or a thing listed twice, among what is to be moved. */
export function badCount(shelved: readonly Shelved[], movements: readonly Movement[]): Issue | undefined {
  const moved = new Set(movements.map(({ shelf, item }) => `${shelf} ${folded(item)}`));
  const concerned = shelved.filter(({ stocked }) => moved.has(`${stocked.shelf} ${folded(stocked.item)}`));
  const issue = concerned.flatMap(({ issues }) => issues)[0];
  if (issue) return issue;
  const twice = concerned.find(
    ({ stocked }, at) =>
      concerned.findIndex(
        (other) => other.stocked.shelf === stocked.shelf && folded(other.stocked.item) === folded(stocked.item),
      ) < at,
  );
  return twice && { code: 'duplicate', field: shelfTable(twice.stocked.shelf), got: twice.stocked.item };
}

/** @param isCount a count mends a cell that cannot be read */
export function placeOf(
  shelved: readonly Shelved[],
  { shelf, item }: { readonly shelf: Shelf; readonly item: string },
  isCount = false,
): Result<Shelved> {
  const found = shelved.filter(({ stocked }) => stocked.shelf === shelf && folded(stocked.item) === folded(item));
  const [first] = found;
  if (!first) return fail({ code: 'unknownItem', field: 'Item', got: item });
  if (found.length > 1) return fail({ code: 'duplicate', field: shelfTable(shelf), got: item });
  const [issue] = first.issues;
  return issue && !isCount ? fail(issue) : ok(first);
}

export function readQuantity(text: string): Result<number> {
  if (text.trim() === '') return fail({ code: 'blank', field: 'Quantity', expected: 'how many' });
  const value = plainNumber(text);
  return value === undefined
    ? fail({ code: 'notNumber', field: 'Quantity', got: text, expected: 'a number alone, such as 12 or 2,5' })
    : ok(value);
}
