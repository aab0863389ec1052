/** Ranges that a worksheet function is handed, as tables with their header row first. */
import { readConnections, type Connection } from '../workbook/connect/connections';
import { presentedCells } from '../workbook/connect/standIn';
import { matchHeaders } from '../workbook/records';
import { CLUBS, columnOf, STOCK, type Column, type TableSchema } from '../workbook/schema';
import { answer, cellError } from './cellError';
import { plainValue } from './cellInput';

/** Rows of cells: blanks as empty text, errors as their text. */
type Cells = unknown[][];

/** Lists of the shop's own that stand for tables of ours, as Headings says; none where it is left out. */
export type Lists = readonly Connection[];

export function listsIn(headings: unknown): Lists {
  const cells = cellsOf(headings);
  return cells ? answer(readConnections(cells)) : [];
}

/** A table that is needed. */
export function table(given: unknown, field: string, schema: TableSchema, lists: Lists = []): Cells {
  return withBlanks(presented(needed(given, field), schema, lists), schema);
}

/** A list of the shop's under our headings and in our units; whatever is connected to nothing stays as it came. */
function presented(cells: Cells, schema: TableSchema, lists: Lists): Cells {
  const connection = lists.find((each) => each.schema.name === schema.name);
  return connection ? answer(presentedCells(connection, cells)) : cells;
}

/**
 * A table, or null where nothing or a blank cell was given.
 *
 * Without a schema its 0s stay as they came: Settings keeps words and numbers in one column, and takes each 0 for a blank itself.
 */
export function optionalTable(given: unknown, schema: TableSchema | null, lists: Lists = []): Cells | null {
  const cells = cellsOf(given);
  return cells && schema ? withBlanks(presented(cells, schema, lists), schema) : cells;
}

/** One club under its header row; refused where they are not one row each, or do not span the same columns. */
export function clubTable(club: unknown, header: unknown, lists: Lists = []): Cells {
  const headings = oneRow(header, 'header');
  const cells = oneRow(club, 'club');
  if (cells.length !== headings.length) {
    const expected = `it is ${cells.length} wide and header ${headings.length}; both must span the same columns`;
    throw cellError({ code: 'contradiction', field: 'club', expected });
  }
  return withBlanks(presented([headings, cells], CLUBS, lists), CLUBS);
}

function cellsOf(given: unknown): Cells | null {
  const rows: unknown[] = Array.isArray(given) ? given : [given];
  const cells = rows.map((row) => (Array.isArray(row) ? row : [row]).map((cell: unknown) => plainValue(cell) ?? ''));
  const only = cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
  // One cell holds no table: it is a blank one, which some platforms hand over as 0.
  return cells.length === 0 || only === '' || only === 0 ? null : cells;
}

function needed(given: unknown, field: string): Cells {
  const cells = cellsOf(given);
  if (!cells) throw cellError({ code: 'blank', field, expected: 'a table with its header row' });
  return cells;
}

function oneRow(given: unknown, field: string): unknown[] {
  const [first, ...more] = needed(given, field);
  if (!first || more.length > 0) {
    const expected = `one row is needed, and ${more.length + 1} were given`;
    throw cellError({ code: 'contradiction', field, expected });
  }
  return first;
}

/**
 * Puts back the blanks of a range that came as 0, as some versions of Excel hand them over: a 0 among words, a 0 where the range
 * holds none, a row of nothing else, and a stock that was never counted. Elsewhere 0 and blank mean the same.
 */
function withBlanks(cells: Cells, schema: TableSchema): Cells {
  const [headings = [], ...body] = cells;
  if (!body.some((row) => row.includes(0))) return cells;
  const at = matchHeaders(schema, headings);
  const blanks = new Set<number>();
  for (const column of schema.columns) {
    const position = at.get(column.key);
    if (position === undefined) continue;
    if (isNever0(column) || (column === onHand && isUncounted(body, position))) blanks.add(position);
  }
  const restored = body.map((row) => {
    const nothing = row.every((cell) => cell === 0 || cell === '');
    return row.map((cell, position) => (cell === 0 && (nothing || blanks.has(position)) ? '' : cell));
  });
  return [headings, ...restored];
}

const onHand = columnOf(STOCK, 'onHand');

function isNever0(column: Column): boolean {
  const isNumber = column.kind === 'number' || column.kind === 'count' || column.kind === 'money';
  return !isNumber || (column.low ?? -1) > 0;
}

/** Nobody keeps a list of grips none of which is there, and hardly a table is filled to its last cell. */
function isUncounted(body: Cells, position: number): boolean {
  return body.every((row) => row[position] === 0 && !row.includes(''));
}
