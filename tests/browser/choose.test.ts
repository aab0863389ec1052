import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { COMPARE_HEAD_ROWS } from '../../src/workbook/compareSheet';
import { demoClubs } from '../../src/tryout/demo/clubs';
import { demoStock } from '../../src/tryout/demo/stock';
import { overflow, panesForTests } from './memoryPane';
import type { PaneOptions } from './onMemory';
import type {} from './paneOnMemory';

const panes = panesForTests();

type ScreenName = 'Plan' | 'Hand' | 'Compare' | 'Even out' | 'Place';

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const field = (page: Page, name: string) => page.getByRole('combobox', { name, exact: true });
const measure = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const part = (page: Page, name: string | RegExp) => page.getByRole('region', { name });
const tab = (page: Page, name: ScreenName) => page.getByRole('tab', { name, exact: true });
const status = (page: Page) => page.getByRole('status', { name: 'What happened' });

async function choose(page: Page, name: string, option: string | RegExp): Promise<void> {
  await field(page, name).click();
  await page.getByRole('option', { name: option }).first().click();
}

/** The pane on the demo, a job open and a screen of it shown. */
async function opened(screen: ScreenName, options: PaneOptions = {}, job?: RegExp): Promise<Page> {
  const page = await panes.open(options);
  await page.getByText(/^\d+ clubs?:/).waitFor();
  if (job) {
    await choose(page, 'Plan for', job);
    await page.getByText(/^\d+ clubs?:/).waitFor();
  }
  await tab(page, screen).click();
  return page;
}

const firstGrip = (page: Page) => page.getByRole('table').last().getByRole('rowheader').first();

async function compared(options: PaneOptions = {}, job?: RegExp): Promise<Page> {
  const page = await opened('Compare', options, job);
  await button(page, 'Fill Compare sheet').waitFor();
  return page;
}

/** What Clubs holds in a column, for the demo’s clubs of a job. */
async function clubsOf(page: Page, job: string, header: string): Promise<unknown[]> {
  const rows = demoClubs.flatMap((club, at) => (club.job === job ? [at + 1] : []));
  return page.evaluate(([all, column]) => all.map((row) => window.sheet.read('Clubs', row, column)), [
    rows,
    header,
  ] as const);
}

async function filled(page: Page): Promise<void> {
  await button(page, 'Fill plan').click();
  await status(page).getByText('Plan filled').waitFor();
}

test('the plot of grips in a contrast theme of Windows shows every mark', async () => {
  const page = await compared({ theme: 'contrast', forcedColors: true }, /R-205/);
  const marks = await page
    .locator('[role=img] svg circle, [role=img] svg path, [role=img] svg rect')
    .evaluateAll((all) =>
      all.map((mark) => {
        const { fill, stroke } = getComputedStyle(mark);
        return fill === 'none' && stroke === 'none';
      }),
    );
  expect(marks.length).toBeGreaterThan(5);
  expect(marks).not.toContain(true);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});

test('the main story: a hand in the wrong unit, its target, a grip compared and fitted, filled, held by Clubs', async () => {
  const page = await opened('Hand');
  expect(await measure(page, 'Hand length').inputValue()).toBe('7.6');
  // 205 mm are 8.07 in
  await measure(page, 'Hand length').fill('205');
  await button(page, 'Use 8.07 in').click();
  expect(await measure(page, 'Hand length').inputValue()).toBe('8.07');
  await measure(page, 'Middle finger').fill('3.4');
  await page.getByText(/^Starts from \.\d{3} in\.$/).waitFor();
  const size = part(page, 'Target').getByRole('status').first();
  const before = await size.textContent();
  await choose(page, 'Fingertips', 'press into the palm');
  await choose(page, 'Err larger', 'by one layer');
  await page.getByText(/more: the fingertips press into the palm/).waitFor();
  const target = (await size.textContent()) ?? '';
  expect(Number.parseFloat(target)).toBeGreaterThan(Number.parseFloat(before ?? ''));
  await button(page, 'Keep the hand in Jobs').click();
  await status(page).getByText('Kept in Jobs', { exact: true }).waitFor();
  expect(await page.evaluate(() => window.sheet.read('Jobs', 1, 'Hand length (in)'))).toBe(8.07);
  await button(page, 'Keep the hand in Jobs').waitFor({ state: 'detached' });

  await button(page, /^Compare grips at/).click();
  await page.getByText(new RegExp(`^12 clubs to ${target.slice(0, 4).replace('.', '\\.')} ± `)).waitFor();
  await button(page, 'Fill Compare sheet').waitFor();
  const row = firstGrip(page);
  const item = ((await row.textContent()) ?? '').replace(', unbeaten', '');
  await row.getByRole('button').click();
  await button(page, 'Fit this grip').click();

  expect(await tab(page, 'Plan').getAttribute('aria-selected')).toBe('true');
  expect(await field(page, 'Grip').inputValue()).toContain(item);
  expect(Number(await page.getByLabel('Target diameter in inches').inputValue())).toBeCloseTo(
    Number(`0${target.slice(0, 4)}`),
    3,
  );
  await page.getByText(/^Writes the grip.* of 12 clubs into Clubs/).waitFor();
  await filled(page);
  expect(await clubsOf(page, 'R-201', 'New grip')).toEqual([...Array<string>(12).fill(item), 'PT-P58']);
  const sizes = await clubsOf(page, 'R-201', 'Target diameter (in)');
  expect(sizes.slice(0, 12).every((each) => Math.abs(Number(each) - Number(`0${target.slice(0, 4)}`)) < 1e-9)).toBe(
    true,
  );
  expect(sizes[12]).toBeNull();
});

