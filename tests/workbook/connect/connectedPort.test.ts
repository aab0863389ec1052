import { describe, expect, test } from 'vitest';
import { setPlan } from '../../../src/functions/functions';
import { connecting } from '../../../src/workbook/connecting';
import { followLists, plansBehind } from '../../../src/workbook/connect/plansBehind';
import { connectList, disconnectList } from '../../../src/workbook/connect/connectList';
import { CLUBS, JOBS, STOCK } from '../../../src/workbook/schema';
import { fillPlan } from '../../../src/workbook/fillPlan';
import { headerRowsOf } from '../../../src/workbook/planScope';
import { planTables } from '../../../src/workbook/planTables';
import { findLists, placesOfLists, readConnected } from '../../../src/workbook/connect/lists';
import { asConnected, asked, beginMatch } from '../../../src/pane/view/tools/listsModel';
import { connectedText } from '../../../src/pane/view/tools/listsWords';
import { presentedCells } from '../../../src/workbook/connect/standIn';
import { rowName } from '../../../src/workbook/records';
import { HEADINGS } from '../../../src/workbook/tables/headings';
import { connectedAlready, connectedNow } from '../../../src/workbook/connect/connectedNow';
import { readConnections } from '../../../src/workbook/connect/connections';
import { startJob } from '../../../src/workbook/startJob';
import { PortError } from '../../../src/workbook/port';
import type { Block, Call, Change, Seen, TableSeen } from '../../../src/workbook/port';
import { setUp } from '../../../src/workbook/setUp';
import { matrixOf, readShop } from '../../../src/workbook/shop';
import { moveStock } from '../../../src/workbook/moveStock';
import { sayIssue } from '../../../src/words/issues';
import { undoLast } from '../../../src/workbook/undo';
import { MemoryPort } from '../memoryPort';
import { workshop } from '../workshop';
import {
  connectedWorkshop,
  connectStock,
  foreignWorkshop,
  HEADINGS_OF_LIST,
  INVENTORY,
  LIST_ROWS,
  PLAIN,
  plainWorkshop,
} from './inventory';

async function plansOf(port: Parameters<typeof readShop>[0]) {
  const { matrices, tables } = await readShop(port);
  const { Clubs: clubs, Stock: stock, Settings: settings, Weights: weights, Tape: tape } = matrices;
  const headerRows = headerRowsOf(tables);
  const planned = planTables({ clubs: clubs ?? [], stock, settings, weights, tape, headerRows, job: '1042' });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issue));
  return planned.value;
}

async function refusal(work: Promise<unknown>): Promise<PortError> {
  const error: unknown = await work.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  if (!(error instanceof PortError)) throw new Error(`expected a PortError, got ${String(error)}`);
  return error;
}

const headingsIn = (port: MemoryPort): readonly (readonly Seen[])[] => (port.tableSeen('Headings') as TableSeen).rows;

