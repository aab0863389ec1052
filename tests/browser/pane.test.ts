import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { overflow, panesForTests } from './memoryPane';
import type { PaneOptions } from './onMemory';
import type {} from './paneOnMemory';

const panes = panesForTests();

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const field = (page: Page, name: string) => page.getByRole('combobox', { name });
const status = (page: Page) => page.getByRole('status', { name: 'What happened' });

async function choose(page: Page, name: string, option: string | RegExp): Promise<void> {
  await field(page, name).click();
  await page.getByRole('option', { name: option }).first().click();
}

async function planned(options: PaneOptions = {}, job?: RegExp): Promise<Page> {
  const page = await panes.open(options);
  await page.getByText(/^\d+ clubs?:/).waitFor();
  if (job) {
    await choose(page, 'Plan for', job);
    await page.getByText(/^\d+ clubs?:/).waitFor();
  }
  return page;
}

test('what is wrong in Settings stands above what waits for a decision', async () => {
  const page = await planned({}, /R-202/);
  await page.evaluate(() => window.sheet.type('Settings', 2, 'Value', 'tight'));
  await button(page, '1 problem in the shop’s tables').click();
  const headings = await page.getByRole('heading', { level: 2 }).allTextContents();
  const [wrong, decide] = ['To mend in the shop’s tables', 'Needs a decision'].map((name) => headings.indexOf(name));
  expect(wrong).toBeGreaterThan(-1);
  expect(decide).toBeGreaterThan(wrong!);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('To mend in the shop’s tables');
  await page
    .getByText('Settings row 3, Tolerance is “tight”, not a number. Give 0.1 to 10 points.', { exact: true })
    .waitFor();
});

test('the plan in a contrast theme of Windows shows every mark', async () => {
  const page = await planned({ theme: 'contrast', forcedColors: true }, /R-201/);
  const marks = await page
    .locator('[role=img] svg circle, [role=img] svg path, [role=img] svg rect')
    .evaluateAll((all) =>
      all.map((mark) => {
        const { fill, stroke } = getComputedStyle(mark);
        return fill === 'none' && stroke === 'none';
      }),
    );
  expect(marks.length).toBeGreaterThan(30);
  expect(marks).not.toContain(true);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});

