/** Connections as the table Headings keeps them: which list of the shop's stands for which of our tables. Pure. */
import { fail, ok, type Issue, type Result } from '../../core/index';
import type { TableSchema } from '../columns';
import { folded } from '../headings';
import { matchHeaders, readTable, type Matrix } from '../records';
import { HEADINGS } from '../tables/headings';
import { LIST_TABLES } from './listTables';
import type { ColumnMatch, ShopUnit } from './types';

/** One list of the shop's that stands for one of our tables. */
export interface Connection {
  readonly schema: TableSchema;
  /** The shop's table, or the name that was given to a plain range. */
  readonly list: string;
  /** Where its headings stood when it was connected, as an address; of an older workbook not known. */
  readonly where?: string | undefined;
  /** Positions are not kept: a column is found by its heading. */
  readonly columns: readonly ColumnMatch[];
}

/**
 * Reads Headings.
 *
 * @param matrix header row first
 * @returns a connection for each of our tables that has rows there, or the first thing that is wrong with the table
 */
export function readConnections(matrix: Matrix, headerRow = 1): Result<readonly Connection[]> {
  const read = readTable(HEADINGS, matrix, headerRow);
  if (!read.ok) return read;
  const byTable = new Map<string, { schema: TableSchema; list: string; where?: string; columns: ColumnMatch[] }>();
  for (const { values, issues, sheetRow } of read.value.rows) {
    const [issue] = issues;
    if (issue) return fail(issue);
    const text = (key: string): string => String(values.get(key) ?? '');
    const schema = LIST_TABLES.find(({ name }) => name === text('table'));
    const key = schema && keyOf(schema, text('column'));
    if (!schema || key === undefined) return fail(unknownColumn(sheetRow, text('table'), text('column')));
    const known = byTable.get(schema.name) ?? { schema, list: text('list'), ...whereOf(text('where')), columns: [] };
    if (folded(known.list) !== folded(text('list'))) return fail(twoLists(sheetRow, schema.name, known.list));
    if (known.columns.some((column) => column.key === key)) return fail(columnTwice(sheetRow, text('column')));
    const unit = (text('unit') || null) as ShopUnit;
    known.columns.push({ key, heading: text('heading'), position: -1, unit });
    byTable.set(schema.name, known);
  }
  return ok([...byTable.values()]);
}

function whereOf(where: string): { where?: string } {
  return where === '' ? {} : { where };
}

/** Our column by what Headings calls it: its heading as it is now, or as an earlier version had it. */
function keyOf(schema: TableSchema, column: string): string | undefined {
  return [...matchHeaders(schema, [column]).keys()][0];
}

function unknownColumn(row: number, table: string, column: string): Issue {
  return {
    code: 'unknownChoice',
    field: `Headings row ${row}, Column`,
    got: column,
    expected: `a heading of ${table}`,
  };
}

function twoLists(row: number, table: string, list: string): Issue {
  return { code: 'contradiction', field: `Headings row ${row}`, expected: `${table} is connected to ${list} above` };
}

function columnTwice(row: number, column: string): Issue {
  return { code: 'duplicate', field: `Headings row ${row}, Column`, got: column };
}

/** Rows of Headings that say a connection, in the order of our columns. */
export function headingRows({ schema, list, where, columns }: Connection): string[][] {
  return schema.columns.flatMap(({ key, header }) => {
    const match = columns.find((column) => column.key === key);
    return match ? [[schema.name, header, where ?? '', match.heading, match.unit ?? '', list]] : [];
  });
}

/** Setting of the workbook that keeps where the columns of a list stood when it was connected: a hint, where a heading is gone. */
export function placesKey(table: string): string {
  return `setwright.listPlaces.${table}`;
}

export function placesText(columns: readonly ColumnMatch[]): string {
  return JSON.stringify(Object.fromEntries(columns.map(({ key, position }) => [key, position])));
}

/** The connection with the places that were kept; what was not kept, or not by us, is left open. */
export function withPlaces(connection: Connection, text: string | null): Connection {
  const places = placesIn(text);
  const columns = connection.columns.map((column) => {
    const place = places[column.key];
    return typeof place === 'number' ? { ...column, position: place } : column;
  });
  return { ...connection, columns };
}

function placesIn(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const places: unknown = JSON.parse(text ?? '{}');
    return typeof places === 'object' && places !== null ? (places as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
