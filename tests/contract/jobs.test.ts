import { describe, expect, it } from 'vitest';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { cellData } from '../../src/workbook/embedded/snapshot';
import { createHeadless } from '../../src/workbook/embedded/spreadsheet';
import type { Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { createExcelPort } from '../../src/workbook/excel/port';
import { FUNCTIONS } from '../../src/functions/implementations';
import { functions as metadata } from '../../src/functions/functions.json';
import { fillPlan } from '../../src/workbook/fillPlan';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import type { Book } from '../simulated/book';
import { personAt } from '../simulated/person';
import { simulate } from '../simulated/simulated';
import { club, STOCK_ROWS } from '../workbook/workshop';
import { fillTable, jobsSuite } from './jobsSuite';
import type { Person } from './structureSuite';

jobsSuite(
  'client contract, simulated workbook',
  () => {
    const { book, host } = simulate();
    return { port: createExcelPort(host), person: personAt(book), sheet: 'Sheet1', lengthen: lengthening(book) };
  },
  false,
);

function lengthening(book: Book): (name: string, rows: number) => void {
  return (name, rows) => {
    const table = book.tables.find((each) => each.name === name);
    if (table) Object.assign(table, { at: { ...table.at, rows: rows + 1 } });
  };
}

describe('round trips of a fill: client contract, simulated workbook', () => {
  for (const count of [13, 5000]) {
    it(`are two for ${count} clubs: one to read, one to write`, async () => {
      const { book, host, requests } = simulate();
      const port = createExcelPort(host);
      await setUp(port);
      const rows = Array.from({ length: count }, (_, i) => club('big', `Club ${i}`, 'Iron', 37, 0.6, 'D2', 410));
      for (const [name, body] of Object.entries({ Stock: STOCK_ROWS, Clubs: rows })) {
        lengthening(book)(name, body.length);
        await fillTable(port, name, body);
      }
      const shop = await readShop(port);
      const before = requests.length;
      const request = {
        scope: { job: 'big' },
        choices: { newItem: 'OAK-58' },
        where: 'planSheet',
        as: 'live',
      } as const;
      expect(await fillPlan(port, shop, request)).toMatchObject({ done: true, clubs: count, choicesWritten: count });
      const trips = requests.slice(before);
      expect(trips.length).toBe(2);
      expect(Math.max(...trips.map(({ characters }) => characters))).toBeLessThan(5_000_000);
    }, 120_000);
  }
});

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
