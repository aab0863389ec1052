/**
 * Whatever goes wrong, and whenever: afterwards the workbook is as it was, or everything is written; and a person reads a sentence.
 */
import { describe, expect, test } from 'vitest';
import { workOn } from '../../src/pane/workOn';
import { PortError, type Block, type Change, type WorkbookPort } from '../../src/workbook/port';
import { undoLast } from '../../src/workbook/undo';
import { sayPortError } from '../../src/words/portErrors';
import type { Outcome } from '../../src/pane/state/work';
import { contentText, snapshotText, type SafetyBench, type Snapshot } from './benches';
import { isHunt } from './chance';
import { tapped, type Tap } from './tapped';
import { prepare, said, TRIALS, type Trial } from './trials';

export interface FaultHost {
  readonly name: string;
  /** At how many of the steps inside a deed's requests it is made to fail, spread over all of them. */
  readonly stumbles: number;
  /** A workbook at the beginning of a trial. */
  begun(trial: Trial): Promise<SafetyBench>;
}

/** An empty workbook brought to where a trial begins. */
export async function begin(bench: SafetyBench, trial: Trial): Promise<SafetyBench> {
  await prepare(trial, bench.port());
  return bench;
}

/** So many numbers from 1 to `last`, the first and the last among them. */
export function spread(last: number, most: number): number[] {
  const count = Math.min(last, most);
  return Array.from({ length: count }, (_, i) => 1 + Math.round((i * (last - 1)) / Math.max(1, count - 1)));
}

/** How a trial goes when nothing goes wrong. */
export interface Untroubled {
  readonly before: Snapshot;
  /** How the workbook was after each write. */
  readonly states: readonly Snapshot[];
  readonly trips: number;
  /** Those of them that write. */
  readonly writes: readonly number[];
  /** Steps inside its requests. */
  readonly steps: number;
  /** Sheets on which it writes and that were there before. */
  readonly sheets: readonly string[];
  readonly lengthens: boolean;
}

const known = new Map<Trial, Promise<Untroubled>>();

/** Worked out once for each trial; the tests of one host are a file of their own. */
export function untroubled(host: FaultHost, trial: Trial): Promise<Untroubled> {
  const run = known.get(trial) ?? runUntroubled(host, trial);
  known.set(trial, run);
  return run;
}

async function runUntroubled(host: FaultHost, trial: Trial): Promise<Untroubled> {
  const bench = await host.begun(trial);
  const before = bench.snapshot();
  const states: Snapshot[] = [];
  const writes: number[] = [];
  const sheets = new Set<string>();
  let lengthens = false;
  let trips = 0;
  const steps = bench.steps();
  const end = await trial.run(
    tapped(bench.port(), async ({ number, method, changes }, go) => {
      trips = number;
      for (const change of changes) {
        if (change.do === 'write') sheets.add(change.at.sheet);
        if (change.do === 'lengthen') lengthens = true;
      }
      const answer = await go();
      if (['apply', 'revert', 'remember'].includes(method)) {
        states.push(bench.snapshot());
        writes.push(number);
      }
      return answer;
    }),
  );
  expect(end.kind, said(end)).toBe('done');
  expect(states.length).toBeGreaterThan(0);
  const made = {
    before,
    states,
    trips,
    writes,
    steps: bench.steps() - steps,
    sheets: before.sheets.filter((sheet) => sheets.has(sheet)),
    lengthens,
  };
  bench.dispose();
  return made;
}

