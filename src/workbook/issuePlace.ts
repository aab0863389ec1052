/** Which cell an issue is about, by what it names: a table or a list of the shop's, a row and a column. Pure. */
import { columnsAt, folded } from './headings';
import { ROWS_BY } from './ownNames';
import type { Block, TableSeen } from './port';
import { calledBy } from './records';
import { JOBS, SETTINGS, TABLES, type TableSchema } from './schema';
import { sameName } from './shared/address';
import { tablesSeen, type ShopTables } from './shop';

/** `Taxes row 2, Percent (%)`, `“Lager” row 4, under “Preis”, Price`. */
const BY_ROW = /^(?:“(.+?)”|(\w+)) row (\d+)(?:, (?:under “.+?”, )?(.+))?$/s;
/** `Price of FERN-M in Stock`, `Currency in Settings`, `Price of FERN-M in “Lager”, under “Preis”,`. */
const BY_NAME = /^(?:(\S[^,]*?) of )?(.+) in (?:“(.+?)”|(\w+))(?:,|$)/s;

/** Under which of our headings a row of a table is known. */
const KNOWN_BY: Readonly<Record<string, string>> = { ...ROWS_BY, Jobs: 'Job', Settings: 'Setting' };

/** The cell that a field names, or the headings of a table which lacks the row that it names; null where it names none that is there. */
export function placeOfField(field: string, tables: ShopTables): Block | null {
  const [, list, name, row, column] = BY_ROW.exec(field) ?? [];
  if (row !== undefined) {
    const table = tableCalled(tables, list, name);
    return table && cellOf(table, Number(row) - 1, table.at.column + Math.max(0, columnCalled(table, column ?? '')));
  }
  const [, of, what = '', inList, inTable] = BY_NAME.exec(field) ?? [];
  const table = tableCalled(tables, inList, inTable);
  return table && namedCell(table, what, of);
}

function tableCalled(tables: ShopTables, list: string | undefined, name: string | undefined): TableSeen | null {
  const isMeant = (table: TableSeen): boolean =>
    list === undefined ? table.name === name : calledBy(table.headers)?.list === list;
  return tablesSeen(tables).find(isMeant) ?? null;
}

function cellOf({ at }: TableSeen, row: number, column: number): Block {
  return { sheet: at.sheet, row, column, rows: 1, columns: 1 };
}

function schemaOf({ name }: TableSeen): TableSchema | undefined {
  return TABLES.find((schema) => sameName(schema.name, name));
}

/** By our heading, with or without its unit; -1 where there is none. */
function columnCalled(table: TableSeen, heading: string): number {
  const schema = schemaOf(table);
  const column = schema?.columns.find(({ header }) => header === heading || header.startsWith(`${heading} (`));
  return schema && column ? columnsAt(schema, table.headers)(column.key) : -1;
}

/** A row by what it is called, and in it a column; of a setting its value. */
function namedCell(table: TableSeen, name: string, column: string | undefined): Block {
  const by = columnCalled(table, KNOWN_BY[table.name] ?? '');
  const called = table.name === JOBS.name ? name.replace(/^job /, '') : name;
  const row = table.rows.findIndex((cells) => folded(cells[by]) === folded(called));
  if (by < 0 || row < 0) return cellOf(table, table.at.row, table.at.column);
  const at = columnCalled(table, column ?? (table.name === SETTINGS.name ? 'Value' : ''));
  return cellOf(table, table.at.row + row + 1, table.at.column + (at < 0 ? by : at));
}
