import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quoteOf } from '../../src/core/index';
import { fillOptions } from '../../src/workbook/fillOptions';
import { issueQuote } from '../../src/workbook/issueQuote';
import type { Change } from '../../src/workbook/port';
import { dressQuote, moneyFormat, quotePage } from '../../src/workbook/quoteSheet';
import { readShop } from '../../src/workbook/shop';
import { sayOptions } from '../../src/words/quoteOutcomes';
import { pricedWorkshop, set } from './pricedWorkshop';

const TERMS = { issued: 46_000 };

describe('how a quote is dressed', () => {
  // ISO 4217: JPY has no minor unit, EUR two decimals, KWD three.
  test.each([
    [0, 0, '#,##0'],
    [0, 2, 'General'],
    [2, 0, '#,##0.00'],
    [2, 2, '#,##0.00##'],
    [3, 0, '#,##0.000'],
  ])('with %i decimals and room for %i more: %s', (minorDigits, more, format) => {
    expect(moneyFormat({ currency: { code: 'X', minorDigits } }, more)).toBe(format);
  });

  test('upright, one print area, the head of the lines on every page', async () => {
    const port = await pricedWorkshop();
    await issueQuote(port, { what: { job: '1042' }, terms: TERMS, shown: null });
    const page = port.asked.find((change): change is Extract<Change, { do: 'page' }> => change.do === 'page');
    const [seen] = await port.read([
      { read: 'block', at: { sheet: 'Quote 1', row: 0, column: 0, rows: 60, columns: 8 } },
    ]);
    const header = seen.values.findIndex(([first]) => first === 'Description');
    const last = seen.values.findLastIndex((row) => row.some((cell) => cell !== null));
    expect(page?.setup).toMatchObject({
      landscape: false,
      area: { sheet: 'Quote 1', row: 0, column: 0, rows: last + 1, columns: 5 },
      titleRows: { row: header, rows: 1 },
      footer: 'Quote',
    });
  });

  test('with prices that have the tax in them, the total comes before the tax in it', async () => {
    const port = await pricedWorkshop();
    set(port, 'Prices are', 'With tax');
    await issueQuote(port, { what: { job: '1042' }, terms: TERMS, shown: null });
    const [seen] = await port.read([
      { read: 'block', at: { sheet: 'Quote 1', row: 0, column: 0, rows: 40, columns: 5 } },
    ]);
    // By hand: 40.50 × 20 / 120 = 6.75.
    expect(seen.values.find(([first]) => first === 'Total, EUR')?.[4]).toBe(40.5);
    expect(seen.values.find(([first]) => String(first).startsWith('In it: Sales, 20 % on 33.75'))?.[4]).toBe(6.75);
  });
});

describe('pages of a quote', () => {
  const head = { job: 'R-1', customer: 'C', shop: 'S', due: null, number: 1, revision: 1, option: '', address: ['A'] };

  /** Rows that begin a page, in a quote of so many lines, some of them with a discount of their own. */
  function paged(lines: readonly boolean[], terms: number) {
    const made = quoteOf({
      currency: 'EUR',
      prices: 'beforeTax',
      taxes: [{ name: 'Sales', percent: 20 }],
      rounding: { rule: 'halfUp', at: 'line' },
      setDiscount: undefined,
      lines: lines.map((isLess, at) => ({
        class: 'other' as const,
        description:
          at % 4 === 0 ? `Work ${at} of which there is so much to say that a line does not hold it` : `Work ${at}`,
        quantity: 1,
        unitPrice: 5,
        discount: isLess ? { amount: 1 } : undefined,
      })),
    });
    if (!made.ok) throw new Error(made.issue.field);
    const text = Array.from({ length: terms }, (_, at) => `Term ${at}`).join('\n');
    const page = quotePage({ ...head, terms: text }, made.value);
    const at = { sheet: 'Q', row: 3, column: 0, rows: page.cells.length, columns: 5 };
    const breaks = dressQuote(at, page, made.value).flatMap((change) =>
      change.do === 'page' ? (change.setup.breaks ?? []) : [],
    );
    return { page, breaks: breaks.map((row) => row - 3) };
  }

  test('a short one is one page', () => {
    expect(paged(Array<boolean>(10).fill(false), 6).breaks).toEqual([]);
  });

  test('of any length: none begins with what is taken off a line, within the sums, or after the word above the terms', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 1, maxLength: 150 }), fc.nat(30), (lines, terms) => {
        const { page, breaks } = paged(lines, terms);
        const body = page.head + 1;
        const firstSum = body + page.lines + 1;
        expect([...breaks].sort((one, other) => one - other)).toEqual([...new Set(breaks)]);
        for (const row of breaks) {
          expect(row).toBeGreaterThan(body);
          expect(page.off.map((down) => body + down)).not.toContain(row);
          expect(row < firstSum - 1 || row >= firstSum + page.sums).toBe(true);
          if (page.termsRow !== null) expect(row).not.toBe(page.termsRow + 1);
        }
        // 705 points are 47 lines of 15, and a page begins as late as it can
        const rows = page.cells.length;
        if (rows > 47) expect(breaks.length).toBeGreaterThan(0);
        expect(breaks.length).toBeLessThanOrEqual(Math.ceil((rows * 45) / 300));
      }),
    );
  });
});

describe('options that are alike', () => {
  const named = (name: string, choices: object) => ({ name, choices });

  test('are told, on the sheet and in the answer; others are not', async () => {
    const port = await pricedWorkshop();
    const options = [named('As it is', {}), named('One layer', { layers: 1 }), named('Other', { newItem: 'MOSS-S' })];
    const end = await fillOptions(port, await readShop(port), { job: '1042', terms: TERMS, options });
    const told = '“As it is” and “One layer” are alike: the same lines at the same prices.';
    expect(sayOptions(end)).toContain(told);
    const [seen] = await port.read([
      { read: 'block', at: { sheet: 'Options 1042', row: 0, column: 0, rows: 40, columns: 4 } },
    ]);
    expect(seen.values.map(([first]) => first)).toContain(told);
    const unlike = await fillOptions(port, await readShop(port), {
      job: '1042',
      terms: TERMS,
      options: [named('As it is', {}), named('Other', { newItem: 'MOSS-S' })],
    });
    expect(sayOptions(unlike)).not.toContain('alike');
  });
});

describe('options that cannot stand beside each other', () => {
  test('an option that cannot be quoted is named with what it lacks', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Stock', [{}, { Price: null }]);
    const options = [
      { name: 'As it is', choices: {} },
      { name: 'Other grip', choices: { newItem: 'MOSS-S' } },
    ];
    const end = await fillOptions(port, await readShop(port), { job: '1042', terms: TERMS, options });
    expect(sayOptions(end)).toBe(
      'Nothing was written. Other grip: Price of MOSS-S in Stock is blank. Give an amount, 0 where there is none.',
    );
    expect((await port.read([{ read: 'sheets' }]))[0].map(({ name }) => name)).not.toContain('Options 1042');
  });

  test('two of one name', async () => {
    const port = await pricedWorkshop();
    const options = [
      { name: 'Same', choices: {} },
      { name: 'same', choices: { layers: 2 } },
    ];
    const end = await fillOptions(port, await readShop(port), { job: '1042', terms: TERMS, options });
    expect(sayOptions(end)).toContain('“same” is there twice');
  });
});
