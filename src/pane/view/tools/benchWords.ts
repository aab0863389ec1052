/** Words of the bench's screen. */
import { listed } from '../../../words/listed';
import { numberText } from '../../words';

export const BENCH_WORDS = {
  title: 'On the bench',
  how: 'Goes by Clubs as it stands there: choices in Plan count once they are filled.',
  chooseJob: 'Choose a job above: the bench works job by job.',
  minutes: (total: number) => `${numberText(total, Number.isInteger(total) ? 0 : 1)} minutes in all.`,
  again: (round: number, clubs: readonly string[]) =>
    `Redo under warranty, round ${round}: ${listed(clubs)} only, and nothing is charged.`,
  mind: 'Mind',
  ticket: 'Fill bench ticket',
  checkTitle: 'Check-in',
  checkHow:
    'Start gives each club a row in Checkin. What you type there is held against the plan below, at once; Judge writes it beside each club.',
  unjudged: 'This is not in Checkin yet, or not all of it: Judge writes it there.',
  allJudged: 'Checkin says the same.',
  noTable: 'This workbook has no table Checkin yet.',
  start: 'Start check-in',
  judge: 'Judge',
  judgedAlready: 'Judged already',
  close: 'Close job',
  isClosed: 'This job is Done.',
  judged: 'Predicted and measured',
  club: 'Club',
  predicted: 'Predicted',
  measured: 'Measured',
  off: 'Off',
  next: 'What to do',
  nextOf: (club: string, next: string) => `${club}: ${next}`,
  backTitle: 'Back to the customer',
  backHow: 'A label for each club, and a slip on how it came out and how to care for it.',
  labels: 'Fill labels',
  slip: 'Fill pick-up slip',
  redoTitle: 'Redo under warranty',
  redoHow: 'Clubs that came back get a new round in Checkin and a ticket of their own. Nothing is charged.',
  redoClub: (name: string, clubs: number) => (clubs > 1 ? `${name}, all ${clubs} of that name` : name),
  redoAlike:
    'Clubs of one name come back together. If only one did, give it a name of its own first, in Clubs and in Checkin.',
  redo: 'Begin redo',
  stillOpen: 'The job is still open: close it first, or fill the slip again before you hand it out.',
} as const;