describe.each([
  ['a table', foreignWorkshop, INVENTORY],
  ['plain cells under a title, a sum below them', plainWorkshop, PLAIN],
] as const)('stock kept in %s, in ounces and millimetres', (_, make, list) => {
  test('is written down in Headings and left as it is', async () => {
    const port = await make();
    const before = port.copy();
    expect(await connectStock(port, list)).toMatchObject({ done: true, table: 'Stock', columns: 7 });
    for (const row of Array.from({ length: 8 }, (__, at) => at)) {
      for (const column of Array.from({ length: 10 }, (__, at) => at)) {
        expect(port.shows('Lager', row, column)).toEqual(before.shows('Lager', row, column));
      }
    }
    // What people know it by, its sheet and where its headings are, stands before the name that it is found by.
    const stands = list.table === null ? 'Lager!A3:I3' : 'Lager!A1:H1';
    expect(headingsIn(port)).toContainEqual(['Stock', 'Mass (g)', stands, 'Wt (oz)', 'oz', expect.any(String)]);
    expect(headingsIn(port)).toContainEqual(['Stock', 'Core (in)', stands, 'Bore Ø (mm)', 'mm', expect.any(String)]);
    expect(headingsIn(port)).toContainEqual(['Stock', 'On hand', stands, 'Qty', null, expect.any(String)]);
  });

  test('gives the same plan as Stock in our own units', async () => {
    const { port } = await connectedWorkshop(make, list);
    const theirs = await plansOf(port);
    const ours = await plansOf(await workshop());
    expect(theirs.plan.clubs.length).toBe(3);
    theirs.plan.clubs.forEach((club, at) => {
      const same = ours.plan.clubs[at];
      // grams and inches went to ounces and millimetres and back: nine digits are far beyond what is shown
      expect(club.readingAfter).toBeCloseTo(same?.readingAfter ?? NaN, 9);
      expect(club.massAfterGrams).toBeCloseTo(same?.massAfterGrams ?? NaN, 9);
    });
  });

  test('is kept by set-up, which makes the others', async () => {
    const bare = await make();
    await connectStock(bare, list);
    const end = await setUp(connecting(bare));
    expect(end).toMatchObject({ done: true, blocked: [] });
    expect(end.done && end.kept).toEqual(['Stock']);
    expect(bare.tableSeen('Stock')).toBeNull();
    expect(bare.tableSeen('Clubs')).not.toBeNull();
  });

  test('takes one round trip to read, or two where a name has to tell where it is, however much is asked', async () => {
    const { bare, port } = await connectedWorkshop(make, list);
    await readShop(port);
    bare.reads = 0;
    await readShop(port);
    expect(bare.reads).toBe(list.table === null ? 2 : 1);
  });

  test('gets its counts written back in its own column', async () => {
    const { bare, port } = await connectedWorkshop(make, list);
    const end = await moveStock(
      port,
      { shelf: 'grip', item: 'FERN-M', kind: 'arrived', quantity: '5', note: '' },
      { today: 46_353, agreed: null },
    );
    expect(end).toMatchObject({ done: true });
    const [row, column] = list.table === null ? [3, 7] : [1, 6];
    expect(bare.shows('Lager', row, column)).toBe(25);
    await undoLast(port);
    expect(bare.shows('Lager', row, column)).toBe(20);
  });

  test('is what a live plan points at, with Headings behind it', async () => {
    const { bare, port } = await connectedWorkshop(make, list);
    const end = await fillPlan(port, await readShop(port), {
      scope: { job: '1042' },
      choices: {},
      where: 'planSheet',
      as: 'live',
    });
    expect(end).toMatchObject({ done: true, as: 'live' });
    const call = bare.asked.flatMap((change) => (change.do === 'write' ? change.cells.flat() : []));
    const [plan] = call.filter((put): put is Call => typeof put === 'object' && put !== null && 'call' in put);
    expect(plan?.args[0]).toEqual({ table: 'Clubs' });
    expect(plan?.args[1]).toEqual(list.table === null ? { name: 'Setwright_List_Stock' } : { table: 'Inventory' });
    expect(plan?.args[6]).toEqual({ table: 'Headings' });
  });

  test('SETPLAN reads it by Headings as the pane does', async () => {
    const { bare, port } = await connectedWorkshop(make, list);
    const { matrices } = await readShop(port);
    const cells =
      list.table === null ? [HEADINGS_OF_LIST, ...LIST_ROWS] : matrixOf(bare.tableSeen('Inventory') as TableSeen);
    const mutable = (matrix: readonly (readonly unknown[])[] | null): unknown[][] =>
      (matrix ?? []).map((row) => [...row]);
    const headings = matrixOf(bare.tableSeen('Headings') as TableSeen);
    const plan = (stock: unknown[][], more: unknown[][][]) =>
      setPlan(
        mutable(matrices.Clubs),
        stock,
        mutable(matrices.Settings),
        mutable(matrices.Weights),
        mutable(matrices.Tape),
        '1042',
        ...more,
      );
    const own = await readShop(await workshop());
    expect(plan(mutable(cells), [mutable(headings)])).toEqual(plan(mutable(own.matrices.Stock), []));
    expect(() => plan(mutable(cells), [])).toThrow('There is no column “Item” in Stock');
  });

  test('can be disconnected, and connecting can be taken back', async () => {
    const bare = await make();
    await connectStock(bare, list);
    expect((await undoLast(bare)).done).toBe(true);
    expect(bare.tableSeen('Headings')).toBeNull();
    await connectStock(bare, list);
    expect(await disconnectList(bare, 'Stock')).toMatchObject({ done: true });
    expect(
      headingsIn(bare)
        .flat()
        .every((cell) => cell === null),
    ).toBe(true);
    expect((await readShop(connecting(bare))).tables.Stock).toBeNull();
  });
});

