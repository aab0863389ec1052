import { describe, expect, test } from 'vitest';
import { closeJob, judgeCheckIn, startCheckIn } from '../../src/workbook/checkInJobs';
import { fillTicket } from '../../src/workbook/fillTicket';
import type { Seen } from '../../src/workbook/port';
import { readBench } from '../../src/workbook/readBench';
import { readShop } from '../../src/workbook/shop';
import { TICKET_COLUMNS, TICKET_HEAD_ROWS } from '../../src/workbook/ticketSheet';
import { undoLast } from '../../src/workbook/undo';
import { CAUTIONS_FOOT, sayClosing } from '../../src/words/bench';
import { sayCheckIn, sayClosed, sayJudged, sayTicket } from '../../src/words/benchOutcomes';
import type { MemoryPort } from './memoryPort';
import { olderWorkshop } from './olderWorkshop';
import { workshop } from './workshop';

const JOB = '1042';

function columnAt(port: MemoryPort, table: string, header: string): number {
  return port.tableSeen(table)?.headers.indexOf(header) ?? -1;
}

function column(port: MemoryPort, header: string, rows = 3): Seen[] {
  const at = columnAt(port, 'Checkin', header);
  return (port.tableSeen('Checkin')?.rows ?? []).slice(0, rows).map((row) => row[at] ?? null);
}

function type(port: MemoryPort, row: number, header: string, value: Seen): void {
  port.type('Checkin', row, columnAt(port, 'Checkin', header), value);
}

/** Types for each club what was predicted for it: readings and masses of a job that went as planned. */
async function measureAsPlanned(port: MemoryPort): Promise<void> {
  await judgeCheckIn(port, JOB);
  column(port, 'Predicted').forEach((predicted, i) => type(port, i + 1, 'Reading', predicted));
  // 1 layer and a grip 5 g heavier than the old one: 305, 415 and 445 g and some 7 g (tape of 1.76 g, derived)
  [312, 422, 452].forEach((grams, i) => type(port, i + 1, 'Mass (g)', grams));
}

describe('what the bench reads', () => {
  test('a new workbook says what the core takes by default, and lead by its material', async () => {
    const port = await workshop();
    const { ask, problems } = readBench((await readShop(port)).tables);
    expect(problems).toEqual([]);
    expect(ask.habits).toMatchObject({
      activator: 'solvent',
      solventMl: 15,
      takeOff: 'cutOff',
      leadWays: ['Lead tape'],
    });
    expect(ask.ways).toContainEqual({ name: 'Tip plug', minutes: 5 });
  });

  test('settings, clubs and materials as the shop has them', async () => {
    const port = await workshop();
    const settings = port.tableSeen('Settings');
    const at = (name: string) => (settings?.rows.findIndex((row) => row[0] === name) ?? -1) + 1;
    port.type('Settings', at('Tape slips with'), 1, 'Water');
    port.type('Settings', at('Take off'), 1, 'Whole');
    port.type('Settings', at('Solvent'), 1, 'Mineral spirits');
    port.fillTable('Clubs', [
      {
        'Take off': 'Off already',
        Logo: 'Down',
        Shaft: 'Steel',
        Hand: 'Left',
        Rib: '7 o’clock',
        Tag: '12',
        Damage: 'rust',
      },
    ]);
    port.fillTable('Weights', [{ Material: 'Other' }, { Material: 'Lead' }]);
    const { ask } = readBench((await readShop(port)).tables);
    expect(ask.habits).toMatchObject({ activator: 'water', takeOff: 'salvage', solvent: 'mineralSpirits' });
    expect(ask.habits.leadWays).toEqual(['Head screw']);
    expect(ask.clubs?.get(1)).toEqual({
      takeOff: 'none',
      logo: 'down',
      hand: 'left',
      shaft: 'steel',
      rib: 'seven',
      tag: '12',
      damage: 'rust',
    });
  });

  test('minutes go with what a row of Rates is charged for', async () => {
    const port = await workshop();
    port.fillTable('Rates', [
      { Work: 'Fit a grip', Per: 'Club', Minutes: 8, 'Charged for': 'Fitting a grip' },
      { Work: 'Look over the bag', Per: 'Job', Minutes: 5, 'Charged for': 'Every job' },
      { Work: 'Polish', Per: 'Club', Minutes: 9, 'Charged for': null },
    ]);
    const { ask } = readBench((await readShop(port)).tables);
    expect(ask.rates.slice(0, 3).map(({ use, minutes }) => [use, minutes])).toEqual([
      ['fitting', 8],
      ['everyJob', 5],
      [undefined, 9],
    ]);
  });
});

