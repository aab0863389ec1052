/** Finding the columns of a remembered match again, after columns were inserted, moved, renamed or taken out. */
import { headingText } from './headingWords';
import type { ColumnMatch } from './types';

export interface MovedColumn {
  readonly key: string;
  readonly heading: string;
  readonly from: number;
  readonly to: number;
}

/** A column of a match that is not found again. */
export interface BrokenMatch {
  readonly key: string;
  readonly heading: string;
  readonly why: 'gone' | 'renamed' | 'twice';
  /** The heading that stands where it stood among its neighbours: to be asked about, never taken. */
  readonly nowAt?: string;
  /** Where that is; of a heading that stands twice, its first place. */
  readonly position?: number;
}

export interface Resolved {
  /** With the positions and the headings of now. */
  readonly found: readonly ColumnMatch[];
  readonly moved: readonly MovedColumn[];
  readonly broken: readonly BrokenMatch[];
}

/**
 * Finds each column again by its heading; case and spaces do not matter, the unit does.
 *
 * @param matches what was confirmed
 * @param headings the headings of now, as `Likeness.headings` has them
 */
export function resolve(matches: readonly ColumnMatch[], headings: readonly string[]): Resolved {
  const places = new Map<string, number[]>();
  headings.forEach((heading, at) => {
    const name = compared(heading);
    if (name !== '') places.set(name, [...(places.get(name) ?? []), at]);
  });
  const nowOf = (match: ColumnMatch): readonly number[] => places.get(compared(match.heading)) ?? [];
  const found: ColumnMatch[] = [];
  const broken: BrokenMatch[] = [];
  const lost: ColumnMatch[] = [];
  for (const match of matches) {
    const [at, ...more] = nowOf(match);
    if (at === undefined) lost.push(match);
    else if (more.length > 0) broken.push({ key: match.key, heading: match.heading, why: 'twice', position: at });
    else found.push({ ...match, position: at, heading: headings[at] ?? match.heading });
  }
  const was = new Map(matches.map(({ key, position }) => [key, position]));
  const claimed = new Set(matches.map((match) => compared(match.heading)));
  for (const match of lost) broken.push(lostColumn(match, was, found, headings, claimed));
  const moved = found.flatMap(({ key, heading, position }) => {
    const from = was.get(key) ?? position;
    return from === position ? [] : [{ key, heading, from, to: position }];
  });
  return { found, moved, broken };
}

function compared(heading: string): string {
  return headingText(heading).toLowerCase();
}

/** A lost column is thought renamed where the columns known to its left and right stand about one place as they did. */
function lostColumn(
  match: ColumnMatch,
  was: ReadonlyMap<string, number>,
  found: readonly ColumnMatch[],
  headings: readonly string[],
  claimed: ReadonlySet<string>,
): BrokenMatch {
  const gone: BrokenMatch = { key: match.key, heading: match.heading, why: 'gone' };
  const shifts = [nearest(match, was, found, -1), nearest(match, was, found, 1)].filter((shift) => shift !== undefined);
  const [shift = 0] = shifts;
  if (shifts.some((each) => each !== shift)) return gone;
  const position = match.position + shift;
  const heading = headings[position] ?? '';
  if (compared(heading) === '' || claimed.has(compared(heading))) return gone;
  return { ...gone, why: 'renamed', nowAt: heading, position };
}

/** By how much the nearest column on one side has moved that is found again; undefined where there is none. */
function nearest(
  match: ColumnMatch,
  was: ReadonlyMap<string, number>,
  found: readonly ColumnMatch[],
  side: -1 | 1,
): number | undefined {
  let [best, shift]: [number, number | undefined] = [Infinity, undefined];
  for (const { key, position } of found) {
    const before = was.get(key) ?? position;
    const distance = (before - match.position) * side;
    if (distance > 0 && distance < best) [best, shift] = [distance, position - before];
  }
  return shift;
}
