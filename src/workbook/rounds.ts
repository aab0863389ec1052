/** Which time jobs are done: 1 at first, 2 for their first redo, and so on. */
import type { SetPlan } from '../core/index';
import { roundOf } from './benchJob';
import { folded } from './headings';
import { readMovements } from './movements';
import { CHECKIN } from './schema';
import type { ShopTables } from './shop';
import { tableRows, textOf } from './shopRows';

/** The last redo of a job. */
export interface Redo {
  readonly number: number;
  /** Names of its clubs, as they are compared. */
  readonly clubs: ReadonlySet<string>;
}

/** The last redo of every job that had one, by the job's name as it is compared; from one reading of Checkin. */
export function redosOf(tables: ShopTables): ReadonlyMap<string, Redo> {
  const redos = new Map<string, { number: number; clubs: Set<string> }>();
  for (const row of tableRows(tables, CHECKIN)) {
    const number = roundOf(row);
    const job = folded(textOf(row, 'job'));
    const known = redos.get(job);
    if (number < 2 || number < (known?.number ?? 0)) continue;
    const clubs = number === known?.number ? known.clubs : new Set<string>();
    redos.set(job, { number, clubs: clubs.add(folded(textOf(row, 'club'))) });
  }
  return redos;
}

/** Rows of Clubs that a redo is for. */
export function redoRows({ clubs }: SetPlan, redo: Redo): ReadonlySet<number> {
  return new Set(clubs.filter(({ name }) => redo.clubs.has(folded(name))).map(({ row }) => row));
}

/** The last time that the ledger took pieces for a job; 0 where it never did. A check-in that was cleared away is still known there. */
export function lastTaken({ Movements }: ShopTables, job: string): number {
  const read = Movements && readMovements(Movements);
  if (!read?.ok) return 0;
  return read.value.reduce((most, each) => (folded(each.job) === folded(job) ? Math.max(most, each.round) : most), 0);
}
