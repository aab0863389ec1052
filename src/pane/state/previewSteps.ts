import type { Progress, Result } from '../../core/index';
import { withChoicesSteps, type Choices } from '../../workbook/choices';
import { headerRowsOf } from '../../workbook/planScope';
import { planSteps, type Planned } from '../../workbook/planTables';
import type { Shop } from '../../workbook/shop';

/** The plan of some rows of Clubs as it would be with the choices written, and what is wrong outside these rows; in steps. */
export function* previewSteps(
  { matrices, tables }: Shop,
  rows: readonly number[],
  choices: Choices,
): Generator<Progress, Result<Planned>> {
  return yield* planSteps({
    clubs: yield* withChoicesSteps(matrices.Clubs ?? [], rows, choices),
    stock: matrices.Stock,
    settings: matrices.Settings,
    weights: matrices.Weights,
    tape: matrices.Tape,
    rows,
    headerRows: headerRowsOf(tables),
  });
}
