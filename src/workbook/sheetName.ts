import { sameName } from './shared/address';

const MOST = 31;

/**
 * A sheet name for a plan that Excel accepts: at most 31 characters, none of `[ ] : * ? / \`, no apostrophe at either end, and
 * not one of `taken`.
 *
 * @example planSheetName('12/7', []) //=> 'Plan 12-7'
 */
export function planSheetName(what: string, taken: readonly string[]): string {
  return pageSheetName('Plan', what, taken);
}

/** The same for a page of another kind. @example pageSheetName('Compare', '12/7', ['compare 12-7']) //=> 'Compare 12-7 (2)' */
export function pageSheetName(kind: string, what: string, taken: readonly string[]): string {
  const clean = `${kind} ${what}`
    // Control characters are refused as well.
    .replace(/[[\]:*?/\\\u0000-\u001f]/g, '-')
    .replace(/\s+/g, ' ');
  for (let number = 1; ; number += 1) {
    const tail = number === 1 ? '' : ` (${number})`;
    const name = `${cut(clean, MOST - tail.length)}${tail}`;
    if (!taken.some((other) => sameName(other, name))) return name;
  }
}

function cut(text: string, most: number): string {
  let short = text.slice(0, most);
  // Half a character is worse than one less.
  if (/[\uD800-\uDBFF]$/.test(short)) short = short.slice(0, -1);
  return short.replace(/^[\s']+|[\s']+$/g, '');
}
