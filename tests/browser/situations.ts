/**
 * Every screen of the pane in every state it has, and how a person gets there: what the check of access goes through, and what is
 * pictured for review. A screen without a situation does not compile.
 */
import type { Page } from 'playwright-core';
import type { Screen } from '../../src/pane/state/tools';
import { SCREEN_WORDS } from '../../src/pane/words';
import type { PaneOptions } from './onMemory';
import type {} from './paneOnMemory';

export interface Situation {
  readonly name: string;
  readonly content?: PaneOptions['content'];
  readonly look?: PaneOptions['look'];
  readonly reach: (page: Page) => Promise<unknown>;
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const field = (page: Page, name: string) => page.getByRole('combobox', { name, exact: true });
const text = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const part = (page: Page, name: string | RegExp) => page.getByRole('region', { name });

async function choose(page: Page, name: string, option: string | RegExp): Promise<void> {
  await field(page, name).click();
  await page.getByRole('option', { name: option }).first().click();
}

async function planned(page: Page, job?: RegExp): Promise<void> {
  await page.getByText(/^\d+ clubs?:/).waitFor();
  if (!job) return;
  await choose(page, 'Plan for', job);
  await page.getByText(/^\d+ clubs?:/).waitFor();
}

/** A tab of the pane, with a job of the demo open. */
async function at(page: Page, screen: Screen, job?: RegExp): Promise<void> {
  await planned(page, job);
  await page.getByRole('tab', { name: SCREEN_WORDS[screen], exact: true }).click();
}

/** Presses a button and waits for what the pane says of it. */
async function done(page: Page, name: string | RegExp): Promise<void> {
  await button(page, name).click();
  await button(page, 'Close this message').waitFor();
}

const unfold = (page: Page, name: string) => page.locator('summary', { hasText: name }).click();

async function occupied(page: Page): Promise<void> {
  await planned(page, /R-206/);
  await page.evaluate(() => {
    window.sheet.select('Sheet1', 3, 1, 1);
    window.sheet.put('Sheet1', 5, 2, 'my note');
  });
  await choose(page, 'Where the plan goes', 'Selected cell');
  await button(page, 'Fill plan').click();
  await button(page, 'Write over them').waitFor();
}

async function checkedIn(page: Page): Promise<void> {
  await at(page, 'bench');
  await done(page, 'Start check-in');
  await done(page, 'Judge');
  await page.evaluate(() => {
    for (let row = 1; window.sheet.read('Checkin', row, 'Job'); row += 1) {
      if (window.sheet.read('Checkin', row, 'Job') !== 'R-201') continue;
      const off = ['7 iron', '8 iron'].includes(String(window.sheet.read('Checkin', row, 'Club')));
      window.sheet.type('Checkin', row, 'Reading', off ? 'D5' : window.sheet.read('Checkin', row, 'Predicted'));
      window.sheet.type('Checkin', row, 'Mass (g)', window.sheet.read('Checkin', row, 'Predicted mass (g)'));
      if (!off) window.sheet.type('Checkin', row, 'Decision', 'Accept');
    }
  });
  await page
    .getByRole('cell', { name: /^\+3\.0/ })
    .first()
    .waitFor();
}

/** Before any screen: the workbook is being read, cannot be read, or was never set up. */
export const BEFORE: readonly Situation[] = [
  { name: 'reading the workbook', look: 'never', reach: (page) => page.getByText('Reading the workbook…').waitFor() },
  { name: 'unreadable', look: 'fails', reach: (page) => button(page, 'Read again').waitFor() },
  {
    name: 'first run',
    content: 'empty',
    reach: (page) => button(page, 'Set up this workbook').waitFor(),
  },
  {
    name: 'first run, not now',
    content: 'empty',
    reach: (page) => button(page, 'Not now').click(),
  },
];

export const SITUATIONS: Readonly<Record<Screen, readonly Situation[]>> = {
  plan: [
    { name: 'a full bag', reach: (page) => planned(page) },
    {
      name: 'no jobs yet',
      content: 'setUp',
      reach: (page) => page.getByRole('heading', { name: 'No jobs yet' }).waitFor(),
    },
    {
      name: 'a club open, a fault in every field, the fold open',
      reach: async (page) => {
        await planned(page, /R-202/);
        await button(page, /7 iron/).click();
        await choose(page, 'Size', 'Diameter');
        await page.getByLabel('Target diameter in inches').fill('9');
        await choose(page, 'Hold', /^Target$/);
        await text(page, 'Target reading').fill('Z9');
        await unfold(page, 'Lower hand, tolerance, weighting');
        await text(page, 'Tolerance').fill('wide');
        await page
          .getByText(/Until then the sheet counts/)
          .first()
          .waitFor();
      },
    },
    {
      name: 'problems in the tables',
      reach: async (page) => {
        await planned(page, /R-202/);
        await page.evaluate(() => window.sheet.type('Settings', 2, 'Value', 'tight'));
        await button(page, '1 problem in the shop’s tables').click();
      },
    },
    { name: 'below the scale', reach: (page) => planned(page, /R-203/) },
    { name: 'cells in the way', reach: occupied },
    {
      name: 'filled',
      reach: async (page) => {
        await planned(page);
        await done(page, 'Fill plan');
      },
    },
    {
      name: 'a write that takes long',
      reach: async (page) => {
        await planned(page);
        await page.evaluate(() => window.sheet.slow(60_000));
        await button(page, 'Fill plan').click();
        await page.getByRole('progressbar').waitFor();
      },
    },
    {
      name: 'a refused write',
      reach: async (page) => {
        await planned(page);
        await page.evaluate(() => window.sheet.refuse(true));
        await done(page, 'Fill plan');
      },
    },
    {
      name: 'no clubs selected',
      reach: async (page) => {
        await planned(page);
        await page.evaluate(() => window.sheet.select('Stock', 2, 0, 1));
        await choose(page, 'Plan for', 'Selected clubs');
        await page.getByRole('heading', { name: 'No clubs selected' }).waitFor();
      },
    },
    {
      name: 'a table is missing',
      reach: async (page) => {
        await planned(page);
        await page.evaluate(() => window.sheet.rename('Clubs', 'Bag'));
        await page.getByRole('heading', { name: 'Table Clubs is missing' }).waitFor();
      },
    },
    {
      name: 'a list of choices open',
      reach: async (page) => {
        await planned(page);
        await field(page, 'Grip').click();
        await page.getByRole('option').nth(2).waitFor();
      },
    },
    {
      name: 'choices of single clubs',
      reach: async (page) => {
        await at(page, 'place', /R-206/);
        await text(page, 'Masses in grams, one a line').fill('50.8 53.6 51.9');
        await button(page, 'Use this placing').click();
        await page.getByText(/with choices of their own/).waitFor();
      },
    },
  ],
  hand: [
    {
      name: 'what is asked about measures',
      reach: async (page) => {
        await at(page, 'hand');
        await text(page, 'Hand length').fill('193');
        await text(page, 'Middle finger').fill('long');
        await page.getByText('193 looks like millimetres.').waitFor();
      },
    },
    {
      name: 'both hands, a target and what reaches it',
      reach: async (page) => {
        await at(page, 'hand');
        await text(page, 'Middle finger').fill('3,2');
        await page.getByRole('checkbox', { name: 'The lower hand measures otherwise' }).check();
        await text(page, 'Lower hand').fill('8');
        await choose(page, 'Fingertips', 'press into the palm');
        await choose(page, 'Lower index', 'has to reach');
        await part(page, 'What reaches it').getByRole('listitem').first().waitFor();
      },
    },
    {
      name: 'measures that Jobs knows, and nothing in stock that fits',
      reach: async (page) => {
        await at(page, 'hand', /R-204/);
      },
    },
  ],
  compare: [
    {
      name: 'narrowed down, one grip open, the best for each club',
      reach: async (page) => {
        await at(page, 'compare', /R-205/);
        await button(page, 'Fill Compare sheet').waitFor();
        await unfold(page, 'Narrow down');
        await text(page, 'Price up to').fill('cheap');
        await page
          .getByRole('checkbox', { name: /on the shortlist$/ })
          .first()
          .check();
        await page.getByRole('table').last().getByRole('rowheader').first().getByRole('button').click();
        await choose(page, 'From', 'All of Stock');
        await choose(page, 'Sizes', 'Any size for any club');
        await button(page, 'Find it').click();
        await part(page, 'The best grip for each club').getByText(/model/).last().waitFor();
      },
    },
    {
      name: 'no model can serve the set',
      reach: async (page) => {
        await planned(page);
        await choose(page, 'Size', 'Diameter');
        await page.getByLabel('Target diameter in inches').fill('1.6');
        await page.getByRole('tab', { name: 'Compare' }).click();
        await page.getByText(/ to 1\.600 ± /).waitFor();
        await button(page, 'Find it').click();
        await page.getByText(/None of the \d+ models/).waitFor();
      },
    },
    {
      name: 'an empty stock',
      reach: async (page) => {
        await at(page, 'compare');
        await page.evaluate(() => {
          window.sheet.fill(
            'Stock',
            Array.from({ length: 60 }, () => ({ Item: null })),
          );
        });
        await page.getByText(/^Stock is empty/).waitFor();
      },
    },
  ],
  even: [
    {
      name: 'every group as in the sheet',
      reach: (page) => at(page, 'even'),
    },
    {
      name: 'targets for groups, one of them no reading',
      reach: async (page) => {
        await at(page, 'even');
        const irons = part(page, /^Irons/);
        await irons.getByRole('combobox', { name: 'Reading' }).click();
        await page.getByRole('option', { name: 'One value' }).click();
        await irons.getByRole('textbox', { name: 'Reading for the irons' }).fill('H9');
        await part(page, /^Woods/)
          .getByRole('combobox', { name: 'Reading' })
          .click();
        await page.getByRole('option', { name: 'A line by length' }).click();
        await button(page, 'Use these targets').waitFor();
      },
    },
  ],
  place: [
    { name: 'nothing typed', reach: (page) => at(page, 'place') },
    {
      name: 'a mass that cannot be read',
      reach: async (page) => {
        await at(page, 'place');
        await text(page, 'Masses in grams, one a line').fill('50.8\nheavy');
        await page.getByText(/line 2/).waitFor();
      },
    },
    {
      name: 'grips placed',
      reach: async (page) => {
        await at(page, 'place');
        await text(page, 'Masses in grams, one a line').fill('50.8\n51.6\n49.9\n80');
        await button(page, 'Use this placing').waitFor();
      },
    },
  ],
  intake: [
    {
      name: 'a job already there',
      reach: async (page) => {
        await at(page, 'intake');
        await button(page, 'Fill intake sheet').waitFor();
      },
    },
    {
      name: 'a new job with faults and last time’s grips',
      reach: async (page) => {
        await at(page, 'intake');
        await page.getByLabel('Customer').fill('alex marsh');
        await page.getByLabel('Clubs that came in').fill('Driver, spoon, 8-9');
        await page.getByText('“spoon” is no club.').waitFor();
      },
    },
    {
      name: 'a job begun',
      reach: async (page) => {
        await at(page, 'intake');
        await page.getByLabel('Customer').fill('alex marsh');
        await page.getByLabel('Clubs that came in').fill('Driver, 8-9, Putter');
        await done(page, 'Begin job');
      },
    },
  ],
  quote: [
    {
      name: 'as it would be now, everything unfolded',
      reach: async (page) => {
        await at(page, 'quote');
        await button(page, 'Issue quote').waitFor();
        for (const fold of await page.locator('summary').all()) await fold.click();
      },
    },
    {
      name: 'options beside each other',
      reach: async (page) => {
        await planned(page);
        await choose(page, 'Grip', /Midsize/);
        await page.getByRole('tab', { name: 'Quote' }).click();
        await button(page, 'Keep what is chosen in Plan').click();
        await button(page, 'Write options').waitFor();
      },
    },
    {
      name: 'issued, and asked whether it is void',
      reach: async (page) => {
        await at(page, 'quote');
        await done(page, 'Issue quote');
        await button(page, /^Declare quote \d+ void$/).click();
        await button(page, 'Declare void').waitFor();
      },
    },
    {
      name: 'a price at the counter',
      reach: async (page) => {
        await at(page, 'quote');
        await unfold(page, 'Price at the counter');
        await page.getByLabel('Clubs', { exact: true }).fill('7');
        await page.getByText(/^7 clubs: /).waitFor();
      },
    },
    {
      name: 'no job chosen',
      reach: async (page) => {
        await planned(page);
        await page.evaluate(() => window.sheet.select('Clubs', 2, 1, 3));
        await choose(page, 'Plan for', 'Selected clubs');
        await page.getByRole('tab', { name: 'Quote' }).click();
        await page.getByText(/a quote is for one job/).waitFor();
      },
    },
  ],
  stock: [
    {
      name: 'what open jobs need',
      reach: async (page) => {
        await at(page, 'stock');
        await page.getByText(/^OS-M60: R-202 lacks/).waitFor();
      },
    },
    {
      name: 'reserved',
      reach: async (page) => {
        await at(page, 'stock');
        await done(page, 'Reserve all open jobs');
      },
    },
  ],
  bench: [
    {
      name: 'before the check-in',
      reach: async (page) => {
        await at(page, 'bench');
        await button(page, 'Fill bench ticket').waitFor();
      },
    },
    { name: 'a check-in with two clubs off', reach: checkedIn },
    {
      name: 'closed',
      reach: async (page) => {
        await at(page, 'bench', /done/);
        await button(page, 'Begin redo').waitFor();
      },
    },
    {
      name: 'own constants',
      reach: async (page) => {
        await at(page, 'bench');
        await unfold(page, 'Your own constants');
        await page.getByText('the scale drifted by').waitFor();
      },
    },
  ],
  week: [
    {
      name: 'the work ahead',
      reach: async (page) => {
        await at(page, 'week');
        await button(page, 'Fill week sheet').waitFor();
      },
    },
    {
      name: 'in one go, done',
      reach: async (page) => {
        await at(page, 'week');
        await done(page, /^Do it for/);
      },
    },
    {
      name: 'in one go, at work',
      reach: async (page) => {
        await at(page, 'week');
        await button(page, /^Do it for/).waitFor();
        await page.evaluate(() => window.sheet.slow(60_000));
        await button(page, /^Do it for/).click();
        await button(page, 'Stop').waitFor();
      },
    },
    {
      name: 'nothing ahead',
      content: 'setUp',
      reach: async (page) => {
        await page.getByRole('heading', { name: 'No jobs yet' }).waitFor();
        await page.getByRole('tab', { name: 'Week' }).click();
        await page.getByText(/^No open job has clubs/).waitFor();
      },
    },
  ],
  lists: [
    {
      name: 'lists of a shop’s own',
      content: 'foreign',
      reach: async (page) => {
        await button(page, 'Use lists of my own').click();
        await page.getByRole('heading', { name: 'Lists in this workbook' }).waitFor();
      },
    },
    {
      name: 'a list matched',
      content: 'foreign',
      reach: async (page) => {
        await button(page, 'Use lists of my own').click();
        await button(page, /^Match 'Lager 2026'/).click();
        await page.getByText('11 of', { exact: false }).waitFor();
      },
    },
    {
      name: 'another row chosen for the headings',
      content: 'foreign',
      reach: async (page) => {
        await button(page, 'Use lists of my own').click();
        await button(page, /^Match 'Lager 2026'/).click();
        await page.getByRole('combobox', { name: 'Headings' }).click();
        await page.getByRole('option').last().click();
        await page
          .getByText(/^\d+ of \d+/)
          .first()
          .waitFor();
      },
    },
  ],
};
