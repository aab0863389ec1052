/** How a list of the shop's is being matched to a table of ours, as far as a person has settled it. Pure. */
import type { Progress } from '../../../core/index';
import type { Block, Seen } from '../../../workbook/port';
import { isBlank } from '../../../workbook/records';
import { resultPlaces } from '../../../workbook/resultColumns';
import { CLUBS, type Column, type TableSchema } from '../../../workbook/schema';
import { ourCell } from '../../../workbook/connect/cells';
import type { ConnectAsked } from '../../../workbook/connect/connectList';
import type { Connection } from '../../../workbook/connect/connections';
import {
  headingChoices,
  headingTexts,
  lowerSaysNothing,
  sameHeadings,
  whyNone,
  type NoHeadings,
} from '../../../workbook/connect/headingRow';
import { likenessTo, type ListRead } from '../../../workbook/connect/lists';
import { LIST_TABLES } from '../../../workbook/connect/listTables';
import type { ColumnMatch, HeadingRow, Likeness, ShopUnit } from '../../../workbook/connect/types';
import { dayWords } from '../../../words/intake';
import { unitsOf } from '../../../workbook/connect/units';
import { shownText } from './listsWords';
import { countUnread, type Unread } from '../../../workbook/connect/unread';

/** Which column of the list one of ours is; null: none. */
export interface Pick {
  readonly position: number | null;
  readonly unit: ShopUnit;
}

export interface Match {
  readonly read: ListRead;
  readonly schema: TableSchema;
  readonly likeness: Likeness;
  /** Rows that the person took for the headings; left out where they were found. */
  readonly chosen?: HeadingRow;
  readonly picks: ReadonlyMap<string, Pick>;
}

/** One column of ours, as a person looks it over. */
export interface PickRow {
  readonly column: Column;
  readonly pick: Pick;
  readonly units: readonly ShopUnit[];
  /** What stands below that heading, as it stands and as it is read. */
  readonly samples: readonly { readonly theirs: string; readonly ours: string | null }[];
}

/** Begins to match a list to a table, below the headings that were chosen, if any; null where there is no such table. */
export function beginMatch(read: ListRead, table: string, chosen?: HeadingRow): Match | null {
  const schema = LIST_TABLES.find(({ name }) => name === table);
  const likeness = likenessTo(table, read, chosen);
  if (!schema || !likeness) return null;
  const picks = likeness.proposals.map(({ key, position, unit }) => [key, { position, unit }] as const);
  return { read, schema, likeness, ...(chosen && { chosen }), picks: new Map(picks) };
}

/** A row, or two, that may be taken for the headings. */
export interface HeadingOption {
  readonly taken: HeadingRow;
  /** Rows of the sheet, from 1. */
  readonly rows: readonly number[];
  readonly texts: readonly string[];
}

/** What may be taken for the headings of plain cells, what is taken among it; a table says that itself. */
export function headingRowOptions({ read, likeness }: Match): HeadingOption[] {
  if (read.list.table !== null) return [];
  const now = takenIn(likeness);
  const choices = headingChoices(read.rows);
  const all = choices.some((each) => sameHeadings(each, now)) ? choices : [...choices, now];
  return all.sort((one, other) => one.row - other.row || one.lines - other.lines).map((each) => optionOf(read, each));
}

/** The headings that are taken now. */
export function headingsNow({ read, likeness }: Match): HeadingOption {
  return optionOf(read, takenIn(likeness));
}

function takenIn({ headerRow, headerRows }: Likeness): HeadingRow {
  return { row: headerRow, lines: headerRows };
}

function optionOf({ list, rows }: ListRead, taken: HeadingRow): HeadingOption {
  const last = list.at.row + taken.row + 1;
  return { taken, rows: taken.lines === 2 ? [last - 1, last] : [last], texts: headingTexts(rows, taken) };
}

/** Why what a person chose cannot be the headings; null where nothing is wrong with it. */
export function headingFault({ read, likeness, chosen, picks }: Match): NoHeadings | 'lower' | null {
  const why = chosen && read.list.table === null ? whyNone(read.rows, chosen) : null;
  if (why) return why;
  const used = [...picks.values()].flatMap(({ position }) => (position === null ? [] : [position]));
  return used.length > 0 && lowerSaysNothing(read.rows, takenIn(likeness), used) ? 'lower' : null;
}

/** The match with what was connected before, where that still stands under its headings. */
export function asConnected(match: Match, { columns }: Connection): Match {
  const { headings } = match.likeness;
  const picks = match.schema.columns.map(({ key }) => {
    const before = columns.find((column) => column.key === key);
    const position = before ? headings.indexOf(before.heading) : -1;
    return [key, before && position >= 0 ? { position, unit: before.unit } : { position: null, unit: null }] as const;
  });
  return { ...match, picks: new Map(picks) };
}

