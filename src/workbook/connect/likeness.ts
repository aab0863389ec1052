/** What a shop's own table looks like: which of its columns is which of ours, how sure that is, and what a person should know. */
import { drained, type Progress } from '../../core/index';
import { assign } from '../assignment';
import type { Column, TableSchema } from '../columns';
import type { Seen } from '../port';
import { resultPlaces } from '../resultColumns';
import { columnOf, TABLES } from '../schema';
import { headingFit, statesAnother, type HeadingFit } from './headingFit';
import { readingsOf } from './headingWords';
import { isUnits, type Headings, type Rows } from './headingsAt';
import { aboveTotals, bodyOf, headingsIn, type Body } from './shape';
import { dayOfText } from './shopDays';
import type { ConnectWarning, HeadingRow, Likeness, Proposal, ShopUnit, Why } from './types';
import { probed, shopColumn, tellingOf, valueFit, type ShopColumn, type ValueFit } from './valueFit';
import { ourUnit, unitsOf } from './units';

/** Rows of the body that are looked at: the first ones, and as many again from all over the rest. */
const FIRST_ROWS = 60;
const SPREAD_ROWS = 90;
const MOST_SAMPLES = 3;
const MOST_OTHERS = 3;

/** Less sure than this, nothing is proposed; a needed column may be proposed on less, since a person is asked for it anyway. */
const LEAST_SURE = 0.4;
const LEAST_SURE_IF_NEEDED = 0.15;
/** A needed column is served before one that can be left out. */
const NEEDED_FIRST = 1.2;
/** Another column that comes this close could be it as well. */
const AS_GOOD = 0.04;
/** Less sure than this, every second column comes close. */
const SURE = 0.5;
/** From this on, a heading says which column it is. */
const SPEAKS = 0.75;
/** Below this a heading is no heading of that column. */
const NAMES_IT = 0.5;

interface Pair {
  readonly column: Column;
  readonly theirs: ShopColumn;
  readonly heading: HeadingFit;
  readonly values: ValueFit;
  readonly sureness: number;
  readonly why: Why;
}

/** What a range looks like as one of our tables; below the headings that a person took, if any. */
export function likenessOf(schema: TableSchema, rows: Rows, chosen?: HeadingRow): Likeness {
  return likenessIn(schema, rows, new Map(), chosen);
}

/** What was looked at below one row of headings: the same for each of our tables. */
interface Looked {
  readonly body: Body;
  readonly columns: readonly ShopColumn[];
}

function lookedAt(rows: Rows, headings: Headings, kept: Map<string, Looked>): Looked {
  const key = `${headings.headerRow} ${headings.headerRows}`;
  const known = kept.get(key);
  if (known) return known;
  const body = bodyOf(rows, headings.headerRow);
  const looked = { body, columns: shopColumns(rows, headings, body) };
  kept.set(key, looked);
  return looked;
}

function likenessIn(schema: TableSchema, rows: Rows, kept: Map<string, Looked>, chosen?: HeadingRow): Likeness {
  const headings = headingsIn(schema, rows, chosen);
  const { body: whole, columns } = lookedAt(rows, headings, kept);
  const pairs = allPairs(schema, columns.map(probed));
  const taken = assigned(schema, columns, pairs);
  const settled = byTheHouse(schema, inFull(schema, taken, columns));
  const named = schema.columns.flatMap(({ key, needed }) => (needed ? (settled.get(key)?.theirs.position ?? []) : []));
  const body = aboveTotals(rows, headings.headerRow, whole, named);
  const used = new Set([...settled.values()].map(({ theirs }) => theirs.position));
  const results = resultPlaces(headings.headings);
  return {
    headerRow: headings.headerRow,
    headerRows: headings.headerRows,
    headings: headings.headings,
    lastRow: body.lastRow,
    table: schema.name,
    proposals: schema.columns.map((column) => proposal(column, settled.get(column.key), pairs, used)),
    unknown: columns
      .filter(({ position, cells, heading }) => !used.has(position) && (cells.length > 0 || heading !== ''))
      .filter(({ position }) => !results.has(position))
      .map(({ position }) => position),
    warnings: [
      ...headingWarnings(headings, columns),
      ...unitsBelow(rows, headings),
      ...body.warnings,
      ...schema.columns.flatMap((column) => columnWarnings(column, settled.get(column.key), pairs, used)),
    ],
  };
}

