import type { Block, BlockSeen, Receipt, RowsOf, TableSeen, Written } from '../port';
import { blockOf, sameName } from '../shared/address';
import { tableNamed } from '../shared/lengthen';
import { standsAlready, tableBlock } from '../shared/refuse';
import { nothingThere } from '../shared/looked';
import type { Looked } from '../shared/looked';
import type { Now, SheetNow, TableNow } from '../shared/revert';
import type { WidenedNow } from '../shared/widen';
import type { Change } from '../port';
import { askBlock, firstColumn } from './readBlock';
import type { Anchors, Asking } from './readBlock';
import { holds, placeIn } from './standing';
import type { Stood } from './standing';

/** How many of our calls in a block are asked what they fill. */
const mostCalls = 50;

/** Asks for all that taking back a receipt has to know; the answer wants to be told what stands. */
export function askNow(asking: Asking, receipt: Receipt): () => (stood: Stood) => Now {
  const blocks = receipt.written.map((written) =>
    written.rows ? askRows(asking, written.rows, written.at) : askBlock(asking, written.at, anchorsOf(written)),
  );
  const tables = receipt.madeTables.map((name) => askMadeTable(asking, name));
  const widened = (receipt.widened ?? []).map(({ table, headers }) => askWidened(asking, table, headers.length));
  const sheets = receipt.madeSheets.map((name) => askMadeSheet(asking, name));
  return () => {
    const seen = blocks.map((block) => block());
    return (stood) => ({
      blocks: seen,
      widened: widened.map((table) => table()),
      allSheets: stood.sheets,
      tables: tables.flatMap((table) => table()),
      sheets: sheets.flatMap((sheet) => sheet(stood, receipt, seen)),
      names: receipt.madeNames.filter((name) => holds(stood.names, name)),
      placeOf: (name) => placeIn(stood, name),
    });
  };
}

function anchorsOf({ at, put }: Written): Anchors {
  const column = firstColumn(at);
  const calls: [number, number][] = [];
  // Hundreds of thousands of cells, and hardly ever a call among them.
  for (const [down, line] of put.entries()) {
    for (let across = 0; across < line.length && calls.length < mostCalls; across += 1) {
      const cell = line[across];
      const isCall = typeof cell === 'object' && cell !== null && 'call' in cell;
      if (isCall && !(across === 0 && down < column.length)) calls.push([down, across]);
    }
    if (calls.length === mostCalls) break;
  }
  return [...column, ...calls];
}

/** Asks for a whole table, or all cells of a name; one that is gone is a block that is not there. */
export function askRows(asking: Asking, { table: name, headingRows }: RowsOf, stoodAt: Block): () => BlockSeen {
  if (headingRows !== undefined) return askNamed(asking, name, stoodAt);
  const table = askMadeTable(asking, name);
  return () => table()[0]?.seen ?? nothingThere(stoodAt);
}

function askNamed(asking: Asking, name: string, stoodAt: Block): () => BlockSeen {
  if (asking.stood && !holds(asking.stood.names, name)) return () => nothingThere(stoodAt);
  const range = asking.context.workbook.names.getItemOrNullObject(name).getRangeOrNullObject();
  const seen = askCells(asking, range, () => range.isNullObject);
  return () => seen() ?? nothingThere(stoodAt);
}

function askMadeTable(asking: Asking, name: string): () => TableNow[] {
  if (asking.stood && !holds(asking.stood.tables, name)) return () => [];
  const table = asking.context.workbook.tables.getItemOrNullObject(name).load('name');
  const seen = askCells(asking, table.getRange(), () => table.isNullObject);
  return () => {
    const now = seen();
    return now ? [{ name: table.name, seen: now }] : [];
  };
}

/** Asks for a table that was made wider, with so many columns right of it. */
function askWidened(asking: Asking, name: string, columns: number): () => WidenedNow | null {
  if (asking.stood && !holds(asking.stood.tables, name)) return () => null;
  const table = asking.context.workbook.tables.getItemOrNullObject(name).load('name');
  const range = table.getRange().load('address');
  const seen = askCells(asking, table.getRange().getResizedRange(0, columns), () => table.isNullObject);
  return () => {
    const cells = seen();
    const at = cells && blockOf(range.address);
    return at && { at, seen: cells };
  };
}

