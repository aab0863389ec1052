import { describe, expect, test } from 'vitest';
import { compareGrips, COUNTS } from '../../src/core/index';
import type { Comparison, Filters } from '../../src/core/index';
import { COMPARE_COLUMNS } from '../../src/workbook/compareCells';
import { COMPARE_HEAD_ROWS } from '../../src/workbook/compareSheet';
import { compareSheetOf, fillCompare } from '../../src/workbook/fillCompare';
import type { CompareRequest } from '../../src/workbook/fillCompare';
import { fillPlan } from '../../src/workbook/fillPlan';
import { freezePlan } from '../../src/workbook/freeze';
import type { CompareDone, Scope } from '../../src/workbook/outcomes';
import { planScope, scopeRows } from '../../src/workbook/planScope';
import type { Seen } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import type { Shop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { COUNT_LEGENDS } from '../../src/words/compareHead';
import { sayCompared } from '../../src/words/chooseOutcomes';
import type { MemoryPort } from './memoryPort';
import { olderWorkshop } from './olderWorkshop';
import { STOCK_ROWS, workshop } from './workshop';

const SHEET = 'Compare 1042';
const TOP = COMPARE_HEAD_ROWS;
const ABOUT = 'As the clubs are: their own layers.';
const JOB = { job: '1042' };

/** Compares as the pane does: the clubs of the scope, as the workbook says. */
export function comparing(shop: Shop, scope: Scope = JOB, filters: Filters = {}): Comparison {
  const clubs = shop.tables.Clubs;
  const planned = clubs && planScope(shop.tables, scopeRows(clubs, scope), {});
  if (!planned?.ok) throw new Error('cannot be planned');
  return compareGrips(planned.value.input, filters);
}

async function fill(port: MemoryPort, request: Partial<CompareRequest> = {}): Promise<CompareDone> {
  const shop = await readShop(port);
  const scope = request.scope ?? JOB;
  const comparison = request.comparison ?? comparing(shop, scope);
  return fillCompare(port, shop, { scope, about: ABOUT, ...request, comparison });
}

function row(port: MemoryPort, at: number, sheet = SHEET): Seen[] {
  return COMPARE_COLUMNS.map((_, across) => port.shows(sheet, at, across));
}

function column(port: MemoryPort, key: string, rows: number, sheet = SHEET): Seen[] {
  const at = COMPARE_COLUMNS.findIndex((each) => each.key === key);
  return Array.from({ length: rows }, (_, i) => port.shows(sheet, TOP + i, at));
}

function plans(port: MemoryPort): Promise<(readonly [string, string])[]> {
  return readShop(port).then((shop) => shop.plans.map(({ name, key }) => [name, key] as const));
}

describe('filling in a comparison', () => {
  test('takes one read and one write', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const comparison = comparing(shop);
    port.reads = 0;
    const end = await fillCompare(port, shop, { scope: JOB, comparison, about: ABOUT });
    expect([port.reads, port.applies]).toEqual([1, 1]);
    const unbeaten = comparison.tried.filter((each) => each.unbeaten).length;
    expect(end).toMatchObject({ done: true, sheet: SHEET, grips: comparison.tried.length, unbeaten });
    expect(sayCompared(end)).toBe(
      `${comparison.tried.length} grips compared in Compare 1042, ${unbeaten} of them unbeaten. The sheet holds values; compare again after a change.`,
    );
  });

  test('lists every grip that was tried as the comparison has it, unbeaten ones first, in words and numbers', async () => {
    const port = await workshop();
    port.fillTable('Stock', [{ Price: 9.5, Description: 'Fern, midsize', Size: 'Midsize' }]);
    const comparison = comparing(await readShop(port));
    await fill(port);
    const { tried } = comparison;
    expect(tried.length).toBeGreaterThanOrEqual(2);
    expect(column(port, 'grip', tried.length + 2)).toEqual([
      'Grip',
      ...tried.map(({ candidate }) => candidate.key),
      null,
    ]);
    expect(column(port, 'standing', tried.length + 1).slice(1)).toEqual(
      tried.map(({ unbeaten }) => (unbeaten ? 'Unbeaten' : 'Beaten')),
    );
    const standings = tried.map(({ unbeaten }) => unbeaten);
    expect([...standings].sort((a, b) => Number(b) - Number(a))).toEqual(standings);
    const at = tried.findIndex(({ candidate }) => candidate.key === 'FERN-M');
    const fern = tried[at];
    const cells = Object.fromEntries(row(port, TOP + 1 + at).map((cell, i) => [COMPARE_COLUMNS[i]?.key, cell]));
    expect(cells).toMatchObject({
      description: 'Fern, midsize',
      size: 'Midsize',
      // one layer each, as Clubs says; three clubs at 9.50
      layers: 1,
      sizeError: null,
      price: 28.5,
      short: 0,
      out: fern?.clubsOut,
    });
    // readings as they are told apart, to a tenth of a point
    expect(cells.largestChange).toBe(Math.round((fern?.largestChangePoints ?? NaN) * 10) / 10);
    expect(cells.meanChange).toBe(Math.round((fern?.meanChangePoints ?? NaN) * 10) / 10);
    expect(cells.massAdded).toBeCloseTo(fern?.massAddedGrams ?? NaN, 6);
    expect(cells.head).toBeCloseTo(fern?.headGrams ?? NaN, 6);
    // what Stock does not price stays blank
    const moss = tried.findIndex(({ candidate }) => candidate.key === 'MOSS-S');
    expect(column(port, 'price', moss + 2).at(-1)).toBeNull();
  });

  test('stands under a head with the shop, the job, what was compared, and what each count means', async () => {
    const port = await workshop();
    port.type('Settings', 1, 1, 'The Heather Bench');
    await fill(port);
    const head = Array.from({ length: TOP }, (_, at) => row(port, at).slice(0, 2));
    expect(head.slice(0, 5)).toEqual([
      ['The Heather Bench', null],
      ['Grips compared', null],
      ['Job', '1042'],
      ['Customer', 'Tamsin Orrell'],
      ['Clubs', '3'],
    ]);
    expect(head[7]).toEqual(['Compared', ABOUT]);
    expect(head.slice(8, 10).map(([word]) => word)).toEqual(['Unbeaten', 'Beaten']);
    expect(head[8]?.[1]).toBe('no other grip tried is at least as good on every count and better on one');
    const legend = Array.from({ length: COUNTS.length }, (_, at) => port.shows(SHEET, at, 3));
    expect(legend).toEqual(COUNT_LEGENDS);
    expect(port.name('Setwright_Plan_1')).toMatchObject({ sheet: SHEET, row: 0, column: 0 });
  });

  test('says how many of the job’s clubs were compared when its putter was left out', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const comparison = comparing(shop, { rows: [1, 2] });
    await fillCompare(port, shop, { scope: JOB, comparison, about: ABOUT });
    expect(port.shows(SHEET, 4, 1)).toBe('2 of 3');
  });

  test('ends with what was not tried and why; what was narrowed away stands in one line', async () => {
    const port = await workshop();
    port.fillTable('Stock', [{ Profile: 'Round' }, { Profile: 'Ribbed' }, { 'Mass (g)': null }]);
    const shop = await readShop(port);
    const comparison = comparing(shop, JOB, { profile: 'round' });
    await fillCompare(port, shop, { scope: JOB, comparison, about: ABOUT });
    const below = TOP + 1 + comparison.tried.length;
    expect([0, 1, 2, 3].map((at) => port.shows(SHEET, below + at, 0))).toEqual([
      null,
      'Not tried',
      'Left out by what it was narrowed down to: MOSS-S and OAK-58.',
      null,
    ]);
    // without a filter the grip without a mass is told as such
    const all = await readShop(port);
    await fillCompare(port, all, { scope: JOB, comparison: comparing(all), about: ABOUT });
    const tried = comparing(all).tried.length;
    expect(port.shows(SHEET, TOP + 1 + tried + 2, 0)).toContain('OAK-58: its mass is not known.');
  });

  test('can be printed: landscape, on the page’s width, its header row repeated, its name at the foot', async () => {
    const port = await workshop();
    const end = await fill(port);
    const page = port.asked.find((change) => change.do === 'page');
    expect(page).toMatchObject({
      sheet: SHEET,
      setup: {
        landscape: true,
        area: end.done && end.block,
        titleRows: { row: TOP, rows: 1 },
        footer: 'Grips compared',
      },
    });
    const highlight = port.asked.find((change) => change.do === 'highlight');
    expect(highlight).toMatchObject({
      at: { column: 0, row: TOP + 1 },
      rules: [{ equals: ['Unbeaten'] }, { equals: ['Beaten'] }],
    });
  });

  test('of chosen clubs has a sheet beside the job’s', async () => {
    const port = await workshop();
    await fill(port);
    const shop = await readShop(port);
    expect(compareSheetOf(shop, JOB)).toBe(SHEET);
    expect(compareSheetOf(shop, { rows: [1, 2] })).toBe('Compare 1042 part');
    expect(await fill(port, { scope: { rows: [1, 2] } })).toMatchObject({ done: true, sheet: 'Compare 1042 part' });
    expect(await fill(port, { scope: { rows: [1, 4] } })).toMatchObject({ done: true, sheet: 'Compare chosen clubs' });
    expect((await plans(port)).map(([, key]) => key)).toEqual([
      'compare:job:1042',
      'compare:part:1042',
      'compare:mixed',
    ]);
  });
});

