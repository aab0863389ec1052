import { drained } from '../../core/index';
import type { Block, Seen } from '../port';

/** Cells as read. */
export interface Cells {
  readonly values: Seen[][];
  readonly formulas: (string | null)[][];
}

/** Above this, types of cells are not asked for: an answer may hold 5 MB. Errors are then told by their text alone. */
export const mostTyped = 20_000;

const errorText = /^#(N\/A|[A-Z0-9/_]+[!?])$/;

/** Asks for the cells of a range; `size` is its number of cells where that is known. */
export function loadCells(range: Excel.Range, size = 0): Excel.Range {
  range.load(size > mostTyped ? 'values,formulas' : 'values,formulas,valueTypes');
  return range;
}

/** The cells of a range after the round trip. */
export function cellsOf(range: Excel.Range, size = 0): Cells {
  return drained(cellSteps(range, size));
}

/** Rows that are taken over at a stretch. */
const rowsInStep = 500;

/** {@link cellsOf} in steps: there may be a million. */
export function* cellSteps(range: Excel.Range, size = 0): Generator<void, Cells> {
  const types = size > mostTyped ? null : range.valueTypes;
  const given = range.formulas as unknown[][];
  const cells: Cells = { values: [], formulas: [] };
  for (const [down, line] of (range.values as unknown[][]).entries()) {
    const formulas = line.map((value, across) => formulaOf(value, given[down]?.[across]));
    cells.formulas.push(formulas);
    cells.values.push(
      line.map((value, across) => toSeen(value, types?.[down]?.[across] ?? null, formulas[across] != null)),
    );
    if (down % rowsInStep === rowsInStep - 1) yield;
  }
  return cells;
}

/** Excel answers a cell's value for its formula where it has none; text that begins with `=` then looks like a formula. */
function formulaOf(value: unknown, given: unknown): string | null {
  return typeof given === 'string' && given.startsWith('=') && given !== value ? given : null;
}

function toSeen(value: unknown, type: string | null, hasFormula: boolean): Seen {
  if (value === '' || value === null || value === undefined) return hasFormula ? '' : null;
  if (typeof value === 'number' || typeof value === 'boolean') return value;
  const text = String(value);
  const isError = type === null ? errorText.test(text) : type === 'Error';
  return isError ? { error: text } : text;
}

/** Takes the formulas out of cells that a formula elsewhere fills: hosts may repeat it there. */
export function withoutSpilled(cells: Cells, at: Block, spills: readonly Block[]): Cells {
  if (spills.length === 0) return cells;
  const formulas = cells.formulas.map((line) => [...line]);
  for (const spill of spills) {
    for (let row = spill.row; row < spill.row + spill.rows; row += 1) {
      for (let column = spill.column; column < spill.column + spill.columns; column += 1) {
        const line = formulas[row - at.row];
        const anchor = row === spill.row && column === spill.column;
        if (line && !anchor && column - at.column in line) line[column - at.column] = null;
      }
    }
  }
  return { values: cells.values, formulas };
}
