import { afterEach, describe, expect, test } from 'vitest';
import { BooleanNumber, ICommandService, type IStyleData } from '@univerjs/core';
import { ConditionalFormattingRuleModel } from '@univerjs/sheets-conditional-formatting';
import { SheetDataValidationModel } from '@univerjs/sheets-data-validation';
import { onErrorSentence } from '../../src/workbook/embedded/errorSentence';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { wrappedLines } from '../../src/workbook/shared/wrappedLines';
import type { Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import type { Block, Change, Put, WorkbookPort } from '../../src/workbook/port';
import { openSheet, type, valueAt, valuesAt } from './sheet';

let open: Spreadsheet | undefined;
afterEach(() => {
  open?.dispose();
  open = undefined;
});

const body = (sheet: string, row: number, column: number, rows = 1, columns = 1): Block => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

/** Rows of a range whose first cell holds something, each with its number in front. */
const filled = {
  takes: ['range[]'],
  does: (range: unknown[][]) => range.filter(([first]) => first !== '').map((row, index) => [index, ...row]),
};

interface Opened {
  readonly sheet: Spreadsheet;
  readonly port: WorkbookPort;
  put(at: Block, cells: readonly (readonly Put[])[], ...more: Change[]): ReturnType<WorkbookPort['apply']>;
}

async function openPort(cells: readonly (readonly (string | number | null)[])[] = []): Promise<Opened> {
  const tables = cells.length > 0 ? [{ name: 'Clubs', row: 0, column: 0, rows: cells.length, columns: 2 }] : [];
  const sheet = await openSheet(
    [
      { name: 'Clubs', cells, tables, rowCount: 60 },
      { name: 'Plan', cells: [], rowCount: 20, columnCount: 6 },
    ],
    {
      functions: { FILLED: filled },
    },
  );
  open = sheet;
  const port = createEmbeddedPort(sheet);
  return {
    sheet,
    port,
    put: async (at, put, ...more) => {
      const looked = await port.read([
        { read: 'block', at },
        { read: 'block', at: body('Elsewhere', 0, 0) },
      ]);
      return port.apply([{ do: 'write', at, cells: put }, ...more], looked, { label: 'Test', receiptKey: 'last' });
    },
  };
}

const clubs = [
  ['Club', 'Layers'],
  ['7 iron', 2],
  ['Wedge', 1],
];

describe('text stays text', () => {
  const texts = ['007', '=1+1', '+49 30', '-3', '@home', '1/2', 'TRUE', '1e3', "'quoted", ' 5 ', '2026-05-01'];

  test.each(texts)('%j', async (text) => {
    const { port, put, sheet } = await openPort();
    const at = body('Plan', 0, 0);
    await put(at, [[text]]);
    const [seen] = await port.read([{ read: 'block', at }]);
    expect(seen.values).toEqual([[text]]);
    expect(seen.formulas).toEqual([[null]]);
    // To a formula it is text as well.
    await type(sheet, 'Plan', 'B1', '=ISTEXT(A1)');
    expect(valueAt(sheet, 'Plan!B1')).toBe(true);
  });
});

test('the text #N/A stays text in its cell, though the engine hands it to formulas as the error', async () => {
  const { port, put } = await openPort();
  const at = body('Plan', 0, 0);
  await put(at, [['#N/A']]);
  expect((await port.read([{ read: 'block', at }]))[0].values).toEqual([['#N/A']]);
});

describe('formulas', () => {
  test('cover the table and the blank rows below it, not what stands further down', async () => {
    const { port, put, sheet } = await openPort(clubs);
    await type(sheet, 'Clubs', 'B30', 'note');
    const at = body('Plan', 0, 0);
    await put(at, [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]]);
    const [seen] = await port.read([{ read: 'block', at: { ...at, rows: 3, columns: 3 } }]);
    expect(seen.formulas[0]?.[0]).toBe('=REGRIP.FILLED(Clubs!$A$1:$B$29)');
    expect(seen.values).toEqual([
      [0, 'Club', 'Layers'],
      [1, '7 iron', 2],
      [2, 'Wedge', 1],
    ]);
    expect(seen.spills).toEqual([{ ...at, rows: 3, columns: 3 }]);
  });

  test('below their own table they do not read themselves', async () => {
    const { put, sheet } = await openPort(clubs);
    await put(body('Clubs', 10, 0), [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]]);
    expect(valuesAt(sheet, 'Clubs!A11:C11')).toEqual([[0, 'Club', 'Layers']]);
  });

  test('get a sheet large enough for what they fill', async () => {
    const { put, sheet } = await openPort(clubs);
    await put(body('Plan', 18, 4), [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]]);
    expect(valuesAt(sheet, 'Plan!E19:G21')[2]).toEqual([2, 'Wedge', 1]);
  });
});

