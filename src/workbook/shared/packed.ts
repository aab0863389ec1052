/** A receipt as text, as it is kept in the workbook. Beside the making of receipts: what only keeps them need not load that. */
import { drained } from '../../core/index';
import type { Block, Receipt, Written, WrittenRows } from '../port';
import type { BeforeCell } from './looked';
import { unpackFirstForm } from './packedBefore';

type PutCell = Written['put'][number][number];

const packedMark = 'receipt-packed-2:';
/** What workbooks kept before. */
const firstMark = 'receipt-packed-1:';

/** All but the cells. */
interface Head extends Omit<Receipt, 'written'> {
  readonly written: readonly { readonly at: Block; readonly rows?: WrittenRows; readonly whole?: boolean }[];
  readonly listed: readonly unknown[];
}

/** Rows that are packed together, and at a stretch. Part of the form: another number would be another form. */
const rowsInPart = 100;

/**
 * The receipt as short text: equal cells below each other are counted, and each text stands once. A plan of 5,000 clubs written over
 * blank cells would otherwise fill half of what one request may carry.
 *
 * After the mark come the cells in parts, and then the rest as JSON, which begins at the first brace: what would need one among the cells
 * stands in a list there. So a long text is read part by part, which JSON as a whole is not.
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
  const list = listing();
  const parts: string[] = [];
  for (const { at, before, put } of written) {
    for (const cells of [before, put]) {
      for (let from = 0; from < at.rows; from += rowsInPart) {
        parts.push(packed(cells.slice(from, from + rowsInPart), at.columns, list));
        yield;
      }
    }
  }
  const where = written.map(({ before: _before, put: _put, ...each }) => each);
  const head: Head = { ...rest, written: where, listed: list.listed };
  return `${packedMark}${parts.join(';')}${JSON.stringify(head)}`;
}

/** Whether a kept text is a packed receipt. */
export function isPacked(text: string): boolean {
  return text.startsWith(packedMark) || text.startsWith(firstMark);
}

/** The receipt from `packReceipt`. Throws a SyntaxError when the text is none. */
export function unpackReceipt(text: string): Receipt {
  return drained(unpackSteps(text));
}

/** What a text holds that is kept as a receipt, packed or plain JSON, in steps. Throws a SyntaxError where it is cut off, or something else. */
export function* keptReceiptSteps(text: string): Generator<void, unknown> {
  return isPacked(text) ? yield* unpackSteps(text) : (JSON.parse(text) as unknown);
}

function* unpackSteps(text: string): Generator<void, Receipt> {
  if (text.startsWith(firstMark)) return unpackFirstForm(text.slice(firstMark.length));
  const brace = text.indexOf('{');
  if (!isPacked(text) || brace < 0) throw new SyntaxError('This text is no packed receipt.');
  const { listed, written, ...rest } = JSON.parse(text.slice(brace)) as Head;
  const parts = text.slice(packedMark.length, brace).split(';');
  let next = 0;
  const blocks: Written[] = [];
  for (const where of written) {
    const cells: unknown[][][] = [[], []];
    for (const into of cells) {
      for (let from = 0; from < where.at.rows; from += rowsInPart) {
        const rows = Math.min(rowsInPart, where.at.rows - from);
        into.push(...unpacked(parts[next] ?? '', { rows, columns: where.at.columns }, listed));
        next += 1;
        yield;
      }
    }
    const [before = [], put = []] = cells;
    blocks.push({ ...where, before: before as BeforeCell[][], put: put as PutCell[][] });
  }
  return { ...rest, written: blocks };
}

/** What does not stand among the cells itself but in a list, each once: texts, and what is more than a value. */
interface Listing {
  readonly listed: readonly unknown[];
  /** Its place in the list. */
  place(cell: unknown): number;
}

function listing(): Listing {
  const listed: unknown[] = [];
  const places = new Map<string, number>();
  return {
    listed,
    place: (cell) => {
      // A text might look like the JSON of something else.
      const key = typeof cell === 'string' ? `"${cell}` : JSON.stringify(cell);
      const known = places.get(key);
      if (known !== undefined) return known;
      listed.push(cell);
      places.set(key, listed.length - 1);
      return listed.length - 1;
    },
  };
}

/* Column by column, since neighbours in one are more often alike. A run is [cell, how often]; a lone cell stands for itself. What is in the
   list is [its place there], so that no number can be taken for it. Written as JSON at once: hundreds of thousands of cells would else be
   copied twice. */
function packed(rows: readonly (readonly unknown[])[], columns: number, list: Listing): string {
  const runs: string[] = [];
  let [cell, times]: [unknown, number] = [undefined, 0];
  const end = (): void => {
    if (times === 1) runs.push(packedCell(cell, list));
    else if (times > 1) runs.push(`[${packedCell(cell, list)},${times}]`);
  };
  for (let across = 0; across < columns; across += 1) {
    for (const row of rows) {
      const next = row[across];
      if (times > 0 && sameCell(next, cell)) times += 1;
      else {
        end();
        [cell, times] = [next, 1];
      }
    }
  }
  end();
  return `[${runs.join()}]`;
}

function packedCell(cell: unknown, list: Listing): string {
  if (typeof cell === 'string' || (typeof cell === 'object' && cell !== null)) return `[${list.place(cell)}]`;
  // As JSON has it, and quicker; no cell holds what is no number.
  return String(cell);
}

function unpacked(
  text: string,
  { rows, columns }: Pick<Block, 'rows' | 'columns'>,
  listed: readonly unknown[],
): unknown[][] {
  const lines = Array.from({ length: rows }, () => Array<unknown>(columns).fill(null));
  let at = 0;
  for (const run of JSON.parse(text) as readonly unknown[]) {
    const isRepeated = Array.isArray(run) && run.length === 2;
    const cell: unknown = isRepeated ? run[0] : run;
    const value: unknown = Array.isArray(cell) ? listed[cell[0] as number] : cell;
    const end = at + (isRepeated ? (run[1] as number) : 1);
    for (; at < end; at += 1) {
      const line = lines[at % rows];
      if (line) line[Math.floor(at / rows)] = value;
    }
  }
  return lines;
}

function sameCell(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || one === null || typeof other !== 'object' || other === null) return false;
  return JSON.stringify(one) === JSON.stringify(other);
}
