/** The outside diameter a grip will measure on a butt with tape under it. */
import { CALLIPER_DIVISION_INCHES, TAPE_THICKNESS, TIGHT_CORE_INCHES } from '../constants';
import { fail, ok, type Result } from '../result';

/** How build-up shows outside: rubber keeps its volume (the low estimate), or every thousandth shows (the high one). */
export type Estimator = 'volume' | 'additive';

/** A grip on its seat; inches throughout. */
export interface Seating {
  /** Outside diameter of the grip on a butt of its own core size. */
  readonly gripInches: number;
  readonly coreInches: number;
  /** Bare butt and build-up at the gauge point. */
  readonly seatInches: number;
  /** Length of the grip as fitted over its own length. */
  readonly stretch?: number;
}

/**
 * Diameter of the seat at the gauge point: `butt + 2 × thickness × layers`. The two-way strip is part of the stated size (*practice*).
 *
 * Source: build-up tape is 0.005 in thick, D. Eagar, "Grip Sizing", 2009.
 *
 * @example seatInches(0.58, 4) //=> 0.62
 */
export function seatInches(buttInches: number, layers: number, thicknessInches = TAPE_THICKNESS.value): number {
  return buttInches + 2 * thicknessInches * layers;
}

/**
 * Outside diameter where rubber keeps its volume: `√((D² − d²)/λ + s²)`: the low estimate of build-up.
 *
 * Source: volume of a tube, incompressible rubber.
 *
 * @example volumeDiameter({ gripInches: 0.9, coreInches: 0.58, seatInches: 0.6 }) //=> 0.9130
 */
export function volumeDiameter({ gripInches, coreInches, seatInches: seat, stretch = 1 }: Seating): number {
  return Math.sqrt((gripInches * gripInches - coreInches * coreInches) / stretch + seat * seat);
}

/**
 * Outside diameter where every thousandth under the grip shows outside: `√((D² − d²)/λ + d²) + (s − d)`: the high estimate.
 *
 * Source: the shop rule of D. Eagar, "Grip Sizing", 2009 (.900 on +.020 gives .920).
 *
 * @example additiveDiameter({ gripInches: 0.9, coreInches: 0.58, seatInches: 0.6 }) //=> 0.92
 */
export function additiveDiameter({ gripInches, coreInches, seatInches: seat, stretch = 1 }: Seating): number {
  return volumeDiameter({ gripInches, coreInches, seatInches: coreInches, stretch }) + (seat - coreInches);
}

/** The grip that a layer is reckoned on where none is chosen yet: a usual standard one on a butt of its own core (*practice*). */
const USUAL_GRIP = { gripInches: 0.9, coreInches: 0.6 } as const;

/**
 * What one layer of build-up adds to the outside diameter of a usual grip, in inches: less than to the seat where rubber keeps its volume.
 *
 * Formula: half of what two layers add by {@link diameterBy}. Source: as the estimators.
 *
 * @example layerOutside('volume') //=> 0.0067
 * @example layerOutside('additive') //=> 0.01
 */
export function layerOutside(growth: Estimator, thicknessInches = TAPE_THICKNESS.value): number {
  const taped = { ...USUAL_GRIP, seatInches: seatInches(USUAL_GRIP.coreInches, 2, thicknessInches) };
  return (diameterBy(growth, taped) - USUAL_GRIP.gripInches) / 2;
}

/** Outside diameter by the estimator named, unchecked. */
export function diameterBy(growth: Estimator, seating: Seating): number {
  return growth === 'additive' ? additiveDiameter(seating) : volumeDiameter(seating);
}

/** An outside diameter that is known, and the seat under it when it was gauged: the catalogue's on its own core, a shop's own on what it was fitted on. */
export interface Gauged {
  readonly inches: number;
  readonly seatInches: number;
}

/**
 * Outside diameter on a seat, from the one that was gauged on another: `√(D*² + s² − s*²)` by volume, `D* + (s − s*)` additive.
 *
 * On the seat it was gauged on both give what was gauged. Source: volume of a tube, incompressible rubber; the shop rule of
 * D. Eagar, "Grip Sizing", 2009.
 *
 * @param growth which estimator
 * @param gauged the known diameter and its seat, inches
 * @param seatInches bare butt and build-up at the gauge point
 * @example diameterFrom('additive', { inches: 0.93, seatInches: 0.62 }, 0.6) //=> 0.91
 */
export function diameterFrom(growth: Estimator, gauged: Gauged, seatInches: number): number {
  return diameterBy(growth, { gripInches: gauged.inches, coreInches: gauged.seatInches, seatInches });
}

/**
 * Fewest layers that fill a grip's core on a butt.
 *
 * @example fillingLayers(0.62, 0.58) //=> 4
 */
export function fillingLayers(coreInches: number, buttInches: number, thicknessInches = TAPE_THICKNESS.value): number {
  const missing = coreInches - CALLIPER_DIVISION_INCHES - buttInches;
  return Math.max(0, Math.ceil(missing / (2 * thicknessInches) - 1e-9));
}

/** Whether a core is a tight stretch on a butt: more than .030 smaller (*practice*). */
export function isTightCore(coreInches: number, buttInches: number): boolean {
  return buttInches - coreInches > TIGHT_CORE_INCHES + 1e-9; // .630 − .600 is .030000000000000027
}

/**
 * Outside diameter of a grip on its seat, refused where the seat is smaller than the core and the grip would turn.
 *
 * Formula: {@link volumeDiameter} or {@link additiveDiameter}.
 *
 * @param growth which estimator
 * @param layers the layers already counted in the seat, so that a refusal can say how many fill the core
 * @returns inches at the gauge point; `looseCore` with the layers needed as detail
 */
export function outsideDiameter(
  growth: Estimator,
  seating: Seating,
  layers = 0,
  thicknessInches = TAPE_THICKNESS.value,
): Result<number> {
  const missing = fillingLayers(seating.coreInches, seating.seatInches, thicknessInches);
  if (missing > 0) {
    return fail({ code: 'looseCore', field: 'coreInches', got: seating.coreInches, detail: layers + missing });
  }
  return ok(diameterBy(growth, seating));
}
