import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { cellData } from '../../src/workbook/embedded/snapshot';
import { createHeadless } from '../../src/workbook/embedded/spreadsheet';
import type { Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { createExcelPort } from '../../src/workbook/excel/port';
import { FUNCTIONS } from '../../src/functions/implementations';
import { functions as metadata } from '../../src/functions/functions.json';
import { personAt } from '../simulated/person';
import { simulate } from '../simulated/simulated';
import { jobsSuite } from './jobsSuite';
import type { Person } from './structureSuite';

jobsSuite(
  'client contract, simulated workbook',
  () => {
    const { book, host } = simulate();
    return { port: createExcelPort(host), person: personAt(book), sheet: 'Sheet1' };
  },
  false,
);

jobsSuite(
  'embedded spreadsheet, headless',
  async () => {
    const spreadsheet = await createHeadless({
      sheets: [{ name: 'Sheet1', cells: [] }],
      functions: { metadata, implementations: FUNCTIONS },
    });
    return {
      port: createEmbeddedPort(spreadsheet),
      person: typist(spreadsheet),
      sheet: 'Sheet1',
      dispose: () => spreadsheet.dispose(),
    };
  },
  true,
);

/** Somebody who only types. */
function typist(spreadsheet: Spreadsheet): Person {
  const never = (): never => {
    throw new Error('not done here');
  };
  return {
    type: async (sheet, row, column, value) => {
      const found = spreadsheet.workbook.getSheetByName(sheet);
      found?.getRange(row, column).setValue(cellData(value) ?? { v: null, f: null });
      await spreadsheet.settled();
    },
    typeFormula: never,
    select: never,
    protect: never,
    merge: never,
    filter: never,
    deleteSheet: never,
  };
}
