/** Client contract, simulated workbook: what a person does while requests are on their way. */
import { describe, expect, it } from 'vitest';
import { createExcelPort } from '../../src/workbook/excel/port';
import { PortError, type Change, type Receipt, type WorkbookPort } from '../../src/workbook/port';
import { LIST_STEM } from '../../src/workbook/shared/limits';
import { unpackReceipt } from '../../src/workbook/shared/packed';
import type { Book } from '../simulated/book';
import { simulate, type Simulated } from '../simulated/simulated';
import { block, look, make, write } from './structureSuite';

describe('client contract, simulated workbook: sheets that a person hid', () => {
  it('are written on and stay hidden', async () => {
    const { book, host } = simulate();
    const port = createExcelPort(host);
    book.addSheet('Plan').visibility = 'Hidden';
    const receipt = await make(port, [write('Plan', 0, 0, [['a']]), { do: 'show', at: block('Plan', 0, 0, 1, 1) }]);
    expect(book.sheet('Plan')).toMatchObject({ visibility: 'Hidden' });
    expect(book.active.name).toBe('Sheet1');
    expect(await port.revert(receipt)).toMatchObject({ restored: 1, left: [] });
    expect((await look(port, block('Plan', 0, 0, 1, 1)))[0]?.values).toEqual([[null]]);
  });
});

/** Rows that a person made, with a table around some, and what is written into them in several requests. */
const ROWS = 30;
const texts = (stem: string): string[][] =>
  Array.from({ length: ROWS }, (_, row) => [`${stem} ${row} ${'x'.repeat(60)}`]);

function shop(mostBytes = 900): Simulated {
  const simulated = simulate({ mostBytes });
  const { book } = simulated;
  const sheet = book.active;
  sheet.put(2, 0, 'Club');
  sheet.put(2, 1, 'Grip');
  for (let row = 0; row < ROWS; row += 1) {
    sheet.put(3 + row, 0, `club ${row}`);
    // Some alike, some blank.
    if (row % 3 > 0) sheet.put(3 + row, 1, `old ${row % 2}`);
  }
  book.addTable(sheet, { row: 2, column: 0, rows: ROWS + 1, columns: 2 }).name = 'Clubs';
  sheet.put(60, 0, 'mine');
  book.names.set('Plan_old', "='Sheet1'!$D$4:$D$33");
  return simulated;
}

const changes: readonly Change[] = [
  { do: 'lengthen', table: 'Clubs', rows: 2 },
  { do: 'write', at: block('Sheet1', 3, 1, ROWS, 1), cells: texts('new'), of: { table: 'Clubs', by: ['Club'] } },
  write('Sheet1', 3 + ROWS, 0, [['club more', 'new more']]),
  write('Sheet1', 3, 3, texts('plan')),
  { do: 'name', name: 'Plan_old', at: block('Sheet1', 3, 3, 4, 1) },
];

async function writeAll(simulated: Simulated, first: readonly Change[] = []): Promise<PortError | null> {
  const port = createExcelPort(simulated.host);
  const [table, below, plan, other] = await port.read([
    { read: 'table', table: 'Clubs' },
    { read: 'block', at: block('Sheet1', 3 + ROWS, 0, 2, 2) },
    { read: 'block', at: block('Sheet1', 3, 3, ROWS, 1) },
    { read: 'block', at: block('Other', 0, 0, 1, 1) },
  ]);
  if (!table) throw new Error('no table');
  simulated.trouble = waiting.get(simulated) ?? null;
  return port.apply([...first, ...changes], [table, below, plan, other], { label: 'Fill', receiptKey: 'kept' }).then(
    () => null,
    (error: unknown) => {
      if (error instanceof PortError) return error;
      throw error;
    },
  );
}

const waiting = new WeakMap<Simulated, NonNullable<Simulated['trouble']>>();

/** Lets a person do something right before a request of the writing. */
function meanwhile(simulated: Simulated, at: number, act: (book: Book) => void): void {
  waiting.set(simulated, (request) => {
    if (request === at) act(simulated.book);
    return null;
  });
}

