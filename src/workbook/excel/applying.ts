/** What an apply works on, known to the writing and to the putting back. */
import type { ApplyOptions, Change } from '../port';
import type { Looked } from '../shared/looked';
import type { ExcelHost, Extras } from './host';
import type { Stood } from './standing';
import type { Quiet } from './takeBack';

/** Everything an apply works on. */
export interface Applying {
  readonly host: ExcelHost;
  readonly extras: Extras;
  readonly quiet: Quiet;
  readonly changes: readonly Change[];
  readonly looked: Looked;
  readonly options: ApplyOptions;
  /** What the last round trip told. */
  readonly stood: Stood;
  /** Settings as last known, for a failing host that does not answer what it held. */
  readonly kept: ReadonlyMap<string, string | null>;
}