describe('its looks', () => {
  test('no word of a heading is wider than its column, bold letters being a tenth wider', () => {
    for (const { header, width } of COMPARE_COLUMNS) {
      for (const word of header.split(' ')) expect(word.length, word).toBeLessThanOrEqual(Math.floor(width * 0.9));
    }
  });

  test('lines that run across the page end on it', async () => {
    const port = await workshop();
    await fill(port);
    const widths = COMPARE_COLUMNS.map(({ width }) => width);
    const room = (from: number): number => widths.slice(from).reduce((sum, width) => sum + width, 0);
    for (let at = 0; at < TOP; at += 1) {
      row(port, at).forEach((cell, across, cells) => {
        const next = cells.findIndex((other, i) => i > across && other !== null);
        const space = room(across) - (next < 0 ? 0 : room(next));
        if (typeof cell === 'string' && at !== 1) expect(cell.length, cell).toBeLessThanOrEqual(space * 0.9);
      });
    }
  });

  test('rows are set as high as their texts need, and low again when a shorter text comes there', async () => {
    const port = await workshop();
    port.fillTable('Stock', [{ Description: 'A name so long that it goes on over three whole lines of its column' }]);
    const heights = (): number[] =>
      port.asked.flatMap((change) =>
        change.do === 'format' && change.format.height !== undefined && change.at.row > TOP
          ? Array<number>(change.at.rows).fill(change.format.height)
          : [],
      );
    await fill(port);
    // 68 letters at 24 a line are three lines of 15 points
    expect(heights().filter((height) => height > 30)).toEqual([45]);
    const rows = heights().length;
    port.fillTable('Stock', [{ Description: 'Fern' }]);
    port.asked = [];
    await fill(port);
    expect(heights()).toHaveLength(rows);
    expect(Math.max(...heights())).toBeLessThanOrEqual(30);
  });
});

