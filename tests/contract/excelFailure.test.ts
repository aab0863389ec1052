import { describe, expect, it } from 'vitest';
import { createExcelPort } from '../../src/workbook/excel/port';
import { PortError } from '../../src/workbook/port';
import type { BlockSeen, Change, TableSeen, WorkbookPort } from '../../src/workbook/port';
import { addressOf } from '../../src/workbook/shared/address';
import { unpackReceipt } from '../../src/workbook/shared/packed';
import { simulate } from '../simulated/simulated';
import type { Simulated, SimulatedOptions, Trouble } from '../simulated/simulated';
import { personAt } from '../simulated/person';
import { block, write } from './structureSuite';

/** One change of every kind that can be put back, over blanks, over values, over formulas and inside a table. */
const changes: readonly Change[] = [
  { do: 'sheet', name: 'Plan' },
  write('Plan', 0, 0, [
    ['Club', 'Mass (g)'],
    ['7', 46],
    ['8', 47],
  ]),
  { do: 'table', name: 'Plan', at: block('Plan', 0, 0, 3, 2) },
  write('Sheet1', 0, 0, [
    ['new', 1, undefined],
    [{ call: 'SETPLAN', args: [{ table: 'Clubs' }] }, null, 'x'],
  ]),
  write('Sheet1', 6, 0, [[50]]),
  { do: 'table', name: 'Stock', at: block('Sheet1', 20, 0, 3, 2) },
  { do: 'format', at: block('Plan', 0, 0, 1, 2), format: { bold: true, number: '0.0' } },
  { do: 'choices', at: block('Sheet1', 30, 0, 2, 1), from: ['a', 'b'], hint: 'a or b' },
  {
    do: 'highlight',
    at: block('Sheet1', 30, 0, 2, 1),
    rules: [{ column: 0, equals: ['a'], fill: '#FFDDDD', ink: '#660000' }],
  },
  { do: 'widths', sheet: 'Plan', column: 0, widths: [10] },
  { do: 'freezeRows', sheet: 'Plan', rows: 1 },
  { do: 'name', name: 'Plan_new', at: block('Plan', 0, 0, 3, 2) },
  { do: 'name', name: 'Plan_old', at: block('Plan', 0, 0, 3, 2) },
  { do: 'remember', key: 'schema', value: '2' },
  { do: 'remember', key: 'fresh', value: '1' },
  { do: 'show', at: block('Plan', 0, 0, 1, 1) },
];

interface Prepared {
  readonly simulated: Simulated;
  readonly book: Simulated['book'];
  readonly port: WorkbookPort;
  readonly changes: readonly Change[];
  readonly looked: readonly (BlockSeen | TableSeen)[];
  readonly before: string;
}

const resized: readonly Change[] = [
  { do: 'widen', table: 'Clubs', headers: ['Reading', 'Tag'] },
  { do: 'lengthen', table: 'Clubs', rows: 2 },
  write('Sheet1', 7, 0, [[51, 'D2']]),
];

async function prepare(options: SimulatedOptions = {}): Promise<Prepared> {
  const simulated = simulate(options);
  const { book, host } = simulated;
  const sheet = book.active;
  const person = personAt(book);
  await person.type('Sheet1', 0, 0, '007');
  await person.typeFormula('Sheet1', 0, 1, '=1+1');
  await person.type('Sheet1', 1, 1, 33);
  await person.type('Sheet1', 5, 0, 'Mass');
  await person.type('Sheet1', 6, 0, 46);
  book.addTable(sheet, { row: 5, column: 0, rows: 2, columns: 1 }).name = 'Clubs';
  await person.type('Sheet1', 20, 0, 'Item');
  await person.type('Sheet1', 20, 1, 'Size');
  await person.type('Sheet1', 21, 0, 'kept');
  book.names.set('Plan_old', '=Sheet1!$A$1:$B$2');
  const port = createExcelPort(host);
  await port.remember('schema', '1');
  await port.remember('lastFill', 'an earlier receipt');
  const [plan, cells, table, below, beside, stock, dressed] = await port.read([
    { read: 'block', at: block('Plan', 0, 0, 3, 2) },
    { read: 'block', at: block('Sheet1', 0, 0, 2, 3) },
    { read: 'table', table: 'Clubs' },
    { read: 'block', at: block('Sheet1', 7, 0, 2, 3) },
    { read: 'block', at: block('Sheet1', 5, 1, 2, 2) },
    { read: 'block', at: block('Sheet1', 20, 0, 3, 2) },
    { read: 'block', at: block('Sheet1', 30, 0, 2, 1) },
  ]);
  const looked = [plan, cells, below, beside, stock, dressed, ...(table ? [table] : [])];
  // An Excel that cannot make a table longer says so before anything is done.
  const asked = options.excelApi === undefined ? [...changes.slice(0, 6), ...resized, ...changes.slice(6)] : changes;
  return { simulated, book, port, changes: asked, looked, before: book.snapshot() };
}