/** Tabs until the element that has the focus says so. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press('Tab');
    const here = await page.evaluate(() => {
      const element = document.activeElement;
      if (!element) return '';
      const label = element.id ? document.querySelector(`label[for="${CSS.escape(element.id)}"]`)?.textContent : '';
      return `${element.getAttribute('aria-label') ?? ''} ${label ?? ''} ${element.tagName === 'BUTTON' ? element.textContent : ''}`;
    });
    if (name.test(here)) return;
  }
  throw new Error(`nothing named ${name} can be reached with Tab`);
}

test('with the keyboard alone: set up, choose a job, choose a grip, fill, take back', async () => {
  const page = await panes.open({ content: 'empty' });
  const keys = page.keyboard;
  await button(page, 'Set up this workbook').waitFor();
  await tabTo(page, /Set up this workbook/);
  await keys.press('Enter');
  await status(page).getByText('The workbook is set up').waitFor();
  await page.evaluate(() => {
    window.sheet.fill('Stock', [
      { Item: 'FERN-M', Size: 'Midsize', 'Core (in)': 0.6, 'Mass (g)': 62 },
      { Item: 'MOSS-S', Size: 'Standard', 'Core (in)': 0.6, 'Mass (g)': 47 },
    ]);
    window.sheet.fill('Jobs', [
      { Job: '7', Customer: 'Tamsin Orrell' },
      { Job: '8', Customer: 'Ivo Brandt' },
    ]);
    const club = {
      Club: '7 iron',
      Kind: 'Iron',
      'Length (in)': 37,
      'Butt (in)': 0.6,
      Reading: 'D2',
      'Old grip': 'MOSS-S',
      'New grip': 'MOSS-S',
    };
    window.sheet.fill('Clubs', [
      { Job: '7', ...club },
      { Job: '8', ...club },
      { Job: '8', ...club, Club: '8 iron' },
    ]);
  });
  await page.getByText(/^1 club:/).waitFor();

  await tabTo(page, /Plan for/);
  for (const key of ['Enter', 'ArrowDown', 'Enter']) await keys.press(key);
  await page.getByText(/^2 clubs:/).waitFor();
  await tabTo(page, /Grip/);
  await keys.type('mid');
  for (const key of ['ArrowDown', 'Enter']) await keys.press(key);
  await page.getByText(/^Writes the grip of 2 clubs into Clubs/).waitFor();
  await tabTo(page, /Fill plan/);
  await keys.press('Enter');
  await status(page).getByText('Plan filled').waitFor();
  expect(await page.evaluate(() => [1, 2, 3].map((row) => window.sheet.read('Clubs', row, 'New grip')))).toEqual([
    'MOSS-S',
    'FERN-M',
    'FERN-M',
  ]);

  await tabTo(page, /Undo: Plan of job 8/);
  await keys.press('Enter');
  await status(page).getByText('Last fill undone', { exact: true }).waitFor();
  expect(await page.evaluate(() => window.sheet.read('Clubs', 2, 'New grip'))).toBe('MOSS-S');
});

describe('the preview', () => {
  test('follows the sheet and the fields, and nothing above it moves', async () => {
    const page = await planned({ height: 900 }, /R-201/);
    const plot = page.getByRole('img', { name: /^Swing weight by club/ });
    const top = async () => (await plot.boundingBox())?.y;
    const [before, says] = [await top(), await plot.getAttribute('aria-label')];
    await choose(page, 'Grip', /Midsize/);
    await page.waitForFunction(
      (old) => document.querySelector('main figure [role=img]')?.getAttribute('aria-label') !== old,
      says,
    );
    expect(await top()).toBe(before);
    const cells = page.getByRole('row', { name: /^Driver/ }).getByRole('cell');
    const reading = await cells.nth(1).textContent();
    await page.evaluate(() => window.sheet.type('Clubs', 1, 'Reading', 'C5'));
    await page.getByRole('row', { name: /C5\.0/ }).waitFor();
    expect(reading).not.toContain('C5.0');
    expect(await top()).toBe(before);
  });

  test('holds the same clubs in plot and table', async () => {
    const page = await planned({}, /R-205/);
    const rows = await page.getByRole('rowheader').allTextContents();
    const drawn = await page.locator('main figure [role=img] > span:nth-of-type(3n + 1)').allTextContents();
    expect(drawn).toEqual(rows);
  });

  test('of selected clubs follows the selection', async () => {
    const page = await planned();
    await page.evaluate(() => window.sheet.select('Stock', 2, 0, 1));
    await choose(page, 'Plan for', 'Selected clubs');
    await page.getByRole('heading', { name: 'No clubs selected' }).waitFor();
    await page.evaluate(() => window.sheet.select('Clubs', 2, 1, 3));
    await page.getByText(/^3 clubs:/).waitFor();
  });

  test('jumps to what needs a decision', async () => {
    const page = await planned({}, /R-205/);
    await button(page, /need a decision/).click();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Needs a decision');
  });
});

async function occupied(options: PaneOptions = {}): Promise<Page> {
  const page = await planned(options, /R-206/);
  await page.evaluate(() => {
    window.sheet.select('Sheet1', 3, 1, 1);
    window.sheet.put('Sheet1', 5, 2, 'my note');
  });
  await choose(page, 'Where the plan goes', 'Selected cell');
  await button(page, 'Fill plan').click();
  await button(page, 'Write over them').waitFor();
  return page;
}

describe('what can go wrong', () => {
  test('cells in the way are named, and written over at the second press', async () => {
    const page = await occupied();
    await status(page).getByText("'Sheet1'!C6").waitFor();
    await button(page, 'Write over them').click();
    await status(page).getByText('Plan filled').waitFor();
  });

  test('a refused write says why and what next, and keeps the choices', async () => {
    const page = await planned();
    await choose(page, 'Hold', 'Nothing');
    await page.evaluate(() => window.sheet.refuse(true));
    await button(page, 'Fill plan').click();
    await status(page)
      .getByText(/Press Enter to finish it/)
      .waitFor();
    expect(await field(page, 'Hold').textContent()).toBe('Nothing');
    await button(page, 'Close this message').click();
    expect(await status(page).textContent()).toBe('');
  });

  test('a slow write shows that it goes on, and cannot be started twice', async () => {
    const page = await planned();
    await page.evaluate(() => window.sheet.slow(2500));
    await button(page, 'Fill plan').click();
    await page.getByRole('progressbar', { name: 'Filling the plan…' }).waitFor();
    expect(await button(page, 'Fill plan').getAttribute('aria-disabled')).toBe('true');
    await status(page).getByText('Plan filled').waitFor();
  });

  test('a table that was renamed is named, and set up again on request', async () => {
    const page = await planned();
    await page.evaluate(() => window.sheet.rename('Clubs', 'Bag'));
    await page.getByRole('heading', { name: 'Table Clubs is missing' }).waitFor();
    expect(await button(page, 'Set up this workbook').isVisible()).toBe(true);
  });

  test('a column that is needed and missing is named', async () => {
    const page = await planned();
    await page.evaluate(() => window.sheet.put('Clubs', 0, 1, 'Thing'));
    await page.getByText(/There is no column “Club” in Clubs/).waitFor();
  });
});

test('what one stripped club taught is offered and written', async () => {
  const page = await planned({}, /R-202/);
  await button(page, /^Use for \d+ clubs$/).click();
  await status(page).getByText('Old grips are known now').waitFor();
  await page.getByRole('heading', { name: /stripped 7 iron/ }).waitFor({ state: 'detached' });
});

test('freezing before filling says what to do first', async () => {
  const page = await planned();
  await button(page, 'Freeze to values').click();
  await status(page)
    .getByText(/Fill it first/)
    .waitFor();
});

test('a workbook of an earlier version says what it lacks, is brought up to date, and can be taken back', async () => {
  const page = await panes.open({ content: 'older' });
  const fold = page.getByText('Set up by an earlier version', { exact: true });
  await fold.click();
  await page.getByText(/^New tables: Sizes, /).waitFor();
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await button(page, 'Bring this workbook up to date').click();
  await status(page).getByText('The workbook is up to date').waitFor();
  await fold.waitFor({ state: 'detached' });
  expect(await page.evaluate(() => window.sheet.read('Clubs', 0, 'New grip mass (g)'))).toBe('New grip mass (g)');
  await button(page, /^Undo/).click();
  await fold.waitFor();
});

test('Help leads to the page of the tab that is shown', async () => {
  const page = await planned({}, /R-201/);
  const help = page.getByRole('link', { name: 'Help' });
  expect(await help.getAttribute('href')).toBe('help/tabs/plan.html');
  for (const [tab, path] of [
    ['Even out', 'even'],
    ['Quote', 'quote'],
    ['Lists', 'lists'],
  ] as const) {
    await page.getByRole('tab', { name: tab, exact: true }).click();
    expect(await help.getAttribute('href')).toBe(`help/tabs/${path}.html`);
  }
});