describe('filling in a comparison again', () => {
  test('rewrites it in place, clears what an older, longer one left, and no more', async () => {
    const port = await workshop();
    await fill(port);
    const before = port.content();
    expect(await fill(port)).toMatchObject({ done: true, sheet: SHEET });
    expect(port.content()).toEqual(before);
    const shop = await readShop(port);
    const all = comparing(shop).tried.length;
    const last = TOP + 1 + all + 5;
    port.type(SHEET, last, 2, 'a note below');
    const comparison = comparing(shop, JOB, { items: ['FERN-M'] });
    expect(await fillCompare(port, shop, { scope: JOB, comparison, about: ABOUT })).toMatchObject({ grips: 1 });
    expect(column(port, 'grip', all + 1)).toEqual(['Grip', 'FERN-M', ...Array(all - 1).fill(null)]);
    expect(port.shows(SHEET, last, 2)).toBe('a note below');
    expect(port.sheetNames().filter((name) => name.startsWith('Compare'))).toEqual([SHEET]);
  });

  test('names what a person typed, and writes over it when they agree to that and no more', async () => {
    const port = await workshop();
    await fill(port);
    port.type(SHEET, 3, 1, 'call first');
    const before = port.everything();
    const asked = await fill(port);
    expect(asked).toMatchObject({ done: false, reason: 'occupied', cells: ["'Compare 1042'!B4"] });
    expect(sayCompared(asked)).toContain('holds something of yours');
    expect(port.everything()).toEqual(before);
    const agreed = 'inTheWay' in asked ? asked.inTheWay : undefined;
    port.type(SHEET, 2, 1, 'mine too');
    expect(await fill(port, { agreed })).toMatchObject({ reason: 'occupied' });
    port.type(SHEET, 2, 1, '1042');
    expect(await fill(port, { agreed })).toMatchObject({ done: true });
    expect(port.shows(SHEET, 3, 1)).toBe('Tamsin Orrell');
    await undoLast(port);
    expect(port.shows(SHEET, 3, 1)).toBe('call first');
  });

  test('with a shop read before the last fill, still knows its own cells', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const request = { scope: JOB, comparison: comparing(shop), about: ABOUT };
    await fillCompare(port, shop, request);
    expect(await fillCompare(port, shop, request)).toMatchObject({ done: true, sheet: SHEET });
    expect(await plans(port)).toEqual([['Setwright_Plan_1', 'compare:job:1042']]);
  });

  test('finds its page on a renamed sheet, and makes it anew after that was deleted', async () => {
    const port = await workshop();
    await fill(port);
    port.rename(SHEET, 'For Tamsin');
    expect(await fill(port)).toMatchObject({ sheet: 'For Tamsin' });
    port.deleteSheet('For Tamsin');
    expect(await fill(port)).toMatchObject({ sheet: SHEET });
  });
});

