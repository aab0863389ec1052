import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decimalText,
  lineTax,
  quoteIssues,
  quoteOf,
  readPercent,
  saidPercent,
  type QuoteLine,
  type QuoteTerms,
} from '../../../src/core/index';
import { sayIssue } from '../../../src/words/issues';
import { issueOf, valueOf } from '../make';
import { aLine, aQuote, plain, TERMS } from './terms';

/** Amounts in these tests are arithmetic from the invented prices beside them. */
function quoted(lines: readonly Partial<QuoteLine>[], terms: Partial<QuoteTerms> = {}) {
  return plain(valueOf(quoteOf(aQuote(lines, terms)))) as Record<string, unknown> & {
    lines: Record<string, unknown>[];
    taxes: Record<string, unknown>[];
    notes: Record<string, unknown>[];
  };
}

const GRIPS = { class: 'grip', description: 'G-58', item: 'G-58', quantity: 13, unitPrice: 6.5 } as const;
const FITTING = { class: 'fitting', description: 'Fit a grip', quantity: 13, unitPrice: '3,50' } as const;

describe('a quote', () => {
  it('is quantity × unit price, and tax on it', () => {
    const quote = quoted([GRIPS, FITTING]);
    expect(quote).toMatchObject({ full: '130.00', net: '130.00', tax: '26.00', total: '156.00', notes: [] });
    expect(quote.lines[0]).toMatchObject({ full: '84.50', net: '84.50', taxAmount: '16.90', gross: '101.40' });
  });

  it('takes unit prices with more decimals than the currency', () => {
    expect(quoted([{ quantity: 10.5, unitPrice: 0.0035 }]).full).toBe('0.04');
    expect(quoted([{ quantity: 1000, unitPrice: '0.0035' }]).full).toBe('3.50');
  });

  it('takes the tax out of prices that include it', () => {
    const quote = quoted([{ unitPrice: 120 }, { unitPrice: 100 }], { prices: 'withTax' });
    expect(quote).toMatchObject({ price: '220.00', net: '183.33', tax: '36.67', total: '220.00' });
    expect(quote.lines.map(({ net, taxAmount, gross }) => [net, taxAmount, gross])).toEqual([
      ['100.00', '20.00', '120.00'],
      ['83.33', '16.67', '100.00'],
    ]);
  });

  it('keeps several taxes and what is untaxed apart', () => {
    const { taxes, total } = quoted([
      { unitPrice: 10 },
      { unitPrice: 20, tax: 'reduced' },
      { unitPrice: 30, tax: 'None' },
      { unitPrice: 40, tax: 'Standard' },
    ]);
    expect(taxes).toEqual([
      { name: 'Standard', percent: '20', net: '50.00', tax: '10.00' },
      { name: 'Reduced', percent: '5.5', net: '20.00', tax: '1.10' },
      { name: undefined, percent: undefined, net: '30.00', tax: '0.00' },
    ]);
    expect(total).toBe('111.10');
  });

  it('has no tax where the shop has none', () => {
    expect(quoted([{ unitPrice: 10 }], { taxes: [] })).toMatchObject({ tax: '0.00', total: '10.00' });
  });

  it('rounds tax by line or by quote, as the shop is to', () => {
    // 5 % of 0.10 is half a cent: three lines are 3 cents by line, 1.5 cents rounded once by quote
    const lines = [{ unitPrice: 0.1 }, { unitPrice: 0.1 }, { unitPrice: 0.1 }];
    const taxes = [{ name: 'Tax', percent: 5 }];
    expect(quoted(lines, { taxes }).tax).toBe('0.03');
    const byQuote = quoted(lines, { taxes, rounding: { rule: 'halfUp', at: 'quote' } });
    expect(byQuote.tax).toBe('0.02');
    expect(byQuote.lines.map(({ taxAmount }) => taxAmount)).toEqual(['0.01', '0.01', '0.00']);
  });

  it('rounds amounts by line or by quote', () => {
    const lines = [{ unitPrice: '0.3340' }, { unitPrice: '0.3340' }, { unitPrice: '0.3340' }];
    expect(quoted(lines).full).toBe('0.99');
    const byQuote = quoted(lines, { rounding: { rule: 'halfUp', at: 'quote' } });
    expect(byQuote.full).toBe('1.00');
    expect(byQuote.lines.map(({ full }) => full)).toEqual(['0.34', '0.33', '0.33']);
  });

  it('rounds tax down where asked, amounts never, and says so', () => {
    const quote = quoted([{ quantity: 3, unitPrice: '0.3350' }], { rounding: { rule: 'down', at: 'quote' } });
    expect(quote).toMatchObject({ full: '1.01', tax: '0.20' });
    expect(quote.notes).toEqual([{ note: 'roundedDown', at: 'quote' }]);
    expect(quoted([{ unitPrice: 0 }], { rounding: { rule: 'down', at: 'line' } }).notes).toEqual([]);
  });

  it('has no minor unit in yen, and three decimals in dinars', () => {
    const one = { quantity: 3, unitPrice: '110.50' };
    expect(quoted([one], { currency: 'JPY' })).toMatchObject({ full: '332', tax: '66', total: '398' });
    expect(quoted([{ ...one, unitPrice: '1.2345' }], { currency: 'KWD' })).toMatchObject({
      full: '3.704',
      tax: '0.741',
    });
  });
});

