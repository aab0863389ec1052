/** Words at the head of a filled plan. */
import { BASIS_WORDS } from './notes';

export const HEAD_WORDS = {
  title: 'Regrip plan',
  job: 'Job',
  customer: 'Customer',
  due: 'Due',
  clubs: 'Clubs',
  /** Where a plan holds some clubs of a job only. */
  someClubs: 'chosen ones only',
} as const;

/** What is known of the old grip, and on what the plan of a club therefore rests. */
export const BASIS_LEGEND =
  `Known from: ${BASIS_WORDS.estimate} = old grip’s mass from a catalogue; ` +
  `${BASIS_WORDS.weighed} = old grip weighed off the club; ` +
  `${BASIS_WORDS.alike} = another club’s grip of that model, stripped; ${BASIS_WORDS.bare} = club read and weighed stripped.`;

export const SPREAD_LEGEND =
  '± = how far the predicted reading may be off, from what Settings says about scatter; independent errors add by their squares. Readings to a tenth of a point, masses in grams, lengths in inches.';