async function countRequests(): Promise<number> {
  const simulated = shop();
  let count = 0;
  waiting.set(simulated, (request) => {
    count = request + 1;
    return null;
  });
  expect(await writeAll(simulated)).toBeNull();
  return count;
}

describe('client contract, simulated workbook: a write that takes several requests', () => {
  it.each<[string, (book: Book) => void]>([
    ['a row is put in above', (book) => book.insertRows(book.active, 0, 1)],
    ['rows are put in inside', (book) => book.insertRows(book.active, 9, 2)],
    ['a row is put in before the last', (book) => book.insertRows(book.active, 2 + ROWS, 1)],
    ['the sheet gets another name', (book) => book.renameSheet(book.active, 'Kept apart')],
    ['a cell is typed into that was to come', (book) => book.active.put(2 + ROWS, 3, 'typed')],
  ])('leaves everything as it was or is whole when %s', async (_, act) => {
    const count = await countRequests();
    expect(count).toBeGreaterThan(4);
    const ends: string[] = [];
    for (let at = 0; at < count; at += 1) {
      const alone = shop();
      act(alone.book);
      const simulated = shop();
      meanwhile(simulated, at, act);
      const error = await writeAll(simulated);
      ends.push(error?.code ?? 'written');
      if (error) {
        expect(['notLookedAt', 'putBack'], `request ${at}: ${error.message}`).toContain(error.code);
        expect(simulated.book.snapshot(), `request ${at}`).toBe(alone.book.snapshot());
      }
    }
    expect(ends.slice(0, -1)).not.toContain('written');
  });
});

describe('client contract, simulated workbook: a write of one request that fails', () => {
  it.each<[string, (book: Book) => void]>([
    ['rows are put in inside', (book) => book.insertRows(book.active, 9, 2)],
    ['a row is put in before the last', (book) => book.insertRows(book.active, 2 + ROWS, 1)],
    ['the table is sorted', (book) => sort(book, [0, 1])],
    ['all is sorted', (book) => sort(book, [0, 1, 3])],
  ])('is put back where it stands when %s right after', async (_, act) => {
    const alone = shop(4_500_000);
    act(alone.book);
    const simulated = shop(4_500_000);
    let actions = 0;
    waiting.set(simulated, (request: number, count: number): null => {
      if (request === 0) actions = count;
      return null;
    });
    expect(await writeAll(simulated)).toBeNull();
    for (const at of [...Array(actions).keys(), 'after'] as const) {
      const late = shop(4_500_000);
      waiting.set(late, (request) => {
        if (request === 1) act(late.book);
        return request === 0 ? { code: 'GeneralException', at } : null;
      });
      const error = await writeAll(late);
      const when = `${at}: ${String(error)}`;
      // Where no cell was written that tells, all that is known is that cells are not as they were; a table that was longer by then stays so.
      expect(['putBack', 'notLookedAt'], when).toContain(error?.code);
      if (at === 'after' || at > actions - 10) expect(error?.code, when).toBe('putBack');
      const text = error?.code === 'putBack' ? (each: string) => each : withoutEnd;
      expect(text(late.book.snapshot()), when).toBe(text(alone.book.snapshot()));
    }
  });
});