function askMadeSheet(
  asking: Asking,
  name: string,
): (stood: Stood, receipt: Receipt, blocks: readonly BlockSeen[]) => SheetNow[] {
  if (asking.stood && !holds(asking.stood.sheets, name)) return () => [];
  const sheet = asking.context.workbook.worksheets.getItemOrNullObject(name).load('name');
  const tables = sheet.tables.load('items/name');
  const others = [
    sheet.charts.load('items/name'),
    sheet.shapes.load('items/name'),
    sheet.pivotTables.load('items/name'),
  ];
  const used = sheet.getUsedRangeOrNullObject(true);
  const cells = askCells(asking, used, () => sheet.isNullObject || used.isNullObject);
  return (stood, receipt, blocks) => {
    if (sheet.isNullObject) return [];
    const seen = cells();
    const spills = blocks.filter((block) => sameName(block.at.sheet, name)).flatMap((block) => block.spills ?? []);
    const hasOthers = others.some(({ items }) => items.length > 0);
    return [
      {
        name: sheet.name,
        used: seen && { ...seen, spills },
        tables: tables.items.map((table) => table.name),
        keep: hasOthers || !stood.visibleSheets.some((visible) => !holds(receipt.madeSheets, visible)),
      },
    ];
  };
}

function askCells(asking: Asking, range: Excel.Range, isMissing: () => boolean): () => BlockSeen | null {
  range.load('address');
  const at = (): Block | null => (isMissing() ? null : blockOf(range.address));
  const source = asking.cells(range, at);
  return () => {
    const place = at();
    if (!place) return null;
    return { at: place, ...source.cells(), sheetExists: true, protected: false, merged: [], tables: [] };
  };
}

/** A table that a failed batch made. */
export interface FreshTable extends TableNow {
  readonly sheet: string;
}

/** Asks which tables stand where a failed batch was to make some: one may have been made and not named yet. */
export function askFreshTables(
  asking: Asking,
  changes: readonly Change[],
  looked: Looked,
  standsAt: (at: Block) => Block,
): () => (before: readonly string[]) => FreshTable[] {
  const blocks = changes.flatMap((change) =>
    change.do === 'table' && !standsAlready(change, looked)
      ? [askBlock(asking, standsAt(tableBlock(change.at)), [])]
      : [],
  );
  return () => {
    const found = blocks
      .map((block) => block())
      .flatMap(({ at, tables }) => tables.map((name) => [name, at.sheet] as const));
    return (before) =>
      [...new Map(found)].flatMap(([name, sheet]) => (holds(before, name) ? [] : [{ name, seen: null, sheet }]));
  };
}

/** A table that became longer or wider: where it stands, and as it was. */
export interface Resized {
  readonly now: Block;
  readonly was: TableSeen;
}

/** Asks which tables a failed batch has made longer or wider than they were seen to be; one that is gone by now is none of them. */
export function askResized(
  { context, stood }: Asking,
  changes: readonly Change[],
  looked: Looked,
  wasAt: (table: TableSeen) => Block,
): () => Resized[] {
  const tables = new Set(
    changes.flatMap((change) =>
      change.do === 'lengthen' || change.do === 'widen' ? [tableNamed(change.table, looked)] : [],
    ),
  );
  const there = [...tables].filter(({ name }) => !stood || holds(stood.tables, name));
  const asked = there.map((table) => {
    const found = context.workbook.tables.getItemOrNullObject(table.name).load('name');
    return { table, found, range: found.getRange().load('address') };
  });
  return () =>
    asked.flatMap(({ table, found, range }) => {
      const now = found.isNullObject ? null : blockOf(range.address);
      const was = { ...table, at: wasAt(table) };
      return now && (now.rows > was.at.rows || now.columns > was.at.columns) ? [{ now, was }] : [];
    });
}
