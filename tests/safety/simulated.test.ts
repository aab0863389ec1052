import { describe, expect, test } from 'vitest';
import type { Outcome } from '../../src/pane/state/work';
import { Book } from '../simulated/book';
import { contentText, simulatedBench, snapshotText, type SimulatedBench, type Snapshot } from './benches';
import {
  begin,
  expectNothingLost,
  expectSentence,
  faultSuite,
  meanwhile,
  MEANWHILE,
  sheetFor,
  spread,
  untroubled,
  type FaultHost,
  type Untroubled,
} from './faultSuite';
import { said, TRIALS, type Trial } from './trials';

const beginnings = new Map<Trial, Book>();

/** The workbook at the beginning of a trial: made once, then copied, and opened by a client that knows nothing of it. */
async function begun(trial: Trial, mostBytes?: number): Promise<SimulatedBench> {
  const known = beginnings.get(trial);
  const book = known ?? new Book();
  if (!known) await begin(simulatedBench({ book }), trial);
  beginnings.set(trial, book);
  return simulatedBench({ book: book.copy(), ...(mostBytes === undefined ? {} : { mostBytes }) });
}

const host: FaultHost = { name: 'simulated', stumbles: 6, begun };
faultSuite(host);

const trials = TRIALS.filter(({ calculates, empty }) => !calculates && !empty);

/** How many requests a trial sends. */
async function requestsOf(trial: Trial, mostBytes?: number): Promise<number> {
  const { simulated, port } = await begun(trial, mostBytes);
  const before = simulated.requests.length;
  await trial.run(port());
  return simulated.requests.length - before;
}

describe('a cell is being edited, simulated', () => {
  test.each(trials)('$name: every request waits until it is not', async (trial) => {
    const clean = await untroubled(host, trial);
    const bench = await begun(trial);
    const { simulated } = bench;
    const edit = (): null => {
      simulated.editing = new Promise((done) => {
        setTimeout(() => {
          simulated.editing = null;
          done();
        }, 0);
      });
      return null;
    };
    edit();
    simulated.trouble = edit;
    const end = await trial.run(bench.port());
    expect(end.kind, said(end)).toBe('done');
    expect(contentText(bench.snapshot())).toBe(contentText(clean.states.at(-1) ?? clean.before));
  });

  test.each(trials)('$name: a host that does not wait is told of', async (trial) => {
    const clean = await untroubled(host, trial);
    for (const at of spread(await requestsOf(trial), 3)) {
      const bench = await begun(trial);
      bench.simulated.trouble = (request) =>
        request === at - 1 ? { code: 'InvalidOperationInCellEditMode', at: 'before' } : null;
      const end = await trial.run(bench.port());
      const when = `request ${at}: ${said(end)}`;
      expectSentence(when, end);
      const whole = [clean.before, ...clean.states].map(snapshotText);
      if (!trial.inParts) expect(whole, when).toContain(snapshotText(bench.snapshot()));
    }
  });
});

/** So short are the requests that hardly a deed goes in one. */
const SHORT = 2500;

describe('a person does something between two requests, simulated', () => {
  test.each(trials)('$name', async (trial) => {
    const clean = await untroubled(host, trial);
    const sheet = sheetFor(trial, clean);
    const count = await requestsOf(trial, SHORT);
    for (const [i, at] of spread(count, 4).entries()) {
      const act = MEANWHILE[(TRIALS.indexOf(trial) + i * 3) % MEANWHILE.length] ?? 'type';
      // As if nobody else had done anything.
      const alone = await begun(trial, SHORT);
      const done = await meanwhile(act, alone, sheet, []);
      const { end, now } = await runWith(trial, at, (bench) => void meanwhile(act, bench, sheet, []));
      const when = `${act} on ${sheet} at request ${at} of ${count}: ${said(end)}`;
      // Done after the last of it was written, it comes too late to matter.
      if (isWritten(now, clean)) expectSentence(when, end);
      else expectNothingLost(when, trial, end, done, now, clean);
    }
  });
});

/** Whether everything stands there that a trial writes. */
function isWritten(now: Snapshot, { before, states }: Untroubled): boolean {
  const put = [...(states.at(-1)?.cells ?? [])].filter(([cell, entry]) => before.cells.get(cell) !== entry);
  return put.every(([cell, entry]) => now.cells.get(cell) === entry);
}

async function runWith(
  trial: Trial,
  at: number,
  act: (bench: SimulatedBench) => void,
): Promise<{ end: Outcome; now: Snapshot }> {
  const bench = await begun(trial, SHORT);
  bench.simulated.trouble = (request) => {
    // Hands go past the library: it is done before the request is looked at.
    if (request === at - 1) act(bench);
    return null;
  };
  const end = await trial.run(bench.port());
  return { end, now: bench.snapshot() };
}
