import type { CHECKIN } from '../../workbook/schema';
import type { DemoRow } from './table';

/**
 * Check-ins of the closed jobs, enough for the workshop to learn its own constants. Worked out by moments from a made-up truth: a layer
 * of 1.92 g, a grip of 49.6 g, give or take 0.4 g, that balances at 4.42 in; the scales err by 0.05 points and 0.08 g. Judged, as the
 * add-in writes it.
 */
// prettier-ignore
export const closedCheckIn: readonly DemoRow<typeof CHECKIN>[] = [
  { job: 'R-143', club: '5 iron', bareReading: 'E0.8', bareMass: 353.7, reading: 'D1.6', mass: 405.4, decision: 'Accept', predicted: 'D1.7', spread: 0.5, difference: -0.1, standing: 'Accepted' },
  { job: 'R-143', club: '6 iron', bareReading: 'E1.3', bareMass: 359.2, reading: 'D2.4', mass: 410.7, decision: 'Accept', predicted: 'D2.2', spread: 0.5, difference: 0.2, standing: 'Accepted' },
  { job: 'R-143', club: '7 iron', bareReading: 'E1.3', bareMass: 368, reading: 'D2.3', mass: 419.8, decision: 'Accept', predicted: 'D2.3', spread: 0.5, difference: 0, standing: 'Accepted' },
  { job: 'R-143', club: '8 iron', bareReading: 'E1.1', bareMass: 374.9, reading: 'D2.3', mass: 426, decision: 'Accept', predicted: 'D2.1', spread: 0.5, difference: 0.2, standing: 'Accepted' },
  { job: 'R-143', club: '9 iron', bareReading: 'E1.3', bareMass: 382.9, reading: 'D2.4', mass: 434.5, decision: 'Accept', predicted: 'D2.3', spread: 0.5, difference: 0.1, standing: 'Accepted' },
  { job: 'R-143', club: 'PW', bareReading: 'E1.9', bareMass: 389.3, reading: 'D3.0', mass: 440.9, decision: 'Accept', predicted: 'D2.9', spread: 0.5, difference: 0.1, standing: 'Accepted' },
  { job: 'R-118', club: '6 iron', bareReading: 'E0.6', bareMass: 355.2, reading: 'D0.6', mass: 412.5, decision: 'Accept', predicted: 'D0.6', spread: 0.5, difference: 0, standing: 'Accepted' },
  { job: 'R-118', club: '7 iron', bareReading: 'E0.5', bareMass: 363.7, reading: 'D0.5', mass: 421, decision: 'Accept', predicted: 'D0.5', spread: 0.5, difference: 0, standing: 'Accepted' },
  { job: 'R-118', club: '8 iron', bareReading: 'E0.4', bareMass: 370.4, reading: 'D0.4', mass: 427.8, decision: 'Accept', predicted: 'D0.4', spread: 0.5, difference: 0, standing: 'Accepted' },
  { job: 'R-118', club: '9 iron', bareReading: 'E0.5', bareMass: 378.8, reading: 'D0.5', mass: 436, decision: 'Accept', predicted: 'D0.6', spread: 0.5, difference: -0.1, standing: 'Accepted' },
  { job: 'R-118', club: 'PW', bareReading: 'E0.7', bareMass: 388, reading: 'D0.9', mass: 444.7, decision: 'Accept', predicted: 'D0.8', spread: 0.5, difference: 0.1, standing: 'Accepted' },
];
