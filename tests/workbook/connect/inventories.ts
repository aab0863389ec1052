/**
 * Inventories and lists as shops keep them, all of them invented: grips, people and suppliers are made up. What is expected of each is
 * what a person at that shop would say.
 */
import type { ConnectWarning, ShopUnit } from '../../../src/workbook/connect/types';
import type { Seen } from '../../../src/workbook/port';

export interface Inventory {
  readonly what: string;
  readonly table: string;
  /** Nothing in it says which of our tables it is; a person has to. */
  readonly toBeTold?: true;
  readonly rows: readonly (readonly Seen[])[];
  readonly headerRow: number;
  readonly lastRow: number;
  /** Position and unit of each of our columns that is there, by its key; nothing else may be proposed. */
  readonly found: Readonly<Record<string, readonly [number, ShopUnit]>>;
  readonly unknown: readonly number[];
  readonly warned: readonly ConnectWarning['warning'][];
}

export const METRIC: Inventory = {
  what: 'metric, units in the headings',
  table: 'Stock',
  rows: [
    ['Art. No.', 'Désignation', 'Kern Ø mm', 'Masse/g', 'Länge [cm]', 'Außen-Ø mm', 'Preis', 'Qty.', 'Supplier'],
    ['F-101', 'Fern Midsize', 14.7, 52, 26.7, 23.4, 7.9, 12, 'Nordholm'],
    ['F-102', 'Fern Standard', 15.2, 50.5, 26.7, 22.9, 7.9, 4, 'Nordholm'],
    ['M-201', 'Moss Jumbo', 15.2, 62, 27, 24.6, 9.5, 0, 'Søndergård'],
    ['O-301', 'Oak Standard', 14.7, 46.5, 26.5, 22.8, 5.25, 31, 'Søndergård'],
  ],
  headerRow: 0,
  lastRow: 4,
  found: {
    item: [0, null],
    description: [1, null],
    core: [2, 'mm'],
    mass: [3, 'g'],
    length: [4, 'cm'],
    upperDiameter: [5, 'mm'],
    price: [6, null],
    onHand: [7, null],
    supplier: [8, null],
  },
  unknown: [],
  warned: [],
};

export const OUNCES: Inventory = {
  what: 'ounces, abbreviations, plural and words in another order',
  table: 'Stock',
  rows: [
    ['SKU #', 'Grip Discription', 'Weight – grip (oz.)', 'core .in', 'Cost $', 'Retail $', 'Qty O/H', 'Min Qty', 'Bin'],
    ['1001', 'Fern cord std', 1.76, 0.58, 3.1, 7.99, 14, 6, 'A1'],
    ['1002', 'Fern cord mid', 1.94, 0.6, 3.4, 8.49, 3, 6, 'A2'],
    ['1003', 'Moss soft', 1.62, 0.58, 2.75, 6.99, 22, 6, 'B1'],
    ['1004', 'Moss putter', 2.86, 0.58, 8.2, 19.99, 2, 1, 'C4'],
  ],
  headerRow: 0,
  lastRow: 4,
  found: {
    item: [0, null],
    description: [1, null],
    core: [3, 'in'],
    mass: [2, 'oz'],
    cost: [4, null],
    price: [5, null],
    onHand: [6, null],
    reorderAt: [7, null],
  },
  unknown: [8],
  warned: [],
};

export const CATALOGUE: Inventory = {
  what: 'catalogue style: cores with their profile, short words, money as text',
  table: 'Stock',
  rows: [
    ['Product code', 'Name', 'Grip size', 'Core', 'Wt', 'Std pack', 'Trade', 'RRP'],
    ['FN-ST-58', 'Fern', 'Std', '58R', 50, 12, '£3.10', '£7.99'],
    ['FN-MD-60', 'Fern', 'Mid', '60R', 55, 12, '£3.10', '£7.99'],
    ['MS-JB-60', 'Moss', 'Oversize', '60R', 64, 6, '£4.20', '£9.99'],
    ['OK-US-58', 'Oak', 'U/S', '58R', 44, 12, '£2.80', '£6.50'],
  ],
  headerRow: 0,
  lastRow: 4,
  found: {
    item: [0, null],
    description: [1, null],
    size: [2, null],
    core: [3, null],
    mass: [4, null],
    pack: [5, null],
    cost: [6, null],
    price: [7, null],
  },
  unknown: [],
  warned: [],
};

