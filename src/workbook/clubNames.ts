/** What clubs are called over the counter: single ones, those from one to another, and names of the shop's own. Pure. */
import { CLUB_KINDS } from './schema';

export interface ListedClub {
  /** As it is called in Clubs. */
  readonly name: string;
  readonly kind: (typeof CLUB_KINDS)[number];
}

/** Kinds of which several are told apart by a number. */
export type NumberedKind = 'Wood' | 'Hybrid' | 'Iron' | 'Wedge';

/** The clubs that a text of one part names; null where it names none. @example clubsCalled('8-PW') //=> 8 iron, 9 iron, PW */
export function clubsCalled(part: string): readonly ListedClub[] | null {
  const one = single(part) ?? another(part);
  return one ? [one] : (range(part) ?? named(part));
}

/* ------------------------------------------------------------------ single clubs */

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

/** The same in words, so that `Pitching wedge` is one club with `PW`. */
const IN_WORDS: Readonly<Record<string, string>> = {
  pitching: 'PW',
  p: 'PW',
  approach: 'AW',
  attack: 'AW',
  gap: 'GW',
  sand: 'SW',
  lob: 'LW',
};

const WORDS: Readonly<Record<string, NumberedKind>> = {
  wood: 'Wood',
  w: 'Wood',
  'fairway wood': 'Wood',
  fairway: 'Wood',
  hybrid: 'Hybrid',
  h: 'Hybrid',
  iron: 'Iron',
  i: 'Iron',
  wedge: 'Wedge',
};

/** `Driver`, `3 wood`, `wood 3`, `4h`, `7`, `PW`, `sand wedge`, `56`, `SW 56`, `Putter`. */
function single(part: string): ListedClub | null {
  if (/^(driver|1\s?w|1\s?wood|dr|d)$/i.test(part)) return { name: 'Driver', kind: 'Driver' };
  if (/^(putter|pt)$/i.test(part)) return { name: 'Putter', kind: 'Putter' };
  const letters = lettersOf(part);
  if (letters) return lettered(letters);
  const said = numberAndWord(part);
  if (!said) return null;
  const { number, word, degrees } = said;
  const withLoft = lettersOf(word);
  if (withLoft) return isLoft(number) ? lettered(withLoft, number) : null;
  if (degrees && !isLoft(number)) return null;
  return word === '' || WORDS[word] ? numbered(number, WORDS[word]) : null;
}

/** `3 wood`, `wood 3`, `3-wood`, `56°`; several are not said by one number, but `woods 3` begins a list of them. */
function numberAndWord(part: string): { number: number; word: string; degrees: boolean } | null {
  const first = /^(\d{1,2})\s?(°?)[\s-]?(\D*)$/.exec(part);
  const last = first ? null : /^(\D+?)s?\s?(\d{1,2})\s?(°?)$/.exec(part);
  if (!first && !last) return null;
  const word = (first?.[3] ?? last?.[1] ?? '').toLowerCase();
  const inWords = /^deg(rees?)?$/.test(word);
  return {
    number: Number(first?.[1] ?? last?.[2]),
    word: inWords ? '' : word,
    degrees: inWords || (first?.[2] ?? last?.[3]) === '°',
  };
}

function lettersOf(text: string): string | undefined {
  const letters = text.toUpperCase();
  if (letters in LETTERED) return letters;
  return IN_WORDS[/^(\w+) wedge$/i.exec(text)?.[1]?.toLowerCase() ?? ''];
}

function lettered(letters: string, loft?: number): ListedClub {
  return { name: loft === undefined ? letters : `${letters} ${loft}`, kind: LETTERED[letters] ?? 'Wedge' };
}

function isLoft(number: number): boolean {
  return number >= WEDGE_LOFT.low && number <= WEDGE_LOFT.high;
}

/** The club of that number; without a kind an iron or, by its loft, a wedge. Null where there is none. */
export function numbered(number: number, kind: NumberedKind | undefined): ListedClub | null {
  if (isLoft(number) && (!kind || kind === 'Wedge')) return { name: `${number} wedge`, kind: 'Wedge' };
  const as = kind ?? 'Iron';
  if (as === 'Wedge' || number < 1 || number > (as === 'Wood' ? 11 : 9)) return null;
  if (as === 'Wood' && number === 1) return { name: 'Driver', kind: 'Driver' };
  return { name: `${number} ${as.toLowerCase()}`, kind: as };
}

