/** A written block in a block that rows were put into, or taken out of, while it was written. */
import type { BlockSeen, Written } from '../port';
import { holds, isBack, isSkip } from '../shared/cellNow';
import type { Place } from '../shared/cellNow';
import { sentOf } from './attempted';
import type { Part } from './attempted';

/**
 * Each written row where it stands now; rows in between are a person's.
 *
 * @param now the cells from its first to its last as they stand
 * @returns the block with what was put into it so far, and whether some of that was not found again for certain
 */
export function aligned(written: Written, now: BlockSeen, parts: readonly Part[]): [Written, boolean] {
  const { at, before, put } = written;
  const sent = sentOf(at, parts);
  // With columns put in as well nobody can tell.
  if (now.at.columns !== at.columns) return [written, true];
  const placeAt = (row: number, across: number): Place => {
    return { sheet: now.at.sheet, row: now.at.row + row, column: now.at.column + across };
  };
  const fits = (down: number, row: number): boolean =>
    (put[down] ?? []).every((cell, across) => {
      const place = placeAt(row, across);
      const [went, was] = [sent[down]?.[across], before[down]?.[across] ?? null];
      // What was left alone tells nothing: a formula reads otherwise once rows were put in.
      if (isSkip(cell)) return true;
      if (went && holds(now, cell, place)) return true;
      return went !== 'through' && isBack(now, was, place);
    });
  // Of a row that stands in one place or another: whether anything that was put is in one of them.
  const isPut = (down: number, from: number, to: number): boolean =>
    (put[down] ?? []).some((cell, across) => {
      const [went, was] = [sent[down]?.[across], before[down]?.[across] ?? null];
      if (!went || isSkip(cell)) return false;
      const places = Array.from({ length: to - from + 1 }, (_, i) => placeAt(from + i, across));
      return went === 'through' || places.some((place) => holds(now, cell, place) && !isBack(now, was, place));
    });
  const last = { down: at.rows - 1, row: now.at.rows - 1 };
  const first = inOrder(at.rows, now.at.rows, fits);
  const second = inOrder(at.rows, now.at.rows, (down, row) => fits(last.down - down, last.row - row));
  const from = Array.from({ length: now.at.rows }, () => -1);
  let isLost = false;
  first.forEach((row, down) => {
    const mirrored = second[last.down - down];
    const other = mirrored === undefined ? undefined : last.row - mirrored;
    if (row !== undefined && row === other) from[row] = down;
    // What was taken out whole is no loss; what stands in one place or another is not put back by chance.
    else if (row !== other && isPut(down, row ?? other ?? 0, other ?? row ?? 0)) isLost = true;
  });
  const blank = Array.from({ length: at.columns }, () => null);
  const skip = Array.from({ length: at.columns }, () => ({ skip: true }) as const);
  const placed = { ...written, at: now.at, before: from.map((i) => before[i] ?? blank) };
  const lines = from.map((i) => put[i]?.map((cell, across) => (sent[i]?.[across] ? cell : skip[0])) ?? skip);
  return [{ ...placed, put: lines.map((line) => line.map((cell) => cell ?? { skip: true })) }, isLost];
}

/** For each row its place among more rows, or fewer; undefined for one that is none of them. */
function inOrder(count: number, places: number, fits: (down: number, row: number) => boolean): (number | undefined)[] {
  let more = places - count;
  let row = 0;
  return Array.from({ length: count }, (_, down) => {
    while (more > 0 && !fits(down, row)) [row, more] = [row + 1, more - 1];
    if (more < 0 && !fits(down, row)) {
      more += 1;
      return undefined;
    }
    row += 1;
    return row - 1;
  });
}
