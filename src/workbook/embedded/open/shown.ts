/** Two values of one cell as a person reads them, so that they can be told apart. */
import { numfmt } from '@univerjs/core';
import type { Seen } from '../../port';
import type { CellFormula, Shown } from '../opened';
import { errorText } from './giveBack';

/** A number is kept in as many digits (ECMA-376 Part 1, 18.17.5.2); with more, what adding up leaves over would be seen. */
const DIGITS = 15;

/** What a file kept and what its formula comes to here; numbers as the cell shows them, unless they look the same then. */
export function shownBoth(
  file: CellFormula['value'],
  here: Seen,
  pattern: string | undefined,
): { readonly file: Shown; readonly here: Shown } {
  const both = (way: (value: number) => string) => ({ file: shown(file, way), here: shown(here, way) });
  const asInCell = both((value) => formatted(value, pattern));
  return asInCell.file.text === asInCell.here.text ? both(plainNumber) : asInCell;
}

function shown(value: Seen, number: (value: number) => string): Shown {
  if (value === null || value === '') return { kind: 'blank', text: '' };
  if (typeof value === 'number') return { kind: 'number', text: number(value) };
  if (typeof value === 'boolean') return { kind: 'truth', text: value ? 'TRUE' : 'FALSE' };
  if (typeof value === 'object') return { kind: 'error', text: value.error };
  return { kind: errorText(value) ? 'error' : 'text', text: value };
}

function formatted(value: number, pattern: string | undefined): string {
  if (pattern === undefined) return plainNumber(value);
  try {
    return numfmt.format(pattern, value, { throws: true }).trim() || plainNumber(value);
  } catch {
    return plainNumber(value);
  }
}

function plainNumber(value: number): string {
  return String(Number(value.toPrecision(DIGITS)));
}
