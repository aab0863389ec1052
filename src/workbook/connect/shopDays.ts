/** Days that a shop wrote as text. */
import { readDay } from '../days';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
/** `15/05/2026`, `15.5.26`, `5-15-2026` */
const THREE_NUMBERS = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})\.?$/;
/** `15 May 2026`, `15-May-26` */
const DAY_NAME_YEAR = /^(\d{1,2})(?:st|nd|rd|th)?[\s./-]*([a-z]{3,9})\.?[\s,./-]*(\d{4}|\d{2})$/;
/** `May 15, 2026` */
const NAME_DAY_YEAR = /^([a-z]{3,9})\.?\s*(\d{1,2})(?:st|nd|rd|th)?[\s,]+(\d{4})$/;
/** `2026/05/15`, `2026.5.15` */
const YEAR_FIRST = /^(\d{4})[/.-](\d{1,2})[/.-](\d{1,2})$/;

/**
 * The day that a text can only be; `unclear` where day and month could change places, undefined where it is no day.
 *
 * Numbers with points between them are day, month, year wherever they are written so.
 *
 * @example dayOfText('15/5/2026') //=> 46157
 * @example dayOfText('3/4/2026') //=> 'unclear'
 */
export function dayOfText(text: string): number | 'unclear' | undefined {
  const plain = text.trim().toLowerCase();
  const [, year, month, date] = YEAR_FIRST.exec(plain) ?? [];
  if (year && month && date) return day(year, Number(month), Number(date));
  const numbers = THREE_NUMBERS.exec(plain);
  if (numbers) return ofNumbers(numbers);
  const [, dayFirst, name = '', yearLast] = DAY_NAME_YEAR.exec(plain) ?? [];
  if (dayFirst && yearLast) return day(yearLast, monthNamed(name), Number(dayFirst));
  const [, nameFirst = '', dateNext, yearNext] = NAME_DAY_YEAR.exec(plain) ?? [];
  return dateNext && yearNext ? day(yearNext, monthNamed(nameFirst), Number(dateNext)) : undefined;
}

function ofNumbers(found: RegExpExecArray): number | 'unclear' | undefined {
  const [, one = '', mark, other = '', year = ''] = found;
  const [first, second] = [Number(one), Number(other)];
  if (mark === '.' || first > 12 || first === second) return day(year, second, first);
  return second > 12 ? day(year, first, second) : 'unclear';
}

function monthNamed(name: string): number {
  const at = MONTHS.indexOf(name.slice(0, 3));
  const known =
    at >= 0 &&
    'january february march april may june july august september october november december sept'
      .split(' ')
      .some((each) => each.startsWith(name));
  return known ? at + 1 : 0;
}

function day(year: string, month: number, date: number): number | undefined {
  // a year of two digits is of this century: no job is older
  const full = year.length === 2 ? `20${year}` : year;
  return readDay(`${full}-${month}-${date}`);
}
