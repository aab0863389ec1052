import { describe, expect, it, test } from 'vitest';
import {
  asConnected,
  asked,
  beginMatch,
  headingFault,
  headingRowOptions,
  headingsNow,
  picked,
  stillNeeded,
  type Match,
} from '../../../src/pane/view/tools/listsModel';
import { headingRowText, sayHeadingFault } from '../../../src/pane/view/tools/listsWords';
import { connectList } from '../../../src/workbook/connect/connectList';
import { readConnections } from '../../../src/workbook/connect/connections';
import { headingChoices, whyNone } from '../../../src/workbook/connect/headingRow';
import { placesOfLists, readConnected, readList } from '../../../src/workbook/connect/lists';
import type { Rows } from '../../../src/workbook/connect/headingsAt';
import { connecting } from '../../../src/workbook/connecting';
import type { Cell, Seen, TableSeen } from '../../../src/workbook/port';
import { matrixOf } from '../../../src/workbook/shop';
import { memoryBench, embeddedBench, simulatedBench, type SafetyBench } from '../../safety/benches';

/** An older list under the same words stands first: what looks most like headings is not what the owner means. */
const TWICE: readonly (readonly Cell[])[] = [
  ['Grip wall', null, null, null],
  ['Item', 'Mass (g)', 'Core (in)', 'Price'],
  ['no longer kept', null, null, null],
  ['Towar', 'Waga', 'Rdzeń', 'Cena'],
  [null, 'g', 'mm', null],
  ['FERN-M', 52, 15.24, 9.5],
  ['MOSS-S', 48, 14.73, 7],
];
const AT = { sheet: 'Wall', row: 0, column: 0, rows: TWICE.length, columns: 4 };

const choices = (rows: Rows) =>
  headingChoices(rows).map(({ row, lines }) => (lines === 2 ? `${row - 1}+${row}` : `${row}`));

describe('rows that may be taken for headings', () => {
  it('are those of words, no titles and rows of the list; a row of units together with the words that it belongs to', () => {
    expect(choices(TWICE)).toEqual(['1', '3+4']);
    expect(
      choices([
        [null, 'in', 'oz'],
        ['Item', 'Core', 'Weight'],
        ['FERN-M', 0.6, 1.8],
      ]),
    ).toEqual(['0+1']);
  });

  it('are offered alone and with the row above where that may be headings of several columns', () => {
    const rows: Rows = [
      [null, 'Old grip', 'New grip'],
      ['Item', 'Weight', 'Weight'],
      ['FERN-M', 50, 52],
    ];
    expect(choices(rows)).toEqual(['0', '1', '0+1']);
  });

  it('are none of use where they are empty, or numbers', () => {
    const rows: Rows = [
      [null, ''],
      ['Item', 'Mass'],
      ['FERN-M', 52, 0.6, 9.5],
      [1, 2],
    ];
    const why = (row: number) => whyNone(rows, { row, lines: 1 });
    expect([0, 1, 2, 3].map(why)).toEqual(['empty', null, 'numbers', 'numbers']);
    expect(sayHeadingFault('empty', [3])).toBe('Row 3 is empty. Choose the row that your headings stand in.');
    expect(sayHeadingFault('numbers', [6])).toBe(
      'Row 6 holds numbers, not headings. Choose the row above them that says what they are.',
    );
  });
});

const matchOf = (rows: Rows, chosen?: { row: number; lines: 1 | 2 }): Match => {
  const match = beginMatch({ list: { table: null, at: AT, like: null, columns: 0 }, rows }, 'Stock', chosen);
  if (!match) throw new Error('no match');
  return match;
};

describe('the headings of a match', () => {
  it('are those that were found, until others are chosen; then what stands below those is matched', () => {
    const found = matchOf(TWICE);
    expect(headingsNow(found).rows).toEqual([2]);
    const chosen = matchOf(TWICE, { row: 4, lines: 2 });
    expect(headingRowText(headingsNow(chosen))).toBe('Rows 4 and 5: Towar · Waga g · Rdzeń mm · Cena');
    expect(chosen.picks.get('mass')).toEqual({ position: 1, unit: 'g' });
    expect(chosen.picks.get('core')).toEqual({ position: 2, unit: 'mm' });
    expect(asked(picked(chosen, 'item', { position: 0, unit: null })).within).toEqual({ ...AT, row: 3, rows: 4 });
    expect(headingFault(chosen)).toBeNull();
    expect(headingFault(matchOf(TWICE, { row: 5, lines: 1 }))).toBe('numbers');
  });

  it('stay chosen while the list is matched to another table', () => {
    const chosen = matchOf(TWICE, { row: 4, lines: 2 });
    const other = beginMatch(chosen.read, 'Tape', chosen.chosen);
    expect(other && headingsNow(other).rows).toEqual([4, 5]);
  });

  it('are not two rows where the lower one says nothing of what is matched', () => {
    const rows: Rows = [
      ['Item', 'Weight', 'Where', 'Who'],
      [null, null, 'shelf', 'name'],
      ['FERN-M', 52, 'top', 'A'],
    ];
    const all = matchOf(rows, { row: 1, lines: 2 });
    const chosen = { ...all, picks: new Map([['item', { position: 0, unit: null }]]) };
    expect(headingFault(chosen)).toBe('lower');
    expect(sayHeadingFault('lower', headingsNow(chosen).rows)).toBe(
      'Row 2 says nothing of the columns that are matched. Choose row 1 alone, or match a column that has a word there.',
    );
  });

  it('of a table are its own', () => {
    const list = { table: 'Inventory', at: AT, like: null, columns: 0 };
    const match = beginMatch({ list, rows: TWICE }, 'Stock', { row: 3, lines: 1 });
    expect(match && headingsNow(match).rows).toEqual([1]);
    expect(match && headingRowOptions(match)).toEqual([]);
  });
});