describe('a list that is not as it was', () => {
  test('columns may move, and others come between', async () => {
    const { bare, port } = await connectedWorkshop();
    const before = await plansOf(port);
    const rows = matrixOf(bare.tableSeen('Inventory') as TableSeen) as readonly (readonly Seen[])[];
    bare.typeRows(
      'Lager',
      0,
      0,
      rows.map((row, at) => [at === 0 ? 'Colour' : 'black', ...[...row].reverse()]),
    );
    bare.widenTable('Inventory', 1);
    expect((await plansOf(port)).plan).toEqual(before.plan);
  });

  test('a renamed heading is named, with what stands in its place, and nothing is read as it', async () => {
    const { bare, port } = await connectedWorkshop();
    bare.type('Lager', 0, 3, 'Mass');
    const error = await refusal(readShop(port));
    expect(error.code).toBe('connection');
    expect(error.hostSaid).toContain('Wt (oz)');
    expect(error.hostSaid).toContain('where it stood is now Mass');
    expect(error.hostSaid).toContain('Inventory');
    bare.type('Lager', 0, 3, 'Wt (oz)');
    expect((await readShop(port)).tables.Stock).not.toBeNull();
  });

  test('of plain cells the sheet and the row of its headings are named, not the name that the cells were given', async () => {
    const { bare, port } = await connectedWorkshop(plainWorkshop, PLAIN);
    bare.type('Lager', 2, 4, 'Mass');
    const { hostSaid } = await refusal(readShop(port));
    expect(hostSaid).toContain('The list on the sheet “Lager”, which stands for Stock, is not as it was in row 3');
    expect(hostSaid).not.toContain('Setwright_List');
  });

  test.each([
    ['a table', foreignWorkshop, INVENTORY, [0, 3]],
    ['plain cells', plainWorkshop, PLAIN, [2, 4]],
  ] as const)('which columns of %s are lost is told one by one', async (_, make, list, [row, column]) => {
    const { bare } = await connectedWorkshop(make, list);
    const lost = async () => {
      const read = readConnections(matrixOf(bare.tableSeen('Headings') as TableSeen));
      const [stock] = await connectedNow(bare, read.ok ? read.value : [], await findLists(bare));
      return stock;
    };
    expect(await lost()).toMatchObject({ at: { at: { sheet: 'Lager' } }, broken: [] });
    bare.type('Lager', row, column, 'Mass');
    const stock = await lost();
    expect(stock?.broken).toMatchObject([{ key: 'mass', heading: 'Wt (oz)', why: 'renamed', nowAt: 'Mass' }]);
    expect(connectedText(STOCK, 7, stock?.broken ?? [])).toMatch(/^6 of 7 columns connected\. The column Wt \(oz\)/);
  });

  test('of plain cells that are gone the sheet is named where they stood; an older workbook kept none', async () => {
    const { bare, port } = await connectedWorkshop(plainWorkshop, PLAIN);
    bare.deleteSheet('Lager');
    expect((await refusal(readShop(port))).hostSaid).toContain(
      '“Lager”, which stands for Stock, is not in this workbook',
    );
    const stands = HEADINGS.columns.findIndex(({ key }) => key === 'where');
    bare.type('Headings', 0, stands, 'Remark');
    expect((await refusal(readShop(port))).hostSaid).toContain('“your list”, which stands for Stock');
  });

  test('SETPLAN names plain cells by their sheet', async () => {
    const { bare } = await connectedWorkshop(plainWorkshop, PLAIN);
    const read = readConnections(matrixOf(bare.tableSeen('Headings') as TableSeen));
    const [stock] = read.ok ? read.value : [];
    const cells = stock && presentedCells(stock, [HEADINGS_OF_LIST, ...LIST_ROWS]);
    const headers = cells?.ok ? (cells.value[0] ?? []) : [];
    expect(rowName('Stock', headers, 3)).toBe('“Lager”, row 2 below its headings');
  });

  test('selected again, it is the one that is connected, as far as it reaches and as far as was selected', async () => {
    const { bare } = await connectedWorkshop(plainWorkshop, PLAIN);
    const read = readConnections(matrixOf(bare.tableSeen('Headings') as TableSeen));
    const now = await connectedNow(bare, read.ok ? read.value : [], await findLists(bare));
    const at = bare.name('Setwright_List_Stock') as Block;
    // Fewer columns were selected, and one row more.
    const again = connectedAlready(now, { ...at, columns: 3, rows: at.rows + 1 });
    expect(again).toMatchObject({ connection: { schema: STOCK }, list: { at: { ...at, rows: at.rows + 1 } } });
    const seen = again && (await readConnected(bare, again.list, again.connection));
    const match = seen && beginMatch(seen.read, 'Stock', seen.taken);
    const within = match && asked(asConnected(match, again.connection)).within;
    expect(within).toMatchObject({ row: at.row, column: at.column, columns: at.columns });
    expect(connectedAlready(now, { ...at, sheet: 'Clubs' })).toBeUndefined();
  });

  test('a heading that stands there twice is not guessed at', async () => {
    const { bare, port } = await connectedWorkshop();
    bare.type('Lager', 0, 7, 'Wt (oz)');
    expect((await refusal(readShop(port))).hostSaid).toContain('Two columns are headed Wt (oz)');
  });

  test('a list that is gone is named', async () => {
    const { bare, port } = await connectedWorkshop();
    bare.dropTable('Inventory');
    expect((await refusal(readShop(port))).hostSaid).toContain(
      '“Inventory”, which stands for Stock, is not in this workbook',
    );
  });

  test('a row of Headings that says nonsense is named by its row', async () => {
    const { bare, port } = await connectedWorkshop();
    bare.type('Headings', 2, 1, 'Weigth');
    expect((await refusal(readShop(port))).hostSaid).toContain('Headings row 3');
  });

  test('a table Headings of the shop’s own connects nothing and hinders nothing', async () => {
    const bare = await workshop();
    bare.typeTable('Headings', 'Mine', [
      ['Page', 'Heading'],
      ['1', 'Grips'],
    ]);
    const { tables } = await readShop(connecting(bare));
    expect(tables.Stock?.connectedTo).toBeUndefined();
    expect(tables.Stock?.rows.length).toBeGreaterThan(0);
  });

  test('a heading of Headings itself that is gone is said', async () => {
    const { bare, port } = await connectedWorkshop();
    bare.type(
      'Headings',
      0,
      HEADINGS.columns.findIndex(({ key }) => key === 'heading'),
      'X',
    );
    expect((await refusal(readShop(port))).hostSaid).toContain('Your heading');
  });

  test('a heading that is broken over two lines is the same heading, and a count goes back', async () => {
    const bare = new MemoryPort();
    bare.typeTable('Inventory', 'Lager', [['Art.\nno', ...HEADINGS_OF_LIST.slice(1)], ...LIST_ROWS]);
    await connectStock(bare);
    const port = connecting(bare);
    await setUp(port);
    const arrived = { shelf: 'grip', item: 'FERN-M', kind: 'arrived', quantity: '5', note: '' } as const;
    expect(await moveStock(port, arrived, { today: 46_353, agreed: null })).toMatchObject({ done: true });
    expect(bare.shows('Lager', 1, 6)).toBe(25);
    expect(await undoLast(port)).toMatchObject({ done: true });
    expect(bare.shows('Lager', 1, 6)).toBe(20);
  });

  test('one list may stand for two tables, each with units of its own', async () => {
    const bare = new MemoryPort();
    const rows = [
      ['Ticket', 'Customer', 'Club', 'Target mm'],
      [4711, 'Tamsin Orrell', '7 iron', null],
    ];
    bare.typeTable('Book', 'Book', rows);
    const list = { table: 'Book', at: { sheet: 'Book', row: 0, column: 0, rows: 2, columns: 4 } };
    const job = { key: 'job', heading: 'Ticket', position: 0, unit: null };
    const customer = { key: 'customer', heading: 'Customer', position: 1, unit: null };
    const club = { key: 'club', heading: 'Club', position: 2, unit: null };
    const target = { key: 'targetDiameter', heading: 'Target mm', position: 3, unit: 'mm' } as const;
    await connectList(bare, { schema: JOBS, list, within: null, matches: [job, customer] });
    await connectList(bare, { schema: CLUBS, list, within: null, matches: [job, club, target] });
    const port = connecting(bare);
    const [jobs, clubs] = await port.read([
      { read: 'table', table: 'Jobs' },
      { read: 'table', table: 'Clubs' },
    ]);
    const at = { sheet: 'Book', row: 1, column: 3, rows: 1, columns: 1 };
    await port.apply([{ do: 'write', at, cells: [[1]] }], [jobs as TableSeen, clubs as TableSeen], { label: 'target' });
    // an inch is 25.4 mm (international yard and pound agreement, 1959)
    expect(bare.shows('Book', 1, 3)).toBe(25.4);
  });

  test('a plain list that a job made longer stays so when the job is taken back', async () => {
    const { bare, port } = await connectedWorkshop(plainWorkshop, PLAIN);
    const before = bare.name('Setwright_List_Stock');
    const [stock] = await port.read([{ read: 'table', table: 'Stock' }]);
    const seen = stock as TableSeen;
    const below = { ...seen.at, row: seen.at.row + seen.at.rows, rows: 1 };
    bare.typeRows(below.sheet, below.row, below.column, [Array<null>(below.columns).fill(null)]);
    const [free] = await port.read([{ read: 'block', at: below }]);
    const line = Array.from({ length: below.columns }, (_, at) => (at === 1 ? 'ELM' : null));
    await port.apply(
      [
        { do: 'lengthen', table: 'Stock', rows: 1 },
        { do: 'write', at: below, cells: [line] },
      ],
      [seen, free],
      { label: 'longer', receiptKey: 'setwright.lastFill' },
    );
    expect(bare.name('Setwright_List_Stock')?.rows).toBe((before?.rows ?? 0) + 1);
    await undoLast(port);
    expect(bare.shows(below.sheet, below.row, below.column + 1)).toBeNull();
    expect(bare.name('Setwright_List_Stock')?.rows).toBe((before?.rows ?? 0) + 1);
  });
});