export function faultSuite(host: FaultHost): void {
  const trials = TRIALS.filter((trial) => host.name !== 'simulated' || !trial.calculates);

  describe(`whatever fails, ${host.name}`, () => {
    // Refused in front of the port: it is all one what stands behind it.
    test.each(host.name === 'memory' ? trials : [])('$name: a request is refused', async (trial) => {
      const clean = await untroubled(host, trial);
      const tries = new Tries(host, trial, clean);
      for (let at = 1; at <= clean.trips; at += 1) {
        // Each code at every other trip: which of the two it is matters to the words alone.
        const code = at % 2 ? 'host' : 'editing';
        const error = new PortError(code, [], 'GeneralException: something');
        const bench = await tries.bench();
        const end = await trial.run(tapped(bench.port(), refusing(at, error)));
        tries.check(`trip ${at} refused (${code})`, end, error);
      }
      tries.end();
    });

    test.each(trials)('$name: a step inside a request fails', async (trial) => {
      const clean = await untroubled(host, trial);
      const tries = new Tries(host, trial, clean);
      // What is only kept in the settings has no steps inside.
      expect(clean.steps > 0 || clean.sheets.length === 0).toBe(true);
      for (const at of spread(clean.steps, host.stumbles)) {
        const bench = await tries.bench();
        const fired = bench.stumble(at);
        const end = await trial.run(bench.port());
        expect(fired(), `step ${at}`).toBe(1);
        tries.check(`step ${at} failed`, end);
      }
      tries.end();
    });

    test.each(trials)('$name: the pane is closed, opened again, and told to take back', async (trial) => {
      const clean = await untroubled(host, trial);
      const tries = new Tries(host, trial, clean);
      // Before a write everything is as it was, whoever holds the workbook; after the last one there is most to take back.
      const last = clean.writes.slice(-1);
      for (const at of host.name === 'memory' ? clean.writes : last) {
        for (const when of host.name === 'memory' ? (['before', 'after'] as const) : (['after'] as const)) {
          const what = `closed ${when} trip ${at}`;
          const bench = await tries.bench();
          await closedAt(at, when, bench.port(), trial);
          const left = bench.snapshot();
          tries.expectWhole(what, left);
          const end = await undoLast(bench.port());
          if (!end.done) expect(snapshotText(bench.snapshot()), what).toBe(snapshotText(left));
          else if (trial.of === 'undo') tries.expectWhole(what, bench.snapshot());
          else if (!trial.stays && snapshotText(left) !== snapshotText(clean.before)) {
            expect(end, what).toMatchObject({ reverted: { left: [], notFound: [] } });
            expectTakenBack(what, clean.before, bench.snapshot());
          }
          tries.keepIf(snapshotText(bench.snapshot()) === snapshotText(clean.before));
        }
      }
      tries.end();
    });

    const meant = trials.filter(({ empty }) => !empty);
    // With hunts on, everything is tried on every trial; else each trial has its turn with some of it.
    const turns = (trial: Trial, count: number): readonly Meanwhile[] => {
      const from = TRIALS.indexOf(trial);
      const some = Array.from({ length: count }, (_, i) => MEANWHILE[(from + i * 3) % MEANWHILE.length] ?? 'type');
      return host.name === 'memory' || isHunt() ? MEANWHILE : some;
    };

    test.each(meant)('$name: a person does something between the look and the writing', async (trial) => {
      const clean = await untroubled(host, trial);
      for (const act of turns(trial, 1)) {
        for (const at of host.name === 'memory' ? clean.writes : clean.writes.slice(0, 1)) {
          const bench = await host.begun(trial);
          let done: Done | undefined;
          const end = await trial.run(
            tapped(bench.port(), async ({ number, changes }, go) => {
              if (number === at) done = await meanwhile(act, bench, sheetFor(trial, clean), changes);
              return go();
            }),
          );
          if (!done) throw new Error(`${act}: it was not written`);
          expectNothingLost(`${act} before trip ${at}: ${said(end)}`, trial, end, done, bench.snapshot(), clean);
          const left = bench.snapshot();
          const undone = await undoLast(bench.port());
          if (!undone.done) expect(snapshotText(bench.snapshot())).toBe(snapshotText(left));
          bench.dispose();
        }
      }
    });

    test.each(meant.filter(({ stays, of }) => !stays && of !== 'undo'))(
      '$name: a person does something between it and its being taken back',
      async (trial) => {
        const clean = await untroubled(host, trial);
        for (const act of turns(trial, 1)) {
          const bench = await host.begun(trial);
          let put: readonly Change[] = [];
          await trial.run(
            tapped(bench.port(), ({ changes }, go) => {
              if (changes.length > 0) put = changes;
              return go();
            }),
          );
          const done = await meanwhile(act, bench, sheetFor(trial, clean), put);
          const end = await workOn(bench.port()).undo();
          const when = `${act}, then taken back: ${said(end)}`;
          expectSentence(when, end);
          if (end.kind === 'done')
            expectNothingLost(when, { ...trial, inParts: true }, end, done, bench.snapshot(), clean);
          else expect(snapshotText(bench.snapshot()), when).toBe(snapshotText(done.at));
          bench.dispose();
        }
      },
    );
  });
}

