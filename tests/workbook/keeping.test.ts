import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tableKeeper } from '../../src/workbook/keeping';
import { atEase } from '../../src/workbook/pace';
import type { Seen, TableSeen } from '../../src/workbook/port';

const cell = fc.oneof(
  fc.string({ maxLength: 3 }),
  fc.integer({ min: 0, max: 3 }),
  fc.constant(null),
  fc.boolean(),
  fc.constant('#N/A').map((error): Seen => ({ error })),
);
const table = fc
  .record({ columns: fc.integer({ min: 1, max: 3 }), rows: fc.integer({ min: 1, max: 4 }), formulas: fc.boolean() })
  .chain(({ columns, rows, formulas }) =>
    fc.record({
      name: fc.constantFrom('Stock', 'List'),
      at: fc.constant({ sheet: 'S', row: 0, column: 0, rows: rows + 1, columns }),
      headers: fc.array(fc.constantFrom('Item', 'Size'), { minLength: columns, maxLength: columns }),
      rows: fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
      ...(formulas && { formulas: fc.constant([['=1', null, null].slice(0, columns)]) }),
      protected: fc.boolean(),
      filtered: fc.boolean(),
    }),
  );

const QUERIES = [{ read: 'table', table: 'Stock' }] as const;

describe('tables that are seen again', () => {
  test('are the same object where they are the same, and what is seen now where they are not', async () => {
    await fc.assert(
      fc.asyncProperty(table, table, async (one, two) => {
        const keep = tableKeeper();
        const other: TableSeen = { ...two, name: one.name };
        const first = (await keep(QUERIES, [one]))[0];
        expect(first).toBe(one);
        expect((await keep(QUERIES, [structuredClone(one)]))[0]).toBe(one);
        const next = (await keep(QUERIES, [other]))[0];
        expect(next).toEqual(other);
        // `toEqual` is the judge of whether they hold the same
        const same = JSON.stringify(sorted(one)) === JSON.stringify(sorted(other));
        expect(next === one).toBe(same);
      }),
    );
  });

  test('one cell that differs is seen', async () => {
    await fc.assert(
      fc.asyncProperty(table, fc.nat(), fc.nat(), async (one, down, across) => {
        const keep = tableKeeper();
        await keep(QUERIES, [one]);
        const rows = one.rows.map((row) => [...row]);
        const line = rows[down % rows.length] ?? [];
        line[across % line.length] = 'something else';
        expect((await keep(QUERIES, [{ ...one, rows }]))[0]).toEqual({ ...one, rows });
      }),
    );
  });

  test('what is no table is handed on as it is', async () => {
    const keep = tableKeeper();
    const sheets = [{ name: 'S', protected: false }];
    expect(await keep([{ read: 'sheets' }, { read: 'table', table: 'Stock' }], [sheets, null])).toEqual([sheets, null]);
  });
});

function sorted(value: object): unknown {
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}

test('steps taken at ease come to the same, with a rest whenever a slice of time is used up', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.integer({ min: 0, max: 30 })), async (stepMs) => {
      let [now, rested, longest, since] = [0, 0, 0, 0];
      function* steps(): Generator<void, number> {
        for (const ms of stepMs) {
          now += ms;
          longest = Math.max(longest, now - since);
          yield;
        }
        return stepMs.length;
      }
      const rest = () => {
        rested += 1;
        since = now;
        return Promise.resolve();
      };
      expect(await atEase(steps(), { now: () => now, rest, since: 0 })).toBe(stepMs.length);
      expect(longest).toBeLessThan(12 + 30);
      expect(rested).toBe(rests(stepMs));
    }),
  );
});

/** How often a slice of 12 ms, what `pace.ts` promises, is used up. */
function rests(stepMs: readonly number[]): number {
  let [used, times] = [0, 0];
  for (const ms of stepMs) {
    used += ms;
    if (used >= 12) [used, times] = [0, times + 1];
  }
  return times;
}
