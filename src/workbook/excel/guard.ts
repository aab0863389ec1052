/**
 * Looking once more, in the very request that writes: what a person did between the last look and the writing is found out, and what
 * was written over is known and can be put back. It costs no round trip.
 */
import type { Block, BlockSeen, Change, Receipt } from '../port';
import { holdsCell, nameCells, named } from '../shared/address';
import { whatWasThere } from '../shared/looked';
import type { BeforeCell, Looked } from '../shared/looked';
import { blocksConcerned, changedSince, lacksTable } from '../shared/unchanged';
import type { Concerned, Place } from '../shared/unchanged';
import type { Batch } from './batch';
import { cellsOf, loadCells, mostTyped } from './cells';
import { holds } from './standing';
import type { Stood } from './standing';
import { lengthOf, rangeOf } from './writeCells';

/** Cells were not as they had been seen; what really was in them is kept. */
export class ChangedMeanwhile extends Error {
  readonly cells: readonly string[];

  constructor(
    private readonly found: readonly Found[],
    tables: readonly string[],
  ) {
    super('cells changed while they were being written');
    this.cells = [...tables, ...nameCells(found)];
  }

  /** The receipt as it ought to be: what was there is what was there when it was written over. */
  corrected(receipt: Receipt): Receipt {
    const written = receipt.written.map((block) => {
      const { at } = block;
      const within = this.found.filter(({ sheet, row, column }) => holdsCell(at, sheet, row, column));
      if (within.length === 0) return block;
      const before = block.before.map((line) => [...line]);
      for (const { row, column, was } of within) {
        const line = before[row - at.row];
        if (line) line[column - at.column] = was;
      }
      return { ...block, before };
    });
    return { ...receipt, written };
  }
}

interface Found extends Place {
  readonly was: BeforeCell;
}

interface Asked extends Concerned {
  readonly range: Excel.Range;
  readonly looked: Looked;
  /** Blocks that these changes had put by then. */
  readonly ours: readonly Block[];
  /** Tables that it touches, asked where it is the headings of one. */
  readonly tables: Excel.TableScopedCollection | null;
}

export interface Guard {
  /** Asks for what a change is about to write over. */
  look(change: Change, looked: Looked): Promise<void>;
  /** Throws `ChangedMeanwhile` where something that arrived is not as it was seen. */
  demand(): void;
}

export function startGuard(batch: Batch, stood: Stood): Guard {
  let asked: Asked[] = [];
  let ours: Block[] = [];
  const known = new Set<string>();
  const ask = async ({ at, table }: Concerned, looked: Looked): Promise<void> => {
    const characters = answerLength(at, looked);
    if (characters > batch.most && at.rows > 1) {
      const half = Math.ceil(at.rows / 2);
      await ask({ at: { ...at, rows: half } }, looked);
      return ask({ at: { ...at, row: at.row + half, rows: at.rows - half } }, looked);
    }
    await batch.answers(characters);
    const range = loadCells(rangeOf(batch.context, at), at.rows * at.columns);
    const tables = table === undefined ? null : range.getTables().load('items/name');
    asked.push({ at, table, range, looked, ours, tables });
  };
  return {
    look: async (change, looked) => {
      for (const block of blocksConcerned(change, looked)) {
        // The same headings for every write into a table.
        if (!holds(stood.sheets, block.at.sheet) || known.has(named(block.at))) continue;
        known.add(named(block.at));
        await ask(block, looked);
      }
      if (change.do === 'write') ours = [...ours, change.at];
      // A column that is calculated throughout fills the new rows of its table by itself: asked before, not after.
      if (change.do === 'widen' || change.do === 'lengthen') {
        ours = [...ours, ...blocksConcerned(change, looked).map(({ at }) => at)];
      }
    },
    demand: () => {
      const found = asked.flatMap(foundChanged);
      const gone = asked.flatMap(({ at, table, tables }) => {
        const there = tables?.items.map(({ name }) => name);
        return there && lacksTable({ at, table }, there) ? [table ?? ''] : [];
      });
      asked = [];
      if (found.length + gone.length > 0) throw new ChangedMeanwhile(found, gone);
    },
  };
}

/** About how long the answer is: values, formulas and, of a smaller block, types of cells, of which the longest is `Boolean`. */
function answerLength(at: Block, looked: Looked): number {
  const cells = at.rows * at.columns;
  return 2 * lengthOf(whatWasThere(at, looked)) + (cells > mostTyped ? 0 : 10 * cells);
}

function foundChanged({ at, range, looked, ours }: Asked): Found[] {
  const cells = cellsOf(range, at.rows * at.columns);
  const now: BlockSeen = { at, ...cells, sheetExists: true, protected: false, merged: [], tables: [] };
  const isOurs = ({ sheet, row, column }: Place): boolean => ours.some((block) => holdsCell(block, sheet, row, column));
  return changedSince(now, looked, isOurs).map((place) => {
    const [[was = null] = []] = whatWasThere({ ...place, rows: 1, columns: 1 }, [now]);
    return { ...place, was };
  });
}
