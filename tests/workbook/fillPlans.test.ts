import { describe, expect, test } from 'vitest';
import { fillPlan } from '../../src/workbook/fillPlan';
import { fillPlans } from '../../src/workbook/fillPlans';
import { HEAD_ROWS } from '../../src/workbook/planSheet';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import type { MemoryPort } from './memoryPort';
import { workshop } from './workshop';

const BOTH = { jobs: ['1042', '1043'], label: 'Plans of 2 jobs' };

async function fill(port: MemoryPort, asked: Partial<typeof BOTH> = {}) {
  return fillPlans(port, await readShop(port), { ...BOTH, ...asked });
}

describe('filling the plans of many jobs', () => {
  test('takes one read and one write, whatever their number', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    port.reads = 0;
    const end = await fillPlans(port, shop, BOTH);
    expect(end).toMatchObject({
      done: true,
      filled: [
        { job: '1042', sheet: 'Plan 1042', clubs: 3, as: 'live' },
        { job: '1043', sheet: 'Plan 1043', clubs: 1, as: 'live' },
      ],
      left: [],
    });
    expect([port.reads, port.applies]).toEqual([1, 1]);
  });

  test('puts there what filling them one by one does', async () => {
    const [many, single] = [await workshop(), await workshop()];
    await fill(many);
    for (const job of BOTH.jobs) {
      await fillPlan(single, await readShop(single), { scope: { job }, choices: {}, where: 'planSheet', as: 'live' });
    }
    for (const sheet of ['Plan 1042', 'Plan 1043']) {
      for (let row = 0; row < HEAD_ROWS + 4; row += 1) {
        expect(many.shows(sheet, row, 0)).toEqual(single.shows(sheet, row, 0));
        expect(many.formula(sheet, row, 0)).toEqual(single.formula(sheet, row, 0));
      }
    }
    expect(many.name('Setwright_Plan_2')).toEqual(single.name('Setwright_Plan_2'));
  });

  test('is taken back as one', async () => {
    const port = await workshop();
    const before = port.content();
    await fill(port);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { label: 'Plans of 2 jobs', left: [] } });
    expect(port.content()).toEqual(before);
    expect((await readShop(port)).plans).toEqual([]);
  });

  test('rewrites its own sheets in place', async () => {
    const port = await workshop();
    await fill(port);
    expect(await fill(port)).toMatchObject({ filled: [{ sheet: 'Plan 1042' }, { sheet: 'Plan 1043' }], left: [] });
    expect((await readShop(port)).plans).toHaveLength(2);
  });

  test('leaves out a job with a person’s cells in its way and names them, and fills the others', async () => {
    const port = await workshop();
    port.addSheet('Plan 1042');
    port.type('Plan 1042', 3, 0, 'mine');
    expect(await fill(port)).toMatchObject({
      filled: [{ job: '1043' }],
      left: [{ job: '1042', end: { reason: 'occupied', cells: ["'Plan 1042'!A4"] } }],
    });
    expect(port.shows('Plan 1042', 3, 0)).toBe('mine');
  });

  test('leaves out a job whose sheet is protected, or that has no clubs', async () => {
    const port = await workshop();
    port.addSheet('Plan 1043');
    port.protect('Plan 1043');
    const end = await fill(port, { jobs: ['1042', '1043', '77'] });
    expect(end).toMatchObject({
      filled: [{ job: '1042' }],
      left: [
        { job: '1043', end: { reason: 'port', error: { code: 'protected', cells: ['Plan 1043'] } } },
        { job: '77', end: { reason: 'noClubs' } },
      ],
    });
  });

  test('writes nothing where nothing can be filled', async () => {
    const port = await workshop();
    const before = port.content();
    expect(await fill(port, { jobs: ['77'] })).toMatchObject({ filled: [], left: [{ job: '77' }] });
    expect([port.applies, port.content()]).toEqual([0, before]);
  });

  test('of jobs whose clubs changed their names since leaves those', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const club = port.tableSeen('Clubs')?.headers.indexOf('Club') ?? -1;
    port.type('Clubs', 1, club, 'Brassie');
    expect(await fillPlans(port, shop, BOTH)).toMatchObject({
      filled: [{ job: '1043' }],
      left: [{ job: '1042', end: { reason: 'clubsMoved' } }],
    });
  });
});
