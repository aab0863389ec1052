/** A set as one says it over the counter, `Driver, 3 wood, 4-PW`, read into clubs with their kinds. */
import { clubsCalled, isRange, isSeveral, numbered, type ListedClub, type NumberedKind } from './clubNames';

export type { ListedClub } from './clubNames';

/** Why a part of a list is no club. */
export type ListFault =
  /** no club is called so */
  | { readonly why: 'unknown'; readonly part: string }
  /** from one club to another of which it is not plain what lies between */
  | { readonly why: 'range'; readonly part: string }
  /** named twice */
  | { readonly why: 'twice'; readonly part: string }
  /** beyond what a bag can hold */
  | { readonly why: 'many'; readonly part: string }
  /** it can be either of two clubs */
  | { readonly why: 'either'; readonly part: string; readonly these: readonly [string, string] }
  /** how many there are of it cannot be told */
  | { readonly why: 'count'; readonly part: string }
  /** several clubs with nothing between them, or one with a name that reads so */
  | { readonly why: 'apart'; readonly part: string };

export interface ClubList {
  readonly clubs: readonly ListedClub[];
  readonly faults: readonly ListFault[];
}

/** More than this is no bag; a slip such as 1-99 is not to fill a table. */
const MOST_CLUBS = 60;

/**
 * Reads a list of clubs. Every part of it comes out as clubs or as a fault that names it.
 *
 * @param text parts with commas, semicolons, new lines or *and* between them: `Driver, 3 wood, 4h, 4-PW, 52 and 56 wedge, Putter`
 * @returns the clubs in the order of the list, and what in it is no club
 */
export function readClubList(text: string): ClubList {
  const clubs: ListedClub[] = [];
  const faults: ListFault[] = [];
  const parts = partsOf(text);
  for (const [at, { part }] of parts.entries()) {
    const found = clubsOf(parts, at);
    if ('why' in found) {
      faults.push(found);
      continue;
    }
    if (clubs.length + found.length > MOST_CLUBS) {
      faults.push({ why: 'many', part });
      continue;
    }
    for (const club of found) {
      const twice = clubs.some(({ name }) => name.toLowerCase() === club.name.toLowerCase());
      if (twice) faults.push({ why: 'twice', part: club.name });
      else clubs.push(club);
    }
  }
  return { clubs, faults };
}

/* ------------------------------------------------------------------ parts */

interface Part {
  readonly part: string;
  /** Joined by *and*, & or + to the part before it. */
  readonly joined: boolean;
}

function partsOf(text: string): Part[] {
  const pieces = text.split(/([,;\n]|\band\b|[+&])/i);
  const parts: Part[] = [];
  let joined = false;
  for (const [at, piece] of pieces.entries()) {
    // every second piece is what stands between two parts; after a comma, a further *and* joins all the same: `7, and 8`
    if (at % 2 === 1) joined ||= !/^[,;\n]$/.test(piece);
    else {
      const part = piece.trim().replace(/\s+/g, ' ');
      if (part === '') continue;
      parts.push({ part, joined: joined && parts.length > 0 });
      joined = false;
    }
  }
  return parts;
}

const BARE = /^\d{1,2}$/;

function clubsOf(parts: readonly Part[], at: number): readonly ListedClub[] | ListFault {
  const part = parts[at]?.part ?? '';
  return BARE.test(part) ? bareNumber(parts, at) : (counted(part) ?? oneOrRange(parts, at));
}

/**
 * A number without a kind takes that of the club it is joined to, `3 and 5 wood`, `woods 3 and 5`; one between commas is an
 * iron or, by its loft, a wedge. `3, 5 wood` and `3 wood and 5` may be meant either way.
 */
function bareNumber(parts: readonly Part[], at: number): readonly ListedClub[] | ListFault {
  const part = parts[at]?.part ?? '';
  const number = Number(part);
  const alone = numbered(number, undefined);
  const near = nearKind(parts, at);
  const as = near && numbered(number, near.kind);
  if (near?.sure && as) return [as];
  if (as && alone && as.name !== alone.name) return { why: 'either', part, these: [alone.name, as.name] };
  return alone ? [alone] : { why: 'unknown', part };
}

interface NearKind {
  readonly kind: NumberedKind;
  /** Said of this number too, and not perhaps. */
  readonly sure: boolean;
}

