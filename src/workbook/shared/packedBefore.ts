/** The form in which receipts were kept at first: workbooks hold them still, and what they took note of can be taken back. */
import type { Block, Receipt, Written, WrittenRows } from '../port';
import type { BeforeCell } from './looked';

type PutCell = Written['put'][number][number];

interface PackedBlock {
  readonly at: Block;
  readonly rows?: WrittenRows;
  readonly whole?: boolean;
  readonly before: readonly unknown[];
  readonly put: readonly unknown[];
}

/**
 * A receipt from what stands after the mark: JSON with cells in rows. A run is [cell, how often]; a lone cell stands for itself. A text is
 * [its number in the list].
 */
export function unpackFirstForm(json: string): Receipt {
  const { texts, ...packed } = JSON.parse(json) as Omit<Receipt, 'written'> & {
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

function inRows<T>(cells: readonly T[], columns: number): T[][] {
  const rows: T[][] = [];
  for (let from = 0; from < cells.length; from += columns) rows.push(cells.slice(from, from + columns));
  return rows;
}
