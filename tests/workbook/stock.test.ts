import { describe, expect, test } from 'vitest';
import type { Seen } from '../../src/workbook/port';
import { readShop } from '../../src/workbook/shop';
import { moveStock, type MoveAsked } from '../../src/workbook/moveStock';
import { releaseJobs, reserveJobs, useStock } from '../../src/workbook/stockJobs';
import { cancelOrder, orderThing, placeOrder, takeInOrder } from '../../src/workbook/orderJobs';
import { startCheckIn } from '../../src/workbook/checkInJobs';
import { stockOf } from '../../src/workbook/stockScope';
import { weekOf } from '../../src/workbook/week';
import { sayUndo } from '../../src/words/outcomes';
import { shortItemsText } from '../../src/words/week';
import { undoLast } from '../../src/workbook/undo';
import {
  reservedLines,
  sayLack,
  sayMoved,
  sayOrderEnded,
  sayPlaced,
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
    // 15 ml for each grip (common practice, no source)
    expect(jobs[0]?.needs).toContainEqual({ shelf: 'solvent', item: 'Solvent', club: '', quantity: 45 });
    expect(jobs[0]).toMatchObject({ round: 1, twoWayStrips: 3 });
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

  test('goes back as a whole or not at all: what was changed since is named', async () => {
    const port = await workshop();
    await useStock(port, '1042', act);
    const used = ledger(port);
    type(port, 'Stock', 1, 'On hand', 16);
    const undone = await undoLast(port);
    expect(undone).toMatchObject({ done: false, reason: 'changedSince', cells: ['Stock!' + onHandCell(port)] });
    expect(sayUndo(undone)).toMatch(/^Stock used for job 1042: nothing was taken back\. .* changed since: Stock!/);
    expect(ledger(port)).toEqual(used);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(16);
    // put as it was, it goes back after all
    type(port, 'Stock', 1, 'On hand', 17);
    expect(await undoLast(port)).toMatchObject({ done: true });
    expect(ledger(port)).toEqual([]);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(20);
  });

  test('a row of the ledger that was changed, and an item that was renamed, keep all of it from going back', async () => {
    const port = await workshop();
    await useStock(port, '1042', act);
    type(port, 'Movements', 1, 'Quantity', 2);
    expect(await undoLast(port)).toMatchObject({ done: false, cells: [expect.stringMatching(/^Movements!/)] });
    type(port, 'Movements', 1, 'Quantity', 1);
    type(port, 'Stock', 1, 'Item', 'FERN-N');
    expect(await undoLast(port)).toMatchObject({ done: false, cells: ['Stock: FERN-M'] });
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(17);
  });

  test('a club that was renamed since is not taken again, and is told', async () => {
    const port = await workshop();
    await useStock(port, '1042', act);
    const before = ledger(port);
    type(port, 'Clubs', 1, 'Club', '1 wood');
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ needed: 1 });
    expect(sayUsed(await useStock(port, '1042', act))).toBe(
      'What job 1042 uses has been taken from stock already. FERN-M of 1 wood was taken before, as that of Driver, and was not taken again.',
    );
    expect(ledger(port)).toEqual(before);
    expect(cellAt(port, 'Stock', 1, 'On hand')).toBe(17);
  });

  test('goes by grip, layers and weight that Checkin keeps, not by a plan made since', async () => {
    const port = await workshop();
    await startCheckIn(port, '1042');
    type(port, 'Checkin', 1, 'Weight on (g)', 5);
    type(port, 'Checkin', 2, 'Weight on (g)', 0);
    type(port, 'Checkin', 3, 'Weight on (g)', 0);
    // a plan made since chooses another grip and more layers
    type(port, 'Clubs', 2, 'New grip', 'MOSS-S');
    type(port, 'Clubs', 3, 'Layers', 4);
    await useStock(port, '1042', act);
    const rows = ledger(port);
    expect(rows.filter((row) => row.includes('|pc|'))).toEqual(
      RESERVED_1042.map((row) => row.replace('Reserved', 'Used')),
    );
    expect(rows).toContain('Used|1042||Build-up tape|0.875|yd|');
    expect(rows.filter((row) => row.includes('|g|')).map((row) => row.split('|').slice(4).join('|'))).toEqual(['5|g|']);
    // the bench put on another grip and one more layer: 10.5 in more of tape (derived)
    const other = await workshop();
    await startCheckIn(other, '1042');
    type(other, 'Checkin', 2, 'Grip', 'moss-s');
    type(other, 'Checkin', 3, 'Layers', 2);
    await useStock(other, '1042', act);
    expect(ledger(other)).toContain('Used|1042|7 iron|MOSS-S|1|pc|');
    expect(ledger(other)).toContain('Used|1042||Build-up tape|1.167|yd|');
    expect(cellAt(other, 'Stock', 2, 'On hand')).toBe(19);
  });

  test('a grip of Checkin that Stock does not list is named, and none is taken in its place', async () => {
    const port = await workshop();
    await startCheckIn(port, '1042');
    type(port, 'Checkin', 2, 'Grip', 'ELM-X');
    expect(sayUsed(await useStock(port, '1042', act))).toMatch(
      /^Grip of 7 iron is “ELM-X”, which Stock does not list\./,
    );
    expect(ledger(port)).toEqual([]);
  });

  test('of a redo only the weight that went on this time', async () => {
    const port = await workshop();
    const on = 'Weight on (g)';
    port.fillTable('Checkin', [
      { Job: '1042', Club: 'Driver', [on]: 4, Weighting: 'Lead tape' },
      { Job: '1042', Club: 'Driver', [on]: 6, Weighting: 'Lead tape', Round: 2 },
    ]);
    await useStock(port, '1042', act);
    expect(ledger(port).filter((row) => row.includes('|g|'))).toEqual(['Used|1042||Lead tape|2|g|2']);
  });

  test('solvent is written down, and none where water does it', async () => {
    const port = await workshop();
    await useStock(port, '1042', act);
    expect(ledger(port)).toContain('Used|1042||Solvent|45|ml|');
    const wet = await workshop();
    const seen = wet.tableSeen('Settings');
    const row = (seen?.rows ?? []).findIndex(([name]) => name === 'Tape slips with') + 1;
    type(wet, 'Settings', row, 'Value', 'Water');
    await useStock(wet, '1042', act);
    expect(ledger(wet).filter((line) => line.includes('Solvent'))).toEqual([]);
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

/** Where the first count stands. */
function onHandCell(port: MemoryPort): string {
  const seen = port.tableSeen('Stock');
  const column = (seen?.at.column ?? 0) + (seen?.headers.indexOf('On hand') ?? 0);
  return `${String.fromCharCode(65 + column)}${(seen?.at.row ?? 0) + 2}`;
}

describe('orders', () => {
  const thing = { shelf: 'grip', item: 'FERN-M', note: '' } as const;
  const shown = { supplier: '', lines: [{ shelf: 'grip', item: 'FERN-M', quantity: 2 }] } as const;

  /** Two are there, and four are needed. */
  async function shortWorkshop(): Promise<MemoryPort> {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 2);
    return port;
  }

  test('placing one is a row with number, supplier and day; a second time there is nothing to order', async () => {
    const port = await shortWorkshop();
    type(port, 'Stock', 1, 'Supplier', 'Larch Supply');
    const larch = { ...shown, supplier: 'larch supply' };
    expect(await placeOrder(port, larch, act)).toMatchObject({ done: true, order: '1', supplier: 'Larch Supply' });
    expect(ledger(port)).toEqual(['Ordered|||FERN-M|2|pc|']);
    expect(cellAt(port, 'Movements', 1, 'Order no')).toBe('1');
    expect(cellAt(port, 'Movements', 1, 'Supplier')).toBe('Larch Supply');
    expect(cellAt(port, 'Movements', 1, 'Date')).toBe(today);
    const applies = port.applies;
    expect(sayPlaced(await placeOrder(port, larch, act))).toBe(
      'Nothing is to be ordered from larch supply: what is short is on order.',
    );
    expect(port.applies).toBe(applies);
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ onHand: 2, onOrder: 2, left: -2, low: false });
    await undoLast(port);
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ onOrder: 0, low: true });
  });

  test('is refused where the tables ask for another by now than was shown', async () => {
    const port = await shortWorkshop();
    type(port, 'Stock', 1, 'On hand', 1);
    expect(sayPlaced(await placeOrder(port, shown, act))).toBe(
      'What is to be ordered without a supplier has changed since it was shown. Nothing was written; look at it once more.',
    );
    expect(ledger(port)).toEqual([]);
  });

  test('reserving says what is on order, and so does the week', async () => {
    const port = await shortWorkshop();
    await orderThing(port, { ...thing, kind: 'ordered', quantity: '1' }, act);
    const end = await reserveJobs(port, null, act);
    expect(reservedLines(end)).toEqual(['FERN-M: 1042 lacks 1 from 2025-12-09, on order', 'FERN-M: 1043 lacks 1']);
    const week = weekOf({ tables: (await readShop(port)).tables, today });
    if (!week.ok) throw new Error(week.issue.code);
    expect(week.value.parts.flatMap(({ jobs }) => jobs.map(({ short }) => shortItemsText(short)))).toEqual([
      'FERN-M × 1 (on order)',
      'FERN-M × 1',
    ]);
  });

  test('parts that come count for it, the earliest order first; what is beyond it for none', async () => {
    const port = await shortWorkshop();
    await orderThing(port, { ...thing, kind: 'ordered', quantity: '6' }, act);
    await orderThing(port, { ...thing, kind: 'ordered', quantity: '4' }, act);
    const came = { ...thing, kind: 'arrived' } as const;
    expect(sayMoved(await moveStock(port, { ...came, quantity: '5' }, act))).toBe(
      'FERN-M: 5 pieces arrived, 7 pieces on hand. Order 1: 5, 1 still to come.',
    );
    expect(sayMoved(await moveStock(port, { ...came, quantity: '3', order: '2' }, act))).toBe(
      'FERN-M: 3 pieces arrived, 10 pieces on hand. Order 2: 3, 1 still to come.',
    );
    expect(sayMoved(await moveStock(port, { ...came, quantity: '1', order: null }, act))).toBe(
      'FERN-M: 1 piece arrived, 11 pieces on hand.',
    );
    expect(sayMoved(await moveStock(port, { ...came, quantity: '3' }, act))).toBe(
      'FERN-M: 3 pieces arrived, 14 pieces on hand. Order 1: 1, all of it here. Order 2: 1, all of it here. 1 beyond what was ordered.',
    );
    expect(await stateOf(port, 'FERN-M')).toMatchObject({ onHand: 14, onOrder: 0 });
    expect(ledger(port).slice(-3)).toEqual(Array(3).fill('Arrived|||FERN-M|1|pc|'));
  });

  test('what is not counted may be ordered and come, and stays uncounted', async () => {
    const port = await workshop();
    const tape = { shelf: 'tape', item: 'Two-way tape', note: '' } as const;
    await orderThing(port, { ...tape, kind: 'ordered', quantity: '36' }, act);
    expect(sayMoved(await moveStock(port, { ...tape, kind: 'arrived', quantity: '36' }, act))).toBe(
      'Two-way tape: 36 yd arrived, not counted. Order 1: 36 yd, all of it here.',
    );
    expect(cellAt(port, 'Tape', 2, 'On hand (yd)')).toBeNull();
  });

  test('the rest comes or is cancelled as a whole, once', async () => {
    const port = await shortWorkshop();
    await orderThing(port, { ...thing, kind: 'ordered', quantity: '6' }, act);
    await orderThing(port, { ...thing, item: 'MOSS-S', kind: 'ordered', quantity: '2', order: '1' }, act);
    await moveStock(port, { ...thing, kind: 'arrived', quantity: '4' }, act);
    expect(sayOrderEnded(await takeInOrder(port, '1', act))).toBe('Order 1: 4 pieces arrived.');
    expect([cellAt(port, 'Stock', 1, 'On hand'), cellAt(port, 'Stock', 2, 'On hand')]).toEqual([8, 22]);
    expect(sayOrderEnded(await takeInOrder(port, '1', act))).toBe('Nothing of order 1 is still to come.');
    expect(await undoLast(port)).toMatchObject({ done: true });
    expect(sayOrderEnded(await cancelOrder(port, '1', act))).toBe('Order 1: 4 pieces cancelled.');
    expect(sayOrderEnded(await cancelOrder(port, '1', act))).toBe('Nothing of order 1 is still to come.');
    expect([cellAt(port, 'Stock', 1, 'On hand'), cellAt(port, 'Stock', 2, 'On hand')]).toEqual([6, 20]);
  });

  test.each<[Partial<Parameters<typeof orderThing>[1]>, RegExp]>([
    [{ quantity: '' }, /^Quantity is blank\./],
    [{ quantity: '-2' }, /^Quantity is −2\. Give more than 0\./],
    [{ quantity: '2,5' }, /^Quantity is 2\.5\. Give a whole number/],
    [{ item: 'ELM-X' }, /^Item is “ELM-X”, which Stock does not list\./],
    [{ kind: 'cancelled', quantity: '1' }, /^Quantity is 1\. Give something that is on order\./],
  ])('refuses %j', async (more, sentence) => {
    const port = await workshop();
    const end = await orderThing(port, { ...thing, kind: 'ordered', quantity: '3', ...more }, act);
    expect(sayPlaced(end)).toMatch(sentence);
    expect(ledger(port)).toEqual([]);
  });

  test('more than is on order cannot be cancelled, and an order without a number is named', async () => {
    const port = await workshop();
    await orderThing(port, { ...thing, kind: 'ordered', quantity: '3' }, act);
    const more = await orderThing(port, { ...thing, kind: 'cancelled', quantity: '4' }, act);
    expect(sayPlaced(more)).toBe('Quantity is 4. Give no more than the 3 on order. Nothing was written.');
    type(port, 'Movements', 1, 'Order no', null);
    expect(sayReserved(await reserveJobs(port, null, act))).toBe(
      'Movements row 2, Order no is blank. Give the number of the order. Nothing was written.',
    );
  });

  test('an item that Stock has no more is named when the order comes, and nothing is written', async () => {
    const port = await workshop();
    await orderThing(port, { ...thing, kind: 'ordered', quantity: '3' }, act);
    type(port, 'Stock', 1, 'Item', 'FERN-N');
    const before = ledger(port);
    expect(sayOrderEnded(await takeInOrder(port, '1', act))).toMatch(/“FERN-M”, which Stock does not list/);
    expect(ledger(port)).toEqual(before);
    expect(await cancelOrder(port, '1', act)).toMatchObject({ done: true });
  });

  test('a ledger that was made before orders takes all else, and names the columns that ordering wants', async () => {
    const port = await shortWorkshop();
    const seen = port.tableSeen('Movements');
    if (!seen) throw new Error('no ledger');
    for (const header of ['Order no', 'Supplier']) {
      port.type(seen.at.sheet, seen.at.row, seen.at.column + seen.headers.indexOf(header), `Own ${header}`);
    }
    expect(sayPlaced(await placeOrder(port, shown, act))).toMatch(
      /^The table Movements has no columns Order no and Supplier\./,
    );
    expect(await moveStock(port, { ...thing, kind: 'arrived', quantity: '3' }, act)).toMatchObject({ done: true });
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
    [asked('sentBack', '4'), 'FERN-M: 4 pieces sent back, 16 pieces on hand.', 16],
    [asked('broughtBack', '2'), 'FERN-M: 2 pieces brought back, 22 pieces on hand.', 22],
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
    [asked('sentBack', '21'), /^Quantity is 21\. Give no more than the 20 on hand\./],
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
