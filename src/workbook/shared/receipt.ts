import { drained, groupedBy } from '../../core/index';
import { mapSteps } from '../pace';
import { PortError } from '../port';
import type {
  Block,
  BlockSeen,
  Change,
  Dressed,
  Look,
  MovedName,
  Put,
  Receipt,
  RowsOf,
  Seen,
  Widened,
  Written,
  WrittenRows,
} from '../port';
import { holdsCell, overlap, sameBlock, sameName } from './address';
import { isSeenBlank, isTable, whatWasThere } from './looked';
import type { BeforeCell, Looked } from './looked';
import { afterResizing, tableNamed } from './lengthen';
import { putsAnything, standsAlready, tableBlock } from './refuse';
import { calledBy, columnNames } from './rows';

/** Names of what stood in the workbook before a change. */
export interface Standing {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
  readonly names: readonly string[];
  /** Where a name points; null where there is none, or where it points nowhere. */
  placeOf(name: string): Block | null;
}

type PutCell = Written['put'][number][number];
const skip = { skip: true } as const;

/** The receipt of changes that `refuseUnsafe` let pass. Where two writes overlap, the later one counts. */
export function buildReceipt(changes: readonly Change[], looked: Looked, label: string, standing: Standing): Receipt {
  return drained(receiptSteps(changes, looked, label, standing));
}

/** {@link buildReceipt} in steps. */
export function* receiptSteps(
  changes: readonly Change[],
  looked: Looked,
  label: string,
  standing: Standing,
): Generator<void, Receipt> {
  const fresh = (names: readonly string[], name: string): boolean => !names.some((other) => sameName(other, name));
  const unique = (names: readonly string[]): string[] => [...new Set(names)];
  const widened = widenedTables(changes, looked);
  return {
    label,
    written: yield* writtenSteps(changes, changes.reduce(afterResizing, looked), (name) =>
      placeAfter(name, changes, standing),
    ),
    madeSheets: unique(changes.flatMap((c) => (c.do === 'sheet' && fresh(standing.sheets, c.name) ? [c.name] : []))),
    madeTables: unique(changes.flatMap((c) => (c.do === 'table' && fresh(standing.tables, c.name) ? [c.name] : []))),
    madeNames: unique(changes.flatMap((c) => (c.do === 'name' && fresh(standing.names, c.name) ? [c.name] : []))),
    movedNames: movedNames(changes, standing),
    dressed: yield* dressedSteps(changes, looked),
    ...(widened.length > 0 ? { widened } : {}),
  };
}

function widenedTables(changes: readonly Change[], looked: Looked): Widened[] {
  let seen = looked;
  return changes.flatMap((change) => {
    const before = seen;
    seen = afterResizing(seen, change);
    if (change.do !== 'widen') return [];
    const { name, at } = tableNamed(change.table, before);
    return [{ table: name, columns: at.columns, headers: change.headers }];
  });
}

function movedNames(changes: readonly Change[], standing: Standing): MovedName[] {
  // Where a name is moved twice, the last place counts.
  const moves = new Map(changes.flatMap((change) => (change.do === 'name' ? [[change.name, change.at] as const] : [])));
  return [...moves].flatMap(([name, to]) => {
    const from = standing.placeOf(name);
    return from && !sameBlock(from, to) ? [{ name, from, to }] : [];
  });
}

/** Where a name points once the changes are made. */
function placeAfter(name: string, changes: readonly Change[], standing: Standing): Block | null {
  const moves = changes.flatMap((change) => (change.do === 'name' && sameName(change.name, name) ? [change.at] : []));
  return moves.at(-1) ?? standing.placeOf(name);
}

function* writtenSteps(
  changes: readonly Change[],
  looked: Looked,
  placeOf: Standing['placeOf'],
): Generator<void, Written[]> {
  const shown = shownAfter(changes, looked);
  const written: { at: Block; rows?: WrittenRows; whole?: boolean; before: BeforeCell[][]; put: PutCell[][] }[] = [];
  for (const change of changes) {
    if (change.do !== 'write' || !putsAnything(change)) continue;
    yield;
    for (const earlier of written) forget(earlier, change.at, change.cells);
    written.push({
      at: change.at,
      ...(change.of ? { rows: rowsOf(change.at, change.of, looked, { placeOf, shown }) } : {}),
      ...(change.whole ? { whole: true } : {}),
      before: yield* mapSteps(whatWasThere(change.at, looked), (line) => line.map((cell) => cell ?? null)),
      put: yield* mapSteps(change.cells, (line) => line.map(toPut)),
    });
  }
  return written;
}

