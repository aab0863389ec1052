/** Days as a workbook counts them: whole days since 1899-12-30, without a time and without a zone. */

const DAY_MS = 86_400_000;
/** 1970-01-01 in a workbook. */
const EPOCH = 25569;

/** The day that a clock on the wall shows. */
export function dayOf(now: Date): number {
  return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY_MS + EPOCH;
}

/** Day so many months later; where that month is shorter, its last day. @example monthsLater(46053, 1) //=> 46081 */
export function monthsLater(day: number, months: number): number {
  const from = new Date((Math.floor(day) - EPOCH) * DAY_MS);
  const year = from.getUTCFullYear();
  const month = from.getUTCMonth() + months;
  const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  return Date.UTC(year, month, Math.min(from.getUTCDate(), last)) / DAY_MS + EPOCH;
}

/** The day that a text names as `2026-05-15`; undefined where it names none, such as the 30th of February. */
export function readDay(text: string): number | undefined {
  const found = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim());
  if (!found) return undefined;
  const [year = 0, month = 0, date = 0] = found.slice(1).map(Number);
  const day = Date.UTC(year, month - 1, date) / DAY_MS + EPOCH;
  const back = new Date((day - EPOCH) * DAY_MS);
  return year >= 1900 && back.getUTCMonth() === month - 1 && back.getUTCDate() === date ? day : undefined;
}

/** Monday of the week of a day; weeks begin on Monday (ISO 8601). @example mondayOf(46000) //=> 45999, since day 46000 is Tuesday 9 December 2025 */
export function mondayOf(day: number): number {
  const whole = Math.floor(day);
  // Day 2 of a workbook, 1 January 1900, was a Monday.
  return whole - ((((whole - 2) % 7) + 7) % 7);
}
