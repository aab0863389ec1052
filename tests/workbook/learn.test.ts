import { describe, expect, test } from 'vitest';
import type { Lesson } from '../../src/core/plan/types';
import { useLesson } from '../../src/workbook/learn';
import type { Seen } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { sayLesson } from '../../src/words/outcomes';
import type { MemoryPort } from './memoryPort';
import { CLUB_ROWS, workshop } from './workshop';

const LESSON: Lesson = {
  row: 1,
  club: 'Driver',
  oldItem: 'MOSS-S',
  removedGrams: 52.31,
  gripGrams: 48.76,
  balanceInches: 4.221,
  appliesTo: [2, 3],
};

function column(port: MemoryPort, header: string): Seen[] {
  const table = port.tableSeen('Clubs');
  const at = table?.headers.indexOf(header) ?? -1;
  return table?.rows.map((row) => row[at] ?? null) ?? [];
}

describe('using what a stripped club taught', () => {
  test('writes mass and balance point as like the stripped one’s into those rows, and nothing else', async () => {
    const port = await workshop();
    const clubs = port.tableSeen('Clubs');
    const end = await useLesson(port, await readShop(port), LESSON, [2, 3]);
    expect(end).toEqual({ done: true, rows: [2, 3], weighedAlready: [], cells: 6 });
    expect(column(port, 'Old grip mass (g)')).toEqual([null, 48.8, 48.8, null, null]);
    expect(column(port, 'Old balance point (in)')).toEqual([null, 4.2, 4.2, null, null]);
    expect(column(port, 'Old mass from')).toEqual([null, 'Like one stripped', 'Like one stripped', null, null]);
    const changed = port
      .tableSeen('Clubs')
      ?.rows.flatMap((row, i) => row.filter((cell, j) => cell !== clubs?.rows[i]?.[j]));
    expect(changed?.length).toBe(6);
    expect(sayLesson(end)).toBe('Old grip written as like the stripped one for 2 clubs.');
  });

  test('leaves a grip that was weighed already', async () => {
    const port = await workshop();
    port.fillTable('Clubs', [{}, { 'Old grip mass (g)': 50.5, 'Old mass from': 'Weighed' }]);
    const end = await useLesson(port, await readShop(port), LESSON, [2, 3]);
    expect(end).toMatchObject({ rows: [3], weighedAlready: [2] });
    expect(column(port, 'Old grip mass (g)')).toEqual([null, 50.5, 48.8, null, null]);
    expect(sayLesson(end)).toContain('1 club weighed already kept its own');
  });

  test('can be taken back, and leaves plans where they are', async () => {
    const port = await workshop();
    await port.remember('setwright.plansBefore', 'something older');
    const plans = port.setting('setwright.plans');
    const before = port.content();
    await useLesson(port, await readShop(port), LESSON, [2, 3]);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { restored: 6, left: [] } });
    expect(port.content()).toEqual(before);
    expect(port.setting('setwright.plans')).toBe(plans);
  });

  test('is taken back from the clubs that got it, after they changed places', async () => {
    const port = await workshop();
    port.fillTable('Clubs', [{}, { 'Old grip mass (g)': 46 }, { 'Old grip mass (g)': 44 }]);
    const at = port.tableSeen('Clubs')?.at.columns ?? 0;
    await useLesson(port, await readShop(port), LESSON, [2, 3]);
    const rows = port.tableSeen('Clubs')?.rows ?? [];
    port.typeRows('Clubs', 2, 0, [(rows[2] ?? []).slice(0, at), (rows[1] ?? []).slice(0, at)]);
    expect(column(port, 'Club').slice(1, 3)).toEqual(['Pitching wedge', '7 iron']);
    expect(await undoLast(port)).toMatchObject({ reverted: { restored: 6, left: [], notFound: [] } });
    expect(column(port, 'Old grip mass (g)').slice(1, 3)).toEqual([44, 46]);
  });

  test('is not written into clubs that moved, nor over a formula unasked', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const at = port.tableSeen('Clubs')?.headers.indexOf('Old grip mass (g)') ?? -1;
    port.type('Clubs', 2, at, { formula: '=Z9' });
    const asked = await useLesson(port, shop, LESSON, [2]);
    expect(asked).toMatchObject({ done: false, reason: 'occupied', cells: ['Clubs!U3'] });
    const agreed = 'inTheWay' in asked ? asked.inTheWay : null;
    expect(await useLesson(port, shop, LESSON, [2], agreed)).toMatchObject({ done: true });
    port.fillTable('Clubs', [...CLUB_ROWS].reverse());
    expect(await useLesson(port, shop, LESSON, [3, 2])).toEqual({ done: false, reason: 'clubsMoved' });
  });

  test('names a missing table or column', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    port.type('Clubs', 0, port.tableSeen('Clubs')?.headers.indexOf('Old mass from') ?? -1, 'x');
    const end = await useLesson(port, shop, LESSON, [2]);
    expect(end).toEqual({ done: false, reason: 'columnMissing', table: 'Clubs', headers: ['Old mass from'] });
    port.deleteSheet('Clubs');
    expect(await useLesson(port, shop, LESSON, [2])).toEqual({ done: false, reason: 'tableMissing', table: 'Clubs' });
  });
});
