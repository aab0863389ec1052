/**
 * Where the marks of the plot stand: one row a club, one scale for all of them.
 *
 * The scale is swing weight where any club is held to a reading on it. In a set that holds nothing or reads off the letters
 * (a junior set) it is the change in points, with every club arriving at 0.
 */
import type { ClubPlan, SetPlan, Verdict } from '../../core/index';

export type PlotScale = 'reading' | 'change';

export interface PlotRow {
  readonly row: number;
  readonly name: string;
  readonly verdict: Verdict;
  /** On the scale of the plot; undefined where not known. */
  readonly before: number | undefined;
  readonly gripped: number | undefined;
  readonly after: number | undefined;
  /** ± about the last mark. */
  readonly spread: number | undefined;
  readonly band: { readonly low: number; readonly high: number } | undefined;
  /** Stands in for the marks of a club that the scale cannot show: its change in points, else its reading, if even one is known. */
  readonly aside: { readonly change: number | undefined; readonly reading?: number } | undefined;
}

export interface PlotModel {
  readonly scale: PlotScale;
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  readonly rows: readonly PlotRow[];
}

/** A0 to just under what would follow G. */
const LETTERS = { low: 0, high: 70 };
/** Less than this across and a fraction of a point would look like a landslide. */
const NARROWEST_POINTS = 6;
const MOST_TICKS = 7;

const known = (value: number | undefined): value is number => value !== undefined;
/** Whether points have a letter on the scale. */
export const onLetters = (value: number) => value >= LETTERS.low && value < LETTERS.high;

function valuesOf(row: Omit<PlotRow, 'aside'>): number[] {
  const last = row.after ?? row.gripped;
  const whisker = known(last) && known(row.spread) ? [last - row.spread, last + row.spread] : [];
  return [row.before, row.gripped, row.after, row.band?.low, row.band?.high, ...whisker].filter(known);
}

function readingRow(club: ClubPlan): Omit<PlotRow, 'aside'> {
  const held = club.heldReading;
  return {
    row: club.row,
    name: club.name,
    verdict: club.verdictAfter,
    before: club.readingBefore,
    gripped: club.readingGripped,
    after: club.readingAfter,
    spread: club.spreadPoints,
    band: known(held) ? { low: held - club.tolerancePoints, high: held + club.tolerancePoints } : undefined,
  };
}

/** How far the reading ends from where it arrived. */
export function changeOf(club: ClubPlan): number | undefined {
  if (known(club.readingBefore) && known(club.readingAfter)) return club.readingAfter - club.readingBefore;
  return club.shift?.total;
}

function changeRow(club: ClubPlan): Omit<PlotRow, 'aside'> {
  const shifted = readingRow(club);
  const zero = club.readingBefore;
  const relative = (value: number | undefined) => (known(value) && known(zero) ? value - zero : undefined);
  return {
    ...shifted,
    before: known(zero) || club.shift ? 0 : undefined,
    gripped: relative(club.readingGripped) ?? club.shift?.total,
    after: relative(club.readingAfter),
    band: shifted.band && known(zero) ? { low: shifted.band.low - zero, high: shifted.band.high - zero } : undefined,
  };
}

/** Steps of 1, 2, 5 or 10 points, so few that their labels never touch. */
export function ticksOf(low: number, high: number): number[] {
  const step =
    [1, 2, 5, 10, 20, 50, 100].find((each) => Math.floor(high / each) - Math.ceil(low / each) < MOST_TICKS) ?? 200;
  const ticks: number[] = [];
  for (let tick = Math.ceil(low / step) * step; tick <= high; tick += step) ticks.push(tick === 0 ? 0 : tick);
  return ticks;
}

function rangeOf(values: readonly number[]): { low: number; high: number } {
  if (!values.length) return { low: -NARROWEST_POINTS / 2, high: NARROWEST_POINTS / 2 };
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = Math.max(0.5, (NARROWEST_POINTS - (high - low)) / 2);
  return { low: low - room, high: high + room };
}

function asideOf(club: ClubPlan): PlotRow['aside'] {
  const [change, reading] = [changeOf(club), club.readingBefore];
  return { change, ...(!known(change) && known(reading) && onLetters(reading) && { reading }) };
}

/** Lays the plot out; `clubs` may be the part of a long list that is shown. */
export function plotOf(plan: Pick<SetPlan, 'clubs'>): PlotModel {
  const readings = plan.clubs.map(readingRow);
  const scaled = readings.filter((row) => row.band && valuesOf(row).every(onLetters));
  const scale: PlotScale = scaled.length ? 'reading' : 'change';
  const rows = scale === 'reading' ? readings : plan.clubs.map(changeRow);
  const range = rangeOf((scale === 'reading' ? scaled : rows).flatMap(valuesOf));
  return {
    scale,
    ...range,
    ticks: ticksOf(range.low, range.high),
    rows: rows.map((row, index) => {
      const values = valuesOf(row);
      const fits =
        known(row.gripped ?? row.before) && values.every((value) => value >= range.low && value <= range.high);
      const club = plan.clubs[index];
      return { ...row, aside: fits || !club ? undefined : asideOf(club) };
    }),
  };
}
