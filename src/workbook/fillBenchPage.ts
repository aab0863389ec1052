/** Filling one of a job's pages for the bench or the counter into a sheet of its own, as values to be printed. */
import type { BenchPageDone } from './benchDone';
import { benchRound, planJob, type BenchRound } from './benchJob';
import { fillPage, type MakePage, type Page } from './fillPage';
import { jobFacts, type JobFacts } from './jobFacts';
import type { InTheWay } from './outcomes';
import type { Planned } from './planTables';
import type { WorkbookPort } from './port';
import { CLUBS } from './schema';
import { pageSheetName } from './sheetName';
import type { Shop, ShopTables } from './shop';

/** What a page of a job is made from: the tables as they stand, and the clubs that the bench works on now. */
export interface JobAtHand {
  readonly tables: ShopTables;
  readonly facts: JobFacts;
  readonly job: string;
  readonly planned: Planned;
  readonly round: BenchRound;
}

export interface BenchPage {
  /** Which page it is, beside the job's others. */
  readonly key: string;
  /** First word of its sheet's name. */
  readonly sheet: string;
  readonly label: (job: string) => string;
  readonly make: (hand: JobAtHand) => Pick<Page, 'cells' | 'list' | 'dress'>;
}

export interface PageAsked {
  readonly job: string;
  readonly agreed?: InTheWay | undefined;
}

/** Writes a page of a job from its clubs as they stand in Clubs. Filled again, it is rewritten in place; a redo has pages of its own. */
export async function fillBenchPage(
  port: WorkbookPort,
  shop: Shop,
  page: BenchPage,
  { job, agreed }: PageAsked,
): Promise<BenchPageDone> {
  let clubs = 0;
  const make: MakePage<Exclude<BenchPageDone, { done: true } | { reason: 'port' | 'occupied' | 'noRoom' }>> = (
    tables,
  ) => {
    if (!tables.Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    const planned = planJob(tables, job);
    if (!planned) return { done: false, reason: 'noClubs' };
    if (!planned.ok) return { done: false, reason: 'notPlanned', issue: planned.issue };
    const round = benchRound(tables, job, planned.value);
    clubs = round.rows.size;
    if (clubs === 0) return { done: false, reason: 'noGrips' };
    const isRedo = round.number > 1;
    const name = isRedo ? `${job} round ${round.number}` : job;
    return {
      ...page.make({ tables, facts: jobFacts(tables, job), job, planned: planned.value, round }),
      key: `${page.key}:job:${job.trim().toLowerCase()}${isRedo ? `:${round.number}` : ''}`,
      job,
      sheetName: (taken) => pageSheetName(page.sheet, name, taken),
      label: page.label(job),
    };
  };
  const end = await fillPage(port, shop, make, agreed);
  return end.done ? { ...end, clubs } : end;
}
