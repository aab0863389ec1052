/** What a person decides for some clubs, and what Clubs holds once it is written. */
import { CLUBS } from './schema';
import type { Column } from './schema';
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
}
