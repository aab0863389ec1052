import type { Result } from '../../core/index';
import { withChoices, type Choices } from '../../workbook/choices';
import { headerRowsOf } from '../../workbook/planScope';
import { planTables, type Planned } from '../../workbook/planTables';
import type { Shop } from '../../workbook/shop';

/** The plan of some rows of Clubs as it would be with the choices written, and what is wrong outside these rows. */
export function previewOf({ matrices, tables }: Shop, rows: readonly number[], choices: Choices): Result<Planned> {
  return planTables({
    clubs: withChoices(matrices.Clubs ?? [], rows, choices),
    stock: matrices.Stock,
    settings: matrices.Settings,
    weights: matrices.Weights,
    tape: matrices.Tape,
    rows,
    headerRows: headerRowsOf(tables),
  });
}
