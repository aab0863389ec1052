/** How many layers of build-up tape bring a grip to a diameter. */
import { MOST_LAYERS, TAPE_THICKNESS } from '../constants';
import { fail, ok, type Result } from '../result';
import { diameterBy, fillingLayers, seatInches, type Estimator } from './diameter';

/** What is to be reached, and with what; inches throughout. */
export interface Wanted {
  /** Outside diameter of the grip on a butt of its own core size, or on `gaugedOnInches`. */
  readonly gripInches: number;
  /** undefined: nobody knows what fills it, so none are needed for that. */
  readonly coreInches: number | undefined;
  /** The seat that `gripInches` was gauged on: a shop's own reading of a fitted grip; undefined: the core. */
  readonly gaugedOnInches?: number | undefined;
  readonly buttInches: number;
  readonly targetInches: number;
  readonly growth?: Estimator;
  readonly stretch?: number;
  readonly thicknessInches?: number;
}

/** Layers found, with what they measure; `over` where even the fewest that fill the core measure more than the target. */
export interface Found {
  readonly layers: number;
  readonly inches: number;
  readonly over: boolean;
}

/**
 * Whole layers that come nearest to a target diameter, never fewer than fill the core; between two equally near, the larger
 * (*practice*: err larger).
 *
 * Formula: the nearest of {@link diameterBy} over 0 to 12 layers. Source: *practice* for the limits.
 *
 * @returns the layers found; `tooManyLayers` where twelve still fall short, `blank` where neither core nor `gaugedOnInches` is known
 * @example nearestLayers({ gripInches: 0.9, coreInches: 0.6, buttInches: 0.6, targetInches: 0.92, growth: 'additive' })
 *   //=> { ok: true, value: { layers: 2, inches: 0.92, over: false } }
 */
export function nearestLayers(wanted: Wanted): Result<Found> {
  const { gripInches, coreInches, buttInches, targetInches, growth = 'volume', stretch } = wanted;
  const thicknessInches = wanted.thicknessInches ?? TAPE_THICKNESS.value;
  const gaugedOn = wanted.gaugedOnInches ?? coreInches;
  if (gaugedOn === undefined) return fail({ code: 'blank', field: 'coreInches' });
  const at = (count: number): number =>
    diameterBy(growth, {
      gripInches,
      coreInches: gaugedOn,
      stretch,
      seatInches: seatInches(buttInches, count, thicknessInches),
    });
  const fewest = coreInches === undefined ? 0 : fillingLayers(coreInches, buttInches, thicknessInches);
  let layers = fewest;
  let inches = at(layers);
  while (layers < MOST_LAYERS) {
    const thicker = at(layers + 1);
    if (Math.abs(thicker - targetInches) > Math.abs(inches - targetInches) + 1e-12) break;
    layers += 1;
    inches = thicker;
  }
  const half = thicknessInches;
  if (layers > MOST_LAYERS || (layers === MOST_LAYERS && targetInches - inches > half)) {
    return fail({ code: 'tooManyLayers', field: 'targetInches', got: targetInches, detail: MOST_LAYERS });
  }
  return ok({ layers, inches, over: layers === fewest && inches - targetInches > half });
}