describe.each([
  ['a table', foreignWorkshop, INVENTORY, 1],
  ['plain cells', plainWorkshop, PLAIN, 3],
] as const)('what cannot be read in a list of %s', (_, make, list, first) => {
  test('is told by its sheet, the row there and its own heading', async () => {
    const { bare, port } = await connectedWorkshop(make, list);
    const column = list.table === null ? 4 : 3;
    bare.type('Lager', first, column, 'heavy');
    const { plan, problems } = await plansOf(port);
    const [driver] = plan.clubs;
    const notes = (driver?.notes ?? []).flatMap((note) => (note.note === 'issue' ? [note.issue] : []));
    const told = [...problems, ...notes].map(sayIssue).join(' ');
    expect(told).toContain(`“Lager” row ${first + 1}, under “Wt (oz)”, Mass (g) is “heavy”, not a number.`);
    expect(told).not.toContain('Stock row');
  });
});

describe('days put into a plain list', () => {
  /** Jobs of the shop's own as plain cells, with a job in them or with headings alone. */
  async function plainJobs(rows: readonly (readonly Seen[])[]) {
    const bare = await workshop();
    bare.addSheet('Book');
    bare.typeRows('Book', 0, 0, [['Ticket', 'Customer', 'Received', 'Finished'], ...rows]);
    const at = { sheet: 'Book', row: 0, column: 0, rows: rows.length + 1, columns: 4 };
    const keys = ['job', 'customer', 'received', 'closed'];
    const headings = ['Ticket', 'Customer', 'Received', 'Finished'];
    const matches = keys.map((key, position) => ({ key, heading: headings[position] ?? '', position, unit: null }));
    await connectList(bare, { schema: JOBS, list: { table: null, at }, within: at, matches });
    return { bare, port: connecting(bare) };
  }
  const begin = (port: ReturnType<typeof connecting>) =>
    startJob(port, {
      job: null,
      suggested: null,
      customer: 'Ivo Brandt',
      clubs: [{ name: 'Driver', kind: 'Driver' }],
      hand: null,
      due: null,
      today: 46_353,
      firstTag: '',
      authorisedBy: '',
      last: [],
    });

  test('are formatted as days in rows that the list did not have', async () => {
    const { bare, port } = await plainJobs([['1042', 'Tamsin Orrell', 46_300, null]]);
    expect(await begin(port)).toMatchObject({ done: true });
    expect(bare.shows('Book', 2, 2)).toBe(46_353);
    const [dressed] = bare.dressing().filter(({ at }) => at.sheet === 'Book');
    expect(dressed?.at).toEqual({ sheet: 'Book', row: 2, column: 2, rows: 1, columns: 1 });
    expect(dressed?.how).toContain('yyyy-mm-dd');
  });

  test('and in a column that held none; beside other days the shop’s own format stays', async () => {
    const { bare, port } = await plainJobs([
      ['1042', 'Tamsin Orrell', 46_300, null],
      ['1043', 'Ivo Brandt', null, null],
    ]);
    const [jobs] = await port.read([{ read: 'table', table: 'Jobs' }]);
    const write = (column: number): Change => ({
      do: 'write',
      at: { sheet: 'Book', row: 2, column, rows: 1, columns: 1 },
      cells: [[46_350]],
    });
    await port.apply([write(2), write(3)], [jobs as TableSeen], { label: 'days' });
    const places = bare.dressing().filter(({ at }) => at.sheet === 'Book');
    expect(places.map(({ at }) => [at.row, at.column])).toEqual([[2, 3]]);
  });
});

