/** Workbooks as people keep them: whatever stands in them, nothing of it is changed unasked, and what was done can be taken back. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block, Cell } from '../../src/workbook/port';
import { undoLast } from '../../src/workbook/undo';
import {
  contentText,
  embeddedBench,
  memoryBench,
  simulatedBench,
  snapshotText,
  type SafetyBench,
  type Snapshot,
} from './benches';
import { drawn } from './chance';
import { expectSentence, expectTakenBack } from './faultSuite';
import { prepare, said, TRIALS } from './trials';

/* ---------------------------------------------------------------- what a workbook may hold */

type Typed = Cell | { readonly formula: string };

const LONG = 'a very long note '.repeat(1900);
const odd: fc.Arbitrary<Typed> = fc.oneof(
  fc.constantFrom<Typed>(
    'מחזיק חדש', // Hebrew
    'قبضة جديدة', // Arabic
    '握把 ½ 🏌️',
    'Größe Ø ß',
    LONG,
    '=1+1',
    '+1',
    '-x',
    '@home',
    '\t=1',
    '\r=1',
    '2026-03-04',
    '3/4/26',
    '12 March',
    '007',
    ' ',
    '#N/A',
    'TRUE',
  ),
  fc.constantFrom<Typed>({ formula: '=1/0' }, { formula: '=1+1' }, { formula: '=NA()' }),
  fc
    .double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 })
    .map((value) => Number(value.toPrecision(12))),
  fc.boolean(),
  fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
    .filter((text) => text.trim() !== '' && !/[\u0000-\u001f]/.test(text)),
);

const TABLES = ['Stock', 'Jobs', 'Clubs', 'Movements', 'Checkin', 'Quotes', 'Settings'] as const;
/** Sheets that are called as ours would be. */
const ALIKE = [
  'Plan 1042',
  'Compare 1042',
  'Quote 1',
  'Ticket 1042',
  'Order',
  'Pick list',
  'Week',
  'Reminders',
  'Plan of chosen clubs',
];

type Mess =
  | { readonly what: 'sheet'; readonly sheet: string; readonly cells: readonly (readonly Typed[])[] }
  | {
      readonly what: 'cell';
      readonly table: string;
      readonly row: number;
      readonly column: number;
      readonly value: Typed;
    }
  | { readonly what: 'below'; readonly table: string; readonly rows: number; readonly value: Typed }
  | { readonly what: 'beside'; readonly table: string; readonly value: Typed }
  | { readonly what: 'tableBelow' | 'protect' | 'filter' | 'merge' | 'lookAlike'; readonly table: string }
  | { readonly what: 'name'; readonly number: number };

