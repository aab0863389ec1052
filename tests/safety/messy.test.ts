/** Workbooks as people keep them: whatever stands in them, nothing of it is changed unasked, and what was done can be taken back. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block } from '../../src/workbook/port';
import { blockOf, contains } from '../../src/workbook/shared/address';
import { LIST_STEM } from '../../src/workbook/shared/limits';
import { undoLast } from '../../src/workbook/undo';
import {
  contentText,
  embeddedBench,
  memoryBench,
  simulatedBench,
  snapshotText,
  type SafetyBench,
  type Snapshot,
  type Typed,
} from './benches';
import { drawn } from './chance';
import { expectSentence, expectTakenBack } from './faultSuite';
import { fillBody, type Row } from './shop';
import { bringTo, prepare, said, trialNamed, TRIALS } from './trials';

/* ---------------------------------------------------------------- what a workbook may hold */

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
  fc.constantFrom<Typed>({ error: '#N/A' }, { error: '#REF!' }, { error: '#DIV/0!' }),
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
  | { readonly what: 'tableBelow' | 'protect' | 'filter' | 'merge' | 'lookAlike' | 'totals'; readonly table: string }
  | { readonly what: 'hide'; readonly table: string; readonly line: 'row' | 'column'; readonly which: number }
  | { readonly what: 'mergeOn'; readonly sheet: string; readonly row: number }
  /** A sheet that is hidden or runs from right to left: one of ours, or a blank one that is called as ours would be. */
  | { readonly what: 'hideSheet'; readonly sheet: string }
  | { readonly what: 'turn'; readonly sheet: string }
  /** What is a date in other shops is a text in this one. */
  | { readonly what: 'dates'; readonly dates: readonly string[] }
  | { readonly what: 'largeStock'; readonly rows: number }
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
      'totals' as const,
    ),
    table: ours,
  }),
  fc.record({
    what: fc.constant('hide' as const),
    table: ours,
    line: fc.constantFrom('row' as const, 'column' as const),
    which: fc.integer({ min: 0, max: 12 }),
  }),
  fc.record({ what: fc.constant('mergeOn' as const), sheet: fc.constantFrom(...ALIKE), row: fc.nat({ max: 3 }) }),
  fc.record({ what: fc.constant('hideSheet' as const), sheet: fc.constantFrom(...ALIKE, ...TABLES) }),
  fc.record({ what: fc.constant('turn' as const), sheet: fc.constantFrom(...ALIKE, ...TABLES) }),
  fc.record({
    what: fc.constant('dates' as const),
    dates: fc.array(fc.constantFrom('2026-03-04', '3/4/26', '04.03.2026', '12 March', 'next week', "'46110", 'soon'), {
      minLength: 3,
      maxLength: 3,
    }),
  }),
  fc.record({ what: fc.constant('largeStock' as const), rows: fc.integer({ min: 60, max: 200 }) }),
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
  if (each.what === 'mergeOn') {
    await hands.addSheet(each.sheet);
    return hands.merge(block(each.sheet, each.row, 0, 2, 3));
  }
  if (each.what === 'hideSheet' || each.what === 'turn') {
    await hands.addSheet(each.sheet);
    return hands[each.what](each.sheet);
  }
  if (each.what === 'dates') return typeDates(bench, each.dates);
  if (each.what === 'largeStock') return enlarge(bench, each.rows);
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
      return layTable(
        bench,
        `${each.table}2`,
        block(`${each.table} 2`, 0, 0, 3, at.columns),
        await headings(bench, each.table),
      );
    case 'totals': {
      // Where something stands, Excel would move it down.
      const [below] = await bench.port().read([{ read: 'block', at: { ...at, row: end, rows: 1 } }]);
      const isFree = below.tables.length === 0 && below.values.every((line) => line.every((value) => value === null));
      return isFree && !below.protected ? hands.totals(each.table) : undefined;
    }
    case 'hide':
      return hands.hide(at.sheet, each.line, (each.line === 'row' ? at.row : at.column) + each.which);
    case 'protect':
      return hands.protect(at.sheet);
    case 'filter':
      return hands.filter(each.table);
    case 'merge':
      return hands.merge(block(at.sheet, end + 1, at.column, 1, 2));
  }
}

async function headings(bench: SafetyBench, name: string): Promise<readonly string[]> {
  const [table] = await bench.port().read([{ read: 'table', table: name }]);
  return table?.headers ?? [];
}

async function typeDates(bench: SafetyBench, dates: readonly string[]): Promise<void> {
  for (const [name, heading] of [
    ['Jobs', 'Due'],
    ['Jobs', 'Closed'],
  ] as const) {
    const { sheet, row, column } = await tableAt(bench, name);
    const across = (await headings(bench, name)).indexOf(heading);
    if (across < 0) throw new Error(`no column ${heading}`);
    for (const [down, date] of dates.entries()) await bench.hands.type(sheet, row + 1 + down, column + across, date);
  }
}

