import { expect, test } from 'vitest';
import { accessFaults, panesForTests, presser, overflow } from './memoryPane';
import type {} from './paneOnMemory';

const panes = panesForTests();

test('from the ticket over a check-in with two clubs off to a closed job and a redo, in a pane of 320 px', async () => {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  await page.getByRole('tab', { name: 'Bench', exact: true }).click();
  const press = presser(page);
  expect(await press('Fill bench ticket')).toContain('Ticket filled');
  expect(await page.evaluate(() => window.sheet.shows('Ticket R-201', 1, 0))).toBe('Bench ticket');
  expect(await press('Start check-in')).toContain('Check-in started');
  expect(await press('Judge')).toContain('Still open');
  expect(await press('Close job')).toContain('The job stays open');

  // every club as predicted but two, which are off by 3 points
  const { clubs, off } = await page.evaluate(() => {
    const names: string[] = [];
    const rows: number[] = [];
    const two = ['7 iron', '8 iron'];
    for (let row = 1; window.sheet.read('Checkin', row, 'Job'); row += 1) {
      if (window.sheet.read('Checkin', row, 'Job') !== 'R-201') continue;
      const name = String(window.sheet.read('Checkin', row, 'Club'));
      names.push(name);
      if (two.includes(name)) rows.push(row);
      const predicted = window.sheet.read('Checkin', row, 'Predicted');
      window.sheet.type('Checkin', row, 'Reading', two.includes(name) ? 'D5' : predicted);
      window.sheet.type('Checkin', row, 'Mass (g)', 420);
      if (!two.includes(name)) window.sheet.type('Checkin', row, 'Decision', 'Accept');
    }
    return { clubs: names, off: rows };
  });
  expect(clubs).toHaveLength(13);
  await page.getByText('D5.0').first().waitFor();
  expect(await press('Close job')).toContain('Still open: 7 iron and 8 iron.');
  await page.evaluate((rows) => {
    for (const row of rows) {
      window.sheet.type('Checkin', row, 'Decision', 'Waive');
      window.sheet.type('Checkin', row, 'Reason', 'agreed on the phone');
    }
  }, off);
  await page.getByText('Every club is accepted or waived').waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  expect(await press('Close job')).toContain('Job closed');
  expect(await press('Fill labels')).toContain('Labels of 13 clubs');
  expect(await press('Fill pick-up slip')).toContain('Pick-up slip of 13 clubs');

  await page.getByRole('checkbox', { name: '8 iron' }).click();
  expect(await press('Begin redo')).toContain('Round 2 of job R-201 is begun in Checkin for 8 iron');
  await page.getByText('8 iron only, and nothing is charged').waitFor();
  expect(await press('Fill bench ticket')).toContain('Ticket of 1 club');
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});