/** Which of our tables a range looks like; null where it looks like none. */
export function bestTable(rows: Rows): BestTable | null {
  return drained(bestTableSteps(rows));
}

export interface BestTable {
  readonly table: string;
  readonly likeness: Likeness;
}

/** The same in steps, one for each of the tables that it may be. */
export function* bestTableSteps(
  rows: Rows,
  candidates: readonly TableSchema[] = TABLES,
): Generator<Progress, BestTable | null> {
  const kept = new Map<string, Looked>();
  let best: { table: string; likeness: Likeness; score: number } | null = null;
  for (const [at, schema] of candidates.entries()) {
    const likeness = likenessIn(schema, rows, kept);
    const score = tableScore(schema, likeness);
    if (score > (best?.score ?? LEAST_LIKE)) best = { table: schema.name, likeness, score };
    yield { done: at + 1, of: candidates.length };
  }
  return best && { table: best.table, likeness: best.likeness };
}

const LEAST_LIKE = 0.3;
/** One column that fits is chance. */
const LEAST_COLUMNS = 2;

/** How much of the range one of our tables explains, and how much of what it needs it finds there. */
function tableScore(schema: TableSchema, { proposals, unknown }: Likeness): number {
  const found = proposals.filter(({ position }) => position !== null);
  const sum = found.reduce((total, { sureness }) => total + sureness, 0);
  const needed = proposals.filter(({ key }) => columnOf(schema, key).needed);
  const met = needed.reduce((total, { position, sureness }) => total + (position === null ? 0 : sureness), 0);
  const columns = found.length + unknown.length;
  return found.length < LEAST_COLUMNS
    ? 0
    : (sum / columns) * (0.25 + 0.75 * (needed.length === 0 ? 0.6 : met / needed.length));
}

/* ------------------------------------------------------------------ columns */

function shopColumns(rows: Rows, { headerRow, headings, also }: Headings, { lastRow }: Body): ShopColumn[] {
  const sample = sampled(headerRow + 1, lastRow).map((row) => rows[row] ?? []);
  const width = Math.max(headings.length, ...sample.map((cells) => cells.length));
  return Array.from({ length: width }, (_, position) =>
    shopColumn(
      position,
      headings[position] ?? '',
      also[position] ?? [],
      sample.map((cells) => cells[position] ?? null),
    ),
  );
}

function sampled(first: number, last: number): number[] {
  const count = last - first + 1;
  if (count <= FIRST_ROWS + SPREAD_ROWS) return Array.from({ length: Math.max(0, count) }, (_, at) => first + at);
  const rest = count - FIRST_ROWS;
  return [
    ...Array.from({ length: FIRST_ROWS }, (_, at) => first + at),
    ...Array.from(
      { length: SPREAD_ROWS },
      (_, at) => first + FIRST_ROWS + Math.floor(((at + 0.5) * rest) / SPREAD_ROWS),
    ),
  ];
}

/* ------------------------------------------------------------------ pairs */

type Pairs = ReadonlyMap<string, readonly Pair[]>;

