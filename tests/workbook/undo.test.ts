import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillPlan } from '../../src/workbook/fillPlan';
import { fillIntake } from '../../src/workbook/fillIntake';
import { LAST_FILL_KEY } from '../../src/workbook/planPlaces';
import type { Block, Change, WorkbookPort } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import { keepingSteps, lastFill, undoLast } from '../../src/workbook/undo';
import { MOST_CHARACTERS, MOST_STEPS, receiptKeyOf, STEPS_KEY, stepsIn } from '../../src/workbook/undoSteps';
import { sayUndo } from '../../src/words/outcomes';
import { MemoryPort } from './memoryPort';
import { workshop } from './workshop';

const JOB = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'live' } as const;

const labels = (port: MemoryPort) => stepsIn(port.setting(STEPS_KEY)).map(({ label }) => label);

/** Writes a text into a cell of Sheet1, or over a larger block of it. */
async function put(port: WorkbookPort, text: string, at: Partial<Block> = {}): Promise<void> {
  const block: Block = { sheet: 'Sheet1', row: 0, column: 0, rows: 1, columns: 1, ...at };
  const looked = await port.read([{ read: 'block', at: block }]);
  const cells = Array.from({ length: block.rows }, () => Array<string>(block.columns).fill(text));
  const changes: Change[] = [{ do: 'write', at: block, cells }];
  await port.apply(changes, looked, { label: text, receiptKey: LAST_FILL_KEY });
}

