/**
 * Units of a shop's own, in and out of ours, and quantities as people type them.
 *
 * Source: international yard and pound agreement of 1959, as in NIST SP 811 appendix B: 1 yd = 0.9144 m and 1 lb = 0.45359237 kg
 * exactly, so 1 in = 25.4 mm, 1 ft = 304.8 mm, 1 oz = 1/16 lb = 28.349523125 g.
 */
import { GRAMS_PER_OUNCE, MM_PER_INCH, plainNumber, roundTo } from '../../core/index';
import type { Column } from '../columns';
import type { ShopUnit } from './types';

type Measured = NonNullable<ShopUnit>;

/** What one of it is in the smallest common unit of its kind: millimetres, grams, parts of a hundred. */
const SIZE_OF: Readonly<Record<Measured | '%', number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  thou: MM_PER_INCH / 1000,
  in: MM_PER_INCH,
  ft: 12 * MM_PER_INCH,
  yd: 36 * MM_PER_INCH,
  g: 1,
  kg: 1000,
  oz: GRAMS_PER_OUNCE,
  lb: 16 * GRAMS_PER_OUNCE,
  '%': 1,
  part: 100,
};

/** Units that a column of ours may stand in at a shop's, by ours; the likeliest first. */
const CHOICES: Readonly<Record<string, readonly ShopUnit[]>> = {
  in: ['in', 'mm', 'cm', 'thou'],
  yd: ['yd', 'm', 'ft'],
  g: ['g', 'oz', 'lb', 'kg'],
  '%': [null, 'part'],
};

/** Decimals that a shop's number is written with where no shorter number means the same: none of them can be weighed or callipered finer. */
const DECIMALS: Readonly<Record<Measured, number>> = {
  mm: 2,
  cm: 3,
  m: 4,
  thou: 0,
  in: 4,
  ft: 3,
  yd: 3,
  g: 2,
  kg: 5,
  oz: 3,
  lb: 4,
  part: 5,
};

/** Our unit of a column where it is one that can be converted, else its own name or null. */
export function ourUnit(column: Pick<Column, 'unit' | 'header'>): string | null {
  return column.unit ?? /\((yd)\)$/.exec(column.header)?.[1] ?? null;
}

/** Units that a shop may keep a column in, ours first; only `null` where there is nothing to choose. */
export function unitsOf(column: Pick<Column, 'unit' | 'header'>): readonly ShopUnit[] {
  return CHOICES[ourUnit(column) ?? ''] ?? [null];
}

/** Whether numbers in this unit can be turned into a column's own. */
export function suits(column: Pick<Column, 'unit' | 'header'>, unit: ShopUnit): boolean {
  return unit === null || unitsOf(column).includes(unit) || sameKind(ourUnit(column), unit);
}

const LENGTHS = new Set<string>(['mm', 'cm', 'm', 'thou', 'in', 'ft', 'yd']);

function sameKind(ours: string | null, unit: Measured): boolean {
  return ours !== null && LENGTHS.has(ours) && LENGTHS.has(unit);
}

/**
 * A shop's number in a column's own unit.
 *
 * @param unit the shop's; null or ours: the number as it is
 * @example toOurs({ unit: 'in', header: 'Core (in)' }, 'mm', 25.4) //=> 1
 */
export function toOurs(column: Pick<Column, 'unit' | 'header'>, unit: ShopUnit, value: number): number {
  const factors = factorsOf(column, unit);
  return factors ? (value * factors.theirs) / factors.ours : value;
}

/** Digits that two numbers are compared by: a spreadsheet keeps 15, a factor and back costs less than three of them. */
const SAME_WITHIN = 1e-12;
/** A number of more digits than this was reckoned, not typed. */
const MOST_TYPED = 9;

/**
 * A number of ours in the shop's unit: the shortest number that means the same, so that what came from there goes back as it was;
 * else rounded to what a bench can tell apart in that unit.
 *
 * @example fromOurs({ unit: 'g', header: 'Mass (g)' }, 'oz', 52.3) //=> 1.845
 */
export function fromOurs(column: Pick<Column, 'unit' | 'header'>, unit: ShopUnit, value: number): number {
  const factors = factorsOf(column, unit);
  if (!factors || unit === null || value === 0) return value;
  const exact = (value * factors.ours) / factors.theirs;
  for (let digits = 1; digits <= MOST_TYPED; digits += 1) {
    const short = Number(exact.toPrecision(digits));
    if (Math.abs(short - exact) <= SAME_WITHIN * Math.abs(exact)) return short;
  }
  const rounded = roundTo(exact, DECIMALS[unit]);
  return rounded === 0 ? Number(exact.toPrecision(2)) : rounded;
}

