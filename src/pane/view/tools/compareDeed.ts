/** Writing a comparison into a sheet of its own. */
import type { Comparison } from '../../../core/index';
import { fillCompare } from '../../../workbook/fillCompare';
import { sayCompared } from '../../../words/chooseOutcomes';
import type { Deed } from '../../state/deed';
import { scopeOf } from '../../state/seen';
import type { Who } from '../../state/work';

interface Compared {
  readonly who: Who;
  readonly rows: readonly number[];
  readonly comparison: Comparison;
  /** What was compared, in a sentence. */
  readonly about: string;
}

export function compareDeed({ who, rows, comparison, about }: Compared): Deed {
  return {
    doing: 'Writing the comparison…',
    done: 'Comparison written',
    failed: 'The comparison was not written',
    run: async (port, shop, over) => {
      const request = { scope: scopeOf(who, rows), comparison, about, agreed: over ?? undefined };
      const end = await fillCompare(port, shop, request);
      return { end, text: sayCompared(end) };
    },
  };
}