describe('undo, several steps deep', () => {
  test('a plan that was filled before a page is taken back after it, and each is named', async () => {
    const port = await workshop();
    const kept = keepingSteps(port);
    const start = port.content();
    await fillPlan(kept, await readShop(port), { ...JOB, choices: { newItem: 'OAK-58' } });
    const planned = port.content();
    await fillIntake(kept, await readShop(port), { job: '1042' });
    const printed = port.content();
    await fillPlan(kept, await readShop(port), { ...JOB, choices: { newItem: 'MOSS-S' } });
    expect(labels(port)).toEqual(['Plan of job 1042', 'Intake sheet of job 1042', 'Plan of job 1042']);

    const first = await undoLast(port);
    expect(first).toMatchObject({ done: true, reverted: { left: [] }, next: 'Intake sheet of job 1042' });
    expect(sayUndo(first)).toMatch(/^Taken back: Plan of job 1042\. Undo takes back next: Intake sheet of job 1042\.$/);
    expect(port.content()).toEqual(printed);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] }, next: 'Plan of job 1042' });
    expect(port.content()).toEqual(planned);
    // the places of pages are those of that time
    expect((await readShop(port)).plans.map(({ key }) => key)).toEqual(['job:1042']);
    const last = await undoLast(port);
    expect(last).toMatchObject({ done: true, reverted: { left: [] }, next: null });
    expect(sayUndo(last)).toContain('Nothing else is left to undo.');
    expect(port.content()).toEqual(start);
    expect((await readShop(port)).plans).toEqual([]);
    expect(await undoLast(port)).toMatchObject({ done: false, reason: 'nothingToUndo' });
  });

  test('what an older workbook kept alone is still taken back, after what came later', async () => {
    const port = await workshop();
    const start = port.content();
    await fillPlan(port, await readShop(port), { ...JOB, choices: { newItem: 'OAK-58' } });
    expect(await lastFill(port)).toBe('Plan of job 1042');
    const older = port.content();
    await fillIntake(keepingSteps(port), await readShop(port), { job: '1042' });
    expect(await lastFill(port)).toBe('Intake sheet of job 1042');
    expect(await undoLast(port)).toMatchObject({ next: 'Plan of job 1042' });
    expect(port.content()).toEqual(older);
    expect(await undoLast(port)).toMatchObject({ done: true, next: null });
    expect(port.content()).toEqual(start);
    expect((await readShop(port)).plans).toEqual([]);
  });

  test('of many fills the last ten are kept, under keys that are used in turn', async () => {
    const port = new MemoryPort();
    const kept = keepingSteps(port);
    for (let at = 0; at < 25; at += 1) await put(kept, `fill ${at}`);
    expect(labels(port)).toEqual(Array.from({ length: MOST_STEPS }, (_, at) => `fill ${15 + at}`));
    const { settings } = port.everything() as { settings: Record<string, string> };
    // the list, and of each step its receipt: these writes move no places
    expect(Object.keys(settings).filter((key) => key.startsWith(STEPS_KEY))).toHaveLength(1 + MOST_STEPS);
    for (let at = 24; at > 14; at -= 1) {
      expect(await undoLast(port)).toMatchObject({ reverted: { label: `fill ${at}`, left: [] } });
      expect(port.shows('Sheet1', 0, 0)).toBe(`fill ${at - 1}`);
    }
    expect(await undoLast(port)).toMatchObject({ reason: 'nothingToUndo' });
  });

  test('a large fill drops older ones, is kept itself, and what is dropped takes no room', async () => {
    const port = new MemoryPort();
    const kept = keepingSteps(port);
    const large = { rows: Math.ceil(MOST_CHARACTERS / 8 / 50) + 1, columns: 50 };
    for (const text of ['one', 'two', 'three']) await put(kept, text);
    await put(kept, 'large', large);
    expect(labels(port)).toEqual(['large']);
    expect([0, 1, 2].map((slot) => (port.setting(receiptKeyOf({ slot })) ?? '').length > 0)).toEqual([
      true,
      false,
      false,
    ]);
    await put(kept, 'after');
    expect(labels(port)).toEqual(['after']);
    expect(await undoLast(port)).toMatchObject({ reverted: { label: 'after', left: [] }, next: null });
  });

  test('a fill that fails leaves the list as it was', async () => {
    const port = new MemoryPort();
    const kept = keepingSteps(port);
    await put(kept, 'one');
    const before = port.everything();
    // the receipt is kept, then the write fails
    port.failing = new Set([port.stepsDone + 2]);
    await expect(put(kept, 'two')).rejects.toMatchObject({ code: 'putBack' });
    expect(port.everything()).toEqual(before);
    expect(await undoLast(port)).toMatchObject({ reverted: { label: 'one' } });
  });

  test('a key that another pane used meanwhile is passed over, not taken for this one', async () => {
    const port = new MemoryPort();
    const kept = keepingSteps(port);
    await put(kept, 'one');
    const list = port.setting(STEPS_KEY);
    await put(kept, 'two', { row: 5 });
    // a pane that still knows the older list fills under the same key
    await port.remember(STEPS_KEY, list);
    const mine = port.setting(STEPS_KEY);
    await put(kept, 'theirs', { row: 8 });
    await port.remember(STEPS_KEY, JSON.stringify([...stepsIn(mine), { slot: 1, label: 'two', size: 8 }]));
    expect(await undoLast(port)).toMatchObject({ reverted: { label: 'one' }, next: null });
    expect([port.shows('Sheet1', 0, 0), port.shows('Sheet1', 8, 0)]).toEqual([null, 'theirs']);
  });

  test.each(['', 'null', '{', '7', '[7, null, {"slot": "a"}]'])('a list that reads %j is none', (text) => {
    expect(stepsIn(text)).toEqual([]);
  });

  test('fills and undoes in any order: the workbook is as it was before each fill that is taken back', async () => {
    const step = fc.oneof(
      { weight: 2, arbitrary: fc.record({ row: fc.nat(3), column: fc.nat(3), rows: fc.integer({ min: 1, max: 3 }) }) },
      { weight: 1, arbitrary: fc.constant(null) },
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 30 }), async (steps) => {
        const port = new MemoryPort();
        const kept = keepingSteps(port);
        const before: unknown[] = [];
        for (const [at, where] of steps.entries()) {
          if (where) {
            before.push(port.content());
            if (before.length > MOST_STEPS) before.shift();
            await put(kept, `fill ${at}`, where);
          } else {
            const end = await undoLast(port);
            expect(end.done).toBe(before.length > 0);
            if (before.length > 0) expect(port.content()).toEqual(before.pop());
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test('beside its one read and one write a fill asks once for the list', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    [port.reads, port.applies] = [0, 0];
    let recalls = 0;
    const recall = port.recall.bind(port);
    port.recall = (key) => {
      recalls += 1;
      return recall(key);
    };
    await fillPlan(keepingSteps(port), shop, JOB);
    expect([port.reads, port.applies, recalls]).toEqual([1, 1, 1]);
  });
});
