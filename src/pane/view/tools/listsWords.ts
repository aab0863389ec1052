/** Words of the tab that connects lists of the shop's own. */
import type { BesideDone } from '../../../workbook/fillBeside';
import type { PlanBehind } from '../../../workbook/connect/plansBehind';
import type { PlanPlace } from '../../../workbook/planPlaces';
import type { PlansFilled } from '../../../workbook/fillPlans';
import type { NotDone } from '../../../workbook/outcomes';
import type { Stopped } from '../../../workbook/pace';
import type { ConnectDone } from '../../../workbook/connect/connectList';
import type { BrokenMatch } from '../../../workbook/connect/resolve';
import { fromOurs, readQuantity, unitsOf } from '../../../workbook/connect/units';
import type { Column, TableSchema } from '../../../workbook/schema';
import type { NoHeadings } from '../../../workbook/connect/headingRow';
import type { List } from '../../../workbook/connect/lists';
import type { ShopUnit } from '../../../workbook/connect/types';
import type { Unread } from '../../../workbook/connect/unread';
import type { Seen } from '../../../workbook/port';
import { named } from '../../../workbook/shared/address';
import { sayHeadingsUnwritten } from '../../../words/columnsAdded';
import { listed } from '../../../words/listed';
import { sayBroken } from '../../../words/connect';
import { sayPortError } from '../../../words/portErrors';
import { sayIssue } from '../../../words/issues';
import { sayFill, sayNotDone } from '../../../words/outcomes';
import { counted } from '../../words';

const MOST_SHOWN = 18;

/** A cell as it is shown where there is little room. */
export function shownText(cell: Seen): string {
  const text = typeof cell === 'object' && cell !== null ? cell.error : String(cell ?? '');
  const plain = typeof cell === 'number' ? String(Number(cell.toFixed(4))) : text.trim();
  return plain.length > MOST_SHOWN ? `${plain.slice(0, MOST_SHOWN - 1)}…` : plain;
}

const ITEM = 'Item';

export const LISTS_WORDS = {
  title: 'Lists of your own',
  how: 'A list that you keep anyway, in a table or in plain cells, can stand for one of Setwright’s tables. It stays where it is and as it is.',
  connected: 'Connected',
  gone: 'This list is not in the workbook any more.',
  found: 'Lists in this workbook',
  looking: 'Looking through the sheets…',
  noOther: 'No other list was found. Select the cells of one and press the button below if it is to be used, too.',
  none: 'No list was found. Open the workbook that holds it, or select its cells and press the button below.',
  selected: 'Use the selected cells',
  again: 'Look again',
  back: 'Back',
  match: 'Match',
  matchOf: (name: string) => `Match ${name}`,
  change: 'Change',
  changeOf: (table: string) => `Change what stands for ${table}`,
  takeIn: 'Take them in',
  takeInOf: (table: string) => `Take in the rows below what stands for ${table}`,
  end: 'End',
  endOf: (table: string) => `End the connection of ${table}`,
  standsFor: 'Stands for',
  headings: 'Headings',
  already: (table: string) =>
    `This list stands for ${table} already. What it was connected by is shown below. Choose another table if it is to stand for that one as well.`,
  nothingSelected: 'No list is selected: select some cells of it, its headings among them.',
  unreadable: 'The workbook could not be looked through.',
  likeNothing: 'Looks like none of the tables.',
  more: (count: number) => `Other columns (${count})`,
  notUsed: (headings: readonly string[]) => `Not used: ${listed(headings)}.`,
  noColumn: 'not in this list',
  unitLabel: (header: string) => `Unit of ${header}`,
  columnLabel: (header: string) => `Which heading is ${header}`,
  needed: 'needed',
  say: (headers: readonly string[]) => {
    const item = headers.includes(ITEM)
      ? ` ${ITEM} is the code or name by which a list of clubs says which grip goes on.`
      : '';
    return `Say which heading is ${listed(headers)}; nothing can do without.${item}`;
  },
  missed: {
    job: 'No heading stands for Job: clubs can only be planned by selecting their rows.',
    kind: 'No heading stands for Kind: it is read from what a club is called, such as Putter or 7 iron, and is left open where a name says none.',
  },
  connect: 'Connect',
  results: 'Results in the list',
  resultsHow:
    'What the plan says, beside each club in the list it stands in: reading, verdict, weight to add, mass, diameter and notes.',
  writeResults: (job: string) => `Write results of ${job}`,
  sameResults: 'Nothing changed',
  setUpRest: 'Make the other tables',
  restMissing: (tables: readonly string[]) =>
    `Not there yet: ${listed(tables)}. What is made gets sheets of its own; nothing that is there is changed.`,
  behindTitle: 'Plans filled before',
  follow: 'Let them read the lists',
} as const;