/** What a person does meanwhile. */
export const MEANWHILE = [
  'deleteSheet',
  'renameSheet',
  'removeTable',
  'renameTable',
  'insertAbove',
  'insertInside',
  'protect',
  'type',
] as const;
export type Meanwhile = (typeof MEANWHILE)[number];

/** How the workbook was when a person had done it, and what to expect of it. */
interface Done {
  readonly act: Meanwhile;
  readonly sheet: string;
  readonly at: Snapshot;
  /** Where they typed. */
  readonly typed?: string;
  /** From which row down everything moved. */
  readonly moved?: number;
}

const TYPED = '=typed meanwhile';

/** Sheets that a trial writes on take turns. */
export const sheetFor = (trial: Trial, { sheets }: Pick<Untroubled, 'sheets'>): string =>
  sheets[TRIALS.indexOf(trial) % Math.max(1, sheets.length)] ?? 'Clubs';

/** Does it; a cell that is typed into is one that is just to be written, where there is one on a sheet that is there. */
export async function meanwhile(
  act: Meanwhile,
  { hands, snapshot }: SafetyBench,
  sheet: string,
  changes: readonly Change[],
): Promise<Done> {
  const end = (more: Partial<Done> = {}): Done => ({ act, sheet, at: snapshot(), ...more });
  switch (act) {
    case 'deleteSheet':
      await hands.deleteSheet(sheet);
      return end();
    case 'renameSheet':
      await hands.renameSheet(sheet, 'Kept apart');
      return end();
    case 'removeTable':
      await hands.removeTable(sheet);
      return end();
    case 'renameTable':
      await hands.renameTable(sheet, 'Kept_apart');
      return end();
    case 'protect':
      await hands.protect(sheet);
      return end();
    case 'insertAbove':
    case 'insertInside': {
      const moved = act === 'insertAbove' ? 0 : 2;
      await hands.insertRows(sheet, moved, 1);
      return end({ moved });
    }
    case 'type': {
      const cell = firstPut(changes, snapshot().sheets) ?? { sheet, row: 1, column: 0 };
      await hands.type(cell.sheet, cell.row, cell.column, TYPED);
      return end({ typed: `${cell.sheet}!${cell.row},${cell.column}` });
    }
  }
}

function firstPut(
  changes: readonly Change[],
  sheets: readonly string[],
): Pick<Block, 'sheet' | 'row' | 'column'> | null {
  for (const change of changes) {
    if (change.do !== 'write' || !sheets.includes(change.at.sheet)) continue;
    for (const [down, line] of change.cells.entries()) {
      const across = line.findIndex((cell) => cell !== undefined);
      const { sheet, row, column } = change.at;
      if (across >= 0) return { sheet, row: row + down, column: column + across };
    }
  }
  return null;
}

/** Not done: not a cell is other than it was left. Done: no cell is other but those that are written when nothing happens. */
export function expectNothingLost(
  when: string,
  trial: Trial,
  end: Outcome,
  { act, sheet, at, typed, moved }: Done,
  now: Snapshot,
  clean: Untroubled,
): void {
  expectSentence(when, end);
  if (typed !== undefined) expect(now.cells.get(typed), when).toBe(at.cells.get(typed));
  if (act === 'protect' && isLeftHalf(end)) {
    // Of what had been written before it was protected nothing can be put back: that it stands there, and where, is said.
    expect(end.kind === 'failed' && end.text, when).toContain(sheet);
    expect(elsewhere(now, sheet), when).toEqual(elsewhere(at, sheet));
    return;
  }
  if (act === 'protect') expect(onSheet(now, sheet), when).toEqual(onSheet(at, sheet));
  if (end.kind !== 'done' && !trial.inParts) return expect(snapshotText(now), when).toBe(snapshotText(at));
  const isWritten = (cell: string): boolean =>
    clean.states.some(({ cells }) => cells.get(cell) !== clean.before.cells.get(cell));
  // What was written before it moved, or after it.
  const before = (cell: string): string => {
    if (act === 'renameSheet') return cell.replace(/^Kept apart!/, `${sheet}!`);
    const [, name = '', row = 0, column = ''] = /^(.*)!(\d+),(\d+)$/s.exec(cell) ?? [];
    return moved === undefined || name !== sheet || Number(row) < moved ? cell : `${name}!${Number(row) - 1},${column}`;
  };
  const lost = [...at.cells].filter(
    ([cell, entry]) => now.cells.get(cell) !== entry && !isWritten(cell) && !isWritten(before(cell)),
  );
  expect(lost, when).toEqual([]);
}