describe('beside plans', () => {
  const PLAN = { scope: JOB, choices: {}, where: 'planSheet', as: 'live' } as const;

  test('each keeps to its own sheet and place, and the plan can still be frozen', async () => {
    const port = await workshop();
    await fill(port);
    expect(await fillPlan(port, await readShop(port), PLAN)).toMatchObject({ done: true, sheet: 'Plan 1042' });
    expect(await fill(port)).toMatchObject({ done: true, sheet: SHEET });
    expect(await fillPlan(port, await readShop(port), PLAN)).toMatchObject({ done: true, sheet: 'Plan 1042' });
    expect((await plans(port)).map(([, key]) => key)).toEqual(['compare:job:1042', 'job:1042']);
    const shop = await readShop(port);
    const plan = shop.plans.find(({ key }) => key === 'job:1042');
    const comparison = shop.plans.find(({ key }) => key === 'compare:job:1042');
    expect(plan && (await freezePlan(port, shop, plan))).toMatchObject({ done: true });
    expect(comparison && (await freezePlan(port, await readShop(port), comparison))).toMatchObject({
      reason: 'alreadyValues',
    });
  });

  test('in an open sheet, a plan is not laid over a comparison unasked', async () => {
    const port = await workshop();
    await fill(port);
    const at = { sheet: SHEET, row: 0, column: 0, rows: 1, columns: 1 };
    const end = await fillPlan(port, await readShop(port), { ...PLAN, where: 'openSheet', at });
    expect(end).toMatchObject({ done: false, reason: 'occupied' });
  });
});

describe('taking a comparison back', () => {
  test('leaves the workbook as it was', async () => {
    const port = await workshop();
    const before = port.content();
    await fill(port);
    expect(await undoLast(port)).toMatchObject({
      done: true,
      reverted: { label: 'Comparison for job 1042', left: [] },
    });
    expect(port.content()).toEqual(before);
    expect(await plans(port)).toEqual([]);
  });

  test('after a second one brings the first back, and it is still known as ours', async () => {
    const port = await workshop();
    await fill(port);
    const first = port.content();
    const shop = await readShop(port);
    await fillCompare(port, shop, {
      scope: JOB,
      comparison: comparing(shop, JOB, { items: ['MOSS-S'] }),
      about: 'One.',
    });
    await undoLast(port);
    expect(port.content()).toEqual(first);
    expect(await fill(port)).toMatchObject({ done: true });
  });
});

