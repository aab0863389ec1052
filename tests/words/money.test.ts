import { describe, expect, it } from 'vitest';
import { compareQuotes, currencyOf, quoteIssues, quoteOf, type Money } from '../../src/core/index';
import {
  comparisonCells,
  lineText,
  moneyText,
  quantityText,
  sayMargin,
  sayQuoteIssue,
  sayQuoteNote,
  totalLines,
} from '../../src/words/money';
import { valueOf } from '../core/make';
import { aQuote } from '../core/quote/terms';

const money = (minor: bigint, code = 'EUR'): Money => ({ minor, currency: valueOf(currencyOf(code)) });

describe('money in words', () => {
  it.each([
    [money(8400n), '84.00 EUR'],
    [money(-350n), '−3.50 EUR'],
    [money(5n), '0.05 EUR'],
    [money(123456789n), '1234567.89 EUR'],
    [money(1200n, 'JPY'), '1200 JPY'],
    [money(1200n, 'KWD'), '1.200 KWD'],
  ])('%o is %s', (amount, text) => {
    expect(moneyText(amount)).toBe(text);
  });
});

const QUOTE = valueOf(
  quoteOf(
    aQuote(
      [
        {
          class: 'grip',
          description: 'G-58, cord',
          item: 'G-58',
          quantity: 13,
          unitPrice: 6.5,
          discount: { amount: 4.5 },
        },
        { description: 'Engrave', quantity: 10.5, unitPrice: '0.0350', tax: 'None', unitCost: 0 },
      ],
      { setDiscount: { percent: 10 }, jobDiscount: { amount: 2 }, deposit: { percent: 50 } },
    ),
  ),
);

describe('a quote in words', () => {
  it('says each line', () => {
    expect(QUOTE.lines.map((line) => lineText(line, QUOTE))).toEqual([
      'G-58, cord: 13 × 6.50 = 84.50 EUR, less 4.50 EUR: 80.00 EUR',
      'Engrave: 10.5 × 0.035 = 0.37 EUR',
    ]);
    expect(QUOTE.lines.map((line) => quantityText(line, QUOTE))).toEqual(['13 × 6.50', '10.5 × 0.035']);
  });

  it('says the sums', () => {
    expect(totalLines(QUOTE)).toEqual([
      'Sum of lines: 80.37 EUR',
      'Discount on the grips: −8.00 EUR',
      'Discount on the job: −2.00 EUR',
      'Before tax: 70.37 EUR',
      'Standard, 20 % added on 70.01 EUR: 14.00 EUR',
      'Total: 84.37 EUR',
      'Deposit: 42.19 EUR',
      'Balance due: 42.18 EUR',
    ]);
    const included = valueOf(quoteOf(aQuote([{ unitPrice: 120 }], { prices: 'withTax' })));
    expect(totalLines(included)).toEqual(['Standard, 20 % included on 100.00 EUR: 20.00 EUR', 'Total: 120.00 EUR']);
    expect(totalLines(valueOf(quoteOf(aQuote([{}], { taxes: [] }))))).toEqual(['Total: 10.00 EUR']);
  });

  it('says the margin, or whose cost is missing', () => {
    expect(sayMargin(QUOTE)).toBe(
      'Margin: 0.36 EUR on the lines whose cost is known. Not known for G-58, cord: give a cost.',
    );
    expect(sayMargin(valueOf(quoteOf(aQuote([{ unitCost: 12 }]))))).toBe('Margin: −2.00 EUR.');
  });

  it('says what is wrong', () => {
    const said = quoteIssues(
      aQuote(
        [
          { item: 'G', description: 'G', quantity: -1 },
          { item: 'G', description: 'G', unitPrice: '1,234' },
          { unitPrice: '3.50 €' },
          { unitPrice: null, tax: 'Luxury' },
        ],
        { taxes: [{ name: 'Standard', percent: 120 }], currency: 'EURO' },
      ),
    ).map(sayQuoteIssue);
    expect(said).toEqual([
      'Currency is “EURO”. Give a code of ISO 4217 in three letters, such as EUR.',
      'Tax Standard (%) is 120. Give 0 to 100.',
      'Line 1 (G), quantity is −1. Give 0 to 100000.',
      'Line 2 (G), price is “1,234”, which can be read in two ways. Give 1234.00 or 1.2340.',
      'Line 3 (Work), price is “3.50 €”, not a number. Give an amount such as 1234.50, without a currency sign.',
      'Line 4 (Work), price is blank. Give an amount, 0 where there is none.',
      'Line 4 (Work), tax is “Luxury”. Give None.',
      'Line 2: “G” is on line 1 already. Put both on one line and add the quantities.',
    ]);
    expect(sayQuoteIssue({ code: 'duplicate', field: 'Taxes', got: 'Standard' })).toBe(
      'Taxes: “Standard” is there twice, so it is not certain which one counts. Rename or remove one.',
    );
  });

  it('says what to know', () => {
    const over = valueOf(
      quoteOf(
        aQuote([{ discount: { amount: 10 } }], {
          minimum: 5,
          deposit: { amount: 99 },
          rounding: { rule: 'down', at: 'line' },
        }),
      ),
    );
    expect(over.notes.map(sayQuoteNote)).toEqual([
      'Raised by 5.00 EUR to the minimum charge of 5.00 EUR.',
      'The deposit is 99.00 EUR, more than the total. 6.00 EUR is asked for.',
      'Tax is rounded down on every line, to a whole minor unit. HMRC allows that on a whole invoice, on a line only to a tenth of a penny, and as a rule not to retailers. Ask your adviser.',
    ]);
    expect(sayQuoteNote({ note: 'roundedDown', at: 'quote' })).toBe(
      'Tax is rounded down. HMRC allows that to traders who invoice, as a rule not to retailers. Ask your adviser.',
    );
  });

  it('says how quotes differ', () => {
    const priced = (unitPrice: number) => valueOf(quoteOf(aQuote([{ unitPrice }], { taxes: [] })));
    const compared = valueOf(
      compareQuotes([
        { name: 'As it is', quote: priced(80) },
        { name: 'With tape', quote: priced(86.3) },
        { name: 'Other grip', quote: priced(75) },
        { name: 'Same again', quote: priced(80) },
      ]),
    );
    expect(comparisonCells(compared)).toEqual([
      ['As it is', '80.00', '–'],
      ['With tape', '86.30', '+6.30'],
      ['Other grip', '75.00', '−5.00'],
      ['Same again', '80.00', '–'],
    ]);
  });
});
