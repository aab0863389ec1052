/**
 * Cells that Excel filled by itself when a table became longer: a column that is calculated throughout puts its formula into the new
 * rows. Made as short as it was, the table would leave these formulas below it, where nobody had put any.
 */
import type { BlockSeen, Change, Receipt, TableSeen, Written } from '../port';
import { holdsCell, sameName } from '../shared/address';
import { calls, cellNow } from '../shared/cellNow';
import type { Place } from '../shared/cellNow';
import { afterResizing, rowsBelow, tableNamed } from '../shared/lengthen';
import type { BeforeCell, Looked } from '../shared/looked';

/** Rows that changes put below their tables, which were seen blank, as blocks into which nothing was put. */
export function addedRows(changes: readonly Change[], looked: Looked): Written[] {
  let seen = looked;
  return changes.flatMap((change) => {
    const before = seen;
    seen = afterResizing(seen, change);
    if (change.do !== 'lengthen') return [];
    const at = rowsBelow(tableNamed(change.table, before), change.rows);
    const lines = <T>(cell: T): T[][] => Array.from({ length: at.rows }, () => Array<T>(at.columns).fill(cell));
    return [{ at, before: lines(null), put: lines({ skip: true } as const) }];
  });
}

interface SelfFilled extends Place {
  readonly was: BeforeCell;
}

/**
 * The cells among added rows that hold a formula which is no call of ours, under a column of a longer table that holds formulas.
 *
 * @param now the added rows as they stand
 * @param longer tables that did become longer, as they were
 */
export function selfFilled(
  { at, before }: Written,
  now: BlockSeen | undefined,
  longer: readonly TableSeen[],
  { written }: Receipt,
): SelfFilled[] {
  const table = longer.find((each) => {
    const { sheet, row, column, rows } = each.at;
    return sameName(sheet, at.sheet) && column === at.column && row + rows <= at.row;
  });
  if (!table?.formulas || !now?.sheetExists) return [];
  const calculated = table.headers.map((_, across) => table.formulas?.some((line) => line[across] != null) === true);
  return before.flatMap((line, down) =>
    line.flatMap((was, across) => {
      const place = { sheet: at.sheet, row: at.row + down, column: at.column + across };
      const { formula } = cellNow(now, place);
      if (formula === null || !calculated[across] || isOurCall(place, formula, written)) return [];
      return typeof was === 'object' && was?.formula === formula ? [] : [{ ...place, was }];
    }),
  );
}

function isOurCall({ sheet, row, column }: Place, formula: string, written: readonly Written[]): boolean {
  return written.some(({ at, put }) => {
    if (!holdsCell(at, sheet, row, column)) return false;
    const cell = put[row - at.row]?.[column - at.column];
    return typeof cell === 'object' && cell !== null && 'call' in cell && calls(formula, cell.call);
  });
}

/** A block as it would stand had Excel filled nothing in: a formula in place of what we put is no person's. */
export function unfilled(seen: BlockSeen, filled: readonly SelfFilled[]): BlockSeen {
  const within = filled.filter(({ sheet, row, column }) => holdsCell(seen.at, sheet, row, column));
  if (within.length === 0) return seen;
  const values = seen.values.map((line) => [...line]);
  const formulas = seen.formulas.map((line) => [...line]);
  for (const { row, column, was } of within) {
    const [down, across] = [row - seen.at.row, column - seen.at.column];
    const isFormula = typeof was === 'object' && was !== null;
    if (values[down]) values[down][across] = isFormula ? null : was;
    if (formulas[down]) formulas[down][across] = isFormula ? was.formula : null;
  }
  return { ...seen, values, formulas };
}

/** What each of them held, to be put back. */
export function putsOf({ at }: Written, filled: readonly SelfFilled[]): (BeforeCell | undefined)[][] {
  const cells = Array.from({ length: at.rows }, () => Array<BeforeCell | undefined>(at.columns).fill(undefined));
  for (const { row, column, was } of filled) {
    const line = cells[row - at.row];
    if (line) line[column - at.column] = was;
  }
  return cells;
}
