import { describe, expect, test } from 'vitest';
import { benchTicket } from '../../src/core/index';
import { planJob } from '../../src/workbook/benchJob';
import { openJobs, type OpenJobs } from '../../src/workbook/openJobs';
import { readBench } from '../../src/workbook/readBench';
import { readShop } from '../../src/workbook/shop';
import type { MemoryPort } from './memoryPort';
import { workshop } from './workshop';

async function seen(port: MemoryPort): Promise<OpenJobs> {
  const found = openJobs((await readShop(port)).tables);
  if (!found.ok) throw new Error(found.issue.code);
  return found.value;
}

describe('open jobs', () => {
  test('are planned as each is for itself', async () => {
    const port = await workshop();
    const { tables } = await readShop(port);
    const { jobs } = await seen(port);
    expect(jobs.map(({ job, customer, due, clubs }) => [job, customer, due, clubs])).toEqual([
      ['1042', 'Tamsin Orrell', 46000, 3],
      ['1043', 'Ivo Brandt', undefined, 1],
    ]);
    for (const { job, planned, ticket } of jobs) {
      const alone = planJob(tables, job);
      if (!alone?.ok) throw new Error('not planned');
      expect(planned).toEqual(alone.value);
      expect(ticket).toEqual(benchTicket(alone.value.plan, alone.value.input, readBench(tables).ask));
    }
  });

  test('are those that are not done, however the status is written', async () => {
    const port = await workshop();
    port.fillTable('Jobs', [{ Status: ' done ' }, { Status: 'Waiting' }]);
    expect((await seen(port)).jobs.map(({ job, state }) => [job, state])).toEqual([['1043', 'Waiting']]);
    port.fillTable('Jobs', [{ Status: 'in the drawer' }]);
    expect((await seen(port)).jobs.map(({ state }) => state)).toEqual(['Open', 'Waiting']);
  });

  test('are also those that only Clubs names, and clubs of no job are nobody’s', async () => {
    const port = await workshop();
    const job = port.tableSeen('Clubs')?.headers.indexOf('Job') ?? -1;
    port.type('Clubs', 4, job, 77);
    expect((await seen(port)).jobs.map((each) => [each.job, each.due, each.clubs])).toEqual([
      ['1042', 46000, 3],
      ['77', undefined, 1],
    ]);
  });

  test('a due day written as text counts; what is no day is named', async () => {
    const port = await workshop();
    port.fillTable('Jobs', [{ Due: '2025-12-01' }, { Due: 'soon' }]);
    const { jobs, problems } = await seen(port);
    // 45992 is 1 December 2025 in any spreadsheet
    expect(jobs.map(({ due }) => due)).toEqual([45_992, undefined]);
    expect(problems).toEqual([
      expect.objectContaining({ code: 'unknownChoice', field: 'Jobs row 3, Due', got: 'soon' }),
    ]);
  });

  test('are found under a name with other blanks or letters', async () => {
    const port = await workshop();
    port.fillTable('Jobs', [{ Job: 'A 7' }]);
    port.fillTable('Clubs', [{ Job: 'a  7' }, { Job: 'A 7' }, { Job: ' A 7' }]);
    const { tables } = await readShop(port);
    const alone = planJob(tables, 'A 7');
    expect((await seen(port)).jobs[0]?.clubs).toBe(3);
    expect(alone?.ok && alone.value.plan.clubs.length).toBe(3);
  });

  test('that have no clubs yet are told apart', async () => {
    const port = await workshop();
    port.fillTable('Clubs', [{}, {}, {}, { Job: '' }]);
    const { bare, jobs } = await seen(port);
    expect([jobs.length, bare]).toEqual([1, [{ job: '1043', customer: 'Ivo Brandt', due: undefined }]]);
  });

  test('of a workbook without clubs are none', async () => {
    const port = await workshop();
    port.fillTable('Clubs', Array(5).fill({ Job: null, Club: null }));
    const { tables } = await readShop(port);
    const found = openJobs({ ...tables, Clubs: null });
    expect(found).toMatchObject({ ok: true, value: { jobs: [], bare: [{ job: '1042' }, { job: '1043' }] } });
  });
});
