import { expect, test } from 'vitest';
import { accessFaults, panesForTests, presser, overflow } from './memoryPane';
import type {} from './paneOnMemory';

const panes = panesForTests();

test('from the counter to a signed sheet: a job begun with last time’s grips, in a pane of 320 px', async () => {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  await page.getByRole('tab', { name: 'Intake', exact: true }).click();
  const press = presser(page);
  await page.getByLabel('Customer').fill('alex marsh');
  const clubs = page.getByLabel('Clubs that came in');
  await clubs.fill('Driver, spoon, 8-9');
  await page.getByText('“spoon” is no club.').waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await clubs.fill('Driver, 8-9, Putter');
  await page.getByLabel('First tag').fill('11');
  await page.getByText('Tag 11 is on 52 wedge of job R-201').waitFor();
  await page.getByLabel('First tag').fill('31');
  await page.getByRole('checkbox', { name: 'Same as last time: take these over as the new grips' }).click();
  expect(await press('Begin job')).toContain('Job R-207 is in Jobs, 4 clubs in Clubs. 4 clubs with last time’s grip.');
  // the pane goes on with it, and the fields are free for the next customer
  await page.getByRole('region', { name: 'Job R-207', exact: true }).waitFor();
  expect(await page.getByLabel('Customer').inputValue()).toBe('');
  expect(await press('Fill intake sheet')).toContain('Intake sheet of 4 clubs filled into Intake R-207');
  expect(await page.evaluate(() => window.sheet.shows('Intake R-207', 3, 2))).toBe('Alex Marsh');
  expect(await press('Fill reminders')).toContain('1 customer to be reminded');
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
});

test('own constants unfold on the bench, and one is taken over', async () => {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  await page.getByRole('tab', { name: 'Bench', exact: true }).click();
  const fold = page.getByText('Your own constants', { exact: true });
  await fold.focus();
  await page.keyboard.press('Enter');
  await page.getByText('the scale drifted by').waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await page.getByRole('button', { name: 'Take over: Balance point of OS-S60' }).click();
  await page.getByText('it was 4.2').waitFor();
  await page.getByText('Set now: 4.41 in, which agrees').waitFor();
});
