import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chosenCells, lackingChoices, withChoices } from '../../src/workbook/choices';
import type { Choices, ClubChoices } from '../../src/workbook/choices';
import { fillPlan } from '../../src/workbook/fillPlan';
import type { FillRequest } from '../../src/workbook/outcomes';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { planScope, scopeRows } from '../../src/workbook/planScope';
import { HEAD_ROWS } from '../../src/workbook/planSheet';
import type { Seen } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import type { MemoryPort } from './memoryPort';
import { CLUB_ROWS, workshop } from './workshop';

const BAG = [
  ['Club', 'Kind', 'New grip', 'New grip mass (g)', 'Layers'],
  ['Driver', 'Driver', 'A', 50.5, 1],
  ['7 iron', 'Iron', 'B', 51.5, 2],
  ['Putter', 'Putter', 'P', null, 0],
];

const rowsOf = (choices: Choices, rows: readonly number[] = [1, 2, 3]): unknown[][] =>
  withChoices(BAG, rows, choices)
    .slice(1)
    .map((row) => row.slice(2));

describe('choices for single clubs', () => {
  test('go before the same choice for all, and leave the others to it', () => {
    const perClub = new Map<number, ClubChoices>([
      [1, { layers: 3 }],
      [2, { newItem: 'C', newMass: 49 }],
    ]);
    expect(rowsOf({ newItem: 'A', layers: 0, perClub })).toEqual([
      ['A', 50.5, 3],
      ['C', 49, 0],
      ['A', null, 0],
    ]);
  });

  test('blank a cell with null although there is a choice for all', () => {
    expect(rowsOf({ layers: 4, perClub: new Map([[2, { layers: null }]]) }).map((row) => row[2])).toEqual([4, null, 4]);
  });

  test('count for a putter that is spared what is chosen for all', () => {
    const spared = { newItem: 'A', exceptPutters: true } as const;
    expect(rowsOf(spared)[2]).toEqual(['P', null, 0]);
    expect(rowsOf({ ...spared, perClub: new Map([[3, { layers: 1 }]]) })[2]).toEqual(['P', null, 1]);
  });

  test('outside the rows concerned are passed over', () => {
    const perClub = new Map([
      [0, { layers: 5 }],
      [2, { layers: 5 }],
      [9, { layers: 5 }],
    ]);
    expect(withChoices(BAG, [1, 3], { perClub })).toEqual(BAG);
    expect(chosenCells(BAG, [0, 9, -1], { perClub })).toEqual([]);
  });

  test('are what a club gets when nothing is chosen for all, whatever they are', () => {
    // one club's own choices do to it what the same choices for all do, and nothing to any other
    const choice = fc.record<ClubChoices>(
      {
        newItem: fc.constantFrom('A', 'B', 'c', '', null),
        newMass: fc.constantFrom(48, null),
        layers: fc.constantFrom(0, 2, null),
        hold: fc.constantFrom('Target', null),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(choice, fc.constantFrom(1, 2, 3), (own, row) => {
        const alone = withChoices(BAG, [1, 2, 3], { perClub: new Map([[row, own]]) });
        expect(alone[row]).toEqual(withChoices(BAG, [row], own)[row]);
        expect(alone.filter((_, at) => at > 0 && at !== row)).toEqual(BAG.filter((_, at) => at > 0 && at !== row));
      }),
    );
  });

  test('need their columns too, when their club is concerned', () => {
    const clubs = [
      ['Club', 'New grip'],
      ['7 iron', 'A'],
      ['8 iron', 'A'],
    ];
    const choices: Choices = { newItem: 'B', perClub: new Map([[2, { newMass: 50, layers: null }]]) };
    expect(lackingChoices(clubs, [1, 2], choices)).toEqual(['New grip mass (g)']);
    expect(lackingChoices(clubs, [1], choices)).toEqual([]);
  });
});

describe('the mass of a weighed new grip', () => {
  test('goes with the grip that was weighed: another one blanks it, the same one keeps it', () => {
    expect(rowsOf({ newItem: ' a ' }).map((row) => row[1])).toEqual([50.5, null, null]);
    expect(rowsOf({ newItem: null }).map((row) => row[1])).toEqual([null, null, null]);
    expect(rowsOf({ layers: 2 }).map((row) => row[1])).toEqual([50.5, 51.5, null]);
  });

  test('stays what was chosen for it', () => {
    expect(rowsOf({ newItem: 'C', newMass: 47 }).map((row) => row[1])).toEqual([47, 47, 47]);
    expect(rowsOf({ newItem: 'B', newMass: null }).map((row) => row[1])).toEqual([null, null, null]);
  });
});

const JOB: FillRequest = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'values' };

