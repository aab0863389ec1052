import { describe, expect, test } from 'vitest';
import type { Seen } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import { moveStock, releaseJobs, reserveJobs, useStock } from '../../src/workbook/stockJobs';
import type { MoveAsked } from '../../src/workbook/stockJobs';
import { stockOf } from '../../src/workbook/stockScope';
import { undoLast } from '../../src/workbook/undo';
import {
  reservedLines,
  sayLack,
  sayMoved,
  sayReleased,
  sayReserved,
  sayStranded,
  sayUsed,
} from '../../src/words/stock';
import { sayIssue } from '../../src/words/issues';
import type { MemoryPort } from './memoryPort';
import { olderWorkshop } from './olderWorkshop';
import { workshop } from './workshop';

const today = 46000;
const act = { today };

function cellAt(port: MemoryPort, table: string, row: number, header: string): Seen {
  const seen = port.tableSeen(table);
  return seen?.rows[row - 1]?.[seen.headers.indexOf(header)] ?? null;
}

function type(port: MemoryPort, table: string, row: number, header: string, value: Seen): void {
  port.type(table, row, port.tableSeen(table)?.headers.indexOf(header) ?? -1, value);
}

/** The ledger's rows, without date and note. */
function ledger(port: MemoryPort): string[] {
  const seen = port.tableSeen('Movements');
  const headers = ['Movement', 'Job', 'Club', 'Item', 'Quantity', 'Unit', 'Round'];
  return (seen?.rows ?? [])
    .map((row) => headers.map((header) => String(row[seen?.headers.indexOf(header) ?? -1] ?? '')).join('|'))
    .filter((line) => line !== '||||||');
}

async function stock(port: MemoryPort) {
  const seen = stockOf(await readShop(port));
  if (!seen.ok) throw new Error(JSON.stringify(seen.issue));
  return seen.value;
}

const stateOf = async (port: MemoryPort, item: string) =>
  (await stock(port)).state.items.find((each) => each.item === item);

// Job 1042: three clubs with FERN-M and one layer; job 1043: one club. A strip is as long as the grip, 10.5 in, and its
// two-way strip too, so a club takes 21 in of tape; 3 × 10.5 in are 0.875 yd (derived).
const RESERVED_1042 = [
  'Reserved|1042|Driver|FERN-M|1|pc|',
  'Reserved|1042|7 iron|FERN-M|1|pc|',
  'Reserved|1042|Pitching wedge|FERN-M|1|pc|',
];

describe('how the shelves stand', () => {
  test('what open jobs need, from clubs, tape and weight', async () => {
    const port = await workshop();
    const { jobs, problems } = await stock(port);
    expect(problems).toEqual([]);
    expect(jobs.map(({ job, due }) => [job, due])).toEqual([
      ['1042', 46000],
      ['1043', undefined],
    ]);
    expect(jobs[0]?.needs).toContainEqual({ shelf: 'tape', item: 'Build-up tape', club: '', quantity: 0.875 });
    expect(jobs[0]).toMatchObject({ round: 1, twoWayStrips: 3, solventMl: 45 });
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ onHand: 20, reserved: 0, free: 20, needed: 4, left: 16 });
  });

  test('a grip that the client brings is no need', async () => {
    const port = await workshop();
    type(port, 'Clubs', 1, 'Own grip', 'Yes');
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ needed: 3 });
  });

  test('a job that is done needs nothing', async () => {
    const port = await workshop();
    type(port, 'Jobs', 1, 'Status', 'Done');
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ needed: 1 });
  });

  test('the earliest due has the first piece, and who lacks it is told with the day', async () => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 2);
    type(port, 'Jobs', 2, 'Due', 45990);
    const state = await stateOf(port, 'FERN-M');
    expect(state).toMatchObject({ left: -2, low: true });
    expect(state?.lacks.map((lack) => sayLack('grip', lack))).toEqual(['1042 lacks 2 from 2025-12-09']);
  });

  test.each<[Seen, string]>([
    ['12', ''],
    ['12,0', ''],
    [-3, 'Stock row 2, On hand is −3. Give 0 to 100000.'],
    ['a few', 'Stock row 2, On hand is “a few”, not a number. Give 0 to 100000.'],
    [2.5, 'Stock row 2, On hand is 2.5. Give a whole number, 0 to 100000.'],
  ])('on hand %j', async (value, sentence) => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', value);
    const end = await reserveJobs(port, ['1042'], act);
    expect(end.done).toBe(true);
    // what cannot be counted is named, and the rest is reserved
    expect(reservedLines(end)).toEqual(sentence === '' ? [] : [sentence]);
    expect(ledger(port).some((line) => line.includes('FERN-M'))).toBe(sentence === '');
    expect(ledger(port).some((line) => line.includes('tape'))).toBe(true);
  });
});

