import type { CHECKIN } from '../../workbook/schema';
import type { DemoRow } from './table';

/**
 * What came back from the bench of R-202, not judged yet. Readings and masses are those that the plan predicts, give or take what a
 * scale errs, but for two clubs: the 8 iron reads 1.9 points too much at its right mass, as it does when a grip is not pushed home, and the
 * pitching wedge is 8 g and 3.5 points short, which is the lead tape that nobody put on.
 */
// prettier-ignore
export const demoCheckIn: readonly DemoRow<typeof CHECKIN>[] = [
  { job: 'R-202', club: '4 iron', reading: 'D1.2', mass: 424.6 },
  { job: 'R-202', club: '5 iron', reading: 'D0.8', mass: 432.4 },
  { job: 'R-202', club: '6 iron', reading: 'D0.9', mass: 438.6 },
  { job: 'R-202', club: '7 iron', reading: 'D1.1', mass: 442.0 },
  { job: 'R-202', club: '8 iron', reading: 'D2.9', mass: 454.3 },
  { job: 'R-202', club: '9 iron', reading: 'D0.7', mass: 461.8 },
  { job: 'R-202', club: 'PW', reading: 'C8.0', mass: 460.1 },
  { job: 'R-202', club: '55 wedge', reading: 'D4.1', mass: 484.7 },
];
