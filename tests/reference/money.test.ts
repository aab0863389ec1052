import fc from 'fast-check';
import { all, create, type BigNumber } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  CURRENCY_CODES,
  currencyOf,
  decimalText,
  lineTax,
  moneyDecimal,
  quoteOf,
  rounded,
  ROUNDING_RULES,
  type Discount,
  type LineClass,
  type Money,
  type Quote,
  type QuoteInput,
  type QuoteLine,
  type RoundingRule,
} from '../../src/core/index';
import { valueOf } from '../core/make';
import { ISO_4217_MINOR_UNITS } from './iso4217';

describe('minor units against ISO 4217', () => {
  const published = Object.entries(ISO_4217_MINOR_UNITS).flatMap(([digits, codes]) =>
    codes.split(' ').map((code) => [code, Number(digits)] as const),
  );

  it.each(published)('%s has %i decimals', (code, digits) => {
    expect(valueOf(currencyOf(code))).toEqual({ code, minorDigits: digits });
  });

  it('there is no other currency, but an accounting unit that came into the list after that edition (memory)', () => {
    const known = new Set(published.map(([code]) => code));
    expect(CURRENCY_CODES.filter((code) => !known.has(code))).toEqual(['XAD']);
  });
});

/** Java SE 17 API, `java.math.RoundingMode`, the summary table of its class comment: columns HALF_UP, HALF_EVEN, DOWN. */
const ROUNDING_TABLE: readonly (readonly [string, number, number, number])[] = [
  ['5.5', 6, 6, 5],
  ['2.5', 3, 2, 2],
  ['1.6', 2, 2, 1],
  ['1.1', 1, 1, 1],
  ['1.0', 1, 1, 1],
  ['-1.0', -1, -1, -1],
  ['-1.1', -1, -1, -1],
  ['-1.6', -2, -2, -1],
  ['-2.5', -3, -2, -2],
  ['-5.5', -6, -6, -5],
];

describe('named roundings against a published table', () => {
  it.each(ROUNDING_TABLE)('%s', (input, halfUp, halfEven, down) => {
    const tenths = BigInt(input.replace('.', ''));
    expect(rounded(tenths, 10n, 'halfUp')).toBe(BigInt(halfUp));
    expect(rounded(tenths, 10n, 'halfEven')).toBe(BigInt(halfEven));
    expect(rounded(tenths, 10n, 'down')).toBe(BigInt(down));
  });
});

const cents = (minor: number): string => decimalText({ digits: BigInt(minor), scale: 2 }, 4);

function taxOf(minor: number, percent: string, rule: RoundingRule = 'halfUp'): string {
  const request = { quantity: 1, unitPrice: cents(minor), taxPercent: `${percent}%`, currency: 'USD', rule };
  return moneyDecimal(valueOf(lineTax({ ...request, prices: 'beforeTax' })).tax);
}

describe('tax against published rules', () => {
  /**
   * Streamlined Sales and Use Tax Agreement, s. 324, as enacted in R.I. Gen. Laws § 44-18.1-25: carried to the third decimal, and up
   * to the next cent whenever that is greater than four. Written here as the rule says it, digit by digit.
   */
  it('half up is the third decimal greater than four', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 ** 7 }), fc.integer({ min: 0, max: 20_000 }), (minor, thousandths) => {
        const exact = String(BigInt(minor) * BigInt(thousandths)).padStart(9, '0');
        const [whole, carried] = [exact.slice(0, -7), exact.slice(-7, -4)];
        const up = Number(carried[2]) > 4 ? 1n : 0n;
        const wanted = BigInt(whole + carried.slice(0, 2)) + up;
        expect(taxOf(minor, decimalText({ digits: BigInt(thousandths), scale: 3 }, 4))).toBe(
          decimalText({ digits: wanted, scale: 2 }),
        );
      }),
    );
  });

  it.each([
    // worked by the rule: 8.25 % of 1.50 is 0.123|75, of 1.51 is 0.124|575, of 1.52 is 0.125|4
    [150, '0.12'],
    [151, '0.12'],
    [152, '0.13'],
  ])('%s cents at 8.25 %%', (minor, tax) => {
    expect(taxOf(minor, '8.25')).toBe(tax);
  });

  it('HMRC VATREC12030: less than half a penny down, half a penny or more up', () => {
    // 20 % of 2 pence is 0.4 penny; 5 % of 10 pence is 0.5 penny
    expect(taxOf(2, '20')).toBe('0.00');
    expect(taxOf(10, '5')).toBe('0.01');
  });

  it('HMRC VATREC12010: what an invoice trader may round down is rounded down', () => {
    // 20 % of 4 pence is 0.8 penny
    expect(taxOf(4, '20', 'down')).toBe('0.00');
    expect(taxOf(4, '20')).toBe('0.01');
  });
});

