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

/** Rows that are worked through between two looks at the clock. */
const ROWS_A_STEP = 100;

/** What comes of each of many rows, in steps. */
export function* mapSteps<T, U>(
  rows: readonly T[],
  make: (row: T, at: number) => U,
  atAStretch = ROWS_A_STEP,
): Generator<void, U[]> {
  const made: U[] = [];
  for (const [at, row] of rows.entries()) {
    made.push(make(row, at));
    if (at % atAStretch === atAStretch - 1) yield;
  }
  return made;
}

/** Lets the page draw and take input before going on. By a message: timers that follow each other wait four milliseconds each. */
export function nextTurn(): Promise<void> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(null);
  });
}

/** For work that is no list of steps: asked every now and then, it rests whenever a slice of time is used up. */
export function pauses(now: () => number = () => performance.now(), rest: () => Promise<void> = nextTurn) {
  let start = now();
  return async (): Promise<void> => {
    if (now() - start < SLICE_MS) return;
    await rest();
    start = now();
  };
}

/** When the page last had a turn, as far as known. */
export interface Turns {
  now(): number;
  rest(): Promise<void>;
  /** When the slice of time that is being used began. */
  since: number;
}

const turns: Turns = { now: () => performance.now(), rest: nextTurn, since: -Infinity };

/** Whoever works on right after other work goes on with its slice; after so many milliseconds that was another turn's for certain. */
const MOST_MS_A_TURN = 100;

/**
 * Takes every step, resting whenever a slice of time is used up; what fits in one slice is done at once. Several such works that follow each
 * other share a slice: each with one of its own would keep the page waiting for them all.
 */
export async function atEase<T>(steps: Generator<unknown, T>, clock: Turns = turns): Promise<T> {
  if (clock.now() - clock.since >= MOST_MS_A_TURN) clock.since = clock.now();
  for (;;) {
    while (clock.now() - clock.since >= SLICE_MS) {
      const { since } = clock;
      await clock.rest();
      // Of several that rested in the same turn, the first goes on; the others come after it.
      if (clock.since === since) clock.since = clock.now();
    }
    const step = steps.next();
    if (step.done) return step.value;
  }
}
