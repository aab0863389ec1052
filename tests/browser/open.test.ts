import { readFile, writeFile, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeXlsx, type Cell } from 'hucre/xlsx';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, test } from 'vitest';
import { xmlBook } from '../embedded/open/xmlCells';
import { accessFaults } from './memoryPane';
import type { OpenPage, PageOptions } from './page';
import { fillDemoPlan, openDemo } from './tryout';

let open: OpenPage | undefined;
afterEach(async () => {
  await open?.close();
  open = undefined;
});

const fixtures = join(import.meta.dirname, '../fixtures/foreign');
const fixture = (name: string): string => join(fixtures, name);
/** Pictures for whoever wants to look. */
const look = async (page: Page, name: string): Promise<void> => {
  const folder = process.env.KEEP_PICTURES;
  if (!folder) return;
  // What is painted on a canvas gives no sign of being there.
  await page.waitForTimeout(2_500);
  await page.screenshot({ path: join(folder, `${name}.png`) });
};

async function opened(options: PageOptions = {}): Promise<Page> {
  open = await openDemo(options);
  return open.page;
}

const dialog = (page: Page) => page.getByRole('dialog', { name: 'Open a workbook' });
const choose = (page: Page, path: string) => page.locator('input.open-file').setInputFiles(path);
const press = (page: Page, name: string) => page.getByRole('dialog').getByRole('button', { name, exact: true }).click();

/** Chooses a file, agrees, and waits until it stands on the page. */
async function bringIn(page: Page, path: string): Promise<void> {
  await choose(page, path);
  await press(page, 'Open');
  await page
    .getByRole('status')
    .filter({ hasText: /^Opened\.$/ })
    .waitFor();
}

async function saved(page: Page): Promise<{ name: string; bytes: Uint8Array }> {
  await page.getByRole('button', { name: 'Save as .xlsx' }).click();
  await page.getByRole('dialog', { name: 'Save a copy' }).waitFor();
  await look(page, 'save-opened');
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Save')]);
  return { name: download.suggestedFilename(), bytes: new Uint8Array(await readFile(await download.path())) };
}

test('a file is opened, saved as a copy under another name, and the copy opens again', async () => {
  const page = await opened();
  await look(page, 'open-before');
  await choose(page, fixture('chart-and-formulas.xlsx'));
  await dialog(page).getByRole('button', { name: 'Open', exact: true }).waitFor();
  await look(page, 'open-found');
  expect(await dialog(page).textContent()).toContain('A copy that is saved here will be without:1 chart');
  await press(page, 'Open');
  await page
    .getByRole('status')
    .filter({ hasText: /^Opened\.$/ })
    .waitFor();
  await dialog(page).waitFor({ state: 'detached' });
  expect(await page.locator('.about').textContent()).toMatch(/^chart-and-formulas\.xlsx, opened from your computer/);
  await look(page, 'open-after');
  const copy = await saved(page);
  expect(copy.name).toBe('chart-and-formulas-setwright.xlsx');
  const file = xmlBook(new Uint8Array(await readFile(fixture('chart-and-formulas.xlsx'))));
  const [before, after] = [file, xmlBook(copy.bytes)].map(({ sheets }) => sheets[0]?.cells);
  for (const [at, { value, formula }] of before ?? []) {
    // The file has formulas without results: they are calculated on the page.
    if (formula !== null) expect(after?.get(at)?.value, at).toEqual(expect.any(Number));
    if (formula === null) expect(after?.get(at)?.value, at).toEqual(value);
    // One that is shared with another cell is written out in each.
    else if (formula !== '') expect(after?.get(at)?.formula, at).toBe(formula);
  }
  const folder = await mkdtemp(join(tmpdir(), 'setwright-'));
  await writeFile(join(folder, copy.name), copy.bytes);
  await bringIn(page, join(folder, copy.name));
  await rm(folder, { recursive: true });
  expect((await saved(page)).name).toBe('chart-and-formulas-setwright-2.xlsx');
  expect(open?.problems).toEqual([]);
});