describe('from the hand', () => {
  test('a unit that is changed shows what was typed in the new one, and a grip that reaches the target is fitted', async () => {
    const page = await opened('Hand');
    await measure(page, 'Hand length').fill('8');
    await choose(page, 'Unit', 'Millimetres');
    expect(await measure(page, 'Hand length').inputValue()).toBe('203');
    const fit = button(page, /^Fit this: /).first();
    const item = (await fit.getAttribute('aria-label'))?.replace('Fit this: ', '') ?? '';
    await fit.click();
    expect(await field(page, 'Grip').inputValue()).toContain(item);
    expect(await field(page, 'Size').textContent()).toBe('Diameter');
  });

  test('layers under the lower hand go along', async () => {
    const page = await opened('Hand', {}, /R-206/);
    await page.getByRole('checkbox', { name: 'The lower hand measures otherwise' }).check();
    await measure(page, 'Lower hand').fill('8.2');
    await page.getByText(/more under the lower hand$/).waitFor();
    const layers = /and (\d+) layers?/.exec((await part(page, 'Target').textContent()) ?? '')?.[1];
    await button(page, /^Plan at/).click();
    await page.getByText('Lower hand, tolerance, weighting').click();
    expect(await measure(page, 'Lower hand').inputValue()).toBe(layers);
    await filled(page);
    expect(await clubsOf(page, 'R-206', 'Lower layers')).toEqual(Array(3).fill(Number(layers)));
  });

  test('another bag begins with its own hand', async () => {
    const page = await opened('Hand');
    await measure(page, 'Hand length').fill('9');
    await choose(page, 'Plan for', /R-203/);
    await page.waitForFunction(() => [...document.querySelectorAll('input')].some(({ value }) => value === '5.6'));
    expect(await measure(page, 'Hand length').inputValue()).toBe('5.6');
  });
});

describe('the comparison', () => {
  test('is filled into a sheet of its own, in the order of the table', async () => {
    const page = await compared();
    const names = (await page.getByRole('table').first().getByRole('rowheader').allTextContents()).map((name) =>
      name.replace(', unbeaten', ''),
    );
    await button(page, 'Fill Compare sheet').click();
    await status(page).getByText('Comparison written').waitFor();
    const cells = await page.evaluate(
      ([top, rows]) => Array.from({ length: rows }, (_, at) => window.sheet.shows('Compare R-201', top + 1 + at, 1)),
      [COMPARE_HEAD_ROWS, names.length] as const,
    );
    expect(cells.map((cell) => String(cell).replace(' + ', ', '))).toEqual(names);
    expect(await clubsOf(page, 'R-201', 'New grip')).toContain('TB-S60');
    await button(page, 'Undo: Comparison for job R-201').click();
    await status(page).getByText('Last fill undone', { exact: true }).waitFor();
    expect(await page.evaluate((top) => window.sheet.shows('Compare R-201', top, 1), COMPARE_HEAD_ROWS)).toBeNull();
  });

  test('follows its filters, its order and the sheet', async () => {
    const page = await compared();
    const names = () => page.getByRole('table').first().getByRole('rowheader').allTextContents();
    const all = await names();
    await choose(page, 'Order by', 'Mass added');
    await page.waitForFunction((first) => document.querySelector('tbody th')?.textContent !== first, all[0]);
    expect([...(await names())].sort()).toEqual([...all].sort());
    await page.getByText('Narrow down').click();
    await choose(page, 'Texture', 'Cord');
    await page.waitForFunction((count) => document.querySelectorAll('tbody th').length < count, all.length);
    expect((await names()).every((name) => name.startsWith('TB-'))).toBe(true);
    await page.getByText(/grips not tried$/).click();
    await page
      .getByText(/Left out by what it was narrowed down to/)
      .first()
      .waitFor();
    const cord = await names();
    await page.evaluate(() => window.sheet.type('Stock', 1, 'Texture', 'Rubber'));
    await page.waitForFunction((count) => document.querySelectorAll('tbody th').length < count, cord.length);
  });
});

