/** What a shop keeps in its workbook, read in one go. */
import { customersOfClubs } from './customers';
import { columnsAt, folded } from './headings';
import type { Matrix } from './records';
import { keptPlans, LAYOUT, PLANS_KEY, SCHEMA_VERSION, standing } from './planPlaces';
import type { PlanPlace } from './planPlaces';
import type { Query, Seen, TableSeen, WorkbookPort } from './port';
import { CLUBS, JOBS, SETTING_ROWS, SETTINGS, TABLES } from './schema';

export type TableName =
  | 'Jobs'
  | 'Clubs'
  | 'Stock'
  | 'Sizes'
  | 'Weights'
  | 'Tape'
  | 'Rates'
  | 'Taxes'
  | 'Discounts'
  | 'Quotes'
  | 'Checkin'
  | 'Scale'
  | 'Movements'
  | 'Settings';

export type ShopTables = Readonly<Record<TableName, TableSeen | null>>;
export type ShopMatrices = Readonly<Record<TableName, Matrix | null>>;

/** One job, for choosing among them. */
export interface ShopJob {
  readonly job: string;
  readonly customer: string;
  /** A date serial. */
  readonly due: number | null;
  readonly clubs: number;
}

export interface Shop {
  readonly tables: ShopTables;
  /** The same tables as matrices, header row first; null where there is no such table. */
  readonly matrices: ShopMatrices;
  /** In the order of Jobs, then those that only Clubs names. */
  readonly jobs: readonly ShopJob[];
  /** Plans that stand in the workbook. */
  readonly plans: readonly PlanPlace[];
  /** Version of what we keep in this workbook; null where nothing was set up yet. */
  readonly version: number | null;
  /** Layout of its tables; null where it was not written down. */
  readonly layout: number | null;
}

/** Whether a workbook was set up by this version, an earlier or a newer one. */
export type WorkbookAge = 'same' | 'older' | 'newer';

/** How old a workbook is by what is kept in it. */
export function ageOf({ version, layout }: Pick<Shop, 'version' | 'layout'>): WorkbookAge {
  if ((version ?? 0) > SCHEMA_VERSION || (layout ?? 0) > LAYOUT) return 'newer';
  return layout === LAYOUT ? 'same' : 'older';
}

/** Reads everything a shop keeps. Throws a PortError. */
export async function readShop(port: WorkbookPort): Promise<Shop> {
  const kept = keptPlans(await port.recall(PLANS_KEY));
  const entries = kept?.plans ?? [];
  const names = entries.map(({ name }) => ({ read: 'name', name }) as const);
  const answers = await port.read<readonly Query[]>([...tableQueries(), ...names]);
  const tables = shopTables(answers.slice(0, TABLES.length) as readonly (TableSeen | null)[]);
  const matrices = matricesOf(tables);
  const places = answers.slice(TABLES.length) as Parameters<typeof standing>[1];
  return {
    tables,
    matrices,
    jobs: jobsOf(matrices),
    plans: standing(entries, places),
    version: kept?.schema ?? null,
    layout: kept?.layout ?? null,
  };
}

/** One query for each of our tables, in the order of `TABLES`. */
export function tableQueries(): { readonly read: 'table'; readonly table: string }[] {
  return TABLES.map(({ name }) => ({ read: 'table', table: name }) as const);
}

/** Answers to `tableQueries`, by name. */
export function shopTables(answers: readonly (TableSeen | null)[]): ShopTables {
  return Object.fromEntries(TABLES.map(({ name }, i) => [name, answers[i] ?? null])) as unknown as ShopTables;
}

/** Those of the tables that are there. */
export function tablesSeen(tables: ShopTables): TableSeen[] {
  return Object.values(tables).filter((table): table is TableSeen => table !== null);
}

export function matricesOf(tables: ShopTables): ShopMatrices {
  const pairs = Object.entries(tables).map(([name, table]) => [name, table && matrixOf(table)] as const);
  return Object.fromEntries(pairs) as unknown as ShopMatrices;
}

/** What was worked out from a matrix is kept by the matrix: a table that is seen again as it was is to be the same one. */
const matrices = new WeakMap<TableSeen, Matrix>();

/** A table as a matrix, header row first. */
export function matrixOf(table: TableSeen): Matrix {
  const matrix = matrices.get(table) ?? [table.headers, ...table.rows];
  matrices.set(table, matrix);
  return matrix;
}

/** The text by which a job is named; '' for none. */
export function jobName(cell: unknown): string {
  return typeof cell === 'string' || typeof cell === 'number' ? String(cell).trim() : '';
}

/** What a job's row in Jobs says, or a list of clubs where that says nothing, and how many clubs name it. */
function jobsOf(matrices: ShopMatrices): ShopJob[] {
  const counts = clubsByJob(matrices.Clubs);
  const customers = customersOfClubs(matrices.Clubs);
  const jobs = new Map<string, ShopJob>();
  for (const job of listedJobs(matrices.Jobs)) {
    const key = folded(job.job);
    const customer = job.customer || (customers.get(key) ?? '');
    if (!jobs.has(key)) jobs.set(key, { ...job, customer, clubs: counts.get(key)?.clubs ?? 0 });
  }
  for (const [key, { job, clubs }] of counts) {
    if (!jobs.has(key)) jobs.set(key, { job, customer: customers.get(key) ?? '', due: null, clubs });
  }
  return [...jobs.values()];
}

function listedJobs(matrix: Matrix | null): Omit<ShopJob, 'clubs'>[] {
  if (!matrix) return [];
  const [job, customer, due] = ['job', 'customer', 'due'].map(columnsAt(JOBS, matrix[0] ?? []));
  return matrix.slice(1).flatMap((row) => {
    const name = jobName(row[job ?? -1]);
    const date = row[due ?? -1];
    return name === ''
      ? []
      : [{ job: name, customer: jobName(row[customer ?? -1]), due: typeof date === 'number' ? date : null }];
  });
}

function clubsByJob(matrix: Matrix | null): Map<string, { job: string; clubs: number }> {
  const counts = new Map<string, { job: string; clubs: number }>();
  if (!matrix) return counts;
  const job = columnsAt(CLUBS, matrix[0] ?? [])('job');
  for (const row of matrix.slice(1)) {
    const name = jobName(row[job]);
    if (name === '') continue;
    const known = counts.get(folded(name));
    counts.set(folded(name), { job: known?.job ?? name, clubs: (known?.clubs ?? 0) + 1 });
  }
  return counts;
}

/** The shop's name as Settings gives it; '' where it does not. */
export function shopName(matrix: Matrix | null): string {
  if (!matrix) return '';
  const at = columnsAt(SETTINGS, matrix[0] ?? []);
  const wanted = folded(SETTING_ROWS.find(({ key }) => key === 'shop')?.name);
  const row = matrix.slice(1).find((each) => folded(each[at('setting')]) === wanted);
  return jobName(row?.[at('value')]);
}

/** Whether a cell holds nothing. */
export function isBlankCell(value: Seen | undefined): boolean {
  return value === null || value === undefined || value === '';
}
