/**
 * Where blocks stand while what is written takes several requests: between two of them a person may put in rows or take some out, and
 * the next would write elsewhere. Excel keeps the ranges that a batch holds in step with the sheet ("automatic adjustment based on
 * surrounding changes in the document", its reference on tracked objects): each block is held by its first and its last cell.
 */
import type { Block } from '../port';
import { blockOf, named, sameBlock } from '../shared/address';
import { rangeOf } from './writeCells';

/** Blocks that stand elsewhere by now, or became longer or shorter, by their names as they were. */
export type Moved = ReadonlyMap<string, Block>;

export const NOTHING_MOVED: Moved = new Map();

/** Where a block stands by now. */
export function standsNow(moved: Moved, at: Block): Block {
  return moved.get(named(at)) ?? at;
}

export interface Places {
  /** Holds the blocks, from the request on that is about to be sent. */
  hold(): void;
  /** Put first into the request after it: that fails, with nothing done, where any of them moved. */
  demand(): void;
  /** Asks where they stand. */
  find(): Promise<Moved>;
}

interface Held {
  readonly at: Block;
  readonly first: Excel.Range;
  readonly last: Excel.Range;
}

/** @param exists whether the sheet of a block is there, or is made by the request that holds it */
export function followPlaces(
  context: Excel.RequestContext,
  blocks: () => readonly Block[],
  exists: (sheet: string) => boolean,
): Places {
  let waiting: readonly Block[] | null = null;
  const held: Held[] = [];
  let arrived = 0;
  const corner = ({ sheet, row, column }: Block) => rangeOf(context, { sheet, row, column, rows: 1, columns: 1 });
  const lastCell = (at: Block): Block => ({
    ...at,
    row: at.row + at.rows - 1,
    column: at.column + at.columns - 1,
  });
  return {
    hold: () => {
      waiting ??= [...new Map(blocks().map((at) => [named(at), at])).values()];
      for (const at of waiting.filter(({ sheet }) => exists(sheet))) {
        held.push({ at, first: corner(at), last: corner(lastCell(at)) });
      }
      waiting = waiting.filter(({ sheet }) => !exists(sheet));
    },
    demand: () => {
      arrived = held.length;
      for (const { at, first, last } of held) {
        // No cell in common is an error of Excel's.
        corner(at).getIntersection(first);
        corner(lastCell(at)).getIntersection(last);
      }
    },
    find: () => findAll(context, held.slice(0, arrived)),
  };
}

/** A cell that was deleted cannot be asked any more and fails the request: then each is asked by itself. */
async function findAll(context: Excel.RequestContext, held: readonly Held[]): Promise<Moved> {
  if (held.length === 0) return NOTHING_MOVED;
  for (const { first, last } of held) {
    first.load('address');
    last.load('address');
  }
  try {
    await context.sync();
  } catch {
    const [one, ...more] = held;
    if (!one || more.length === 0) return NOTHING_MOVED;
    const half = Math.ceil(held.length / 2);
    const parts = [await findAll(context, held.slice(0, half)), await findAll(context, held.slice(half))];
    return new Map(parts.flatMap((part) => [...part]));
  }
  return new Map(
    held.flatMap(({ at, first, last }) => {
      const [from, to] = [blockOf(first.address), blockOf(last.address)];
      if (!from || !to) return [];
      const now = { ...from, rows: to.row - from.row + 1, columns: to.column - from.column + 1 };
      return sameBlock(at, now) ? [] : [[named(at), now] as const];
    }),
  );
}
