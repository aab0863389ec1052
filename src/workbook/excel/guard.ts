/**
 * Looking once more, in the very request that writes: what a person did between the last look and the writing is found out, and what
 * was written over is known and can be put back. It costs no round trip.
 */
import { atEase, mapSteps } from '../pace';
import { PortError } from '../port';
import type { Block, BlockSeen, Change, Receipt, TableSeen } from '../port';
import { blockOf, holdsCell, nameCells, named, overlap, sameBlock } from '../shared/address';
import { tableNamed } from '../shared/lengthen';
import { whatWasThere } from '../shared/looked';
import type { BeforeCell, Looked } from '../shared/looked';
import { blocksConcerned, changedSince, isCompared, lacksTable } from '../shared/unchanged';
import type { Concerned, Place } from '../shared/unchanged';
import { ifArrived } from './arrived';
import type { Part } from './attempted';
import type { Batch } from './batch';
import { cellsOf, loadCells, mostTyped } from './cells';
import { holds } from './standing';
import type { Stood } from './standing';
import { lengthOf, rangeOf, rowParts } from './writeCells';

/** Cells were not as they had been seen; what really was in them is kept. */
export class ChangedMeanwhile extends Error {
  readonly cells: readonly string[];

  constructor(
    readonly found: readonly Found[],
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

export interface Found extends Place {
  readonly was: BeforeCell;
}

interface Asked extends Concerned {
  readonly range: Excel.Range;
  /** How many cells the whole block has that this is a part of. */
  readonly cells: number;
  readonly looked: Looked;
  /** Blocks that these changes had put by then. */
  readonly ours: readonly Block[];
  /** Tables that it touches, asked where it is the headings of one. */
  readonly tables: Excel.TableScopedCollection | null;
}

/** What the change that is being made is about to write over. */
interface Current {
  readonly blocks: readonly Concerned[];
  readonly looked: Looked;
  /** How many requests had been sent when it was asked for. */
  readonly sent: number;
}

export interface Guard {
  /** Asks for what a change is about to write over. */
  look(change: Change, looked: Looked): Promise<void>;
  /** How long the answer is that `again` asks for. */
  looking(at: Block): number;
  /** Asks once more for cells that are about to be written in a later request than the one that asked for them. */
  again(at: Block): Promise<void>;
  /** Where tables stood right before they were made longer or wider, as far as answers came. */
  sizes(): ReadonlyMap<string, Block>;
  /** Everything that went into a request so far. */
  parts(): Part[];
  /** What can be told of a request that failed: its answer may hold some of what it asked for. */
  salvaged(): ChangedMeanwhile | null;
  /** Throws `ChangedMeanwhile` where something that arrived is not as it was seen. */
  demand(): Promise<void>;
}

export function startGuard(batch: Batch, stood: Stood): Guard {
  let asked: Asked[] = [];
  let ours: Block[] = [];
  /** What was asked for, and how many requests had been sent then. */
  const known = new Map<string, number>();
  const resized = new Map<string, { readonly range: Excel.Range; readonly seen: TableSeen }>();
  const put: { readonly at: Block; readonly sent: number }[] = [];
  let current: Current = { blocks: [], looked: [], sent: 0 };
  /** How long the answers are about what the current change is about to write over. */
  let lengths: { readonly at: Block; readonly bytes: number }[] = [];
  const load = (concerned: Concerned, looked: Looked, cells: number): void => {
    const { at, table } = concerned;
    const range = loadCells(rangeOf(batch.context, at), cells);
    const tables = table === undefined ? null : range.getTables().load('items/name');
    asked.push({ ...concerned, range, cells, looked, ours, tables });
  };
  const askPart = async (concerned: Concerned, looked: Looked, cells: number): Promise<void> => {
    const { at } = concerned;
    const bytes = answerLength(at, looked, cells);
    if (bytes > batch.most && at.rows > 1) {
      const half = Math.ceil(at.rows / 2);
      await askPart({ ...concerned, at: { ...at, rows: half } }, looked, cells);
      return askPart({ ...concerned, at: { ...at, row: at.row + half, rows: at.rows - half } }, looked, cells);
    }
    if (bytes > batch.most) throw new PortError('tooLong', [named(at)]);
    lengths.push({ at, bytes });
    await batch.answers(bytes);
    load(concerned, looked, cells);
  };
  const ask = async (concerned: Concerned, looked: Looked): Promise<void> => {
    const { at } = concerned;
    for (const part of rowParts(at)) {
      // Each part of a long block is asked, and compared, at a stretch.
      await batch.pause();
      await askPart({ ...concerned, at: part }, looked, at.rows * at.columns);
    }
  };
  /** What is asked once more before some cells are written: whole rows of a table, as wide as it is. */
  const linesOf = (at: Block): Concerned[] =>
    current.blocks.flatMap(({ at: whole, putBy }) => {
      const shared = overlap({ ...at, column: whole.column, columns: whole.columns }, whole);
      return shared ? [{ at: shared, putBy }] : [];
    });
  const bytesOfLines = (lines: readonly Concerned[]): number =>
    lines.reduce((sum, { at }) => sum + answerLength(at, current.looked, at.rows * at.columns), 0);
  return {
    look: async (change, looked) => {
      const blocks = blocksConcerned(change, looked).filter(({ at }) => holds(stood.sheets, at.sheet));
      current = { blocks, looked, sent: batch.sent() };
      lengths = [];
      for (const block of blocks) {
        // The same headings for every write into a table.
        if (!block.putBy && known.get(named(block.at)) === batch.sent()) continue;
        known.set(named(block.at), batch.sent());
        await ask(block, looked);
      }
      if ((change.do === 'widen' || change.do === 'lengthen') && !resized.has(change.table.toLowerCase())) {
        const range = batch.context.workbook.tables.getItem(change.table).getRange().load('address');
        resized.set(change.table.toLowerCase(), { range, seen: tableNamed(change.table, looked) });
      }
      // A column that is calculated throughout fills the new rows of its table by itself: asked before, not after.
      if (change.do === 'widen' || change.do === 'lengthen') {
        ours = [...ours, ...blocksConcerned(change, looked).map(({ at }) => at)];
      }
    },
    looking: (at) => {
      const bytes = lengths.reduce((sum, part) => {
        const shared = overlap({ ...at, column: part.at.column, columns: part.at.columns }, part.at);
        return sum + (shared ? (part.bytes * shared.rows) / part.at.rows : 0);
      }, 0);
      // Rows may be of any length; they are counted where it may matter.
      return bytes > batch.most / 2 ? bytesOfLines(linesOf(at)) : bytes;
    },
    again: async (at) => {
      if (batch.sent() > current.sent) {
        const lines = linesOf(at);
        const bytes = bytesOfLines(lines);
        if (bytes > batch.most) throw new PortError('tooLong', [named(at)]);
        // All in one answer: what would come with the one before would be no look any more.
        await batch.answers(bytes);
        for (const line of lines) {
          const cells = line.at.rows * line.at.columns;
          for (const part of rowParts(line.at)) load({ ...line, at: part }, current.looked, cells);
        }
      }
      ours = [...ours, at];
      put.push({ at, sent: batch.sent() });
    },
    sizes: () => sizesOf(resized),
    parts: () =>
      put.filter(({ sent }) => sent < batch.sent()).map(({ at, sent }) => ({ at, through: sent < batch.sent() - 1 })),
    salvaged: () => {
      const found = asked.flatMap(foundIfArrived);
      return found.length > 0 ? new ChangedMeanwhile(found, []) : null;
    },
    demand: async () => {
      const arrived = asked;
      asked = [];
      const found = (await atEase(mapSteps(arrived, foundChanged, 1))).flat();
      const gone = arrived.flatMap(({ at, table, tables }) => {
        const there = tables?.items.map(({ name }) => name);
        return there && lacksTable({ at, table }, there) ? [table ?? ''] : [];
      });
      const sizes = sizesOf(resized);
      for (const [name, { seen }] of resized) {
        const at = sizes.get(name);
        if (at && !sameBlock(at, seen.at)) gone.push(seen.name);
      }
      if (found.length + gone.length > 0) throw new ChangedMeanwhile(found, gone);
    },
  };
}

/** About how long the answer is: values, formulas and, of a smaller block, types of cells, of which the longest is `Boolean`. */
function answerLength(at: Block, looked: Looked, cells: number): number {
  return 2 * lengthOf(whatWasThere(at, looked)) + (cells > mostTyped ? 0 : 10 * at.rows * at.columns);
}

/** Of those of which the answer came. */
function sizesOf(resized: ReadonlyMap<string, { readonly range: Excel.Range }>): Map<string, Block> {
  return new Map(
    [...resized].flatMap(([name, { range }]) => {
      const at = blockOf(ifArrived(() => range.address) ?? '');
      return at ? [[name, at] as const] : [];
    }),
  );
}

function foundIfArrived(asked: Asked): Found[] {
  return ifArrived(() => foundChanged(asked)) ?? [];
}

function foundChanged(asked: Asked): Found[] {
  const { at, range, cells, looked, ours } = asked;
  const now: BlockSeen = { at, ...cellsOf(range, cells), sheetExists: true, protected: false, merged: [], tables: [] };
  const isOurs = ({ sheet, row, column }: Place): boolean => ours.some((block) => holdsCell(block, sheet, row, column));
  return changedSince(now, looked, (place) => isOurs(place) || !isCompared(asked, place)).map((place) => {
    const [[was = null] = []] = whatWasThere({ ...place, rows: 1, columns: 1 }, [now]);
    return { ...place, was };
  });
}
