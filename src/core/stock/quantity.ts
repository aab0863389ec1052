/** Quantities as a ledger adds them up: in thousandths, so that taking away what was put there leaves nothing. */
import { exactSum } from '../choose/exact';

const PER_UNIT = 1000;

export function sumOf(quantities: readonly number[]): number {
  return exactSum(quantities, PER_UNIT);
}

export function lessOf(quantity: number, less: number): number {
  return Number.isInteger(quantity) && Number.isInteger(less) ? quantity - less : sumOf([quantity, -less]);
}

const ODD_SPACE = /\s\s|[^\S ]/;

/** Words are compared as a person reads them. */
export function sameWord(word: string): string {
  const plain = word.trim().toLowerCase();
  return ODD_SPACE.test(plain) ? plain.replace(/\s+/g, ' ') : plain;
}

/** What tells one thing on a shelf from all others. */
export function itemKey({ shelf, item }: { readonly shelf: string; readonly item: string }): string {
  return `${shelf}\n${sameWord(item)}`;
}