export const TWO_ROWS: Inventory = {
  what: 'headings over two rows, one of them over several columns',
  table: 'Stock',
  rows: [
    ['Item', 'Grip', null, null, 'Stock', null, 'Price', null],
    [null, 'Weight (g)', 'Core (in)', 'Ø (in)', 'On hand', 'Reorder at', 'Cost', 'Retail'],
    ['FERN-M', 52, 0.58, 0.91, 4, 6, 3.1, 7.9],
    ['FERN-J', 58, 0.6, 0.96, 2, 6, 3.1, 7.9],
    ['MOSS-S', 46, 0.58, 0.9, 11, 6, 2.4, 6.5],
  ],
  headerRow: 1,
  lastRow: 4,
  found: {
    item: [0, null],
    mass: [1, 'g'],
    core: [2, 'in'],
    upperDiameter: [3, 'in'],
    onHand: [4, null],
    reorderAt: [5, null],
    cost: [6, null],
    price: [7, null],
  },
  unknown: [],
  warned: [],
};

export const TITLED: Inventory = {
  what: 'title and date above, a blank row, totals and a note below',
  table: 'Stock',
  rows: [
    ['Grip room, counted by hand', null, null, null, null],
    ['As of', 46100, null, null, null],
    [null, null, null, null, null],
    ['Code', 'Weight in grams', 'Bore size', 'In stock', 'Unit cost'],
    ['FERN-M', 52, '.580"', 4, 3.1],
    ['FERN-J', 58, '.600"', 2, 3.1],
    ['MOSS-S', 46, '.580"', 11, 2.4],
    [null, null, null, null, null],
    ['Total', null, null, 17, 8.6],
    ['* putter grips are counted in the other book', null, null, null, null],
  ],
  headerRow: 3,
  lastRow: 6,
  found: { item: [0, null], mass: [1, 'g'], core: [2, 'in'], onHand: [3, null], cost: [4, null] },
  unknown: [],
  warned: ['rowsLeftOut', 'rowsLeftOut'],
};

export const UNSTATED: Inventory = {
  what: 'no unit anywhere, millimetres and ounces in the cells',
  table: 'Stock',
  rows: [
    ['Part no', 'Core', 'Weight', 'Length', 'OD', 'Stock'],
    ['FERN-M', 14.7, 1.83, 267, 23.1, 4],
    ['FERN-J', 15.2, 2.05, 267, 24.4, 2],
    ['MOSS-S', 14.7, 1.62, 265, 22.9, 11],
  ],
  headerRow: 0,
  lastRow: 3,
  found: {
    item: [0, null],
    core: [1, 'mm'],
    mass: [2, 'oz'],
    length: [3, 'mm'],
    upperDiameter: [4, 'mm'],
    onHand: [5, null],
  },
  unknown: [],
  warned: ['unitGuessed', 'unitGuessed', 'unitGuessed', 'unitGuessed'],
};

export const TYPED: Inventory = {
  what: 'units typed into the cells, fractions and commas',
  table: 'Stock',
  rows: [
    ['Grip', 'Grip wt', 'Core size', 'Grip length', 'Diameter'],
    ['FERN-M', '1.76 oz', '0.580"', '10 1/2"', '23,1 mm'],
    ['FERN-J', '1.94 oz', '0.600"', '10½ in', '24,4 mm'],
    ['MOSS-S', '46 g', '.580 in', '10-1/4"', '22,9 mm'],
    ['OAK-58', 'about 50', '.58', '10.5', '22,8 mm'],
  ],
  headerRow: 0,
  lastRow: 4,
  found: { item: [0, null], mass: [1, 'oz'], core: [2, 'in'], length: [3, 'in'], upperDiameter: [4, 'mm'] },
  unknown: [],
  warned: [],
};

