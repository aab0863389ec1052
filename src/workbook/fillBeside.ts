/** What the plan says, written beside the clubs in the very list they stand in: a column for each result, made at its right end where it is missing. */
import { lookBeside, widthsBeside } from './beside';
import { isStandIn, NOT_OURS } from './connect/standIn';
import { fromOurs } from './connect/units';
import type { ShopUnit } from './connect/types';
import { columnsAt } from './headings';
import { keepPrints, keptPrints, printOf } from './judgedPrints';
import type { InTheWay, NotDone, Occupied } from './outcomes';
import { PLAN_COLUMNS } from './planCells';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { planScope, scopeRows } from './planScope';
import type { Planned } from './planTables';
import { politely } from './polite';
import type { BlockSeen, Change, TableSeen, WorkbookPort } from './port';
import { RESULTS, type ResultColumn } from './resultColumns';
import { CLUBS } from './schema';
import { columnsBeside } from './shared/widen';
import { isBlankCell, jobName, shopTables, tableQueries, tablesSeen, type ShopTables } from './shop';
import type { TableCell } from './tableCell';
import { askFirst, blockOfCell, changedCells, formulaCells, writeCells } from './tableCells';
import type { Issue } from '../core/index';

/** Setting of the workbook that keeps which cells are ours. */
export const BESIDE_KEY = 'setwright.beside';

export type BesideDone =
  | { readonly done: true; readonly clubs: number; readonly cells: number; readonly made: readonly string[] }
  | NotDone
  | Occupied
  | { readonly done: false; readonly reason: 'noClubs' }
  | { readonly done: false; readonly reason: 'notPlanned'; readonly issue: Issue };

/** Headings of the results in a list, each with the unit that its own columns are kept in. */
export function resultHeadings(clubs: TableSeen): string[] {
  return RESULTS.map((column) => headingIn(column, clubs));
}

function headingIn({ heading, unitOf }: ResultColumn, clubs: TableSeen): string {
  return unitOf === undefined ? heading : `${heading} (${unitIn(clubs, unitOf)})`;
}

function unitIn(clubs: TableSeen, key: string): NonNullable<ShopUnit> {
  const ours = CLUBS.columns.find((column) => column.key === key);
  const theirs = isStandIn(clubs) ? clubs.matches.find((match) => match.key === key)?.unit : null;
  return theirs ?? ((ours && 'unit' in ours ? ours.unit : 'g') as NonNullable<ShopUnit>);
}

/**
 * Writes what the plan of a job says into the rows of its clubs. What a person typed in these columns is written over only when they
 * agreed; whatever else stands in the list stays.
 */
