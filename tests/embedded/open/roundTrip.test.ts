/** Saved here and opened here: what is in a copy is found again. */
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { InterceptorEffectEnum } from '@univerjs/core';
import { INTERCEPTOR_POINT, SheetInterceptorService } from '@univerjs/sheets';
import { ConditionalFormattingService } from '@univerjs/sheets-conditional-formatting';
import { writeXlsx, type WriteOptions } from 'hucre/xlsx';
import { readCells, worksheetNamed } from '../../../src/workbook/embedded/cells';
import { serialOf } from '../../../src/workbook/embedded/open/sheetCells';
import { createEmbeddedPort } from '../../../src/workbook/embedded/port';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { allTables } from '../../../src/workbook/embedded/tables';
import { fillPlan } from '../../../src/workbook/fillPlan';
import { PLANS_KEY } from '../../../src/workbook/planPlaces';
import type { Block, Cell, Seen } from '../../../src/workbook/port';
import { TABLES } from '../../../src/workbook/schema';
import { readShop, type Shop } from '../../../src/workbook/shop';
import { openSheet, type, valueAt, valuesAt } from '../sheet';
import { filledDemo, PLAN_SHEET } from '../save/demoBook';
import { copyOf, openFile, type Opened } from './openFile';
import { unzip } from '../save/unzip';
import { xmlBook } from './xmlCells';
import { zipOf } from './zipOf';

const open: Spreadsheet[] = [];
afterEach(() => {
  for (const spreadsheet of open.splice(0)) spreadsheet.dispose();
});

async function reopened(spreadsheet: Spreadsheet): Promise<Opened> {
  open.push(spreadsheet);
  const again = await openFile((await copyOf(spreadsheet)).bytes);
  open.push(again.spreadsheet);
  return again;
}

async function openWritten(options: WriteOptions): Promise<Opened> {
  const opened = await openFile(await writeXlsx(options));
  open.push(opened.spreadsheet);
  return opened;
}

function seenIn(spreadsheet: Spreadsheet, at: Block): Seen[][] {
  const worksheet = worksheetNamed(spreadsheet, at.sheet);
  return worksheet ? readCells(spreadsheet, worksheet, at).values : [];
}

/** Texts as shops have them: digits, signs, several lines, other scripts, what looks like an error or a code. */
const text = fc.oneof(
  fc
    .string({ unit: 'grapheme', maxLength: 12 })
    .map((any) => any.replace(/[\u0000-\u0009\u000b-\u001f\ufffe\uffff]|\p{Cs}/gu, '')),
  fc.constantFrom(
    '007',
    '=1+1',
    '+49 30',
    '-',
    '@x',
    'TRUE',
    '#N/A',
    '#REF!',
    '1/2',
    '_x0041_',
    ' a ',
    'two\nlines',
    'קו',
    'Größe',
    '握り',
  ),
);
const cell: fc.Arbitrary<Cell> = fc.oneof(
  fc.constant(null),
  text.filter((word) => word !== ''),
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }).map((number) => number + 0),
  fc.integer({ min: -99999, max: 99999 }),
  fc.boolean(),
);
const format = fc.constantFrom('0.00', '0.0" g"', 'yyyy-mm-dd', '#,##0;[Red]-#,##0', '@', '0%');

