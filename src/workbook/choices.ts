/** What a person decides for some clubs, and what Clubs holds once it is written. */
import { columnsAt, folded } from './headings';
import { CLUBS, columnOf } from './schema';
import type { Matrix } from './records';

/** One decision a column; `undefined` leaves the cells as they are, `null` blanks them. */
export interface Choices {
  readonly newItem?: string | null;
  readonly layers?: number | null;
  readonly lowerLayers?: number | null;
  readonly targetDiameter?: number | null;
  readonly hold?: string | null;
  /** A reading as written: `D2`, or points as a number. */
  readonly target?: string | number | null;
  readonly tolerance?: number | null;
  readonly weighting?: string | null;
  /** Putters keep what their rows say, unless there is nothing but putters: what suits a set seldom suits its putter. */
  readonly exceptPutters?: boolean;
}

const CHOICE_KEYS = [
  'newItem',
  'layers',
  'lowerLayers',
  'targetDiameter',
  'hold',
  'target',
  'tolerance',
  'weighting',
] as const satisfies readonly Exclude<keyof Choices, 'exceptPutters'>[];

/** A decision with the column of Clubs it goes to, counted from 0. */
export interface Chosen {
  readonly column: number;
  readonly value: string | number | null;
}

/** The decisions that were made, each with its column in Clubs; those whose column the table lacks are left out. */
export function chosenColumns(clubs: Matrix, choices: Choices): Chosen[] {
  const at = columnsAt(CLUBS, clubs[0] ?? []);
  return CHOICE_KEYS.flatMap((key) => {
    const value = choices[key];
    const column = at(key);
    return value === undefined || column < 0 ? [] : [{ column, value: value === '' ? null : value }];
  });
}

/** Headings that a table of clubs lacks although something was decided for them; blanking a missing column asks nothing. */
export function lackingChoices(clubs: Matrix, choices: Choices): string[] {
  const at = columnsAt(CLUBS, clubs[0] ?? []);
  return CHOICE_KEYS.filter((key) => choices[key] != null && choices[key] !== '' && at(key) < 0).map(
    (key) => columnOf(CLUBS, key).header,
  );
}

/** The rows, of those given, that the choices go to. */
export function rowsChosen(clubs: Matrix, rows: readonly number[], choices: Choices): readonly number[] {
  const kind = columnsAt(CLUBS, clubs[0] ?? [])('kind');
  if (!choices.exceptPutters || kind < 0) return rows;
  const others = rows.filter((row) => folded(String(clubs[row]?.[kind] ?? '')) !== 'putter');
  return others.length > 0 ? others : rows;
}

/**
 * What Clubs will hold once the choices are written: the same for the preview and for the writing.
 *
 * @param clubs header row first; it is not changed
 * @param rows body rows, counted from 1; rows that the table does not have are passed over
 */
export function withChoices(clubs: Matrix, rows: readonly number[], choices: Choices): Matrix {
  const chosen = chosenColumns(clubs, choices);
  const concerned = new Set(rowsChosen(clubs, rows, choices));
  return clubs.map((row, number) => {
    if (number === 0 || !concerned.has(number)) return row;
    const next = [...row];
    for (const { column, value } of chosen) next[column] = value;
    return next;
  });
}
