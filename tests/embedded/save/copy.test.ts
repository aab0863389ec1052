import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { readXlsx } from 'hucre/xlsx';
import type { Cell as FileCell, Workbook } from 'hucre/xlsx';
import { readCells, worksheetNamed } from '../../../src/workbook/embedded/cells';
import { createEmbeddedPort } from '../../../src/workbook/embedded/port';
import { describeCopy, type Losses } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { allTables, tableNamed } from '../../../src/workbook/embedded/tables';
import { PLAN_COLUMNS } from '../../../src/workbook/planCells';
import { COMPARE_HEAD_ROWS } from '../../../src/workbook/compareSheet';
import { VERDICT_COLOURS } from '../../../src/workbook/palette';
import { HEAD_ROWS } from '../../../src/workbook/planSheet';
import type { Cell, Seen } from '../../../src/workbook/port';
import { TABLES } from '../../../src/workbook/schema';
import { openSheet, type } from '../sheet';
import { COMPARE_SHEET, filledDemo, PLAN_SHEET } from './demoBook';
import { unzip } from './unzip';

interface Saved {
  readonly losses: Losses;
  /** As the library reads it. */
  readonly book: Workbook;
  /** The file's own parts. */
  readonly parts: ReadonlyMap<string, string>;
}

async function save(spreadsheet: Spreadsheet): Promise<Saved> {
  const { workbook, losses } = await describeCopy(spreadsheet);
  const bytes = await bytesOf(workbook);
  return { losses, book: await readXlsx(bytes, { readStyles: true }), parts: unzip(bytes) };
}

