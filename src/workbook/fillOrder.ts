/** Filling what is to be ordered, by supplier, into a sheet of its own, as values to be printed. */
import { exactSum, PER_MONEY, type OrderLine, type SupplierOrder } from '../core/index';
import { quantityText, STOCK_PAGE_WORDS } from '../words/stock';
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
  { header: 'Packs', width: 8, format: '0', align: 'center' },
  { header: 'Of', width: 11, align: 'left' },
  { header: 'Quantity', width: 12, align: 'left' },
  { header: 'Left', width: 11, align: 'left' },
  { header: 'Short for', width: 34, wrap: true, align: 'left' },
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
  let lines = 0;
  const make: MakePage<Extract<StockPageDone, { reason: 'unreadable' | 'nothing' }>> = (tables) => {
    const seen = stockOf({ tables });
    if (!seen.ok) return { done: false, reason: 'unreadable', issue: seen.issue };
    lines = seen.value.orders.reduce((sum, order) => sum + order.lines.length, 0);
    if (lines === 0) return { done: false, reason: 'nothing' };
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
  return end.done ? { ...end, lines } : end;
}

function orderSheet(tables: ShopTables, seen: StockSeen): ListSheet {
  const described = new Map(
    seen.shelved.map(({ stocked: { shelf, item }, description }) => [`${shelf} ${folded(item)}`, description]),
  );
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
    rows: [...all, ...together],
    landscape: true,
  };
}

function supplierRows(order: SupplierOrder, described: ReadonlyMap<string, string>): ListRow[] {
  const { supplier, lines, cost, unpriced } = order;
  return [
    { is: 'group', cells: [supplier || STOCK_PAGE_WORDS.noSupplier] },
    ...lines.map((line): ListRow => ({ is: 'line', cells: lineCells(line, described) })),
    sumRow(STOCK_PAGE_WORDS.together(supplier), cost),
    ...(unpriced.length > 0 ? [{ is: 'gap' as const, cells: [STOCK_PAGE_WORDS.unpriced(unpriced)] }] : []),
  ];
}

function sumRow(text: string, cost: number): ListRow {
  return { is: 'sum', cells: ORDER_COLUMNS.map((_, at) => (at === 0 ? text : at === COST ? cost : null)) };
}

function lineCells(line: OrderLine, described: ReadonlyMap<string, string>): ListRow['cells'] {
  const { shelf, item, packs, pack, quantity, cost, left, lacks } = line;
  return [
    item,
    described.get(`${shelf} ${folded(item)}`) || null,
    packs,
    quantityText(shelf, pack),
    quantityText(shelf, quantity),
    quantityText(shelf, Math.max(0, left)),
    STOCK_PAGE_WORDS.lackFor(shelf, lacks) || null,
    cost ?? null,
  ];
}