/* ---------------------------------------------------------------- random quotes, by a decimal library that no one here wrote */

const math = create(all ?? {}, { number: 'BigNumber', precision: 80 });
const big = (text: string | number): BigNumber => math.bignumber(String(text));
const MODES: Readonly<Record<RoundingRule, number>> = { halfUp: 4, halfEven: 6, down: 1 };

/** Rounds as decimal.js does, which mathjs's big numbers are. */
function roundTo(value: BigNumber, digits: number, rule: RoundingRule): BigNumber {
  return value.toDecimalPlaces(digits, MODES[rule] as never);
}

const sumOf = (values: readonly BigNumber[]): BigNumber => values.reduce((total, each) => total.plus(each), big(0));
const bigOf = (money: Money): BigNumber => big(moneyDecimal(money));

/** Text with four decimals at least, so that no reading of it is in doubt, sometimes with a comma. */
const amountText = (most: number) =>
  fc
    .tuple(fc.bigInt({ min: 0n, max: BigInt(most) * 10_000n }), fc.boolean())
    .map(([digits, comma]) => decimalText({ digits, scale: 4 }, 4).replace('.', comma ? ',' : '.'));

/** So many thousandths of a per cent: with the sign where that is asked for, and now and then where it is not. */
const percentOf = (thousandths: number): number | string =>
  thousandths < 1000 || thousandths % 3 === 0 ? `${thousandths / 1000} %` : thousandths / 1000;

const discountArb: fc.Arbitrary<Discount | undefined> = fc.option(
  fc.oneof(
    fc.integer({ min: 0, max: 1000 }).map((tenths) => ({ percent: percentOf(tenths * 100) })),
    amountText(60).map((amount) => ({ amount })),
  ),
  { nil: undefined },
);

const lineArb: fc.Arbitrary<QuoteLine> = fc.record({
  class: fc.constantFrom<LineClass>('grip', 'fitting', 'buildUp', 'other'),
  description: fc.constant('line'),
  quantity: fc.oneof(
    fc.integer({ min: 0, max: 30 }),
    fc.integer({ min: 0, max: 300 }).map((tenths) => tenths / 10),
  ),
  unitPrice: amountText(40),
  unitCost: fc.option(amountText(20), { nil: undefined }),
  tax: fc.constantFrom(undefined, 'A', 'B', 'None'),
  discount: discountArb,
});

const inputArb: fc.Arbitrary<QuoteInput> = fc.record({
  currency: fc.constantFrom('EUR', 'JPY', 'KWD'),
  prices: fc.constantFrom('beforeTax', 'withTax'),
  taxes: fc.tuple(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 0, max: 30_000 })).map(([a, b]) => [
    { name: 'A', percent: percentOf(a) },
    { name: 'B', percent: `${decimalText({ digits: BigInt(b), scale: 3 }, 4)}%` },
  ]),
  rounding: fc.record({
    rule: fc.constantFrom<RoundingRule>(...ROUNDING_RULES),
    at: fc.constantFrom('line', 'quote'),
  }),
  setDiscount: discountArb,
  jobDiscount: discountArb,
  deposit: discountArb,
  minimum: fc.option(amountText(50), { nil: undefined }),
  lines: fc.array(lineArb, { minLength: 1, maxLength: 9 }),
});

const cell = (value: unknown): BigNumber => big(String(value).replace(',', '.').replace(/ ?%$/, ''));
/** So far as amounts go: rounding down is for tax alone. */
const forAmounts = (rule: RoundingRule): RoundingRule => (rule === 'down' ? 'halfUp' : rule);

