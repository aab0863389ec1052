/** How well a heading names a column of ours. */
import type { Column, TableSchema } from '../columns';
import { wordsAlike } from './alike';
import { readingsOf, type HeadingWords } from './headingWords';
import { MORE_NAMES } from './moreNames';
import type { ShopUnit, Why } from './types';
import { ourUnit, suits, unitsOf } from './units';

export interface HeadingFit {
  /** 0 to 1. */
  readonly fit: number;
  readonly why: Exclude<Why, 'values'>;
  /** The unit that the heading names; undefined where it names none, or none of this column's kind. */
  readonly unit: ShopUnit | undefined;
}

/** Whether a heading states a length where the column holds a mass, or a mass where it holds a length. */
export function statesAnother(column: Column, heading: string): boolean {
  const unit = readingsOf(heading)[0]?.unit ?? null;
  return unit !== null && unit !== '%' && unitsOf(column).length > 1 && !suits(column, unit);
}

interface Name {
  readonly words: readonly string[];
  /** The same in alphabetical order. */
  readonly sorted: string;
  readonly why: 'heading' | 'synonym';
  /** Of one exactly so. */
  readonly fit: number;
}

const NO_FIT: HeadingFit = { fit: 0, why: 'none', unit: undefined };

const OURS = 1;
const ANOTHER_NAME = 0.97;
/** A name that is not in the schema has no claim on a heading that a name in it has. */
const ONE_MORE_NAME = 0.93;
/** The same words in another order. */
const REORDERED = 0.98;
const LIKE = 0.95;
/** A heading in a unit that the column cannot be in: Weight (in). */
const FOREIGN_UNIT = 0.55;
/** A heading that is nothing but a unit of the column's kind. */
const UNIT_ALONE = 0.75;
/** A heading whose unit is one of the column's beats one without by this much. */
const UNIT_SPEAKS = 0.015;

/** Names of each column as words; a schema is never changed. */
const NAMES = new WeakMap<Column, readonly Name[]>();

function namesOf(schema: TableSchema, column: Column): readonly Name[] {
  const known = NAMES.get(column);
  if (known) return known;
  const named = (text: string, why: Name['why'], fit: number): Name => {
    const [first] = readingsOf(text);
    const words = first?.words ?? [];
    return { words, sorted: [...words].sort().join(' '), why, fit };
  };
  const names = [
    named(column.header, 'heading', OURS),
    ...column.synonyms.map((name) => named(name, 'synonym', ANOTHER_NAME)),
    ...(MORE_NAMES[schema.name]?.[column.key] ?? []).map((name) => named(name, 'synonym', ONE_MORE_NAME)),
  ].filter(({ words }) => words.length > 0);
  NAMES.set(column, names);
  return names;
}

/** What was found before: the same headings are looked at for their row, for each column, and for each of our tables. */
const FITS = new WeakMap<Column, Map<string, HeadingFit>>();
const MOST_KEPT = 500;

/** How well a heading names a column, by the best of its readings and of the column's names. */
export function headingFit(schema: TableSchema, column: Column, heading: string): HeadingFit {
  const kept = FITS.get(column) ?? new Map<string, HeadingFit>();
  const known = kept.get(heading);
  if (known) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const fit = bestFit(schema, column, heading);
  FITS.set(column, kept.set(heading, fit));
  return fit;
}

function bestFit(schema: TableSchema, column: Column, heading: string): HeadingFit {
  let best = NO_FIT;
  if (heading === '') return best;
  for (const reading of readingsOf(heading)) {
    const unit = unitFor(column, reading);
    // a heading in per cent leaves open whether a tenth is 0.1 or 10: a cell that shows 10 % holds 0.1
    const ofPercents = reading.unit === '%' && ourUnit(column) === '%';
    const foreign = reading.unit !== null && unit === undefined && !ofPercents;
    const { fit, why } = reading.unitOnly ? alone(schema, column, unit) : named(schema, column, reading);
    const whole = foreign ? fit * FOREIGN_UNIT : Math.min(1, fit + (unit !== undefined && fit > 0 ? UNIT_SPEAKS : 0));
    if (whole > best.fit) best = { fit: whole, why, unit };
    else if (best.fit === 0 && unit !== undefined) best = { ...NO_FIT, unit };
  }
  return best;
}

function unitFor(column: Column, { unit }: HeadingWords): ShopUnit | undefined {
  if (unit === null || unit === undefined || unit === '%') return undefined;
  return unitsOf(column).length > 1 && suits(column, unit) ? unit : undefined;
}

type Named = Pick<HeadingFit, 'fit' | 'why'>;

/** `Grams` says as much as Weight (g). */
function alone(schema: TableSchema, column: Column, unit: ShopUnit | undefined): Named {
  if (unit === undefined || ourUnit(column) !== 'g') return NO_FIT;
  const { fit } = named(schema, column, { words: ['weight'], unit: null, unitOnly: false });
  return { fit: fit * UNIT_ALONE, why: fit > 0 ? 'likeness' : 'none' };
}

function named(schema: TableSchema, column: Column, { words }: HeadingWords): Named {
  const text = words.join(' ');
  const sorted = [...words].sort().join(' ');
  let best: Named = NO_FIT;
  for (const name of namesOf(schema, column)) {
    const found = compared(name, words, text, sorted);
    if (found.fit > best.fit) best = found;
  }
  return best;
}

function compared(name: Name, words: readonly string[], text: string, sorted: string): Named {
  if (name.sorted === sorted) {
    return { fit: name.words.join(' ') === text ? name.fit : name.fit * REORDERED, why: name.why };
  }
  return { fit: wordsAlike(words, name.words) * name.fit * LIKE, why: 'likeness' };
}