describe('client contract, simulated workbook: a write into a table that is too wide to be looked at in one answer', () => {
  /** One column of thirty rows, which are sixty columns wide. */
  async function writeColumn(at: number, typed: number): Promise<{ error: unknown; book: Book; requests: number }> {
    const simulated = simulate({ mostBytes: 20_000 });
    const { book, host } = simulated;
    for (let column = 0; column < 60; column += 1) {
      book.active.put(0, column, `c${column}`);
      for (let row = 1; row <= ROWS; row += 1) book.active.put(row, column, `${row} ${'x'.repeat(12)} ${column}`);
    }
    book.addTable(book.active, { row: 0, column: 0, rows: ROWS + 1, columns: 60 }).name = 'Wide';
    const port = createExcelPort(host);
    const [table] = await port.read([{ read: 'table', table: 'Wide' }]);
    if (!table) throw new Error('no table');
    let requests = 0;
    simulated.trouble = (request) => {
      requests = request + 1;
      if (request === at) book.active.put(typed, 59, 'typed');
      return null;
    };
    const cells = Array.from({ length: ROWS }, (_, row) => [`new ${row}`]);
    const error: unknown = await port.apply([write('Sheet1', 1, 59, cells)], [table], { label: 'x' }).then(
      () => null,
      (thrown: unknown) => thrown,
    );
    return { error, book, requests };
  }

  it('is looked at in the very request that writes, row by row if need be', async () => {
    const { requests } = await writeColumn(-1, 0);
    expect(requests).toBeGreaterThan(4);
    for (let at = 0; at < requests; at += 1) {
      for (const typed of [1, ROWS / 2, ROWS]) {
        const { error, book } = await writeColumn(at, typed);
        const when = `typed into row ${typed} before request ${at}: ${String(error)}`;
        expect(book.active.own(typed, 59).value, when).toBe('typed');
        const others = [1, 2, 14, 15, 16, ROWS].filter((row) => row !== typed);
        for (const row of others) {
          const was = `${row} ${'x'.repeat(12)} 59`;
          expect(book.active.own(row, 59).value, when).toBe(error ? was : `new ${row - 1}`);
        }
      }
    }
  });
});

describe('client contract, simulated workbook: what is longer than one request or one answer', () => {
  const WIDE = 20;

  /** Three rows of which the second is too long, as plain cells or as a table, and a block beside them. */
  async function long(as: 'cells' | 'table') {
    const simulated = simulate();
    const { book, host } = simulated;
    for (let row = 0; row < 4; row += 1) {
      for (let column = 0; column < WIDE; column += 1) {
        book.active.put(row, column, row === 2 ? `${column} ${'x'.repeat(90)}` : `c${column} ${row}`);
      }
    }
    if (as === 'table') book.addTable(book.active, { row: 0, column: 0, rows: 4, columns: WIDE }).name = 'Wide';
    const port = createExcelPort({ ...host, mostBytes: 3000 });
    const [table, cells, page] = await port.read([
      { read: 'table', table: 'Wide' },
      { read: 'block', at: block('Sheet1', 0, 0, 4, WIDE) },
      { read: 'block', at: block('Sheet1', 10, 0, ROWS, 2) },
    ]);
    return { book, port, looked: [table ?? cells, page] };
  }

  it.each([
    ['a row of a table', 'table', [['new'], ['new'], ['new']], "'Sheet1'!A3:T3"],
    ['cells of a row', 'cells', [['new'], ['x'.repeat(3000)], ['new']], "'Sheet1'!B3"],
  ] as const)('%s: is named, and all is as it was, whatever was written by then', async (_, as, cells, named) => {
    for (const first of [[], [write('Sheet1', 10, 0, texts('first')), write('Sheet1', 10, 1, texts('second'))]]) {
      const { book, port, looked } = await long(as);
      const before = book.snapshot();
      const asked = [
        ...first,
        write(
          'Sheet1',
          1,
          1,
          cells.map((line) => [...line]),
        ),
      ];
      const failed = expect(port.apply(asked, looked, { label: 'Fill', receiptKey: undefined })).rejects;
      await failed.toMatchObject({ code: 'tooLong', cells: [named] });
      expect(book.snapshot()).toBe(before);
    }
  });

  it('a receipt: is told, and nothing is written', async () => {
    const { book, host } = simulate({ requestLimit: 1_200_000 });
    const port = createExcelPort({ ...host, mostBytes: 1_200_000 });
    const at = block('Sheet1', 0, 0, 200, 100);
    const [looked] = await port.read([{ read: 'block', at }]);
    const before = book.snapshot();
    const cells = Array.from({ length: 200 }, (_, row) =>
      Array.from({ length: 100 }, (_cell, column) => `${row} ${column} ${'x'.repeat(60)}`),
    );
    const failed = expect(
      port.apply([write('Sheet1', 0, 0, cells)], [looked], { label: 'Fill', receiptKey: 'kept' }),
    ).rejects;
    await failed.toMatchObject({ code: 'tooLong', cells: [] });
    expect(book.snapshot()).toBe(before);
    expect(book.settings.size).toBe(0);
  });

  it('a row that is too long to be read is named', async () => {
    const { book, host } = simulate({ answerLimit: 2500 });
    book.active.put(3, 0, 'x'.repeat(2500));
    const port = createExcelPort(host);
    const read = expect(port.read([{ read: 'block', at: block('Sheet1', 2, 0, 4, 2) }])).rejects;
    await read.toMatchObject({ code: 'tooLong', cells: ["'Sheet1'!A4:B4"] });
  });
});

