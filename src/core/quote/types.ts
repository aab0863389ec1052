/**
 * What goes into a quote and what comes out: exact amounts and codes only, no words.
 *
 * Cells enter as they stand in the sheet. Dates are the sheet's date serials; there is no clock in here.
 */
import type { AmountCell, Decimal } from '../decimal';
import type { Currency, Money, RoundingRule } from '../money';
import type { ClubKind } from '../plan/types';

/** What a line is for; a comparison of quotes goes by it. `minimum` is what a small job is raised by. */
export const LINE_CLASSES = [
  'grip',
  'fitting',
  'buildUp',
  'salvage',
  'disposal',
  'reading',
  'weight',
  'rebalancing',
  'length',
  'other',
  'minimum',
] as const;
export type LineClass = (typeof LINE_CLASSES)[number];

/** Takes a line out of every tax, in place of a tax's name. */
export const UNTAXED = 'None';

/** What is taken off: a part in per cent, or an amount. */
export type Discount = ({ readonly percent: AmountCell } | { readonly amount: AmountCell }) & {
  /** Where it stands, for messages; undefined: by what it is on. */
  readonly field?: string | undefined;
  /** Why it is given, as the client reads it. */
  readonly reason?: string | undefined;
};

/** One line as it is asked for. */
export interface QuoteLine {
  readonly class: LineClass;
  readonly description: string;
  /** The stock item, where it is one; no quote has an item on two lines. */
  readonly item?: string | undefined;
  readonly quantity: AmountCell;
  /** What one costs the client; may have more decimals than the currency. */
  readonly unitPrice: AmountCell;
  /** What one costs the shop, without tax; undefined: not known. */
  readonly unitCost?: AmountCell;
  /** Name of a tax, or `UNTAXED`; undefined: the first of the list. */
  readonly tax?: string | undefined;
  /** Taken off this line alone. */
  readonly discount?: Discount | undefined;
  /** Bench time for one; undefined: not known, and none for a thing that is sold. */
  readonly minutesEach?: number | undefined;
  /** Rows of the clubs that it is for. */
  readonly rows?: readonly number[];
}

export interface TaxRate {
  readonly name: string;
  readonly percent: AmountCell;
}

/** Whether prices are given before tax, which is then added, or with it. */
export type PricesAre = 'beforeTax' | 'withTax';

export interface Rounding {
  readonly rule: RoundingRule;
  /** `line`: amounts and tax of each line for itself; `quote`: the sum, and lines then so that they add up to it. */
  readonly at: 'line' | 'quote';
}

/** How a shop sells. */
export interface QuoteTerms {
  readonly currency: string;
  readonly prices: PricesAre;
  readonly taxes: readonly TaxRate[];
  readonly rounding: Rounding;
  /** On the grips of the set. */
  readonly setDiscount?: Discount | undefined;
  /** On everything. */
  readonly jobDiscount?: Discount | undefined;
  /** Part of the total that is to be paid on ordering. */
  readonly deposit?: Discount | undefined;
  /** No job is done for less; as prices are, before tax or with it. */
  readonly minimum?: AmountCell;
  /** Date serial of the issue, and how many days the quote holds. */
  readonly issued?: number | undefined;
  readonly validDays?: number | undefined;
}

export interface QuoteInput extends QuoteTerms {
  readonly lines: readonly QuoteLine[];
}

/** One line as it is quoted. `amount − setDiscount − jobDiscount` is its price; `net + tax` is what is paid for it. */
export interface QuotedLine {
  readonly class: LineClass;
  readonly description: string;
  readonly item: string | undefined;
  readonly quantity: Decimal;
  readonly unitPrice: Decimal;
  /** Quantity × unit price. */
  readonly full: Money;
  readonly lineDiscount: Money;
  readonly discountReason: string | undefined;
  /** What is left of it after the line's own discount. */
  readonly amount: Money;
  readonly setDiscount: Money;
  readonly jobDiscount: Money;
  /** After every discount; before tax or with it, as prices are. */
  readonly price: Money;
  /** undefined: untaxed. */
  readonly tax: string | undefined;
  readonly taxPercent: Decimal | undefined;
  readonly net: Money;
  readonly taxAmount: Money;
  readonly gross: Money;
  /** For the shop alone; undefined: not known. */
  readonly cost: Money | undefined;
  readonly margin: Money | undefined;
  readonly rows: readonly number[];
}

