/**
 * Every number of the worked example on the help's page about the maths, reckoned twice: as a reader does it on paper, from the very
 * sums that stand there (by mathjs), and by the core.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  balanceChange,
  clubPoints,
  compensationGrams,
  formatReading,
  lengthPoints,
  massInertia,
  massPoints,
  outsideDiameter,
  POINT_GRAM_INCHES,
  tapeGrams,
  type Result,
} from '../../src/core/index';
import { FUNCTIONS } from '../../src/functions/implementations';

const text = readFileSync(resolve(import.meta.dirname, '../../.config/help/pages/balance.md'), 'utf8');

interface Line {
  readonly what: string;
  readonly sum: string;
  readonly result: number;
  readonly unit: string;
  readonly decimals: number;
}

const number = (words: string): number => Number(words.replace('−', '-'));

/** Rows of the page's tables: `| What | sum | result with its unit |`. */
const lines: Line[] = [...text.matchAll(/^\| (?!What +\||-)(.+?) +\| (.+?) +\| (−?[\d.]+) (.+?) +\|$/gm)].map(
  ([, what = '', sum = '', result = '', unit = '']) => ({
    what,
    sum,
    result: number(result),
    unit,
    decimals: result.split('.')[1]?.length ?? 0,
  }),
);

const onPaper = (sum: string): number =>
  evaluate(sum.replaceAll('×', '*').replaceAll('−', '-').replaceAll('²', '^2').replaceAll('√', 'sqrt')) as number;

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.issue.code);
  return result.value;
}

const before = clubPoints(425, 28.46);
const change = balanceChange({ oldGripGrams: 47, newGripGrams: 52, newLayers: 1 });
const off = massPoints(-47, 4.2);
const unsure = Math.hypot(massPoints(4, 4.2), massPoints(2, 4.2));
const finishedOff = change + massPoints(3, 37);
const seating = { gripInches: 0.9, coreInches: 0.6, seatInches: 0.61, stretch: 1 };
const size = (growth: 'volume' | 'additive'): number => value(outsideDiameter(growth, seating));

/** The same from the core, by the words of the row. */
const fromCore: Readonly<Record<string, number>> = {
  'One point, in g·in': POINT_GRAM_INCHES,
  'A0, in points of moment': -clubPoints(1, 14),
  'Moment of the club': (clubPoints(425, 28.46) - clubPoints(425, 14)) * POINT_GRAM_INCHES,
  'Reading in points': before,
  'A layer': tapeGrams(),
  'Old grip comes off': off,
  'New grip goes on': massPoints(52, 4.2),
  'One layer goes on': massPoints(tapeGrams(), 5.25),
  'All three': change,
  'It would read': before + change,
  'Grams at the head': value(compensationGrams(change, 37)),
  'What 3 g do': massPoints(3, 37),
  'It reads then': before + change + massPoints(3, 37),
  'The whole club weighs': 425 - 47 + 3 + (FUNCTIONS.GRIPMASS as (...cells: unknown[]) => number)(52, 1),
  'Old grip 4 g off': massPoints(-4, 4.2),
  'New grip 2 g off': massPoints(-2, 4.2),
  'Both together': unsure,
  'Off where the club was': finishedOff,
  'And what is not sure': finishedOff + unsure,
  'Room to the tolerance yet': 1 - finishedOff - unsure,
  'Bare reading': before + off,
  'With grip and layer': before + change,
  'What the old grip weighed': 47,
  'Where it balanced': 4.2,
  'The club without grip': 378,
  'A cap 1/16 in thicker': lengthPoints(378, 1 / 16),
  'The seat': 0.61,
  'By volume': size('volume'),
  'Every thousandth': size('additive'),
  '5 g more of grip': massInertia(5, 4.2),
  '3 g at the head': massInertia(3, 37),
};

/** What working with two digits on paper may be off: of points, each a difference of several, and in the last place of anything else. */
const slackOf = ({ unit, decimals }: Line): number => (unit === 'points' ? 0.015 : 0.6 * 10 ** -decimals);

describe('the worked example in the help', () => {
  it('is all looked at', () => {
    expect(lines.map(({ what }) => what)).toEqual(Object.keys(fromCore));
    // No row of a table escapes the pattern above.
    expect([...text.matchAll(/^\| (?!What +\||-)/gm)]).toHaveLength(lines.length);
  });

  it.each(lines)('$what: $sum', (line) => {
    const { what, sum, result, decimals } = line;
    expect(onPaper(sum).toFixed(decimals)).toBe(result.toFixed(decimals));
    expect(Math.abs((fromCore[what] ?? NaN) - result)).toBeLessThanOrEqual(slackOf(line));
  });

  it('says the readings that the core gives', () => {
    const said = [...text.matchAll(/\*\*([A-G]\d\.\d)\*\*/g)].map(([, reading]) => reading);
    const reckoned = [before, before + change, before + change + massPoints(3, 37)];
    expect(said).toEqual(reckoned.map((points) => value(formatReading(points))));
    expect(text).toContain(`reads 41.16 points, ${value(formatReading(before + off))}`);
  });

  it('is what a plan says of that club', () => {
    const header = [
      'Club',
      'Kind',
      'Length (in)',
      'Reading',
      'Club mass (g)',
      'Old grip mass (g)',
      'New grip',
      'Layers',
    ];
    const more = ['Butt (in)', 'Old cap (in)'];
    const club = ['7 iron', 'Iron', 37, before, 425, 47, 'A', 1, 0.6, 0.125];
    const stock = [
      ['Item', 'Core (in)', 'Mass (g)', 'Balance point (in)', 'Cap (in)', 'Upper diameter (in)'],
      ['A', 0.6, 52, 4.2, 0.125, 0.9],
    ];
    const plan = (FUNCTIONS.SETPLAN as (...cells: unknown[]) => unknown[][])([[...header, ...more], club], stock);
    const [heads = [], row = []] = plan;
    const at = (heading: string): unknown => row[heads.indexOf(heading)];
    expect(at('Reads now')).toBe('D1.9');
    expect(at('With new grip')).toBe('D0.6');
    expect(at('Add (g)')).toBe(3);
    expect(at('Finished')).toBe('D2.0');
    // With the other doubts, as the page says; by the two of the example alone it would be Within.
    expect(at('As finished')).toBe('Likely');
    expect(Number(at('Total mass (g)')).toFixed(2)).toBe('434.76');
    expect(Number(at('Upper from (in)')).toFixed(3)).toBe('0.907');
    expect(Number(at('Upper to (in)')).toFixed(3)).toBe('0.910');
  });

  it('gives the ways of thumb that the core gives', () => {
    expect(text).toContain('five grams more of grip are about a point less');
    expect(massPoints(5, 4.2)).toBeCloseTo(-1, 1);
    expect(text).toContain('3.8 g for a point');
    expect(value(compensationGrams(1, 1))).toBeCloseTo(3.8, 1);
    expect(text).toContain('9.76 g of total mass');
    expect(434.76 - 425).toBeCloseTo(9.76, 6);
  });
});
