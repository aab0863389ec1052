/** Bringing a workbook of an earlier version up to date: what came later is added, nothing that stands there is touched. */
import { addRows, roomNeeded } from './addRows';
import { columnsAt } from './headings';
import { additionsSince } from './layoutSteps';
import type { Addition, Shape } from './layoutSteps';
import type { Blocked, NotDone } from './outcomes';
import { keepPlans, keptPlans, LAST_FILL_KEY, LAYOUT, PLANS_BEFORE_KEY, PLANS_KEY } from './planPlaces';
import { politely } from './polite';
import { PortError } from './port';
import type { Block, BlockSeen, Cell, Change, Query, TableSeen, WorkbookPort } from './port';
import { SETTINGS, TABLES } from './schema';
import type { Column, SettingRow, TableSchema } from './schema';
import { dressColumn, dressSetting, lookAtTables, makeMissing, whyNotMade } from './setUp';
import type { TableLook } from './setUp';
import { isBlankCell, jobName, matrixOf, type ShopTables } from './shop';
import { refuseUnsafe } from './shared/refuse';
import { columnsBeside, lookBeforeWidening } from './shared/widen';

/** What was added to one table: columns by their headings, or settings by their names. */
export interface AddedTo {
  readonly table: string;
  readonly headers: readonly string[];
}

export type UpToDateDone =
  | {
      readonly done: true;
      readonly made: readonly string[];
      readonly added: readonly AddedTo[];
      /** Tables to which something could not be added, each with what stands against it; the workbook stays of its layout then. */
      readonly left: readonly (AddedTo & { readonly error: PortError })[];
      readonly blocked: readonly Blocked[];
    }
  | Extract<NotDone, { reason: 'port' }>;

/** What a shop's tables lack of what came after their layout. */
export function laterThings(tables: ShopTables, layout: number | null): Addition {
  return additionsSince(layout, shapeOf(Object.entries(tables)));
}

/** A list of the shop's own lacks nothing: it gets no columns that nobody asked for. */
function headingsOf(name: string, table: TableSeen): readonly string[] {
  if (table.connectedTo === undefined) return table.headers;
  return TABLES.find((schema) => schema.name === name)?.columns.map(({ header }) => header) ?? table.headers;
}

function shapeOf(tables: readonly (readonly [string, TableSeen | null])[]): Shape {
  const there = tables.flatMap(([name, table]) => (table ? [[name, headingsOf(name, table)] as const] : []));
  const settings = tables.find(([name]) => name === SETTINGS.name)?.[1];
  const at = settings ? columnsAt(SETTINGS, settings.headers)('setting') : -1;
  return {
    headings: Object.fromEntries(there),
    settings: settings
      ? matrixOf(settings)
          .slice(1)
          .map((row) => jobName(row[at]))
      : [],
  };
}

/** Adds what came later: tables, columns at the right end, settings at the foot. Undone like a fill. */
export async function bringUpToDate(port: WorkbookPort): Promise<UpToDateDone> {
  return politely(async (): Promise<UpToDateDone> => {
    const before = await port.recall(PLANS_KEY);
    const kept = keptPlans(before);
    const looks = await lookAtTables(port);
    const adds = additionsSince(kept?.layout ?? null, shapeOf(looks.map(({ schema, table }) => [schema.name, table])));
    const blocked = looks
      .filter(({ schema }) => adds.tables.includes(schema))
      .flatMap((each) => whyNotMade(each) ?? []);
    const parts = await growing(port, looks, adds);
    const can = parts.filter((part) => part.error === null);
    const left = parts.flatMap(({ table, headers, error }) => (error ? [{ table, headers, error }] : []));
    const making = looks.filter(
      ({ schema }) => adds.tables.includes(schema) && !blocked.some(({ table }) => table === schema.name),
    );
    const whole = left.length + blocked.length === 0;
    const after = keepPlans(kept?.plans ?? [], whole ? LAYOUT : (kept?.layout ?? null));
    const changes = [...can.flatMap((part) => part.changes), ...makeMissing(port, making, looks)];
    await write(
      port,
      changes,
      [...looks.map(({ table, sheet }) => table ?? sheet), ...can.flatMap(({ looked }) => looked)],
      { before, after },
    );
    return {
      done: true,
      made: making.map(({ schema }) => schema.name),
      added: can.map(({ table, headers }) => ({ table, headers })),
      left,
      blocked,
    };
  });
}

