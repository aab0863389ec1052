import { describe, expect, test } from 'vitest';
import { parseReading } from '../../src/core/index';
import {
  changedForm,
  EMPTY_FORM,
  FIELD_RANGES,
  fitsByClub,
  readForm,
  sparingPutters,
  withPerClub,
  type Form,
} from '../../src/pane/state/form';
import type { ClubChoices } from '../../src/workbook/choices';
import { CLUBS, columnOf } from '../../src/workbook/schema';

const read = (change: Partial<Form>) => readForm({ ...EMPTY_FORM, ...change }, (text) => parseReading(text).ok);

test('fields accept what their columns in Clubs accept', () => {
  const ranges = {
    layers: 'layers',
    lowerLayers: 'lowerLayers',
    diameter: 'targetDiameter',
    tolerance: 'tolerance',
  } as const;
  for (const [field, key] of Object.entries(ranges)) {
    const { low, high } = columnOf(CLUBS, key);
    expect(FIELD_RANGES[field as keyof typeof ranges]).toEqual({ low, high });
  }
});

describe('what is chosen', () => {
  test('is nothing while every field stands as in the sheet', () => {
    expect(read({})).toEqual({ choices: {}, faults: {} });
  });

  test('is nothing where a field of another choice still holds something', () => {
    expect(read({ layers: '3', diameter: '0.9', target: 'D2' })).toEqual({ choices: {}, faults: {} });
  });

  test('is a grip, layers and a hold', () => {
    expect(read({ item: 'A-1', sizeBy: 'layers', layers: '2', holdBy: 'asArrived' }).choices).toEqual({
      newItem: 'A-1',
      layers: 2,
      targetDiameter: null,
      hold: 'As it was',
    });
  });

  test('blanks the layers where a diameter is wanted, since it counts only then', () => {
    expect(read({ sizeBy: 'diameter', diameter: '0,920' }).choices).toEqual({ layers: null, targetDiameter: 0.92 });
  });

  test('blanks the target diameter where layers are chosen, none of them too, since 0 beside a target means "find them"', () => {
    expect(read({ sizeBy: 'layers', layers: '0' }).choices).toEqual({ layers: 0, targetDiameter: null });
    expect(read({ sizeBy: 'layers', layers: 'two' }).choices).toEqual({});
  });

  test('leaves the targets of the sheet where none is given', () => {
    expect(read({ holdBy: 'target', target: ' ' })).toEqual({ choices: { hold: 'Target' }, faults: {} });
    expect(read({ holdBy: 'target', target: 'd 3,5 ' }).choices).toEqual({ hold: 'Target', target: 'd 3,5' });
  });

  test('holds tolerance and weighting', () => {
    expect(read({ tolerance: '0.5', weighting: 'Tip plug' }).choices).toEqual({
      tolerance: 0.5,
      weighting: 'Tip plug',
    });
  });
});

const entries = (choices: Readonly<Record<number, ClubChoices>>) =>
  new Map(Object.entries(choices).map(([row, each]) => [Number(row), each]));
const taken = (choices: Readonly<Record<number, ClubChoices>>, form: Partial<Form> = {}, rows = [1, 2]): Form =>
  withPerClub({ ...EMPTY_FORM, ...form }, entries(choices), 'compare', rows);

