/** Words of intake: what stands on its sheet, and how its jobs end. */
import type { ListFault } from '../workbook/clubList';
import type { IntakeDone, IntakeFault, JobDone, JobFault, LastDone, RemindersDone } from '../workbook/intakeOutcomes';
import type { LastTime } from '../workbook/history';
import type { HeldBack } from '../workbook/reminders';
import type { Tagged } from '../workbook/tags';
import { listed } from './listed';
import { sayNotDone, sayOccupied } from './outcomes';
import { countOf, readingText, signed, thousandths } from './readings';

export const INTAKE_SHEET = {
  title: 'Intake sheet',
  job: 'Job',
  customer: 'Customer',
  received: 'Received',
  due: 'Due',
  clubCount: 'Clubs',
  phone: 'Reach at',
  notes: 'Notes',
  authorised: 'Authorised by',
  signature: 'Signature',
  date: 'Date',
  terms: 'Terms',
  layers: (count: number) => countOf(count, 'layer'),
  keep: { Whole: 'Yes, off whole', 'Cut off': 'No, cut off', 'Off already': 'Off already' } as Readonly<
    Record<string, string>
  >,
} as const;

export const REMINDER_SHEET = {
  title: 'Reminders',
  about: (months: number) =>
    `Last job closed ${countOf(months, 'month')} ago or longer, and none open. How long is set in Settings, Remind after.`,
  held: 'Due as well, but left out because a job of theirs is not done:',
} as const;

interface Wanted {
  readonly item: string;
  readonly own: boolean;
  readonly layers: number | undefined;
  readonly lowerLayers: number | undefined;
  readonly targetDiameter: number | undefined;
  readonly hold: string;
  readonly targetPoints: number | undefined;
  readonly lengthChange: number | undefined;
}

/** `TB-S60, 2 layers; to read as it did; 0.5 in longer`; nothing where nothing was said yet. */
export function sayWanted(wanted: Wanted): string {
  const { item, own, hold, targetPoints, lengthChange = 0 } = wanted;
  const grip = [item === '' ? '' : own ? `${item}, the customer’s own` : item, ...tapeParts(wanted)].filter(Boolean);
  const reads =
    hold === 'Target' && targetPoints !== undefined
      ? `to read ${readingText(targetPoints)}`
      : hold === 'As it was'
        ? 'to read as it did'
        : '';
  const length = lengthChange === 0 ? '' : `${Math.abs(lengthChange)} in ${lengthChange > 0 ? 'longer' : 'shorter'}`;
  return [grip.join(', ') || (own ? 'The customer’s own grip' : ''), reads, length].filter(Boolean).join('; ');
}

function tapeParts({ layers, lowerLayers, targetDiameter }: Wanted): string[] {
  return [
    ...(layers ? [countOf(layers, 'layer')] : targetDiameter ? [`to ${thousandths(targetDiameter)} in`] : []),
    ...(lowerLayers ? [`${lowerLayers} more under the lower hand`] : []),
  ];
}

/** A day, `2026-05-15`. */
export function dayWords(day: number): string {
  return new Date((Math.floor(day) - 25569) * 86_400_000).toISOString().slice(0, 10);
}

/** A day that nobody misreads, whatever order a field shows it in: `Friday, 15 May 2026`. */
export function longDay(day: number): string {
  const date = new Date((Math.floor(day) - 25569) * 86_400_000);
  const part = (of: Intl.DateTimeFormatOptions): string => date.toLocaleDateString('en', { ...of, timeZone: 'UTC' });
  return `${part({ weekday: 'long' })}, ${date.getUTCDate()} ${part({ month: 'long' })} ${date.getUTCFullYear()}`;
}

/** What in a list of clubs could not be read, and what to type. */
export function sayListFault(fault: ListFault): string {
  const { why, part } = fault;
  switch (why) {
    case 'unknown':
      return `“${part}” is no club. Name it with its kind: 3 wood, 4 hybrid, 7 iron, 52 wedge, PW, Putter.`;
    case 'range':
      return `“${part}” leaves open which clubs lie between. From one iron or hybrid to another, or to PW, AW or GW; name the others one by one.`;
    case 'twice':
      return `${part} is named twice. Give the second one a name of its own, such as Spare ${part}; two of a kind are 2 x ${part}.`;
    case 'many':
      return `“${part}” is left out: one job takes 60 clubs here.`;
    case 'either':
      return `“${part}” can be ${fault.these[0]} or ${fault.these[1]}. Type which of them came in.`;
    case 'count':
      return `“${part}” leaves open how many clubs of which kind. Name one of them as 7 iron, several of a kind as 2 x 7 iron.`;
    case 'apart':
      return `“${part}” may be one club or several. Put a comma between clubs; a second one of a kind is Driver no. 2.`;
  }
}

function taggedText({ job, club, where }: Tagged): string {
  return `${club}${job ? ` of job ${job}` : ''} (${where})`;
}

