/** Figures of a comparison as they are written in the pane. */
import { countOfTried, type Count, type PlanInput, type Tried } from '../core/index';
import { countOf, gramsText, thousandths } from '../words/readings';
import { TABLE, numberText, signedText } from './words';

/** `TB-S58, TB-S60`. */
export function tiedName({ candidate }: Tried): string {
  return candidate.items.map(({ item }) => item).join(', ');
}

/** `2 layers`, `2 to 4 layers`. */
export function layersText({ fewestLayers, mostLayers }: Tried): string {
  return fewestLayers === mostLayers
    ? countOf(fewestLayers, 'layer')
    : `${fewestLayers} to ${countOf(mostLayers, 'layer')}`;
}

/** A signed difference in thousandths of an inch, as the trade says it: `+.012`. */
export function sizeErrorText(inches: number): string {
  const text = thousandths(Math.abs(inches));
  return text === '.000' ? text : `${inches < 0 ? '−' : '+'}${text}`;
}

/** A count of a candidate; `full` with its unit and what goes with it. */
export function countText(tried: Tried, count: Count, full: boolean): string {
  const value = countOfTried(tried, count);
  if (value === undefined) return full ? (count === 'sizeError' ? 'not judged' : 'not known') : TABLE.none;
  switch (count) {
    case 'sizeError': {
      const worst = sizeErrorText(tried.sizeErrorInches ?? 0);
      const mean = tried.meanSizeErrorInches;
      return full ? `${worst} in${mean === undefined ? '' : `, on average ${thousandths(mean)} either way`}` : worst;
    }
    case 'largestChange': {
      const worst = signedText(tried.largestChangePoints ?? 0);
      const mean = tried.meanChangePoints;
      return full ? `${worst} pt${mean === undefined ? '' : `, on average ${numberText(mean)} either way`}` : worst;
    }
    case 'out':
      return full ? `${value} of ${tried.clubs}` : String(value);
    case 'weight': {
      if (!full) return value === 0 ? TABLE.none : numberText(value);
      const ends = [
        tried.headGrams ? `${gramsText(tried.headGrams)} at the heads` : '',
        tried.buttGrams ? `${gramsText(tried.buttGrams)} in the butts` : '',
      ].filter(Boolean);
      return ends.join(', ') || 'none';
    }
    case 'massAdded':
      return `${signedText(value)} g over the set`;
    case 'price':
      return `${value.toFixed(2)} for ${countOf(tried.clubs, 'grip')}`;
    case 'short':
      return value === 0 ? 'none' : countOf(value, 'piece');
  }
}

/** What a comparison is of, in a sentence: `12 clubs to .920 ± .010 in; 10 held as they were, 2 at a target.` */
export function aboutText(
  { clubs, settings }: PlanInput,
  holdOf: (club: PlanInput['clubs'][number]) => string,
): string {
  const targets = [...new Set(clubs.flatMap(({ targetInches }) => targetInches ?? []))];
  const size = targets.length
    ? ` to ${targets.map(thousandths).join(' or ')} ± ${thousandths(settings.sizeToleranceInches)} in`
    : ', sizes not judged (no target diameter)';
  const holds = [
    ['asArrived', 'held as they were'],
    ['target', 'at a target reading'],
    ['nothing', 'held at nothing'],
  ].flatMap(([hold, words]) => {
    const count = clubs.filter((club) => holdOf(club) === hold).length;
    return count ? [`${count} ${words}`] : [];
  });
  return `${countOf(clubs.length, 'club')}${size}; ${holds.join(', ')}.`;
}
