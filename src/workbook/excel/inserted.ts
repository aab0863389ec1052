/**
 * Rows that a person put in right after a write failed: where what was written stands by then is not known by any range that a batch holds,
 * but it shows, all of it below blank rows that were put in.
 */
import type { Block, BlockSeen, Written } from '../port';
import { named, overlap, sameBlock, sameName } from '../shared/address';
import { cellNow, holds, isBlank, isSkip } from '../shared/cellNow';
import { MOST_ROWS } from '../shared/limits';
import type { Part } from './attempted';
import type { ExcelHost } from './host';
import type { Moved } from './places';
import { askAll } from './read';
import { askBlock } from './readBlock';

/** Blank rows that were put in. */
interface Inserted {
  readonly sheet: string;
  readonly row: number;
  readonly rows: number;
}

/** More rows at once are not looked for. */
const MOST_PUT_IN = 100;

/**
 * Where blocks stand after that, and what surely was written; null where nothing tells that rows were put in.
 *
 * @param written what can have been put
 * @param places every block that has to be found again
 */
export async function insertedSince(
  host: ExcelHost,
  written: readonly Written[],
  places: readonly Block[],
  parts: readonly Part[],
): Promise<{ readonly moved: Moved; readonly parts: readonly Part[] } | null> {
  const put = written.filter(({ put: lines }) => lines.some((line) => !line.every(isSkip)));
  const { answer: seen } = await askAll(host, (asking) => {
    const blocks = put.map(({ at }) => {
      return askBlock(asking, { ...at, rows: Math.min(at.rows + MOST_PUT_IN, MOST_ROWS - at.row) }, []);
    });
    return () => blocks.map((block) => block());
  });
  const found = put.flatMap((each, i) => insertedInto(each, seen[i]) ?? []);
  const inserted = found.filter(({ sheet }, i) => found.findIndex((other) => sameName(other.sheet, sheet)) === i);
  if (inserted.length === 0) return null;
  const after = (at: Block): Block => inserted.reduce(shifted, at);
  const moved = places.filter((at) => !sameBlock(after(at), at)).map((at) => [named(at), after(at)] as const);
  const sure = put.filter((each, i) => {
    const block = seen[i];
    return block && rowsOf(each).every((down) => shows(each, down, block, after(rowAt(each.at, down)).row));
  });
  const isSure = ({ at }: Part): boolean => sure.some((each) => overlap(each.at, at) !== null);
  return { moved: new Map(moved), parts: parts.map((part) => ({ ...part, through: part.through || isSure(part) })) };
}

/** Rows of a block into which something was put. */
function rowsOf({ put }: Written): number[] {
  return [...put.keys()].filter((down) => put[down]?.some((cell) => !isSkip(cell)));
}

function rowAt(at: Block, down: number): Block {
  return { ...at, row: at.row + down, rows: 1 };
}

function shows({ at, put }: Written, down: number, seen: BlockSeen, row: number): boolean {
  const isSeen = row < seen.at.row + seen.at.rows;
  return (put[down] ?? []).every((cell, across) => {
    return isSkip(cell) || (isSeen && holds(seen, cell, { sheet: at.sheet, row, column: at.column + across }));
  });
}

/** Where from some row on all that was put shows further down by the same, and nothing but blank rows is in between. */
function insertedInto(written: Written, seen: BlockSeen | undefined): Inserted | null {
  if (!seen?.sheetExists) return null;
  const { at } = written;
  const rows = rowsOf(written);
  const from = rows.find((down) => !shows(written, down, seen, at.row + down));
  if (from === undefined) return null;
  const isBlankRow = (row: number): boolean =>
    Array.from({ length: at.columns }, (_, i) => ({ sheet: at.sheet, row, column: at.column + i })).every((place) =>
      isBlank(cellNow(seen, place)),
    );
  const moved = rows.filter((down) => down >= from);
  for (let count = 1; count <= MOST_PUT_IN && isBlankRow(at.row + from + count - 1); count += 1) {
    const isIt = moved.every((down) => shows(written, down, seen, at.row + down + count));
    if (isIt) return { sheet: at.sheet, row: at.row + from, rows: count };
  }
  return null;
}

/** A block after rows were put in: further down, or with them inside. */
function shifted(at: Block, { sheet, row, rows }: Inserted): Block {
  if (!sameName(at.sheet, sheet) || at.row + at.rows <= row) return at;
  return at.row >= row ? { ...at, row: at.row + rows } : { ...at, rows: at.rows + rows };
}