/** Every column of ours with every column of theirs that it could be, by our key, surest first. */
function allPairs(schema: TableSchema, all: readonly ShopColumn[]): Pairs {
  // what a plan wrote beside the clubs says nothing of them
  const results = resultPlaces(all.map(({ heading }) => heading));
  const columns = all.filter(({ position }) => !results.has(position));
  const spokenFor = new Set(
    columns
      .filter((theirs) => schema.columns.some((column) => bestName(schema, column, theirs).fit >= SPEAKS))
      .map(({ position }) => position),
  );
  return new Map(
    schema.columns.map((column) => [
      column.key,
      columns
        .map((theirs) => pairOf(schema, column, theirs))
        // what is headed as one of ours is no other one, whatever its values could be
        .filter((pair) => pair?.why !== 'values' || !spokenFor.has(pair.theirs.position))
        .filter((pair): pair is Pair => pair !== undefined && pair.sureness >= leastSure(column))
        .sort((a, b) => b.sureness - a.sureness || a.theirs.position - b.theirs.position),
    ]),
  );
}

function leastSure(column: Column): number {
  return column.needed ? LEAST_SURE_IF_NEEDED : LEAST_SURE;
}

/** A column without a heading cannot be found again, so it is never proposed. */
function pairOf(schema: TableSchema, column: Column, theirs: ShopColumn): Pair | undefined {
  if (theirs.heading === '' || statesAnother(column, theirs.heading)) return undefined;
  const heading = bestName(schema, column, theirs);
  // What is measured is no name of anything, however alike the words are.
  if (column.kind === 'text' && heading.why === 'likeness' && isMeasured(theirs)) return undefined;
  const telling =
    tellingOf(column, theirs) + (heading.unit !== undefined && unitsOf(column).length > 1 ? UNIT_STATED : 0);
  if (heading.fit < NAMES_IT && (column.later || telling < 0.2) && !(column.needed && column.kind === 'text')) {
    return undefined;
  }
  const values = valueFit(schema.name, column, theirs, heading.unit);
  const sureness = surenessOf(column, theirs, heading, values, telling);
  return { column, theirs, heading, values, sureness, why: heading.fit >= NAMES_IT ? heading.why : 'values' };
}

function isMeasured({ heading }: ShopColumn): boolean {
  const [read] = readingsOf(heading);
  return read?.unit !== null && read?.unit !== '%';
}

/** A heading that is only part of what stands over a column says a little less. */
const PART_OF_IT = 0.97;

function bestName(schema: TableSchema, column: Column, { heading, also }: ShopColumn): HeadingFit {
  let best = headingFit(schema, column, heading);
  for (const name of also) {
    const { fit, why, unit } = headingFit(schema, column, name);
    if (fit * PART_OF_IT > best.fit) best = { fit: fit * PART_OF_IT, why, unit: unit ?? best.unit };
    else if (best.unit === undefined) best = { ...best, unit };
  }
  return best;
}

/** What may still be said for a column by its values alone. */
const VALUES_ALONE = 0.6;
/** A heading that nobody can read says something all the same where its unit is of the column's kind. */
const UNIT_STATED = 0.4;
/** Values in a unit that nobody states had more chances to fit. */
const UNIT_NOT_STATED = 0.8;

function surenessOf(
  column: Column,
  theirs: ShopColumn,
  heading: HeadingFit,
  values: ValueFit,
  telling: number,
): number {
  if (theirs.cells.length === 0) return heading.fit >= NAMES_IT ? heading.fit * 0.9 : 0;
  const chances = values.settled === 'guessed' || values.settled === 'open' ? UNIT_NOT_STATED : 1;
  const byValues = VALUES_ALONE * Math.min(1, telling) * chances * (values.read * values.usual) ** 2;
  if (heading.fit < NAMES_IT) return column.needed && column.kind === 'text' ? likeNames(theirs) : byValues;
  const byHeading = heading.fit * (0.4 + 0.6 * values.read) * (values.against === undefined ? 1 : 0.9);
  return byHeading + (1 - byHeading) * byValues * 0.5;
}

/** Text of which hardly any repeats may be what a row is called by. */
function likeNames({ cells, distinct }: ShopColumn): number {
  const words = cells.filter((cell) => typeof cell === 'string').length;
  const differ = cells.length === 0 ? 0 : distinct.length / cells.length;
  return words >= 0.9 * cells.length && differ > 0.95 && cells.length > 2 ? 0.2 : 0;
}