describe('random workbooks', () => {
  test('have the same cells, formats, looks and tables again', async () => {
    const book = fc.record({
      cells: fc.array(fc.array(cell, { minLength: 4, maxLength: 4 }), { minLength: 2, maxLength: 6 }),
      number: format,
      bold: fc.boolean(),
      fill: fc.constantFrom('#FFEECC', '#112233'),
      wide: fc.integer({ min: 3, max: 40 }),
      frozen: fc.integer({ min: 0, max: 2 }),
    });
    await fc.assert(
      fc.asyncProperty(book, async ({ cells, number, bold, fill, wide, frozen }) => {
        const headings: Cell[] = ['Item', 'Größe', 'g', 'Note'];
        const spreadsheet = await openSheet([
          {
            name: 'Rack 1',
            cells: [headings, ...cells],
            rowCount: 40,
            columnCount: 10,
            widths: [wide],
            frozenRows: frozen,
            tables: [{ name: 'Rack', row: 0, column: 0, rows: cells.length + 1, columns: 4 }],
          },
        ]);
        const at: Block = { sheet: 'Rack 1', row: 1, column: 1, rows: 1, columns: 2 };
        const port = createEmbeddedPort(spreadsheet);
        await port.apply([{ do: 'format', at, format: { number, bold, fill } }], [], { label: 'Looks' });
        const again = await reopened(spreadsheet);
        const all: Block = { sheet: 'Rack 1', row: 0, column: 0, rows: cells.length + 2, columns: 5 };
        expect(seenIn(again.spreadsheet, all)).toEqual(seenIn(spreadsheet, all));
        const looks = (which: Spreadsheet) => {
          const { n, bl, bg } = worksheetNamed(which, 'Rack 1')?.getComposedCellStyle(1, 1) ?? {};
          return { format: n?.pattern, bold: bl ?? 0, fill: bg?.rgb?.toUpperCase() };
        };
        expect(looks(again.spreadsheet)).toEqual(looks(spreadsheet));
        const tables = (which: Spreadsheet) => allTables(which).map((table) => [table.name, table.at]);
        expect(tables(again.spreadsheet)).toEqual(tables(spreadsheet));
        const [one, other] = [spreadsheet, again.spreadsheet].map((which) => worksheetNamed(which, 'Rack 1'));
        expect(other?.getFreeze().ySplit).toBe(one?.getFreeze().ySplit);
        expect(Math.abs((other?.getColumnWidth(0) ?? 0) - (one?.getColumnWidth(0) ?? 9))).toBeLessThanOrEqual(1);
        for (const each of open.splice(0)) each.dispose();
      }),
      { numRuns: 12 },
    );
  }, 180_000);
});

describe('the demo with a live plan', () => {
  test('has its tables, its settings and its plan again, as values that are ours', async () => {
    const { spreadsheet } = await filledDemo();
    const again = await reopened(spreadsheet);
    expect(allTables(again.spreadsheet).map(({ name }) => name)).toEqual(TABLES.map(({ name }) => name));
    const [before, after] = await Promise.all([readShop(createEmbeddedPort(spreadsheet)), readShop(again.port)]);
    expect(after.version).toBe(before.version);
    expect(after.plans.map(({ name, job, block }) => [name, job, block])).toEqual(
      before.plans.map(({ name, job, block }) => [name, job, block]),
    );
    // Blank rows at the end of a table are for the page alone.
    const filled = ({ matrices }: Shop): unknown =>
      Object.entries(matrices).map(([name, rows]) => [
        name,
        rows?.slice(0, (rows?.findLastIndex((row) => row.some((cell) => cell !== null && cell !== '')) ?? 0) + 1),
      ]);
    expect(filled(after)).toEqual(filled(before));
    expect(again.file.keptValues).toEqual([]);
    expect(again.file.otherwise).toEqual([]);
    // Nobody is asked: every cell that is written over is known to be ours.
    const refilled = await fillPlan(again.port, after, {
      scope: { job: 'R-201' },
      choices: {},
      where: 'planSheet',
      as: 'live',
    });
    expect(refilled).toMatchObject({ done: true });
    const highlights = xmlBook((await copyOf(again.spreadsheet)).bytes).sheets.find(({ name }) => name === PLAN_SHEET);
    const old = xmlBook((await copyOf(spreadsheet)).bytes).sheets.find(({ name }) => name === PLAN_SHEET);
    const rules = (xml: string | undefined): number => xml?.match(/<cfRule /g)?.length ?? 0;
    expect(rules(highlights?.xml)).toBe(rules(old?.xml));
  }, 120_000);

  test('what can be undone does not go along, and long settings come back letter by letter', async () => {
    const { spreadsheet, port } = await filledDemo();
    const long = `Größe "握り" \\ ${'ab c '.repeat(300)}`;
    await port.remember('setwright.match', long);
    await port.remember('setwright.undo', '[]');
    await port.remember('setwright.undo.0.places', 'before');
    const again = await reopened(spreadsheet);
    expect(await again.port.recall('setwright.match')).toBe(long);
    for (const key of ['lastFill', 'plansBefore', 'undo', 'undo.0.places'])
      expect(await again.port.recall(`setwright.${key}`)).toBeNull();
    expect(await again.port.recall(PLANS_KEY)).not.toBeNull();
  }, 120_000);
});

