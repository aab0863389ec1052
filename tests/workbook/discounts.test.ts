import { describe, expect, test } from 'vitest';
import { runBatch } from '../../src/workbook/batch';
import { issueQuote, type IssueRequest } from '../../src/workbook/issueQuote';
import type { Seen } from '../../src/workbook/port';
import { quoteJob, quoteOptions } from '../../src/workbook/quoteScope';
import { readShop } from '../../src/workbook/shop';
import { moneyText, sayQuoteIssue } from '../../src/words/money';
import { sayIssued } from '../../src/words/quoteOutcomes';
import { QUOTE_SHEET } from '../../src/words/quoteHead';
import type { MemoryPort } from './memoryPort';
import { pricedWorkshop, set } from './pricedWorkshop';

const TODAY = 46_000;
const OF_JOB: IssueRequest = { what: { job: '1042' }, terms: { issued: TODAY }, shown: null };

type Cells = Readonly<Record<string, Seen>>;

/** The workshop whose job 1042 is three FERN-M at 6.50, three fittings at 3.50 and more; 48.60 EUR with a fifth of tax. */
async function discounted(...rows: readonly Cells[]): Promise<MemoryPort> {
  const port = await pricedWorkshop();
  port.fillTable('Discounts', rows);
  return port;
}

async function quoteNow(port: MemoryPort, terms: Partial<IssueRequest['terms']> = {}) {
  return quoteJob((await readShop(port)).tables, { job: '1042', terms: { issued: TODAY, ...terms } });
}

async function totalNow(port: MemoryPort): Promise<string | undefined> {
  const { quote, issues } = await quoteNow(port);
  return quote ? moneyText(quote.total) : issues.map(sayQuoteIssue).join(' ');
}

