/** Every task of the pane by the keyboard alone, with the focus seen all the way and never lost. */
import { describe, expect, test } from 'vitest';
import { SCREENS } from '../../src/pane/state/tools';
import { SCREEN_WORDS } from '../../src/pane/words';
import { Keys, wayThrough } from './keys';
import { panesForTests } from './memoryPane';
import type {} from './paneOnMemory';
import { SITUATIONS } from './situations';

const panes = panesForTests();

/** The demo's first job, under a tab that arrows lead to, once what it shows has been worked out. */
async function atKeys(tab?: string, there?: string): Promise<Keys> {
  const page = await panes.open({});
  await page.getByText(/^\d+ clubs?:/).waitFor();
  const keys = new Keys(page);
  if (tab) await keys.tab(tab);
  if (there) await page.getByRole('button', { name: there }).waitFor();
  return keys;
}

test('arrows lead from tab to tab, and round', async () => {
  const keys = await atKeys();
  await keys.to('Plan');
  const passed: string[] = [];
  for (const _ of SCREENS) {
    passed.push(await keys.here());
    await keys.press('ArrowRight');
  }
  expect(passed).toEqual(SCREENS.map((screen) => SCREEN_WORDS[screen]));
  expect(await keys.here()).toBe('Plan');
  await keys.press('End');
  expect(await keys.here()).toBe(SCREEN_WORDS[SCREENS.at(-1)!]);
  await keys.press('Home', 'ArrowLeft');
  expect(await keys.here()).toBe(SCREEN_WORDS[SCREENS.at(-1)!]);
});

describe.each(SCREENS)('%s', (screen) => {
  test('Tab goes through all of it in the order it is read in, shows where it is, and comes out again', async () => {
    const [first] = SITUATIONS[screen];
    const page = await panes.open({ content: first?.content, height: 900 });
    await first?.reach(page);
    const way = await wayThrough(page);
    expect(way.flatMap(({ faults }) => faults)).toEqual([]);
    const stops = await page.evaluate(
      () =>
        [...document.querySelectorAll<HTMLElement>('main :is(button, summary, input, textarea, a[href])')].filter(
          (each) => each.tabIndex >= 0 && each.checkVisibility(),
        ).length,
    );
    const regions = await page.locator('main [role=region][tabindex="0"]').count();
    expect(way.map(({ name }) => name)).toHaveLength(stops + regions);
  });
});

describe('where the focus goes', () => {
  test('after setting up and after Not now, it stays in the pane', async () => {
    const page = await panes.open({ content: 'empty' });
    const keys = new Keys(page);
    await page.getByRole('button', { name: 'Not now' }).waitFor();
    await keys.push('Not now');
    await page.getByRole('button', { name: 'Not now' }).waitFor({ state: 'detached' });
    expect(await keys.here()).toBe('Use lists of my own');
    await keys.push('Set up this workbook');
    expect(await keys.said()).toContain('The workbook is set up');
    expect(await keys.here()).toBe('Plan');
  });

  test('Escape closes a message, a question and a list; a closed message hands the focus on', async () => {
    const keys = await atKeys();
    const { page } = keys;
    const status = page.getByRole('status', { name: 'What happened' });
    await keys.push('Freeze to values');
    expect(await keys.said()).toContain('Fill it first');
    await keys.press('Escape');
    expect(await status.textContent()).toBe('');
    expect(await keys.here()).toBe('Freeze to values');
    await keys.press('Enter');
    await keys.said();
    await keys.push('Close this message');
    expect(await status.textContent()).toBe('');
    expect(await keys.here()).toBe('Fill plan');
    await page.evaluate(() => {
      window.sheet.select('Sheet1', 3, 1, 1);
      window.sheet.put('Sheet1', 5, 2, 'my note');
    });
    await keys.push('Where the plan goes');
    await page.getByRole('listbox').waitFor();
    await keys.press('Escape');
    await page.getByRole('listbox').waitFor({ state: 'hidden' });
    await keys.press('Enter', 'ArrowDown', 'Enter');
    await keys.push('Fill plan');
    await page.getByRole('button', { name: 'Leave them' }).waitFor();
    await keys.push('Leave them');
    expect(await status.textContent()).toBe('');
    expect(await keys.here()).toBe('Fill plan');
  });

  test('choices of single clubs that are dropped hand it on', async () => {
    const keys = await atKeys('Place');
    await keys.type('Masses in grams, one a line', '50.8 53.6 51.9');
    await keys.page.getByRole('button', { name: 'Use this placing' }).waitFor();
    await keys.push('Use this placing');
    expect(await keys.here()).toBe('Plan');
    await keys.push('Drop them');
    expect(await keys.here()).toBe('Change the putter too');
  });
});

