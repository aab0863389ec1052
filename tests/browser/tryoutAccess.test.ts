/** The try-out page as a whole, the embedded spreadsheet in it: judged by axe-core, much enlarged, without motion, by keys alone. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, test } from 'vitest';
import { accessFaults, type LeftOut, moving, overflow } from './memoryPane';
import { type OpenPage, openTryout, type PageOptions } from './page';
import { fillDemoPlan, openDemo, sheetSettled } from './tryout';

let open: OpenPage | undefined;
afterEach(async () => {
  const problems = open?.problems;
  await open?.close();
  open = undefined;
  expect(problems ?? []).toEqual([]);
});

/** The page with the demo in it. */
async function opened(options: PageOptions = {}): Promise<Page> {
  open = await openDemo(options);
  return open.page;
}

const foreign = join(import.meta.dirname, '../fixtures/foreign/named-tables.xlsx');
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const press = (page: Page, name: string) => page.getByRole('dialog').getByRole('button', { name, exact: true }).click();

async function bringUpPane(page: Page): Promise<void> {
  const show = button(page, 'Show the pane');
  if (await show.isVisible()) await show.click();
}

async function planned(page: Page): Promise<void> {
  await bringUpPane(page);
  await fillDemoPlan(page);
}

async function saveShown(page: Page): Promise<void> {
  await button(page, 'Save as .xlsx').click();
  await page.getByRole('dialog', { name: 'Save a copy' }).waitFor();
}

async function openShown(page: Page): Promise<void> {
  await page.locator('input.open-file').setInputFiles(foreign);
  await page.getByRole('dialog').getByRole('button', { name: 'Open', exact: true }).waitFor();
}

async function opensForeign(page: Page): Promise<void> {
  await press(page, 'Open');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await bringUpPane(page);
  await button(page, 'Set up this workbook').waitFor();
}

/**
 * In a contrast theme the browser paints the spreadsheet's tools in the system's colours, whatever its style sheet says; what is judged
 * are those of the style sheet.
 */
const IN_CONTRAST: readonly LeftOut[] = [{ within: '.sheet', rules: ['color-contrast'] }];

describe.each([
  ['light', {}, []],
  ['dark', { dark: true }, []],
  ['contrast, light', { forcedColors: true }, IN_CONTRAST],
  ['contrast, dark', { forcedColors: true, dark: true }, IN_CONTRAST],
] as const)('%s', (_, look, leftOut) => {
  test('no fault of access: the demo, a plan, the windows for saving and opening, a workbook that is not set up', async () => {
    const page = await opened(look);
    const faults: Record<string, string[]> = {};
    const judge = async (state: string) => {
      faults[state] = await accessFaults(page, undefined, leftOut);
    };
    await judge('demo');
    await planned(page);
    await judge('planned');
    await button(page, 'More').click();
    await page.getByRole('dialog').waitFor();
    await judge('more tools');
    await page.keyboard.press('Escape');
    await saveShown(page);
    await judge('saving');
    await press(page, 'Cancel');
    await openShown(page);
    await judge('opening');
    await opensForeign(page);
    await judge('first run');
    expect(faults).toEqual(Object.fromEntries(Object.keys(faults).map((state) => [state, []])));
  });
});

/** The page while its scripts are on their way, or when they cannot be had. */
test.each(['on their way', 'not to be had'])('no fault of access and no motion while scripts are %s', async (how) => {
  open = await openTryout({ reducedMotion: true, atOnce: true }, async (context) => {
    await context.route(/\/assets\/tryout\/(spreadsheet|workshop)[^/]*\.js$/, (route) =>
      how === 'not to be had' ? route.abort() : undefined,
    );
  });
  const { page, problems } = open;
  await page
    .locator('.loading')
    .filter({ hasText: how === 'not to be had' ? /^The page could not be loaded/ : /^Loading the workbook/ })
    .waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(await moving(page)).toEqual([]);
  // What the browser says of the scripts it did not get.
  problems.splice(0);
});

test('nothing moves for whoever asked for that, in the spreadsheet neither', async () => {
  const page = await opened({ reducedMotion: true });
  expect(await moving(page)).toEqual([]);
  await planned(page);
  expect(await moving(page)).toEqual([]);
});

