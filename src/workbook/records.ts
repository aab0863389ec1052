/**
 * Reads a table, header row first, by its schema: finds the columns under any of their headings, checks every cell, and says of
 * each bad cell where it is and what was expected. A bad cell is left out; the rest of its row is kept.
 */
import {
  decimalText,
  drained,
  fail,
  ok,
  parseReading,
  plainNumber,
  RANGES,
  readAmount,
  readPercent,
  type Issue,
  type IssueCode,
  type Progress,
  type Result,
} from '../core/index';
import { columnOf, type Column, type TableSchema } from './schema';

/** Rows of cells, header row first, as a worksheet function or a port hands them over. */
export type Matrix = readonly (readonly unknown[])[];

export type FieldValue = string | number | boolean;

/** One row of a table. */
export interface Row {
  /** Body row, from 1. */
  readonly row: number;
  readonly sheetRow: number;
  /** As people are told it: `Stock row 17`. */
  readonly where: string;
  readonly values: ReadonlyMap<string, FieldValue>;
  readonly issues: readonly Issue[];
}

export interface TableRead {
  readonly rows: readonly Row[];
  /** Position of each column that was found, by key. */
  readonly found: ReadonlyMap<string, number>;
}

/** What people call a list of their own that stands for a table of ours. */
export interface Called {
  /** The sheet it stands on; where that is not known, the name of the list itself. */
  readonly list: string;
  /** Where it stands is not known, as in a worksheet function: its rows are counted from below its headings. */
  readonly adrift?: boolean;
  /** Their heading over a column, by ours. */
  readonly headings: ReadonlyMap<string, string>;
}

/** By the very row of headings under which the list is handed on: it comes along wherever the table is read. */
const CALLED = new WeakMap<object, Called>();

export function callBy(headers: readonly unknown[], called: Called): void {
  CALLED.set(headers, called);
}

/** What a list is called under whose row of headings a table is handed on; undefined for a table of ours. */
export function calledBy(headers: readonly unknown[]): Called | undefined {
  return CALLED.get(headers);
}

/** A column that has no heading of its own, read by another of its row. */
export interface Told {
  readonly key: string;
  readonly by: string;
  readonly tell: (text: string) => FieldValue | undefined;
}

/** By the row of headings, as {@link Called}. */
const TOLD = new WeakMap<object, Told>();

export function tellBy(headers: readonly unknown[], told: Told): void {
  TOLD.set(headers, told);
}

/** What the rows under these headings tell without a heading for it; undefined for a table of ours. */
export function toldBy(headers: readonly unknown[]): Told | undefined {
  return TOLD.get(headers);
}

/** A row of a table as people are told it, by the sheet it really stands on. */
export function rowName(table: string, headers: readonly unknown[], sheetRow: number, headerRow = 1): string {
  const called = CALLED.get(headers);
  if (!called) return `${table} row ${sheetRow}`;
  if (called.adrift) return `“${called.list}”, row ${sheetRow - headerRow} below its headings`;
  return `“${called.list}” row ${sheetRow}`;
}

/**
 * Reads a table.
 *
 * @param schema what the table should hold
 * @param matrix header row first; wholly blank rows are skipped
 * @param headerRow row of the sheet that holds the header, from 1, so that messages name real rows
 * @param only columns that are read, by key; all others are passed over
 * @returns its rows, or `missingColumn` naming the first needed column that no heading matches
 */
export function readTable(
  schema: TableSchema,
  matrix: Matrix,
  headerRow = 1,
  only?: readonly string[],
): Result<TableRead> {
  const rows: Row[] = [];
  const found = drained(rowSteps(schema, matrix, headerRow, (row) => rows.push(row), only));
  return found.ok ? ok({ rows, found: found.value }) : found;
}

/** Rows that are read at a stretch. */
const ROWS_A_STEP = 200;

/** {@link readTable} in steps, which hands each row on: of tens of thousands nobody wants to keep them all. */
export function* rowSteps(
  schema: TableSchema,
  matrix: Matrix,
  headerRow: number,
  take: (row: Row) => void,
  only?: readonly string[],
): Generator<Progress, Result<TableRead['found']>> {
  const found = matchHeaders(schema, matrix[0] ?? []);
  const missing = schema.columns.find((column) => column.needed && !found.has(column.key));
  if (missing) return fail({ code: 'missingColumn', field: schema.name, expected: missing.header });
  const standing = schema.columns.flatMap((column): Placed[] => {
    const position = only?.includes(column.key) === false ? undefined : found.get(column.key);
    return position === undefined ? [] : [{ column, position }];
  });
  const headers = matrix[0] ?? [];
  for (let at = 1; at < matrix.length; at += 1) {
    const cells = matrix[at] ?? [];
    if (!cells.every(isBlank)) take(readRow(schema, standing, { headers, cells, at, headerRow }));
    if (at % ROWS_A_STEP === 0) yield { done: at, of: matrix.length };
  }
  return ok(found);
}

