/** Looking once more in the request that takes something back, and putting back what a person had done by then. */
import type { Block, BlockSeen } from '../port';
import { blockOf, contains, sameBlock } from '../shared/address';
import { whatWasThere } from '../shared/looked';
import type { Looked } from '../shared/looked';
import type { Now, RevertPlan } from '../shared/revert';
import { changedSince } from '../shared/unchanged';
import { sentOf } from './attempted';
import { startBatch } from './batch';
import type { Batch } from './batch';
import { cellsOf, loadCells } from './cells';
import { ChangedMeanwhile, startGuard } from './guard';
import { inBatch } from './host';
import type { ExcelHost } from './host';
import type { Stood } from './standing';
import { asIs, lengthOf, writeCells } from './writeCells';

/** What a plan was made from. */
export interface LookedToRevert {
  readonly plan: RevertPlan;
  readonly now: Now;
  readonly stood: Stood;
  /** Blocks that are tables or lists: whole rows of them must be as they were seen. */
  readonly lists: ReadonlySet<BlockSeen>;
}

type Puts = RevertPlan['puts'][number];

export interface RevertGuard {
  readonly batch: Batch;
  /** Asks for cells right before they are written. */
  look(put: Puts): Promise<void>;
  /** Asks for all that is on a sheet that is to go in the next request. */
  lookAtSheet(name: string): Promise<void>;
  /** Puts everything back as it was found; whether that went through. */
  putAsFound(changed: ChangedMeanwhile): Promise<boolean>;
}

export function startRevertGuard(
  context: Excel.RequestContext,
  host: ExcelHost,
  { now, stood, plan, lists }: LookedToRevert,
): RevertGuard {
  let sheets: { readonly name: string; readonly used: Excel.Range }[] = [];
  const answered = async (): Promise<void> => {
    const used = sheets.filter(({ name, used: range }) => isChanged(range, now, name)).map(({ name }) => name);
    sheets = [];
    await guard.demand();
    if (used.length > 0) throw new ChangedMeanwhile([], used);
  };
  const batch = startBatch(context, host, { answered, writing: (at) => guard.again(at) });
  const guard = startGuard(batch, stood);
  return {
    batch,
    look: ({ at, cells }) => {
      const seen = now.blocks.filter((block) => contains(block.at, at));
      const rows = seen.some((block) => lists.has(block)) ? { of: { table: '', by: [], headingRows: 1 } } : {};
      return guard.look({ do: 'write', at, cells: cells.map((line) => line.map(asPut)), ...rows }, seen);
    },
    lookAtSheet: async (name) => {
      const known = now.sheets.find((sheet) => sheet.name === name)?.used;
      // A longer answer might be refused, and what goes with it is done by then.
      const characters = known ? 2 * lengthOf(entries(known.at, [known])) : 0;
      if (characters > batch.most / 2) return;
      await batch.answers(characters);
      const used = context.workbook.worksheets.getItem(name).getUsedRangeOrNullObject(true).load('address');
      sheets.push({ name, used: loadCells(used, Infinity) });
    },
    putAsFound: async (changed) => {
      const parts = guard.parts();
      const found = changed.corrected({
        label: '',
        written: plan.puts.map(({ at }) => ({ at, before: entries(at, now.blocks), put: [] })),
        ...{ madeSheets: [], madeTables: [], madeNames: [], movedNames: [], dressed: [] },
      });
      try {
        await inBatch(host, async (other) => {
          const back = startBatch(other, host);
          for (const [i, { at, cells }] of plan.puts.entries()) {
            const sent = sentOf(at, parts);
            const was = found.written[i]?.before ?? [];
            const lines = cells.map((line, down) =>
              line.map((cell, across) =>
                cell === undefined || !sent[down]?.[across] ? undefined : was[down]?.[across],
              ),
            );
            await writeCells(back, at, lines, asIs);
          }
          await back.send();
        });
        return true;
      } catch {
        return false;
      }
    },
  };
}

function asPut<T>(cell: T | undefined): null | undefined {
  return cell === undefined ? undefined : null;
}

function entries(at: Block, seen: Looked) {
  return whatWasThere(at, seen).map((line) => line.map((cell) => cell ?? null));
}

/** Whether a sheet of ours holds anything else than what had been seen on it. */
function isChanged(range: Excel.Range, now: Now, name: string): boolean {
  const at = range.isNullObject ? null : blockOf(range.address);
  if (!at) return false;
  const known = now.sheets.find((sheet) => sheet.name === name)?.used;
  const rest = { sheetExists: true, protected: false, merged: [], tables: [] };
  const seen: BlockSeen = { at: { ...at, sheet: name }, ...cellsOf(range, Infinity), ...rest };
  return !known || !sameBlock(known.at, seen.at) || changedSince(seen, [known]).length > 0;
}
