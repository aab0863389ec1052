import { describe, expect, test } from 'vitest';
import { connecting } from '../../../src/workbook/connecting';
import { connectList } from '../../../src/workbook/connect/connectList';
import { asked, beginMatch } from '../../../src/pane/view/tools/listsModel';
import { readList } from '../../../src/workbook/connect/lists';
import { fillBeside } from '../../../src/workbook/fillBeside';
import { matchHeaders } from '../../../src/workbook/records';
import { CLUBS } from '../../../src/workbook/schema';
import { planTables } from '../../../src/workbook/planTables';
import { readShop } from '../../../src/workbook/shop';
import { setUp } from '../../../src/workbook/setUp';
import { undoLast } from '../../../src/workbook/undo';
import type { Seen, TableSeen } from '../../../src/workbook/port';
import { MemoryPort } from '../memoryPort';
import { CLUB_ROWS, JOB_ROWS, STOCK_ROWS, workshop } from '../workshop';
import { OUNCE } from './inventory';

const HEADINGS = [
  'Planned reading',
  'Planned verdict',
  'Weight to add (g)',
  'Weight goes',
  'Planned mass (g)',
  'Planned diameter (in)',
  'Plan notes',
];

const column = (port: MemoryPort, table: string, heading: string): Seen[] => {
  const { headers, rows } = port.tableSeen(table) as TableSeen;
  return rows.map((row) => row[headers.indexOf(heading)] ?? null);
};

async function massesOf(port: Parameters<typeof readShop>[0]): Promise<number[]> {
  const { matrices } = await readShop(port);
  const { Clubs: clubs, Stock: stock, Settings: settings, Weights: weights, Tape: tape } = matrices;
  const planned = planTables({ clubs: clubs ?? [], stock, settings, weights, tape, job: '1042' });
  return planned.ok ? planned.value.plan.clubs.map(({ massAfterGrams }) => massAfterGrams ?? NaN) : [];
}

/** The workshop with its clubs in a list of its own, masses in ounces. */
async function ownClubs() {
  const bare = new MemoryPort();
  const rows = CLUB_ROWS.map((row) => [
    row.Job ?? null,
    row.Club ?? null,
    row.Kind ?? null,
    row['Length (in)'] ?? null,
    row['Butt (in)'] ?? null,
    row.Reading ?? null,
    Number(row['Club mass (g)']) / OUNCE,
    row['Old grip'] ?? null,
    row['New grip'] ?? null,
  ]);
  const headings = ['Ticket', 'Club', 'Type', 'Len. (in)', 'Butt (in)', 'SW', 'Club wt (oz)', 'Old grip', 'New grip'];
  bare.typeTable('Bags', 'In work', [headings, ...rows]);
  const read = await readList(bare, {
    table: 'Bags',
    at: { sheet: 'In work', row: 0, column: 0, rows: 6, columns: 9 },
  });
  const match = read && beginMatch(read, 'Clubs');
  if (!match) throw new Error('no match');
  await connectList(bare, asked(match));
  const port = connecting(bare);
  await setUp(port);
  bare.fillTable('Stock', STOCK_ROWS);
  bare.fillTable('Jobs', JOB_ROWS);
  return { bare, port };
}

describe('results beside the clubs', () => {
  test('bear headings that no column of Clubs has', () => {
    expect([...matchHeaders(CLUBS, HEADINGS).keys()]).toEqual([]);
  });

  test('get columns at the right end, for the clubs of the job alone, and go again', async () => {
    const port = await workshop();
    const before = port.tableSeen('Clubs') as TableSeen;
    expect(await fillBeside(port, '1042')).toMatchObject({ done: true, clubs: 3, made: HEADINGS });
    const after = port.tableSeen('Clubs') as TableSeen;
    expect(after.headers).toEqual([...before.headers, ...HEADINGS]);
    expect(after.rows.map((row) => row.slice(0, before.headers.length))).toEqual(before.rows);
    const masses = column(port, 'Clubs', 'Planned mass (g)');
    (await massesOf(port)).forEach((mass, at) => expect(masses[at]).toBeCloseTo(mass, 6));
    expect(masses.slice(3).every((cell) => cell === null)).toBe(true);
    await undoLast(port);
    expect(port.tableSeen('Clubs')).toEqual(before);
  });

  test('written again, they change nothing; changed by a person, they are asked about', async () => {
    const port = await workshop();
    await fillBeside(port, '1042');
    expect(await fillBeside(port, '1042')).toMatchObject({ done: true, cells: 0, made: [] });
    const { at, headers } = port.tableSeen('Clubs') as TableSeen;
    port.type(at.sheet, at.row + 1, at.column + headers.indexOf('Plan notes'), 'mine');
    const end = await fillBeside(port, '1042');
    expect(end).toMatchObject({ done: false, reason: 'occupied' });
    expect(column(port, 'Clubs', 'Plan notes')[0]).toBe('mine');
    const agreed = 'inTheWay' in end ? end.inTheWay : null;
    expect(await fillBeside(port, '1042', agreed)).toMatchObject({ done: true, cells: 1 });
  });

  test('in a list that keeps masses in ounces they stand in ounces', async () => {
    const { bare, port } = await ownClubs();
    const end = await fillBeside(port, '1042');
    expect(end).toMatchObject({ done: true, clubs: 3 });
    const masses = column(bare, 'Bags', 'Planned mass (oz)');
    // written to a thousandth of an ounce, finer than any scale of a shop
    (await massesOf(port)).forEach((mass, at) => expect(masses[at]).toBeCloseTo(mass / OUNCE, 3));
    expect((await readShop(port)).tables.Clubs?.connectedTo).toBe('Bags');
    expect(await fillBeside(port, '1042')).toMatchObject({ done: true, cells: 0 });
  });

  test('where something stands beside the table, it is left and named', async () => {
    const port = await workshop();
    const { at } = port.tableSeen('Clubs') as TableSeen;
    port.type(at.sheet, at.row, at.column + at.columns, 'mine');
    expect(await fillBeside(port, '1042')).toMatchObject({
      done: false,
      reason: 'port',
      error: { code: 'belowTable' },
    });
  });
});