/** The surest pairs in all, no column of theirs twice. */
function assigned(schema: TableSchema, columns: readonly ShopColumn[], pairs: Pairs): Map<string, Pair> {
  const found = new Map<string, Pair>();
  if (columns.length === 0) return found;
  const most = NEEDED_FIRST + 1;
  const byPosition = schema.columns.map(
    ({ key }) => new Map((pairs.get(key) ?? []).map((pair) => [pair.theirs.position, pair] as const)),
  );
  const costs = schema.columns.map((column, at) =>
    columns.map(({ position }) => {
      const pair = byPosition[at]?.get(position);
      return pair ? most - pair.sureness * (column.needed ? NEEDED_FIRST : 1) : most;
    }),
  );
  for (const [ours, theirs] of assign(costs)) {
    const pair = byPosition[ours]?.get(columns[theirs]?.position ?? -1);
    if (pair) found.set(pair.column.key, pair);
  }
  for (const column of schema.columns) if (column.needed && !found.has(column.key)) nameByModel(column, found);
  return found;
}

/** Columns that say what a thing is, better ones first: where no other does, they name it as well. */
const SAYS_WHAT = ['model', 'description'];
const NAMED_BY_MODEL = 0.8;

/** A list of grips without a code calls each by its model, and so do the clubs that are to get them. */
function nameByModel(column: Column, found: Map<string, Pair>): void {
  if (column.kind !== 'text') return;
  const key = SAYS_WHAT.find((each) => likeNames(found.get(each)?.theirs ?? NO_COLUMN) > 0);
  const pair = key === undefined ? undefined : found.get(key);
  if (!pair) return;
  found.delete(pair.column.key);
  found.set(column.key, { ...pair, column, sureness: pair.sureness * NAMED_BY_MODEL });
}

const NO_COLUMN: ShopColumn = { position: -1, heading: '', also: [], cells: [], distinct: [] };

/** With all the values that were looked at, where a few were enough to tell the columns apart. */
function inFull(
  schema: TableSchema,
  taken: ReadonlyMap<string, Pair>,
  columns: readonly ShopColumn[],
): Map<string, Pair> {
  return new Map(
    [...taken].map(([key, pair]) => {
      const theirs = columns[pair.theirs.position] ?? pair.theirs;
      return [key, { ...pair, theirs, values: valueFit(schema.name, pair.column, theirs, pair.heading.unit) }] as const;
    }),
  );
}

/* ------------------------------------------------------------------ units of the house */

const METRIC = new Set<ShopUnit>(['mm', 'cm', 'm']);

/** Where a length may be in inches or in centimetres, the lengths that are settled say which the shop measures in. */
function byTheHouse(schema: TableSchema, taken: ReadonlyMap<string, Pair>): Map<string, Pair> {
  let [metric, inches] = [0, 0];
  for (const { column, values } of taken.values()) {
    if (ourUnit(column) !== 'in' || values.settled === 'open' || values.read < 0.5) continue;
    if (METRIC.has(values.unit)) metric += 1;
    else inches += 1;
  }
  const settled = new Map(taken);
  if (metric <= inches) return settled;
  for (const [key, pair] of taken) {
    const unit = pair.values.open.find((each) => METRIC.has(each));
    if (unit === undefined) continue;
    const values = valueFit(schema.name, pair.column, pair.theirs, unit);
    settled.set(key, { ...pair, values: { ...values, settled: 'open', open: pair.values.open } });
  }
  return settled;
}

/* ------------------------------------------------------------------ what is proposed */

