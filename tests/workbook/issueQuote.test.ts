import { describe, expect, test } from 'vitest';
import { benchTicket } from '../../src/core/index';
import { planJob } from '../../src/workbook/benchJob';
import type { Choices } from '../../src/workbook/choices';
import { fillPlan } from '../../src/workbook/fillPlan';
import { issueQuote, voidQuote, type IssueRequest } from '../../src/workbook/issueQuote';
import type { Seen } from '../../src/workbook/port';
import { quoteJob } from '../../src/workbook/quoteScope';
import { readBench } from '../../src/workbook/readBench';
import { lastFill } from '../../src/workbook/undo';
import { readShop } from '../../src/workbook/shop';
import { sayIssued, sayVoided } from '../../src/words/quoteOutcomes';
import type { MemoryPort } from './memoryPort';
import { pricedWorkshop, RATE_ROWS, set } from './pricedWorkshop';

const TODAY = 46_000;
const OF_JOB: IssueRequest = { what: { job: '1042' }, terms: { issued: TODAY }, shown: null };

async function page(port: MemoryPort, sheet: string): Promise<readonly (readonly Seen[])[]> {
  const [seen] = await port.read([{ read: 'block', at: { sheet, row: 0, column: 0, rows: 40, columns: 6 } }]);
  return seen.values;
}

/** What stands at the edge of the row of a label. */
async function beside(port: MemoryPort, sheet: string, label: string): Promise<Seen> {
  return (await page(port, sheet)).find((row) => row.includes(label))?.[4] ?? null;
}

function registered(port: MemoryPort, rows: number): (readonly Seen[])[] {
  return (port.tableSeen('Quotes')?.rows ?? []).slice(0, rows).map((row) => row);
}

function typeRegister(port: MemoryPort, row: number, values: Readonly<Record<string, Seen>>): void {
  const headers = port.tableSeen('Quotes')?.headers ?? [];
  for (const [header, value] of Object.entries(values)) port.type('Quotes', row, headers.indexOf(header), value);
}

const ROW = { 'No.': 1041, Revision: 1, Job: '900', Status: 'Issued' };

