/** Which grips are tried on a set, and why the others are not. */
import { CALLIPER_DIVISION_INCHES } from '../constants';
import { keyed } from '../plan/planSet';
import { countNeeded, groupedBy } from '../plan/together';
import type { Club, Grip, PlanInput, ShopSettings } from '../plan/types';
import { coreFit, matchCores, modelKey, sizeKey, suits } from './fits';
import type { Candidate, Filters, NotTried } from './types';

export interface Candidates {
  readonly candidates: readonly Candidate[];
  readonly notTried: readonly NotTried[];
}

/**
 * Every item of stock alone, then every size of a model whose core follows the butts where that takes more than one item.
 *
 * An item that goes on some butts only is not tried alone; where it is part of a matched candidate it is not listed as left out.
 * A filter lets through only what is known to pass it; an item that nobody counted passes `onHandOnly`.
 */
export function candidatesOf(input: PlanInput, filters: Filters): Candidates {
  const { clubs, settings } = input;
  if (clubs.length === 0) return { candidates: [], notTried: [] };
  const stock = [...keyed(input.stock, ({ item }) => item).values()];
  const passes = filterOf(filters);
  const why = new Map<Grip, NotTried>();
  const parts: Grip[] = [];
  const candidates: Candidate[] = [];
  for (const grip of stock) {
    const unfit = passes(grip) ? unfitAnywhere(grip, clubs) : ({ why: 'filtered', item: grip.item } as const);
    const left = unfit ?? unfitSomewhere(grip, clubs, settings);
    if (!unfit) parts.push(grip);
    if (left) why.set(grip, left);
    else candidates.push({ key: grip.item, items: [grip], matched: false });
  }
  candidates.push(...matchedOf(parts, clubs, settings));
  const kept = candidates.filter((each) => !filters.onHandOnly || isOnHand(each, clubs, settings));
  const tried = new Set(kept.flatMap(({ items }) => items));
  const notTried = stock
    .filter((grip) => !tried.has(grip))
    .map((grip) => why.get(grip) ?? ({ why: 'filtered', item: grip.item } as const));
  return { candidates: kept, notTried };
}

/** What each club wears of a candidate. */
export function wornOf(candidate: Candidate, clubs: readonly Club[], settings: ShopSettings): readonly Grip[] {
  const [only] = candidate.items;
  const alike = clubs.map(() => only as Grip);
  return candidate.matched ? (matchCores(clubs, candidate.items, settings) ?? alike) : alike;
}

/** What keeps a grip off every club, or off those that it is not made for. */
function unfitAnywhere(grip: Grip, clubs: readonly Club[]): NotTried | undefined {
  const { item } = grip;
  if (grip.gripGrams === undefined) return { why: 'noMass', item };
  if (grip.coreInches === undefined) return { why: 'noCore', item };
  return clubs.some(({ kind }) => suits(grip, kind)) ? undefined : { why: 'otherUse', item };
}

/** The first club that keeps a grip from going on the whole set. */
function unfitSomewhere(grip: Grip, clubs: readonly Club[], settings: ShopSettings): NotTried | undefined {
  const { item } = grip;
  if (!clubs.every(({ kind }) => suits(grip, kind))) return { why: 'otherUse', item };
  for (const { name, buttInches } of clubs) {
    const fit = coreFit(grip, buttInches, settings);
    if (fit !== 'fits') return { why: fit, item, club: name };
  }
  return undefined;
}

function matchedOf(grips: readonly Grip[], clubs: readonly Club[], settings: ShopSettings): Candidate[] {
  return [...groupedBy(grips, (grip) => `${modelKey(grip)}\n${sizeKey(grip)}`).values()].flatMap((size) => {
    const worn = size.length < 2 ? undefined : new Set(matchCores(clubs, size, settings));
    const items = size.filter((grip) => worn?.has(grip));
    return items.length < 2 ? [] : [{ key: items.map(({ item }) => item).join(' + '), items, matched: true }];
  });
}

function isOnHand(candidate: Candidate, clubs: readonly Club[], settings: ShopSettings): boolean {
  const needed = countNeeded(wornOf(candidate, clubs, settings));
  return candidate.items.every(({ item, onHand }) => onHand === undefined || onHand >= (needed.get(item) ?? 0));
}

function filterOf({ profile, texture, coreInches, mostPrice, items }: Filters): (grip: Grip) => boolean {
  const named = items && new Set(items.map((item) => item.toLowerCase()));
  return (grip) =>
    (profile === undefined || grip.profile === profile) &&
    (texture === undefined || grip.texture?.toLowerCase() === texture.toLowerCase()) &&
    (coreInches === undefined || Math.abs((grip.coreInches ?? NaN) - coreInches) < CALLIPER_DIVISION_INCHES) &&
    (mostPrice === undefined || (grip.price ?? NaN) <= mostPrice) &&
    (!named || named.has(grip.item.toLowerCase()));
}
