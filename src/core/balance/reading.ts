/** The balance scale's reading, a letter and a number, and the points behind it. */
import { SCALE_LETTERS } from '../constants';
import { fail, ok, type Result } from '../result';

const READING = /^([A-G])\s*(\d)(?:[.,](\d+))?$/i;

/**
 * Points above A0 of a reading.
 *
 * Formula: ten points a letter from A0, plus the number. Source: *practice*.
 *
 * @param text a letter A to G and a number from 0 up to 10: `D2`, `d3`, `D 3.5`, `D3,5`
 * @param field how a refusal names what was read
 * @returns points above A0, or `notReading`
 * @example parseReading('D3') //=> { ok: true, value: 33 }
 */
export function parseReading(text: string, field = 'reading'): Result<number> {
  const match = READING.exec(text.trim());
  if (!match)
    return fail({ code: 'notReading', field, got: text, expected: 'a letter A to G and a number, such as D2.5' });
  const [, letter = '', whole = '', decimals = ''] = match;
  return ok(SCALE_LETTERS.indexOf(letter.toUpperCase()) * 10 + Number(`${whole}.${decimals}`));
}

/**
 * The reading that so many points stand for, rounded first so that a letter is carried over (39.96 is `E0.0`).
 *
 * @param points points above A0
 * @param decimals digits after the point, one by default
 * @returns the reading, or `offScale` with the points where no letter A to G stands for them
 * @example formatReading(32.4) //=> { ok: true, value: 'D2.4' }
 */
export function formatReading(points: number, decimals = 1): Result<string> {
  const rounded = roundTo(points, decimals);
  if (!(rounded >= 0 && rounded < SCALE_LETTERS.length * 10)) {
    return fail({ code: 'offScale', field: 'points', got: points, expected: 'A0 to G9.9', detail: rounded });
  }
  const letter = Math.floor(rounded / 10);
  return ok(`${SCALE_LETTERS[letter]}${(rounded - letter * 10).toFixed(decimals)}`);
}

/**
 * Rounds half away from zero at so many decimals. 1.005 is 1.00499… in binary: the least step upward gives such a half back, so that
 * it rounds as it is written.
 */
export function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const rounded = Math.round(Math.abs(value) * scale * (1 + Number.EPSILON)) / scale;
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}
