/** From a checked-in club to what calibration needs of it. */
import { asFitted } from '../bench/asFitted';
import { shelfOf } from '../bench/expected';
import { newFitted } from '../plan/oldGrip';
import type { Club, ClubPlan, PlanInput } from '../plan/types';
import type { FinishedClub } from './types';

/** What was measured of a club, as far as it was. */
export interface Measurements {
  readonly bareReading?: number | undefined;
  readonly bareGrams?: number | undefined;
  readonly reading?: number | undefined;
  readonly massGrams?: number | undefined;
  /** All the weight that is on for its reading, where that is not as planned. */
  readonly onGrams?: number | undefined;
  /** It was done once more. */
  readonly isAgain?: boolean | undefined;
}

/**
 * A club as calibration takes it: what was planned went on, with the weight that the bench says it has.
 *
 * @param plan the club as planned and fitted
 * @param club as it arrived; its bare measurements serve where the check-in has none
 * @param measured at the check-in
 * @returns undefined where it was not read and weighed bare and finished
 */
export function finishedClub(
  planned: ClubPlan,
  arrived: Club,
  measured: Measurements,
  input: PlanInput,
): FinishedClub | undefined {
  const { settings } = input;
  const { plan, club } = asFitted(planned, arrived, measured, shelfOf(input));
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
