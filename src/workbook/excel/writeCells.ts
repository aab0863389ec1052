import { PortError } from '../port';
import type { Block, Cell } from '../port';
import { asTyped } from '../safeCell';
import { named } from '../shared/address';
import { bytesOf } from './batch';
import type { Batch } from './batch';

/** What goes into a cell: a value, a formula, or `undefined` to leave it alone. */
export type CellToWrite = Cell | { readonly formula: string } | undefined;

type Line = readonly CellToWrite[];

/** Cells that are put or compared at a stretch: they take some milliseconds, the client library's part included. */
const CELLS_AT_A_STRETCH = 20_000;

/** A block, rows of a long one in parts. */
export function rowParts(at: Block): Block[] {
  const rows = Math.max(1, Math.floor(CELLS_AT_A_STRETCH / at.columns));
  return Array.from({ length: Math.ceil(at.rows / rows) }, (_, i) => {
    return { ...at, row: at.row + i * rows, rows: Math.min(rows, at.rows - i * rows) };
  });
}

/** Writes a block, all in one request unless it would not fit into one; between the parts of a long one the page gets a turn. */
export async function writeCells<T>(
  batch: Batch,
  at: Block,
  cells: readonly (readonly T[])[],
  toWrite: (cell: T) => CellToWrite,
): Promise<void> {
  const formulas: FormulaAt[] = [];
  for (const part of rowParts(at)) {
    await batch.pause();
    const lines = cells.slice(part.row - at.row, part.row - at.row + part.rows).map((line) => line.map(toWrite));
    const values = lines.map((line) => line.map(toValue));
    if (values.some((line) => line.some((cell) => cell !== null))) await send(batch, part, values, 'values');
    formulas.push(...formulasIn(lines, part.row - at.row));
  }
  if (formulas.length > 0) await writeFormulas(batch, at, formulas);
}

/** As the client library wants it: text safe from being read as something else, blank as an empty text, null to leave alone. */
function toValue(cell: CellToWrite): Cell {
  if (cell === undefined || isFormula(cell)) return null;
  if (cell === null) return '';
  return typeof cell === 'string' ? asTyped(cell) : cell;
}

/** For what is as it is to be written already. */
export function asIs(cell: CellToWrite): CellToWrite {
  return cell;
}

function isFormula(cell: CellToWrite): cell is { readonly formula: string } {
  return typeof cell === 'object' && cell !== null;
}

/** What is put into a block of cells: values, or formulas, which may fill cells beside and below. */
type As = 'values' | 'formulas';

/** Puts cells into the request, by halves of the rows where they, or what is looked at once more, are too long for one. */
async function send(batch: Batch, at: Block, lines: Cell[][], as: As): Promise<void> {
  const bytes = lengthOf(lines);
  if ((bytes > batch.most || batch.looking(at) > batch.most) && lines.length > 1) {
    const half = Math.ceil(lines.length / 2);
    await send(batch, { ...at, rows: half }, lines.slice(0, half), as);
    await send(batch, { ...at, row: at.row + half, rows: lines.length - half }, lines.slice(half), as);
    return;
  }
  // What is asked about rows without a formula would be asked for nothing.
  if (lines.every((line) => line.every((cell) => cell === null))) return;
  if (bytes > batch.most) throw new PortError('tooLong', [named(at)]);
  await batch.room(bytes);
  await batch.writing(at);
  const range = rangeOf(batch.context, at);
  if (as === 'values') range.values = lines;
  else range.formulas = lines;
}

/** How many bytes cells take as JSON: Excel counts these, and a letter may have three. */
export function lengthOf(lines: readonly (readonly CellToWrite[])[]): number {
  return bytesOf(JSON.stringify(lines));
}

interface FormulaAt {
  readonly down: number;
  readonly across: number;
  readonly formula: string;
}

function formulasIn(lines: readonly Line[], from: number): FormulaAt[] {
  return lines.flatMap((line, i) =>
    line.flatMap((cell, across) => (isFormula(cell) ? [{ down: from + i, across, formula: cell.formula }] : [])),
  );
}

/** Writes formulas into the smallest block that holds them all. */
async function writeFormulas(batch: Batch, at: Block, formulas: readonly FormulaAt[]): Promise<void> {
  const limits = (pick: (each: FormulaAt) => number): { from: number; count: number } => {
    const [from, to] = formulas
      .map(pick)
      .reduce<[number, number]>(
        ([least, most], place) => [Math.min(least, place), Math.max(most, place)],
        [Infinity, 0],
      );
    return { from, count: to - from + 1 };
  };
  const rows = limits(({ down }) => down);
  const columns = limits(({ across }) => across);
  const lines = Array.from({ length: rows.count }, () => Array<string | null>(columns.count).fill(null));
  for (const { down, across, formula } of formulas) {
    const line = lines[down - rows.from];
    if (line) line[across - columns.from] = formula;
  }
  const [row, column] = [at.row + rows.from, at.column + columns.from];
  await send(batch, { sheet: at.sheet, row, column, rows: rows.count, columns: columns.count }, lines, 'formulas');
}

export function rangeOf(context: Excel.RequestContext, at: Block): Excel.Range {
  return context.workbook.worksheets.getItem(at.sheet).getRangeByIndexes(at.row, at.column, at.rows, at.columns);
}
