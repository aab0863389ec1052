/** What a grip and the tape under it weigh. */
import { GRIP_BALANCE_RATIO, STRIP_WIDTH, TAPED_LENGTH, TAPE_GSM } from '../constants';
import { SQUARE_METRES_PER_SQUARE_INCH } from '../units';

/**
 * Mass of one layer of tape, in grams: taped length × strip width × mass per area.
 *
 * Source: geometry; defaults 10.5 in × 2 in × 130 g/m² (mass per area from *memory*: weigh ten strips).
 *
 * @param tapedInches how far the strip runs along the shaft
 * @param stripInches how wide it is
 * @param gsm mass per area in g/m²
 * @example tapeGrams() //=> 1.761
 */
export function tapeGrams(
  tapedInches = TAPED_LENGTH.value,
  stripInches = STRIP_WIDTH.value,
  gsm = TAPE_GSM.value,
): number {
  return tapedInches * stripInches * SQUARE_METRES_PER_SQUARE_INCH * gsm;
}

/**
 * Mass per area of a tape from one strip on a scale, in g/m²: grams / (length × width).
 *
 * Source: geometry; {@link tapeGrams} the other way round.
 *
 * @param grams what one strip weighed
 * @param stripLengthInches how long it was
 * @param stripInches how wide it is
 * @example tapeGsm(1.761, 10.5, 2) //=> 129.98
 */
export function tapeGsm(grams: number, stripLengthInches: number, stripInches: number): number {
  return grams / (stripLengthInches * stripInches * SQUARE_METRES_PER_SQUARE_INCH);
}

/**
 * Mass of grip and build-up tape as fitted, in grams: `grip + n × layer`. The two-way strip is counted apart.
 *
 * @param gripGrams the loose grip
 * @param layers build-up layers under it
 * @param layerGrams mass of one layer
 * @example fittedGrams(50, 2) //=> 53.522
 */
export function fittedGrams(gripGrams: number, layers: number, layerGrams = tapeGrams()): number {
  return gripGrams + layers * layerGrams;
}

/**
 * Where a grip balances when nobody tried, in inches from its cap: 0.40 of its length (*practice*).
 *
 * @param lengthInches length of the grip
 * @param ratio what part of its length, where a shop found its own
 * @example gripBalance(10.5) //=> 4.2
 */
export function gripBalance(lengthInches: number, ratio = GRIP_BALANCE_RATIO): number {
  return ratio * lengthInches;
}