async function applyWith(prepared: Prepared, trouble: (request: number) => Trouble | null): Promise<PortError> {
  const { port, looked } = prepared;
  prepared.simulated.trouble = trouble;
  const error: unknown = await port.apply(prepared.changes, looked, { label: 'Fill', receiptKey: 'lastFill' }).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  prepared.simulated.trouble = null;
  if (!(error instanceof PortError)) throw new Error(`expected a PortError, got ${String(error)}`);
  return error;
}

async function countActions(options: SimulatedOptions = {}): Promise<number> {
  const prepared = await prepare(options);
  await prepared.port.apply(prepared.changes, prepared.looked, { label: 'Fill', receiptKey: 'lastFill' });
  return prepared.simulated.requests.at(-1)?.actions ?? 0;
}

const first = (code: string, at: Trouble['at']) => (request: number) => (request === 0 ? { code, at } : null);

describe('client contract, simulated workbook: when the host fails', () => {
  it('the change as such goes through, in one round trip', async () => {
    const prepared = await prepare();
    const requests = prepared.simulated.requests.length;
    await prepared.port.apply(prepared.changes, prepared.looked, { label: 'Fill', receiptKey: 'lastFill' });
    expect(prepared.simulated.requests.length - requests).toBe(1);
    expect(prepared.book.snapshot()).not.toBe(prepared.before);
    expect(prepared.book.tables.map((table) => table.name)).toEqual(['Clubs', 'Plan', 'Stock']);
  });

  it.each([
    ['answering what was done', {}],
    ['answering nothing', { answersOnFailure: false }],
    ['with the lowest requirement set', { excelApi: '1.9' }],
    ['without null objects below null objects', { nullsPropagate: false }],
  ] satisfies [string, SimulatedOptions][])(
    'puts everything back, whichever action fails, %s',
    async (_, options) => {
      const actions = await countActions(options);
      expect(actions).toBeGreaterThan(50);
      for (let at = 0; at < actions; at += 1) {
        const prepared = await prepare(options);
        const error = await applyWith(prepared, first('GeneralException', at));
        expect(error, `action ${at}`).toMatchObject({ code: 'putBack', cells: [] });
        expect(prepared.book.snapshot(), `action ${at}`).toBe(prepared.before);
        expect(prepared.book.active.dressAt('validation.rule', 30, 0)).toBeNull();
        expect(prepared.book.active.highlights).toEqual([]);
      }
    },
    60_000,
  );

  it('puts everything back when the answer is lost', async () => {
    const prepared = await prepare();
    const error = await applyWith(prepared, first('RequestAborted', 'after'));
    expect(error).toMatchObject({ code: 'putBack', hostSaid: 'RequestAborted' });
    expect(prepared.book.snapshot()).toBe(prepared.before);
  });

  it('keeps what a person types while it is put back, and names it', async () => {
    const actions = await countActions();
    const typed: readonly [string, number, number][] = [
      ['Sheet1', 0, 0],
      ['Sheet1', 6, 0],
      ['Sheet1', 7, 1],
      ['Sheet1', 5, 1],
      ['Sheet1', 8, 0],
    ];
    for (const [sheet, row, column] of typed) {
      const ends: string[] = [];
      // Before it is looked at, between that and the writing, and before what is kept is put back.
      for (const at of [1, 2, 3]) {
        const prepared = await prepare();
        const error = await applyWith(prepared, (request) => {
          if (request === at) prepared.book.sheet(sheet)?.put(row, column, 'typed');
          return request === 0 ? { code: 'GeneralException', at: actions - 1 } : null;
        });
        ends.push(error.code);
        const when = `${row},${column} at ${at}: ${error.message}`;
        const before = JSON.parse(prepared.before).sheets[0].cells as [string, unknown][];
        const others = (cells: [string, unknown][]) => cells.filter(([cell]) => cell !== `${row},${column}`);
        const now = cellsOf(prepared, sheet) as [string, { value: unknown }][];
        expect(new Map(now).get(`${row},${column}`)?.value, when).toBe('typed');
        // A table keeps its new columns, with their headings, where a person typed into one or over its heading; rows likewise.
        if (column < 1) expect(others(now), when).toEqual(others(before));
        if (at < 3) expect(error.cells.join(), when).toContain(addressOf({ row, column, rows: 1, columns: 1 }));
      }
      expect(ends).toEqual(['notLookedAt', 'notLookedAt', 'putBack']);
    }
  });

  it.each([
    ['is put in', null, { code: 'putBack', cells: [] }],
    ['is put in and filled', 'typed', { code: 'halfWritten', cells: ["'Sheet1'!A1:A4"] }],
  ])('never says that nothing was written where a row %s right after it failed', async (_, typed, expected) => {
    const simulated = simulate();
    const port = createExcelPort(simulated.host);
    const at = block('Sheet1', 0, 0, 4, 1);
    const looked = await port.read([{ read: 'block', at }]);
    simulated.trouble = (request) => {
      if (request === 1) simulated.book.insertRows(simulated.book.active, 2, 1);
      if (request === 1 && typed) simulated.book.active.put(2, 0, typed);
      return request === 0 ? { code: 'RequestAborted', at: 'after' } : null;
    };
    const cells = [['a'], ['b'], ['c'], ['d']];
    const failed = expect(port.apply([{ do: 'write', at, cells }], looked, { label: 'x' })).rejects;
    await failed.toMatchObject(expected);
    const left = [0, 1, 2, 3, 4].map((row) => simulated.book.active.own(row, 0).value);
    expect(left).toEqual(typed ? ['', '', 'typed', 'c', 'd'] : ['', '', '', '', '']);
  });

  it('does not take a sheet away that a person made meanwhile', async () => {
    const prepared = await prepare();
    prepared.book.addSheet('Plan');
    const before = prepared.book.snapshot();
    expect((await applyWith(prepared, () => null)).code).toBe('putBack');
    expect(prepared.book.snapshot()).toBe(before);
  });

  it('names the cells and keeps the receipt when putting back fails too, whichever action fails', async () => {
    const actions = await countActions();
    let failures = 0;
    for (let at = 0; ; at += 1) {
      const prepared = await prepare();
      const trouble = (request: number): Trouble | null => {
        if (request === 0) return { code: 'GeneralException', at: actions - 1 };
        return request === 2 ? { code: 'AccessDenied', at } : null;
      };
      const error = await applyWith(prepared, trouble);
      if (error.code === 'putBack') break;
      failures += 1;
      expect(error).toMatchObject({ code: 'halfWritten', hostSaid: expect.stringContaining('AccessDenied') as string });
      expect(error.cells).toEqual(expect.arrayContaining(['Plan!A1:B3', "'Sheet1'!A1:C2", "'Sheet1'!A7", 'Plan']));
      const receipt = unpackReceipt(String(prepared.book.settings.get('lastFill')));
      // What is kept is enough to take the rest back later.
      const { left } = await prepared.port.revert(receipt);
      expect(left.filter((cells) => !cells.startsWith('Plan!'))).toEqual([]);
      expect(cellsOf(prepared, 'Sheet1')).toEqual(JSON.parse(prepared.before).sheets[0].cells);
    }
    expect(failures).toBeGreaterThan(20);
  }, 60_000);

  it('names the cells when not even looking is possible any more', async () => {
    const prepared = await prepare();
    const error = await applyWith(prepared, (request) => ({
      code: 'GeneralException',
      at: request === 0 ? 60 : 'before',
    }));
    expect(error.code).toBe('halfWritten');
    expect(error.cells).toContain("'Sheet1'!A1:C2");
  });

  it.each([
    ['InvalidOperationInCellEditMode', 'editing'],
    ['RequestPayloadSizeLimitExceeded', 'tooLong'],
  ])('knows that %s means nothing was done', async (code, expected) => {
    const prepared = await prepare();
    const requests = prepared.simulated.requests.length;
    expect((await applyWith(prepared, first(code, 'before'))).code).toBe(expected);
    expect(prepared.simulated.requests.length - requests).toBe(1);
    expect(prepared.book.snapshot()).toBe(prepared.before);
  });

  it('leaves all as it was when taking back fails half way, whichever action fails, and can be asked again', async () => {
    const failed = new Set<string>();
    for (let at = 0; ; at += 1) {
      const prepared = await prepare();
      const receipt = await prepared.port.apply(prepared.changes, prepared.looked, { label: 'Fill' });
      const before = prepared.book.snapshot();
      prepared.simulated.trouble = (request) => (request === 1 ? { code: 'GeneralException', at } : null);
      const error: unknown = await prepared.port.revert(receipt).then(
        () => null,
        (thrown: unknown) => thrown,
      );
      if (error === null) break;
      failed.add((error as PortError).code);
      expect(prepared.book.snapshot(), `action ${at}`).toBe(before);
      prepared.simulated.trouble = null;
      if (at % 10 > 0) continue;
      expect(await prepared.port.revert(receipt), `action ${at}`).toMatchObject({ left: [] });
      expect(cellsOf(prepared, 'Sheet1')).toEqual(JSON.parse(prepared.before).sheets[0].cells);
      expect(prepared.book.sheets.map((sheet) => sheet.name)).toEqual(['Sheet1']);
    }
    expect([...failed]).toEqual(['putBack']);
  }, 60_000);

  it('names sheets that would not go when all else was taken back', async () => {
    const prepared = await prepare();
    const receipt = await prepared.port.apply(prepared.changes, prepared.looked, { label: 'Fill' });
    prepared.simulated.trouble = (request) => (request === 2 ? { code: 'GeneralException', at: 'before' } : null);
    await expect(prepared.port.revert(receipt)).rejects.toMatchObject({ code: 'halfWritten', cells: ['Plan'] });
    expect(cellsOf(prepared, 'Sheet1')).toEqual(JSON.parse(prepared.before).sheets[0].cells);
    expect(cellsOf(prepared, 'Plan')).not.toEqual([]);
    prepared.simulated.trouble = null;
    await prepared.port.revert(receipt);
    expect(prepared.book.sheets.map((sheet) => sheet.name)).toEqual(['Sheet1']);
  });

  it('leaves all as it was when a part of taking back that was sent fails, and a later part never was', async () => {
    const simulated = simulate();
    const port = createExcelPort(simulated.host);
    const stop = port.watch(() => undefined);
    await new Promise((done) => setTimeout(done, 20));
    const text = 'x'.repeat(600);
    const cells = Array.from({ length: 5000 }, (_, row) => [`${text}${row}`, `${text} ${row}`]);
    const at = block('Sheet1', 0, 0, cells.length, 2);
    for (const [down, line] of cells.entries()) {
      for (const [across, cell] of line.entries()) simulated.book.active.put(down, across, cell);
    }
    const [seen] = await port.read([{ read: 'block', at }]);
    const blanks = cells.map((line) => line.map(() => null));
    const receipt = await port.apply([{ do: 'write', at, cells: blanks }], [seen], { label: 'Blank' });
    let requests = 0;
    simulated.trouble = (request, actions) => {
      requests = request;
      return request === 1 ? { code: 'GeneralException', at: actions - 1 } : null;
    };
    const before = simulated.book.snapshot();
    await expect(port.revert(receipt)).rejects.toMatchObject({ code: 'putBack' });
    // one to look, the first part, one to listen again, one to look anew and at least one to put it back
    expect(requests).toBeGreaterThan(3);
    expect(simulated.book.snapshot()).toBe(before);
    expect(simulated.book.eventsOn).toBe(true);
    simulated.trouble = null;
    expect(await port.revert(receipt)).toMatchObject({ left: [] });
    expect(simulated.book.active.own(4999, 1).value).toBe(`${text} 4999`);
    stop();
    await new Promise((done) => setTimeout(done, 20));
  });

  it('listens again after taking back or putting back failed', async () => {
    const prepared = await prepare();
    const stop = prepared.port.watch(() => undefined);
    await new Promise((done) => setTimeout(done, 20));
    const actions = await countActions();
    const failing = await applyWith(prepared, (request) => {
      if (request === 0) return { code: 'GeneralException', at: actions - 1 };
      return request === 2 ? { code: 'AccessDenied', at: 3 } : null;
    });
    expect(failing.code).toBe('halfWritten');
    expect(prepared.book.eventsOn).toBe(true);
    const receipt = unpackReceipt(String(prepared.book.settings.get('lastFill')));
    prepared.simulated.trouble = (request) => (request === 1 ? { code: 'GeneralException', at: 8 } : null);
    await expect(prepared.port.revert(receipt)).rejects.toMatchObject({ code: 'putBack' });
    expect(prepared.book.eventsOn).toBe(true);
    stop();
    await new Promise((done) => setTimeout(done, 20));
  });

  it.each([
    ['AccessDenied', 'protected'],
    ['InvalidOperationInCellEditMode', 'editing'],
    ['ApiNotAvailable', 'unsupported'],
    ['GeneralException', 'host'],
  ])('says for a failing read with %s: %s', async (code, expected) => {
    const simulated = simulate();
    const port = createExcelPort(simulated.host);
    simulated.trouble = () => ({ code, at: 'before' });
    await expect(port.read([{ read: 'sheets' }])).rejects.toMatchObject({ code: expected, hostSaid: code });
    simulated.trouble = null;
    await expect(port.read([{ read: 'sheets' }])).resolves.toHaveLength(1);
  });
});

function cellsOf({ book }: Prepared, sheet: string): unknown {
  const found = (JSON.parse(book.snapshot()) as { sheets: { name: string; cells: unknown }[] }).sheets;
  return found.find((other) => other.name === sheet)?.cells;
}