describe('discounts', () => {
  it('come off the line, then the grips, then the job', () => {
    const quote = quoted([{ ...GRIPS, discount: { amount: 4.5 } }, FITTING], {
      setDiscount: { percent: 10 },
      jobDiscount: { percent: 5 },
    });
    // 84.50 − 4.50 = 80.00; a tenth of it is 8.00; 72.00 + 45.50 = 117.50; a twentieth is 5.875
    expect(quote).toMatchObject({
      full: '130.00',
      lineDiscount: '4.50',
      amount: '125.50',
      setDiscount: '8.00',
      jobDiscount: '5.88',
      price: '111.62',
      tax: '22.32',
      total: '133.94',
    });
    expect(quote.lines.map(({ setDiscount, jobDiscount }) => [setDiscount, jobDiscount])).toEqual([
      ['8.00', '3.60'],
      ['0.00', '2.28'],
    ]);
  });

  it('of more than there is are refused, each with the most that there is', () => {
    const input = aQuote([{ ...GRIPS, quantity: 1, discount: { amount: 9 } }, FITTING], {
      setDiscount: { amount: 3 },
      jobDiscount: { amount: 1000 },
    });
    // 6.50 is one grip; nothing is left of it for the set; 13 × 3.50 is the rest of the job
    expect(quoteIssues(input).map(sayIssue)).toEqual([
      'Line 1 (G-58), discount is 9. Give 6.50 at most, which is what G-58 comes to.',
      'Discount on the grips is 3. Give 0.00 at most, which is what the grips come to.',
      'Discount on the job is 1000. Give 45.50 at most, which is what the job comes to.',
    ]);
    expect(issueOf(quoteOf(input))).toEqual(quoteIssues(input)[0]);
  });

  it('of all there is are taken', () => {
    const quote = quoted([{ ...GRIPS, quantity: 1, discount: { amount: 6.5 } }, FITTING], {
      jobDiscount: { amount: '45,50' },
    });
    expect(quote).toMatchObject({ price: '0.00', tax: '0.00', total: '0.00', notes: [] });
  });

  it('are named by where they stand, and given for a reason', () => {
    const discount = { amount: 9, field: 'Discounts row 4, Amount', reason: 'Old customer' };
    const over = issueOf(quoteOf(aQuote([{ ...GRIPS, quantity: 1, discount }])));
    expect(over).toMatchObject({ code: 'outOfRange', field: 'Discounts row 4, Amount', got: 9, detail: 6.5 });
    const part = issueOf(quoteOf(aQuote([{}], { jobDiscount: { percent: 0.1, field: 'Jobs row 2, Discount (%)' } })));
    expect(part).toMatchObject({ code: 'ambiguous', field: 'Jobs row 2, Discount (%)' });
    expect(quoted([{ ...GRIPS, discount }]).lines[0]).toMatchObject({ discountReason: 'Old customer' });
  });

  it('of an amount are shared by what lines come to', () => {
    const quote = quoted([{ unitPrice: 10 }, { unitPrice: 10 }, { unitPrice: 10 }], { jobDiscount: { amount: 10 } });
    expect(quote.lines.map(({ jobDiscount }) => jobDiscount)).toEqual(['3.34', '3.33', '3.33']);
  });
});

describe('the minimum charge', () => {
  it('raises a small job, after discounts, by a line that is taxed as usual', () => {
    const quote = quoted([{ unitPrice: 8, tax: 'Reduced', unitCost: 1 }], {
      minimum: '15,00',
      jobDiscount: { percent: 25 },
    });
    expect(quote).toMatchObject({ price: '15.00', tax: '2.13', total: '17.13' });
    expect(quote.lines[1]).toMatchObject({ class: 'minimum', price: '9.00', tax: 'Standard', margin: '9.00' });
    expect(quote.notes).toEqual([{ note: 'raised', by: '9.00', minimum: '15.00' }]);
  });

  it.each([10, 15, null, ''])('leaves a job alone that is no smaller than %s', (minimum) => {
    expect(quoted([{ unitPrice: 15 }], { minimum }).lines).toHaveLength(1);
  });
});

