/** The shelves as their screen shows them, whichever job is chosen above. Pure. */
import { openOrders } from '../../../core/index';
import type { Issue, ItemState, PlacedOrder, Progress, Result, Shelf, SupplierOrder } from '../../../core/index';
import { folded } from '../../../workbook/headings';
import { readShelves } from '../../../workbook/shelves';
import type { Shop } from '../../../workbook/shop';
import { stockSteps, type StockSeen } from '../../../workbook/stockScope';
import { bareText, itemText, quantityText, sayLack } from '../../../words/stock';
import { TABLE } from '../../words';
import { STOCK_WORDS } from './stockWords';

export interface NeedRow {
  readonly key: string;
  readonly cells: readonly string[];
}

export interface StockScreenSeen {
  /** What is needed, low or on order, what is short first, then what is low. */
  readonly rows: readonly NeedRow[];
  /** Who lacks what that is not on order, the earliest due first. */
  readonly lacks: readonly string[];
  /** Who lacks what is on order, the earliest due first. */
  readonly waits: readonly string[];
  readonly low: number;
  readonly state: StockSeen['state'];
  readonly problems: readonly Issue[];
  /** What is to be ordered. */
  readonly orders: readonly SupplierOrder[];
  /** Orders of which something is still to come. */
  readonly placed: readonly PlacedOrder[];
  /** Open jobs that need something, and jobs that hold something, as they are compared. */
  readonly needing: ReadonlySet<string>;
  readonly holding: ReadonlySet<string>;
}

/** In steps: with many jobs it takes longer than a keystroke may. */
export function* stockSeenSteps({ tables }: Shop): Generator<Progress, Result<StockScreenSeen>> {
  const seen = yield* stockSteps(tables);
  if (!seen.ok) return seen;
  const { state, jobs, asked, problems, orders, placed } = seen.value;
  const shown = state.items
    .filter(({ needed, low, onOrder }) => needed > 0 || low || onOrder > 0)
    .sort((one, other) => rank(one) - rank(other));
  const lacks = shown
    .flatMap(({ item, shelf, lacks: own }) =>
      own.map((lack) => ({ ...lack, text: `${item}: ${sayLack(shelf, lack)}`, isShort: lack.onOrder < lack.quantity })),
    )
    .sort((one, other) => (one.due ?? Infinity) - (other.due ?? Infinity) || 0);
  return {
    ok: true,
    value: {
      rows: shown.map(rowOf),
      lacks: lacks.filter(({ isShort }) => isShort).map(({ text }) => text),
      waits: lacks.filter(({ isShort }) => !isShort).map(({ text }) => text),
      low: shown.filter((each) => each.low && !isShort(each)).length,
      state,
      problems,
      orders,
      placed: openOrders(placed),
      needing: new Set(jobs.filter(({ needs }) => needs.length > 0).map(({ job }) => folded(job))),
      holding: new Set([...asked.entries.values()].filter((entry) => entry.reserved > 0).map(({ job }) => folded(job))),
    },
  };
}

/** Whether a job has clubs that need something, and holds something. */
export function jobOf(
  { needing, holding }: Pick<StockScreenSeen, 'needing' | 'holding'>,
  job: string | null,
): { readonly needs: boolean; readonly holds: boolean } {
  const name = folded(job ?? '');
  return { needs: needing.has(name), holds: holding.has(name) };
}

function isShort({ lacks }: ItemState): boolean {
  return lacks.some(({ quantity, onOrder }) => onOrder < quantity);
}

function rank(state: ItemState): number {
  if (isShort(state)) return 0;
  return state.low ? 1 : state.lacks.length > 0 ? 2 : 3;
}

function rowOf({ shelf, item, needed, onHand, free, onOrder, left }: ItemState): NeedRow {
  const shown = (quantity: number | undefined): string =>
    quantity === undefined ? TABLE.none : bareText(shelf, quantity);
  const coming = onOrder > 0 ? onOrder : undefined;
  return {
    key: `${shelf} ${item}`,
    cells: [itemText(shelf, item), ...[needed, onHand, free, left, coming].map(shown)],
  };
}

/** One thing that can come, go or be counted. */
export interface Countable {
  /** Shelf and item, as a choice keeps them. */
  readonly key: string;
  readonly shelf: Shelf;
  readonly item: string;
  readonly text: string;
}

export function countables({ tables }: Shop): readonly Countable[] {
  const seen = new Set<string>();
  return readShelves(tables).flatMap(({ stocked: { shelf, item, onHand }, column }) => {
    const key = `${shelf}:${folded(item)}`;
    if (column < 0 || seen.has(key)) return [];
    seen.add(key);
    const there = onHand === undefined ? STOCK_WORDS.notCounted : quantityText(shelf, onHand);
    return [{ key, shelf, item, text: `${item}, ${there}` }];
  });
}
