import { describe, expect, test } from 'vitest';
import { benchTicket } from '../../src/core/index';
import { setMinutes } from '../../src/functions/functions';
import { demoTables } from '../../src/tryout/demo/demoTables';
import { planJob } from '../../src/workbook/benchJob';
import { quoteJob } from '../../src/workbook/quoteScope';
import { readBench } from '../../src/workbook/readBench';
import { readShop } from '../../src/workbook/shop';
import { DEMO_JOBS, demoPort } from '../pane/demoPane';
import { refusal } from './refusal';

type Cells = unknown[][];

const clubs: Cells = [
  ['Club', 'Kind', 'New grip', 'Length (in)', 'Butt (in)', 'Reading', 'Hold', 'Layers', 'Take off', 'Job'],
  ['Driver', 'Driver', 'R1', 45, 0.6, 'D2', 'Nothing', 3, 'Whole', 'A'],
  ['7 iron', 'Iron', 'R1', 37, 0.6, 'D2', 'Nothing', 1, '', 'B'],
  ['8 iron', 'Iron', '', 36.5, 0.6, 'D2', 'Nothing', '', '', 'B'],
];
const stock: Cells = [
  ['Item', 'Core (in)', 'Mass (g)'],
  ['R1', 0.6, 50],
];
const rates: Cells = [
  ['Work', 'Per', 'Minutes', 'Charged for', 'Kind', 'Included layers'],
  ['Fit', 'Club', 8, 'Fitting a grip', '', 1],
  ['Tape', 'Layer', 1.5, 'Build-up tape', '', ''],
  ['Keep the old one', 'Club', 4, 'Old grip taken off whole', '', ''],
  ['Look it over', 'Job', 5, 'Every job', '', ''],
];

const withCell = (cells: Cells, row: number, place: number, value: unknown): Cells =>
  cells.map((each, r) => each.map((old, c) => (r === row && c === place ? value : old)));
const blanks = (cells: Cells, blank: unknown): Cells =>
  cells.map((row) => row.map((each) => (each === '' ? blank : each)));
const demo = (name: string): Cells => (demoTables[name] ?? []).map((row) => [...row]);

describe('SETMINUTES', () => {
  // By hand: driver 8 + 2 layers more at 1.5 + 4 = 15; 7 iron 8; nothing for the club without a grip; 5 for the job.
  test.each([null, 0, ''])('adds up what each club takes and what the job takes once; blanks %j', (blank) => {
    expect(setMinutes(blanks(clubs, blank), blanks(rates, blank), stock, undefined, undefined, undefined, blank)).toBe(
      28,
    );
  });

  test('counts one job where one is named', () => {
    expect(setMinutes(clubs, rates, stock, undefined, undefined, undefined, 'b')).toBe(13);
  });

  test('a work without minutes counts as none, as null and as 0', () => {
    for (const blank of [null, 0]) expect(setMinutes(clubs, withCell(rates, 1, 2, blank), stock)).toBe(12);
  });

  test.each(DEMO_JOBS)('is what the quote and the ticket say for %s of the demo', async (job) => {
    const { tables } = await readShop(demoPort());
    const [Clubs, Rates, Stock, Settings, Weights, Tape] = [
      'Clubs',
      'Rates',
      'Stock',
      'Settings',
      'Weights',
      'Tape',
    ].map(demo);
    const minutes = setMinutes(Clubs ?? [], Rates ?? [], Stock, Settings, Weights, Tape, job);
    expect(minutes).toBe(quoteJob(tables, { job, terms: { issued: 46_000 } }).minutes.minutes);
    const planned = planJob(tables, job);
    if (!planned?.ok) throw new Error('not planned');
    const ticket = benchTicket(planned.value.plan, planned.value.input, readBench(tables).ask);
    expect(ticket.minutes.total).toBe(minutes);
    expect(minutes).toBeGreaterThan(10);
  });

  test.each([
    ['no rates', [clubs, null], 'rates is blank'],
    ['no clubs', [null, rates], 'clubs is blank'],
    ['rates without the work', [clubs, [['Price'], [3]]], 'no column “Work” in Rates'],
    ['minutes in words', [clubs, withCell(rates, 1, 2, 'eight'), stock], 'Rates row 2, Minutes is “eight”'],
    ['no row for the fitting', [clubs, [rates[0] ?? [], ...rates.slice(2)], stock], 'Fitting a grip in Rates is blank'],
    ['a work twice', [clubs, [...rates, rates[1] ?? []], stock], 'Work in Rates: “Fit” is there twice'],
    ['minutes that are not for layers', [clubs, withCell(rates, 1, 1, 'Layer'), stock], 'Per of Fit in Rates'],
  ] as const)('%s is refused with a sentence', (_, args, sentence) => {
    const cells = args as unknown as Parameters<typeof setMinutes>;
    expect(refusal(() => setMinutes(...cells))).toMatchObject({
      code: '#VALUE!',
      message: expect.stringContaining(sentence) as string,
    });
  });

  test('a job that has no club is no question with an answer', () => {
    expect(refusal(() => setMinutes(clubs, rates, stock, undefined, undefined, undefined, 'z')).code).toBe('#N/A');
  });
});
