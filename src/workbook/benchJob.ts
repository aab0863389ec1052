/** One job as the bench takes it: planned from the tables as they stand. */
import { checkIn, type CheckIn, type Issue, type MeasuredClub, type Result } from '../core/index';
import { columnsAt, folded } from './headings';
import { planScope, scopeRows } from './planScope';
import type { Planned } from './planTables';
import { isBlank, readCell, readTable, type Row } from './records';
import { CHECKIN, CLUBS, columnOf, JOBS } from './schema';
import { jobName, matrixOf, type ShopTables } from './shop';

/** The plan of a job; null where Clubs has none of its clubs. */
export function planJob(tables: ShopTables, job: string): Result<Planned> | null {
  const scoped = tables.Clubs && scopeRows(tables.Clubs, { job });
  return scoped && scoped.rows.length > 0 ? planScope(tables, scoped, {}) : null;
}

/** Rows of Checkin by the job they name, as it is compared; read once for many jobs. */
export function checkInsOf(tables: ShopTables): ReadonlyMap<string, readonly Row[]> {
  const found = new Map<string, Row[]>();
  for (const row of allRows(tables)) {
    const job = folded(row.values.get('job'));
    const own = found.get(job);
    if (own) own.push(row);
    else found.set(job, [row]);
  }
  return found;
}

function allRows({ Checkin }: ShopTables): readonly Row[] {
  if (!Checkin) return [];
  const read = readTable(CHECKIN, matrixOf(Checkin), Checkin.at.row + 1);
  return read.ok ? read.value.rows : [];
}

/** Rows of Checkin that name a job; what is wrong with them stands in each. */
export function checkInRows(tables: ShopTables, job: string): readonly Row[] {
  return allRows(tables).filter(({ values }) => folded(values.get('job')) === folded(job));
}

/** Rows of Checkin that name a job of which there are no clubs, and so are looked at by nobody. */
export function strayRows(tables: ShopTables): readonly Issue[] {
  const jobs = new Set(
    [CLUBS, JOBS].flatMap((schema) => {
      const table = tables[schema.name];
      const at = table ? columnsAt(schema, table.headers)('job') : -1;
      return (table?.rows ?? []).map((row) => folded(row[at]));
    }),
  );
  return allRows(tables).flatMap(({ values, sheetRow, issues }): readonly Issue[] => {
    const job = jobName(values.get('job'));
    if (job === '') return issues.filter(({ code }) => code === 'blank');
    if (jobs.has(folded(job))) return [];
    const field = `${CHECKIN.name} row ${sheetRow}, ${columnOf(CHECKIN, 'job').header}`;
    return [{ code: 'unknownChoice', field, got: job, expected: 'a job that Jobs or Clubs has' }];
  });
}

/** Which time a row is for. */
export function roundOf({ values }: Row): number {
  const round = values.get('round');
  return typeof round === 'number' ? round : 1;
}

/** Which time a job is at the bench: above 1 its last redo under warranty, which is not charged. */
export function lastRound({ Checkin: table }: ShopTables, job: string): number {
  const at = table ? columnsAt(CHECKIN, table.headers) : () => -1;
  const [jobAt, roundAt] = [at('job'), at('round')];
  if (!table || roundAt < 0) return 1;
  const wanted = folded(job);
  const column = columnOf(CHECKIN, 'round');
  // Asked for each of many jobs: only rows that name a round are looked at.
  return table.rows.reduce((most, row) => {
    if (isBlank(row[roundAt]) || folded(row[jobAt]) !== wanted) return most;
    const read = readCell(column, row[roundAt]);
    return read.ok && typeof read.value === 'number' ? Math.max(most, read.value) : most;
  }, 1);
}

/** Of each club the rows that count: those of its last round. */
export function latestRows(rows: readonly Row[]): readonly Row[] {
  const latest = new Map<string, number>();
  const club = ({ values }: Row): string => folded(values.get('club'));
  for (const row of rows) latest.set(club(row), Math.max(latest.get(club(row)) ?? 1, roundOf(row)));
  return rows.filter((row) => roundOf(row) === latest.get(club(row)));
}

