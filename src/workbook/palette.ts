/**
 * The one set of colours of pane, page and sheets: a petrol, greys of the same hue, and a pair for each verdict. Nothing is told by a
 * colour alone. The page's style sheet repeats what it needs; a test holds it to this.
 */
import type { Verdict } from '../core/index';

/** A grey petrol, 16 steps of even lightness; step 80 on white and step 100 on dark grey pass 4.5 : 1. */
export const PETROL = {
  10: '#001117',
  20: '#002027',
  30: '#002d36',
  40: '#003944',
  50: '#004652',
  60: '#00515e',
  70: '#095b69',
  80: '#196775',
  90: '#38808f',
  100: '#62a8b6',
  110: '#72b4c2',
  120: '#82c0cd',
  130: '#94ccd8',
  140: '#a6d8e3',
  150: '#b9e3ed',
  160: '#cff3fb',
} as const;

/** Greys of the sheets, from ink to the faintest ground. */
export const GREY = {
  ink: '#1F2A30',
  /** Labels and what is said beside the matter. */
  soft: '#4C5A61',
  /** Below a header row and above a sum. */
  rule: '#6B7A82',
  /** Where a person writes or signs. */
  faint: '#9AA8AE',
  /** Between rows. */
  line: '#CDD5D9',
  /** Behind header rows. */
  band: '#E4E9EC',
  /** Behind every other row, and boxes to fill in. */
  pale: '#F1F4F5',
} as const;

/** Fill and ink of a verdict; each pair has a contrast of more than 4.5 to 1, and the word says it all without them. */
export const VERDICT_COLOURS: Readonly<Record<Verdict, { readonly fill: string; readonly ink: string }>> = {
  within: { fill: '#DCEFE4', ink: '#0B4F2B' },
  likely: { fill: '#E6EED3', ink: '#3B500B' },
  cannotTell: { fill: '#FAE9C3', ink: '#5F4200' },
  out: { fill: '#F7D6D2', ink: '#7F1310' },
  notHeld: { fill: GREY.band, ink: GREY.soft },
  unknown: { fill: '#DDE3F3', ink: '#28376B' },
};