function column(port: MemoryPort, header: string): Seen[] {
  const table = port.tableSeen('Clubs');
  const at = table?.headers.indexOf(header) ?? -1;
  return table?.rows.map((row) => row[at] ?? null) ?? [];
}

describe('filling a plan with choices for single clubs', () => {
  const placed = (): Choices => ({
    newItem: 'OAK-58',
    perClub: new Map<number, ClubChoices>([
      [1, { newMass: 60.5 }],
      [2, { newMass: 61.5, layers: 2 }],
      [4, { newMass: 63 }],
    ]),
  });

  test('writes each club’s own, plans with them as the preview did, and can be taken back', async () => {
    const port = await workshop();
    port.fillTable('Clubs', [{}, {}, { 'New grip mass (g)': 49.5 }]);
    const shop = await readShop(port);
    const before = port.content();
    const clubs = shop.tables.Clubs;
    const preview = clubs && planScope(shop.tables, scopeRows(clubs, JOB.scope), placed());
    const end = await fillPlan(port, shop, { ...JOB, choices: placed() });
    // three items, two masses, one number of layers, and the mass of the wedge's former grip
    expect(end).toMatchObject({ done: true, clubs: 3, choicesWritten: 7 });
    expect(column(port, 'New grip')).toEqual(['OAK-58', 'OAK-58', 'OAK-58', 'FERN-M', 'FERN-M']);
    expect(column(port, 'New grip mass (g)')).toEqual([60.5, 61.5, null, null, null]);
    expect(column(port, 'Layers')).toEqual([1, 2, 1, 1, 1]);
    const total = PLAN_COLUMNS.findIndex(({ key }) => key === 'massAfter');
    const shown = [1, 2, 3].map((row) => port.shows('Plan 1042', HEAD_ROWS + row, total));
    const meant = preview?.ok ? preview.value.plan.clubs.map((club) => club.massAfterGrams) : [];
    expect(shown.map(Number)).toEqual(meant.map((grams) => expect.closeTo(grams ?? NaN, 6)));
    await undoLast(port);
    expect(port.content()).toEqual(before);
  });

  test('writes nothing once the clubs of the job stand in other rows', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const [one = {}, two = {}, ...rest] = CLUB_ROWS;
    port.fillTable('Clubs', [two, one, ...rest]);
    const before = port.everything();
    expect(await fillPlan(port, shop, { ...JOB, choices: placed() })).toEqual({ done: false, reason: 'clubsMoved' });
    expect(port.everything()).toEqual(before);
    // without choices of their own their order does not matter
    const alike = { ...JOB, choices: { newItem: 'OAK-58', perClub: new Map<number, ClubChoices>() } };
    expect(await fillPlan(port, shop, alike)).toMatchObject({ done: true });
  });

  test('writes nothing when a row was put in above the job', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    port.fillTable('Clubs', [{ ...CLUB_ROWS[4] }, ...CLUB_ROWS.slice(0, 4)]);
    expect(await fillPlan(port, shop, { ...JOB, choices: placed() })).toEqual({ done: false, reason: 'clubsMoved' });
  });
});
