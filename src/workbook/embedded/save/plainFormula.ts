/** Which formulas other programs calculate as well. */

/**
 * Functions of the open standard for spreadsheet formulas (ECMA-376 Part 1, 18.17.7, and OpenFormula) that a workshop's sheet may
 * hold. One that is not here is no error: its value goes into the copy.
 */
const KNOWN = new Set(
  (
    'ABS ACOS AND ASIN ATAN ATAN2 AVEDEV AVERAGE AVERAGEA AVERAGEIF AVERAGEIFS CEILING CHAR CHOOSE CLEAN CODE COLUMN COLUMNS ' +
    'CONCATENATE CORREL COS COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS DATE DATEVALUE DAY DAYS360 DEGREES DEVSQ EDATE EOMONTH ' +
    'ERROR.TYPE EVEN EXACT EXP FALSE FIND FIXED FLOOR FORECAST FREQUENCY GEOMEAN HLOOKUP HOUR IF IFERROR INDEX INT INTERCEPT ' +
    'ISBLANK ISERR ISERROR ISEVEN ISLOGICAL ISNA ISNONTEXT ISNUMBER ISODD ISTEXT LARGE LEFT LEN LINEST LN LOG LOG10 LOOKUP ' +
    'LOWER MATCH MAX MAXA MEDIAN MID MIN MINA MINUTE MOD MODE MONTH MROUND N NA NETWORKDAYS NOT NOW ODD OR PERCENTILE PI POWER ' +
    'PRODUCT PROPER QUARTILE QUOTIENT RADIANS RANK REPLACE REPT RIGHT ROUND ROUNDDOWN ROUNDUP ROW ROWS RSQ SEARCH SECOND SIGN ' +
    'SIN SLOPE SMALL SQRT STDEV STDEVP SUBSTITUTE SUBTOTAL SUM SUMIF SUMIFS SUMPRODUCT SUMSQ T TAN TEXT TIME TIMEVALUE TODAY ' +
    'TRANSPOSE TREND TRIM TRUE TRUNC UPPER VALUE VAR VARP VLOOKUP WEEKDAY WEEKNUM WORKDAY YEAR'
  ).split(' '),
);

/** What a formula may name. */
export interface Namable {
  readonly sheets: readonly string[];
  readonly names: readonly string[];
}

/**
 * The formula without its `=`, or null where another program may not understand it: a function beyond the standard's, one of ours, an
 * array, a reference to a table or to another workbook.
 *
 * @example plainFormula('=SUM(B2:B9)', { sheets: [], names: [] }) //=> 'SUM(B2:B9)'
 */
export function plainFormula(formula: string, known: Namable): string | null {
  if (!formula.startsWith('=')) return null;
  const text = formula.slice(1);
  // Texts, and sheets in quotes, may hold anything.
  const bare = text.replace(/"(?:[^"]|"")*"/g, '""').replace(/'((?:[^']|'')+)'!/g, (_, name: string) => {
    return hasFolded(known.sheets, name.replaceAll("''", "'")) ? '' : '[';
  });
  if (/[[\]{}#@'\\]/.test(bare)) return null;
  const words = bare.matchAll(/\$?[\p{L}_][\p{L}\p{N}_.$]*\s*[(!]?/gu);
  return [...words].every(([word]) => isKnown(word, known)) ? text : null;
}

function isKnown(word: string, { sheets, names }: Namable): boolean {
  const name = word.replace(/\s*[(!]$/, '');
  if (word.endsWith('(')) return KNOWN.has(name.toUpperCase());
  if (word.endsWith('!')) return hasFolded(sheets, name);
  // A cell, a column, or the exponent of a number such as 1E5.
  if (/^\$?[A-Z]{1,3}(\$?\d+)?$/i.test(name) || /^E\d*$/i.test(name)) return true;
  return /^(TRUE|FALSE)$/i.test(name) || hasFolded(names, name.trim());
}

function hasFolded(all: readonly string[], wanted: string): boolean {
  return all.some((name) => name.toLowerCase() === wanted.toLowerCase());
}
