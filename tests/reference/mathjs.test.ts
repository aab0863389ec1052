import { add, dot, evaluate, subtract, unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  FULCRUM_INCHES,
  GRAMS_PER_OUNCE,
  KG_CM2_PER_G_IN2,
  MM_PER_INCH,
  CM_PER_INCH,
  METRES_PER_INCH,
  POINT_GRAM_INCHES,
  STANDARD_GRAVITY,
  SQUARE_METRES_PER_SQUARE_INCH,
  balanceChange,
  clubPoints,
  lengthPoints,
  massInertia,
  massPoints,
  momentGramInches,
  readingMoment,
  tapeGrams,
} from '../../src/core/index';

/** The same conversions and moments by a general-purpose mathematics library that no one here wrote. */
describe('unit factors against mathjs', () => {
  it.each([
    ['1 inch', 'mm', MM_PER_INCH],
    ['1 inch', 'cm', CM_PER_INCH],
    ['1 inch', 'm', METRES_PER_INCH],
    ['1 oz', 'g', GRAMS_PER_OUNCE],
    ['1 inch^2', 'm^2', SQUARE_METRES_PER_SQUARE_INCH],
    ['1 g inch^2', 'kg cm^2', KG_CM2_PER_G_IN2],
    ['1.75 oz inch', 'g inch', POINT_GRAM_INCHES],
  ])('%s in %s', (from, to, expected) => {
    expect(unit(from).toNumber(to)).toBeCloseTo(expected, 10);
  });

  it('standard gravity is the force of a kilogram-force on a kilogram', () => {
    expect(unit('1 kgf').toNumber('N')).toBeCloseTo(STANDARD_GRAVITY, 10);
  });

  it('mass of a tape strip from its size and mass per area', () => {
    expect(evaluate('number(10.5 inch * 2 inch * 130 g/m^2, g)')).toBeCloseTo(tapeGrams(10.5, 2, 130), 9);
  });

  it('inertia of a grip and of a head', () => {
    for (const [grams, inches] of [
      [50, 4.2],
      [200, 45.25],
    ] as const) {
      const inertia = evaluate(`number(${grams} g * (${inches} inch)^2, kg cm^2)`);
      expect(inertia).toBeCloseTo(massInertia(grams, inches), 6);
    }
  });
});

describe('moments against mathjs', () => {
  /** A driver taken apart, invented: head, shaft, grip, two layers of tape; grams and inches from the cap. */
  const grams = [200, 58, 51, 3.5];
  const inches = [45.25, 21.3, 4.2, 5.25];
  const levers = subtract(inches, FULCRUM_INCHES) as unknown as number[];

  it('the moment of a club is the dot product of masses and levers', () => {
    const sum = grams.reduce((total, each, at) => total + momentGramInches(each, inches[at] ?? NaN), 0);
    expect(sum).toBeCloseTo(dot(grams, levers), 9);
  });

  it('a whole club reads what its parts read together', () => {
    const mass = dot(grams, [1, 1, 1, 1]);
    const balance = dot(grams, inches) / mass;
    expect(readingMoment(clubPoints(mass, balance))).toBeCloseTo(dot(grams, levers), 6);
    const parts = grams.reduce((total, each, at) => total + massPoints(each, inches[at] ?? NaN), 0);
    expect(clubPoints(mass, balance)).toBeCloseTo(parts - 92, 9);
  });

  it('a new grip is a difference of two such products', () => {
    const fitted = [200, 58, 66, 7];
    const fittedInches = [45.25, 21.3, 4.15, 5.25];
    const after = dot(fitted, subtract(fittedInches, FULCRUM_INCHES) as unknown as number[]);
    const change = balanceChange({
      oldGripGrams: 51,
      newGripGrams: 66,
      oldLayers: 2,
      newLayers: 4,
      oldBalanceInches: 4.2,
      newBalanceInches: 4.15,
      layerGrams: 1.75,
      tapedInches: 10.5,
    });
    expect(change * POINT_GRAM_INCHES).toBeCloseTo(after - dot(grams, levers), 6);
  });

  it('a longer club is the same masses with head and shaft further out', () => {
    const longer = add(inches, [0.5, 0.5, 0, 0]) as unknown as number[];
    const after = dot(grams, subtract(longer, FULCRUM_INCHES) as unknown as number[]);
    expect(lengthPoints(258, 0.5) * POINT_GRAM_INCHES).toBeCloseTo(after - dot(grams, levers), 6);
  });
});
