import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { accessFaults, overflow, panesForTests, presser } from './memoryPane';

const panes = panesForTests();

/** The heading of what was opened has the focus, and stands at the top of what can be seen of the page. */
async function atTheTop(page: Page, heading: string | RegExp): Promise<void> {
  const opened = page.getByRole('heading', { name: heading });
  await expect.poll(() => opened.evaluate((element) => document.activeElement === element)).toBe(true);
  expect(await opened.isVisible()).toBe(true);
  const below = page.getByRole('combobox', { name: 'Stands for' });
  const box = await below.boundingBox();
  expect(box?.y).toBeGreaterThanOrEqual(0);
  expect(box?.y).toBeLessThan(300);
}

/** The heading has the focus: from there the keys go on into what stands below it. */
async function hasFocus(page: Page, heading: string): Promise<void> {
  const opened = page.getByRole('heading', { name: heading, exact: true });
  await expect.poll(() => opened.evaluate((element) => document.activeElement === element)).toBe(true);
}

test('a foreign workbook is connected and planned from in a pane of 320 px', async () => {
  const page = await panes.open({ content: 'foreign' });
  await page.getByRole('button', { name: 'Use lists of my own' }).press('Enter');
  await page.getByRole('heading', { name: 'Lists in this workbook' }).waitFor();
  await hasFocus(page, 'Lists of your own');
  expect(await accessFaults(page)).toEqual([]);
  await page.getByRole('button', { name: /^Match 'Lager 2026'/ }).click();
  await page.getByText('11 of', { exact: false }).waitFor();
  await atTheTop(page, "'Lager 2026'!A1:M29");
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  const press = presser(page);
  // another row is taken for the headings with the keys alone, and one that holds none is told
  const headings = page.getByRole('combobox', { name: 'Headings' });
  await expect.poll(() => headings.textContent()).toBe('Row 4');
  await headings.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('option', { name: 'Row 4', exact: true }).waitFor();
  expect(await page.getByRole('option', { name: /^Row 2: empty|KF-1/ }).count()).toBe(0);
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await page.keyboard.press('Enter');
  await page.getByRole('option', { name: /^Row 4(?::|$)/ }).click();
  await page.getByText('11 of', { exact: false }).waitFor();
  // with a wrong unit it says what cannot be read
  await page.getByRole('combobox', { name: 'Unit of Mass (g)' }).click();
  await page.getByRole('option', { name: 'g', exact: true }).click();
  await page.getByText(/No cell here can be Mass/).waitFor();
  await page.getByRole('combobox', { name: 'Unit of Mass (g)' }).click();
  await page.getByRole('option', { name: 'oz', exact: true }).click();
  await page.getByRole('button', { name: 'Connect', exact: true }).press('Enter');
  const status = page.getByRole('status', { name: 'What happened' });
  await status.filter({ hasText: 'stands for Stock now' }).waitFor();
  // tabs have come, and theirs is where the keys go on
  const tab = page.getByRole('tab', { name: 'Lists', exact: true });
  await expect.poll(() => tab.evaluate((element) => document.activeElement === element)).toBe(true);
  await status.getByRole('button', { name: 'Close this message' }).click();
  await page.getByRole('button', { name: 'Match Bags' }).click();
  expect(await press('Connect')).toContain('Bags stands for Clubs now');
  expect(await press('Make the other tables')).toContain('Made Jobs');
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);

  await page.getByRole('tab', { name: 'Plan', exact: true }).click();
  await page.getByText(/^5 clubs:/).waitFor();
  const grip = page.getByRole('combobox', { name: 'Grip' });
  await grip.click();
  await grip.pressSequentially('KF-104');
  await page.getByRole('option').first().click();
  expect(await press('Fill plan')).toContain('Plan of 5 clubs');

  // a heading renamed in the sheet is named, and nothing is read by guess
  await page.evaluate(() => window.sheet.put('In work', 0, 5, 'Reading now'));
  await page.getByText('where it stood is now Reading now', { exact: false }).waitFor();
  // and no tab goes on showing what was worked out before
  for (const tab of ['Stock', 'Week', 'Bench', 'Intake', 'Plan']) {
    await page.getByRole('tab', { name: tab, exact: true }).click();
    await page.getByText('may be wrong and is not shown', { exact: false }).waitFor();
  }
  await page.evaluate(() => window.sheet.put('In work', 0, 5, 'SW'));
  await page.getByRole('tab', { name: 'Lists', exact: true }).click();
  await page.getByRole('button', { name: 'Change what stands for Stock' }).press('Enter');
  await page.getByText('11 of', { exact: false }).waitFor();
  await atTheTop(page, /^'Lager 2026'!/);
  await page.getByRole('button', { name: 'Back' }).click();
  expect(await press('End the connection of Stock')).toContain('Stock is connected to no list any more');
});

test('a table that has another name is named on every tab; where it is to be made again, what stands in its way is said', async () => {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  await page.evaluate(() => window.sheet.rename('Tape', 'Strips'));
  await page.getByText('Table Tape is missing. The tab Lists makes what is missing', { exact: false }).waitFor();
  await page.getByRole('tab', { name: 'Lists', exact: true }).click();
  expect(await presser(page)('Make the other tables')).toContain('The sheet Tape holds something else');
  await page.evaluate(() => window.sheet.rename('Tape', 'Tape'));
  await page.getByText('Not there yet', { exact: false }).waitFor({ state: 'detached' });
});
