import { describe, expect, test } from 'vitest';
import { EMPTY_QUOTE } from '../../src/pane/state/quoteForm';
import { quoteSeen } from '../../src/pane/view/tools/quoteSeen';
import { placeOfField } from '../../src/workbook/issuePlace';
import type { Block } from '../../src/workbook/port';
import { named } from '../../src/workbook/shared/address';
import { readShop } from '../../src/workbook/shop';
import { MemoryPort } from './memoryPort';
import { connectedClubs } from './connect/rack';
import { connectedWorkshop, PLAIN, plainWorkshop } from './connect/inventory';

const SHOWS = (at: Block | null): string | null => at && named(at);

/** A first quote from a list of clubs of the shop's own, beside tables as they are made. */
async function firstQuote() {
  const bare = new MemoryPort();
  const rows = [
    ['Client', 'Bag number', 'Club', 'Length (in)', 'SW', 'New grip'],
    ['Ines Marlow', 'B-17', 'Driver', 45.5, 'D3', 'FERN-M'],
  ];
  bare.typeTable('Bags', 'In work', rows);
  const at = { sheet: 'In work', row: 0, column: 0, rows: 2, columns: 6 };
  const { port } = await connectedClubs(bare, { table: 'Bags', at });
  return { bare, port, shop: await readShop(port) };
}

describe('the cell that an issue is about', () => {
  test('is known for everything that stops a first quote, and is the blank one', async () => {
    const { bare, shop } = await firstQuote();
    const { issues } = quoteSeen(shop, 'B-17', EMPTY_QUOTE, {}, new Map(), 46_000).made;
    const places = issues.map(({ field }) => placeOfField(field, shop.tables));
    expect(issues.map(({ code }) => code)).toEqual(issues.map(() => 'blank'));
    expect(issues.length).toBeGreaterThan(3);
    for (const at of places) {
      expect(at).not.toBeNull();
      expect(at && bare.shows(at.sheet, at.row, at.column)).toBeNull();
    }
    expect(new Set(places.map(SHOWS)).size).toBe(issues.length);
    for (const at of places) if (at) bare.type(at.sheet, at.row, at.column, at.sheet === 'Settings' ? 'EUR' : 5);
  });

  test('mended there, the quote comes about', async () => {
    const { bare, port, shop } = await firstQuote();
    const madeOf = (seen: typeof shop) => quoteSeen(seen, 'B-17', EMPTY_QUOTE, {}, new Map(), 46_000).made;
    for (const { field } of madeOf(shop).issues) {
      const at = placeOfField(field, shop.tables) as Block;
      bare.type(at.sheet, at.row, at.column, at.sheet === 'Settings' ? 'EUR' : 5);
    }
    const made = madeOf(await readShop(port));
    expect(made.issues).toEqual([]);
    expect(made.quote).not.toBeUndefined();
  });

  test('stands in a list of the shop’s own, by our names or by its own', async () => {
    const { port } = await connectedWorkshop(plainWorkshop, PLAIN);
    const { tables } = await readShop(port);
    const { at, rows, headers } = tables.Stock as NonNullable<typeof tables.Stock>;
    const item = String(rows[1]?.[headers.indexOf('Item')]);
    const mass = { ...at, row: at.row + 2, column: at.column + headers.indexOf('Mass (g)'), rows: 1, columns: 1 };
    expect(placeOfField(`Mass of ${item} in Stock`, tables)).toEqual(mass);
    expect(placeOfField(`Mass of ${item} in “Lager”, under “Wt (oz)”,`, tables)).toEqual(mass);
    expect(placeOfField(`“Lager” row ${mass.row + 1}, under “Wt (oz)”, Mass (g)`, tables)).toEqual(mass);
  });

  test('is that of a job, of a setting, or the table’s first cell where it lacks the row', async () => {
    const { port, bare } = await firstQuote();
    bare.fillTable('Jobs', [{ Job: 'A-1' }, { Job: 'B-17' }]);
    const { tables } = await readShop(port);
    expect(SHOWS(placeOfField('Customer of job B-17 in Jobs', tables))).toBe('Jobs!B3');
    expect(SHOWS(placeOfField('Customer of job C-1 in Jobs', tables))).toBe('Jobs!A1');
    expect(SHOWS(placeOfField('Fit a kite in Rates', tables))).toBe('Rates!A1');
    const shop = placeOfField('Shop name in Settings', tables) as Block;
    expect(bare.shows('Settings', shop.row, 0)).toBe('Shop name');
    expect(shop.column).toBe(1);
  });

  test('is none where nothing is named that is there', async () => {
    const { tables } = (await firstQuote()).shop;
    for (const field of ['The quote', 'New grip', 'Price of X in “Nowhere”', 'Nowhere row 3, Price', 'Date of issue']) {
      expect(placeOfField(field, tables)).toBeNull();
    }
  });

  test('can be shown, and nothing is written', async () => {
    const { bare, shop, port } = await firstQuote();
    const before = bare.content();
    const at = placeOfField('Currency in Settings', shop.tables) as Block;
    await port.apply([{ do: 'show', at }], [], { label: 'Go to' });
    expect(bare.selected).toEqual(at);
    expect(bare.content()).toEqual(before);
  });
});
