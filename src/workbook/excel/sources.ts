import type { Block } from '../port';
import { cellsOf, loadCells } from './cells';
import type { Cells } from './cells';
import { hostCode } from './errors';

/** Cells that are being read. */
export interface CellSource {
  /** The cells, once they have arrived. */
  cells(): Cells;
}

/** Reads cells, all in the round trip that asks for the rest or, where an answer would grow too long, in pieces after it. */
export interface CellReader {
  add(range: Excel.Range, place: () => Block | null): CellSource;
  /** To be awaited after the first round trip. */
  finish(context: Excel.RequestContext): Promise<void>;
}

/** Everything at once; without the types of cells, errors are told by their text alone. */
export function atOnce(typed = true): CellReader {
  // A table's size is not known yet.
  const size = typed ? 0 : Infinity;
  return {
    add: (range, place) => {
      loadCells(range, size);
      return { cells: () => (place() ? cellsOf(range, size) : { values: [], formulas: [] }) };
    },
    finish: () => Promise.resolve(),
  };
}

/** Pieces of some thousand cells, a round trip each. */
export function inPieces(mostCells: number): CellReader {
  const waiting: { place: () => Block | null; cells: Cells }[] = [];
  return {
    add: (_range, place) => {
      const source = { place, cells: { values: [], formulas: [] } as Cells };
      waiting.push(source);
      return { cells: () => source.cells };
    },
    finish: async (context) => {
      for (const { place, cells } of waiting) {
        const at = place();
        if (at) await readPieces(context, at, mostCells, cells);
      }
    },
  };
}

async function readPieces(context: Excel.RequestContext, at: Block, mostCells: number, into: Cells): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(at.sheet);
  let rowsAtOnce = Math.max(1, Math.floor(mostCells / at.columns));
  for (let done = 0; done < at.rows;) {
    const rows = Math.min(rowsAtOnce, at.rows - done);
    const range = sheet.getRangeByIndexes(at.row + done, at.column, rows, at.columns);
    const size = rows * at.columns;
    loadCells(range, size);
    try {
      await context.sync();
    } catch (error) {
      // Long texts: what so many cells hold is known only once they were asked for.
      if (rows === 1 || hostCode(error) !== 'ResponsePayloadSizeLimitExceeded') throw error;
      rowsAtOnce = Math.ceil(rows / 2);
      continue;
    }
    const piece = cellsOf(range, size);
    for (const line of piece.values) into.values.push(line);
    for (const line of piece.formulas) into.formulas.push(line);
    done += rows;
  }
}
