/** Orders that were placed: what came of them, what is still to come, and the rows that say so. */
import { groupedBy } from '../plan/together';
import { itemKey, lessOf, sameWord, sumOf } from './quantity';
import type { Movement, MovementKind, OrderedLine, PlacedOrder, SupplierOrder } from './types';

/**
 * Every order of the ledger, the latest number last, with what became of each of its things. What came without an order counts for none.
 *
 * @param movements in any order
 */
export function placedOrders(movements: readonly Movement[]): PlacedOrder[] {
  const own = movements.filter(({ order }) => order !== undefined && order.trim() !== '');
  return [...groupedBy(own, ({ order }) => sameWord(order ?? '')).values()]
    .flatMap((rows): PlacedOrder[] => {
      const placed = rows.filter(({ kind }) => kind === 'ordered');
      const [first] = placed;
      if (!first) return [];
      const days = placed.flatMap(({ day }) => day ?? []);
      return [
        {
          order: (first.order ?? '').trim(),
          supplier: placed.find(({ supplier }) => supplier)?.supplier ?? '',
          day: days.length > 0 ? Math.min(...days) : undefined,
          lines: [...groupedBy(rows, itemKey).values()].flatMap(lineOf),
        },
      ];
    })
    .sort((one, other) => byNumber(one.order, other.order));
}

/** As one counts: 9 before 10. */
function byNumber(one: string, other: string): number {
  return one.localeCompare(other, 'en', { numeric: true });
}

function lineOf(rows: readonly Movement[]): OrderedLine[] {
  const total = (kind: MovementKind): number =>
    sumOf(rows.filter((each) => each.kind === kind).map(({ quantity }) => quantity));
  const placed = rows.find(({ kind }) => kind === 'ordered');
  if (!placed) return [];
  const [ordered, arrived, cancelled] = [total('ordered'), total('arrived'), total('cancelled')];
  const outstanding = Math.max(0, sumOf([ordered, -arrived, -cancelled]));
  return [{ shelf: placed.shelf, item: placed.item, ordered, arrived, cancelled, outstanding }];
}

/** Orders of which something is still to come. */
export function openOrders(orders: readonly PlacedOrder[]): PlacedOrder[] {
  return orders.filter(({ lines }) => lines.some(({ outstanding }) => outstanding > 0));
}

/** What is still to come, by thing. */
export function onOrderOf(orders: readonly PlacedOrder[]): ReadonlyMap<string, number> {
  const lines = orders.flatMap((order) => order.lines).filter(({ outstanding }) => outstanding > 0);
  const groups = groupedBy(lines, itemKey);
  return new Map([...groups].map(([key, own]) => [key, sumOf(own.map(({ outstanding }) => outstanding))]));
}

/** The number for the next order: one more than the highest that was used; words and letters are left out of it. */
export function nextOrder(orders: readonly Pick<PlacedOrder, 'order'>[]): string {
  const numbers = orders.flatMap(({ order }) => (/^\d{1,9}$/.test(order) ? [Number(order)] : []));
  return String(Math.max(0, ...numbers) + 1);
}

function row(kind: MovementKind, { shelf, item }: Pick<Movement, 'shelf' | 'item'>, quantity: number): Movement {
  return { kind, job: '', club: '', shelf, item, quantity, round: 1 };
}

/** The rows that place an order with a supplier. */
export function orderRows({ supplier, lines }: SupplierOrder, order: string): Movement[] {
  return lines.map((line) => ({ ...row('ordered', line, line.quantity), order, supplier }));
}

/** The rows that give up what is still to come of an order. */
export function cancelRows({ order, supplier, lines }: PlacedOrder): Movement[] {
  return lines
    .filter(({ outstanding }) => outstanding > 0)
    .map((line) => ({ ...row('cancelled', line, line.outstanding), order, supplier }));
}

/** Part of what came, and the order it counts for. */
export interface Share {
  /** undefined: for none, since all that was ordered is here. */
  readonly order: string | undefined;
  readonly supplier: string;
  readonly quantity: number;
  /** What is still to come of the order's thing then. */
  readonly outstanding: number;
}

/**
 * Which orders pieces that came count for: the one named first, else the earliest of those that wait for them; what is beyond all of them
 * counts for none.
 *
 * @param only the number of the one order that they came on; undefined: any
 */
export function sharesOf(
  { shelf, item, quantity }: Pick<Movement, 'shelf' | 'item' | 'quantity'>,
  orders: readonly PlacedOrder[],
  only?: string,
): Share[] {
  const key = itemKey({ shelf, item });
  let left = quantity;
  const shares = orders.flatMap(({ order, supplier, lines }): Share[] => {
    const line = lines.find((each) => itemKey(each) === key);
    const given = Math.min(left, line?.outstanding ?? 0);
    if (!line || given <= 0 || (only !== undefined && sameWord(order) !== sameWord(only))) return [];
    left = lessOf(left, given);
    return [{ order, supplier, quantity: given, outstanding: lessOf(line.outstanding, given) }];
  });
  return left > 0 ? [...shares, { order: undefined, supplier: '', quantity: left, outstanding: 0 }] : shares;
}
