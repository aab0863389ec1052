/** Words about a shop's own constants, and about its scale. */
import type { Calibration, Flagged, LayerFrom, Offer, ScaleCheck, Told, Unusable } from '../core/index';
import { sayIssue } from './issues';
import { countOf, signed } from './readings';

/** Stands above every list of offers. */
export const OFFERS_HEAD =
  'What your own check-ins say. Nothing changes until you take it over, and every plan made from then on reckons with it.';

/** Stands below every balance point. */
export const CAP_CAVEAT =
  'The interval speaks of scatter alone. A cap measured 1/64 in wrong shifts a balance point by about 0.12 in; cap and balance point together still give the readings.';

const DECIMALS: Readonly<Record<Offer['field'], number>> = { layerGrams: 2, balanceInches: 2, balanceRatio: 3 };

/** What an offer is about. */
export function offerName({ field, item }: Pick<Offer, 'field' | 'item'>): string {
  switch (field) {
    case 'layerGrams':
      return 'One layer of build-up tape';
    case 'balanceInches':
      return `Balance point of ${item ?? 'the grip'}`;
    case 'balanceRatio':
      return 'Balance point of all grips, as a part of their length';
  }
}

function valueText(value: number, field: Offer['field']): string {
  const unit = { layerGrams: ' g', balanceInches: ' in', balanceRatio: '' }[field];
  return `${value.toFixed(DECIMALS[field])}${unit}`;
}

/** What the check-ins say, how sure they are, and what it would change. */
export function sayOffer(offer: Offer): string {
  const { field, suggested, low, high, confidence, pairs, now, agrees } = offer;
  const digits = DECIMALS[field];
  const found =
    `${offerName(offer)}: ${valueText(suggested, field)} from ${countOf(pairs, 'club')} ` +
    `(${Math.round(confidence * 100)} % between ${low.toFixed(digits)} and ${high.toFixed(digits)}).`;
  const set = agrees
    ? `Set now: ${valueText(now, field)}, which agrees; there is no reason to change it.`
    : `Set now: ${valueText(now, field)}, which does not agree.`;
  return [found, set, ...errorText(offer), ...flaggedText(offer)].join(' ');
}

function errorText({ errorBefore, errorAfter, errorUnit }: Offer): string[] {
  if (errorBefore === undefined || errorAfter === undefined) return [];
  const unit = errorUnit === 'g' ? 'g' : 'points';
  return [
    `A club is usually predicted ${errorBefore.toFixed(2)} ${unit} off now, ${errorAfter.toFixed(2)} with this (root mean square, each from the others).`,
  ];
}

function flaggedText({ field, flagged, withoutFlagged, errorUnit }: Offer): string[] {
  if (flagged.length === 0) return [];
  const clubs = flagged.map((each) => flagText(each, errorUnit)).join(', ');
  const without = `without ${flagged.length > 1 ? 'them' : 'it'}`;
  const left = withoutFlagged === undefined ? 'too few are left' : valueText(withoutFlagged, field);
  return [`Far off the others, and counted all the same: ${clubs}; ${without} ${left}. Look whether it was a slip.`];
}

function flagText({ club, off }: Flagged, unit: Offer['errorUnit']): string {
  return `${club} (${signed(off, 1)} ${unit === 'g' ? 'g' : 'points'})`;
}

/** A check-in that was left out, and why. */
export function sayUnusable({ club, issue }: Unusable): string {
  return `${club} is left out: ${sayIssue(issue)}`;
}

export const LAYER_FROM_WORDS: Readonly<Record<LayerFrom, string>> = {
  looseGrips: 'from grips that were weighed loose',
  gripsAlike: 'from grips of one item, taken to weigh alike; loose grips that are weighed make it several times surer',
};

/** Why something cannot be told yet, one sentence each, the layer first; of all grips together only what cannot be. */
export function sayUntold({ layer, balance, ratio }: Calibration): string[] {
  const together = !ratio.ok && ratio.issue.code === 'contradiction' ? [ratio] : [];
  const results = [layer, ...balance.map(({ found }) => found), ...together];
  return results.flatMap((result) => (result.ok ? [] : [sayIssue(result.issue)]));
}

/** Whether the scale still reads as it did. */
export function sayScale({ readings, verdict, drift, offset, repeatability }: ScaleCheck): string {
  const basis = `${countOf(readings, 'reading')} of the reference club, which repeat to ± ${(2 * repeatability).toFixed(1)} pt`;
  if (verdict === 'fine') {
    const drifted = drift ? 'no drift and no offset' : 'no offset; for a drift read it on at least three days';
    return `${basis}: ${drifted} beyond what chance and the scale’s division explain.`;
  }
  const parts = [
    ...(drift?.told ? [`drifted by ${toldText(drift)}`] : []),
    ...(offset.told ? [`reads ${toldText(offset)} ${drift?.told ? 'off by now' : 'off'}`] : []),
  ];
  return `${basis}: the scale ${parts.join(' and ')}. Set it right, and read again what was read since.`;
}

function toldText({ points, low, high }: Told): string {
  return `${signed(points, 1)} pt (${signed(low, 1)} to ${signed(high, 1)})`;
}

/** What the scale's test promises; for its help. */
export const SCALE_TEST =
  'Two t tests, of a drift and of an offset, each at 2.5 %: a scale that is right is called wrong in at most one check of twenty.';