/** Why a job cannot be begun as it is asked for. */
export function sayJobFault(fault: JobFault): string {
  switch (fault.why) {
    case 'noCustomer':
      return 'Customer is blank. Say whose clubs they are.';
    case 'noClubs':
      return 'No clubs are named. Type which ones came in, such as Driver, 3 wood, 4-PW.';
    case 'duePast':
      return `Due is ${dayWords(fault.due)}, which is past: today is ${dayWords(fault.today)}. Give a day from today on, or leave it blank.`;
    case 'jobUsed':
      return `Job ${fault.job} is there already. Leave the number blank for the next free one, or type another.`;
    case 'tagNoNumber':
      return `First tag is “${fault.tag}”, which does not end in a number to count on from. Type one such as 41 or A07, or leave it blank.`;
    case 'tagUsed':
      return `Tag ${fault.tag} is on ${taggedText(fault.by)}. Begin with a tag after it.`;
  }
}

/** How beginning a job ended. */
export function sayJob(end: JobDone): string {
  if (end.done) {
    const last = end.takenOver > 0 ? ` ${countOf(end.takenOver, 'club')} with last time’s grip.` : '';
    const instead =
      end.insteadOf === null ? '' : ` ${end.insteadOf} was shown, but was given before and is not given twice.`;
    return `Job ${end.job} is in Jobs, ${countOf(end.clubs, 'club')} in Clubs.${instead}${last} Type there what is known of each.`;
  }
  return end.reason === 'fault' ? `${sayJobFault(end.fault)} Nothing was written.` : sayNotDone(end);
}

/** Why an intake sheet is not printed. */
export function sayIntakeFault(fault: IntakeFault): string {
  if (fault.why === 'dueFirst') {
    return `Due is ${dayWords(fault.due)}, before the clubs were received on ${dayWords(fault.received)}. Mend the one that is wrong in Jobs.`;
  }
  const pairs = fault.pairs.map(([one, other]) => `${one.tag} on ${taggedText(one)} and on ${taggedText(other)}`);
  return `Two clubs have one tag: ${listed(pairs)}. Give each club on the counter a tag of its own.`;
}

/** How filling an intake sheet ended. */
export function sayIntake(end: IntakeDone): string {
  if (end.done) {
    return `Intake sheet of ${countOf(end.clubs, 'club')} filled into ${end.sheet}. Print it; what is not known yet is written by hand.`;
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'fault':
      return `${sayIntakeFault(end.fault)} Nothing was written.`;
    case 'noClubs':
      return `Job ${end.job} has no clubs. Name it in the Job column of Clubs, or begin the job here with its clubs.`;
    case 'jobNotListed':
      return `Jobs has no row for job ${end.job}. Add the row first: the sheet says whose clubs they are.`;
    case 'noRoom':
      return 'The intake sheet would run over the edge of the sheet.';
    default:
      return sayNotDone(end);
  }
}

/** `2 layers`; `to .920 in`; nothing where nothing is known. */
export function layersWords({ layers, lowerLayers, targetDiameter }: LastTime): string {
  const upper = layers === undefined ? (targetDiameter ? `to ${thousandths(targetDiameter)}` : '') : String(layers);
  return lowerLayers ? `${upper} ${signed(lowerLayers, 0)} lower` : upper;
}

/** How taking over from last time ended. */
export function sayLast(end: LastDone): string {
  if (end.done) {
    return end.cells === 0
      ? `Clubs has last time’s grips for job ${end.job} already.`
      : `${countOf(end.clubs, 'club')} of job ${end.job} with last time’s grip and layers; ${countOf(end.cells, 'cell')} of Clubs changed.`;
  }
  if (end.reason === 'occupied') return sayOccupied(end);
  if (end.reason === 'nothingKnown') return `No earlier job of this customer tells what these clubs got.`;
  return sayNotDone(end);
}

/** A customer who would be due, and the job that stands against it: `Ivo Brandt: job 1043 came in on 2025-02-11, 400 days ago`. */
export function sayHeldBack({ customer, job, since }: HeldBack): string {
  if (!since) return `${customer}: job ${job}, of which Jobs gives no day`;
  const { is, day, daysAgo } = since;
  const age =
    daysAgo < 0 ? `in ${countOf(-daysAgo, 'day')}` : daysAgo === 0 ? 'today' : `${countOf(daysAgo, 'day')} ago`;
  return `${customer}: job ${job} ${is === 'received' ? 'came in' : daysAgo < 0 ? 'is due' : 'was due'} on ${dayWords(day)}, ${age}`;
}

/** Who is left out of the reminders for a job that may have been forgotten; '' for nobody. */
export function sayHeld(held: readonly HeldBack[]): string {
  if (held.length === 0) return '';
  const shown = held.slice(0, 5).map(sayHeldBack);
  const more = held.length - shown.length;
  const all = more > 0 ? [...shown, `${more} more`] : shown;
  return `${REMINDER_SHEET.held} ${all.join('; ')}. Set Status in Jobs to Done where the job is, so that its customer is reminded.`;
}

/** How filling the reminders ended. */
export function sayReminders(end: RemindersDone): string {
  if (end.done) {
    return [`${countOf(end.customers, 'customer')} to be reminded, written into ${end.sheet}.`, sayHeld(end.held)]
      .filter(Boolean)
      .join(' ');
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'noneDue':
      return [
        `Nobody is due: no last job was closed ${countOf(end.months, 'month')} ago or longer${end.held.length > 0 ? ' of a customer who has none open' : ''}.`,
        sayHeld(end.held),
        'Nothing was written.',
      ]
        .filter(Boolean)
        .join(' ');
    case 'noRoom':
      return 'The list would run over the edge of the sheet.';
    default:
      return sayNotDone(end);
  }
}
