import { expect, test } from 'vitest';
import { openExcelPage, openHelp, openTryout, siteAddress } from './page';

const loaded = async (opened: Awaited<ReturnType<typeof openTryout>>) => {
  await opened.page.waitForLoadState('networkidle');
  return opened;
};

test('the tryout page loads under its policy, without a complaint and without asking any other place', async () => {
  const { page, problems, close } = await loaded(await openTryout());
  await page.locator('#root > *').first().waitFor();
  expect(problems).toEqual([]);
  await close();
});

test('the page for Excel starts under its strict policy with the real client library, and keeps its styles', async () => {
  const { page, problems, close } = await loaded(await openExcelPage());
  await page.locator('#root > *').first().waitFor();
  const strictly = problems.filter((problem) => /Content Security Policy|asked for/.test(problem));
  expect(strictly).toEqual([]);
  expect(await page.evaluate(() => document.styleSheets.length)).toBeGreaterThan(0);
  await close();
});

test('the manifest is well-formed XML', async () => {
  const { page, close } = await openHelp();
  const text = await (await fetch(`${siteAddress()}manifest.xml`)).text();
  const [root, errors] = await page.evaluate((xml) => {
    const parsed = new DOMParser().parseFromString(xml, 'application/xml');
    return [parsed.documentElement.localName, parsed.querySelectorAll('parsererror').length];
  }, text);
  expect(root).toBe('OfficeApp');
  expect(errors).toBe(0);
  await close();
});

test('the pane’s Help opens a page of its own in the help', async () => {
  const { page, problems, close } = await openTryout();
  const help = page.getByRole('main').getByRole('link', { name: 'Help', exact: true });
  await help.waitFor();
  const [opened] = await Promise.all([page.context().waitForEvent('page'), help.click()]);
  await opened.getByRole('heading', { level: 1, name: 'Plan' }).waitFor();
  expect(problems).toEqual([]);
  await close();
});