export const UNIT_WORDS: Readonly<Record<NonNullable<ShopUnit>, string>> = {
  in: 'in',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  ft: 'ft',
  yd: 'yd',
  thou: '1/1000 in',
  g: 'g',
  oz: 'oz',
  lb: 'lb',
  kg: 'kg',
  part: '0 to 1',
};

/** How many cells cannot be what was picked, why, and what to do. */
export function sayUnread(column: Column, unit: ShopUnit, { count, filled, such }: Unread): string {
  const all = count === filled;
  const whose = all
    ? `No cell here can be ${column.header}`
    : `${count} of ${counted(filled, 'cell')} cannot be ${column.header}`;
  const why = `${listed(such.map(shownText))} ${such.length === 1 ? 'is' : 'are'} ${unlike(column, unit, such)}`;
  const other = unitsOf(column).length > 1 ? 'Choose another heading or unit' : 'Choose another heading';
  return `${whose}: ${why}. ${all ? other : `${other}, or correct them in the list`}.`;
}

function unlike(column: Column, unit: ShopUnit, such: readonly Seen[]): string {
  switch (column.kind) {
    case 'choice':
      return `none of ${listed(column.choices ?? [])}`;
    case 'reading':
      return 'no reading such as D2';
    case 'date':
      return 'no day';
    case 'yesNo':
      return 'neither Yes nor No';
    case 'money':
      return 'no amount';
    case 'count':
      return `no whole number${rangeText(column, unit)}`;
    case 'number':
      if (rangeText(column, unit) === '' || such.every(hasWord)) return 'no number';
      return such.some(hasWord) ? `no number${rangeText(column, unit)}` : `not${rangeText(column, unit)}`;
    case 'text':
      return 'no text';
  }
}

/** Whether it is a word that cannot be read, whatever number stands beside it. */
function hasWord(cell: Seen): boolean {
  return typeof cell === 'string' && readQuantity(cell)?.tail !== '';
}

/** From what to what a column reaches, in the unit that was picked. */
function rangeText(column: Column, unit: ShopUnit): string {
  const ends = [column.low, column.high].map((end) => {
    return end === undefined ? undefined : String(Number(fromOurs(column, unit, end).toFixed(2)));
  });
  const name = unit ?? column.unit;
  const of = name ? ` ${name}` : '';
  const [low, high] = ends;
  if (low === undefined) return high === undefined ? '' : ` up to ${high}${of}`;
  return high === undefined ? ` from ${low}${of}` : ` from ${low} to ${high}${of}`;
}

/** What a list is called: its table's name, or where its cells are. */
export function listName({ table, at }: Pick<List, 'table' | 'at'>): string {
  return table ?? named(at);
}

/** Letters of a row of headings where it is one of many; the rest is there once it is chosen. */
const MOST_OF_ROW = 44;

export function rowsNamed(rows: readonly number[]): string {
  return rows.length > 1 ? `Rows ${rows.join(' and ')}` : `Row ${rows.join('')}`;
}

/** Rows that may be the headings, by what stands in them. */
export function headingRowText({
  rows,
  texts,
}: {
  readonly rows: readonly number[];
  readonly texts: readonly string[];
}) {
  const words = texts.length === 0 ? 'empty' : texts.join(' · ');
  const short = words.length > MOST_OF_ROW ? `${words.slice(0, MOST_OF_ROW - 1).trimEnd()}…` : words;
  return `${rowsNamed(rows)}: ${short}`;
}

/** Why rows that were chosen cannot be the headings, and what to do. */
export function sayHeadingFault(why: NoHeadings | 'lower', rows: readonly number[]): string {
  const [first = 0, second = 0] = rows;
  switch (why) {
    case 'empty':
      return `Row ${rows.at(-1) ?? 0} is empty. Choose the row that your headings stand in.`;
    case 'numbers':
      return `Row ${rows.at(-1) ?? 0} holds numbers, not headings. Choose the row above them that says what they are.`;
    case 'lower':
      return `Row ${second} says nothing of the columns that are matched. Choose row ${first} alone, or match a column that has a word there.`;
  }
}

