import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDecimals,
  compareDecimals,
  currencyOf,
  decimalText,
  moneyDecimal,
  moneyNumber,
  moneyOf,
  readAmount,
  rounded,
  roundedApart,
  roundedTogether,
  ROUNDING_RULES,
  shared,
  subtractMoney,
  sumMoney,
  timesDecimal,
  type AmountCell,
  type RoundingRule,
} from '../../src/core/index';
import { issueOf, valueOf } from './make';

const textOf = (cell: AmountCell): string => decimalText(valueOf(readAmount(cell, 'Price')));
const EUR = valueOf(currencyOf('EUR'));
const JPY = valueOf(currencyOf('JPY'));
const KWD = valueOf(currencyOf('KWD'));

describe('an amount in a cell', () => {
  it.each([
    [3.1, '3.1'],
    [0, '0'],
    [-0, '0'],
    [84, '84'],
    [1200, '1200'],
    [0.0035, '0.0035'],
    [1e-7, '0.0000001'],
    [1e21, '1000000000000000000000'],
    [-3.5, '-3.5'],
    // what a formula makes of these is binary noise after the 15th digit
    [0.1 + 0.2, '0.3'],
    [1.1 * 3, '3.3'],
    [4.35 * 100, '435'],
  ])('number %s is %s', (cell, text) => {
    expect(textOf(cell)).toBe(text);
  });

  it.each([
    ['3,50', '3.5'],
    ['3.50', '3.5'],
    [' 12 ', '12'],
    [',5', '0.5'],
    ['.5', '0.5'],
    ['3.', '3'],
    ['−3,5', '-3.5'],
    ['-3.5', '-3.5'],
    ['+3.5', '3.5'],
    ['0,035', '0.035'],
    ['0.0035', '0.0035'],
    ['1,234.50', '1234.5'],
    ['1.234,50', '1234.5'],
    ['1,234,567', '1234567'],
    ['1.234.567', '1234567'],
    ['1 234', '1234'],
    ['1\u00a0234,50', '1234.5'],
    ['1\u202f234.5', '1234.5'],
    ['1’234.50', '1234.5'],
    ["1'234,50", '1234.5'],
    ['1234,5678', '1234.5678'],
    ['1234.567', '1234.567'],
    ['000.50', '0.5'],
  ])('text %s is %s', (cell, text) => {
    expect(textOf(cell)).toBe(text);
  });

  it.each(['1,234', '1.234', '12.345', '999,999', '-1,234'])('%s is refused: it may be either of two', (cell) => {
    expect(issueOf(readAmount(cell, 'Price'))).toMatchObject({ code: 'ambiguous', field: 'Price', got: cell });
  });

  it('names both readings', () => {
    expect(issueOf(readAmount('1,234', 'Price')).expected).toBe('1234.00 or 1.2340');
    expect(textOf('1234.00')).toBe('1234');
    expect(textOf('1.2340')).toBe('1.234');
  });

  it.each([
    'abc',
    '3.5 EUR',
    '€3.50',
    '1,2,3',
    '1,23.4',
    '12,34,567',
    '1.234.56',
    '1,234,56',
    '1,234.567,8',
    '0,123,456',
    '1 23',
    '--3',
    '1e3',
    '.',
    ',',
    '-',
    '(3.50)',
    '١٢',
    true,
    NaN,
    Infinity,
    '1234567890123456789012345678901',
  ])('%s is no amount', (cell) => {
    expect(issueOf(readAmount(cell, 'Price'))).toMatchObject({ code: 'notNumber', field: 'Price', got: cell });
  });

  it.each([undefined, null, '', '  '])('%s is blank', (cell) => {
    expect(issueOf(readAmount(cell, 'Price')).code).toBe('blank');
  });

  it('is held to its limits, ends included', () => {
    const limits = { low: 0, high: 100 };
    for (const cell of [0, '100', '100,00']) expect(readAmount(cell, 'Tax (%)', limits).ok).toBe(true);
    for (const cell of [-0.01, '100.01', '−1']) {
      expect(issueOf(readAmount(cell, 'Tax (%)', limits))).toMatchObject({ code: 'outOfRange', expected: '0 to 100' });
    }
  });

  it('as text comes back as the same decimal, whichever mark it is written with', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }),
        fc.integer({ min: 4, max: 8 }),
        (digits, scale) => {
          const text = decimalText({ digits, scale });
          const again = valueOf(readAmount(text, 'x'));
          expect(compareDecimals(again, { digits, scale })).toBe(0);
          expect(valueOf(readAmount(text.replace('.', ','), 'x'))).toEqual(again);
        },
      ),
    );
  });

  it('from a number is the number, where it has no more than 15 digits', () => {
    fc.assert(
      fc.property(fc.integer({ min: -(10 ** 9), max: 10 ** 9 }), fc.integer({ min: 0, max: 6 }), (whole, scale) => {
        const read = valueOf(readAmount(whole / 10 ** scale, 'x'));
        expect(compareDecimals(read, { digits: BigInt(whole), scale })).toBe(0);
      }),
    );
  });
});

describe('decimals', () => {
  it('add and multiply exactly', () => {
    const [tenth, fifth] = [valueOf(readAmount(0.1, 'x')), valueOf(readAmount(0.2, 'x'))];
    expect(decimalText(addDecimals(tenth, fifth))).toBe('0.3');
    expect(decimalText(timesDecimal(tenth, fifth))).toBe('0.02');
  });

  it('show at least so many decimals', () => {
    expect(decimalText({ digits: 35n, scale: 1 }, 2)).toBe('3.50');
    expect(decimalText({ digits: -5n, scale: 3 }, 2)).toBe('-0.005');
    expect(decimalText({ digits: 7n, scale: 0 })).toBe('7');
  });
});

