/** The shelves as their screen shows them. Pure. */
import type { Issue, ItemState, Result, Shelf } from '../../../core/index';
import { folded } from '../../../workbook/headings';
import { readShelves } from '../../../workbook/shelves';
import type { Shop } from '../../../workbook/shop';
import { stockOf, type StockSeen } from '../../../workbook/stockScope';
import { quantityText, sayLack, shortText } from '../../../words/stock';
import { TABLE } from '../../words';
import { STOCK_WORDS } from './stockWords';

export interface NeedRow {
  readonly key: string;
  readonly cells: readonly string[];
}

export interface StockScreenSeen {
  /** What is needed or low, what is short first, then what is low. */
  readonly rows: readonly NeedRow[];
  /** Who lacks what, the earliest due first. */
  readonly lacks: readonly string[];
  readonly low: number;
  readonly state: StockSeen['state'];
  readonly problems: readonly Issue[];
  /** Whether the job has clubs that need something, and holds something. */
  readonly job: { readonly needs: boolean; readonly holds: boolean };
}

export function stockSeen(shop: Shop, job: string | null): Result<StockScreenSeen> {
  const seen = stockOf(shop);
  if (!seen.ok) return seen;
  const { state, jobs, asked, problems } = seen.value;
  const shown = state.items
    .filter(({ needed, low }) => needed > 0 || low)
    .sort((one, other) => rank(one) - rank(other));
  const lacks = shown
    .flatMap(({ item, shelf, lacks: own }) =>
      own.map((lack) => ({ ...lack, text: `${item}: ${sayLack(shelf, lack)}` })),
    )
    .sort((one, other) => (one.due ?? Infinity) - (other.due ?? Infinity) || 0);
  const own = folded(job ?? '');
  return {
    ok: true,
    value: {
      rows: shown.map(rowOf),
      lacks: lacks.map(({ text }) => text),
      low: shown.filter(({ low, lacks: lacking }) => low && lacking.length === 0).length,
      state,
      problems,
      job: {
        needs: jobs.some((each) => folded(each.job) === own && each.needs.length > 0),
        holds: [...asked.entries.values()].some((entry) => folded(entry.job) === own && entry.reserved > 0),
      },
    },
  };
}

function rank({ lacks, low }: ItemState): number {
  return lacks.length > 0 ? 0 : low ? 1 : 2;
}

function rowOf({ shelf, item, needed, onHand, free, left }: ItemState): NeedRow {
  const shown = (quantity: number | undefined): string =>
    quantity === undefined ? TABLE.none : shortText(shelf, quantity);
  return { key: `${shelf} ${item}`, cells: [item, shown(needed), shown(onHand), shown(free), shown(left)] };
}

/** One thing that can arrive, be spoiled or be counted. */
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
