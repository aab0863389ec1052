/** A list of the shop's seen as the table of ours that it stands for: our headings, our units, its own cells. Pure. */
import { drained, fail, ok, type Issue, type Result } from '../../core/index';
import type { Column, TableSchema } from '../columns';
import type { Block, BlockSeen, Put, Seen, TableSeen } from '../port';
import { callBy, tellBy } from '../records';
import { ourCell, shopCell } from './cells';
import type { Connection } from './connections';
import { calledOf } from './listPlace';
import { LIST_TABLES } from './listTables';
import { toldIn } from './kindByName';
import { resolve, type BrokenMatch } from './resolve';
import { headingsAt, isUnits, type Rows } from './headingsAt';
import type { ColumnMatch } from './types';

/** How a list shows a heading that stands for none of ours, so that no column of ours is taken for it. */
export const NOT_OURS = 'own: ';

/** Where the cells of a list come from: a table, or cells that have a name. */
export type ListSeen = TableSeen | BlockSeen;

/** A table of ours as it is handed on, with what it takes to write into the list behind it. */
export interface StandIn extends TableSeen {
  readonly connectedTo: string;
  /** The list as the workbook showed it. */
  readonly behind: ListSeen;
  /** The columns that are ours, where they stand now. */
  readonly matches: readonly ColumnMatch[];
}

export function isStandIn(seen: object): seen is StandIn {
  return 'behind' in seen;
}

export function isNamed(list: ListSeen): list is BlockSeen {
  return !('headers' in list);
}

/** What became of a connection whose list is not as it was. */
export interface BrokenConnection {
  readonly connection: Connection;
  readonly broken: readonly BrokenMatch[];
}

/** Rows of a list, headings first; a plain range may have two rows of them. */
function rowsOf(list: ListSeen): readonly (readonly Seen[])[] {
  return isNamed(list) ? list.values : [list.headers, ...list.rows];
}

/**
 * The reading with fewer headings that cannot be found: one row of them, or two. Where both find all, no matched column has a unit in
 * a row of units; that row is no row of the body all the same.
 */
function headed(connection: Connection, rows: Rows, named: boolean) {
  const tries = (named ? ([1, 2] as const) : ([1] as const)).map((headerRows) => {
    const { headings } = headingsAt(rows, headerRows - 1, headerRows);
    return { headerRows, headings, resolved: resolve(connection.columns, headings) };
  });
  const units = isUnits(rows[1] ?? []);
  return tries.reduce((best, each) => {
    const more = best.resolved.broken.length - each.resolved.broken.length;
    return more > 0 || (more === 0 && units) ? each : best;
  });
}

/** How many rows of headings a list of plain cells begins with. */
export function headingLines(connection: Connection, rows: Rows): 1 | 2 {
  return headed(connection, rows, true).headerRows;
}

/**
 * Which columns of a connection a list has no more.
 *
 * @param rows its first rows, headings first
 * @param named whether it is plain cells that have a name
 */
export function brokenIn(connection: Connection, rows: Rows, named: boolean): readonly BrokenMatch[] {
  return headed(connection, rows, named).resolved.broken;
}

/** Rows that are turned into ours at a stretch. */
const ROWS_A_STEP = 200;

/**
 * The list as our table.
 *
 * @returns the stand-in, or what can no longer be found in the list
 */
export function standIn(connection: Connection, list: ListSeen): StandIn | BrokenConnection {
  return drained(standInSteps(connection, list));
}

