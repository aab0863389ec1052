import { describe, expect, test } from 'vitest';
import { asked, beginMatch } from '../../../src/pane/view/tools/listsModel';
import { connectList, disconnectList } from '../../../src/workbook/connect/connectList';
import { readList } from '../../../src/workbook/connect/lists';
import type { TableSeen } from '../../../src/workbook/port';
import { HEADINGS } from '../../../src/workbook/tables/headings';
import { undoLast } from '../../../src/workbook/undo';
import type { MemoryPort } from '../memoryPort';
import { connectedWorkshop, PLAIN, plainWorkshop } from './inventory';

const WHERE = 'Stands in';

const headings = (port: MemoryPort): TableSeen => port.tableSeen('Headings') as TableSeen;

/** Where each table's list stands, by Headings. */
function stands(port: MemoryPort): Record<string, unknown> {
  const { headers, rows } = headings(port);
  const filled = rows.filter(([table]) => table !== null);
  return Object.fromEntries(filled.map((row) => [row[0], row[headers.indexOf(WHERE)]]));
}

/** Stock in plain cells is connected, and a list of clubs stands beside it. */
async function stockConnected() {
  const { bare } = await connectedWorkshop(plainWorkshop, PLAIN);
  bare.typeTable('Bags', 'In work', [
    ['Bag number', 'Club', 'Length (in)', 'SW', 'New grip'],
    ['B-17', 'Driver', 45.5, 'D3', 'FERN-M'],
  ]);
  return bare;
}

async function connectClubs(port: MemoryPort) {
  const at = { sheet: 'In work', row: 0, column: 0, rows: 2, columns: 5 };
  const read = await readList(port, { table: 'Bags', at });
  const match = read && beginMatch(read, 'Clubs');
  if (!match) throw new Error('no match');
  return connectList(port, asked(match));
}

/** As an earlier version wrote it: without the column that says where lists stand. */
function withoutPlaces(port: MemoryPort): void {
  const { at, headers, rows } = headings(port);
  const keep = headers.map((_, i) => i).filter((i) => headers[i] !== WHERE);
  const cells = [headers, ...rows].map((row) => keep.map((i) => row[i] ?? null));
  port.deleteSheet('Headings');
  port.typeTable('Headings', at.sheet, cells);
}

describe('where lists stand, on the sheet Headings', () => {
  test('is as it is by then for all of them, once Headings is written again', async () => {
    const port = await stockConnected();
    expect(stands(port)).toEqual({ Stock: 'Lager!A3:I3' });
    port.insertRows('Lager', 0, 2);
    await connectClubs(port);
    expect(stands(port)).toEqual({ Stock: 'Lager!A5:I5', Clubs: "'In work'!A1:E1" });
    port.insertRows('Lager', 0, 1);
    await disconnectList(port, 'Clubs');
    expect(stands(port)).toEqual({ Stock: 'Lager!A6:I6' });
    await undoLast(port);
    expect(stands(port)).toEqual({ Stock: 'Lager!A5:I5', Clubs: "'In work'!A1:E1" });
  });

  test('comes into workbooks that were connected before it was written down, and goes with Undo', async () => {
    const port = await stockConnected();
    withoutPlaces(port);
    const before = headings(port);
    expect(await connectClubs(port)).toMatchObject({ done: true });
    expect(headings(port).headers).toEqual([...before.headers, WHERE]);
    expect(stands(port)).toEqual({ Stock: 'Lager!A3:I3', Clubs: "'In work'!A1:E1" });
    const end = await undoLast(port);
    expect(end).toMatchObject({ done: true, reverted: { left: [] } });
    expect(headings(port).headers).toEqual(before.headers);
    expect(stands(port)).toEqual({ Stock: undefined });
  });

  test('stays away where something of the owner’s stands beside the table; the list is connected all the same', async () => {
    const port = await stockConnected();
    withoutPlaces(port);
    port.type('Headings', 2, HEADINGS.columns.length - 1, 'mine');
    expect(await connectClubs(port)).toMatchObject({ done: true });
    expect(headings(port).headers).not.toContain(WHERE);
    expect(port.shows('Headings', 2, HEADINGS.columns.length - 1)).toBe('mine');
  });

  test('of a list that is gone stays what it was', async () => {
    const port = await stockConnected();
    port.deleteSheet('Lager');
    await connectClubs(port);
    expect(stands(port)).toEqual({ Stock: 'Lager!A3:I3', Clubs: "'In work'!A1:E1" });
  });
});
