/** How well what stands in a shop's column fits one of ours, and in which unit. */
import type { Column } from '../columns';
import type { Seen } from '../port';
import { isBlank } from '../records';
import { codedInches, reads } from './cells';
import type { ShopUnit } from './types';
import { readQuantity, suits, toOurs, unitsOf } from './units';

/** A column of the shop's, of which some rows were looked at. */
export interface ShopColumn {
  readonly position: number;
  readonly heading: string;
  /** What else it may be called by. */
  readonly also: readonly string[];
  /** Cells that hold something, in their order. */
  readonly cells: readonly Seen[];
  /** The same without repeats, and how often each stands there. */
  readonly distinct: readonly (readonly [Seen, number])[];
}

/** Different values that are enough to tell columns apart by. */
const PROBED = 24;

/** The same column with fewer values, from all over it. */
export function probed(theirs: ShopColumn): ShopColumn {
  const every = Math.ceil(theirs.distinct.length / PROBED);
  return every < 2 ? theirs : { ...theirs, distinct: theirs.distinct.filter((_, at) => at % every === 0) };
}

export function shopColumn(
  position: number,
  heading: string,
  also: readonly string[],
  cells: readonly Seen[],
): ShopColumn {
  const held = cells.filter((cell) => !isBlank(cell));
  const counts = new Map<unknown, [Seen, number]>();
  for (const cell of held) {
    const key = typeof cell === 'object' && cell !== null ? cell.error : cell;
    const known = counts.get(key);
    if (known) known[1] += 1;
    else counts.set(key, [cell, 1]);
  }
  return { position, heading, also, cells: held, distinct: [...counts.values()] };
}

export interface ValueFit {
  /** Part of the cells that can be read, 0 to 1. */
  readonly read: number;
  readonly unread: number;
  /** Part of the bare numbers that lie where this column's usually do. */
  readonly usual: number;
  readonly unit: ShopUnit;
  /** Whether the values alone settle the unit, it is open between several, or nobody asked. */
  readonly settled: 'stated' | 'ours' | 'guessed' | 'open';
  /** Units that the values fit, where the unit is open. */
  readonly open: readonly ShopUnit[];
  /** The unit that the values fit where the heading says another. */
  readonly against: ShopUnit | undefined;
  /** Another unit that most of what cannot be read in this one fits. */
  readonly mixedWith: ShopUnit | undefined;
}

/**
 * Where values of a column usually lie, in our unit, where what is accepted reaches so far that two units fit. *Common practice, no
 * source.* Nothing is refused by it.
 */
const USUAL: Readonly<Record<string, readonly [number, number]>> = {
  'Stock.length': [7, 17],
  'Stock.balance': [3, 8],
  'Stock.cap': [0.05, 0.5],
  'Stock.massSpread': [0.5, 8],
  'Clubs.length': [24, 50],
  'Clubs.oldBalance': [3, 8],
  'Clubs.oldCap': [0.05, 0.5],
  'Clubs.mass': [230, 620],
  'Clubs.bareMass': [200, 560],
  'Clubs.buttWeight': [2, 80],
  'Clubs.plug': [2, 60],
  'Clubs.lengthChange': [-3, 3],
  'Tape.strip': [0.5, 3],
  'Tape.weighedStrip': [0.4, 6],
  'Tape.weighedLength': [4, 40],
  'Weights.position': [0, 8],
  'Weights.step': [0.4, 10],
  'Jobs.discount': [1, 100],
  'Jobs.gripDiscount': [1, 100],
  'Jobs.deposit': [1, 100],
  'Taxes.percent': [1, 40],
};

/** A unit fits where this part of the bare numbers is usual in it. */
const FITS = 0.85;
/** Below this part, the numbers do not fit the unit that the heading says. */
const DOES_NOT_FIT = 0.5;

/** How well a shop's column fits one of ours; `stated` is the unit of its heading. */
export function valueFit(table: string, column: Column, theirs: ShopColumn, stated: ShopUnit | undefined): ValueFit {
  const { numbers, typed } = bareNumbers(column, theirs);
  const units = unitsOf(column);
  const choice = units.length > 1 ? unitBy(table, column, numbers, typed, units, stated) : AS_OURS;
  const unread = unreadOf(column, choice.unit, theirs.distinct);
  const all = theirs.distinct.reduce((sum, [, count]) => sum + count, 0);
  return {
    ...choice,
    unread,
    read: all === 0 ? 0 : 1 - unread / all,
    usual: numbers.length === 0 ? 1 : partWithin(column, choice.unit, numbers, usualOf(table, column)),
    mixedWith: unread > 0 && units.length > 1 ? mixedWith(column, choice.unit, numbers, units) : undefined,
  };
}

type Choice = Pick<ValueFit, 'unit' | 'settled' | 'open' | 'against'>;

const AS_OURS: Choice = { unit: null, settled: 'ours', open: [], against: undefined };

function unreadOf(column: Column, unit: ShopUnit, distinct: ShopColumn['distinct']): number {
  return distinct.reduce((sum, [cell, count]) => sum + (reads(column, unit, cell) ? 0 : count), 0);
}

interface Bare {
  /** Numbers without a unit of their own, and how often each stands there. */
  readonly numbers: readonly (readonly [number, number])[];
  /** The unit that most of the others name, where they are more. */
  readonly typed: ShopUnit | undefined;
}

