/**
 * Money in whole minor units of a currency of ISO 4217, and the rules by which fractions of a minor unit are rounded.
 *
 * On dinero.js, which brings the currencies of the standard and the roundings; the one package that the core imports, since exact
 * decimal money is a thing that many people have looked at more closely than a golf workshop's add-in should.
 */
import { calculator, dinero, down, halfAwayFromZero, halfEven, toDecimal } from 'dinero.js/bigint';
import type { Dinero, DineroCurrency } from 'dinero.js/bigint';
import * as currencies from 'dinero.js/bigint/currencies';
import { type Decimal, powerOfTen } from './decimal';
import { fail, ok, type Result } from './result';

export interface Currency {
  /** Three letters. */
  readonly code: string;
  /** Decimals of the minor unit: JPY 0, EUR 2, KWD 3. */
  readonly minorDigits: number;
}

/** An amount in whole minor units. */
export interface Money {
  readonly minor: bigint;
  readonly currency: Currency;
}

/**
 * How a fraction of a minor unit is rounded.
 *
 * `halfUp`: to the nearer one, a half away from zero. This is what the Streamlined Sales and Use Tax Agreement asks for in s. 324
 * (tax is carried to the third decimal and goes up a cent where that is greater than four) and HMRC in VATREC12030 (less than half
 * a penny down, half a penny or more up). `halfEven`: a half to the even neighbour. `down`: towards zero. HMRC's VATREC12010 allows
 * traders who invoice to round the whole invoice's tax down to a penny, and a single line's to a tenth of one at most; by
 * VATREC12020 that is, as a general rule, not for retailers. Which rule a shop is under is for its adviser to say.
 */
export const ROUNDING_RULES = ['halfUp', 'halfEven', 'down'] as const;
export type RoundingRule = (typeof ROUNDING_RULES)[number];

type Divide = (amount: bigint, by: bigint) => bigint;

/** On the library's roundings, which take any divisor. Its `down` goes to minus infinity; ours towards zero. */
const DIVIDE: Readonly<Record<RoundingRule, Divide>> = {
  halfUp: (amount, by) => halfAwayFromZero(amount, by, calculator),
  halfEven: (amount, by) => halfEven(amount, by, calculator),
  down: (amount, by) => (amount < 0n ? -down(-amount, by, calculator) : down(amount, by, calculator)),
};

/**
 * Two currencies are divided into fifths, and the library counts them so. ISO 4217 publishes two decimals for both (list one, minor
 * unit), and prices in them are written with decimals.
 */
const DECIMALS_OF_FIFTHS = 2;

const BY_CODE: ReadonlyMap<string, Currency> = new Map(
  Object.values<DineroCurrency<bigint>>(currencies).map(({ code, base, exponent }) => [
    code,
    { code, minorDigits: base === 10n ? Number(exponent) : DECIMALS_OF_FIFTHS },
  ]),
);

/** Codes of the currencies there are, in the order of the alphabet. */
export const CURRENCY_CODES: readonly string[] = [...BY_CODE.keys()].sort();

/**
 * The currency of a code of ISO 4217.
 *
 * @returns blank or unknownChoice where there is none
 * @example currencyOf('JPY') //=> { code: 'JPY', minorDigits: 0 }
 */
export function currencyOf(code: string | null | undefined, field = 'Currency'): Result<Currency> {
  const expected = 'a code of ISO 4217 in three letters, such as EUR';
  const wanted = (code ?? '').trim();
  if (wanted === '') return fail({ code: 'blank', field, expected });
  const currency = BY_CODE.get(wanted.toUpperCase());
  return currency ? ok(currency) : fail({ code: 'unknownChoice', field, got: wanted, expected });
}

/** An amount in the library's keeping. */
function kept({ minor, currency }: Money): Dinero<bigint> {
  return dinero({ amount: minor, currency: libraryCurrency(currency) });
}

function libraryCurrency({ code, minorDigits }: Currency): DineroCurrency<bigint> {
  return { code, base: 10n, exponent: BigInt(minorDigits) };
}

export function noMoney(currency: Currency): Money {
  return { minor: 0n, currency };
}

/** A decimal in whole minor units. */
export function moneyOf(amount: Decimal, currency: Currency, rule: RoundingRule = 'halfUp'): Money {
  return { minor: rounded(amount.digits * minorPerUnit(currency), powerOfTen(amount.scale), rule), currency };
}

/** Difference of two amounts; both are in one currency, which whoever brings amounts together has looked at. */
export function subtractMoney(one: Money, other: Money): Money {
  return { minor: one.minor - other.minor, currency: one.currency };
}

/** Whole numbers are added as they are: a library's object for each would take longer than all else in a quote. */
export function sumMoney(amounts: readonly Money[], currency: Currency): Money {
  return { minor: amounts.reduce((sum, { minor }) => sum + minor, 0n), currency };
}

/** `84.00`: as many decimals as the currency has, a point, and a hyphen for minus. */
export function moneyDecimal(money: Money): string {
  return toDecimal(kept(money));
}

/** The amount as a cell holds it. */
export function moneyNumber(money: Money): number {
  return Number(moneyDecimal(money));
}

/** How many minor units make one of the currency, by their decimals. */
export function minorPerUnit({ minorDigits }: Currency): bigint {
  return powerOfTen(minorDigits);
}

/** A quotient as a whole number. The divisor is above 0. */
export function rounded(numerator: bigint, denominator: bigint, rule: RoundingRule): bigint {
  return DIVIDE[rule](numerator, denominator);
}

/** Each quotient rounded for itself: their sum may be off the sum's own rounding by half a minor unit for each. */
export function roundedApart(numerators: readonly bigint[], denominator: bigint, rule: RoundingRule): bigint[] {
  return numerators.map((numerator) => rounded(numerator, denominator, rule));
}

/**
 * Quotients rounded so that they add up to their rounded sum.
 *
 * Largest remainder: each is cut to the whole below it, and what is then missing to the rounded sum goes, a unit each, to those
 * that lost most; of equals the first. None is off by a whole unit. Nothing may be below 0.
 *
 * @example roundedTogether([5n, 5n, 5n], 10n, 'halfUp') //=> [1n, 1n, 0n], whose sum is 1.5 rounded
 */
export function roundedTogether(numerators: readonly bigint[], denominator: bigint, rule: RoundingRule): bigint[] {
  const sum = numerators.reduce((total, each) => total + each, 0n);
  const whole = numerators.map((each) => each / denominator);
  const missing = rounded(sum, denominator, rule) - whole.reduce((total, each) => total + each, 0n);
  const lost = numerators.map((each, at) => ({ at, remainder: each % denominator }));
  lost.sort((one, other) =>
    one.remainder === other.remainder ? one.at - other.at : one.remainder > other.remainder ? -1 : 1,
  );
  for (const { at } of lost.slice(0, Number(missing))) whole[at] = (whole[at] ?? 0n) + 1n;
  return whole;
}

/**
 * An amount shared out in proportion, to the last minor unit, by largest remainder. A share is never more than its weight where the
 * whole amount is not more than all weights.
 */
export function shared(minor: bigint, weights: readonly bigint[]): bigint[] {
  const all = weights.reduce((total, each) => total + each, 0n);
  if (all === 0n) return weights.map(() => 0n);
  return roundedTogether(
    weights.map((weight) => weight * minor),
    all,
    'halfUp',
  );
}
