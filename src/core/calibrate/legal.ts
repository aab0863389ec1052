/** What a constant of the trade can be at all. */
import { GRIP_BALANCE_RATIOS, RANGES } from '../constants';
import { tapeGrams } from '../grip/mass';
import type { ShopSettings } from '../plan/types';
import { fail, ok, type Issue, type Result } from '../result';
import type { Estimate, OfferField } from './types';

export interface LegalRange {
  readonly low: number;
  readonly high: number;
  /** Blank for a part of a length. */
  readonly unit: string;
  readonly decimals: number;
}

/** What the cell takes that a constant would go into: of a layer, what a tape as wide as the shop's can weigh. */
export function legalRange(field: OfferField, { buildUp, tapedInches }: ShopSettings): LegalRange {
  switch (field) {
    case 'layerGrams': {
      const [least, most] = [RANGES.gsm.low, RANGES.gsm.high].map((gsm) =>
        tapeGrams(tapedInches, buildUp.stripInches, gsm),
      ) as [number, number];
      const { low, high, unit } = RANGES.layerGrams;
      return { low: Math.max(low, least), high: Math.min(high, most), unit, decimals: 2 };
    }
    case 'balanceInches':
      return { ...RANGES.gripBalanceInches, decimals: 2 };
    case 'balanceRatio':
      return { ...GRIP_BALANCE_RATIOS, unit: '', decimals: 3 };
  }
}

/** Why a constant is not to be taken over; undefined where it and its interval lie within what can be. */
export function illegal(
  field: string,
  { value, low, high }: Pick<Estimate, 'value' | 'low' | 'high'>,
  range: LegalRange,
): Issue | undefined {
  if ([value, low, high].every((each) => each >= range.low && each <= range.high)) return undefined;
  const text = (number: number): string => number.toFixed(range.decimals).replace('-', '−');
  const unit = range.unit && ` ${range.unit}`;
  const expected =
    `the check-ins say ${text(value)}${unit} (${text(low)} to ${text(high)}), and only ${text(range.low)} to ` +
    `${text(range.high)}${unit} can be. Look for what was misread, or weight, layers or a cap that are not as typed`;
  return { code: 'contradiction', field, got: value, expected };
}

/** An estimate that can be; else why not. */
export function legally<Found extends Estimate>(field: string, found: Result<Found>, range: LegalRange): Result<Found> {
  if (!found.ok) return found;
  const issue = illegal(field, found.value, range);
  return issue ? fail(issue) : ok(found.value);
}
