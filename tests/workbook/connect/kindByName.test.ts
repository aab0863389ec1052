import { describe, expect, test } from 'vitest';
import { seenOf } from '../../../src/pane/state/lookAt';
import { chosenCells } from '../../../src/workbook/choices';
import { kindCalled } from '../../../src/workbook/connect/kindByName';
import { presentedCells } from '../../../src/workbook/connect/standIn';
import { planTables } from '../../../src/workbook/planTables';
import type { Seen } from '../../../src/workbook/port';
import { CLUBS } from '../../../src/workbook/schema';
import { readShop } from '../../../src/workbook/shop';
import { MemoryPort } from '../memoryPort';
import { connectedClubs, plannedJob } from './rack';

const HEADINGS = ['Job', 'Club', 'Length (in)', 'Butt (in)', 'Reading', 'Club mass (g)', 'Old grip', 'New grip'];
const ROWS: readonly (readonly Seen[])[] = [
  ['B7', '7 iron', 37, 0.6, 'D2', 415, 'MOSS-S', 'FERN-M'],
  ['B7', 'Putter', 34, 0.58, 'E1', 520, 'MOSS-S', 'FERN-M'],
  ['B7', 'the long one', 45, 0.6, 'D2', 310, 'MOSS-S', 'FERN-M'],
];

describe('what a club is called', () => {
  test.each([
    ['Putter', 'Putter'],
    ['putter (34 in)', 'Putter'],
    ['Junior 7 iron', 'Junior'],
    ['7', 'Iron'],
    ['3w', 'Wood'],
    ['Sand wedge', 'Wedge'],
    ['Driver', 'Driver'],
    ['the long one', undefined],
    ['no putter', undefined],
    ['driver and putter', undefined],
    ['', undefined],
  ])('%s', (name, kind) => {
    expect(kindCalled(name)).toBe(kind);
  });
});

async function connected(headings: readonly Seen[], rows: readonly (readonly Seen[])[]) {
  const bare = new MemoryPort();
  bare.typeTable('Bags', 'In work', [headings, ...rows]);
  const at = { sheet: 'In work', row: 0, column: 0, rows: rows.length + 1, columns: headings.length };
  return connectedClubs(bare, { table: 'Bags', at });
}

async function kindsAndHolds(port: Parameters<typeof readShop>[0]) {
  const planned = await plannedJob(port, 'B7');
  return planned.ok ? planned.value.plan.clubs.map(({ kind, hold }) => [kind, hold]) : planned;
}

describe('clubs in a list without a heading for Kind', () => {
  test('a putter is held at nothing, an iron at what it read as it arrived; a name that says nothing is left open', async () => {
    const { bare, port } = await connected(HEADINGS, ROWS);
    expect(await kindsAndHolds(port)).toEqual([
      ['iron', 'asArrived'],
      ['putter', 'nothing'],
      [undefined, 'asArrived'],
    ]);
    const shop = await readShop(port);
    expect(seenOf(shop).putterRows).toEqual([2]);
    // a grip for the set does not go onto its putter
    const cells = chosenCells(shop.matrices.Clubs ?? [], [1, 2, 3], { newItem: 'REED-L', exceptPutters: true });
    expect(cells.map(({ row }) => row)).toEqual([1, 3]);
    expect(bare.shows('In work', 0, HEADINGS.length)).toBeNull();
  });

  test('worksheet functions read them alike', () => {
    const columns = HEADINGS.map((heading, position) => {
      const key = CLUBS.columns.find(({ header }) => header === heading)?.key ?? '';
      return { key, heading, position, unit: null };
    });
    const cells = presentedCells({ schema: CLUBS, list: 'Bags', columns }, [HEADINGS, ...ROWS]);
    const planned = cells.ok ? planTables({ clubs: cells.value, job: 'B7' }) : cells;
    expect(planned.ok && planned.value.plan.clubs.map(({ hold }) => hold)).toEqual([
      'asArrived',
      'nothing',
      'asArrived',
    ]);
  });

  test('a heading for Kind says it alone', async () => {
    const { port } = await connected(
      [...HEADINGS, 'Kind'],
      ROWS.map((row) => [...row, row[1] === 'Putter' ? null : 'Iron']),
    );
    expect(await kindsAndHolds(port)).toEqual([
      ['iron', 'asArrived'],
      [undefined, 'asArrived'],
      ['iron', 'asArrived'],
    ]);
  });
});
