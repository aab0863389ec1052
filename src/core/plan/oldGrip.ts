/** What is known of the grip that a club arrived with. */
import { GRIP_BALANCE, WEIGHED_SPREAD_GRAMS } from '../constants';
import { gripBalance, tapeGrams } from '../grip/mass';
import type { Club, Grip, ShopSettings } from './types';

/** A grip with its tape as it sits on a club; `gripGrams` undefined where nobody knows. */
export interface Fitted {
  readonly gripGrams: number | undefined;
  readonly gripSpreadGrams: number;
  readonly balanceInches: number;
  readonly capInches: number;
  readonly tapedInches: number;
  readonly layers: number;
  readonly layerGrams: number;
  readonly twoWayGrams: number;
}

/** The old grip: what the row says, else what Stock says of the item, else the shop's habit. */
export function oldFitted(club: Club, stock: ReadonlyMap<string, Grip>, settings: ShopSettings): Fitted {
  const known = club.oldItem === undefined ? undefined : stock.get(club.oldItem.toLowerCase());
  const tapedInches = known?.lengthInches ?? settings.tapedInches;
  return {
    gripGrams: club.oldGripGrams ?? known?.gripGrams,
    gripSpreadGrams: isWeighed(club) ? WEIGHED_SPREAD_GRAMS : settings.oldSpreadGrams,
    balanceInches:
      club.oldBalanceInches ??
      known?.balanceInches ??
      (known?.lengthInches === undefined ? GRIP_BALANCE.value : gripBalance(known.lengthInches)),
    capInches: club.oldCapInches ?? known?.capInches ?? settings.capInches,
    tapedInches,
    layers: club.oldLayers,
    layerGrams: stripGrams(tapedInches, settings.buildUp),
    twoWayGrams: stripGrams(tapedInches, settings.twoWay),
  };
}

/** Whether the old grip came off whole and was put on a scale. */
export function isWeighed(club: Club): boolean {
  return club.oldGripWeighed && club.oldGripGrams !== undefined;
}

/** The new grip with so many layers under it. */
export function newFitted(grip: Grip, layers: number, settings: ShopSettings): Fitted {
  const tapedInches = grip.lengthInches ?? settings.tapedInches;
  return {
    gripGrams: grip.gripGrams,
    gripSpreadGrams: grip.spreadGrams ?? settings.newSpreadGrams,
    balanceInches:
      grip.balanceInches ?? (grip.lengthInches === undefined ? GRIP_BALANCE.value : gripBalance(grip.lengthInches)),
    capInches: grip.capInches ?? settings.capInches,
    tapedInches,
    layers,
    layerGrams: stripGrams(tapedInches, settings.buildUp),
    twoWayGrams: settings.twoWayUnderNew ? stripGrams(tapedInches, settings.twoWay) : 0,
  };
}

function stripGrams(tapedInches: number, tape: ShopSettings['buildUp']): number {
  return tapeGrams(tapedInches, tape.stripInches, tape.gsm);
}
