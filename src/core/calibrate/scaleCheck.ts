/** Whether the balance scale still reads a reference club as it did. */
import { RANGES } from '../constants';
import { fail, ok, type Issue, type Result } from '../result';
import { leastSquares, outliers, type Fit } from './leastSquares';
import { FLAG_LEVEL } from './limits';
import { tQuantile } from './studentT';

/** One reading of the reference club. */
export interface ReferenceReading {
  /** Days from any one day, such as a spreadsheet's date. */
  readonly day: number;
  readonly points: number;
}

export interface ReferenceClub {
  /** What it reads on a scale that is right. */
  readonly accepted: number;
  /** What the scale shows steps of, in points. */
  readonly divisionPoints: number;
}

/** A change with its interval; `told` where chance and the scale's division do not explain it. */
export interface Told {
  readonly points: number;
  readonly low: number;
  readonly high: number;
  readonly told: boolean;
}

export interface ScaleCheck {
  readonly readings: number;
  readonly days: number;
  /** Standard deviation of one reading; what is left about the trend, where there is one. */
  readonly repeatability: number;
  /** Over the whole time; undefined where the readings were taken on fewer than three days. */
  readonly drift: Told | undefined;
  /** From what it should read, now: by the trend on the last day, where there is one, else of all readings. */
  readonly offset: Told;
  /** Readings far off the others, by their position; they count all the same. */
  readonly flagged: readonly number[];
  /** `recalibrate`: set the scale right before it is used; `fine`: neither drift nor offset is told. */
  readonly verdict: 'fine' | 'recalibrate';
}

/** Fewest readings: with fewer a t quantile is so large that little is ever told (*practice*). */
export const LEAST_READINGS = 5;

/** A trend wants readings of at least so many days (*derived*: through two there is always a line). */
export const LEAST_DAYS = 3;

/** Each of the two tests errs at half of this, so a sound scale is called wrong in at most one check of twenty. */
export const CHECK_LEVEL = 0.05;

/**
 * Tests the readings of a reference club for drift and for an offset.
 *
 * Formula: a line through the readings by least squares; drift is told where the interval of its rise over the whole time, `± t s.e.`, leaves
 * out 0 and the rise is more than half a division. Offset is the mean (with drift: the line on the last day) less what it should read, told
 * where its whole interval lies farther out than half a division, since no reading tells more. Both intervals at 97.5 %, so that the two
 * together err in 5 % at most. Source: t tests with Bonferroni's bound.
 *
 * @returns `tooFew` under five readings; `outOfRange` of a reading, day or division that cannot be
 */
export function scaleCheck(readings: readonly ReferenceReading[], club: ReferenceClub): Result<ScaleCheck> {
  const issue = wrongInput(readings, club);
  if (issue) return fail(issue);
  const days = readings.map(({ day }) => day);
  const last = Math.max(...days);
  const span = last - Math.min(...days);
  const points = readings.map((reading) => reading.points - club.accepted);
  const distinct = new Set(days).size;
  const level = leastSquares(
    readings.map(() => [1]),
    points,
  );
  // counted back from the last day, the constant of the line is where it stands on that day
  const line =
    distinct < LEAST_DAYS
      ? undefined
      : leastSquares(
          days.map((day) => [1, (day - last) / span]),
          points,
        );
  if (!level)
    return fail({ code: 'tooFew', field: 'Reference club', got: 0, expected: 'readings', detail: LEAST_READINGS });
  const half = club.divisionPoints / 2;
  const drift = line && toldOf(line, 1, (low, high, value) => (low > 0 || high < 0) && Math.abs(value) > half);
  const held = drift?.told && line ? line : level;
  const offset = toldOf(held, 0, (low, high) => low > half || high < -half);
  return ok({
    readings: readings.length,
    days: distinct,
    repeatability: held.deviation,
    drift,
    offset,
    flagged: outliers(held, points, FLAG_LEVEL),
    verdict: drift?.told || offset.told ? 'recalibrate' : 'fine',
  });
}

function toldOf(fit: Fit, at: number, isTold: (low: number, high: number, value: number) => boolean): Told {
  const points = fit.coefficients[at] ?? 0;
  const half = tQuantile(1 - CHECK_LEVEL / 2, fit.freedom) * (fit.errors[at] ?? 0);
  // readings that are all the same leave binary noise, which is no drift
  const told = isTold(points - half - 1e-9, points + half + 1e-9, points);
  return { points, low: points - half, high: points + half, told };
}

function wrongInput(readings: readonly ReferenceReading[], club: ReferenceClub): Issue | undefined {
  const { low, high, unit } = RANGES.points;
  const expected = `${low} to ${high} ${unit}`;
  const isReading = (points: number): boolean => points >= low && points <= high;
  if (!isReading(club.accepted)) {
    return { code: 'outOfRange', field: 'What the reference club should read', got: club.accepted, expected };
  }
  if (!(club.divisionPoints > 0 && club.divisionPoints <= 5)) {
    return {
      code: 'outOfRange',
      field: 'Division of the scale',
      got: club.divisionPoints,
      expected: 'over 0, up to 5 points',
    };
  }
  for (const [at, { day, points }] of readings.entries()) {
    if (!isReading(points)) return { code: 'outOfRange', field: `Reference reading ${at + 1}`, got: points, expected };
    if (!Number.isFinite(day))
      return { code: 'notNumber', field: `Date of reference reading ${at + 1}`, got: day, expected: 'a date' };
  }
  if (readings.length >= LEAST_READINGS) return undefined;
  return {
    code: 'tooFew',
    field: 'Reference club',
    got: readings.length,
    expected: 'readings',
    detail: LEAST_READINGS,
  };
}
