import { describe, expect, test } from 'vitest';
import { fillPlan } from '../../src/workbook/fillPlan';
import { LAYOUT_STEPS, stepFrom, type Shape } from '../../src/workbook/layoutSteps';
import { keptPlans, LAYOUT, PLANS_KEY } from '../../src/workbook/planPlaces';
import type { WorkbookPort } from '../../src/workbook/port';
import { SETTING_ROWS, TABLES } from '../../src/workbook/schema';
import { setUp } from '../../src/workbook/setUp';
import { ageOf, readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { bringUpToDate, laterThings } from '../../src/workbook/upToDate';
import { sayAdditions, sayUpToDate } from '../../src/words/upToDate';
import { MemoryPort } from './memoryPort';
import { OLDER_HEADINGS, olderWorkshop } from './olderWorkshop';

const layoutIn = async (port: WorkbookPort): Promise<number | null | undefined> =>
  keptPlans(await port.recall(PLANS_KEY))?.layout;

const headersOf = (port: MemoryPort, table: string): readonly string[] => port.tableSeen(table)?.headers ?? [];
const settingsIn = (port: MemoryPort): unknown[] => (port.tableSeen('Settings')?.rows ?? []).map(([name]) => name);
const sorted = (texts: readonly string[]): string[] => [...texts].sort();

/** The workbook as the first version made it. */
const FIRST: Shape = {
  headings: OLDER_HEADINGS,
  settings: SETTING_ROWS.map(({ name }) => name).filter(
    (name) => !LAYOUT_STEPS.some(({ settings }) => settings.some((key) => nameOf(key) === name)),
  ),
};

function nameOf(key: string): string | undefined {
  return SETTING_ROWS.find((row) => row.key === key)?.name;
}

describe('the steps from layout to layout', () => {
  test('count up to the layout of today', () => {
    expect(LAYOUT_STEPS.map(({ layout }) => layout)).toEqual(Array.from({ length: LAYOUT - 1 }, (_, i) => i + 2));
  });

  test('lead from the first workbook to every table, column and setting there is: what is added later needs a step', () => {
    const last = LAYOUT_STEPS.reduce((shape, step) => stepFrom(shape, step).shape, FIRST);
    for (const { name, columns } of TABLES) {
      expect(sorted(last.headings[name] ?? []), name).toEqual(sorted(columns.map(({ header }) => header)));
    }
    expect(sorted(last.settings)).toEqual(sorted(SETTING_ROWS.map(({ name }) => name)));
  });

  test('name only what there is, and nothing twice', () => {
    const named = LAYOUT_STEPS.flatMap(({ tables, columns, settings }) => [
      ...tables.map((table) => `table ${table}`),
      ...Object.entries(columns).flatMap(([table, keys]) => keys.map((key) => `${table} ${key}`)),
      ...settings.map((key) => `setting ${key}`),
    ]);
    const real = [
      ...TABLES.flatMap(({ name, columns }) => [`table ${name}`, ...columns.map(({ key }) => `${name} ${key}`)]),
      ...SETTING_ROWS.map(({ key }) => `setting ${key}`),
    ];
    expect(named.filter((each) => !real.includes(each))).toEqual([]);
    expect(new Set(named).size).toBe(named.length);
  });

  test('are pure, and add nothing twice', () => {
    for (const step of LAYOUT_STEPS) {
      const frozen = JSON.stringify(FIRST);
      const { shape } = stepFrom(FIRST, step);
      expect(JSON.stringify(FIRST)).toBe(frozen);
      expect(stepFrom(shape, step).adds).toEqual({ tables: [], columns: [], settings: [] });
    }
  });

  test('every column that a table may lack is marked as later, and comes with a step', () => {
    const later = TABLES.flatMap(({ name, columns }) =>
      columns.flatMap(({ key, later: mark }) => (mark && name in OLDER_HEADINGS ? [`${name} ${key}`] : [])),
    );
    const stepped = LAYOUT_STEPS.flatMap(({ columns }) =>
      Object.entries(columns).flatMap(([table, keys]) =>
        table in OLDER_HEADINGS ? keys.map((key) => `${table} ${key}`) : [],
      ),
    );
    expect(sorted(later)).toEqual(sorted(stepped));
  });
});

describe('bringing a workbook of the first version up to date', () => {
  test('adds what came later at the right end and the foot, and touches nothing else', async () => {
    const port = await olderWorkshop();
    const before = Object.keys(OLDER_HEADINGS).map((name) => [name, port.tableSeen(name)] as const);
    const end = await bringUpToDate(port);
    expect(end).toMatchObject({
      done: true,
      left: [],
      blocked: [],
      made: ['Sizes', 'Checkin', 'Taxes', 'Discounts', 'Quotes', 'Movements', 'Scale'].sort(
        (a, b) => order(a) - order(b),
      ),
    });
    for (const [name, table] of before) {
      const now = port.tableSeen(name);
      const columns = table?.headers.length ?? 0;
      expect(now?.headers.slice(0, columns)).toEqual(table?.headers);
      expect(now?.rows.slice(0, table?.rows.length).map((row) => row.slice(0, columns))).toEqual(table?.rows);
      const schema = TABLES.find((each) => each.name === name);
      expect(sorted(now?.headers ?? [])).toEqual(sorted(schema?.columns.map(({ header }) => header) ?? []));
    }
    expect(settingsIn(port)).toEqual(expect.arrayContaining(SETTING_ROWS.map(({ name }) => name)));
    expect(await layoutIn(port)).toBe(LAYOUT);
    expect(ageOf(await readShop(port))).toBe('same');
  });

  test('says beforehand, and afterwards, what it adds', async () => {
    const port = await olderWorkshop();
    const { tables, layout } = await readShop(port);
    const lines = sayAdditions(laterThings(tables, layout));
    const clubs = lines.find((line) => line.startsWith('Clubs: ')) ?? '';
    expect(sorted(clubs.slice('Clubs: '.length).split(', '))).toEqual(sorted(laterHeaders('Clubs')));
    expect(lines.at(-1)).toMatch(/^New tables: Sizes, /);
    const said = sayUpToDate(await bringUpToDate(port));
    expect(said).toMatch(/^Made Sizes, /);
    expect(said).toContain('Added to Weights: ');
    expect(said).toContain('Added to Settings: ');
  });

  test('is taken back like a fill, whole: tables, columns, settings and the layout', async () => {
    const port = await olderWorkshop();
    const before = port.content();
    await bringUpToDate(port);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
    const settings = port.tableSeen('Settings');
    // The rows that Settings was made longer by stay, and are blank.
    expect(
      settings?.rows
        .slice(SETTING_ROWS.length - laterSettings().length)
        .flat()
        .filter((cell) => cell !== null && cell !== ''),
    ).toEqual([]);
    expect(cellsOf(port)).toEqual(cellsOf(before));
    for (const [name, headings] of Object.entries(OLDER_HEADINGS)) expect(headersOf(port, name)).toEqual(headings);
    expect(await layoutIn(port)).not.toBe(LAYOUT);
    expect(ageOf(await readShop(port))).toBe('older');
  });

  test('leaves alone what was filled since, when it is taken back', async () => {
    const port = await olderWorkshop();
    await bringUpToDate(port);
    port.fillTable('Clubs', [{ Tag: 'T1' }]);
    const end = await undoLast(port);
    expect(end).toMatchObject({ done: true });
    expect(end.done ? end.reverted.left.join() : '').toMatch(/^Clubs!/);
    expect(headersOf(port, 'Clubs')).toContain('Tag');
    expect(headersOf(port, 'Weights')).toEqual(OLDER_HEADINGS.Weights);
  });

  test('plans afterwards as it did before', async () => {
    const job = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'values' } as const;
    const plan = async (port: MemoryPort): Promise<unknown> => {
      await fillPlan(port, await readShop(port), job);
      return port.blockSeen({ sheet: 'Plan 1042', row: 0, column: 0, rows: 12, columns: 90 }).values;
    };
    const older = await olderWorkshop();
    const newer = await olderWorkshop();
    await bringUpToDate(newer);
    expect(await plan(newer)).toEqual(await plan(older));
    expect(await layoutIn(older)).toBe(1);
    expect(await layoutIn(newer)).toBe(LAYOUT);
  });

  test('done twice it does nothing', async () => {
    const port = await olderWorkshop();
    await bringUpToDate(port);
    const once = port.everything();
    const end = await bringUpToDate(port);
    expect(end).toEqual({ done: true, made: [], added: [], left: [], blocked: [] });
    expect(sayUpToDate(end)).toBe('Nothing was lacking.');
    expect(port.everything()).toEqual(once);
  });

  test('a column under a heading of the shop’s own is not added once more', async () => {
    const port = await olderWorkshop();
    port.deleteSheet('Weights');
    port.typeTable('Weights', 'Weights', [
      [...(OLDER_HEADINGS.Weights ?? []), 'In stock (g)', 'Made of'],
      ['Lead tape'],
    ]);
    const taken = laterThings((await readShop(port)).tables, 1).columns.find(({ schema }) => schema.name === 'Weights');
    await bringUpToDate(port);
    expect(headersOf(port, 'Weights').slice(0, 10)).toEqual([
      ...(OLDER_HEADINGS.Weights ?? []),
      'In stock (g)',
      'Made of',
    ]);
    expect(headersOf(port, 'Weights')).toHaveLength(10 + (taken?.columns.length ?? 0));
  });

  test('a table with something beside it is left and named, the others are done, and it is offered again', async () => {
    const port = await olderWorkshop();
    port.type('Clubs', 2, (OLDER_HEADINGS.Clubs?.length ?? 0) + 1, 'my notes');
    const end = await bringUpToDate(port);
    expect(end.done && end.left).toMatchObject([{ table: 'Clubs', error: { code: 'belowTable' } }]);
    expect(sayUpToDate(end)).toContain('Clubs was left as it is. A table needs more room, but ');
    expect(headersOf(port, 'Clubs')).toEqual(OLDER_HEADINGS.Clubs);
    expect(headersOf(port, 'Stock')).not.toEqual(OLDER_HEADINGS.Stock);
    expect(await layoutIn(port)).toBe(1);
    const again = laterThings((await readShop(port)).tables, 1);
    expect(again.columns.map(({ schema }) => schema.name)).toEqual(['Clubs']);
    expect([again.tables, again.settings]).toEqual([[], []]);
  });

  test('a sheet in use under the name of a later table is left and named', async () => {
    const port = await olderWorkshop();
    port.addSheet('Scale');
    port.type('Scale', 0, 0, 'fish');
    const end = await bringUpToDate(port);
    expect(end).toMatchObject({ done: true, blocked: [{ table: 'Scale', why: 'sheetInUse' }] });
    expect(port.shows('Scale', 0, 0)).toBe('fish');
    expect(await layoutIn(port)).toBe(1);
  });

  test('whichever step fails, everything is as it was', async () => {
    const counted = await olderWorkshop();
    await bringUpToDate(counted);
    for (let at = 1; at <= counted.stepsDone; at += 7) {
      const port = await olderWorkshop();
      const before = port.everything();
      port.failing = new Set([at]);
      expect(await bringUpToDate(port)).toMatchObject({ done: false, reason: 'port', error: { code: 'putBack' } });
      expect(port.everything()).toEqual(before);
    }
  });
});

