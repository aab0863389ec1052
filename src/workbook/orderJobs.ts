/** Orders: placing one, what came of it as a whole, and giving up what is still to come. Each one read and one write. */
import {
  cancelRows,
  happenTo,
  nextOrder,
  openOrders,
  orderRows,
  placedOrders,
  quantityIssue,
  sharesOf,
  type Movement,
  type OrderLine,
  type PlacedOrder,
  type Result,
  type Shelf,
  type Stocked,
} from '../core/index';
import { columnsAt, folded } from './headings';
import { readMovements } from './movements';
import { politely } from './polite';
import type { TableSeen, WorkbookPort } from './port';
import { columnOf } from './schema';
import { readShelves, type Shelved } from './shelves';
import type { ShopTables } from './shop';
import type { OrderDone, PlaceDone } from './stockDone';
import { stockOf } from './stockScope';
import { badCount, ledgerIn, lookAtAll, placeOf, readQuantity, unreadable, writeStock } from './stockWrites';
import type { StockAct } from './stockWrites';
import { MOVEMENTS } from './tables/movements';

type NoLedger = Exclude<ReturnType<typeof ledgerIn>, TableSeen>;

/** The ledger, with columns for the number of an order and whom it went to. */
function orderLedger(tables: ShopTables): TableSeen | NoLedger {
  const ledger = ledgerIn(tables);
  if ('done' in ledger) return ledger;
  const at = columnsAt(MOVEMENTS, ledger.headers);
  const headers = ['order', 'supplier'].filter((key) => at(key) < 0).map((key) => columnOf(MOVEMENTS, key).header);
  return headers.length > 0 ? { done: false, reason: 'columnMissing', table: MOVEMENTS.name, headers } : ledger;
}

interface Looked {
  readonly ledger: TableSeen;
  readonly shelved: readonly Shelved[];
  readonly orders: readonly PlacedOrder[];
}

/** The ledger, the shelves and every order that was placed, from one read. Throws a PortError. */
async function lookAtOrders(port: WorkbookPort): Promise<Looked | NoLedger | ReturnType<typeof unreadable>> {
  const tables = await lookAtAll(port);
  const ledger = orderLedger(tables);
  if ('done' in ledger) return ledger;
  const known = readMovements(ledger);
  if (!known.ok) return unreadable(known.issue);
  return { ledger, shelved: readShelves(tables), orders: placedOrders(known.value) };
}

/** What was shown to be ordered from one supplier. */
export interface PlaceAsked {
  readonly supplier: string;
  readonly lines: readonly Pick<OrderLine, 'shelf' | 'item' | 'quantity'>[];
}

/**
 * Writes down that what is to be ordered from a supplier has been ordered, under the next number. Done again it changes nothing, since
 * what is on order is not to be ordered any more; where the tables say another order than was shown, nothing is written.
 */
export async function placeOrder(
  port: WorkbookPort,
  { supplier, lines }: PlaceAsked,
  { today, agreed = null }: StockAct,
): Promise<PlaceDone> {
  return politely(async (): Promise<PlaceDone> => {
    const tables = await lookAtAll(port);
    const ledger = orderLedger(tables);
    if ('done' in ledger) return ledger;
    const seen = stockOf({ tables });
    if (!seen.ok) return unreadable(seen.issue);
    const wanted = seen.value.orders.find((each) => folded(each.supplier) === folded(supplier));
    if (!wanted) return { done: true, order: null, supplier, movements: [] };
    if (!sameLines(wanted.lines, lines)) return { done: false, reason: 'orderChanged', supplier };
    const order = nextOrder(seen.value.placed);
    const movements = orderRows(wanted, order);
    const bad = badCount(seen.value.shelved, movements);
    if (bad) return unreadable(bad);
    const question = await writeStock(port, { ledger, movements, today, agreed }, `Order ${order} placed`);
    return question ?? { done: true, order, supplier: wanted.supplier, movements };
  });
}

function sameLines(now: PlaceAsked['lines'], shown: PlaceAsked['lines']): boolean {
  const texts = (lines: PlaceAsked['lines']): string =>
    JSON.stringify(lines.map(({ shelf, item, quantity }) => [shelf, folded(item), quantity]).sort());
  return texts(now) === texts(shown);
}

export interface OrderThing {
  readonly shelf: Shelf;
  readonly item: string;
  readonly kind: 'ordered' | 'cancelled';
  /** As typed. */
  readonly quantity: string;
  readonly note: string;
  /** As typed. Ordered: blank for the next number; cancelled: undefined for whichever waits for it, the earliest first. */
  readonly order?: string | undefined;
}

