/** How readings and numbers are written for people. */
import { formatReading, roundTo } from '../core/index';

/** A reading as the scale shows it, `D2.4`; off the scale the points above A0, `−67.0 pt`. */
export function readingText(points: number, decimals = 1): string {
  const reading = formatReading(points, decimals);
  return reading.ok ? reading.value : `${signed(points, decimals, false)} pt`;
}

/** A number with a true minus sign, and a plus where a change is meant. */
export function signed(value: number, decimals: number, plus = true): string {
  const rounded = roundTo(value, decimals);
  const digits = Math.abs(rounded).toFixed(decimals);
  if (rounded < 0) return `−${digits}`;
  return plus && rounded > 0 ? `+${digits}` : digits;
}

/** A diameter or core as the trade writes it, `.580`. */
export function thousandths(inches: number): string {
  return inches.toFixed(3).replace(/^(-?)0\./, '$1.');
}

/** Grams without idle zeros, `3.5 g`. */
export function gramsText(grams: number): string {
  return `${roundTo(grams, 1)} g`.replace('-', '−');
}

/** `1 layer`, `4 layers`. */
export function countOf(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