/** `7 iron no. 2`, one of several that are called alike. */
function another(part: string): ListedClub | null {
  const found = /^(.+?) (?:no\.?|#)\s?(\d{1,2})$/i.exec(part);
  const club = found && (single(found[1] ?? '') ?? named(found[1] ?? '')?.[0]);
  return club ? { name: `${club.name} no. ${Number(found[2])}`, kind: club.kind } : null;
}

/* ------------------------------------------------------------------ from one to another */

const DASH = /\s*(?:-|–|—|\bto\b)\s*/;

/** Whether a part seems to name clubs from one to another. */
export function isRange(part: string): boolean {
  return /\d\s*([a-z]+\s*)?(-|–|—|\bto\b)\s*\S/i.test(part);
}

/** `4-PW`, `5-9 iron`, `4-GW`, `4-6 hybrid`; what lies between two woods or between PW and SW differs from maker to maker. */
function range(part: string): ListedClub[] | null {
  const bare = part.replace(/^irons?\s+/i, '').trim();
  const [first = '', rest = '', ...more] = bare.split(DASH);
  const from = /^(\d)\s?(iron|i|hybrid|h)?$/i.exec(first);
  if (!from || rest === '' || more.length > 0) return null;
  const low = Number(from[1]);
  const word = from[2]?.toLowerCase() ?? '';
  const letters = /^p$/i.test(rest) ? 'PW' : lettersOf(rest);
  if (letters) return word.startsWith('h') ? null : upToWedge(low, letters);
  const to = /^(\d)\s?(irons?|i|hybrids?|h)?$/i.exec(rest);
  const high = Number(to?.[1]);
  if (!to || high <= low) return null;
  const ending = to[2]?.toLowerCase() ?? '';
  // from a hybrid to an iron: which is the last hybrid is not said
  if (word !== '' && ending !== '' && word.charAt(0) !== ending.charAt(0)) return null;
  return (word || ending).startsWith('h') ? series(low, high, 'Hybrid') : series(low, high, 'Iron');
}

function upToWedge(low: number, letters: string): ListedClub[] | null {
  if (letters !== 'PW' && letters !== 'GW' && letters !== 'AW') return null;
  const irons = series(low, 9, 'Iron');
  if (!irons) return null;
  return letters === 'PW' ? [...irons, lettered('PW')] : [...irons, lettered('PW'), lettered(letters)];
}

function series(low: number, high: number, kind: 'Iron' | 'Hybrid'): ListedClub[] | null {
  if (low < 1) return null;
  return Array.from({ length: high - low + 1 }, (_, at) => ({ name: `${low + at} ${kind.toLowerCase()}`, kind }));
}

/* ------------------------------------------------------------------ names of the shop's own */

/** Longer than this is no name but a note. */
const LONGEST_NAME = 40;

/** What says that a club is not there. */
const NEGATED = /\b(no|not|without|except|excluding|missing|minus|but|lost)\b/i;

/** `Spare putter`, `Junior 7`: a name of the shop's own that says the kind. */
function named(part: string): ListedClub[] | null {
  if (part.length > LONGEST_NAME || isRange(part) || isSeveral(part) || NEGATED.test(part)) return null;
  const junior = /\bjunior\b/i.test(part);
  const words = part.toLowerCase().split(' ');
  const kind = CLUB_KINDS.find((each) => words.includes(each.toLowerCase()));
  if (!junior && !kind) return null;
  const name = part.charAt(0).toUpperCase() + part.slice(1);
  return [{ name, kind: junior ? 'Junior' : (kind ?? 'Junior') }];
}

/** Whether a part reads as several clubs with nothing between them: `Driver 3w`, `7 8 9 iron`, `PW/SW`. */
export function isSeveral(part: string): boolean {
  if (part.includes('/')) return true;
  const words = part.split(' ').filter((word) => !/^junior$/i.test(word));
  const kinds = words.filter((word) => CLUB_KINDS.some((kind) => kind.toLowerCase() === word.toLowerCase()));
  const numbers = words.filter((word) => /\d/.test(word));
  return kinds.length > 1 || numbers.length > 1 || isChain(words);
}

/** Whether the words, one after another, are two clubs or more of one or two words each. */
function isChain(words: readonly string[]): boolean {
  return [1, 2].some((count) => {
    const rest = words.slice(count);
    return rest.length > 0 && single(words.slice(0, count).join(' ')) !== null && (isOne(rest) || isChain(rest));
  });
}

function isOne(words: readonly string[]): boolean {
  return single(words.join(' ')) !== null;
}