describe('tables grow', () => {
  test('over a row typed below, at once and for formulas too; undoing the typing shrinks them again', async () => {
    const { port, put, sheet } = await openPort(clubs);
    await put(body('Plan', 0, 0), [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]]);
    await type(sheet, 'Clubs', 'A4', 'Driver');
    expect((await port.read([{ read: 'table', table: 'Clubs' }]))[0]?.rows).toEqual([
      ['7 iron', 2],
      ['Wedge', 1],
      ['Driver', null],
    ]);
    expect(valuesAt(sheet, 'Plan!A4:B4')).toEqual([[3, 'Driver']]);
    sheet.workbook.undo();
    await sheet.settled();
    expect((await port.read([{ read: 'table', table: 'Clubs' }]))[0]?.at.rows).toBe(3);
    expect(valueAt(sheet, 'Plan!B4')).toBeNull();
  });

  test('neither over another table nor over what a formula fills there', async () => {
    const sheet = await openSheet(
      [
        {
          name: 'Clubs',
          cells: [...clubs, [{ formula: '=REGRIP.FILLED(E1:E2)' }], [], ['Upper'], ['a'], ['Lower'], ['b']],
          tables: [
            { name: 'First', row: 0, column: 0, rows: 2, columns: 2 },
            { name: 'Upper', row: 5, column: 0, rows: 2, columns: 1 },
            { name: 'Lower', row: 7, column: 0, rows: 2, columns: 1 },
          ],
        },
      ],
      { functions: { FILLED: filled } },
    );
    open = sheet;
    const port = createEmbeddedPort(sheet);
    const [upper, lower] = await port.read([
      { read: 'table', table: 'Upper' },
      { read: 'table', table: 'lower' },
    ]);
    expect([upper?.at.rows, lower?.at.rows]).toEqual([2, 2]);
  });
});

