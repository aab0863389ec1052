/** Filling what is to be ordered, by supplier, and what is on order into a sheet of its own, as values to be printed. */
import { exactSum, openOrders, PER_MONEY } from '../core/index';
import type { OrderedLine, OrderLine, PlacedOrder, SupplierOrder } from '../core/index';
import { lineSoFar, orderName, quantityText, STOCK_PAGE_WORDS } from '../words/stock';
import { fillPage, type MakePage } from './fillPage';
import { folded } from './headings';
import { jobFacts } from './jobFacts';
import { dressList, listCells, type ListRow, type ListSheet } from './listSheet';
import type { InTheWay } from './outcomes';
import type { WorkbookPort } from './port';
import type { SheetColumn } from './sheetLooks';
import { pageSheetName } from './sheetName';
import type { Shop, ShopTables } from './shop';
import type { StockPageDone } from './stockDone';
import { stockOf, type StockSeen } from './stockScope';

export const ORDER_COLUMNS: readonly SheetColumn[] = [
  { header: 'Item', width: 16, wrap: true, align: 'left', format: '@' },
  { header: 'Description', width: 30, wrap: true, align: 'left' },
  { header: 'Packs', width: 8, format: '0', align: 'right' },
  { header: 'Of', width: 11, align: 'right' },
  { header: 'Quantity', width: 12, align: 'right' },
  { header: 'Left', width: 11, align: 'right' },
  { header: 'To come', width: 11, align: 'center' },
  { header: 'Remarks', width: 34, wrap: true, align: 'left' },
  { header: 'Cost', width: 12, format: '#,##0.00', align: 'right' },
];

const COST = ORDER_COLUMNS.findIndex(({ header }) => header === 'Cost');

export interface StockPageAsked {
  readonly agreed?: InTheWay | undefined;
}

/** Writes the order into *Order*; a sheet that stands there already is rewritten in place. */
export async function fillOrder(
  port: WorkbookPort,
  shop: Shop,
  { agreed }: StockPageAsked = {},
): Promise<StockPageDone> {
  let [lines, onOrder] = [0, 0];
  const make: MakePage<Extract<StockPageDone, { reason: 'unreadable' | 'nothing' }>> = (tables) => {
    const seen = stockOf({ tables });
    if (!seen.ok) return { done: false, reason: 'unreadable', issue: seen.issue };
    lines = seen.value.orders.reduce((sum, order) => sum + order.lines.length, 0);
    onOrder = openOrders(seen.value.placed).reduce((sum, order) => sum + comingOf(order).length, 0);
    if (lines + onOrder === 0) return { done: false, reason: 'nothing' };
    const sheet = orderSheet(tables, seen.value);
    const page = listCells(sheet);
    return {
      ...page,
      key: 'order',
      job: null,
      sheetName: (taken) => pageSheetName(STOCK_PAGE_WORDS.order, '', taken),
      dress: (at) => dressList(at, sheet, page),
      label: STOCK_PAGE_WORDS.order,
    };
  };
  const end = await fillPage(port, shop, make, agreed);
  return end.done ? { ...end, lines, onOrder } : end;
}

function orderSheet(tables: ShopTables, seen: StockSeen): ListSheet {
  const described = new Map(
    seen.shelved.map(({ stocked: { shelf, item }, description }) => [`${shelf} ${folded(item)}`, description]),
  );
  const placed = openOrders(seen.placed);
  const all = seen.orders.flatMap((order, at): ListRow[] => [
    ...(at > 0 ? [{ is: 'gap' as const, cells: [] }] : []),
    ...supplierRows(order, described),
  ]);
  const sum = exactSum(
    seen.orders.map(({ cost }) => cost),
    PER_MONEY,
  );
  const together: ListRow[] =
    seen.orders.length > 1 ? [{ is: 'gap', cells: [] }, sumRow(STOCK_PAGE_WORDS.all, sum)] : [];
  return {
    shop: jobFacts(tables, null).shop,
    title: STOCK_PAGE_WORDS.order,
    about: [STOCK_PAGE_WORDS.orderHow],
    columns: ORDER_COLUMNS,
    rows: [...all, ...together, ...placedRows(placed, described, all.length > 0)],
    landscape: true,
  };
}

type Described = ReadonlyMap<string, string>;

function descriptionOf(described: Described, { shelf, item }: Pick<OrderLine, 'shelf' | 'item'>): string | null {
  return described.get(`${shelf} ${folded(item)}`) || null;
}

function supplierRows(order: SupplierOrder, described: Described): ListRow[] {
  const { supplier, lines, cost, unpriced } = order;
  return [
    { is: 'group', cells: [supplier || STOCK_PAGE_WORDS.noSupplier] },
    ...lines.map((line): ListRow => ({ is: 'line', cells: lineCells(line, described) })),
    sumRow(STOCK_PAGE_WORDS.together(supplier), cost),
    ...(unpriced.length > 0 ? [{ is: 'gap' as const, cells: [STOCK_PAGE_WORDS.unpriced(unpriced)] }] : []),
  ];
}

/** What is on order, by order, so that the sheet says what nobody has to order again. */
function placedRows(orders: readonly PlacedOrder[], described: Described, isBelow: boolean): ListRow[] {
  if (orders.length === 0) return [];
  return [
    ...(isBelow ? [{ is: 'gap' as const, cells: [] }] : []),
    ...orders.flatMap((order): ListRow[] => [
      { is: 'group', cells: [`${STOCK_PAGE_WORDS.placed}: ${orderName(order)}`] },
      ...comingOf(order).map((line): ListRow => ({ is: 'line', cells: placedCells(line, described) })),
    ]),
  ];
}

function comingOf({ lines }: PlacedOrder): readonly OrderedLine[] {
  return lines.filter(({ outstanding }) => outstanding > 0);
}

function placedCells(line: OrderedLine, described: Described): ListRow['cells'] {
  const { shelf, item, ordered, outstanding } = line;
  const [quantity, toCome] = [quantityText(shelf, ordered), quantityText(shelf, outstanding)];
  return [item, descriptionOf(described, line), null, null, quantity, null, toCome, lineSoFar(line) || null, null];
}

function sumRow(text: string, cost: number): ListRow {
  return { is: 'sum', cells: ORDER_COLUMNS.map((_, at) => (at === 0 ? text : at === COST ? cost : null)) };
}

function lineCells(line: OrderLine, described: Described): ListRow['cells'] {
  const { shelf, item, packs, pack, quantity, cost, left, lacks, onOrder } = line;
  return [
    item,
    descriptionOf(described, line),
    packs,
    quantityText(shelf, pack),
    quantityText(shelf, quantity),
    quantityText(shelf, Math.max(0, left)),
    onOrder > 0 ? quantityText(shelf, onOrder) : null,
    STOCK_PAGE_WORDS.lackFor(shelf, lacks) || null,
    cost ?? null,
  ];
}
