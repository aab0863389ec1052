import { readFile } from 'node:fs/promises';
import { readXlsx } from 'hucre/xlsx';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, test } from 'vitest';
import { accessFaults } from './memoryPane';
import type { OpenPage, PageOptions } from './page';
import { fillDemoPlan, openDemo } from './tryout';

let open: OpenPage | undefined;
afterEach(async () => {
  await open?.close();
  open = undefined;
});

async function opened(options: PageOptions = {}): Promise<Page> {
  open = await openDemo(options);
  return open.page;
}

const saveButton = (page: Page) => page.getByRole('button', { name: 'Save as .xlsx' });
const dialog = (page: Page) => page.getByRole('dialog', { name: 'Save a copy' });

/** A part that every workbook file has. */
const knowsFiles = (text: string): boolean => text.includes('[Content_Types].xml');

/** The scripts a page has loaded so far, as texts. */
async function scripts(page: Page): Promise<string[]> {
  const addresses = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
  const own = [...new Set(addresses)].filter((address) => address.endsWith('.js'));
  return Promise.all(own.map(async (address) => (await fetch(address)).text()));
}

test('the workbook is saved as it is, with a plan just filled in, by a script that comes in only then', async () => {
  const page = await opened();
  const loadedBefore = await scripts(page);
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  const workers: string[] = [];
  page.on('worker', (worker) => workers.push(worker.url()));
  await fillDemoPlan(page);
  await saveButton(page).click();
  await dialog(page).waitFor();
  expect(await dialog(page).getByRole('listitem').first().textContent()).toBe(
    'Live plans and Setwright’s functions become values, in Plan R-201: they no longer follow the tables.',
  );
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    dialog(page).getByRole('button', { name: 'Save' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('setwright-demo-workshop-r-201.xlsx');
  const book = await readXlsx(await readFile(await download.path()));
  const plan = book.sheets.find(({ name }) => name === 'Plan R-201');
  expect(plan?.rows.some((row) => row[0] === 'Driver' && row.includes('Likely'))).toBe(true);
  expect(book.sheets.map(({ name }) => name)).toContain('Clubs');
  await dialog(page).waitFor({ state: 'detached' });
  await expect
    .poll(() => page.getByRole('status').first().textContent())
    .toMatch(/^Saved as it was at \d\d:\d\d: setwright-demo-workshop-r-201\.xlsx$/);
  // Nothing but further scripts of the page was asked for, and what knows the format of files is loaded by a worker alone.
  expect(asked.filter((url) => !/^blob:|[/]assets[/]tryout[/][^/]+[.]js$/.test(url))).toEqual([]);
  expect(workers).toEqual([expect.stringMatching(/[/]assets[/]tryout[/][^/]+[.]js$/)]);
  expect((await scripts(page)).filter(knowsFiles)).toEqual([]);
  expect(loadedBefore.length).toBeGreaterThan(5);
  expect(loadedBefore.filter(knowsFiles)).toEqual([]);
  expect(open?.problems).toEqual([]);
});

/** Begins to type into a cell somewhere below the clubs, right of the row numbers and above the tabs. */
async function typeHalf(page: Page): Promise<void> {
  const box = await page.locator('.sheet').boundingBox();
  await page.mouse.click((box?.x ?? 0) + 200, (box?.y ?? 0) + (box?.height ?? 0) - 120);
  await page.keyboard.type('half way');
}

/** What the cells of a copy hold. */
async function cellsSaved(page: Page): Promise<unknown[]> {
  await saveButton(page).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    dialog(page).getByRole('button', { name: 'Save' }).click(),
  ]);
  const book = await readXlsx(await readFile(await download.path()));
  return book.sheets.flatMap(({ rows }) => rows.flat());
}

test.each([
  ['by the mouse', async () => undefined],
  ['by keys', (page: Page) => page.keyboard.press('F6')],
])('what is half typed stays when the pane is gone to %s', async (_, go) => {
  const page = await opened();
  await typeHalf(page);
  await go(page);
  await fillDemoPlan(page);
  expect(await cellsSaved(page)).toContain('half way');
});

test('what is being typed into a cell is in the copy', async () => {
  const page = await opened();
  await typeHalf(page);
  expect(await cellsSaved(page)).toContain('half way');
});

describe.each(['light', 'dark'] as const)('at 320 px, %s', (theme) => {
  test('button and window have room, no fault of access, and go by the keyboard', async () => {
    const page = await opened({ width: 320, height: 640, dark: theme === 'dark' });
    const box = await saveButton(page).boundingBox();
    expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(320);
    await saveButton(page).focus();
    await page.keyboard.press('Enter');
    await dialog(page).waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(320);
    const inner = await dialog(page).evaluate((window) => window.scrollWidth - window.clientWidth);
    expect(inner).toBeLessThanOrEqual(0);
    // The spreadsheet's own screen is not ours to judge.
    const faults = (await accessFaults(page)).filter((fault) => /save|<dialog|<header/.test(fault));
    expect(faults).toEqual([]);
    await page.keyboard.press('Escape');
    await dialog(page).waitFor({ state: 'detached' });
    await expect.poll(() => saveButton(page).evaluate((button) => button === document.activeElement)).toBe(true);
  });
});
