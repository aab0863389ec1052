/** The try-out page with the demo on it, where every test of its windows begins. */
import type { Page } from 'playwright-core';
import { type OpenPage, openTryout, type PageOptions } from './page';

/** Opened, and so far that a file may be opened and saved. */
export async function openDemo(options: PageOptions = {}): Promise<OpenPage> {
  const open = await openTryout(options);
  open.page.setDefaultTimeout(100_000);
  await open.page.locator('.open-button:enabled').waitFor();
  return open;
}

/** Fills the demo's plan into a sheet, and waits until it stands there. */
export async function fillDemoPlan(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Fill plan', exact: true }).click();
  await page
    .getByRole('status', { name: 'What happened' })
    .filter({ hasText: /Plan R-201/ })
    .waitFor();
}