function proposal(column: Column, pair: Pair | undefined, pairs: Pairs, used: ReadonlySet<number>): Proposal {
  const others = (pairs.get(column.key) ?? [])
    .map(({ theirs }) => theirs.position)
    .filter((position) => position !== pair?.theirs.position);
  // columns that nothing else claims come first
  const next = [...others.filter((each) => !used.has(each)), ...others.filter((each) => used.has(each))];
  return {
    key: column.key,
    position: pair?.theirs.position ?? null,
    unit: pair?.values.unit ?? null,
    sureness: pair?.sureness ?? 0,
    why: pair?.why ?? 'none',
    samples: pair ? samplesOf(pair.theirs.distinct) : [],
    unread: pair?.values.unread ?? 0,
    others: next.slice(0, MOST_OTHERS),
  };
}

function samplesOf(distinct: ShopColumn['distinct']): Seen[] {
  return distinct.slice(0, MOST_SAMPLES).map(([cell]) => cell);
}

/* ------------------------------------------------------------------ what to know */

function headingWarnings({ known, headings }: Headings, columns: readonly ShopColumn[]): ConnectWarning[] {
  const warnings: ConnectWarning[] = known ? [] : [{ warning: 'noHeadings' }];
  const alike = new Map<string, number[]>();
  for (const { position, heading, cells } of columns) {
    if (heading === '' && cells.length > 0) {
      warnings.push({ warning: 'headingBlank', position, left: headings[position - 1] || null });
    }
    if (heading !== '') alike.set(heading.toLowerCase(), [...(alike.get(heading.toLowerCase()) ?? []), position]);
  }
  for (const positions of alike.values()) {
    const [first] = positions;
    if (positions.length > 1 && first !== undefined) {
      warnings.push({ warning: 'headingsAlike', heading: headings[first] ?? '', positions });
    }
  }
  return warnings;
}

function unitsBelow(rows: Rows, { headerRow }: Headings): ConnectWarning[] {
  const row = headerRow + 1;
  return isUnits(rows[row] ?? []) ? [{ warning: 'unitsBelow', row }] : [];
}

function columnWarnings(
  column: Column,
  pair: Pair | undefined,
  pairs: Pairs,
  used: ReadonlySet<number>,
): ConnectWarning[] {
  const { key } = column;
  if (!pair) return column.needed ? [{ warning: 'neededMissing', key }] : [];
  const { position } = pair.theirs;
  const rivals = (pairs.get(key) ?? [])
    .filter(
      ({ theirs, sureness }) =>
        !used.has(theirs.position) && pair.sureness >= SURE && sureness >= pair.sureness - AS_GOOD,
    )
    .map(({ theirs }) => theirs.position);
  return [
    ...(rivals.length > 0 ? [{ warning: 'lookAlike', key, positions: [position, ...rivals] } as const] : []),
    ...unitWarnings(key, position, pair.values),
    ...dayWarnings(column, pair.theirs),
  ];
}

function unitWarnings(key: string, position: number, values: ValueFit): ConnectWarning[] {
  const { unit, settled, open, against, mixedWith } = values;
  const warnings: ConnectWarning[] = [];
  if (settled === 'guessed') warnings.push({ warning: 'unitGuessed', key, position, unit });
  if (settled === 'open')
    warnings.push({ warning: 'unitOpen', key, position, taken: unit ?? open[0] ?? null, units: open });
  if (against !== undefined)
    warnings.push({ warning: 'unitContradiction', key, position, heading: unit, values: against });
  if (mixedWith !== undefined && against === undefined) {
    warnings.push({ warning: 'unitsMixed', key, position, units: [unit, mixedWith] });
  }
  return warnings;
}

function dayWarnings(column: Column, { position, cells }: ShopColumn): ConnectWarning[] {
  if (column.kind !== 'date') return [];
  const days = cells.filter((cell): cell is string => typeof cell === 'string').map(dayOfText);
  const unclear = days.filter((day) => day === 'unclear').length;
  const count = days.filter((day) => day !== undefined).length;
  return count === 0 ? [] : [{ warning: 'datesAsText', key: column.key, position, count, unclear }];
}
