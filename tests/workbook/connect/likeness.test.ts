import { describe, expect, it } from 'vitest';
import { bestTable, likenessOf } from '../../../src/workbook/connect/likeness';
import { TABLES } from '../../../src/workbook/schema';
import { INVENTORIES } from './inventories';

const schemaNamed = (name: string) => TABLES.find((table) => table.name === name) ?? TABLES[0]!;

describe.each(INVENTORIES)('$what', ({ table, rows, headerRow, lastRow, found, unknown, warned, toBeTold }) => {
  const likeness = likenessOf(schemaNamed(table), rows);

  it('is known by its headings and its rows', () => {
    expect([likeness.headerRow, likeness.lastRow]).toEqual([headerRow, lastRow]);
  });

  it('has these columns and no others', () => {
    const proposed = likeness.proposals.filter(({ position }) => position !== null);
    expect(Object.fromEntries(proposed.map(({ key, position, unit }) => [key, [position, unit]]))).toEqual(found);
    expect(likeness.unknown).toEqual(unknown);
  });

  it('warns of what a person should look at', () => {
    expect(likeness.warnings.map(({ warning }) => warning).sort()).toEqual([...warned].sort());
  });

  it('is told from our other tables', () => {
    expect(bestTable(rows)?.table).toBe(toBeTold ? undefined : table);
  });
});
