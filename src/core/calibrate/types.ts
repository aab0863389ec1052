/**
 * What a shop's own check-ins tell about its constants. Masses in grams, lengths and positions in inches, readings in points above A0,
 * days as a count from any one day.
 */
import type { Grip, ShopSettings } from '../plan/types';
import type { Issue, Result } from '../result';

/** A club that was read and weighed bare, and again finished, with all that went on between. */
export interface FinishedClub {
  /** How messages name it. */
  readonly club: string;
  readonly item: string;
  readonly bareReading: number;
  readonly bareGrams: number;
  readonly reading: number;
  readonly massGrams: number;
  /** The loose grip, where it was weighed. */
  readonly gripGrams: number | undefined;
  readonly gripInches: number | undefined;
  /** undefined: nobody measured it, and the balance point cannot be told from it. */
  readonly capInches: number | undefined;
  readonly tapedInches: number;
  readonly layers: number;
  readonly lowerLayers: number;
  /** Where the lower-hand layers start; they end with the taped length. */
  readonly lowerStartInches: number;
  readonly twoWayGrams: number;
  /** Weight that was put on between the two weighings, and where. */
  readonly addedGrams: number;
  readonly addedInches: number;
  readonly lengthChangeInches: number;
  readonly plugGrams: number;
}

export interface CalibrateInput {
  readonly finished: readonly FinishedClub[];
  readonly stock: readonly Grip[];
  readonly settings: ShopSettings;
  /** Of every interval; 0.95 where it is not given. */
  readonly confidence?: number;
}

/** A check-in that is far off what the others say. It counts all the same: whether it was a slip is for a person to say. */
export interface Flagged {
  readonly club: string;
  /** By how much it misses what the others say of it, in the unit of `errorBefore`. */
  readonly off: number;
}

/** A check-in that tells nothing of one of the constants, and why. */
export interface Unusable {
  readonly club: string;
  readonly issue: Issue;
}

/** A constant as the check-ins show it. */
export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
  /** Clubs that it was worked out from. */
  readonly pairs: number;
  /** Standard deviation of one club about the fit: grams for a layer, points for a balance point. */
  readonly deviation: number;
  readonly flagged: readonly Flagged[];
  /** The same without what is flagged; undefined where nothing is, or too little is left. */
  readonly withoutFlagged: number | undefined;
}

/** What a constant is worked out from: grips weighed loose are several times surer. */
export type LayerFrom = 'looseGrips' | 'gripsAlike';

export interface LayerEstimate extends Estimate {
  /** `value` is grams of one layer of the shop's taped length; this is grams of an inch of strip. */
  readonly gramsPerInch: number;
  readonly from: LayerFrom;
  /** Root mean square in grams, each club predicted from the others, with the shop's constant and with this one. */
  readonly errorBefore: number | undefined;
  readonly errorAfter: number | undefined;
}

export interface BalanceEstimate extends Estimate {
  /** undefined: all grips of known length together, as a part of their length. */
  readonly item: string | undefined;
  readonly now: number;
  /** Root mean square in points, each club predicted from the others. */
  readonly errorBefore: number | undefined;
  readonly errorAfter: number | undefined;
}

/** Which constant: mass of a layer (Tape), balance point of an item (Stock), balance point as a part of the length (all grips). */
export type OfferField = 'layerGrams' | 'balanceInches' | 'balanceRatio';

/** A constant to take over, with what it would change. Nothing is taken over unasked. */
export interface Offer {
  readonly field: OfferField;
  /** Of Stock; undefined for what is the shop's alone. */
  readonly item: string | undefined;
  readonly now: number;
  readonly suggested: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
  readonly pairs: number;
  /** Root mean square of predicted − measured, in `errorUnit`; each club is predicted from the others, so neither flatters itself. */
  readonly errorBefore: number | undefined;
  readonly errorAfter: number | undefined;
  readonly errorUnit: 'points' | 'g';
  /** What is set now lies within the interval: there is no reason to change it. */
  readonly agrees: boolean;
  readonly flagged: readonly Flagged[];
  readonly withoutFlagged: number | undefined;
}

/** Everything that can be told, and why the rest cannot. */
export interface Calibration {
  readonly layer: Result<LayerEstimate>;
  /** By item, in the order of their first check-in. */
  readonly balance: readonly { readonly item: string; readonly found: Result<BalanceEstimate> }[];
  readonly ratio: Result<BalanceEstimate>;
  readonly offers: readonly Offer[];
  readonly unusable: readonly Unusable[];
}
