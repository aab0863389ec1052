/** Reading what is too long for one answer; few workbooks need it, so it is loaded by those. */
import { atEase, nextTurn } from '../pace';
import { PortError } from '../port';
import type { Block } from '../port';
import { named } from '../shared/address';
import { cellSteps, loadCells } from './cells';
import type { Cells } from './cells';
import { hostCode } from './errors';
import type { CellReader } from './sources';

/** How many cells a piece has when an answer in one piece is refused; a piece that is refused as well is halved. */
const cellsInPiece = 100_000;

/** Pieces of some thousand cells, a round trip each; what is small shares one. */
export function inPieces(): CellReader {
  const waiting: { place: () => Block | null; cells: Cells }[] = [];
  return {
    add: (_range, place) => {
      const source = { place, cells: { values: [], formulas: [] } as Cells };
      waiting.push(source);
      return { cells: () => source.cells };
    },
    finish: (context) => {
      const parts = waiting.flatMap(({ place, cells }) => {
        const at = place();
        return at ? [{ at, into: cells }] : [];
      });
      return readPieces(context, parts, cellsInPiece);
    },
  };
}

/** Rows to be read, and where their cells go. */
interface Part {
  readonly at: Block;
  readonly into: Cells;
}

/** As many rows as a piece may have, one at least, and what is left after it. */
function nextPiece(parts: readonly Part[], mostCells: number): { piece: Part[]; left: readonly Part[] } {
  const piece: Part[] = [];
  let room = mostCells;
  for (const [i, { at, into }] of parts.entries()) {
    const rows = Math.min(at.rows, Math.max(Math.floor(room / at.columns), piece.length > 0 ? 0 : 1));
    if (rows > 0) piece.push({ at: { ...at, rows }, into });
    room -= rows * at.columns;
    const rest = { ...at, row: at.row + rows, rows: at.rows - rows };
    if (rest.rows > 0) return { piece, left: [{ at: rest, into }, ...parts.slice(i + 1)] };
  }
  return { piece, left: [] };
}

async function readPieces(context: Excel.RequestContext, all: readonly Part[], mostCells: number): Promise<void> {
  for (let parts = all, most = mostCells; parts.length > 0;) {
    const { piece, left } = nextPiece(parts, most);
    const asked = piece.map(({ at, into }) => {
      const range = context.workbook.worksheets
        .getItem(at.sheet)
        .getRangeByIndexes(at.row, at.column, at.rows, at.columns);
      const size = at.rows * at.columns;
      return { range: loadCells(range, size), size, rows: at.rows, into };
    });
    try {
      await context.sync();
    } catch (error) {
      // Long texts: what so many cells hold is known only once they were asked for.
      const rows = asked.reduce((sum, each) => sum + each.rows, 0);
      if (hostCode(error) !== 'ResponsePayloadSizeLimitExceeded') throw error;
      if (rows <= 1)
        throw new PortError(
          'tooLong',
          piece.map(({ at }) => named({ ...at, rows: 1 })),
        );
      most = Math.ceil(asked.reduce((sum, { size }) => sum + size, 0) / 2);
      continue;
    }
    // The client library takes an answer over in one piece, to which nothing else is to come.
    await nextTurn();
    for (const { range, size, into } of asked) {
      const cells = await atEase(cellSteps(range, size));
      for (const line of cells.values) into.values.push(line);
      for (const line of cells.formulas) into.formulas.push(line);
    }
    parts = left;
  }
}
