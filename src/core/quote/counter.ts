/** A price at the counter: so many clubs, no plan. */
import { MOST_LAYERS } from '../constants';
import { addDecimals, readAmount, timesDecimal } from '../decimal';
import { moneyOf, type Money } from '../money';
import type { ClubKind } from '../plan/types';
import { fail, ok, type Issue, type Result } from '../result';
import { amountRule } from './discount';
import { inOrder, itemLine } from './fromPlan';
import { quoteOf } from './quote';
import {
  firstOfEach,
  includedLayers,
  NEEDED,
  noRate,
  rateIssues,
  rateLine,
  ratesFor,
  unitsOf,
  type Work,
} from './rates';
import type { PricedItem, Quote, QuoteLine, QuoteTerms, Rate, RateUse } from './types';

/** Whose grips they are: one item of the shop's for all clubs, or brought by the client, with the shop's own rate for that. */
export type CounterGrips = { readonly from: 'shop'; readonly item: PricedItem } | { readonly from: 'client' };

export interface CounterRequest {
  readonly clubs: number;
  /** undefined: rates for any club. */
  readonly kind?: ClubKind | undefined;
  readonly grips: CounterGrips;
  /** Layers on each club; undefined: none. */
  readonly layers?: number | undefined;
  /** Old grips are taken off whole, to be kept. */
  readonly salvage?: boolean;
  /** Clubs are weighed and read. */
  readonly reading?: boolean;
  readonly terms: QuoteTerms;
}

export interface CounterQuote {
  readonly quote: Quote;
  /** What one club more costs: every price that is counted by the club, before discounts, as prices are. */
  readonly perClub: Money;
}

/** More clubs than that are typed by mistake (*practice*). */
const MOST_CLUBS = 1000;

/**
 * A price for so many clubs, fitted, with the shop's minimum charge.
 *
 * @returns the first issue: clubs or layers that are no count, a fitting, item or work without a price, or terms that do not hold
 */
export function counterQuote(request: CounterRequest, rates: readonly Rate[]): Result<CounterQuote> {
  const [issue] = [...countIssues(request), ...rateIssues(rates)];
  if (issue) return fail(issue);
  const lines = counterLines(
    request,
    firstOfEach(rates, ({ work }) => work),
  );
  if (!lines.ok) return lines;
  const { ofClub, ofJob } = lines.value;
  const ofClubs = ofClub.map((line) => ({ ...line, quantity: Number(line.quantity) * request.clubs }));
  const quote = quoteOf({ ...request.terms, lines: inOrder([...ofClubs, ...ofJob]) });
  return quote.ok ? ok({ quote: quote.value, perClub: sumOfPrices(ofClub, quote.value) }) : quote;
}

function countIssues({ clubs, layers }: CounterRequest): Issue[] {
  return [...countIssue(clubs, 'Clubs', 1, MOST_CLUBS), ...countIssue(layers ?? 0, 'Layers', 0, MOST_LAYERS)];
}

function countIssue(got: number, field: string, low: number, high: number): Issue[] {
  const expected = `${low} to ${high}`;
  if (!Number.isInteger(got)) return [{ code: 'notWhole', field, got, expected }];
  return got < low || got > high ? [{ code: 'outOfRange', field, got, expected }] : [];
}

/** Lines for one club, and those that are charged once however many clubs there are. */
interface CounterLines {
  readonly ofClub: readonly QuoteLine[];
  readonly ofJob: readonly QuoteLine[];
}

function counterLines(request: CounterRequest, rates: readonly Rate[]): Result<CounterLines> {
  const { grips, kind } = request;
  const fittingUse = grips.from === 'client' && ratesFor(rates, 'ownGrip', kind).length > 0 ? 'ownGrip' : 'fitting';
  const fitting = ratesFor(rates, fittingUse, kind);
  const layers = Math.max(0, (request.layers ?? 0) - includedLayers(fitting));
  const ofClub: QuoteLine[] = grips.from === 'shop' ? [itemLine(grips.item, [])] : [];
  const ofJob: QuoteLine[] = [];
  for (const { use, needed } of worksOf(request, fittingUse, layers)) {
    const found = ratesFor(rates, use, kind);
    if (found.length === 0 && needed !== undefined) return fail(noRate(needed));
    for (const rate of found) {
      const line = rateLine({ ...rate, use }, unitsOf(rate, { layers, grams: 0 }));
      (rate.per === 'job' ? ofJob : ofClub).push(line);
    }
  }
  return ok({ ofClub, ofJob });
}

function worksOf({ salvage, reading }: CounterRequest, fittingUse: RateUse, layers: number): readonly Work[] {
  return [
    { use: fittingUse, needed: NEEDED.fitting },
    ...(layers > 0 ? [{ use: 'buildUp', needed: NEEDED.buildUp } as const] : []),
    salvage ? { use: 'salvage', needed: NEEDED.salvage } : { use: 'disposal' },
    ...(reading ? [{ use: 'reading', needed: NEEDED.reading } as const] : []),
    { use: 'everyClub' },
    { use: 'everyJob' },
  ];
}

/** What the lines of one club cost together, rounded once. */
function sumOfPrices(lines: readonly QuoteLine[], { currency, rounding }: Quote): Money {
  const sum = lines.reduce(
    (all, line) => {
      const price = readAmount(line.unitPrice, 'price');
      const quantity = readAmount(line.quantity, 'quantity');
      return price.ok && quantity.ok ? addDecimals(all, timesDecimal(price.value, quantity.value)) : all;
    },
    { digits: 0n, scale: 0 },
  );
  return moneyOf(sum, currency, amountRule(rounding.rule));
}