describe('a comparison that cannot be filled in', () => {
  test('is one of what the workbook no longer says', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const request = { scope: JOB, comparison: comparing(shop), about: ABOUT };
    const before = port.content();
    port.fillTable('Stock', [{ 'Mass (g)': 55 }]);
    const stock = await fillCompare(port, shop, request);
    expect(stock).toEqual({ done: false, reason: 'outOfDate', tables: ['Stock'] });
    expect(sayCompared(stock)).toBe('Stock changed since grips were compared. Nothing was written; compare again.');
    port.fillTable('Stock', STOCK_ROWS);
    port.fillTable('Clubs', [{ Layers: 2 }]);
    expect(await fillCompare(port, shop, request)).toMatchObject({ reason: 'outOfDate', tables: ['Clubs'] });
    port.fillTable('Clubs', [{ Layers: 1 }]);
    expect(port.content()).toEqual(before);
    // another job's clubs, and the order of this one's, make no difference
    port.fillTable('Clubs', [{}, {}, {}, { Layers: 3 }]);
    const rows = port.tableSeen('Clubs')?.rows ?? [];
    port.typeRows('Clubs', 1, 0, [rows[1] ?? [], rows[0] ?? []]);
    expect(await fillCompare(port, shop, request)).toMatchObject({ done: true });
  });

  test('is one of nothing: no grips, no clubs, no table', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const nothing = await fill(port, { comparison: comparing(shop, JOB, { items: [] }) });
    expect(nothing).toEqual({ done: false, reason: 'nothingTried' });
    expect(sayCompared(nothing)).toContain('No grip was tried');
    const comparison = comparing(shop);
    expect(await fill(port, { scope: { job: '77' }, comparison })).toEqual({ done: false, reason: 'noClubs' });
    port.deleteSheet('Clubs');
    expect(await fill(port, { comparison })).toEqual({ done: false, reason: 'tableMissing', table: 'Clubs' });
  });

  test('is not laid over a table or a protected sheet', async () => {
    const port = await workshop();
    port.typeTable('Mine', SHEET, [['a'], ['b']]);
    const onTable = await fill(port);
    expect(onTable).toMatchObject({ reason: 'port', error: { code: 'tableInTheWay' } });
    expect(sayCompared(onTable)).toContain('The table Mine is in the way');
    const locked = await workshop();
    locked.addSheet(SHEET);
    locked.protect(SHEET);
    expect(sayCompared(await fill(locked))).toContain('The sheet Compare 1042 is protected');
  });

  test('leaves everything as it was when any step fails', async () => {
    const counted = await workshop();
    await fill(counted);
    for (let step = 1; step <= counted.asked.length + 1; step += 1) {
      const port = await workshop();
      const before = port.everything();
      port.failing = new Set([step]);
      expect(await fill(port)).toMatchObject({ done: false, reason: 'port', error: { code: 'putBack' } });
      expect(port.everything()).toEqual(before);
    }
  }, 60_000);
});

test('a workbook of the first version can have a comparison too', async () => {
  const port = await olderWorkshop();
  expect(await fill(port)).toMatchObject({ done: true, sheet: SHEET });
});

test('500 grips take one read and one write, and few of either', async () => {
  const port = await workshop();
  port.fillTable(
    'Stock',
    Array.from({ length: 500 }, (_, i) => ({
      Item: `G${i}`,
      'Core (in)': 0.6,
      'Mass (g)': 40 + i / 20,
      'On hand': i % 9,
    })),
  );
  const shop = await readShop(port);
  const comparison = comparing(shop);
  port.reads = 0;
  expect(await fillCompare(port, shop, { scope: JOB, comparison, about: ABOUT })).toMatchObject({
    done: true,
    grips: 500,
  });
  expect([port.reads, port.applies]).toEqual([1, 1]);
  expect(port.asked.length).toBeLessThan(200);
}, 60_000);