async function write(
  port: WorkbookPort,
  changes: readonly Change[],
  looked: readonly (TableSeen | BlockSeen)[],
  { before, after }: { readonly before: string | null; readonly after: string },
): Promise<void> {
  if (changes.length === 0) {
    if (after !== before) await port.remember(PLANS_KEY, after);
    return;
  }
  const marks: Change[] = [
    // Taking back puts the layout back, too.
    { do: 'remember', key: PLANS_BEFORE_KEY, value: before ?? keepPlans([], null) },
    { do: 'remember', key: PLANS_KEY, value: after },
  ];
  await port.apply([...changes, ...marks], looked, {
    label: 'Bring this workbook up to date',
    receiptKey: LAST_FILL_KEY,
  });
}

/* ------------------------------------------------------------------ what one table gets */

interface Growing extends AddedTo {
  readonly changes: readonly Change[];
  readonly looked: readonly BlockSeen[];
  /** Why it may not be done; null where it may. */
  readonly error: PortError | null;
}

/** For each table what it would get, tried against what stands around it. */
async function growing(port: WorkbookPort, looks: readonly TableLook[], adds: Addition): Promise<Growing[]> {
  const tableOf = (schema: TableSchema): TableSeen | null =>
    looks.find((each) => each.schema === schema)?.table ?? null;
  const wider = adds.columns.flatMap(({ schema, columns }) => {
    const table = tableOf(schema);
    return table ? [{ schema, table, columns, blocks: lookBeforeWidening(table, columns.length) }] : [];
  });
  const settings = tableOf(SETTINGS);
  const room = settings && adds.settings.length > 0 ? roomNeeded(settings, adds.settings.length) : null;
  const blocks = [...wider.flatMap((each) => each.blocks), ...(room ? [room] : [])];
  const seen = await port.read<readonly Query[]>(blocks.map((at) => ({ read: 'block', at }) as const));
  const all = seen as unknown as readonly BlockSeen[];
  const columns = wider.map((each, i) => newColumns(each, all.slice(2 * i, 2 * i + 2), looks));
  const below = room ? (all.at(-1) ?? null) : null;
  return settings && adds.settings.length > 0
    ? [...columns, newSettings(settings, adds.settings, below, looks)]
    : columns;
}

function newColumns(
  {
    schema,
    table,
    columns,
  }: { readonly schema: TableSchema; readonly table: TableSeen; readonly columns: readonly Column[] },
  looked: readonly BlockSeen[],
  looks: readonly TableLook[],
): Growing {
  const headers = columns.map(({ header }) => header);
  const at = columnsBeside(table, columns.length);
  const changes: Change[] = [
    { do: 'widen', table: table.name, headers },
    ...columns.flatMap((column, i) => dressColumn(schema, column, { ...at, column: at.column + i, columns: 1 }, looks)),
  ];
  return tried({ table: table.name, headers, changes, looked }, table);
}

function newSettings(
  table: TableSeen,
  settings: readonly SettingRow[],
  below: BlockSeen | null,
  looks: readonly TableLook[],
): Growing {
  const at = columnsAt(SETTINGS, table.headers);
  const rows = settings.map(({ name, initial, unit, meaning }) => {
    const row: (Cell | undefined)[] = table.headers.map(() => undefined);
    const put = (key: string, value: Cell): void => {
      if (at(key) >= 0) row[at(key)] = isBlankCell(value) ? null : value;
    };
    put('setting', name);
    put('value', initial);
    put('unit', unit ?? null);
    put('meaning', meaning);
    return row;
  });
  const added = addRows(table, rows, below);
  const first = added.find((change): change is Extract<Change, { do: 'write' }> => change.do === 'write')?.at;
  const cell = (down: number): Block | null =>
    first && at('value') >= 0
      ? { ...first, row: first.row + down, rows: 1, column: table.at.column + at('value'), columns: 1 }
      : null;
  const dressed = settings.flatMap((row, down) => {
    const place = cell(down);
    return place ? dressSetting(row, place, looks) : [];
  });
  const headers = settings.map(({ name }) => name);
  return tried({ table: table.name, headers, changes: [...added, ...dressed], looked: below ? [below] : [] }, table);
}

/** Whether the changes would be refused by what was looked at, so that one table in the way holds up no other. */
function tried(part: Omit<Growing, 'error'>, table: TableSeen): Growing {
  try {
    refuseUnsafe(part.changes, [table, ...part.looked]);
    return { ...part, error: null };
  } catch (error) {
    if (error instanceof PortError) return { ...part, error };
    throw error;
  }
}
