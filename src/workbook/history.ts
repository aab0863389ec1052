/** What a customer's clubs got last time, found in earlier jobs. Pure. */
import { folded } from './headings';
import type { Row } from './records';
import { CLUBS } from './schema';
import type { ShopTables } from './shop';
import { jobRows, numberOf, tableRows, textOf, type JobRow } from './shopRows';

/** What a club got in an earlier job. */
export interface LastTime {
  /** As it is called now. */
  readonly club: string;
  readonly job: string;
  /** The earlier job is done: what stands there was fitted, and not only meant to be. */
  readonly done: boolean;
  /** Day on which it was closed; else the day it was promised for. */
  readonly day: number | undefined;
  readonly item: string;
  readonly layers: number | undefined;
  readonly lowerLayers: number | undefined;
  /** Where the layers were found from a diameter. */
  readonly targetDiameter: number | undefined;
}

/**
 * The last grip of each club of a customer: of jobs that are done, the one closed last; where none is, the latest of the others.
 * Customer and club are known by their names, whatever their capitals and blanks.
 *
 * @param besides the job that is looked from: what it says itself is not the past
 * @returns those clubs of which something is known, in the order asked for
 */
export function lastTimes(
  tables: ShopTables,
  asked: { readonly customer: string; readonly clubs: readonly string[]; readonly besides: string | null },
): LastTime[] {
  if (folded(asked.customer) === '') return [];
  const jobs = jobRows(tables).filter(
    ({ customer, job }) =>
      folded(customer) === folded(asked.customer) && (asked.besides === null || folded(job) !== folded(asked.besides)),
  );
  const known = new Map(jobs.map((job) => [folded(job.job), job]));
  const rows = tableRows(tables, CLUBS).filter(
    (row) => known.has(folded(textOf(row, 'job'))) && textOf(row, 'newItem') !== '',
  );
  return asked.clubs.flatMap((club) => {
    const found = rows
      .filter((row) => folded(textOf(row, 'club')) === folded(club))
      .map((row) => ({ row, job: known.get(folded(textOf(row, 'job'))) as JobRow }))
      .reduce<Found | undefined>((last, each) => (last && !isLater(each.job, last.job) ? last : each), undefined);
    return found ? [timeOf(club, found)] : [];
  });
}

interface Found {
  readonly row: Row;
  readonly job: JobRow;
}

/** A job that is done comes before one that is not; then the later day; of two alike, the one further down. */
function isLater(one: JobRow, other: JobRow): boolean {
  if (one.done !== other.done) return one.done;
  return (dayOfJob(one) ?? -Infinity) >= (dayOfJob(other) ?? -Infinity);
}

function dayOfJob({ closed, due }: JobRow): number | undefined {
  return closed ?? due;
}

function timeOf(club: string, { row, job }: Found): LastTime {
  return {
    club,
    job: job.job,
    done: job.done,
    day: dayOfJob(job),
    item: textOf(row, 'newItem'),
    layers: numberOf(row, 'layers'),
    lowerLayers: numberOf(row, 'lowerLayers'),
    targetDiameter: numberOf(row, 'targetDiameter'),
  };
}
