/** What moves a reading: another grip, other tape, another length. */
import { BUTT_WEIGHT_INCHES, GRIP_BALANCE, POINT_GRAM_INCHES, TAPED_LENGTH } from '../constants';
import { tapeGrams } from '../grip/mass';
import { massPoints } from './moment';

/** Old and new grip with their layers; masses in grams, positions in inches from the cap. */
export interface Regrip {
  readonly oldGripGrams: number;
  readonly newGripGrams: number;
  readonly oldLayers?: number;
  readonly newLayers?: number;
  readonly oldBalanceInches?: number;
  /** The old one's where it is not given. */
  readonly newBalanceInches?: number;
  readonly layerGrams?: number;
  readonly tapedInches?: number;
}

/**
 * Points by which a regrip moves the reading.
 *
 * Formula: `[m₂ (b₂ − 14) − m₁ (b₁ − 14) + (n₂ − n₁) t (L/2 − 14)] / P`. Source: moments; a layer balances at the middle of the
 * taped length L.
 *
 * @returns points, negative when the club reads lighter
 * @example balanceChange({ oldGripGrams: 50, newGripGrams: 60 }) //=> -1.975
 */
export function balanceChange(regrip: Regrip): number {
  const oldBalance = regrip.oldBalanceInches ?? GRIP_BALANCE.value;
  const newBalance = regrip.newBalanceInches ?? oldBalance;
  const taped = regrip.tapedInches ?? TAPED_LENGTH.value;
  const layer = regrip.layerGrams ?? tapeGrams(taped);
  const layers = (regrip.newLayers ?? 0) - (regrip.oldLayers ?? 0);
  return (
    massPoints(regrip.newGripGrams, newBalance) -
    massPoints(regrip.oldGripGrams, oldBalance) +
    massPoints(layers * layer, taped / 2)
  );
}

/**
 * Points that a longer or shorter club reads more: a thicker cap, an extension or a trim.
 *
 * Formula: `(body × Δ + plug × (x − 14)) / P`: the body moves away from the fulcrum by Δ. Source: moments.
 *
 * @param bodyGrams the club without grip and tape
 * @param addedInches how much longer; negative for a trim
 * @param plugGrams what the extension itself weighs; negative: the piece cut off
 * @param plugInches where that sits, from the cap; 1 in by default
 * @example lengthPoints(374, 0.125) //=> 0.942
 */
export function lengthPoints(
  bodyGrams: number,
  addedInches: number,
  plugGrams = 0,
  plugInches = BUTT_WEIGHT_INCHES,
): number {
  return (bodyGrams * addedInches) / POINT_GRAM_INCHES + massPoints(plugGrams, plugInches);
}
