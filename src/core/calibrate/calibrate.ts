/** A shop's own constants, from what it measured. */
import { tapeGrams } from '../grip/mass';
import { groupedBy } from '../plan/together';
import type { Result } from '../result';
import { balanceNow, balancePoint, balanceRatio, type TapeKnown } from './balancePoint';
import { layerMass } from './layerMass';
import { legally, legalRange, type LegalRange } from './legal';
import { CONFIDENCE } from './limits';
import { itemKey, usablePairs, type Pair } from './pairs';
import type { BalanceEstimate, Calibration, CalibrateInput, LayerEstimate, Offer, OfferField, Unusable } from './types';

/**
 * What check-ins say of the mass of a layer and of the grips' balance points, offered and not taken over.
 *
 * The masses tell layer from grip, then the readings tell where the grip balances. Where the masses cannot tell the layer, the shop's own
 * is used for the balance points with its ±: tape lies so near a grip's balance point that this hardly matters. What no tape weighs and
 * no grip balances at is not offered, nor is what might be that by its interval.
 *
 * @param input clubs read and weighed bare and finished, stock, settings; grams, inches, points
 * @returns each constant or why it cannot be told, offers for those that can, and the clubs that cannot be true
 * @example calibrate({ finished, stock, settings }).offers[0]?.suggested //=> 1.82
 */
export function calibrate(input: CalibrateInput): Calibration {
  const { settings, confidence = CONFIDENCE } = input;
  const { pairs, unusable } = usablePairs(input.finished);
  const range = (field: OfferField): LegalRange => legalRange(field, settings);
  const layer = legally('Layer mass', layerMass(pairs, settings, confidence), range('layerGrams'));
  const tape = tapeKnown(layer, input);
  const stock = new Map([...input.stock].reverse().map((grip) => [itemKey(grip.item), grip])); // the first of a name counts
  const items = [...groupedBy(pairs, ({ club }) => itemKey(club.item))];
  const balance = items.map(([key, list]) => {
    const grip = stock.get(key);
    const item = grip?.item ?? list[0]?.club.item ?? key;
    const found = balancePoint(item, list, balanceNow(grip, settings), tape, confidence);
    return { item, found: legally(`Balance point of ${item}`, found, range('balanceInches')) };
  });
  const part = balanceRatio(pairs, settings.gripBalanceRatio, tape, confidence);
  const ratio = legally('Balance point as a part of the length', part, range('balanceRatio'));
  const now = tapeGrams(settings.tapedInches, settings.buildUp.stripInches, settings.buildUp.gsm);
  return {
    layer,
    balance,
    ratio,
    offers: [
      ...(layer.ok ? [layerOffer(layer.value, now)] : []),
      ...balance.flatMap(({ found }) => (found.ok ? [balanceOffer(found.value)] : [])),
      ...(ratio.ok ? [balanceOffer(ratio.value)] : []),
    ],
    unusable: [...unusable, ...capless(pairs)],
  };
}

function tapeKnown(layer: Result<LayerEstimate>, { settings }: CalibrateInput): TapeKnown {
  if (!layer.ok) {
    const gramsPerInch = tapeGrams(1, settings.buildUp.stripInches, settings.buildUp.gsm);
    return { gramsPerInch, spreadPerInch: settings.tapeSpread * gramsPerInch };
  }
  const { gramsPerInch, low, high } = layer.value;
  return { gramsPerInch, spreadPerInch: (high - low) / 2 / settings.tapedInches };
}

/** The body is heavy: a sixteenth of an inch of cap that nobody measured moves the balance point by half an inch. */
function capless(pairs: readonly Pair[]): Unusable[] {
  return pairs
    .filter(({ momentGramInches }) => momentGramInches === undefined)
    .map(({ club }) => ({
      club: club.club,
      issue: { code: 'blank', field: `Cap of ${club.item}`, expected: 'its thickness in Stock' },
    }));
}

function layerOffer(found: LayerEstimate, now: number): Offer {
  return { ...shared(found, now), field: 'layerGrams', item: undefined, errorUnit: 'g' };
}

function balanceOffer(found: BalanceEstimate): Offer {
  const field = found.item === undefined ? 'balanceRatio' : 'balanceInches';
  return { ...shared(found, found.now), field, item: found.item, errorUnit: 'points' };
}

function shared(found: LayerEstimate | BalanceEstimate, now: number): Omit<Offer, 'field' | 'item' | 'errorUnit'> {
  const { value, low, high, confidence, pairs, errorBefore, errorAfter, flagged, withoutFlagged } = found;
  const agrees = now >= low && now <= high;
  return {
    now,
    suggested: value,
    low,
    high,
    confidence,
    pairs,
    errorBefore,
    errorAfter,
    agrees,
    flagged,
    withoutFlagged,
  };
}
