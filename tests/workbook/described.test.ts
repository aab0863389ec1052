import { expect, test } from 'vitest';
import { describedBy } from '../../src/workbook/described';
import { readPrices } from '../../src/workbook/readMoney';

const told = (row: Readonly<Record<string, string>>) => describedBy((key) => row[key]);

test('a grip is called by its description, else by its model, and not twice by its code', () => {
  expect(told({ item: 'QB-02', description: 'Soft, red', model: 'Heron' })).toBe('Soft, red');
  expect(told({ item: 'QB-02', model: 'Heron' })).toBe('Heron');
  expect(told({ item: 'Heron', model: ' heron ' })).toBeUndefined();
  expect(told({ item: 'QB-02' })).toBeUndefined();
});

test('a quote names a grip of a list that has models and no descriptions', () => {
  const matrix = [
    ['Item', 'Model', 'Core (in)', 'Mass (g)', 'Price'],
    ['QB-02', 'Heron Soft Mid', 0.58, 50, 10.5],
  ];
  const { value } = readPrices({ matrix, headerRow: 1 });
  expect(value.map(({ item, description }) => [item, description])).toEqual([['QB-02', 'Heron Soft Mid']]);
});
