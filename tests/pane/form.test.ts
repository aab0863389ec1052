import { describe, expect, test } from 'vitest';
import { parseReading } from '../../src/core/index';
import { EMPTY_FORM, FIELD_RANGES, readForm, sparingPutters, type Form } from '../../src/pane/state/form';
import { CLUBS, columnOf } from '../../src/workbook/schema';

const read = (change: Partial<Form>) => readForm({ ...EMPTY_FORM, ...change }, (text) => parseReading(text).ok);

test('fields accept what their columns in Clubs accept', () => {
  const ranges = { layers: 'layers', diameter: 'targetDiameter', tolerance: 'tolerance' } as const;
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
