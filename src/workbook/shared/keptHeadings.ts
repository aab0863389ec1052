/** Headings that a list of plain cells got at its right end: taking back leaves them where something stands below that is not ours. */
import type { BlockSeen, Written, WrittenRows } from '../port';
import { cellNow, isBlank, isSkip } from './cellNow';
import type { Place } from './cellNow';

/**
 * Cells that hold something else than what is taken back, below headings that came with the written block. Results without their
 * headings would tell nobody what they are, and the next fill would not know its columns again.
 *
 * @param written the block where it stands now
 */
export function filledBelow(
  { at, before, put }: Written,
  rows: WrittenRows | undefined,
  seen: BlockSeen | undefined,
  goes: (sheet: string, row: number, column: number) => boolean,
): Place[] {
  if (rows?.headingRows === undefined || !seen?.sheetExists) return [];
  const { sheet, row: top, column: left } = seen.at;
  const body = top + rows.headingRows;
  const columns = put.flatMap((line, down) =>
    line.flatMap((cell, across) =>
      at.row + down < body && !isSkip(cell) && (before[down]?.[across] ?? '') === '' ? [at.column + across] : [],
    ),
  );
  return seen.values.slice(rows.headingRows).flatMap((_, down) =>
    columns
      .filter((column) => column >= left)
      .map((column) => ({ sheet, row: body + down, column }))
      .filter((place) => !isBlank(cellNow(seen, place)) && !goes(sheet, place.row, place.column)),
  );
}

/** A written block of a list without its headings. */
export function belowHeadings(written: Written, { headingRows = 0 }: WrittenRows, { at }: BlockSeen): Written {
  const body = at.row + headingRows;
  const put = written.put.map((line, down) =>
    written.at.row + down < body ? line.map(() => ({ skip: true }) as const) : line,
  );
  return { ...written, put };
}
