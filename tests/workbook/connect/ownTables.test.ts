import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { demoTables } from '../../../src/tryout/demo/demoTables';
import { bestTable, likenessOf } from '../../../src/workbook/connect/likeness';
import { presented } from './presented';
import { TABLES } from '../../../src/workbook/schema';
import type { Seen } from '../../../src/workbook/port';

const tables = TABLES.map((schema) => ({ name: schema.name, schema, rows: demoTables[schema.name] as Seen[][] }));

describe.each(tables)('our own table $name', ({ name, schema, rows }) => {
  const likeness = likenessOf(schema, rows);

  it('is matched to itself, column by column, by its headings', () => {
    expect(likeness.proposals.map(({ key, position, why }) => [key, position, why])).toEqual(
      schema.columns.map(({ key }, at) => [key, at, 'heading']),
    );
    expect(likeness.warnings).toEqual([]);
    // tables of rows to come have blank ones
    const lastFilled = rows.findLastIndex((cells) =>
      cells.some((cell) => cell !== null && cell !== undefined && cell !== ''),
    );
    expect([likeness.headerRow, likeness.lastRow]).toEqual([0, lastFilled]);
  });

  it('is told from the others', () => {
    expect(bestTable(rows)?.table).toBe(name);
  });

  it('is left as it is', () => {
    const matches = likeness.proposals.map(({ key, position, unit }) => ({
      key,
      unit,
      position: position ?? -1,
      heading: schema.columns[position ?? -1]?.header ?? '',
    }));
    expect(presented(schema, matches, rows.slice(1))).toEqual(rows.map((cells) => cells.map((cell) => cell ?? null)));
  });
});

describe('what is no table of ours', () => {
  it.each<[string, Seen[][]]>([
    [
      'a telephone list',
      [
        ['Name', 'Phone', 'Mail', 'Birthday'],
        ['Ines Halloran', '555 0101', 'ines@example.org', 29000],
        ['Zoë Tarn', '555 0102', 'zoe@example.org', 31000],
      ],
    ],
    [
      'tee times',
      [
        ['Time', 'Party', 'Holes', 'Cart', 'Fee'],
        ['07:10', 'Halloran', 18, 'yes', 48],
        ['07:20', 'Tarn', 9, 'no', 30],
      ],
    ],
    [
      'numbers alone',
      [
        [1, 2, 3],
        [4, 5, 6],
        [7, 8, 9],
      ],
    ],
    ['nothing', []],
    [
      'blanks',
      [
        [null, null],
        [null, null],
      ],
    ],
    ['one cell', [['Grips']]],
  ])('%s', (_, rows) => {
    expect(bestTable(rows)).toBeNull();
  });
});

const seen: fc.Arbitrary<Seen> = fc.oneof(
  fc.constantFrom<Seen>(
    null,
    '',
    ' ',
    'Item',
    'Wt (oz)',
    'Core',
    'Total',
    'D2',
    '58R',
    '1/0',
    '#N/A',
    '=1+1',
    true,
    'in',
    'Ø mm',
  ),
  fc.constant<Seen>({ error: '#REF!' }),
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.double(),
);

test('whatever stands in a range, no column is taken twice, and nothing outside it or without a heading is', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(seen, { maxLength: 7 }), { maxLength: 9 }),
      fc.constantFrom(...TABLES),
      (rows, schema) => {
        const { proposals, unknown, headerRow, lastRow, headings } = likenessOf(schema, rows);
        const taken = proposals.flatMap(({ position }) => (position === null ? [] : [position]));
        expect(new Set([...taken, ...unknown]).size).toBe(taken.length + unknown.length);
        for (const position of taken) expect(headings[position]).toBeTruthy();
        for (const { sureness } of proposals) expect(sureness >= 0 && sureness <= 1).toBe(true);
        expect(lastRow >= headerRow && lastRow < Math.max(1, rows.length)).toBe(true);
      },
    ),
    { numRuns: 500 },
  );
});
