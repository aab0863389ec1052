/** Which grips of the stock reach a size wanted, and with how many layers. */
import { CALLIPER_DIVISION_INCHES, MOST_LAYERS } from '../constants';
import { fittedGrams } from '../grip/mass';
import { newFitted } from '../plan/oldGrip';
import { lowerTape } from '../plan/shift';
import { layersFor, measuresOn } from '../plan/size';
import type { ClubKind, Diameter, Grip, ShopSettings } from '../plan/types';
import { coreFit, suits } from './fits';

/** A size wanted on one butt. */
export interface ReachAsk {
  /** Outside diameter under the upper hand. */
  readonly targetInches: number;
  readonly buttInches: number;
  readonly taperPerInch?: number | undefined;
  /** Extra layers under the lower hand. */
  readonly lowerLayers: number;
  /** undefined: grips for any club are tried. */
  readonly kind?: ClubKind | undefined;
  readonly stock: readonly Grip[];
  readonly settings: ShopSettings;
}

/** A moulded size with the layers that bring it nearest to the target. */
export interface Reaching {
  readonly grip: Grip;
  readonly layers: number;
  readonly upper: Diameter;
  /** undefined: the grip's lower diameter is not known. */
  readonly lower: Diameter | undefined;
  /** Grip and build-up tape, lower-hand layers included; undefined: the grip's mass is not known. */
  readonly fittedGrams: number | undefined;
  /** Measured less wanted. */
  readonly errorInches: number;
}

export interface Reached {
  /** Within the shop's size tolerance, best first. */
  readonly found: readonly Reaching[];
  /** What comes nearest where nothing is found. */
  readonly nearest: Reaching | undefined;
  /** Why nothing is found. */
  readonly why: 'noStock' | 'none' | undefined;
}

/**
 * Grips of the stock that reach a size on a butt, each with the layers and the numbers that a plan of it shows.
 *
 * Every grip is tried with the layers that come nearest; its core is filled first. Left out are grips for other clubs, cores that
 * are a tight stretch, and grips that cannot be gauged. Best first: what is on hand before what is not, then fewest layers, then least error (to what a calliper tells
 * apart), then lightest: within the tolerance all are the right size, and tape is work. Source: *practice* for the order.
 */
export function reaching(ask: ReachAsk): Reached {
  if (ask.stock.length === 0) return { found: [], nearest: undefined, why: 'noStock' };
  const tried = ask.stock.flatMap((grip) => triedOn(grip, ask) ?? []).sort(bestFirst);
  const found = tried.filter(({ fits }) => fits).map(({ reach }) => reach);
  return found.length > 0
    ? { found, nearest: undefined, why: undefined }
    : { found, nearest: tried[0]?.reach, why: 'none' };
}

interface Tried {
  readonly reach: Reaching;
  /** Within tolerance with no more layers than the shop builds up. */
  readonly fits: boolean;
}

function triedOn(grip: Grip, ask: ReachAsk): Tried | undefined {
  const { targetInches, buttInches, taperPerInch, lowerLayers, settings } = ask;
  if (ask.kind !== undefined && !suits(grip, ask.kind)) return undefined;
  if (coreFit(grip, buttInches, settings) !== 'fits') return undefined;
  const solved = layersFor(grip, { buttInches, targetInches }, settings);
  const found = solved.ok ? solved.value.layers : MOST_LAYERS;
  const layers = Math.min(found, settings.mostLayers);
  const { upper, lower } = measuresOn(grip, { buttInches, layers, lowerLayers, taperPerInch }, settings);
  if (!upper) return undefined;
  const fresh = newFitted(grip, layers, settings);
  const tape = lowerTape({ lowerLayers }, fresh, settings);
  const errorInches = upper.inches - targetInches;
  return {
    reach: {
      grip,
      layers,
      upper,
      lower,
      fittedGrams:
        fresh.gripGrams === undefined ? undefined : fittedGrams(fresh.gripGrams, layers, fresh.layerGrams) + tape.grams,
      errorInches,
    },
    fits: solved.ok && Math.abs(errorInches) <= settings.sizeToleranceInches + 1e-9,
  };
}

function bestFirst({ reach: one }: Tried, { reach: other }: Tried): number {
  const divisions = ({ errorInches }: Reaching): number => Math.round(Math.abs(errorInches) / CALLIPER_DIVISION_INCHES);
  const none = ({ grip }: Reaching): number => (grip.onHand === 0 ? 1 : 0);
  const grams = (reach: Reaching): number => reach.fittedGrams ?? Number.MAX_VALUE;
  return (
    none(one) - none(other) ||
    one.layers - other.layers ||
    divisions(one) - divisions(other) ||
    grams(one) - grams(other)
  );
}
