import { describe, expect, test } from 'vitest';
import { fillPlan } from '../../src/workbook/fillPlan';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { HEAD_ROWS } from '../../src/workbook/planSheet';
import { TABLES } from '../../src/workbook/schema';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import { sayFill } from '../../src/words/outcomes';
import type { MemoryPort } from './memoryPort';
import { OLDER_HEADINGS, OLDER_PLAN, olderWorkshop } from './olderWorkshop';
import { workshop } from './workshop';

/** Tables that came later. */
const LATER = TABLES.map(({ name }) => name).filter((name) => !(name in OLDER_HEADINGS) && name !== 'Settings');

const JOB = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'values' } as const;

function planFilled(port: MemoryPort): unknown[][] {
  return Array.from({ length: 4 }, (_, down) =>
    PLAN_COLUMNS.map((_column, across) => port.shows('Plan 1042', HEAD_ROWS + down, across)),
  );
}

describe('a workbook set up by the first version', () => {
  test('is read whole: every table that there was, jobs and all', async () => {
    const shop = await readShop(await olderWorkshop());
    expect(LATER).toEqual(expect.arrayContaining(['Sizes', 'Checkin']));
    expect(
      Object.entries(shop.tables)
        .flatMap(([name, table]) => (table ? [] : [name]))
        .sort(),
    ).toEqual([...LATER].sort());
    expect(shop.jobs.map(({ job, clubs }) => [job, clubs])).toEqual([
      ['1042', 3],
      ['1043', 1],
    ]);
  });

  test('plans as it did then, and as a new workbook plans the same clubs', async () => {
    const older = await olderWorkshop();
    expect(await fillPlan(older, await readShop(older), JOB)).toMatchObject({ done: true, clubs: 3 });
    const plan = planFilled(older);
    const [headings = [], ...rows] = OLDER_PLAN;
    const columns = headings.map((heading) => plan[0]?.indexOf(heading) ?? -1);
    expect(plan.slice(1).map((row) => columns.map((at) => row[at]))).toEqual(rows);
    const now = await workshop();
    await fillPlan(now, await readShop(now), JOB);
    expect(plan).toEqual(planFilled(now));
  });

  test('is set up again by making the later tables alone, the rest staying as it is', async () => {
    const port = await olderWorkshop();
    const end = await setUp(port);
    const kept = TABLES.map(({ name }) => name).filter((name) => !LATER.includes(name));
    expect(end).toEqual({ done: true, made: LATER, kept, blocked: [] });
    for (const [name, headings] of Object.entries(OLDER_HEADINGS)) {
      expect(port.tableSeen(name)?.headers).toEqual(headings);
    }
    expect(await setUp(port)).toMatchObject({ made: [], blocked: [] });
  });

  test('keeps a shop’s own small table that was kept before: later columns do not count against it', async () => {
    const port = await olderWorkshop();
    port.deleteSheet('Jobs');
    // four of the first eight columns
    port.typeTable('Jobs', 'Counter', [
      ['Ticket', 'Client', 'Ready by', 'Remarks'],
      ['1042', 'Tamsin Orrell', null, null],
    ]);
    expect(await setUp(port)).toMatchObject({ made: LATER, blocked: [] });
  });

  test('names the heading that a choice would need', async () => {
    const port = await olderWorkshop();
    const before = port.everything();
    const end = await fillPlan(port, await readShop(port), { ...JOB, choices: { newMass: 51.5 } });
    expect(end).toEqual({ done: false, reason: 'columnMissing', table: 'Clubs', headers: ['New grip mass (g)'] });
    expect(sayFill(end)).toContain('no column New grip mass (g)');
    expect(port.everything()).toEqual(before);
    // another grip needs no heading for a mass that nobody weighed
    const other = { ...JOB, choices: { newItem: 'OAK-58' } };
    expect(await fillPlan(port, await readShop(port), other)).toMatchObject({ done: true, choicesWritten: 3 });
  });
});
