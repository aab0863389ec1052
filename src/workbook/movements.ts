/** The ledger: its rows read, and new ones written at its end. Pure, but for looking where it has to grow. */
import { drained, fail, ok } from '../core/index';
import type { Issue, Movement, MovementKind, Progress, Result, Shelf } from '../core/index';
import { addRows, roomNeeded } from './addRows';
import { columnLook } from './columnLook';
import { columnsAt } from './headings';
import type { Block, BlockSeen, Cell, Change, TableSeen, WorkbookPort } from './port';
import { readTable, type Row } from './records';
import { columnOf } from './schema';
import { matrixOf } from './shop';
import { numberOf, textOf } from './shopRows';
import { MOVEMENTS, type MOVEMENT_WORDS, type STOCK_UNITS } from './tables/movements';

const KIND_WORDS: Readonly<Record<MovementKind, (typeof MOVEMENT_WORDS)[number]>> = {
  reserved: 'Reserved',
  released: 'Released',
  used: 'Used',
  ordered: 'Ordered',
  cancelled: 'Cancelled',
  arrived: 'Arrived',
  sentBack: 'Sent back',
  broughtBack: 'Brought back',
  writtenOff: 'Written off',
  counted: 'Counted',
};

export const UNITS: Readonly<Record<Shelf, (typeof STOCK_UNITS)[number]>> = {
  grip: 'pc',
  tape: 'yd',
  weight: 'g',
  solvent: 'ml',
};

function codeOf<Code extends string>(words: Readonly<Record<Code, string>>, word: string): Code | undefined {
  return (Object.keys(words) as Code[]).find((code) => words[code] === word);
}

/** Every row of the ledger; refused where one cannot be read, since it might be the one that was reserved already. */
export function readMovements(table: TableSeen): Result<readonly Movement[]> {
  return drained(movementSteps(table));
}

/** So many rows are read at a stretch. */
const ROWS_AT_ONCE = 200;

/** {@link readMovements} in steps: a ledger grows. */
export function* movementSteps(table: TableSeen): Generator<Progress, Result<readonly Movement[]>> {
  const [headings = [], ...body] = matrixOf(table);
  const movements: Movement[] = [];
  for (let from = 0; from < Math.max(1, body.length); from += ROWS_AT_ONCE) {
    yield { done: from, of: body.length };
    const part = [headings, ...body.slice(from, from + ROWS_AT_ONCE)];
    const read = readTable(MOVEMENTS, part, table.at.row + 1 + from);
    if (!read.ok) return read;
    for (const row of read.value.rows) {
      const movement = movementOf(row);
      if (!movement.ok) return movement;
      movements.push(...movement.value);
    }
  }
  return ok(movements);
}

/** What one row says; nothing of a row that is blank. */
function movementOf(row: Row): Result<readonly Movement[]> {
  const bad = row.issues[0] ?? rowIssue(row);
  if (bad) return fail(bad);
  const kind = codeOf(KIND_WORDS, textOf(row, 'kind'));
  const shelf = codeOf(UNITS, textOf(row, 'unit'));
  if (!kind || !shelf) return ok([]);
  const [job, club, item] = ['job', 'club', 'item'].map((key) => textOf(row, key)) as [string, string, string];
  const quantity = numberOf(row, 'quantity') ?? 0;
  const [order, supplier] = [textOf(row, 'order') || undefined, textOf(row, 'supplier') || undefined];
  const more = { round: numberOf(row, 'round') ?? 1, order, supplier, day: numberOf(row, 'date') };
  return ok([{ kind, job, club, shelf, item, quantity, ...more }]);
}

/** Only a count may have found less than there was thought to be, and what is ordered can be told from what came only by its number. */
function rowIssue(row: Row): Issue | undefined {
  const [kind, quantity] = [textOf(row, 'kind'), numberOf(row, 'quantity') ?? 0];
  const field = (header: string): string => `Movements row ${row.sheetRow}, ${header}`;
  if (quantity < 0 && kind !== KIND_WORDS.counted) {
    return { code: 'outOfRange', field: field('Quantity'), got: quantity, expected: 'more than 0' };
  }
  if ((kind === KIND_WORDS.ordered || kind === KIND_WORDS.cancelled) && textOf(row, 'order') === '') {
    return { code: 'blank', field: field(columnOf(MOVEMENTS, 'order').header), expected: 'the number of the order' };
  }
  return undefined;
}

/** What stands beside each movement. */
export interface Entered {
  /** Day as a workbook counts it. */
  readonly date: number;
  readonly note: string;
}

function cellsOf(table: TableSeen, movement: Movement, { date, note }: Entered): (Cell | undefined)[] {
  const at = columnsAt(MOVEMENTS, table.headers);
  const values: Record<(typeof MOVEMENTS)['columns'][number]['key'], Cell> = {
    date,
    kind: KIND_WORDS[movement.kind],
    job: movement.job || null,
    club: movement.club || null,
    item: movement.item,
    quantity: movement.quantity,
    unit: UNITS[movement.shelf],
    round: movement.round > 1 ? movement.round : null,
    note: note || null,
    order: movement.order || null,
    supplier: movement.supplier || null,
  };
  const cells = Array<Cell | undefined>(table.headers.length).fill(undefined);
  for (const [key, value] of Object.entries(values)) if (at(key) >= 0) cells[at(key)] = value;
  return cells;
}

/** The changes that put rows at the ledger's end, which is made longer where its blank rows are too few. Throws a PortError. */
export async function rowsEntered(
  port: WorkbookPort,
  table: TableSeen,
  movements: readonly Movement[],
  entered: Entered,
): Promise<{ readonly changes: Change[]; readonly looked: readonly BlockSeen[] }> {
  const room = roomNeeded(table, movements.length);
  const looked: readonly BlockSeen[] = room ? await port.read([{ read: 'block', at: room }]) : [];
  const rows = addRows(
    table,
    movements.map((movement) => cellsOf(table, movement, entered)),
    looked[0] ?? null,
  ).map((row): Change => (row.do === 'write' ? { ...row, whole: true } : row));
  // Text first: a job called 007 is to stay so.
  const grown = rows.filter(({ do: what }) => what === 'lengthen');
  return {
    changes: [...grown, ...(room ? dressed(table, room) : []), ...rows.filter((row) => !grown.includes(row))],
    looked,
  };
}

/** A row that was not there when the table was made has no formats yet. */
function dressed(table: TableSeen, at: Block): Change[] {
  const find = columnsAt(MOVEMENTS, table.headers);
  return MOVEMENTS.columns.flatMap((column): Change[] => {
    const across = find(column.key);
    const format = columnLook(column);
    if (across < 0 || !format) return [];
    return [{ do: 'format', at: { ...at, column: at.column + across, columns: 1 }, format }];
  });
}
