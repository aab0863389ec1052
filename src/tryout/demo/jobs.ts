import type { JOBS } from '../../workbook/schema';
import type { DemoRow } from './table';

/** Bags on the counter of an invented workshop; nobody by these names is meant. Dates are days since 1899-12-30. */
export const demoJobs: readonly DemoRow<typeof JOBS>[] = [
  {
    job: 'R-201',
    customer: 'Alex Marsh',
    due: 46157,
    handLength: 7.6,
    fingerLength: 3.2,
    notes: 'Full bag. Firmer grips, two layers fuller. Every club is to read as it did, the wedges at their targets.',
    status: 'Open',
  },
  {
    job: 'R-202',
    customer: 'Robin Field',
    due: 46158,
    handLength: 8.3,
    fingerLength: 3.5,
    notes:
      'Midsize on all irons and the sand wedge. Told that heavier grips make the clubs read lighter. 7 iron stripped first.',
    status: 'Open',
  },
  {
    job: 'R-203',
    customer: 'Sam Lane (junior)',
    due: 46160,
    handLength: 5.6,
    fingerLength: 2.4,
    notes: 'Small set, read below the scale. Keep the grips thin and light.',
    discount: 10,
    gripDiscount: 5,
    deposit: 50,
    status: 'Open',
  },
  {
    job: 'R-204',
    customer: 'Jo Bridge',
    due: 46157,
    handLength: 7.1,
    fingerLength: 3,
    notes: 'Oversize grip on the usual putter, an even-width one on the spare. The spare must read as it did.',
    status: 'Open',
  },
  {
    job: 'R-205',
    customer: 'Chris Hollow',
    due: 46162,
    handLength: 7.4,
    fingerLength: 3.1,
    notes: 'Bag put together over the years: callipers on every butt. 7 iron half an inch longer.',
    status: 'Open',
  },
  {
    job: 'R-206',
    customer: 'Pat Mill',
    due: 46164,
    handLength: 7.9,
    fingerLength: 3.3,
    notes: 'Three wedges, left-handed, within half a point. Fuller under the lower hand.',
    discountAmount: 2,
    status: 'Waiting',
  },
];
