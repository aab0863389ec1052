import { beforeAll, describe, expect, test } from 'vitest';
import { DEMO_MONDAY } from '../../src/tryout/demo/demoDays';
import { demoSheets, fillDemo } from '../../src/tryout/demoWorkbook';
import { SheetDataValidationModel } from '@univerjs/sheets-data-validation';
import { draftContent } from '../../src/workbook/embedded/draft/content';
import { Draft } from '../../src/workbook/embedded/draft/draft';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { describeCopy } from '../../src/workbook/embedded/save/copy';
import { createHeadless, type Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { allTables } from '../../src/workbook/embedded/tables';
import { PLANS_KEY } from '../../src/workbook/planPlaces';
import { PortError, type WorkbookPort } from '../../src/workbook/port';
import { TABLES } from '../../src/workbook/schema';
import { setUp } from '../../src/workbook/setUp';

interface Book {
  readonly spreadsheet: Spreadsheet;
  readonly port: WorkbookPort;
}

async function written(fill: (port: WorkbookPort) => Promise<unknown>, sheets: readonly string[]): Promise<Book> {
  const spreadsheet = await createHeadless({ sheets: sheets.map((name) => ({ name, cells: [] })) });
  const port = createEmbeddedPort(spreadsheet);
  await fill(port);
  // Tables take in what stands below them when they are next looked at.
  await port.read([{ read: 'sheets' }]);
  return { spreadsheet, port };
}

async function drafted(draft: Draft): Promise<Book> {
  const spreadsheet = await createHeadless({ sheets: [], opened: draftContent(draft.book) });
  return { spreadsheet, port: createEmbeddedPort(spreadsheet) };
}

/** What a sheet holds and looks like, cell by cell, row by row, column by column. */
function sheetsOf({ spreadsheet }: Book) {
  const workbook = spreadsheet.workbook.getWorkbook();
  return workbook.getSheets().map((sheet) => {
    const cells: unknown[] = [];
    sheet.getCellMatrix().forValue((row, column, cell) => {
      const style = workbook.getStyles().getStyleByCell(cell) ?? {};
      const filled = cell?.v !== null && cell?.v !== undefined;
      if (filled || Object.keys(style).length > 0) cells.push([row, column, filled ? [cell.v, cell.t] : null, style]);
    });
    const { name, freeze, rowCount, columnCount, defaultStyle } = sheet.getConfig();
    const heights = Array.from({ length: rowCount }, (_, row) => sheet.getRowHeight(row));
    const widths = Array.from({ length: columnCount }, (_, column) => sheet.getColumnWidth(column));
    return { name, freeze, rowCount, columnCount, defaultStyle, heights, widths, cells };
  });
}

function rulesOf({ spreadsheet }: Book): unknown[] {
  const model = spreadsheet.injector.get(SheetDataValidationModel);
  return spreadsheet.workbook
    .getSheets()
    .map((sheet) => model.getRules(spreadsheet.id, sheet.getSheetId()).map(({ uid: _, ...rule }) => rule));
}

describe('the demo as data', () => {
  const draft = new Draft(demoSheets);
  let [byPort, byData]: Book[] = [];
  beforeAll(async () => {
    await fillDemo(draft, DEMO_MONDAY + 30);
    byPort = await written((port) => fillDemo(port, DEMO_MONDAY + 30), demoSheets);
    byData = await drafted(draft);
  });
  const both = <T>(look: (book: Book) => T): [T, T] => {
    if (!byPort || !byData) throw new Error('not made');
    return [look(byData), look(byPort)];
  };

  test('holds the cells, looks, sizes and frozen rows that the port would have written', () => {
    const [data, port] = both(sheetsOf);
    expect(port.map(({ name }) => name)).toEqual(demoSheets);
    expect(port.every(({ cells }) => cells.length > 100)).toBe(true);
    expect(new Set(port.flatMap(({ heights }) => heights)).size).toBeGreaterThan(2);
    port.forEach((sheet, at) => expect(data[at], sheet.name).toEqual(sheet));
  });

  test('has the same tables', () => {
    const [data, port] = both(({ spreadsheet }) => allTables(spreadsheet).map(({ name, at }) => ({ name, at })));
    expect(port).toHaveLength(TABLES.length);
    expect(data).toEqual(port);
  });

  test('has the same drop-downs', () => {
    const [data, port] = both(rulesOf);
    expect(port.flat().length).toBeGreaterThan(20);
    expect(data).toEqual(port);
  });

  test('keeps the same settings, shows the same cell, and leaves nothing to undo', async () => {
    const [data, port] = both(({ spreadsheet }) => spreadsheet.workbook.getCustomMetadata());
    expect(Object.keys(port ?? {})).toContain(PLANS_KEY);
    expect(data).toEqual(port);
    const [dataSelected, portSelected] = both((book) => book.port.selection());
    expect(await dataSelected).toEqual(await portSelected);
  });

  test('comes out as the same file', async () => {
    const [data, port] = both(({ spreadsheet }) => describeCopy(spreadsheet));
    expect(await data).toEqual(await port);
  });

  test('answers what the spreadsheet would answer', async () => {
    const queries = [
      { read: 'sheets' },
      { read: 'contents' },
      ...TABLES.map(({ name }) => ({ read: 'table', table: name }) as const),
      ...TABLES.map(
        ({ name }) => ({ read: 'block', at: { sheet: name, row: 0, column: 0, rows: 120, columns: 40 } }) as const,
      ),
      { read: 'table', table: 'Headings' },
      { read: 'block', at: { sheet: 'Plan R-201', row: 0, column: 0, rows: 3, columns: 3 } },
      { read: 'name', name: 'nowhere' },
    ] as const;
    const [, port] = both((book) => book.port.read<readonly (typeof queries)[number][]>(queries));
    const answers = await draft.read<readonly (typeof queries)[number][]>(queries);
    (await port).forEach((answer, at) => expect(answers[at], JSON.stringify(queries[at])).toEqual(answer));
    expect(await draft.recall(PLANS_KEY)).toBe(await byPort?.port.recall(PLANS_KEY));
    expect(await draft.selection()).toEqual(await byPort?.port.selection());
  });
});

test('a workbook that is set up and nothing else is the same, too, on sheets that are made for it', async () => {
  const draft = new Draft(['Mine']);
  await setUp(draft);
  const [data, port] = [await drafted(draft), await written(setUp, ['Mine'])];
  expect(sheetsOf(data)).toEqual(sheetsOf(port));
  expect(rulesOf(data)).toEqual(rulesOf(port));
});

test('what needs a spreadsheet is refused, and so is a cell that nobody looked at', async () => {
  const draft = new Draft(['Mine']);
  const at = { sheet: 'Mine', row: 0, column: 0, rows: 1, columns: 1 };
  const [looked] = await draft.read([{ read: 'block', at }]);
  const refused = { code: 'unsupported' } satisfies Partial<PortError>;
  await expect(
    draft.apply([{ do: 'write', at, cells: [[{ call: 'SETPLAN', args: [] }]] }], [looked], { label: '' }),
  ).rejects.toMatchObject(refused);
  await expect(draft.apply([{ do: 'name', name: 'Here', at }], [looked], { label: '' })).rejects.toMatchObject(refused);
  await expect(draft.apply([{ do: 'write', at, cells: [['x']] }], [], { label: '' })).rejects.toMatchObject({
    code: 'notLookedAt',
  });
});
