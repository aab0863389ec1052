import { describe, expect, test } from 'vitest';
import { DEFAULT_SIZE_GUIDE } from '../../src/core/index';
import { JOBS, SETTING_ROWS, TABLES } from '../../src/workbook/schema';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import { lastFill, undoLast } from '../../src/workbook/undo';
import { saySetUp } from '../../src/words/outcomes';
import { MemoryPort } from './memoryPort';

const names = TABLES.map(({ name }) => name);

describe('setting up a workbook', () => {
  test('makes every table in a sheet of its own from one read and one write', async () => {
    const port = new MemoryPort();
    expect(await setUp(port)).toEqual({ done: true, made: names, kept: [], blocked: [] });
    expect([port.reads, port.applies]).toEqual([1, 1]);
    const shop = await readShop(port);
    for (const schema of TABLES) {
      const table = port.tableSeen(schema.name);
      expect(table?.headers).toEqual(schema.columns.map(({ header }) => header));
      expect(table?.at).toMatchObject({ sheet: schema.name, row: 0, column: 0 });
    }
    expect(port.tableSeen('Settings')?.rows.length).toBe(SETTING_ROWS.length);
    expect(port.tableSeen('Jobs')?.rows).toEqual([JOBS.columns.map(() => null)]);
    expect(port.tableSeen('Sizes')?.rows).toEqual(
      DEFAULT_SIZE_GUIDE.map(({ handInches, fingerInches, diameterInches }) => [
        handInches,
        fingerInches ?? null,
        diameterInches,
      ]),
    );
    expect(shop.version).toBe(1);
  });

  test('in Checkin, which is wide, job and club stay in sight', async () => {
    const port = new MemoryPort();
    await setUp(port);
    const frozen = port.asked.filter((change) => change.do === 'freezeRows' && 'columns' in change);
    expect(frozen).toEqual([{ do: 'freezeRows', sheet: 'Checkin', rows: 1, columns: 2 }]);
    expect(port.tableSeen('Checkin')?.headers.slice(0, 2)).toEqual(['Job', 'Club']);
  });

  test('keeps codes and readings as text, and lets numbers stay numbers', async () => {
    const port = new MemoryPort();
    await setUp(port);
    const formats = (sheet: string, header: string): string[] => {
      const column = port.tableSeen(sheet)?.headers.indexOf(header) ?? -1;
      return port
        .dressing()
        .filter(({ at, how }) => at.sheet === sheet && at.column === column && at.row === 1 && how.includes('"number"'))
        .map(({ how }) => JSON.parse(how).format.number as string);
    };
    expect(formats('Jobs', 'Job')).toEqual(['@']);
    expect(formats('Clubs', 'Reading')).toEqual(['@']);
    expect(formats('Clubs', 'Butt (in)')).toEqual(['.000_)']);
    expect(formats('Settings', 'Value')).toEqual([]);
  });

  test('feeds drop-downs from tables that are made in the same go', async () => {
    const port = new MemoryPort();
    await setUp(port);
    const from = port.asked.flatMap((change) =>
      change.do === 'choices' && !Array.isArray(change.from) ? [[change.at.sheet, change.from]] : [],
    );
    expect(from).toContainEqual(['Clubs', { table: 'Stock', header: 'Item' }]);
    expect(from).toContainEqual(['Clubs', { table: 'Jobs', header: 'Job' }]);
    expect(from).toContainEqual(['Settings', { table: 'Weights', header: 'Way' }]);
    const order = port.asked.map((change) => change.do);
    expect(order.indexOf('choices')).toBeGreaterThan(order.lastIndexOf('table'));
  });

  test('done twice, changes nothing the second time', async () => {
    const port = new MemoryPort();
    await setUp(port);
    port.type('Settings', 2, 1, 0.5);
    const before = port.everything();
    const end = await setUp(port);
    expect(end).toEqual({ done: true, made: [], kept: names, blocked: [] });
    expect(port.everything()).toEqual(before);
    expect(port.applies).toBe(1);
    expect(saySetUp(end)).toBe('Everything is set up already.');
  });

  test('leaves a table of that name with other headings alone, says what it lacks, and makes the rest', async () => {
    const port = new MemoryPort();
    port.typeTable('Stock', 'Shelf', [
      ['Item', 'Colour'],
      ['A', 'red'],
    ]);
    const end = await setUp(port);
    expect(end).toMatchObject({ made: names.filter((name) => name !== 'Stock'), kept: [] });
    expect(end.done && end.blocked[0]).toMatchObject({ table: 'Stock', why: 'otherTable' });
    expect(saySetUp(end)).toContain('a table Stock, without Core (in) and Mass (g).');
    expect(port.shows('Shelf', 1, 1)).toBe('red');
    expect(port.sheetNames()).not.toContain('Stock');
  });

  test('feeds no drop-down from a table it left out', async () => {
    const port = new MemoryPort();
    port.typeTable('Stock', 'Shelf', [['Thing'], ['A']]);
    await setUp(port);
    expect(JSON.stringify(port.asked.filter((change) => change.do === 'choices'))).not.toContain('"table":"Stock"');
  });

  test('leaves a sheet of that name alone when it holds something, whatever the case of its name', async () => {
    const port = new MemoryPort(['jobs']);
    port.type('jobs', 3, 2, 'my list');
    const end = await setUp(port);
    expect(end.done && end.blocked).toEqual([{ table: 'Jobs', why: 'sheetInUse', cells: ['Jobs!C4'] }]);
    expect(port.tableSeen('Jobs')).toBeNull();
    expect(saySetUp(end)).toContain('The sheet Jobs holds something else (Jobs!C4)');
  });

  test('uses an empty sheet of that name, and leaves a protected one out', async () => {
    const port = new MemoryPort(['Jobs', 'Tape']);
    port.protect('Tape');
    const end = await setUp(port);
    expect(end.done && end.made).toContain('Jobs');
    expect(end.done && end.blocked).toEqual([{ table: 'Tape', why: 'protected' }]);
  });

  test('keeps a shop’s own table under its own headings', async () => {
    const port = new MemoryPort();
    port.typeTable('Weights', 'Lead', [
      ['method', 'At', 'position', 'step', 'limit', 'time'],
      ['Lead tape', 'Head', 0, 0.5, 8, 3],
    ]);
    const end = await setUp(port);
    expect(end.done && end.kept).toEqual(['Weights']);
    const ways = port.asked.filter((change) => change.do === 'choices' && JSON.stringify(change).includes('"Weights"'));
    expect(JSON.stringify(ways)).toContain('"header":"method"');
  });

  test('gives a table spare rows where it cannot grow by itself', async () => {
    const port = new MemoryPort();
    port.capabilities = { ...port.capabilities, host: 'embedded' };
    await setUp(port);
    expect(port.tableSeen('Clubs')?.rows.length).toBeGreaterThan(20);
  });

  test('beside what is there is called so by Undo, which takes those tables away again, and none in which somebody typed', async () => {
    const port = new MemoryPort();
    await setUp(port);
    expect(await lastFill(port)).toBeNull();
    for (const gone of ['Rates', 'Sizes']) port.deleteSheet(gone);
    const before = port.content();
    expect(await setUp(port)).toMatchObject({ made: ['Sizes', 'Rates'] });
    expect(await lastFill(port)).toBe('Make the other tables');
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] }, next: null });
    expect(port.content()).toEqual(before);
    await setUp(port);
    port.type('Rates', 1, 1, 'mine');
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: ['Rates!B2'] } });
    expect(port.shows('Rates', 1, 1)).toBe('mine');
    expect(port.tableSeen('Sizes')).toBeNull();
  });

  test('a failure at any step leaves the workbook as it was', async () => {
    const steps = 1 + (await stepsOfSetUp());
    for (let step = 1; step <= steps; step += 1) {
      const port = new MemoryPort();
      const before = port.everything();
      port.failing = new Set([step]);
      const end = await setUp(port);
      expect(end).toMatchObject({ done: false, reason: 'port', error: { code: 'putBack' } });
      expect(port.everything()).toEqual(before);
    }
  }, 60_000);
});

async function stepsOfSetUp(): Promise<number> {
  const port = new MemoryPort();
  await setUp(port);
  return port.asked.length;
}