describe('one change is one step of the undo list', () => {
  const at = body('New', 0, 0, 2, 2);
  const changes: Change[] = [
    { do: 'sheet', name: 'New' },
    {
      do: 'write',
      at,
      cells: [
        ['Club', 'Layers'],
        ['7 iron', 2],
      ],
    },
    { do: 'table', name: 'New', at },
    { do: 'format', at, format: { bold: true, number: '0.0', fill: '#eeeeee' } },
    { do: 'widths', sheet: 'New', column: 0, widths: [20] },
    { do: 'freezeRows', sheet: 'New', rows: 1 },
    { do: 'choices', at: body('New', 1, 1), from: { table: 'New', header: 'Layers' }, hint: 'Pick one.' },
    { do: 'highlight', at, rules: [{ column: 0, equals: ['Out'], fill: '#ff0000', ink: '#ffffff' }] },
    { do: 'name', name: 'plan_here', at },
  ];

  async function make(): Promise<Opened> {
    const opened = await openPort(clubs);
    const looked = await opened.port.read([{ read: 'block', at }]);
    await opened.port.apply(changes, looked, { label: 'Make' });
    return opened;
  }

  test('undoing takes all of it back, redoing brings all of it again', async () => {
    const { port, sheet } = await make();
    const ask = () =>
      port.read([{ read: 'sheets' }, { read: 'table', table: 'New' }, { read: 'name', name: 'plan_here' }]);
    const made = await ask();
    expect(made[0].map(({ name }) => name)).toEqual(['Clubs', 'Plan', 'New']);
    expect(made[1]?.rows).toEqual([['7 iron', 2]]);
    expect(made[2].at).toEqual(at);
    sheet.workbook.undo();
    await sheet.settled();
    const undone = await ask();
    expect(undone[0].map(({ name }) => name)).toEqual(['Clubs', 'Plan']);
    expect(undone[1]).toBeNull();
    expect(undone[2].at).toBeNull();
    sheet.workbook.redo();
    await sheet.settled();
    expect(await ask()).toEqual(made);
  });

  test('looks, drop-downs, highlights, widths and frozen rows are what was asked', async () => {
    const { sheet } = await make();
    const worksheet = sheet.workbook.getSheetByName('New');
    const id = worksheet?.getSheetId() ?? '';
    const style = sheet.workbook.getWorkbook().getStyles().getStyleByCell(worksheet?.getSheet().getCellRaw(0, 0));
    expect(style).toMatchObject({ bl: 1, n: { pattern: '0.0' }, bg: { rgb: '#eeeeee' } } satisfies IStyleData);
    // 20 digits of the default font, 8 pixels each as drawn, and 18 pixels of padding.
    expect(worksheet?.getColumnWidth(0)).toBe(178);
    expect(worksheet?.getFrozenRows()).toBe(1);
    const [choice] = sheet.injector.get(SheetDataValidationModel).getRules(sheet.id, id);
    expect(choice).toMatchObject({
      formula1: '=New!$B$2:$B$202',
      errorStyle: 2,
      error: 'Pick one.',
      showErrorMessage: true,
    });
    const [highlight] = sheet.injector.get(ConditionalFormattingRuleModel).getSubunitRules(sheet.id, id) ?? [];
    expect(highlight?.rule).toMatchObject({ value: '=OR($A1&""="Out")', style: { bg: { rgb: '#ff0000' } } });
  });

  test('making a sheet does not turn the person away from where they are', async () => {
    const { sheet } = await make();
    expect(sheet.workbook.getActiveSheet().getSheetName()).toBe('Clubs');
  });

  test('filling again replaces our highlights instead of piling them up', async () => {
    const { port, sheet } = await make();
    const looked = await port.read([{ read: 'block', at }]);
    const again = changes.filter((change) => change.do === 'highlight');
    await port.apply(again, looked, { label: 'Again' });
    const id = sheet.workbook.getSheetByName('New')?.getSheetId() ?? '';
    expect(sheet.injector.get(ConditionalFormattingRuleModel).getSubunitRules(sheet.id, id)).toHaveLength(1);
  });
});

test('taking back takes our looks off blank cells and leaves a person’s', async () => {
  const { sheet, port } = await openPort();
  const at = body('Plan', 1, 1);
  sheet.workbook.getSheetByName('Plan')?.getRange(1, 1).setBackground('#ffff00');
  const worksheet = sheet.workbook.getWorkbook().getSheetBySheetName('Plan');
  const style = (): IStyleData | undefined =>
    sheet.workbook.getWorkbook().getStyles().getStyleByCell(worksheet?.getCellRaw(1, 1)) ?? undefined;
  const looked = await port.read([{ read: 'block', at }]);
  const format = { bold: true, number: '0.0', align: 'right' } as const;
  const receipt = await port.apply([{ do: 'format', at, format }], looked, { label: 'Looks' });
  expect(style()).toMatchObject({ bl: 1, n: { pattern: '0.0' }, bg: { rgb: '#ffff00' } });
  await port.revert(receipt);
  expect(style()?.bg).toEqual({ rgb: '#ffff00' });
  expect([style()?.bl ?? 0, style()?.n ?? null, style()?.ht ?? 0]).toEqual([0, null, 0]);
});

