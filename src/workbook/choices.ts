/** What a person decides for some clubs, and what Clubs holds once it is written. */
import { drained, type Progress } from '../core/index';
import { columnsAt, folded } from './headings';
import { callBy, calledBy, tellBy, toldBy } from './records';
import { CLUBS, columnOf } from './schema';
import type { Matrix } from './records';
import type { TableCell } from './tableCell';

/** One decision a column; `undefined` leaves the cell as it is, `null` blanks it. */
export interface ClubChoices {
  readonly newItem?: string | null;
  /**
   * Mass of the very grip, as weighed. Where it is left as it is and another grip is chosen, it is blanked: it was the mass
   * of the grip that was chosen before.
   */
  readonly newMass?: number | null;
  /** The item that mass was weighed of: on a club that gets another by then, it is no longer meant. */
  readonly massOf?: string;
  readonly layers?: number | null;
  readonly lowerLayers?: number | null;
  readonly targetDiameter?: number | null;
  readonly hold?: string | null;
  /** A reading as written: `D2`, or points as a number. */
  readonly target?: string | number | null;
  readonly tolerance?: number | null;
  readonly weighting?: string | null;
}

/** Decisions for all the clubs of a scope, and for single ones of them. */
export interface Choices extends ClubChoices {
  /** Putters keep what their rows say, unless there is nothing but putters: what suits a set seldom suits its putter. */
  readonly exceptPutters?: boolean;
  /** By body row of Clubs, from 1: each goes before the same decision for all, and a putter's own counts in any case. */
  readonly perClub?: ReadonlyMap<number, ClubChoices>;
}

const CHOICE_KEYS = [
  'newItem',
  'newMass',
  'layers',
  'lowerLayers',
  'targetDiameter',
  'hold',
  'target',
  'tolerance',
  'weighting',
] as const satisfies readonly (keyof ClubChoices)[];

/** Clubs, or cells, that are worked through at a stretch. */
const ROWS_A_STEP = 200;

/** Whether something is decided for single clubs, each known by its row. */
export function byRow({ perClub }: Choices): boolean {
  return perClub !== undefined && perClub.size > 0;
}

/**
 * What is put where: the cells of Clubs that the choices speak of, in the rows given.
 *
 * @param clubs header row first
 * @param rows body rows, counted from 1; rows that the table does not have are passed over
 */
export function chosenCells(clubs: Matrix, rows: readonly number[], choices: Choices): TableCell[] {
  return drained(chosenSteps(clubs, rows, choices));
}

/** {@link chosenCells} in steps. */
export function* chosenSteps(
  clubs: Matrix,
  rows: readonly number[],
  choices: Choices,
): Generator<Progress, TableCell[]> {
  const at = columnsAt(CLUBS, clubs[0] ?? []);
  const columns = CHOICE_KEYS.map((key) => ({ key, column: at(key) }));
  const forAll = new Set(rowsForAll(clubs, rows, choices));
  const cells: TableCell[] = [];
  for (const [done, row] of rows.entries()) {
    if (done % ROWS_A_STEP === 0) yield { done, of: rows.length };
    const line = clubs[row];
    if (line === undefined || row < 1) continue;
    const decided = decidedFor(row, forAll.has(row), choices);
    const newMass = massFor(line[at('newItem')], decided);
    for (const { key, column } of columns) {
      const value = key === 'newMass' ? newMass : decided[key];
      if (value !== undefined && column >= 0) cells.push({ row, column, value: value === '' ? null : value });
    }
  }
  return cells;
}

/** Headings that a table of clubs lacks although something was decided for them; blanking a missing column asks nothing. */
export function lackingChoices(clubs: Matrix, rows: readonly number[], choices: Choices): string[] {
  const at = columnsAt(CLUBS, clubs[0] ?? []);
  const missing = CHOICE_KEYS.filter((key) => at(key) < 0);
  if (missing.length === 0) return [];
  const forAll = new Set(rowsForAll(clubs, rows, choices));
  const decided = rows.map((row) => decidedFor(row, forAll.has(row), choices));
  return missing
    .filter((key) => decided.some((each) => each[key] != null && each[key] !== ''))
    .map((key) => columnOf(CLUBS, key).header);
}

