/** Long work in slices: it rests when its time is up, and not before. */
import { expect, test } from 'vitest';
import { atEase, mapSteps, nextTurn, pauses, SLICE_MS } from '../../src/workbook/pace';

/** A clock that is moved by hand, and how often was rested. */
function byHand() {
  const state = { ms: 0, rests: 0 };
  const rest = (): Promise<void> => {
    state.rests += 1;
    return Promise.resolve();
  };
  return { state, now: () => state.ms, rest };
}

test('what comes of many rows comes in their order, with a step every so many rows', () => {
  const steps = mapSteps(['a', 'b', 'c', 'd', 'e'], (row, at) => `${row}${at}`, 2);
  expect([steps.next(), steps.next()]).toEqual(
    [{ done: false }, { done: false }].map((each) => ({ ...each, value: undefined })),
  );
  expect(steps.next()).toEqual({ done: true, value: ['a0', 'b1', 'c2', 'd3', 'e4'] });
});

test('steps that are quick are taken at once, slow ones with rests in between', async () => {
  const { state, now, rest } = byHand();
  const work = function* (takesMs: number): Generator<void, string> {
    for (let step = 0; step < 6; step += 1) {
      state.ms += takesMs;
      yield;
    }
    return 'done';
  };
  expect(await atEase(work(1), now, rest)).toBe('done');
  expect(state.rests).toBe(0);
  expect(await atEase(work(SLICE_MS / 2), now, rest)).toBe('done');
  expect(state.rests).toBe(3);
});

test('work that is no list of steps rests when its time is up', async () => {
  const { state, now, rest } = byHand();
  const pause = pauses(now, rest);
  await pause();
  state.ms += SLICE_MS - 1;
  await pause();
  expect(state.rests).toBe(0);
  state.ms += 1;
  await pause();
  await pause();
  expect(state.rests).toBe(1);
});

test('a turn lets what was asked for before go first', async () => {
  let timerRan = false;
  setTimeout(() => {
    timerRan = true;
  }, 0);
  for (let turn = 0; turn < 100_000 && !timerRan; turn += 1) await nextTurn();
  expect(timerRan).toBe(true);
});