describe('money', () => {
  it('has the minor unit of its currency', () => {
    const amount = valueOf(readAmount('1234.5675', 'x'));
    expect(moneyDecimal(moneyOf(amount, EUR))).toBe('1234.57');
    expect(moneyDecimal(moneyOf(amount, JPY))).toBe('1235');
    expect(moneyDecimal(moneyOf(amount, KWD))).toBe('1234.568');
    expect(moneyDecimal(moneyOf(amount, KWD, 'down'))).toBe('1234.567');
    expect(moneyNumber(moneyOf(amount, EUR))).toBe(1234.57);
  });

  it('adds up', () => {
    const [one, other] = [
      { minor: 10n, currency: EUR },
      { minor: 20n, currency: EUR },
    ];
    expect(moneyDecimal(sumMoney([one, other], one.currency))).toBe('0.30');
    expect(moneyDecimal(subtractMoney(one, other))).toBe('-0.10');
    expect(sumMoney([], EUR)).toEqual({ minor: 0n, currency: EUR });
    expect(sumMoney([one, other, other], EUR).minor).toBe(50n);
  });

  it('takes a code in any case, and no other text', () => {
    expect(valueOf(currencyOf(' eur '))).toEqual({ code: 'EUR', minorDigits: 2 });
    expect(issueOf(currencyOf('XYZ', 'Currency in Settings'))).toMatchObject({
      code: 'unknownChoice',
      field: 'Currency in Settings',
      got: 'XYZ',
    });
    expect(issueOf(currencyOf('')).code).toBe('blank');
    expect(issueOf(currencyOf(undefined)).code).toBe('blank');
    expect(issueOf(currencyOf('€')).code).toBe('unknownChoice');
  });
});

describe('rounding', () => {
  const numerators = fc.array(fc.bigInt({ min: 0n, max: 10n ** 9n }), { minLength: 1, maxLength: 20 });
  const divisor = fc.bigInt({ min: 1n, max: 10n ** 6n });
  const rule = fc.constantFrom<RoundingRule>(...ROUNDING_RULES);
  const sum = (values: readonly bigint[]) => values.reduce((total, each) => total + each, 0n);

  it('together adds up to the rounded sum, none off by a whole unit, and equals in order', () => {
    fc.assert(
      fc.property(numerators, divisor, rule, (values, by, how) => {
        const whole = roundedTogether(values, by, how);
        expect(sum(whole)).toBe(rounded(sum(values), by, how));
        whole.forEach((each, at) => {
          const off = each * by - (values[at] ?? 0n);
          expect(off < by && off > -by).toBe(true);
        });
      }),
    );
  });

  it('apart rounds each for itself', () => {
    expect(roundedApart([5n, 15n, 25n, 14n], 10n, 'halfUp')).toEqual([1n, 2n, 3n, 1n]);
    expect(roundedApart([5n, 15n, 25n, 14n], 10n, 'halfEven')).toEqual([0n, 2n, 2n, 1n]);
    expect(roundedApart([5n, 15n, 25n, 19n], 10n, 'down')).toEqual([0n, 1n, 2n, 1n]);
  });

  it('together gives what is left to those that lost most, of equals to the first', () => {
    expect(roundedTogether([5n, 5n, 5n], 10n, 'halfUp')).toEqual([1n, 1n, 0n]);
    expect(roundedTogether([3n, 9n, 4n], 10n, 'halfUp')).toEqual([0n, 1n, 1n]);
    expect(roundedTogether([14n, 18n, 13n], 10n, 'down')).toEqual([1n, 2n, 1n]);
  });

  it('shares an amount out to the last unit, no share above its weight', () => {
    fc.assert(
      fc.property(numerators, fc.bigInt({ min: 0n, max: 10n ** 9n }), (weights, amount) => {
        const all = sum(weights);
        const part = all === 0n ? 0n : amount % (all + 1n);
        const shares = shared(part, weights);
        expect(sum(shares)).toBe(part);
        shares.forEach((share, at) => expect(share >= 0n && share <= (weights[at] ?? 0n)).toBe(true));
      }),
    );
  });

  it('shares nothing where nothing weighs', () => {
    expect(shared(5n, [0n, 0n])).toEqual([0n, 0n]);
  });
});

describe('numbers of cells', () => {
  // An independent way: fifteen significant digits in exponential form (IEEE 754 doubles hold any fifteen), shifted by the exponent.
  const slowly = (value: number): string => {
    const [mantissa = '', exponent = '0'] = value.toExponential(14).split('e');
    const digits = BigInt(mantissa.replace('.', ''));
    const scale = 14 - Number(exponent);
    const text = decimalText(scale < 0 ? { digits: digits * 10n ** BigInt(-scale), scale: 0 } : { digits, scale });
    return text.includes('.') ? text.replace(/\.?0+$/, '').replace(/^-0$/, '0') : text;
  };

  it('are the decimals that they show, whatever their size', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e20, max: 1e20 }), (value) => {
        const read = readAmount(value, 'x');
        expect(read.ok && decimalText(read.value)).toBe(slowly(value));
      }),
      { numRuns: 2000 },
    );
    for (const value of [0, -0, 0.1 + 0.2, 1e15, 1e15 - 1, 123456789012345.6, 1e-7, 5e-324, 6.5, -1234.56]) {
      const read = readAmount(value, 'x');
      expect(read.ok && decimalText(read.value), String(value)).toBe(slowly(value));
    }
  });
});
