/** Exact decimals, and how a cell becomes one. Money is never reckoned in binary floats: 0.1 + 0.2 is 0.3 here. */
import { fail, ok, type Result } from './result';

/** The number `digits × 10^−scale`; `scale` is never below 0. */
export interface Decimal {
  readonly digits: bigint;
  readonly scale: number;
}

/** What may stand in a cell that should hold an amount. */
export type AmountCell = number | string | boolean | null | undefined;

/** Legal ends of an amount, both inclusive. */
export interface AmountLimits {
  readonly low: number;
  readonly high: number;
}

/** Significant digits of a cell's number: a spreadsheet keeps 15, what comes after them is binary noise (IEEE 754 doubles). */
const CELL_DIGITS = 15;

/** Below it every whole number has 15 digits at most. */
const MOST_WHOLE = 1e15;

/** More digits than this are a slip of the keyboard, not an amount. */
const MOST_DIGITS = 30;

const WHOLE = /^\d+$/;
/** One mark; what stands before it may be missing, and so may what stands after. */
const ONE_MARK = /^(?:\d+[.,]\d*|[.,]\d+)$/;
/** One mark before exactly three digits: a decimal mark to one reader, a mark of thousands to another. */
const TWO_READINGS = /^[1-9]\d{0,2}[.,]\d{3}$/;
/** Thousands in groups under one mark, then at most one decimal mark of the other kind. */
const GROUPED = /^[1-9]\d{0,2}(?:(['’ \u00a0\u2009\u202f.,])\d{3})(?:\1\d{3})*(?:(?!\1)[.,]\d*)?$/;

const AN_AMOUNT = 'an amount such as 1234.50, without a currency sign';

/**
 * The exact decimal in a cell.
 *
 * A number counts as the decimal with the fewest digits that the sheet could mean by it, 15 at most: 3.1 is 3.10, and 0.1 + 0.2
 * from a formula is 0.3. Text is read with a point or a comma, with thousands in groups, and with either minus sign; text that two
 * readers would read differently (`1,234`) is refused.
 *
 * @param cell what stands there
 * @param field its name as the reader knows it
 * @param limits what is accepted
 * @returns blank, notNumber, ambiguous or outOfRange where it is no such amount
 * @example readAmount('3,50', 'Price') //=> { digits: 350n, scale: 2 }
 */
export function readAmount(cell: AmountCell, field: string, limits?: AmountLimits): Result<Decimal> {
  if (cell === undefined || cell === null || (typeof cell === 'string' && cell.trim() === '')) {
    return fail({ code: 'blank', field, expected: 'an amount, 0 where there is none' });
  }
  const read = typeof cell === 'number' ? ofNumber(cell) : typeof cell === 'string' ? ofText(cell) : undefined;
  if (read === 'ambiguous') return fail({ code: 'ambiguous', field, got: cell, expected: bothReadings(String(cell)) });
  if (!read) return fail({ code: 'notNumber', field, got: cell, expected: AN_AMOUNT });
  if (limits && !isWithin(read, limits)) {
    return fail({ code: 'outOfRange', field, got: cell, expected: `${limits.low} to ${limits.high}` });
  }
  return ok(read);
}

/** Both numbers that a text may be, written so that each can be only one: `1234.00 or 1.2340`. */
function bothReadings(text: string): string {
  const body = text.trim();
  return `${body.replace(/[.,]/, '')}.00 or ${body.replace(',', '.')}0`;
}

/** A cell's number, by its first 15 significant digits. */
function ofNumber(value: number): Decimal | undefined {
  if (!Number.isFinite(value)) return undefined;
  if (Number.isInteger(value) && Math.abs(value) < MOST_WHOLE) return { digits: BigInt(value), scale: 0 };
  // Of up to 15 digits no two decimals are one double: what is written out is the shortest one that was meant.
  const [whole = '', part = '', ...more] = String(Number(value.toPrecision(CELL_DIGITS))).split(/[.e]/);
  if (more.length === 0 && WHOLE.test(part)) return { digits: BigInt(whole + part), scale: part.length };
  const [mantissa = '0', exponent = '0'] = value.toExponential(CELL_DIGITS - 1).split('e');
  return shortest(BigInt(mantissa.replace('.', '')), CELL_DIGITS - 1 - Number(exponent));
}

function ofText(text: string): Decimal | 'ambiguous' | undefined {
  const trimmed = text.trim();
  const sign = /^[-−]/.test(trimmed) ? -1n : 1n;
  const body = trimmed.replace(/^[-−+]/, '');
  if (body.replace(/\D/g, '').length > MOST_DIGITS) return undefined;
  if (TWO_READINGS.test(body)) return 'ambiguous';
  const plain = plainBody(body);
  if (plain === undefined) return undefined;
  const [whole = '', part = ''] = plain.split('.');
  return shortest(sign * BigInt(whole + part), part.length);
}

/** The same with a point for the decimal mark and nothing between thousands; undefined where it is no number. */
function plainBody(body: string): string | undefined {
  if (WHOLE.test(body)) return body;
  if (ONE_MARK.test(body)) return body.replace(',', '.');
  const mark = GROUPED.exec(body)?.[1];
  return mark === undefined ? undefined : body.replaceAll(mark, '').replace(',', '.');
}

/** Without idle zeros at the end, and with no scale below 0. */
function shortest(digits: bigint, scale: number): Decimal {
  if (digits === 0n) return { digits, scale: 0 };
  let [short, left] = [digits, scale];
  while (left > 0 && short % 10n === 0n) [short, left] = [short / 10n, left - 1];
  return left < 0 ? { digits: short * powerOfTen(-left), scale: 0 } : { digits: short, scale: left };
}

function isWithin(value: Decimal, { low, high }: AmountLimits): boolean {
  const [bottom, top] = [ofNumber(low), ofNumber(high)];
  return (
    bottom !== undefined && top !== undefined && compareDecimals(value, bottom) >= 0 && compareDecimals(value, top) <= 0
  );
}

export function powerOfTen(exponent: number): bigint {
  return 10n ** BigInt(exponent);
}

/** Product, exact. */
export function timesDecimal(one: Decimal, other: Decimal): Decimal {
  return { digits: one.digits * other.digits, scale: one.scale + other.scale };
}

/** Sum, exact. */
export function addDecimals(one: Decimal, other: Decimal): Decimal {
  const scale = Math.max(one.scale, other.scale);
  return shortest(digitsAt(one, scale) + digitsAt(other, scale), scale);
}

/** Below 0, 0 or above 0 as the first is less, equal or more. */
export function compareDecimals(one: Decimal, other: Decimal): number {
  const scale = Math.max(one.scale, other.scale);
  const difference = digitsAt(one, scale) - digitsAt(other, scale);
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** Its digits on a scale that is no smaller than its own. */
export function digitsAt(value: Decimal, scale: number): bigint {
  return value.digits * powerOfTen(scale - value.scale);
}

/**
 * A decimal as text with a point and a hyphen for minus.
 *
 * @param least decimals that are always shown
 * @example decimalText({ digits: 35n, scale: 1 }, 2) //=> '3.50'
 */
export function decimalText(value: Decimal, least = 0): string {
  const scale = Math.max(value.scale, least);
  const digits = digitsAt(value, scale);
  const text = String(digits < 0n ? -digits : digits).padStart(scale + 1, '0');
  const sign = digits < 0n ? '-' : '';
  return scale === 0 ? sign + text : `${sign}${text.slice(0, -scale)}.${text.slice(-scale)}`;
}
