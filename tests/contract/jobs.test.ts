import { describe, expect, it } from 'vitest';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { cellData } from '../../src/workbook/embedded/snapshot';
import { createHeadless } from '../../src/workbook/embedded/spreadsheet';
import type { Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { createExcelPort } from '../../src/workbook/excel/port';
import { FUNCTIONS } from '../../src/functions/implementations';
import { functions as metadata } from '../../src/functions/functions.json';
import { COMPARE_HEAD_ROWS } from '../../src/workbook/compareSheet';
import { fillCompare } from '../../src/workbook/fillCompare';
import { fillPlan } from '../../src/workbook/fillPlan';
import { plansAmiss } from '../../src/workbook/lookAfter';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { sayCompared } from '../../src/words/chooseOutcomes';
import { sayAmiss } from '../../src/words/outcomes';
import type { Book } from '../simulated/book';
import { personAt } from '../simulated/person';
import { simulate } from '../simulated/simulated';
import { club, CLUB_ROWS, JOB_ROWS, STOCK_ROWS } from '../workbook/workshop';
import { comparing, fillTable, jobsSuite } from './jobsSuite';
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

describe('a comparison: client contract, simulated workbook', () => {
  async function prepared() {
    const simulated = simulate();
    const port = createExcelPort(simulated.host);
    await setUp(port);
    for (const [name, body] of Object.entries({ Stock: STOCK_ROWS, Jobs: JOB_ROWS, Clubs: CLUB_ROWS })) {
      lengthening(simulated.book)(name, body.length);
      await fillTable(port, name, body);
    }
    const shop = await readShop(port);
    const request = { scope: { job: '1042' }, comparison: comparing(shop), about: 'As they are.' } as const;
    return { ...simulated, simulated, port, fill: () => fillCompare(port, shop, request) };
  }

  it('takes two round trips: one to read, one to write', async () => {
    const { requests, fill } = await prepared();
    const before = requests.length;
    expect(await fill()).toMatchObject({ done: true });
    expect(requests.length - before).toBe(2);
  });

  it('is laid out to be printed: landscape, as wide as the page, its header row on every page', async () => {
    const { book, fill } = await prepared();
    const end = await fill();
    const sheet = book.sheets.find(({ name }) => name === 'Compare 1042');
    expect(end.done && sheet).toBeTruthy();
    expect(sheet?.page).toMatchObject({
      orientation: 'Landscape',
      zoom: { horizontalFitToPages: 1 },
      printTitleRows: `$${COMPARE_HEAD_ROWS + 1}:$${COMPARE_HEAD_ROWS + 1}`,
      centerFooter: 'Grips compared',
    });
  });

  it('leaves everything as it was, whichever action of its writing fails', async () => {
    const counted = await prepared();
    await counted.fill();
    const actions = counted.requests.at(-1)?.actions ?? 0;
    expect(actions).toBeGreaterThan(100);
    // every seventh: neighbours are parts of the same change
    for (let at = 0; at < actions; at += 7) {
      const { book, simulated, fill } = await prepared();
      const before = book.snapshot();
      simulated.trouble = (request) => (request === 1 ? { code: 'GeneralException', at } : null);
      expect(await fill(), `action ${at}`).toMatchObject({ done: false, reason: 'port', error: { code: 'putBack' } });
      expect(book.snapshot(), `action ${at}`).toBe(before);
    }
  }, 120_000);

  it('can be taken back after its writing failed and could not be put back', async () => {
    const { book, requests, simulated, port, fill } = await prepared();
    const sheets = book.sheets.map(({ name }) => name);
    await port.remember('setwright.lastFill', null);
    const counted = await prepared();
    await counted.fill();
    const actions = counted.requests.at(-1)?.actions ?? 0;
    const start = requests.length;
    simulated.trouble = (request) => {
      if (request === 1) return { code: 'GeneralException', at: actions - 1 };
      return request === 3 ? { code: 'AccessDenied', at: 2 } : null;
    };
    const end = await fill();
    expect(requests.length - start).toBeGreaterThanOrEqual(3);
    simulated.trouble = null;
    expect(end).toMatchObject({ done: false, reason: 'port', error: { code: 'halfWritten' } });
    expect(sayCompared(end)).toContain('use Undo');
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
    expect(book.sheets.map(({ name }) => name)).toEqual(sheets);
  });
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

it('what a live plan shows is told in the words of its function: embedded spreadsheet, headless', async () => {
  const SETPLAN = (): never => {
    throw Object.assign(new Error('Clubs row 2, Length (in): it is blank.'), { code: '#VALUE!' });
  };
  const spreadsheet = await createHeadless({
    sheets: [{ name: 'Sheet1', cells: [] }],
    functions: { metadata, implementations: { ...FUNCTIONS, SETPLAN } },
  });
  const port = createEmbeddedPort(spreadsheet);
  await setUp(port);
  for (const [name, body] of Object.entries({ Stock: STOCK_ROWS, Clubs: CLUB_ROWS })) await fillTable(port, name, body);
  const asked = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'live' } as const;
  const end = await fillPlan(port, await readShop(port), asked);
  if (!end.done) throw new Error(end.reason);
  expect((await plansAmiss(port, [end])).map(sayAmiss)).toEqual([
    "'Plan 1042'!A10 shows #VALUE! instead of a plan. Clubs row 2, Length (in): it is blank.",
  ]);
  spreadsheet.dispose();
});

it('looking at what live plans show takes one round trip: client contract, simulated workbook', async () => {
  const { book, host, requests } = simulate();
  const port = createExcelPort(host);
  await setUp(port);
  for (const [name, body] of Object.entries({ Stock: STOCK_ROWS, Clubs: CLUB_ROWS })) {
    lengthening(book)(name, body.length);
    await fillTable(port, name, body);
  }
  const asked = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'live' } as const;
  const end = await fillPlan(port, await readShop(port), asked);
  if (!end.done) throw new Error(end.reason);
  const before = requests.length;
  await plansAmiss(port, [end, end, end], () => Promise.reject(new Error('was waited for')));
  expect(requests.length - before).toBe(1);
});

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
