/** What is taken off, and from which line. Never more than there is. */
import { digitsAt, powerOfTen, type Decimal } from '../decimal';
import { moneyOf, rounded, shared, type Currency, type RoundingRule } from '../money';
import type { ReadDiscount } from './read';

/** Amounts are rounded to the nearer minor unit even where tax is rounded down: that concession is about tax. */
export function amountRule(rule: RoundingRule): RoundingRule {
  return rule === 'down' ? 'halfUp' : rule;
}

/** Minor units. */
export interface TakenOff {
  readonly wanted: bigint;
  readonly taken: bigint;
}

/** What a discount comes to on a base in minor units: one amount, rounded once. */
export function takenOff(
  discount: ReadDiscount | undefined,
  base: bigint,
  currency: Currency,
  rule: RoundingRule,
): TakenOff {
  if (!discount) return { wanted: 0n, taken: 0n };
  const wanted =
    'percent' in discount
      ? partOf(base, discount.percent, amountRule(rule))
      : moneyOf(discount.amount, currency, amountRule(rule)).minor;
  return { wanted, taken: wanted > base ? base : wanted };
}

/** So many per cent of an amount in minor units. */
function partOf(base: bigint, percent: Decimal, rule: RoundingRule): bigint {
  return rounded(base * percent.digits, 100n * powerOfTen(percent.scale), rule);
}

/** A discount over several lines, shared out by what each line comes to. */
export function sharedDiscount(taken: bigint, bases: readonly bigint[]): bigint[] {
  return shared(taken, bases);
}

/** Digits of decimals on one scale, to be added and rounded as one. */
export function onOneScale(values: readonly Decimal[]): { readonly digits: bigint[]; readonly scale: number } {
  const scale = values.reduce((most, value) => Math.max(most, value.scale), 0);
  return { digits: values.map((value) => digitsAt(value, scale)), scale };
}