test('before an opened workbook with changes is left the browser asks, and not once they are saved; deleting a sheet says what goes with it', async () => {
  const page = await opened();
  let asked = 0;
  page.on('dialog', (question) => {
    asked += 1;
    void question.dismiss();
  });
  /** Closes the page as a person does; true where it was asked and stays. */
  const leaving = async (): Promise<boolean> => {
    const before = asked;
    await page.evaluate(() => void setTimeout(() => location.reload(), 0));
    await page.waitForTimeout(1_000);
    return asked > before;
  };
  await bringIn(page, fixture('two-online-sheets.xlsx'));
  const tabs = page.getByRole('tablist', { name: 'Sheet tabs' }).getByRole('tab');
  const [, second] = await tabs.allInnerTexts();
  const tab = tabs.filter({ hasText: second ?? '' });
  await tab.click();
  await tab.click({ button: 'right' });
  await page.getByText('Delete', { exact: true }).first().click();
  const question = page.getByRole('dialog').filter({ hasText: 'Undo does not bring this sheet back' });
  await question.getByRole('button', { name: 'OK' }).click();
  await expect.poll(() => tabs.count()).toBe(1);
  expect(await page.getByRole('toolbar').getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  expect(await leaving()).toBe(true);
  await saved(page);
  expect(await leaving()).toBe(false);
  // It was left: what comes is the demo.
  await page.locator('.open-button:enabled').waitFor();
  expect(await page.locator('.about').textContent()).toContain('A demo workshop');
  expect(open?.problems).toEqual([]);
});

test('the demo with a plan that was just filled in is known again in its copy: the plan is replaced without being asked about', async () => {
  const page = await opened();
  await fillDemoPlan(page);
  const copy = await saved(page);
  const folder = await mkdtemp(join(tmpdir(), 'setwright-'));
  await writeFile(join(folder, copy.name), copy.bytes);
  await bringIn(page, join(folder, copy.name));
  await rm(folder, { recursive: true });
  await look(page, 'open-own-copy');
  await fillDemoPlan(page);
  expect(await page.getByRole('alertdialog').count()).toBe(0);
  expect(open?.problems).toEqual([]);
});

/** Begins to put a file on the page, and cancels once it is found what hangs on what: what stood there stays, and works. */
async function cancelWhilePlacing(page: Page, path: string): Promise<void> {
  await choose(page, path);
  await press(page, 'Open');
  const said = dialog(page).getByRole('status');
  // From 20 of a hundred on the sheet is made and being calculated.
  await said.filter({ hasText: /^Putting it into the sheet: (2[1-9]|[3-9]\d) %$/ }).waitFor();
  await look(page, 'open-placing');
  await press(page, 'Cancel');
  await dialog(page).waitFor({ state: 'detached' });
  expect(await page.locator('.about').textContent()).toContain('A demo workshop');
  await fillDemoPlan(page);
  // The half-made sheet is gone, and nothing of it is heard later.
  await expect.poll(() => page.locator('#workbook .sheet').count(), { timeout: 30_000 }).toBe(1);
  await page.waitForTimeout(1_500);
  expect(open?.problems).toEqual([]);
}

test('a stock list of 40,000 rows beside tables, merged cells and hidden rows stands on the page, after it was cancelled once, and the page stays alive meanwhile', async () => {
  const page = await opened();
  const folder = await mkdtemp(join(tmpdir(), 'setwright-'));
  const path = join(folder, 'stock.xlsx');
  await writeFile(path, await stockList(40_000));
  await cancelWhilePlacing(page, path);
  await bringIn(page, fixture('named-tables.xlsx'));
  await look(page, 'open-messy');
  const began = Date.now();
  await choose(page, path);
  // Reading goes on in a worker: the window says so, and could be left.
  await dialog(page).getByRole('button', { name: 'Cancel' }).waitFor();
  await dialog(page).getByRole('button', { name: 'Open', exact: true }).waitFor();
  const read = Date.now();
  await press(page, 'Open');
  await dialog(page).waitFor({ state: 'detached' });
  if (process.env.KEEP_PICTURES) console.log(`read in ${read - began} ms, placed in ${Date.now() - read} ms`);
  await look(page, 'open-large');
  const saving = Date.now();
  const copy = await saved(page);
  if (process.env.KEEP_PICTURES) console.log(`saved in ${Date.now() - saving} ms`);
  await rm(folder, { recursive: true });
  const [sheet] = xmlBook(copy.bytes).sheets;
  expect(sheet?.cells.get('A40001')?.value).toBe('Item 39999');
  expect(sheet?.cells.get('D40001')?.formula).toBe('B40001*C40001');
  expect(open?.problems).toEqual([]);
}, 240_000);

/** Items with a count, a price and their product; every eighth row is coloured. */
function stockList(rows: number): Promise<Uint8Array> {
  const cells = new Map<string, Partial<Cell>>();
  const list: (string | number | null)[][] = [['Item', 'Pieces', 'Price', 'Worth', 'Code', 'Note', 'Rack', 'Bought']];
  for (let i = 0; i < rows; i++) {
    list.push([
      `Item ${i}`,
      i % 60,
      4.5,
      (i % 60) * 4.5,
      `00${i}`,
      i % 9 ? null : 'ask',
      `R${i % 40}`,
      46_000 + (i % 900),
    ]);
    cells.set(`${i + 1},3`, { value: (i % 60) * 4.5, formula: `B${i + 2}*C${i + 2}`, formulaResult: (i % 60) * 4.5 });
    cells.set(`${i + 1},7`, { value: 46_000 + (i % 900), style: { numFmt: 'yyyy-mm-dd' } });
    if (i % 8 === 0) {
      const fill = { type: 'pattern', pattern: 'solid', fgColor: { rgb: 'FFF4CC' } } as const;
      cells.set(`${i + 1},0`, { value: `Item ${i}`, style: { fill } });
    }
  }
  const columns = list[0]?.map((name) => ({ name: String(name) })) ?? [];
  return writeXlsx({
    sheets: [{ name: 'Stock', rows: list, cells, tables: [{ name: 'Inventory', range: `A1:H${rows + 1}`, columns }] }],
  });
}

test('cells that come out otherwise here are told with what the file kept and what they come to, the text from its beginning', async () => {
  const page = await opened({ width: 340, height: 640 });
  const folder = await mkdtemp(join(tmpdir(), 'setwright-'));
  const path = join(folder, 'kept.xlsx');
  // The file keeps the first number; the second is the sum.
  const kept = (value: number, formula: string): Partial<Cell> => ({ value, formula, formulaResult: value });
  const cells = Array.from({ length: 15 }, (_, row) => [
    [`${row},0`, kept(12.5, `${row}+13`)] as const,
    [`${row},1`, kept(row, `UNHEARDOF(A${row + 1})`)] as const,
  ]).flat();
  await writeFile(path, await writeXlsx({ sheets: [{ name: 'Grip wall', cells: new Map(cells) }] }));
  await choose(page, path);
  await press(page, 'Open');
  const told = page.getByRole('dialog', { name: 'Opened' });
  await told.waitFor();
  await rm(folder, { recursive: true });
  await look(page, 'open-otherwise');
  expect(await told.getByText(/keep the value/).textContent()).toContain(
    "15 cells ('Grip wall'!B1, B2, B3, B4, B5, B6 and 9 more) keep the value that the file had",
  );
  const items = await told.locator('ul').last().getByRole('listitem').allTextContents();
  expect(items).toHaveLength(7);
  expect(items[0]).toBe("'Grip wall'!A1: the file kept 12.5, here it comes to 13");
  expect(items.at(-1)).toBe('and 9 more');
  // It is longer than the window is high, begins at its beginning, and the way out of it is in sight.
  expect(await told.evaluate((window) => [window.scrollTop, window.scrollHeight > window.clientHeight])).toEqual([
    0,
    true,
  ]);
  const close = told.getByRole('button', { name: 'Close' });
  expect(await close.evaluate((button) => button === document.activeElement)).toBe(true);
  const box = await close.boundingBox();
  expect((box?.y ?? 999) + (box?.height ?? 0)).toBeLessThanOrEqual(640);
  expect((await accessFaults(page)).filter((fault) => /open-|save|<dialog/.test(fault))).toEqual([]);
  await close.click();
  await told.waitFor({ state: 'detached' });
  // There is no room for the sentence about it, but for its name.
  expect(await page.locator('.about').innerText()).toBe('kept.xlsx');
  const header = await page.locator('header.top').evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
  expect(header).toBeLessThanOrEqual(0);
  await look(page, 'open-small');
  expect(open?.problems).toEqual([]);
});

test.each([
  ['locked.xlsx', null, 'is locked with a password'],
  ['stock.csv', 'item,grams\nA,50\n', 'is no workbook: it may be text with separators'],
  ['empty.xlsx', '', 'is empty'],
  ['old.xls', '\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1', 'is in an old format (.xls)'],
])('%s is refused in a sentence, and the page stays as it was', async (name, content, sentence) => {
  const page = await opened();
  const folder = await mkdtemp(join(tmpdir(), 'setwright-'));
  const path = content === null ? fixture(name) : join(folder, name);
  if (content !== null) await writeFile(path, content, 'latin1');
  await choose(page, path);
  const alert = dialog(page).getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toContain(`${name} ${sentence}`);
  expect(await alert.textContent()).toContain('What stood on the page is as it was.');
  await look(page, `open-refused-${name}`);
  await press(page, 'Close');
  await rm(folder, { recursive: true });
  expect(await page.locator('.about').textContent()).toContain('A demo workshop');
  // It works on.
  await fillDemoPlan(page);
});

describe.each(['light', 'dark'] as const)('at 320 px, %s', (theme) => {
  test('button and window have room, no fault of access, and go by the keyboard', async () => {
    const page = await opened({ width: 320, height: 640, dark: theme === 'dark' });
    const box = await page.getByRole('button', { name: 'Open .xlsx' }).boundingBox();
    expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(320);
    await choose(page, fixture('named-tables.xlsx'));
    await dialog(page).getByRole('button', { name: 'Open', exact: true }).waitFor();
    const inner = await dialog(page).evaluate((window) => window.scrollWidth - window.clientWidth);
    expect(inner).toBeLessThanOrEqual(0);
    const faults = (await accessFaults(page)).filter((fault) => /open-|save|<dialog|<header/.test(fault));
    expect(faults).toEqual([]);
    await look(page, `open-narrow-${theme}`);
    await page.keyboard.press('Escape');
    await dialog(page).waitFor({ state: 'detached' });
    expect(await page.locator('.about').textContent()).toContain('A demo workshop');
  });
});
