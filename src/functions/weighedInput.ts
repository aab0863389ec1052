/** A range of weighed grips: masses in a column or a row, or two columns with the item before the mass. */
import { RANGES, type WeighedGrip } from '../core/index';
import { cellError } from './cellError';
import { optionalNumber, optionalText, plainValue } from './cellInput';

/**
 * The grips of a range, each numbered by its place in it, so that a person finds it again; blanks are passed over.
 *
 * A blank may arrive as 0, and nothing weighs 0.
 */
export function weighedGrips(given: unknown, field: string): WeighedGrip[] {
  const rows = (Array.isArray(given) ? given : [given]).map((row: unknown) => (Array.isArray(row) ? row : [row]));
  return pairsOf(rows, field).flatMap(({ item, mass }, at) => {
    const number = at + 1;
    const grams = optionalNumber(mass, `${field}, grip ${number}`, RANGES.gripGrams);
    if (grams === undefined) return [];
    return [{ number, item: optionalText(item, `${field}, item of grip ${number}`), grams }];
  });
}

interface Pair {
  readonly item?: unknown;
  readonly mass: unknown;
}

function pairsOf(rows: readonly (readonly unknown[])[], field: string): Pair[] {
  const wide = rows[0]?.length ?? 0;
  if (wide === 1) return rows.map(([mass]) => ({ mass }));
  const [first = []] = rows;
  // one row of two cells is two masses, unless words stand in the first
  if (rows.length === 1 && (wide !== 2 || !isText(first[0]))) return first.map((mass) => ({ mass }));
  if (wide === 2) return rows.map(([item, mass]) => ({ item, mass }));
  const expected = `a range of ${rows.length} × ${wide} was given; one column of masses, one row, or two columns of item and mass are needed`;
  throw cellError({ code: 'contradiction', field, expected });
}

function isText(given: unknown): boolean {
  const value = plainValue(given);
  return typeof value === 'string' && /[^\d\s.,+−-]/.test(value);
}