/** What of header, strip, pane or the window over them cannot be brought on screen whole, or is covered there. */
function outOfReach(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const parts = document.querySelector('dialog[open]')
      ? 'dialog :is(button, li, h2)'
      : '.top :is(a:not(.skip), button, h1), .strip, .pane :is(button, input, summary, a[href])';
    return [...document.querySelectorAll<HTMLElement>(parts)].flatMap((each) => {
      if (!each.checkVisibility({ visibilityProperty: true })) return [];
      each.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
      const { left, right, top, bottom } = each.getBoundingClientRect();
      const inside = left >= -1 && right <= innerWidth + 1 && bottom > 0 && top < innerHeight;
      const hit = document.elementFromPoint((left + right) / 2, (Math.max(top, 0) + Math.min(bottom, innerHeight)) / 2);
      // A box to tick is drawn by what stands beside its field.
      const met = hit !== null && (each.contains(hit) || hit.contains(each) || hit.parentElement?.contains(each));
      return inside && met ? [] : [`${each.outerHTML.slice(0, 120)} ${left} ${right} ${top} ${bottom}`];
    });
  });
}

describe.each([
  ['200 %', 640, 400],
  ['400 %', 320, 256],
])('enlarged to %s', (_, width, height) => {
  test('the page never scrolls sideways, and everything can be brought on screen', async () => {
    const page = await opened({ width, height });
    const seen: Record<string, unknown> = {};
    const look = async (state: string) => {
      seen[state] = [Math.max(0, await overflow(page)), await outOfReach(page)];
    };
    await look('the cells');
    // Rows of cells enough to work in.
    const sheet = await page.locator('canvas[id^=univer-sheet-main-canvas]').boundingBox();
    expect(sheet?.height).toBeGreaterThan(100);
    await planned(page);
    await look('the pane');
    await saveShown(page);
    await look('saving');
    await press(page, 'Cancel');
    await openShown(page);
    await look('opening');
    await opensForeign(page);
    await look('first run');
    expect(seen).toEqual(Object.fromEntries(Object.keys(seen).map((state) => [state, [0, []]])));
  });
});

