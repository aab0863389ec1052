import { expect, test } from 'vitest';
import { accessFaults, panesForTests, presser, overflow } from './memoryPane';
import type {} from './paneOnMemory';

const panes = panesForTests();

test('reserves for all jobs, orders what is short and enters what arrived, in a pane of 320 px', async () => {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  await page.getByRole('tab', { name: 'Stock', exact: true }).click();
  const press = presser(page);
  await page.getByText(/^OS-M60: R-202 lacks/).waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  expect(await press('Reserve all open jobs')).toMatch(/Reserved \d+ pieces.*OS-M60: R-202 lacks/);
  expect(await press('Reserve all open jobs')).toContain('Nothing to reserve');
  // the demo has reservations of a job that was called off
  expect(await press('Release these')).toContain('job R-198');
  expect(await press('Fill order')).toContain('Order filled');
  expect(await page.evaluate(() => window.sheet.shows('Order', 1, 0))).toBe('Order');
  expect(await press('Fill pick list')).toContain('Pick list filled');
  expect(await press('Ordered from Orrin Wholesale')).toContain('Order 2 with Orrin Wholesale');
  await page.getByText(/^OS-M60: R-202 lacks.*on order$/).waitFor();
  expect(await page.getByRole('button', { name: 'Ordered from Orrin Wholesale' }).count()).toBe(0);
  // the demo has an order of which a part came
  expect(await press('The rest arrived')).toContain('Order 1: 10 pieces arrived');
  await page.getByText(/^Order 2, Orrin Wholesale/).waitFor();

  const item = page.getByRole('combobox', { name: 'Item' });
  await item.click();
  await item.pressSequentially('OS-M60');
  await page.getByRole('option').first().click();
  const many = page.getByRole('textbox', { name: 'How many' });
  await many.fill('13 of them');
  expect(await press('Enter it')).toContain('not a number');
  expect(await many.inputValue()).toBe('13 of them');
  await many.fill('13');
  expect(await press('Enter it')).toMatch(/OS-M60: 13 pieces arrived.*Order 2: 13, 13 still to come/);
  expect(await many.inputValue()).toBe('');
  await expect.poll(() => page.getByText(/^OS-M60: R-202 lacks/).count()).toBe(0);
  expect(await press('Cancel the rest')).toMatch(/Order 2: .*13 pieces|Order 2: .*cancelled/);
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});