describe('the best grip for each club', () => {
  test('is found from the ticked ones, used, and stands in Clubs after the fill', async () => {
    const page = await compared({}, /R-205/);
    const ticks = page.getByRole('checkbox', { name: /^Put OS-S/ });
    await ticks.first().waitFor();
    for (const tick of await ticks.all()) await tick.check();
    expect(await field(page, 'From').textContent()).toMatch(/^The \d ticked grips?$/);
    await button(page, 'Find it').click();
    await button(page, 'Use these grips').waitFor();
    const found = page.getByRole('region', { name: 'Grip and layers for each club' });
    const items = await found.locator('tbody tr td:nth-of-type(1)').allTextContents();
    const layers = await found.locator('tbody tr td:nth-of-type(2)').allTextContents();
    expect(items).toHaveLength(9);
    await button(page, 'Use these grips').click();
    await page.getByText('9 clubs with choices of their own, from Compare.').waitFor();
    await filled(page);
    expect(await clubsOf(page, 'R-205', 'New grip')).toEqual(items);
    expect((await clubsOf(page, 'R-205', 'Layers')).map((each) => String(each ?? 0))).toEqual(layers);
    await page.getByText(/with choices of their own/).waitFor({ state: 'detached' });
  });

  test('can be stopped, and found after all; typing goes on meanwhile', async () => {
    const page = await opened('Plan');
    await page.evaluate(
      (count) =>
        window.sheet.fill(
          'Stock',
          Array.from({ length: count }, (_, at) => ({
            Item: `G${at}`,
            Model: `M${at % 300}`,
            Size: `Size ${at % 3}`,
            'Core (in)': 0.6,
            'Mass (g)': 45 + (at % 40) / 2,
            'Upper diameter (in)': 0.88 + (at % 17) / 200,
            'Lower diameter (in)': 0.8 + (at % 17) / 200,
            For: 'Clubs',
          })),
        ),
      2400,
    );
    await choose(page, 'Size', 'Diameter');
    await page.getByLabel('Target diameter in inches').fill('0.95');
    await tab(page, 'Compare').click();
    const working = page.getByRole('progressbar', { name: /^Looking for it/ });
    await button(page, 'Fill Compare sheet').waitFor({ timeout: 60_000 });
    await button(page, 'Find it').click();
    await working.waitFor();
    expect(await button(page, 'Find it').getAttribute('aria-disabled')).toBe('true');
    // At once: it may be found while a click scrolls.
    await button(page, 'Stop').dispatchEvent('click');
    await working.waitFor({ state: 'detached' });
    expect(await button(page, 'Use these grips').count()).toBe(0);
    await button(page, 'Find it').click();
    await page.getByText('Narrow down').click();
    await measure(page, 'Price up to').pressSequentially('abc');
    await page.getByText('A price, such as 8.50. Until then any price counts.').waitFor();
    await button(page, 'Use these grips').waitFor({ timeout: 60_000 });
  });

  test('is said to be out of date once the clubs changed', async () => {
    const page = await compared({}, /R-205/);
    await button(page, 'Find it').click();
    await part(page, 'The best grip for each club').getByText(/model/).last().waitFor();
    await page.evaluate(() => window.sheet.type('Clubs', 30, 'Length (in)', 45));
    await page.getByText(/have changed since: find it again/).waitFor();
    expect(await button(page, 'Use these grips').count()).toBe(0);
  });
});

test('targets that even out a group stand in Clubs after the fill, the other groups as they were', async () => {
  const page = await opened('Even out');
  await page.getByText(/^Every group stays as in the sheet/).waitFor();
  const irons = part(page, /^Irons/);
  await irons.getByRole('combobox', { name: 'Reading' }).click();
  await page.getByRole('option', { name: 'One value' }).click();
  await irons.getByRole('textbox', { name: 'Reading for the irons' }).fill('d 2,5');
  await page.getByText('Irons: all D2.5.').waitFor();
  await button(page, 'Use these targets').click();
  await page.getByText('6 clubs with choices of their own, from Even out.').waitFor();
  await page.getByText(/^Writes the .*target reading.* of 6 clubs into Clubs/).waitFor();
  await filled(page);
  const targets = await clubsOf(page, 'R-201', 'Target reading');
  expect(targets).toEqual([null, null, null, null, ...Array<string>(6).fill('D2.5'), 'D4', 'D5', null]);
  expect((await clubsOf(page, 'R-201', 'Hold')).slice(4, 10)).toEqual(Array(6).fill('Target'));
});

