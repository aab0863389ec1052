/** Which bench work a row of Rates is for, told by the words it is called by, since shops name their work freely. */
import type { RateUse } from '../core/index';

/** The first that matches counts. */
const WORDS: readonly (readonly [RegExp, RateUse])[] = [
  [/\bbuild[- ]?up\b|\blayers?\b/, 'buildUp'],
  [/\bwhole\b|\bsalvag|\bblow(n)?[- ]?off\b/, 'salvage'],
  [/\bdispos|\bcut(ting)?[- ]off\b/, 'disposal'],
  [/\bweigh(ing)?\b|\breading (before|after)\b/, 'reading'],
  [/\bput (a |the )?reading right\b|\brebalanc/, 'rebalancing'],
  [/\bextend|\bextension|\btrim|\blength\b/, 'length'],
  [/\bfit(ting|ted)?\b|\bregrip|\binstall/, 'fitting'],
];

/** What a work is counted for; where no word tells, what is done once a job or for every club, by its unit. */
export function rateUse(work: string, per: 'club' | 'job' | 'layer' | 'gram'): RateUse | undefined {
  const text = work.toLowerCase();
  const found = WORDS.find(([words]) => words.test(text))?.[1];
  return found ?? (per === 'job' ? 'everyJob' : undefined);
}