describe('reserving', () => {
  test('writes a row for each club, once; pressing again changes nothing', async () => {
    const port = await workshop();
    const end = await reserveJobs(port, ['1042'], act);
    expect(sayReserved(end)).toBe(
      'Reserved 3 pieces, 1.75 yd and 34 g for job 1042.'.replace(' and 34 g', weightPart(end)),
    );
    expect(ledger(port).slice(0, 3)).toEqual(RESERVED_1042);
    expect(cellAt(port, 'Movements', 1, 'Date')).toBe(today);
    const before = ledger(port);
    const applies = port.applies;
    expect(sayReserved(await reserveJobs(port, ['1042'], act))).toBe('Nothing was to be changed for job 1042.');
    expect(ledger(port)).toEqual(before);
    expect(port.applies).toBe(applies);
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ onHand: 20, reserved: 3, free: 17, needed: 4, left: 16 });
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(20);
  });

  test('after a replan the difference is released and reserved', async () => {
    const port = await workshop();
    await reserveJobs(port, null, act);
    const before = ledger(port).length;
    type(port, 'Clubs', 2, 'New grip', 'MOSS-S');
    const [changed] = (await stock(port)).state.stranded;
    expect(changed && sayStranded(changed)).toMatch(
      /^Job 1042 no longer needs all of what it has: 1 of FERN-M.* reserved\.$/,
    );
    await reserveJobs(port, ['1042'], act);
    expect(ledger(port).slice(before)).toEqual(
      expect.arrayContaining(['Reserved|1042|7 iron|MOSS-S|1|pc|', 'Released|1042|7 iron|FERN-M|1|pc|']),
    );
    expect((await stock(port)).state.stranded).toEqual([]);
  });

  test('gives out what is there and names who lacks the rest', async () => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 3);
    const end = await reserveJobs(port, null, act);
    expect(sayReserved(end)).toMatch(/^Reserved 3 pieces.* for 2 jobs\. Not all is there:$/);
    expect(reservedLines(end)).toEqual(['FERN-M: 1043 lacks 1']);
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ free: 0, reserved: 3 });
  });

  test('finds and releases what a deleted job holds', async () => {
    const port = await workshop();
    await reserveJobs(port, null, act);
    type(port, 'Jobs', 2, 'Job', '');
    for (const header of ['Job', 'Club', 'Kind', 'New grip', 'Layers']) type(port, 'Clubs', 4, header, '');
    const [stranded] = (await stock(port)).state.stranded;
    expect(stranded && sayStranded(stranded)).toMatch(
      /^Job 1043 is no longer in Jobs, and has 1 of FERN-M, .*reserved\.$/,
    );
    const end = await releaseJobs(port, null, act);
    expect(sayReleased(end)).toMatch(/^Released 1 piece.* of job 1043\.$/);
    expect((await stock(port)).state.stranded).toEqual([]);
    expect(sayReleased(await releaseJobs(port, null, act))).toBe('Nothing was reserved there.');
  });

  test('names a job that is not open, an item that Stock does not list, and one that it lists twice', async () => {
    const port = await workshop();
    expect(sayReserved(await reserveJobs(port, ['77'], act))).toBe(
      '77: no such job is open and has clubs. Nothing was written.',
    );
    type(port, 'Clubs', 1, 'New grip', 'ELM-X');
    const unlisted = 'Clubs row 2, New grip is “ELM-X”, which Stock does not list. Add it to Stock or choose another.';
    expect((await stock(port)).problems.map(sayIssue)).toEqual([unlisted]);
    expect(reservedLines(await reserveJobs(port, ['1042'], act))).toEqual([unlisted]);
    await undoLast(port);
    type(port, 'Clubs', 1, 'New grip', 'FERN-M');
    type(port, 'Stock', 2, 'Item', 'fern-m');
    const twice = await reserveJobs(port, ['1042'], act);
    expect(reservedLines(twice).join(' ')).toContain('“fern-m” is there twice');
    expect(ledger(port).filter((line) => /fern-m/i.test(line) && line.startsWith('Reserved'))).toEqual([]);
  });

  test('a row of the ledger that cannot be read stops everything, named', async () => {
    const port = await workshop();
    await reserveJobs(port, ['1042'], act);
    type(port, 'Movements', 2, 'Quantity', 'one');
    const before = ledger(port);
    expect(sayReserved(await reserveJobs(port, null, act))).toMatch(
      /^Movements row 3, Quantity is “one”, not a number\./,
    );
    expect(sayUsed(await useStock(port, '1042', act))).toMatch(/^Movements row 3/);
    type(port, 'Movements', 2, 'Quantity', -1);
    expect(sayReserved(await reserveJobs(port, null, act))).toBe(
      'Movements row 3, Quantity is −1. Give more than 0. Nothing was written.',
    );
    type(port, 'Movements', 2, 'Quantity', '1,0');
    expect(sayReserved(await reserveJobs(port, ['1042'], act))).toBe('Nothing was to be changed for job 1042.');
    expect(ledger(port).length).toBe(before.length);
  });

  test('the ledger may be sorted', async () => {
    const port = await workshop();
    await reserveJobs(port, null, act);
    const seen = port.tableSeen('Movements');
    const rows = (seen?.rows ?? []).filter((row) => row.some((cell) => cell !== null)).reverse();
    rows.forEach((row, down) => row.forEach((cell, across) => port.type('Movements', down + 1, across, cell)));
    expect(sayReserved(await reserveJobs(port, null, act))).toBe('Nothing was to be changed for 2 jobs.');
  });

  test('many jobs take as many round trips as one', async () => {
    const port = await workshop();
    const [reads, applies] = [port.reads, port.applies];
    await reserveJobs(port, null, act);
    expect([port.reads - reads, port.applies - applies]).toEqual([1, 1]);
  });

  test('is taken back by Undo, and the ledger then is as it was', async () => {
    const port = await workshop();
    await reserveJobs(port, ['1042'], act);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
    expect(ledger(port)).toEqual([]);
  });

  test('a ledger without a blank row grows', async () => {
    const port = await workshop();
    port.fillTable(
      'Movements',
      Array.from({ length: 99 }, () => ({ Date: 45000, Movement: 'Arrived', Item: 'OAK-58', Quantity: 1, Unit: 'pc' })),
    );
    await reserveJobs(port, ['1042'], act);
    expect(ledger(port).slice(99, 102)).toEqual(RESERVED_1042);
    expect(port.tableSeen('Movements')?.rows.length).toBeGreaterThan(100);
  });

  test('an older workbook without the table says what to do', async () => {
    const port = await olderWorkshop();
    expect(sayReserved(await reserveJobs(port, null, act))).toBe(
      'There is no table Movements. Use Set up this workbook to make it.',
    );
  });
});