describe('failures', () => {
  /** Makes the spreadsheet fail at the nth step of our change and at those after it, `times` in all. */
  function failAt(sheet: Spreadsheet, nth: number, times: number): void {
    let count = 0;
    sheet.injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
      if (!/insert-sheet|remove-sheet|set-range-values|defined-name/.test(id)) return;
      count += 1;
      if (count >= nth && count < nth + times) throw new Error('the machine stumbled');
    });
  }
  const changes: Change[] = [
    { do: 'sheet', name: 'New' },
    { do: 'write', at: body('Plan', 0, 0, 1, 2), cells: [['a', 1]] },
    { do: 'write', at: body('New', 0, 0, 1, 2), cells: [['b', 2]] },
    { do: 'name', name: 'plan_here', at: body('New', 0, 0) },
  ];
  const look = (port: WorkbookPort) =>
    port.read([
      { read: 'block', at: body('Plan', 0, 0, 1, 2) },
      { read: 'block', at: body('New', 0, 0, 1, 2) },
    ]);

  test.each([1, 2, 3, 4])('at step %i everything is put back', async (nth) => {
    const { port, sheet } = await openPort(clubs);
    await port.remember('last', 'earlier receipt');
    const before = await look(port);
    failAt(sheet, nth, 1);
    const change = port.apply(changes, before, { label: 'Fail', receiptKey: 'last' });
    await expect(change).rejects.toMatchObject({ code: 'putBack', hostSaid: 'the machine stumbled' });
    expect(await look(port)).toEqual(before);
    expect((await port.read([{ read: 'name', name: 'plan_here' }]))[0].at).toBeNull();
    expect(await port.recall('last')).toBe('earlier receipt');
  });

  test('what a formula fills is not calculated again at once: that is no reason to say that it was not put back', async () => {
    const { port, sheet, put } = await openPort(clubs);
    const at = body('Plan', 0, 0, 3, 3);
    await put(body('Plan', 0, 0), [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]]);
    await port.remember('last', 'earlier receipt');
    const looked = await port.read([{ read: 'block', at }]);
    failAt(sheet, 2, 1);
    const frozen: Change[] = [
      { do: 'write', at, cells: looked[0].values.map((row) => row.map(String)) },
      { do: 'name', name: 'plan_here', at },
    ];
    await expect(port.apply(frozen, looked, { label: 'Fail', receiptKey: 'last' })).rejects.toMatchObject({
      code: 'putBack',
    });
    expect(await port.recall('last')).toBe('earlier receipt');
    await sheet.settled();
    expect(await port.read([{ read: 'block', at }])).toEqual(looked);
  });

  test('when putting back fails too, the cells are named and the receipt is kept', async () => {
    const { port, sheet } = await openPort(clubs);
    const before = await look(port);
    failAt(sheet, 4, 100);
    const change = port.apply(changes, before, { label: 'Fail', receiptKey: 'last' });
    await expect(change).rejects.toMatchObject({ code: 'halfWritten', cells: ['Plan!A1:B1', 'New!A1:B1'] });
    expect(JSON.parse((await port.recall('last')) ?? 'null')).toMatchObject({ label: 'Fail', madeSheets: ['New'] });
  });

  test('a name that looks like a cell is refused and nothing is left of the change', async () => {
    const { port } = await openPort(clubs);
    const before = await look(port);
    const odd: Change[] = [...changes.slice(0, 2), { do: 'name', name: 'AB12', at: body('Plan', 0, 0) }];
    await expect(port.apply(odd, before, { label: 'Odd' })).rejects.toMatchObject({
      code: 'unsupported',
      cells: ['AB12'],
    });
    expect(await look(port)).toEqual(before);
  });
});

describe('places follow', () => {
  test('rows that are inserted: tables, names and formulas', async () => {
    const { port, put, sheet } = await openPort(clubs);
    const name: Change = { do: 'name', name: 'plan_here', at: body('Plan', 2, 1, 3, 3) };
    await put(body('Plan', 2, 1), [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]], name);
    sheet.workbook.getSheetByName('Plan')?.insertRows(0, 2);
    sheet.workbook.getSheetByName('Clubs')?.insertRows(0, 1);
    sheet.workbook.getSheetByName('Clubs')?.insertRows(2, 1);
    await sheet.settled();
    await type(sheet, 'Clubs', 'A3', 'Driver');
    const [place, table, plan] = await port.read([
      { read: 'name', name: 'plan_here' },
      { read: 'table', table: 'Clubs' },
      { read: 'block', at: body('Plan', 4, 1, 4, 2) },
    ]);
    expect(place.at).toEqual(body('Plan', 4, 1, 3, 3));
    expect(table?.at).toEqual(body('Clubs', 1, 0, 4, 2));
    expect(plan.values.map(([, club]) => club)).toEqual(['Club', 'Driver', '7 iron', 'Wedge']);
  });
});

