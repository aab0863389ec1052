/** Words of the shop's own constants, on the bench's screen. */
import { counted } from '../../words';

export const CALIBRATE_WORDS = {
  title: 'Your own constants',
  take: 'Take over',
  takeOf: (name: string) => `Take over: ${name}`,
  working: 'Looking through the check-ins',
  basis: (clubs: number) =>
    `From ${counted(clubs, 'club')} judged at the check-in, read and weighed bare and finished.`,
  nothing:
    'No club was read and weighed both bare and finished yet. Type the bare reading and mass into Checkin as well, then judge.',
  without: (clubs: number) =>
    `${counted(clubs, 'judged club')} not used: a reading or mass is missing, bare or finished, or the club is no longer planned.`,
  untold: 'Not to be told yet',
  scale: 'The balance scale',
  noTable: 'This workbook has no table Scale yet.',
  noReadings: 'Read one club that never changes from time to time, and type date and reading into Scale.',
  noAccepted: 'Type into Settings, Reference club reads, what that club is known to read.',
} as const;
