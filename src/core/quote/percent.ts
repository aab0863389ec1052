/** Per cent as people type them: 20, 20 %, and the 0.2 that a spreadsheet keeps of a typed 20 %. */
import { compareDecimals, decimalText, readAmount, type AmountCell, type AmountLimits, type Decimal } from '../decimal';
import { fail, ok, type Issue, type Result } from '../result';

export const PERCENT_LIMITS: AmountLimits = { low: 0, high: 100 };

const SIGN = /\s*%$/;
/** What would be thousands of an amount: no per cent has any, so that the mark is a decimal one. */
const THREE_DECIMALS = /^\d{1,3}[.,]\d{3}$/;
const NONE: Decimal = { digits: 0n, scale: 0 };
const ONE: Decimal = { digits: 1n, scale: 0 };

/**
 * So many per cent. Above 0 and below 1 it is asked for with its sign: a cell typed as 20 % holds 0.2, and nothing in it tells that from
 * 0.2 %.
 *
 * @param cell what stands there: a number, or text with the sign or without
 * @param field its name as the reader knows it
 * @returns ambiguous where it may be a part of one; else as `readAmount`
 * @example readPercent('0.2 %', 'Tax') //=> { digits: 2n, scale: 1 }
 */
export function readPercent(cell: AmountCell, field: string): Result<Decimal> {
  const { bare, isSigned } = withoutSign(cell);
  const read = readAmount(bare, field, PERCENT_LIMITS);
  if (!read.ok) return read.issue.code === 'blank' ? read : fail({ ...read.issue, got: cell ?? null });
  const isPart = compareDecimals(read.value, NONE) > 0 && compareDecimals(read.value, ONE) < 0;
  return isPart && !isSigned ? fail(mayBePart(cell ?? null, read.value, field)) : ok(read.value);
}

/** The cell without a sign of per cent at its end, and whether it had one. */
function withoutSign(cell: AmountCell): { readonly bare: AmountCell; readonly isSigned: boolean } {
  if (typeof cell !== 'string') return { bare: cell, isSigned: false };
  const bare = cell.trim().replace(SIGN, '');
  return { bare: THREE_DECIMALS.test(bare) ? `${bare}0` : bare, isSigned: bare !== cell.trim() };
}

function mayBePart(got: string | number | boolean | null, value: Decimal, field: string): Issue {
  const [little, much] = [decimalText(value), decimalText(hundredfold(value))];
  const expected = `${much} if ${much} % is meant, in a cell whose number format is General and not a per cent; if so little is meant, ${little} % as text, with an apostrophe before it`;
  return { code: 'ambiguous', field, got, expected };
}

function hundredfold({ digits, scale }: Decimal): Decimal {
  return scale >= 2 ? { digits, scale: scale - 2 } : { digits: digits * 10n ** BigInt(2 - scale), scale: 0 };
}

/** A per cent that was read already, so that it is not asked about again. */
export function saidPercent(percent: number): AmountCell {
  const read = readAmount(percent, 'per cent');
  return read.ok ? `${decimalText(read.value)} %` : percent;
}