function offBase(discount: Discount | undefined, base: BigNumber, digits: number, rule: RoundingRule): BigNumber {
  if (!discount) return big(0);
  const exact = 'percent' in discount ? base.times(cell(discount.percent)).div(100) : cell(discount.amount);
  return roundTo(exact, digits, forAmounts(rule));
}

/** What more is to be taken off than there is of, in the order in which it is refused. */
type Refused = { readonly line: number } | 'setDiscount' | 'jobDiscount';

/**
 * The same with every discount that is refused brought down to the most that its refusal names, and which those were. Nothing else may be
 * refused here, and each only once: the most is accepted.
 */
function asAccepted(asked: QuoteInput): { readonly input: QuoteInput; readonly refused: readonly Refused[] } {
  const named = (input: QuoteInput): QuoteInput => ({
    ...input,
    lines: input.lines.map((line, at) => ({
      ...line,
      discount: line.discount && { ...line.discount, field: `line ${at}` },
    })),
    setDiscount: input.setDiscount && { ...input.setDiscount, field: 'setDiscount' },
    jobDiscount: input.jobDiscount && { ...input.jobDiscount, field: 'jobDiscount' },
  });
  let input = named(asked);
  const refused: Refused[] = [];
  for (let made = quoteOf(input); !made.ok; made = quoteOf(input)) {
    const { code, field, got, detail } = made.issue;
    if (refused.length > input.lines.length + 2) throw new Error('refused again and again');
    expect(code).toBe('outOfRange');
    expect(Number(got)).toBeGreaterThan(detail ?? Infinity);
    const discount: Discount = { amount: detail, field };
    const at = /^line (\d+)$/.exec(field)?.[1];
    if (at === undefined) input = { ...input, [field]: discount };
    else input = { ...input, lines: input.lines.map((line, i) => (i === Number(at) ? { ...line, discount } : line)) };
    refused.push(at === undefined ? (field as 'setDiscount' | 'jobDiscount') : { line: Number(at) });
  }
  return { input, refused };
}

/** A discount that was refused and brought down takes all there is; one unit more is refused again. */
function expectBoundaries(quote: Quote, input: QuoteInput, refused: readonly Refused[]): void {
  const left = (lines: Quote['lines'], pick: (line: Quote['lines'][number]) => Money): BigNumber =>
    sumOf(lines.map((line) => bigOf(pick(line))));
  const unit = big(10).pow(-quote.currency.minorDigits);
  for (const each of refused) {
    if (each === 'jobDiscount')
      expect(left(quote.lines.slice(0, input.lines.length), ({ price }) => price).isZero()).toBe(true);
    else if (each === 'setDiscount') {
      const grips = quote.lines.filter((line) => line.class === 'grip');
      expect(left(grips, ({ amount }) => amount).equals(left(grips, ({ setDiscount }) => setDiscount))).toBe(true);
    } else {
      expect(quote.lines[each.line]?.amount.minor).toBe(0n);
      const amount = Number(
        bigOf(quote.lines[each.line]?.full as Money)
          .plus(unit)
          .toFixed(),
      );
      const more = input.lines.map((line, i) => (i === each.line ? { ...line, discount: { amount } } : line));
      expect(quoteOf({ ...input, lines: more }).ok).toBe(false);
    }
  }
}

/** What a set of lines share is one amount; each has its part, off by less than one unit. */
function expectShared(
  shares: readonly BigNumber[],
  bases: readonly BigNumber[],
  off: BigNumber,
  unit: BigNumber,
): void {
  expect(sumOf(shares).equals(off)).toBe(true);
  const base = sumOf(bases);
  shares.forEach((share, at) => {
    const exact = base.isZero() ? big(0) : off.times(bases[at] ?? 0).div(base);
    expect(share.minus(exact).abs().lessThan(unit)).toBe(true);
    expect(share.isNegative() && !share.isZero()).toBe(false);
    expect(share.greaterThan(bases[at] ?? 0)).toBe(false);
  });
}

interface Checked {
  readonly input: QuoteInput;
  readonly quote: Quote;
  readonly digits: number;
  readonly unit: BigNumber;
  readonly rule: RoundingRule;
}

