/** Making a table wider: where its new columns come, whether they may, and whether they may go again. */
import { PortError } from '../port';
import type { Block, BlockSeen, Change, TableSeen, Widened } from '../port';
import { nameCells, sameName } from './address';
import { demandLooked, isTable, whatWasThere } from './looked';
import type { Looked } from './looked';
import { refuseOccupied, rowsBelow, tableNamed } from './lengthen';

export type Widen = Extract<Change, { do: 'widen' }>;

/** The cells right of a table, as tall as it is. */
export function columnsBeside({ at }: Pick<TableSeen, 'at'>, columns: number): Block {
  return { ...at, column: at.column + at.columns, columns };
}

/** What has to be looked at before a table is made wider: the cells right of it, and the row below, where its totals may stand. */
export function lookBeforeWidening(table: TableSeen, columns: number): readonly [Block, Block] {
  return [columnsBeside(table, columns), rowsBelow(table, 1)];
}

/** Throws a PortError where a table may not be made wider, judged by what was looked at. */
export function refuseWiden(change: Widen, looked: Looked): void {
  const { headers } = change;
  const table = tableNamed(change.table, looked);
  refuseOddHeaders(change, table);
  const [beside, below] = lookBeforeWidening(table, headers.length);
  for (const block of [beside, below]) demandLooked(block, whatWasThere(block, looked));
  if (looked.some((seen) => seen.protected && sameName(seen.at.sheet, beside.sheet))) {
    throw new PortError('protected', [beside.sheet]);
  }
  if (table.filtered) throw new PortError('filtered', [table.name]);
  refuseOccupied(table, beside, looked);
  // Its totals would not reach the new columns.
  const totals = looked.some(
    (seen) => !isTable(seen) && seen.at.row >= below.row && seen.tables.some((name) => sameName(name, table.name)),
  );
  if (totals) throw new PortError('belowTable', [table.name]);
}

function refuseOddHeaders({ headers, table: name }: Widen, table: TableSeen): void {
  const old = new Set(table.headers.map((header) => header.toLowerCase()));
  const added = headers.map((header) => header.toLowerCase());
  // What the table had before may be alike or blank: that is the shop's business.
  const odd = added.some((header) => header === '' || old.has(header)) || new Set(added).size < added.length;
  if (headers.length === 0 || odd) {
    throw new RangeError(`${name} was to get columns named ${headers.join(', ') || 'nothing'}.`);
  }
}

/** A table that was made wider, as it stands now. */
export interface WidenedNow {
  readonly at: Block;
  /** Its cells, and as many columns right of it as it was given. */
  readonly seen: BlockSeen;
}

/** What is to be done to make a table as narrow as it was, or what stands against it. */
export type Narrowing =
  { readonly name: string; readonly at: Block; readonly blank: Block } | { readonly left: readonly string[] };

/**
 * Whether columns that were added hold nothing of a person's, wherever the table stands now. A table that is narrow already (taking
 * back may have stopped half way) only has its headings blanked.
 */
export function narrowing(
  { table, columns, headers }: Widened,
  now: WidenedNow | null,
  isOurs: (sheet: string, row: number, column: number) => boolean,
): Narrowing {
  if (!now) return { left: [] };
  const { at, seen } = now;
  const narrow = at.columns === columns;
  const to = narrow ? at : { ...at, columns: at.columns - headers.length };
  const still = to.columns > 0 && headers.every((header, i) => seen.values[0]?.[to.columns + i] === header);
  if (!still) return { left: narrow ? [] : [`${table}: ${headers.join(', ')}`] };
  const filled = narrow
    ? []
    : filledBody(seen, to.columns, headers.length).filter((cell) => !isOurs(cell.sheet, cell.row, cell.column));
  if (filled.length > 0) return { left: nameCells(filled) };
  return { name: table, at: to, blank: { ...columnsBeside({ at: to }, headers.length), rows: 1 } };
}

/** Cells below the headings of some columns that hold something. */
function filledBody(
  { at, values, formulas }: BlockSeen,
  from: number,
  count: number,
): Pick<Block, 'sheet' | 'row' | 'column'>[] {
  return values.slice(1).flatMap((line, down) =>
    line.slice(from, from + count).flatMap((value, across) => {
      const formula = formulas[down + 1]?.[from + across] ?? null;
      const used = (value !== null && value !== '') || formula !== null;
      return used ? [{ sheet: at.sheet, row: at.row + 1 + down, column: at.column + from + across }] : [];
    }),
  );
}
