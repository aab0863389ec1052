import { expect, test } from 'vitest';
import { seenOf } from '../../src/pane/state/lookAt';
import { asked, beginMatch, missed, picked, type Match } from '../../src/pane/view/tools/listsModel';
import { nothingToPlan } from '../../src/pane/words';
import { connectList } from '../../src/workbook/connect/connectList';
import { readList } from '../../src/workbook/connect/lists';
import { connecting } from '../../src/workbook/connecting';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import { MemoryPort } from '../workbook/memoryPort';
import { JOB_ROWS, workshop } from '../workbook/workshop';

async function matched(headings: readonly string[]): Promise<{ bare: MemoryPort; match: Match }> {
  const bare = new MemoryPort();
  const cells = { Job: '1042', Bag: '1042', Club: '7 iron', Reading: 'D2', Kind: 'Iron' } as const;
  const row = headings.map((heading) => (heading in cells ? cells[heading as keyof typeof cells] : 'x'));
  bare.typeTable('Bags', 'In work', [headings, row]);
  const at = { sheet: 'In work', row: 0, column: 0, rows: 2, columns: headings.length };
  const read = await readList(bare, { table: 'Bags', at });
  const match = read && beginMatch(read, 'Clubs');
  if (!match) throw new Error('no match');
  return { bare, match };
}

async function planFor(headings: readonly string[], jobs: boolean, job: string) {
  const { bare, match } = await matched(headings);
  await connectList(bare, asked(match));
  const port = connecting(bare);
  await setUp(port);
  if (jobs) bare.fillTable('Jobs', JOB_ROWS);
  return nothingToPlan({ by: 'job', job }, seenOf(await readShop(port)));
}

const SAYS = 'No heading of your list “In work” stands for Job.';

test('clubs in a list of the shop’s own without Job belong to no job, and the plan says so', async () => {
  expect(await planFor(['Club', 'Reading'], false, '')).toMatchObject({
    title: 'This cannot be planned yet',
    text: expect.stringContaining(SAYS) as string,
  });
  expect(await planFor(['Club', 'Reading'], true, '1042')).toMatchObject({
    title: 'This cannot be planned yet',
    text: expect.stringContaining(SAYS) as string,
  });
  expect((await planFor(['Job', 'Club', 'Reading'], true, '1043')).text).not.toContain(SAYS);
});

test('clubs of our own table whose heading Job was typed over are said to be there', async () => {
  const port = await workshop();
  const at = port.tableSeen('Clubs')?.headers.indexOf('Job') ?? -1;
  port.type('Clubs', 0, at, 'x');
  expect(nothingToPlan({ by: 'job', job: '1042' }, seenOf(await readShop(port)))).toMatchObject({
    title: 'This cannot be planned yet',
    text: expect.stringContaining('The heading Job of the table Clubs is gone') as string,
  });
});

test('a match of clubs says what goes without Job and Kind, until headings are chosen for them', async () => {
  const { match } = await matched(['Sack', 'Club', 'Reading', 'Sort']);
  expect(missed(match)).toEqual(['job', 'kind']);
  const job = picked(match, 'job', { position: 0, unit: null });
  expect(missed(job)).toEqual(['kind']);
  expect(missed(picked(job, 'kind', { position: 3, unit: null }))).toEqual([]);
  const stock = beginMatch(match.read, 'Stock');
  expect(stock && missed(stock)).toEqual([]);
});
