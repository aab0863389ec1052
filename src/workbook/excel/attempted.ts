/** What a failed write can have put, of all that it was to put. */
import type { Block, BlockSeen, Receipt, Written } from '../port';
import { overlap } from '../shared/address';
import { holds, isBack, isSkip, type Place } from '../shared/cellNow';

/** Cells that went into a request. */
export interface Part {
  readonly at: Block;
  /** Whether that request went through, and a person could do something with them before the one that failed. */
  readonly through: boolean;
}

const skip = { skip: true } as const;

/** The receipt without cells that never went into a request: whatever stands in them is no matter of ours. */
export function attempted(receipt: Receipt, parts: readonly Part[]): Receipt {
  return {
    ...receipt,
    written: receipt.written.map((each) => {
      const sent = sentOf(each.at, parts);
      return { ...each, put: each.put.map((line, down) => line.map((cell, i) => (sent[down]?.[i] ? cell : skip))) };
    }),
  };
}

/**
 * A written block without cells that hold neither what was put nor what they held, where nothing that was put can have been moved away:
 * they are a person's, who changed them before they were written, or since.
 */
export function withoutPersons(written: Written, now: BlockSeen): [Written, Place[]] {
  const { at, before, put } = written;
  const theirs: Place[] = [];
  const left = put.map((line, down) =>
    line.map((cell, across) => {
      const place = { sheet: at.sheet, row: at.row + down, column: at.column + across };
      if (isSkip(cell) || holds(now, cell, place) || isBack(now, before[down]?.[across] ?? null, place)) return cell;
      theirs.push(place);
      return skip;
    }),
  );
  return [{ ...written, put: left }, theirs];
}

/** Whether any of a block went into a request that went through. */
export function isThrough(at: Block, parts: readonly Part[]): boolean {
  return parts.some((part) => part.through && overlap(part.at, at) !== null);
}

/** How far each cell of a block came: not into a request, into the one that failed, or into one that went through. */
export function sentOf(at: Block, parts: readonly Part[]): ('failed' | 'through' | undefined)[][] {
  const marks = Array.from({ length: at.rows }, () =>
    Array<'failed' | 'through' | undefined>(at.columns).fill(undefined),
  );
  for (const part of parts) {
    const shared = overlap(at, part.at);
    if (!shared) continue;
    const left = shared.column - at.column;
    for (const line of marks.slice(shared.row - at.row, shared.row - at.row + shared.rows)) {
      line.fill(part.through ? 'through' : 'failed', left, left + shared.columns);
    }
  }
  return marks;
}