/** One thing was ordered beside what the shelves ask for, or part of what is to come of it is given up. */
export async function orderThing(
  port: WorkbookPort,
  asked: OrderThing,
  { today, agreed = null }: StockAct,
): Promise<PlaceDone> {
  return politely(async (): Promise<PlaceDone> => {
    const looked = await lookAtOrders(port);
    if ('done' in looked) return looked;
    const { ledger, shelved, orders } = looked;
    const place = placeOf(shelved, asked, true);
    if (!place.ok) return unreadable(place.issue);
    const { stocked } = place.value;
    const quantity = readQuantity(asked.quantity);
    if (!quantity.ok) return unreadable(quantity.issue);
    const wrong = quantityIssue(stocked, quantity.value, undefined);
    if (wrong) return unreadable(wrong);
    const rows = thingRows(stocked, asked, quantity.value, orders);
    if (!rows.ok) return unreadable(rows.issue);
    const movements = rows.value;
    const { order = '', supplier = '' } = movements[0] ?? {};
    const note = asked.note.trim();
    const label = `${stocked.item} ${asked.kind === 'ordered' ? 'ordered' : 'cancelled'}`;
    const question = await writeStock(port, { ledger, movements, today, note, agreed }, label);
    return question ?? { done: true, order, supplier, movements };
  });
}

function thingRows(
  { shelf, item, supplier }: Stocked,
  { kind, order }: OrderThing,
  quantity: number,
  orders: readonly PlacedOrder[],
): Result<Movement[]> {
  const row = { kind, job: '', club: '', shelf, item, round: 1 } as const;
  const named = order?.trim() || undefined;
  if (kind === 'ordered')
    return { ok: true, value: [{ ...row, quantity, order: named ?? nextOrder(orders), supplier }] };
  const shares = sharesOf({ shelf, item, quantity }, orders, named);
  const beyond = shares.find((share) => share.order === undefined);
  if (beyond) {
    const there = quantity - beyond.quantity;
    const expected = there > 0 ? `no more than the ${there} on order` : 'something that is on order';
    return { ok: false, issue: { code: 'outOfRange', field: 'Quantity', got: quantity, expected } };
  }
  return { ok: true, value: shares.map((share) => ({ ...row, ...share, supplier: share.supplier || undefined })) };
}

/** Gives up all that is still to come of an order. Done again it changes nothing. */
export async function cancelOrder(port: WorkbookPort, order: string, act: StockAct): Promise<OrderDone> {
  return endOrder(port, order, act, `Order ${order} cancelled`, (placed) => ({
    ok: true,
    value: { movements: cancelRows(placed), counts: [] },
  }));
}

/** All that is still to come of an order came: its rows and every count, or nothing. Done again it changes nothing. */
export async function takeInOrder(port: WorkbookPort, order: string, act: StockAct): Promise<OrderDone> {
  return endOrder(port, order, act, `Order ${order} arrived`, arrivedAll);
}

interface Ended {
  readonly movements: readonly Movement[];
  readonly counts: readonly { readonly stocked: Stocked; readonly onHand: number }[];
}

function arrivedAll({ order, supplier, lines }: PlacedOrder, shelved: readonly Shelved[]): Result<Ended> {
  const movements: Movement[] = [];
  const counts: Ended['counts'][number][] = [];
  for (const line of lines.filter(({ outstanding }) => outstanding > 0)) {
    const place = placeOf(shelved, line);
    if (!place.ok) return place;
    const { stocked } = place.value;
    const after = happenTo(stocked, { kind: 'arrived', quantity: line.outstanding }, true);
    if (!after.ok) return after;
    const { movement, onHand } = after.value;
    movements.push({ ...movement, order, supplier: supplier || undefined });
    if (onHand !== undefined) counts.push({ stocked, onHand });
  }
  return { ok: true, value: { movements, counts } };
}

async function endOrder(
  port: WorkbookPort,
  order: string,
  { today, agreed = null }: StockAct,
  label: string,
  end: (placed: PlacedOrder, shelved: readonly Shelved[]) => Result<Ended>,
): Promise<OrderDone> {
  return politely(async (): Promise<OrderDone> => {
    const looked = await lookAtOrders(port);
    if ('done' in looked) return looked;
    const { ledger, shelved } = looked;
    const placed = openOrders(looked.orders).find((each) => folded(each.order) === folded(order));
    if (!placed) return { done: true, order, movements: [] };
    const rows = end(placed, shelved);
    if (!rows.ok) return unreadable(rows.issue);
    const question = await writeStock(port, { ledger, ...rows.value, shelved, today, agreed }, label);
    return question ?? { done: true, order, movements: rows.value.movements };
  });
}
