/** Formulas as a workbook file writes them, made into what the embedded spreadsheet calculates. */
import { addressOf, sameName, sheetInFormula } from '../../shared/address';
import { shifted } from './shifted';

/** A table of the file, as references to it want it. */
export interface NamedTable {
  readonly name: string;
  readonly sheet: string;
  /** Where its row of headings is. */
  readonly row: number;
  readonly column: number;
  /** Rows below the headings, without a row of totals. */
  readonly rows: number;
  readonly totals: boolean;
  readonly columns: readonly string[];
}

/** Where a formula stands, and what it may point at. */
export interface FormulaPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly tables: readonly NamedTable[];
}

/* Prefixes of functions that came after the first edition of the format, and of the names in LET and LAMBDA. */
const PREFIX = /\b_xl(?:fn|ws|pm)\./gi;
/* Another workbook's cells, functions of other add-ins, the reach of a spilled formula, the marks of a single cell. */
const BEYOND = /\[\d+\]|_xll\.|_xlfn\.(?:ANCHORARRAY|SINGLE)\(|_xludf\./i;

/**
 * The formula with its `=`, or null where it names what only the program that wrote it can look up.
 *
 * @example enteredFormula('_xlfn.XLOOKUP(A1,Stock[Item],Stock[Price])', place) //=> '=XLOOKUP(A1,Stock!$A$2:$A$9,Stock!$F$2:$F$9)'
 */
export function enteredFormula(text: string, place: FormulaPlace): string | null {
  if (BEYOND.test(text.replace(/"(?:[^"]|"")*"/g, '""'))) return null;
  const plain = withoutTables(text.replace(PREFIX, ''), place);
  return plain === null ? null : `=${plain}`;
}

/** What a formula shared by several cells says in one of them. */
export function sharedFormula(text: string, down: number, across: number): string | null {
  return shifted(text, down, across);
}

/** Each reference to a table made into cells; null where one of them is not understood. */
function withoutTables(text: string, place: FormulaPlace): string | null {
  if (!text.includes('[')) return text;
  let made = '';
  let at = 0;
  while (at < text.length) {
    const rest = text.slice(at);
    const skipped = /^(?:"(?:[^"]|"")*"|'(?:[^']|'')*'!)/.exec(rest)?.[0];
    const named = skipped === undefined ? /^[\p{L}_\\][\p{L}\p{N}_.\\]*/u.exec(rest)?.[0] : undefined;
    const bare = skipped ?? named;
    if (named !== undefined && rest[named.length] === '[') {
      const inside = insideBrackets(rest, named.length);
      const cells = inside === null ? null : cellsOf(named, inside, place);
      if (inside === null || cells === null) return null;
      made += cells;
      at += named.length + inside.length + 2;
    } else if (bare === undefined && rest.startsWith('[')) return null;
    else {
      made += bare ?? rest[0] ?? '';
      at += bare?.length ?? 1;
    }
  }
  return made;
}

/** What stands between a bracket and the one that closes it; an apostrophe takes the next letter as it is. */
function insideBrackets(text: string, from: number): string | null {
  let depth = 0;
  for (let at = from; at < text.length; at++) {
    if (text[at] === "'") at++;
    else if (text[at] === '[') depth++;
    else if (text[at] === ']' && --depth === 0) return text.slice(from + 1, at);
  }
  return null;
}

interface Asked {
  readonly items: readonly string[];
  /** First and last heading; null for all columns. */
  readonly columns: readonly [string, string] | null;
}

function cellsOf(name: string, inside: string, place: FormulaPlace): string | null {
  const table = place.tables.find((each) => sameName(each.name, name));
  const asked = table && askedOf(inside);
  if (!table || !asked) return null;
  const rows = rowsOf(table, asked.items, place);
  const [first, last] = (asked.columns ?? []).map((heading) =>
    table.columns.findIndex((column) => sameName(column.trim(), heading.trim())),
  );
  if (!rows || first === -1 || last === -1) return null;
  const [from, to] = asked.columns ? [first ?? 0, last ?? 0] : [0, table.columns.length - 1];
  const left = table.column + Math.min(from, to);
  const block = { row: rows.row, column: left, rows: rows.rows, columns: Math.abs(to - from) + 1 };
  const sheet = sameName(table.sheet, place.sheet) ? '' : `${sheetInFormula(table.sheet)}!`;
  return `${sheet}${addressOf(block, '$')}`;
}

/** What a reference asks for: `Item`, `[#All],[Item]`, `@[From]:[To]`. */
function askedOf(inside: string): Asked | null {
  const thisRow = inside.startsWith('@');
  const text = (thisRow ? inside.slice(1) : inside).trim();
  const items = thisRow ? ['#this row'] : [];
  if (text === '') return { items, columns: null };
  if (!text.startsWith('[')) {
    if (text.startsWith('#')) return { items: [...items, text.toLowerCase()], columns: null };
    return { items, columns: [unescaped(text), unescaped(text)] };
  }
  const words: string[] = [];
  const between: string[] = [];
  for (let at = 0; at < text.length;) {
    const word = insideBrackets(text, at);
    if (word === null) return null;
    words.push(word);
    const gap = /^\s*[,:]?\s*/.exec(text.slice(at + word.length + 2))?.[0] ?? '';
    between.push(gap.trim());
    at += word.length + 2 + gap.length;
    if (at < text.length && text[at] !== '[') return null;
  }
  const named = words.filter((word) => !word.startsWith('#'));
  const all = [...items, ...words.filter((word) => word.startsWith('#')).map((word) => word.toLowerCase())];
  const [first, last = first] = named.map(unescaped);
  // Several columns side by side are one range with a colon; with a comma they are two, which is not followed here.
  if (named.length > 2 || (named.length === 2 && !between.includes(':'))) return null;
  return { items: all, columns: first === undefined || last === undefined ? null : [first, last] };
}

function unescaped(heading: string): string {
  return heading.replace(/'(.)/gs, '$1');
}

function rowsOf(
  table: NamedTable,
  items: readonly string[],
  place: FormulaPlace,
): { readonly row: number; readonly rows: number } | null {
  const body = { row: table.row + 1, rows: table.rows };
  const totals = table.totals ? 1 : 0;
  switch ([...items].sort().join(' ')) {
    case '':
    case '#data':
      return body;
    case '#all':
      return { row: table.row, rows: 1 + table.rows + totals };
    case '#headers':
      return { row: table.row, rows: 1 };
    case '#totals':
      return totals > 0 ? { row: table.row + 1 + table.rows, rows: 1 } : null;
    case '#data #headers':
      return { row: table.row, rows: 1 + table.rows };
    case '#data #totals':
      return { row: body.row, rows: body.rows + totals };
    case '#this row': {
      const inBody = place.row >= body.row && place.row < body.row + body.rows;
      return inBody ? { row: place.row, rows: 1 } : null;
    }
    default:
      return null;
  }
}
