/** One way by which a host takes text or formulas, and the files of `src/workbook` that may go it. */
export interface Way {
  readonly may: readonly string[];
  readonly assigned?: readonly string[];
  readonly called?: readonly string[];
  readonly key?: readonly string[];
  /** How many of them, as in `>1`. */
  readonly withArguments?: string;
}

interface Restriction {
  readonly selector: string;
  readonly message: string;
}

export const ways: readonly Way[];
export const exempt: readonly string[];
export function banned(way: Way): Restriction[];
export function restricted(file?: string): Restriction[];
