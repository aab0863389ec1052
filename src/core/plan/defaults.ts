/** How a shop works that has not said otherwise. */
import {
  CAP_THICKNESS,
  GRIP_BALANCE_RATIO,
  STRIP_WIDTH,
  TAPED_LENGTH,
  TAPE_GSM,
  TAPE_THICKNESS,
  TWO_WAY_GSM,
} from '../constants';
import type { ShopSettings, Tape, Way } from './types';

const BUILD_UP: Tape = { stripInches: STRIP_WIDTH.value, gsm: TAPE_GSM.value, thicknessInches: TAPE_THICKNESS.value };
const TWO_WAY: Tape = { stripInches: STRIP_WIDTH.value, gsm: TWO_WAY_GSM.value, thicknessInches: TAPE_THICKNESS.value };

/**
 * Tolerance, limit, least weight and every ± are *practice*; tape and cap as their constants say. Six layers show
 * as .041 to .060 in by the two estimators (*derived*): then the next moulded size, about 1/16 in larger (*practice*), is near.
 */
export const DEFAULT_SETTINGS: ShopSettings = {
  tolerancePoints: 1,
  putRight: 'outOfTolerance',
  headWay: 'Lead tape',
  buttWay: 'Butt plug',
  headLimitGrams: 8,
  leastGrams: 1,
  tapedInches: TAPED_LENGTH.value,
  buildUp: BUILD_UP,
  twoWay: TWO_WAY,
  twoWayUnderNew: true,
  capInches: CAP_THICKNESS.value,
  growth: 'volume',
  sizeToleranceInches: 0.01,
  mostLayers: 6,
  lowerTapeStartInches: 5,
  oldSpreadGrams: 4,
  newSpreadGrams: 2,
  gripBalanceRatio: GRIP_BALANCE_RATIO,
  balanceSpreadInches: 0.25,
  readingSpreadPoints: 0.2,
  tapeSpread: 0.1,
  competition46: false,
};

/** The ways a new workbook starts with: positions from the end named, steps and limits *practice*. */
export const DEFAULT_WAYS: readonly Way[] = [
  { name: 'Lead tape', end: 'head', inches: 0, stepGrams: 0.5, gripOff: false, limitGrams: undefined },
  { name: 'Head screw', end: 'head', inches: 0, stepGrams: 1, gripOff: false, limitGrams: undefined },
  { name: 'Tip plug', end: 'head', inches: 2, stepGrams: 1, gripOff: true, limitGrams: undefined },
  { name: 'Butt plug', end: 'butt', inches: 1, stepGrams: 1, gripOff: true, limitGrams: undefined },
];