describe('a person at work', () => {
  test('is noticed; our own changes and calculated results are not', async () => {
    const { port, put, sheet } = await openPort(clubs);
    const noticed: string[] = [];
    const stop = port.watch((name) => noticed.push(name));
    await put(body('Plan', 0, 0), [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]]);
    expect(noticed).toEqual([]);
    await type(sheet, 'Clubs', 'B2', 3);
    await expect.poll(() => noticed).toEqual(['Clubs']);
    expect(valueAt(sheet, 'Plan!C2')).toBe(3);
    stop();
    await type(sheet, 'Clubs', 'B2', 4);
    expect(noticed).toEqual(['Clubs']);
  });

  test('is noticed deleting a sheet, whose name is gone', async () => {
    const { port, sheet } = await openPort(clubs);
    const noticed: string[] = [];
    const stop = port.watch((name) => noticed.push(name));
    const gone = sheet.workbook.getSheetByName('Plan');
    if (gone) sheet.workbook.deleteSheet(gone);
    await expect.poll(() => noticed).toEqual(['']);
    stop();
  });

  test('sees their selection, with the table that holds all of it', async () => {
    const { port, sheet } = await openPort(clubs);
    sheet.workbook.getSheetByName('Clubs')?.getRange('A2:B3').activate();
    expect(await port.selection()).toEqual({ at: body('Clubs', 1, 0, 2, 2), table: 'Clubs' });
    sheet.workbook.getSheetByName('Clubs')?.getRange('A2:C3').activate();
    expect((await port.selection()).table).toBeNull();
  });

  test('finds what was remembered in the workbook itself', async () => {
    const { port, sheet } = await openPort();
    await port.remember('a', 'one');
    await port.remember('b', 'two');
    await port.remember('a', null);
    expect(await port.recall('a')).toBeNull();
    expect(sheet.workbook.save().custom).toEqual({ b: 'two' });
  });
});

test.each([
  ['Lower layers', 6, 2],
  ['Lower layers', 12, 1],
  ['one two three', 7, 2],
  ['extraordinary', 5, 3],
  ['', 5, 1],
])('%j in a room of %i characters takes %i lines', (text, room, lines) => {
  expect(wrappedLines(text, room)).toBe(lines);
});

test('a read tells why a function of ours shows an error, for as long as it does', async () => {
  const sheet = await openSheet([{ name: 'Plan', cells: [] }], {
    functions: {
      REFUSED: {
        takes: ['number'],
        does: (inches: unknown) => {
          if (inches === 37) return inches;
          throw Object.assign(new Error('Length: 0 in is not from 30 to 50 in.'), { code: '#VALUE!' });
        },
      },
    },
  });
  open = sheet;
  const port = createEmbeddedPort(sheet);
  const at = body('Plan', 0, 1, 1, 2);
  const [free] = await port.read([{ read: 'block', at }]);
  expect(free.reasons).toBeUndefined();
  const put = (inches: number): Put => ({ call: 'REFUSED', args: [{ literal: inches }] });
  await port.apply([{ do: 'write', at, cells: [[put(37), put(0)]] }], [free], { label: 'Plan' });
  const [seen] = await port.read([{ read: 'block', at }]);
  expect(seen.values).toEqual([[37, { error: '#VALUE!' }]]);
  expect(seen.reasons).toEqual([{ row: 0, column: 2, says: 'Length: 0 in is not from 30 to 50 in.' }]);

  // Whoever selects it is told, also by an address or by a fill that shows it, and not by the mouse alone.
  const told: unknown[] = [];
  const stop = onErrorSentence(sheet, (error) => told.push(error?.says ?? null));
  const plan = sheet.workbook.getActiveSheet();
  plan.setActiveRange(plan.getRange('C1'));
  plan.setActiveRange(plan.getRange('B1'));
  expect(told.slice(-2)).toEqual(['Length: 0 in is not from 30 to 50 in.', null]);
  stop();

  await type(sheet, 'Plan', 'C1', 5);
  const [typed] = await port.read([{ read: 'block', at }]);
  expect(typed.reasons).toBeUndefined();
});

test('a row of larger letters gets as high as they are', async () => {
  const { port, sheet } = await openPort([['Club'], ['7 iron']]);
  const at = body('Title', 1, 0);
  const [free] = await port.read([{ read: 'block', at }]);
  const big = { do: 'format', at, format: { bold: true, size: 18 } } as const;
  const made: Change[] = [{ do: 'sheet', name: 'Title' }, { do: 'write', at, cells: [['Options']] }, big];
  await port.apply(made, [free], { label: 'Title' });
  const title = sheet.workbook.getSheetByName('Title');
  // 18 points are 24 pixels, a line a fifth higher, and 5 around it.
  expect([0, 1, 2].map((row) => title?.getRowHeight(row))).toEqual([24, 34, 24]);
});

