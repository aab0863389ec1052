/** What a shop's check-ins tell about its own constants, and its reference club about its scale. Pure. */
import {
  calibrate,
  finishedClub,
  scaleCheck,
  type Calibration,
  type FinishedClub,
  type PlanInput,
  type ReferenceReading,
  type Result,
  type ScaleCheck,
  type SetPlan,
} from '../core/index';
import { latestRows, planJob, roundOf } from './benchJob';
import { folded } from './headings';
import { settingValues } from './readSettings';
import type { Row } from './records';
import { CHECKIN, SCALE_DIVISION_POINTS } from './schema';
import { matrixOf, type ShopTables } from './shop';
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
 * Clubs of all jobs that were judged at the check-in. Of a club that was judged more than once the last row counts: what its plan says
 * went on by then.
 */
export function readCheckIns(tables: ShopTables): CheckInsRead {
  const judged = tableRows(tables, CHECKIN).filter((row) => textOf(row, 'standing') !== '');
  const byJob = new Map<string, Row[]>();
  for (const row of judged) {
    const job = folded(textOf(row, 'job'));
    byJob.set(job, [...(byJob.get(job) ?? []), row]);
  }
  const finished: FinishedClub[] = [];
  let without = 0;
  let input: PlanInput | null = null;
  for (const rows of byJob.values()) {
    const job = textOf(rows[0] as Row, 'job');
    const planned = planJob(tables, job);
    const found = planned?.ok ? finishedOf(rows, planned.value.plan, planned.value.input, job) : [];
    finished.push(...found);
    without += lastOfEach(rows).length - found.length;
    if (planned?.ok) ({ input } = planned.value);
  }
  return { finished, without, input };
}

/** One row of each club: of its last round, and of several there the last one. */
function lastOfEach(rows: readonly Row[]): Row[] {
  return [...new Map(latestRows(rows).map((row) => [folded(textOf(row, 'club')), row])).values()];
}

function finishedOf(rows: readonly Row[], plan: SetPlan, input: PlanInput, job: string): FinishedClub[] {
  return lastOfEach(rows).flatMap((row) => {
    const named = plan.clubs.filter(({ name }) => folded(name) === folded(textOf(row, 'club')));
    const [club] = named;
    const arrived = input.clubs.find((each) => each.row === club?.row);
    // of two clubs with one name nobody can tell which was measured
    if (!club || !arrived || named.length > 1) return [];
    const measured = {
      bareReading: numberOf(row, 'bareReading'),
      bareGrams: numberOf(row, 'bareMass'),
      reading: numberOf(row, 'reading'),
      massGrams: numberOf(row, 'mass'),
      onGrams: numberOf(row, 'weightOn'),
      isAgain: roundOf(row) > 1,
    };
    const found = finishedClub(club, arrived, measured, input);
    return found ? [{ ...found, club: `${club.name} of ${job}` }] : [];
  });
}

export interface ShopCalibration extends CheckInsRead {
  /** null where no club was measured bare and finished. */
  readonly found: Calibration | null;
}

export function calibrateShop(tables: ShopTables): ShopCalibration {
  const read = readCheckIns(tables);
  const { finished, input } = read;
  if (!input || finished.length === 0) return { ...read, found: null };
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
