/** Words at the head of a filled comparison. */
import { COUNTS, type Comparison } from '../core/index';
import { COUNT_MEANING, COUNT_WORDS, sayNotTried } from './choose';
import { listed } from './listed';
import { countOf } from './readings';

export const COMPARE_WORDS = {
  title: 'Grips compared',
  job: 'Job',
  customer: 'Customer',
  clubs: 'Clubs',
  about: 'Compared',
  notTried: 'Not tried',
} as const;

/** Whether a candidate is beaten. */
export const STANDING_WORDS = { unbeaten: 'Unbeaten', beaten: 'Beaten' } as const;

export const STANDING_MEANING = {
  unbeaten: 'no other grip tried is at least as good on every count and better on one',
  beaten: 'some other grip is. The counts are not set against each other: which matters is for you to say',
} as const;

/** What each count means, a line each. */
export const COUNT_LEGENDS: readonly string[] = COUNTS.map((count) => `${COUNT_WORDS[count]}: ${COUNT_MEANING[count]}`);

export const COMPARE_LEGEND =
  'Less is better. Counts are compared rounded to .001 in, 0.1 point, 0.5 g. Means are without signs. Blank: not known. ' +
  'A + B: each club gets the core that suits.';

/** How many clubs were compared, of how many the job has. */
export function clubsText(compared: number, all: number): string {
  return compared === all ? String(all) : `${compared} of ${all}`;
}

/** More are no longer read one by one. */
const MOST_NOT_TRIED = 40;

/** Which grips were not tried and why, a line each; those that were narrowed away together. */
export function notTriedLines({ notTried }: Comparison): string[] {
  const left = notTried.filter(({ why }) => why !== 'filtered');
  const narrowed = notTried.filter(({ why }) => why === 'filtered').map(({ item }) => item);
  const more = left.length - MOST_NOT_TRIED;
  return [
    ...left.slice(0, MOST_NOT_TRIED).map(sayNotTried),
    ...(more > 0 ? [`${countOf(more, 'further grip')} likewise.`] : []),
    ...(narrowed.length > 0 ? [`Left out by what it was narrowed down to: ${listed(narrowed)}.`] : []),
  ];
}
