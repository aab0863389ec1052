import { TableColumnFilterTypeEnum } from '@univerjs/sheets-table';
import { expect, it } from 'vitest';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { cellData } from '../../src/workbook/embedded/snapshot';
import { createHeadless, type Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { tableNamed } from '../../src/workbook/embedded/tables';
import type { Block } from '../../src/workbook/port';
import { FUNCTIONS } from '../../src/functions/implementations';
import { functions as metadata } from '../../src/functions/functions.json';
import { lengthenSuite } from './lengthenSuite';
import { namedRowsSuite } from './namedRowsSuite';
import { quoteSuite } from './quoteSuite';
import { structureSuite, type Bench, type Person } from './structureSuite';
import { widenSuite } from './widenSuite';

async function makeBench(): Promise<Bench> {
  const spreadsheet = await createHeadless({
    sheets: [{ name: 'Sheet1', cells: [] }],
    functions: { metadata, implementations: FUNCTIONS },
  });
  return {
    port: createEmbeddedPort(spreadsheet),
    person: personAt(spreadsheet),
    sheet: 'Sheet1',
    dispose: () => spreadsheet.dispose(),
  };
}

structureSuite('embedded spreadsheet, headless', makeBench);
lengthenSuite('embedded spreadsheet, headless', makeBench);
quoteSuite('embedded spreadsheet, headless', makeBench);
widenSuite('embedded spreadsheet, headless', makeBench);
namedRowsSuite('embedded spreadsheet, headless', makeBench);

it('taken back while its sheet is shown, a fill leads to the sheet from which it was made, not to a neighbour', async () => {
  const { port, person, dispose = () => undefined } = await makeBench();
  const at = (sheet: string): Block => ({ sheet, row: 0, column: 0, rows: 1, columns: 1 });
  const make = async (sheet: string, shown: boolean) => {
    const looked = await port.read([{ read: 'block', at: at(sheet) }]);
    const changes = [
      { do: 'sheet', name: sheet },
      { do: 'write', at: at(sheet), cells: [['x']] },
      ...(shown ? [{ do: 'show', at: at(sheet) } as const] : []),
    ] as const;
    return port.apply(changes, looked, { label: 'made' });
  };
  await make('Middle', false);
  await make('Last', false);
  await person.select(at('Middle'));
  const receipt = await make('Plan', true);
  expect((await port.selection()).at.sheet).toBe('Plan');
  await port.revert(receipt);
  expect((await port.selection()).at.sheet).toBe('Middle');
  await dispose();
});

it('keeps a sheet on which a person types while a fill is taken back and calculated', async () => {
  const spreadsheet = await createHeadless({ sheets: [{ name: 'Sheet1', cells: [] }] });
  const port = createEmbeddedPort(spreadsheet);
  const at = (sheet: string): Block => ({ sheet, row: 0, column: 0, rows: 1, columns: 1 });
  const looked = await port.read([
    { read: 'block', at: at('Plan') },
    { read: 'block', at: at('Sheet1') },
  ]);
  const receipt = await port.apply(
    [
      { do: 'sheet', name: 'Plan' },
      { do: 'write', at: at('Plan'), cells: [['ours']] },
      { do: 'write', at: at('Sheet1'), cells: [['ours']] },
    ],
    looked,
    { label: 'made' },
  );
  const settled = spreadsheet.settled.bind(spreadsheet);
  spreadsheet.settled = async () => {
    spreadsheet.settled = settled;
    await personAt(spreadsheet).type('Plan', 4, 2, 'typed meanwhile');
    await settled();
  };
  expect(await port.revert(receipt)).toMatchObject({ left: [] });
  const [plan, sheet] = await port.read([
    { read: 'block', at: { ...at('Plan'), rows: 5, columns: 3 } },
    { read: 'block', at: at('Sheet1') },
  ]);
  expect(plan).toMatchObject({ sheetExists: true });
  expect(plan.values[4]).toEqual([null, null, 'typed meanwhile']);
  expect([plan.values[0]?.[0], sheet.values[0]?.[0]]).toEqual([null, null]);
  spreadsheet.dispose();
});

/** A person at the spreadsheet, acting by its commands as its own screen does. */
function personAt(spreadsheet: Spreadsheet): Person {
  const { workbook } = spreadsheet;
  const sheetNamed = (name: string) => {
    const sheet = workbook.getSheetByName(name);
    if (!sheet) throw new Error(`there is no sheet ${name}`);
    return sheet;
  };
  const rangeOf = (at: Block) => sheetNamed(at.sheet).getRange(at.row, at.column, at.rows, at.columns);
  return {
    type: async (sheet, row, column, value) => {
      sheetNamed(sheet)
        .getRange(row, column)
        .setValue(cellData(value) ?? { v: null, f: null });
      await spreadsheet.settled();
    },
    typeFormula: async (sheet, row, column, formula) => {
      sheetNamed(sheet).getRange(row, column).setValue({ f: formula });
      await spreadsheet.settled();
    },
    select: (at) => {
      workbook.setActiveSheet(sheetNamed(at.sheet));
      rangeOf(at).activate();
    },
    protect: async (sheet) => {
      await sheetNamed(sheet).getWorksheetPermission().protect();
    },
    merge: (at) => void rangeOf(at).merge(),
    filter: (name) => {
      const table = tableNamed(spreadsheet, name);
      if (!table) throw new Error(`there is no table ${name}`);
      workbook.setTableFilter(table.id, 0, { filterType: TableColumnFilterTypeEnum.manual, values: ['007'] });
    },
    deleteSheet: async (sheet) => {
      workbook.deleteSheet(sheetNamed(sheet));
      await spreadsheet.settled();
    },
  };
}