describe('discounts by line', () => {
  test('by item and by work, in per cent and as an amount', async () => {
    const port = await discounted(
      { Job: '1042', Line: 'fern-m', 'Percent (%)': 10, Reason: 'Old stock' },
      { Job: '1042', Line: 'Fit a grip', Amount: '1,50' },
      { Job: '1043', Line: 'FERN-M', 'Percent (%)': 50 },
    );
    const { quote, issues } = await quoteNow(port);
    expect(issues).toEqual([]);
    // By hand: a tenth of 19.50 is 1.95; 40.50 − 1.95 − 1.50 = 37.05, and a fifth
    expect(quote?.lines.filter(({ lineDiscount }) => lineDiscount.minor > 0n)).toMatchObject([
      { item: 'FERN-M', lineDiscount: { minor: 195n }, discountReason: 'Old stock' },
      { description: 'Fit a grip', lineDiscount: { minor: 150n }, discountReason: undefined },
    ]);
    expect(quote && moneyText(quote.total)).toBe('44.46 EUR');
  });

  test('stand on the quote with their reason, and in its later revisions', async () => {
    const port = await discounted({ Job: '1042', Line: 'FERN-M', 'Percent (%)': 10, Reason: 'Old stock' });
    for (const sheet of ['Quote 1', 'Quote 1 rev 2']) {
      expect(await issueQuote(port, OF_JOB)).toMatchObject({ done: true, sheet });
      const [seen] = await port.read([{ read: 'block', at: { sheet, row: 0, column: 0, rows: 40, columns: 5 } }]);
      const row = seen.values.find((each) => each[0] === QUOTE_SHEET.lineDiscountFor('Old stock'));
      expect(row?.[4]).toBe(-1.95);
    }
  });

  test('count in a batch', async () => {
    const port = await discounted({ Job: '1042', Line: 'FERN-M', Amount: 0.5 });
    const asked = { jobs: ['1042'], quote: true, reserve: false, plan: false, today: TODAY };
    const going = { step: () => undefined, signal: new AbortController().signal, rest: () => Promise.resolve() };
    const end = await runBatch(port, asked, going);
    // By hand: 40.00 and a fifth
    expect(end.quotes?.get('1042')).toMatchObject({ done: true, total: { minor: 4800n } });
  });

  test('one for this quote alone goes before that of the sheet', async () => {
    const port = await discounted({ Job: '1042', Line: 'FERN-M', 'Percent (%)': 10 });
    const { quote } = await quoteNow(port, { lineOff: { description: 'FERN-M', percent: '50 %' } });
    expect(quote?.lineDiscount.minor).toBe(975n);
  });

  test.each<[string, Cells[], string]>([
    [
      'more than its line',
      [{ Job: '1042', Line: 'FERN-M', Amount: 20 }],
      'Discounts row 2, Amount is 20. Give 19.50 at most, which is what FERN-M comes to.',
    ],
    [
      'a line that the quote has not',
      [{ Job: '1042', Line: 'FERN-L', Amount: 1 }],
      'Discounts row 2, Line is “FERN-L”. Give a line of the quote for job 1042 (FERN-M; ',
    ],
    [
      'one line twice',
      [
        { Job: '1042', Line: 'FERN-M', Amount: 1 },
        { Job: '1042', Line: 'fern-m', 'Percent (%)': 5 },
      ],
      'Discounts row 3, Line: “fern-m” is there twice',
    ],
    [
      'a per cent and an amount',
      [{ Job: '1042', Line: 'FERN-M', Amount: 1, 'Percent (%)': 5 }],
      'Discounts row 2 does not fit: 5 % and an amount of 1 are both there',
    ],
    [
      'neither',
      [{ Job: '1042', Line: 'FERN-M', Reason: 'asked for it' }],
      'Discounts row 2, Percent (%) is blank. Give a per cent, or an amount beside it.',
    ],
    ['no line', [{ Job: '1042', Amount: 1 }], 'Discounts row 2, Line is blank'],
    [
      'ten per cent as Excel keeps it',
      [{ Job: '1042', Line: 'FERN-M', 'Percent (%)': 0.1 }],
      'Discounts row 2, Percent (%) is 0.1, which can be read in two ways. Give 10 if 10 % is meant',
    ],
    ['words', [{ Job: '1042', Line: 'FERN-M', Amount: 'some' }], 'Discounts row 2, Amount is “some”, not a number'],
    ['below 0', [{ Job: '1042', Line: 'FERN-M', Amount: -1 }], 'Discounts row 2, Amount is −1'],
  ])('%s is refused, and only for its job', async (_, rows, sentence) => {
    const port = await discounted(...rows);
    const end = await issueQuote(port, OF_JOB);
    expect(sayIssued(end)).toContain(sentence);
    expect(port.tableSeen('Quotes')?.rows[0]?.every((cell) => cell === null)).toBe(true);
    port.fillTable(
      'Discounts',
      rows.map(() => ({ Job: '900' })),
    );
    expect(await totalNow(port)).toBe('48.60 EUR');
  });

  test('0 and an amount is the amount; 0 alone is nothing', async () => {
    const port = await discounted({ Job: '1042', Line: 'FERN-M', 'Percent (%)': 0, Amount: 0.5 });
    expect(await totalNow(port)).toBe('48.00 EUR');
    port.fillTable('Discounts', [{ Amount: null }]);
    expect(await totalNow(port)).toBe('48.60 EUR');
  });

  test('an option with another grip is quoted, and says what is not taken off', async () => {
    const port = await discounted({ Job: '1042', Line: 'FERN-M', 'Percent (%)': 10 });
    const { tables } = await readShop(port);
    const other = quoteJob(tables, { job: '1042', terms: { issued: TODAY }, choices: { newItem: 'MOSS-S' } });
    expect(other.issues).toEqual([]);
    expect(other.notTakenOff).toEqual(['FERN-M']);
    expect(other.quote?.lineDiscount.minor).toBe(0n);
    const options = [
      { name: 'As it is', choices: {} },
      { name: 'Other', choices: { newItem: 'MOSS-S' } },
    ];
    expect(quoteOptions(tables, { job: '1042', terms: { issued: TODAY }, options }).quotes).toHaveLength(2);
  });

  test('a workbook without the table is quoted as before', async () => {
    const { tables } = await readShop(await pricedWorkshop());
    const without = quoteJob({ ...tables, Discounts: null }, { job: '1042', terms: { issued: TODAY } });
    expect(without.quote && moneyText(without.quote.total)).toBe('48.60 EUR');
  });
});

describe('discounts on the grips', () => {
  test('as an amount, where there is no per cent', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Jobs', [{ 'Grip discount amount': 2.5 }]);
    // By hand: 38.00 and a fifth
    expect(await totalNow(port)).toBe('45.60 EUR');
    port.fillTable('Jobs', [{ 'Grip discount (%)': 0 }]);
    expect(await totalNow(port)).toBe('45.60 EUR');
    port.fillTable('Jobs', [{ 'Grip discount (%)': 5 }]);
    expect(await totalNow(port)).toContain('Grip discount of job 1042 in Jobs does not fit');
  });

  test('of more than they come to, or on the job of more than it comes to, are refused', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Jobs', [{ 'Grip discount amount': 19.51 }]);
    expect(await totalNow(port)).toBe(
      'Jobs row 2, Grip discount amount is 19.51. Give 19.50 at most, which is what the grips come to.',
    );
    port.fillTable('Jobs', [{ 'Grip discount amount': 19.5, 'Discount amount': 22 }]);
    expect(await totalNow(port)).toBe(
      'Jobs row 2, Discount amount is 22. Give 21.00 at most, which is what the job comes to.',
    );
    set(port, 'Minimum charge', 10);
    port.fillTable('Jobs', [{ 'Discount amount': 21 }]);
    expect(await totalNow(port)).toBe('12.00 EUR');
  });
});
