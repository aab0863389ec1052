import type { Block, Cell } from '../port';
import { nextTurn } from '../pace';
import { asTyped } from '../safeCell';
import type { Batch } from './batch';

/** What goes into a cell: a value, a formula, or `undefined` to leave it alone. */
export type CellToWrite = Cell | { readonly formula: string } | undefined;

type Line = readonly CellToWrite[];

/** Rows that are put into one assignment: each takes the client library some milliseconds, and the page a turn. */
const CELLS_AT_A_STRETCH = 20_000;

/** Writes a block; rows are sent in parts only where they would not fit into one request. */
export async function writeCells(batch: Batch, at: Block, cells: readonly Line[]): Promise<void> {
  const rows = Math.max(1, Math.floor(CELLS_AT_A_STRETCH / at.columns));
  for (let from = 0; from < at.rows; from += rows) {
    const part = cells.slice(from, from + rows);
    if (from > 0) await nextTurn();
    await writeValues(batch, { ...at, row: at.row + from, rows: part.length }, part);
  }
  const block = tightest(at, cells);
  if (block) await writeFormulas(batch, block.at, block.lines);
}

async function writeValues(batch: Batch, at: Block, cells: readonly Line[]): Promise<void> {
  const values = cells.map((line) => line.map(toValue));
  if (values.some((line) => line.some((cell) => cell !== null))) await sendValues(batch, at, values);
}

/** As the client library wants it: text safe from being read as something else, blank as an empty text, null to leave alone. */
function toValue(cell: CellToWrite): Cell {
  if (cell === undefined || isFormula(cell)) return null;
  if (cell === null) return '';
  return typeof cell === 'string' ? asTyped(cell) : cell;
}

function isFormula(cell: CellToWrite): cell is { readonly formula: string } {
  return typeof cell === 'object' && cell !== null;
}

async function sendValues(batch: Batch, at: Block, values: Cell[][]): Promise<void> {
  const characters = lengthOf(values);
  if (characters > batch.most && values.length > 1) {
    const half = Math.ceil(values.length / 2);
    await sendValues(batch, { ...at, rows: half }, values.slice(0, half));
    await sendValues(batch, { ...at, row: at.row + half, rows: values.length - half }, values.slice(half));
    return;
  }
  await batch.room(characters);
  rangeOf(batch.context, at).values = values;
}

/** How many characters cells take as JSON. */
export function lengthOf(lines: readonly (readonly CellToWrite[])[]): number {
  let characters = 2;
  for (const line of lines) {
    characters += 2;
    for (const cell of line) characters += cellLength(cell) + 1;
  }
  return characters;
}

function cellLength(cell: CellToWrite): number {
  if (cell === null || cell === undefined) return 4;
  return typeof cell === 'number' ? String(cell).length : JSON.stringify(cell).length;
}

async function writeFormulas(batch: Batch, at: Block, formulas: (string | null)[][]): Promise<void> {
  await batch.room(lengthOf(formulas));
  // Through `formulas`, where a formula may fill the cells beside and below it.
  rangeOf(batch.context, at).formulas = formulas;
}

/** The smallest part of a block that holds every formula. */
function tightest(at: Block, cells: readonly Line[]): { at: Block; lines: (string | null)[][] } | null {
  let [top, bottom, left, right] = [-1, 0, at.columns, 0];
  for (const [down, line] of cells.entries()) {
    const first = line.findIndex(isFormula);
    if (first < 0) continue;
    if (top < 0) top = down;
    bottom = down;
    left = Math.min(left, first);
    right = Math.max(right, line.findLastIndex(isFormula));
  }
  if (top < 0) return null;
  const [rows, columns] = [bottom - top + 1, right - left + 1];
  const lines = cells
    .slice(top, bottom + 1)
    .map((line) => line.slice(left, right + 1).map((cell) => (isFormula(cell) ? cell.formula : null)));
  return { at: { sheet: at.sheet, row: at.row + top, column: at.column + left, rows, columns }, lines };
}

export function rangeOf(context: Excel.RequestContext, at: Block): Excel.Range {
  return context.workbook.worksheets.getItem(at.sheet).getRangeByIndexes(at.row, at.column, at.rows, at.columns);
}
