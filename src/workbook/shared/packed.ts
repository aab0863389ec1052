/** A receipt as text, as it is kept in the workbook. Beside the making of receipts: what only keeps them need not load that. */
import { drained } from '../../core/index';
import type { Block, Receipt, Written, WrittenRows } from '../port';
import type { BeforeCell } from './looked';

type PutCell = Written['put'][number][number];

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
  return drained(packSteps(receipt));
}

/** {@link packReceipt} in steps. */
export function* packSteps(receipt: Receipt): Generator<void, string> {
  const known = packedTexts.get(receipt);
  if (known !== undefined) return known;
  const text = yield* packAnew(receipt);
  packedTexts.set(receipt, text);
  return text;
}

/** A receipt is packed when it is kept, and once more to know what is kept. */
const packedTexts = new WeakMap<Receipt, string>();

function* packAnew({ written, ...rest }: Receipt): Generator<void, string> {
  const texts = new Map<string, number>();
  const blocks: string[] = [];
  for (const { before, put, ...where } of written) {
    const cells = `"before":${yield* pack(before, texts)},"put":${yield* pack(put, texts)}`;
    blocks.push(`${opened(where)},${cells}}`);
  }
  return `${packedMark}${opened(rest)},"written":[${blocks.join()}],"texts":${JSON.stringify([...texts.keys()])}}`;
}

/** As JSON, its end left out so that more can come. */
function opened(fields: object): string {
  return JSON.stringify(fields).slice(0, -1);
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

/** Rows that are packed at a stretch. */
const rowsInStep = 200;

/* A run is [cell, how often]; a lone cell stands for itself. A text is ['its number in the list'] so that no cell can be
   taken for it: numbers, truth values and null stand as they are, objects as objects. Written as JSON at once: hundreds of
   thousands of cells would else be copied twice. */
function* pack(rows: readonly (readonly unknown[])[], texts: Map<string, number>): Generator<void, string> {
  const runs: string[] = [];
  let [cell, times]: [unknown, number] = [undefined, 0];
  const end = (): void => {
    if (times > 0) runs.push(times === 1 ? packed(cell, texts) : `[${packed(cell, texts)},${times}]`);
  };
  for (const [down, row] of rows.entries()) {
    for (const next of row) {
      if (times > 0 && sameCell(next, cell)) times += 1;
      else {
        end();
        [cell, times] = [next, 1];
      }
    }
    if (down % rowsInStep === rowsInStep - 1) yield;
  }
  end();
  return `[${runs.join()}]`;
}

function packed(cell: unknown, texts: Map<string, number>): string {
  if (typeof cell === 'string') return `[${textNumber(cell, texts)}]`;
  // As JSON has it, and quicker; no cell holds what is no number.
  return typeof cell === 'number' ? String(cell) : JSON.stringify(cell);
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
