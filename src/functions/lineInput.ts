/** The cells of one priced line, for the functions that tax it. */
import { ROUNDING_RULES, type LineTaxRequest } from '../core/index';
import { ROUNDING_WORDS } from '../words/moneyChoices';
import { YES_NO } from '../workbook/schema';
import * as cell from './cellInput';

/** Most currencies have two decimals; any of them rounds as this one does. */
const TWO_DECIMALS = 'EUR';

/** What is asked about a line; which cell is wrong is said in the argument's name. */
export interface LineCells {
  readonly quantity: unknown;
  readonly price: unknown;
  readonly taxPercent: unknown;
  readonly included: unknown;
  readonly currency: unknown;
  readonly rounding: unknown;
}

/**
 * A line as the core taxes it.
 *
 * @example lineFrom({ quantity: 13, price: 6.5, taxPercent: 20, included: 'Yes', currency: null, rounding: null }).prices //=> 'withTax'
 */
export function lineFrom(cells: LineCells): LineTaxRequest {
  const words = ROUNDING_RULES.map((rule) => ROUNDING_WORDS[rule]);
  const word = cell.optionalChoice(cells.rounding, 'rounding', words);
  return {
    quantity: cell.amount(cells.quantity, 'quantity'),
    unitPrice: cell.amount(cells.price, 'price'),
    taxPercent: cell.amount(cells.taxPercent, 'taxPercent'),
    currency: cell.optionalText(cells.currency, 'currency') ?? TWO_DECIMALS,
    prices: cell.optionalChoice(cells.included, 'included', YES_NO) === 'Yes' ? 'withTax' : 'beforeTax',
    rule: ROUNDING_RULES.find((rule) => ROUNDING_WORDS[rule] === word) ?? 'halfUp',
  };
}
