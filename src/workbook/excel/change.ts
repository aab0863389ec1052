import type { Argument, Block, Change, Put } from '../port';
import { fixed } from '../shared/address';
import { callText } from '../shared/call';
import { tableNamed } from '../shared/lengthen';
import type { Lengthen } from '../shared/lengthen';
import { columnsBeside } from '../shared/widen';
import type { Widen } from '../shared/widen';
import { standsAlready, tableBlock } from '../shared/refuse';
import type { Looked } from '../shared/looked';
import { bytesOf } from './batch';
import type { Batch } from './batch';
import { pointsWide, setChoices, setFormat, setHighlights, setPage } from './dress';
import { holds } from './standing';
import type { Stood } from './standing';
import { asIs, rangeOf, writeCells } from './writeCells';
import type { CellToWrite } from './writeCells';

/** What a change is judged by while it is made. */
export interface Making {
  readonly batch: Batch;
  readonly stood: Stood;
  readonly looked: Looked;
  /** What this batch has made already, as `sheet plan`. */
  readonly made: Set<string>;
}

/** Puts one change into the batch. */
export async function makeChange(making: Making, change: Change): Promise<void> {
  const { context } = making.batch;
  const { worksheets, settings } = context.workbook;
  switch (change.do) {
    case 'sheet':
      if (isNew(making, 'sheet', change.name, making.stood.sheets)) worksheets.add(change.name);
      return;
    case 'write':
      return writeCells(making.batch, change.at, change.cells, toWrite);
    case 'table':
      return standsAlready(change, making.looked) ? undefined : makeTable(context, change.name, change.at);
    case 'lengthen':
      return lengthen(making, change);
    case 'widen':
      return widen(making, change);
    case 'format':
      return setFormat(rangeOf(context, change.at), change.format);
    case 'widths':
      return setWidths(worksheets.getItem(change.sheet), change.column, change.widths);
    case 'freezeRows':
      return freeze(worksheets.getItem(change.sheet), change.rows, change.columns ?? 0);
    case 'choices':
      return setChoices(context, change);
    case 'highlight':
      return setHighlights(context, change);
    case 'page':
      return setPage(context, change.sheet, change.setup);
    case 'name':
      return placeName(making, change.name, change.at);
    case 'show':
      // What a person hid stays hidden; asked to show it, Excel would fail in the middle of the rest.
      if (isHidden(making.stood, change.at.sheet)) return;
      worksheets.getItem(change.at.sheet).activate();
      rangeOf(context, change.at).select();
      return;
    case 'remember':
      await making.batch.room(bytesOf(JSON.stringify(change.value)));
      settings.add(change.key, change.value);
  }
}

function toWrite(cell: Put): CellToWrite {
  return typeof cell === 'object' && cell !== null ? { formula: callText(cell, reference) } : cell;
}

/** A table with its header row, or a block that does not shift. */
function reference(argument: Extract<Argument, { table: string } | { block: Block } | { name: string }>): string {
  if ('name' in argument) return argument.name;
  return 'table' in argument ? `${argument.table}[#All]` : fixed(argument.block);
}

function makeTable(context: Excel.RequestContext, name: string, at: Block): void {
  const table = context.workbook.tables.add(rangeOf(context, tableBlock(at)), true);
  table.name = name;
  table.style = 'TableStyleLight1';
  table.showBandedRows = true;
}

/** Stretched rather than given rows, which would move what stands further down. */
function lengthen({ batch: { context }, looked }: Making, change: Lengthen): void {
  const { name, at } = tableNamed(change.table, looked);
  context.workbook.tables.getItem(name).resize(rangeOf(context, { ...at, rows: at.rows + change.rows }));
}

/** Headings first: a column that joins a table without one is named by Excel. */
async function widen({ batch, looked }: Making, change: Widen): Promise<void> {
  const table = tableNamed(change.table, looked);
  const columns = change.headers.length;
  await writeCells(batch, { ...columnsBeside(table, columns), rows: 1 }, [change.headers], asIs);
  const { tables } = batch.context.workbook;
  const wider = { ...table.at, columns: table.at.columns + columns };
  tables.getItem(table.name).resize(rangeOf(batch.context, wider));
}

function setWidths(sheet: Excel.Worksheet, column: number, widths: readonly number[]): void {
  widths.forEach((characters, i) => {
    sheet.getRangeByIndexes(0, column + i, 1, 1).format.columnWidth = pointsWide(characters);
  });
}

function freeze(sheet: Excel.Worksheet, rows: number, columns: number): void {
  const { freezePanes: panes } = sheet;
  // Each call takes the place of the one before: both at once are asked for by a block.
  if (rows > 0 && columns > 0) panes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
  else if (rows > 0) panes.freezeRows(rows);
  else if (columns > 0) panes.freezeColumns(columns);
  else panes.unfreeze();
}

function placeName(making: Making, name: string, at: Block): void {
  const { context } = making.batch;
  const { names } = context.workbook;
  if (isNew(making, 'name', name, making.stood.names)) names.add(name, rangeOf(context, at));
  else names.getItem(name).formula = `=${fixed(at)}`;
}

function isHidden({ sheets, visibleSheets }: Stood, sheet: string): boolean {
  return holds(sheets, sheet) && !holds(visibleSheets, sheet);
}

/** Whether something is neither there nor made by this batch; from now on it counts as made. */
function isNew({ made }: Making, kind: string, name: string, there: readonly string[]): boolean {
  const key = `${kind} ${name.toLowerCase()}`;
  if (holds(there, name) || made.has(key)) return false;
  made.add(key);
  return true;
}
