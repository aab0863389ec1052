/** Ranges that a worksheet function is handed, as tables with their header row first. */
import { cellError } from './cellError';
import { plainValue } from './cellInput';

/** Rows of cells: blanks as empty text, errors as their text. */
type Cells = unknown[][];

/** A table that is needed. */
export function table(given: unknown, field: string): Cells {
  const cells = optionalTable(given);
  if (!cells) throw cellError({ code: 'blank', field, expected: 'a table with its header row' });
  return cells;
}

/** A table, or null where nothing or a blank cell was given. */
export function optionalTable(given: unknown): Cells | null {
  const rows: unknown[] = Array.isArray(given) ? given : [given];
  const cells = rows.map((row) => (Array.isArray(row) ? row : [row]).map((cell: unknown) => plainValue(cell) ?? ''));
  const only = cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
  // One cell holds no table: it is a blank one, which some platforms hand over as 0.
  return cells.length === 0 || only === '' || only === 0 ? null : cells;
}

/** One club under its header row; refused where they are not one row each, or do not span the same columns. */
export function clubTable(club: unknown, header: unknown): Cells {
  const headings = oneRow(header, 'header');
  const cells = oneRow(club, 'club');
  if (cells.length !== headings.length) {
    const expected = `it is ${cells.length} wide and header ${headings.length}; both must span the same columns`;
    throw cellError({ code: 'contradiction', field: 'club', expected });
  }
  return [headings, cells];
}

function oneRow(given: unknown, field: string): unknown[] {
  const [first, ...more] = table(given, field);
  if (!first || more.length > 0) {
    const expected = `one row is needed, and ${more.length + 1} were given`;
    throw cellError({ code: 'contradiction', field, expected });
  }
  return first;
}