export const RIGHT_TO_LEFT: Inventory = {
  what: 'right to left, with marks of direction, values that speak for themselves',
  table: 'Stock',
  toBeTold: true,
  rows: [
    ['\u200fמק״ט', 'תיאור', 'משקל (g)\u200f', 'קוטר פנימי', 'מלאי'],
    ['א-101', 'גריפ ירוק', 52, 0.58, 4],
    ['א-102', 'גריפ כחול', 58.5, 0.6, 2],
    ['ב-201', 'גריפ שחור', 46, 0.58, 11],
  ],
  headerRow: 0,
  lastRow: 3,
  found: { item: [0, null], mass: [2, 'g'], core: [3, null] },
  unknown: [1, 4],
  warned: [],
};

export const LOOK_ALIKE: Inventory = {
  what: 'two headings alike, one of them over values that are no mass, and a heading merged over two columns',
  table: 'Stock',
  rows: [
    ['Item', 'Weight', 'Core (in)', 'Weight', 'Suppliers', null],
    ['FERN-M', 52, 0.58, 640, 'Nordholm', 'Ask for Ines'],
    ['FERN-J', 58, 0.6, 710, 'Nordholm', 'Ask for Ines'],
    ['MOSS-S', 46, 0.58, 560, 'Tarn', 'By post'],
  ],
  headerRow: 0,
  lastRow: 3,
  found: { item: [0, null], mass: [1, null], core: [2, 'in'], supplier: [4, null] },
  unknown: [3, 5],
  warned: ['headingBlank', 'headingsAlike'],
};

export const REPAIRS: Inventory = {
  what: 'a repair book with days as text',
  table: 'Jobs',
  rows: [
    ['Ticket #', 'Customer name', 'Phone', 'Date in', 'Promised', 'Status', 'Comments'],
    ['R-17', 'Ines Halloran', '555 0101', '15/4/2026', '3/5/2026', 'Open', 'two wraps'],
    ['R-18', 'Björn Åkesson', '555 0102', '16/4/2026', '14/5/2026', 'Waiting', null],
    ['R-19', 'Zoë Tarn', '555 0103', '16 Apr 2026', '20/5/2026', 'Done', 'logo down'],
  ],
  headerRow: 0,
  lastRow: 3,
  found: {
    job: [0, null],
    customer: [1, null],
    received: [3, null],
    due: [4, null],
    status: [5, null],
    notes: [6, null],
  },
  unknown: [2],
  warned: ['datesAsText', 'datesAsText'],
};

export const BAG: Inventory = {
  what: 'clubs with readings, a row of units below the headings',
  table: 'Clubs',
  rows: [
    ['Order', 'Club', 'Type', 'L/R', 'Club length', 'Butt', 'Swingweight', 'Total wt', 'Old grip wt'],
    [null, null, null, null, 'in', 'in', null, 'g', 'g'],
    ['1042', 'Driver', 'Driver', 'RH', 45.5, 0.6, 'D3', 318, 50],
    ['1042', '3 wood', 'Fairway', 'RH', 43, 0.6, 'D2.5', 335, 50],
    ['1042', '7 iron', 'Irons', 'RH', 37, 0.58, 'D1', 412, 52],
    ['1042', 'PW', 'Wedge', 'RH', 35.5, 0.58, 'D3.5', 452, 52],
  ],
  headerRow: 1,
  lastRow: 5,
  found: {
    job: [0, null],
    club: [1, null],
    kind: [2, null],
    hand: [3, null],
    length: [4, 'in'],
    butt: [5, 'in'],
    reading: [6, null],
    mass: [7, 'g'],
    oldMass: [8, 'g'],
  },
  unknown: [],
  warned: [],
};

export const CROSSED: Inventory = {
  what: 'a heading that contradicts its values, mixed units, a blank unit that could be two',
  table: 'Stock',
  rows: [
    ['Item', 'Weight (oz)', 'Core', 'Length', 'Price'],
    ['FERN-M', 52, 0.58, 10.5, 7.9],
    ['FERN-J', 58, 0.6, 10.5, 7.9],
    ['MOSS-S', 46, 14.7, 10.25, 6.5],
    ['OAK-58', 49, 15.2, 10.75, 6.5],
    ['OAK-60', 51, 0.6, 10.5, 6.5],
  ],
  headerRow: 0,
  lastRow: 5,
  found: { item: [0, null], mass: [1, 'oz'], core: [2, null], length: [3, null], price: [4, null] },
  unknown: [],
  warned: ['unitContradiction', 'unitsMixed'],
};

