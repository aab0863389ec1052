/** A shop's rows as a table of ours, and how much of them cannot be read. */
import { drained, type Progress } from '../../core/index';
import type { TableSchema } from '../columns';
import type { Seen } from '../port';
import { columnOf } from '../schema';
import { ourCell, reads } from './cells';
import type { ColumnMatch } from './types';

/** Rows between two rests. */
const ROWS_A_STEP = 500;

/**
 * The rows under our own headings, in our order and our units; what cannot be converted stays as it stands, so that whoever reads
 * it names it.
 *
 * @param rows body rows of the shop's, without headings
 * @returns header row first, then as many rows as were given
 */
export function present(
  schema: TableSchema,
  matches: readonly ColumnMatch[],
  rows: readonly (readonly Seen[])[],
): Seen[][] {
  return drained(presentSteps(schema, matches, rows));
}

/** The same in steps. */
export function* presentSteps(
  schema: TableSchema,
  matches: readonly ColumnMatch[],
  rows: readonly (readonly Seen[])[],
): Generator<Progress, Seen[][]> {
  const columns = inOurOrder(schema, matches);
  const matrix: Seen[][] = [columns.map(({ column }) => column.header)];
  for (const [at, cells] of rows.entries()) {
    matrix.push(columns.map(({ column, match }) => ourCell(column, match.unit, cells[match.position] ?? null)));
    if (at % ROWS_A_STEP === ROWS_A_STEP - 1) yield { done: at + 1, of: rows.length };
  }
  return matrix;
}

function inOurOrder(schema: TableSchema, matches: readonly ColumnMatch[]) {
  const byKey = new Map(matches.map((match) => [match.key, match]));
  return schema.columns.flatMap((column) => {
    const match = byKey.get(column.key);
    return match ? [{ column, match }] : [];
  });
}

/** Cells of one column that cannot be read as it. */
export interface Unread {
  readonly count: number;
  /** Rows of the first of them, counted from 0 among the rows that were given. */
  readonly rows: readonly number[];
}

const MOST_ROWS = 5;

/** Counts the cells that cannot be read, over all rows, in steps; by our key, each matched column among them. */
export function* countUnread(
  schema: TableSchema,
  matches: readonly ColumnMatch[],
  rows: readonly (readonly Seen[])[],
): Generator<Progress, ReadonlyMap<string, Unread>> {
  const counts = new Map<string, { count: number; rows: number[] }>();
  const columns = matches.map((match) => {
    const count = { count: 0, rows: [] };
    counts.set(match.key, count);
    return { match, column: columnOf(schema, match.key), count: count as { count: number; rows: number[] } };
  });
  for (const [at, cells] of rows.entries()) {
    for (const { match, column, count } of columns) {
      if (reads(column, match.unit, cells[match.position] ?? null)) continue;
      count.count += 1;
      if (count.rows.length < MOST_ROWS) count.rows.push(at);
    }
    if (at % ROWS_A_STEP === ROWS_A_STEP - 1) yield { done: at + 1, of: rows.length };
  }
  return counts;
}