function nearKind(parts: readonly Part[], at: number): NearKind | null {
  const next = parts.findIndex(({ part }, i) => i > at && !BARE.test(part));
  const after = kindAtEnd(parts[next]?.part);
  if (after && parts[next]?.joined) return { kind: after.kind, sure: true };
  let last = at - 1;
  while (last >= 0 && BARE.test(parts[last]?.part ?? '')) last -= 1;
  const before = kindAtStart(parts[last]?.part);
  const joined = parts.slice(last + 1, at + 1).every((each) => each.joined);
  if (before && (before.plural || joined)) return { kind: before.kind, sure: true };
  if (before) return { kind: before.kind, sure: false };
  const onto = joined ? kindAtEnd(parts[last]?.part) : null;
  if (onto) return { kind: onto.kind, sure: false };
  // `3, 5 wood` counts on; `9, 3 wood` does not
  const countsOn = after && Number(parts[at]?.part) < after.number;
  return countsOn ? { kind: after.kind, sure: false } : null;
}

const KINDS: readonly [RegExp, NumberedKind][] = [
  [/^(woods?|w)$/i, 'Wood'],
  [/^(hybrids?|h)$/i, 'Hybrid'],
  [/^(irons?|i)$/i, 'Iron'],
  [/^wedges?$/i, 'Wedge'],
];

function kindCalled(word: string): NumberedKind | undefined {
  return KINDS.find(([called]) => called.test(word))?.[1];
}

/** `5 wood`: its number and kind. */
function kindAtEnd(part: string | undefined): { kind: NumberedKind; number: number } | null {
  const found = /^(\d{1,2})\s?([a-z]+)$/i.exec(part ?? '');
  const kind = kindCalled(found?.[2] ?? '');
  return found && kind ? { kind, number: Number(found[1]) } : null;
}

/** `woods 3`: its kind, and whether more than one is said to follow. */
function kindAtStart(part: string | undefined): { kind: NumberedKind; plural: boolean } | null {
  const found = /^([a-z]{4,7})\s?\d{1,2}$/i.exec(part ?? '');
  const kind = kindCalled(found?.[1] ?? '');
  return found && kind ? { kind, plural: /s$/i.test(found[1] ?? '') } : null;
}

/* ------------------------------------------------------------------ one part */

function oneOrRange(parts: readonly Part[], at: number): readonly ListedClub[] | ListFault {
  const { part, joined } = parts[at] ?? { part: '', joined: false };
  if (/^p$/i.test(part)) return { why: 'either', part, these: ['PW', 'Putter'] };
  const plural = /^(\d{1,2})\s?(wood|hybrid|iron|wedge)s$/i.exec(part);
  if (plural) {
    // `3 and 5 woods` are two of them, `8 irons` a number or a club
    const club = joined ? numbered(Number(plural[1]), kindCalled(plural[2] ?? '')) : null;
    return club ? [club] : { why: 'count', part };
  }
  const found = clubsCalled(part);
  if (found) return found;
  if (isRange(part)) return { why: 'range', part };
  return { why: isSeveral(part) ? 'apart' : 'unknown', part };
}

const TIMES = String.raw`\s?(?:x|×|\*)\s?`;
const COUNT_FIRST = new RegExp(`^(\\d{1,3})${TIMES}(?=\\S)(.+)$`, 'i');
const COUNT_LAST = new RegExp(`^(.*[^\\s\\d])${TIMES}(\\d{1,3})$`, 'i');
const SOME_COUNT = /(^|[\s\d])[x×*]\s?\d|\d\s?[x×*](\s|$)/i;

/** `2 x 7 iron`, `putter x 3`, `2 putters`: so many clubs that are called alike, told apart by a number; null where none are counted. */
function counted(part: string): readonly ListedClub[] | ListFault | null {
  const plain = /^(\d{1,2}) (driver|putter)s$/i.exec(part);
  const first = plain ?? COUNT_FIRST.exec(part);
  const last = first ? null : COUNT_LAST.exec(part);
  const count = Number(first?.[1] ?? last?.[2]);
  const of = clubsCalled((first?.[2] ?? last?.[1] ?? '').trim());
  if (!of) return SOME_COUNT.test(part) ? { why: 'count', part } : null;
  // of two bare numbers it is not plain which of them counts
  const isPlain = count > 0 && !/^\d+$/.test(first?.[2] ?? '') && !of.some(({ name }) => / no\. \d+$/.test(name));
  if (!isPlain) return { why: 'count', part };
  if (count * of.length > MOST_CLUBS) return { why: 'many', part };
  if (count === 1) return of;
  return Array.from({ length: count }, (_, at) =>
    of.map(({ name, kind }) => ({ name: `${name} no. ${at + 1}`, kind })),
  ).flat();
}
