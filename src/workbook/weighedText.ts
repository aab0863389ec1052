/**
 * Masses of loose grips as people type or paste them: one a line or several, with or without item, number and unit.
 *
 * `51.2`, `51,2 g`, `3) 51.2`, `OS-S60 51.2`, a pasted column, or two with the item before the mass. A comma that could part numbers or
 * stand in one is asked about, never guessed; a number before a mass needs a bracket, or it is a mass of its own.
 */
import { fail, ok, plainNumber, RANGES, type Result, type WeighedGrip } from '../core/index';

type Grams = Result<number>;

const { low, high, unit } = RANGES.gripGrams;
const MASSES = `${low} to ${high} ${unit}`;

/** Reads weighed grips, numbered in the order they stand in; the first thing that cannot be read is told with its line. */
export function parseWeighed(text: string): Result<WeighedGrip[]> {
  const comma = commaMeaning(text);
  const grips: WeighedGrip[] = [];
  let numbered = true;
  const lines = text.split(/\r\n|[\r\n\v\f\u2028\u2029]/);
  for (const [at, line] of lines.entries()) {
    if (grips.length === 0 && isHeading(line)) continue;
    const read = readLine(line, { where: `line ${at + 1}`, before: grips.length, numbered, comma });
    if (!read.ok) return read;
    for (const each of read.value.entries) grips.push({ number: grips.length + 1, ...each });
    if (read.value.entries.length > 0) numbered &&= read.value.numbered;
  }
  if (grips.length > 0) return ok(grips);
  return fail({ code: 'blank', field: 'The list of masses', expected: `one mass a line, ${MASSES}, such as 51.2` });
}

type Entry = Omit<WeighedGrip, 'number'>;

/** What reading a line depends on. */
interface Place {
  readonly where: string;
  /** Grips on the lines above. */
  readonly before: number;
  /** Whether each of those stood behind its own number. */
  readonly numbered: boolean;
  readonly comma: Comma;
}

interface LineRead {
  readonly entries: readonly Entry[];
  readonly numbered: boolean;
}

/** An item, which may be several words, holds for the one mass that follows it. */
function readLine(line: string, { where, before, numbered, comma }: Place): Result<LineRead> {
  const entries: Entry[] = [];
  let item: string[] = [];
  let ordinals = 0;
  const words = wordsOf(line);
  for (const [at, { text, named }] of words.entries()) {
    const next = words[at + 1]?.text;
    const number = before + entries.length + 1;
    if (item.length === 0 && entries.length > 0 && isUnit(text)) continue;
    if (item.length === 0 && isOrdinal(text, next, number, numbered)) {
      ordinals += 1;
      continue;
    }
    const grams = named ? undefined : massOf(text, where, comma);
    if (grams?.ok) {
      for (const each of grams.value) entries.push({ item: item.join(' ') || undefined, grams: each });
      item = [];
    } else if (!grams || (item.length === 0 && /^\d+$/.test(text) && isMassWord(next))) item.push(text);
    else return grams;
  }
  if (item.length > 0) return fail(noMass(item.join(' '), where));
  const named = entries.filter((entry) => entry.item !== undefined).length;
  if (named > 0 && named < entries.length) return fail(whichMass(line, where));
  return ok({ entries, numbered: ordinals === entries.length });
}

/** A word of a line; `named` where it can only be part of an item. */
interface Word {
  readonly text: string;
  readonly named: boolean;
}

/** Tabs and semicolons part cells. A cell of several words before one that is a mass is an item, whatever numbers are in it. */
function wordsOf(line: string): Word[] {
  const cells = line
    .split(/[\t;]/)
    .map((cell) => cell.split(/\s+/).filter(Boolean))
    .filter((cell) => cell.length > 0);
  return cells.flatMap((cell, at) => {
    const next = cells[at + 1];
    const named = !isMassCell(cell) && cell.length > 1 && next !== undefined && isMassCell(next);
    return cell.map((text) => ({ text, named }));
  });
}

function isMassCell([first, second, ...more]: readonly string[]): boolean {
  return isMassWord(first) && (second === undefined || isUnit(second)) && more.length === 0;
}

function isMassWord(word: string | undefined): boolean {
  return word !== undefined && Boolean(massOf(word, '', 'decimal')?.ok);
}

/* ---------------------------------------------------------------- what stands beside the masses */

/** A pasted heading, such as `Grip  Mass (g)`: nothing but words for what is in the columns. */
function isHeading(line: string): boolean {
  const words = line
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter(Boolean);
  return words.length > 0 && !/\d/.test(line) && words.every((word) => HEADING_WORDS.has(word));
}

