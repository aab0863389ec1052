import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ourCell, reads, shopCell } from '../../../src/workbook/connect/cells';
import { dayOfText } from '../../../src/workbook/connect/shopDays';
import type { ShopUnit } from '../../../src/workbook/connect/types';
import { fromOurs, readQuantity, toOurs, unitsOf } from '../../../src/workbook/connect/units';
import { readDay } from '../../../src/workbook/days';
import type { Seen } from '../../../src/workbook/port';
import { CLUBS, columnOf, JOBS, STOCK, TABLES } from '../../../src/workbook/schema';

const core = columnOf(STOCK, 'core');
const mass = columnOf(STOCK, 'mass');
const length = columnOf(STOCK, 'length');

describe('a quantity as typed', () => {
  it.each([
    ['1.76 oz', 1.76, 'oz', ''],
    ['14,7 mm', 14.7, 'mm', ''],
    ['5/8"', 0.625, 'in', ''],
    ['10 1/2″', 10.5, 'in', ''],
    ['10-1/2 in.', 10.5, 'in', ''],
    ['10½', 10.5, null, ''],
    ['.580', 0.58, null, ''],
    ['−3,5 g', -3.5, 'g', ''],
    ['-1/2"', -0.5, 'in', ''],
    ['58R', 58, null, 'R'],
    ['\u200f52 g\u200e', 52, 'g', ''],
  ] as const)('%s', (text, value, unit, tail) => {
    expect(readQuantity(text)).toEqual({ value, unit, tail });
  });

  it.each(['about 50', '', 'g 50', '1/0'])('“%s” is none', (text) => {
    expect(readQuantity(text)).toBeUndefined();
  });
});

describe('a cell of the shop’s under our column', () => {
  it.each<[string, typeof core, ShopUnit, Seen, Seen]>([
    ['ounces', mass, 'oz', 1.6, 45.359237],
    ['its own unit beats the column’s', mass, 'oz', '50 g', 50],
    ['text without a unit', mass, 'oz', '1,6', 45.359237],
    ['a bore by its digits', core, null, 58, 0.58],
    ['a bore by all its digits', core, null, 600, 0.6],
    ['a bore with its profile', core, null, '58R', 0.58],
    ['a bore with its profile in words', core, null, '.600 ribbed', 0.6],
    ['a bore with the flat side of a putter grip', core, null, '.580 flat', 0.58],
    ['no such bore in millimetres', core, 'mm', 58, 58 / 25.4],
    ['an unknown tail', core, null, '58 or so', '58 or so'],
    ['a unit of another kind', mass, null, '50 mm', '50 mm'],
    ['an error', mass, 'oz', { error: '#N/A' }, { error: '#N/A' }],
    ['an error as text', mass, 'oz', '#N/A', '#N/A'],
    ['a blank', mass, 'oz', null, null],
    ['thousandths', core, 'thou', 580, 0.58],
    ['a short word', columnOf(STOCK, 'size'), null, 'Std', 'Standard'],
    ['a hand', columnOf(CLUBS, 'hand'), null, 'LH', 'Left'],
    ['our own word', columnOf(STOCK, 'size'), null, 'Jumbo', 'Jumbo'],
    ['another word', columnOf(STOCK, 'size'), null, 'Huge', 'Huge'],
    ['money with its sign', columnOf(STOCK, 'price'), null, '£1 234.50', 1234.5],
    ['money with its code', columnOf(STOCK, 'price'), null, '7,90 EUR', 7.9],
    ['money that can be two amounts', columnOf(STOCK, 'price'), null, '$1,234', '$1,234'],
    ['pieces', columnOf(STOCK, 'onHand'), null, '12 pcs', 12],
    ['per cent as a part of one', columnOf(JOBS, 'discount'), 'part', 0.1, 10],
    ['per cent as text', columnOf(JOBS, 'discount'), 'part', '10%', 10],
    ['a day', columnOf(JOBS, 'due'), null, '15 May 2026', readDay('2026-05-15') ?? null],
    ['a day that can be two', columnOf(JOBS, 'due'), null, '3/4/2026', '3/4/2026'],
    ['text', columnOf(STOCK, 'item'), null, ' 58R ', ' 58R '],
  ])('%s', (_, column, unit, cell, ours) => {
    const found = ourCell(column, unit, cell);
    if (typeof ours === 'number') expect(found).toBeCloseTo(ours, 10);
    else expect(found).toEqual(ours);
  });

  it('cannot be read where it says nothing of the kind', () => {
    expect(reads(mass, 'oz', 'about 50')).toBe(false);
    expect(reads(mass, 'oz', 52)).toBe(false);
    expect(reads(core, 'mm', 58)).toBe(false);
    expect(reads(columnOf(JOBS, 'due'), null, '3/4/2026')).toBe(false);
    expect(reads(columnOf(JOBS, 'due'), null, 12)).toBe(false);
    expect(reads(mass, 'oz', null)).toBe(true);
  });
});