export async function fillBeside(port: WorkbookPort, job: string, agreed: InTheWay | null = null): Promise<BesideDone> {
  return politely(async (): Promise<BesideDone> => {
    const tables = shopTables(await port.read(tableQueries()));
    const clubs = tables.Clubs;
    if (!clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    const scoped = scopeRows(clubs, { job });
    if (scoped.rows.length === 0) return { done: false, reason: 'noClubs' };
    const planned = planScope(tables, scoped, {});
    if (!planned.ok) return { done: false, reason: 'notPlanned', issue: planned.issue };
    const missing = RESULTS.filter((column) => placeOf(column, clubs) < 0).map((column) => headingIn(column, clubs));
    const around = missing.length > 0 ? await lookBeside(port, clubs, missing.length) : [];
    const wide = widened(clubs, missing);
    const cells = changedCells(wide, resultCells(wide, planned.value));
    const kept = keptPrints(await port.recall(BESIDE_KEY));
    const question = askFirst(
      null,
      [...formulaCells(wide, cells), ...foreign(wide, cells, kept[jobKey(job)] ?? [])],
      agreed,
    );
    if (question) return question;
    const prints = keepPrints(kept, jobName(job), printsOf(wide, planned.value), jobsIn(tables));
    await write(port, { clubs, wide, missing, cells, prints, job }, [...tablesSeen(tables), ...around]);
    return { done: true, clubs: scoped.rows.length, cells: cells.length, made: missing };
  });
}

function jobKey(job: string): string {
  return jobName(job).toLowerCase();
}

function jobsIn({ Clubs }: ShopTables): string[] {
  const at = Clubs ? columnsAt(CLUBS, Clubs.headers)('job') : -1;
  return Clubs?.rows.map((row) => jobName(row[at])) ?? [];
}

/** Where a result stands: under its heading, which a list of the shop's own shows as a column that is none of ours. */
function placeOf(column: ResultColumn, clubs: TableSeen): number {
  const heading = headingIn(column, clubs);
  return clubs.headers.findIndex((header) => header === heading || header === `${NOT_OURS}${heading}`);
}

/** The table as it stands once it has its new columns. */
function widened(clubs: TableSeen, headings: readonly string[]): TableSeen {
  return {
    ...clubs,
    at: { ...clubs.at, columns: clubs.at.columns + headings.length },
    headers: [...clubs.headers, ...headings],
    rows: clubs.rows.map((row) => [...row, ...headings.map(() => null)]),
  };
}

function resultCells(clubs: TableSeen, { plan }: Planned): TableCell[] {
  return plan.clubs.flatMap((club) =>
    RESULTS.map((column): TableCell => {
      const value = PLAN_COLUMNS.find(({ key }) => key === column.key)?.cell(club);
      const blank = value === undefined || value === '';
      return { row: club.row, column: placeOf(column, clubs), value: blank ? null : inListsUnit(column, clubs, value) };
    }),
  );
}

/** A list that keeps its masses in ounces gets them in ounces. */
function inListsUnit({ unitOf }: ResultColumn, clubs: TableSeen, value: string | number): string | number {
  if (typeof value !== 'number') return value;
  const ours = CLUBS.columns.find((column) => column.key === unitOf);
  const tidy = (number: number): number => Math.round(number * 1e7) / 1e7 + 0;
  return ours ? tidy(fromOurs(ours, unitIn(clubs, ours.key), tidy(value))) : tidy(value);
}

/** A heading as the list has it. */
function bare(header: string): string {
  return header.startsWith(NOT_OURS) ? header.slice(NOT_OURS.length) : header;
}

function prints(clubs: TableSeen, cells: readonly TableCell[]): string[] {
  const club = columnsAt(CLUBS, clubs.headers)('club');
  return cells.map(({ row, column, value }) =>
    printOf({
      club: jobName(clubs.rows[row - 1]?.[club]),
      round: 0,
      key: bare(clubs.headers[column] ?? ''),
      value,
    }),
  );
}

function printsOf(clubs: TableSeen, planned: Planned): string[] {
  return prints(clubs, resultCells(clubs, planned));
}

/** Cells to be written that hold something which is not what we wrote there. */
function foreign(
  clubs: TableSeen,
  cells: readonly TableCell[],
  ours: readonly string[],
): ReturnType<typeof blockOfCell>[] {
  const known = new Set(ours);
  return cells.flatMap((cell) => {
    const now = clubs.rows[cell.row - 1]?.[cell.column] ?? null;
    if (isBlankCell(now)) return [];
    const value = typeof now === 'object' ? null : now;
    const [print = ''] = prints(clubs, [{ ...cell, value: typeof value === 'boolean' ? String(value) : value }]);
    return known.has(print) ? [] : [blockOfCell(clubs, cell)];
  });
}

interface Writing {
  readonly clubs: TableSeen;
  readonly wide: TableSeen;
  readonly missing: readonly string[];
  readonly cells: readonly TableCell[];
  readonly prints: string;
  readonly job: string;
}

async function write(
  port: WorkbookPort,
  { clubs, wide, missing, cells, prints: kept, job }: Writing,
  looked: readonly (TableSeen | BlockSeen)[],
): Promise<void> {
  if (cells.length === 0 && missing.length === 0) return;
  const identity = ['job', 'club'].map(columnsAt(CLUBS, clubs.headers)).filter((at) => at >= 0);
  const changes: Change[] = [
    ...(missing.length > 0 ? [{ do: 'widen', table: clubs.name, headers: missing } as const] : []),
    ...formatsOf(clubs, missing),
    ...widthsBeside(clubs, missing, looked),
    ...writeCells(wide, cells, identity),
    { do: 'remember', key: BESIDE_KEY, value: kept },
    // No plan is placed here, so taking this back must not touch the places.
    { do: 'remember', key: PLANS_BEFORE_KEY, value: '' },
  ];
  await port.apply(changes, looked, { label: `Results beside the clubs of job ${job}`, receiptKey: LAST_FILL_KEY });
}

function formatsOf(clubs: TableSeen, missing: readonly string[]): Change[] {
  const beside = columnsBeside(clubs, missing.length);
  return missing.flatMap((heading, i): Change[] => {
    const number = RESULTS.find((column) => headingIn(column, clubs) === heading)?.format;
    if (number === undefined || clubs.at.rows < 2) return [];
    const at = { ...beside, row: beside.row + 1, rows: beside.rows - 1, column: beside.column + i, columns: 1 };
    return [{ do: 'format', at, format: { number } }];
  });
}
