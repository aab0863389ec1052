/** Tax on lines: added to prices before tax, or taken out of prices with it. */
import { powerOfTen, readAmount, timesDecimal, type AmountCell, type Decimal } from '../decimal';
import {
  currencyOf,
  moneyOf,
  rounded,
  roundedApart,
  roundedTogether,
  type Currency,
  type Money,
  type RoundingRule,
} from '../money';
import { ok, type Result } from '../result';
import { amountRule } from './discount';
import { readPercent } from './percent';
import { AMOUNT_LIMITS, QUANTITY_LIMITS } from './read';
import type { PricesAre, Rounding } from './types';

/** What stands over and under the line of a tax: `price × numerator / denominator`. */
interface Fraction {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/** Of a price before tax it is `r / 100`; of a price with tax `r / (100 + r)`, which leaves `100 / (100 + r)` as net. */
function fractionOf(percent: Decimal, prices: PricesAre): Fraction {
  const hundred = 100n * powerOfTen(percent.scale);
  return { numerator: percent.digits, denominator: prices === 'withTax' ? hundred + percent.digits : hundred };
}

/**
 * Tax of each line under one rate, in minor units.
 *
 * By line each tax is rounded for itself. By quote the tax on all of them is rounded once, and the lines' taxes by largest
 * remainder so that they add up to it. Source of the choice: Streamlined Sales and Use Tax Agreement, s. 324.
 */
export function taxesOf(
  prices: readonly bigint[],
  percent: Decimal,
  are: PricesAre,
  { rule, at }: Rounding,
): readonly bigint[] {
  const { numerator, denominator } = fractionOf(percent, are);
  const exact = prices.map((price) => price * numerator);
  return at === 'line' ? roundedApart(exact, denominator, rule) : roundedTogether(exact, denominator, rule);
}

/** One line on its own, as cells hold it. */
export interface LineTaxRequest {
  readonly quantity: AmountCell;
  readonly unitPrice: AmountCell;
  readonly taxPercent: AmountCell;
  readonly currency: string;
  readonly prices: PricesAre;
  readonly rule: RoundingRule;
}

export interface LineTax {
  readonly net: Money;
  readonly tax: Money;
  readonly gross: Money;
}

/**
 * Net, tax and gross of one line.
 *
 * Formula: `tax = quantity × price × r / 100` on a price before tax, `× r / (100 + r)` on a price with tax; the line is rounded to
 * the minor unit before it is taxed.
 *
 * @returns the issue of the first cell that is no such amount
 * @example lineTax({ quantity: 13, unitPrice: '6.50', taxPercent: 20, currency: 'EUR', prices: 'beforeTax', rule: 'halfUp' })
 * //=> net 84.50, tax 16.90, gross 101.40
 */
export function lineTax(request: LineTaxRequest): Result<LineTax> {
  const currency = currencyOf(request.currency);
  if (!currency.ok) return currency;
  const quantity = readAmount(request.quantity, 'Quantity', QUANTITY_LIMITS);
  if (!quantity.ok) return quantity;
  const unitPrice = readAmount(request.unitPrice, 'Price', AMOUNT_LIMITS);
  if (!unitPrice.ok) return unitPrice;
  const percent = readPercent(request.taxPercent, 'Tax (%)');
  if (!percent.ok) return percent;
  const price = moneyOf(timesDecimal(quantity.value, unitPrice.value), currency.value, amountRule(request.rule)).minor;
  const { numerator, denominator } = fractionOf(percent.value, request.prices);
  return ok(parts(price, rounded(price * numerator, denominator, request.rule), request.prices, currency.value));
}

/** Net and gross of a price, given the tax in it or on it. */
export function parts(price: bigint, tax: bigint, prices: PricesAre, currency: Currency): LineTax {
  const net = prices === 'withTax' ? price - tax : price;
  const money = (minor: bigint): Money => ({ minor, currency });
  return { net: money(net), tax: money(tax), gross: money(net + tax) };
}