function expectAmounts({ input, quote, digits, unit, rule }: Checked): void {
  const exact = input.lines.map((line) => cell(line.quantity).times(cell(line.unitPrice)));
  const fulls = quote.lines.slice(0, input.lines.length).map((line) => bigOf(line.full));
  exact.forEach((each, at) => {
    const full = fulls[at] ?? big(-1);
    if (input.rounding.at === 'line') expect(full.equals(roundTo(each, digits, forAmounts(rule)))).toBe(true);
    else expect(full.minus(each).abs().lessThan(unit)).toBe(true);
  });
  const whole = input.rounding.at === 'line' ? exact.map((each) => roundTo(each, digits, forAmounts(rule))) : exact;
  expect(sumOf(fulls).equals(roundTo(sumOf(whole), digits, forAmounts(rule)))).toBe(true);
}

function expectDiscounts({ input, quote, digits, unit, rule }: Checked): BigNumber {
  const lines = quote.lines.slice(0, input.lines.length);
  const amounts = lines.map((line, at) => {
    const off = offBase(input.lines[at]?.discount, bigOf(line.full), digits, rule);
    expect(bigOf(line.lineDiscount).equals(off)).toBe(true);
    return bigOf(line.full).minus(off);
  });
  const grips = amounts.map((amount, at) => (lines[at]?.class === 'grip' ? amount : big(0)));
  const onSet = offBase(input.setDiscount, sumOf(grips), digits, rule);
  const setShares = lines.map((line) => bigOf(line.setDiscount));
  expectShared(setShares, grips, onSet, unit);
  const left = amounts.map((amount, at) => amount.minus(setShares[at] ?? 0));
  const onJob = offBase(input.jobDiscount, sumOf(left), digits, rule);
  const jobShares = lines.map((line) => bigOf(line.jobDiscount));
  expectShared(jobShares, left, onJob, unit);
  const price = sumOf(left).minus(onJob);
  const minimum = input.minimum === undefined ? big(0) : roundTo(cell(input.minimum), digits, forAmounts(rule));
  return price.lessThan(minimum) ? minimum : price;
}

function expectTaxes({ input, quote, digits, unit, rule }: Checked): BigNumber {
  let all = big(0);
  for (const { name, percent } of input.taxes) {
    const lines = quote.lines.filter((line) => line.tax === name);
    const rate = cell(percent);
    const over = input.prices === 'withTax' ? rate.plus(100) : big(100);
    const exact = lines.map((line) => bigOf(line.price).times(rate).div(over));
    const byLine = exact.map((each) => roundTo(each, digits, rule));
    const tax =
      input.rounding.at === 'line'
        ? sumOf(byLine)
        : roundTo(
            sumOf(lines.map((line) => bigOf(line.price)))
              .times(rate)
              .div(over),
            digits,
            rule,
          );
    lines.forEach((line, at) => {
      const shown = bigOf(line.taxAmount);
      if (input.rounding.at === 'line') expect(shown.equals(byLine[at] ?? -1)).toBe(true);
      else
        expect(
          shown
            .minus(exact[at] ?? -1)
            .abs()
            .lessThan(unit),
        ).toBe(true);
    });
    expect(sumOf(lines.map((line) => bigOf(line.taxAmount))).equals(tax)).toBe(true);
    all = all.plus(tax);
  }
  return all;
}

const SUMS = ['full', 'lineDiscount', 'amount', 'setDiscount', 'jobDiscount', 'price', 'net'] as const;

