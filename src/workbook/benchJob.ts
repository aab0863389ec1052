/** One job as the bench takes it: planned from the tables as they stand. */
import { checkIn, type CheckIn, type Issue, type MeasuredClub, type Result } from '../core/index';
import { folded } from './headings';
import { planScope, scopeRows } from './planScope';
import type { Planned } from './planTables';
import { readTable, type Row } from './records';
import { CHECKIN } from './schema';
import { matrixOf, type ShopTables } from './shop';

/** The plan of a job; null where Clubs has none of its clubs. */
export function planJob(tables: ShopTables, job: string): Result<Planned> | null {
  const scoped = tables.Clubs && scopeRows(tables.Clubs, { job });
  return scoped && scoped.rows.length > 0 ? planScope(tables, scoped, {}) : null;
}

/** Rows of Checkin that name a job; what is wrong with them stands in each. */
export function checkInRows({ Checkin }: ShopTables, job: string): readonly Row[] {
  if (!Checkin) return [];
  const read = readTable(CHECKIN, matrixOf(Checkin), Checkin.at.row + 1);
  return read.ok ? read.value.rows.filter(({ values }) => folded(values.get('job')) === folded(job)) : [];
}

export interface JudgedJob {
  readonly checkIn: CheckIn;
  readonly rows: readonly Row[];
  /** Cells that could not be read. */
  readonly unread: readonly Issue[];
}

/** What was measured of a job's clubs, held against its plan. */
export function judgedJob(tables: ShopTables, job: string, { plan, input }: Planned): JudgedJob {
  const rows = checkInRows(tables, job);
  const found = checkIn(plan, input, rows.map(measuredOf));
  const unread = rows.flatMap(({ issues }) => issues);
  return { checkIn: { ...found, issues: [...found.issues, ...unread] }, rows, unread };
}

function measuredOf({ values, sheetRow }: Row): MeasuredClub {
  const number = (key: string): number | undefined => {
    const value = values.get(key);
    return typeof value === 'number' ? value : undefined;
  };
  const decision = String(values.get('decision') ?? '').toLowerCase();
  return {
    club: String(values.get('club') ?? ''),
    sheetRow,
    bareReading: pointsOf(values.get('bareReading')),
    bareGrams: number('bareMass'),
    reading: pointsOf(values.get('reading')),
    massGrams: number('mass'),
    decision: decision === 'accept' || decision === 'waive' ? decision : undefined,
    reason: values.has('reason') ? String(values.get('reason')) : undefined,
  };
}

function pointsOf(value: unknown): number | undefined {
  return typeof value === 'number' ? value : undefined;
}
