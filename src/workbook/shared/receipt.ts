import { groupedBy } from '../../core/index';
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
import { standsAlready, tableBlock } from './refuse';
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
  const fresh = (names: readonly string[], name: string): boolean => !names.some((other) => sameName(other, name));
  const unique = (names: readonly string[]): string[] => [...new Set(names)];
  const widened = widenedTables(changes, looked);
  return {
    label,
    written: writtenBlocks(changes, changes.reduce(afterResizing, looked), (name) =>
      placeAfter(name, changes, standing),
    ),
    madeSheets: unique(changes.flatMap((c) => (c.do === 'sheet' && fresh(standing.sheets, c.name) ? [c.name] : []))),
    madeTables: unique(changes.flatMap((c) => (c.do === 'table' && fresh(standing.tables, c.name) ? [c.name] : []))),
    madeNames: unique(changes.flatMap((c) => (c.do === 'name' && fresh(standing.names, c.name) ? [c.name] : []))),
    movedNames: movedNames(changes, standing),
    dressed: dressedBlocks(changes, looked),
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

function writtenBlocks(changes: readonly Change[], looked: Looked, placeOf: Standing['placeOf']): Written[] {
  const shown = shownAfter(changes, looked);
  const written: { at: Block; rows?: WrittenRows; whole?: boolean; before: BeforeCell[][]; put: PutCell[][] }[] = [];
  for (const change of changes) {
    if (change.do !== 'write' || !change.cells.some((line) => line.some((cell) => cell !== undefined))) continue;
    for (const earlier of written) forget(earlier, change.at, change.cells);
    written.push({
      at: change.at,
      ...(change.of ? { rows: rowsOf(change.at, change.of, looked, { placeOf, shown }) } : {}),
      ...(change.whole ? { whole: true } : {}),
      before: whatWasThere(change.at, looked).map((line) => line.map((cell) => cell ?? null)),
      put: change.cells.map((line) => line.map(toPut)),
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

function dressedBlocks(changes: readonly Change[], looked: Looked): Dressed[] {
  // Hundreds of pages in one write are dressed by thousands of changes: each looks only at what was seen of its own sheet.
  const onSheet = groupedBy(looked, ({ at }) => at.sheet.toLowerCase());
  const blocks = new Map<string, { at: Block; looks: Look[] } | null>();
  for (const change of changes) {
    const dressed = dressedBy(change, looked);
    if (!dressed) continue;
    const { sheet, row, column, rows, columns } = dressed.at;
    const key = `${sheet.toLowerCase()}\n${row} ${column} ${rows} ${columns}`;
    const known = blocks.get(key);
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

/* ------------------------------------------------------------ keeping it */

const packedMark = 'receipt-packed-1:';

interface PackedBlock {
  readonly at: Block;
  readonly rows?: WrittenRows;
  readonly whole?: boolean;
  readonly before: readonly unknown[];
  readonly put: readonly unknown[];
}

/**
 * The receipt as short text: equal cells in a row are counted, and each text stands once. A plan of 5,000 clubs written over
 * blank cells would otherwise fill half of what one request may carry.
 */
export function packReceipt(receipt: Receipt): string {
  const known = packedTexts.get(receipt);
  if (known !== undefined) return known;
  const text = packAnew(receipt);
  packedTexts.set(receipt, text);
  return text;
}

/** A receipt is packed when it is kept, and once more to know what is kept. */
const packedTexts = new WeakMap<Receipt, string>();

function packAnew(receipt: Receipt): string {
  const texts = new Map<string, number>();
  const written: PackedBlock[] = receipt.written.map(({ before, put, ...where }) => ({
    ...where,
    before: pack(before.flat(), texts),
    put: pack(put.flat(), texts),
  }));
  return packedMark + JSON.stringify({ ...receipt, written, texts: [...texts.keys()] });
}

/** Whether a kept text is a packed receipt. */
export function isPacked(text: string): boolean {
  return text.startsWith(packedMark);
}

/** The receipt from `packReceipt`. Throws a SyntaxError when the text is none. */
export function unpackReceipt(text: string): Receipt {
  if (!isPacked(text)) throw new SyntaxError('This text is no packed receipt.');
  const { texts, ...packed } = JSON.parse(text.slice(packedMark.length)) as Omit<Receipt, 'written'> & {
    readonly written: readonly PackedBlock[];
    readonly texts: readonly string[];
  };
  const written = packed.written.map(({ before, put, ...where }) => ({
    ...where,
    before: inRows(unpack(before, texts) as BeforeCell[], where.at.columns),
    put: inRows(unpack(put, texts) as PutCell[], where.at.columns),
  }));
  return { ...packed, written };
}

/* A run is [cell, how often]; a lone cell stands for itself. A text is ['its number in the list'] so that no cell can be
   taken for it: numbers, truth values and null stand as they are, objects as objects. */
function pack(cells: readonly unknown[], texts: Map<string, number>): unknown[] {
  const runs: unknown[] = [];
  for (let from = 0; from < cells.length;) {
    let to = from + 1;
    while (to < cells.length && sameCell(cells[to], cells[from])) to += 1;
    const cell = typeof cells[from] === 'string' ? [textNumber(cells[from] as string, texts)] : cells[from];
    runs.push(to - from === 1 ? cell : [cell, to - from]);
    from = to;
  }
  return runs;
}

function unpack(runs: readonly unknown[], texts: readonly string[]): unknown[] {
  const cells: unknown[] = [];
  for (const run of runs) {
    const repeated = Array.isArray(run) && run.length === 2;
    const packed: unknown = repeated ? run[0] : run;
    const cell: unknown = Array.isArray(packed) ? texts[packed[0] as number] : packed;
    const times = repeated ? (run[1] as number) : 1;
    for (let i = 0; i < times; i += 1) cells.push(cell);
  }
  return cells;
}

function sameCell(one: unknown, other: unknown): boolean {
  if (typeof one !== 'object' || one === null || typeof other !== 'object' || other === null) return one === other;
  return JSON.stringify(one) === JSON.stringify(other);
}

function textNumber(text: string, texts: Map<string, number>): number {
  const known = texts.get(text);
  if (known !== undefined) return known;
  texts.set(text, texts.size);
  return texts.size - 1;
}

function inRows<T>(cells: readonly T[], columns: number): T[][] {
  const rows: T[][] = [];
  for (let from = 0; from < cells.length; from += columns) rows.push(cells.slice(from, from + columns));
  return rows;
}
