/** Changes made to a workbook that is nothing but data: those that make tables and fill them. */
import type { Block, CellFormat, Change, Put } from '../../port';
import { PortError } from '../../port';
import { holdsCell, sameName } from '../../shared/address';
import { tableBlock } from '../../shared/refuse';
import { linesIn, rowPixels, spareRows, usualRows, widthInPixels } from '../measures';
import type { DraftBook, DraftSheet, DraftTable } from './book';
import { blankSheet, draftSheet, isBlankRow, shownIn } from './book';

/** Makes one change; throws where it asks for more than a workbook without a spreadsheet can do. */
export function makeChange(book: DraftBook, change: Change): void {
  switch (change.do) {
    case 'sheet':
      return void (draftSheet(book, change.name) ?? book.sheets.push(blankSheet(change.name)));
    case 'write':
      return write(sheetOf(book, change.at.sheet), change.at, change.cells);
    case 'table':
      return layTable(book, change.name, tableBlock(change.at));
    case 'format':
      return void sheetOf(book, change.at.sheet).formats.push({ at: change.at, format: change.format });
    case 'widths':
      return widen(sheetOf(book, change.sheet), change.column, change.widths);
    case 'freezeRows':
      Object.assign(sheetOf(book, change.sheet), { frozenRows: change.rows, frozenColumns: change.columns ?? 0 });
      return;
    case 'choices':
      return void book.choices.push({ at: change.at, from: sourceOf(book, change.from), hint: change.hint });
    case 'remember':
      return void book.settings.set(change.key, change.value);
    case 'show':
      book.shown = change.at;
      return;
    default:
      throw new PortError('unsupported', [], change.do);
  }
}

function sheetOf(book: DraftBook, name: string): DraftSheet {
  const sheet = draftSheet(book, name);
  if (!sheet) throw new Error(`there is no sheet ${name}`);
  return sheet;
}

function write(sheet: DraftSheet, at: Block, cells: readonly (readonly Put[])[]): void {
  cells.forEach((line, down) => {
    const row = (sheet.cells[at.row + down] ??= []);
    line.forEach((put, across) => {
      if (typeof put === 'object' && put !== null) throw new PortError('unsupported', [], put.call);
      if (put !== undefined) row[at.column + across] = put;
    });
  });
}

function layTable(book: DraftBook, name: string, at: Block): void {
  if (!book.tables.some((table) => sameName(table.name, name))) book.tables.push({ name, at });
}

function widen({ widths }: DraftSheet, column: number, characters: readonly number[]): void {
  characters.forEach((each, index) => widths.set(column + index, widthInPixels(each)));
}

type Source = Extract<Change, { do: 'choices' }>['from'];

/** The words, or the cells of the column with the blank rows below its table, so that what is added there is offered too. */
function sourceOf(book: DraftBook, from: Source): readonly string[] | Block {
  if (!('table' in from)) return from;
  const table = book.tables.find(({ name }) => sameName(name, from.table));
  const sheet = table ? draftSheet(book, table.at.sheet) : null;
  for (let column = table?.at.column ?? 0; table && column < table.at.column + table.at.columns; column += 1) {
    if (shownIn(sheet, table.at.row, column) !== from.header) continue;
    const { row, rows } = table.at;
    return { ...table.at, row: row + 1, rows: rows - 1 + blankBelow(sheet, table.at), column, columns: 1 };
  }
  throw new Error(`the table ${from.table} has no column ${from.header}`);
}

function blankBelow(sheet: DraftSheet | null, at: Block): number {
  const end = at.row + at.rows;
  const most = Math.min(spareRows, usualRows - end);
  let rows = 0;
  while (rows < most && isBlankRow(sheet, at, end + rows)) rows += 1;
  return rows;
}

/** Lets a table take in the rows right below it that hold something, as one does where a person types there. */
export function growTable(book: DraftBook, table: DraftTable): void {
  const sheet = draftSheet(book, table.at.sheet);
  while (!isBlankRow(sheet, table.at, table.at.row + table.at.rows))
    table.at = { ...table.at, rows: table.at.rows + 1 };
}

/** Gives rows of a block in which text wraps the height that it needs; rows only ever get higher. */
export function fitRows(book: DraftBook, at: Block): void {
  const sheet = sheetOf(book, at.sheet);
  const headers = new Set(
    book.tables.filter((table) => sameName(table.at.sheet, at.sheet)).map((table) => table.at.row),
  );
  for (let row = at.row; row < at.row + at.rows; row += 1) {
    let lines = 1;
    for (let column = at.column; column < at.column + at.columns; column += 1) {
      lines = Math.max(lines, linesAt(sheet, row, column, headers.has(row)));
    }
    const pixels = rowPixels(lines);
    if (pixels > (sheet.heights.get(row) ?? rowPixels(1))) sheet.heights.set(row, pixels);
  }
}

function linesAt(sheet: DraftSheet, row: number, column: number, filterButton: boolean): number {
  const text = shownIn(sheet, row, column);
  const columnPixels = sheet.widths.get(column);
  const format = formatAt(sheet, row, column);
  if (typeof text !== 'string' || columnPixels === undefined || format.wrap !== true) return 1;
  return linesIn(text, { columnPixels, bold: format.bold === true, filterButton });
}

function formatAt({ name, formats }: DraftSheet, row: number, column: number): CellFormat {
  const over = formats.filter(({ at }) => holdsCell(at, name, row, column));
  return over.reduce<CellFormat>((all, { format }) => ({ ...all, ...format }), {});
}
