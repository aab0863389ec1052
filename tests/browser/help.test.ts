import { afterEach, expect, test } from 'vitest';
import { accessFaults, overflow } from './memoryPane';
import { type OpenPage, openHelp, type PageOptions } from './page';

let opened: OpenPage | undefined;
afterEach(async () => {
  await opened?.close();
  opened = undefined;
});

async function help(path: string, options: PageOptions = {}): Promise<OpenPage> {
  opened = await openHelp(path, options);
  return opened;
}

/** One page of each make. */
const PAGES = [
  'help.html',
  'help/balance.html',
  'help/install.html',
  'help/tabs.html',
  'help/functions.html',
  'help/functions/SETPLAN.html',
  'help/tables/Clubs.html',
  'help/tables/Settings.html',
];

const LOOKS = [
  { colorScheme: 'light', forcedColors: 'none', width: 1280 },
  { colorScheme: 'dark', forcedColors: 'none', width: 320 },
  { colorScheme: 'light', forcedColors: 'active', width: 320 },
] as const;

test.each(PAGES)(
  '%s is without fault, light, dark and in a contrast theme, wide and at 320 px, under its policy',
  async (path) => {
    const { page, problems } = await help(path);
    for (const { width, ...media } of LOOKS) {
      await page.emulateMedia(media);
      await page.setViewportSize({ width, height: 800 });
      expect(await accessFaults(page)).toEqual([]);
      expect(await overflow(page)).toBe(0);
    }
    expect(problems).toEqual([]);
    // Styled: the sheet was found from wherever the page stands, and allowed.
    expect(await page.evaluate(() => getComputedStyle(document.querySelector('.skip') as Element).position)).toBe(
      'absolute',
    );
  },
);

test('the first press of Tab reaches the skip link, which leads to the text', async () => {
  const { page } = await help('help/functions/COMPENSATION.html');
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.className)).toBe('skip');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
});

test('printed it is the text alone, black on white', async () => {
  const { page } = await help('help/balance.html', { dark: true });
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(await page.locator('nav').isVisible()).toBe(false);
  const colours = await page.evaluate(() => {
    const { color, backgroundColor } = getComputedStyle(document.body);
    return [color, backgroundColor];
  });
  expect(colours).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
});

test('from its start to a function’s page, by links alone', async () => {
  const { page, problems } = await help('help.html');
  await page.getByRole('link', { name: 'Worksheet functions', exact: true }).first().click();
  await page.getByRole('link', { name: 'COMPENSATION' }).click();
  expect(page.url()).toContain('/help/functions/COMPENSATION.html');
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('COMPENSATION');
  expect(problems).toEqual([]);
});