test('rows get high enough for headings that wrap, also for those a formula fills in', async () => {
  const { port, sheet } = await openPort([
    ['Diameter of the upper hand', 'Layers'],
    ['7 iron', 2],
  ]);
  const wrap = { do: 'format', at: body('Plan', 0, 0, 1, 3), format: { wrap: true } } as const;
  const [free] = await port.read([{ read: 'block', at: wrap.at }]);
  const cells = [[{ call: 'FILLED', args: [{ table: 'Clubs' }] }]];
  const change: Change = { do: 'write', at: body('Plan', 0, 0), cells };
  const receipt = await port.apply([change, wrap], [free], { label: 'Plan' });
  const plan = sheet.workbook.getSheetByName('Plan');
  // Four lines of 19 pixels and 5 around them: 26 characters in four words where 9 of 8 pixels have room between the edges.
  expect(plan?.getColumnWidth(1)).toBe(88);
  expect(plan?.getRowHeight(0)).toBe(81);
  expect(plan?.getRowHeight(1)).toBe(24);
  await port.revert(receipt);
  expect(plan?.getRowHeight(0)).toBe(24);
});

test.each([
  ['fitted to its text', { h: 17, ia: BooleanNumber.TRUE, ah: 17 }],
  ['that a person set', { h: 17, ia: BooleanNumber.FALSE }],
])('a low row %s is raised for lines that wrap alone, and is as low again when that is taken back', async (_, low) => {
  const { port, sheet } = await openPort();
  const rows = sheet.workbook.getSheetByName('Plan')?.getSheet().getRowManager();
  for (const row of [0, 1]) Object.assign(rows?.getRowOrCreate(row) ?? {}, low);
  const at = body('Plan', 0, 0, 2);
  const [free] = await port.read([{ read: 'block', at }]);
  const wrap = { do: 'format', at, format: { wrap: true } } as const;
  const cells = [['7 iron'], ['Diameter of the upper hand']];
  const receipt = await port.apply([{ do: 'write', at, cells }, wrap], [free], { label: 'Plan' });
  const heights = (): unknown[] => [0, 1].map((row) => sheet.workbook.getSheetByName('Plan')?.getRowHeight(row));
  // Four lines of 19 pixels and 5 around them, as in the test above; one line leaves a row as it is.
  expect(heights()).toEqual([17, 81]);
  await port.revert(receipt);
  expect(heights()).toEqual([17, 17]);
});

describe('a table of tens of thousands of rows', () => {
  const ROWS = 40_000;

  async function openLong(): Promise<Opened['sheet']> {
    const cells = [
      ['Item', 'Mass'],
      ...Array.from({ length: ROWS }, (_, at): (string | number)[] => [`Item ${at}`, 50 + (at % 9)]),
    ];
    const tables = [{ name: 'Stock', row: 0, column: 0, rows: cells.length, columns: 2 }];
    open = await openSheet([{ name: 'Stock', cells, tables, rowCount: ROWS + 10 }]);
    return open;
  }

  test('is read while the page takes input, and anew where a person types meanwhile', async () => {
    const sheet = await openLong();
    const port = createEmbeddedPort(sheet);
    let [turns, done] = [0, false];
    const reading = port.read([{ read: 'table', table: 'Stock' }]).finally(() => (done = true));
    while (!done) {
      await new Promise((turn) => setTimeout(turn));
      turns += 1;
      // Its first rows have been read by now.
      if (turns === 1 && !done) sheet.workbook.getSheetByName('Stock')?.getRange('B2').setValue(99);
    }
    const [stock] = await reading;
    expect(turns).toBeGreaterThan(1);
    expect(stock?.rows.length).toBe(ROWS);
    expect([stock?.rows[0], stock?.rows.at(-1)]).toEqual([
      ['Item 0', 99],
      [`Item ${ROWS - 1}`, 50 + ((ROWS - 1) % 9)],
    ]);
    await sheet.settled();
  });
});
