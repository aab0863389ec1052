/** Words of the bench's screen. */
import { numberText } from '../../words';

export const BENCH_WORDS = {
  title: 'On the bench',
  how: 'Goes by Clubs as it stands there: choices in Plan count once they are filled.',
  chooseJob: 'Choose a job above: the bench works job by job.',
  minutes: (total: number) => `${numberText(total)} minutes for the set.`,
  mind: 'Mind',
  ticket: 'Fill bench ticket',
  checkTitle: 'Check-in',
  checkHow: 'Start gives each club a row in Checkin. Type there what is measured, then judge it.',
  noTable: 'This workbook has no table Checkin yet.',
  start: 'Start check-in',
  judge: 'Judge',
  close: 'Close job',
  judged: 'How the clubs stand',
  club: 'Club',
  standing: 'Standing',
  off: 'Off, pt',
  next: 'What next',
} as const;
