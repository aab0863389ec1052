/**
 * What a cell may hand a worksheet function, read as what the function needs; anything else is thrown as a cell error.
 *
 * A blank cell arrives as null on one platform and as 0 on another, and must mean the same on both. So a needed number that is
 * blank is 0 where 0 makes sense and refused where it does not, and an optional one that is 0 or blank takes its default, which is
 * 0 itself where 0 makes sense. Only decimals tell the two apart, since both mean something there. A formula's empty text is a
 * blank that every platform shows as such.
 */
import type { Issue, IssueCode } from '../core/index';
import { parseReading, plainNumber, RANGES } from '../core/index';
import { answer, cellError } from './cellError';

/** What a number may be: one of the core's ranges. */
export interface LegalRange {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

const errorText = /^#(N\/A|[A-Z]+[A-Z_/0]*[!?])$/;
const someReading = 'a letter A to G and a number, such as D2.5';

/**
 * A number within its range; a blank is 0 where the range holds 0, else refused.
 *
 * Takes a number typed as text, with a point or a comma.
 *
 * @example number('3,5', 'gripBalanceInches', { low: 1.5, high: 12, unit: 'in' }) //=> 3.5
 */
export function number(given: unknown, field: string, range: LegalRange): number {
  const value = numberValue(given, field, range) ?? blankOrZero(given, field, range);
  return value >= range.low && value <= range.high ? value : refuse('outOfRange', field, value, rangeText(range));
}

/**
 * A number within its range, or the default where the cell is blank or 0.
 *
 * @example numberOr(null, 4.2, 'gripBalanceInches', { low: 1.5, high: 12, unit: 'in' }) //=> 4.2
 */
export function numberOr(given: unknown, standard: number, field: string, range: LegalRange): number {
  return optionalNumber(given, field, range) ?? standard;
}

/** A number within its range, or undefined where the cell is blank or 0: for a default that follows from other arguments. */
export function optionalNumber(given: unknown, field: string, range: LegalRange): number | undefined {
  const value = numberValue(given, field, range);
  return value === undefined || value === 0 ? undefined : number(value, field, range);
}

/**
 * A length that somebody measured, unchecked, since out of range it may be in another unit, and the core can tell; refused where the
 * cell is blank or 0.
 */
export function measured(given: unknown, field: string, range: LegalRange): number {
  return optionalMeasured(given, field, range) ?? refuse('blank', field, null, rangeText(range));
}

/** The same, or undefined where the cell is blank or 0. */
export function optionalMeasured(given: unknown, field: string, range: LegalRange): number | undefined {
  return numberValue(given, field, range) || undefined;
}

/** A whole number within its range; a blank is 0. */
export function count(given: unknown, field: string, range: LegalRange): number {
  return whole(number(given, field, range), field, range);
}

/** A whole number within its range, or 0 where the cell is blank. */
export function countOrNone(given: unknown, field: string, range: LegalRange): number {
  return whole(numberOr(given, 0, field, range), field, range);
}

/** An amount as it stands in its cell, for the core to read exactly; a blank cell is 0, what was never handed over is none. */
export function amount(given: unknown, field: string): string | number | undefined {
  const value = cellValue(given, field, 'notNumber', 'an amount such as 1234.50');
  return value === undefined && plainValue(onlyCell(given, field)) === null ? 0 : value;
}

/** How many digits to show after the point: a blank is one, and 0 is none where the platform tells them apart. */
export function decimals(given: unknown, field: string): number {
  return numberValue(given, field, RANGES.decimals) === undefined ? 1 : count(given, field, RANGES.decimals);
}

/**
 * Points above A0 of a reading such as D2, or of a number, which is points already; 0 is a blank, since a reading of no points
 * at all is written A0.
 *
 * @example reading('d 3,5', 'reading') //=> 33.5
 */
export function reading(given: unknown, field: string): number {
  const value = cellValue(given, field, 'notReading', someReading);
  if (value === undefined || value === 0) return refuse('blank', field, null, someReading);
  return typeof value === 'number' ? number(value, field, RANGES.points) : answer(parseReading(value, field));
}

/** The text of a cell, or undefined where it is blank or 0, since nothing is called 0. */
export function optionalText(given: unknown, field: string, expected = 'text'): string | undefined {
  const value = cellValue(given, field, 'unknownChoice', expected);
  return value === undefined || value === 0 ? undefined : String(value);
}

/**
 * One of some words, whatever its capitals, as the list spells it; undefined where the cell is blank.
 *
 * @example optionalChoice('putter', 'kind', ['Driver', 'Putter']) //=> 'Putter'
 */
export function optionalChoice<Word extends string>(
  given: unknown,
  field: string,
  words: readonly Word[],
): Word | undefined {
  const expected = words.join(', ');
  const text = optionalText(given, field, expected);
  if (text === undefined) return undefined;
  const found = words.find((each) => each.toLowerCase() === text.toLowerCase());
  return found ?? refuse('unknownChoice', field, text, expected);
}

/** Reduces an argument to the one value it holds, undefined where it is blank. */
function cellValue(given: unknown, field: string, code: IssueCode, expected: string): string | number | undefined {
  const value = plainValue(onlyCell(given, field));
  if (value === null || value === undefined) return undefined;
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  if (typeof value === 'boolean') return refuse(code, field, value, expected);
  // A picture, say, or a record of a data type of its own.
  const text = typeof value === 'object' ? 'a data type' : String(value).trim();
  if (errorText.test(text)) return refuse('cellError', field, text);
  return typeof value === 'string' ? text || undefined : refuse(code, field, text, expected);
}

function numberValue(given: unknown, field: string, range: LegalRange): number | undefined {
  const value = cellValue(given, field, 'notNumber', rangeText(range));
  if (typeof value !== 'string') return value;
  return plainNumber(value) ?? refuse('notNumber', field, value, rangeText(range));
}

/** null may be a blank cell and so counts as 0; what was never handed over, or is a formula's empty text, does not. */
function blankOrZero(given: unknown, field: string, range: LegalRange): number {
  const blankCell = plainValue(onlyCell(given, field)) === null;
  return blankCell && range.low <= 0 && range.high >= 0 ? 0 : refuse('blank', field, null, rangeText(range));
}

/** Some hosts hand over a single cell as a range of one. */
function onlyCell(given: unknown, field: string): unknown {
  if (!Array.isArray(given)) return given;
  const rows = given.map((row: unknown) => (Array.isArray(row) ? (row as unknown[]) : [row]));
  const columns = rows[0]?.length ?? 0;
  if (rows.length === 1 && columns === 1) return rows[0]?.[0];
  return refuse(
    'contradiction',
    field,
    null,
    `one cell is needed, and a range of ${rows.length} × ${columns} was given`,
  );
}

/** A cell with a data type of its own arrives as an object that carries its plain value, an error's being its text. */
export function plainValue(given: unknown): unknown {
  if (typeof given !== 'object' || given === null) return given;
  const { basicValue, code } = given as { basicValue?: unknown; code?: unknown };
  return basicValue ?? code ?? given;
}

function whole(value: number, field: string, range: LegalRange): number {
  return Number.isInteger(value) ? value : refuse('notWhole', field, value, rangeText(range));
}

function rangeText({ low, high, unit }: LegalRange): string {
  return `${low} to ${high} ${unit}`.replace(/-/g, '−');
}

function refuse(code: IssueCode, field: string, got: Issue['got'], expected?: string): never {
  throw cellError({ code, field, got, expected });
}