/** Turns the rows of the table, or of the plan beside it, upside down. */
function sort(book: Book, columns: readonly number[]): void {
  const { active: sheet } = book;
  for (let row = 0; row < Math.floor(ROWS / 2); row += 1) {
    for (const column of columns) {
      const [one, other] = [3 + row, 2 + ROWS - row];
      const [a, b] = [sheet.own(one, column), sheet.own(other, column)];
      sheet.put(one, column, b.value);
      sheet.put(other, column, a.value);
    }
  }
}

describe('client contract, simulated workbook: a write of several requests into what a person sorts meanwhile', () => {
  it.each([
    ['a table', [0, 1]],
    ['cells of a plan', [3]],
  ])('leaves %s as the person sorted it, or is whole', async (_, columns) => {
    const count = await countRequests();
    const ends: string[] = [];
    for (let at = 0; at < count; at += 1) {
      const alone = shop();
      sort(alone.book, columns);
      const simulated = shop();
      meanwhile(simulated, at, (book) => sort(book, columns));
      const error = await writeAll(simulated);
      ends.push(error?.code ?? 'written');
      if (!error) continue;
      expect(['notLookedAt', 'putBack'], `request ${at}: ${error.message}`).toContain(error.code);
      expect(simulated.book.snapshot(), `request ${at}`).toBe(alone.book.snapshot());
    }
    expect(ends.filter((end) => end === 'notLookedAt').length).toBeGreaterThan(2);
  });

  it('puts back all that it may where a sheet is protected meanwhile, and Undo the rest once it is not', async () => {
    const count = await countRequests();
    let halves = 0;
    for (let at = 0; at < count; at += 1) {
      const simulated = shop();
      const { book } = simulated;
      const before = book.snapshot();
      const other = book.addSheet('Other');
      meanwhile(simulated, at, () => {
        book.active.protected = true;
      });
      const error = await writeAll(simulated, [write('Other', 0, 0, [['ours']])]);
      book.active.protected = false;
      expect(other.own(0, 0).value, `request ${at}`).toBe(error ? '' : 'ours');
      if (error?.code === 'halfWritten') {
        halves += 1;
        expect(error.cells.filter((cell) => !cell.startsWith("'Sheet1'!") && cell !== 'Clubs')).toEqual([]);
        const port = createExcelPort(simulated.host);
        const receipt = await port.recall('kept');
        expect(await port.revert(unpackReceipt(receipt ?? ''))).toMatchObject({ left: [], notFound: [] });
        await port.remember('kept', null);
      }
      if (!error) continue;
      book.deleteSheet(other);
      // Blank rows of a longer table stay when a fill is taken back.
      expect(withoutEnd(book.snapshot()), `request ${at}`).toBe(withoutEnd(before));
    }
    expect(halves).toBeGreaterThan(2);
  });
});

const withoutEnd = (text: string): string => text.replace(/(Clubs A3:B)\d+/, '$1');

interface Filled {
  readonly simulated: Simulated;
  readonly port: WorkbookPort;
  readonly receipt: Receipt;
  readonly book: Book;
}

/** Taking back comes to the same whether a person does something before the look or right before the writing. */
async function expectSame(begin: () => Promise<Filled>, act: (book: Book) => void): Promise<void> {
  const early = await begin();
  act(early.book);
  const expected = await early.port.revert(early.receipt);
  const late = await begin();
  late.simulated.trouble = (request) => {
    if (request === 1) act(late.book);
    return null;
  };
  expect(await late.port.revert(late.receipt)).toMatchObject({ left: expected.left, notFound: expected.notFound });
  expect(late.book.snapshot()).toBe(early.book.snapshot());
}