function bareNumbers(column: Column, { distinct }: ShopColumn): Bare {
  const numbers: (readonly [number, number])[] = [];
  const typed = new Map<ShopUnit, number>();
  let bare = 0;
  if (unitsOf(column).length === 1) return { numbers, typed: undefined };
  for (const [cell, count] of distinct) {
    const read = typeof cell === 'string' ? readQuantity(cell) : undefined;
    const value = typeof cell === 'number' ? cell : read?.unit === null && read.tail === '' ? read.value : undefined;
    // a blank of a range may be a 0
    if (value !== undefined && value !== 0) {
      numbers.push([value, count]);
      bare += count;
    } else if (read?.unit && read.unit !== '%' && suits(column, read.unit)) {
      typed.set(read.unit, (typed.get(read.unit) ?? 0) + count);
    }
  }
  const [most] = [...typed].sort((a, b) => b[1] - a[1]);
  return { numbers, typed: most && most[1] > bare ? most[0] : undefined };
}

function unitBy(
  table: string,
  column: Column,
  numbers: Bare['numbers'],
  typed: ShopUnit | undefined,
  units: readonly ShopUnit[],
  stated: ShopUnit | undefined,
): Choice {
  if (stated === undefined && typed !== undefined) return { ...AS_OURS, unit: typed, settled: 'stated' };
  const [ours = null] = units;
  if (numbers.length === 0) return stated === undefined ? AS_OURS : { ...AS_OURS, unit: stated, settled: 'stated' };
  const usual = new Map(units.map((unit) => [unit, partWithin(column, unit, numbers, usualOf(table, column))]));
  const legal = (unit: ShopUnit): number => partWithin(column, unit, numbers, [column.low, column.high]);
  const fitting = units.filter((unit) => (usual.get(unit) ?? 0) >= FITS);
  if (stated !== undefined) {
    const wrong = legal(stated) < DOES_NOT_FIT && !fitting.includes(stated);
    return { ...AS_OURS, unit: stated, settled: 'stated', against: wrong ? fitting[0] : undefined };
  }
  const asUsual = fitting.length > 0 ? fitting : units.filter((unit) => legal(unit) >= FITS).slice(0, 1);
  const [first] = asUsual;
  if (first === undefined || (asUsual.length === 1 && first === ours)) return AS_OURS;
  const unit = first === ours ? null : first;
  if (asUsual.length === 1) return { ...AS_OURS, unit, settled: 'guessed' };
  return { ...AS_OURS, unit, settled: 'open', open: asUsual };
}

function usualOf(table: string, column: Column): readonly [number | undefined, number | undefined] {
  return USUAL[`${table}.${column.key}`] ?? [column.low, column.high];
}

function partWithin(
  column: Column,
  unit: ShopUnit,
  numbers: Bare['numbers'],
  [low = -Infinity, high = Infinity]: readonly [number | undefined, number | undefined],
): number {
  let [within, all] = [0, 0];
  for (const [value, count] of numbers) {
    // a size written by its digits is in no unit at all, but reads as ours
    const ours = codedInches(column, unit, value) ?? toOurs(column, unit, value);
    all += count;
    if (ours >= low && ours <= high) within += count;
  }
  return all === 0 ? 0 : within / all;
}

/** So many cells in another unit are no slip. */
const LEAST_MIXED = 2;

function mixedWith(
  column: Column,
  unit: ShopUnit,
  numbers: Bare['numbers'],
  units: readonly ShopUnit[],
): ShopUnit | undefined {
  const odd = numbers.filter(([value]) => !reads(column, unit, value));
  const count = odd.reduce((sum, [, each]) => sum + each, 0);
  const all = numbers.reduce((sum, [, each]) => sum + each, 0);
  if (count < LEAST_MIXED || count === all) return undefined;
  return units.find((other) => other !== unit && partWithin(column, other, odd, [column.low, column.high]) >= FITS);
}

/** Numbers that accept everything tell nothing; a narrow range tells much: its ends' ratio, on a scale that a ratio of 40 ends. */
const TELLS_NOTHING = Math.log(40);

/** How much it says that the values can be read as this column, 0 to 1: readings and cores are like nothing else. */
export function tellingOf(column: Column, theirs: ShopColumn): number {
  switch (column.kind) {
    case 'choice':
      return 0.9;
    case 'reading': {
      if (areCodes(theirs)) return 0;
      const words = theirs.cells.filter((cell) => typeof cell === 'string').length;
      // one that nobody names was measured sooner than wanted
      const tells = column.key === 'target' ? 0.9 : 0.95;
      return theirs.cells.length === 0 ? 0 : (tells * words) / theirs.cells.length;
    }
    case 'date':
      return 0.4;
    case 'yesNo':
      return 0.4;
    case 'money':
    case 'count':
      return 0.1;
    case 'text':
      return 0.02;
    case 'number': {
      const { low = 0, high = Infinity } = column;
      return low <= 0 ? 0.05 : Math.max(0.05, 1 - Math.log(high / low) / TELLS_NOTHING);
    }
  }
}

/** Letters with whole numbers, of which some stand again and again: B7 may be a bag as well as a reading. */
function areCodes({ cells, distinct }: ShopColumn): boolean {
  return distinct.length < cells.length && !cells.some((cell) => /\d[.,]\d/.test(String(cell)));
}
