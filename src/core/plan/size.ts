/** How many layers go under a grip and what it will measure. */
import { LOWER_GAUGE_INCHES, MOST_LAYERS, UPPER_GAUGE_INCHES } from '../constants';
import { diameterFrom, fillingLayers, isTightCore, seatInches, type Gauged } from '../fit/diameter';
import { nearestLayers, type Found } from '../fit/layers';
import { fail, type Result } from '../result';
import type { Club, Diameter, Grip, Note, ShopSettings } from './types';

/** What a grip is put on. */
export interface Seat {
  readonly buttInches: number;
  readonly layers: number;
  /** Layers under the lower hand beside those that run the whole length. */
  readonly lowerLayers?: number;
  readonly taperPerInch?: number | undefined;
}

/** What a grip measures on a seat. */
export interface Measures {
  readonly upper: Diameter | undefined;
  readonly lower: Diameter | undefined;
  /** Fewest layers that fill the core; undefined where the core is not known. With fewer it turns, and measures nothing. */
  readonly filling: number | undefined;
}

export interface Sizing {
  readonly layers: number;
  readonly solved: boolean;
  readonly upper: Diameter | undefined;
  readonly lower: Diameter | undefined;
  readonly notes: readonly Note[];
}

/** The seat that a shop gauged a fitted grip on: the butt, or one of the core's size, and the layers that were under it. */
export function fittedSeatInches(grip: Grip, settings: ShopSettings): number | undefined {
  const butt = grip.fittedButtInches ?? grip.coreInches;
  return butt === undefined ? undefined : seatInches(butt, grip.fittedLayers ?? 0, settings.buildUp.thicknessInches);
}

/** What is known of a grip's diameter under a hand: the shop's own reading of one that was fitted, else the catalogue's. */
export function gaugedOf(grip: Grip, hand: 'upper' | 'lower', settings: ShopSettings): Gauged | undefined {
  const fitted = hand === 'upper' ? grip.fittedUpperInches : grip.fittedLowerInches;
  const seat = fittedSeatInches(grip, settings);
  if (fitted !== undefined && seat !== undefined && isFittedOn(grip, fitted, seat)) {
    return { inches: fitted, seatInches: seat };
  }
  const catalogue = hand === 'upper' ? grip.upperInches : grip.lowerInches;
  if (catalogue === undefined || grip.coreInches === undefined) return undefined;
  return { inches: catalogue, seatInches: grip.coreInches };
}

/** Whether a fitted reading can be true: it is more than what is under the grip, which fills its core. Where Stock is read, others are told. */
function isFittedOn({ coreInches }: Grip, fittedInches: number, seat: number): boolean {
  return fittedInches > seat && (coreInches === undefined || fillingLayers(coreInches, seat) === 0);
}

/**
 * What a grip measures on a butt with so many layers, under the upper hand and the lower.
 *
 * Formula: {@link diameterFrom} from what is known of the grip; nothing where the core is not filled. Inches.
 */
export function measuresOn(grip: Grip, seat: Seat, settings: ShopSettings): Measures {
  const { buttInches, layers, lowerLayers = 0, taperPerInch = 0 } = seat;
  const thickness = settings.buildUp.thicknessInches;
  const filling = grip.coreInches === undefined ? undefined : fillingLayers(grip.coreInches, buttInches, thickness);
  if (filling !== undefined && layers < filling) return { upper: undefined, lower: undefined, filling };
  const lowerButt = buttInches - taperPerInch * (LOWER_GAUGE_INCHES - UPPER_GAUGE_INCHES);
  const at = (hand: 'upper' | 'lower', butt: number, count: number): Diameter | undefined => {
    const gauged = gaugedOf(grip, hand, settings);
    return gauged && ranged(gauged, seatInches(butt, count, thickness), settings);
  };
  return { upper: at('upper', buttInches, layers), lower: at('lower', lowerButt, layers + lowerLayers), filling };
}

/**
 * Whole layers that bring a grip nearest to a target diameter under the upper hand.
 *
 * @returns what {@link nearestLayers} finds; `blank` where neither core and diameter nor a fitted reading are known
 */