describe('client contract, simulated workbook: taking back', () => {
  /** A table, a list of cells and a sheet that were filled. */
  async function filled(mostBytes?: number) {
    const simulated = shop(4_500_000);
    const port = createExcelPort(simulated.host);
    const [table, plan, sheet] = await port.read([
      { read: 'table', table: 'Clubs' },
      { read: 'block', at: block('Sheet1', 3, 3, ROWS, 1) },
      { read: 'block', at: block('Page', 0, 0, 2, 1) },
    ]);
    if (!table) throw new Error('no table');
    const before = simulated.book.snapshot();
    const cells = Array.from({ length: ROWS }, (_, row) => [`new ${row % 2}`]);
    const receipt = await port.apply(
      [
        { do: 'sheet', name: 'Page' },
        write('Page', 0, 0, [['a'], ['b']]),
        { do: 'write', at: block('Sheet1', 3, 1, ROWS, 1), cells, of: { table: 'Clubs', by: ['Club'] } },
        write('Sheet1', 3, 3, texts('plan')),
      ],
      [table, plan, sheet],
      { label: 'Fill' },
    );
    // Taken back by a host that takes no more at once than this.
    const after = mostBytes === undefined ? port : createExcelPort({ ...simulated.host, mostBytes });
    return { simulated, port: after, receipt, before, book: simulated.book };
  }

  const swap = (book: Book, one: number, other: number): void => {
    const { active: sheet } = book;
    for (const column of [0, 1]) {
      const [a, b] = [sheet.own(one, column), sheet.own(other, column)];
      sheet.put(one, column, b.value);
      sheet.put(other, column, a.value);
    }
  };

  it.each<[string, (book: Book) => void]>([
    ['a row is put in above', (book) => book.insertRows(book.active, 0, 1)],
    ['rows are put in inside', (book) => book.insertRows(book.active, 9, 2)],
    ['the table is sorted', (book) => swap(book, 4, 9)],
    ['cells are typed into', (book) => [1, 3].forEach((column) => book.active.put(12, column, 'typed'))],
    ['a cell of the sheet is typed into that goes', (book) => book.sheet('Page')?.put(7, 2, 'typed')],
    ['a cell of the sheet is typed into that was written', (book) => book.sheet('Page')?.put(0, 0, 'typed')],
  ])('is the same whether %s before the look or right before the writing', async (_, act) => {
    await expectSame(filled, act);
  });

  it('leaves all as it was found where it fails, also where a person types while that takes several requests', async () => {
    const fail = { code: 'GeneralException', at: 'before' } as const;
    let ends = 0;
    for (const failing of [13, 19, 23]) {
      for (let typing = failing; typing < failing + 9; typing += 1) {
        const alone = await filled();
        const late = await filled(900);
        for (const { book } of [alone, late]) book.active.put(12, 3, 'mine');
        let typed = false;
        // Begun anew it fails at once: its look is the longest request.
        late.simulated.trouble = (request, actions) => {
          if (request === typing) {
            late.book.active.put(5, 3, 'typed');
            typed = true;
          }
          return request === failing || (request > failing && actions > 100) ? fail : null;
        };
        const error: unknown = await late.port.revert(late.receipt).catch((thrown: unknown) => thrown);
        if (!(error instanceof PortError)) continue;
        ends += 1;
        if (typed) alone.book.active.put(5, 3, 'typed');
        expect(['putBack', 'notLookedAt', 'host'], `${failing}, ${typing}: ${String(error)}`).toContain(error.code);
        expect(late.book.snapshot(), `${failing}, ${typing}: ${String(error)}`).toBe(alone.book.snapshot());
      }
    }
    expect(ends).toBeGreaterThan(20);
  });

  it('keeps a sheet into which a person typed meanwhile, also where what stands on it is long', async () => {
    const makes = async () => {
      const simulated = simulate();
      const port = createExcelPort(simulated.host);
      const [page] = await port.read([{ read: 'block', at: block('Page', 0, 0, ROWS, 1) }]);
      const made = [{ do: 'sheet', name: 'Page' } as const, write('Page', 0, 0, texts('page'))];
      const receipt = await port.apply(made, [page], { label: 'Fill' });
      return { simulated, receipt, port: createExcelPort({ ...simulated.host, mostBytes: 2000 }) };
    };
    const alone = await makes();
    const requests = alone.simulated.requests.length;
    await alone.port.revert(alone.receipt);
    expect(alone.simulated.book.sheet('Page')).toBeNull();
    const count = alone.simulated.requests.length - requests;
    expect(count).toBeGreaterThan(4);
    // In the very request in which it goes nothing can be asked any more, nor again what was asked in one before that.
    for (const [row, column, last] of [
      [40, 2, count - 2],
      [ROWS - 1, 0, count - 2],
      [1, 0, 1],
    ] as const) {
      for (let at = 0; at <= last; at += 1) {
        const { simulated, port, receipt } = await makes();
        simulated.trouble = (request) => {
          if (request === at) simulated.book.sheet('Page')?.put(row, column, 'typed');
          return null;
        };
        await port.revert(receipt);
        expect(simulated.book.sheet('Page')?.own(row, column).value, `${at} of ${count}, ${row}`).toBe('typed');
      }
    }
  });

  it('is one request to look, one to write and one in which sheets go, where nobody does anything', async () => {
    const { simulated, port, receipt, before, book } = await filled();
    const requests = simulated.requests.length;
    expect(await port.revert(receipt)).toMatchObject({ left: [], notFound: [] });
    expect(book.snapshot()).toBe(before);
    expect(simulated.requests.length - requests).toBe(3);
  });
});

