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