describe('the ticket', () => {
  test('holds a row for each club, the pilot first, boxes to write in, and the cautions that apply', async () => {
    const port = await workshop();
    const end = await fillTicket(port, await readShop(port), { job: JOB });
    expect(end).toMatchObject({ done: true, sheet: 'Ticket 1042', clubs: 3 });
    expect(sayTicket(end)).toBe('Ticket of 3 clubs filled into Ticket 1042. Fill it again after a change.');
    const at = { sheet: 'Ticket 1042', row: 0, column: 0, rows: 30, columns: TICKET_COLUMNS.length };
    const [{ values }] = await port.read([{ read: 'block', at }]);
    expect(values[2]?.[2]).toBe('1042');
    expect(values[3]?.[2]).toBe('Tamsin Orrell');
    const body = values.slice(TICKET_HEAD_ROWS + 1, TICKET_HEAD_ROWS + 4);
    expect(body.map((row) => row[0])).toEqual([1, 2, 3]);
    expect(String(body[0]?.[1])).toContain('(first)');
    expect(body.map((row) => row.slice(10, 13))).toEqual(Array(3).fill([null, null, null]));
    expect(String(body[0]?.[7])).toMatch(/^[A-G]\d\.\d ± \d\.\d$/);
    const lines = values.slice(TICKET_HEAD_ROWS + 4).map((row) => String(row[0] ?? ''));
    expect(lines).toContain('Grips: 3 × FERN-M.');
    expect(lines.some((line) => line.startsWith('Solvent is flammable'))).toBe(true);
    expect(lines.some((line) => line.startsWith('Compressed air'))).toBe(false);
    expect(lines).toContain(CAUTIONS_FOOT);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
  });

  test('of a job without clubs or without grips is not written, and said', async () => {
    const port = await workshop();
    expect(sayTicket(await fillTicket(port, await readShop(port), { job: '77' }))).toContain('no clubs to plan');
    for (const row of [1, 2, 3]) port.type('Clubs', row, columnAt(port, 'Clubs', 'New grip'), null);
    expect(sayTicket(await fillTicket(port, await readShop(port), { job: JOB }))).toContain('has a grip chosen');
  });

  test('works in a workbook made before the bench had columns', async () => {
    const port = await olderWorkshop();
    expect(await fillTicket(port, await readShop(port), { job: JOB })).toMatchObject({ done: true });
    const start = await startCheckIn(port, JOB);
    expect(sayCheckIn(start)).toBe('There is no table Checkin. Use Set up this workbook to make it.');
  });
});

describe('the check-in', () => {
  test('gives each club a row once, beside what stands there, and takes it back', async () => {
    const port = await workshop();
    type(port, 1, 'Reason', 'my own note');
    expect(await startCheckIn(port, JOB)).toEqual({ done: true, job: JOB, added: 3 });
    expect(column(port, 'Club', 4)).toEqual([null, 'Driver', '7 iron', 'Pitching wedge']);
    const again = await startCheckIn(port, JOB);
    expect(again).toMatchObject({ added: 0 });
    expect(sayCheckIn(again)).toContain('already');
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { restored: 6, left: [] } });
    expect(column(port, 'Club', 4)).toEqual([null, null, null, null]);
    expect(column(port, 'Reason', 1)).toEqual(['my own note']);
  });

  test('says how many rows are missing where Checkin is full', async () => {
    const port = await workshop();
    const rows = port.tableSeen('Checkin')?.rows.length ?? 0;
    for (let row = 1; row < rows; row += 1) type(port, row, 'Reason', 'taken');
    const end = await startCheckIn(port, JOB);
    expect(end).toEqual({ done: false, reason: 'noRows', needed: 3, free: 1 });
    expect(sayCheckIn(end)).toContain('1 blank row and 3 are needed');
  });

  test('judges only its own columns, and follows its rows when they are sorted before taking back', async () => {
    const port = await workshop();
    expect(sayJudged(await judgeCheckIn(port, JOB))).toContain('Start the check-in first');
    await startCheckIn(port, JOB);
    const end = await judgeCheckIn(port, JOB);
    expect(end).toMatchObject({ done: true, closing: { closes: false } });
    expect(column(port, 'Standing')).toEqual(['Open', 'Open', 'Open']);
    expect(column(port, 'What next')[0]).toBe('Read and weigh the finished club.');
    expect(column(port, 'Reading')).toEqual([null, null, null]);
    const rows = port.tableSeen('Checkin')?.rows.slice(0, 3) ?? [];
    port.typeRows('Checkin', 1, 0, [...rows].reverse());
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
    expect(column(port, 'Standing')).toEqual([null, null, null]);
    expect(column(port, 'Club')).toEqual(['Pitching wedge', '7 iron', 'Driver']);
  });

  test('names clubs that are not planned, rows that are there twice, and masses that cannot be', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    port.typeRows('Checkin', 4, 0, [
      [JOB, 'Driver'],
      [JOB, '2 iron'],
    ]);
    type(port, 1, 'Bare mass (g)', 320);
    type(port, 1, 'Mass (g)', 312);
    await judgeCheckIn(port, JOB);
    const next = column(port, 'What next', 5).map(String);
    expect(next[0]).toContain('Weigh both again');
    expect(next[3]).toContain('“Driver” is there twice');
    expect(next[4]).toContain('“2 iron”. Give a club that gets a grip in this plan');
  });

  test('closes the job only once every club is accepted or waived with a reason', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    await measureAsPlanned(port);
    type(port, 2, 'Reading', 'D9');
    const open = await closeJob(port, JOB);
    expect(open).toMatchObject({ done: false, reason: 'open' });
    expect('closing' in open && sayClosing(open.closing)).toContain('7 iron');
    expect(port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Status')]).toBeNull();
    for (const row of [1, 2, 3]) type(port, row, 'Decision', 'Waive');
    expect(await closeJob(port, JOB)).toMatchObject({ reason: 'open' });
    for (const row of [1, 2, 3]) type(port, row, 'Reason', 'the customer wants it so');
    const end = await closeJob(port, JOB);
    expect(end).toEqual({ done: true, job: JOB });
    expect(end.done && sayClosed(end)).toBe('Job 1042 is Done in Jobs.');
    expect(port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Status')]).toBe('Done');
    expect(await undoLast(port)).toMatchObject({ reverted: { restored: 1 } });
  });

  test('a cell that cannot be read is said, and keeps the job open', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    type(port, 1, 'Reading', 'heavy');
    await judgeCheckIn(port, JOB);
    expect(column(port, 'What next')[0]).toContain('“heavy”, which is not a reading');
  });
});
