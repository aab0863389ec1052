import type { Block, Cell } from '../port';
import { asTyped } from '../safeCell';
import type { Batch } from './batch';

/** What goes into a cell: a value, a formula, or `undefined` to leave it alone. */
export type CellToWrite = Cell | { readonly formula: string } | undefined;

type Line = readonly CellToWrite[];

/** Writes a block; rows are sent in parts only where they would not fit into one request. */
export async function writeCells(batch: Batch, at: Block, cells: readonly Line[]): Promise<void> {
  const values = cells.map((line) => line.map(toValue));
  if (isAnything(values)) await writeValues(batch, at, values);
  const formulas = cells.map((line) => line.map((cell) => (isFormula(cell) ? cell.formula : null)));
  const block = tightest(at, formulas);
  if (block) await writeFormulas(batch, block.at, block.lines);
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

function isAnything(lines: readonly (readonly Cell[])[]): boolean {
  return lines.some((line) => line.some((cell) => cell !== null));
}

async function writeValues(batch: Batch, at: Block, values: Cell[][]): Promise<void> {
  const characters = JSON.stringify(values).length;
  if (characters > batch.most && values.length > 1) {
    const half = Math.ceil(values.length / 2);
    await writeValues(batch, { ...at, rows: half }, values.slice(0, half));
    await writeValues(batch, { ...at, row: at.row + half, rows: values.length - half }, values.slice(half));
    return;
  }
  await batch.room(characters);
  rangeOf(batch.context, at).values = values;
}

async function writeFormulas(batch: Batch, at: Block, formulas: (string | null)[][]): Promise<void> {
  await batch.room(JSON.stringify(formulas).length);
  // Through `formulas`, where a formula may fill the cells beside and below it.
  rangeOf(batch.context, at).formulas = formulas;
}

/** The smallest part of a block that holds every formula. */
function tightest(at: Block, formulas: (string | null)[][]): { at: Block; lines: (string | null)[][] } | null {
  const top = formulas.findIndex((line) => line.some((cell) => cell !== null));
  if (top < 0) return null;
  const bottom = formulas.findLastIndex((line) => line.some((cell) => cell !== null));
  const used = Array.from({ length: at.columns }, (_, i) => formulas.some((line) => line[i] !== null));
  const left = used.indexOf(true);
  const right = used.lastIndexOf(true);
  const rows = bottom - top + 1;
  const columns = right - left + 1;
  const lines = formulas.slice(top, bottom + 1).map((line) => line.slice(left, right + 1));
  return { at: { sheet: at.sheet, row: at.row + top, column: at.column + left, rows, columns }, lines };
}

export function rangeOf(context: Excel.RequestContext, at: Block): Excel.Range {
  return context.workbook.worksheets.getItem(at.sheet).getRangeByIndexes(at.row, at.column, at.rows, at.columns);
}
