/**
 * The walk of somebody new to it, on the built page: a messy workbook that another program wrote is opened, its lists connected, a bag
 * planned and quoted, results written beside the clubs, all but the quote taken back, a copy saved, read by a reader that shares nothing
 * with ours, and opened again. KEEP_PICTURES keeps what every step looked like, the page and the pane alone.
 */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { type XmlBook, xmlBook, type XmlCell } from '../embedded/open/xmlCells';
import type { OpenPage } from './page';
import { openDemo } from './tryout';

const FILE = join(import.meta.dirname, '../fixtures/foreign/grip-room.xlsx');
/** Sheets of the file, and the only cell of them that the walk is to leave changed. */
const SHEETS = ['Grip wall', 'In the racks', 'Job book', 'Labour', 'Grips 2019'];
const TYPED = 'Labour!E2';

let open: OpenPage | undefined;
afterEach(async () => {
  await open?.close();
  open = undefined;
});

/** One person at the page: counts what they press, and keeps pictures for whoever wants to look. */
class Walk {
  clicks = 0;
  private pictures = 0;
  constructor(readonly page: Page) {}

  async press(name: string | RegExp, role: 'button' | 'tab' = 'button', within: Pick<Page, 'getByRole'> = this.page) {
    this.clicks += 1;
    await within.getByRole(role, { name, exact: typeof name === 'string' }).click();
  }

  async open(path: string): Promise<void> {
    this.clicks += 1;
    await this.page.locator('input.open-file').setInputFiles(path);
    await this.press('Open', 'button', this.page.getByRole('dialog'));
    await this.page
      .getByRole('status')
      .filter({ hasText: /^Opened\.$/ })
      .waitFor();
    await this.page.getByRole('dialog').waitFor({ state: 'detached' });
  }

  async said(text: string | RegExp): Promise<void> {
    await this.page.getByRole('status', { name: 'What happened' }).filter({ hasText: text }).waitFor();
  }

  /** Types into a cell as a person does, by the box with its address. */
  async type(sheet: string, cell: string, text: string): Promise<void> {
    await this.page.locator('.sheet span').getByText(sheet, { exact: true }).click();
    const box = this.page.locator('[data-u-comp="defined-name"] input');
    await box.fill(cell);
    await box.press('Enter');
    await this.page.keyboard.type(text, { delay: 20 });
    await this.page.keyboard.press('Enter');
    await this.page.waitForTimeout(300);
  }

  async save(): Promise<XmlBook & { readonly bytes: Uint8Array }> {
    await this.press('Save as .xlsx');
    const dialog = this.page.getByRole('dialog', { name: 'Save a copy' });
    const [download] = await Promise.all([
      this.page.waitForEvent('download'),
      dialog.getByRole('button', { name: 'Save', exact: true }).click(),
    ]);
    const bytes = new Uint8Array(await readFile(await download.path()));
    return { ...xmlBook(bytes), bytes };
  }

  async look(name: string): Promise<void> {
    const folder = process.env.KEEP_PICTURES;
    if (!folder) return;
    this.pictures += 1;
    const path = (width: number): string =>
      join(folder, `walk-${String(this.pictures).padStart(2, '0')}-${name}-${width}.png`);
    // What is painted on a canvas gives no sign of being there.
    await this.page.waitForTimeout(1_500);
    await this.page.screenshot({ path: path(1280) });
    await this.page.locator('.pane').screenshot({ path: path(350) });
  }
}

