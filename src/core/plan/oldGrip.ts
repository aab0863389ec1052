/** What is known of the grip that a club arrived with. */
import { TAPED_LENGTH, TRIED_BALANCE_SPREAD_INCHES, WEIGHED_SPREAD_GRAMS } from '../constants';
import { gripBalance, tapeGrams } from '../grip/mass';
import type { Club, Grip, OldMassFrom, ShopSettings } from './types';

/** A grip with its tape as it sits on a club; `gripGrams` undefined where nobody knows. */
export interface Fitted {
  readonly gripGrams: number | undefined;
  readonly gripSpreadGrams: number;
  readonly balanceInches: number;
  readonly balanceSpreadInches: number;
  readonly capInches: number;
  /** Whether that is the cap of this grip, not the shop's usual one. */
  readonly capKnown: boolean;
  readonly tapedInches: number;
  readonly layers: number;
  readonly layerGrams: number;
  readonly twoWayGrams: number;
}

/** The old grip: what the row says, else what Stock says of the item, else the shop's habit. */
export function oldFitted(club: Club, stock: ReadonlyMap<string, Grip>, settings: ShopSettings): Fitted {
  const known = club.oldItem === undefined ? undefined : stock.get(club.oldItem.toLowerCase());
  const tapedInches = known?.lengthInches ?? settings.tapedInches;
  const capInches = club.oldCapInches ?? known?.capInches;
  return {
    gripGrams: club.oldGripGrams ?? known?.gripGrams,
    gripSpreadGrams: oldSpreadGrams(club, known, settings),
    balanceInches: club.oldBalanceInches ?? known?.balanceInches ?? untriedBalance(known?.lengthInches, settings),
    balanceSpreadInches: balanceSpreadInches(isOldBalanceTried(club, known), settings),
    capInches: capInches ?? settings.capInches,
    capKnown: capInches !== undefined,
    tapedInches,
    layers: club.oldLayers,
    layerGrams: stripGrams(tapedInches, settings.buildUp),
    twoWayGrams: stripGrams(tapedInches, settings.twoWay),
  };
}

/** Where the old grip's mass comes from; without a mass of its own a club has the catalogue's. */
export function massFrom(club: Club): OldMassFrom {
  return club.oldGripGrams === undefined ? 'estimate' : club.oldMassFrom;
}

/** ± of the old grip's mass. One like another's is as sure as its model scatters, and never surer than a weighed one. */
function oldSpreadGrams(club: Club, known: Grip | undefined, settings: ShopSettings): number {
  switch (massFrom(club)) {
    case 'weighed':
      return WEIGHED_SPREAD_GRAMS;
    case 'alike':
      return Math.max(WEIGHED_SPREAD_GRAMS, settings.newSpreadGrams, known?.spreadGrams ?? 0);
    case 'estimate':
      return settings.oldSpreadGrams;
  }
}

/** The new grip with so many layers under it; the very grip that goes on may have been weighed. */
export function newFitted(grip: Grip, layers: number, settings: ShopSettings, weighedGrams?: number): Fitted {
  const tapedInches = grip.lengthInches ?? settings.tapedInches;
  return {
    gripGrams: weighedGrams ?? grip.gripGrams,
    gripSpreadGrams: weighedGrams === undefined ? (grip.spreadGrams ?? settings.newSpreadGrams) : WEIGHED_SPREAD_GRAMS,
    balanceInches: grip.balanceInches ?? untriedBalance(grip.lengthInches, settings),
    balanceSpreadInches: balanceSpreadInches(grip.balanceInches !== undefined, settings),
    capInches: grip.capInches ?? settings.capInches,
    capKnown: grip.capInches !== undefined,
    tapedInches,
    layers,
    layerGrams: stripGrams(tapedInches, settings.buildUp),
    twoWayGrams: settings.twoWayUnderNew ? stripGrams(tapedInches, settings.twoWay) : 0,
  };
}

/** Where a grip balances that nobody tried; one whose length is not known is taken for a usual one. */
export function untriedBalance(lengthInches: number | undefined, { gripBalanceRatio }: ShopSettings): number {
  return gripBalance(lengthInches ?? TAPED_LENGTH.value, gripBalanceRatio);
}

/** Whether somebody tried where the old grip balances. What the row says of one like another's was reckoned from two readings instead. */
function isOldBalanceTried(club: Club, known: Grip | undefined): boolean {
  if (club.oldBalanceInches !== undefined) return massFrom(club) !== 'alike';
  return known?.balanceInches !== undefined;
}

/** ± of a balance point: one that was tried is never less sure than one that was not. */
function balanceSpreadInches(tried: boolean, settings: ShopSettings): number {
  const untried = settings.balanceSpreadInches;
  return tried ? Math.min(TRIED_BALANCE_SPREAD_INCHES, untried) : untried;
}

function stripGrams(tapedInches: number, tape: ShopSettings['buildUp']): number {
  return tapeGrams(tapedInches, tape.stripInches, tape.gsm);
}
