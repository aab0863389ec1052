/** A set as one says it over the counter, `Driver, 3 wood, 4-PW`, read into clubs with their kinds. */
import { CLUB_KINDS } from './schema';

export interface ListedClub {
  /** As it is called in Clubs. */
  readonly name: string;
  readonly kind: (typeof CLUB_KINDS)[number];
}

/** Why a part of a list is no club. */
export type ListFault =
  /** no club is called so */
  | { readonly why: 'unknown'; readonly part: string }
  /** from one club to another of which it is not plain what lies between */
  | { readonly why: 'range'; readonly part: string }
  /** named twice */
  | { readonly why: 'twice'; readonly part: string }
  /** beyond what a bag can hold */
  | { readonly why: 'many'; readonly part: string };

export interface ClubList {
  readonly clubs: readonly ListedClub[];
  readonly faults: readonly ListFault[];
}

/** More than this is no bag; a slip such as 1-99 is not to fill a table. */
const MOST_CLUBS = 60;

/**
 * Reads a list of clubs.
 *
 * @param text parts with commas, semicolons, new lines or *and* between them: `Driver, 3 wood, 4h, 4-PW, 52 and 56 wedge, Putter`
 * @returns the clubs in the order of the list, and what in it is no club
 */
export function readClubList(text: string): ClubList {
  const clubs: ListedClub[] = [];
  const faults: ListFault[] = [];
  for (const part of partsOf(text)) {
    const found = clubsOf(part);
    if (!found || found.length === 0) {
      faults.push({ why: isRange(part) ? 'range' : 'unknown', part });
      continue;
    }
    for (const club of found) {
      const twice = clubs.some(({ name }) => name.toLowerCase() === club.name.toLowerCase());
      if (twice) faults.push({ why: 'twice', part: club.name });
      else if (clubs.length === MOST_CLUBS) faults.push({ why: 'many', part: club.name });
      else clubs.push(club);
    }
  }
  return { clubs, faults };
}

/** Parts of the list; a bare number takes the kind of what follows it: `3 and 5 wood` are two woods. */
function partsOf(text: string): string[] {
  const parts = text
    .split(/[,;\n]|\band\b|[+&]/i)
    .map((part) => part.trim().replace(/\s+/g, ' '))
    .filter((part) => part !== '');
  return parts.map((part, at) => {
    if (!/^\d{1,2}$/.test(part)) return part;
    const next = parts.slice(at + 1).find((each) => !/^\d{1,2}$/.test(each));
    const kind = next && /^\d{1,2}\s?(woods?|hybrids?|irons?|wedges?|w|h|i)$/i.exec(next)?.[1];
    return kind ? `${part} ${kind}` : part;
  });
}

const DASH = /\s*(?:-|–|—|\bto\b)\s*/;

function isRange(part: string): boolean {
  return /^(\S+ )?\d\s*(-|–|—|to)\s*\S+/.test(part);
}

function clubsOf(part: string): ListedClub[] | null {
  return single(part) ?? range(part) ?? named(part);
}

const KIND_OF: Readonly<Record<string, 'Wood' | 'Hybrid' | 'Iron' | 'Wedge'>> = {
  wood: 'Wood',
  w: 'Wood',
  hybrid: 'Hybrid',
  h: 'Hybrid',
  iron: 'Iron',
  i: 'Iron',
  wedge: 'Wedge',
};

/** Loft in degrees that tells a wedge from an iron's number (common practice, no source). */
const WEDGE_LOFT = { low: 42, high: 66 };

/** A pitching wedge belongs to the irons, and reads with them; the others are weighted as wedges (common practice, no source). */
const LETTERED: Readonly<Record<string, 'Iron' | 'Wedge'>> = {
  PW: 'Iron',
  AW: 'Wedge',
  GW: 'Wedge',
  SW: 'Wedge',
  LW: 'Wedge',
};

/** `Driver`, `3 wood`, `4h`, `7`, `PW`, `56`, `Putter`. */
function single(part: string): ListedClub[] | null {
  if (/^(driver|1\s?w|1\s?wood|dr|d)$/i.test(part)) return [{ name: 'Driver', kind: 'Driver' }];
  if (/^(putter|pt|p)$/i.test(part)) return [{ name: 'Putter', kind: 'Putter' }];
  const letters = part.toUpperCase();
  const lettered = LETTERED[letters];
  if (lettered) return [{ name: letters, kind: lettered }];
  const found = /^(\d{1,2})\s?°?\s?(wood|hybrid|iron|wedge|w|h|i|deg)?$/i.exec(part);
  return found ? numbered(Number(found[1]), found[2]?.toLowerCase()) : null;
}

function numbered(number: number, word: string | undefined): ListedClub[] | null {
  const isLoft = number >= WEDGE_LOFT.low && number <= WEDGE_LOFT.high;
  if (isLoft && (!word || word === 'deg' || word === 'wedge')) return [{ name: `${number} wedge`, kind: 'Wedge' }];
  const kind = KIND_OF[word ?? 'iron'];
  if (!kind || kind === 'Wedge' || number < 1 || number > (kind === 'Wood' ? 11 : 9)) return null;
  return [{ name: `${number} ${kind.toLowerCase()}`, kind }];
}

/** `4-PW`, `5-9 iron`, `4-GW`, `4-6 hybrid`; what lies between two woods or between PW and SW differs from maker to maker. */
function range(part: string): ListedClub[] | null {
  const bare = part.replace(/^irons?\s+/i, '').trim();
  const [first = '', rest = '', ...more] = bare.split(DASH);
  const from = /^(\d)\s?(iron|i|hybrid|h)?$/i.exec(first);
  if (!from || rest === '' || more.length > 0) return null;
  const letters = rest.toUpperCase();
  const low = Number(from[1]);
  if (letters === 'PW') return [...irons(low, 9), { name: 'PW', kind: 'Iron' }];
  if (letters === 'GW' || letters === 'AW') {
    return [...irons(low, 9), { name: 'PW', kind: 'Iron' }, { name: letters, kind: 'Wedge' }];
  }
  const to = /^(\d)\s?(irons?|i|hybrids?|h)?$/i.exec(rest);
  const high = Number(to?.[1]);
  if (!to || high <= low) return null;
  const word = (to[2] ?? from[2] ?? 'iron').toLowerCase();
  return word.startsWith('h') ? series(low, high, 'Hybrid') : irons(low, high);
}

function irons(low: number, high: number): ListedClub[] {
  return series(low, high, 'Iron');
}

function series(low: number, high: number, kind: 'Iron' | 'Hybrid'): ListedClub[] {
  if (low < 1) return [];
  return Array.from({ length: Math.max(0, high - low + 1) }, (_, at) => ({
    name: `${low + at} ${kind.toLowerCase()}`,
    kind,
  }));
}

/** `Spare putter`, `Junior 7`: a name of the shop's own that says the kind. */
function named(part: string): ListedClub[] | null {
  if (isRange(part)) return null;
  const junior = /\bjunior\b/i.test(part);
  const words = part.toLowerCase().split(' ');
  const kind = CLUB_KINDS.find((each) => words.includes(each.toLowerCase()));
  if (!junior && !kind) return null;
  const name = part.charAt(0).toUpperCase() + part.slice(1);
  return [{ name, kind: junior ? 'Junior' : (kind ?? 'Junior') }];
}
