/** From the shop's tables to what the pane shows of them. Pure. */
import {
  DEFAULT_SETTINGS,
  DEFAULT_SIZE_GUIDE,
  drained,
  type Issue,
  type Progress,
  type Result,
} from '../../core/index';
import { columnsAt, folded } from '../../workbook/headings';
import { headerRowsOf } from '../../workbook/planScope';
import { gripSteps, type StockRead } from '../../workbook/planTables';
import type { TableSeen } from '../../workbook/port';
import { readSettings } from '../../workbook/readSettings';
import { calledBy, readTable, rowSteps, type Matrix, type Row } from '../../workbook/records';
import { readSizes } from '../../workbook/readSizes';
import { CLUBS, JOBS, TABLES, WEIGHTS, type TableSchema } from '../../workbook/schema';
import { ageOf, type Shop } from '../../workbook/shop';
import type { GripSeen, HandSeen, JobSeen, ShopSeen } from './work';

interface Read {
  readonly rows: readonly Row[];
  readonly issue: Issue | undefined;
}

const NONE: Read = { rows: [], issue: undefined };

function rowsOf(schema: TableSchema, matrix: Matrix | null): Read {
  if (!matrix) return NONE;
  const read = readTable(schema, matrix);
  return read.ok ? { rows: read.value.rows, issue: undefined } : { rows: [], issue: read.issue };
}

function* rowsInSteps(schema: TableSchema, matrix: Matrix | null): Generator<Progress, Read> {
  if (!matrix) return NONE;
  const rows: Row[] = [];
  const read = yield* rowSteps(schema, matrix, 1, (row) => rows.push(row));
  return read.ok ? { rows, issue: undefined } : { rows: [], issue: read.issue };
}

const textOf = (row: Row, key: string) => String(row.values.get(key) ?? '').trim();

function numberIn(row: Row, key: string): number | undefined {
  const value = row.values.get(key);
  return typeof value === 'number' ? value : undefined;
}

/** Stock read as a plan reads it, so that the first plan need not do it again. */
function stockIn({ matrices, tables }: Shop): Generator<Progress, Result<StockRead>> {
  const rows = headerRowsOf(tables);
  const read = readSettings(matrices.Settings, matrices.Tape, rows);
  // Without settings there is no plan, but there are grips to choose from.
  return gripSteps(matrices.Stock, rows.stock, read.ok ? read.value.settings : DEFAULT_SETTINGS);
}

/** As long as Stock is as it was, so is the list of its grips: what is typed is looked for in it. */
const gripsKnown = new WeakMap<StockRead, readonly GripSeen[]>();

function gripsOf(read: StockRead): readonly GripSeen[] {
  const grips =
    gripsKnown.get(read) ??
    read.grips.map(({ item, size = '', coreInches, gripGrams, onHand }, at): GripSeen => {
      return { item, description: read.described[at] ?? '', size, coreInches, gripGrams, onHand };
    });
  gripsKnown.set(read, grips);
  return grips;
}

function handOf(row: Row | undefined): HandSeen {
  const measure = (key: string) => row && numberIn(row, key);
  return {
    handLength: measure('handLength'),
    fingerLength: measure('fingerLength'),
    lowerHandLength: measure('lowerHandLength'),
    lowerFingerLength: measure('lowerFingerLength'),
  };
}

/** Jobs in the order of their table, then those that only Clubs names. */
function jobsOf(shop: Shop, jobs: readonly Row[], clubs: readonly Row[]): JobSeen[] {
  const done = new Set(jobs.filter((row) => textOf(row, 'status') === 'Done').map((row) => folded(textOf(row, 'job'))));
  const listed = new Map(jobs.map((row) => [folded(textOf(row, 'job')), row]));
  const rows = new Map<string, number[]>();
  for (const club of clubs) {
    const job = folded(textOf(club, 'job'));
    const known = rows.get(job);
    if (known) known.push(club.row);
    else rows.set(job, [club.row]);
  }
  return shop.jobs.map(({ job, customer }) => ({
    job,
    customer,
    done: done.has(folded(job)),
    rows: rows.get(folded(job)) ?? [],
    hand: handOf(listed.get(folded(job))),
  }));
}

function headerRow(table: TableSeen | null): number | undefined {
  return table ? table.at.row + 1 : undefined;
}

function joblessIn(matrix: Matrix | null): string | undefined {
  const [headers] = matrix ?? [];
  return headers && columnsAt(CLUBS, headers)('job') < 0 ? (calledBy(headers)?.list ?? '') : undefined;
}

/** What the pane shows of a shop. */
export function seenOf(shop: Shop): ShopSeen<Shop> {
  return drained(seenSteps(shop));
}

/** {@link seenOf} in steps: Stock may have tens of thousands of rows, Clubs thousands. */
export function* seenSteps(shop: Shop): Generator<Progress, ShopSeen<Shop>> {
  const { matrices } = shop;
  const clubs = yield* rowsInSteps(CLUBS, matrices.Clubs);
  const stock = yield* stockIn(shop);
  const jobs = rowsOf(JOBS, matrices.Jobs);
  const weights = rowsOf(WEIGHTS, matrices.Weights);
  const sizes = readSizes(matrices.Sizes, headerRow(shop.tables.Sizes));
  const missing = TABLES.map(({ name }) => name).filter((name) => shop.tables[name as keyof Shop['tables']] === null);
  const faults = [clubs.issue, stock.ok ? undefined : stock.issue, weights.issue, jobs.issue];
  return {
    shop,
    missing,
    setUp: missing.length < TABLES.length,
    // Lists of the shop's own were set up by nobody.
    age: Object.values(shop.tables).some((table) => table && !table.connectedTo) ? ageOf(shop) : 'same',
    goingOn: Object.values(shop.tables).flatMap((table) =>
      table?.goesOn ? [[table.name, table.goesOn] as const] : [],
    ),
    faults: faults.flatMap((issue) => issue ?? []),
    jobs: jobsOf(shop, jobs.rows, clubs.rows),
    grips: stock.ok ? gripsOf(stock.value) : [],
    ways: weights.rows.map((row) => textOf(row, 'way')).filter((way) => way !== ''),
    guide: sizes.ok ? sizes.value.guide : DEFAULT_SIZE_GUIDE,
    guideProblems: sizes.ok ? sizes.value.problems : [sizes.issue],
    clubKeys: new Map(
      clubs.rows.map((row) => [row.row, ['job', 'club'].map((key) => folded(textOf(row, key))).join('\n')]),
    ),
    putterRows: clubs.rows.filter((row) => textOf(row, 'kind') === 'Putter').map(({ row }) => row),
    jobless: joblessIn(matrices.Clubs),
    clubCount: clubs.rows.length,
  };
}

/** Body rows of Clubs, from 1, that a selection touches and that hold a club; null where it lies elsewhere. */
export function rowsTouched(
  shop: Shop,
  at: {
    readonly sheet: string;
    readonly row: number;
    readonly column: number;
    readonly rows: number;
    readonly columns: number;
  },
): readonly number[] | null {
  const clubs = shop.tables.Clubs;
  if (!clubs || clubs.at.sheet !== at.sheet) return null;
  const across = at.column < clubs.at.column + clubs.at.columns && clubs.at.column < at.column + at.columns;
  const first = Math.max(at.row, clubs.at.row + 1);
  const last = Math.min(at.row + at.rows, clubs.at.row + clubs.at.rows) - 1;
  if (!across || last < first) return null;
  return rowsOf(CLUBS, shop.matrices.Clubs)
    .rows.map(({ row }) => row)
    .filter((row) => row >= first - clubs.at.row && row <= last - clubs.at.row);
}