describe('days as text', () => {
  it.each([
    ['15/5/2026', '2026-05-15'],
    ['5/15/2026', '2026-05-15'],
    ['15.05.26', '2026-05-15'],
    ['3.4.2026', '2026-04-03'],
    ['4/4/2026', '2026-04-04'],
    ['May 15th, 2026', '2026-05-15'],
    ['15-Sept-2026', '2026-09-15'],
    ['2026/5/15', '2026-05-15'],
  ])('%s', (text, day) => {
    expect(dayOfText(text)).toBe(readDay(day));
  });

  it('is no day where the calendar has none', () => {
    expect(['30/2/2026', '31.4.2026', '15 Mayhem 2026', 'soon'].map(dayOfText)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('a value of ours in the shop’s cell', () => {
  it.each<[string, typeof core, ShopUnit, Seen, number, string | number]>([
    ['ounces', mass, 'oz', 1.76, 52.3, 1.845],
    ['millimetres', core, 'mm', 14.7, 0.6, 15.24],
    ['as it was where nothing changed', mass, 'oz', '1.76 oz', 1.76 * 28.349523125, '1.76 oz'],
    ['with the unit behind it where it was written so', mass, null, '1.76 oz', 56.69904625, '2 oz'],
    ['with its sign', length, null, '10 1/2"', 10.25, '10.25"'],
    ['by its digits where it was written so', core, null, 58, 0.6, 60],
    ['by all its digits', core, null, 580, 0.62, 620],
    ['into a blank cell', mass, 'lb', null, 50, 0.1102],
    ['as ours', mass, null, 48, 52.3, 52.3],
  ])('%s', (_, column, unit, before, value, expected) => {
    expect(shopCell(column, unit, value, before)).toBe(expected);
  });

  const measured = TABLES.flatMap(({ columns }) => columns).filter((column) => unitsOf(column).length > 1);

  test('goes there and back unchanged, for every unit of every column', () => {
    fc.assert(
      fc.property(
        fc
          .constantFrom(...measured)
          .chain((column) => fc.tuple(fc.constant(column), fc.constantFrom(...unitsOf(column)))),
        fc.integer({ min: -10_000_000, max: 10_000_000 }),
        fc.integer({ min: 0, max: 5 }),
        ([column, unit], digits, decimals) => {
          const typed = Number((digits / 10 ** decimals).toFixed(decimals));
          expect(fromOurs(column, unit, toOurs(column, unit, typed))).toBe(typed);
          expect(shopCell(column, unit, toOurs(column, unit, typed), typed)).toBe(typed);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('once rounded it stays', () => {
    fc.assert(
      fc.property(
        fc
          .constantFrom(...measured)
          .chain((column) => fc.tuple(fc.constant(column), fc.constantFrom(...unitsOf(column)))),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        ([column, unit], value) => {
          const out = fromOurs(column, unit, value);
          expect(fromOurs(column, unit, toOurs(column, unit, out))).toBe(out);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
