/** What a page says at its head about the job it is for. */
import { columnsAt, folded } from './headings';
import { JOBS } from './schema';
import { jobName, matrixOf, shopName } from './shop';
import type { ShopTables } from './shop';

export interface JobFacts {
  /** Name of the shop, as Settings gives it. */
  readonly shop: string;
  readonly job: string | null;
  readonly customer: string;
  /** A date serial. */
  readonly due: number | null;
}

/** What Settings and Jobs say; of clubs that belong to no one job, only the shop. */
export function jobFacts({ Settings: settings, Jobs: jobs }: ShopTables, job: string | null): JobFacts {
  const shop = settings ? shopName(matrixOf(settings)) : '';
  const bare = { shop, job, customer: '', due: null };
  if (!jobs || job === null) return bare;
  const at = columnsAt(JOBS, jobs.headers);
  const row = jobs.rows.find((each) => folded(each[at('job')]) === folded(job));
  const due = row?.[at('due')];
  return { ...bare, customer: jobName(row?.[at('customer')]), due: typeof due === 'number' ? due : null };
}
