import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withChoices } from '../../src/workbook/choices';
import { cellPrints, rowPrints } from '../../src/workbook/planOwners';
import { freeName, keepPlans, keptPlans } from '../../src/workbook/planPlaces';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { VERDICT_COLOURS } from '../../src/workbook/palette';
import { HEAD_ROWS, headCells } from '../../src/workbook/planSheet';
import { PortError } from '../../src/workbook/port';
import type { PortErrorCode } from '../../src/workbook/port';
import { TABLES } from '../../src/workbook/schema';
import { planSheetName } from '../../src/workbook/sheetName';
import { readShop } from '../../src/workbook/shop';
import { listed } from '../../src/words/listed';
import { sayPortError } from '../../src/words/portErrors';
import { MemoryPort } from './memoryPort';
import { workshop } from './workshop';

/** Relative luminance and contrast as WCAG 2.2 defines them (success criterion 1.4.3). */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('reading the shop', () => {
  test('lists jobs in the order of Jobs, then those only Clubs names', async () => {
    const port = await workshop();
    port.fillTable('Clubs', [{}, {}, { Job: 77 }]);
    const { jobs } = await readShop(port);
    expect(jobs).toEqual([
      { job: '1042', customer: 'Tamsin Orrell', due: 46000, clubs: 2 },
      { job: '1043', customer: 'Ivo Brandt', due: null, clubs: 1 },
      { job: '77', customer: '', due: null, clubs: 1 },
    ]);
  });

  test('of an empty workbook answers nothing, in one read', async () => {
    const port = new MemoryPort();
    const shop = await readShop(port);
    expect(port.reads).toBe(1);
    expect([shop.version, shop.jobs, shop.plans]).toEqual([null, [], []]);
    expect(Object.values(shop.tables)).toEqual(Array(TABLES.length).fill(null));
  });

  test('takes settings of something else for none', async () => {
    const port = await workshop();
    for (const text of ['', '{', '[]', 'null', '{"schema":1,"plans":[{"name":1}]}']) {
      await port.remember('setwright.plans', text);
      expect((await readShop(port)).plans).toEqual([]);
    }
  });
});

describe('choices', () => {
  const clubs = [
    ['Club', 'New grip', 'Layers'],
    ['7 iron', 'A', 2],
    ['8 iron', 'B', 1],
  ];

  test('leave, blank or replace', () => {
    expect(withChoices(clubs, [1], {})).toEqual(clubs);
    expect(withChoices(clubs, [2], { newItem: 'C', layers: null })[2]).toEqual(['8 iron', 'C', null]);
    expect(withChoices(clubs, [1, 2], { newItem: '' }).map((row) => row[1])).toEqual(['New grip', null, null]);
    expect(withChoices(clubs, [0, 3, -1], { newItem: 'C' })).toEqual(clubs);
    expect(clubs[1]).toEqual(['7 iron', 'A', 2]);
  });

  test('find the column under a shop’s own heading, and add one that is missing at the end', () => {
    const own = [
      ['no', 'grip to fit'],
      ['7', 'A'],
    ];
    expect(withChoices(own, [1], { newItem: 'C', tolerance: 1, layers: null })).toEqual([
      ['no', 'grip to fit', 'Tolerance (pt)'],
      ['7', 'C', 1],
    ]);
    expect(own[0]).toEqual(['no', 'grip to fit']);
  });

  test('pass a putter by beside other clubs where asked to, and never when there is nothing else', () => {
    const bag = [
      ['Club', 'Kind', 'New grip'],
      ['7 iron', 'Iron', 'A'],
      ['Putter', ' putter ', 'P'],
      ['Spare', 'Putter', 'P'],
    ];
    const items = (rows: readonly number[], exceptPutters: boolean): unknown[] =>
      withChoices(bag, rows, { newItem: 'C', exceptPutters }).map((row) => row[2]);
    expect(items([1, 2], true)).toEqual(['New grip', 'C', 'P', 'P']);
    expect(items([1, 2], false)).toEqual(['New grip', 'C', 'C', 'P']);
    expect(items([2, 3], true)).toEqual(['New grip', 'A', 'C', 'C']);
  });
});