export function layersFor(
  grip: Grip,
  on: { readonly buttInches: number; readonly targetInches: number },
  settings: ShopSettings,
): Result<Found> {
  const gauged = gaugedOf(grip, 'upper', settings);
  if (!gauged) return fail({ code: 'blank', field: grip.coreInches === undefined ? 'coreInches' : 'upperInches' });
  return nearestLayers({
    gripInches: gauged.inches,
    gaugedOnInches: gauged.seatInches,
    coreInches: grip.coreInches,
    ...on,
    growth: settings.growth,
    thicknessInches: settings.buildUp.thicknessInches,
  });
}

/** Settles layers (those asked for, else solved from the target, else none) and gauges both hands. */
export function sizing(club: Club, grip: Grip, settings: ShopSettings, asked: number | undefined): Sizing {
  const notes: Note[] = [];
  const { layers, solved } = settleLayers(club, grip, settings, asked, notes);
  const { buttInches, taperPerInch, lowerLayers } = club;
  const { coreInches } = grip;
  const gaugeable = coreInches !== undefined || gaugedOf(grip, 'upper', settings) || gaugedOf(grip, 'lower', settings);
  if (buttInches === undefined || !gaugeable) {
    notes.push(sizeUnknown(asked === undefined ? club.targetInches : undefined));
    return { layers, solved, upper: undefined, lower: undefined, notes };
  }
  const { upper, lower, filling } = measuresOn(grip, { buttInches, layers, lowerLayers, taperPerInch }, settings);
  if (coreInches !== undefined && filling !== undefined) {
    if (layers < filling) notes.push({ note: 'looseCore', coreInches, buttInches, layers: filling });
    else if (isTightCore(coreInches, buttInches)) notes.push({ note: 'tightCore', coreInches, buttInches });
  }
  return { layers, solved, upper, lower, notes };
}

function sizeUnknown(targetInches: number | undefined): Note {
  return { note: 'sizeUnknown', ...(targetInches !== undefined && { targetInches }) };
}

function settleLayers(
  club: Club,
  grip: Grip,
  settings: ShopSettings,
  asked: number | undefined,
  notes: Note[],
): { layers: number; solved: boolean } {
  if (asked !== undefined) return { layers: asked, solved: false };
  const { targetInches, buttInches } = club;
  if (targetInches === undefined) return { layers: 0, solved: false };
  if (buttInches === undefined || !gaugedOf(grip, 'upper', settings)) {
    // sizeUnknown is noted by the caller where butt or core is missing
    if (buttInches !== undefined && grip.coreInches !== undefined) notes.push(sizeUnknown(targetInches));
    return { layers: 0, solved: false };
  }
  const found = layersFor(grip, { buttInches, targetInches }, settings);
  if (!found.ok) {
    // a core that twelve layers do not fill is loose, which the caller notes; a larger grip would not help
    const filling = measuresOn(grip, { buttInches, layers: MOST_LAYERS }, settings).filling ?? 0;
    if (filling <= MOST_LAYERS) notes.push({ note: 'tooManyLayers', targetInches, most: MOST_LAYERS });
    return { layers: MOST_LAYERS, solved: true };
  }
  // The grip that is the right size within the shop's tolerance is not to be changed for a smaller one.
  if (found.value.over && found.value.inches - targetInches > settings.sizeToleranceInches + 1e-9) {
    notes.push({ note: 'overTarget', inches: found.value.inches, targetInches, layers: found.value.layers });
  }
  return { layers: found.value.layers, solved: true };
}

/** The diameter by the shop's estimator, with the range between both. */
function ranged(gauged: Gauged, seat: number, settings: ShopSettings): Diameter {
  const byVolume = diameterFrom('volume', gauged, seat);
  const additive = diameterFrom('additive', gauged, seat);
  return {
    inches: settings.growth === 'additive' ? additive : byVolume,
    lowInches: Math.min(byVolume, additive),
    highInches: Math.max(byVolume, additive),
  };
}