/** Whom the bench works on now: every club that gets a grip, or those of the job's last redo. */
export interface BenchRound {
  /** 1: the first time. */
  readonly number: number;
  /** Rows of Clubs, as the plan counts them. */
  readonly rows: ReadonlySet<number>;
}

export function benchRound(tables: ShopTables, job: string, { plan }: Pick<Planned, 'plan'>): BenchRound {
  const rows = checkInRows(tables, job);
  const number = lastRound(tables, job);
  const names = new Set(rows.filter((row) => roundOf(row) === number).map(({ values }) => folded(values.get('club'))));
  const clubs = plan.clubs.filter(({ grip, name }) => grip && (number === 1 || names.has(folded(name))));
  return { number, rows: new Set(clubs.map(({ row }) => row)) };
}

export interface JudgedJob {
  readonly checkIn: CheckIn;
  /** Rows that count, those of an earlier round left out. */
  readonly rows: readonly Row[];
  /** Cells that could not be read. */
  readonly unread: readonly Issue[];
}

/** What was measured of a job's clubs, held against its plan. */
export function judgedJob(tables: ShopTables, job: string, { plan, input }: Planned): JudgedJob {
  const all = checkInRows(tables, job);
  const rows = latestRows(all);
  const found = checkIn(plan, input, measuredRows(all));
  const unread = rows.flatMap(({ issues }) => issues);
  return { checkIn: { ...found, issues: [...found.issues, ...unread] }, rows, unread };
}

/** What counts of the rows of one job: of each club its last round. */
export function measuredRows(rows: readonly Row[]): MeasuredClub[] {
  const named = latestRows(rows).filter(({ values }) => values.has('club'));
  return named.map((row) => measuredOf(row, rows));
}

/**
 * One row of Checkin. A club that is done once more and was not measured bare has the weight of its time before, unless its row says
 * otherwise.
 *
 * @param rows of the same job
 */
export function measuredOf(row: Row, rows: readonly Row[]): MeasuredClub {
  const { values, sheetRow } = row;
  const weighted = weightRow(row, rows).values;
  const number = (key: string): number | undefined => numberIn(values, key);
  const decision = String(values.get('decision') ?? '').toLowerCase();
  return {
    club: String(values.get('club') ?? ''),
    sheetRow,
    bareReading: number('bareReading'),
    bareGrams: number('bareMass'),
    reading: number('reading'),
    massGrams: number('mass'),
    item: values.has('grip') ? String(values.get('grip')) : undefined,
    layers: number('layers'),
    onGrams: numberIn(weighted, 'weightOn'),
    onInches: numberIn(weighted, 'weightAt'),
    onWay: weighted.has('weighting') ? String(weighted.get('weighting')) : undefined,
    newGrams: newGrams(row, rows),
    isAgain: roundOf(row) > 1,
    decision: decision === 'accept' || decision === 'waive' ? decision : undefined,
    reason: values.has('reason') ? String(values.get('reason')) : undefined,
  };
}

function numberIn(values: Row['values'], key: string): number | undefined {
  const value = values.get(key);
  return typeof value === 'number' ? value : undefined;
}

/** The row that says what weight is on. */
function weightRow(row: Row, rows: readonly Row[]): Row {
  if (roundOf(row) === 1 || row.values.has('weightOn') || isBareKnown(row)) return row;
  return rowBefore(row, rows) ?? row;
}

/** A club that was measured bare counts with what the time before had put on. */
function isBareKnown({ values }: Row): boolean {
  return values.has('bareReading') || values.has('bareMass');
}

/** The same club's row of the time before. */
function rowBefore(row: Row, rows: readonly Row[]): Row | undefined {
  const club = folded(row.values.get('club'));
  const before = rows.filter((each) => roundOf(each) < roundOf(row) && folded(each.values.get('club')) === club);
  return before.sort((one, other) => roundOf(other) - roundOf(one))[0];
}

/** Of the weight that is on, what was put on this time. */
function newGrams(row: Row, rows: readonly Row[]): number | undefined {
  const on = numberIn(row.values, 'weightOn');
  if (roundOf(row) === 1 || on === undefined) return undefined;
  if (isBareKnown(row)) return on;
  const before = rowBefore(row, rows);
  return Math.max(0, on - ((before && numberIn(before.values, 'weightOn')) ?? 0));
}