const LIST = `${LIST_STEM}Rack`;

/** A table and a list that were made wider, a table, a sheet and a name that were made, and a name that was moved. */
async function resized() {
  const simulated = shop(4_500_000);
  const { book } = simulated;
  const rack = book.addSheet('Rack');
  for (const [row, line] of [
    ['Club', 'Rack'],
    ['Driver', 'a'],
    ['7 iron', 'b'],
  ].entries()) {
    line.forEach((text, across) => rack.put(1 + row, 1 + across, text));
  }
  book.names.set(LIST, '=Rack!$B$2:$C$4');
  const port = createExcelPort(simulated.host);
  const [clubs, ...rest] = await port.read([
    { read: 'table', table: 'Clubs' },
    { read: 'block', at: block('Sheet1', 2, 2, ROWS + 1, 1) },
    { read: 'block', at: block('Sheet1', 3 + ROWS, 0, 1, 2) },
    { read: 'block', at: block('Sheet1', 2, 5, 3, 2) },
    { read: 'block', at: block('Rack', 1, 1, 3, 3) },
    { read: 'block', at: block('Page', 0, 0, 2, 1) },
  ]);
  if (!clubs) throw new Error('no table');
  const before = book.snapshot();
  const of = { table: LIST, by: ['Club'], headingRows: 1 };
  const receipt = await port.apply(
    [
      { do: 'sheet', name: 'Page' },
      write('Page', 0, 0, [['a'], ['b']]),
      { do: 'widen', table: 'Clubs', headers: ['Tag'] },
      write('Sheet1', 5, 2, [['t']]),
      write('Sheet1', 2, 5, [
        ['Item', 'On hand'],
        ['x', 1],
        ['y', 2],
      ]),
      { do: 'table', name: 'Fresh', at: block('Sheet1', 2, 5, 3, 2) },
      { do: 'name', name: LIST, at: block('Rack', 1, 1, 3, 3) },
      { do: 'write', at: block('Rack', 1, 3, 2, 1), cells: [['Reading'], ['D2']], of },
      { do: 'name', name: 'Plan_new', at: block('Page', 0, 0, 2, 1) },
      { do: 'name', name: 'Plan_old', at: block('Page', 0, 0, 2, 1) },
    ],
    [clubs, ...rest],
    { label: 'Fill' },
  );
  return { simulated, port, receipt, before, book };
}

