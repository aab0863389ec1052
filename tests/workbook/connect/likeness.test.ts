import { describe, expect, it } from 'vitest';
import { bestTable, likenessOf } from '../../../src/workbook/connect/likeness';
import { TABLES } from '../../../src/workbook/schema';
import { INVENTORIES } from './inventories';

const schemaNamed = (name: string) => TABLES.find((table) => table.name === name) ?? TABLES[0]!;

describe.each(INVENTORIES)('$what', ({ table, rows, headerRow, lastRow, found, unknown, warned, toBeTold }) => {
  const likeness = likenessOf(schemaNamed(table), rows);

  it('is known by its headings and its rows', () => {
    expect([likeness.headerRow, likeness.lastRow]).toEqual([headerRow, lastRow]);
  });

  it('has these columns and no others', () => {
    const proposed = likeness.proposals.filter(({ position }) => position !== null);
    expect(Object.fromEntries(proposed.map(({ key, position, unit }) => [key, [position, unit]]))).toEqual(found);
    expect(likeness.unknown).toEqual(unknown);
  });

  it('warns of what a person should look at', () => {
    expect(likeness.warnings.map(({ warning }) => warning).sort()).toEqual([...warned].sort());
  });

  it('is told from our other tables', () => {
    expect(bestTable(rows)?.table).toBe(toBeTold ? undefined : table);
  });
});

/** Places of what was found, by our keys. */
const placesIn = (table: string, rows: Parameters<typeof likenessOf>[1]) => {
  const found = likenessOf(schemaNamed(table), rows).proposals.filter(({ position }) => position !== null);
  return Object.fromEntries(found.map(({ key, position, unit }) => [key, [position, unit]]));
};

describe('lists in other languages', () => {
  const LAGER = [
    ['Griff', 'Kern', 'Gewicht (g)', 'Außendurchm. mm', 'Bestand', 'Lieferant', 'VK-Preis'],
    ['Farnkord', '.600R', 50, 22.9, 24, 'Nordgriff', '9,50'],
    ['Moosgriff weich', '.580R', 51, 22.7, 12, 'Nordgriff', '6,90'],
    ['Moosgriff dick', '.600R', 60, 25, 3, 'Nordgriff', '8,90 €'],
    ['Putterkeil', '.580R', 75, 30, 2, 'Südleder', '24,90'],
  ];
  const TASCHEN = [
    ['Kundentaschen'],
    ['Kunde', 'Auftrag', 'Schläger', 'Länge', 'Schwunggewicht', 'Gewicht', 'Alter Griff', 'Neuer Griff'],
    [null, null, null, 'cm', null, 'g', null, null],
    ['Jens Halder', 'A-5', 'Driver', 115.5, 'D3', 312, 'Moosgriff weich', 'Farnkord'],
    ['Jens Halder', 'A-5', 'Eisen 7', 94, 'D2', 427, 'Moosgriff weich', 'Farnkord'],
    ['Jens Halder', 'A-5', 'Eisen 8', 92.7, 'D1,5', 434, 'Moosgriff weich', 'Farnkord'],
    ['Jens Halder', 'A-5', 'Pitching Wedge', 90.2, 'D3', 448, 'Moosgriff weich', 'Farnkord'],
    ['Jens Halder', 'A-5', 'Putter', 86.4, 'E0', 540, 'Putterkeil', 'Putterkeil'],
  ];

  it('stock in German', () => {
    expect(bestTable(LAGER)?.table).toBe('Stock');
    expect(placesIn('Stock', LAGER)).toEqual({
      item: [0, null],
      core: [1, null],
      mass: [2, 'g'],
      upperDiameter: [3, 'mm'],
      onHand: [4, null],
      supplier: [5, null],
      price: [6, null],
    });
  });

  it('clubs in German, with a row of units; a length in centimetres is no model of a grip', () => {
    expect(bestTable(TASCHEN)?.table).toBe('Clubs');
    expect(placesIn('Clubs', TASCHEN)).toEqual({
      job: [1, null],
      club: [2, null],
      length: [3, 'cm'],
      reading: [4, null],
      mass: [5, 'g'],
      oldItem: [6, null],
      newItem: [7, null],
    });
    expect(placesIn('Stock', TASCHEN)).not.toHaveProperty('model');
  });

  it('stock in Spanish', () => {
    const rows = [
      ['Empuñadura', 'Núcleo', 'Peso (g)', 'Diámetro exterior (mm)', 'Existencias', 'Proveedor', 'Precio de venta'],
      ...LAGER.slice(1),
    ];
    expect(bestTable(rows)?.table).toBe('Stock');
    expect(placesIn('Stock', rows)).toMatchObject({
      item: [0, null],
      core: [1, null],
      mass: [2, 'g'],
      price: [6, null],
    });
  });
});

it('a list of grips without a code is named by its model', () => {
  const rows = [
    ['Grip / Model', 'Core', 'Wt (oz)', 'Butt Ø mm', 'Qty', 'Cost', 'Our price'],
    ['Fernhill Cord', '.600R', 1.76, 22.9, 24, 5.1, 9.5],
    ['Fernhill Cord Mid', '.600R', 2.05, 24.5, 3, 5.6, 10.5],
    ['Osprey Soft', '.580R', 1.8, 22.6, 40, 3.2, 6.9],
    ['Tallow Tour', '60', 1.66, 22.7, 18, 4.4, 8.9],
  ];
  expect(placesIn('Stock', rows)).toMatchObject({ item: [0, null], core: [1, null], mass: [2, 'oz'] });
  expect(placesIn('Stock', rows)).not.toHaveProperty('model');
});
