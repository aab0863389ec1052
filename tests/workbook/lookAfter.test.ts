/** What is said of a plan that was filled goes by what its formula shows. */
import { expect, test, vi } from 'vitest';
import { fillPlan } from '../../src/workbook/fillPlan';
import { plansAmiss } from '../../src/workbook/lookAfter';
import type { Filled } from '../../src/workbook/outcomes';
import { PortError } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import { sayAmiss } from '../../src/words/outcomes';
import { type Calculate, type MemoryPort } from './memoryPort';
import { spillPlan, workshop } from './workshop';

/** The formula stands right below the nine rows of the plan's head. */
const CELL = "'Plan 1042'!A10";

async function filled(calculate: Calculate, as: 'live' | 'values' = 'live'): Promise<[MemoryPort, Filled]> {
  const port = await workshop();
  port.calculate = calculate;
  const end = await fillPlan(port, await readShop(port), {
    scope: { job: '1042' },
    choices: {},
    where: 'planSheet',
    as,
  });
  if (!end.done) throw new Error(end.reason);
  port.reads = 0;
  return [port, end];
}

const shows = (error: string): Calculate => {
  return () => ({ error });
};
const noWait = (): Promise<void> => Promise.resolve();

test('a plan that came out is looked at once, and nothing is said', async () => {
  const [port, end] = await filled(spillPlan);
  expect(await plansAmiss(port, [end], noWait)).toEqual([]);
  expect(port.reads).toBe(1);
});

test('a plan of values has no formula to look at', async () => {
  const [port, end] = await filled(spillPlan, 'values');
  expect(await plansAmiss(port, [end], noWait)).toEqual([]);
  expect(port.reads).toBe(0);
});

test.each([
  ['#VALUE!', 'Select that cell: the sign beside it says why.'],
  ['#SPILL!', 'Cells that it needs are not blank'],
  ['#NAME?', 'The functions of Setwright are not there yet'],
])('%s is told with its cell, why, and what to do', async (error, why) => {
  const [port, end] = await filled(shows(error));
  const amiss = await plansAmiss(port, [end, end], noWait);
  // However many plans, it is one read.
  expect(port.reads).toBe(1);
  expect(amiss).toEqual([
    { cell: CELL, error, says: null, unanswered: false },
    { cell: CELL, error, says: null, unanswered: false },
  ]);
  expect(sayAmiss({ cell: CELL, error, says: null, unanswered: false })).toContain(
    `${CELL} shows ${error} instead of a plan. ${why}`,
  );
  expect(sayAmiss({ cell: CELL, error, says: 'Length is blank.', unanswered: false })).toBe(
    `${CELL} shows ${error} instead of a plan. Length is blank.`,
  );
});

test('what a function has not answered yet is looked at once more', async () => {
  const [port, end] = await filled(shows('#BUSY!'));
  const answered = vi.fn(async () => void (port.calculate = spillPlan));
  expect(await plansAmiss(port, [end], answered)).toEqual([]);
  expect([port.reads, answered.mock.calls.length]).toEqual([2, 1]);

  port.calculate = shows('#BUSY!');
  const [still] = await plansAmiss(port, [end], noWait);
  if (!still) throw new Error('nothing was seen');
  expect(sayAmiss(still)).toBe(`${CELL} was still being worked out when this was looked at. Look there in a moment.`);
});

test('where it cannot be looked at, what was written still counts as written', async () => {
  const [port, end] = await filled(spillPlan);
  port.read = () => Promise.reject(new PortError('editing'));
  expect(await plansAmiss(port, [end], noWait)).toEqual([]);
});
