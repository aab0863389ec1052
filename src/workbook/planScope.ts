/** Which clubs a plan is for, and whether it can follow the tables. */
import { drained } from '../core/index';
import type { Progress, Result } from '../core/index';
import { columnsAt, folded } from './headings';
import type { FillRequest, Scope, WhyValues } from './outcomes';
import { planSteps } from './planTables';
import type { HeaderRows, Planned } from './planTables';
import type { Argument, Call, TableSeen } from './port';
import { isBlank } from './records';
import type { Matrix } from './records';
import { CLUBS } from './schema';
import { jobName, matricesOf } from './shop';
import type { ShopTables } from './shop';
import { withChoicesSteps } from './choices';
import type { Choices } from './choices';

/** A longer plan is written as values: one cell that fills thousands of rows would be computed again at every keystroke. */
export const LIVE_MOST = 500;

/** Clubs of a scope, found in the tables. */
export interface Scoped {
  /** Body rows of Clubs, from 1. */
  readonly rows: readonly number[];
  /** The job they all belong to; null where there are several, or none. */
  readonly job: string | null;
  /** Whether they are all the clubs of that job. */
  readonly wholeJob: boolean;
  /** Which plan this is: `job:1042`, `part:1042`, `mixed`. */
  readonly key: string;
}

/** Finds the clubs of a scope; none where the table has none of them. */
export function scopeRows(clubs: TableSeen, scope: Scope): Scoped {
  const job = columnsAt(CLUBS, clubs.headers)('job');
  const jobs = clubs.rows.map((row) => jobName(row[job]));
  const filled = clubs.rows.flatMap((row, i) => (!row.every(isBlank) ? [i + 1] : []));
  const ofJob = (name: string): number[] => filled.filter((row) => sameJob(jobs[row - 1], name));
  if ('job' in scope) {
    const name = jobName(scope.job);
    return { rows: name === '' ? [] : ofJob(name), job: name, wholeJob: true, key: keyOf(name, true) };
  }
  const chosen = new Set(scope.rows);
  const rows = filled.filter((row) => chosen.has(row));
  const name = jobs[(rows[0] ?? 0) - 1] ?? '';
  const oneJob = name !== '' && rows.every((row) => sameJob(jobs[row - 1], name));
  const wholeJob = oneJob && ofJob(name).length === rows.length;
  return { rows, job: oneJob ? name : null, wholeJob, key: keyOf(oneJob ? name : null, wholeJob) };
}

/** Jobs are told apart as SETPLAN does it. */
function sameJob(one: string | undefined, other: string): boolean {
  return folded(one) === folded(other);
}

function keyOf(job: string | null, whole: boolean): string {
  return job === null ? 'mixed' : `${whole ? 'job' : 'part'}:${job.toLowerCase()}`;
}

/** Plans the clubs of a scope as they will be once the choices are written. */
export function planScope(tables: ShopTables, scoped: Scoped, choices: Choices): Result<Planned> {
  return drained(planScopeSteps(tables, scoped, choices));
}

/** {@link planScope} in steps. */
export function* planScopeSteps(
  tables: ShopTables,
  scoped: Scoped,
  choices: Choices,
): Generator<Progress | undefined, Result<Planned>> {
  const matrices = matricesOf(tables);
  const clubs: Matrix = yield* withChoicesSteps(matrices.Clubs ?? [], scoped.rows, choices);
  yield;
  const { Stock: stock, Settings: settings, Weights: weights, Tape: tape } = matrices;
  const which = scoped.wholeJob ? { job: scoped.job } : { rows: scoped.rows };
  return yield* planSteps({ clubs, stock, settings, weights, tape, headerRows: headerRowsOf(tables), ...which });
}

/** Where the tables of a plan stand in their sheets. */
export function headerRowsOf({ Clubs, Stock, Settings, Weights, Tape }: ShopTables): HeaderRows {
  const row = (table: TableSeen | null): number | undefined => (table ? table.at.row + 1 : undefined);
  return { clubs: row(Clubs), stock: row(Stock), settings: row(Settings), weights: row(Weights), tape: row(Tape) };
}

/** Why a plan is written as values; null where it can be live. */
export function whyValues(request: Pick<FillRequest, 'as'>, scoped: Scoped, spill: boolean): WhyValues | null {
  if (request.as === 'values') return 'asked';
  if (!spill) return 'noSpill';
  if (!scoped.wholeJob) return 'selection';
  return scoped.rows.length > LIVE_MOST ? 'large' : null;
}

/** The call that plans a job from the tables that are there. */
export function planCall(tables: ShopTables, job: string): Call {
  const whole = (table: TableSeen | null): Argument => (table ? { table: table.name } : null);
  const { Clubs, Stock, Settings, Weights, Tape } = tables;
  return { call: 'SETPLAN', args: [...[Clubs, Stock, Settings, Weights, Tape].map(whole), { literal: job }] };
}
