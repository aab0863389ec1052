/** Filling a job's intake sheet into a sheet of its own, as values to be printed and written on. */
import { fillPage, type MakePage } from './fillPage';
import { folded } from './headings';
import type { IntakeDone, IntakeFault } from './intakeOutcomes';
import { dressIntake, intakePage } from './intakeSheet';
import type { InTheWay } from './outcomes';
import type { WorkbookPort } from './port';
import { CLUBS, JOBS } from './schema';
import { pageSheetName } from './sheetName';
import type { Shop, ShopTables } from './shop';
import { clubRows, jobRows } from './shopRows';
import { sameTags, tagsOut } from './tags';

/** Writes the intake sheet of a job from Jobs and Clubs as they stand. Filled again, it is rewritten in place. */
export async function fillIntake(
  port: WorkbookPort,
  shop: Shop,
  of: { readonly job: string; readonly agreed?: InTheWay | undefined },
): Promise<IntakeDone> {
  const { job, agreed } = of;
  let clubs = 0;
  const make: MakePage<Exclude<IntakeDone, { done: true } | { reason: 'port' | 'occupied' | 'noRoom' }>> = (tables) => {
    if (!tables.Jobs) return { done: false, reason: 'tableMissing', table: JOBS.name };
    if (!tables.Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    if (!jobRows(tables).some((each) => folded(each.job) === folded(job))) {
      return { done: false, reason: 'jobNotListed', job };
    }
    clubs = clubRows(tables, job).length;
    if (clubs === 0) return { done: false, reason: 'noClubs', job };
    const fault = intakeFault(tables, job);
    if (fault) return { done: false, reason: 'fault', fault };
    const page = intakePage(tables, job);
    return {
      cells: page.cells,
      // known cell by cell: what was typed into one of its lines is named alone
      list: { from: 0, rows: 0 },
      key: `intake:job:${job.trim().toLowerCase()}`,
      job,
      sheetName: (taken) => pageSheetName('Intake', job, taken),
      dress: (at) => dressIntake(at, page),
      label: `Intake sheet of job ${job}`,
    };
  };
  const end = await fillPage(port, shop, make, agreed);
  return end.done ? { ...end, clubs } : end;
}

/** What a sheet would say that cannot be so: clubs promised for before they came, or two clubs with one tag. */
export function intakeFault(tables: ShopTables, job: string): IntakeFault | undefined {
  const row = jobRows(tables).find((each) => folded(each.job) === folded(job));
  const { received, due, done } = row ?? {};
  // a day that is past is no mistake by itself: the sheet of a job that is late is printed too
  if (due !== undefined && received !== undefined && Math.floor(due) < Math.floor(received) && !done) {
    return { why: 'dueFirst', due, received };
  }
  const pairs = sameTags(tagsOut(tables), job);
  return pairs.length > 0 ? { why: 'sameTag', pairs } : undefined;
}
