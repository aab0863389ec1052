/** Words of the week's page and screen. */
import type { WeekDone, WeekJob, WeekPart } from '../workbook/week';
import { sayIssue } from './issues';
import { sayNotDone, sayOccupied } from './outcomes';
import { countOf } from './readings';
import { onOrderText, shortText } from './stock';

export const WEEK_SHEET = {
  title: 'Work ahead',
  asOf: 'As of',
  jobs: 'Open jobs',
  minutes: 'Minutes in all',
  due: 'Due',
  job: 'Job',
  customer: 'Customer',
  state: 'Status',
  clubs: 'Clubs',
  benchMinutes: 'Minutes',
  short: 'Short',
  quote: 'Quote',
  total: (currency: string) => (currency === '' ? 'Total' : `Total, ${currency}`),
  none: 'No open job has clubs.',
  bare: (jobs: readonly string[]) => `Without clubs in Clubs: ${jobs.join(', ')}.`,
  overdue: 'Overdue',
  noDay: 'Due on no day',
  week: 'Week of',
  legend:
    'Short: what stock lacks for the job, the earliest due served first, and whether that is on order. Total: as the clubs would be quoted on that day; with a star where the quote that was issued says another.',
} as const;

/** What a part of the list is called; a week by its Monday, which the sheet writes as a date. */
export function partText({ when }: WeekPart): string {
  if (when === 'overdue') return WEEK_SHEET.overdue;
  return when === 'noDay' ? WEEK_SHEET.noDay : WEEK_SHEET.week;
}

/** `FERN-M × 4`, `MOSS-S × 2 (on order)`, `Build-up tape 1.2 yd`, several after commas. */
export function shortItemsText(short: WeekJob['short']): string {
  return short
    .map(({ item, quantity, onOrder, shelf }) => {
      const waits = onOrderText(shelf, { quantity, onOrder });
      return `${item} ${shelf === 'grip' ? '× ' : ''}${shortText(shelf, quantity)}${waits && ` (${waits})`}`;
    })
    .join(', ');
}

/** What the money of a job stands on; blank where there is nothing to say. */
export function quotedText({ round, money: { issued, issues, now } }: Pick<WeekJob, 'round' | 'money'>): string {
  if (round > 1) return 'redo, not charged';
  if (issued) return issued.revision > 1 ? `${issued.number} rev ${issued.revision}` : String(issued.number);
  return now ? 'not issued' : issues.length > 0 ? countOf(issues.length, 'thing to mend', 'things to mend') : '';
}

/** How filling the page ended. */
export function sayWeek(end: WeekDone): string {
  if (end.done) return `${countOf(end.jobs, 'open job')} listed in ${end.sheet}. Fill it again after a change.`;
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'notPlanned':
      return `${sayIssue(end.issue)} Nothing was written.`;
    case 'noRoom':
      return 'The page would run over the edge of the sheet.';
    default:
      return sayNotDone(end);
  }
}
