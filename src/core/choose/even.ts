/** Target readings for a set whose readings vary from club to club: by group, each its own, one for all, or a line by length. */
import { LEAST_LENGTHS, LENGTH_DIVISION_INCHES, SD_PER_MAD, STANDS_OUT_SDS } from '../constants';
import { roundTo } from '../balance/reading';
import { planSet } from '../plan/planSet';
import { bagOf, groupedBy } from '../plan/together';
import type { Club, ClubKind, PlanInput, SetPlan, ShopSettings } from '../plan/types';
import type { Issue } from '../result';
import { leastSquaresLine, lineAt, median, robustLine, type Line, type Point } from './fitLine';

export const EVEN_GROUPS = ['woods', 'irons', 'wedges'] as const;
export type EvenGroup = (typeof EVEN_GROUPS)[number];

/** Each club its own reading as it arrived; one reading for the group; a straight line by length. */
export const EVEN_CHOICES = ['own', 'one', 'line'] as const;
export type EvenChoice = (typeof EVEN_CHOICES)[number];

/** What is wanted of each group. */
export type EvenWanted = Readonly<Record<EvenGroup, EvenChoice>> & {
  /** The owner's own value where `one` is wanted, points; the median of the readings if undefined. */
  readonly values?: Readonly<Partial<Record<EvenGroup, number>>> | undefined;
};

/** A club whose reading is far from what its group has in common. */
export interface StandsOut {
  readonly row: number;
  readonly name: string;
  readonly reading: number;
  /** Its reading less what its group's is at its length, points. */
  readonly points: number;
}

/** A club that had no say in its group's targets. */
export interface Unread {
  readonly row: number;
  readonly name: string;
  readonly lacks: 'reading' | 'length';
}

/** One group of one bag. */
export interface EvenGroupPlan {
  readonly group: EvenGroup;
  readonly job: string | undefined;
  readonly choice: EvenChoice;
  readonly clubs: readonly Club[];
  /** The one reading, points. */
  readonly one: number | undefined;
  /** Points by inches of length. */
  readonly line: Line | undefined;
  readonly standsOut: readonly StandsOut[];
  readonly unread: readonly Unread[];
  /** Why the group has no targets; its clubs stay as they are. */
  readonly issue: Issue | undefined;
}

export interface EvenPlan {
  readonly groups: readonly EvenGroupPlan[];
  /** Points above A0, to a tenth, by row. Clubs that are not in it stay as they are. */
  readonly targets: ReadonlyMap<number, number>;
  /** Clubs in no group because their kind is not known. */
  readonly noKind: readonly Pick<Club, 'row' | 'name'>[];
}

/** Putters and juniors are in none. */
const GROUP_OF: Readonly<Partial<Record<ClubKind, EvenGroup>>> = {
  driver: 'woods',
  wood: 'woods',
  hybrid: 'woods',
  iron: 'irons',
  wedge: 'wedges',
};

/**
 * Target readings for each group of each bag.
 *
 * A club stands out if it is off its group's median (or, for a line, off a line that a few wild readings do not move) by more than its
 * tolerance and by more than three robust standard deviations, 3 × 1.4826 × the median of what all are off. The line is fitted to the
 * clubs that do not stand out, by least squares. A club without a reading gets a target only where it was read bare.
 */
export function evenTargets(clubs: readonly Club[], wanted: EvenWanted, settings: ShopSettings): EvenPlan {
  const groups: EvenGroupPlan[] = [];
  const targets = new Map<number, number>();
  for (const bag of groupedBy(clubs, bagOf).values()) {
    for (const group of EVEN_GROUPS) {
      const members = bag.filter(({ kind }) => kind !== undefined && GROUP_OF[kind] === group);
      if (members.length === 0) continue;
      const even = evenGroup(group, members, wanted, settings);
      groups.push(even);
      for (const club of members) {
        const target = targetOf(club, even);
        if (target !== undefined) targets.set(club.row, roundTo(target, 1));
      }
    }
  }
  const noKind = clubs.filter(({ kind }) => kind === undefined).map(({ row, name }) => ({ row, name }));
  return { groups, targets, noKind };
}

/** A club with what a group reads at it. */
interface Read {
  readonly club: Club;
  readonly point: Point;
}

function evenGroup(
  group: EvenGroup,
  clubs: readonly Club[],
  wanted: EvenWanted,
  settings: ShopSettings,
): EvenGroupPlan {
  const choice = wanted[group];
  const read: Read[] = [];
  const unread: Unread[] = [];
  for (const club of clubs) {
    const { row, name, reading, lengthInches } = club;
    if (reading === undefined) unread.push({ row, name, lacks: 'reading' });
    else if (choice === 'line' && lengthInches === undefined) unread.push({ row, name, lacks: 'length' });
    else read.push({ club, point: { x: lengthInches ?? 0, y: reading } });
  }
  const plan = { group, job: clubs[0]?.job, choice, clubs, one: undefined, line: undefined, unread };
  const middle = choice === 'line' ? robustLine(read.map(({ point }) => point)) : flatLine(read);
  const standsOut = middle ? standingOut(read, middle, settings) : [];
  const found = { ...plan, standsOut, issue: undefined };
  if (choice === 'own') return found;
  if (choice === 'one') {
    const one = wanted.values?.[group] ?? middle?.intercept;
    return one === undefined ? { ...found, issue: noReadings(group) } : { ...found, one: roundTo(one, 1) };
  }
  const out = new Set(standsOut.map(({ row }) => row));
  const fitted = read.filter(({ club }) => !out.has(club.row)).map(({ point }) => point);
  const lengths = new Set(fitted.map(({ x }) => Math.round(x / LENGTH_DIVISION_INCHES)));
  const line = lengths.size < LEAST_LENGTHS ? undefined : leastSquaresLine(fitted);
  return line ? { ...found, line } : { ...found, issue: fewLengths(group, lengths.size, out.size > 0) };
}