function isLeftHalf(end: Outcome): boolean {
  return end.kind === 'failed' && end.text.includes('could not be put back');
}

const elsewhere = ({ cells }: Snapshot, sheet: string): [string, string][] =>
  [...cells].filter(([cell]) => !cell.startsWith(`${sheet}!`)).sort();

const onSheet = ({ cells }: Snapshot, sheet: string): [string, string][] =>
  [...cells].filter(([cell]) => cell.startsWith(`${sheet}!`)).sort();

function refusing(at: number, error: PortError): Tap {
  return ({ number }, go) => (number === at ? Promise.reject(error) : go());
}

/** Runs a trial up to a trip that is never answered. */
async function closedAt(at: number, when: 'before' | 'after', port: WorkbookPort, trial: Trial): Promise<void> {
  await new Promise<void>((closed, failed) => {
    const tap: Tap = async ({ number }, go) => {
      if (number !== at) return go();
      if (when === 'after') await go();
      closed();
      return new Promise(() => undefined);
    };
    trial.run(tapped(port, tap)).then(() => closed(), failed);
  });
}

/** Everything is as it was but for blank rows that a table keeps, and what is kept in the settings. */
export function expectTakenBack(when: string, before: Snapshot, now: Snapshot): void {
  const bare = (seen: Snapshot): string => contentText({ ...seen, tables: seen.tables.map(withoutEnd) });
  expect(bare(now), when).toBe(bare(before));
}

/** `Clubs at Clubs!A1:X9` → `Clubs at Clubs!A1:X` */
function withoutEnd(table: string): string {
  return table.replace(/\d+$/, '');
}

/** Trials in one workbook for as long as it stays as it was, in a new one else. */
class Tries {
  private current: SafetyBench | null = null;

  constructor(
    private readonly host: FaultHost,
    private readonly trial: Trial,
    private readonly clean: Untroubled,
  ) {}

  async bench(): Promise<SafetyBench> {
    this.current ??= await this.host.begun(this.trial);
    return this.current;
  }

  state(): Snapshot {
    if (!this.current) throw new Error('nothing was tried');
    return this.current.snapshot();
  }

  /** The workbook is as it was or whole, and what is said is a sentence. */
  check(when: string, end: Outcome, error?: PortError): void {
    const now = this.state();
    const isAsBefore = snapshotText(now) === snapshotText(this.clean.before);
    if (!isAsBefore) this.expectWhole(when, now);
    expectSentence(when, end, error);
    const last = this.clean.states.at(-1);
    if (end.kind === 'done' && !this.trial.inParts) {
      expect(contentText(now), `${when}, yet done`).toBe(contentText(last ?? this.clean.before));
    }
    this.keepIf(isAsBefore);
  }

  expectWhole(when: string, now: Snapshot): void {
    const whole = [this.clean.before, ...this.clean.states];
    if (whole.some((state) => snapshotText(state) === snapshotText(now))) return;
    if (this.trial.inParts) return expectParts(`${this.trial.name}, ${when}`, whole, now);
    expect(snapshotText(now), `${this.trial.name}, ${when}`).toBe(snapshotText(this.clean.before));
  }

  keepIf(asBefore: boolean): void {
    if (!asBefore) this.end();
  }

  end(): void {
    this.current?.dispose();
    this.current = null;
  }
}

/** Each sheet as it was at some time of the untroubled run. */
function expectParts(when: string, whole: readonly Snapshot[], now: Snapshot): void {
  for (const sheet of now.sheets) {
    const part = (seen: Snapshot): string =>
      JSON.stringify([...seen.cells].filter(([at]) => at.startsWith(`${sheet}!`)).sort());
    expect(whole.map(part), `${when}: ${sheet}`).toContain(part(now));
  }
}

/** Marks of what no person should read. */
const NOT_PLAIN = /undefined|null|NaN|\[object|\bat \w+ \(|TypeError|mistake/;

export function expectSentence(when: string, end: Outcome, error?: PortError): void {
  if (end.kind === 'occupied') return;
  const text = [end.title, end.text, ...end.list].join(' ');
  expect(end.text, when).toMatch(/^[\p{Lu}\d“'].*[.!”]$/su);
  expect(text, when).not.toMatch(NOT_PLAIN);
  if (end.kind === 'failed' && error) expect(text, when).toContain(sayPortError(error));
}