/** What has the focus: where it is, and by what name a screen reader knows it. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const now = document.activeElement;
    if (!(now instanceof HTMLElement) || now === document.body) return { where: 'none', name: '' };
    const parts = ['.top', '.sheet', '.pane'] as const;
    const where = parts.find((part) => now.closest(part)) ?? 'elsewhere';
    const labels = [...((now as HTMLInputElement).labels ?? [])].map(({ textContent }) => textContent).join(' ');
    const name = now.ariaLabel ?? (labels || now.textContent);
    const outlined = getComputedStyle(now).outlineStyle !== 'none';
    const { left, right, top, bottom } = now.getBoundingClientRect();
    const seen = left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight;
    return { where, name: name.trim(), outlined, seen };
  });

async function tabTo(page: Page, wanted: string): Promise<Awaited<ReturnType<typeof focused>>[]> {
  const past = [];
  for (let presses = 0; presses < 120; presses += 1) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    past.push(now);
    if (now.name.startsWith(wanted)) return past;
  }
  throw new Error(`Tab never comes to ${wanted}, only to ${past.map(({ name }) => name).join(' | ')}`);
}

test('why a function of ours shows an error is told over its cell, and read out when the cell is gone to by its address', async () => {
  const page = await opened();
  await button(page, 'Add a sheet').click();
  await page.getByRole('tab', { name: /^Sheet/ }).waitFor();
  await sheetSettled(page);
  const address = page.getByRole('textbox', { name: 'Address of the cell, or a name' });
  await address.fill('B2');
  await address.press('Enter');
  await page.keyboard.type('=REGRIP.GRIPMASS("x",2)', { delay: 20 });
  await page.keyboard.press('Enter');
  // What the function itself says: tests/functions.
  const why = 'gripGrams is “x”, not a number.';
  await address.fill('B2');
  await address.press('Enter');
  const strip = page.locator('[aria-live="polite"]').filter({ hasText: why });
  await strip.waitFor();
  expect(await strip.textContent()).toContain('B2 shows #VALUE!: ');
  // Cells begin 46 pixels from the left and 20 from the top; a usual one is 88 wide and 24 high.
  const box = await page.locator('canvas[id^="univer-sheet-main-canvas"]').boundingBox();
  await page.mouse.move((box?.x ?? 0) + 400, (box?.y ?? 0) + 300);
  await page.mouse.move((box?.x ?? 0) + 46 + 132, (box?.y ?? 0) + 20 + 36, { steps: 5 });
  await expect.poll(() => page.getByText(why).filter({ visible: true }).count()).toBe(2);
});

describe('by the keyboard alone', () => {
  test('links at the top lead past the tools, to the cells and to the pane', async () => {
    const page = await opened();
    await tabTo(page, 'Go to the cells');
    expect(await page.locator('.skip:focus').boundingBox()).toMatchObject({ height: expect.any(Number) });
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.sheet', name: expect.stringMatching(/^Cells\./) });
    await page.reload();
    await page.locator('.open-button:enabled').waitFor();
    await tabTo(page, 'Go to the pane');
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.pane' });
  });

  test('an address with the name of another sheet leads there, and one of no sheet nowhere', async () => {
    const page = await opened();
    await sheetSettled(page);
    const address = page.getByRole('textbox', { name: 'Address of the cell, or a name' });
    const tab = page.locator('[data-u-comp=slide-tab-item][aria-selected=true]');
    await address.fill('Rates!C2');
    await address.press('Enter');
    await expect.poll(() => tab.innerText()).toBe('Rates');
    await expect.poll(() => address.inputValue()).toBe('C2');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.sheet', name: expect.stringMatching(/^Cells\./) });
    await address.fill('Nothing!D4');
    await address.press('Enter');
    await expect.poll(() => address.inputValue()).toBe('C2');
    expect(await tab.innerText()).toBe('Rates');
  });

  test('Tab comes from the top through every tool to the cells, each with a name and seen; F6 goes on, and Tab leaves the page', async () => {
    const page = await opened();
    await sheetSettled(page);
    const way = await tabTo(page, 'Cells.');
    const tools = way.slice(0, -1).filter(({ where }) => where === '.sheet');
    expect(tools.length).toBeGreaterThan(15);
    expect(way.filter(({ name }) => name === '' || /^[a-z]+(?:[.-][a-zA-Z]+)+$/.test(name))).toEqual([]);
    expect(tools.filter(({ outlined, seen }) => !outlined || !seen)).toEqual([]);
    expect(tools.map(({ name }) => name)).toEqual(expect.arrayContaining(['Bold', 'Font', 'Add a sheet']));
    // In the cells Tab goes on from cell to cell, as in every spreadsheet.
    const address = page.getByRole('textbox', { name: 'Address of the cell, or a name' });
    const before = await address.inputValue();
    await page.keyboard.press('Tab');
    await expect.poll(() => address.inputValue()).not.toBe(before);
    await expect.poll(() => focused(page)).toMatchObject({ where: '.sheet' });
    await page.keyboard.press('F6');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.pane' });
    await page.keyboard.press('F6');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.top', name: 'Functions and help' });
    await page.keyboard.press('F6');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.sheet', name: expect.stringMatching(/^Cells\./) });
    await page.keyboard.press('Shift+F6');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.top' });
    await page.keyboard.press('Shift+F6');
    await expect.poll(() => focused(page)).toMatchObject({ where: '.pane' });
    const rest = [];
    for (let presses = 0; presses < 80 && (await focused(page)).where === '.pane'; presses += 1) {
      rest.push((await focused(page)).name);
      await page.keyboard.press('Tab');
    }
    expect(rest).toContain('Fill plan');
    expect((await focused(page)).where).not.toBe('.sheet');
  });

  test('a tool is pressed, and the list of another opened and closed, by keys', async () => {
    const page = await opened();
    await tabTo(page, 'Bold');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Undo/ }).and(page.locator('.sheet :enabled')).waitFor();
    // What a tool did goes on in the cells.
    await expect.poll(() => focused(page)).toMatchObject({ where: '.sheet', name: expect.stringMatching(/^Cells\./) });
    for (const key of ['F6', 'F6']) await page.keyboard.press(key);
    await tabTo(page, 'Horizontal');
    await page.keyboard.press('Enter');
    await page.getByRole('menu').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('menu').waitFor({ state: 'detached' });
  });

  test('filling a plan by keys leaves the keyboard at its button', async () => {
    const page = await opened();
    await tabTo(page, 'Go to the pane');
    await page.keyboard.press('Enter');
    await tabTo(page, 'Fill plan');
    await page.keyboard.press('Enter');
    await page
      .getByRole('status', { name: 'What happened' })
      .getByText(/Plan R-201/)
      .waitFor();
    // The spreadsheet redraws what was written.
    await page.waitForTimeout(1_000);
    expect(await focused(page)).toMatchObject({ where: '.pane', name: 'Fill plan' });
  });
});
