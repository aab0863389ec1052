import { atEase, nextTurn } from '../pace';
import type { Block } from '../port';
import { cellSteps, loadCells } from './cells';
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

/** A range of more rows than these is a long answer. */
const MANY_ROWS = 1000;

/** Everything at once; without the types of cells, errors are told by their text alone. */
export function atOnce(typed = true): CellReader {
  // A table's size is not known yet.
  const size = typed ? 0 : Infinity;
  const waiting: (() => Promise<void>)[] = [];
  return {
    add: (range, place) => {
      loadCells(range, size);
      let cells: Cells = { values: [], formulas: [] };
      waiting.push(async () => {
        const at = place();
        if (!at) return;
        // The client library takes an answer over in one piece, to which nothing else is to come.
        if (at.rows > MANY_ROWS) await nextTurn();
        cells = await atEase(cellSteps(range, size));
      });
      return { cells: () => cells };
    },
    finish: async () => {
      for (const take of waiting) await take();
    },
  };
}
