/** Terms and lines for tests: an invented shop that adds 20 % and rounds each line half up. */
import {
  decimalText,
  moneyDecimal,
  type Money,
  type QuoteInput,
  type QuoteLine,
  type QuoteTerms,
} from '../../../src/core/index';

export const TERMS: QuoteTerms = {
  currency: 'EUR',
  prices: 'beforeTax',
  taxes: [
    { name: 'Standard', percent: 20 },
    { name: 'Reduced', percent: '5,5' },
  ],
  rounding: { rule: 'halfUp', at: 'line' },
};

export function aLine(more: Partial<QuoteLine> = {}): QuoteLine {
  return { class: 'other', description: 'Work', quantity: 1, unitPrice: 10, ...more };
}

export function aQuote(lines: readonly Partial<QuoteLine>[], terms: Partial<QuoteTerms> = {}): QuoteInput {
  return { ...TERMS, ...terms, lines: lines.map((line) => aLine(line)) };
}

export function text(money: Money | undefined): string | undefined {
  return money && moneyDecimal(money);
}

/** Amounts as text and decimals as text, so that a failing test can be read. */
export function plain(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if ('minor' in value) return text(value as Money);
  if ('digits' in value) return decimalText(value as Parameters<typeof decimalText>[0]);
  if (Array.isArray(value)) return value.map(plain);
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, plain(each)]));
}
