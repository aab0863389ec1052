import { DEFAULT_SIZE_GUIDE } from '../../core/index';
import { SETTING_ROWS, type RATES, type SETTINGS, type SIZES, type TAPE, type WEIGHTS } from '../../workbook/schema';
import type { DemoRow } from './table';

/** What the invented workshop charges, and the tapes and weights on its bench. */
export const demoRates: readonly DemoRow<typeof RATES>[] = [
  { work: 'Fit a grip', unit: 'Club', price: 3.5, minutes: 8 },
  { work: 'Take off whole and keep the old grip', unit: 'Club', price: 1.5, minutes: 4 },
  { work: 'Weigh and read before and after', unit: 'Club', price: 1, minutes: 3 },
  { work: 'Build-up tape', unit: 'Layer', price: 0.4, minutes: 1 },
  { work: 'Put a reading right', unit: 'Club', price: 2.5, minutes: 5 },
  { work: 'Extend or trim', unit: 'Club', price: 6, minutes: 15 },
  { work: 'Look over the bag', unit: 'Job', price: 0, minutes: 5 },
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
  },
  { tape: 'Two-way tape', use: 'Two-way', strip: 2, gsm: 133, thickness: 0.005, roll: 36, price: 11.8 },
];

export const demoWeights: readonly DemoRow<typeof WEIGHTS>[] = [
  { way: 'Lead tape', end: 'Head', position: 0, step: 0.5, gripOff: 'No', price: 1.5, minutes: 3 },
  { way: 'Head screw', end: 'Head', position: 0, step: 1, gripOff: 'No', limit: 12, price: 9, minutes: 3 },
  { way: 'Tip plug', end: 'Head', position: 2, step: 1, gripOff: 'Yes', price: 3, minutes: 5 },
  { way: 'Butt plug', end: 'Butt', position: 1, step: 1, gripOff: 'Yes', price: 3, minutes: 3 },
];

/** Every setting as a new workbook has it, but for the shop's name. */
export const demoSettings: readonly DemoRow<typeof SETTINGS>[] = SETTING_ROWS.map((row) => ({
  setting: row.name,
  value: row.key === 'shop' ? 'Demo workshop (invented)' : row.initial,
  unit: 'unit' in row ? row.unit : '',
  meaning: row.meaning,
}));

/** The size guide that a new workbook starts with. */
export const demoSizes: readonly DemoRow<typeof SIZES>[] = DEFAULT_SIZE_GUIDE.map((row) => ({
  hand: row.handInches,
  finger: row.fingerInches,
  diameter: row.diameterInches,
}));
