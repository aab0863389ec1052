import type { Estimator } from '../core/index';
import { ESTIMATORS } from '../workbook/schema';
import { cellError } from './cellError';
import { optionalText } from './cellInput';

const words = `1 or ${ESTIMATORS[1]}, or blank or ${ESTIMATORS[0]}`;

/**
 * Which estimator of build-up a cell names: 1 or Additive is additive, blank or By volume is by volume.
 *
 * @example growthOf(1) //=> 'additive'
 */
export function growthOf(given: unknown): Estimator {
  const text = optionalText(given, 'growth', words)?.toLowerCase();
  if (text === undefined || text === ESTIMATORS[0].toLowerCase()) return 'volume';
  if (text === '1' || text === ESTIMATORS[1].toLowerCase()) return 'additive';
  throw cellError({ code: 'unknownChoice', field: 'growth', got: text, expected: words });
}