/** The median as a line without slope. */
function flatLine(read: readonly Read[]): Line | undefined {
  const one = median(read.map(({ point }) => point.y));
  return one === undefined ? undefined : { slope: 0, intercept: one };
}

function standingOut(read: readonly Read[], middle: Line, settings: ShopSettings): StandsOut[] {
  const off = read.map(({ point }) => point.y - lineAt(middle, point.x));
  const scatter = SD_PER_MAD * (median(off.map(Math.abs)) ?? 0);
  return read.flatMap(({ club, point }, at) => {
    const points = off[at] ?? 0;
    const limit = Math.max(club.tolerancePoints ?? settings.tolerancePoints, STANDS_OUT_SDS * scatter);
    const isOut = Math.abs(points) > limit + 1e-9; // one point off is within one point, whatever binary fractions say
    return isOut ? [{ row: club.row, name: club.name, reading: point.y, points }] : [];
  });
}

function noReadings(group: EvenGroup): Issue {
  return { code: 'noRows', field: `The group of ${group}`, expected: 'readings to take the middle of' };
}

function fewLengths(group: EvenGroup, lengths: number, leftOut: boolean): Issue {
  const without = leftOut ? ' once those that stand out are left out' : '';
  const expected = `a line needs clubs of at least ${LEAST_LENGTHS} lengths with a reading, and there are ${lengths}${without}`;
  return { code: 'contradiction', field: `A line by length for the ${group}`, expected };
}

/** Without a reading, as it arrived or bare, no club can be planned towards a target. */
function targetOf(club: Club, { choice, one, line }: EvenGroupPlan): number | undefined {
  if (choice === 'own') return club.reading;
  if (club.reading === undefined && club.bareReading === undefined) return undefined;
  if (choice === 'one') return one;
  return line && club.lengthInches !== undefined ? lineAt(line, club.lengthInches) : undefined;
}

/* ---------------------------------------------------------------- planning towards them */

/**
 * The set planned towards its targets.
 *
 * A club whose group keeps its own readings is held as it was, which needs no scale reading and so is surer than a target of as many
 * points; the others are held at their targets.
 */
export function evenPlan(input: PlanInput, wanted: EvenWanted): { even: EvenPlan; plan: SetPlan } {
  const even = evenTargets(input.clubs, wanted, input.settings);
  return { even, plan: planSet({ ...input, clubs: heldEven(input.clubs, even) }) };
}

/** The clubs with what the targets make each of them hold. */
export function heldEven(clubs: readonly Club[], even: EvenPlan): readonly Club[] {
  const own = new Set(
    even.groups.flatMap(({ choice, clubs: all }) => (choice === 'own' ? all.map(({ row }) => row) : [])),
  );
  return clubs.map((club) => {
    const target = even.targets.get(club.row);
    if (target === undefined) return club;
    return own.has(club.row) ? { ...club, hold: 'asArrived', target: undefined } : { ...club, hold: 'target', target };
  });
}

/** What a group would cost if it were evened out in this way. */
export interface EvenCost {
  readonly group: EvenGroup;
  readonly job: string | undefined;
  readonly choice: EvenChoice;
  /** Largest gap with the grip alone, by size, points; undefined where none is known. */
  readonly largestGap: number | undefined;
  readonly headGrams: number;
  readonly buttGrams: number;
  /** Clubs that read too heavy by more than their tolerance: a head can seldom lose weight. */
  readonly tooHeavy: number;
  readonly overLimit: number;
  readonly issue: Issue | undefined;
}

/** What each choice would cost each group, so that they can be looked at side by side. */
export function evenCosts(input: PlanInput, values?: EvenWanted['values']): EvenCost[] {
  return EVEN_CHOICES.flatMap((choice) => {
    const { even, plan } = evenPlan(input, { woods: choice, irons: choice, wedges: choice, values });
    const plans = new Map(plan.clubs.map((club) => [club.row, club]));
    return even.groups.map(({ group, job, clubs, issue }): EvenCost => {
      const members = clubs.flatMap(({ row }) => plans.get(row) ?? []);
      const gaps = members.flatMap(({ gapPoints }) => (gapPoints === undefined ? [] : [Math.abs(gapPoints)]));
      const grams = (end: 'head' | 'butt'): number =>
        members.reduce((sum, { remedy }) => sum + (remedy?.end === end ? remedy.grams : 0), 0);
      return {
        group,
        job,
        choice,
        largestGap: gaps.length === 0 ? undefined : Math.max(...gaps),
        headGrams: grams('head'),
        buttGrams: grams('butt'),
        tooHeavy: members.filter(({ gapPoints = 0, tolerancePoints }) => gapPoints < -tolerancePoints - 1e-9).length,
        overLimit: members.filter(({ remedy }) => remedy?.overLimit).length,
        issue,
      };
    });
  });
}
