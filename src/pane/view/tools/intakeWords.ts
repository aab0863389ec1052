/** Words of the intake screen. */
import { dayWords } from '../../../words/intake';
import { counted, namesText } from '../../words';

export const INTAKE_WORDS = {
  newJob: 'New job',
  customer: 'Customer',
  clubs: 'Clubs that came in',
  clubsExample: 'Driver, 3 wood, 4h, 5-PW, 52, Putter',
  none: 'Lengths, readings and masses are typed into Clubs afterwards.',
  read: (names: readonly string[]) => `${counted(names.length, 'club')}: ${namesText(names, 60)}.`,
  hand: 'Hand',
  hands: { '': 'Not said', Right: 'Right', Left: 'Left' },
  due: 'Due',
  dueFault: 'Give a day that there is.',
  firstTag: 'First tag',
  tagExample: 'none',
  authorised: 'Authorised',
  authorisedExample: 'on the sheet, by hand',
  job: 'Job',
  begin: 'Begin job',
  lastTitle: 'Same as last time',
  lastCaption: (job: string | null) => `What the clubs of ${job === null ? 'the new job' : `job ${job}`} got last time`,
  club: 'Club',
  grip: 'Grip',
  layers: 'Layers',
  when: 'When',
  whenOf: (day: number | undefined, job: string, done: boolean) =>
    `${day === undefined ? job : dayWords(day)}${done ? '' : ', not closed'}`,
  asLast: 'Same as last time: take these over as the new grips',
  take: 'Take over into Clubs',
  unknown: 'No earlier job of this customer tells what these clubs got.',
  noCustomer: 'Jobs does not say whose clubs these are.',
  ofJob: (job: string) => `Job ${job}`,
  sheetHow: 'A page to print and sign: what Jobs and Clubs say, and lines to write on for the rest.',
  sheet: 'Fill intake sheet',
  chooseJob: 'Choose a job above to print its intake sheet.',
  reminders: 'Reminders',
  remindersCaption: 'Who is due for a reminder',
  remindersFrom: (months: number) =>
    `Customers whose last job was closed ${counted(months, 'month')} ago or longer and who have none open.`,
  nobody: 'Nobody is to be reminded today.',
  closed: 'Closed',
  dueSince: 'Due since',
  undated: (jobs: readonly string[]) =>
    `Not counted, since they are done without a customer or a date in Closed: ${namesText(jobs)}.`,
  fillReminders: 'Fill reminders',
  noTable: (tables: readonly string[]) => `There is no table ${tables.join(' and ')} in this workbook yet.`,
} as const;