describe('deposit, validity and margin', () => {
  it('deposit and balance add up to the total', () => {
    expect(quoted([{ unitPrice: 33.33 }], { deposit: { percent: 30 } })).toMatchObject({
      total: '40.00',
      deposit: '12.00',
      balance: '28.00',
    });
    const over = quoted([{ unitPrice: 10 }], { deposit: { amount: 50 } });
    expect(over).toMatchObject({ deposit: '12.00', balance: '0.00' });
    expect(over.notes).toEqual([{ note: 'depositOver', wanted: '50.00', taken: '12.00' }]);
  });

  it('holds for so many days from the issue', () => {
    expect(quoted([{}], { issued: 46000, validDays: 30 })).toMatchObject({ issued: 46000, validUntil: 46030 });
    expect(quoted([{}], { issued: 46000 }).validUntil).toBeUndefined();
    expect(quoted([{}]).validUntil).toBeUndefined();
  });

  it('margin is net less cost, tax and discounts out', () => {
    const quote = quoted([{ ...GRIPS, unitPrice: 12, unitCost: '4.20', discount: { percent: 50 } }], {
      prices: 'withTax',
    });
    // 156.00 less half is 78.00 with tax, 65.00 without; 13 × 4.20 = 54.60
    expect(quote.margin).toEqual({ known: '10.40', whole: '10.40', missing: [] });
  });

  it('margin of the whole is unknown where a cost is missing, and says which', () => {
    const quote = quoted([{ ...GRIPS, unitCost: 4 }, FITTING]);
    expect(quote.margin).toEqual({ known: '32.50', whole: undefined, missing: ['Fit a grip'] });
  });
});

describe('what cannot be quoted', () => {
  const issueFor = (lines: readonly Partial<QuoteLine>[], terms: Partial<QuoteTerms> = {}) =>
    issueOf(quoteOf(aQuote(lines, terms)));

  it.each([
    [{ quantity: -1 }, 'outOfRange', 'Line 1 (Work), quantity'],
    [{ quantity: null }, 'blank', 'Line 1 (Work), quantity'],
    [{ unitPrice: -3.5 }, 'outOfRange', 'Line 1 (Work), price'],
    [{ unitPrice: '' }, 'blank', 'Line 1 (Work), price'],
    [{ unitPrice: 'free' }, 'notNumber', 'Line 1 (Work), price'],
    [{ unitPrice: '1,234' }, 'ambiguous', 'Line 1 (Work), price'],
    [{ unitCost: 'cheap' }, 'notNumber', 'Line 1 (Work), cost'],
    [{ discount: { percent: 101 } }, 'outOfRange', 'Line 1 (Work), discount (%)'],
    [{ discount: { amount: -1 } }, 'outOfRange', 'Line 1 (Work), discount'],
    [{ tax: 'Luxury' }, 'unknownChoice', 'Line 1 (Work), tax'],
  ] as const)('a line with %o', (line, code, field) => {
    expect(issueFor([line])).toMatchObject({ code, field });
  });

  it.each([
    [{ currency: 'ABC' }, 'unknownChoice', 'Currency'],
    [{ taxes: [{ name: 'Standard', percent: 100.1 }] }, 'outOfRange', 'Tax Standard (%)'],
    [{ taxes: [{ name: 'Standard', percent: -1 }] }, 'outOfRange', 'Tax Standard (%)'],
    [{ taxes: [{ name: ' ', percent: 5 }] }, 'blank', 'Name of a tax'],
    [{ taxes: [...TERMS.taxes, { name: 'STANDARD', percent: 5 }] }, 'duplicate', 'Taxes'],
    [{ taxes: [{ name: 'None', percent: 5 }] }, 'duplicate', 'Taxes'],
    [{ setDiscount: { percent: 'ten' } }, 'notNumber', 'Discount on the grips (%)'],
    [{ jobDiscount: { percent: -5 } }, 'outOfRange', 'Discount on the job (%)'],
    [{ deposit: { percent: 120 } }, 'outOfRange', 'Deposit (%)'],
    [{ minimum: -1 }, 'outOfRange', 'Minimum charge'],
    [{ issued: 46000.5 }, 'notWhole', 'Date of issue'],
    [{ issued: 0 }, 'outOfRange', 'Date of issue'],
    [{ issued: 46000, validDays: -1 }, 'outOfRange', 'Days a quote holds'],
    [{ validDays: 30 }, 'blank', 'Date of issue'],
  ] as const)('terms with %o', (terms, code, field) => {
    expect(issueFor([{}], terms as Partial<QuoteTerms>)).toMatchObject({ code, field });
  });

  it('an item on two lines, whichever case it is written in', () => {
    const issue = issueFor([GRIPS, FITTING, { ...GRIPS, item: 'g-58', quantity: 1 }]);
    expect(issue).toEqual({ code: 'duplicate', field: 'Line 3', got: 'g-58', detail: 1 });
  });

  it('no lines', () => {
    expect(issueFor([])).toMatchObject({ code: 'noRows' });
  });

  it('is told all at once', () => {
    const input = aQuote([aLine({ quantity: -1, unitPrice: 'x' }), aLine({ tax: 'y' })], { currency: '' });
    expect(quoteIssues(input).map(({ code }) => code)).toEqual(['blank', 'outOfRange', 'notNumber', 'unknownChoice']);
    expect(quoteIssues(aQuote([{}]))).toEqual([]);
  });
});

