/** Sentences about weighed grips that were placed, and about target readings for a set. */
import type {
  EvenChoice,
  EvenCost,
  EvenGroup,
  EvenGroupPlan,
  EvenPlan,
  Evenness,
  OddMass,
  Placement,
  StandsOut,
  Unread,
  WeighedGrip,
} from '../core/index';
import { sayIssue } from './issues';
import { listed } from './listed';
import { countOf, gramsText, readingText, signed } from './readings';

/* ---------------------------------------------------------------- weighed grips */

/** `1 point`, `0.4 points`. */
function pointsText(points: number): string {
  const text = signed(points, 1, false);
  return `${text} ${text === '1.0' ? 'point' : 'points'}`;
}

/** `6.5 g at the heads and 3 g in the butts to add`. */
function weightText({ headGrams, buttGrams }: { readonly headGrams: number; readonly buttGrams: number }): string {
  const parts = [
    ...(headGrams > 0 ? [`${gramsText(headGrams)} at the heads`] : []),
    ...(buttGrams > 0 ? [`${gramsText(buttGrams)} in the butts`] : []),
  ];
  return parts.length > 0 ? `${parts.join(' and ')} to add` : 'no weight to add';
}

/** `rms` is the root of the mean of the squares, which a bench may read as how far off a club usually is. */
function sayEvenness(how: string, evenness: Evenness): string {
  const { largestGap, rmsGap, rangePoints } = evenness;
  if (largestGap === undefined || rmsGap === undefined || rangePoints === undefined) {
    return `${how}: none of these clubs is held at a reading that can be reckoned.`;
  }
  return (
    `${how}: at most ${pointsText(largestGap)} off, usually ${signed(rmsGap, 1, false)} (root mean square), ` +
    `${pointsText(rangePoints)} between the ends; ${weightText(evenness)}.`
  );
}

/** How the clubs would stand with the grips put on in the order typed. */
export function sayDelivered(placement: Placement): string {
  return sayEvenness('In the order typed', placement.delivered);
}

/** How they stand as placed. */
export function sayAsPlaced(placement: Placement): string {
  return sayEvenness('As placed', placement.asPlaced);
}

/** Head weight that placing saves, or asks for: the least sum of squares is not always the least weight. */
export function sayHeadSaved({ delivered, asPlaced }: Placement): string {
  const saved = delivered.headGrams - asPlaced.headGrams;
  if (Math.abs(saved) < 0.05) return 'Placing them changes nothing in the head weight to add.';
  return saved > 0
    ? `Placing them saves ${gramsText(saved)} of head weight.`
    : `Placing them takes ${gramsText(-saved)} more head weight, for readings that are closer together.`;
}

/** Clubs for which no weighed grip was left; undefined where every one has its own. */
export function sayUnserved({ placed, unserved }: Placement): string | undefined {
  if (unserved.length === 0) return undefined;
  const without = new Set(unserved);
  const names = placed.filter(({ row }) => without.has(row)).map(({ name }) => name);
  return `No weighed grip was left for ${listed(names)}: planned with the mass in Stock. Weigh ${unserved.length} more.`;
}

/** Weighed grips that stay on the bench; undefined where there are none. */
export function sayLeft({ left }: Placement): string | undefined {
  if (left.length === 0) return undefined;
  return `Left over: ${left.length === 1 ? 'grip' : 'grips'} ${listed(left.map(gripText))}.`;
}

/** `3 (51.2 g)`. */
function gripText({ number, grams }: WeighedGrip): string {
  return `${number} (${gramsText(grams)})`;
}

export function sayOddMass({ grip, item, stockGrams }: OddMass): string {
  return (
    `Grip ${grip.number} weighs ${gramsText(grip.grams)}, and Stock says ${gramsText(stockGrams)} for ${item}. ` +
    'Check that it is this grip, and the scale; it is placed as weighed.'
  );
}

/* ---------------------------------------------------------------- target readings */

export const EVEN_GROUP_WORDS: Readonly<Record<EvenGroup, string>> = {
  woods: 'Woods',
  irons: 'Irons',
  wedges: 'Wedges',
};

