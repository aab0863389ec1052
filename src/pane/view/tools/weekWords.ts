/** Words of the screen for the work ahead. */
import { dayWords } from '../../../words/intake';
import { moneyText } from '../../../words/money';
import { quotedText, shortItemsText, WEEK_SHEET } from '../../../words/week';
import type { WeekJob, WeekPart } from '../../../workbook/week';
import { counted, namesText, numberText } from '../../words';

export const WEEK_WORDS = {
  title: 'Open jobs',
  how: 'By the week they are due in, as Clubs stands now.',
  sum: (jobs: number, minutes: number) => `${counted(jobs, 'job')}, ${numberText(minutes, 0)} minutes at the bench.`,
  working: (done: number, of: number) => `Job ${done} of ${of}`,
  none: 'No open job has clubs. Begin one under Intake.',
  bare: (jobs: readonly string[]) => `${namesText(jobs)}: no clubs in Clubs yet.`,
  look: 'Look at it',
  lookAt: (job: string) => `Look at job ${job}`,
  sheet: 'Fill week sheet',
  batchTitle: 'In one go',
  batchHow: 'For the jobs ticked above. Quotes that hold and still say what the tables say stay as they are.',
  quote: 'Issue quotes',
  reserve: 'Reserve stock',
  plan: 'Fill plans',
  all: 'Tick all',
  no: 'Tick none',
  run: (jobs: number) => (jobs === 0 ? 'Tick a job first' : `Do it for ${counted(jobs, 'job')}`),
  batchDoing: 'Working through the jobs…',
  batchDone: 'Jobs worked through',
  batchPartly: 'Worked through, with something to look at',
  batchStopped: 'Stopped',
  batchFailed: 'The jobs were not worked through',
  weekDoing: 'Writing the work ahead…',
  weekDone: 'Work ahead written',
  weekFailed: 'The work ahead was not written',
} as const;

/** What heads a part of the list. */
export function partHeading({ when, monday, minutes, money }: WeekPart): string {
  const names = { overdue: WEEK_SHEET.overdue, noDay: WEEK_SHEET.noDay, week: WEEK_SHEET.week } as const;
  const week = monday === undefined ? '' : ` ${dayWords(monday)}`;
  return [`${names[when]}${week}`, `${numberText(minutes, 0)} min`, ...(money ? [moneyText(money)] : [])].join(' · ');
}

/** What stands under a job's name. */
export function jobLine({ due, clubs, fitted, minutes, money, state }: WeekJob): string {
  const grips = fitted === clubs ? counted(clubs, 'club') : `${fitted} of ${counted(clubs, 'club')} with a grip`;
  return [
    ...(due === undefined ? [] : [dayWords(due)]),
    ...(state === 'Waiting' ? ['waiting'] : []),
    grips,
    `${numberText(minutes, 0)} min`,
    ...(money.now ? [moneyText(money.now)] : []),
  ].join(' · ');
}

/** The quote of a job, and whether it says another total by now. */
export function quoteLine(job: WeekJob, differs: boolean): string {
  const said = job.money.issued ? `Quote ${quotedText(job)}` : `Quote: ${quotedText(job)}`;
  return differs ? `${said}, of another total` : said;
}

export function shortLine({ short }: WeekJob): string {
  return short.length > 0 ? `Short: ${shortItemsText(short)}` : '';
}