describe('client contract, simulated workbook: taking back what made tables, lists and names', () => {
  it('leaves all as it was', async () => {
    const { port, receipt, before, book } = await resized();
    expect(await port.revert(receipt)).toMatchObject({ left: [], notFound: [] });
    expect(book.snapshot()).toBe(before);
  });

  it.each([
    ['filters', { buttons: true, filtered: true, filters: [null, { filterOn: 'Custom', criterion1: '>1' }] }],
    ['no buttons', { buttons: false, filtered: false, filters: [] }],
  ])('leaves a table with its looks and %s as they were found where it fails', async (_, filter) => {
    const { simulated, port, receipt, book } = await resized();
    const fresh = () => book.tables.find(({ name }) => name === 'Fresh') ?? null;
    const looks = { style: 'TableStyleDark3', banded: false, bandedColumns: true, firstColumn: true, lastColumn: true };
    const found = Object.assign(fresh() ?? {}, looks, filter);
    simulated.trouble = (request, actions) => (request === 1 ? { code: 'GeneralException', at: actions - 1 } : null);
    await expect(port.revert(receipt)).rejects.toMatchObject({ code: 'putBack' });
    expect(fresh()).not.toBe(found);
    expect(fresh()).toMatchObject({ ...looks, ...filter });
  });

  it('leaves a name as it was found where it fails, also one that stands for a formula by now', async () => {
    const { simulated, port, receipt, book } = await resized();
    book.names.set('Plan_new', '=SUM(Rack!$B$2:$C$4)*2');
    const found = book.snapshot();
    simulated.trouble = (request, actions) => (request === 1 ? { code: 'GeneralException', at: actions - 1 } : null);
    await expect(port.revert(receipt)).rejects.toMatchObject({ code: 'putBack' });
    expect(book.snapshot()).toBe(found);
  });

  it.each<[string, (book: Book) => void]>([
    ['a cell of the new column is typed into', (book) => book.active.put(9, 2, 'typed')],
    ['a cell of the new column is typed over', (book) => book.active.put(5, 2, 'typed')],
    ['the heading of the new column is typed over', (book) => book.active.put(2, 2, 'Mine')],
    ['a cell of the new table is typed over', (book) => book.active.put(3, 6, 'typed')],
    [
      'the new table is made longer',
      (book) => {
        book.active.put(5, 5, 'z');
        const fresh = book.tables.find(({ name }) => name === 'Fresh');
        if (fresh) fresh.at = { ...fresh.at, rows: 4 };
      },
    ],
    [
      'the new table is given up',
      (book) => {
        book.tables.splice(
          book.tables.findIndex(({ name }) => name === 'Fresh'),
          1,
        );
      },
    ],
    ['a cell of the list’s new column is typed into', (book) => book.sheet('Rack')?.put(3, 3, 'typed')],
    ['a heading of the list is typed over', (book) => book.sheet('Rack')?.put(1, 3, 'Mine')],
    [
      'a row is put into the list',
      (book) => {
        const rack = book.sheet('Rack');
        if (rack) book.insertRows(rack, 3, 1);
      },
    ],
    ['a row is put in above', (book) => book.insertRows(book.active, 0, 1)],
    ['a name is moved', (book) => void book.names.set('Plan_old', '=Rack!$A$1')],
    ['a name is deleted', (book) => void book.names.delete('Plan_new')],
  ])('is the same whether %s before the look or right before the writing', async (_, act) => {
    await expectSame(resized, act);
  });
});

describe('client contract, simulated workbook: a sheet that is protected between the look and the writing', () => {
  it('is named by what Excel says; what was written elsewhere is put back, and no look is taken where none may be', async () => {
    const { book, host } = simulate();
    const port = createExcelPort(host);
    const page = book.addSheet('Page');
    const seen = await look(port, block('Sheet1', 0, 0, 1, 1));
    const [locked] = await look(port, block('Page', 0, 0, 1, 1));
    page.protected = true;
    const before = book.snapshot();
    const format = { do: 'format', at: block('Page', 0, 0, 1, 1), format: { bold: true } } as const;
    const asked = [write('Sheet1', 0, 0, [['a']]), write('Page', 0, 0, [['b']]), format];
    const looked = locked ? [...seen, locked] : seen;
    await expect(port.apply(asked, looked, { label: 'x' })).rejects.toMatchObject({ code: 'putBack' });
    expect(book.snapshot()).toBe(before);
  });
});