export const CAPITALS: Inventory = {
  what: 'capitals and short forms throughout, two diameters told apart by where they are taken',
  table: 'Stock',
  rows: [
    [
      'ITEM',
      'CORE',
      'RD/RIB',
      'GRAMS',
      'DIA @ 2in',
      'DIA @ 6in',
      'LGTH',
      'CAP THK',
      'MSRP',
      'COST',
      'ON-HAND',
      'RE-ORDER PT',
    ],
    ['A1', '60R', 'RD', 50, 0.9, 0.82, 10.5, 0.125, 8.99, 4, 12, 6],
    ['A2', '58R', 'RIB', 52, 0.91, 0.83, 10.5, 0.125, 8.99, 4, 12, 6],
    ['A3', '58R', 'RIB', 52.5, 0.92, 0.84, 10.75, 0.12, 8.99, 4, 12, 6],
  ],
  headerRow: 0,
  lastRow: 3,
  found: {
    item: [0, null],
    core: [1, null],
    profile: [2, null],
    mass: [3, 'g'],
    upperDiameter: [4, null],
    lowerDiameter: [5, null],
    length: [6, null],
    cap: [7, null],
    price: [8, null],
    cost: [9, null],
    onHand: [10, null],
    reorderAt: [11, null],
  },
  unknown: [],
  warned: [],
};

export const PERCENTS: Inventory = {
  what: 'a job list whose per cents are cells that show them, measures in centimetres',
  table: 'Jobs',
  rows: [
    ['WO #', 'Client', 'Due', 'Hand', 'Longest finger', 'Disc %', 'Paid?'],
    ['1', 'Ines Halloran', 46100, 19, 8.2, 0.1, 'y'],
    ['2', 'Zoë Tarn', 46101, 18.4, 7.9, 0.05, 'n'],
    ['3', 'Bo Åkesson', 46103, 20.3, 8.6, null, 'n'],
  ],
  headerRow: 0,
  lastRow: 3,
  found: {
    job: [0, null],
    customer: [1, null],
    due: [2, null],
    handLength: [3, 'cm'],
    fingerLength: [4, 'cm'],
    discount: [5, 'part'],
  },
  unknown: [6],
  warned: ['unitGuessed', 'unitGuessed', 'unitGuessed'],
};

export const CENTIMETRES: Inventory = {
  what: 'a length that may be inches or centimetres, at a shop that measures in millimetres',
  table: 'Stock',
  rows: [
    ['Item', 'Core (mm)', 'OD (mm)', 'Weight (g)', 'Balance'],
    ['FERN-M', 14.7, 23.1, 52, 10.4],
    ['FERN-J', 15.2, 24.4, 58, 10.6],
    ['MOSS-P', 14.7, 30.2, 88, 7.9],
  ],
  headerRow: 0,
  lastRow: 3,
  found: { item: [0, null], core: [1, 'mm'], upperDiameter: [2, 'mm'], mass: [3, 'g'], balance: [4, 'cm'] },
  unknown: [],
  warned: ['unitGuessed'],
};

export const OPEN: Inventory = {
  what: 'a width that may be inches or centimetres, with nothing to go by',
  table: 'Tape',
  rows: [
    ['Tape', 'Purpose', 'Width', 'Price'],
    ['Masking', 'Build-up', 2, 4],
    ['Two-way thin', 'Two-way', 2, 9],
    ['Two-way', 'Two-way', 1.75, 9],
  ],
  headerRow: 0,
  lastRow: 3,
  found: { tape: [0, null], use: [1, null], strip: [2, null], price: [3, null] },
  unknown: [],
  warned: ['unitOpen'],
};

export const INVENTORIES: readonly Inventory[] = [
  METRIC,
  OUNCES,
  CATALOGUE,
  TWO_ROWS,
  TITLED,
  UNSTATED,
  TYPED,
  RIGHT_TO_LEFT,
  LOOK_ALIKE,
  REPAIRS,
  BAG,
  CROSSED,
  CAPITALS,
  PERCENTS,
  CENTIMETRES,
  OPEN,
];
