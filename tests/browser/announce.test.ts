/** What is read out: a listener hears what a screen reader would, the text that comes into a live region which was there before. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { panesForTests } from './memoryPane';
import type { PaneOptions } from './onMemory';
import type {} from './paneOnMemory';

declare global {
  interface Window {
    heard: string[];
  }
}

const panes = panesForTests();

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const text = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

/** A pane with somebody listening. A region that comes in with its text already in it is not reliably read out, so it is not heard. */
async function listened(tab?: string, options: PaneOptions = {}): Promise<Page> {
  const page = await panes.open(options);
  await page.evaluate(() => {
    window.heard = [];
    const known = new WeakMap<Element, string>();
    const listen = () => {
      for (const region of document.querySelectorAll('[role=status], [role=alert], [aria-live]')) {
        const now = (region.textContent ?? '').trim();
        const before = known.get(region);
        known.set(region, now);
        if (before !== undefined && before !== now && now !== '') window.heard.push(now);
      }
    };
    listen();
    new MutationObserver(listen).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  if (options.content === 'empty') return page;
  await page.getByText(/^\d+ clubs?:/).waitFor();
  if (tab) await page.getByRole('tab', { name: tab, exact: true }).click();
  return page;
}

/** Waits until it was heard, goes on listening for a moment, and says how often; then all is forgotten. */
async function times(page: Page, what: RegExp): Promise<number> {
  await expect
    .poll(() => page.evaluate(() => window.heard), { timeout: 30_000 })
    .toContainEqual(expect.stringMatching(what));
  await page.waitForTimeout(400);
  return (await page.evaluate(() => window.heard.splice(0))).filter((each) => what.test(each)).length;
}

test('setting up, an outcome, a failure and a long write are read out once each', async () => {
  const page = await listened(undefined, { content: 'empty' });
  await button(page, 'Set up this workbook').click();
  expect(await times(page, /^The workbook is set up/)).toBe(1);
  const other = await listened();
  await button(other, 'Fill plan').click();
  expect(await times(other, /^Plan filled/)).toBe(1);
  await button(other, /^Undo: /).click();
  expect(await times(other, /^Last fill undone/)).toBe(1);
  await other.evaluate(() => window.sheet.slow(1500));
  await button(other, 'Fill plan').click();
  expect(await times(other, /^Filling the plan…/)).toBe(1);
  expect(await times(other, /^Plan filled/)).toBe(1);
  await other.evaluate(() => window.sheet.refuse(true));
  await button(other, 'Fill plan').click();
  expect(await times(other, /^The plan was not filled/)).toBe(1);
});

test('what a field wants is read out once, and the plan as it changes', async () => {
  const page = await listened();
  await page.locator('summary', { hasText: 'tolerance' }).click();
  await text(page, 'Tolerance').fill('wide');
  expect(await times(page, /^Points, 0\.1 to 10/)).toBe(1);
  await text(page, 'Tolerance').fill('3');
  expect(await times(page, /^13 clubs: 12 within/)).toBe(1);
});

test('a measure that is asked about, and the size a hand starts from', async () => {
  const page = await listened('Hand');
  await text(page, 'Hand length').fill('193');
  expect(await times(page, /193 looks like millimetres/)).toBe(1);
  await text(page, 'Hand length').fill('8');
  expect(await times(page, /^Starts from/)).toBe(1);
});

test('that grips have been compared, and the best ones found', async () => {
  const page = await listened('Compare');
  expect(await times(page, /^\d+ grips tried, \d+ unbeaten\.$/)).toBe(1);
  await button(page, 'Find it').click();
  expect(await times(page, /Best of \d+ models/)).toBe(1);
});

test('targets of a group, a placing, and masses that cannot be read', async () => {
  const page = await listened('Place');
  await text(page, 'Masses in grams, one a line').fill('50.8\nheavy');
  expect(await times(page, /line 2/)).toBe(1);
  await text(page, 'Masses in grams, one a line').fill('50.8 51.2 49.9');
  expect(await times(page, /head weight/)).toBe(1);
  await page.getByRole('tab', { name: 'Even out' }).click();
  await page
    .getByRole('region', { name: /^Woods/ })
    .getByRole('combobox')
    .click();
  await page.getByRole('option', { name: 'One value' }).click();
  expect(await times(page, /^Woods: all/)).toBe(1);
});

test('a club nobody knows, and a job begun', async () => {
  const page = await listened('Intake');
  await page.getByLabel('Customer').fill('Alex Marsh');
  await page.getByLabel('Clubs that came in').fill('Driver, spoon');
  expect(await times(page, /“spoon” is no club/)).toBe(1);
  await page.getByLabel('Clubs that came in').fill('Driver');
  await button(page, 'Begin job').click();
  expect(await times(page, /^Job begun/)).toBe(1);
});

test('a price at the counter, what keeps it from being one, and a quote issued', async () => {
  const page = await listened('Quote');
  await page.locator('summary', { hasText: 'Price at the counter' }).click();
  const clubs = page.getByLabel('Clubs', { exact: true });
  await clubs.fill('7');
  expect(await times(page, /^7 clubs: /)).toBe(1);
  await clubs.fill('many');
  expect(await times(page, /^Clubs is/)).toBe(1);
  await button(page, 'Issue quote').click();
  expect(await times(page, /^Quote issued/)).toBe(1);
});

test('the work ahead, each step of a batch, and its end', async () => {
  const page = await listened('Week');
  expect(await times(page, /^6 jobs, \d+ minutes/)).toBe(1);
  await page.evaluate(() => window.sheet.slow(900));
  await button(page, /^Do it for/).click();
  expect(await times(page, /^Quoting job 6 of 6/)).toBe(1);
  expect(await times(page, /^Worked through/)).toBe(1);
});