describe('sheet names', () => {
  test('are what Excel accepts, whatever the job is called', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 60, unit: 'grapheme' }),
        fc.array(fc.string(), { maxLength: 3 }),
        (job, taken) => {
          const name = planSheetName(job, taken);
          expect(name.length).toBeGreaterThan(0);
          expect(name.length).toBeLessThanOrEqual(31);
          expect(name).not.toMatch(/[[\]:*?/\\]|^'|'$/);
          expect(name).toMatch(/^Plan/);
        },
      ),
    );
  });

  test('are not given twice', () => {
    const long = 'x'.repeat(40);
    const first = planSheetName(long, []);
    const second = planSheetName(long, [first.toUpperCase()]);
    expect(first.length).toBe(31);
    expect(second).toBe(`${first.slice(0, 27)} (2)`);
    expect(planSheetName("12'", [])).toBe('Plan 12');
  });
});

describe('what is kept of a plan', () => {
  test('comes back as it was kept', () => {
    const entry = {
      name: 'Setwright_Plan_1',
      key: 'job:1',
      job: '1',
      ownSheet: true,
      cellPrints: ['a'],
      rowPrints: ['b'],
    };
    expect(keptPlans(keepPlans([entry], 3))).toEqual({ schema: 1, layout: 3, plans: [entry] });
    // a version that did not write the layout down
    expect(keptPlans('{"schema":1,"plans":[]}')).toEqual({ schema: 1, layout: null, plans: [] });
    expect(freeName([entry], [])).toBe('Setwright_Plan_2');
    expect(freeName([entry], ['Setwright_Plan_2'])).toBe('Setwright_Plan_3');
  });

  test('a print tells one row from another, and is the same for what reads back the same', () => {
    expect(rowPrints([[0.1 + 0.2, 'x', null]])).toEqual(rowPrints([[0.3, 'x', '']]));
    const rows = [['1'], [1], [true], ['true'], ['a', 'b'], ['ab'], [null, 'a'], ['a']];
    expect(new Set(rowPrints(rows)).size).toBe(rows.length);
    expect(cellPrints([[null, 'a', 'a']]).length).toBe(2);
    expect(new Set(cellPrints([['a', 'a']])).size).toBe(2);
    const many = Array.from({ length: 20_000 }, (_, i) => [`Club ${i % 150}`, i / 10]);
    expect(new Set(rowPrints(many)).size).toBe(many.length);
  });

  test('a number counts by its first twelve digits, however it is printed', () => {
    const numbers = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: -1e13, max: 1e13 }).map((digits) => digits / 1e7),
      fc.integer(),
    );
    fc.assert(
      fc.property(numbers, (number) => {
        expect(rowPrints([[number]])).toEqual(rowPrints([[Number(number.toPrecision(12))]]));
      }),
    );
  });
});

describe('the head of a plan', () => {
  test('has as many rows and columns as it says', () => {
    const cells = headCells({ shop: '', job: null, customer: '', due: null, someClubs: true });
    expect(cells.length).toBe(HEAD_ROWS);
    expect(cells.every((row) => row.length === PLAN_COLUMNS.length)).toBe(true);
    expect(cells.slice(0, 6).map((row) => row[0])).toEqual([null, 'Regrip plan', null, null, null, 'Clubs']);
  });

  test('gives every verdict ink that can be read on its fill: 4.5 to 1 or more', () => {
    for (const { fill, ink } of Object.values(VERDICT_COLOURS)) {
      const [dark = 0, light = 0] = [luminance(ink), luminance(fill)].sort((a, b) => a - b);
      expect((light + 0.05) / (dark + 0.05)).toBeGreaterThanOrEqual(4.5);
    }
  });
});

describe('sentences', () => {
  test('every refusal of the workbook has one, with the cells and what to do', () => {
    const codes: PortErrorCode[] = [
      'notLookedAt',
      'protected',
      'merged',
      'filtered',
      'tableInTheWay',
      'editing',
      'putBack',
      'halfWritten',
      'unsupported',
      'host',
    ];
    const said = codes.map((code) => sayPortError(new PortError(code, ['Clubs!T5'], 'Busy.')));
    expect(new Set(said).size).toBe(codes.length);
    for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(said[codes.indexOf('halfWritten')]).toContain('It said: “Busy”. Look at Clubs!T5');
  });

  test('lists are short', () => {
    expect([listed([]), listed(['A']), listed(['A', 'B'])]).toEqual(['', 'A', 'A and B']);
    expect(listed(Array.from({ length: 30 }, (_, i) => `A${i}`))).toBe('A0, A1, A2, A3, A4, A5 and 24 more');
  });
});