/** Types rows below those that Stock has, as far as nothing is in the way. */
async function enlarge(bench: SafetyBench, rows: number): Promise<void> {
  const [table] = await bench.port().read([{ read: 'table', table: 'Stock' }]);
  if (!table || table.protected || table.filtered) return;
  const [below] = await bench
    .port()
    .read([{ read: 'block', at: { ...table.at, row: table.at.row + table.at.rows, rows } }]);
  const isFree = below.tables.length === 0 && below.merged.length === 0;
  if (!isFree || below.values.some((line) => line.some((value) => value !== null))) return;
  const had = table.rows.map((line): Row => {
    const plain = line.flatMap((value, i) => {
      // What is no plain value is left alone.
      return typeof value === 'object' ? [] : [[table.headers[i] ?? '', value] as const];
    });
    return Object.fromEntries(plain);
  });
  const more = Array.from({ length: rows }, (_, i): Row => {
    return { Item: `ROW-${i}`, 'Core (in)': 0.6, 'Mass (g)': 40 + (i % 30), 'On hand': i % 9 };
  });
  await fillBody(bench.port(), 'Stock', [...had, ...more]);
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

/** How tables are called that were made a mess with. */
const MADE = /^Old_|2$/;

/** Cells outside our tables are as they were; so are protected sheets, merged cells, filters, totals and what is hidden. */
function expectOthersKept(when: string, before: Snapshot, now: Snapshot): void {
  const changed = [...before.cells].filter(([at, entry]) => now.cells.get(at) !== entry).map(([at]) => at);
  const ourTables = now.tables.flatMap((table) => {
    const [, name = '', address = ''] = /^(.*?) at (.*)$/s.exec(table) ?? [];
    const at = TABLES.some((each) => each === name) || !MADE.test(name) ? blockOf(address) : null;
    return at ? [at] : [];
  });
  const outside = changed.filter((cell) => {
    const [, sheet = '', row = 0, column = 0] = /^(.*)!(\d+),(\d+)$/s.exec(cell) ?? [];
    const place = block(sheet, Number(row), Number(column), 1, 1);
    return !ourTables.some((table) => contains(table, place));
  });
  expect(outside, when).toEqual([]);
  expect(
    changed.filter((cell) => before.marks.includes(`${cell.replace(/!\d+,\d+$/s, '')} is protected`)),
    when,
  ).toEqual([]);
  expect(
    before.marks.filter((mark) => !now.marks.includes(mark)),
    when,
  ).toEqual([]);
  expect(
    before.sheets.filter((sheet) => !now.sheets.includes(sheet)),
    when,
  ).toEqual([]);
  const names = (seen: Snapshot): string[] => seen.tables.map((table) => table.replace(/ at .*$/, ''));
  expect(
    names(before).filter((table) => !names(now).includes(table)),
    when,
  ).toEqual([]);
  // The name of a list that stands for a table of ours reaches over the rows that it gets.
  const kept = (all: readonly string[]): string[] =>
    all.map((name) => (name.startsWith(LIST_STEM) ? name.replace(/ (?:at |=).*$/, '') : name));
  expect(
    kept(before.names).filter((name) => !kept(now.names).includes(name)),
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
      // A sheet is protected once it is done: a protected one takes no table from anybody.
      const isLast = ({ what }: Mess): boolean => what === 'protect';
      for (const each of [...all.filter((one) => !isLast(one)), ...all.filter(isLast)]) await make(bench, each);
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

/** As many rows as a shop may come to. */
async function unhurtWhereLarge(bench: SafetyBench, names: readonly string[]): Promise<void> {
  await prepare(trialNamed('fill plan'), bench.port());
  await enlarge(bench, 40_000);
  for (const trial of names.map(trialNamed)) {
    await bringTo(trial, bench.port());
    const before = bench.snapshot();
    expect(before.cells.size).toBeGreaterThan(160_000);
    const end = await trial.run(bench.port());
    const when = `${trial.name}: ${said(end)}`;
    expect(end.kind, when).toBe('done');
    expectOthersKept(when, before, bench.snapshot());
    expect(await undoLast(bench.port()), when).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
    expectTakenBack(when, before, bench.snapshot());
  }
  bench.dispose();
}

describe('a stock of 40,000 rows is not hurt', () => {
  test('in memory', () => unhurtWhereLarge(memoryBench(), ['counted']));
  test('in Excel’s client on the simulated workbook', () => unhurtWhereLarge(simulatedBench(), ['fill plan']));
  test('in the embedded spreadsheet', async () => unhurtWhereLarge(await embeddedBench(), ['counted']));
});

describe('a messy workbook is not hurt', () => {
  test('in memory', () => unhurt(memoryBench, 60));
  test('in Excel’s client on the simulated workbook', () => unhurt(simulatedBench, 20));
  test('in the embedded spreadsheet', () => unhurt(embeddedBench, 6));
});