describe('issuing a quote', () => {
  test('writes its sheet and its row of the register', async () => {
    const port = await pricedWorkshop();
    set(port, 'Address', '1 Example Lane; Sampletown');
    set(port, 'Terms', 'Paid on collection.');
    const end = await issueQuote(port, OF_JOB);
    // By hand: 3 × (6.50 + 3.50 + 1.00 + 2.50) = 40.50, and a fifth of it.
    expect(end).toMatchObject({ done: true, number: 1, revision: 1, sheet: 'Quote 1', total: { minor: 4860n } });
    expect(sayIssued(end)).toContain('Quote 1 over 48.60 EUR stands in Quote 1');
    const cells = await page(port, 'Quote 1');
    expect(cells.slice(0, 3).map(([first]) => first)).toEqual(['Invented workshop', '1 Example Lane', 'Sampletown']);
    expect(cells.find(([first]) => first === 'FERN-M')?.slice(1, 5)).toEqual([3, 6.5, 'Sales, 20 %', 19.5]);
    expect(await beside(port, 'Quote 1', 'Total, EUR')).toBe(48.6);
    expect(await beside(port, 'Quote 1', 'Valid until')).toBe(TODAY + 30);
    expect(cells.flat()).toContain('Paid on collection.');
    expect(registered(port, 2)).toEqual([
      [1, 1, '1042', 'Tamsin Orrell', TODAY, TODAY + 30, 48.6, 'EUR', 'Issued', 'Quote 1'],
      Array(10).fill(null),
    ]);
  });

  test('never shows what the shop keeps: no cost, no margin, no minutes', async () => {
    const port = await pricedWorkshop();
    await issueQuote(port, OF_JOB);
    const texts = (await page(port, 'Quote 1')).flat().map(String).join('\n');
    expect(texts).not.toMatch(/margin|cost|minute/i);
    // By hand: grips 3 × 3.50, fitting 3 × 3.00, the rest 3 × 3.50: nobody outside sees 30.00 or 9.00.
    expect((await page(port, 'Quote 1')).flat()).not.toContain(30);
  });

  test('every amount shown adds up: the rows to the sum, the sum with its tax to the total', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Jobs', [{ 'Discount (%)': 7, 'Grip discount (%)': 3.3 }]);
    set(port, 'Deposit', 20);
    await issueQuote(port, {
      ...OF_JOB,
      terms: { issued: TODAY, lineOff: { description: 'Fit a grip', percent: 12 } },
    });
    const cells = await page(port, 'Quote 1');
    const at = (label: string) => Number(cells.find(([first]) => String(first).startsWith(label))?.[4]);
    const from = cells.findIndex(([first]) => first === 'Description') + 1;
    const to = cells.findIndex((row, i) => i > from && row[0] === null);
    const lines = cells.slice(from, to).map((row) => Math.round(Number(row[4]) * 100));
    expect(cells.slice(from, to).map(([first]) => first)).toContain('Discount on this line');
    const cents = (label: string) => Math.round(at(label) * 100);
    expect(lines.reduce((sum, each) => sum + each, 0)).toBe(cents('Sum of lines'));
    expect(cents('Sum of lines') + cents('Discount on the grips') + cents('Discount on the job')).toBe(
      cents('Before tax'),
    );
    expect(cents('Before tax') + cents('Sales')).toBe(cents('Total'));
    expect(cents('Deposit') + cents('Balance')).toBe(cents('Total'));
  });

  test('a later quote for the job is its next revision, on a sheet of its own; the issued one stays', async () => {
    const port = await pricedWorkshop();
    await issueQuote(port, OF_JOB);
    const before = await page(port, 'Quote 1');
    port.fillTable('Rates', [{ Price: 4 }]);
    const end = await issueQuote(port, OF_JOB);
    expect(end).toMatchObject({ done: true, number: 1, revision: 2, sheet: 'Quote 1 rev 2', total: { minor: 5040n } });
    expect(await page(port, 'Quote 1')).toEqual(before);
    expect(await beside(port, 'Quote 1 rev 2', 'Revision')).toBe(2);
    expect(await issueQuote(port, { ...OF_JOB, what: { job: '1043' } })).toMatchObject({ number: 2, revision: 1 });
  });

  test('a void number is not given again, and neither is one that a person typed', async () => {
    const port = await pricedWorkshop();
    await issueQuote(port, OF_JOB);
    expect(await voidQuote(port, { number: 1, revision: 1 })).toMatchObject({ done: true });
    expect(await issueQuote(port, OF_JOB)).toMatchObject({ number: 2, revision: 1 });
    typeRegister(port, 3, ROW);
    expect(await issueQuote(port, { ...OF_JOB, what: { job: '1043' } })).toMatchObject({ number: 1042, revision: 1 });
    expect(registered(port, 4).map(([number]) => number)).toEqual([1, 2, 1041, 1042]);
  });

  test('a number that was typed for two jobs has no revision twice', async () => {
    const port = await pricedWorkshop();
    typeRegister(port, 1, { ...ROW, Job: '1042' });
    typeRegister(port, 2, { ...ROW, Revision: 2, Job: '1043' });
    expect(await issueQuote(port, OF_JOB)).toMatchObject({ done: true, number: 1041, revision: 3 });
  });

  test('an option that is not in Clubs yet, with its name', async () => {
    const port = await pricedWorkshop();
    const choices: Choices = { newItem: 'MOSS-S', layers: 2 };
    const end = await issueQuote(port, { ...OF_JOB, what: { job: '1042', choices, option: 'With tape' } });
    expect(end).toMatchObject({ done: true });
    const cells = await page(port, 'Quote 1');
    expect(cells.find(([first]) => first === 'MOSS-S')?.[4]).toBe(21);
    // one layer is in the fitting
    expect(cells.find(([first]) => first === 'Build-up tape')?.slice(1, 5)).toEqual([3, 0.4, 'Sales, 20 %', 1.2]);
    expect(await beside(port, 'Quote 1', 'Option')).toBe('With tape');
  });

  test('a price at the counter gets a number of its own each time, and no job', async () => {
    const port = await pricedWorkshop();
    const counter = { clubs: 7, item: 'FERN-M', layers: 1, salvage: false, reading: false };
    const request: IssueRequest = { what: { counter, customer: ' Lou Weir ' }, terms: { issued: TODAY }, shown: null };
    // By hand: 7 × (6.50 + 3.50) = 70.00 and 20 %.
    expect(await issueQuote(port, request)).toMatchObject({ number: 1, total: { minor: 8400n } });
    expect(await issueQuote(port, request)).toMatchObject({ number: 2, revision: 1 });
    expect(registered(port, 1)[0]?.slice(0, 4)).toEqual([1, 1, null, 'Lou Weir']);
    expect((await page(port, 'Quote 1')).some((row) => row.includes('Job'))).toBe(false);
  });

  test('takes as many round trips for one club as for many', async () => {
    const port = await pricedWorkshop();
    const [reads, applies] = [port.reads, port.applies];
    await issueQuote(port, OF_JOB);
    expect([port.reads - reads, port.applies - applies]).toEqual([3, 1]);
  });
});

