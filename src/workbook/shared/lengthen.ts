/** Making a table longer: where its new rows come, whether they may, and how a table is seen once it was made longer or wider. */
import { PortError } from '../port';
import type { Block, BlockSeen, Change, TableSeen } from '../port';
import { nameCells, named, overlap, sameName } from './address';
import { demandLooked, isTable, whatWasThere } from './looked';
import type { Looked } from './looked';

export type Lengthen = Extract<Change, { do: 'lengthen' }>;

/** The rows right below a table, as wide as it is. */
export function rowsBelow({ at }: TableSeen, rows: number): Block {
  return { ...at, row: at.row + at.rows, rows };
}

/** A looked-at table that a change makes longer or wider. Throws `notLookedAt` where nobody looked at it. */
export function tableNamed(name: string, looked: Looked): TableSeen {
  const table = looked.find((seen) => isTable(seen) && sameName(seen.name, name));
  if (!table || !isTable(table)) throw new PortError('notLookedAt', [name]);
  return table;
}

/** Throws a PortError where a table may not be made longer, judged by what was looked at. */
export function refuseLengthen(change: Lengthen, looked: Looked): void {
  if (!Number.isInteger(change.rows) || change.rows < 1) {
    throw new RangeError(`${change.table} was to get ${change.rows} rows more.`);
  }
  const table = tableNamed(change.table, looked);
  const below = rowsBelow(table, change.rows);
  demandLooked(below, whatWasThere(below, looked));
  if (looked.some((seen) => seen.protected && sameName(seen.at.sheet, below.sheet))) {
    throw new PortError('protected', [below.sheet]);
  }
  if (table.filtered) throw new PortError('filtered', [table.name]);
  refuseOccupied(table, below, looked);
}

/** Throws a PortError where cells into which a table is to grow, below it or beside it, are not free. */
export function refuseOccupied(table: TableSeen, below: Block, looked: Looked): void {
  const others = looked.filter(isTable).filter((other) => other !== table && overlap(other.at, below));
  const blocks = looked.filter((seen): seen is BlockSeen => !isTable(seen) && overlap(seen.at, below) !== null);
  // That the block touches the table itself tells nothing, unless it begins below it: then a row of totals stands there.
  const touching = blocks.flatMap(({ at, tables }) =>
    tables.filter((name) => at.row >= table.at.row + table.at.rows || !sameName(name, table.name)),
  );
  const inTheWay = [...new Set([...others.map(({ name }) => name), ...touching])];
  if (inTheWay.some((name) => !sameName(name, table.name))) {
    throw new PortError(
      'tableInTheWay',
      inTheWay.filter((name) => !sameName(name, table.name)),
    );
  }
  const merged = blocks.flatMap(({ merged: areas }) => areas).filter((area) => overlap(area, below));
  if (merged.length > 0) throw new PortError('merged', [...new Set(merged.map(named))]);
  const filled = blocks.flatMap((seen) => filledCells(seen, below));
  if (filled.length > 0) throw new PortError('belowTable', nameCells(filled));
  if (inTheWay.length > 0) throw new PortError('belowTable', [named(below)]);
}

/** Cells of a block that hold something, or show what a formula elsewhere fills in. */
function filledCells(seen: BlockSeen, within: Block): Pick<Block, 'sheet' | 'row' | 'column'>[] {
  const shared = overlap(seen.at, within);
  if (!shared) return [];
  const found: Pick<Block, 'sheet' | 'row' | 'column'>[] = [];
  for (let row = shared.row; row < shared.row + shared.rows; row += 1) {
    for (let column = shared.column; column < shared.column + shared.columns; column += 1) {
      const value = seen.values[row - seen.at.row]?.[column - seen.at.column] ?? null;
      const formula = seen.formulas[row - seen.at.row]?.[column - seen.at.column] ?? null;
      if ((value !== null && value !== '') || formula !== null) found.push({ sheet: shared.sheet, row, column });
    }
  }
  return found;
}

/** What was looked at, as it stands once a change is made: a table that was made longer or wider ends further away. */
export function afterResizing(looked: Looked, change: Change): Looked {
  if (change.do === 'widen') return withTable(looked, change.table, (table) => widened(table, change.headers));
  if (change.do === 'lengthen') return withTable(looked, change.table, (table) => lengthened(table, change.rows));
  return looked;
}

function withTable(looked: Looked, name: string, grow: (table: TableSeen) => TableSeen): Looked {
  return looked.map((seen) => (isTable(seen) && sameName(seen.name, name) ? grow(seen) : seen));
}

function lengthened(table: TableSeen, count: number): TableSeen {
  const { at, headers, rows } = table;
  const blanks = Array.from({ length: count }, () => headers.map(() => null));
  return { ...table, at: { ...at, rows: at.rows + count }, rows: [...rows, ...blanks] };
}

function widened(table: TableSeen, more: readonly string[]): TableSeen {
  const { at, headers, rows, formulas } = table;
  const blanks = more.map(() => null);
  return {
    ...table,
    at: { ...at, columns: at.columns + more.length },
    headers: [...headers, ...more],
    rows: rows.map((row) => [...row, ...blanks]),
    ...(formulas ? { formulas: formulas.map((row) => [...row, ...blanks]) } : {}),
  };
}
