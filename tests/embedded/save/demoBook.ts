/** The try-out page's workbook without a screen: the demo, a live plan of its full bag, and its grips compared. */
import { compareGrips } from '../../../src/core/index';
import { FUNCTIONS } from '../../../src/functions/implementations';
import { functions as metadata } from '../../../src/functions/functions.json';
import { DEMO_MONDAY } from '../../../src/tryout/demo/demoDays';
import { fillDemo, demoSheets } from '../../../src/tryout/demoWorkbook';
import { createEmbeddedPort } from '../../../src/workbook/embedded/port';
import { createHeadless, type Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { fillCompare } from '../../../src/workbook/fillCompare';
import { fillPlan } from '../../../src/workbook/fillPlan';
import { planScope, scopeRows } from '../../../src/workbook/planScope';
import type { WorkbookPort } from '../../../src/workbook/port';
import { readShop } from '../../../src/workbook/shop';

export interface DemoBook {
  readonly spreadsheet: Spreadsheet;
  readonly port: WorkbookPort;
}

export const PLAN_SHEET = 'Plan R-201';
export const COMPARE_SHEET = 'Compare R-201';
const scope = { job: 'R-201' };

export async function openDemo(): Promise<DemoBook> {
  const spreadsheet = await createHeadless({
    sheets: demoSheets.map((name) => ({ name, cells: [] })),
    functions: { metadata, implementations: FUNCTIONS },
  });
  const port = createEmbeddedPort(spreadsheet);
  await fillDemo(port, DEMO_MONDAY);
  return { spreadsheet, port };
}

/** Compares as the pane does: the job's clubs but its putter. */
export async function compareDemo(port: WorkbookPort): Promise<void> {
  const shop = await readShop(port);
  const clubs = shop.tables.Clubs;
  const rows = clubs ? scopeRows(clubs, scope).rows : [];
  const all = clubs && planScope(shop.tables, { rows, job: scope.job, wholeJob: true, key: '' }, {});
  if (!all?.ok) throw new Error('cannot be planned');
  const noPutter = all.value.input.clubs.filter(({ kind }) => kind !== 'putter');
  const comparison = compareGrips({ ...all.value.input, clubs: noPutter });
  const done = await fillCompare(port, shop, { scope, comparison, about: 'As the clubs are: their own layers.' });
  if (!done.done) throw new Error(`not compared: ${done.reason}`);
}

export async function filledDemo(): Promise<DemoBook> {
  const book = await openDemo();
  const shop = await readShop(book.port);
  const plan = await fillPlan(book.port, shop, { scope, choices: {}, where: 'planSheet', as: 'live' });
  if (!plan.done) throw new Error(`not planned: ${plan.reason}`);
  await compareDemo(book.port);
  return book;
}
