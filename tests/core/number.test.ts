import { expect, it } from 'vitest';
import { plainNumber } from '../../src/core/index';

it.each([
  ['0.92', 0.92],
  ['0,92', 0.92],
  [' 2 ', 2],
  ['.5', 0.5],
  ['-1', -1],
  ['−1', -1],
  ['+3.', 3],
  ['', undefined],
  ['.', undefined],
  ['x', undefined],
  ['1.2.3', undefined],
  ['1,2,3', undefined],
  ['--1', undefined],
  ['1e3', undefined],
  ['2 in', undefined],
])('%j is plainly %s', (text, number) => {
  expect(plainNumber(text)).toBe(number);
});