describe('what a file holds', () => {
  test('formulas that are not calculated here keep the value that the file had, and go back into a copy', async () => {
    const cells = new Map([
      ['0,0', { value: 12.5, formula: '[1]Prices!A1', formulaResult: 12.5 }],
      ['1,0', { value: 7, formula: 'UNHEARDOF(A1)', formulaResult: 7 }],
      ['2,0', { value: 19.5, formula: 'SUM(A1:A2)', formulaResult: 19.5 }],
      ['3,0', { value: 99, formula: 'A1*2', formulaResult: 99 }],
      ['4,0', { value: 5, formula: 'NOW()*0+5', formulaResult: 4 }],
    ]);
    const opened = await openWritten({ sheets: [{ name: 'S', cells }] });
    expect(valuesAt(opened.spreadsheet, 'S!A1:A5')).toEqual([[12.5], [7], [19.5], [25], [5]]);
    expect(opened.file.keptValues).toEqual(['S!A1', 'S!A2']);
    expect(opened.file.otherwise.map(({ at }) => at)).toEqual(['S!A4']);
    const formulas = async (): Promise<unknown> => {
      const { bytes, losses } = await copyOf(opened.spreadsheet);
      const inCopy = xmlBook(bytes).sheets[0]?.cells;
      return [losses.keptFormulas, ...['A1', 'A2', 'A3'].map((at) => inCopy?.get(at)?.formula)];
    };
    expect(await formulas()).toEqual([2, '[1]Prices!A1', 'UNHEARDOF(A1)', 'SUM(A1:A2)']);
    // A value of the person's own is no result of that formula.
    await type(opened.spreadsheet, 'S', 'A1', 13);
    expect(await formulas()).toEqual([1, null, 'UNHEARDOF(A1)', 'SUM(A1:A2)']);
    // And where rows are put in, what the formula points at is somewhere else.
    opened.spreadsheet.workbook.getSheetByName('S')?.insertRowsBefore(0, 1);
    await opened.spreadsheet.settled();
    expect(await formulas()).toEqual([0, undefined, null, null]);
  });

  test('days that are counted from 1904 stay the same days, and times stay times', async () => {
    // 1 May 2026 is 46143 counted from 1900 and 44681 counted from 1904: 1,462 apart (Microsoft's published note on the date systems).
    const cells = new Map([
      ['0,0', { value: 44681, style: { numFmt: 'yyyy-mm-dd' } }],
      ['1,0', { value: 1.5, style: { numFmt: '[h]:mm' } }],
      ['2,0', { value: 44681 }],
    ]);
    const opened = await openWritten({ dateSystem: '1904', sheets: [{ name: 'S', cells }] });
    expect(opened.book.from1904).toBe(true);
    expect(valuesAt(opened.spreadsheet, 'S!A1:A3')).toEqual([[46143], [1.5], [44681]]);
    const copy = xmlBook((await copyOf(opened.spreadsheet)).bytes);
    expect(copy.from1904).toBe(false);
    expect(copy.sheets[0]?.cells.get('A1')?.value).toBe(46143);
  });

  test('any day and time is read to the millisecond, before and after the 29 February that never was', () => {
    // Day 1 is 1 January 1900, day 61 is 1 March 1900 (ECMA-376 Part 1, 18.17.4.1).
    expect(serialOf(new Date(Date.UTC(1900, 0, 1)), 'yyyy', false)).toBe(1);
    expect(serialOf(new Date(Date.UTC(1900, 1, 28)), 'yyyy', false)).toBe(59);
    expect(serialOf(new Date(Date.UTC(1900, 2, 1)), 'yyyy', false)).toBe(61);
    expect(serialOf(new Date(Date.UTC(2026, 4, 1, 12)), 'yyyy', false)).toBe(46143.5);
  });

  test('texts stay texts and errors stay errors', async () => {
    const cells = new Map([
      ['0,0', { value: '007' }],
      ['1,0', { value: '#DIV/0!' }],
      ['2,0', { value: '=1+1' }],
      ['3,0', { value: '1/2' }],
    ]);
    const opened = await openWritten({ sheets: [{ name: 'S', cells }] });
    expect(valuesAt(opened.spreadsheet, 'S!A1:A4')).toEqual([['007'], [{ error: '#DIV/0!' }], ['=1+1'], ['1/2']]);
  });

  test('a row of totals stays below its table and out of it, through a round trip', async () => {
    const rows = [
      ['Item', 'Pieces'],
      ['A', 2],
      ['B', 3],
      ['Total', null],
    ];
    const opened = await openWritten({
      sheets: [
        {
          name: 'S',
          rows,
          cells: new Map([['3,1', { value: 5, formula: 'SUBTOTAL(109,Rack[Pieces])', formulaResult: 5 }]]),
          tables: [
            {
              name: 'Rack',
              range: 'A1:B4',
              showTotalRow: true,
              columns: [
                { name: 'Item', totalLabel: 'Total' },
                { name: 'Pieces', totalFunction: 'sum' },
              ],
            },
          ],
        },
      ],
    });
    const [table] = await opened.port.read([{ read: 'table', table: 'Rack' }]);
    expect(table?.rows).toEqual([
      ['A', 2],
      ['B', 3],
    ]);
    expect(valueAt(opened.spreadsheet, 'S!B4')).toBe(5);
    const { bytes } = await copyOf(opened.spreadsheet);
    const copy = xmlBook(bytes);
    expect(copy.tables).toEqual(['Rack A1:B4']);
    expect(copy.sheets[0]?.cells.get('B4')?.formula).toBe('SUBTOTAL(109,Rack[Pieces])');
    expect(copy.parts.get('xl/tables/table1.xml')).toMatch(/totalsRowCount="1"[\s\S]*totalsRowFunction="sum"/);
  });

  test('notes, links, checks of entries, highlights, protection, print set-up, hidden rows and names go into a copy', async () => {
    const cells = new Map([
      ['0,0', { value: 'A', comment: { author: 'Bench', text: 'ask first' } }],
      ['1,0', { value: 'B', hyperlink: { target: 'https://example.com/b' } }],
    ]);
    const opened = await openWritten({
      sheets: [
        {
          name: 'My rack',
          rows: [
            ['A', 1],
            ['B', 2],
            ['C', 3],
          ],
          cells,
          rowDefs: new Map([[2, { hidden: true }]]),
          columns: [{ width: 20 }, { hidden: true }],
          dataValidations: [
            { type: 'list', values: ['A', 'B'], range: 'A1:A9', errorStyle: 'stop', showErrorMessage: true },
            { type: 'whole', operator: 'greaterThan', formula1: '0', range: 'B1:B9', inputMessage: 'pieces' },
          ],
          conditionalRules: [
            {
              type: 'cellIs',
              operator: 'lessThan',
              formula: '2',
              priority: 1,
              range: 'B1:B9',
              style: { font: { bold: true } },
            },
            {
              type: 'iconSet',
              priority: 2,
              range: 'B1:B9',
              iconSet: {
                iconSet: '3Arrows',
                cfvo: [
                  { type: 'percent', value: '0' },
                  { type: 'percent', value: '33' },
                  { type: 'percent', value: '67' },
                ],
              },
            },
          ],
          protection: { sheet: true },
          pageSetup: { orientation: 'landscape', paperSize: 'a4', margins: { left: 1 } },
          headerFooter: { oddHeader: '&CStock' },
          view: { rightToLeft: true, zoomScale: 80 },
        },
        { name: 'Gone', rows: [[1]], veryHidden: true },
      ],
      namedRanges: [{ name: 'Items', range: "'My rack'!$A$1:$A$3" }],
    });
    const [sheets] = await opened.port.read([{ read: 'sheets' }]);
    expect(sheets).toEqual([
      { name: 'My rack', protected: true },
      { name: 'Gone', protected: false },
    ]);
    const { bytes, losses } = await copyOf(opened.spreadsheet);
    expect(losses).toMatchObject({ rulesLeftOut: 0, unkept: [] });
    const { parts, sheets: inCopy } = xmlBook(bytes);
    const xml = inCopy[0]?.xml ?? '';
    const all = [...parts.values()].join('');
    for (const part of [
      /<sheetProtection sheet="1"/,
      /<row r="3" hidden="1"/,
      /<col min="2" max="2"[^>]*hidden="(1|true)"/,
      /<dataValidation type="list"[^>]*sqref="A1:A9"[\s\S]*?<formula1>"A,B"<\/formula1>/,
      /<dataValidation type="whole"[^>]*operator="greaterThan"/,
      /<cfRule type="cellIs"[^>]*operator="lessThan"[^>]*><formula>2<\/formula>/,
      /<iconSet iconSet="3Arrows"/,
      /<pageSetup[^>]*paperSize="9"[^>]*orientation="landscape"|<pageSetup[^>]*orientation="landscape"[^>]*paperSize="9"/,
      /<oddHeader>&amp;CStock<\/oddHeader>/,
      /rightToLeft="1"/,
      /zoomScale="80"/,
      /<hyperlink [^>]*ref="A2"/,
    ]) {
      expect(xml).toMatch(part);
    }
    expect(all).toContain('ask first');
    expect(all).toContain('https://example.com/b');
    expect(all).toContain('<definedName name="Items">\'My rack\'!$A$1:$A$3</definedName>');
    expect(parts.get('xl/workbook.xml')).toMatch(/name="Gone"[^>]*state="veryHidden"/);
  });

  test('a sheet is fitted to pages in a copy where the file says so, and not where it only says to how many', async () => {
    const wide = { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 1 } as const;
    const bytes = await writeXlsx({
      sheets: ['Fits', 'As large as it is'].map((name) => ({ name, rows: [[1]], pageSetup: wide })),
    });
    const opened = await openFile(
      withChanged(bytes, (xml, part) =>
        part === 'xl/worksheets/sheet2.xml' ? xml.replace('<pageSetUpPr fitToPage="1"/>', '') : xml,
      ),
    );
    open.push(opened.spreadsheet);
    const copy = await copyOf(opened.spreadsheet);
    const [fits, large] = xmlBook(copy.bytes).sheets.map(({ xml }) => xml);
    // A sheet is fitted by fitToPage of pageSetUpPr alone (ECMA-376 Part 1, 18.3.1.65), false where nothing is said.
    expect(fits).toMatch(/<pageSetUpPr fitToPage="1"/);
    expect(fits).toMatch(/<pageSetup [^>]*fitToWidth="1" fitToHeight="1"/);
    expect(large).not.toContain('fitToPage');
    expect(large).toMatch(/<pageSetup [^>]*orientation="landscape"/);
  });

  test('texts of the file are marked as text in a copy where the file marks them; a formula’s beginning and what is entered here always', async () => {
    const texts = ['.600 rd', '3 wood', '7 iron', '+49 30', '=1+1', 'Plain', '007'];
    const cells = new Map(texts.map((value, row) => [`${row},0`, { value }]));
    const unmarked = await writeXlsx({
      sheets: [
        {
          name: 'S',
          cells: new Map<string, object>([
            ...cells,
            ['6,0', { value: '007', style: { font: { bold: true } } }],
            ['9,0', { value: '2026' }],
          ]),
          tables: [{ name: 'Rack', range: 'A10:A11', columns: [{ name: '2026' }] }],
        },
      ],
    });
    // The bold look is the one that the file marks (ECMA-376 Part 1, 18.8.45); nothing else of it is.
    const marking = withChanged(unmarked, (xml, part) =>
      part === 'xl/styles.xml' ? xml.replace(/<xf ([^>]*fontId="[1-9])/, '<xf quotePrefix="1" $1') : xml,
    );
    expect(marks(marking)).toEqual(['A7']);
    const opened = await openFile(marking);
    open.push(opened.spreadsheet);
    expect(marks((await copyOf(opened.spreadsheet)).bytes)).toEqual(['A4', 'A5', 'A7']);
    const at = { sheet: 'S', row: 0, column: 0, rows: 2, columns: 3 };
    const looked = await opened.port.read([{ read: 'block', at }]);
    const written = [
      ['.600 rd', '8 iron', '=2'],
      ['5 wood', null, null],
    ];
    await opened.port.apply([{ do: 'write', at, cells: written }], looked, { label: 'Test' });
    expect(marks((await copyOf(opened.spreadsheet)).bytes)).toEqual(['B1', 'C1', 'A2', 'A4', 'A5', 'A7']);
  });

  test('texts that look like numbers or days get no format of texts in a copy; those that have it keep it', async () => {
    const texts = ['.600R', '3 wood', '3.11.2026', '007', '-'.repeat(300)];
    const cells = new Map(texts.map((value, row) => [`${row},0`, { value }]));
    const styled = new Map([
      ['0,1', { value: '007', style: { numFmt: '@' } }],
      ['1,1', { value: '1/2', style: { numFmt: '0.00' } }],
    ]);
    const opened = await openWritten({ sheets: [{ name: 'S', cells: new Map([...cells, ...styled]) }] });
    const { parts, sheets } = xmlBook((await copyOf(opened.spreadsheet)).bytes);
    const found = sheets[0]?.cells;
    expect(texts.map((_, row) => found?.get(`A${row + 1}`))).toEqual(
      texts.map((value) => ({ value, formula: null, format: null })),
    );
    expect([found?.get('B1')?.format, found?.get('B2')?.format]).toEqual(['@', '0.00']);
    // Marked as text by the file format's own way: one look for all of them (ECMA-376 Part 1, 18.8.45).
    expect(parts.get('xl/styles.xml')?.match(/quotePrefix="1"/g)).toHaveLength(1);
    expect(parts.get('xl/styles.xml')).toMatch(/<numFmts count="2">(<numFmt [^>]*>){2}<\/numFmts>/);
  });

  test('what is only shown over a cell is no look of its own in a copy: highlights, stripes of a table, colours of a number format', async () => {
    const red = 'FF9C0006';
    const opened = await openWritten({
      sheets: [
        {
          name: 'S',
          rows: [['Item', 'Pieces', 'Change'], ...[3, 8, 12].map((pieces) => ['A', pieces, -pieces])],
          cells: new Map([1, 2, 3].map((row) => [`${row},2`, { value: -row, style: { numFmt: '0;[Red]-0' } }])),
          tables: [
            {
              name: 'Rack',
              range: 'A1:C4',
              columns: ['Item', 'Pieces', 'Change'].map((name) => ({ name })),
            },
          ],
          conditionalRules: [
            {
              type: 'cellIs',
              operator: 'lessThan',
              formula: '10',
              priority: 1,
              range: 'B2:B4',
              style: { font: { color: { rgb: red } } },
            },
          ],
        },
      ],
    });
    showHighlights(opened.spreadsheet);
    const worksheet = worksheetNamed(opened.spreadsheet, 'S');
    const shown = (row: number, column: number) => worksheet?.getComposedCellStyle(row, column);
    // All three are shown, or there were nothing that could get into the copy.
    expect(shown(1, 1)?.cl?.rgb).toBe('#9C0006');
    expect(shown(1, 2)?.cl?.rgb).toBeDefined();
    expect(shown(2, 0)?.bg?.rgb ?? shown(1, 0)?.bg?.rgb).toBeDefined();
    const { parts, sheets } = xmlBook((await copyOf(opened.spreadsheet)).bytes);
    const styles = parts.get('xl/styles.xml') ?? '';
    const [fonts, fills] = ['fonts', 'fills'].map(
      (part) => new RegExp(`<${part}[\\s\\S]*</${part}>`).exec(styles)?.[0],
    );
    expect(fonts).toContain('<font>');
    expect(fonts).not.toMatch(/<color rgb/);
    expect(fills).not.toMatch(/solid/);
    expect(styles).toMatch(/<dxf>[\s\S]*9C0006/);
    expect(sheets[0]?.xml).toMatch(/<cfRule type="cellIs"[^>]*operator="lessThan"/);
  });

  test('a table that a filter was on is reported as filtered as long as a row of it is hidden', async () => {
    const bytes = await writeXlsx({
      sheets: [
        {
          name: 'S',
          rows: [['Item'], ['A'], ['B']],
          rowDefs: new Map([[2, { hidden: true }]]),
          tables: [{ name: 'Rack', range: 'A1:A3', columns: [{ name: 'Item' }] }],
        },
      ],
    });
    const opened = await openFile(withFilter(bytes));
    open.push(opened.spreadsheet);
    const filtered = async (): Promise<unknown> =>
      (await opened.port.read([{ read: 'table', table: 'Rack' }]))[0]?.filtered;
    expect(await filtered()).toBe(true);
    expect(opened.book.unkept).toEqual([{ kind: 'tableFilters', count: 1 }]);
    opened.spreadsheet.workbook.getSheetByName('S')?.showRows(2, 1);
    expect(await filtered()).toBe(false);
  });
});

/** Cells of the first sheet whose look marks them as text. */
function marks(bytes: Uint8Array): string[] {
  const { parts, sheets } = xmlBook(bytes);
  const looks = /<cellXfs[\s\S]*<\/cellXfs>/.exec(parts.get('xl/styles.xml') ?? '')?.[0].match(/<xf [^>]*>/g) ?? [];
  return [...(sheets[0]?.xml ?? '').matchAll(/<c r="(\w+)"([^>]*)>/g)].flatMap(([, at = '', said = '']) =>
    looks[Number(/ s="(\d+)"/.exec(said)?.[1] ?? 0)]?.includes('quotePrefix="1"') ? [at] : [],
  );
}

/** Lays the highlights over the cells, as the page does; without a screen nobody asks for it. */
function showHighlights({ injector, id }: Spreadsheet): void {
  const service = injector.get(ConditionalFormattingService);
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: 10,
    effect: InterceptorEffectEnum.Style,
    handler: (cell, { subUnitId, row, col, workbook }, next) => {
      const style = service.composeStyle(id, subUnitId, row, col)?.style;
      return next(style ? { ...cell, s: { ...workbook.getStyles().get(cell?.s as string), ...style } } : cell);
    },
  });
}

/** Puts a condition into the filter of a stored table: the library itself writes none. */
function withFilter(bytes: Uint8Array): Uint8Array {
  return withChanged(bytes, (xml) =>
    xml.replace('<autoFilter ref="A1:A3"/>', '<autoFilter ref="A1:A3"><filterColumn colId="0"/></autoFilter>'),
  );
}

/** The file with its parts changed. */
function withChanged(bytes: Uint8Array, change: (xml: string, part: string) => string): Uint8Array {
  return zipOf(
    [...unzip(bytes)].map(([name, xml]) => ({ name, content: new TextEncoder().encode(change(xml, name)) })),
  );
}
