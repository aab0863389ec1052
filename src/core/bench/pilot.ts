/** Which club is fitted first and accepted before the rest. */
import { median } from '../choose/fitLine';
import { groupedBy } from '../plan/together';
import type { ClubPlan, SetPlan } from '../plan/types';
import type { Issue } from '../result';
import type { Pilot } from './types';

/**
 * The pilot of a set: a stripped club that taught what its old grip was (of several, the one that taught for most others), else one that was
 * read bare, else the club whose reading changes by the median of those that get the most fitted item, else the first of these.
 *
 * What goes wrong with the pilot would have gone wrong with the set, so it is to be like the set, and its prediction the surest there is.
 * Of equals the first of the sheet.
 *
 * Clubs whose grip the client brings and nobody knows come only where there is no other.
 *
 * @returns undefined where no club gets a grip
 */
export function pilotOf(plan: SetPlan): Pilot | undefined {
  const planned = plan.clubs.filter(({ grip }) => grip !== undefined);
  const gripped = planned.length > 0 ? planned : plan.clubs.filter(isGripped);
  const [first, ...others] = gripped;
  if (!first) return undefined;
  if (others.length === 0) return { row: first.row, why: 'only' };
  const taught = teacherRow(plan, gripped);
  if (taught !== undefined) return { row: taught, why: 'taught' };
  const stripped = gripped.find(({ basis }) => basis === 'bare');
  if (stripped) return { row: stripped.row, why: 'stripped' };
  return byMedian(mostFitted(gripped));
}

/**
 * What keeps clubs that name a grip from being planned: Stock does not list it, or knows no mass of it. Such a club is not left as it is, so
 * it is told, and stands against closing.
 */
export function unplannable({
  clubs,
}: SetPlan): { readonly row: number; readonly name: string; readonly issues: readonly Issue[] }[] {
  return clubs.flatMap((club) => {
    const { row, name, item, notes } = club;
    if (isGripped(club) || item === undefined) return [];
    const told = notes.flatMap((note) => (note.note === 'issue' ? [note.issue] : []));
    const unknown: Issue = { code: 'unknownItem', field: `New grip of ${name}`, got: item };
    return [{ row, name, issues: told.length > 0 ? told : [unknown] }];
  });
}

/** Whether the bench has something to do with a club: a grip that the client brings is fitted, whatever is known of it. */
export function isGripped({ grip, ownGrip }: Pick<ClubPlan, 'grip' | 'ownGrip'>): boolean {
  return grip !== undefined || ownGrip === true;
}

function teacherRow({ lessons }: SetPlan, gripped: readonly ClubPlan[]): number | undefined {
  const rows = new Set(gripped.map(({ row }) => row));
  const best = lessons
    .filter(({ row }) => rows.has(row))
    .reduce<SetPlan['lessons'][number] | undefined>(
      (most, lesson) => (most && most.appliesTo.length >= lesson.appliesTo.length ? most : lesson),
      undefined,
    );
  return best?.row;
}

/** Clubs that get the item which most get: a putter's grip is rarely it. */
function mostFitted(gripped: readonly ClubPlan[]): readonly ClubPlan[] {
  const groups = [...groupedBy(gripped, ({ item }) => (item ?? '').toLowerCase()).values()];
  return groups.reduce((most, group) => (group.length > most.length ? group : most), []);
}

function byMedian(clubs: readonly ClubPlan[]): Pilot | undefined {
  const known = clubs.flatMap(({ row, shift }) => (shift ? [{ row, change: shift.total }] : []));
  const middle = median(known.map(({ change }) => change));
  const [first] = clubs;
  if (middle === undefined) return first && { row: first.row, why: 'first' };
  const off = (change: number): number => Math.abs(change - middle);
  const nearest = known.reduce((best, each) => (off(each.change) < off(best.change) - 1e-9 ? each : best));
  return { row: nearest.row, why: 'median' };
}