/** What names the same thing as a row above it; the first of each name counts. */
export function duplicates(schema: TableSchema, rows: readonly Row[], key: string): Issue[] {
  const header = columnOf(schema, key).header;
  const seen = new Set<string>();
  const issues: Issue[] = [];
  for (const { where, values } of rows) {
    const name = values.get(key);
    if (typeof name !== 'string') continue;
    const folded = name.toLowerCase();
    if (seen.has(folded)) issues.push({ code: 'duplicate', field: `${where}, ${header}`, got: name });
    seen.add(folded);
  }
  return issues;
}

/** Units of heading that none of our columns is in: read as ours, three millimetres would be three inches. */
const FOREIGN_UNIT = /[([]\s*(mm|cm|m|oz|lbs?|kg)\.?\s*[)\]]\s*$/;

/** Where each column of a schema stands in a header row; the first heading that matches wins, units in brackets apart. */
export function matchHeaders(schema: TableSchema, headers: readonly unknown[]): Map<string, number> {
  const exact = new Map<string, number>();
  const loose = new Map<string, number>();
  headers.forEach((header, at) => {
    const name = plain(String(header ?? ''));
    if (name && !exact.has(name)) exact.set(name, at);
    const bare = FOREIGN_UNIT.test(name) ? '' : withoutUnit(name);
    if (bare && !loose.has(bare)) loose.set(bare, at);
  });
  const found = new Map<string, number>();
  const taken = new Set<number>();
  const take = (column: Column, at: number | undefined): void => {
    if (at === undefined || taken.has(at) || found.has(column.key)) return;
    found.set(column.key, at);
    taken.add(at);
  };
  for (const column of schema.columns) take(column, exact.get(plain(column.header)));
  for (const column of schema.columns) take(column, loose.get(withoutUnit(plain(column.header))));
  for (const column of schema.columns) for (const name of column.synonyms) take(column, loose.get(name));
  return found;
}

/** A cell nothing was put into; blanks of a range arrive as null, undefined or empty text. */
export function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}

/** A column and where it stands. */
interface Placed {
  readonly column: Column;
  readonly position: number;
}

interface Line {
  readonly headers: readonly unknown[];
  readonly cells: readonly unknown[];
  readonly at: number;
  readonly headerRow: number;
}

function readRow(schema: TableSchema, columns: readonly Placed[], { headers, cells, at, headerRow }: Line): Row {
  const values = new Map<string, FieldValue>();
  const issues: Issue[] = [];
  const sheetRow = headerRow + at;
  const where = rowName(schema.name, headers, sheetRow, headerRow);
  for (const { column, position } of columns) {
    const cell = cells[position];
    // Most cells of a wide table are blank, and a table may have a million.
    if (cell === null && !column.needed) continue;
    const read = readNeeded(column, cell);
    if (!read.ok) issues.push(placed(read.issue, where + under(headers, column)));
    else if (read.value !== undefined) values.set(column.key, read.value);
  }
  const told = TOLD.get(headers);
  const by = told && values.get(told.by);
  const value = by === undefined ? undefined : told?.tell(String(by));
  if (told && value !== undefined) values.set(told.key, value);
  return { row: at, sheetRow, where, values, issues };
}

/** The heading that people see over a column, where it is not ours. */
function under(headers: readonly unknown[], { header }: Column): string {
  const theirs = CALLED.get(headers)?.headings.get(header);
  return theirs === undefined ? '' : `, under “${theirs}”`;
}

/** An issue of a cell with the table and row it stands in, so that a person finds it. */
export function placed(issue: Issue, where: string): Issue {
  return { ...issue, field: `${where}, ${issue.field}` };
}

type CellRead = Result<FieldValue | undefined>;

const NOTHING: CellRead = ok(undefined);

function readNeeded(column: Column, cell: unknown): CellRead {
  const read = readCell(column, cell);
  const blank = read.ok && read.value === undefined && column.needed;
  return blank ? fail({ code: 'blank', field: column.header, expected: expectation(column) }) : read;
}

/** What one cell says under a column; `undefined` where it says nothing: a blank, or a 0 that can only be one. */
export function readCell(column: Column, cell: unknown): CellRead {
  if (isBlank(cell)) return NOTHING;
  const field = column.header;
  const error = errorText(cell);
  if (error !== undefined) return fail({ code: 'cellError', field, got: error });
  switch (column.kind) {
    case 'text':
      return ok(String(cell).trim());
    case 'choice':
      return readChoice(column.choices ?? [], cell, field);
    case 'yesNo':
      return readYesNo(cell, field);
    case 'reading':
      return readReading(cell, field);
    case 'date':
      return ok(typeof cell === 'number' ? cell : String(cell).trim());
    default:
      return readNumber(column, cell);
  }
}

/** Errors a cell can show (the newer ones *from memory*). */
const ERRORS =
  /^#(N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!|SPILL!|CALC!|BUSY!|GETTING_DATA|FIELD!|CONNECT!|BLOCKED!|UNKNOWN!)$/;