function expectSums({ quote, input, digits, rule }: Checked, price: BigNumber, tax: BigNumber): void {
  for (const key of SUMS) {
    expect(sumOf(quote.lines.map((line) => bigOf(line[key]))).equals(bigOf(quote[key]))).toBe(true);
  }
  expect(sumOf(quote.lines.map((line) => bigOf(line.taxAmount))).equals(bigOf(quote.tax))).toBe(true);
  expect(sumOf(quote.lines.map((line) => bigOf(line.gross))).equals(bigOf(quote.total))).toBe(true);
  expect(sumOf(quote.taxes.map((each) => bigOf(each.tax))).equals(bigOf(quote.tax))).toBe(true);
  expect(sumOf(quote.taxes.map((each) => bigOf(each.net))).equals(bigOf(quote.net))).toBe(true);
  for (const line of quote.lines) {
    expect(bigOf(line.full).minus(bigOf(line.lineDiscount)).equals(bigOf(line.amount))).toBe(true);
    const off = bigOf(line.setDiscount).plus(bigOf(line.jobDiscount));
    expect(bigOf(line.amount).minus(off).equals(bigOf(line.price))).toBe(true);
    expect(bigOf(line.net).plus(bigOf(line.taxAmount)).equals(bigOf(line.gross))).toBe(true);
    expect(bigOf(line.price).equals(bigOf(input.prices === 'withTax' ? line.gross : line.net))).toBe(true);
    expect(line.price.minor >= 0n).toBe(true);
  }
  const total = input.prices === 'withTax' ? price : price.plus(tax);
  expect(bigOf(quote.price).equals(price)).toBe(true);
  expect(bigOf(quote.tax).equals(tax)).toBe(true);
  expect(bigOf(quote.total).equals(total)).toBe(true);
  const wanted = offBase(input.deposit, total, digits, rule);
  const deposit = wanted.greaterThan(total) ? total : wanted;
  expect(bigOf(quote.deposit).equals(deposit)).toBe(true);
  expect(bigOf(quote.balance).equals(total.minus(deposit))).toBe(true);
}

function expectMargin({ quote, input, digits, rule }: Checked): void {
  const margins = quote.lines.flatMap((line, at) => {
    if (line.class === 'minimum') return [bigOf(line.net)];
    const { unitCost, quantity } = input.lines[at] ?? {};
    if (unitCost === undefined) return [];
    return [bigOf(line.net).minus(roundTo(cell(unitCost).times(cell(quantity)), digits, forAmounts(rule)))];
  });
  expect(bigOf(quote.margin.known).equals(sumOf(margins))).toBe(true);
  expect(quote.margin.whole === undefined).toBe(margins.length < quote.lines.length);
  expect(quote.margin.missing.length).toBe(quote.lines.length - margins.length);
}

describe('random quotes against mathjs', () => {
  it('every amount, discount, tax, total, deposit and margin is the library’s, and lines add up to the last minor unit', () => {
    fc.assert(
      fc.property(inputArb, (asked) => {
        const { input, refused } = asAccepted(asked);
        const quote = valueOf(quoteOf(input));
        expectBoundaries(quote, input, refused);
        const digits = quote.currency.minorDigits;
        const checked: Checked = { input, quote, digits, unit: big(10).pow(-digits), rule: input.rounding.rule };
        expectAmounts(checked);
        const price = expectDiscounts(checked);
        const tax = expectTaxes(checked);
        expectSums(checked, price, tax);
        expectMargin(checked);
      }),
      { numRuns: 400 },
    );
  });

  it('included tax taken out and added again is the price, within the rounding of a unit', () => {
    fc.assert(
      fc.property(amountText(5000), fc.integer({ min: 0, max: 100_000 }), (unitPrice, thousandths) => {
        const common = { quantity: 1, taxPercent: percentOf(thousandths), currency: 'EUR', rule: 'halfUp' } as const;
        const { net, gross } = valueOf(lineTax({ ...common, unitPrice, prices: 'withTax' }));
        const added = valueOf(lineTax({ ...common, unitPrice: Number(moneyDecimal(net)), prices: 'beforeTax' }));
        expect(bigOf(added.gross).minus(bigOf(gross)).abs().lessThanOrEqualTo('0.01')).toBe(true);
        expect(
          bigOf(net).equals(roundTo(bigOf(gross).times(100).div(big(thousandths).div(1000).plus(100)), 2, 'halfUp')),
        ).toBe(!isHalf(gross, thousandths));
      }),
    );
  });
});

/** Where net and tax both end on half a cent, tax takes the half. */
function isHalf(gross: Money, thousandths: number): boolean {
  const net = bigOf(gross).times(100).div(big(thousandths).div(1000).plus(100));
  return net.times(200).isInteger() && !net.times(100).isInteger();
}
