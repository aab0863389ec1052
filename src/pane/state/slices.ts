/** Long calculations in slices, so that typing and scrolling are never kept waiting. */
import type { Progress } from '../../core/index';
import { nextTurn, SLICE_MS } from '../../workbook/pace';

export interface SliceOptions {
  readonly signal: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
  /** Replaced in tests. */
  readonly now?: () => number;
  readonly rest?: () => Promise<void>;
}

/**
 * Runs a calculation to its end, a slice at a time.
 *
 * @returns the answer, or `undefined` where it was stopped
 */
export async function inSlices<Answer>(
  steps: Generator<Progress, Answer>,
  { signal, onProgress, now = () => performance.now(), rest = nextTurn }: SliceOptions,
): Promise<Answer | undefined> {
  await rest();
  for (;;) {
    if (signal.aborted) return undefined;
    const start = now();
    let step = steps.next();
    while (!step.done && now() - start < SLICE_MS) step = steps.next();
    if (step.done) return step.value;
    onProgress?.(step.value);
    await rest();
  }
}