test('masses that were pasted stand in Clubs after the fill, each with its club', async () => {
  const page = await opened('Place', {}, /R-206/);
  await page.getByText('Type or paste masses to see which grip suits which club.').waitFor();
  await measure(page, 'Masses in grams, one a line').fill('50,8\n53.6\r\n51.9');
  await page.getByText('3 grips, 50.8 to 53.6 g.').waitFor();
  const table = page.getByRole('region', { name: 'Which grip goes on which club' });
  const masses = await table.locator('tbody tr td:nth-of-type(2)').allTextContents();
  expect([...masses].sort()).toEqual(['50.8', '51.9', '53.6']);
  await button(page, 'Use this placing').click();
  await page.getByText('3 clubs with choices of their own, from Place.').waitFor();
  await filled(page);
  expect((await clubsOf(page, 'R-206', 'New grip mass (g)')).map((grams) => Number(grams).toFixed(1))).toEqual(masses);
});

test('what was taken over can be dropped', async () => {
  const page = await opened('Place', {}, /R-206/);
  await measure(page, 'Masses in grams, one a line').fill('50.8 53.6 51.9');
  await button(page, 'Use this placing').click();
  await button(page, 'Drop them').click();
  await page.getByText(/with choices of their own/).waitFor({ state: 'detached' });
  await tab(page, 'Place').click();
  expect(await measure(page, 'Masses in grams, one a line').inputValue()).toBe('50.8 53.6 51.9');
});

describe('what can go wrong', () => {
  test('masses that cannot be read name their line', async () => {
    const page = await opened('Place');
    await measure(page, 'Masses in grams, one a line').fill('50.8\nheavy\n51');
    await page.getByText(/line 2/).waitFor();
    expect(await button(page, 'Use this placing').count()).toBe(0);
    await measure(page, 'Masses in grams, one a line').fill('50.8\n5080');
    await page.getByText(/line 2/).waitFor();
  });

  test('more clubs than grips, and a grip too many, are told', async () => {
    const page = await opened('Place', {}, /R-206/);
    await measure(page, 'Masses in grams, one a line').fill('50.8 53.6');
    await page.getByText(/^No weighed grip was left for/).waitFor();
    await measure(page, 'Masses in grams, one a line').fill('50.8 53.6 52 51');
    await page.getByText(/^Left over: grip /).waitFor();
  });

  test('an empty stock is said on every screen', async () => {
    const page = await opened('Hand');
    await page.evaluate((count) => {
      window.sheet.fill(
        'Stock',
        Array.from({ length: count }, () => ({ Item: null })),
      );
    }, demoStock.length);
    await page.getByText(/^Stock lists no grips/).waitFor();
    await tab(page, 'Compare').click();
    await page.getByText(/^Stock is empty/).waitFor();
    expect(await button(page, 'Fill Compare sheet').count()).toBe(0);
    expect(await button(page, 'Find it').count()).toBe(0);
    await tab(page, 'Plan').click();
    await page.getByText(/^Stock is empty/).waitFor();
  });

  test('a set that no model can serve says what keeps them and what to change', async () => {
    const page = await opened('Plan', {}, /R-201/);
    await choose(page, 'Size', 'Diameter');
    await page.getByLabel('Target diameter in inches').fill('1.6');
    await tab(page, 'Compare').click();
    await button(page, 'Find it').click();
    await page.getByText(/None of the \d+ models can serve this set\..*hange the target diameter/).waitFor();
    await part(page, 'The best grip for each club')
      .getByText(/no layers bring/)
      .first()
      .waitFor();
    expect(await button(page, 'Use these grips').count()).toBe(0);
  });

  test('a hand far out of range, and a finger longer than the hand', async () => {
    const page = await opened('Hand');
    await measure(page, 'Hand length').fill('40');
    await page.getByText('Hand length: 5 to 10 in are accepted. Measure again.').waitFor();
    expect(await measure(page, 'Hand length').getAttribute('aria-invalid')).toBe('true');
    expect(await button(page, /^Compare grips at/).count()).toBe(0);
    await measure(page, 'Hand length').fill('5');
    await measure(page, 'Middle finger').fill('5');
    await page.getByText(/must be shorter than the hand/).waitFor();
  });

  test('a hand can be measured before there are clubs', async () => {
    const page = await panes.open({ content: 'setUp' });
    await page.evaluate(() => window.sheet.fill('Jobs', [{ Job: '7', Customer: 'Tamsin Orrell' }]));
    await page.getByRole('heading', { name: 'No clubs in job 7 yet' }).waitFor();
    await tab(page, 'Hand').click();
    await measure(page, 'Hand length').fill('7.6');
    await page.getByText('Starts from .900 in.').waitFor();
    await button(page, 'Keep the hand in Jobs').click();
    await status(page).getByText('Kept in Jobs', { exact: true }).waitFor();
    for (const screen of ['Compare', 'Even out', 'Place'] as const) {
      await tab(page, screen).click();
      await page.getByRole('heading', { name: 'No clubs in job 7 yet' }).waitFor();
    }
  });
});