export function looksLike({ like, columns, at }: List): string {
  const size = counted(at.rows - 1, 'row');
  return like === null
    ? `${size}. ${LISTS_WORDS.likeNothing}`
    : `${size}. Looks like ${like}: ${counted(columns, 'column')} found.`;
}

export function connectedLine(table: string, list: string): string {
  return `${table}: ${list}`;
}

/**
 * @param broken columns whose headings are not there any more
 * @param goesOn rows below it that are not read
 */
export function connectedText(
  schema: TableSchema,
  columns: number,
  broken: readonly BrokenMatch[],
  goesOn = 0,
): string {
  const more = goesOn > 0 ? ` ${sayGoesOn(schema.name, goesOn)}` : '';
  if (broken.length === 0) return `${counted(columns, 'column')} connected.${more}`;
  const what = broken.map((each) => sayBroken(schema, each)).join(' ');
  return `${columns - broken.length} of ${counted(columns, 'column')} connected. ${what}${more}`;
}

function sayGoesOn(table: string, rows: number): string {
  return `${counted(rows, 'row')} right below this list ${rows === 1 ? 'is' : 'are'} not read: what stands for ${table} ends above ${rows === 1 ? 'it' : 'them'}.`;
}

export function foundLine(found: number, of: number, rows: number): string {
  return `${found} of ${of} columns found, ${counted(rows, 'row')}.`;
}

/** Which live plan still reads what. */
export function sayBehind({ place, tables }: PlanBehind): string {
  return `The plan of job ${place.job ?? ''} (${place.block.sheet}) still reads Setwright’s own ${listed(tables)}, not your list.`;
}

/** A live plan that reads a list which stands for a table no more. */
export function sayLeftBehind({ job, block }: PlanPlace, table: string): string {
  const plan = job === null ? `The plan on ${block.sheet}` : `The plan of job ${job} (${block.sheet})`;
  return `${plan} reads that list and shows an error now. Connect the list again, or fill the plan again once the table ${table} holds what it needs.`;
}

export function sayFollowed(end: PlansFilled | NotDone | Stopped): string {
  if (!end.done) return 'error' in end || 'table' in end ? sayNotDone(end) : 'Stopped. Nothing was written.';
  const not = end.left.length > 0 ? ` ${counted(end.left.length, 'plan')} stayed as it was.` : '';
  return `${counted(end.filled.length, 'plan')} filled again from your lists.${not}`;
}

/** Why a plan stayed as it was. */
export function followedLines(end: PlansFilled | NotDone | Stopped): string[] {
  return end.done ? end.left.map(({ job, end: why }) => `${job}: ${sayFill(why)}`) : [];
}

export function sayBeside(end: BesideDone): string {
  if (end.done) {
    if (end.cells === 0 && end.made.length === 0)
      return `Beside ${counted(end.clubs, 'club')} stands what the plan says already.`;
    const made = end.made.length > 0 ? ` New columns at its right end: ${listed(end.made)}.` : '';
    return `${counted(end.cells, 'cell')} written beside ${counted(end.clubs, 'club')}.${made} They do not follow later changes: write them again.`;
  }
  switch (end.reason) {
    case 'noClubs':
      return 'This job has no clubs. Nothing was written.';
    case 'notPlanned':
      return `${sayIssue(end.issue)} Nothing was written.`;
    case 'occupied':
      return `${listed(end.cells)} hold something of yours.`;
    default:
      return sayNotDone(end);
  }
}

export function sayConnected(end: ConnectDone): string {
  if (end.done) {
    return end.list === ''
      ? `${end.table} is connected to no list any more. The list itself was not touched.`
      : `${end.list} stands for ${end.table} now, with ${counted(end.columns, 'column')}. The sheet Headings says under which of your headings.`;
  }
  switch (end.reason) {
    case 'port':
      return sayPortError(end.error);
    case 'needed':
      return LISTS_WORDS.say(end.headers);
    case 'listChanged':
      return 'The list was changed since it was looked at. Nothing was written; press Look again and match it once more.';
    case 'sheetInUse':
    case 'otherTable':
      return sayHeadingsUnwritten(end);
    case 'tableMissing':
      return `There is no table ${end.table} any more. Nothing was written; press Look again.`;
    case 'columnMissing':
      return `${end.table} lacks ${listed(end.headers)}. Nothing was written; press Look again.`;
  }
}