describe('a quote and what was filled before it', () => {
  test('Undo takes back the fill, not the quote', async () => {
    const port = await pricedWorkshop();
    const shop = await readShop(port);
    await fillPlan(port, shop, { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'values' });
    const label = await lastFill(port);
    await issueQuote(port, OF_JOB);
    await voidQuote(port, { number: 1, revision: 1 });
    expect(await lastFill(port)).toBe(label);
    expect(label).not.toBeNull();
  });
});

describe('what is not issued', () => {
  /** Nothing may have been written, whatever the reason. */
  async function refused(port: MemoryPort, request: IssueRequest = OF_JOB): Promise<string> {
    const before = JSON.stringify(port.copy());
    const end = await issueQuote(port, request);
    expect(end.done).toBe(false);
    expect(JSON.stringify(port.copy()).replace(/"(reads|applies|stepsDone|asked)":[^,]*/g, '')).toBe(
      before.replace(/"(reads|applies|stepsDone|asked)":[^,]*/g, ''),
    );
    return sayIssued(end);
  }

  test.each([
    ['no currency', (port: MemoryPort) => set(port, 'Currency', null), 'Currency in Settings is blank'],
    ['an unknown currency', (port: MemoryPort) => set(port, 'Currency', 'XXQ'), 'Currency is “XXQ”'],
    [
      'a price that is missing',
      (port: MemoryPort) => port.fillTable('Stock', [{ Price: null }]),
      'Price of FERN-M in Stock is blank',
    ],
    [
      'a price in words',
      (port: MemoryPort) => port.fillTable('Stock', [{ Price: 'six' }]),
      'Stock row 2, Price is “six”',
    ],
    [
      'a price that reads two ways',
      (port: MemoryPort) => port.fillTable('Stock', [{ Price: '1,250' }]),
      'can be read in two ways',
    ],
    ['a negative price', (port: MemoryPort) => port.fillTable('Rates', [{ Price: -1 }]), 'Rates row 2, Price is −1'],
    [
      'tax typed as 20 %, which a cell keeps as 0.2',
      (port: MemoryPort) => port.fillTable('Taxes', [{ 'Percent (%)': 0.2 }]),
      'Taxes row 2, Percent (%) is 0.2, which can be read in two ways. Give 20 if 20 % is meant',
    ],
    [
      'a discount typed as 5 %',
      (port: MemoryPort) => port.fillTable('Jobs', [{ 'Discount (%)': 0.05 }]),
      'Jobs row 2, Discount (%) is 0.05',
    ],
    [
      'a discount on the grips typed as 10 %',
      (port: MemoryPort) => port.fillTable('Jobs', [{ 'Grip discount (%)': 0.1 }]),
      'Jobs row 2, Grip discount (%) is 0.1',
    ],
    [
      'a deposit typed as 30 %',
      (port: MemoryPort) => set(port, 'Deposit', 0.3),
      'Deposit is 0.3, which can be read in two ways. Give 30 if 30 % is meant',
    ],
    [
      'tax over 100 %',
      (port: MemoryPort) => port.fillTable('Taxes', [{ 'Percent (%)': 120 }]),
      'Taxes row 2, Percent (%) is 120',
    ],
    ['a tax that is not listed', (port: MemoryPort) => port.fillTable('Rates', [{ Tax: 'Luxury' }]), 'tax is “Luxury”'],
    [
      'a discount over 100 %',
      (port: MemoryPort) => port.fillTable('Jobs', [{ 'Discount (%)': 110 }]),
      'Discount (%) is 110',
    ],
    ['an item listed twice', (port: MemoryPort) => port.fillTable('Stock', [{}, { Item: 'fern-m' }]), 'is there twice'],
    [
      'no new grip',
      (port: MemoryPort) => port.fillTable('Clubs', Array(3).fill({ 'New grip': null })),
      'nothing to charge',
    ],
    [
      'a job that Clubs has not',
      (port: MemoryPort) => port.fillTable('Clubs', Array(3).fill({ Job: 'x' })),
      'clubs of job 1042',
    ],
    ['a register without a column', (port: MemoryPort) => port.type('Quotes', 0, 8, 'Stage'), 'no column Status'],
    [
      'a number in words',
      (port: MemoryPort) => typeRegister(port, 1, { ...ROW, 'No.': 'ten' }),
      'Quotes row 2, No. is “ten”',
    ],
    [
      'a blank number',
      (port: MemoryPort) => typeRegister(port, 1, { ...ROW, 'No.': null }),
      'Quotes row 2, No. is blank',
    ],
    [
      'a number used twice',
      (port: MemoryPort) => [1, 2].forEach((row) => typeRegister(port, row, ROW)),
      'Quotes row 3, No. is 1041, as in row 2',
    ],
    ['a protected register', (port: MemoryPort) => port.protect('Quotes'), 'The sheet Quotes is protected'],
    ['a filtered register', (port: MemoryPort) => port.filter('Quotes'), 'A filter hides rows of Quotes'],
  ] as const)('%s is told, and nothing is written', async (_, spoil, sentence) => {
    const port = await pricedWorkshop();
    spoil(port);
    expect(await refused(port)).toContain(sentence);
  });

  test('a price with a comma is a price', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Stock', [{ Price: '6,50' }]);
    expect(await issueQuote(port, OF_JOB)).toMatchObject({ done: true, total: { minor: 4860n } });
  });

  test('what is wrong in a row that the quote does not sell keeps nobody from issuing', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Stock', [{}, { Price: 'ask' }]);
    set(port, 'Tolerance', 'half');
    port.fillTable('Jobs', [{ 'Hand length (in)': 700 }]);
    expect(await issueQuote(port, OF_JOB)).toMatchObject({ done: true });
  });

  test('another total than was shown is not issued', async () => {
    const port = await pricedWorkshop();
    const shown = { minor: 4800n, currency: { code: 'EUR', minorDigits: 2 } };
    expect(await refused(port, { ...OF_JOB, shown })).toContain(
      'was 48.00 EUR when it was shown and is 48.60 EUR by now',
    );
  });

  test('a register that is missing is named', async () => {
    const port = await pricedWorkshop();
    port.deleteSheet('Quotes');
    expect(sayIssued(await issueQuote(port, OF_JOB))).toContain('There is no table Quotes');
  });

  test('a failure at any step leaves neither a sheet nor a row', async () => {
    const whole = await pricedWorkshop();
    const first = whole.stepsDone;
    await issueQuote(whole, OF_JOB);
    const steps = whole.stepsDone - first;
    expect(steps).toBeGreaterThan(10);
    for (let step = 1; step <= steps; step += 3) {
      const port = await pricedWorkshop();
      port.failing.add(port.stepsDone + step);
      const end = await issueQuote(port, OF_JOB);
      expect(end).toMatchObject({ done: false, reason: 'port' });
      expect(registered(port, 1)[0]?.every((cell) => cell === null)).toBe(true);
      const [sheets] = await port.read([{ read: 'sheets' }]);
      expect(sheets.map(({ name }) => name)).not.toContain('Quote 1');
    }
  });

  test('a number whose sheet is there is not given again, though its row was cleared', async () => {
    const port = await pricedWorkshop();
    await issueQuote(port, OF_JOB);
    const headers = port.tableSeen('Quotes')?.headers ?? [];
    typeRegister(port, 1, Object.fromEntries(headers.map((header) => [header, null])));
    expect(await issueQuote(port, { ...OF_JOB, what: { job: '1042' } })).toMatchObject({ number: 2, sheet: 'Quote 2' });
  });

  test('a sheet of that name which is a person’s stays theirs', async () => {
    const port = await pricedWorkshop();
    port.addSheet('Quote 1');
    port.type('Quote 1', 0, 0, 'mine');
    expect(await issueQuote(port, OF_JOB)).toMatchObject({ done: true, number: 2, sheet: 'Quote 2' });
    expect((await page(port, 'Quote 1'))[0]?.[0]).toBe('mine');
  });
});

