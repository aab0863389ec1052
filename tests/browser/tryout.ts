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

/**
 * Waits until the spreadsheet has settled: shortly after it is seen it takes the keyboard a last time, and a Tab in that moment begins at the
 * top again. Settled is a page that had nothing to do for longer than a moment in all of two seconds, however slow the machine is.
 */
export async function sheetSettled(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        const began = performance.now();
        let since = began;
        let last = began;
        const look = (): void => {
          const now = performance.now();
          if (now - last > 200) since = now;
          last = now;
          // On a machine that is never quiet it is left at half a minute.
          if (now - since > 2_000 || now - began > 30_000) done();
          else setTimeout(look, 50);
        };
        look();
      }),
  );
}