/** What one tax comes to. */
export interface TaxSum {
  /** undefined: what is untaxed. */
  readonly name: string | undefined;
  readonly percent: Decimal | undefined;
  readonly net: Money;
  readonly tax: Money;
}

/** For the shop alone: net price less cost. */
export interface Margin {
  /** Of the lines whose cost is known. */
  readonly known: Money;
  /** Of the whole quote; undefined where a cost is missing. */
  readonly whole: Money | undefined;
  /** Descriptions of the lines without a cost. */
  readonly missing: readonly string[];
}

/** Something about a quote that whoever issues it must know; sentences in `src/words/money.ts`. */
export type QuoteNote =
  /** more was to be asked for than there is to pay */
  | { readonly note: 'depositOver'; readonly wanted: Money; readonly taken: Money }
  /** the job was raised to the minimum */
  | { readonly note: 'raised'; readonly by: Money; readonly minimum: Money }
  /** tax is rounded down, which not every shop may */
  | { readonly note: 'roundedDown'; readonly at: Rounding['at'] };

/** Every sum here is the sum of the lines, to the last minor unit. */
export interface Quote {
  readonly currency: Currency;
  readonly prices: PricesAre;
  readonly rounding: Rounding;
  readonly lines: readonly QuotedLine[];
  readonly full: Money;
  readonly lineDiscount: Money;
  readonly amount: Money;
  readonly setDiscount: Money;
  readonly jobDiscount: Money;
  readonly price: Money;
  readonly taxes: readonly TaxSum[];
  readonly net: Money;
  readonly tax: Money;
  /** What is to be paid. */
  readonly total: Money;
  readonly deposit: Money;
  readonly balance: Money;
  /** Date serials. */
  readonly issued: number | undefined;
  readonly validUntil: number | undefined;
  readonly margin: Margin;
  readonly notes: readonly QuoteNote[];
}

/* ---------------------------------------------------------------- from rates and plans to lines */

/**
 * When a work is charged: on fitting a grip of the shop's or the client's own, for build-up beyond what fitting includes, for an old
 * grip taken off whole or cut off and thrown away, for weighing and reading a club whose reading is held, for the weight and the
 * work that put a reading right, for a length change, for every club, for every job.
 */
export const RATE_USES = [
  'fitting',
  'ownGrip',
  'buildUp',
  'salvage',
  'disposal',
  'reading',
  'weight',
  'rebalancing',
  'length',
  'everyClub',
  'everyJob',
] as const;
export type RateUse = (typeof RATE_USES)[number];

export const RATE_UNITS = ['club', 'job', 'layer', 'gram'] as const;
export type RateUnit = (typeof RATE_UNITS)[number];

/** One row of Rates. */
export interface Rate {
  readonly work: string;
  /** undefined: only when somebody puts it on the quote. */
  readonly use: RateUse | undefined;
  readonly per: RateUnit;
  /** Only for clubs of this kind, and for them in place of a rate for all; undefined: for all. */
  readonly kind?: ClubKind | undefined;
  readonly price: AmountCell;
  readonly cost?: AmountCell;
  readonly minutes?: number | undefined;
  readonly tax?: string | undefined;
  /** Layers that a fitting includes; undefined: none. */
  readonly includedLayers?: number | undefined;
}

/** What a quote needs of a stock item; a price that is not there is an issue. */
export interface PricedItem {
  readonly item: string;
  readonly description?: string | undefined;
  readonly price?: AmountCell;
  readonly cost?: AmountCell;
  readonly tax?: string | undefined;
}

/** What a quote needs of a way of weighting: its price for one club. */
export interface PricedWay {
  readonly name: string;
  readonly price?: AmountCell;
  readonly cost?: AmountCell;
  readonly minutes?: number | undefined;
  readonly tax?: string | undefined;
}

/** What a plan does not say about a club. */
export interface ClubWork {
  /** The client brings the grip. */
  readonly ownGrip?: boolean;
  /** How the old grip comes off here: whole, to be kept; cut off, where nothing is said; or not at all, since the club came without. */
  readonly takeOff?: 'salvage' | 'cutOff' | 'none';
  readonly lengthChanged?: boolean;
}
