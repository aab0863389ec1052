import { drained } from '../../src/core/index';
import { describe, expect, test } from 'vitest';
import {
  asked,
  asConnected,
  beginMatch,
  bodyOf,
  picked,
  pickRows,
  stillNeeded,
  unreadIn,
  unused,
} from '../../src/pane/view/tools/listsModel';
import type { Match } from '../../src/pane/view/tools/listsModel';
import { listName, LISTS_WORDS, looksLike, sayConnected, sayUnread } from '../../src/pane/view/tools/listsWords';
import { connectList } from '../../src/workbook/connect/connectList';
import { readConnections } from '../../src/workbook/connect/connections';
import { findLists, listAtSelection, placesOfLists, readList } from '../../src/workbook/connect/lists';
import type { Seen, TableSeen } from '../../src/workbook/port';
import { columnOf, STOCK } from '../../src/workbook/schema';
import { matrixOf } from '../../src/workbook/shop';
import { MemoryPort } from '../workbook/memoryPort';
import { typeForeign } from '../workbook/connect/foreign';

function foreign(): MemoryPort {
  const port = new MemoryPort();
  typeForeign(port);
  return port;
}

async function matchOf(port: MemoryPort, at: number): Promise<Match> {
  const list = (await findLists(port))[at];
  const read = list && (await readList(port, list));
  const match = read && beginMatch(read, list.like ?? 'Stock');
  if (!match) throw new Error('no match');
  return match;
}

const positions = (match: Match) => Object.fromEntries([...match.picks].map(([key, { position }]) => [key, position]));

describe('the lists of a workbook', () => {
  test('are found, and told by what they hold; an empty sheet and a diary are nothing of ours', async () => {
    const lists = await findLists(foreign());
    expect(lists.map((list) => [listName(list), list.like])).toEqual([
      ["'Lager 2026'!A1:M29", 'Stock'],
      ['Bags', 'Clubs'],
      ['Diary', null],
    ]);
    expect(lists.map(looksLike)[2]).toBe('2 rows. Looks like none of the tables.');
  });

  test('take one round trip to find and one to look at, however many there are', async () => {
    const port = foreign();
    await findLists(port);
    expect(port.reads).toBe(2);
  });

  test('the selection names a table by one of its cells, and plain cells by all that are in use around it', async () => {
    const port = foreign();
    port.selected = { sheet: 'In work', row: 2, column: 1, rows: 1, columns: 1 };
    expect(await listAtSelection(port)).toMatchObject({ table: 'Bags' });
    port.selected = { sheet: 'Lager 2026', row: 9, column: 3, rows: 1, columns: 1 };
    expect(await listAtSelection(port)).toMatchObject({ table: null, at: { row: 0, rows: 29 } });
    port.selected = { sheet: 'Lager 2026', row: 2, column: 1, rows: 8, columns: 6 };
    expect(await listAtSelection(port)).toEqual({ table: null, at: port.selected });
    port.selected = { sheet: 'Sheet1', row: 0, column: 0, rows: 1, columns: 1 };
    expect(await listAtSelection(port)).toBeNull();
  });
});

