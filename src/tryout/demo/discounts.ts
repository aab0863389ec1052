import type { DISCOUNTS } from '../../workbook/tables/discounts';
import type { DemoRow } from './table';

/** What the invented workshop takes off single lines of a quote. */
export const demoDiscounts: readonly DemoRow<typeof DISCOUNTS>[] = [
  { job: 'R-202', line: 'OS-M60', percent: 10, reason: 'More than six of one grip' },
  { job: 'R-202', line: 'Weigh and read before and after', amount: 3, reason: 'First set with us' },
];
