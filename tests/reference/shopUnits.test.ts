import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { toOurs } from '../../src/workbook/connect/units';

const INCHES = { unit: 'in', header: 'Length (in)' };
const GRAMS = { unit: 'g', header: 'Mass (g)' };
const YARDS = { header: 'Roll (yd)' };

/** A shop's units by a general-purpose mathematics library that no one here wrote. */
describe('a shop’s units against mathjs', () => {
  it.each([
    ['1 mm', 'mm', INCHES, 'inch'],
    ['1 cm', 'cm', INCHES, 'inch'],
    ['1 m', 'm', INCHES, 'inch'],
    ['1 ft', 'ft', INCHES, 'inch'],
    ['1 yd', 'yd', INCHES, 'inch'],
    ['1 mil', 'thou', INCHES, 'inch'],
    ['1 m', 'm', YARDS, 'yard'],
    ['1 ft', 'ft', YARDS, 'yard'],
    ['1 oz', 'oz', GRAMS, 'g'],
    ['1 lbm', 'lb', GRAMS, 'g'],
    ['1 kg', 'kg', GRAMS, 'g'],
  ] as const)('%s', (one, theirs, column, ours) => {
    expect(toOurs(column, theirs, 1)).toBeCloseTo(unit(one).toNumber(ours), 11);
  });

  // NIST SP 811 (2008), appendix B.8
  it.each([
    [INCHES, 'mm', 25.4, 1],
    [GRAMS, 'oz', 1, 28.349523125],
    [GRAMS, 'lb', 1, 453.59237],
    [YARDS, 'm', 0.9144, 1],
  ] as const)('exactly', (column, theirs, value, ours) => {
    expect(toOurs(column, theirs, value)).toBe(ours);
  });
});
