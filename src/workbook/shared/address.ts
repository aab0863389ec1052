import type { Block } from '../port';

/** Letters of a column counted from 0. @example columnLetters(27) //=> 'AB' */
export function columnLetters(column: number): string {
  let letters = '';
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) {
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  }
  return letters;
}

/** Column, counted from 0, of its letters. @example columnOf('AB') //=> 27 */
export function columnOf(letters: string): number {
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return column - 1;
}

/** A sheet's name as a formula or an address wants it. @example sheetInFormula("Bob's rack") //=> "'Bob''s rack'" */
export function sheetInFormula(sheet: string): string {
  // Bare only when no spreadsheet could take it for a number, a cell address or an operator.
  const bare = /^[A-Za-z_][A-Za-z_]*$/.test(sheet) && !/^(r|c|rc|true|false)$/i.test(sheet);
  return bare ? sheet : `'${sheet.replaceAll("'", "''")}'`;
}

/** Address without its sheet; a single cell stands alone. @example addressOf({ sheet: 'S', row: 4, column: 1, rows: 2, columns: 1 }) //=> 'B5:B6' */
export function addressOf(block: Omit<Block, 'sheet'>, fix: '' | '$' = ''): string {
  const cell = (row: number, column: number): string => `${fix}${columnLetters(column)}${fix}${row + 1}`;
  const first = cell(block.row, block.column);
  if (block.rows === 1 && block.columns === 1) return first;
  return `${first}:${cell(block.row + block.rows - 1, block.column + block.columns - 1)}`;
}

/** Address with its sheet, as people are told it. @example named({ sheet: 'Clubs', row: 4, column: 19, rows: 1, columns: 1 }) //=> 'Clubs!T5' */
export function named(block: Block): string {
  return `${sheetInFormula(block.sheet)}!${addressOf(block)}`;
}

/** Address with its sheet that does not shift when copied. @example fixed({ sheet: 'S', row: 0, column: 0, rows: 2, columns: 2 }) //=> 'S!$A$1:$B$2' */
export function fixed(block: Block): string {
  return `${sheetInFormula(block.sheet)}!${addressOf(block, '$')}`;
}

const maxRows = 1_048_576;
const maxColumns = 16_384;

/** A block from an address such as `'My sheet'!$A$1:B2`, `Clubs!A:C` or `B5`; `null` when it is none (`#REF!`, several areas). */
export function blockOf(address: string, sheetIfBare = ''): Block | null {
  const parts = /^=?(?:(?:'((?:[^']|'')+)'|([^'!,:]+))!)?(\$?[A-Z]{0,3}\$?\d*)(?::(\$?[A-Z]{0,3}\$?\d*))?$/i.exec(
    address,
  );
  if (!parts) return null;
  const first = corner(parts[3] ?? '');
  const last = corner(parts[4] ?? parts[3] ?? '');
  if (!first || !last) return null;
  const row = first.row ?? 0;
  const column = first.column ?? 0;
  const sheet = parts[1]?.replaceAll("''", "'") ?? parts[2] ?? sheetIfBare;
  const rows = (last.row ?? maxRows - 1) - row + 1;
  const columns = (last.column ?? maxColumns - 1) - column + 1;
  return rows > 0 && columns > 0 ? { sheet, row, column, rows, columns } : null;
}

function corner(text: string): { row: number | null; column: number | null } | null {
  const parts = /^\$?([A-Z]*)\$?(\d*)$/i.exec(text);
  if (!parts || (!parts[1] && !parts[2])) return null;
  return { row: parts[2] ? Number(parts[2]) - 1 : null, column: parts[1] ? columnOf(parts[1]) : null };
}

/** Sheet names are told apart as spreadsheets do: without regard to case. */
export function sameName(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}

export function sameBlock(one: Block, other: Block): boolean {
  return contains(one, other) && contains(other, one);
}

/** The cells two blocks share, `null` when none. */
export function overlap(one: Block, other: Block): Block | null {
  if (!sameName(one.sheet, other.sheet)) return null;
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
  return rows > 0 && columns > 0 ? { sheet: one.sheet, row, column, rows, columns } : null;
}

export function contains(outer: Block, inner: Block): boolean {
  const shared = overlap(outer, inner);
  return shared !== null && shared.rows === inner.rows && shared.columns === inner.columns;
}

export function holdsCell(block: Block, sheet: string, row: number, column: number): boolean {
  return contains(block, { sheet, row, column, rows: 1, columns: 1 });
}

/** Names a list of cells, neighbours in a column joined, so that a message stays readable: `Clubs!T5:T9`. */
export function nameCells(
  cells: readonly { readonly sheet: string; readonly row: number; readonly column: number }[],
): string[] {
  const sorted = [...cells].sort(
    (a, b) => (a.sheet < b.sheet ? -1 : a.sheet > b.sheet ? 1 : 0) || a.column - b.column || a.row - b.row,
  );
  const runs: { sheet: string; row: number; column: number; rows: number; columns: number }[] = [];
  for (const cell of sorted) {
    const last = runs.at(-1);
    if (last && last.sheet === cell.sheet && last.column === cell.column && last.row + last.rows === cell.row) {
      last.rows += 1;
    } else if (
      !last ||
      last.sheet !== cell.sheet ||
      last.column !== cell.column ||
      last.row + last.rows - 1 !== cell.row
    ) {
      runs.push({ sheet: cell.sheet, row: cell.row, column: cell.column, rows: 1, columns: 1 });
    }
  }
  return runs.map(named);
}
