import { MOVEMENTS } from '../../workbook/tables/movements';
import type { DemoRow } from './table';

type DemoMovement = DemoRow<typeof MOVEMENTS>;

/** What happened to the shelves of the invented workshop so far; dates are days since 1899-12-30. */
const happened: readonly DemoMovement[] = [
  { date: 46139, kind: 'Counted', item: 'OS-M60', quantity: -1, unit: 'pc', note: 'One was in the wrong drawer' },
  { date: 46143, kind: 'Ordered', item: 'TB-S60', quantity: 30, unit: 'pc', order: '1', supplier: 'Pennock Supply' },
  { date: 46146, kind: 'Arrived', item: 'TB-S60', quantity: 20, unit: 'pc', order: '1', supplier: 'Pennock Supply' },
  { date: 46150, kind: 'Written off', item: 'TB-M60', quantity: 1, unit: 'pc', note: 'Torn while sliding on' },
  // a job that was called off and taken out of Jobs
  { date: 46151, kind: 'Reserved', job: 'R-198', club: '7 iron', item: 'OS-M60', quantity: 1, unit: 'pc' },
  { date: 46151, kind: 'Reserved', job: 'R-198', club: '8 iron', item: 'OS-M60', quantity: 1, unit: 'pc' },
];

/** With rows to write into, as a new workbook has them. */
export const demoMovements: readonly DemoMovement[] = [
  ...happened,
  ...Array<DemoMovement>(MOVEMENTS.room - happened.length).fill({}),
];