/** The same clubs under headings of which none is lacking: a plan can be shown before the list has the columns it asks for. */
function withHeadings(clubs: Matrix, lacking: readonly string[]): Matrix {
  const headers = clubs[0] ?? [];
  if (lacking.length === 0) return clubs;
  const wider = [...headers, ...lacking];
  const [called, told] = [calledBy(headers), toldBy(headers)];
  if (called) callBy(wider, called);
  if (told) tellBy(wider, told);
  return [wider, ...clubs.slice(1)];
}

/** What is decided for one club: its own decisions, then those for all. */
function decidedFor(row: number, likeAll: boolean, choices: Choices): ClubChoices {
  const own = choices.perClub?.get(row);
  const all: ClubChoices = likeAll ? choices : {};
  if (!own) return all;
  return Object.fromEntries(
    [...CHOICE_KEYS, 'massOf' as const].map((key) => [key, own[key] === undefined ? all[key] : own[key]]),
  ) as ClubChoices;
}

/** The mass that goes with the grip; another grip's is blanked, and one that was weighed of another is not taken. */
function massFor(chosenNow: unknown, decided: ClubChoices): number | null | undefined {
  const other = anotherGrip(chosenNow, decided);
  const { newMass, massOf } = decided;
  const meant = massOf === undefined || folded(decided.newItem ?? chosenNow) === folded(massOf);
  return meant && newMass !== undefined ? newMass : other ? null : undefined;
}

/** Whether the grip decided on is another than the one that is chosen already. */
function anotherGrip(chosenNow: unknown, { newItem }: ClubChoices): boolean {
  return newItem !== undefined && folded(chosenNow) !== folded(newItem);
}

/** The rows, of those given, to which what is decided for all goes. */
function rowsForAll(clubs: Matrix, rows: readonly number[], choices: Choices): readonly number[] {
  if (!choices.exceptPutters) return rows;
  const kind = kindIn(clubs);
  const others = rows.filter((row) => folded(kind(clubs[row] ?? [])) !== 'putter');
  return others.length > 0 ? others : rows;
}

/** The kind of a club by its heading, or by what tells it where no heading does. */
function kindIn(clubs: Matrix): (line: readonly unknown[]) => string {
  const at = columnsAt(CLUBS, clubs[0] ?? []);
  const told = toldBy(clubs[0] ?? []);
  const position = at(told?.by ?? 'kind');
  return (line) => {
    const text = String(line[position] ?? '');
    return told ? String(told.tell(text) ?? '') : text;
  };
}

/**
 * What Clubs will hold once the choices are written: the same for the preview and for the writing. A column that it lacks comes last, as
 * where it is added.
 *
 * @param clubs header row first; it is not changed
 * @param rows body rows, counted from 1; rows that the table does not have are passed over
 */
export function withChoices(clubs: Matrix, rows: readonly number[], choices: Choices): Matrix {
  return drained(withChoicesSteps(clubs, rows, choices));
}

/** {@link withChoices} in steps. */
export function* withChoicesSteps(
  known: Matrix,
  rows: readonly number[],
  choices: Choices,
): Generator<Progress, Matrix> {
  const next = new Map<number, unknown[]>();
  const clubs = withHeadings(known, lackingChoices(known, rows, choices));
  const width = clubs[0]?.length ?? 0;
  const cells = yield* chosenSteps(clubs, rows, choices);
  for (const [done, { row, column, value }] of cells.entries()) {
    if (done % ROWS_A_STEP === 0) yield { done, of: cells.length };
    const line = next.get(row) ?? asWide(clubs[row] ?? [], width);
    line[column] = value;
    next.set(row, line);
  }
  return clubs.map((line, row) => next.get(row) ?? line);
}

function asWide(line: readonly unknown[], width: number): unknown[] {
  return line.length < width ? [...line, ...Array<null>(width - line.length).fill(null)] : [...line];
}
