import { DEFAULT_SIZE_GUIDE } from '../../core/index';
import {
  SETTING_ROWS,
  type SettingKey,
  type QUOTES,
  type RATES,
  type SETTINGS,
  type SIZES,
  type TAPE,
  type TAXES,
  type WEIGHTS,
} from '../../workbook/schema';
import type { DemoRow } from './table';

/** What the invented workshop charges, and the tapes and weights on its bench. */
export const demoRates: readonly DemoRow<typeof RATES>[] = [
  { work: 'Fit a grip', unit: 'Club', price: 3.5, minutes: 8, use: 'Fitting a grip', includedLayers: 1, cost: 0.6 },
  {
    work: 'Fit a client’s own grip',
    unit: 'Club',
    price: 5,
    minutes: 8,
    use: 'Fitting a client’s own grip',
    cost: 0.6,
  },
  {
    work: 'Take off whole and keep the old grip',
    unit: 'Club',
    price: 1.5,
    minutes: 4,
    use: 'Old grip taken off whole',
    cost: 0,
  },
  { work: 'Weigh and read before and after', unit: 'Club', price: 1, minutes: 3, use: 'Weighing and reading', cost: 0 },
  { work: 'Build-up tape', unit: 'Layer', price: 0.4, minutes: 1, use: 'Build-up tape', cost: 0.08 },
  { work: 'Put a reading right', unit: 'Club', price: 2.5, minutes: 5, use: 'Putting a reading right', cost: 0 },
  { work: 'Extend or trim', unit: 'Club', price: 6, minutes: 15, use: 'Length change', cost: 0.9, tax: 'Work' },
  {
    work: 'Fit a putter grip',
    unit: 'Club',
    price: 4.5,
    minutes: 10,
    use: 'Fitting a grip',
    kind: 'Putter',
    cost: 0.6,
  },
  { work: 'Look over the bag', unit: 'Job', price: 0, minutes: 5, use: 'Every job', cost: 0 },
];

/** Invented taxes: which ones are due differs by place. */
export const demoTaxes: readonly DemoRow<typeof TAXES>[] = [
  { tax: 'Goods', percent: 20 },
  { tax: 'Work', percent: 10 },
];

/** Quotes of before this workbook: one that was taken up, and one that the workshop took back. Their sheets were not kept. */
export const demoQuotes: readonly DemoRow<typeof QUOTES>[] = [
  {
    number: 1040,
    revision: 1,
    job: 'R-143',
    customer: 'Alex Marsh',
    issued: 45790,
    validUntil: 45820,
    total: 79.2,
    currency: 'EUR',
    status: 'Issued',
  },
  {
    number: 1041,
    revision: 1,
    job: 'R-196',
    customer: 'Kim Vale',
    issued: 46120,
    validUntil: 46150,
    total: 96,
    currency: 'EUR',
    status: 'Void',
  },
];

export const demoTape: readonly DemoRow<typeof TAPE>[] = [
  {
    tape: 'Build-up tape',
    use: 'Build-up',
    strip: 2,
    gsm: 130,
    thickness: 0.005,
    roll: 36,
    price: 5.2,
    weighedStrip: 1.75,
    weighedLength: 10.5,
    onHand: 58,
    reorderAt: 36,
    supplier: 'Orrin Wholesale',
  },
  {
    tape: 'Two-way tape',
    use: 'Two-way',
    strip: 2,
    gsm: 133,
    thickness: 0.005,
    roll: 36,
    price: 11.8,
    onHand: 21,
    reorderAt: 18,
    supplier: 'Orrin Wholesale',
  },
];

export const demoWeights: readonly DemoRow<typeof WEIGHTS>[] = [
  {
    way: 'Lead tape',
    end: 'Head',
    position: 0,
    step: 0.5,
    gripOff: 'No',
    price: 1.5,
    minutes: 3,
    cost: 0.3,
    tax: 'Goods',
    onHand: 140,
    reorderAt: 60,
    pack: 200,
    packCost: 9.5,
    supplier: 'Orrin Wholesale',
  },
  { way: 'Head screw', end: 'Head', position: 0, step: 1, gripOff: 'No', limit: 12, price: 9, minutes: 3, cost: 4.2 },
  {
    way: 'Tip plug',
    end: 'Head',
    position: 2,
    step: 1,
    gripOff: 'Yes',
    price: 3,
    minutes: 5,
    cost: 0.9,
    onHand: 6,
    reorderAt: 10,
    pack: 25,
    packCost: 11,
  },
  { way: 'Butt plug', end: 'Butt', position: 1, step: 1, gripOff: 'Yes', price: 3, minutes: 3, cost: 0.9 },
];

const DEMO_SETTINGS: Readonly<Partial<Record<SettingKey, string | number>>> = {
  shop: 'Demo workshop (invented)',
  address: '3 Example Lane; Sampletown; telephone 555 0100',
  currency: 'EUR',
  referenceReads: 'D2.0',
  minimumCharge: 12,
  deposit: 20,
  terms:
    'Clubs are ready on the day named unless a grip has to be ordered. Old grips that are not kept are disposed of.',
};

/** Every setting as a new workbook has it, but for what a quote needs. */
export const demoSettings: readonly DemoRow<typeof SETTINGS>[] = SETTING_ROWS.map((row) => ({
  setting: row.name,
  value: DEMO_SETTINGS[row.key] ?? row.initial,
  unit: 'unit' in row ? row.unit : '',
  meaning: row.meaning,
}));

/** The size guide that a new workbook starts with. */
export const demoSizes: readonly DemoRow<typeof SIZES>[] = DEFAULT_SIZE_GUIDE.map((row) => ({
  hand: row.handInches,
  finger: row.fingerInches,
  diameter: row.diameterInches,
}));
