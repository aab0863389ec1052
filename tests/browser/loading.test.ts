/** What is seen while the try-out page loads, and where a part of it does not come. */
import type { BrowserContext, Page, Route } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { type OpenPage, openTryout } from './page';

let open: OpenPage | undefined;
afterEach(async () => {
  await open?.close();
  open = undefined;
});

const SPREADSHEET = '**/assets/tryout/spreadsheet.*.js';
const WORKSHOP = '**/assets/tryout/workshop.*.js';

async function opened(prepare: (context: BrowserContext) => Promise<unknown>): Promise<Page> {
  open = await openTryout({ atOnce: true }, prepare);
  open.page.setDefaultTimeout(100_000);
  return open.page;
}

/** A file that comes when it is let go. */
function holding() {
  let letGo = (): void => undefined;
  const held = new Promise<void>((resolve) => (letGo = resolve));
  const route = async (asked: Route): Promise<void> => {
    await held;
    await asked.continue();
  };
  return { route, letGo };
}

/** Where the parts of the page stand, to the pixel. */
const places = (page: Page) =>
  page.evaluate(() =>
    ['.top', '.name', '.help', '.open-button', '.sheet-place', '.strip', '.pane'].map((part) => {
      const { x, y, width, height } = document.querySelector(part)?.getBoundingClientRect() ?? new DOMRect();
      return [part, x, y, width, height];
    }),
  );

const planned = (page: Page) => page.getByText(/^13 clubs:/).waitFor();
const loading = (page: Page) => page.locator('.loading').textContent();

test('the pane plans before the workbook is there, a fill waits for it, and nothing moves when it comes', async () => {
  const [workshop, spreadsheet] = [holding(), holding()];
  const page = await opened(async (context) => {
    await context.route(WORKSHOP, workshop.route);
    await context.route(SPREADSHEET, spreadsheet.route);
  });
  expect(await loading(page)).toMatch(/^Loading the workbook and the pane/);
  const before = await places(page);
  workshop.letGo();
  await planned(page);
  await expect.poll(() => loading(page)).toMatch(/the workbook is still loading/);
  expect(await page.locator('.sheet-waiting').textContent()).toMatch(/^Here comes a workbook/);
  expect(await page.getByRole('button', { name: 'Save as .xlsx' }).isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Fill plan' }).click();
  const outcome = page.getByRole('status', { name: 'What happened' });
  expect(await outcome.textContent()).not.toMatch(/Plan R-201/);
  spreadsheet.letGo();
  await outcome.filter({ hasText: /Plan of 13 clubs filled into/ }).waitFor();
  await page.locator('.save-button:enabled').waitFor();
  await page.locator('.sheet-waiting').waitFor({ state: 'detached' });
  await expect.poll(() => loading(page)).toBe('');
  expect(await places(page)).toEqual(before);
  expect(open?.problems).toEqual([]);
});

test('a workbook that cannot be loaded is told in its place, and by a fill; the pane goes on planning', async () => {
  const page = await opened((context) => context.route(SPREADSHEET, (route) => route.abort()));
  await planned(page);
  const place = page.locator('.sheet-waiting');
  await place.filter({ hasText: 'The workbook could not be loaded' }).waitFor();
  await expect
    .poll(() => loading(page))
    .toMatch(/^The workbook could not be loaded, so nothing can be filled into it\. Reload/);
  await page.getByRole('button', { name: 'Fill plan' }).click();
  await page.getByText(/^The workbook did not answer\. Nothing was written/).waitFor();
  await planned(page);
});

test('where not even the pane can be loaded, both places say so', async () => {
  const page = await opened((context) => context.route(WORKSHOP, (route) => route.abort()));
  for (const place of ['.sheet-waiting', '.pane-waiting']) {
    await page
      .locator(place)
      .filter({ hasText: /^The page could not be loaded\. Reload it/ })
      .waitFor();
  }
  await expect.poll(() => loading(page)).toMatch(/^The page could not be loaded/);
});