/** Text of a spreadsheet error, in whichever form the host hands it over. */
export function errorText(cell: unknown): string | undefined {
  if (typeof cell === 'string') return cell.startsWith('#') && ERRORS.test(cell) ? cell : undefined;
  if (typeof cell === 'object' && cell !== null) {
    const { error, code } = cell as { error?: unknown; code?: unknown };
    return String(error ?? code ?? 'error');
  }
  return undefined;
}

/** The number of a cell that holds one, or text that is plainly one; undefined otherwise. */
export function cellNumber(cell: unknown): number | undefined {
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : undefined;
  return typeof cell === 'string' ? plainNumber(cell) : undefined;
}

function readNumber(column: Column, cell: unknown): CellRead {
  const text = column.kind === 'money' && typeof cell === 'string' ? moneyText(column, cell) : percentIn(column, cell);
  if (text && !text.ok) return text;
  const value = text ? text.value : cellNumber(cell);
  if (value === undefined) return refused('notNumber', column, cell);
  const { low = -Infinity, high = Infinity } = column;
  // Some platforms hand a blank of a range over as 0; where 0 cannot be meant, it is a blank.
  if (value === 0 && low > 0) return NOTHING;
  if (value < low || value > high) return refused('outOfRange', column, cell);
  if (column.kind === 'count' && !Number.isInteger(value)) return refused('notWhole', column, cell);
  return ok(value);
}

/** A per cent with its sign, or one that may be a part of one, which is asked about; undefined: a number like others. */
function percentIn(column: Column, cell: unknown): Result<number> | undefined {
  const signed = typeof cell === 'string' && cell.trim().endsWith('%') ? cell : undefined;
  const value = cellNumber(cell) ?? 0;
  if (column.unit !== '%' || (signed === undefined && (value <= 0 || value >= 1))) return undefined;
  const read = readPercent(signed ?? value, column.header);
  if (read.ok) return ok(Number(decimalText(read.value)));
  return read.issue.code === 'ambiguous' ? read : refused(read.issue.code, column, cell);
}

/** Money as text: with a comma or a point, thousands apart; where it can be read in two ways it is refused. */
function moneyText(column: Column, cell: string): Result<number> {
  const read = readAmount(cell, column.header);
  return read.ok ? ok(Number(decimalText(read.value))) : read;
}

function refused(code: IssueCode, column: Column, cell: unknown): ReturnType<typeof fail> {
  return fail({ code, field: column.header, got: given(cell), expected: expectation(column) });
}

function readReading(cell: unknown, field: string): CellRead {
  const points = cellNumber(cell);
  if (points === undefined) return parseReading(String(cell), field);
  if (points === 0) return NOTHING;
  const { low, high } = RANGES.points;
  if (points < low || points > high) {
    return fail({
      code: 'outOfRange',
      field,
      got: given(cell),
      expected: `a reading such as D2.5, or ${low} to ${high} points above A0`.replace('-', '−'),
    });
  }
  return ok(points);
}

function readChoice(choices: readonly string[], cell: unknown, field: string): CellRead {
  if (cell === 0) return NOTHING;
  if (typeof cell === 'string' && choices.includes(cell)) return ok(cell);
  const text = plain(String(cell));
  const choice = choices.find((each) => plain(each) === text);
  return choice ? ok(choice) : fail({ code: 'unknownChoice', field, got: given(cell), expected: listed(choices) });
}

function readYesNo(cell: unknown, field: string): CellRead {
  if (typeof cell === 'boolean') return ok(cell);
  if (cell === 0) return NOTHING;
  const text = plain(String(cell));
  if (text === 'yes' || text === 'y') return ok(true);
  if (text === 'no' || text === 'n') return ok(false);
  return fail({ code: 'unknownChoice', field, got: given(cell), expected: 'Yes or No' });
}

/** What a column accepts, for a message: `18 to 52 in`. */
export function expectation(column: Pick<Column, 'kind' | 'choices' | 'low' | 'high' | 'unit' | 'header'>): string {
  if (column.kind === 'choice') return listed(column.choices ?? []);
  if (column.kind === 'text') return `the ${withoutUnit(column.header.toLowerCase())}`;
  const unit = column.unit && column.unit !== 'pt' ? ` ${column.unit}` : column.unit === 'pt' ? ' points' : '';
  const { low, high } = column;
  if (low !== undefined && high !== undefined) return `${low} to ${high}${unit}`.replaceAll('-', '−');
  if (low !== undefined) return `${low} or more${unit}`;
  return unit ? `a number in${unit}` : 'a number';
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1] ?? ''}`;
}

function given(cell: unknown): string | number | boolean {
  return typeof cell === 'number' || typeof cell === 'boolean' ? cell : String(cell).trim();
}

function plain(text: string): string {
  // a keyboard has the straight apostrophe only
  return text.trim().toLowerCase().replace(/\s+/g, ' ').replaceAll('’', "'");
}

function withoutUnit(text: string): string {
  return text.replace(/\s*[([][^)\]]*[)\]]\s*$/, '').trim();
}
