/** The plan of a whole set: each club on its own, then what shows only when they are looked at together. */
import { drained } from '../choose/steps';
import type { Progress } from '../choose/types';
import { planClub } from './planClub';
import { learnersAmong, lessonOf } from './lesson';
import { oldFitted } from './oldGrip';
import { countNeeded, notesTogether, ofStock } from './together';
import type { ClubPlan, Grip, Lesson, Note, PlanInput, SetPlan, Way } from './types';

/**
 * Plans the regrip of a set.
 *
 * Each club's reading with the new grip is what it arrived with plus `Σ m (x − 14) / P` over all that comes and goes, or, from a
 * bare club, the bare reading plus what goes on. Nothing here fails: a club that cannot be planned carries notes saying why, and
 * the rest of the set is planned.
 *
 * @param input clubs, stock, ways of weighting and the shop's settings; inches, grams, points
 * @returns a plan for each club in the order given, what stripped clubs taught, and grips needed by item
 */
export function planSet(input: PlanInput): SetPlan {
  return drained(planSetSteps(input));
}

/** Clubs that are planned at a stretch. */
const CLUBS_A_STEP = 50;

/** {@link planSet} in steps: a set may be all the clubs of a shop. */
export function* planSetSteps(input: PlanInput): Generator<Progress, SetPlan> {
  const stock = keyed(input.stock, (grip) => grip.item);
  const ways = keyed(input.ways, (way) => way.name);
  const grips = input.clubs.map((club) =>
    club.newItem === undefined ? undefined : stock.get(club.newItem.toLowerCase()),
  );
  const begun: Progress = { done: 0, of: input.clubs.length };
  yield begun;
  const shared = notesTogether(input.clubs, grips);
  yield begun;
  const { lessons, notes: taught } = learn(input, stock);
  const clubs: ClubPlan[] = [];
  for (const [at, club] of input.clubs.entries()) {
    if (at % CLUBS_A_STEP === 0) yield { done: at, of: input.clubs.length };
    const notes = [...(taught.get(at) ?? []), ...(shared.get(at) ?? [])];
    clubs.push(planClub(club, { grip: grips[at], stock, ways, settings: input.settings }, notes));
  }
  return { clubs, lessons, needed: countNeeded(ofStock(input.clubs, grips)) };
}

/** Maps of lists that were asked for: a plan follows each keystroke, and a stock may have tens of thousands of items. */
const known = new WeakMap<readonly (Grip | Way)[], ReadonlyMap<string, Grip | Way>>();

/** By name, made once for each list. First of each name wins: a list with an item twice is noted where the list is read. */
export function keyed<T extends Grip | Way>(list: readonly T[], key: (each: T) => string): ReadonlyMap<string, T> {
  const map = known.get(list) ?? mapOf(list, key);
  known.set(list, map);
  return map as ReadonlyMap<string, T>;
}

/** Says by which name each of a list is known, where whoever read the list knows that already. */
export function knownBy<T extends Grip | Way>(list: readonly T[], byName: ReadonlyMap<string, T>): void {
  known.set(list, byName);
}

function mapOf<T extends Grip | Way>(list: readonly T[], key: (each: T) => string): Map<string, T> {
  const map = new Map<string, T>();
  for (const each of list) {
    const name = key(each).toLowerCase();
    if (!map.has(name)) map.set(name, each);
  }
  return map;
}

/** What stripped clubs teach, and the notes that say so, by position in the set. */
export function learn(
  input: PlanInput,
  stock: ReadonlyMap<string, Grip>,
): { lessons: Lesson[]; notes: Map<number, Note[]> } {
  const lessons: Lesson[] = [];
  const notes = new Map<number, Note[]>();
  const learners = learnersAmong(input.clubs);
  input.clubs.forEach((club, at) => {
    if (club.bareReading === undefined) return;
    const learned = lessonOf(club, oldFitted(club, stock, input.settings));
    if (!learned) return;
    if ('contradicts' in learned) {
      notes.set(at, [{ note: 'bareContradicts' }]);
      return;
    }
    const { gripGrams, balanceInches } = learned.taught;
    notes.set(at, [{ note: 'taught', grams: gripGrams, balanceInches }]);
    lessons.push({ ...learned.taught, appliesTo: learners(club) });
  });
  return { lessons, notes };
}
