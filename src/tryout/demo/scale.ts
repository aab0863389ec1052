import type { SCALE } from '../../workbook/tables/scale';
import type { DemoRow } from './table';

/** Readings of the workshop's reference club, made up: known to read D2, and the scale reads a little heavier from month to month. */
export const demoScale: readonly DemoRow<typeof SCALE>[] = [
  { date: 46023, reading: 'D2.0' },
  { date: 46055, reading: 'D2.1' },
  { date: 46083, reading: 'D2.3' },
  { date: 46114, reading: 'D2.5', notes: 'Bench was moved to the window' },
  { date: 46139, reading: 'D2.6' },
  { date: 46153, reading: 'D2.8' },
];