function factorsOf(
  column: Pick<Column, 'unit' | 'header'>,
  unit: ShopUnit,
): { readonly theirs: number; readonly ours: number } | undefined {
  const ours = ourUnit(column);
  if (unit === null || unit === ours || ours === null || !suits(column, unit)) return undefined;
  return { theirs: SIZE_OF[unit], ours: SIZE_OF[ours as Measured] };
}

/** How units are written, lower case and without a point at the end. */
const SPELLINGS: Readonly<Record<Measured | '%', readonly string[]>> = {
  in: ['in', 'ins', 'inch', 'inches', '"', '″', '”', "''", '’’', 'zoll', 'pouce', 'pouces'],
  mm: ['mm', 'm/m', 'millimeter', 'millimeters', 'millimetre', 'millimetres', 'mms'],
  cm: ['cm', 'cms', 'centimeter', 'centimeters', 'centimetre', 'centimetres'],
  m: ['m', 'meter', 'meters', 'metre', 'metres', 'mtr', 'mtrs'],
  ft: ['ft', 'feet', 'foot'],
  yd: ['yd', 'yds', 'yard', 'yards'],
  thou: ['thou', 'mil', 'mils', 'thousandths'],
  // grains are written gr as well, but nobody weighs a grip in grains
  g: ['g', 'gr', 'grs', 'gm', 'gms', 'gram', 'grams', 'gramme', 'grammes', 'gramm'],
  kg: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'],
  oz: ['oz', 'ozs', 'ounce', 'ounces', 'unze', 'unzen'],
  lb: ['lb', 'lbs', 'pound', 'pounds'],
  '%': ['%', 'percent', 'pct', 'per cent'],
  part: [],
};

const UNIT_OF_SPELLING = new Map<string, Measured | '%'>(
  Object.entries(SPELLINGS).flatMap(([unit, names]) => names.map((name) => [name, unit as Measured | '%'] as const)),
);

/** The unit that a word is; undefined where it is none. @example unitNamed('Ounces.') //=> 'oz' */
export function unitNamed(word: string): Measured | '%' | undefined {
  return UNIT_OF_SPELLING.get(word.trim().toLowerCase().replace(/\.$/, ''));
}

/** A number as typed, with the unit typed after it, if any; `tail` is what stands behind where that is no unit. */
export interface Quantity {
  readonly value: number;
  readonly unit: Measured | '%' | null;
  readonly tail: string;
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '¼': ' 1/4',
  '½': ' 1/2',
  '¾': ' 3/4',
  '⅛': ' 1/8',
  '⅜': ' 3/8',
  '⅝': ' 5/8',
  '⅞': ' 7/8',
};
const NUMBER_FIRST = /^([+−-]?(?:\d+[.,]?\d*|[.,]\d+))\s*(.*)$/;
const FRACTION_FIRST = /^([+−-]?)(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)\s*(.*)$/;

/** Marks of writing direction, which are not seen. */
export const UNSEEN = /[\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g;

/**
 * Reads a quantity as people type it.
 *
 * @returns undefined where the text does not begin with a number
 * @example readQuantity('14,7 mm') //=> { value: 14.7, unit: 'mm', tail: '' }
 * @example readQuantity('10 1/2"') //=> { value: 10.5, unit: 'in', tail: '' }
 */
export function readQuantity(text: string): Quantity | undefined {
  const plain = text
    .replace(UNSEEN, '')
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => FRACTIONS[sign] ?? sign)
    .trim();
  const fraction = FRACTION_FIRST.exec(plain);
  if (fraction) {
    const [, sign, whole = '0', above, below, rest = ''] = fraction;
    if (Number(below) === 0) return undefined;
    const size = Number(whole) + Number(above) / Number(below);
    return withTail(sign === '-' || sign === '−' ? -size : size, rest);
  }
  const [, number = '', rest = ''] = NUMBER_FIRST.exec(plain) ?? [];
  const value = plainNumber(number);
  return value === undefined ? undefined : withTail(value, rest);
}

function withTail(value: number, rest: string): Quantity {
  const unit = unitNamed(rest);
  return { value, unit: unit ?? null, tail: unit ? '' : rest.trim() };
}