/** {@link standIn} in steps: a list may have tens of thousands of rows. */
export function* standInSteps(connection: Connection, list: ListSeen): Generator<void, StandIn | BrokenConnection> {
  const { schema } = connection;
  const { headerRows, headings, resolved } = headed(connection, rowsOf(list), isNamed(list));
  if (resolved.broken.length > 0) return { connection, broken: resolved.broken };
  const skip = headerRows - 1;
  const columns = headings.map((_, position) => columnAt(schema, resolved.found, position));
  const rows: (readonly Seen[])[] = [];
  for (const cells of rowsOf(list).slice(headerRows)) {
    rows.push(cells.map((cell, at) => readAs(columns[at], cell)));
    if (rows.length % ROWS_A_STEP === 0) yield;
  }
  const formulas = isNamed(list) ? list.formulas.slice(headerRows) : list.formulas;
  const at: Block = { ...list.at, row: list.at.row + skip, rows: list.at.rows - skip };
  // A column that the owner did not connect must not be taken for ours by its heading.
  const headers = headings.map((heading, position) => columns[position]?.column.header ?? `${NOT_OURS}${heading}`);
  const told = toldIn(schema, resolved.found);
  if (told) tellBy(headers, told);
  const adrift = at.sheet === '';
  callBy(headers, { list: adrift ? calledOf(connection) : at.sheet, headings: theirHeadings(columns), adrift });
  return {
    name: schema.name,
    at,
    headers,
    // A table always has a row; cells that have a name may be headings alone.
    rows: rows.length > 0 || isNamed(list) ? rows : [headings.map(() => null)],
    ...(formulas?.some((line) => line.some((formula) => formula !== null)) && { formulas }),
    protected: list.protected,
    filtered: isNamed(list) ? false : list.filtered,
    connectedTo: connection.list,
    behind: list,
    matches: resolved.found,
  };
}

interface Known {
  readonly column: Column;
  readonly match: ColumnMatch;
}

/** Which column of ours stands at a place of the list. */
function columnAt(schema: TableSchema, matches: readonly ColumnMatch[], position: number): Known | undefined {
  const match = matches.find((each) => each.position === position);
  const column = match && schema.columns.find(({ key }) => key === match.key);
  return match && column && { column, match };
}

/** Headings of the owner's that are not ours. */
function theirHeadings(columns: readonly (Known | undefined)[]): Map<string, string> {
  const pairs = columns.flatMap((known) => (known ? [[known.column.header, known.match.heading] as const] : []));
  return new Map(pairs.filter(([ours, theirs]) => ours !== theirs));
}

function readAs(known: Known | undefined, cell: Seen): Seen {
  return known ? ourCell(known.column, known.match.unit, cell) : cell;
}

/**
 * A cell of ours as the list keeps it: in its own unit, and as it was where it means the same.
 *
 * @param row row of the sheet, as `column`, from 0
 */
export function cellForList({ matches, at, name, behind }: StandIn, row: number, column: number, put: Put): Put {
  const schema = LIST_TABLES.find((each) => each.name === name);
  const known = schema && columnAt(schema, matches, column - at.column);
  if (!known || put === undefined || put === null || typeof put === 'object') return put;
  const before = rowsOf(behind)[row - behind.at.row]?.[column - at.column] ?? null;
  return shopCell(known.column, known.match.unit, put, before);
}

/** Whether a column of the sheet, from 0, is one of ours there. */
export function knowsColumn({ matches, at }: StandIn, column: number): boolean {
  return matches.some(({ position }) => position === column - at.column);
}

/** How many rows of headings the list has. */
export function headingRowsOf({ at, behind }: StandIn): number {
  return at.row - behind.at.row + 1;
}

/** The row of the sheet, from 0, in which the list's headings are words: of two rows the lower, unless that holds the units of the upper. */
export function wordsRowOf(seen: StandIn): number {
  const { at, behind } = seen;
  const [upper = [], lower = []] = rowsOf(behind);
  return headingRowsOf(seen) > 1 && isUnits(lower) && !isUnits(upper) ? at.row - 1 : at.row;
}

/** The shop's heading over a column of ours, as it stands in the sheet: with its line breaks. */
export function headingBehind({ headers, behind }: StandIn, ours: string): string {
  const position = headers.indexOf(ours);
  return (isNamed(behind) ? null : behind.headers[position]) ?? ours;
}

/** A range handed to a worksheet function as the table of ours that it stands for. */
export function presentedCells(connection: Connection, cells: readonly (readonly unknown[])[]): Result<unknown[][]> {
  const list: BlockSeen = {
    at: { sheet: '', row: 0, column: 0, rows: cells.length, columns: cells[0]?.length ?? 0 },
    values: cells as readonly (readonly Seen[])[],
    formulas: [],
    sheetExists: true,
    protected: false,
    merged: [],
    tables: [],
  };
  const seen = standIn(connection, list);
  if (isStandIn(seen)) return ok([seen.headers as unknown[], ...seen.rows.map((row) => [...row])]);
  const issue: Issue = {
    code: 'missingColumn',
    field: connection.schema.name,
    expected: seen.broken[0]?.heading ?? '',
  };
  return fail(issue);
}