/** What each cell shows once the changes are made, of those that were looked at. */
function shownAfter(changes: readonly Change[], looked: Looked): Shown {
  const blocks = looked.filter((seen): seen is BlockSeen => !isTable(seen));
  const writes = changes.filter((change) => change.do === 'write');
  return (sheet, row, column) => {
    const write = writes.findLast(({ at, cells }) => {
      return holdsCell(at, sheet, row, column) && cells[row - at.row]?.[column - at.column] !== undefined;
    });
    const put = write?.cells[row - write.at.row]?.[column - write.at.column];
    if (put !== undefined) return typeof put === 'object' ? null : put;
    const seen = blocks.find((block) => holdsCell(block.at, sheet, row, column));
    return seen?.values[row - seen.at.row]?.[column - seen.at.column] ?? null;
  };
}

type Shown = (sheet: string, row: number, column: number) => Seen;

interface Around {
  readonly placeOf: Standing['placeOf'];
  readonly shown: Shown;
}

/** Rows of plain cells that have a name: called by what stands in them afterwards, so that new rows have a name, too. */
function rowsOfNamed(
  at: Block,
  of: RowsOf & { readonly headingRows: number },
  { placeOf, shown }: Around,
): WrittenRows {
  const list = placeOf(of.table);
  if (!list) throw new PortError('notLookedAt', [of.table]);
  const line = (row: number): Seen[] =>
    Array.from({ length: list.columns }, (_, across) => shown(list.sheet, row, list.column + across));
  const headings = columnNames(Array.from({ length: of.headingRows }, (_, down) => line(list.row + down)));
  const left = at.column - list.column;
  return {
    ...of,
    called: Array.from({ length: at.rows }, (_, down) =>
      at.row + down < list.row + of.headingRows ? null : calledBy(line(at.row + down), headings, of.by),
    ),
    headings: headings.slice(left, left + at.columns),
  };
}

function rowsOf(at: Block, of: RowsOf, looked: Looked, around: Around): WrittenRows {
  const { headingRows } = of;
  if (headingRows !== undefined) return rowsOfNamed(at, { ...of, headingRows }, around);
  const table = looked.find((seen) => isTable(seen) && sameName(seen.name, of.table));
  if (!table || !isTable(table)) throw new PortError('notLookedAt', [of.table]);
  const lines = table.rows.slice(at.row - table.at.row - 1, at.row - table.at.row - 1 + at.rows);
  const left = at.column - table.at.column;
  return {
    ...of,
    called: lines.map((line) => calledBy(line, table.headers, of.by)),
    headings: table.headers.slice(left, left + at.columns),
  };
}

function toPut(cell: Put): PutCell {
  if (cell === undefined) return skip;
  return typeof cell === 'object' && cell !== null ? { call: cell.call } : cell;
}

/** Marks as skipped what a later write puts anew. */
function forget(earlier: { at: Block; put: PutCell[][] }, at: Block, cells: readonly (readonly Put[])[]): void {
  const shared = overlap(earlier.at, at);
  if (!shared) return;
  for (let row = shared.row; row < shared.row + shared.rows; row += 1) {
    for (let column = shared.column; column < shared.column + shared.columns; column += 1) {
      if (cells[row - at.row]?.[column - at.column] === undefined) continue;
      const line = earlier.put[row - earlier.at.row];
      if (line) line[column - earlier.at.column] = skip;
    }
  }
}

function* dressedSteps(changes: readonly Change[], looked: Looked): Generator<void, Dressed[]> {
  // Hundreds of pages in one write are dressed by thousands of changes: each looks only at what was seen of its own sheet.
  const onSheet = groupedBy(looked, ({ at }) => at.sheet.toLowerCase());
  const blocks = new Map<string, { at: Block; looks: Look[] } | null>();
  for (const change of changes) {
    const dressed = dressedBy(change, looked);
    if (!dressed) continue;
    const { sheet, row, column, rows, columns } = dressed.at;
    const key = `${sheet.toLowerCase()}\n${row} ${column} ${rows} ${columns}`;
    const known = blocks.get(key);
    yield;
    if (known) known.looks = [...new Set([...known.looks, ...dressed.looks])];
    else if (known === undefined) {
      blocks.set(key, isSeenBlank(dressed.at, onSheet.get(sheet.toLowerCase()) ?? []) ? dressed : null);
    }
  }
  return [...blocks.values()].filter((block) => block !== null);
}

function dressedBy(change: Change, looked: Looked): { at: Block; looks: Look[] } | null {
  switch (change.do) {
    case 'table':
      return standsAlready(change, looked) ? null : { at: tableBlock(change.at), looks: ['table'] };
    case 'format':
      return { at: change.at, looks: Object.keys(change.format) as (keyof typeof change.format)[] };
    case 'choices':
      return { at: change.at, looks: ['choices'] };
    case 'highlight':
      // Those beside a person's cannot be told from these any more.
      return change.beside ? null : { at: change.at, looks: ['highlight'] };
    default:
      return null;
  }
}
