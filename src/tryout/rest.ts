/** A pause before long work, in which the page gets done what it was given. */

/** Longer would keep someone waiting for what comes next. */
const LONGEST_MS = 1000;

/** Waits until the page has drawn what it was given and has nothing to do; not for long, since it may never rest. */
export function rest(): Promise<void> {
  // Not every browser tells.
  if (typeof requestIdleCallback !== 'function') return new Promise((resolve) => setTimeout(resolve, 100));
  return new Promise((resolve) => requestIdleCallback(() => resolve(), { timeout: LONGEST_MS }));
}
