import { describe, expect, it } from 'vitest';
import { compareQuotes, counterQuote, quoteOf, type CounterRequest, type Rate } from '../../../src/core/index';
import { issueOf, valueOf } from '../make';
import { aQuote, plain, TERMS, text } from './terms';

/** What an invented shop charges. */
const RATES: readonly Rate[] = [
  { work: 'Fit a grip', use: 'fitting', per: 'club', price: 3.5, includedLayers: 1 },
  { work: 'Fit a putter', use: 'fitting', per: 'club', kind: 'putter', price: 5 },
  { work: 'Fit your own grip', use: 'ownGrip', per: 'club', price: 4.25 },
  { work: 'Build-up tape', use: 'buildUp', per: 'layer', price: 0.4 },
  { work: 'Keep the old grip', use: 'salvage', per: 'club', price: 1.5 },
  { work: 'Weigh and read', use: 'reading', per: 'club', price: 1 },
  { work: 'Look over', use: 'everyJob', per: 'job', price: 2 },
];
const REQUEST: CounterRequest = {
  clubs: 3,
  grips: { from: 'shop', item: { item: 'G-58', price: '6,50', cost: 4 } },
  terms: { ...TERMS, taxes: [] },
};

describe('a price at the counter', () => {
  it('is so much a club, and what a job costs once', () => {
    const { quote, perClub } = valueOf(counterQuote(REQUEST, RATES));
    expect(text(perClub)).toBe('10.00');
    expect(text(quote.total)).toBe('32.00');
    expect(quote.lines.map(({ description }) => description)).toEqual(['G-58', 'Fit a grip', 'Look over']);
  });

  it('for grips that the client brings is labour only, by its own rate where there is one', () => {
    const own = valueOf(counterQuote({ ...REQUEST, grips: { from: 'client' } }, RATES));
    expect([text(own.perClub), text(own.quote.total)]).toEqual(['4.25', '14.75']);
    const rates = RATES.filter((rate) => rate.use !== 'ownGrip');
    expect(text(valueOf(counterQuote({ ...REQUEST, grips: { from: 'client' } }, rates)).perClub)).toBe('3.50');
  });

  it('goes by the kind of club, counts layers beyond the included ones, and salvage and reading where wanted', () => {
    expect(text(valueOf(counterQuote({ ...REQUEST, kind: 'putter' }, RATES)).perClub)).toBe('11.50');
    expect(text(valueOf(counterQuote({ ...REQUEST, layers: 3 }, RATES)).perClub)).toBe('10.80');
    expect(text(valueOf(counterQuote({ ...REQUEST, salvage: true, reading: true }, RATES)).perClub)).toBe('12.50');
  });

  it('is no less than the minimum charge', () => {
    const terms = { ...REQUEST.terms, minimum: 20 };
    const { quote, perClub } = valueOf(counterQuote({ ...REQUEST, clubs: 1, terms }, RATES));
    expect([text(quote.total), text(perClub)]).toEqual(['20.00', '10.00']);
    expect(plain(quote.notes)).toEqual([{ note: 'raised', by: '8.00', minimum: '20.00' }]);
    expect(text(valueOf(counterQuote({ ...REQUEST, terms }, RATES)).quote.total)).toBe('32.00');
  });

  it.each([
    [{ clubs: 0 }, 'outOfRange', 'Clubs'],
    [{ clubs: 2.5 }, 'notWhole', 'Clubs'],
    [{ clubs: -3 }, 'outOfRange', 'Clubs'],
    [{ layers: -1 }, 'outOfRange', 'Layers'],
    [{ layers: 13 }, 'outOfRange', 'Layers'],
    [{ grips: { from: 'shop', item: { item: 'G-58' } } }, 'blank', 'Line 1 (G-58), price'],
    [{ terms: { ...TERMS, currency: 'money' } }, 'unknownChoice', 'Currency'],
  ] as const)('refuses %o', (wrong, code, field) => {
    expect(issueOf(counterQuote({ ...REQUEST, ...wrong }, RATES))).toMatchObject({ code, field });
  });

  it.each([
    ['fitting', {}, 'Fitting a grip in Rates'],
    ['buildUp', { layers: 2 }, 'Build-up in Rates'],
    ['salvage', { salvage: true }, 'Old grip taken off whole in Rates'],
    ['reading', { reading: true }, 'Weighing and reading in Rates'],
  ])('names a missing rate for %s', (use, more, field) => {
    const rates = RATES.filter((rate) => rate.use !== use);
    expect(issueOf(counterQuote({ ...REQUEST, ...more }, rates))).toMatchObject({ code: 'blank', field });
  });

  it('refuses a work that Rates lists twice', () => {
    expect(issueOf(counterQuote(REQUEST, [...RATES, ...RATES])).code).toBe('duplicate');
  });
});

describe('quotes side by side', () => {
  const asItIs = valueOf(
    quoteOf(
      aQuote([
        { class: 'grip', unitPrice: 80 },
        { class: 'fitting', unitPrice: 40 },
      ]),
    ),
  );
  const withTape = valueOf(
    quoteOf(
      aQuote([
        { class: 'grip', unitPrice: 80 },
        { class: 'fitting', unitPrice: 38 },
        { class: 'buildUp', unitPrice: 5 },
      ]),
    ),
  );

  it('show what each costs by class, and how far it is from the first', () => {
    const compared = valueOf(
      compareQuotes([
        { name: 'As it is', quote: asItIs },
        { name: 'With tape', quote: withTape },
      ]),
    );
    expect(plain(compared)).toMatchObject({
      names: ['As it is', 'With tape'],
      classes: [
        { class: 'grip', amounts: ['80.00', '80.00'], differences: ['0.00', '0.00'] },
        { class: 'fitting', amounts: ['40.00', '38.00'], differences: ['0.00', '-2.00'] },
        { class: 'buildUp', amounts: ['0.00', '5.00'], differences: ['0.00', '5.00'] },
      ],
      tax: { amounts: ['24.00', '24.60'], differences: ['0.00', '0.60'] },
      total: { amounts: ['144.00', '147.60'], differences: ['0.00', '3.60'] },
    });
  });

  it('are refused where they cannot be compared', () => {
    const yen = valueOf(quoteOf(aQuote([{}], { currency: 'JPY' })));
    const included = valueOf(quoteOf(aQuote([{}], { prices: 'withTax' })));
    const beside = (name: string, quote: typeof yen) =>
      issueOf(
        compareQuotes([
          { name: 'a', quote: asItIs },
          { name, quote },
        ]),
      );
    expect(beside('b', yen)).toMatchObject({ code: 'contradiction', field: 'b', got: 'JPY' });
    expect(beside('b', included)).toMatchObject({ code: 'contradiction', field: 'b', got: 'withTax' });
    expect(beside('A', withTape)).toMatchObject({ code: 'duplicate', got: 'A' });
    expect(issueOf(compareQuotes([])).code).toBe('noRows');
  });
});
