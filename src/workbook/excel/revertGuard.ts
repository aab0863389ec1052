/** Looking once more in the request that takes something back, and putting back what a person had done by then. */
import type { Block, BlockSeen } from '../port';
import { blockOf, contains, named, sameBlock } from '../shared/address';
import type { Looked } from '../shared/looked';
import type { Now, RevertPlan } from '../shared/revert';
import { changedSince } from '../shared/unchanged';
import { ifArrived } from './arrived';
import { foundIn } from './asFound';
import type { AsFound, NameFound, TableFound } from './asFound';
import { startBatch } from './batch';
import type { Batch } from './batch';
import { cellsOf, loadCells } from './cells';
import { ChangedMeanwhile, startGuard } from './guard';
import type { ExcelHost } from './host';
import type { Stood } from './standing';
import { askTableLooks } from './tableLooks';
import type { TableLooks } from './tableLooks';
import { lengthOf, rowParts } from './writeCells';

/** What a plan was made from. */
export interface LookedToRevert {
  readonly plan: RevertPlan;
  readonly now: Now;
  readonly stood: Stood;
  /** Blocks that are tables or lists: whole rows of them must be as they were seen. */
  readonly lists: ReadonlySet<BlockSeen>;
  /** Tables that become smaller by other ways than the plan's, with the cells that they lose. */
  readonly shrunk?: readonly { readonly name: string; readonly from: Block; readonly to: Block }[];
}

/** The client library takes an answer over in one piece, and a page is not to be kept from answering by that; more of them do no harm here. */
const MOST_ANSWERED = 1_800_000;

type Puts = RevertPlan['puts'][number];

export interface RevertGuard {
  readonly batch: Batch;
  /** Asks for tables that go or become smaller, and names that go or are moved, before anything is done. */
  lookFirst(): Promise<void>;
  /** Asks for cells right before they are written. */
  look(put: Puts): Promise<void>;
  /** Asks for all that is on a sheet that is to go in the next request. */
  lookAtSheet(name: string): Promise<void>;
  /** What was taken back so far, each thing with what was found when it was. */
  taken(changed: ChangedMeanwhile | null): AsFound;
  /** What a request that failed told of what a person did before it. */
  salvaged(): ChangedMeanwhile | null;
}

export function startRevertGuard(context: Excel.RequestContext, host: ExcelHost, looked: LookedToRevert): RevertGuard {
  const { now, stood, plan, lists } = looked;
  let sheets: SheetAsked[] = [];
  const objects = objectsOf(context, looked);
  const answered = async (): Promise<void> => {
    const used = sheets.filter((each) => isChanged(each, now)).map(({ name }) => name);
    sheets = [];
    await guard.demand();
    const others = [...used, ...objects.changed()];
    if (others.length > 0) throw new ChangedMeanwhile([], others);
  };
  const batch = startBatch(
    context,
    host,
    { answered, looking: (at) => guard.looking(at), writing: (at) => guard.again(at) },
    MOST_ANSWERED,
  );
  const guard = startGuard(batch, stood);
  const lookAt = (at: Block, seen: Looked): Promise<void> => {
    const cells = Array.from({ length: at.rows }, () => Array<null>(at.columns).fill(null));
    return guard.look({ do: 'write', at, cells }, seen);
  };
  return {
    batch,
    lookFirst: async () => {
      objects.ask();
      for (const { at, seen } of cellsLost(looked)) await lookAt(at, [seen]);
    },
    look: ({ at, cells }) => {
      const seen = now.blocks.filter((block) => contains(block.at, at));
      const rows = seen.some((block) => lists.has(block)) ? { of: { table: '', by: [], headingRows: 1 } } : {};
      return guard.look({ do: 'write', at, cells: cells.map((line) => line.map(asPut)), ...rows }, seen);
    },
    lookAtSheet: async (name) => {
      const known = now.sheets.find((sheet) => sheet.name === name)?.used;
      const bytes = known ? await answerLength(batch, known) : 0;
      // A longer answer might be refused, and what goes with it is done by then: its cells are asked for in parts.
      const isLong = bytes > batch.most / 2;
      if (known && isLong) await lookAt(known.at, [known]);
      else await batch.answers(bytes);
      const used = context.workbook.worksheets.getItem(name).getUsedRangeOrNullObject(true).load('address');
      sheets.push({ name, used: isLong ? used : loadCells(used, Infinity), isLong });
    },
    salvaged: () => guard.salvaged(),
    taken: (changed) => {
      const seen = [...now.widened.flatMap((each) => (each ? [each.seen] : [])), ...now.blocks];
      const blanked = plan.narrow.map(({ blank }) => ({ at: blank, cells: [Array<null>(blank.columns).fill(null)] }));
      const puts = [...blanked, ...plan.puts];
      const receipt = {
        label: '',
        written: puts.map(({ at }) => ({ at, before: foundIn(at, seen), put: [] })),
        ...{ madeSheets: [], madeTables: [], madeNames: [], movedNames: [], dressed: [] },
      };
      const { written } = changed?.corrected(receipt) ?? receipt;
      const cells = puts.map(({ at, cells: put }, i) => ({ at, put, found: written[i]?.before ?? [] }));
      return { cells, parts: guard.parts(), ...objects.found() };
    },
  };
}

/** About how long the answer is that holds a block; no longer counted once it is too long. */
async function answerLength(batch: Batch, seen: BlockSeen): Promise<number> {
  let bytes = 0;
  for (const part of rowParts(seen.at)) {
    if (bytes > batch.most) break;
    await batch.pause();
    bytes += 2 * lengthOf(foundIn(part, [seen]));
  }
  return bytes;
}

function asPut<T>(cell: T | undefined): null | undefined {
  return cell === undefined ? undefined : null;
}

