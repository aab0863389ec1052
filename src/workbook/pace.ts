/** Long work on a workbook in steps: whoever asked for it is told how far it is, and may stop it in between. */
import type { Progress } from '../core/index';

/** Asked between two steps; false: stop, nothing more is to be done. */
export type GoOn = (progress: Progress) => Promise<boolean>;

/** Goes on to the end, for whoever waits for it. */
export const ALWAYS: GoOn = () => Promise.resolve(true);

/** How it ended where it was stopped: nothing was written. */
export interface Stopped {
  readonly done: false;
  readonly reason: 'stopped';
}

export const STOPPED: Stopped = { done: false, reason: 'stopped' };

/** Takes every step, asking in between; undefined where it was stopped. */
export async function paced<T>(steps: Generator<Progress, T>, goOn: GoOn): Promise<T | undefined> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (!(await goOn(step.value))) return undefined;
  }
}

/** Longer than this at a stretch and a keystroke is felt to lag. */
export const SLICE_MS = 12;

/** Lets the page draw and take input before going on. */
export function nextTurn(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}

/** Takes every step, resting whenever a slice of time is used up; what fits in one slice is done at once. */
export async function atEase<T>(
  steps: Generator<unknown, T>,
  now: () => number = () => performance.now(),
  rest: () => Promise<void> = nextTurn,
): Promise<T> {
  for (let start = now(); ;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (now() - start < SLICE_MS) continue;
    await rest();
    start = now();
  }
}
