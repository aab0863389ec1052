/** From a checked-in club to what calibration needs of it. */
import { asFitted, isGripKnown, type Fitting } from '../bench/asFitted';
import { shelfOf } from '../bench/expected';
import { newFitted } from '../plan/oldGrip';
import type { Club, ClubPlan, PlanInput } from '../plan/types';
import type { FinishedClub } from './types';

/** What was measured of a club, as far as it was, and what went on. */
export interface Measurements extends Fitting {
  readonly reading?: number | undefined;
  readonly massGrams?: number | undefined;
}

/**
 * A club as calibration takes it: grip, layers and weight went on as the bench says, else as planned. A plan made later chooses other ones,
 * by the very constants that are to be found, so what was fitted is kept when a check-in is begun.
 *
 * @param plan the club as planned and fitted
 * @param club as it arrived; its bare measurements serve where the check-in has none
 * @param measured at the check-in
 * @returns undefined where it was not read and weighed bare and finished, or where Stock has its grip no more
 */
export function finishedClub(
  planned: ClubPlan,
  arrived: Club,
  measured: Measurements,
  input: PlanInput,
): FinishedClub | undefined {
  const { settings } = input;
  const shelf = shelfOf(input);
  if (!isGripKnown(measured, shelf)) return undefined;
  const { plan, club } = asFitted(planned, arrived, measured, shelf);
  const { grip, remedy } = plan;
  const bareReading = measured.bareReading ?? club.bareReading;
  const bareGrams = measured.bareGrams ?? club.bareGrams;
  const { reading, massGrams } = measured;
  if (
    !grip ||
    bareReading === undefined ||
    bareGrams === undefined ||
    reading === undefined ||
    massGrams === undefined
  ) {
    return undefined;
  }
  const fresh = newFitted(grip, plan.layers, settings);
  return {
    club: plan.name,
    item: grip.item,
    bareReading,
    bareGrams,
    reading,
    massGrams,
    gripGrams: club.newGripGrams,
    gripInches: grip.lengthInches,
    capInches: grip.capInches,
    tapedInches: fresh.tapedInches,
    layers: plan.layers,
    lowerLayers: club.lowerLayers,
    lowerStartInches: settings.lowerTapeStartInches,
    twoWayGrams: fresh.twoWayGrams,
    addedGrams: remedy?.grams ?? 0,
    addedInches: remedy?.inches ?? 0,
    lengthChangeInches: club.lengthChangeInches,
    plugGrams: club.plugGrams,
  };
}
