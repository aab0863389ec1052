import type { Block } from '../port';
import { cellsOf, loadCells } from './cells';
import type { Cells } from './cells';

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

/** Everything at once. */
export function atOnce(): CellReader {
  return {
    add: (range, place) => {
      // Where the block is known beforehand, its size decides what is asked for; a table's is not known yet.
      loadCells(range);
      return { cells: () => (place() ? cellsOf(range) : { values: [], formulas: [] }) };
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
  const rowsAtOnce = Math.max(1, Math.floor(mostCells / at.columns));
  const sheet = context.workbook.worksheets.getItem(at.sheet);
  for (let done = 0; done < at.rows; done += rowsAtOnce) {
    const rows = Math.min(rowsAtOnce, at.rows - done);
    const range = loadCells(sheet.getRangeByIndexes(at.row + done, at.column, rows, at.columns));
    await context.sync();
    const piece = cellsOf(range);
    into.values.push(...piece.values);
    into.formulas.push(...piece.formulas);
  }
}
