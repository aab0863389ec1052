/** Making the tables a shop needs, each in a sheet of its own. */
import { COLUMN_HELP } from './columnHelp';
import { columnLook } from './columnLook';
import { columnWidth } from './columnWidth';
import { columnsAt, lackingHeaders } from './headings';
import type { Blocked, SetUpDone } from './outcomes';
import { pickCells } from './planOwners';
import { keepPlans, keptPlans, LAST_FILL_KEY, LAYOUT, PLANS_BEFORE_KEY, PLANS_KEY } from './planPlaces';
import { politely } from './polite';
import type { Block, BlockSeen, Cell, CellFormat, Change, Put, TableSeen, WorkbookPort } from './port';
import {
  SETTING_ROWS,
  SETTINGS,
  SIZES,
  RATES,
  STARTING_RATES,
  STARTING_SIZES,
  STARTING_TAXES,
  STARTING_TAPE,
  STARTING_WEIGHTS,
  TABLES,
  TAPE,
  TAXES,
  WEIGHTS,
  columnOf,
} from './schema';
import type { Column, SettingRow, TableSchema } from './schema';
import { nameCells, sameName } from './shared/address';
import { isBlankCell, tableQueries } from './shop';
import { GREY } from './palette';

/** How much of a sheet is looked at to tell whether it holds something else. */
const LOOKED_ROWS = 120;
const LOOKED_COLUMNS = 40;
/** Rows that get formats and drop-downs, so that a table can grow into them. */
const DRESSED_ROWS = 100;
/** Blank rows of a table where the host does not let it grow by typing below it. */
const BLANK_ROWS_IF_FIXED = 40;

/** The row of headings of each of our tables. */
export const HEADER_FORMAT: CellFormat = { bold: true, wrap: true, vertical: 'center', fill: GREY.band, ink: GREY.ink };

/** A table of ours as it stands, and what stands on the sheet of that name. */
export interface TableLook {
  readonly schema: TableSchema;
  readonly table: TableSeen | null;
  readonly sheet: BlockSeen;
}

/**
 * Makes each table that is missing, in a sheet named after it, with headings, number formats, drop-downs, widths and a frozen
 * header row. What is there already stays as it is: a table with our columns is kept, and where a table of other columns or a
 * sheet in use stands in the way, that table is left out and named in `blocked`. Doing it twice changes nothing. Tables that join others,
 * or lists of the shop's, can be taken back; a workbook that was nothing before stays set up.
 */
export async function setUp(port: WorkbookPort): Promise<SetUpDone> {
  return politely(async (): Promise<SetUpDone> => {
    const kept = keptPlans(await port.recall(PLANS_KEY));
    const seen = await lookAtTables(port);
    const blocked = seen.flatMap((each) => whyNotMade(each) ?? []);
    const keeping = seen.filter(({ schema, table }) => table && !blocked.some((each) => each.table === schema.name));
    const making = seen.filter(({ schema, table }) => !table && !blocked.some((each) => each.table === schema.name));
    if (making.length > 0) {
      // What is kept of an earlier version may lack columns: the workbook stays of its layout.
      const layout = keeping.length === 0 ? LAYOUT : null;
      const marks: Change[] = [
        ...(kept ? [] : [{ do: 'remember', key: PLANS_KEY, value: keepPlans([], layout) } as const]),
        // No plan is placed here, so taking this back must not touch the places.
        ...(keeping.length === 0 ? [] : [{ do: 'remember', key: PLANS_BEFORE_KEY, value: '' } as const]),
      ];
      const looked = seen.map(({ table, sheet }) => table ?? sheet);
      await port.apply([...makeTables(making, keeping, rowsToBegin(port)), ...marks], looked, {
        ...(keeping.length === 0
          ? { label: 'Set up this workbook' }
          : { label: 'Make the other tables', receiptKey: LAST_FILL_KEY }),
      });
    }
    return { done: true, made: namesOf(making), kept: namesOf(keeping), blocked };
  });
}

function rowsToBegin({ capabilities }: WorkbookPort): number {
  return capabilities.host === 'embedded' ? BLANK_ROWS_IF_FIXED : 1;
}

/** Changes that make tables which are missing, beside those that are there; nothing is shown. */
export function makeMissing(port: WorkbookPort, making: readonly TableLook[], all: readonly TableLook[]): Change[] {
  const keeping = all.filter(({ table }) => table !== null);
  return makeTables(making, keeping, rowsToBegin(port)).filter((change) => change.do !== 'show');
}