const ours = fc.constantFrom(...TABLES);
const mess: fc.Arbitrary<Mess> = fc.oneof(
  fc.record({
    what: fc.constant('sheet' as const),
    sheet: fc.constantFrom(...ALIKE, 'Πελάτες', 'לקוחות', "Bob's old list", 'Sheet 2'),
    cells: fc.array(fc.array(odd, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
  }),
  fc.record({
    what: fc.constant('cell' as const),
    table: ours,
    row: fc.integer({ min: 1, max: 6 }),
    column: fc.integer({ min: 2, max: 14 }),
    value: odd,
  }),
  fc.record({ what: fc.constant('below' as const), table: ours, rows: fc.integer({ min: 1, max: 3 }), value: odd }),
  fc.record({ what: fc.constant('beside' as const), table: ours, value: odd }),
  fc.record({
    what: fc.constantFrom(
      'tableBelow' as const,
      'protect' as const,
      'filter' as const,
      'merge' as const,
      'lookAlike' as const,
    ),
    table: ours,
  }),
  fc.record({ what: fc.constant('name' as const), number: fc.integer({ min: 1, max: 3 }) }),
);

async function tableAt(bench: SafetyBench, name: string): Promise<Block> {
  const [table] = await bench.port().read([{ read: 'table', table: name }]);
  if (!table) throw new Error(`no table ${name}`);
  return table.at;
}

async function make(bench: SafetyBench, each: Mess): Promise<void> {
  const { hands } = bench;
  if (each.what === 'name') return hands.addName(`Setwright_Plan_${each.number}`, block('Jobs', 0, 0, 1, 2));
  if (each.what === 'sheet') {
    await hands.addSheet(each.sheet);
    for (const [row, line] of each.cells.entries())
      for (const [column, value] of line.entries()) await hands.type(each.sheet, row, column, value);
    return;
  }
  const at = await tableAt(bench, each.table);
  const end = at.row + at.rows;
  switch (each.what) {
    case 'cell':
      return hands.type(at.sheet, at.row + each.row, at.column + each.column, each.value);
    case 'below':
      return hands.type(at.sheet, end + each.rows, at.column, each.value);
    case 'beside':
      return hands.type(at.sheet, at.row + 1, at.column + at.columns + 1, each.value);
    case 'tableBelow':
      return layTable(bench, `Old_${each.table}`, block(at.sheet, end + 2, at.column, 3, 2), ['Item', 'On hand']);
    case 'lookAlike':
      await hands.addSheet(`${each.table} 2`);
      return layTable(bench, `${each.table}2`, block(`${each.table} 2`, 0, 0, 3, 3), ['Job', 'Club', 'New grip']);
    case 'protect':
      return hands.protect(at.sheet);
    case 'filter':
      return hands.filter(each.table);
    case 'merge':
      return hands.merge(block(at.sheet, end + 1, at.column, 1, 2));
  }
}

async function layTable(bench: SafetyBench, name: string, at: Block, headings: readonly string[]): Promise<void> {
  for (const [i, heading] of headings.entries()) await bench.hands.type(at.sheet, at.row, at.column + i, heading);
  await bench.hands.type(at.sheet, at.row + 1, at.column, '=mine');
  await bench.hands.addTable(name, at);
}

const block = (sheet: string, row: number, column: number, rows: number, columns: number): Block => {
  return { sheet, row, column, rows, columns };
};

/** The same mess twice is a mess that cannot be made. */
const messes = fc.uniqueArray(mess, {
  maxLength: 6,
  selector: (each) =>
    [
      each.what,
      'table' in each ? each.table : '',
      'sheet' in each ? each.sheet.toLowerCase() : '',
      'number' in each ? each.number : '',
    ].join(),
});

/* ---------------------------------------------------------------- what must hold */

/** Cells outside our tables' bodies are as they were. */
function expectOthersKept(when: string, before: Snapshot, now: Snapshot): void {
  const changed = [...before.cells].filter(([at, entry]) => now.cells.get(at) !== entry).map(([at]) => at);
  const outside = changed.filter((at) => !TABLES.some((name) => at.startsWith(`${name}!`)));
  expect(outside, when).toEqual([]);
  expect(
    before.sheets.filter((sheet) => !now.sheets.includes(sheet)),
    when,
  ).toEqual([]);
  const names = (seen: Snapshot): string[] => seen.tables.map((table) => table.replace(/ at .*$/, ''));
  expect(
    names(before).filter((table) => !names(now).includes(table)),
    when,
  ).toEqual([]);
  expect(
    before.names.filter((name) => !now.names.includes(name)),
    when,
  ).toEqual([]);
}

function unhurt(make_: () => SafetyBench | Promise<SafetyBench>, usualRuns: number) {
  const trials = TRIALS.filter(({ empty, after }) => !empty && !after);
  return fc.assert(
    fc.asyncProperty(messes, fc.nat({ max: trials.length - 1 }), async (all, which) => {
      const trial = trials[which];
      if (!trial) throw new Error('no trial');
      const bench = await make_();
      await prepare(trial, bench.port());
      for (const each of all) await make(bench, each);
      const before = bench.snapshot();
      const end = await trial.run(bench.port());
      const now = bench.snapshot();
      const when = `${trial.name}: ${said(end)}`;
      expectSentence(when, end);
      if (end.kind !== 'done' && !trial.inParts) expect(snapshotText(now), when).toBe(snapshotText(before));
      else expectOthersKept(when, before, now);
      const undone = await undoLast(bench.port());
      if (undone.done && end.kind === 'done' && !trial.stays) {
        expect(undone, when).toMatchObject({ reverted: { left: [], notFound: [] } });
        expectTakenBack(when, before, bench.snapshot());
      } else if (!undone.done) expect(contentText(bench.snapshot()), when).toBe(contentText(now));
      bench.dispose();
    }),
    drawn(usualRuns),
  );
}

describe('a messy workbook is not hurt', () => {
  test('in memory', () => unhurt(memoryBench, 60));
  test('in Excel’s client on the simulated workbook', () => unhurt(simulatedBench, 20));
  test('in the embedded spreadsheet', () => unhurt(embeddedBench, 6));
});
