import { describe, expect, test } from 'vitest';
import { keepHand } from '../../src/workbook/keepHand';
import type { HandDone, HandMeasures } from '../../src/workbook/outcomes';
import type { Seen } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { sayHand } from '../../src/words/chooseOutcomes';
import type { MemoryPort } from './memoryPort';
import { olderWorkshop } from './olderWorkshop';
import { JOB_ROWS, workshop } from './workshop';

/** 191 mm and 80 mm, as a pane that measures in millimetres hands them over (1 in = 25.4 mm). */
const HAND: HandMeasures = {
  job: '1042',
  handLength: 191 / 25.4,
  fingerLength: 80 / 25.4,
  lowerHandLength: null,
  lowerFingerLength: null,
};

const HEADINGS = ['Hand length (in)', 'Middle finger (in)', 'Lower hand length (in)', 'Lower middle finger (in)'];

function columnAt(port: MemoryPort, heading: string): number {
  return port.tableSeen('Jobs')?.headers.indexOf(heading) ?? -1;
}

function kept(port: MemoryPort, row: number): Seen[] {
  return HEADINGS.map((heading) => port.tableSeen('Jobs')?.rows[row - 1]?.[columnAt(port, heading)] ?? null);
}

async function keep(port: MemoryPort, hand: Partial<HandMeasures> = {}): Promise<HandDone> {
  return keepHand(port, await readShop(port), { ...HAND, ...hand });
}

describe('keeping a hand', () => {
  test('writes what was measured into the row of the job, and nothing else, in one read and one write', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const jobs = port.tableSeen('Jobs');
    port.reads = 0;
    const end = await keepHand(port, shop, HAND);
    expect([port.reads, port.applies]).toEqual([1, 1]);
    expect(end).toEqual({ done: true, job: '1042', cells: 2 });
    // 7.5197 in and 3.1496 in to a hundredth; in millimetres they are 191 and 80 again
    expect(kept(port, 1)).toEqual([7.52, 3.15, null, null]);
    const changed = port
      .tableSeen('Jobs')
      ?.rows.flatMap((row, i) => row.filter((cell, j) => cell !== jobs?.rows[i]?.[j]));
    expect(changed).toHaveLength(2);
    expect(sayHand(end)).toBe('Hand of job 1042 kept in Jobs: 2 cells changed.');
  });

  test('replaces what the person was shown, keeps what is left out, and writes nothing that stands there already', async () => {
    const port = await workshop();
    port.fillTable('Jobs', [{ 'Hand length (in)': 7.2, 'Middle finger (in)': 3.15, 'Lower hand length (in)': 7.1 }]);
    expect(await keep(port)).toMatchObject({ done: true, cells: 1 });
    expect(kept(port, 1)).toEqual([7.52, 3.15, 7.1, null]);
    const again = await keep(port);
    expect(again).toMatchObject({ done: true, cells: 0 });
    expect(port.applies).toBe(1);
    expect(sayHand(again)).toContain('already');
    expect(await keep(port, { handLength: null, fingerLength: null })).toMatchObject({ done: true, cells: 0 });
  });

  test('writes both hands where they differ', async () => {
    const port = await workshop();
    await keep(port, { job: ' 1043 ', lowerHandLength: 7.3, lowerFingerLength: 3 });
    expect([kept(port, 1), kept(port, 2)]).toEqual([Array(4).fill(null), [7.52, 3.15, 7.3, 3]]);
  });

  test('can be taken back from the job it was written for, wherever its row stands by then', async () => {
    const port = await workshop();
    await port.remember('setwright.plansBefore', 'something older');
    port.fillTable('Jobs', [{ 'Hand length (in)': 7.2 }]);
    const plans = port.setting('setwright.plans');
    await keep(port);
    const rows = port.tableSeen('Jobs')?.rows ?? [];
    port.typeRows('Jobs', 1, 0, [...rows].reverse());
    expect(await undoLast(port)).toMatchObject({
      done: true,
      reverted: { label: 'Hand of job 1042', restored: 2, left: [] },
    });
    expect([kept(port, 1), kept(port, 2)]).toEqual([Array(4).fill(null), [7.2, null, null, null]]);
    expect(port.setting('setwright.plans')).toBe(plans);
  });

  test('asks before a formula, or a measure that came into the sheet since, is replaced', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    port.type('Jobs', 1, columnAt(port, 'Hand length (in)'), { formula: '=19/2.54' });
    port.type('Jobs', 1, columnAt(port, 'Middle finger (in)'), 3.4);
    const before = port.everything();
    const asked = await keepHand(port, shop, HAND);
    expect(asked).toMatchObject({ done: false, reason: 'occupied', cells: ['Jobs!D2', 'Jobs!E2'] });
    expect(sayHand(asked)).toContain('hold something of yours');
    expect(port.everything()).toEqual(before);
    const agreed = 'inTheWay' in asked ? asked.inTheWay : null;
    expect(await keepHand(port, shop, HAND, agreed)).toMatchObject({ done: true, cells: 2 });
    expect(kept(port, 1).slice(0, 2)).toEqual([7.52, 3.15]);
    await undoLast(port);
    expect(port.formula('Jobs', 1, columnAt(port, 'Hand length (in)'))).toBe('=19/2.54');
  });

  test('a measure that was shown under its heading, in another place by now, is no news', async () => {
    const port = await workshop();
    port.fillTable('Jobs', [{ 'Hand length (in)': 7.2 }]);
    const shop = await readShop(port);
    port.fillTable(
      'Jobs',
      [...JOB_ROWS].reverse().map((row) => ({ Due: null, ...row })),
    );
    port.type('Jobs', 1, columnAt(port, 'Hand length (in)'), null);
    port.type('Jobs', 2, columnAt(port, 'Hand length (in)'), 7.2);
    expect(await keepHand(port, shop, HAND)).toMatchObject({ done: true, cells: 2 });
    expect(kept(port, 2).slice(0, 2)).toEqual([7.52, 3.15]);
  });

  test('of a job that Jobs does not list is not kept, nor where headings or the table are missing', async () => {
    const port = await workshop();
    const unlisted = await keep(port, { job: '77' });
    expect(unlisted).toEqual({ done: false, reason: 'jobNotListed', job: '77' });
    expect(sayHand(unlisted)).toBe('Jobs has no row for job 77. Nothing was written; add the row, then keep the hand.');
    expect(await keep(port, { job: ' ' })).toMatchObject({ reason: 'jobNotListed' });
    port.deleteSheet('Jobs');
    expect(await keep(port)).toEqual({ done: false, reason: 'tableMissing', table: 'Jobs' });
    const older = await olderWorkshop();
    expect(await keep(older)).toMatchObject({ done: true, cells: 2 });
    const lacking = await keep(older, { lowerHandLength: 7.4, lowerFingerLength: 3 });
    expect(lacking).toMatchObject({ reason: 'columnMissing', headers: HEADINGS.slice(2) });
    expect(sayHand(lacking)).toContain('no columns Lower hand length (in) and Lower middle finger (in)');
  });

  test('behind a filter or protection is refused, and said so', async () => {
    const port = await workshop();
    port.filter('Jobs');
    expect(sayHand(await keep(port))).toContain('A filter hides rows of Jobs');
    const locked = await workshop();
    locked.protect('Jobs');
    expect(sayHand(await keep(locked))).toContain('The sheet Jobs is protected');
  });
});
