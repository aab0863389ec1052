/** How many layers go under a grip and what it will measure. */
import { LOWER_GAUGE_INCHES, MOST_LAYERS, TIGHT_CORE_INCHES, UPPER_GAUGE_INCHES } from '../constants';
import { additiveDiameter, fillingLayers, seatInches, volumeDiameter, type Seating } from '../fit/diameter';
import { nearestLayers } from '../fit/layers';
import type { Club, Diameter, Grip, Note, ShopSettings } from './types';

export interface Sizing {
  readonly layers: number;
  readonly solved: boolean;
  readonly upper: Diameter | undefined;
  readonly lower: Diameter | undefined;
  readonly notes: readonly Note[];
}

/** Settles layers (given, else solved from the target, else none) and gauges both hands. */
export function sizing(club: Club, grip: Grip, settings: ShopSettings): Sizing {
  const notes: Note[] = [];
  const { layers, solved } = settleLayers(club, grip, settings, notes);
  const { buttInches: butt } = club;
  const { coreInches: core } = grip;
  if (butt === undefined || core === undefined) {
    notes.push({ note: 'sizeUnknown' });
    return { layers, solved, upper: undefined, lower: undefined, notes };
  }
  const thickness = settings.buildUp.thicknessInches;
  const filling = fillingLayers(core, butt, thickness);
  if (layers < filling) {
    notes.push({ note: 'looseCore', coreInches: core, buttInches: butt, layers: filling });
    return { layers, solved, upper: undefined, lower: undefined, notes };
  }
  // .630 − .600 is .030000000000000027
  if (butt - core > TIGHT_CORE_INCHES + 1e-9) notes.push({ note: 'tightCore', coreInches: core, buttInches: butt });
  const lowerButt = butt - (club.taperPerInch ?? 0) * (LOWER_GAUGE_INCHES - UPPER_GAUGE_INCHES);
  return {
    layers,
    solved,
    upper: gauge(grip.upperInches, core, seatInches(butt, layers, thickness), settings),
    lower: gauge(grip.lowerInches, core, seatInches(lowerButt, layers + club.lowerLayers, thickness), settings),
    notes,
  };
}

function settleLayers(
  club: Club,
  grip: Grip,
  settings: ShopSettings,
  notes: Note[],
): { layers: number; solved: boolean } {
  if (club.layers !== undefined) return { layers: club.layers, solved: false };
  const { targetInches, buttInches } = club;
  if (targetInches === undefined) return { layers: 0, solved: false };
  if (buttInches === undefined || grip.coreInches === undefined || grip.upperInches === undefined) {
    // sizeUnknown is noted by the caller where butt or core is missing
    if (buttInches !== undefined && grip.coreInches !== undefined) notes.push({ note: 'sizeUnknown' });
    return { layers: 0, solved: false };
  }
  const found = nearestLayers({
    gripInches: grip.upperInches,
    coreInches: grip.coreInches,
    buttInches,
    targetInches,
    growth: settings.growth,
    thicknessInches: settings.buildUp.thicknessInches,
  });
  if (!found.ok) {
    // a core that twelve layers do not fill is loose, which the caller notes; a larger grip would not help
    const fills = fillingLayers(grip.coreInches, buttInches, settings.buildUp.thicknessInches) <= MOST_LAYERS;
    if (fills) notes.push({ note: 'tooManyLayers', targetInches, most: MOST_LAYERS });
    return { layers: MOST_LAYERS, solved: true };
  }
  if (found.value.over) {
    notes.push({ note: 'overTarget', inches: found.value.inches, targetInches, layers: found.value.layers });
  }
  return { layers: found.value.layers, solved: true };
}

/** The diameter by the shop's estimator, with the range between both. */
function gauge(
  gripInches: number | undefined,
  core: number,
  seat: number,
  settings: ShopSettings,
): Diameter | undefined {
  if (gripInches === undefined) return undefined;
  const seating: Seating = { gripInches, coreInches: core, seatInches: seat };
  const byVolume = volumeDiameter(seating);
  const additive = additiveDiameter(seating);
  return {
    inches: settings.growth === 'additive' ? additive : byVolume,
    lowInches: Math.min(byVolume, additive),
    highInches: Math.max(byVolume, additive),
  };
}
