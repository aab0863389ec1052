/** What is taken over from a screen: the plan then shows what the screen showed, whatever stood in the fields before. */
import { describe, expect, test } from 'vitest';
import {
  compareGrips,
  plansOfTried,
  solveSet,
  type Club,
  type ClubPlan,
  type PlanInput,
  type SolveRequest,
} from '../../src/core/index';
import { takenOf, takenOfSolved } from '../../src/pane/state/compareModel';
import { EMPTY_FORM, type Form } from '../../src/pane/state/form';
import type { PaneState } from '../../src/pane/state/paneState';
import { assign } from '../../src/workbook/assignment';
import { after, DEMO_JOBS, demoPane, planOf } from './demoPane';

/** What a screen shows of a club, and what the plan has to show once it was taken over. */
const shown = ({ row, item, layers, readingGripped, readingAfter, remedy, upper, hold, heldReading }: ClubPlan) => ({
  row,
  item,
  layers,
  readingGripped,
  readingAfter,
  remedy,
  upper,
  hold,
  heldReading,
});
const plansOf = (state: PaneState, { clubs }: PlanInput): ClubPlan[] => {
  const concerned = new Set(clubs.map(({ row }: Club) => row));
  return planOf(state).plan.clubs.filter(({ row }) => concerned.has(row));
};

/** Fields as they may stand when a grip is compared: as in the sheet, and each way of choosing a size. */
const FORMS: readonly Partial<Form>[] = [
  {},
  { sizeBy: 'diameter', diameter: '0.885' },
  { sizeBy: 'diameter', diameter: '0.92' },
  { sizeBy: 'layers', layers: '0' },
  { sizeBy: 'layers', layers: '3' },
  { item: 'OS-S60', sizeBy: 'diameter', diameter: '0.93', holdBy: 'target', target: 'D2' },
  { item: 'OS-S60', lowerLayers: '1', holdBy: 'nothing', tolerance: '0.5' },
];

const CASES = DEMO_JOBS.flatMap((job) => FORMS.map((form) => ({ job, form, says: JSON.stringify(form) })));

/** Takes every candidate over, one after the other, each from the same fields. */
function expectEachAsShown(state: PaneState): number {
  const { concerned } = planOf(state);
  const { tried } = compareGrips(concerned, {});
  for (const each of tried) {
    const taken = after(state, { on: 'take', from: 'compare', ...takenOf(each, concerned, state.form) });
    expect(taken.screen).toBe('plan');
    expect({ key: each.candidate.key, clubs: plansOf(taken, concerned).map(shown) }).toEqual({
      key: each.candidate.key,
      clubs: plansOfTried(each, concerned).map(shown),
    });
  }
  return tried.length;
}

const solved = (concerned: PlanInput, change: Partial<SolveRequest> = {}) =>
  solveSet(
    {
      input: concerned,
      shortlist: undefined,
      aims: ['weight', 'deviation', 'price'],
      sizesDiffer: 'byClub',
      ...change,
    },
    assign,
  );

describe.each(CASES)('of job $job with $says', ({ job, form }) => {
  test('a grip that was compared is planned as it was tried', async () => {
    expect(expectEachAsShown(await demoPane(job, form))).toBeGreaterThan(1);
  });

  test('the best grip for each club is planned as it was found', async () => {
    const state = await demoPane(job, form);
    const { concerned } = planOf(state);
    for (const sizesDiffer of ['never', 'byGroup', 'byClub'] as const) {
      const solution = solved(concerned, { sizesDiffer });
      if (!solution.solved) continue;
      const taken = after(state, { on: 'take', from: 'compare', perClub: takenOfSolved(solution, concerned) });
      expect(plansOf(taken, concerned).map(shown)).toEqual(solution.choices.map(({ plan }) => shown(plan)));
    }
  });

  test('a grip compared after the best for each club was taken over is planned as it was tried', async () => {
    const state = await demoPane(job, form);
    const { concerned } = planOf(state);
    const solution = solved(concerned);
    if (!solution.solved) return;
    expectEachAsShown(after(state, { on: 'take', from: 'compare', perClub: takenOfSolved(solution, concerned) }));
  });

  test('a grip compared after weighed ones were placed keeps the masses only where it is that grip', async () => {
    const state = await demoPane(job, form);
    const { concerned } = planOf(state);
    const masses = new Map(concerned.clubs.map(({ row }, at) => [row, { newMass: 50 + at / 4 }]));
    expectEachAsShown(after(state, { on: 'take', from: 'place', perClub: masses }));
  });
});

test('layers that stand beside a target diameter in the sheet give way to those that were found', async () => {
  const state = await demoPane('R-205', {}, (port) => {
    port.fillTable(
      'Clubs',
      port.tableSeen('Clubs')!.rows.map(() => ({ Layers: 2, 'Target diameter (in)': 0.93 })),
    );
  });
  const { concerned } = planOf(state);
  expect(concerned.clubs.every(({ layers, targetInches }) => layers === 2 && targetInches === 0.93)).toBe(true);
  expect(expectEachAsShown(state)).toBeGreaterThan(1);
});

test('with targets, some of the demo’s sets are solved', async () => {
  const outcomes = await Promise.all(
    CASES.map(async ({ job, form }) => solved(planOf(await demoPane(job, form)).concerned).solved),
  );
  expect(outcomes.filter(Boolean).length).toBeGreaterThan(CASES.length / 3);
});

test('one grip for all stands in the field; what differs by club does not', async () => {
  const state = await demoPane('R-201', { sizeBy: 'diameter', diameter: '0.92' });
  const { concerned } = planOf(state);
  const { tried } = compareGrips(concerned, { items: ['OS-S60'] });
  const taken = after(state, { on: 'take', from: 'compare', ...takenOf(tried[0]!, concerned, state.form) });
  expect(taken.form).toEqual({ ...EMPTY_FORM, item: 'OS-S60', sizeBy: 'diameter', diameter: '0.92' });
});