async function typed(bench: SafetyBench, rows: readonly (readonly Cell[])[]): Promise<void> {
  await bench.hands.addSheet('Wall');
  for (const [row, cells] of rows.entries()) {
    for (const [column, cell] of cells.entries()) if (cell !== null) await bench.hands.type('Wall', row, column, cell);
  }
}

async function connectBelow(bench: SafetyBench, row: number, lines: 1 | 2): Promise<void> {
  const read = await readList(bench.port(), { table: null, at: AT });
  const match = read && beginMatch(read, 'Stock', { row, lines });
  if (!match) throw new Error('no match');
  const whole = picked(match, 'item', { position: 0, unit: null });
  expect(stillNeeded(whole)).toEqual([]);
  expect(await connectList(bench.port(), asked(whole))).toMatchObject({ done: true });
}

async function stock(bench: SafetyBench): Promise<readonly (readonly Seen[])[]> {
  const [seen] = await connecting(bench.port()).read([{ read: 'table', table: 'Stock' }]);
  const at = (header: string): number => seen?.headers.indexOf(header) ?? -1;
  return (seen?.rows ?? []).map((row) => [
    row[at('Item')] ?? null,
    row[at('Mass (g)')] ?? null,
    row[at('Core (in)')] ?? null,
  ]);
}

/** The match as the screen begins it when the connection is changed. */
async function again(bench: SafetyBench): Promise<Match> {
  const port = bench.port();
  const [headings] = await port.read([{ read: 'table', table: 'Headings' }]);
  const read = readConnections(matrixOf(headings as TableSeen));
  const [connection] = read.ok ? read.value : [];
  const place = connection && (await placesOfLists(port, [connection.list])).get(connection.list);
  const seen = connection && place && (await readConnected(port, place, connection));
  const match = seen && beginMatch(seen.read, 'Stock', seen.taken);
  if (!connection || !match) throw new Error('not connected');
  return asConnected(match, connection);
}

describe.each([
  ['in memory', () => memoryBench()],
  ['client contract, simulated workbook', () => simulatedBench()],
  ['embedded spreadsheet', () => embeddedBench()],
] as const)('headings that a person chose, %s', (_, make) => {
  test('are those of the list from then on, with their units, after rows were put in above and when it is matched again', async () => {
    const bench: SafetyBench = await make();
    try {
      await typed(bench, TWICE);
      await connectBelow(bench, 4, 2);
      // 15.24 mm ÷ 25.4 mm/in, and 14.73 ÷ 25.4
      const wanted = [
        ['FERN-M', 52, expect.closeTo(0.6, 6)],
        ['MOSS-S', 48, expect.closeTo(0.5799, 4)],
      ];
      expect(await stock(bench)).toEqual(wanted);
      await bench.hands.insertRows('Wall', 1, 3);
      expect(await stock(bench)).toEqual(wanted);
      const match = await again(bench);
      expect(headingsNow(match).rows).toEqual([7, 8]);
      expect(asked(match).within).toEqual({ ...AT, row: 6, rows: 4 });
      // The row that was found at first is still there to be chosen.
      expect(headingRowOptions(match).map(headingRowText)).toContain('Row 5: Item · Mass (g) · Core (in) · Price');
    } finally {
      bench.dispose();
    }
  });

  test('with units below of which no matched column has one are no row of the list', async () => {
    const bench: SafetyBench = await make();
    try {
      const rows = TWICE.map((cells, at) => (at === 4 ? [null, null, null, 'g'] : cells));
      await typed(bench, rows);
      const read = await readList(bench.port(), { table: null, at: AT });
      const match = read && beginMatch(read, 'Stock', { row: 4, lines: 2 });
      if (!match) throw new Error('no match');
      const only = ['item', 'mass', 'core'].map((key, position) => [key, { position, unit: null }] as const);
      const asking = asked({ ...match, picks: new Map(only) });
      expect(await connectList(bench.port(), asking)).toMatchObject({ done: true, columns: 3 });
      expect((await stock(bench)).map(([item]) => item)).toEqual(['FERN-M', 'MOSS-S']);
    } finally {
      bench.dispose();
    }
  });
});
