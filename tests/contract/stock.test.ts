import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { cellData } from '../../src/workbook/embedded/snapshot';
import { createHeadless } from '../../src/workbook/embedded/spreadsheet';
import { createExcelPort } from '../../src/workbook/excel/port';
import { FUNCTIONS } from '../../src/functions/implementations';
import { functions as metadata } from '../../src/functions/functions.json';
import { personAt } from '../simulated/person';
import { simulate } from '../simulated/simulated';
import { stockSuite } from './stockSuite';

stockSuite(
  'client contract, simulated workbook',
  () => {
    const { book, host } = simulate();
    const lengthen = (name: string, rows: number): void => {
      const table = book.tables.find((each) => each.name === name);
      if (table) Object.assign(table, { at: { ...table.at, rows: rows + 1 } });
    };
    return { port: createExcelPort(host), person: personAt(book), lengthen };
  },
  false,
);

stockSuite(
  'embedded spreadsheet, headless',
  async () => {
    const functions = { metadata, implementations: FUNCTIONS };
    const spreadsheet = await createHeadless({ sheets: [{ name: 'Sheet1', cells: [] }], functions });
    const enter = async (sheet: string, row: number, column: number, data: object): Promise<void> => {
      spreadsheet.workbook.getSheetByName(sheet)?.getRange(row, column).setValue(data);
      await spreadsheet.settled();
    };
    return {
      port: createEmbeddedPort(spreadsheet),
      person: {
        type: (sheet, row, column, value) => enter(sheet, row, column, cellData(value) ?? { v: null, f: null }),
        typeFormula: (sheet, row, column, formula) => enter(sheet, row, column, { f: formula }),
      },
      dispose: () => spreadsheet.dispose(),
    };
  },
  true,
);
