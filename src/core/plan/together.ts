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

/** Notes by position in `clubs`. */
export function notesTogether(clubs: readonly Club[], grips: readonly (Grip | undefined)[]): Map<number, Note[]> {
  const notes = new Map<number, Note[]>();
  const add = (at: number, note: Note): void => void (notes.get(at)?.push(note) ?? notes.set(at, [note]));
  noteMixedProfiles(clubs, grips, add);
  noteShortStock(grips, add);
  noteDuplicates(clubs, add);
  return notes;
}

/** How many of each item the set takes. */
export function countNeeded(grips: readonly (Grip | undefined)[]): Map<string, number> {
  const needed = new Map<string, number>();
  for (const grip of grips) if (grip) needed.set(grip.item, (needed.get(grip.item) ?? 0) + 1);
  return needed;
}

type Add = (at: number, note: Note) => void;

/** The fewer of the two profiles in a group are the odd ones; of equally many, the ribbed. */
function noteMixedProfiles(clubs: readonly Club[], grips: readonly (Grip | undefined)[], add: Add): void {
  for (const group of ['woods', 'irons'] as const) {
    const members: Record<Profile, number[]> = { round: [], ribbed: [] };
    clubs.forEach((club, at) => {
      const profile = grips[at]?.profile;
      if (profile && club.kind && GROUPS[club.kind] === group) members[profile].push(at);
    });
    if (!members.round.length || !members.ribbed.length) continue;
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

function noteDuplicates(clubs: readonly Club[], add: Add): void {
  const rows = new Map<string, number[]>();
  for (const club of clubs) {
    const name = club.name.toLowerCase();
    const known = rows.get(name);
    if (known) known.push(club.sheetRow);
    else rows.set(name, [club.sheetRow]);
  }
  clubs.forEach((club, at) => {
    const same = rows.get(club.name.toLowerCase()) ?? [];
    if (same.length > 1) add(at, { note: 'duplicateClub', rows: same });
  });
}
