/** Which grip goes on which club, and which grips are one model or one size of it. */
import { fillingLayers, isTightCore } from '../fit/diameter';
import { groupedBy } from '../plan/together';
import type { Club, Grip, ShopSettings } from '../plan/types';

/** Fewest layers that fill a grip's core on a butt; none where either is not known. */
export function fewestLayers(grip: Grip, buttInches: number | undefined, settings: ShopSettings): number {
  if (grip.coreInches === undefined || buttInches === undefined) return 0;
  return fillingLayers(grip.coreInches, buttInches, settings.buildUp.thicknessInches);
}

/**
 * Whether a core goes on a butt: loose where more layers than the shop fits would be needed to fill it, tight where it would have to
 * stretch too far ({@link isTightCore}). A butt that is not known takes any core.
 */
export function coreFit(
  grip: Grip,
  buttInches: number | undefined,
  settings: ShopSettings,
): 'fits' | 'loose' | 'tight' {
  if (grip.coreInches === undefined || buttInches === undefined) return 'fits';
  if (fewestLayers(grip, buttInches, settings) > settings.mostLayers) return 'loose';
  return isTightCore(grip.coreInches, buttInches) ? 'tight' : 'fits';
}

/**
 * Whether a grip was made for a kind of club: one for putters or juniors suits no other, one for clubs no putter, and one that says
 * nothing any. A club of unknown kind is neither putter nor junior.
 */
export function suits(grip: Grip, kind: Club['kind']): boolean {
  if (grip.use === undefined) return true;
  if (grip.use === 'juniors') return kind === 'junior';
  return (grip.use === 'putters') === (kind === 'putter');
}

/** Grips that are one throughout a set: of one model and one profile; a grip that names no model is one by itself. */
export function modelKey(grip: Grip): string {
  const model = grip.model === undefined ? `item\n${grip.item}` : `model\n${grip.model}`;
  return `${model}\n${grip.profile ?? ''}`.toLowerCase();
}

/** Moulded size within a model; where nobody wrote it, what the grip measures tells sizes apart. */
export function sizeKey(grip: Grip): string {
  return (grip.size ?? grip.upperInches?.toFixed(3) ?? '').toLowerCase();
}

/**
 * Each club's item out of several that differ in core: of those that go on its butt, one that is not loose without layers if there
 * is one, then the core nearest to the butt, then the first in the list. A club whose butt is not known gets the item that most of
 * the others get. Rule: *practice* (core and butt must match; tape fills what it must).
 *
 * @returns an item for each club, or undefined where a club can take none, or no butt is known
 */
export function matchCores(clubs: readonly Club[], items: readonly Grip[], settings: ShopSettings): Grip[] | undefined {
  const matched = clubs.map((club) =>
    club.buttInches === undefined ? undefined : nearestCore(club, club.buttInches, items, settings),
  );
  const chosen = matched.filter((grip) => grip !== undefined);
  const usual = [...groupedBy(chosen, ({ item }) => item).values()]
    .map((same) => ({ grip: same[0] as Grip, count: same.length }))
    .sort((a, b) => b.count - a.count || items.indexOf(a.grip) - items.indexOf(b.grip));
  const worn = clubs.map((club, at) =>
    club.buttInches === undefined ? usual.find(({ grip }) => suits(grip, club.kind))?.grip : matched[at],
  );
  return worn.every((grip) => grip !== undefined) ? worn : undefined;
}

function nearestCore(club: Club, buttInches: number, items: readonly Grip[], settings: ShopSettings): Grip | undefined {
  let best: Grip | undefined;
  let bestLoose = Infinity;
  let bestOff = Infinity;
  for (const grip of items) {
    if (!suits(grip, club.kind) || coreFit(grip, buttInches, settings) !== 'fits') continue;
    const loose = fewestLayers(grip, buttInches, settings) > 0 ? 1 : 0;
    const off = Math.abs((grip.coreInches ?? buttInches) - buttInches);
    // .610 − .600 and .600 − .590 differ in their last binary digit
    if (loose > bestLoose || (loose === bestLoose && off > bestOff - 1e-9)) continue;
    [best, bestLoose, bestOff] = [grip, loose, off];
  }
  return best;
}