/** What weight the plan adds, as the sentence says it. */
function weightPart(end: Awaited<ReturnType<typeof reserveJobs>>): string {
  const grams = end.done ? end.movements.filter(({ shelf }) => shelf === 'weight') : [];
  return grams.length === 0 ? '' : ` and ${grams.reduce((sum, { quantity }) => sum + quantity, 0)} g`;
}

describe('using', () => {
  test('takes grips and counted tape, writes it down, and does so once', async () => {
    const port = await workshop();
    type(port, 'Tape', 1, 'On hand (yd)', '10,5');
    await reserveJobs(port, ['1042'], act);
    const end = await useStock(port, '1042', act);
    expect(sayUsed(end)).toMatch(/^Taken from stock for job 1042: 3 pieces/);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(17);
    // 10.5 yd less 0.875 yd
    expect(cellAt(port, 'Tape', 1, 'On hand (yd)')).toBe(9.625);
    expect(cellAt(port, 'Tape', 2, 'On hand (yd)')).toBeNull();
    expect(ledger(port)).toContain('Used|1042||Two-way tape|0.875|yd|');
    expect(sayUsed(await useStock(port, '1042', act))).toBe('What job 1042 uses has been taken from stock already.');
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(17);
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ onHand: 17, reserved: 0, needed: 1 });
    expect(await undoLast(port)).toMatchObject({ done: true });
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(20);
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ reserved: 3, needed: 4 });
  });

  test('takes nothing where too few are there', async () => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 2);
    expect(sayUsed(await useStock(port, '1042', act))).toBe(
      'FERN-M: 3 pieces used, 2 on hand. Count what is there, then take it again. Nothing was written.',
    );
    expect(ledger(port)).toEqual([]);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(2);
  });

  test('a redo takes the clubs of its round, and is marked', async () => {
    const port = await workshop();
    await useStock(port, '1042', act);
    port.fillTable('Checkin', [
      { Job: '1042', Club: 'Driver' },
      { Job: '1042', Club: 'Driver', Round: 2 },
    ]);
    const before = ledger(port).length;
    await useStock(port, '1042', act);
    const rows = ledger(port).slice(before);
    expect(rows[0]).toBe('Used|1042|Driver|FERN-M|1|pc|2');
    expect(rows.every((row) => row.startsWith('Used|1042|') && row.endsWith('|2'))).toBe(true);
    expect(cellAt(port, 'Movements', before + 1, 'Note')).toBe('Redo under warranty');
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(16);
    await useStock(port, '1042', act);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(16);
  });

  test('nothing is half written, whichever step fails', async () => {
    const counted = await workshop();
    await useStock(counted, '1042', act);
    const steps = counted.stepsDone;
    for (let step = 1; step <= steps; step += 1) {
      const port = await workshop();
      port.failing.add(port.stepsDone + step);
      const end = await useStock(port, '1042', act);
      if (end.done) continue;
      expect(ledger(port)).toEqual([]);
      expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(20);
    }
  });
});

