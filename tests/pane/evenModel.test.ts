import { describe, expect, test } from 'vitest';
import { planSet, type ClubPlan, type EvenGroup } from '../../src/core/index';
import { evenModel } from '../../src/pane/state/evenModel';
import type { Form } from '../../src/pane/state/form';
import { EMPTY_TOOLS, type EvenBy, type EvenForm } from '../../src/pane/state/tools';
import { inputOf } from '../core/choose/sets';
import { after, DEMO_JOBS, demoPane, planOf } from './demoPane';

const EMPTY = EMPTY_TOOLS.even;
const form = (by: Partial<Record<EvenGroup, EvenBy>>, value: Partial<Record<EvenGroup, string>> = {}): EvenForm => ({
  by: { ...EMPTY.by, ...by },
  value: { ...EMPTY.value, ...value },
});

/** A wood, three irons and a wedge; D2 is 32 points above A0. */
const bag = inputOf(
  [
    { kind: 'wood', lengthInches: 43, reading: 33 },
    { kind: 'iron', lengthInches: 38, reading: 31 },
    { kind: 'iron', lengthInches: 37, reading: 32 },
    { kind: 'iron', lengthInches: 36, reading: 33.5 },
    { kind: 'wedge', lengthInches: 35, reading: 35, hold: 'target', target: 36 },
    { kind: 'putter', lengthInches: 34, reading: 40 },
  ],
  [],
);

describe('while every group stays as in the sheet', () => {
  const model = evenModel(bag, EMPTY);

  test('nothing is taken and the plan is the sheet’s', () => {
    expect(model.taken.size).toBe(0);
    expect(model.plan).toEqual(planSet(bag));
    expect(model.faults).toEqual([]);
  });

  test('each group is shown with its ends and what every choice would take', () => {
    expect(model.groups.map(({ even, low, high }) => [even.group, low, high])).toEqual([
      ['woods', 33, 33],
      ['irons', 31, 33.5],
      ['wedges', 35, 35],
    ]);
    for (const { costs, even } of model.groups) {
      expect(costs.map(({ choice }) => choice)).toEqual(['own', 'one', 'line']);
      expect(costs.every(({ group }) => group === even.group)).toBe(true);
    }
  });
});

describe('a group that is evened out', () => {
  test('gets the middle as its target, written as a reading; the others stay', () => {
    const { taken, plan } = evenModel(bag, form({ irons: 'one' }));
    expect([...taken]).toEqual([2, 3, 4].map((row) => [row, { hold: 'Target', target: 'D2.0' }]));
    expect(plan.clubs.map(({ hold, heldReading }) => [hold, heldReading])).toEqual([
      ['asArrived', 33],
      ['target', 32],
      ['target', 32],
      ['target', 32],
      ['target', 36],
      ['nothing', undefined],
    ]);
  });

  test('gets the owner’s own reading, and the middle while that is none', () => {
    const own = evenModel(bag, form({ irons: 'one' }, { irons: ' d 3,5 ' }));
    expect(own.taken.get(2)).toEqual({ hold: 'Target', target: 'D3.5' });
    expect(own.faults).toEqual([]);
    const fault = evenModel(bag, form({ irons: 'one' }, { irons: 'H2' }));
    expect(fault.faults).toEqual(['irons']);
    expect(fault.taken.get(2)).toEqual({ hold: 'Target', target: 'D2.0' });
  });

  test('does not look at a value that does not count', () => {
    expect(evenModel(bag, form({ irons: 'line' }, { irons: 'H2' })).faults).toEqual([]);
    expect(evenModel(bag, form({}, { irons: 'H2', woods: 'x' })).faults).toEqual([]);
  });

  test('gets targets that rise with length along a line', () => {
    const { taken } = evenModel(bag, form({ irons: 'line' }));
    const targets = [2, 3, 4].map((row) => taken.get(row)?.target);
    // least squares through (38, 31), (37, 32), (36, 33.5): slope −1.25, middle 32 1/6 at 37
    expect(targets).toEqual(['D0.9', 'D2.2', 'D3.4']);
  });

  test('that is to read as it did takes the target in the sheet away', () => {
    const { taken, plan } = evenModel(bag, form({ wedges: 'own' }));
    expect([...taken]).toEqual([[5, { hold: 'As it was', target: null }]]);
    expect(plan.clubs[4]).toMatchObject({ hold: 'asArrived', heldReading: 35 });
  });

  test('below the scale gets points', () => {
    const small = inputOf(
      [-34.6, -41.7, -50.2].map((reading) => ({ kind: 'iron', reading })),
      [],
    );
    expect(evenModel(small, form({ irons: 'one' })).taken.get(1)).toEqual({ hold: 'Target', target: -41.7 });
    const high = inputOf(
      [71, 72, 73].map((reading) => ({ kind: 'iron', reading })),
      [],
    );
    expect(evenModel(high, form({ irons: 'one' })).taken.get(1)).toEqual({ hold: 'Target', target: 72 });
  });

  test('without readings gets nothing to take', () => {
    const unread = inputOf([{ kind: 'iron', reading: undefined }], []);
    const { taken, groups } = evenModel(unread, form({ irons: 'one' }));
    expect(taken.size).toBe(0);
    expect(groups[0]).toMatchObject({ low: undefined, high: undefined, even: { issue: { code: 'noRows' } } });
  });
});

/** Ways of evening out, each in each place, and fields that may stand beside them. */
const WAYS: readonly EvenForm[] = [
  form({ woods: 'one', irons: 'one', wedges: 'one' }),
  form({ woods: 'line', irons: 'line', wedges: 'own' }),
  form({ irons: 'one' }, { irons: 'D3.3' }),
  form({ woods: 'own', wedges: 'line' }),
];
const FIELDS: readonly Partial<Form>[] = [
  {},
  { item: 'OS-S60', sizeBy: 'layers', layers: '1' },
  { holdBy: 'target', target: 'D4' },
  { holdBy: 'nothing', sizeBy: 'diameter', diameter: '0.92' },
];

const shown = (plan: ClubPlan) => {
  const { row, item, layers, hold, heldReading, readingGripped, gapPoints, remedy, readingAfter, verdictAfter } = plan;
  return { row, item, layers, hold, heldReading, readingGripped, gapPoints, remedy, readingAfter, verdictAfter };
};

test.each(DEMO_JOBS)('in the demo’s %s the plan of what was taken over is the plan that was shown', async (job) => {
  for (const fields of FIELDS) {
    const state = await demoPane(job, fields);
    const { concerned } = planOf(state);
    for (const way of WAYS) {
      const model = evenModel(concerned, way);
      if (!model.taken.size) continue;
      const taken = after(state, { on: 'take', from: 'even', perClub: model.taken });
      const rows = new Set(concerned.clubs.map(({ row }) => row));
      const plans = planOf(taken).plan.clubs.filter(({ row }) => rows.has(row));
      expect({ fields, way: way.by, clubs: plans.map(shown) }).toEqual({
        fields,
        way: way.by,
        clubs: model.plan.clubs.map(shown),
      });
    }
  }
});

test('most of the demo’s jobs can be evened out', async () => {
  const counts = await Promise.all(
    DEMO_JOBS.map(async (job) => evenModel(planOf(await demoPane(job)).concerned, WAYS[0] ?? EMPTY).taken.size),
  );
  expect(counts.filter((count) => count > 0).length).toBeGreaterThanOrEqual(4);
});
