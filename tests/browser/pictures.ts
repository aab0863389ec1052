/**
 * Takes the documents' pictures from the real page: `npm run pictures` builds and serves the site, then runs this. They land in
 * `.pictures/`, or in the folder named on the command line. `npm run pictures -- all` takes every screen and every sheet for review
 * instead, into `.cache/pictures/`, with the workbook that was filled; `screens` or `sheets` takes one half of it.
 */
import { mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { takeSheets, takeSituations } from './allPictures';
import { openTryout, type OpenPage, type PageOptions } from './page';

const halves = { all: ['sheets', 'screens'], sheets: ['sheets'], screens: ['screens'] } as const;
const wanted: readonly string[] | undefined = halves[process.argv[2] as keyof typeof halves];
const forReview = wanted !== undefined;
const folder = resolve(forReview ? '.cache/pictures' : (process.argv[2] ?? '.pictures'));

const patience = { timeout: 120_000 };

/** Waits until the workbook and the pane are there and the loading signs are gone; on a narrow page the pane is brought in front. */
async function whenReady(page: Page): Promise<void> {
  await page.locator('.sheet').waitFor({ state: 'attached', ...patience });
  await page.locator('.sheet-waiting').waitFor({ state: 'detached', ...patience });
  const showPane = page.getByRole('button', { name: 'Show the pane' });
  if (await showPane.isVisible()) await showPane.click();
  await page.getByRole('button', { name: 'Fill plan' }).waitFor(patience);
  await settled(page);
}

/** The spreadsheet paints on a canvas, so there is no element to wait for: two pictures that are the same say that it is done. */
async function settled(page: Page): Promise<void> {
  let before = await page.screenshot();
  for (let tries = 0; tries < 60; tries += 1) {
    await page.waitForTimeout(400);
    const now = await page.screenshot();
    if (now.equals(before)) return;
    before = now;
  }
  throw new Error('The page keeps changing: no picture can be taken of it.');
}

async function withPage(options: PageOptions, take: (page: Page) => Promise<void>): Promise<void> {
  const open: OpenPage = await openTryout(options);
  try {
    await whenReady(open.page);
    await take(open.page);
    if (open.problems.length > 0) throw new Error(`The page complained:\n${open.problems.join('\n')}`);
  } finally {
    await open.close();
  }
}

/** The whole page once the full bag's plan is filled into a sheet of its own. */
async function takePage(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Fill plan' }).click();
  await page.getByText(/^Plan of 13 clubs filled into/).waitFor(patience);
  await settled(page);
  await page.screenshot({ path: join(folder, 'page.png') });
}

/** The pane alone, as narrow as Excel makes it. */
const takePane = (name: string) => async (page: Page) => {
  await page.locator('main').screenshot({ path: join(folder, `${name}.png`) });
};

/** Chooses a word in a drop-down of the pane. */
async function choose(page: Page, field: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: field, exact: true }).click();
  await page.getByRole('option', { name: option }).first().click();
}

/** Goes from a measured hand to a target, as a person would. */
async function fromTheHand(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Hand' }).click();
  await choose(page, 'Fingertips', /press/);
}

async function takeHand(page: Page): Promise<void> {
  await fromTheHand(page);
  await page.getByRole('heading', { name: 'What reaches it' }).scrollIntoViewIfNeeded();
  await settled(page);
  await page.locator('main').screenshot({ path: join(folder, 'hand.png') });
}

/** Grips compared at the hand's target, in the pane and in a sheet of their own. */
async function takeCompare(page: Page): Promise<void> {
  await fromTheHand(page);
  await page.getByRole('button', { name: /^Compare grips at/ }).click();
  await page.getByRole('button', { name: 'Fill Compare sheet' }).waitFor(patience);
  await settled(page);
  await page.locator('main').screenshot({ path: join(folder, 'compare.png') });
}

/** One of the tabs for the work around a plan. */
const takeTab = (tab: string, name: string, there: string) => async (page: Page) => {
  await page.getByRole('tab', { name: tab, exact: true }).click();
  await page.getByRole('button', { name: there }).waitFor(patience);
  await settled(page);
  await page.locator('main').screenshot({ path: join(folder, `${name}.png`) });
};

async function takeForReview(halvesWanted: readonly string[]): Promise<void> {
  for (const dark of halvesWanted.includes('sheets') ? [false, true] : []) {
    const where = join(folder, dark ? 'sheets-dark' : 'sheets');
    await withPage({ width: 1440, height: 1000, dark }, (page) => takeSheets(page, where, settled));
  }
  if (halvesWanted.includes('screens')) await takeSituations(join(folder, 'screens'));
  console.log(`The pictures are in ${folder}.`);
}

async function takeSeven(): Promise<void> {
  await mkdir(folder, { recursive: true });
  await withPage({ width: 1440, height: 860 }, takePage);
  await withPage({ width: 320, height: 900 }, takePane('pane-light'));
  await withPage({ width: 320, height: 900, dark: true }, takePane('pane-dark'));
  await withPage({ width: 320, height: 900 }, takeHand);
  await withPage({ width: 320, height: 900 }, takeCompare);
  await withPage({ width: 320, height: 900 }, takeTab('Quote', 'quote', 'Issue quote'));
  await withPage({ width: 320, height: 900 }, takeTab('Week', 'week', 'Fill week sheet'));
  console.log(`Seven pictures are in ${folder}.`);
}

await (wanted ? takeForReview(wanted) : takeSeven());
