/** How alike two headings are, word by word. */

/** Words of a heading that every second heading of such a table has; they tell little. */
const LITTLE = new Set([
  ...['grip', 'club', 'size', 'number', 'value', 'name'],
  ...['vat', 'gst', 'inc', 'incl', 'including', 'ex', 'excl', 'excluding', 'each'],
]);
const LITTLE_WEIGHS = 0.45;

/** Words less alike than this are different words. */
const LEAST_ALIKE = 0.84;
/** A word cut short says a little less than the whole one. */
const CUT_SHORT = 0.92;

/**
 * How alike two lists of words are, 0 to 1, whatever their order: what the words that have a fellow weigh, of what all of them weigh
 * (Dice), each pair counted by how alike it is.
 */
export function wordsAlike(one: readonly string[], other: readonly string[]): number {
  let both = 0;
  const free = new Set(other.keys());
  for (const word of one) {
    let [best, at] = [0, -1];
    for (const index of free) {
      const alike = wordAlike(word, other[index] ?? '');
      if (alike > best) [best, at] = [alike, index];
    }
    if (at < 0) continue;
    free.delete(at);
    both += best * (weightOf(word) + weightOf(other[at] ?? ''));
  }
  const all = sumOf(one) + sumOf(other);
  return all === 0 ? 0 : both / all;
}

function weightOf(word: string): number {
  return LITTLE.has(word) ? LITTLE_WEIGHS : 1;
}

function sumOf(words: readonly string[]): number {
  return words.reduce((sum, word) => sum + weightOf(word), 0);
}

const KNOWN = new Map<string, number>();
const MOST_KEPT = 50_000;

/** How alike two words are: 1 the same, 0 different words. */
function wordAlike(one: string, other: string): number {
  if (one === other) return 1;
  const key = `${one} ${other}`;
  const known = KNOWN.get(key);
  if (known !== undefined) return known;
  if (KNOWN.size > MOST_KEPT) KNOWN.clear();
  const alike = compared(one, other);
  KNOWN.set(key, alike);
  return alike;
}

function compared(one: string, other: string): number {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (short.length >= 3 && long.startsWith(short)) return CUT_SHORT;
  // of short words every one is like some other: cap and cup
  if (short.length < 4) return 0;
  const alike = jaroWinkler(one, other);
  return alike >= LEAST_ALIKE ? alike : 0;
}

/**
 * Jaro–Winkler similarity, 0 to 1.
 *
 * Source: M. A. Jaro, J. Am. Stat. Assoc. 84 (1989) 414; W. E. Winkler, Proc. Survey Research Methods (ASA, 1990) 354, with 0.1 for each
 * of up to four letters that both begin with.
 *
 * @example jaroWinkler('martha', 'marhta') //=> 0.961…
 */
export function jaroWinkler(one: string, other: string): number {
  if (one === other) return 1;
  const reach = Math.max(0, Math.floor(Math.max(one.length, other.length) / 2) - 1);
  const taken = new Array<boolean>(other.length).fill(false);
  const mine: string[] = [];
  for (let at = 0; at < one.length; at += 1) {
    const end = Math.min(other.length, at + reach + 1);
    for (let to = Math.max(0, at - reach); to < end; to += 1) {
      if (taken[to] || one[at] !== other[to]) continue;
      taken[to] = true;
      mine.push(one[at] ?? '');
      break;
    }
  }
  const matches = mine.length;
  if (matches === 0) return 0;
  const theirs = other.split('').filter((_, at) => taken[at]);
  const swapped = mine.filter((letter, at) => letter !== theirs[at]).length / 2;
  const jaro = (matches / one.length + matches / other.length + (matches - swapped) / matches) / 3;
  let begin = 0;
  while (begin < 4 && begin < one.length && one[begin] === other[begin]) begin += 1;
  return jaro + begin * 0.1 * (1 - jaro);
}