describe('what else happens', () => {
  const asked = (kind: MoveAsked['kind'], quantity: string, more: Partial<MoveAsked> = {}): MoveAsked => ({
    shelf: 'grip',
    item: 'fern-m ',
    kind,
    quantity,
    note: '',
    ...more,
  });

  test.each<[MoveAsked, string, number]>([
    [asked('arrived', '12'), 'FERN-M: 12 pieces arrived, 32 pieces on hand.', 32],
    [asked('arrived', ' 5,0 '), 'FERN-M: 5 pieces arrived, 25 pieces on hand.', 25],
    [asked('writtenOff', '1'), 'FERN-M: 1 piece written off, 19 pieces on hand.', 19],
    [asked('counted', '18'), 'FERN-M counted: 18 pieces on hand, 2 fewer than it said.', 18],
    [asked('counted', '20'), 'FERN-M counted: 20 pieces on hand, as it was.', 20],
  ])('%j', async (what, sentence, onHand) => {
    const port = await workshop();
    expect(sayMoved(await moveStock(port, what, act))).toBe(sentence);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(onHand);
    expect(ledger(port).length).toBe(1);
  });

  test.each<[MoveAsked, RegExp]>([
    [asked('arrived', ''), /^Quantity is blank\./],
    [asked('arrived', 'ten'), /^Quantity is “ten”, not a number\. Give a number alone/],
    [asked('arrived', '-3'), /^Quantity is −3\. Give more than 0\./],
    [asked('arrived', '2,5'), /^Quantity is 2\.5\. Give a whole number, grips come in pieces\./],
    [asked('writtenOff', '21'), /^Quantity is 21\. Give no more than the 20 on hand\./],
    [asked('counted', '1', { item: 'ELM-X' }), /^Item is “ELM-X”, which Stock does not list\./],
    [
      asked('arrived', '1', { shelf: 'tape', item: 'Two-way tape' }),
      /^On hand of Two-way tape is blank\. Give a count first\./,
    ],
  ])('refuses %j', async (what, sentence) => {
    const port = await workshop();
    expect(sayMoved(await moveStock(port, what, act))).toMatch(sentence);
    expect(ledger(port)).toEqual([]);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(20);
  });

  test('a count mends a cell that cannot be read, and tape is counted in yards', async () => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 'some');
    expect(await moveStock(port, asked('arrived', '3'), act)).toMatchObject({ done: false });
    expect(await moveStock(port, asked('counted', '9'), act)).toMatchObject({ done: true, onHand: 9 });
    const tape = asked('counted', '31,5', { shelf: 'tape', item: 'Two-way tape', note: 'after the sale' });
    expect(sayMoved(await moveStock(port, tape, act))).toBe(
      'Two-way tape counted: 31.5 yd on hand, 31.5 yd more than it said.',
    );
    expect(cellAt(port, 'Movements', 2, 'Note')).toBe('after the sale');
  });
});
