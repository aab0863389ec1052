/**
 * Text that must stay text.
 *
 * Excel reads what is written into a cell as if an American had typed it: `=1+1` becomes a formula, `007` the number 7,
 * `3-4` the third of April, `TRUE` a truth value. An apostrophe in front keeps it text; Excel swallows that apostrophe and
 * reading gives the text back as it was (rules of entry: *from memory*; text that begins `= + - @`, tab or return as the
 * start of a formula: common advice against formulas smuggled in through data).
 */

const formulaStart = /^[=+\-@\t\r\n'#＝＋－＠]/;
const truth = /^\s*(true|false)\s*$/i;
const digit = /\p{Nd}/u;
const month = /jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec/i;
const letterFirst = /^\s*\p{L}/u;

/** Whether Excel would take the text for something else; errs on the side of yes. @example wouldChange('007') //=> true */
export function wouldChange(text: string): boolean {
  if (formulaStart.test(text) || /^\s+[=+\-@#]/.test(text) || truth.test(text)) return true;
  return digit.test(text) && (!letterFirst.test(text) || month.test(text));
}

/** Whether the text begins as a formula may, blanks before it or not. @example beginsFormula('3 wood') //=> false */
export function beginsFormula(text: string): boolean {
  return /^(?:[\t\r\n]|\s*[=+\-@＝＋－＠])/.test(text);
}

/** The text as it is written into a cell of Excel. @example asTyped('=x') //=> "'=x" */
export function asTyped(text: string): string {
  return wouldChange(text) ? `'${text}` : text;
}
