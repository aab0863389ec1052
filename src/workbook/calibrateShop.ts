/** What a shop's check-ins tell about its own constants, and its reference club about its scale. Pure. */
import {
  calibrate,
  drained,
  finishedClub,
  groupedBy,
  planSet,
  scaleCheck,
  type Calibration,
  type FinishedClub,
  type PlanInput,
  type Progress,
  type ReferenceReading,
  type Result,
  type ScaleCheck,
} from '../core/index';
import { latestRows, measuredOf } from './benchJob';
import { folded } from './headings';
import { headerRowsOf } from './planScope';
import { readPlan } from './planTables';
import { settingValues } from './readSettings';
import type { Row } from './records';
import { CHECKIN, SCALE_DIVISION_POINTS } from './schema';
import { matricesOf, matrixOf, type ShopTables } from './shop';
import { numberOf, tableRows, textOf } from './shopRows';
import { SCALE } from './tables/scale';

/** Check-ins as calibration takes them. */
export interface CheckInsRead {
  /** Clubs that were read and weighed bare and finished. */
  readonly finished: readonly FinishedClub[];
  /** Clubs that were judged and tell nothing, since something was not measured or nothing of theirs is planned any more. */
  readonly without: number;
  /** Stock and settings as a plan takes them; null where no job could be planned. */
  readonly input: PlanInput | null;
}

/**
 * Clubs of all jobs that were judged at the check-in. Of a club that was judged more than once the last row counts: what it says went on
 * by then, or, where an older workbook does not say, the plan.
 */
export function readCheckIns(tables: ShopTables): CheckInsRead {
  return drained(readCheckInsSteps(tables));
}

/** {@link readCheckIns} in steps, one for each job: the tables are read once, and only jobs that were judged are planned. */
function* readCheckInsSteps(tables: ShopTables): Generator<Progress, CheckInsRead> {
  const byJob = groupedBy(
    tableRows(tables, CHECKIN).filter((row) => textOf(row, 'standing') !== ''),
    (row) => folded(textOf(row, 'job')),
  );
  const { Clubs: clubs, Stock: stock, Settings: settings, Weights: weights, Tape: tape } = matricesOf(tables);
  const read =
    byJob.size > 0 && clubs
      ? readPlan({ clubs, stock, settings, weights, tape, headerRows: headerRowsOf(tables) })
      : null;
  const input = read?.ok ? read.value.input : null;
  const arrived = groupedBy(input?.clubs ?? [], ({ job }) => folded(job));
  const finished: FinishedClub[] = [];
  let without = 0;
  for (const [key, rows] of byJob) {
    yield { done: finished.length + without, of: tables.Checkin?.rows.length ?? 0 };
    const set = key === '' ? undefined : arrived.get(key);
    const found = input && set ? finishedOf(rows, { ...input, clubs: set }) : [];
    finished.push(...found);
    without += lastOfEach(rows).length - found.length;
  }
  return { finished, without, input };
}

/** One row of each club: of its last round, and of several there the last one. */
function lastOfEach(rows: readonly Row[]): Row[] {
  return [...new Map(latestRows(rows).map((row) => [folded(textOf(row, 'club')), row])).values()];
}

/** What the judged rows of one job tell; a job of which no row can tell anything is not planned. */
function finishedOf(rows: readonly Row[], input: PlanInput): FinishedClub[] {
  if (!rows.some((row) => numberOf(row, 'reading') !== undefined && numberOf(row, 'mass') !== undefined)) return [];
  const plan = planSet(input);
  const job = textOf(rows[0] as Row, 'job');
  return lastOfEach(rows).flatMap((row) => {
    const named = plan.clubs.filter(({ name }) => folded(name) === folded(textOf(row, 'club')));
    const [club] = named;
    const arrived = input.clubs.find((each) => each.row === club?.row);
    // of two clubs with one name nobody can tell which was measured
    if (!club || !arrived || named.length > 1) return [];
    const found = finishedClub(club, arrived, measuredOf(row, rows), input);
    return found ? [{ ...found, club: `${club.name} of ${job}` }] : [];
  });
}

export interface ShopCalibration extends CheckInsRead {
  /** null where no club was measured bare and finished. */
  readonly found: Calibration | null;
}

export function calibrateShop(tables: ShopTables): ShopCalibration {
  return drained(calibrateShopSteps(tables));
}

/** {@link calibrateShop} in steps, so that a pane is not kept waiting by a shop's years of check-ins. */
export function* calibrateShopSteps(tables: ShopTables): Generator<Progress, ShopCalibration> {
  const read = yield* readCheckInsSteps(tables);
  const { finished, input } = read;
  if (!input || finished.length === 0) return { ...read, found: null };
  yield { done: 1, of: 1 };
  return { ...read, found: calibrate({ finished, stock: input.stock, settings: input.settings }) };
}

/** What Scale and Settings say of the reference club. */
export interface ScaleSeen {
  readonly readings: number;
  /** Its reading that is known to be right; undefined while Settings does not say. */
  readonly accepted: number | undefined;
  /** null where there is nothing to judge yet. */
  readonly check: Result<ScaleCheck> | null;
}

export function checkScale(tables: ShopTables): ScaleSeen {
  const read = settingValues(tables.Settings && matrixOf(tables.Settings));
  const values = read.ok ? read.value.values : undefined;
  const accepted = numberSetting(values?.get('referenceReads'));
  const divisionPoints = numberSetting(values?.get('scaleDivision')) ?? SCALE_DIVISION_POINTS;
  const readings = tableRows(tables, SCALE).flatMap((row): ReferenceReading[] => {
    const day = numberOf(row, 'date');
    const points = numberOf(row, 'reading');
    return day === undefined || points === undefined ? [] : [{ day: Math.floor(day), points }];
  });
  const judged = accepted !== undefined && readings.length > 0;
  return {
    readings: readings.length,
    accepted,
    check: judged ? scaleCheck(readings, { accepted, divisionPoints }) : null,
  };
}

function numberSetting(value: unknown): number | undefined {
  return typeof value === 'number' ? value : undefined;
}
