/** Filling what the bench needs for its jobs, all on one list, into a sheet of its own, as values to be printed. */
import { pickList, stillNeeded, type PickLine, type PickList, type Shelf } from '../core/index';
import { quantityText, STOCK_PAGE_WORDS } from '../words/stock';
import type { StockPageAsked } from './fillOrder';
import { fillPage, type MakePage } from './fillPage';
import { folded } from './headings';
import { jobFacts } from './jobFacts';
import { dressList, listCells, type ListRow, type ListSheet } from './listSheet';
import type { WorkbookPort } from './port';
import type { SheetColumn } from './sheetLooks';
import { pageSheetName } from './sheetName';
import type { Shop, ShopTables } from './shop';
import type { StockPageDone } from './stockDone';
import { stockOf, type StockSeen } from './stockScope';
import { brokenLines } from './shared/brokenLines';

export const PICK_COLUMNS: readonly SheetColumn[] = [
  { header: 'Item', width: 18, wrap: true, align: 'left', format: '@' },
  { header: 'Description', width: 32, wrap: true, align: 'left' },
  { header: 'On hand', width: 12, align: 'right' },
  { header: 'Take', width: 12, align: 'right' },
  // a box to tick with a pen
  { header: 'Taken', width: 8, align: 'center' },
  { header: 'For which job', width: 34, wrap: true, align: 'left' },
];

/**
 * Writes the pick list into *Pick list*; a sheet that stands there already is rewritten in place.
 *
 * @param jobs which jobs it is for; null: every open job
 */
export async function fillPick(
  port: WorkbookPort,
  shop: Shop,
  { jobs = null, agreed }: StockPageAsked & { readonly jobs?: readonly string[] | null },
): Promise<StockPageDone> {
  let lines = 0;
  const wanted = jobs && new Set(jobs.map(folded));
  const make: MakePage<Extract<StockPageDone, { reason: 'unreadable' | 'nothing' }>> = (tables) => {
    const seen = stockOf({ tables });
    if (!seen.ok) return { done: false, reason: 'unreadable', issue: seen.issue };
    const { asked } = seen.value;
    // What was taken already is not sent for again.
    const chosen = seen.value.jobs.filter(({ job }) => !wanted || wanted.has(folded(job)));
    const needing = stillNeeded(chosen, asked.entries).filter(({ needs }) => needs.length > 0);
    const list = pickList(needing);
    lines = list.lines.length;
    if (lines === 0) return { done: false, reason: 'nothing' };
    const sheet = pickSheet(tables, seen.value, list);
    const page = listCells(sheet);
    return {
      ...page,
      key: 'pick',
      job: null,
      sheetName: (taken) => pageSheetName(STOCK_PAGE_WORDS.pick, '', taken),
      dress: (at) => dressList(at, sheet, page),
      label: STOCK_PAGE_WORDS.pick,
    };
  };
  const end = await fillPage(port, shop, make, agreed);
  return end.done ? { ...end, lines } : end;
}

function pickSheet(tables: ShopTables, seen: StockSeen, list: PickList): ListSheet {
  const { jobs, dueOf, strips, stripsOf, others } = STOCK_PAGE_WORDS;
  const besides: ListRow[] = [
    ...(list.twoWayStrips > 0
      ? [{ is: 'line' as const, cells: [strips, null, null, stripsOf(list.twoWayStrips)] }]
      : []),
    ...list.lines.filter(({ shelf }) => shelf === 'solvent').map((line) => pickRow(line, seen)),
  ];
  return {
    shop: jobFacts(tables, null).shop,
    title: STOCK_PAGE_WORDS.pick,
    about: brokenLines(`${jobs} ${list.jobs.map(({ job, due }) => dueOf(job, due)).join(', ')}`, LINE_CHARACTERS),
    columns: PICK_COLUMNS,
    rows: [
      ...(['grip', 'tape', 'weight'] as const).flatMap((shelf) => shelfRows(shelf, list.lines, seen)),
      ...(besides.length > 0 ? [{ is: 'group' as const, cells: [others] }, ...besides] : []),
    ],
    landscape: false,
  };
}

function shelfRows(shelf: Exclude<Shelf, 'solvent'>, lines: readonly PickLine[], seen: StockSeen): ListRow[] {
  const own = lines.filter((line) => line.shelf === shelf);
  if (own.length === 0) return [];
  return [{ is: 'group', cells: [STOCK_PAGE_WORDS.shelves[shelf]] }, ...own.map((line) => pickRow(line, seen))];
}

function pickRow({ shelf, item, quantity, jobs }: PickLine, { shelved }: StockSeen): ListRow {
  const kept = shelved.find(({ stocked }) => stocked.shelf === shelf && folded(stocked.item) === folded(item));
  const onHand = kept?.stocked.onHand;
  return {
    is: 'line',
    cells: [
      kept?.stocked.item ?? item,
      kept?.description || null,
      onHand === undefined ? null : quantityText(shelf, onHand),
      quantityText(shelf, quantity),
      null,
      STOCK_PAGE_WORDS.split(shelf, jobs),
    ],
  };
}

/** Characters that the page holds side by side: a width is counted in digits, and most letters are narrower. */
const LINE_CHARACTERS = PICK_COLUMNS.reduce((sum, { width }) => sum + width, 0);
