import type { Block, BlockSeen } from '../port';
import { blockOf, holdsCell } from '../shared/address';
import { nothingThere } from '../shared/looked';
import { withoutSpilled } from './cells';
import type { Cells } from './cells';
import type { Extras } from './host';
import type { CellSource } from './sources';
import { holds } from './standing';
import type { Stood } from './standing';

/** How far down a block's first column formulas are looked for that fill more than their own cell. */
const mostAnchors = 12;

/** How many parts of a block are asked whether any formula in them fills more than its own cell. */
const mostParts = 200;

/** How many formulas are asked in one request what they fill: each takes about a thousand characters of it. */
const spillsInRequest = 500;

/** What asking needs besides the context. */
export interface Asking {
  readonly context: Excel.RequestContext;
  readonly extras: Extras;
  /** What is known to stand; `null` when whatever is missing shall answer as a null object. */
  readonly stood: Stood | null;
  /** Takes the cells to be read. */
  readonly cells: (range: Excel.Range, place: () => Block | null) => CellSource;
  /**
   * Takes what can be asked only once the cells are known, and then again after each further round trip as long as it asked for anything;
   * whether it did. Few workbooks need these.
   */
  readonly later: (ask: () => boolean) => void;
}

/** Cells that may hold a formula which fills others: `[down, across]` within the block. */
export type Anchors = readonly (readonly [number, number])[];

export function firstColumn(at: Block): Anchors {
  return Array.from({ length: Math.min(at.rows, mostAnchors) }, (_, down) => [down, 0] as const);
}

/** Asks for a block and what stands in the way of writing it; the answer can be had after the round trip. */
export function askBlock(asking: Asking, at: Block, anchors: Anchors = firstColumn(at)): () => BlockSeen {
  const { context, stood, extras } = asking;
  if (stood && !holds(stood.sheets, at.sheet)) return () => nothingThere(at);
  const sheet = context.workbook.worksheets.getItemOrNullObject(at.sheet).load('name');
  const protection = sheet.protection.load('protected');
  const range = sheet.getRangeByIndexes(at.row, at.column, at.rows, at.columns);
  const source = asking.cells(range, () => (sheet.isNullObject ? null : at));
  const tables = range.getTables().load('items/name');
  const highlights = range.conditionalFormats.load('items/type');
  const merged = extras.merged ? range.getMergedAreasOrNullObject().load('address') : null;
  const spilling = extras.spill ? anchors.map(([down, across]) => askSpill(range, down, across)) : [];
  if (extras.spill) {
    range.load('hasSpill');
    const asks = askSpills({ sheet, range, at, spilling }, source, anchors);
    asking.later(() => !asks.next().done);
  }
  return () => {
    if (sheet.isNullObject) return nothingThere(at);
    const spills = spilling.flatMap((spill) => blocksOf(spill, at.sheet));
    const cells: Cells = withoutSpilled(source.cells(), at, spills);
    return {
      at,
      ...cells,
      ...(spills.length > 0 ? { spills } : {}),
      sheetExists: true,
      protected: protection.protected,
      merged: merged ? blocksOf(merged, at.sheet) : [],
      tables: tables.items.map((table) => table.name),
      ...(highlights.items.length > 0 ? { highlighted: true } : {}),
    };
  };
}

/** True and null mean that all cells, or some of them, are filled so. */
function hasSpill(range: Excel.Range): boolean {
  return range.hasSpill !== false;
}

interface Spilling {
  readonly sheet: Excel.Worksheet;
  readonly range: Excel.Range;
  readonly at: Block;
  /** Takes what is asked. */
  readonly spilling: Excel.Range[];
}

/** Asks what every formula of a block fills, wherever a person has put it; a round trip is due after each step. */
function* askSpills(
  { sheet, range, at, spilling }: Spilling,
  source: CellSource,
  anchors: Anchors,
): Generator<void, void> {
  if (sheet.isNullObject || !hasSpill(range)) return;
  const known = new Set(anchors.map((anchor) => anchor.join()));
  let left = formulasIn(source.cells(), known);
  if (left.length > spillsInRequest) {
    // Most formulas fill their own cell alone, and most parts of a block hold none that does not.
    const rows = Math.ceil(at.rows / mostParts);
    const parts = new Map<number, Excel.Range>();
    for (const [down] of left) {
      const part = Math.floor(down / rows);
      if (parts.has(part)) continue;
      const count = Math.min(rows, at.rows - part * rows);
      parts.set(part, sheet.getRangeByIndexes(at.row + part * rows, at.column, count, at.columns).load('hasSpill'));
    }
    yield;
    const spills = new Set([...parts].flatMap(([part, cells]) => (hasSpill(cells) ? [part] : [])));
    left = left.filter(([down]) => spills.has(Math.floor(down / rows)));
  }
  while (left.length > 0) {
    const asked = left.slice(0, spillsInRequest).map(([down, across]) => askSpill(range, down, across));
    spilling.push(...asked);
    yield;
    // A host may repeat a formula in the cells that it fills; these fill nothing.
    const filled = asked.flatMap((spill) => blocksOf(spill, at.sheet));
    left = left.slice(spillsInRequest).filter(([down, across]) => {
      return !filled.some((block) => holdsCell(block, at.sheet, at.row + down, at.column + across));
    });
  }
}

function formulasIn({ formulas }: Cells, known: ReadonlySet<string>): [number, number][] {
  return formulas.flatMap((line, down) =>
    line.flatMap((formula, across): [number, number][] =>
      formula === null || known.has(`${down},${across}`) ? [] : [[down, across]],
    ),
  );
}

function askSpill(range: Excel.Range, down: number, across: number): Excel.Range {
  return range.getCell(down, across).getSpillingToRangeOrNullObject().load('address');
}

function blocksOf(areas: Excel.Range | Excel.RangeAreas, sheet: string): Block[] {
  if (areas.isNullObject) return [];
  return splitAreas(areas.address).flatMap((address) => {
    const block = blockOf(address);
    return block ? [{ ...block, sheet }] : [];
  });
}

/** The areas of an address; a comma may also be part of a quoted sheet name. */
function splitAreas(address: string): string[] {
  return address.match(/(?:'(?:[^']|'')*'|[^,'])+/g) ?? [];
}