describe('lists that a connection names', () => {
  test('are found on hidden sheets and beyond the lists that are looked through', async () => {
    const bare = await plainWorkshop();
    bare.typeTable('Inventory', 'Hidden', [HEADINGS_OF_LIST, ...LIST_ROWS]);
    await connectStock(bare, PLAIN);
    bare.hide('Hidden');
    bare.hide('Lager');
    expect((await findLists(bare)).map(({ at }) => at.sheet)).not.toContain('Hidden');
    const places = await placesOfLists(bare, ['Inventory', 'Setwright_List_Stock', 'Nowhere']);
    expect(places.get('Inventory')).toMatchObject({ table: 'Inventory', at: { sheet: 'Hidden' } });
    expect(places.get('Setwright_List_Stock')).toMatchObject({ table: null, at: { sheet: 'Lager', row: 2 } });
    expect(places.has('Nowhere')).toBe(false);
  });
});

describe('a live plan that was filled before a list was connected', () => {
  test('is named, and filled again where it stands it reads the list; Undo brings the old formula back', async () => {
    const bare = await workshop();
    bare.typeTable('Inventory', 'Lager', [HEADINGS_OF_LIST, ...LIST_ROWS]);
    const port = connecting(bare);
    const fill = async (where: 'planSheet' | 'openSheet', job: string) =>
      fillPlan(port, await readShop(port), { scope: { job }, choices: {}, where, as: 'live' });
    expect(await fill('planSheet', '1042')).toMatchObject({ done: true, as: 'live' });
    bare.addSheet('Mine');
    bare.selected = { sheet: 'Mine', row: 4, column: 2, rows: 1, columns: 1 };
    expect(await fill('openSheet', '1043')).toMatchObject({ done: true, as: 'live' });
    await connectStock(bare);
    const behind = async () => plansBehind(bare, [{ schema: STOCK }], (await readShop(port)).plans);
    const found = await behind();
    expect(found.map(({ place, tables }) => [place.job, place.block.sheet, tables])).toEqual([
      ['1042', 'Plan 1042', ['Stock']],
      ['1043', 'Mine', ['Stock']],
    ]);
    const before = bare.content();
    expect(await followLists(port, await readShop(port), found)).toMatchObject({ done: true, left: [] });
    expect(await behind()).toEqual([]);
    expect(bare.formula('Mine', 13, 2)).toContain('Inventory');
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
    expect(bare.content()).toEqual(before);
  });
});
