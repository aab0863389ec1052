/**
 * The constants of the trade, each with its unit, the range in which input is accepted, and where it comes from.
 *
 * *practice*: common workshop practice, no source. *memory*: from memory, unread. *derived*: arithmetic from the numbers beside it.
 */
import { GRAMS_PER_OUNCE } from './units';

/** A number with its unit, legal range and source. */
export interface Constant {
  readonly value: number;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** Where the balance scale's fulcrum stands, measured from the cap's outer end (the 14-inch scale; *practice*). */
export const FULCRUM_INCHES = 14;

/** One point of the scale: 1.75 oz·in (*memory*; D. Tutelman, "Estimating Heft": 50 g·in within 1 %). */
export const POINT_OUNCE_INCHES = 1.75;

/** One point in g·in: 49.6117 (*derived*). */
export const POINT_GRAM_INCHES = POINT_OUNCE_INCHES * GRAMS_PER_OUNCE;

/** Moment of a club that reads D0: 213.5 oz·in (*memory*, supported by readings posted in an owners' forum thread). */
export const D0_OUNCE_INCHES = 213.5;

/** Points from the fulcrum's zero moment to A0: D0 is 30 points above A0, so 213.5 / 1.75 − 30 = 92 (*derived*). */
export const POINTS_AT_A0 = D0_OUNCE_INCHES / POINT_OUNCE_INCHES - 30;

/** First and last letter of the scale: A0 is 0 points, a letter is ten points. */
export const SCALE_LETTERS = 'ABCDEFG';

/** A grip's balance point lies at about this part of its length from the cap (*practice*; geometry gives 3.9 to 4.1 in for 10.5 in). */
export const GRIP_BALANCE_RATIO = 0.4;

/** What of that part is accepted where a shop found its own (*practice*: no grip is twice as thick at one end as at the other). */
export const GRIP_BALANCE_RATIOS = { low: 0.3, high: 0.5 } as const;

/** Balance point of a usual 10.5 in grip (*derived* from the ratio). */
export const GRIP_BALANCE: Constant = {
  value: 4.2,
  unit: 'in',
  low: 1.5,
  high: 12,
  source: 'practice: 0.40 of a 10.5 in grip',
};

/** Length of one build-up strip along the shaft. */
export const TAPED_LENGTH: Constant = { value: 10.5, unit: 'in', low: 3, high: 24, source: 'practice' };

/** Width of one strip laid lengthwise. */
export const STRIP_WIDTH: Constant = { value: 2, unit: 'in', low: 0.25, high: 4, source: 'practice' };

/** Mass of build-up tape per area; rolls run from 90 to 150. */
export const TAPE_GSM: Constant = { value: 130, unit: 'g/m²', low: 40, high: 600, source: 'memory' };

/** Mass per area of the two-way tape: 10.5 in × 2 in then weigh about 1.8 g (*derived* from that practice). */
export const TWO_WAY_GSM: Constant = {
  value: 133,
  unit: 'g/m²',
  low: 40,
  high: 600,
  source: 'practice: a strip weighs about 1.8 g',
};

/** Thickness of build-up tape; a layer adds twice this to the seat (D. Eagar, "Grip Sizing", 2009). */
export const TAPE_THICKNESS: Constant = {
  value: 0.005,
  unit: 'in',
  low: 0.001,
  high: 0.02,
  source: 'D. Eagar, "Grip Sizing", 2009',
};

/** Thickness of a cap that nobody measured: ⅛ in (*practice*). */
export const CAP_THICKNESS: Constant = { value: 0.125, unit: 'in', low: 0, high: 1, source: 'practice' };

/** How far a cap that nobody measured may be from what Settings says (*practice*). */
export const CAP_SPREAD_INCHES = 1 / 16;

/** How well a length change is met that is measured with a club rule (*practice*: half of a sixteenth of an inch). */
export const LENGTH_SPREAD_INCHES = 1 / 32;

/** Where the outside diameter is gauged for the upper hand, and for the lower (*practice* for the lower). */
export const UPPER_GAUGE_INCHES = 2;
export const LOWER_GAUGE_INCHES = 6;

/** A butt weight or counterweight sits this far from the cap (*practice*: 3.8 g a point). */
export const BUTT_WEIGHT_INCHES = 1;

/** A club without grip and tape when nobody weighed it; the ± is what a plan then has to allow for (*practice*). */
export const TYPICAL_BODY_GRAMS = 374;
export const TYPICAL_BODY_SPREAD_GRAMS = 80;

/** How well a shop's gram scale weighs a grip that is off (*practice*). */
export const WEIGHED_SPREAD_GRAMS = 0.5;

/** How well a balance point is known that was tried on an edge (*practice*: a tenth of an inch). */
export const TRIED_BALANCE_SPREAD_INCHES = 0.1;

/** What one calliper can tell apart; a seat this much under the core is not yet loose. */
export const CALLIPER_DIVISION_INCHES = 0.0005;

/** More stretch of core over butt than this is hard to slide on (*practice*). */
export const TIGHT_CORE_INCHES = 0.03;

/** Most layers that anyone builds up (*practice*). */
export const MOST_LAYERS = 12;

/**
 * Layers by which each answer to a sample grip moves the size: `press` fingertips press into the palm, `gap` they stay clear of it,
 * `short` the little finger does not pass the grip's centre line, `reach` the lower index finger has to reach (*practice*, all).
 * Two layers where the hand says it outright, one where it hints.
 */
export const SAMPLE_LAYERS = { press: 2, gap: -2, short: -1, reach: -1 } as const;

/** Most extra layers under the lower hand: more of them eat up a grip's taper (*practice*). */
export const MOST_LOWER_LAYERS = 4;

/** A weighed grip is odd if it is off what Stock says by more than this many times the item's ±, and by more than these grams (*practice*). */
export const ODD_MASS_SPREADS = 4;
export const ODD_MASS_GRAMS = 3;

/** Most grips that are placed at a time: the work grows with the cube of their number. */
export const MOST_WEIGHED_GRIPS = 500;

/** Lengths that round to the same hundredth of an inch are one length to a line (*practice*: a club rule shows no less). */
export const LENGTH_DIVISION_INCHES = 0.01;

/** A line by length wants at least so many lengths: through two there is always one (*derived*). */
export const LEAST_LENGTHS = 3;

/** Median absolute deviation to standard deviation, for normal errors: 1 / 0.6745 (*memory*). */
export const SD_PER_MAD = 1.4826;

/** A club stands out among its group if it is farther off than so many standard deviations (*practice*). */
export const STANDS_OUT_SDS = 3;

/**
 * What input checks accept. Wider than what is usual (grips 45–60 g, driver clubs near 310 g; MacKenzie et al. 2015; P. Dye),
 * because wedges, putters and juniors are clubs too (*practice*).
 */
export const RANGES = {
  gripGrams: { low: 15, high: 220, unit: 'g' },
  headGrams: { low: 150, high: 420, unit: 'g' },
  clubGrams: { low: 150, high: 1000, unit: 'g' },
  bodyGrams: { low: 100, high: 900, unit: 'g' },
  anyGrams: { low: -1000, high: 1000, unit: 'g' },
  layerGrams: { low: 0.1, high: 20, unit: 'g' },
  plugGrams: { low: -40, high: 60, unit: 'g' },
  clubInches: { low: 18, high: 52, unit: 'in' },
  positionInches: { low: 0, high: 60, unit: 'in' },
  addedInches: { low: -6, high: 6, unit: 'in' },
  clubBalanceInches: { low: 14, high: 45, unit: 'in' },
  gripBalanceInches: { low: 1.5, high: 12, unit: 'in' },
  gripLengthInches: { low: 3, high: 24, unit: 'in' },
  diameterInches: { low: 0.6, high: 2.5, unit: 'in' },
  coreInches: { low: 0.5, high: 0.75, unit: 'in' },
  buttInches: { low: 0.45, high: 0.75, unit: 'in' },
  capInches: { low: 0, high: 1, unit: 'in' },
  handInches: { low: 5, high: 10, unit: 'in' },
  fingerInches: { low: 2, high: 5, unit: 'in' },
  stripInches: { low: 0.25, high: 4, unit: 'in' },
  gsm: { low: 40, high: 600, unit: 'g/m²' },
  layers: { low: 0, high: MOST_LAYERS, unit: 'layers' },
  stretch: { low: 0.8, high: 1.3, unit: 'times its length' },
  points: { low: -150, high: 150, unit: 'points' },
  decimals: { low: 0, high: 4, unit: 'decimals' },
} as const;