describe('per cent', () => {
  it.each([
    [20, '20'],
    ['20 %', '20'],
    ['20%', '20'],
    ['0.2 %', '0.2'],
    ['0,25%', '0.25'],
    [1, '1'],
    [0, '0'],
    ['0 %', '0'],
    [100, '100'],
    // no thousands of a per cent
    ['8,875', '8.875'],
  ])('%s', (cell, percent) => {
    expect(plain(valueOf(readPercent(cell, 'Tax')))).toBe(percent);
  });

  // A spreadsheet keeps 0.2 of a typed 20 %, and 0.055 of 5.5 %.
  it.each([
    [0.2, 'Give 20 if 20 % is meant', '0.2 % as text'],
    [0.055, 'Give 5.5 if 5.5 % is meant', '0.055 % as text'],
    ['0,5', 'Give 50 if 50 % is meant', '0.5 % as text'],
    [0.999999, 'Give 99.9999 if 99.9999 % is meant', '0.999999 % as text'],
  ])('%s may be a part of one, and is asked about', (cell, much, little) => {
    const issue = issueOf(readPercent(cell, 'Taxes row 2, Percent (%)'));
    expect(issue).toMatchObject({ code: 'ambiguous', got: cell });
    expect(sayIssue(issue)).toContain(much);
    expect(sayIssue(issue)).toContain(little);
  });

  it.each([
    ['x %', 'notNumber'],
    ['%', 'blank'],
    ['120 %', 'outOfRange'],
    [-0.2, 'outOfRange'],
    [null, 'blank'],
    [true, 'notNumber'],
  ])('%s is none', (cell, code) => {
    expect(issueOf(readPercent(cell, 'Tax'))).toMatchObject(code === 'blank' ? { code } : { code, got: cell });
  });

  it('one that was read is not asked about again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000_000 }), (millionths) => {
        const percent = millionths / 1e6;
        expect(Number(decimalText(valueOf(readPercent(saidPercent(percent), 'Tax'))))).toBe(percent);
      }),
    );
  });

  it.each([
    [{ taxes: [{ name: 'Standard', percent: 0.2 }] }, 'Tax Standard (%)'],
    [{ setDiscount: { percent: 0.1 } }, 'Discount on the grips (%)'],
    [{ jobDiscount: { percent: '0.1' } }, 'Discount on the job (%)'],
    [{ deposit: { percent: 0.3 } }, 'Deposit (%)'],
  ] as const)('terms with %o are asked about', (terms, field) => {
    const issue = issueOf(quoteOf(aQuote([{}], terms as Partial<QuoteTerms>)));
    expect(issue).toMatchObject({ code: 'ambiguous', field });
  });
});

describe('tax of one line', () => {
  const request = {
    quantity: 13,
    unitPrice: '6.50',
    taxPercent: 20,
    currency: 'EUR',
    prices: 'beforeTax',
    rule: 'halfUp',
  } as const;

  it('is the same as in a quote', () => {
    expect(plain(valueOf(lineTax(request)))).toEqual({ net: '84.50', tax: '16.90', gross: '101.40' });
    const included = plain(valueOf(lineTax({ ...request, prices: 'withTax' })));
    expect(included).toEqual({ net: '70.42', tax: '14.08', gross: '84.50' });
  });

  it.each([
    [{ currency: '?' }, 'Currency'],
    [{ quantity: -1 }, 'Quantity'],
    [{ unitPrice: 'x' }, 'Price'],
    [{ taxPercent: 101 }, 'Tax (%)'],
  ])('refuses %o', (wrong, field) => {
    expect(issueOf(lineTax({ ...request, ...wrong })).field).toBe(field);
  });
});