describe('void', () => {
  test('writes the status and nothing else', async () => {
    const port = await pricedWorkshop();
    await issueQuote(port, OF_JOB);
    const [before] = registered(port, 1);
    const end = await voidQuote(port, { number: 1, revision: 1 });
    expect(sayVoided(end)).toContain('Quote 1 is Void');
    expect(registered(port, 1)[0]).toEqual(before?.map((cell) => (cell === 'Issued' ? 'Void' : cell)));
    expect(await voidQuote(port, { number: 1, revision: 1 })).toMatchObject({ reason: 'voidAlready' });
    expect(await voidQuote(port, { number: 9, revision: 1 })).toMatchObject({ reason: 'notFound' });
  });
});

describe('quote and ticket by the same rules', () => {
  const total = async (port: MemoryPort): Promise<bigint | undefined> => {
    const { quote } = quoteJob((await readShop(port)).tables, { job: '1042', terms: { issued: TODAY } });
    return quote?.total.minor;
  };
  const bothMinutes = async (port: MemoryPort) => {
    const { tables } = await readShop(port);
    const planned = planJob(tables, '1042');
    if (!planned?.ok) throw new Error('not planned');
    const ticket = benchTicket(planned.value.plan, planned.value.input, readBench(tables).ask);
    return [quoteJob(tables, { job: '1042', terms: { issued: TODAY } }).minutes.minutes, ticket.minutes.total];
  };

  /** With prices of weights: without one a weight has no line of its own, and its minutes are not quoted. */
  async function timedWorkshop(): Promise<MemoryPort> {
    const port = await pricedWorkshop();
    port.fillTable('Weights', Array<object>(4).fill({ Price: 0 }) as Record<string, Seen>[]);
    return port;
  }

  test('what comes off whole by the shop’s habit is charged and timed in both', async () => {
    const port = await timedWorkshop();
    set(port, 'Take off', 'Whole');
    // By hand: 40.50 and 3 × 1.50 for taking off whole, with a fifth of it.
    expect(await total(port)).toBe(5400n);
    const [quoted, timed] = await bothMinutes(port);
    expect(quoted).toBe(timed);
  });

  test('a club that came without a grip is charged for none taken off', async () => {
    const port = await timedWorkshop();
    port.fillTable('Rates', [
      ...RATE_ROWS,
      { Work: 'Cut off', Per: 'Club', Price: 0.5, Minutes: 1, 'Charged for': 'Old grip cut off' },
    ]);
    // By hand: 3 × 0.50 more than 40.50, then one of them less.
    expect(await total(port)).toBe(5040n);
    port.fillTable('Clubs', [{ 'Take off': 'Off already' }]);
    expect(await total(port)).toBe(4980n);
    const [quoted, timed] = await bothMinutes(port);
    expect(quoted).toBe(timed);
  });

  test('a client’s own grip is fitted by its own rate in both', async () => {
    const port = await timedWorkshop();
    port.fillTable('Rates', [{}, { Minutes: 20 }]);
    port.fillTable('Clubs', [{ 'Own grip': 'Yes' }, { 'Own grip': 'Yes' }]);
    const [quoted, timed] = await bothMinutes(port);
    expect(quoted).toBe(timed);
  });

  test('a discount of 0 % leaves the amount, and two discounts are asked about', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Jobs', [{ 'Discount amount': 5 }]);
    const alone = await total(port);
    port.fillTable('Jobs', [{ 'Discount (%)': 0 }]);
    expect(await total(port)).toBe(alone);
    port.fillTable('Jobs', [{ 'Discount (%)': 1 }]);
    const { issues } = quoteJob((await readShop(port)).tables, { job: '1042', terms: { issued: TODAY } });
    expect(issues).toEqual([expect.objectContaining({ code: 'contradiction', field: 'Discount of job 1042 in Jobs' })]);
  });
});