describe('what was taken over for single clubs', () => {
  const own = taken({ 1: { newItem: 'A-1', layers: 2 }, 2: { newItem: 'A-2', layers: 0 } });

  test('is chosen, by row, beside what is chosen for all', () => {
    const perClub = entries({ 1: { newItem: 'A-1', layers: 2 }, 2: { newItem: 'A-2', layers: 0 } });
    expect(read(own).choices).toEqual({ perClub });
    expect(read({ ...own, tolerance: '0.5' }).choices).toEqual({ tolerance: 0.5, perClub });
  });

  test('joins what was taken over before, the later decision first', () => {
    const both = withPerClub(own, entries({ 2: { newItem: 'B-1' }, 3: { newMass: 50.2 } }), 'place', [1, 2, 3]);
    expect(both.perClub).toEqual({
      entries: entries({ 1: { newItem: 'A-1', layers: 2 }, 2: { newItem: 'B-1', layers: 0 }, 3: { newMass: 50.2 } }),
      from: ['compare', 'place'],
    });
    expect(withPerClub(both, new Map(), 'compare', [1]).perClub?.from).toEqual(['compare', 'place']);
  });

  test('clears a field once every club has its own decision of it, and not before', () => {
    const item = { item: 'B-2' };
    expect(taken({ 1: { newItem: 'A-1' } }, item).item).toBe('B-2');
    expect(taken({ 1: { newItem: 'A-1' }, 2: { newItem: 'A-1' } }, item).item).toBe('');
    const hold = { holdBy: 'target', target: 'D2' } as const;
    const toTarget = { hold: 'Target', target: 'D3.0' };
    expect(taken({ 1: toTarget }, hold)).toMatchObject(hold);
    expect(taken({ 1: toTarget, 2: toTarget }, hold).holdBy).toBe('sheet');
    const lower = { lowerLayers: '2' };
    expect(taken({ 1: { lowerLayers: 0 }, 2: { lowerLayers: 1 } }, lower).lowerLayers).toBe('');
  });

  test('takes in that the sheet’s target diameters were not to count, where layers for all are cleared', () => {
    const size = { sizeBy: 'layers', layers: '2' } as const;
    const next = taken({ 1: { layers: 0 }, 2: { layers: 3 } }, size);
    expect(next.sizeBy).toBe('sheet');
    expect(next.perClub?.entries).toEqual(
      entries({ 1: { layers: 0, targetDiameter: null }, 2: { layers: 3, targetDiameter: null } }),
    );
  });

  test('leaves a target diameter for all that the layers were found from', () => {
    const size = { sizeBy: 'diameter', diameter: '0.92' } as const;
    expect(taken({ 1: { layers: 2 }, 2: { layers: 3 } }, size)).toMatchObject(size);
    expect(taken({ 1: { layers: 2 }, 2: { layers: 0, targetDiameter: null } }, size)).toMatchObject(size);
  });

  test('a later decision for all clubs takes back', () => {
    const rows = (form: Form) => form.perClub && Object.fromEntries(form.perClub.entries);
    const all = taken({ 1: { newItem: 'A', newMass: 50, layers: 2, hold: 'Target', target: 30 }, 2: { layers: 1 } });
    expect(rows(changedForm(all, { item: 'B' }))).toEqual({ 1: { hold: 'Target', target: 30 } });
    expect(rows(changedForm(all, { sizeBy: 'layers' }))).toEqual({
      1: { newItem: 'A', newMass: 50, hold: 'Target', target: 30 },
    });
    expect(rows(changedForm(all, { holdBy: 'nothing' }))).toEqual({
      1: { newItem: 'A', newMass: 50, layers: 2 },
      2: { layers: 1 },
    });
    expect(changedForm(taken({ 1: { layers: 1 } }), { sizeBy: 'diameter' }).perClub).toBeNull();
  });

  test('a number beside a choice takes back too, and one that does not count does not', () => {
    const partly = taken({ 1: { layers: 1, hold: 'Target', target: 30 } }, { sizeBy: 'layers', holdBy: 'target' });
    expect(changedForm(partly, { layers: '3' }).perClub?.entries.get(1)).not.toHaveProperty('layers');
    expect(changedForm(partly, { target: 'D2' }).perClub?.entries.get(1)).toEqual({ layers: 1 });
    expect(changedForm(partly, { diameter: '0.9' }).perClub).toBe(partly.perClub);
    expect(changedForm(taken({ 1: { target: 30 } }), { target: 'D2' }).perClub?.entries.size).toBe(1);
  });

  test('stays with what has nothing to do with it, and with a field that goes back to the sheet', () => {
    expect(changedForm(own, { tolerance: '1', weighting: 'Tip plug', puttersToo: true }).perClub).toBe(own.perClub);
    expect(changedForm(own, { item: '' }).perClub).toBe(own.perClub);
  });

  test('is dropped when asked', () => {
    expect(changedForm(own, { perClub: null })).toEqual(EMPTY_FORM);
  });

  test('says whether grip or size differ by club', () => {
    expect([own, taken({ 1: { newMass: 50 } }), taken({ 2: { targetDiameter: null } })].map(fitsByClub)).toEqual([
      true,
      true,
      true,
    ]);
    expect([EMPTY_FORM, taken({ 1: { hold: 'Target', target: 30 } })].map(fitsByClub)).toEqual([false, false]);
  });

  test('goes to the putter it was chosen for, and does not stand for a choice for all', () => {
    const perClub = entries({ 1: { newMass: 50 } });
    expect(sparingPutters({ perClub }, EMPTY_FORM, 1)).toEqual({ perClub });
    expect(sparingPutters({ newItem: 'A', perClub }, EMPTY_FORM, 1)).toEqual({
      newItem: 'A',
      perClub,
      exceptPutters: true,
    });
  });
});

test('layers under the lower hand are chosen as a whole number', () => {
  expect(read({ lowerLayers: ' 2 ' }).choices).toEqual({ lowerLayers: 2 });
  expect(read({ lowerLayers: '0' }).choices).toEqual({ lowerLayers: 0 });
  expect(['two', '1.5', '13'].map((lowerLayers) => read({ lowerLayers }))).toEqual(
    ['notNumber', 'notWhole', 'outOfRange'].map((fault) => ({ choices: {}, faults: { lowerLayers: fault } })),
  );
});

test('a field with a fault is left as in the sheet and named', () => {
  const sizes = ['', 'two', '1.5', '13', '-1'].map((layers) => read({ sizeBy: 'layers', layers }));
  expect(sizes.map(({ faults }) => faults.layers)).toEqual([
    'blank',
    'notNumber',
    'notWhole',
    'outOfRange',
    'outOfRange',
  ]);
  expect(sizes.every(({ choices }) => Object.keys(choices).length === 0)).toBe(true);
  expect(read({ sizeBy: 'diameter', diameter: '9' })).toEqual({ choices: {}, faults: { diameter: 'outOfRange' } });
  expect(read({ holdBy: 'target', target: 'H2' })).toEqual({ choices: {}, faults: { target: 'notReading' } });
  expect(read({ tolerance: '0' })).toEqual({ choices: {}, faults: { tolerance: 'outOfRange' } });
});

test('a choice for a set passes its putter by, unless it was asked for or there is none', () => {
  const choices = { newItem: 'A' };
  expect(sparingPutters(choices, EMPTY_FORM, 1)).toEqual({ newItem: 'A', exceptPutters: true });
  expect(sparingPutters(choices, { ...EMPTY_FORM, puttersToo: true }, 1)).toEqual(choices);
  expect(sparingPutters(choices, EMPTY_FORM, 0)).toEqual(choices);
  expect(sparingPutters({}, EMPTY_FORM, 1)).toEqual({});
});
