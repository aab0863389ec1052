/** What only shows when the whole set is looked at: mixed profiles, short stock, a club entered twice. */
import type { Club, ClubKind, Grip, Note, Profile } from './types';

type Group = 'woods' | 'irons';

const GROUPS: Readonly<Partial<Record<ClubKind, Group>>> = {
  driver: 'woods',
  wood: 'woods',
  hybrid: 'woods',
  iron: 'irons',
  wedge: 'irons',
};

/** A club, the grip it gets, and its position in the set. */
interface Placed {
  readonly at: number;
  readonly club: Club;
  readonly grip: Grip | undefined;
}

type Add = (at: number, note: Note) => void;

/** Notes by position in `clubs`. Profiles and names are compared within a bag; stock serves all bags alike. */
export function notesTogether(clubs: readonly Club[], grips: readonly (Grip | undefined)[]): Map<number, Note[]> {
  const notes = new Map<number, Note[]>();
  const add: Add = (at, note) => void (notes.get(at)?.push(note) ?? notes.set(at, [note]));
  const placed = clubs.map((club, at): Placed => ({ at, club, grip: grips[at] }));
  for (const bag of groupedBy(placed, ({ club }) => bagOf(club)).values()) {
    noteMixedProfiles(bag, add);
    noteDuplicates(bag, add);
  }
  noteShortStock(ofStock(clubs, grips), add);
  return notes;
}

/** What clubs of one bag have in common; where no job is given, they are one bag. */
export function bagOf(club: Club): string {
  return (club.job ?? '').toLowerCase();
}

/** Grips that are taken from stock: none that the client brings. */
export function ofStock(clubs: readonly Club[], grips: readonly (Grip | undefined)[]): (Grip | undefined)[] {
  return grips.map((grip, at) => (clubs[at]?.ownGrip ? undefined : grip));
}

/** How many of each item the set takes. */
export function countNeeded(grips: readonly (Grip | undefined)[]): Map<string, number> {
  const needed = new Map<string, number>();
  for (const grip of grips) if (grip) needed.set(grip.item, (needed.get(grip.item) ?? 0) + 1);
  return needed;
}

/** Members of a list by what they have in common, each group in the list's order. */
export function groupedBy<T>(list: Iterable<T>, key: (each: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const each of list) {
    const name = key(each);
    const known = groups.get(name);
    if (known) known.push(each);
    else groups.set(name, [each]);
  }
  return groups;
}

/** The fewer of the two profiles in a group are the odd ones, none where all are alike; of equally many, the ribbed. */
function noteMixedProfiles(bag: readonly Placed[], add: Add): void {
  for (const group of ['woods', 'irons'] as const) {
    const members: Record<Profile, number[]> = { round: [], ribbed: [] };
    for (const { at, club, grip } of bag) {
      if (grip?.profile && club.kind && GROUPS[club.kind] === group) members[grip.profile].push(at);
    }
    const odd: Profile = members.round.length < members.ribbed.length ? 'round' : 'ribbed';
    for (const at of members[odd]) add(at, { note: 'mixedProfiles', group, odd });
  }
}

/** The clubs that come after the last one the stock can serve. */
function noteShortStock(grips: readonly (Grip | undefined)[], add: Add): void {
  const needed = countNeeded(grips);
  const served = new Map<string, number>();
  grips.forEach((grip, at) => {
    if (grip?.onHand === undefined) return;
    const before = served.get(grip.item) ?? 0;
    served.set(grip.item, before + 1);
    if (before >= grip.onHand) {
      add(at, { note: 'stockShort', item: grip.item, needed: needed.get(grip.item) ?? 0, onHand: grip.onHand });
    }
  });
}

function noteDuplicates(bag: readonly Placed[], add: Add): void {
  for (const same of groupedBy(bag, ({ club }) => club.name.toLowerCase()).values()) {
    if (same.length < 2) continue;
    const rows = same.map(({ club }) => club.sheetRow);
    for (const { at } of same) add(at, { note: 'duplicateClub', rows });
  }
}
