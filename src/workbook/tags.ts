/** Tags tied to clubs: which are on the counter, and which are there twice. Pure. */
import { folded } from './headings';
import { CLUBS } from './schema';
import type { ShopTables } from './shop';
import { jobRows, tableRows, textOf } from './shopRows';

export interface Tagged {
  readonly tag: string;
  readonly job: string;
  readonly club: string;
  /** The row of Clubs, as people are told it. */
  readonly where: string;
}

/** Tags of clubs whose job is not done; a tag comes off with the last club of its job. */
export function tagsOut(tables: ShopTables): readonly Tagged[] {
  const done = new Set(jobRows(tables).flatMap((job) => (job.done ? [folded(job.job)] : [])));
  return tableRows(tables, CLUBS).flatMap((row) => {
    const tag = textOf(row, 'tag');
    const job = textOf(row, 'job');
    if (tag === '' || done.has(folded(job))) return [];
    return [{ tag, job, club: textOf(row, 'club'), where: row.where }];
  });
}

/** Two clubs with one tag, of which at least one belongs to the job. */
export function sameTags(tags: readonly Tagged[], job: string): (readonly [Tagged, Tagged])[] {
  const first = new Map<string, Tagged>();
  const pairs: (readonly [Tagged, Tagged])[] = [];
  for (const each of tags) {
    const other = first.get(folded(each.tag));
    if (!other) first.set(folded(each.tag), each);
    else if ([each, other].some((one) => folded(one.job) === folded(job))) pairs.push([other, each]);
  }
  return pairs;
}

/** Tags counted on from a first one: `41`, `42`, `43`; undefined where it does not end in a number. */
export function tagsFrom(first: string, count: number): string[] | undefined {
  const found = /^(.*?)(\d{1,9})$/.exec(first.trim());
  if (!found) return undefined;
  const [, stem = '', digits = ''] = found;
  return Array.from({ length: count }, (_, at) => `${stem}${String(Number(digits) + at).padStart(digits.length, '0')}`);
}
