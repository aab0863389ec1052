/** Sentences for what a person should know before a table of the shop's own is taken for one of ours, and for what broke since. */
import type { TableSchema } from '../workbook/columns';
import type { BrokenMatch } from '../workbook/connect/resolve';
import type { ConnectWarning, Likeness, ShopUnit } from '../workbook/connect/types';
import { listed } from './listed';
import { countOf } from './readings';

/** Units by their names. */
const UNIT_WORDS: Readonly<Record<NonNullable<ShopUnit>, string>> = {
  in: 'inches',
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  ft: 'feet',
  yd: 'yards',
  thou: 'thousandths of an inch',
  g: 'grams',
  oz: 'ounces',
  lb: 'pounds',
  kg: 'kilograms',
  part: 'parts of one (0.1 for 10 %)',
};

const OUR_UNITS: Readonly<Record<string, string>> = { ...UNIT_WORDS, '%': 'per cent' };

/** Where the range begins in its sheet, from 0. */
export interface RangeStart {
  readonly row: number;
  readonly column: number;
}

/** What a person should know, and what to do about it. */
export function sayConnectWarning(
  schema: TableSchema,
  { headings }: Pick<Likeness, 'headings'>,
  warning: ConnectWarning,
  start: RangeStart = { row: 0, column: 0 },
): string {
  return said(warning, namesIn(schema, headings, start));
}

/** How rows and columns of the range, and columns of ours, are called. */
interface Names {
  header(key: string): string;
  unit(key: string): string;
  column(position: number): string;
  letters(position: number): string;
  sheetRow(row: number): number;
}

function namesIn(schema: TableSchema, headings: readonly string[], start: RangeStart): Names {
  const letters = (position: number): string => lettersOf(start.column + position);
  return {
    header: (key) => headerOf(schema, key),
    unit: (key) => schema.columns.find((column) => column.key === key)?.unit ?? '',
    column: (position) => headings[position] || `column ${letters(position)}`,
    letters,
    sheetRow: (row) => start.row + row + 1,
  };
}

function headerOf(schema: TableSchema, key: string): string {
  return schema.columns.find((column) => column.key === key)?.header ?? key;
}

/** Letters of a column counted from 0; words may not import those of the workbook. */
function lettersOf(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : lettersOf(Math.floor(column / 26) - 1) + last;
}

function said(warning: ConnectWarning, names: Names): string {
  switch (warning.warning) {
    case 'noHeadings':
      return 'No row looks like headings, so the first one was taken for them. Choose the right one, or put a row of headings above.';
    case 'unitsBelow':
      return `Row ${names.sheetRow(warning.row)}, right below the headings, looks like units, but is read as a row of the list. Choose the headings together with it, or take it out.`;
    case 'headingBlank':
      return `${blankColumn(names.letters(warning.position), warning.left)} Give it a heading if it is to be used.`;
    case 'headingsAlike':
      return `${countOf(warning.positions.length, 'column')} are headed ${warning.heading}: ${listed(warning.positions.map(names.letters))}. Give each its own heading, or they cannot be told apart later.`;
    case 'lookAlike':
      return `${names.header(warning.key)} could be ${either(warning.positions.map(names.column))}; ${names.column(warning.positions[0] ?? 0)} was taken. Look at the samples.`;
    case 'rowsLeftOut':
      return `${rowsText(names.sheetRow(warning.from), names.sheetRow(warning.to))} ${warning.from === warning.to ? 'looks' : 'look'} like ${warning.why} and ${warning.from === warning.to ? 'is' : 'are'} left out.`;
    case 'unitGuessed':
      if (warning.unit === 'part')
        return `${names.column(warning.position)} seems to hold 0.1 for 10 %; correct it if 0.1 means 0.1 %.`;
      return `${names.column(warning.position)} names no unit. Its values fit ${unitWord(names, warning.key, warning.unit)}; correct it if they are something else.`;
    case 'unitOpen':
      return `${names.column(warning.position)} names no unit, and its values fit ${either(warning.units.map((unit) => unitWord(names, warning.key, unit)))}. It was taken for ${unitWord(names, warning.key, warning.taken)}; say which it is.`;
    case 'unitContradiction':
      return `${names.column(warning.position)} says ${unitWord(names, warning.key, warning.heading)}, but its values fit ${unitWord(names, warning.key, warning.values)}. The heading was followed; correct the unit if the values are right.`;
    case 'unitsMixed':
      return `${names.column(warning.position)} holds values in ${unitWord(names, warning.key, warning.units[0] ?? null)} and, it seems, in ${unitWord(names, warning.key, warning.units[1] ?? null)}. Those cannot be read; write all of them in one unit.`;
    case 'datesAsText':
      return `${names.column(warning.position)} holds ${countOf(warning.count, 'day')} written as text.${unclearDays(warning.unclear)}`;
    case 'neededMissing':
      return `No column looks like ${names.header(warning.key)}, which is needed. Choose it, or add it to your table.`;
  }
}

/** A unit of the shop's; without one, the column's own. */
function unitWord(names: Names, key: string, unit: ShopUnit): string {
  const name = unit ?? names.unit(key);
  return OUR_UNITS[name] ?? name;
}

function blankColumn(letter: string, left: string | null): string {
  return left === null
    ? `Column ${letter} holds something but has no heading.`
    : `Column ${letter} has no heading of its own; ${left}, left of it, may be merged over both.`;
}

function unclearDays(unclear: number): string {
  if (unclear === 0) return ' They can each be one day only and are read so.';
  return ` Of ${unclear} of them nobody can tell day from month; enter those as dates.`;
}

function either(things: readonly string[]): string {
  return things.length < 2 ? things.join('') : `${things.slice(0, -1).join(', ')} or ${things.at(-1) ?? ''}`;
}

function rowsText(from: number, to: number): string {
  return from === to ? `Row ${from}` : `Rows ${from} to ${to}`;
}

/** Why a column of a match was not found again, and what to do. */
export function sayBroken(schema: TableSchema, { key, heading, why, nowAt }: BrokenMatch): string {
  const header = headerOf(schema, key);
  switch (why) {
    case 'gone':
      return `The column ${heading}, which stands for ${header}, is not there any more. Choose another, or put its heading back.`;
    case 'renamed':
      return `The column ${heading}, which stands for ${header}, is not there any more; where it stood is now ${nowAt ?? 'another'}. Say whether that is the same column.`;
    case 'twice':
      return `Two columns are headed ${heading}, and one of them stands for ${header}. Rename one of them, or choose again.`;
  }
}
