import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { drained } from '../../../src/core/index';
import { likenessOf } from '../../../src/workbook/connect/likeness';
import { countUnread } from '../../../src/workbook/connect/unread';
import { presented } from './presented';
import type { ColumnMatch, Likeness, ShopUnit } from '../../../src/workbook/connect/types';
import { fromOurs } from '../../../src/workbook/connect/units';
import type { Seen } from '../../../src/workbook/port';
import { readTable } from '../../../src/workbook/records';
import { columnOf, STOCK } from '../../../src/workbook/schema';
import { METRIC, TYPED } from './inventories';

function matchesOf({ proposals, headings }: Likeness): ColumnMatch[] {
  return proposals.flatMap(({ key, position, unit }) =>
    position === null ? [] : [{ key, position, unit, heading: headings[position] ?? '' }],
  );
}

function recordsOf(matrix: readonly (readonly Seen[])[]): Record<string, unknown>[] {
  const read = readTable(STOCK, matrix);
  if (!read.ok) throw new Error(read.issue.code);
  return read.value.rows.map(({ values }) => Object.fromEntries(values));
}

describe('a shop’s rows as ours', () => {
  it('stand under our headings, in our order and our units', () => {
    const likeness = likenessOf(STOCK, METRIC.rows);
    const [header, first] = presented(STOCK, matchesOf(likeness), METRIC.rows.slice(1));
    expect(header).toEqual([
      ...['Item', 'Description', 'Core (in)', 'Mass (g)', 'Upper diameter (in)', 'Length (in)', 'Price', 'On hand'],
      'Supplier',
    ]);
    expect(first).toEqual(['F-101', 'Fern Midsize', 14.7 / 25.4, 52, 23.4 / 25.4, 267 / 25.4, 7.9, 12, 'Nordholm']);
  });

  it('say how many cells cannot be read, of those that hold something', () => {
    const likeness = likenessOf(STOCK, TYPED.rows);
    const unread = drained(countUnread(STOCK, matchesOf(likeness), TYPED.rows.slice(1)));
    expect(unread.get('mass')).toEqual({ count: 1, filled: 4, such: ['about 50'] });
    expect(unread.get('core')).toEqual({ count: 0, filled: 4, such: [] });
    expect(likeness.proposals.find(({ key }) => key === 'mass')?.unread).toBe(1);
  });

  it('are counted and turned in steps that others can come between', () => {
    const rows = Array.from({ length: 1200 }, () => METRIC.rows[1] ?? []);
    const matches = matchesOf(likenessOf(STOCK, METRIC.rows));
    expect([...countUnread(STOCK, matches, rows)]).toEqual([
      { done: 500, of: 1200 },
      { done: 1000, of: 1200 },
    ]);
  });
});

/* ------------------------------------------------------------------ whatever the shop calls it */

interface Fact {
  readonly item: string;
  readonly core: number;
  readonly mass: number;
  readonly upperDiameter: number;
  readonly length: number;
  readonly price: number;
  readonly onHand: number;
}

const thousandths = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);

const fact: fc.Arbitrary<Fact> = fc.record({
  item: fc.stringMatching(/^[A-Z]{2}-[0-9]{3}$/),
  core: fc.constantFrom(0.58, 0.6, 0.62),
  mass: thousandths(26, 80),
  upperDiameter: thousandths(0.85, 1.1),
  length: thousandths(9.8, 11),
  price: fc.integer({ min: 100, max: 4000 }).map((n) => n / 100),
  onHand: fc.nat(60),
});

/** Headings that shops give each column, and the unit that its values are in; as they come, so that both the schema's names and others are among them. */
const CALLED: Readonly<Record<keyof Fact, readonly (readonly [string, ShopUnit])[]>> = {
  item: [
    ['SKU', null],
    ['Item no.', null],
    ['Part #', null],
    ['Stock number', null],
  ],
  core: [
    ['Core (in)', null],
    ['Core Ø mm', 'mm'],
    ['bore size [in]', null],
    ['Core', 'mm'],
    ['CORE', null],
  ],
  mass: [
    ['Wt (oz)', 'oz'],
    ['Weight in grams', null],
    ['Grip Wt', null],
    ['Mass/g', null],
    ['Weight – grip', 'oz'],
    ['Wieght (g)', null],
  ],
  upperDiameter: [
    ['OD', null],
    ['Outside diameter (mm)', 'mm'],
    ['Ø mm', 'mm'],
    ['Upper diam. in', null],
  ],
  length: [
    ['Grip length (mm)', 'mm'],
    ['Len [cm]', 'cm'],
    ['Length', null],
  ],
  price: [
    ['Price', null],
    ['Retail price', null],
    ['Sell', null],
  ],
  onHand: [
    ['Qty', null],
    ['On Hand', null],
    ['In stock', null],
    ['Quantities', null],
  ],
};

const KEYS = Object.keys(CALLED) as (keyof Fact)[];
const UNKNOWN = [
  ['Bin', 'A4'],
  ['Colour', 'black'],
  ['Barcode', 4012345678901],
  ['Last ordered', 46010],
] as const;

const layout = fc.record({
  called: fc.tuple(...KEYS.map((key) => fc.constantFrom(...CALLED[key]))),
  order: fc.shuffledSubarray([...KEYS, 0, 1, 2, 3], { minLength: KEYS.length + UNKNOWN.length }),
  unknown: fc.subarray([0, 1, 2, 3]),
  above: fc.nat(3),
});

describe('the same facts', () => {
  test('are found under other names, in another order, in other units, among other columns and below a title', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fact, { minLength: 6, maxLength: 14, selector: ({ item }) => item }),
        layout,
        (facts, made) => {
          const columns = made.order.filter((each) => typeof each === 'string' || made.unknown.includes(each));
          const heading = (each: keyof Fact | number): string =>
            typeof each === 'number' ? (UNKNOWN[each]?.[0] ?? '') : (made.called[KEYS.indexOf(each)]?.[0] ?? '');
          const cell = (each: keyof Fact | number, of: Fact): Seen => {
            if (typeof each === 'number') return UNKNOWN[each]?.[1] ?? null;
            const [, unit] = made.called[KEYS.indexOf(each)] ?? ['', null];
            const value = of[each];
            return typeof value === 'number' && unit !== null ? fromOurs(columnOf(STOCK, each), unit, value) : value;
          };
          const title = [['Grips of the shop'], [], ['counted in May']].slice(0, made.above);
          const rows: Seen[][] = [
            ...title,
            columns.map(heading),
            ...facts.map((each) => columns.map((column) => cell(column, each))),
          ];
          const likeness = likenessOf(STOCK, rows);
          expect(likeness.headerRow).toBe(title.length);
          const records = recordsOf(presented(STOCK, matchesOf(likeness), rows.slice(likeness.headerRow + 1)));
          expect(records.length).toBe(facts.length);
          records.forEach((record, at) => {
            for (const key of KEYS) {
              const expected = facts[at]?.[key];
              if (typeof expected === 'string') expect(record[key]).toBe(expected);
              // a shop in ounces writes three decimals, one in millimetres two
              else
                expect(Math.abs(Number(record[key] ?? 0) - (expected ?? NaN))).toBeLessThan(
                  key === 'mass' ? 0.02 : 0.001,
                );
            }
          });
        },
      ),
      { numRuns: 300 },
    );
  });
});
