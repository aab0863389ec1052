import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { accessFaults, MemoryPanes, overflow } from './memoryPane';
import type {} from './paneOnMemory';

const panes = new MemoryPanes();
beforeAll(() => panes.start());
afterAll(() => panes.stop());
afterEach(async () => {
  await panes.clear();
  expect(panes.problems.splice(0)).toEqual([]);
});

test('from the ticket to a check-in, in a pane of 320 px', async () => {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  const place = page.getByRole('tab', { name: 'Place', exact: true });
  await place.click();
  await page.keyboard.press('ArrowRight');
  const tab = page.getByRole('tab', { name: 'Bench', exact: true });
  expect(await tab.getAttribute('aria-selected')).toBe('true');
  const press = async (name: string): Promise<string> => {
    await page.getByRole('button', { name, exact: true }).click();
    const status = page.getByRole('status', { name: 'What happened' });
    await status.getByRole('button', { name: 'Close this message' }).waitFor();
    const said = (await status.textContent()) ?? '';
    await status.getByRole('button', { name: 'Close this message' }).click();
    return said;
  };
  expect(await press('Fill bench ticket')).toContain('Ticket filled');
  expect(await page.evaluate(() => window.sheet.shows('Ticket R-201', 1, 0))).toBe('Bench ticket');
  expect(await press('Start check-in')).toContain('Check-in started');
  expect(await press('Judge')).toContain('Still open');
  expect(await page.evaluate(() => window.sheet.read('Checkin', 1, 'Standing'))).toBe('Open');
  expect(await press('Close job')).toContain('The job stays open');
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});