describe('the layout of a workbook', () => {
  test('is written by setting up, and by the first fill', async () => {
    const fresh = new MemoryPort();
    await setUp(fresh);
    expect(await layoutIn(fresh)).toBe(LAYOUT);
    const older = await olderWorkshop();
    expect(await layoutIn(older)).toBeNull();
    await setUp(older);
    // Its tables still lack columns.
    expect(ageOf(await readShop(older))).toBe('older');
  });

  test('set up beside tables of its own, a workbook is not taken for one of today', async () => {
    const port = new MemoryPort();
    port.typeTable('Stock', 'Stock', [
      ['Item', 'Core (in)', 'Mass (g)', ...(OLDER_HEADINGS.Stock ?? []).slice(6)],
      ['a'],
    ]);
    await setUp(port);
    expect(await layoutIn(port)).toBe(1);
  });
});

const order = (name: string): number => TABLES.findIndex((table) => table.name === name);

function laterHeaders(table: string): string[] {
  const schema = TABLES.find(({ name }) => name === table);
  return (schema?.columns ?? [])
    .map(({ header }) => header)
    .filter((header) => !OLDER_HEADINGS[table]?.includes(header));
}

function laterSettings(): string[] {
  return LAYOUT_STEPS.flatMap(({ settings }) => settings);
}

/** What stands in the cells, without how long tables are. */
function cellsOf(from: MemoryPort | unknown): unknown {
  const content = (from instanceof MemoryPort ? from.content() : from) as { filled: unknown; names: unknown };
  return { filled: content.filled, names: content.names };
}
