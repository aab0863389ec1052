import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Progress } from '../../src/core/index';
import { inSlices, type SliceOptions } from '../../src/pane/state/slices';

/** Longer than this at a stretch and a keystroke is felt to lag: what `slices.ts` promises, in milliseconds. */
const SLICE = 12;

/** A clock that only the calculation moves, and what happened at which time. */
function timed(stepMs: readonly number[]) {
  let now = 0;
  const rests: number[] = [];
  const seen: Progress[] = [];
  function* steps(): Generator<Progress, string> {
    for (const [at, ms] of stepMs.entries()) {
      now += ms;
      yield { done: at + 1, of: stepMs.length };
    }
    return 'answer';
  }
  const stop = new AbortController();
  const options: SliceOptions = {
    signal: stop.signal,
    onProgress: (progress) => seen.push(progress),
    now: () => now,
    rest: () => {
      rests.push(now);
      return Promise.resolve();
    },
  };
  return { steps, options, rests, seen, stop };
}

test('the answer comes, and the page rests before anything is worked out', async () => {
  const { steps, options, rests, seen } = timed([1, 1, 1]);
  expect(await inSlices(steps(), options)).toBe('answer');
  expect(rests).toEqual([0]);
  expect(seen).toEqual([]);
});

test('between rests there is a slice of work, and the step with which it ends, but no more', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 60 }), async (stepMs) => {
      const { steps, options, rests, seen } = timed(stepMs);
      expect(await inSlices(steps(), options)).toBe('answer');
      const longestStep = Math.max(0, ...stepMs);
      const total = stepMs.reduce((sum, ms) => sum + ms, 0);
      const ends = [...rests.slice(1), total];
      ends.forEach((end, at) => expect(end - (rests[at] ?? 0)).toBeLessThan(SLICE + longestStep + 1));
      // it rests no sooner than a slice is over, so that resting costs little
      rests.slice(1).forEach((end, at) => expect(end - (rests[at] ?? 0)).toBeGreaterThanOrEqual(SLICE));
      expect(seen).toHaveLength(rests.length - 1);
      expect(seen.map(({ done }) => done)).toEqual([...seen.map(({ done }) => done)].sort((a, b) => a - b));
    }),
  );
});

test('progress tells how far it came at each rest', async () => {
  const { steps, options, seen } = timed([6, 6, 6, 6, 6]);
  await inSlices(steps(), options);
  expect(seen).toEqual([
    { done: 2, of: 5 },
    { done: 4, of: 5 },
  ]);
});

test('stopped at a rest it goes no step further and has no answer', async () => {
  const { steps, options, seen, stop } = timed(Array.from({ length: 100 }, () => 5));
  let done = 0;
  const counted = function* (): Generator<Progress, string> {
    for (const step of steps()) {
      done = step.done;
      yield step;
    }
    return 'answer';
  };
  const answer = inSlices(counted(), {
    ...options,
    onProgress: (progress) => {
      options.onProgress?.(progress);
      if (progress.done >= 9) stop.abort();
    },
  });
  expect(await answer).toBeUndefined();
  expect(done).toBe(seen.at(-1)?.done);
  expect(done).toBeLessThan(20);
});

test('stopped before it began it takes no step at all', async () => {
  const { steps, options, stop, rests } = timed([1]);
  const started = steps();
  stop.abort();
  expect(await inSlices(started, options)).toBeUndefined();
  expect(rests).toEqual([0]);
  expect(started.next()).toMatchObject({ value: { done: 1 } });
});

test('a mistake in the calculation is not swallowed', async () => {
  const broken = function* (): Generator<Progress, string> {
    yield { done: 1, of: 2 };
    throw new Error('broken');
  };
  await expect(inSlices(broken(), { signal: new AbortController().signal })).rejects.toThrow('broken');
});