function sheetIn({ book }: Saved, name: string): Workbook['sheets'][number] {
  const sheet = book.sheets.find((each) => each.name === name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
}

function cellIn(saved: Saved, sheet: string, row: number, column: number): FileCell | undefined {
  return sheetIn(saved, sheet).cells?.get(`${row},${column}`);
}

/** The XML of a sheet. */
function sheetXml({ book, parts }: Saved, name: string): string {
  return parts.get(`xl/worksheets/sheet${book.sheets.findIndex((each) => each.name === name) + 1}.xml`) ?? '';
}

/** The look of a cell of the first sheet, as the file says it. */
function looksAt({ parts }: Saved, at: string): string {
  const cell = new RegExp(`<c r="${at}"[^>]*>`).exec(parts.get('xl/worksheets/sheet1.xml') ?? '')?.[0];
  const looks = /<cellXfs\b[\s\S]*<\/cellXfs>/.exec(parts.get('xl/styles.xml') ?? '')?.[0];
  return looks?.match(/<xf\b[^>]*>/g)?.[Number(/ s="(\d+)"/.exec(cell ?? '')?.[1] ?? 0)] ?? '';
}

function workbookXml({ parts }: Saved): string {
  return parts.get('xl/workbook.xml') ?? '';
}

describe('the demo with a live plan and a comparison', () => {
  let spreadsheet: Spreadsheet;
  let saved: Saved;
  beforeAll(async () => {
    ({ spreadsheet } = await filledDemo());
    saved = await save(spreadsheet);
  }, 60_000);
  afterAll(() => spreadsheet.dispose());

  test('has every sheet, in order', () => {
    expect(saved.book.sheets.map(({ name }) => name)).toEqual([
      ...TABLES.map(({ name }) => name),
      PLAN_SHEET,
      COMPARE_SHEET,
    ]);
  });

  test('holds every value of every sheet, and no formula', () => {
    let compared = 0;
    for (const { name, rows, columns } of sizes(spreadsheet)) {
      const worksheet = worksheetNamed(spreadsheet, name);
      const at = { sheet: name, row: 0, column: 0, rows, columns };
      const seen = worksheet ? readCells(spreadsheet, worksheet, at).values : [];
      const file = sheetIn(saved, name);
      seen.forEach((line, row) =>
        line.forEach((value, column) => {
          expect(plain(file.rows[row]?.[column]), `${name} ${row},${column}`).toBe(plain(value));
          if (value !== null) compared += 1;
        }),
      );
      expect(sheetXml(saved, name)).not.toMatch(/<f[ >]/);
    }
    // 38 clubs with some fifteen entries each are in it, and more
    expect(compared).toBeGreaterThan(1500);
  });

  test('says that the plan’s formula becomes values, and nothing else is lost', () => {
    expect(saved.losses).toEqual({
      valuesInstead: [PLAN_SHEET],
      otherFormulas: 0,
      rulesLeftOut: 0,
      filtered: [],
      oddNames: [],
      unkept: [],
      keptFormulas: 0,
      moved: [],
    });
    const headers = PLAN_COLUMNS.map((_, column) => cellIn(saved, PLAN_SHEET, HEAD_ROWS, column)?.value);
    expect(headers).toEqual(PLAN_COLUMNS.map(({ header }) => header));
    expect(cellIn(saved, PLAN_SHEET, HEAD_ROWS + 1, 0)?.value).toBe('Driver');
  });

  test('keeps the tables with their headings, one definition each', () => {
    const found = saved.book.sheets.flatMap(({ name, tables = [] }) =>
      tables.map((table) => [name, table.name] as const),
    );
    expect(found).toEqual(TABLES.map(({ name }) => [name, name]));
    const clubs = sheetIn(saved, 'Clubs').tables?.[0];
    const table = tableNamed(spreadsheet, 'Clubs');
    expect(clubs?.columns.map(({ name }) => name)).toEqual(
      TABLES.find(({ name }) => name === 'Clubs')?.columns.map(({ header }) => header),
    );
    expect(clubs?.range).toMatch(new RegExp(`^A1:[A-Z]+${table?.at.rows ?? 0}$`));
    const definitions = [...saved.parts].filter(([path]) => path.startsWith('xl/tables/'));
    expect(definitions).toHaveLength(TABLES.length);
    for (const [, xml] of definitions) expect(xml).toMatch(/<table [^>]*ref="A1:[A-Z]+\d+"/);
  });

  test('keeps number formats, bold, fills, wrapping, alignment and rules', () => {
    const look = (row: number, column: number): FileCell['style'] => cellIn(saved, PLAN_SHEET, row, column)?.style;
    const at = (key: string): number => PLAN_COLUMNS.findIndex((column) => column.key === key);
    expect(look(HEAD_ROWS, 0)).toMatchObject({
      font: { bold: true, color: { rgb: '1F2A30' } },
      fill: { pattern: 'solid', fgColor: { rgb: 'E4E9EC' } },
      alignment: { wrapText: true, vertical: 'bottom' },
      border: { bottom: { style: 'thin', color: { rgb: '6B7A82' } } },
    });
    expect(look(HEAD_ROWS + 1, at('grams'))).toMatchObject({
      numFmt: '0.0;"−"0.0;"–"',
      alignment: { horizontal: 'center' },
    });
    expect(look(1, 0)).toMatchObject({ font: { size: 16, bold: true } });
    expect(look(4, 1)?.numFmt).toBe('yyyy-mm-dd');
    expect(cellIn(saved, 'Jobs', 0, 0)?.style).toMatchObject({
      font: { bold: true },
      fill: { fgColor: { rgb: 'E4E9EC' } },
    });
  });

  test('keeps widths, heights and frozen rows', () => {
    const { width } = PLAN_COLUMNS[0] ?? { width: 0 };
    // five pixels beside the digits, seven pixels each
    expect(sheetIn(saved, PLAN_SHEET).columns?.[0]?.width).toBeCloseTo(width + 5 / 7, 1);
    expect(sheetIn(saved, 'Clubs').freezePane).toMatchObject({ rows: 1 });
    // the header row of three lines, of fifteen points each at least
    expect(sheetIn(saved, PLAN_SHEET).rowDefs?.get(HEAD_ROWS)?.height).toBeGreaterThanOrEqual(45);
  });

  test('keeps drop-downs: fixed words, and cells of another table', () => {
    const xml = sheetXml(saved, 'Clubs');
    expect(xml).toContain('<formula1>"Driver,Wood,Hybrid,');
    expect(xml).toMatch(/<formula1>Stock!\$A\$2:\$A\$\d+<\/formula1>/);
    expect(xml).toMatch(/errorStyle="warning"/);
  });

  test('keeps highlights as rules that a formula decides', () => {
    const rules = sheetIn(saved, PLAN_SHEET).conditionalRules ?? [];
    expect(rules).toHaveLength(2 * Object.keys(VERDICT_COLOURS).length);
    const within = rules.find(({ formula }) => String(formula).includes('Within') && String(formula).includes('$G11'));
    expect(within).toMatchObject({
      type: 'expression',
      style: { fill: { bgColor: { rgb: 'DCEFE4' } }, font: { bold: true } },
    });
    expect([within?.formula].flat()).toEqual(['OR($G11&""="Within")']);
    expect(sheetXml(saved, PLAN_SHEET)).toContain('<conditionalFormatting sqref="G11:G');
  });

  test('keeps the names of our pages', () => {
    const names = saved.book.namedRanges?.filter(({ name }) => name.startsWith('Setwright'));
    expect(names).toEqual([
      { name: 'Setwright_Plan_1', range: expect.stringMatching(/^'Plan R-201'!\$A\$1:\$[A-Z]+\$23$/) },
      { name: 'Setwright_Plan_2', range: expect.stringMatching(/^'Compare R-201'!\$A\$1:\$P\$\d+$/) },
    ]);
  });

  test('keeps how a page is printed: across, one page wide, its header row repeated, its name and the page at the foot', () => {
    const xml = workbookXml(saved);
    const [plan, compare] = [PLAN_SHEET, COMPARE_SHEET].map((name) =>
      saved.book.sheets.findIndex((each) => each.name === name),
    );
    const own = (kind: string, sheet: number | undefined): string =>
      `<definedName name="_xlnm.Print_${kind}" localSheetId="${sheet}">`;
    expect(xml).toContain(`${own('Area', plan)}'Plan R-201'!$A:$N</definedName>`);
    expect(xml).toContain(`${own('Titles', plan)}'Plan R-201'!$${HEAD_ROWS + 1}:$${HEAD_ROWS + 1}</definedName>`);
    expect(xml).toMatch(new RegExp(`${own('Area', compare)}'Compare R-201'!\\$A\\$1:\\$P\\$\\d+</definedName>`));
    expect(xml).toContain(
      `${own('Titles', compare)}'Compare R-201'!$${COMPARE_HEAD_ROWS + 1}:$${COMPARE_HEAD_ROWS + 1}</definedName>`,
    );
    for (const name of [PLAN_SHEET, COMPARE_SHEET]) {
      expect(sheetXml(saved, name)).toContain('<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/>');
      expect(sheetXml(saved, name)).toContain('<pageSetUpPr fitToPage="1"/>');
    }
    expect(sheetXml(saved, PLAN_SHEET)).toContain('<oddFooter>&amp;CRegrip plan&amp;R&amp;P / &amp;N</oddFooter>');
  });

  test('prints a table that is too wide on pages side by side, each with job and club', () => {
    expect(workbookXml(saved)).toContain('Clubs!$A:$B,Clubs!$1:$1</definedName>');
    expect(sheetXml(saved, 'Clubs')).toContain('fitToWidth="2"');
    expect(sheetXml(saved, 'Jobs')).toContain('fitToWidth="1"');
  });
});

function sizes(spreadsheet: Spreadsheet): { name: string; rows: number; columns: number }[] {
  return spreadsheet.workbook
    .getWorkbook()
    .getSheets()
    .map((sheet) => ({ name: sheet.getName(), rows: 60, columns: 60 }));
}

function plain(value: Seen | Cell | Date | undefined): unknown {
  if (value === undefined || value === null) return null;
  if (value instanceof Date) return (value.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000;
  return value;
}

describe('small workbooks', () => {
  let open: Spreadsheet | undefined;
  afterEach(() => open?.dispose());

  async function sheetOf(cells: readonly (readonly Cell[])[], name = 'Sheet'): Promise<Spreadsheet> {
    open = await openSheet([{ name, cells, rowCount: 40, columnCount: 8 }]);
    return open;
  }

  const texts = [
    '=1+1',
    '+49 30',
    '-3',
    '@home',
    "=cmd|'/c calc'!A1",
    '007',
    'TRUE',
    '#N/A',
    '_x0041_',
    ' two  blanks ',
    '1/2',
  ];

  test.each(texts)('the text %j stays that text and no formula', async (text) => {
    const saved = await save(await sheetOf([[text]]));
    expect(cellIn(saved, 'Sheet', 0, 0)).toMatchObject({ value: text });
    const xml = sheetXml(saved, 'Sheet');
    expect(xml).not.toMatch(/<f[ >]/);
    expect(xml).toMatch(/<c r="A1"[^>]* t="(s|inlineStr)"/);
    // Opened by a person and left again it would turn into something else, were it not marked as text.
    expect(looksAt(saved, 'A1')).toMatch(/^<xf numFmtId="0"/);
    expect(looksAt(saved, 'A1').includes('quotePrefix="1"')).toBe(!text.includes(' t'));
    expect(saved.parts.get('xl/styles.xml')).not.toMatch(/<numFmts?\b/);
  });

  test('a formula of the sheet stays one, with its value; another’s value is taken and counted', async () => {
    const spreadsheet = await sheetOf([[2, 3]]);
    await type(spreadsheet, 'Sheet', 'C1', '=SUM(A1:B1)');
    await type(spreadsheet, 'Sheet', 'D1', '=CONCAT(A1,B1)');
    await type(spreadsheet, 'Sheet', 'A3', '=A1:B1*2');
    const saved = await save(spreadsheet);
    expect(sheetXml(saved, 'Sheet')).toContain('<c r="C1" s="1"><f>SUM(A1:B1)</f><v>5</v></c>');
    expect(cellIn(saved, 'Sheet', 0, 3)).toMatchObject({ value: '23' });
    expect(sheetIn(saved, 'Sheet').rows[2]?.slice(0, 2)).toEqual([4, 6]);
    expect(saved.losses).toMatchObject({ valuesInstead: [], otherFormulas: 2 });
  });

  test('a table with odd headings becomes one that every program opens', async () => {
    open = await openSheet([
      {
        name: 'Odd',
        cells: [['Name', 'Name', null, 7]],
        tables: [{ name: 'Odd', row: 0, column: 0, rows: 1, columns: 4 }],
      },
    ]);
    const saved = await save(open);
    expect(sheetIn(saved, 'Odd').tables?.[0]).toMatchObject({ range: 'A1:D2' });
    expect(sheetIn(saved, 'Odd').rows[0]).toEqual(['Name', 'Name2', 'Column 3', '7']);
    expect(saved.parts.get('xl/tables/table1.xml')?.match(/tableColumn id="\d" name="[^"]*"/g)).toEqual([
      'tableColumn id="1" name="Name"',
      'tableColumn id="2" name="Name2"',
      'tableColumn id="3" name="Column 3"',
      'tableColumn id="4" name="7"',
    ]);
  });

  test('a table of ours ends with the last row that holds something: blank rows would be printed stripe by stripe', async () => {
    open = await openSheet([
      {
        name: 'Jobs',
        cells: [
          ['Job', 'Due'],
          ['1', null],
          [null, null],
          [null, 5],
        ],
        tables: [{ name: 'Jobs', row: 0, column: 0, rows: 40, columns: 2 }],
      },
      { name: 'Stock', cells: [['Item']], tables: [{ name: 'Stock', row: 0, column: 0, rows: 40, columns: 1 }] },
      { name: 'Mine', cells: [['Item']], tables: [{ name: 'Mine', row: 0, column: 0, rows: 40, columns: 1 }] },
    ]);
    const saved = await save(open);
    expect(sheetIn(saved, 'Jobs').tables?.[0]).toMatchObject({ range: 'A1:B4' });
    expect(sheetIn(saved, 'Stock').tables?.[0]).toMatchObject({ range: 'A1:A2' });
    // A person's is as long as they made it.
    expect(sheetIn(saved, 'Mine').tables?.[0]).toMatchObject({ range: 'A1:A40' });
    // On the page it is as long as it was.
    expect(tableNamed(open, 'Jobs')?.at.rows).toBe(40);
  });

  test('merged cells, hidden columns, truth values, errors and several lines are kept', async () => {
    const spreadsheet = await sheetOf([['a', null, true]]);
    const sheet = spreadsheet.workbook.getSheetByName('Sheet');
    sheet?.getRange('A1:B1').merge();
    sheet?.hideColumns(4, 1);
    await type(spreadsheet, 'Sheet', 'A3', '=NA()');
    await type(spreadsheet, 'Sheet', 'E3', 'hidden');
    const port = createEmbeddedPort(spreadsheet);
    const at = { sheet: 'Sheet', row: 3, column: 0, rows: 1, columns: 1 };
    const looked = await port.read([{ read: 'block', at }]);
    await port.apply([{ do: 'write', at, cells: [['one\ntwo']] }], looked, { label: 'Lines' });
    const saved = await save(spreadsheet);
    const file = sheetIn(saved, 'Sheet');
    expect(file.merges).toEqual([{ startRow: 0, startCol: 0, endRow: 0, endCol: 1 }]);
    expect(file.columns?.[4]?.hidden).toBe(true);
    expect(file.rows[0]?.[2]).toBe(true);
    expect(cellIn(saved, 'Sheet', 3, 0)).toMatchObject({ value: 'one\ntwo', style: { alignment: { wrapText: true } } });
    expect(sheetXml(saved, 'Sheet')).toContain('<f>NA()</f>');
  });

  test('a sheet whose name no file can hold is named', async () => {
    const { losses } = await describeCopy(await sheetOf([['a']], 'A name that is longer than it may be'));
    expect(losses.oddNames).toEqual(['A name that is longer than it may be']);
  });

  test('every table is in the list of tables', async () => {
    const { spreadsheet } = await filledDemo();
    open = spreadsheet;
    expect(allTables(spreadsheet)).toHaveLength(TABLES.length);
  });
});
