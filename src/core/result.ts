/**
 * What the core answers: a value, or the reason why there is none.
 *
 * The core never throws and never makes sentences. It says which field was wrong, what it got and what it expected, as data;
 * `src/words` turns that into a sentence where a person reads it.
 */

/** Why a value was refused. Each code has its sentence in `src/words/issues.ts`. */
export type IssueCode =
  /** nothing was given where something is needed */
  | 'blank'
  /** not a number */
  | 'notNumber'
  /** text that two readers would take for two different numbers, such as 1,234 */
  | 'ambiguous'
  /** a number where text is needed, or text that is none of the known choices */
  | 'unknownChoice'
  /** a number below or above what is accepted */
  | 'outOfRange'
  /** a length out of range that millimetres or centimetres would explain */
  | 'unitMistaken'
  /** a count that is not whole */
  | 'notWhole'
  /** text that is not a swing weight reading such as D2 */
  | 'notReading'
  /** points that no letter of the scale stands for */
  | 'offScale'
  /** seat smaller than the grip's core: the grip would turn */
  | 'looseCore'
  /** even the fewest layers measure more than the target */
  | 'overTarget'
  /** more layers than can be fitted would be needed */
  | 'tooManyLayers'
  /** a position at the fulcrum, where no mass changes the reading */
  | 'atFulcrum'
  /** an item that the stock list does not hold */
  | 'unknownItem'
  /** a way of weighting that the list does not hold */
  | 'unknownWay'
  /** the same key twice */
  | 'duplicate'
  /** a table without a column that is needed */
  | 'missingColumn'
  /** a table without rows */
  | 'noRows'
  /** values that cannot both be true */
  | 'contradiction'
  /** fewer measurements than it takes to tell */
  | 'tooFew'
  /** measurements in which two unknowns always change together */
  | 'inseparable'
  /** a spreadsheet error in a cell that is needed */
  | 'cellError';

/** What was wrong. `field` is the name of the argument or column as the reader knows it. */
export interface Issue {
  readonly code: IssueCode;
  readonly field: string;
  /** What was there, as given. */
  readonly got?: string | number | boolean | null;
  /** What would have been accepted, with its unit: `15 to 220 g`. */
  readonly expected?: string;
  /** Another number that the sentence needs (layers that fill the core, points off the scale, inches that millimetres are). */
  readonly detail?: number;
  /** What the list is called that it is about, where that is not the table's own name. */
  readonly list?: string;
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issue: Issue };

/** Wraps a value. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** Wraps a reason. */
export function fail(issue: Issue): { readonly ok: false; readonly issue: Issue } {
  return { ok: false, issue };
}
