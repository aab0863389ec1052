/** A formula moved to another cell: what it names without `$` moves along. */
import { columnLetters, columnOf } from '../../shared/address';
import { MOST_COLUMNS, MOST_ROWS } from '../../shared/limits';

/* Texts, names of sheets, references to tables and functions are passed over; then cells, whole columns and whole rows. */
const PIECES =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'!|[\p{L}_][\p{L}\p{N}_.]*!|\[[^\]]*\]|(?<![\p{L}\p{N}_.$])(?<ref>\$?[A-Z]{1,3}\$?\d{1,7}(?![\p{L}\p{N}_.(!])|\$?[A-Z]{1,3}:\$?[A-Z]{1,3}(?![\p{L}\p{N}_.(!])|\$?\d{1,7}:\$?\d{1,7}(?![\p{L}\p{N}_.(!]))|[\p{L}_][\p{L}\p{N}_.]*/giu;

/** The formula moved; null where a reference would leave the sheet. @example shifted('A1*$B$1', 2, 0) //=> 'A3*$B$1' */
export function shifted(text: string, down: number, across: number): string | null {
  let left = false;
  const moved = text.replace(PIECES, (piece: string, ref: string | undefined) => {
    if (ref === undefined) return piece;
    const parts = ref.split(':').map((part) => movedPart(part, down, across));
    if (parts.includes(null)) left = true;
    return parts.join(':');
  });
  return left ? null : moved;
}

/** A cell, a column or a row, moved; null past the edge of the sheet. */
function movedPart(part: string, down: number, across: number): string | null {
  const found = /^(\$?)([A-Z]{0,3})(\$?)(\d*)$/i.exec(part);
  if (!found) return part;
  const [, fixColumn = '', letters = '', fixRow = '', digits = ''] = found;
  // A whole row is written with digits alone, its `$` in front of them.
  const column = letters === '' ? null : columnOf(letters) + (fixColumn ? 0 : across);
  const rowFixed = letters === '' ? fixColumn : fixRow;
  const row = digits === '' ? null : Number(digits) + (rowFixed ? 0 : down);
  if (column !== null && (column < 0 || column >= MOST_COLUMNS)) return null;
  if (row !== null && (row < 1 || row > MOST_ROWS)) return null;
  return `${fixColumn}${column === null ? '' : columnLetters(column)}${fixRow}${row ?? ''}`;
}
