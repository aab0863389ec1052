import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoTables } from '../../../src/tryout/demo/demoTables';
import { likenessOf } from '../../../src/workbook/connect/likeness';
import { presented } from './presented';
import type { ShopUnit } from '../../../src/workbook/connect/types';
import { unitsOf } from '../../../src/workbook/connect/units';
import { planCells } from '../../../src/workbook/planCells';
import { planTables } from '../../../src/workbook/planTables';
import type { Seen } from '../../../src/workbook/port';
import { CLUBS, STOCK, type TableSchema } from '../../../src/workbook/schema';

type Table = readonly (readonly Seen[])[];

const tableOf = (name: string): Table => (demoTables[name] ?? []).map((cells) => cells.map((cell) => cell ?? null));

const OWN = { clubs: tableOf('Clubs'), stock: tableOf('Stock') };
const REST = {
  settings: tableOf('Settings'),
  tape: tableOf('Tape'),
  weights: tableOf('Weights'),
};

function planOf(clubs: Table, stock: Table): unknown[][] {
  const planned = planTables({ clubs, stock, ...REST });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issue));
  // messages name rows by our headings on both sides
  return planCells(planned.value.plan, planned.value.problems);
}

/** How a shop writes a unit, and how much of ours one of it is: NIST SP 811, appendix B.8. */
const UNITS: Readonly<Record<string, readonly [string, number]>> = {
  in: ['in', 1],
  mm: ['mm', 1 / 25.4],
  cm: ['cm', 1 / 2.54],
  thou: ['thou', 0.001],
  g: ['g', 1],
  oz: ['oz', 28.349523125],
  lb: ['lbs', 453.59237],
  kg: ['kg', 1000],
};

/** The same table as a shop may keep it: a name of each column's, its unit, the order, columns of no use and a title are drawn. */
function keptBy(schema: TableSchema, rows: Table) {
  const called = schema.columns.map((column) => {
    const bare = column.header.replace(/\s*\([^)]*\)$/, '');
    const names = [bare, ...column.synonyms.filter((name) => isOnlyOne(schema, name))];
    return fc.record({
      name: fc.constantFrom(...names),
      unit: fc.constantFrom(...unitsOf(column).filter((unit) => unit === null || unit in UNITS)),
    });
  });
  const at = schema.columns.map((_, index) => index);
  return fc
    .record({
      called: fc.tuple(...called),
      order: fc.shuffledSubarray(at, { minLength: at.length }),
      idle: fc.nat(at.length),
      title: fc.boolean(),
    })
    .map((drawn) => ({ ...drawn, rows: written(schema, rows, drawn) }));
}

/** A word that two columns are called by is no name to tell them apart. */
function isOnlyOne(schema: TableSchema, name: string): boolean {
  const plain = (text: string): string => text.toLowerCase().replace(/\s*\([^)]*\)$/, '');
  return (
    schema.columns.filter(
      (column) => plain(column.header) === plain(name) || column.synonyms.some((each) => each === name),
    ).length === 1
  );
}

function written(
  schema: TableSchema,
  rows: Table,
  {
    called,
    order,
    idle,
    title,
  }: { called: readonly { name: string; unit: ShopUnit }[]; order: readonly number[]; idle: number; title: boolean },
): Seen[][] {
  const heading = (at: number): string => {
    const { name = '', unit = null } = called[at] ?? {};
    const ours = schema.columns[at]?.unit;
    return unit !== null ? `${name} (${UNITS[unit]?.[0] ?? unit})` : ours ? `${name} (${ours})` : name;
  };
  const cell = (at: number, value: Seen): Seen => {
    const [, ours = 1] = UNITS[called[at]?.unit ?? ''] ?? [];
    return typeof value === 'number' ? value / ours : value;
  };
  const lines = rows.map((cells, line) => {
    const made: Seen[] = order.map((at) => (line === 0 ? heading(at) : cell(at, cells[at] ?? null)));
    made.splice(idle, 0, line === 0 ? 'Drawer' : line % 9);
    return made;
  });
  return title ? [['What we keep'], [], ...lines] : lines;
}

function connected(schema: TableSchema, rows: Table): Table {
  const { headerRow, lastRow, proposals, headings } = likenessOf(schema, rows);
  const matches = proposals.flatMap(({ key, position, unit }) =>
    position === null ? [] : [{ key, position, unit, heading: headings[position] ?? '' }],
  );
  return presented(schema, matches, rows.slice(headerRow + 1, lastRow + 1));
}

/** Conversion there and back costs the last digits. */
function alike(one: unknown, other: unknown): boolean {
  if (typeof one === 'number' && typeof other === 'number') return Math.abs(one - other) < 1e-6;
  return one === other;
}

describe('a plan from a shop’s own tables', () => {
  const own = planOf(OWN.clubs, OWN.stock);

  test('there is a plan to compare with', () => {
    expect(own.length).toBe(OWN.clubs.filter((cells) => cells.some((cell) => cell !== null && cell !== '')).length);
  });

  test('is the plan from ours with the same facts', () => {
    fc.assert(
      fc.property(keptBy(CLUBS, OWN.clubs), keptBy(STOCK, OWN.stock), (clubs, stock) => {
        const plan = planOf(connected(CLUBS, clubs.rows), connected(STOCK, stock.rows));
        expect(plan.length).toBe(own.length);
        plan.forEach((cells, row) => {
          cells.forEach((cell, at) => {
            if (!alike(cell, own[row]?.[at])) expect([row, at, cell]).toEqual([row, at, own[row]?.[at]]);
          });
        });
      }),
      { numRuns: 25 },
    );
  });
});