export const EVEN_CHOICE_WORDS: Readonly<Record<EvenChoice, string>> = {
  own: 'Each its own',
  one: 'One reading',
  line: 'A line by length',
};

export const EVEN_CHOICE_MEANING: Readonly<Record<EvenChoice, string>> = {
  own: 'every club is to read as it did',
  one: 'all are to read the same: the middle of their readings, or what you give',
  line: 'readings are to rise or fall evenly with length',
};

/** What a group is to read, `Irons: all D2.4.`; or why it gets no targets. */
export function sayEvenTarget(even: EvenGroupPlan): string {
  const { group, choice, one, line, issue } = even;
  const name = EVEN_GROUP_WORDS[group];
  if (issue) return `${name} stay as they are. ${sayIssue(issue)}`;
  if (choice === 'own') return `${name}: each as it read.`;
  if (one !== undefined) return `${name}: all ${readingText(one)}.`;
  if (!line) return `${name} stay as they are.`;
  const lengths = even.clubs.flatMap(({ lengthInches }) => lengthInches ?? []);
  const longest = Math.max(...lengths);
  const shortest = Math.min(...lengths);
  const at = (inches: number): string =>
    `${readingText(line.intercept + line.slope * inches)} at ${Number(inches.toFixed(2))} in`;
  return `${name}: a line from ${at(longest)} to ${at(shortest)}, ${signed(line.slope, 2)} points an inch.`;
}

/** `9 iron reads D4.1, 2.3 points above its group.` */
export function sayStandsOut({ name, reading, points }: StandsOut, choice: EvenChoice): string {
  const side = points > 0 ? 'above' : 'below';
  return `${name} reads ${readingText(reading)}, ${pointsText(Math.abs(points))} ${side} ${choice === 'line' ? 'the line of ' : ''}its group.`;
}

export function sayUnread({ name, lacks }: Unread): string {
  return lacks === 'reading'
    ? `${name} has no reading and no say in its group’s target. Put it on the scale.`
    : `${name} has no length, so a line gives it no target. Measure it.`;
}

/** Everything that is to be told of a group, a sentence each: what it is to read, what stands out, what was never read. */
export function sayEvenGroup(even: EvenGroupPlan): string[] {
  return [
    sayEvenTarget(even),
    ...even.standsOut.map((each) => sayStandsOut(each, even.choice)),
    ...even.unread.map(sayUnread),
  ];
}

/** What a choice would cost a group, `One reading: 6.5 g at the heads, at most 1.4 points off with the grip alone.` */
export function sayEvenCost(cost: EvenCost): string {
  const name = EVEN_CHOICE_WORDS[cost.choice];
  if (cost.issue) return `${name}: not to be had.`;
  const off = cost.largestGap === undefined ? '' : `, at most ${pointsText(cost.largestGap)} off with the grip alone`;
  const heavy = cost.tooHeavy > 0 ? `; ${countOf(cost.tooHeavy, 'club reads', 'clubs read')} too heavy for it` : '';
  const over = cost.overLimit > 0 ? `; ${countOf(cost.overLimit, 'club')} over your limit of weight` : '';
  return `${name}: ${weightText(cost)}${off}${heavy}${over}.`;
}

/** Everything that is to be told of the targets, a sentence each. */
export function sayEven(even: EvenPlan): string[] {
  const kinds = even.noKind.map(({ name }) => name);
  return [
    ...even.groups.flatMap(sayEvenGroup),
    ...(kinds.length > 0 ? [`${listed(kinds)}: no group without a kind. Give Kind in Clubs.`] : []),
  ];
}

/** Everything that is to be told of a placing beside its clubs, a sentence each. */
export function sayPlacement(placement: Placement): string[] {
  return [
    sayDelivered(placement),
    sayAsPlaced(placement),
    sayHeadSaved(placement),
    ...[sayUnserved(placement), sayLeft(placement)].filter((each) => each !== undefined),
    ...placement.odd.map(sayOddMass),
  ];
}

/** `13 grips on 13 clubs`. */
export function placedText({ placed }: Placement): string {
  const grips = placed.filter(({ grip }) => grip !== undefined).length;
  return `${countOf(grips, 'grip')} on ${countOf(grips, 'club')}`;
}
