/** Words for how a batch of jobs ended: a sentence over all of it, and a line for each job. */
import type { BatchDone, QuoteEnd } from '../workbook/batch';
import type { ReserveDone } from '../workbook/stockDone';
import { moneyText } from './money';
import { sayFill, sayNotDone } from './outcomes';
import { quoteIdText } from './quoteHead';
import { sayIssued } from './quoteOutcomes';
import { countOf } from './readings';
import { sayReservedAlone, shortText } from './stock';

export const BATCH_STEPS = {
  quote: (worked: number, of: number) => `Quoting job ${Math.min(worked + 1, of)} of ${of}…`,
  reserve: (worked: number, of: number) => `Reserving: job ${Math.min(worked + 1, of)} of ${of} looked at…`,
  plan: (worked: number, of: number) =>
    worked < of ? `Planning job ${worked + 1} of ${of}…` : `Writing the plans of ${countOf(of, 'job')}…`,
} as const;

/** What was done for all jobs, and what was not. */
export function sayBatch(end: BatchDone): string {
  const { quotes, reserved, plans, stopped } = end;
  const said = [
    quotes ? sayQuotes([...quotes.values()]) : '',
    plans ? ('filled' in plans ? sayPlans(plans) : sayNotDone(plans)) : '',
    reserved ? sayReservations(reserved) : '',
    stopped ? (quotes || reserved ? 'Stopped there; nothing more was written.' : 'Stopped. Nothing was written.') : '',
  ];
  return said.filter((text) => text !== '').join(' ');
}

function sayQuotes(ends: readonly QuoteEnd[]): string {
  const issued = ends.filter((end) => end.done && !('stands' in end)).length;
  const stand = ends.filter((end) => 'stands' in end).length;
  const not = ends.length - issued - stand;
  const parts = [
    `${countOf(issued, 'quote')} issued`,
    ...(stand > 0 ? [`${stand} still as issued before`] : []),
    ...(not > 0 ? [`${not} not issued`] : []),
  ];
  return `${parts.join(', ')}.`;
}

/** What is lacked stands in the lines. */
function sayReservations(end: ReserveDone): string {
  return end.done && end.movements.length === 0 ? 'Reservations stay as they were.' : sayReservedAlone(end);
}

function sayPlans({ filled, left }: Extract<BatchDone['plans'], { left: unknown }>): string {
  const not = left.length > 0 ? `, ${left.length} not` : '';
  return `${countOf(filled.size, 'plan')} filled${not}.`;
}

/** What a person has to look at, what jobs lack, then what went well; a line each, under the name of its job. */
export function batchLines({ quotes, reserved, plans }: BatchDone): string[] {
  const refused = [...(quotes ?? [])].flatMap(([job, end]) => (end.done ? [] : [`${job}: ${sayNotIssued(end)}`]));
  const left = plans && 'left' in plans ? plans.left.map(({ job, end }) => `${job}: ${sayFill(end)}`) : [];
  return [...refused, ...left, ...lackLines(reserved), ...issuedLines(quotes)];
}

function sayNotIssued(end: Extract<QuoteEnd, { done: false }>): string {
  const revise = 'It was left: issue a revision under Quote if it is to change.';
  if (end.reason === 'linesOther') {
    return `quote ${quoteIdText(end)} holds and comes to the same, but the tables say it otherwise by now: “${end.what}” is not alike on both. ${revise}`;
  }
  if (end.reason === 'sheetEdited') {
    return `quote ${quoteIdText(end)} holds, but ${end.sheet} does not say any more what was issued: its lines do not add up to the total in Quotes, so somebody wrote in it. It was left: look at it, and issue a revision under Quote if that is what was agreed.`;
  }
  if (end.reason !== 'saysOther') return sayIssued(end);
  return `quote ${quoteIdText(end)} holds and says ${end.was}; the tables say ${moneyText(end.now)} by now. ${revise}`;
}

/** Each job's lacks in one line. */
function lackLines(reserved: ReserveDone | undefined): string[] {
  if (!reserved?.done) return [];
  const byJob = new Map<string, string[]>();
  for (const { job, item, shelf, quantity } of reserved.lacks) {
    byJob.set(job, [...(byJob.get(job) ?? []), `${shortText(shelf, quantity)} of ${item}`]);
  }
  return [...byJob].map(([job, texts]) => `${job} lacks ${texts.join(', ')}.`);
}

function issuedLines(quotes: BatchDone['quotes']): string[] {
  return [...(quotes ?? [])].flatMap(([job, end]) => {
    if (!end.done) return [];
    if (!('stands' in end)) return [`${job}: quote ${quoteIdText(end)} over ${moneyText(end.total)}.`];
    if (end.byTotal === undefined) return [];
    return [
      `${job}: quote ${quoteIdText(end)} holds by its total; it has no sheet any more whose lines could be compared.`,
    ];
  });
}

/** Whether there is something to look at. */
export function isPartly({ quotes, reserved, plans, stopped }: BatchDone): boolean {
  return (
    stopped ||
    [...(quotes?.values() ?? [])].some((end) => !end.done) ||
    (reserved !== undefined && (!reserved.done || reserved.lacks.length > 0)) ||
    (plans !== undefined && (!('left' in plans) || plans.left.length > 0))
  );
}