/** Cells that come to stand outside a table or a list, as they were seen: what a person put there meanwhile would not be in it any more. */
function cellsLost({ plan, now, lists, shrunk = [] }: LookedToRevert): { at: Block; seen: BlockSeen }[] {
  const tables = now.tables.flatMap(({ name, seen }) =>
    seen && plan.removeTables.includes(name) ? [{ at: seen.at, seen }] : [],
  );
  const narrowed = plan.narrow.flatMap(({ blank, at }) => {
    const seen = now.widened.find((each) => each && contains(each.seen.at, blank))?.seen;
    return seen ? [{ at: { ...blank, rows: at.rows }, seen }] : [];
  });
  const smaller = plan.moveNames.flatMap(({ at }) => {
    const list = [...lists].find((block) => contains(block.at, at) && block.at.columns > at.columns);
    return list ? [{ at: beyond(list.at, at), seen: list }] : [];
  });
  const rest = shrunk.flatMap(({ from, to }) =>
    [beneath(from, to), beyond(from, to)].flatMap((lost) => {
      const seen = lost.rows * lost.columns > 0 && now.blocks.find((block) => contains(block.at, lost));
      return seen ? [{ at: lost, seen }] : [];
    }),
  );
  return [...tables, ...narrowed, ...smaller, ...rest];
}

/** The rows of a block below another. */
function beneath(whole: Block, part: Block): Block {
  const row = part.row + part.rows;
  return { ...whole, row, rows: whole.row + whole.rows - row };
}

/** The columns of a block right of another. */
function beyond(whole: Block, part: Block): Block {
  const column = part.column + part.columns;
  return { ...whole, column, columns: whole.column + whole.columns - column };
}

interface Objects {
  ask(): void;
  /** What is not as it was seen. */
  changed(): string[];
  found(): Pick<AsFound, 'names' | 'tables'>;
}

/** Tables and names that are given up or changed: asked where they stand in the request that does so. */
function objectsOf({ workbook }: Excel.RequestContext, { plan, now, stood, shrunk = [] }: LookedToRevert): Objects {
  const tables = [
    ...plan.removeTables.flatMap((name) => {
      const seen = now.tables.find((table) => table.name === name)?.seen;
      return seen ? [{ name, seen: seen.at, put: null }] : [];
    }),
    ...plan.narrow.flatMap(({ name, at, blank }) => {
      const wide = now.widened.find((each) => each && contains(each.seen.at, blank));
      return wide && !sameBlock(wide.at, at) ? [{ name, seen: wide.at, put: at }] : [];
    }),
    ...shrunk.map(({ name, from, to }) => ({ name, seen: from, put: to })),
  ];
  const names = [
    ...plan.removeNames.map((name) => ({ name, put: null })),
    ...plan.moveNames.map(({ name, at }) => ({ name, put: at })),
  ];
  let askedTables: {
    readonly table: Excel.Table;
    readonly range: Excel.Range;
    readonly looks: () => TableLooks | null;
  }[] = [];
  let askedNames: Excel.NamedItem[] = [];
  const tablesNow = (): TableFound[] =>
    askedTables.flatMap(({ table, range, looks: looksOf }, i) => {
      const wanted = tables[i];
      const at = ifArrived(() => (table.isNullObject ? null : blockOf(range.address)));
      if (!wanted) return [];
      const { name, put } = wanted;
      const looks = looksOf();
      return [{ name, put, found: at ?? wanted.seen, ...(looks ? { looks } : {}) }];
    });
  const namesNow = (): NameFound[] =>
    askedNames.flatMap((item, i) => {
      const wanted = names[i];
      const formula = ifArrived(() => (item.isNullObject ? null : String(item.formula)));
      const found = formula ?? stood.nameFormulas.get(wanted?.name.toLowerCase() ?? '');
      return wanted && found !== undefined ? [{ ...wanted, found }] : [];
    });
  return {
    ask: () => {
      askedTables = tables.map(({ name, put }) => {
        const table = workbook.tables.getItemOrNullObject(name).load('name');
        const looks = put === null ? askTableLooks(table) : () => null;
        return { table, range: table.getRange().load('address'), looks };
      });
      askedNames = names.map(({ name }) => workbook.names.getItemOrNullObject(name).load('formula'));
    },
    changed: () => {
      const moved = tablesNow().flatMap(({ name, found }, i) => {
        const seen = tables[i]?.seen;
        return seen && sameBlock(found, seen) ? [] : [name];
      });
      const others = namesNow().flatMap(({ name, found }) => {
        const at = blockOf(found);
        return stood.nameFormulas.get(name.toLowerCase()) === found ? [] : [at ? named(at) : name];
      });
      return [...moved, ...others];
    },
    found: () => ({ names: namesNow(), tables: tablesNow() }),
  };
}

/** A sheet that is to go: what is in use on it, of a long one only where. */
interface SheetAsked {
  readonly name: string;
  readonly used: Excel.Range;
  readonly isLong: boolean;
}

/** Whether a sheet of ours holds anything else than what had been seen on it. */
function isChanged({ name, used: range, isLong }: SheetAsked, now: Now): boolean {
  const at = range.isNullObject ? null : blockOf(range.address);
  if (!at) return false;
  const known = now.sheets.find((sheet) => sheet.name === name)?.used;
  if (isLong) return !known || !sameBlock(known.at, { ...at, sheet: name });
  const rest = { sheetExists: true, protected: false, merged: [], tables: [] };
  const seen: BlockSeen = { at: { ...at, sheet: name }, ...cellsOf(range, Infinity), ...rest };
  return !known || !sameBlock(known.at, seen.at) || changedSince(seen, [known]).length > 0;
}
