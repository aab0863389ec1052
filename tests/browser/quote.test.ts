import { expect, test } from 'vitest';
import { accessFaults, panesForTests, presser, overflow } from './memoryPane';
import type {} from './paneOnMemory';

const panes = panesForTests();

test('from a bag to an issued quote, its next revision and a void one, in a pane of 320 px', async () => {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  await page.getByRole('tab', { name: 'Quote', exact: true }).click();
  const lines = page.getByRole('region', { name: 'Lines and sums' });
  await lines.getByRole('rowheader', { name: 'Total', exact: true }).waitFor();
  const press = presser(page);
  expect(await press('Issue quote')).toContain('Quote 1042 over 237.36 EUR');
  expect(await page.evaluate(() => window.sheet.read('Quotes', 3, 'No.'))).toBe(1042);
  await page.getByText(/^Becomes 1042 revision 2.*Its total is that of the last one/).waitFor();
  // A line's price changes in the sheet: the pane follows, the issued quote does not.
  await page.evaluate(() => window.sheet.type('Rates', 1, 'Price', 4));
  await page.getByRole('row', { name: /^Total 244\.56/ }).waitFor();
  expect(await page.getByText('Its total is that of the last one').count()).toBe(0);
  expect(await press('Issue revision 2')).toContain('1042 revision 2 over 244.56 EUR');
  await page.getByRole('button', { name: 'Declare quote 1042 void', exact: true }).click();
  expect(await press('Declare void')).toContain('Quote 1042 is Void');
  expect(await page.evaluate(() => window.sheet.read('Quotes', 3, 'Status'))).toBe('Void');
  expect(await page.evaluate(() => window.sheet.read('Quotes', 4, 'Status'))).toBe('Issued');
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});

test('a price at the counter needs a number of clubs, and takes no job', async () => {
  const page = await panes.open({ content: 'demo', width: 350 });
  await page.getByText(/^\d+ clubs?:/).waitFor();
  await page.getByRole('tab', { name: 'Quote', exact: true }).click();
  await page.getByText('Price at the counter', { exact: true }).click();
  const clubs = page.getByLabel('Clubs', { exact: true });
  await clubs.fill('7');
  await page.getByText('7 clubs: 42.00 EUR in all.').waitFor();
  await clubs.fill('');
  await clubs.fill('8');
  await page.getByText('8 clubs: 48.00 EUR in all.').waitFor();
  await page.getByLabel('Customer', { exact: true }).fill('Lou Weir');
  await page.getByRole('button', { name: 'Issue this price', exact: true }).click();
  await page.getByText(/Quote 1042 over 48\.00 EUR/).waitFor();
  expect(await page.evaluate(() => window.sheet.read('Quotes', 3, 'Customer'))).toBe('Lou Weir');
  expect(await page.evaluate(() => window.sheet.read('Quotes', 3, 'Job'))).toBeNull();
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});