/** The match with another choice; a column of the list that was picked for another of ours is taken from it. */
export function picked(match: Match, key: string, pick: Pick): Match {
  const picks = [...match.picks].map(([other, was]) => {
    if (other === key) return [key, pick] as const;
    return [other, was.position !== null && was.position === pick.position ? { ...was, position: null } : was] as const;
  });
  return { ...match, picks: new Map(picks) };
}

/** Body rows of the list. */
export function bodyOf({ read, likeness }: Match): readonly (readonly Seen[])[] {
  return read.rows.slice(likeness.headerRow + 1, likeness.lastRow + 1).filter((row) => !row.every(isBlank));
}

const SAMPLES = 3;

export function pickRows(match: Match): PickRow[] {
  const body = bodyOf(match);
  return match.schema.columns.map((column) => {
    const pick = match.picks.get(column.key) ?? { position: null, unit: null };
    return { column, pick, units: unitsOf(column), samples: firstThree(column, pick, body) };
  });
}

/** Counts over all rows what cannot be read as it was picked; a long list takes a while. */
export function unreadIn(match: Match): Generator<Progress, ReadonlyMap<string, Unread>> {
  return countUnread(match.schema, matchesOf(match), bodyOf(match));
}

/** The first three that differ. */
function firstThree(column: Column, { position, unit }: Pick, body: readonly (readonly Seen[])[]): PickRow['samples'] {
  const samples = new Map<string, string | null>();
  for (const row of position === null ? [] : body) {
    const cell = row[position ?? -1] ?? null;
    const theirs = dayText(column, cell) ?? shownText(cell);
    if (isBlank(cell) || samples.has(theirs)) continue;
    const ours = inUnit(column, ourCell(column, unit, cell));
    samples.set(theirs, sameText(theirs, ours) ? null : ours);
    if (samples.size === SAMPLES) break;
  }
  return [...samples].map(([theirs, ours]) => ({ theirs, ours }));
}

/** Alike but for zeros at the end. */
function sameText(one: string, other: string): boolean {
  return one === other || (one !== '' && Number(one) === Number(other));
}

/** Digits after the point that a reader of that unit looks for. */
const DIGITS: Readonly<Record<string, number>> = { in: 3, g: 1, yd: 1 };

function inUnit(column: Column, cell: Seen): string {
  const { unit } = column;
  const digits = DIGITS[unit ?? ''];
  return typeof cell === 'number' && digits !== undefined && !Number.isInteger(cell)
    ? cell.toFixed(digits)
    : (dayText(column, cell) ?? shownText(cell));
}

/** Of the year 2100: a larger number is no day that anybody writes. */
const MOST_DAYS = 73_050;

/** A number that stands for a day, as a day. */
function dayText({ kind }: Column, cell: Seen): string | undefined {
  return kind === 'date' && typeof cell === 'number' && cell > 0 && cell < MOST_DAYS ? dayWords(cell) : undefined;
}

/** Columns that are needed and not picked yet. */
export function stillNeeded({ schema, picks }: Match): string[] {
  return schema.columns
    .filter(({ key, needed }) => needed && (picks.get(key)?.position ?? null) === null)
    .map(({ header }) => header);
}

/** What a list of clubs can do without, but not unsaid, by key. */
const MISSED = ['job', 'kind'] as const;

/** Columns that no heading was picked for although a person should know what that means. */
export function missed({ schema, picks }: Match): (typeof MISSED)[number][] {
  return schema.name === CLUBS.name ? MISSED.filter((key) => (picks.get(key)?.position ?? null) === null) : [];
}

/** Headings of the list that stand for nothing of ours. */
export function unused(match: Match): string[] {
  const taken = new Set([...match.picks.values()].map(({ position }) => position));
  return offered(match).flatMap(([at, heading]) => (taken.has(at) ? [] : [heading]));
}

/** Headings that may be picked, with their places; results of ours in the list only where one was picked before. */
export function offered({ likeness, picks }: Match): (readonly [number, string])[] {
  const results = resultPlaces(likeness.headings);
  const taken = new Set([...picks.values()].map(({ position }) => position));
  return [...likeness.headings.entries()].filter(
    ([at, heading]) => heading !== '' && (!results.has(at) || taken.has(at)),
  );
}

export function asked(match: Match): ConnectAsked {
  const { read, schema, likeness } = match;
  const { list } = read;
  const first = likeness.headerRow - likeness.headerRows + 1;
  const within: Block = { ...list.at, row: list.at.row + first, rows: likeness.lastRow - first + 1 };
  return { schema, list, within: list.table === null ? within : null, matches: matchesOf(match) };
}

function matchesOf({ likeness, picks }: Match): ColumnMatch[] {
  return [...picks].flatMap(([key, { position, unit }]) => {
    if (position === null) return [];
    return [{ key, heading: likeness.headings[position] ?? '', position, unit }];
  });
}