describe('matching', () => {
  test('leaves the title, the headings and the sum out, and says the rest as it is read', async () => {
    const match = await matchOf(foreign(), 0);
    expect(bodyOf(match)).toHaveLength(24);
    expect(stillNeeded(match)).toEqual([]);
    expect(unused(match)).toEqual(['Where']);
    const rows = Object.fromEntries(pickRows(match).map((row) => [row.column.key, row]));
    expect(rows.core?.samples[0]).toEqual({ theirs: '.600R', ours: '0.600' });
    // 1.55 oz × 28.349523125 g
    expect(rows.mass?.samples[0]).toEqual({ theirs: '1.55', ours: '43.9' });
    expect(rows.mass?.pick.unit).toBe('oz');
    expect(rows.upperDiameter?.pick.unit).toBe('mm');
    expect(rows.length?.samples[0]).toEqual({ theirs: '10 1/2"', ours: '10.500' });
    expect(drained(unreadIn(match)).get('price')).toEqual({ count: 0, filled: 24, such: [] });
  });

  test('a wrong unit shows at once what cannot be read', async () => {
    const match = await matchOf(foreign(), 0);
    const at = match.picks.get('mass')?.position ?? null;
    const unread = drained(unreadIn(picked(match, 'mass', { position: at, unit: 'g' })));
    expect(unread.get('mass')).toMatchObject({ count: 24, filled: 24 });
    expect(unread.get('mass')?.such.length).toBe(2);
  });

  test('a heading stands for one column: picked for another, it is taken from the first', async () => {
    const match = await matchOf(foreign(), 0);
    const { item, supplier } = positions(match);
    const changed = picked(match, 'item', { position: supplier ?? null, unit: null });
    expect(positions(changed)).toMatchObject({ item: supplier, supplier: null });
    expect(stillNeeded(picked(changed, 'item', { position: null, unit: null }))).toEqual(['Item']);
    expect(item).not.toBe(supplier);
  });

  test('what was connected is there again when it is changed', async () => {
    const port = foreign();
    const match = await matchOf(port, 0);
    const less = picked(match, 'supplier', { position: null, unit: null });
    const end = await connectList(port, asked(less));
    expect(sayConnected(end)).toContain("'Lager 2026'!A4:M28 stands for Stock now, with 10 columns");
    const headings = port.tableSeen('Headings') as TableSeen;
    const read = readConnections(matrixOf(headings));
    const [connection] = read.ok ? read.value : [];
    if (!connection) throw new Error('not connected');
    const places = await placesOfLists(port, [connection.list]);
    const list = places.get(connection.list) ?? match.read.list;
    const seen = await readList(port, list);
    const again = seen && beginMatch(seen, 'Stock');
    expect(again && positions(asConnected(again, connection))).toEqual(positions(less));
  });

  test('a list that changed meanwhile is not connected', async () => {
    const port = foreign();
    const match = await matchOf(port, 0);
    port.type('Lager 2026', 3, 5, 'Mass');
    expect(await connectList(port, asked(match))).toMatchObject({ done: false, reason: 'listChanged' });
    expect(port.tableSeen('Headings')).toBeNull();
  });

  test.each([
    [
      'a sheet Headings that holds something',
      (port: MemoryPort) => port.typeTable('Mine', 'Headings', [['a'], ['b']]),
      'sheetInUse',
    ],
    [
      'a table Headings of other columns',
      (port: MemoryPort) => port.typeTable('Headings', 'X', [['a'], ['b']]),
      'otherTable',
    ],
  ] as const)('%s is left alone', async (_, make, reason) => {
    const port = foreign();
    make(port);
    const before = JSON.stringify(port.everything());
    expect(await connectList(port, asked(await matchOf(port, 0)))).toMatchObject({ done: false, reason });
    expect(JSON.stringify(port.everything())).toBe(before);
  });
});

describe('cells that cannot be what was picked', () => {
  const column = (key: string) => columnOf(STOCK, key);

  test('are told with why, and what to do', () => {
    // Bores from 0.5 to 0.75 in (`RANGES.coreInches`).
    expect(sayUnread(column('core'), null, { count: 5, filled: 5, such: [312, 427] })).toBe(
      'No cell here can be Core (in): 312 and 427 are not from 0.5 to 0.75 in. Choose another heading or unit.',
    );
    expect(sayUnread(column('size'), null, { count: 1, filled: 9, such: ['huge'] })).toMatch(
      /^1 of 9 cells cannot be Size: huge is none of .+\. Choose another heading, or correct them in the list\.$/,
    );
  });

  test('what is no number is not called one out of range', () => {
    const such = (cells: readonly Seen[]) => sayUnread(column('core'), null, { count: 1, filled: 9, such: cells });
    expect(such(['.580 tapered'])).toContain(': .580 tapered is no number. ');
    expect(such(['.580 tapered', 312])).toContain('are no number from 0.5 to 0.75 in. ');
    expect(such(['10 mm'])).toContain('10 mm is not from 0.5 to 0.75 in. ');
  });

  test('in the unit that was picked', () => {
    // 0.5 in × 25.4 mm/in = 12.7 mm; 0.75 in × 25.4 = 19.05 mm.
    expect(sayUnread(column('core'), 'mm', { count: 1, filled: 2, such: [60] })).toContain(
      '60 is not from 12.7 to 19.05 mm',
    );
  });

  test('a needed column that nobody knows by its name is explained', () => {
    expect(LISTS_WORDS.say(['Item'])).toContain('Item is the code or name by which');
    expect(LISTS_WORDS.say(['Mass (g)'])).not.toContain('code or name');
  });
});