test('a messy workbook of another program is opened, connected, planned, quoted, undone, saved and opened elsewhere', async () => {
  const walk = new Walk(await atPage());
  const { page } = walk;

  await walk.open(FILE);
  await walk.look('opened');
  await walk.press('Use lists of my own');
  for (const [list, columns, doubts] of [
    ["Match 'Grip wall'", '10 of', ['1 of 9 cells cannot be', 'Row 17 looks like totals']],
    ['Match racks', '10 of', []],
    ["Match 'Job book'", '4 of', ['each be one day only']],
    ['Match Labour', '5 of', []],
  ] as const) {
    await walk.press(new RegExp(`^${list}`));
    await page.getByText(`${columns} `, { exact: false }).first().waitFor();
    for (const doubt of doubts) await page.getByText(doubt, { exact: false }).first().waitFor();
    await walk.look(list);
    await walk.press('Connect');
    await walk.said('Connected');
    await page.getByRole('heading', { name: 'Lists in this workbook' }).waitFor();
  }
  // Two to open the file, one for the tab, two for each of four lists.
  expect(walk.clicks).toBe(11);
  await walk.look('connected');
  await walk.press('Make the other tables');
  await walk.said(/^The workbook is set up/);

  await walk.press('Plan', 'tab');
  const grip = page.getByRole('combobox', { name: 'Grip' });
  await grip.click();
  await grip.pressSequentially('LARCH-M');
  await page.getByRole('option').first().click();
  await page.getByText('11 clubs: 10 likely, 1 unknown').waitFor();
  await walk.press('Fill plan');
  await walk.said('Plan of 11 clubs filled into Plan 1107');
  await walk.look('planned');

  await walk.press('Quote', 'tab');
  for (const lack of ['Currency in Settings is blank', 'Price of Lead tape in Weights is blank']) {
    await page.getByText(lack, { exact: false }).waitFor();
  }
  await walk.press('Go to Settings!B31');
  await expect.poll(() => page.locator('[data-u-comp="defined-name"] input').inputValue()).toBe('B31');
  await walk.look('went');
  await walk.type('Labour', 'E2', 'Fitting a grip');
  await walk.type('Taxes', 'B2', '0');
  await walk.type('Settings', 'B31', 'EUR');
  await walk.type('Weights', 'G2', '0.5');
  // Ten grips at 7.40, ten fitted at 3.50, lead tape on ten clubs at 0.50: by hand.
  await page.getByRole('row', { name: /^Total 114\.00/ }).waitFor();
  await walk.look('quote');
  await walk.press('Issue quote');
  await walk.said('Quote 1 over 114.00 EUR');
  await walk.look('issued');

  await walk.press('Lists', 'tab');
  await walk.press('Write results of 1107');
  await walk.said('62 cells written beside 11 clubs');
  await walk.look('beside');
  await walk.press(/^Undo: Results/);
  await walk.said('Taken back: Results beside the clubs of job 1107.');
  await walk.press(/^Undo: Plan/);
  await walk.said('Taken back: Plan of job 1107');
  await walk.look('undone');

  const copy = await walk.save();
  nothingLost(xmlBook(new Uint8Array(await readFile(FILE))), copy);
  expect(copy.sheets.find(({ name }) => name === 'Quote 1')?.cells.size).toBeGreaterThan(20);

  const folder = await mkdtemp(join(tmpdir(), 'setwright-'));
  const path = join(process.env.KEEP_PICTURES ?? folder, 'grip-room-setwright.xlsx');
  await writeFile(path, copy.bytes);
  expect(open?.problems).toEqual([]);
  await open?.close();

  // Another day.
  const later = new Walk(await atPage());
  await later.open(path);
  await later.press('Lists', 'tab');
  await later.page.getByText("Stock: 'Grip wall'!A4:L16").waitFor();
  await later.page.getByText('Rates: Labour!A1:E6').waitFor();
  await later.look('again');
  await rm(folder, { recursive: true });
  expect(open?.problems).toEqual([]);
}, 300_000);

async function atPage(): Promise<Page> {
  open = await openDemo({ height: 900 });
  return open.page;
}

/** Every cell of the file's own sheets stands in the copy as it stood, but for the one that was typed. */
function nothingLost(file: XmlBook, copy: XmlBook): void {
  let compared = 0;
  expect(file.sheets.map(({ name }) => name)).toEqual(SHEETS);
  for (const sheet of file.sheets) {
    const other = copy.sheets.find(({ name }) => name === sheet.name);
    expect(other?.merges, sheet.name).toEqual(sheet.merges);
    // Drop-downs made on other sheets made these rows as high as a new one while theirs was shown.
    const last = Math.max(0, ...[...sheet.cells.keys()].map((at) => Number(/\d+$/.exec(at)?.[0])));
    for (const [row, { points }] of sheet.heights) {
      if (row <= last) expect(other?.heights.get(row)?.points, `${sheet.name}, row ${row}`).toBeCloseTo(points, 1);
    }
    for (const at of new Set([...sheet.cells.keys(), ...(other?.cells.keys() ?? [])])) {
      const place = `${sheet.name}!${at}`;
      if (place === TYPED) continue;
      const [now, was] = [other?.cells.get(at), sheet.cells.get(at)].map(shown);
      expect(now, place).toEqual(was);
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(250);
}

/** A text that another program would take for a number has the format of text in the copy; a blank cell holds nothing. */
function shown(cell: XmlCell | undefined): unknown {
  const value = cell?.value === '' ? null : (cell?.value ?? null);
  return { value, formula: cell?.formula ?? null };
}
