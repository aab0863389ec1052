/** Columns that a shop's list lacks are added at its right end, are ours from then on, and go again. */
import { describe, expect, test } from 'vitest';
import { drained } from '../../src/core/index';
import { addColumns } from '../../src/workbook/addColumns';
import { fillPlan } from '../../src/workbook/fillPlan';
import { readShop } from '../../src/workbook/shop';
import { keepingSteps, undoLast } from '../../src/workbook/undo';
import type { BlockSeen, Seen, TableSeen } from '../../src/workbook/port';
import { workOn } from '../../src/pane/workOn';
import { connectedClubs } from './connect/rack';
import { MemoryPort } from './memoryPort';
import { CLUB_ROWS, JOB_ROWS, workshop } from './workshop';

const HEADINGS = ['Ticket', 'Customer', 'Club', 'Type', 'Length (mm)', 'Butt (in)', 'SW', 'Old grip'];

/** The workshop with its clubs in a list without a column for the new grip: a table, or plain cells below a title and a row of groups. */
async function rack(how: 'table' | 'plain' | 'units', more: readonly string[] = []) {
  const bare = new MemoryPort();
  const rows = CLUB_ROWS.map((row): Seen[] => [
    row.Job ?? null,
    row.Job ? `Whose ${row.Job}` : null,
    row.Club ?? null,
    row.Kind ?? null,
    Number(row['Length (in)']) * 25.4,
    row['Butt (in)'] ?? null,
    row.Reading ?? null,
    row['Old grip'] ?? null,
    ...more.map(() => null),
  ]);
  const headings = [...HEADINGS, ...more];
  const units = headings.map((heading) => /\((.*)\)/.exec(heading)?.[1] ?? null);
  const lines =
    how === 'units' ? [headings.map((heading) => heading.replace(/ \(.*/, '')), units, ...rows] : [headings, ...rows];
  if (how === 'table') bare.typeTable('Bags', 'In work', lines);
  else {
    bare.addSheet('In work');
    bare.type('In work', 0, 0, 'Clubs on the rack');
    bare.typeRows('In work', 2, 1, lines);
  }
  const columns = headings.length;
  const at = { sheet: 'In work', row: 0, column: 0, rows: lines.length, columns };
  const { port } = await connectedClubs(bare, {
    table: how === 'table' ? 'Bags' : null,
    at: how === 'table' ? at : { ...at, rows: lines.length + 2, columns: columns + 1 },
  });
  bare.fillTable('Jobs', JOB_ROWS);
  return { bare, port };
}

/** Everything that stands on the sheet of the list. */
async function sheetOf(bare: MemoryPort): Promise<BlockSeen['values']> {
  const [seen] = await bare.read([
    { read: 'block', at: { sheet: 'In work', row: 0, column: 0, rows: 12, columns: 15 } },
  ]);
  return seen.values;
}

/** Columns of Clubs that Headings names. */
function connectedIn(bare: MemoryPort): string[] {
  const { headers, rows } = bare.tableSeen('Headings') as TableSeen;
  return rows
    .map((row) => String(row[headers.indexOf('Column')] ?? ''))
    .filter(Boolean)
    .sort();
}

const plan = {
  scope: { job: '1042' },
  choices: { newItem: 'FERN-M', layers: 2 },
  where: 'planSheet',
  as: 'values',
} as const;

describe.each(['table', 'plain', 'units'] as const)(
  'a list of clubs (%s) without columns for what is chosen',
  (how) => {
    test('is not filled before, and is with the columns added; the rest of it stays, and all goes again', async () => {
      const { bare, port: plainly } = await rack(how);
      const port = keepingSteps(plainly);
      const before = await sheetOf(bare);
      const connected = connectedIn(bare);
      const refused = await fillPlan(port, await readShop(port), plan);
      expect(refused).toEqual({
        done: false,
        reason: 'columnMissing',
        table: 'Clubs',
        headers: ['New grip', 'Layers'],
      });
      expect(await sheetOf(bare)).toEqual(before);
      const headers = ['New grip', 'Layers'];
      const added = await addColumns(port, { table: 'Clubs', headers });
      expect(added).toMatchObject({ done: true, headers, made: headers });
      const { tables, jobs } = await readShop(port);
      expect(tables.Clubs?.headers.slice(-2)).toEqual(headers);
      expect(connectedIn(bare)).toEqual([...connected, ...headers].sort());
      expect(jobs.map(({ job }) => job)).toContain('1042');
      expect(await fillPlan(port, await readShop(port), plan)).toMatchObject({
        done: true,
        clubs: 3,
        choicesWritten: 6,
      });
      const after = (await readShop(port)).tables.Clubs as TableSeen;
      expect(after.rows.slice(0, 3).map((row) => row.slice(-2))).toEqual(Array(3).fill(['FERN-M', 2]));
      expect(
        after.rows
          .slice(3)
          .flatMap((row) => row.slice(-2))
          .every((cell) => cell === null),
      ).toBe(true);
      expect((await undoLast(port)).done).toBe(true);
      expect(await undoLast(port)).toMatchObject({
        done: true,
        reverted: { label: expect.stringContaining('New grip, Layers') as string },
      });
      expect(await sheetOf(bare)).toEqual(before);
      expect((await readShop(port)).tables.Clubs?.headers).not.toContain('New grip');
    });

    test('has a heading taken that stands there already and stood for nothing', async () => {
      const { bare, port } = await rack(how, ['Remarks', 'Hold']);
      const { tables } = await readShop(port);
      // The match proposes it: ended, it stands for nothing any more.
      const key = await bare.read([{ read: 'table', table: 'Headings' }] as const);
      const at = key[0]?.rows.findIndex((row) => row.includes('Hold')) ?? -1;
      expect(at).toBeGreaterThanOrEqual(0);
      key[0]?.rows[at]?.forEach((_, column) => bare.type('Headings', at + 1, column, null));
      expect((await readShop(port)).tables.Clubs?.headers).toContain('own: Hold');
      const width = tables.Clubs?.at.columns ?? 0;
      const added = await addColumns(port, { table: 'Clubs', headers: ['Hold', 'Layers'] });
      expect(added).toMatchObject({ done: true, headers: ['Hold', 'Layers'], made: ['Layers'] });
      const now = (await readShop(port)).tables.Clubs;
      expect(now?.at.columns).toBe(width + 1);
      expect(now?.headers.filter((header) => header === 'Hold' || header === 'Layers')).toHaveLength(2);
    });
  },
);

test('cells right of the list are not written over', async () => {
  const { bare, port } = await rack('plain');
  bare.type('In work', 4, 1 + HEADINGS.length, 'mine');
  const before = await sheetOf(bare);
  const end = await addColumns(port, { table: 'Clubs', headers: ['New grip'] });
  expect(end).toMatchObject({ done: false, reason: 'port' });
  expect(await sheetOf(bare)).toEqual(before);
});

test('the pane offers the columns where a plan needs them, and fills it with one more press', async () => {
  const { port } = await rack('table');
  const work = workOn(port);
  const { shop: seen } = await work.read();
  if (!seen) throw new Error('no look');
  const rows = seen.jobs.find(({ job }) => job === '1042')?.rows ?? [];
  const shown = drained(work.preview(seen, { by: 'job', job: '1042' }, rows, plan.choices));
  const clubs = shown.ok ? shown.value.plan.clubs : [];
  expect(clubs.map(({ item, layers }) => [item, layers])).toEqual(Array(3).fill(['FERN-M', 2]));
  const asked = {
    who: { by: 'job', job: '1042' },
    rows,
    choices: plan.choices,
    where: 'planSheet',
    agreed: null,
  } as const;
  const outcome = await work.fill(seen, asked);
  if (outcome.kind !== 'failed' || !outcome.mend) throw new Error('nothing is offered');
  expect(outcome.text).toMatch(/^“In work” has no columns New grip and Layers, so nothing was written\./);
  expect(outcome.mend.says).toBe('Add these columns');
  expect(await work.addColumns(outcome.mend.adding)).toMatchObject({
    kind: 'done',
    text: '“In work” has columns New grip and Layers now.',
  });
  expect(outcome.mend.again).toEqual({ task: 'fill', asked });
  expect(await work.fill(seen, asked)).toMatchObject({ kind: 'done' });
});

test('our own table gets back a column that was taken out, and keeps the others', async () => {
  const port = await workshop();
  const clubs = port.tableSeen('Clubs') as TableSeen;
  const column = clubs.headers.indexOf('Layers');
  port.type(clubs.at.sheet, clubs.at.row, clubs.at.column + column, 'Something else');
  expect(await addColumns(port, { table: 'Clubs', headers: ['Layers'] })).toMatchObject({
    done: true,
    made: ['Layers'],
  });
  const after = port.tableSeen('Clubs') as TableSeen;
  expect(after.headers.at(-1)).toBe('Layers');
  expect(after.rows.map((row) => row.slice(0, -1))).toEqual(clubs.rows);
  await undoLast(port);
  expect(port.tableSeen('Clubs')?.rows).toEqual(clubs.rows);
});
