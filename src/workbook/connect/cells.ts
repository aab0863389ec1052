/** One cell of a shop's, as one of our columns would hold it, and the other way round. */
import { cellNumber, errorText, isBlank, readCell } from '../records';
import type { Column } from '../columns';
import type { Cell, Seen } from '../port';
import { dayOfText } from './shopDays';
import { ourWord } from './shopWords';
import type { ShopUnit } from './types';
import { fromOurs, ourUnit, readQuantity, suits, toOurs, UNSEEN, type Quantity } from './units';

/**
 * A shop's cell as our column would hold it. What cannot be converted stays as it is, so that whoever reads it names what really
 * stands there.
 *
 * @param unit the unit that bare numbers of the column are in; a cell that says its own goes by that
 */
export function ourCell(column: Column, unit: ShopUnit, cell: Seen): Seen {
  if (cell === null || typeof cell === 'boolean' || typeof cell === 'object') return cell;
  if (typeof cell === 'number') return isMeasured(column) ? numberCell(column, unit, cell) : cell;
  const text = cell.replace(UNSEEN, '').replaceAll('\u00a0', ' ').trim();
  if (text === '' || errorText(text) !== undefined) return cell;
  switch (column.kind) {
    case 'text':
    case 'reading':
      return cell;
    case 'yesNo':
      return text === '✓' || text === '✔' ? 'Yes' : cell;
    case 'choice':
      return ourWord(column, text) ?? cell;
    case 'date': {
      const day = dayOfText(text);
      return typeof day === 'number' ? day : cell;
    }
    case 'money':
      return moneyCell(column, text) ?? cell;
    case 'count':
      return countCell(text) ?? cell;
    case 'number':
      return quantityCell(column, unit, text) ?? cell;
  }
}

function isMeasured(column: Column): boolean {
  return column.kind === 'number';
}

function numberCell(column: Column, unit: ShopUnit, value: number): number {
  return codedInches(column, unit, value) ?? toOurs(column, unit, value);
}

/** Whether the column holds bores and butts, which the trade calls by the digits after the point: 58 or 580 for .580 in. */
function isBore({ unit, low, high }: Column): boolean {
  return unit === 'in' && low !== undefined && high !== undefined && low >= 0.45 && high <= 0.75;
}

/**
 * Inches of a size written by its digits: no bore measures 58 or 580 inches, so it can mean one thing only. *Common practice, no
 * source.*
 */
export function codedInches(column: Column, unit: ShopUnit, value: number): number | undefined {
  if (!isBore(column) || (unit !== null && unit !== 'in') || !Number.isInteger(value)) return undefined;
  return value >= 45 && value <= 75 ? value / 100 : value >= 450 && value <= 750 ? value / 1000 : undefined;
}

/** What stands behind a bore for its profile: it says nothing about the size. */
const PROFILE_TAIL = /^(r|rd|rnd|round|rib|ribbed|flat|x)\.?$/i;

function quantityCell(column: Column, unit: ShopUnit, text: string): number | undefined {
  const read = readQuantity(text);
  if (!read) return undefined;
  const named = typedUnit(column, read);
  if (named !== undefined) return toOurs(column, named, read.value);
  if (read.tail === '' && read.unit === null) return numberCell(column, unit, read.value);
  return isBore(column) && PROFILE_TAIL.test(read.tail) ? numberCell(column, unit, read.value) : undefined;
}

/** The unit typed in a cell, `null` where it is ours; undefined where none is, or one that the column cannot be in. */
function typedUnit(column: Column, read: Quantity): ShopUnit | undefined {
  const ours = ourUnit(column);
  if (read.unit === null) return read.tail !== '' && read.tail.toLowerCase() === ours ? null : undefined;
  if (read.unit === ours) return null;
  return read.unit !== '%' && suits(column, read.unit) ? read.unit : undefined;
}

const PIECES = /^([+−-]?\d+)\s*(pcs?|pces?|pieces?|ea|each|units?|stk|x)\.?$/i;

function countCell(text: string): number | undefined {
  const found = PIECES.exec(text);
  return found ? cellNumber(found[1]) : undefined;
}

/** A currency's sign or code before or after an amount. */
const CURRENCY = /^(?:\p{Sc}|[A-Z]{3}\s)?\s*(.*?)\s*(?:\p{Sc}|\s[A-Z]{3})?$/u;

function moneyCell(column: Column, text: string): number | undefined {
  const amount = CURRENCY.exec(text)?.[1];
  if (!amount || amount === text) return undefined;
  const read = readCell(column, amount);
  return read.ok && typeof read.value === 'number' ? read.value : undefined;
}

/**
 * Whether a shop's cell can be read as our column. Text where a day should stand counts only where it can be one day alone.
 */
export function reads(column: Column, unit: ShopUnit, cell: Seen): boolean {
  const ours = ourCell(column, unit, cell);
  if (column.kind === 'date') return isDay(ours);
  // text takes anything: a date or a flag in it is no name of a thing, but nobody can tell
  return readCell(column, ours).ok;
}

/** Days from 1990 on, before 2100: a smaller number is a count. */
const DAYS = { low: 32874, high: 73050 };

function isDay(cell: Seen): boolean {
  return isBlank(cell) || (typeof cell === 'number' && cell >= DAYS.low && cell <= DAYS.high);
}

/**
 * A value of ours as the shop's column would hold it.
 *
 * @param value ours
 * @param before what stands in the shop's cell: it is kept as it is where it means the same, and what it was written like is kept
 *   where it does not
 */
export function shopCell(column: Column, unit: ShopUnit, value: Cell, before: Seen = null): Cell {
  if (before !== null && typeof before !== 'object' && means(column, unit, before, value)) return before;
  if (typeof value !== 'number' || !isMeasured(column)) return value;
  return asWritten(column, unit, value, before) ?? fromOurs(column, unit, value);
}

/** Digits that two readings of one cell may differ by. */
const SAME_WITHIN = 1e-9;

function means(column: Column, unit: ShopUnit, cell: Cell, value: Cell): boolean {
  const [old, now] = [readCell(column, ourCell(column, unit, cell)), readCell(column, value)];
  if (!old.ok || !now.ok) return cell === value;
  if (typeof old.value === 'number' && typeof now.value === 'number') {
    return Math.abs(old.value - now.value) <= SAME_WITHIN * Math.max(1e-3, Math.abs(now.value));
  }
  return old.value === now.value;
}

/** The value with its unit behind it, or by its digits, where the cell was written so. */
function asWritten(column: Column, unit: ShopUnit, value: number, before: Seen): Cell | undefined {
  if (typeof before === 'number') return codeLike(column, unit, value, before);
  if (typeof before !== 'string') return undefined;
  const read = readQuantity(before);
  const named = read && typedUnit(column, read);
  if (!read || named === undefined) return undefined;
  const typed = /\s*[^\d\s.,/¼½¾⅛⅜⅝⅞−+-].*$/.exec(before.trimEnd())?.[0] ?? '';
  return `${fromOurs(column, named, value)}${typed}`;
}

function codeLike(column: Column, unit: ShopUnit, value: number, before: number): number | undefined {
  if (codedInches(column, unit, before) === undefined) return undefined;
  const code = Math.round(value * 1e6) / (before < 100 ? 1e4 : 1e3);
  return Number.isInteger(code) ? code : undefined;
}
