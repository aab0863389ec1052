/** Long work in slices: it rests when its time is up, and not before. */
import { expect, test } from 'vitest';
import { atEase, mapSteps, nextTurn, pauses, SLICE_MS, type Turns } from '../../src/workbook/pace';

/** A clock that is moved by hand, and how often was rested. */
function byHand() {
  const state = { ms: 0, rests: 0 };
  const rest = (): Promise<void> => {
    state.rests += 1;
    return Promise.resolve();
  };
  const clock: Turns = { now: () => state.ms, rest, since: 0 };
  return { state, clock };
}

/** Six steps, each of which takes so long. */
function* work(state: { ms: number }, takesMs: number): Generator<void, string> {
  for (let step = 0; step < 6; step += 1) {
    state.ms += takesMs;
    yield;
  }
  return 'done';
}

test('what comes of many rows comes in their order, with a step every so many rows', () => {
  const steps = mapSteps(['a', 'b', 'c', 'd', 'e'], (row, at) => `${row}${at}`, 2);
  expect([steps.next(), steps.next()]).toEqual(
    [{ done: false }, { done: false }].map((each) => ({ ...each, value: undefined })),
  );
  expect(steps.next()).toEqual({ done: true, value: ['a0', 'b1', 'c2', 'd3', 'e4'] });
});

test('steps that are quick are taken at once, slow ones with rests in between', async () => {
  const { state, clock } = byHand();
  expect(await atEase(work(state, 1), clock)).toBe('done');
  expect(state.rests).toBe(0);
  state.ms += 1000;
  expect(await atEase(work(state, SLICE_MS / 2), clock)).toBe('done');
  expect(state.rests).toBe(3);
});

test('works that follow each other share a slice, unless the page had a turn for certain', async () => {
  const { state, clock } = byHand();
  for (let each = 0; each < 6; each += 1) await atEase(work(state, SLICE_MS / 12), clock);
  expect(state.rests).toBe(3);
  state.ms += 1000;
  await atEase(work(state, SLICE_MS / 12), clock);
  expect(state.rests).toBe(3);
});

test('of works that go on side by side one at a time has a slice', async () => {
  const { state, clock } = byHand();
  const longest = { ms: 0 };
  let turnBegan = 0;
  const rest = async (): Promise<void> => {
    longest.ms = Math.max(longest.ms, state.ms - turnBegan);
    await new Promise((done) => setTimeout(done));
    turnBegan = state.ms;
  };
  const side = { ...clock, rest };
  const ends = await Promise.all([1, 2, 3].map(() => atEase(work(state, SLICE_MS), side)));
  expect(ends).toEqual(['done', 'done', 'done']);
  expect(longest.ms).toBe(SLICE_MS);
});

test('work that is no list of steps rests when its time is up', async () => {
  const { state, clock } = byHand();
  const pause = pauses(clock.now, clock.rest);
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
