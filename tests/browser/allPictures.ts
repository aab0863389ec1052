/** Pictures for review: every situation of the pane, light, dark and in strong contrast, at two widths, and every sheet that is filled. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { TABLES } from '../../src/workbook/schema';
import { MemoryPanes } from './onMemory';
import { BEFORE, SITUATIONS, type Situation } from './situations';

/** A name for a file. */
const fileOf = (...words: readonly string[]) => `${words.join(' ').replace(/[^\w-]+/g, '-')}.png`;

const HEIGHT = 900;
const TALLEST = 3000;

async function takeSituation(panes: MemoryPanes, folder: string, screen: string, situation: Situation): Promise<void> {
  const { name, content, look, reach } = situation;
  for (const width of [320, 350]) {
    const page = await panes.open({ content, look, width, height: HEIGHT });
    await reach(page);
    const more = await page.evaluate(() => {
      const body = document.querySelector('main > div');
      return body ? body.scrollHeight - body.clientHeight : 0;
    });
    await page.setViewportSize({ width, height: Math.min(HEIGHT + more, TALLEST) });
    for (const theme of ['light', 'dark', 'contrast'] as const) {
      // A contrast theme's colours are the system's, which there are only where the system has one.
      await page.emulateMedia({ forcedColors: theme === 'contrast' ? 'active' : 'none' });
      await page.evaluate((worn) => window.sheet.wear(worn), theme);
      await page.waitForTimeout(200);
      await page.screenshot({ path: join(folder, fileOf(screen, name, theme, String(width))) });
    }
    await panes.clear();
  }
}

/** Every screen in every state. */
export async function takeSituations(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  const panes = new MemoryPanes();
  await panes.start();
  for (const [screen, all] of Object.entries({ before: BEFORE, ...SITUATIONS }))
    for (const situation of all) await takeSituation(panes, folder, screen, situation);
  await panes.stop();
}

/** A sheet: the tab it is filled from, what is done before, and the button. */
type Sheet = readonly [name: string, tab: string, button: string, first?: (page: Page) => Promise<unknown>];

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

async function keepAnOption(page: Page): Promise<void> {
  await page.locator('main').getByRole('tab', { name: 'Plan', exact: true }).click();
  await page.getByRole('combobox', { name: 'Grip', exact: true }).click();
  await page
    .getByRole('option', { name: /Midsize/ })
    .first()
    .click();
  await page.locator('main').getByRole('tab', { name: 'Quote', exact: true }).click();
  await press(page, 'Keep what is chosen in Plan');
}

/** A job whose clubs came back from the bench and were read there. */
async function cameBack(page: Page): Promise<void> {
  await page.getByRole('combobox', { name: 'Plan for', exact: true }).click();
  await page.getByRole('option', { name: /R-205/ }).click();
}

const SHEETS: readonly Sheet[] = [
  ['plan', 'Plan', 'Fill plan'],
  ['compare', 'Compare', 'Fill Compare sheet'],
  ['intake', 'Intake', 'Fill intake sheet'],
  ['reminders', 'Intake', 'Fill reminders'],
  ['quote', 'Quote', 'Issue quote'],
  ['options', 'Quote', 'Write options', keepAnOption],
  ['order', 'Stock', 'Fill order'],
  ['pick list', 'Stock', 'Fill pick list'],
  ['ticket', 'Bench', 'Fill bench ticket'],
  ['check-in', 'Bench', 'Start check-in'],
  ['judged', 'Bench', 'Judge', cameBack],
  ['labels', 'Bench', 'Fill labels'],
  ['slip', 'Bench', 'Fill pick-up slip'],
  ['week', 'Week', 'Fill week sheet'],
];

/** Every table as it is set up, the demo in it; `settled` waits until nothing moves any more. */
async function takeTables(page: Page, folder: string, settled: (page: Page) => Promise<void>): Promise<void> {
  for (const { name } of TABLES) {
    await page.locator('.sheet').getByRole('tab', { name, exact: true }).click();
    await settled(page);
    await page.screenshot({ path: join(folder, fileOf('table', name)) });
  }
}

/** The workbook as it stands, for another program to show and to print. */
async function saveBook(page: Page, folder: string): Promise<void> {
  await press(page, 'Save as .xlsx');
  const save = page.getByRole('dialog').getByRole('button', { name: 'Save', exact: true });
  const [download] = await Promise.all([page.waitForEvent('download'), save.click()]);
  await download.saveAs(join(folder, 'workbook.xlsx'));
}

/** Every table and every sheet, one after the other, on the page that needs no Excel, and the workbook that they make. */
export async function takeSheets(page: Page, folder: string, settled: (page: Page) => Promise<void>): Promise<void> {
  await mkdir(folder, { recursive: true });
  await takeTables(page, folder, settled);
  const close = page.getByRole('button', { name: 'Close this message' });
  for (const [name, tab, button, first] of SHEETS) {
    // The spreadsheet's own sheets are tabs as well.
    await page.locator('main').getByRole('tab', { name: tab, exact: true }).click();
    await first?.(page);
    await press(page, button);
    await close.waitFor({ timeout: 120_000 });
    await settled(page);
    await page.screenshot({ path: join(folder, fileOf('sheet', name)) });
    await close.click();
  }
  await saveBook(page, folder);
}
