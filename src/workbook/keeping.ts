/**
 * Tables that are seen again as they were are the same objects again: whatever was worked out from them (Stock read, a list turned
 * into ours) is known by these and need not be worked out anew. Of a workbook that is edited, most is as it was.
 */
import { atEase } from './pace';
import type { Query, TableSeen } from './port';

/** Rows that are compared at a stretch. */
const ROWS_A_STEP = 1000;

/** Whether two plain values hold the same, in steps. */
function* sameSteps(one: unknown, other: unknown): Generator<void, boolean> {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length) return false;
  for (const key of keys) {
    const [mine, theirs] = [one[key as keyof typeof one], other[key as keyof typeof other]] as [unknown, unknown];
    const same = Array.isArray(mine) && Array.isArray(theirs) ? yield* sameLines(mine, theirs) : equal(mine, theirs);
    if (!same) return false;
  }
  return true;
}

function* sameLines(one: readonly unknown[], other: readonly unknown[]): Generator<void, boolean> {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) {
    if (!equal(one[at], other[at])) return false;
    if (at % ROWS_A_STEP === ROWS_A_STEP - 1) yield;
  }
  return true;
}

function equal(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (Array.isArray(one) && Array.isArray(other)) {
    // Most of what is compared are cells of lines: no keys are made for them.
    if (one.length !== other.length) return false;
    for (let at = 0; at < one.length; at += 1) if (one[at] !== other[at] && !equal(one[at], other[at])) return false;
    return true;
  }
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => equal(one[key as keyof typeof one], other[key as keyof typeof other]))
  );
}

/** What was seen before, where it is the same in every cell; else what is seen now. */
export async function asBefore<T>(before: T | undefined, now: T): Promise<T> {
  return before !== undefined && (await atEase(sameSteps(before, now))) ? before : now;
}

/** Keeps tables as they were last seen, by name. */
export function tableKeeper(): (queries: readonly Query[], answers: readonly unknown[]) => Promise<unknown[]> {
  const kept = new Map<string, TableSeen>();
  return (queries, answers) =>
    Promise.all(
      queries.map(async (query, at) => {
        const seen = answers[at] as TableSeen | null;
        if (query.read !== 'table' || !seen) return seen;
        const table = await asBefore(kept.get(seen.name), seen);
        kept.set(seen.name, table);
        return table;
      }),
    );
}
