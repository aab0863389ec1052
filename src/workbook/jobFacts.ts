/** What a page says at its head about the job it is for. */
import { customersOfClubs } from './customers';
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

/** What Settings and Jobs say, and a list of clubs where Jobs names no customer; of clubs that belong to no one job, only the shop. */
export function jobFacts({ Settings: settings, Jobs: jobs, Clubs: clubs }: ShopTables, job: string | null): JobFacts {
  const shop = settings ? shopName(matrixOf(settings)) : '';
  if (job === null) return { shop, job, customer: '', due: null };
  const customer = customersOfClubs(clubs && matrixOf(clubs)).get(folded(job)) ?? '';
  const bare = { shop, job, customer, due: null };
  if (!jobs) return bare;
  const at = columnsAt(JOBS, jobs.headers);
  const row = jobs.rows.find((each) => folded(each[at('job')]) === folded(job));
  const due = row?.[at('due')];
  return { ...bare, customer: jobName(row?.[at('customer')]) || customer, due: typeof due === 'number' ? due : null };
}
