/** What is wrong with a table of ours, told by the list of the shop's own that stands for it. */
import type { Issue } from '../core/index';
import { calledBy, type Called } from './records';

/** Lists by the table of ours that each stands for; tables of ours are not among them. */
export type OwnLists = ReadonlyMap<string, Called>;

const NONE: OwnLists = new Map();

/** @param headers rows of headings as tables were handed on, by the table's name */
export function ownLists(headers: Readonly<Record<string, readonly unknown[] | undefined>>): OwnLists {
  const called = Object.entries(headers).flatMap(([table, row]) => {
    const list = row && calledBy(row);
    return list ? [[table, list] as const] : [];
  });
  return called.length > 0 ? new Map(called) : NONE;
}

/** `Price of FERN-M in Stock`, `Work in Rates`, `Fitting a grip in Rates`. */
const IN_TABLE = /^(?:(\S[^,]*?) of )?(.+) in (\w+)$/s;

/** Under which of our headings a row of a table is known. */
export const ROWS_BY: Readonly<Record<string, string>> = { Rates: 'Work', Stock: 'Item', Weights: 'Way' };

/** Which table an issue is about whose field names none. */
const ABOUT: Partial<Readonly<Record<Issue['code'], string>>> = { unknownItem: 'Stock', unknownWay: 'Weights' };

/** The issue with the names that the shop has for its list and its headings, where a list stands for the table that it is about. */
export function inOwnNames(issue: Issue, lists: OwnLists): Issue {
  if (lists.size === 0) return issue;
  const { code, field, expected } = issue;
  const about = lists.get(ABOUT[code] ?? '');
  if (about) return { ...issue, list: quoted(about.list) };
  const whole = code === 'noRows' ? lists.get(field) : undefined;
  const told: Issue = {
    ...issue,
    field: whole ? quoted(whole.list) : fieldIn(field, lists),
    ...(expected !== undefined && { expected: tablesIn(expected, lists) }),
  };
  return told;
}

function fieldIn(field: string, lists: OwnLists): string {
  const [, column, what = '', table = ''] = IN_TABLE.exec(field) ?? [];
  const called = lists.get(table);
  if (!called) return field;
  const under = heading(called, column ?? what) ?? (column ? undefined : heading(called, ROWS_BY[table] ?? ''));
  const place = `${column ? `${column} of ` : ''}${what} in ${quoted(called.list)}`;
  return under === undefined ? place : `${place}, under ${quoted(under)},`;
}

/** The shop's heading over a column of ours, with or without its unit; undefined where it is ours. */
function heading({ headings }: Called, ours: string): string | undefined {
  for (const [header, theirs] of headings) if (header === ours || header.startsWith(`${ours} (`)) return theirs;
  return undefined;
}

/** `named as in Clubs`: other sentences name the table alone. */
function tablesIn(text: string, lists: OwnLists): string {
  return text.replace(/\bin (\w+)/g, (whole, table: string) => {
    const called = lists.get(table);
    return called ? `in ${quoted(called.list)}` : whole;
  });
}

export function quoted(name: string): string {
  return `“${name}”`;
}
