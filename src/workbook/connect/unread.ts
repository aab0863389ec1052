/** How many cells of a shop's columns cannot be read as ours. */
import type { Progress } from '../../core/index';
import type { TableSchema } from '../columns';
import type { Seen } from '../port';
import { isBlank } from '../records';
import { columnOf } from '../schema';
import { reads } from './cells';
import type { ColumnMatch } from './types';

/** Rows between two rests. */
const ROWS_A_STEP = 500;

/** Cells of one column. */
export interface Unread {
  /** Those that cannot be read as it, of those that hold something. */
  readonly count: number;
  readonly filled: number;
  /** The first different ones of them, as they stand. */
  readonly such: readonly Seen[];
}

const MOST_SUCH = 2;

/** Counts the cells that cannot be read, over all rows, in steps; by our key, each matched column among them. */
export function* countUnread(
  schema: TableSchema,
  matches: readonly Pick<ColumnMatch, 'key' | 'position' | 'unit'>[],
  rows: readonly (readonly Seen[])[],
): Generator<Progress, ReadonlyMap<string, Unread>> {
  const columns = matches.map(({ key, position, unit }) => {
    return { key, position, unit, column: columnOf(schema, key), count: 0, filled: 0, such: [] as Seen[] };
  });
  for (const [at, cells] of rows.entries()) {
    for (const each of columns) {
      const cell = cells[each.position] ?? null;
      if (isBlank(cell)) continue;
      each.filled += 1;
      if (reads(each.column, each.unit, cell)) continue;
      each.count += 1;
      if (each.such.length < MOST_SUCH && !each.such.includes(cell)) each.such.push(cell);
    }
    if (at % ROWS_A_STEP === ROWS_A_STEP - 1) yield { done: at + 1, of: rows.length };
  }
  return new Map(columns.map(({ key, count, filled, such }) => [key, { count, filled, such }]));
}
