import { describe, expect, test } from 'vitest';
import { fillPlan } from '../../src/workbook/fillPlan';
import { freezePlan } from '../../src/workbook/freeze';
import type { FreezeDone } from '../../src/workbook/outcomes';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { HEAD_ROWS } from '../../src/workbook/planSheet';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { sayFreeze } from '../../src/words/outcomes';
import type { MemoryPort } from './memoryPort';
import { club, CLUB_ROWS, workshop } from './workshop';

const SHEET = 'Plan 1042';

async function filledWorkshop(): Promise<MemoryPort> {
  const port = await workshop();
  const request = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'live' } as const;
  await fillPlan(port, await readShop(port), request);
  return port;
}

async function freeze(port: MemoryPort): Promise<FreezeDone> {
  const shop = await readShop(port);
  const place = shop.plans[0];
  if (!place) throw new Error('no plan');
  return freezePlan(port, shop, place);
}

function shown(port: MemoryPort): unknown {
  return port.blockSeen({ sheet: SHEET, row: 0, column: 0, rows: HEAD_ROWS + 8, columns: PLAN_COLUMNS.length }).values;
}

/** As shown, with blank text and blank cells alike. */
function looks(port: MemoryPort): unknown {
  return (shown(port) as unknown[][]).map((row) => row.map((cell) => (cell === '' ? null : cell)));
}

describe('freezing a plan', () => {
  test('keeps what it shows, as values, in one read and one write', async () => {
    const port = await filledWorkshop();
    const before = looks(port);
    const shop = await readShop(port);
    [port.reads, port.applies] = [0, 0];
    const place = shop.plans[0];
    const end = place && (await freezePlan(port, shop, place));
    expect(end).toMatchObject({ done: true, sheet: SHEET, block: { row: HEAD_ROWS, rows: 4 } });
    expect([port.reads, port.applies]).toEqual([1, 1]);
    expect(looks(port)).toEqual(before);
    expect(port.formula(SHEET, HEAD_ROWS, 0)).toBeNull();
    port.type('Clubs', 1, 4, 'OAK-58');
    expect(looks(port)).toEqual(before);
  });

  test('counts the cells it filled', async () => {
    const port = await filledWorkshop();
    const filled = (looks(port) as unknown[][])
      .slice(HEAD_ROWS)
      .flat()
      .filter((cell) => cell !== null).length;
    const end = await freeze(port);
    expect(end).toMatchObject({ cells: filled });
    expect(sayFreeze(end)).toBe(`${filled} cells in Plan 1042 now hold values; they no longer follow the tables.`);
  });

  test('taken back, follows the tables again', async () => {
    const port = await filledWorkshop();
    const before = port.content();
    await freeze(port);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
    expect(port.content()).toEqual(before);
    expect(await freeze(port)).toMatchObject({ done: true });
  });

  test('takes in clubs that were added since it was filled', async () => {
    const port = await filledWorkshop();
    port.fillTable('Clubs', [...CLUB_ROWS, club('1042', 'Gap wedge', 'Wedge', 35.25, 0.61, 'D4', 450)]);
    expect(await freeze(port)).toMatchObject({ done: true, block: { rows: 5 } });
    expect(port.shows(SHEET, HEAD_ROWS + 4, 0)).toBe('Gap wedge');
    const request = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'live' } as const;
    expect(await fillPlan(port, await readShop(port), request)).toMatchObject({ done: true, clubs: 4 });
  });

  test('finds a plan that was moved since the shop was read', async () => {
    const port = await filledWorkshop();
    const shop = await readShop(port);
    port.insertRows(SHEET, 0, 2);
    const place = shop.plans[0];
    expect(place && (await freezePlan(port, shop, place))).toMatchObject({ done: true, block: { row: HEAD_ROWS + 2 } });
  });

  test('filled again afterwards, is live again in the same place', async () => {
    const port = await filledWorkshop();
    await freeze(port);
    const request = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'live' } as const;
    expect(await fillPlan(port, await readShop(port), request)).toMatchObject({ done: true, as: 'live', sheet: SHEET });
    expect(port.shows(SHEET, HEAD_ROWS + 3, 0)).toBe('Pitching wedge');
  });

  test('says when there is nothing to freeze', async () => {
    const port = await filledWorkshop();
    await freeze(port);
    const end = await freeze(port);
    expect(end).toEqual({ done: false, reason: 'alreadyValues' });
    expect(sayFreeze(end)).toContain('nothing to freeze');
    const shop = await readShop(port);
    port.deleteSheet(SHEET);
    const place = shop.plans[0];
    expect(place && (await freezePlan(port, shop, place))).toEqual({ done: false, reason: 'planGone' });
  });

  test('does not freeze an error', async () => {
    const port = await filledWorkshop();
    port.type(SHEET, HEAD_ROWS + 1, 1, 'in the way');
    const end = await freeze(port);
    expect(end).toEqual({ done: false, reason: 'notCalculated', cell: "'Plan 1042'!A10", error: '#SPILL!' });
    expect(sayFreeze(end)).toContain('Clear the cells in its way');
    port.type(SHEET, HEAD_ROWS + 1, 1, null);
    port.calculate = null;
    expect(await freeze(port)).toMatchObject({ reason: 'notCalculated', error: '#NAME?' });
  });

  test('a failure at any step leaves everything as it was', async () => {
    for (let step = 1; step <= 5; step += 1) {
      const port = await filledWorkshop();
      const before = port.everything();
      port.failing = new Set([port.stepsDone + step]);
      expect(await freeze(port)).toMatchObject({ reason: 'port', error: { code: 'putBack' } });
      expect(port.everything()).toEqual(before);
    }
  });
});
