/** The workshop as the first version set it up: without the table Sizes and without the columns and settings that came later. */
import { MemoryPort } from './memoryPort';
import { CLUB_ROWS, JOB_ROWS, spillPlan, STOCK_ROWS } from './workshop';
import type { Seen } from '../../src/workbook/port';

/** Headings of each table, copied from the schema as it then was. */
export const OLDER_HEADINGS: Readonly<Record<string, readonly string[]>> = {
  Jobs: ['Job', 'Customer', 'Due', 'Hand length (in)', 'Middle finger (in)', 'Notes', 'Discount (%)', 'Status'],
  Clubs: [
    'Job',
    'Club',
    'Kind',
    'Hand',
    'New grip',
    'Layers',
    'Lower layers',
    'Target diameter (in)',
    'Hold',
    'Target reading',
    'Tolerance (pt)',
    'Weighting',
    'Length change (in)',
    'Length (in)',
    'Butt (in)',
    'Taper (in/in)',
    'Reading',
    'Club mass (g)',
    'Old grip',
    'Old grip mass (g)',
    'Old mass from',
    'Old layers',
    'Old balance point (in)',
    'Old cap (in)',
    'Butt weight (g)',
    'Leaves with grip',
    'Bare reading',
    'Bare mass (g)',
    'Plug mass (g)',
  ],
  Stock: [
    'Item',
    'Description',
    'Size',
    'Core (in)',
    'Profile',
    'Mass (g)',
    'Mass ± (g)',
    'Upper diameter (in)',
    'Lower diameter (in)',
    'Length (in)',
    'Balance point (in)',
    'Cap (in)',
    'Cost',
    'Price',
    'On hand',
    'Reorder at',
    'Pack',
    'Supplier',
  ],
  Weights: ['Way', 'End', 'From that end (in)', 'Smallest step (g)', 'Grip off', 'Limit (g)', 'Price', 'Minutes'],
  Tape: ['Tape', 'Use', 'Strip width (in)', 'Mass per area (g/m²)', 'Thickness (in)', 'Roll (yd)', 'Price'],
  Rates: ['Work', 'Per', 'Price', 'Minutes'],
  Settings: ['Setting', 'Value', 'Unit', 'Meaning'],
};

const SETTING_ROWS: readonly (readonly [string, string | number])[] = [
  ['Shop name', ''],
  ['Tolerance', 1],
  ['Put right', 'When out of tolerance'],
  ['Head weighting', 'Lead tape'],
  ['Butt weighting', 'Butt plug'],
  ['Head weight limit', 8],
  ['Least weight worth adding', 1],
  ['Taped length', 10.5],
  ['Build-up tape', 'Build-up tape'],
  ['Two-way tape', 'Two-way tape'],
  ['Two-way strip under new grips', 'Yes'],
  ['Cap thickness when not known', 0.125],
  ['Size estimator', 'By volume'],
  ['Lower-hand tape starts', 5],
  ['Catalogue mass ±', 4],
  ['New grip mass ±', 2],
  ['Balance point ±', 0.25],
  ['Scale reading ±', 0.2],
  ['Layer mass ±', 10],
  ['Local rule: 46 in limit', 'No'],
];

const TAPE_ROWS = [
  ['Build-up tape', 'Build-up', 2, 130, 0.005, 36, ''],
  ['Two-way tape', 'Two-way', 2, 133, 0.005, 36, ''],
];

const WEIGHT_ROWS = [
  ['Lead tape', 'Head', 0, 0.5, 'No', '', '', 3],
  ['Head screw', 'Head', 0, 1, 'No', '', '', 3],
  ['Tip plug', 'Head', 2, 1, 'Yes', '', '', 5],
  ['Butt plug', 'Butt', 1, 1, 'Yes', '', '', 3],
];

/**
 * Columns of the plan of job 1042 and what the first version filled under them; not its ±, which counted two caps that nobody measured as
 * one, nor the words that follow from it.
 */
export const OLDER_PLAN: readonly (readonly Seen[])[] = [
  [
    'Club',
    'New grip',
    'Layers',
    'Reads now',
    'With new grip',
    'Add (g)',
    'Finished',
    'Total mass (g)',
    'Upper from (in)',
    'Upper to (in)',
    'Grip and tape before (g)',
    'Grip and tape after (g)',
    'Change (pt)',
    'Exact weight (g)',
    'Inertia change (kg·cm²)',
  ],
  [
    'Driver',
    'FERN-M',
    1,
    'D3.0',
    'D1.7',
    2,
    'D3.0',
    313.7612868,
    0.9464143,
    0.95,
    47,
    53.7612868,
    -1.2983088,
    2.0448019,
    27.5950769,
  ],
  [
    '7 iron',
    'FERN-M',
    1,
    'D2.0',
    'D0.7',
    3,
    'D2.1',
    424.7612868,
    0.9464143,
    0.95,
    47,
    53.7612868,
    -1.2983088,
    2.8004895,
    27.3789483,
  ],
  [
    'Pitching wedge',
    'FERN-M',
    1,
    'D3.5',
    'D2.2',
    3,
    'D3.5',
    454.7612868,
    0.9528903,
    0.96,
    47,
    53.7612868,
    -1.2983088,
    2.9958725,
    25.2741138,
  ],
];

/** That workbook. */
export async function olderWorkshop(): Promise<MemoryPort> {
  const port = new MemoryPort([]);
  const bodies: Readonly<Record<string, readonly (readonly Seen[])[]>> = {
    Jobs: bodyOf('Jobs', JOB_ROWS),
    Clubs: bodyOf('Clubs', CLUB_ROWS),
    Stock: bodyOf('Stock', STOCK_ROWS),
    Weights: WEIGHT_ROWS,
    Tape: TAPE_ROWS,
    Rates: [['', '', '', '']],
    Settings: SETTING_ROWS.map(([name, value]) => [name, value, '', '']),
  };
  for (const [name, headings] of Object.entries(OLDER_HEADINGS)) {
    port.typeTable(name, name, [headings, ...(bodies[name] ?? [])]);
  }
  port.calculate = spillPlan;
  await port.remember('setwright.plans', '{"schema":1,"plans":[]}');
  return port;
}

function bodyOf(table: string, rows: readonly Readonly<Record<string, Seen>>[]): Seen[][] {
  return rows.map((row) => (OLDER_HEADINGS[table] ?? []).map((heading) => row[heading] ?? null));
}
