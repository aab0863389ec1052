import { describe, expect, test } from 'vitest';
import { besideDeed } from '../../../src/pane/view/tools/listsDeeds';
import { asConnected, asked, beginMatch, offered, picked, unused } from '../../../src/pane/view/tools/listsModel';
import { connectedAlready, connectedNow } from '../../../src/workbook/connect/connectedNow';
import { connectList } from '../../../src/workbook/connect/connectList';
import { readConnections } from '../../../src/workbook/connect/connections';
import { findLists, readConnected, readList } from '../../../src/workbook/connect/lists';
import { fillBeside } from '../../../src/workbook/fillBeside';
import { matchHeaders } from '../../../src/workbook/records';
import { CLUBS } from '../../../src/workbook/schema';
import { matrixOf, readShop } from '../../../src/workbook/shop';
import { startJob } from '../../../src/workbook/startJob';
import { undoLast } from '../../../src/workbook/undo';
import type { Block, Change, Seen, TableSeen } from '../../../src/workbook/port';
import { MemoryPort, widthKey } from '../memoryPort';
import { CLUB_ROWS, JOB_ROWS, workshop } from '../workshop';
import { OUNCE } from './inventory';
import { connectedClubs, plannedJob } from './rack';

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

const HEADINGS_IN_OUNCES = HEADINGS.map((heading) => heading.replace('mass (g)', 'mass (oz)'));

async function massesOf(port: Parameters<typeof readShop>[0]): Promise<number[]> {
  const planned = await plannedJob(port, '1042');
  return planned.ok ? planned.value.plan.clubs.map(({ massAfterGrams }) => massAfterGrams ?? NaN) : [];
}