/** Looks of a column that a table gets later: of its body, its heading, its width, its drop-down. */
export function dressColumn(schema: TableSchema, column: Column, at: Block, all: readonly TableLook[]): Change[] {
  const cells: Block = { ...at, row: at.row + 1, rows: at.rows - 1 };
  const find = headerFinder(
    [],
    all.filter(({ table }) => table !== null),
  );
  return [
    { do: 'format', at: cells, format: formatOf(schema, column) },
    { do: 'format', at: { ...at, rows: 1 }, format: HEADER_FORMAT },
    { do: 'widths', sheet: at.sheet, column: at.column, widths: [columnWidth(column)] },
    ...dropDown(cells, column.choices, column.from, COLUMN_HELP[schema.name]?.[column.key] ?? '', find),
  ];
}

/** The drop-down of a setting that a table gets later. */
export function dressSetting(row: SettingRow, at: Block, all: readonly TableLook[]): Change[] {
  const find = headerFinder(
    [],
    all.filter(({ table }) => table !== null),
  );
  return dropDown(at, row.choices, SETTING_FROM[row.key], row.meaning, find);
}

function namesOf(tables: readonly TableLook[]): string[] {
  return tables.map(({ schema }) => schema.name);
}

/** Looks at every table of ours and the sheet of its name. */
export async function lookAtTables(port: WorkbookPort): Promise<TableLook[]> {
  const sheets = TABLES.map(({ name }) => ({ read: 'block', at: corner(name, LOOKED_ROWS, LOOKED_COLUMNS) }) as const);
  const answers = await port.read<readonly (ReturnType<typeof tableQueries>[number] | (typeof sheets)[number])[]>([
    ...tableQueries(),
    ...sheets,
  ]);
  return TABLES.map((schema, i) => ({
    schema,
    table: (answers[i] ?? null) as TableSeen | null,
    sheet: answers[TABLES.length + i] as BlockSeen,
  }));
}

function corner(sheet: string, rows: number, columns: number): Block {
  return { sheet, row: 0, column: 0, rows, columns };
}

/* ------------------------------------------------------------------ what is in the way */

/** Why a table cannot be made, or cannot be taken for ours. */
export function whyNotMade({ schema, table, sheet }: TableLook): Blocked | null {
  if (table) {
    return isOurs(table, schema)
      ? null
      : { table: schema.name, why: 'otherTable', headers: missingFrom(table, schema) };
  }
  if (!sheet.sheetExists) return null;
  const filled = pickCells(sheet, (down, across) => {
    return !isBlankCell(sheet.values[down]?.[across]) || (sheet.formulas[down]?.[across] ?? null) !== null;
  });
  if (filled.length > 0) return { table: schema.name, why: 'sheetInUse', cells: nameCells(filled) };
  if (sheet.tables.length > 0 || sheet.merged.length > 0) {
    return { table: schema.name, why: 'sheetInUse', cells: [...sheet.tables, ...sheet.merged.map((at) => at.sheet)] };
  }
  return sheet.protected ? { table: schema.name, why: 'protected' } : null;
}

/** Whether a table is one of ours, or stands for one, perhaps under a shop's own headings: what is needed is there, and at least half of the rest. */
function isOurs(table: TableSeen, schema: TableSchema): boolean {
  if (table.connectedTo !== undefined) return true;
  const first: TableSchema = { ...schema, columns: schema.columns.filter(({ later }) => !later) };
  const lacking = lackingHeaders(table.headers, first, false);
  return lackingHeaders(table.headers, schema, true).length === 0 && lacking.length <= first.columns.length / 2;
}

/** What keeps it from being ours: the headings that are needed, or, where it has those, all it lacks. */
function missingFrom(table: TableSeen, schema: TableSchema): string[] {
  const needed = lackingHeaders(table.headers, schema, true);
  return needed.length > 0 ? needed : lackingHeaders(table.headers, schema, false);
}

/* ------------------------------------------------------------------ making */

function makeTables(making: readonly TableLook[], keeping: readonly TableLook[], blankRows: number): Change[] {
  const schemas = making.map(({ schema }) => schema);
  const first = schemas[0];
  return [
    ...schemas.flatMap((schema) => makeTable(schema, blankRows)),
    // Drop-downs come last: they may be fed by a table that is made after the one they stand in.
    ...schemas.flatMap((schema) => dropDowns(schema, headerFinder(schemas, keeping))),
    ...(first ? [{ do: 'show', at: { ...corner(first.name, 1, 1), row: 1 } } as const] : []),
  ];
}

