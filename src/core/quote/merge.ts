/** Lines that say the same become one; and the minutes that lines take. */
import { addDecimals, decimalText, readAmount, type AmountCell } from '../decimal';
import type { QuoteLine } from './types';

/** Equal lines merged, quantities added, in the order in which each first stands; a line whose quantity cannot be read is kept as it is. */
export function mergeLines(lines: readonly QuoteLine[]): QuoteLine[] {
  const merged = new Map<string, QuoteLine>();
  lines.forEach((line, at) => {
    const key = readAmount(line.quantity, 'quantity').ok ? keyOf(line) : `unread ${at}`;
    const before = merged.get(key);
    merged.set(key, before ? joined(before, line) : line);
  });
  return [...merged.values()];
}

/** Everything but the quantity and the clubs. */
function keyOf({ quantity: _quantity, rows: _rows, item, ...rest }: QuoteLine): string {
  const { class: kind, description, unitPrice, unitCost, tax, discount, minutesEach } = rest;
  return JSON.stringify([
    kind,
    item?.toLowerCase() ?? null,
    description,
    amountKey(unitPrice),
    amountKey(unitCost),
    tax?.toLowerCase() ?? null,
    discount ?? null,
    minutesEach ?? null,
  ]);
}

/** 3.5 and "3,50" are one price. */
function amountKey(cell: AmountCell): string {
  const read = readAmount(cell, 'amount');
  return read.ok ? decimalText(read.value) : `? ${String(cell)}`;
}

function joined(one: QuoteLine, other: QuoteLine): QuoteLine {
  return {
    ...one,
    quantity: sumOf(one.quantity, other.quantity),
    rows: [...new Set([...(one.rows ?? []), ...(other.rows ?? [])])],
  };
}

function sumOf(one: AmountCell, other: AmountCell): AmountCell {
  const [first, second] = [readAmount(one, 'quantity'), readAmount(other, 'quantity')];
  if (!first.ok || !second.ok) return one;
  return Number(decimalText(addDecimals(first.value, second.value)));
}

/** Bench time. */
export interface Minutes {
  readonly minutes: number;
  /** Descriptions of work for which no time is known. */
  readonly missing: readonly string[];
}

/** Minutes that the lines of a quote take at the bench: quantity × minutes for one; a grip on its own takes none. */
export function minutesOf(lines: readonly QuoteLine[]): Minutes {
  const work = lines.filter((line) => line.class !== 'grip' && line.class !== 'minimum');
  const missing = work.filter((line) => line.minutesEach === undefined).map(({ description }) => description);
  const minutes = work.reduce((sum, line) => {
    const quantity = readAmount(line.quantity, 'quantity');
    return quantity.ok ? sum + Number(decimalText(quantity.value)) * (line.minutesEach ?? 0) : sum;
  }, 0);
  return { minutes: Number(minutes.toPrecision(12)), missing };
}
