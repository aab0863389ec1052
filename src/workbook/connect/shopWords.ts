/** Words of a shop's own for the choices of our columns: short forms that can mean one of them only. */
import type { Column } from '../columns';

/** By our column's key, then by our word: how shops write it, lower case. All of it is common practice, no source. */
const WORDS: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  size: {
    Undersize: ['us', 'under', 'under size', 'undersized', 'u/s', 'ladies', 'small'],
    Standard: ['std', 'std.', 'stand', 'stnd', 'regular', 'reg', 'normal', 'men std', "men's std"],
    Midsize: ['mid', 'mid size', 'mid-size', 'ms', 'midsized', 'medium'],
    Jumbo: ['jmb', 'jbo', 'oversize', 'over size', 'os', 'o/s', 'oversized', 'large'],
  },
  profile: {
    Round: ['r', 'rd', 'rnd', 'rd.', 'no rib', 'non-ribbed', 'non ribbed', 'plain'],
    Ribbed: ['rib', 'ribb', 'rbd', 'reminder', 'with rib', 'rib.'],
  },
  hand: {
    Right: ['r', 'rh', 'r/h', 'rt', 'right hand', 'right handed', 'right-handed', 'right-hand'],
    Left: ['l', 'lh', 'l/h', 'lt', 'left hand', 'left handed', 'left-handed', 'left-hand'],
  },
  kind: {
    Driver: ['dr', 'drv', '1w', 'drivers'],
    Wood: ['w', 'fw', 'fairway', 'fairway wood', 'woods', 'fwy'],
    Hybrid: ['h', 'hy', 'hyb', 'rescue', 'hybrids', 'utility', 'ut'],
    Iron: ['i', 'ir', 'irons'],
    Wedge: ['wdg', 'wedges', 'we'],
    Putter: ['p', 'pt', 'put', 'putters'],
    Junior: ['jr', 'jr.', 'juniors', 'kids', 'child'],
  },
  use: {
    Clubs: ['club', 'all', 'woods/irons', 'swing', 'woods & irons', 'woods and irons'],
    Putters: ['putter', 'putting', 'pt'],
    Juniors: ['junior', 'jr', 'jr.', 'kids'],
  },
  shaft: {
    Graphite: ['g', 'gr', 'gra', 'graph', 'graph.', 'carbon'],
    Steel: ['s', 'st', 'stl'],
  },
  status: {
    Open: ['new', 'in work', 'in progress', 'wip'],
    Waiting: ['on hold', 'hold', 'wait'],
    Done: ['closed', 'finished', 'complete', 'completed', 'ready'],
  },
};

const OURS_BY_KEY = new Map(
  Object.entries(WORDS).map(([key, words]) => [
    key,
    new Map(Object.entries(words).flatMap(([ours, theirs]) => theirs.map((word) => [word, ours] as const))),
  ]),
);

/** Our word for a shop's, where it is one of the column's choices under another name; undefined where it is not known. */
export function ourWord(column: Column, text: string): string | undefined {
  const ours = OURS_BY_KEY.get(column.key)?.get(text.trim().replace(/\s+/g, ' ').replaceAll('’', "'").toLowerCase());
  return ours !== undefined && column.choices?.includes(ours) ? ours : undefined;
}