function makeTable(schema: TableSchema, blankRows: number): Change[] {
  const { name, columns } = schema;
  const starting = startingRows(schema);
  const rows = starting.length > 0 ? starting.length : Math.max(blankRows, schema.room ?? 0);
  const cells: Put[][] = [
    columns.map(({ header }) => header),
    ...starting.map((row) => columns.map((_, i) => blankIfEmpty(row[i] ?? ''))),
  ];
  return [
    { do: 'sheet', name },
    ...columns.map((column, across) => bodyFormat(schema, column, across)),
    { do: 'write', at: corner(name, cells.length, columns.length), cells },
    { do: 'table', name, at: corner(name, rows + 1, columns.length) },
    { do: 'format', at: corner(name, 1, columns.length), format: HEADER_FORMAT },
    { do: 'widths', sheet: name, column: 0, widths: columns.map(columnWidth) },
    { do: 'freezeRows', sheet: name, rows: 1, ...(schema.inSight !== undefined && { columns: schema.inSight }) },
  ];
}

function blankIfEmpty(cell: string | number): Cell {
  return cell === '' ? null : cell;
}

function startingRows(schema: TableSchema): readonly (readonly (string | number)[])[] {
  if (schema === WEIGHTS) return STARTING_WEIGHTS;
  if (schema === TAPE) return STARTING_TAPE;
  if (schema === SIZES) return STARTING_SIZES;
  if (schema === RATES) return STARTING_RATES;
  if (schema === TAXES) return STARTING_TAXES;
  if (schema !== SETTINGS) return [];
  return SETTING_ROWS.map((row: SettingRow) => [row.name, row.initial, row.unit ?? '', row.meaning]);
}

function bodyFormat(schema: TableSchema, column: Column, across: number): Change {
  return { do: 'format', at: body(schema.name, across), format: formatOf(schema, column) };
}

/** A row may be several lines high, and what stands in it is then in its middle, in every column. */
function formatOf(schema: TableSchema, column: Column): CellFormat {
  return { ...lookOf(schema, column), vertical: 'center' };
}

function lookOf(schema: TableSchema, column: Column): CellFormat | null {
  // The values of Settings are numbers and words in one column: as text, a number typed there would stop being one.
  if (schema === SETTINGS && column.key === 'value') return { align: 'left', wrap: true };
  if (schema === SETTINGS && column.key === 'meaning') return { number: '@', wrap: true };
  return columnLook(column);
}

function body(sheet: string, column: number): Block {
  return { sheet, row: 1, column, rows: DRESSED_ROWS, columns: 1 };
}

/* ------------------------------------------------------------------ drop-downs */

type FindHeader = (table: string, key: string) => string | null;

/** Finds the heading of a column that can feed a drop-down: ours where the table is made now, the shop's where it was kept. */
function headerFinder(making: readonly TableSchema[], keeping: readonly TableLook[]): FindHeader {
  return (name, key) => {
    const schema = TABLES.find((each) => sameName(each.name, name));
    if (!schema) return null;
    const column = columnOf(schema, key);
    if (making.includes(schema)) return column.header;
    const table = keeping.find((each) => each.schema === schema)?.table;
    return table?.headers[columnsAt(schema, table.headers)(key)] ?? null;
  };
}

function dropDowns(schema: TableSchema, findHeader: FindHeader): Change[] {
  if (schema === SETTINGS) return settingDropDowns(findHeader);
  return schema.columns.flatMap((column, across) => {
    return dropDown(
      body(schema.name, across),
      column.choices,
      column.from,
      COLUMN_HELP[schema.name]?.[column.key] ?? '',
      findHeader,
    );
  });
}

/** Which table's column names what a setting names. */
const SETTING_FROM: Partial<Record<SettingRow['key'], { readonly table: string; readonly key: string }>> = {
  headWay: { table: WEIGHTS.name, key: 'way' },
  buttWay: { table: WEIGHTS.name, key: 'way' },
  buildUpTape: { table: TAPE.name, key: 'tape' },
  twoWayTape: { table: TAPE.name, key: 'tape' },
};

function settingDropDowns(findHeader: FindHeader): Change[] {
  const column = SETTINGS.columns.findIndex(({ key }) => key === 'value');
  return SETTING_ROWS.flatMap((row: SettingRow, i) => {
    const at = { sheet: SETTINGS.name, row: i + 1, column, rows: 1, columns: 1 };
    return dropDown(at, row.choices, SETTING_FROM[row.key], row.meaning, findHeader);
  });
}

function dropDown(
  at: Block,
  words: readonly string[] | undefined,
  from: { readonly table: string; readonly key: string } | undefined,
  hint: string,
  findHeader: FindHeader,
): Change[] {
  if (words) return [{ do: 'choices', at, from: words, hint }];
  const header = from ? findHeader(from.table, from.key) : null;
  return from && header !== null ? [{ do: 'choices', at, from: { table: from.table, header }, hint }] : [];
}