const HEADING_WORDS = new Set([
  'no',
  'nr',
  'number',
  'item',
  'code',
  'grip',
  'grips',
  'mass',
  'weight',
  'weighed',
  'g',
  'gram',
  'grams',
  'in',
]);

function isUnit(word: string): boolean {
  return /^(g|gr|grams?)\.?$/i.test(word);
}

/**
 * `3)`, `#3`, `(3)`; and a plain `3.` or `3` that is the number the grip gets anyway. From 15 on that might be a mass as well, and is
 * one unless every grip before it was numbered.
 */
function isOrdinal(word: string, next: string | undefined, number: number, numbered: boolean): boolean {
  if (next === undefined || isUnit(next)) return false;
  if (/^(\d+[):]|#\d+[).:]?|\(\d+\))$/.test(word)) return true;
  return (word === `${number}.` || word === String(number)) && (number < low || numbered);
}

/* ---------------------------------------------------------------- the masses */

/** Whether a comma in this text is known to be a decimal sign or to stand between masses. */
type Comma = 'decimal' | 'between' | undefined;

/** One comma that can only be a decimal sign speaks for the others, and so does one decimal point. */
function commaMeaning(text: string): Comma {
  const words = text.split(/[\s;]+/).map(withoutTail);
  if (words.some((word) => asDecimal(word) !== undefined && !asSeveral(word))) return 'decimal';
  return words.some((word) => /\d\.\d/.test(word)) ? 'between' : undefined;
}

/** The masses of one word, why it is none although it is a number, or undefined where it is no number at all. */
function massOf(word: string, where: string, comma: Comma): Result<readonly number[]> | undefined {
  const plain = withoutTail(word);
  if (!/^[+\-−]?[\d.,]*\d[\d.,]*$/.test(plain)) return undefined;
  if (!plain.includes(',')) {
    const grams = inRange(plain, where);
    return grams.ok ? ok([grams.value]) : grams;
  }
  const decimal = asDecimal(plain);
  const several = asSeveral(plain);
  if (decimal !== undefined && (!several || comma === 'decimal')) return ok([decimal]);
  if (several && (decimal === undefined ? plain.includes('.') : comma === 'between')) return ok(several);
  if (decimal === undefined && /^[+\-−]?\d+,\d+$/.test(plain)) return singly(inRange(plain, where));
  return fail(twoReadings(plain, where));
}

function singly(grams: Grams): Result<readonly number[]> {
  return grams.ok ? ok([grams.value]) : grams;
}

/** A comma before a blank stands between masses; a unit may stand at a mass without a blank. */
function withoutTail(word: string): string {
  return word.replace(/,+$/, '').replace(/(\d)(g|gr|grams?)\.?$/i, '$1');
}

function asDecimal(word: string): number | undefined {
  const grams = /^\d+,\d+$/.test(word) ? plainNumber(word) : undefined;
  return grams !== undefined && isMass(grams) ? grams : undefined;
}

function asSeveral(word: string): readonly number[] | undefined {
  const parts = word.split(',').map((part) => (/^\d+(\.\d+)?$/.test(part) ? Number(part) : NaN));
  return parts.length > 1 && parts.every(isMass) ? parts : undefined;
}

function isMass(grams: number): boolean {
  return grams >= low && grams <= high;
}

function inRange(word: string, where: string): Grams {
  const grams = plainNumber(word);
  if (grams === undefined) {
    return fail({ code: 'notNumber', field: `The mass in ${where}`, got: word, expected: `${MASSES}, such as 51.2` });
  }
  return isMass(grams)
    ? ok(grams)
    : fail({ code: 'outOfRange', field: `The mass in ${where}`, got: grams, expected: MASSES });
}

/* ---------------------------------------------------------------- what is asked */

function noMass(item: string, where: string) {
  const expected = `${MASSES}, after the item`;
  return { code: 'blank', field: `The mass of ${item} in ${where}`, expected } as const;
}

function whichMass(line: string, where: string) {
  const expected = `it is not plain which number is the mass in “${line.trim().replace(/\s+/g, ' ')}”; put one grip on a line, and a tab or a semicolon between item and mass`;
  return { code: 'contradiction', field: `L${where.slice(1)}`, expected } as const;
}

function twoReadings(word: string, where: string) {
  const one = /^\d+,\d+$/.test(word) ? `write ${word.replace(',', '.')} for one` : 'write decimals with a point';
  const expected = `“${word}” may be one mass or several; ${one}, or put blanks between masses`;
  return { code: 'contradiction', field: `L${where.slice(1)}`, expected } as const;
}