/** The workshop with its clubs in a list of its own, masses in ounces: a table, or plain cells below a title. */
async function ownClubs(plain = false, over: readonly Seen[] = []) {
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
  if (plain) {
    bare.addSheet('In work');
    bare.type('In work', 0, 0, 'Clubs on the rack');
    bare.typeRows('In work', 1, 1, [over]);
    bare.typeRows('In work', 2, 1, [headings, ...rows]);
  } else bare.typeTable('Bags', 'In work', [headings, ...rows]);
  const { port } = await connectedClubs(bare, {
    table: plain ? null : 'Bags',
    at: { sheet: 'In work', row: 0, column: 0, rows: plain ? 8 : 6, columns: plain ? 10 : 9 },
  });
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

  test('get columns as wide as their headings, and no others another width', async () => {
    const port = await workshop();
    const { at } = port.tableSeen('Clubs') as TableSeen;
    const asked: Change[] = [];
    const apply = port.apply.bind(port);
    port.apply = (changes, looked, options) => {
      asked.push(...changes);
      return apply(changes, looked, options);
    };
    await fillBeside(port, '1042');
    await fillBeside(port, '1042');
    const widths = asked.filter((change) => change.do === 'widths');
    expect(widths.map(({ sheet, column: each }) => [sheet, each])).toEqual(
      HEADINGS.map((_, i) => [at.sheet, at.column + at.columns + i]),
    );
    expect(widths.every(({ widths: [width = 0] }, i) => width > (HEADINGS[i]?.length ?? 99))).toBe(true);
  });

  test('written again, they change nothing; changed by a person, they are asked about', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const going = { say: () => undefined, signal: new AbortController().signal };
    const write = () => besideDeed('1042').run(port, shop, null, going);
    expect(await write()).not.toHaveProperty('headline');
    expect(await write()).toMatchObject({
      end: { done: true, cells: 0, made: [] },
      headline: 'Nothing changed',
      text: 'Beside 3 clubs stands what the plan says already.',
    });
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

  test('are nothing that the list could be matched by the next time', async () => {
    const { bare, port } = await ownClubs();
    await fillBeside(port, '1042');
    const at = { sheet: 'In work', row: 0, column: 0, rows: 6, columns: 9 + HEADINGS.length };
    const read = await readList(bare, { table: 'Bags', at });
    const bare9 = read && { ...read, rows: read.rows.map((row) => row.slice(0, 9)) };
    const [again, before] = [read, bare9].map((each) => each && beginMatch(each, 'Clubs'));
    if (!again || !before) throw new Error('no match');
    expect([...again.picks]).toEqual([...before.picks]);
    expect(again.likeness.proposals.map(({ others }) => others)).toEqual(
      before.likeness.proposals.map(({ others }) => others),
    );
    expect([unused(again), offered(again), again.likeness.unknown]).toEqual([
      unused(before),
      offered(before),
      before.likeness.unknown,
    ]);
    // one of them that was connected before is still shown
    const kept = picked(again, 'job', { position: 9, unit: null });
    expect(offered(kept)).toContainEqual([9, 'Planned reading']);
  });

  test('make columns as wide as their headings, and none narrower than it was', async () => {
    const { bare, port } = await ownClubs();
    const wide = widthKey('In work', 10);
    bare.widths.set(wide, 60);
    bare.widths.set(widthKey('In work', 11), 5);
    expect(await fillBeside(port, '1042')).toMatchObject({ done: true });
    expect(bare.widths.get(wide)).toBe(60);
    const others = [9, 11, 12].map((column) => bare.widths.get(widthKey('In work', column)) ?? 0);
    const headings = ['Planned reading', 'Weight to add (g)', 'Weight goes'];
    others.forEach((width, at) => expect(width).toBeGreaterThanOrEqual(headings[at]?.length ?? 99));
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

  describe('in plain cells', () => {
    const shown = (port: MemoryPort, rows: number): Seen[][] =>
      Array.from({ length: rows }, (_, row) => Array.from({ length: 20 }, (__, at) => port.shows('In work', row, at)));

    test('are taken back from the clubs that they were written beside, wherever these stand by then', async () => {
      const { bare, port } = await ownClubs(true);
      await fillBeside(port, '1042');
      bare.insertRows('In work', 4, 2);
      bare.typeRows('In work', 4, 1, [
        ['1044', 'Driver', 'Driver'],
        ['1044', '3 wood', 'Wood'],
      ]);
      // what another club got by hand, where a result of ours stood before
      bare.type('In work', 5, 10, 'D5');
      bare.insertRows('In work', 0, 1);
      const headings = shown(bare, 4)[3]?.slice(10);
      const end = await undoLast(port);
      // what is theirs keeps the headings that it stands under
      expect(end).toMatchObject({ done: true, reverted: { left: ["'In work'!K7"], notFound: [] } });
      expect(bare.shows('In work', 6, 10)).toBe('D5');
      const results = shown(bare, 12).map((line) => line.slice(10));
      expect(results[3]).toEqual(headings);
      expect([...results.slice(0, 3), ...results.slice(4)].flat().filter((cell) => cell !== null)).toEqual(['D5']);
    });

    test('are taken back after the list was sorted; a club that is called otherwise by then is left and named', async () => {
      const { bare, port } = await ownClubs(true);
      await fillBeside(port, '1042');
      const rows = shown(bare, 8).slice(3, 8);
      bare.typeRows('In work', 3, 0, [...rows].reverse());
      const wedge = [...rows].reverse().findIndex((row) => row[2] === 'Pitching wedge');
      bare.type('In work', 3 + wedge, 2, 'PW');
      const end = await undoLast(port);
      expect(end).toMatchObject({ done: true, reverted: { notFound: ['In work: 1042, Pitching wedge'] } });
      const left = shown(bare, 8).filter((row) => row.slice(10).some((cell) => cell !== null));
      // nothing but the row that nobody can tell still holds results, under their headings
      expect(left.map((row) => row[2])).toEqual(['Club', 'PW']);
      expect(left[0]?.slice(10, 17).every((cell) => cell !== null)).toBe(true);
    });

    test('taken back, leave the list as wide as it was; written again, they stand where they stood', async () => {
      const { bare, port } = await ownClubs(true);
      const before = bare.name('Setwright_List_Clubs');
      await fillBeside(port, '1042');
      const first = shown(bare, 8);
      await undoLast(port);
      expect(bare.name('Setwright_List_Clubs')).toEqual(before);
      await fillBeside(port, '1042');
      expect(shown(bare, 8)).toEqual(first);
    });

    test('get no columns under a heading of a neighbour’s, of two rows of headings either', async () => {
      const units = [null, null, null, null, null, 'points', 'oz', null, null];
      const { bare, port } = await ownClubs(true, units);
      expect(bare.name('Setwright_List_Clubs')).toMatchObject({ row: 1, rows: 7 });
      bare.type('In work', 1, 11, 'Paid');
      const before = bare.content();
      const end = await fillBeside(port, '1042');
      expect(end).toMatchObject({
        done: false,
        reason: 'port',
        error: { code: 'belowTable', cells: ["'In work'!L2"] },
      });
      expect(bare.content()).toEqual(before);
      bare.type('In work', 1, 11, null);
      expect(await fillBeside(port, '1042')).toMatchObject({ done: true, clubs: 3 });
      bare.insertRows('In work', 4, 1);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      bare.insertRows('In work', 0, 1);
      expect(bare.shows('In work', 3, 10)).toBeNull();
    });

    /** Headings and, below them, their units, as `ownClubs` has them below a title. */
    async function unitsBelow() {
      const bare = new MemoryPort();
      bare.addSheet('In work');
      bare.typeRows('In work', 0, 0, [
        ['Kunde', 'Auftrag', 'Schläger', 'Länge', 'Schwunggewicht', 'Gewicht', 'Neuer Griff'],
        [null, null, null, 'cm', null, 'g', null],
        ['Jens Halder', 'A-5', 'Driver', 115.5, 'D3', 312, 'FERN-M'],
        ['Jens Halder', 'A-5', '7 iron', 94, 'D2', 427, 'FERN-M'],
      ]);
      const at = { sheet: 'In work', row: 0, column: 0, rows: 4, columns: 7 };
      return connectedClubs(bare, { table: null, at });
    }

    test('get their headings beside the list’s own, not beside the units below these; written again, they are known', async () => {
      const { bare, port } = await unitsBelow();
      const before = shown(bare, 6);
      const names = [...HEADINGS.slice(0, 4), 'Planned mass (g)', 'Planned diameter (in)', 'Plan notes'];
      expect(await fillBeside(port, 'A-5')).toMatchObject({ done: true, made: names, clubs: 2 });
      const [headings, units, driver] = shown(bare, 3);
      expect(headings?.slice(7, 14)).toEqual(names);
      expect(units).toEqual(before[1]);
      expect(driver?.[13]).toBeTypeOf('string');
      expect(await fillBeside(port, 'A-5')).toMatchObject({ done: true, made: [], cells: 0 });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      expect(shown(bare, 6)).toEqual(before);
    });

    /** Some cells of the list are selected and connected, as the tab does it where it is connected already. */
    async function connectedAgain(bare: MemoryPort, selected: Block) {
      const read = readConnections(matrixOf(bare.tableSeen('Headings') as TableSeen));
      const now = await connectedNow(bare, read.ok ? read.value : [], await findLists(bare));
      const again = connectedAlready(now, selected);
      const seen = again && (await readConnected(bare, again.list, again.connection));
      const match = seen && beginMatch(seen.read, 'Clubs', seen.taken);
      if (!match) throw new Error('no match');
      return connectList(bare, asked(asConnected(match, again.connection)));
    }

    test.each([
      ['of it', { row: 2, rows: 3, column: 1, columns: 3 }],
      ['with the results', { row: 2, rows: 6, column: 1, columns: 16 }],
      ['below it', { row: 3, rows: 6, column: 1, columns: 9 }],
    ])('go where they stood once the list is connected again, by cells %s', async (_, cells) => {
      const { bare, port } = await ownClubs(true);
      const again = { sheet: 'In work', ...cells };
      expect(await connectedAgain(bare, again)).toMatchObject({ done: true, columns: 9 });
      expect(await fillBeside(port, '1042')).toMatchObject({ done: true, made: HEADINGS_IN_OUNCES, clubs: 3 });
      const first = shown(bare, 9);
      expect(await connectedAgain(bare, again)).toMatchObject({ done: true, columns: 9 });
      expect(await fillBeside(port, '1042')).toMatchObject({ done: true, made: [], cells: 0 });
      expect(shown(bare, 9)).toEqual(first);
    });

    test('stay known where an earlier version put their headings beside the units', async () => {
      const { bare, port } = await unitsBelow();
      await fillBeside(port, 'A-5');
      const headings = shown(bare, 1)[0]?.slice(7, 14) ?? [];
      bare.typeRows('In work', 0, 7, [headings.map(() => null), headings]);
      expect(await fillBeside(port, 'A-5')).toMatchObject({ done: true, made: [], cells: 0 });
    });

    test('new rows are taken back from where they stand by then', async () => {
      const { bare, port } = await ownClubs(true);
      const started = await startJob(port, {
        job: null,
        suggested: null,
        customer: 'Tamsin Orrell',
        clubs: [
          { name: '5 iron', kind: 'Iron' },
          { name: '6 iron', kind: 'Iron' },
        ],
        hand: null,
        due: null,
        today: 46_353,
        firstTag: '',
        authorisedBy: '',
        last: [],
      });
      expect(started).toMatchObject({ done: true });
      const rows = shown(bare, 10);
      expect(rows[8]?.[2]).toBe('5 iron');
      bare.insertRows('In work', 5, 1);
      bare.typeRows('In work', 5, 1, [['1050', 'mine', 'Iron']]);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      expect(bare.shows('In work', 5, 2)).toBe('mine');
      expect(
        shown(bare, 12)
          .slice(9)
          .flat()
          .every((cell) => cell === null),
      ).toBe(true);
      expect(bare.shows('In work', 8, 2)).toBe('Old putter');
    });
  });

  describe.each([
    ['plain cells', true, 3, 1],
    ['a table', false, 1, 0],
  ] as const)('of two clubs of one name, in %s,', (_, plain, top, left) => {
    const width = 9;
    const shown = (port: MemoryPort): Seen[][] =>
      Array.from({ length: 9 }, (__, row) => Array.from({ length: 20 }, (___, at) => port.shows('In work', row, at)));
    const results = (port: MemoryPort, row: number): Seen[] => (shown(port)[row] ?? []).slice(left + width);
    const isBlank = (cells: readonly Seen[]): boolean => cells.every((cell) => cell === null);

    /** Drivers in the first two rows, of different lengths and weights. */
    async function twins() {
      const made = await ownClubs(plain);
      made.bare.type('In work', top + 1, left + 1, made.bare.shows('In work', top, left + 1) as string);
      const before = shown(made.bare);
      await fillBeside(made.port, '1042');
      expect([top, top + 1].map((row) => results(made.bare, row)[4])).not.toContain(null);
      expect(results(made.bare, top)).not.toEqual(results(made.bare, top + 1));
      return { ...made, before };
    }

    test('taken back at once leave nothing, and come again where they stood', async () => {
      const { bare, port, before } = await twins();
      const first = shown(bare);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      expect(shown(bare)).toEqual(before);
      await fillBeside(port, '1042');
      expect(shown(bare)).toEqual(first);
    });

    test('are told apart by what they got once the list was sorted', async () => {
      const { bare, port, before } = await twins();
      const rows = shown(bare).slice(top, top + 5);
      bare.typeRows('In work', top, 0, [...rows].reverse());
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      const sorted = [...before.slice(top, top + 5)].reverse();
      expect(shown(bare)).toEqual([...before.slice(0, top), ...sorted, ...before.slice(top + 5)]);
    });

    test('of which one was changed, the other is taken back; the headings stay over what is left, and are used again', async () => {
      const { bare, port } = await twins();
      const kept = [...results(bare, top + 1)];
      const headings = results(bare, top - 1);
      bare.type('In work', top + 1, left + width + 6, 'mine');
      kept[6] = 'mine';
      const end = await undoLast(port);
      const name = `${plain ? 'In work' : 'Bags'}: 1042, Driver`;
      expect(end).toMatchObject({ done: true, reverted: { notFound: [name] } });
      expect(isBlank(results(bare, top))).toBe(true);
      expect(results(bare, top + 1)).toEqual(kept);
      expect(results(bare, top - 1)).toEqual(headings);
      const asked = await fillBeside(port, '1042');
      const agreed = 'inTheWay' in asked ? asked.inTheWay : null;
      expect(await fillBeside(port, '1042', agreed)).toMatchObject({ done: true, made: [] });
      expect(results(bare, top - 1)).toEqual(headings);
    });
  });
});

describe('a list that is sorted between the look and the writing of columns it did not have', () => {
  test.each([
    ['a table', false],
    ['plain cells', true],
  ])('%s: nothing is written beside another club', async (_, plain) => {
    const { bare, port } = await ownClubs(plain);
    const [top, left] = plain ? [3, 1] : [1, 0];
    const line = (down: number) => ({ sheet: 'In work', row: top + down, column: left, rows: 1, columns: 9 });
    const apply = bare.apply.bind(bare);
    const rows = async (): Promise<unknown> => {
      const [seen] = await bare.read([{ read: 'block', at: { ...line(0), rows: 6, columns: 20 } }]);
      return seen.values;
    };
    let before: unknown;
    bare.apply = async (...asked) => {
      if (before === undefined) {
        const [first, second] = await bare.read([
          { read: 'block', at: line(0) },
          { read: 'block', at: line(1) },
        ]);
        first.values[0]?.forEach((value, across) => bare.type('In work', top + 1, left + across, value));
        second.values[0]?.forEach((value, across) => bare.type('In work', top, left + across, value));
        before = await rows();
      }
      return apply(...asked);
    };
    expect(await fillBeside(port, '1042')).toMatchObject({
      done: false,
      reason: 'port',
      error: { code: 'notLookedAt' },
    });
    expect(await rows()).toEqual(before);
  });
});
