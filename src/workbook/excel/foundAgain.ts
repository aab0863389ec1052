/** Where what was written in earlier requests of a write stands now: a person may have sorted it before the one that failed. */
import type { BlockSeen, Written, WrittenRows } from '../port';
import { named } from '../shared/address';
import { cellNow, holds, isBack, isSkip } from '../shared/cellNow';
import type { PutCell } from '../shared/cellNow';
import { findRows } from '../shared/rows';
import { sentOf } from './attempted';
import type { Part } from './attempted';

export interface FoundBlock {
  readonly written: Written;
  /** What stands there. */
  readonly block: BlockSeen;
}

interface ToFind extends FoundBlock {
  readonly parts: readonly Part[];
  /** Of a table or list: what its rows are called. */
  readonly rows: WrittenRows | undefined;
  /** The whole table or list. */
  readonly list: BlockSeen | undefined;
}

/** The block where it stands, in parts if need be, and what of it was not found for certain. */
export function foundAgain({ written, block, parts, rows, list }: ToFind): {
  readonly found: readonly FoundBlock[];
  readonly lost: readonly string[];
} {
  const sent = sentOf(written.at, parts);
  const only = (which: 'failed' | 'through'): Written => ({
    ...written,
    put: written.put.map((line, down) => line.map((cell, i) => (sent[down]?.[i] === which ? cell : SKIP))),
  });
  const early = only('through');
  if (standsAsPut(early, block)) return { found: [{ written, block }], lost: [] };
  // What went with the request that failed was put where it is now.
  const late = { written: only('failed'), block };
  if (rows && list) {
    const { written: again, notFound } = findRows(early, rows, list);
    return { found: [late, { written: again, block: list }], lost: notFound };
  }
  const again = byContent(early, block);
  return again ? { found: [late, { written: again, block }], lost: [] } : { found: [late], lost: [named(written.at)] };
}

const SKIP = { skip: true } as const;

/**
 * Whether a row of what was put shows in another row by now, and not where it was put: rows were put in or taken out right after the request
 * that failed, and what a person seems to have typed is ours.
 */
export function isDisplaced({ at, before, put }: Written, block: BlockSeen): boolean {
  const placeOf = (row: number, across: number) => ({ sheet: at.sheet, row: at.row + row, column: at.column + across });
  const filled = put.map((line) =>
    line.flatMap((cell, across) => (isSkip(cell) || cell === null || cell === '' ? [] : [{ cell, across }])),
  );
  const shows = (down: number, row: number): boolean =>
    filled[down]?.every(({ cell, across }) => holds(block, cell, placeOf(row, across))) ?? false;
  const isAsBefore = (row: number): boolean =>
    filled[row]?.every(({ across }) => isBack(block, before[row]?.[across] ?? null, placeOf(row, across))) ?? true;
  const rows = [...filled.keys()].filter((row) => filled[row]?.length);
  const strange = rows.filter((row) => !shows(row, row) && !isAsBefore(row));
  return strange.some((row) => rows.some((down) => down !== row && !shows(down, down) && shows(down, row)));
}

/** Whether every cell holds what was put. */
function standsAsPut({ at, put }: Written, block: BlockSeen): boolean {
  return put.every((line, down) =>
    line.every((cell, across) => {
      return isSkip(cell) || holds(block, cell, { sheet: at.sheet, row: at.row + down, column: at.column + across });
    }),
  );
}

/**
 * Rows of plain cells, found by what was put into them. Where all that are found stand where they stood, nothing was sorted: the others were
 * typed into. Null where rows were sorted and some are not found, or stand for others that held something else before.
 */
function byContent(written: Written, block: BlockSeen): Written | null {
  const { at, before, put } = written;
  const standing = new Map<string, number[]>();
  const texts = put.map((line) => keyOf(line));
  const columns = put[0]?.map((_, across) => across) ?? [];
  const shownIn = (row: number, line: readonly PutCell[]): string =>
    JSON.stringify(
      columns.map((across) => {
        if (isSkip(line[across])) return null;
        const place = { sheet: at.sheet, row: at.row + row, column: at.column + across };
        const { value, formula } = cellNow(block, place);
        return formula ?? (value === '' ? null : value);
      }),
    );
  // Rows of one part have the same columns put.
  const shape = put.find((line) => !line.every(isSkip)) ?? [];
  for (let row = 0; row < at.rows; row += 1) {
    const text = shownIn(row, shape);
    standing.set(text, [...(standing.get(text) ?? []), row]);
  }
  const wanted = new Map<string, number[]>();
  texts.forEach((text, down) => {
    if (text !== null) wanted.set(text, [...(wanted.get(text) ?? []), down]);
  });
  const places = new Map<number, number>();
  let unsure = 0;
  for (const [text, rows] of wanted) {
    const now = standing.get(text) ?? [];
    const alike = new Set(rows.map((down) => JSON.stringify(before[down]))).size === 1;
    const still = rows.every((down) => now.includes(down));
    // One more that shows the same may be a person's own.
    const isCertain = alike && now.length === rows.length;
    if (!isCertain) unsure += 1;
    if (still) rows.forEach((down) => places.set(down, down));
    else if (isCertain) rows.forEach((down, i) => places.set(down, now[i] ?? down));
  }
  const isSorted = [...places].some(([down, row]) => down !== row);
  if (!isSorted) return written;
  return unsure > 0 ? null : moved(written, places);
}

/** What was put into a row; null where nothing was. A formula of ours cannot be told from its text. */
function keyOf(line: readonly PutCell[]): string | null {
  if (line.every(isSkip)) return null;
  return JSON.stringify(line.map((cell) => (isSkip(cell) || cell === '' ? null : cell)));
}

function moved({ at, before, put }: Written, places: ReadonlyMap<number, number>): Written {
  const was = put.map((line) => line.map((): Written['before'][number][number] => null));
  const cells = put.map((line) => line.map((): PutCell => SKIP));
  for (const [down, row] of places) {
    was[row] = [...(before[down] ?? [])];
    cells[row] = [...(put[down] ?? [])];
  }
  return { at, before: was, put: cells };
}
