/** What was typed of measured clubs: which club each row is, and what cannot be true of it. */
import { MOST_LAYERS, RANGES } from '../constants';
import { groupedBy } from '../plan/together';
import type { SetPlan } from '../plan/types';
import type { Issue } from '../result';
import { isGripped } from './pilot';
import type { MeasuredClub } from './types';

/** A row of the check-in that belongs to a club; numbers that cannot be true are left out, and said. */
export interface Sorted {
  readonly byRow: ReadonlyMap<number, { readonly measured: MeasuredClub; readonly issues: readonly Issue[] }>;
  /** Rows that belong to no club of the plan, or to one that has its row already. */
  readonly issues: readonly Issue[];
}

/** Finds the club of each row, by its name; of clubs with one name each takes one row, in their order. */
export function sortMeasured(plan: SetPlan, measured: readonly MeasuredClub[]): Sorted {
  const named = groupedBy(plan.clubs, ({ name }) => key(name));
  const byRow = new Map<number, { measured: MeasuredClub; issues: readonly Issue[] }>();
  const issues: Issue[] = [];
  for (const row of measured) {
    const field = fieldOf(row, 'Club');
    const clubs = (named.get(key(row.club)) ?? []).filter(isGripped);
    const club = clubs.find((each) => !byRow.has(each.row));
    if (club) byRow.set(club.row, sound(row));
    else if (clubs.length > 0) issues.push({ code: 'duplicate', field, got: row.club });
    else
      issues.push({
        code: 'unknownChoice',
        field,
        got: row.club,
        expected: 'a club of this job that gets a grip, named as in Clubs',
      });
  }
  return { byRow, issues };
}

function key(name: string): string {
  return name.trim().toLowerCase();
}

/** `Checkin row 5, Mass`, or with the club's name where no row is known. */
function fieldOf({ sheetRow, club }: MeasuredClub, what: string): string {
  return sheetRow === undefined ? `Check-in of ${club}, ${what}` : `Checkin row ${sheetRow}, ${what}`;
}

const CHECKED = [
  ['bareReading', 'Bare reading', RANGES.points],
  ['bareGrams', 'Bare mass', RANGES.bodyGrams],
  ['reading', 'Reading', RANGES.points],
  ['massGrams', 'Mass', RANGES.clubGrams],
  ['layers', 'Layers', RANGES.layers],
  ['onInches', 'Weight at', RANGES.positionInches],
  ['onGrams', 'Weight on', { low: 0, high: RANGES.plugGrams.high, unit: 'g' }],
] as const;

function sound(row: MeasuredClub): { measured: MeasuredClub; issues: readonly Issue[] } {
  const issues: Issue[] = [];
  let kept = row;
  for (const [name, what, { low, high, unit }] of CHECKED) {
    const got = row[name];
    if (got === undefined || (got >= low && got <= high)) continue;
    issues.push({ code: 'outOfRange', field: fieldOf(row, what), got, expected: `${low} to ${high} ${unit}` });
    kept = { ...kept, [name]: undefined };
  }
  const { bareGrams, massGrams } = kept;
  if (bareGrams !== undefined && massGrams !== undefined && !isFittedMass(massGrams - bareGrams)) {
    const grams = Math.round((massGrams - bareGrams) * 10) / 10;
    const expected = `${massGrams} g finished and ${bareGrams} g bare leave ${grams} g for grip and tape. Weigh both again`;
    issues.push({ code: 'contradiction', field: fieldOf(row, 'Mass'), got: massGrams, expected });
    kept = { ...kept, bareGrams: undefined, massGrams: undefined };
  }
  return { measured: kept, issues };
}

/** Whether grip, tape and weight can weigh so much; generous, since what was cut off or plugged counts too. */
function isFittedMass(grams: number): boolean {
  const most = RANGES.gripGrams.high + MOST_LAYERS * RANGES.layerGrams.high + RANGES.plugGrams.high;
  return grams >= RANGES.gripGrams.low + RANGES.plugGrams.low && grams > 0 && grams <= most;
}

/** A grip that went on and is not in Stock any more: nothing can be said of its club. */
export function gripIssue(row: MeasuredClub): Issue {
  return { code: 'unknownItem', field: fieldOf(row, 'Grip'), got: row.item ?? null };
}

/** Where a decision cannot stand, and why. */
export function decisionIssue(row: MeasuredClub, isOut: boolean, isMeasured: boolean): Issue | undefined {
  if (row.decision === 'waive' && (row.reason ?? '').trim() === '') {
    return { code: 'blank', field: fieldOf(row, 'Reason'), expected: 'why this club is waived' };
  }
  if (row.decision !== 'accept') return undefined;
  if (!isMeasured)
    return { code: 'blank', field: fieldOf(row, 'Reading'), expected: 'what it reads and weighs, then accept it' };
  if (!isOut) return undefined;
  const expected = 'it is out of tolerance. Put it right and read it again, or waive it with a reason';
  return { code: 'contradiction', field: fieldOf(row, 'Decision'), got: 'accept', expected };
}