describe('by the keyboard alone', () => {
  test('a hand is measured, its target compared, a grip taken over, filled and taken back', async () => {
    const keys = await atKeys('Hand', 'Compare grips at');
    const { page } = keys;
    await keys.type('Hand length', '8');
    await keys.choose('Fingertips', 1);
    await keys.push(/^Compare grips at/);
    await page.getByRole('button', { name: 'Fill Compare sheet' }).waitFor();
    expect(await keys.here()).toBe('Compare');
    await page.getByRole('button', { name: 'Fill Compare sheet' }).waitFor();
    await keys.to(/^Put .* on the shortlist/);
    await keys.press('Space', 'Tab', 'Enter');
    await page.getByRole('button', { name: 'Fit this grip' }).waitFor();
    await keys.push('Fit this grip');
    expect(await keys.here()).toBe('Plan');
    await keys.push('Fill plan');
    expect(await keys.said()).toContain('Plan filled');
    await keys.push(/^Undo: /);
    await page.getByText('Last fill undone').waitFor();
  });

  test('the best grip for each club is looked for, and used', async () => {
    const keys = await atKeys('Compare', 'Fill Compare sheet');
    await keys.push('Find it');
    await keys.page.getByRole('button', { name: 'Use these grips' }).waitFor();
    await keys.push('Use these grips');
    expect(await keys.here()).toBe('Plan');
  });

  test('a quote is issued and declared void', async () => {
    const keys = await atKeys('Quote', 'Issue quote');
    await keys.push('Issue quote');
    expect(await keys.said()).toContain('Quote issued');
    await keys.push(/^Declare quote \d+ void$/);
    // The question is answered with what changes nothing, unless one goes to the other.
    expect(await keys.here()).toBe('Leave it');
    await keys.press('Escape');
    expect(await keys.here()).toMatch(/^Declare quote \d+ void$/);
    await keys.press('Enter', 'Shift+Tab', 'Enter');
    await keys.page.getByText(/is Void/).waitFor();
    await keys.here();
  });

  test('stock is reserved, ordered, picked, and something is entered', async () => {
    const keys = await atKeys('Stock', 'Fill order');
    await keys.push('Reserve all open jobs');
    expect(await keys.said()).toMatch(/Reserved \d+ pieces/);
    await keys.push('Fill order');
    await keys.page.getByText('Order filled').waitFor();
    await keys.push('Fill pick list');
    await keys.page.getByText('Pick list filled').waitFor();
    await keys.to('Item');
    await keys.page.keyboard.type('OS-M60');
    await keys.press('ArrowDown', 'Enter');
    await keys.type('How many', '13');
    await keys.push('Enter it');
    await keys.page.getByText('OS-M60: 13 pieces arrived').waitFor();
    await keys.push('Release these');
    await keys.page
      .getByText(/job R-198/)
      .first()
      .waitFor();
    await keys.here();
  });

  test('a ticket is filled, a check-in begun and judged, the job closed and begun again', async () => {
    const keys = await atKeys('Bench', 'Fill bench ticket');
    const { page } = keys;
    await keys.push('Fill bench ticket');
    expect(await keys.said()).toContain('Ticket filled');
    await keys.push('Start check-in');
    await page.getByText('Check-in started').waitFor();
    await keys.push('Judge');
    await page.getByText('Check-in judged').waitFor();
    // What is measured is typed into the sheet, which is the host's.
    await page.evaluate(() => {
      for (let row = 1; window.sheet.read('Checkin', row, 'Job'); row += 1) {
        if (window.sheet.read('Checkin', row, 'Job') !== 'R-201') continue;
        window.sheet.type('Checkin', row, 'Reading', window.sheet.read('Checkin', row, 'Predicted'));
        window.sheet.type('Checkin', row, 'Mass (g)', 420);
        window.sheet.type('Checkin', row, 'Decision', 'Accept');
      }
    });
    await page.getByText('Every club is accepted or waived').waitFor();
    await keys.push('Close job');
    await page.getByText('Job closed').waitFor();
    await keys.here();
    await keys.to('8 iron');
    await keys.press('Space');
    await keys.push('Begin redo');
    await page.getByText(/Round 2 of job R-201 is begun/).waitFor();
    await keys.here();
  });

  test('a job is begun', async () => {
    const keys = await atKeys('Intake', 'Begin job');
    await keys.type('Customer', 'Alex Marsh');
    await keys.type('Clubs that came in', 'Driver, 8-9, Putter');
    await keys.push('Begin job');
    expect(await keys.said()).toContain('Job R-207 is in Jobs');
  });

  test('the week’s jobs are worked through in one go, and one is looked at', async () => {
    const keys = await atKeys('Week', 'Fill week sheet');
    await keys.push(/^Do it for/);
    await keys.page.getByText(/6 quotes issued/).waitFor();
    await keys.here();
    await keys.press('Escape');
    await keys.push('Look at job R-204');
    expect(await keys.here()).toBe('Plan');
  });
});
