import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { placeGrips, type PlanInput, type WeighedGrip } from '../../src/core/index';
import { assign } from '../../src/workbook/assignment';
import { aSet, gapOf, grips, numbersFrom, squaresOf } from '../core/choose/placing/sets';
import { aGrip, valueOf } from '../core/make';

/**
 * Placings against the linear program of the assignment problem, solved by HiGHS 1.15.3 (its WebAssembly build `highs` 1.15.3), with
 * costs from plans of their own. The least of the program is the least of all placings, since its corners are whole (G. Birkhoff 1946,
 * *from memory*).
 */
const highs = await loadHighs();

/** Least total cost of pairs, each row and column in at most one, as many pairs as the shorter side has. */
function leastByProgram(costs: readonly (readonly number[])[]): number {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  const name = (row: number, column: number): string => `x${row}_${column}`;
  const term = (value: number): string => (value < 0 ? `- ${-value}` : `+ ${value}`);
  const index = (count: number): number[] => Array.from({ length: count }, (_, at) => at);
  const sum = (names: readonly string[]): string => names.join(' + ');
  const byRow = index(rows).map((row) => sum(index(columns).map((column) => name(row, column))));
  const byColumn = index(columns).map((column) => sum(index(rows).map((row) => name(row, column))));
  const program = [
    'Minimize',
    ` cost: ${costs.flatMap((line, row) => line.map((cost, column) => `${term(cost)} ${name(row, column)}`)).join('\n  ')}`,
    'Subject To',
    ...byRow.map((line, at) => ` r${at}: ${line} ${rows <= columns ? '=' : '<='} 1`),
    ...byColumn.map((line, at) => ` c${at}: ${line} ${columns <= rows ? '=' : '<='} 1`),
    'End',
  ];
  const solution = highs.solve(program.join('\n'), { presolve: 'on' });
  expect(solution.Status).toBe('Optimal');
  return solution.ObjectiveValue;
}

function randomSet(clubs: number, count: number, seed: number): { input: PlanInput; weighed: WeighedGrip[] } {
  const from = numbersFrom(seed);
  const input = aSet(
    Array.from({ length: clubs }, () => ({
      reading: from(28, 36),
      target: from(0, 1) < 0.5 ? from(28, 36) : undefined,
      oldGripGrams: from(44, 58),
      oldCapInches: from(0.1, 0.15),
      massGrams: from(380, 470),
    })),
    { stock: [aGrip({ gripGrams: 51 })] },
  );
  return { input, weighed: grips(...Array.from({ length: count }, () => Math.round(from(450, 570)) / 10)) };
}

describe('a placing has the least sum of squares that a linear program finds', () => {
  test.each([
    [20, 20, 1],
    [30, 30, 2],
    [40, 40, 3],
    [60, 60, 4],
    [20, 45, 5],
    [45, 20, 6],
    [60, 30, 7],
  ])('%i clubs, %i grips', (clubs, count, seed) => {
    const { input, weighed } = randomSet(clubs, count, seed);
    const without = input.clubs.map((_, at) => (gapOf(input, at, undefined) ?? NaN) ** 2);
    const gains = input.clubs.map((_, at) =>
      weighed.map(({ grams }) => (gapOf(input, at, grams) ?? NaN) ** 2 - (without[at] ?? NaN)),
    );
    const least = without.reduce((sum, each) => sum + each, 0) + leastByProgram(gains);
    const { placed } = valueOf(placeGrips(input, weighed, assign));
    const ours = squaresOf(
      input,
      placed.map(({ grip }) => grip?.grams),
    );
    expect(Math.abs(ours / least - 1)).toBeLessThan(1e-6);
  });
});

/** The library itself, on costs that no set would have. */
describe('pairs have the least cost that a linear program finds', () => {
  test.each([
    [20, 20],
    [25, 40],
    [40, 25],
    [50, 50],
  ])('%i × %i of any costs, negative ones among them', (rows, columns) => {
    const from = numbersFrom(rows * 1000 + columns);
    const costs = Array.from({ length: rows }, () =>
      Array.from({ length: columns }, () => Math.round(from(-5000, 9000))),
    );
    const pairs = assign(costs);
    expect(pairs).toHaveLength(Math.min(rows, columns));
    expect(new Set(pairs.map(([row]) => row)).size).toBe(pairs.length);
    expect(new Set(pairs.map(([, column]) => column)).size).toBe(pairs.length);
    const total = pairs.reduce((sum, [row, column]) => sum + (costs[row]?.[column] ?? NaN), 0);
    expect(total).toBeCloseTo(leastByProgram(costs), 6);
    const whole = assign(costs.map((line) => line.map(BigInt)));
    expect(whole.reduce((sum, [row, column]) => sum + (costs[row]?.[column] ?? NaN), 0)).toBe(total);
  });

  test('an empty matrix has none', () => {
    expect(assign<number>([])).toEqual([]);
    expect(assign<number>([[], []])).toEqual([]);
  });
});
