import { describe, expect, test } from 'vitest';
import { judgeCheckIn, startCheckIn } from '../../src/workbook/checkInJobs';
import { closeJob } from '../../src/workbook/closeJob';
import { planJob, strayRows } from '../../src/workbook/benchJob';
import { fillLabels, fillSlip } from '../../src/workbook/fillHandOver';
import { fillTicket } from '../../src/workbook/fillTicket';
import type { Seen } from '../../src/workbook/port';
import { readBench } from '../../src/workbook/readBench';
import { quoteJob } from '../../src/workbook/quoteScope';
import { redoJob } from '../../src/workbook/redoJob';
import { readShop } from '../../src/workbook/shop';
import { TICKET_COLUMNS, TICKET_HEAD_ROWS } from '../../src/workbook/ticketSheet';
import { useStock } from '../../src/workbook/stockJobs';
import { undoLast } from '../../src/workbook/undo';
import { CAUTIONS_FOOT, sayClosing } from '../../src/words/bench';
import {
  sayCheckIn,
  sayClosed,
  sayJudged,
  sayLabels,
  sayRedo,
  saySlip,
  sayTicket,
} from '../../src/words/benchOutcomes';
import { sayIssue } from '../../src/words/issues';
import type { MemoryPort } from './memoryPort';
import { olderWorkshop } from './olderWorkshop';
import { workshop } from './workshop';

const JOB = '1042';
/** 2026-06-27. */
const TODAY = 46200;

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
      ownGrip: false,
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
    const planned = planJob((await readShop(port)).tables, JOB);
    const clubs = planned?.ok ? planned.value.plan.clubs : [];
    expect(column(port, 'Grip', 4).slice(1)).toEqual(clubs.map(({ item }) => item));
    expect(column(port, 'Layers', 4).slice(1)).toEqual(clubs.map(({ layers }) => layers));
    expect(column(port, 'Weight on (g)', 4).slice(1)).toEqual(clubs.map(({ remedy }) => remedy?.grams ?? 0));
    const again = await startCheckIn(port, JOB);
    expect(again).toMatchObject({ added: 0 });
    expect(sayCheckIn(again)).toContain('already');
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { restored: 21, left: [] } });
    expect(column(port, 'Club', 4)).toEqual([null, null, null, null]);
    expect(column(port, 'Reason', 1)).toEqual(['my own note']);
  });

  test('goes by what was fitted when it was begun, whatever is chosen since, and tells mass against mass', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    await measureAsPlanned(port);
    const first = [column(port, 'Predicted'), column(port, 'Layers')];
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true });
    const mass = column(port, 'Predicted mass (g)').map(Number);
    expect(mass.every((grams) => grams > 300 && grams < 480)).toBe(true);
    const off = column(port, 'Mass (g)').map((grams, i) => Number(grams) - (mass[i] ?? 0));
    column(port, 'Mass difference (g)').forEach((by, i) => expect(Number(by)).toBeCloseTo(off[i] ?? NaN, 6));
    // chosen anew after the clubs were fitted: four layers more, and another weighed mass for a layer would do the same
    for (const row of [1, 2, 3]) port.type('Clubs', row, columnAt(port, 'Clubs', 'Layers'), 5);
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true });
    expect([column(port, 'Predicted'), column(port, 'Layers')]).toEqual(first);
    expect(column(port, 'Predicted mass (g)').map(Number)).toEqual(mass);
  });

  test('a Checkin made before it kept what was fitted is judged by the plan', async () => {
    const port = await workshop();
    for (const header of [
      'Grip',
      'Layers',
      'Weight on (g)',
      'Weight at (in)',
      'Predicted mass (g)',
      'Mass difference (g)',
    ]) {
      const seen = port.tableSeen('Checkin');
      if (!seen) throw new Error('no Checkin');
      port.type(seen.at.sheet, seen.at.row, seen.at.column + seen.headers.indexOf(header), `Own ${header}`);
    }
    await startCheckIn(port, JOB);
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true });
    expect(column(port, 'Standing')).toEqual(['Open', 'Open', 'Open']);
    expect(column(port, 'Own Layers')).toEqual([null, null, null]);
  });

  test('makes Checkin longer where its blank rows are too few', async () => {
    const port = await workshop();
    const rows = port.tableSeen('Checkin')?.rows.length ?? 0;
    for (let row = 1; row < rows; row += 1) type(port, row, 'Reason', 'taken');
    expect(await startCheckIn(port, JOB)).toEqual({ done: true, job: JOB, added: 3 });
    const after = port.tableSeen('Checkin')?.rows ?? [];
    expect(after).toHaveLength(rows + 2);
    expect(after.slice(-3).map((row) => row[columnAt(port, 'Checkin', 'Club')])).toEqual([
      'Driver',
      '7 iron',
      'Pitching wedge',
    ]);
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

  test('asks before it writes over what a person typed in its columns, and never over its own', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    await judgeCheckIn(port, JOB);
    type(port, 2, 'What next', 'ring him first');
    type(port, 1, 'Reading', 'D2');
    const asked = await judgeCheckIn(port, JOB);
    expect(asked).toMatchObject({ done: false, reason: 'occupied', cells: [expect.stringMatching(/^Checkin!/)] });
    expect(column(port, 'What next')[1]).toBe('ring him first');
    expect(column(port, 'Difference (pt)')[0]).toBeNull();
    const agreed = 'inTheWay' in asked ? asked.inTheWay : null;
    expect(await judgeCheckIn(port, JOB, agreed)).toMatchObject({ done: true });
    expect(column(port, 'What next')[1]).toBe('Read and weigh the finished club.');
    // taken back, the person's text stands there again, and the rest is ours still
    await undoLast(port);
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ reason: 'occupied', cells: [expect.any(String)] });
  });

  test('knows its own cells after a sort, after taking back, and beside another job', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    await startCheckIn(port, '1043');
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true });
    expect(await judgeCheckIn(port, '1043')).toMatchObject({ done: true });
    const rows = port.tableSeen('Checkin')?.rows.slice(0, 3) ?? [];
    port.typeRows('Checkin', 1, 0, [...rows].reverse());
    type(port, 1, 'Reading', 'D3.4');
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true });
    await undoLast(port);
    type(port, 1, 'Reading', 'D3.1');
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true });
    expect(await judgeCheckIn(port, '1043')).toMatchObject({ done: true, cells: 0 });
  });

  test('names rows of a job that nobody has', async () => {
    const port = await workshop();
    port.typeRows('Checkin', 1, 0, [['1099', 'Driver']]);
    type(port, 2, 'Club', 'Driver');
    expect(strayRows((await readShop(port)).tables).map(sayIssue)).toEqual([
      'Checkin row 2, Job is “1099”. Give a job that Jobs or Clubs has.',
      'Checkin row 3, Job is blank. Give the job.',
    ]);
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
    expect(next[4]).toContain('“2 iron”. Give a club of this job that gets a grip, named as in Clubs');
  });

  test('closes the job only once every club is accepted or waived with a reason', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    await measureAsPlanned(port);
    type(port, 2, 'Reading', 'D9');
    const open = await closeJob(port, JOB, TODAY);
    expect(open).toMatchObject({ done: false, reason: 'open' });
    expect('closing' in open && sayClosing(open.closing)).toContain('7 iron');
    expect(port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Status')]).toBeNull();
    for (const row of [1, 2, 3]) type(port, row, 'Decision', 'Waive');
    expect(await closeJob(port, JOB, TODAY)).toMatchObject({ reason: 'open' });
    for (const row of [1, 2, 3]) type(port, row, 'Reason', 'the customer wants it so');
    const end = await closeJob(port, JOB, TODAY);
    expect(end).toMatchObject({ done: true, job: JOB, already: false });
    expect(end.done && sayClosed(end)).toContain('Job 1042 is Done in Jobs. What it used was taken from stock');
    expect(port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Closed')]).toBe(TODAY);
    expect(column(port, 'Standing')).toEqual(['Waived', 'Waived', 'Waived']);
    const before = port.everything();
    const again = await closeJob(port, JOB, TODAY + 9);
    expect(again).toEqual({ done: true, job: JOB, already: true, movements: 0 });
    expect(again.done && sayClosed(again)).toContain('Done in Jobs already');
    expect(port.everything()).toEqual(before);
    expect(port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Status')]).toBe('Done');
    expect(await undoLast(port)).toMatchObject({ reverted: { left: [], notFound: [] } });
    expect(port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Closed')]).toBeNull();
    expect(column(port, 'Standing')).not.toContain('Waived');
  });

  test('a cell that cannot be read is said, and keeps the job open', async () => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    type(port, 1, 'Reading', 'heavy');
    await judgeCheckIn(port, JOB);
    expect(column(port, 'What next')[0]).toContain('“heavy”, which is not a reading');
  });
});

describe('what goes back with the clubs', () => {
  async function cellsOf(port: MemoryPort, sheet: string, rows = 40): Promise<string[]> {
    const [{ values }] = await port.read([{ read: 'block', at: { sheet, row: 0, column: 0, rows, columns: 7 } }]);
    return values.flat().flatMap((value) => (value === null ? [] : [String(value)]));
  }

  test('labels: one for each club, with what is predicted until it is measured', async () => {
    const port = await workshop();
    const shop = await readShop(port);
    const end = await fillLabels(port, shop, { job: JOB });
    expect(sayLabels(end)).toBe('Labels of 3 clubs filled into Labels 1042. Fill it again after a change.');
    const first = await cellsOf(port, 'Labels 1042');
    expect(first.filter((text) => text === 'Job 1042, Tamsin Orrell')).toHaveLength(3);
    expect(first).toEqual(expect.arrayContaining(['Driver', '7 iron', 'Pitching wedge']));
    expect(first.filter((text) => text === 'FERN-M, 1 layer')).toHaveLength(3);
    expect(first.filter((text) => /^To read [A-G]\d\.\d ± \d\.\d$/.test(text))).toHaveLength(3);
    await startCheckIn(port, JOB);
    type(port, 2, 'Reading', 'D2.6');
    await fillLabels(port, await readShop(port), { job: JOB });
    expect(await cellsOf(port, 'Labels 1042')).toContain('Reads D2.6');
  });

  test('a slip: how each club came out, old grips that go back, and how to care for them', async () => {
    const port = await workshop();
    port.fillTable('Clubs', [{ 'Take off': 'Whole' }]);
    await startCheckIn(port, JOB);
    await measureAsPlanned(port);
    type(port, 2, 'Decision', 'Waive');
    type(port, 2, 'Reading', 'D9');
    type(port, 2, 'Reason', 'he never pays in time');
    const end = await fillSlip(port, await readShop(port), { job: JOB });
    expect(saySlip(end)).toContain('Pick-up slip of 3 clubs filled into Pick-up 1042');
    const said = await cellsOf(port, 'Pick-up 1042');
    expect(said).toContain('Old grips taken off whole, to go back with the clubs: Driver.');
    expect(said).toContain('outside the tolerance, as agreed');
    expect(said.join(' ')).not.toContain('never pays');
    expect(said.join(' ')).toMatch(/cure for 24 hours.*12 months.*clinician.*common practice/);
  });

  test.each([
    ['Lead tape', 3, true],
    ['Lead tape', 0, false],
    ['Butt plug', 3, false],
  ])('a slip speaks of lead where it was fitted: %s, %s g', async (way, grams, told) => {
    const port = await workshop();
    await startCheckIn(port, JOB);
    for (const row of [1, 2, 3]) {
      type(port, row, 'Weight on (g)', row === 1 ? grams : 0);
      type(port, row, 'Weighting', row === 1 && grams > 0 ? way : null);
    }
    await fillSlip(port, await readShop(port), { job: JOB });
    expect((await cellsOf(port, 'Pick-up 1042')).join(' ').includes('lead tape on these clubs')).toBe(told);
  });
});

describe('what a closed job takes from stock', () => {
  async function measured(): Promise<MemoryPort> {
    const port = await workshop();
    await startCheckIn(port, JOB);
    await measureAsPlanned(port);
    for (const row of [1, 2, 3]) type(port, row, 'Decision', 'Accept');
    return port;
  }
  const onHand = (port: MemoryPort): Seen =>
    port.tableSeen('Stock')?.rows[0]?.[columnAt(port, 'Stock', 'On hand')] ?? null;
  function ledger(port: MemoryPort): unknown[][] {
    const columns = ['Movement', 'Job', 'Club', 'Item', 'Quantity', 'Round', 'Note'].map((header) =>
      columnAt(port, 'Movements', header),
    );
    const rows = port.tableSeen('Movements')?.rows ?? [];
    return rows.filter((row) => row.some((cell) => cell !== null)).map((row) => columns.map((at) => row[at] ?? null));
  }

  test('is a row for each grip, once, with the count, in the write that closes it', async () => {
    const port = await measured();
    const applies = port.applies;
    expect(await closeJob(port, JOB, TODAY)).toMatchObject({ done: true });
    expect(port.applies).toBe(applies + 1);
    const rows = ledger(port);
    const grips = rows.filter(([, , club]) => club !== null && club !== '');
    expect(grips.map((row) => row.slice(0, 5))).toEqual([
      ['Used', JOB, 'Driver', 'FERN-M', 1],
      ['Used', JOB, '7 iron', 'FERN-M', 1],
      ['Used', JOB, 'Pitching wedge', 'FERN-M', 1],
    ]);
    expect(onHand(port)).toBe(17);
    expect(await closeJob(port, JOB, TODAY)).toMatchObject({ already: true });
    expect([ledger(port), onHand(port)]).toEqual([rows, 17]);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
    expect([ledger(port), onHand(port)]).toEqual([[], 20]);
    expect(await closeJob(port, JOB, TODAY)).toMatchObject({ already: false });
    expect(onHand(port)).toBe(17);
  });

  test('a club that was renamed since its piece was taken is not taken again, and is told', async () => {
    const port = await measured();
    await useStock(port, JOB, { today: TODAY });
    const before = ledger(port);
    port.type('Clubs', 1, columnAt(port, 'Clubs', 'Club'), '1 wood');
    type(port, 1, 'Club', '1 wood');
    const end = await closeJob(port, JOB, TODAY);
    if (!end.done) throw new Error(end.reason);
    expect(sayClosed(end)).toContain('FERN-M of 1 wood was taken before, as that of Driver');
    expect(ledger(port)).toEqual(before);
  });

  test('a redo takes its own grip once more, and nothing else of the job', async () => {
    const port = await measured();
    await closeJob(port, JOB, TODAY);
    const first = ledger(port);
    await redoJob(port, JOB, ['7 iron']);
    type(port, 4, 'Reading', column(port, 'Reading')[1] ?? null);
    type(port, 4, 'Mass (g)', 422);
    type(port, 4, 'Decision', 'Accept');
    expect(await closeJob(port, JOB, TODAY + 30)).toMatchObject({ done: true, already: false });
    const added = ledger(port).slice(first.length);
    const grips = added.filter(([, , club]) => club !== null && club !== '');
    expect(grips).toEqual([['Used', JOB, '7 iron', 'FERN-M', 1, 2, 'Redo under warranty']]);
    expect(onHand(port)).toBe(16);
  });

  test('a failure at any step of closing leaves the job open and the shelves as they were', async () => {
    const closing = await measured();
    const start = closing.stepsDone;
    await closeJob(closing, JOB, TODAY);
    const steps = closing.stepsDone - start;
    expect(steps).toBeGreaterThan(4);
    for (let step = 1; step <= steps; step += 1) {
      const port = await measured();
      const before = port.everything();
      port.failing = new Set([port.stepsDone + step]);
      expect(await closeJob(port, JOB, TODAY)).toMatchObject({ done: false, reason: 'port' });
      expect(port.everything()).toEqual(before);
    }
  });

  test('where the tables have less than was used nothing is closed, and it is said', async () => {
    const port = await measured();
    port.fillTable('Stock', [{ 'On hand': 2 }]);
    const before = port.everything();
    const end = await closeJob(port, JOB, TODAY);
    expect(end).toMatchObject({ done: false, reason: 'cannotTake' });
    if (end.done || end.reason === 'open') throw new Error('closed');
    expect(sayClosed(end)).toBe(
      'By the tables there is too little of FERN-M (2 on hand, 3 used). Nothing was written; set the count right in Stock, then close the job.',
    );
    expect(port.everything()).toEqual(before);
  });

  test('a workbook that keeps no ledger is closed without it', async () => {
    const port = await measured();
    port.deleteSheet('Movements');
    const end = await closeJob(port, JOB, TODAY);
    expect(end).toMatchObject({ done: true, movements: null });
    expect(end.done && sayClosed(end)).toBe('Job 1042 is Done in Jobs.');
    expect(onHand(port)).toBe(20);
  });
});

describe('a redo under warranty', () => {
  async function closedJob(): Promise<MemoryPort> {
    const port = await workshop();
    await startCheckIn(port, JOB);
    await measureAsPlanned(port);
    for (const row of [1, 2, 3]) type(port, row, 'Decision', 'Accept');
    expect(await closeJob(port, JOB, TODAY)).toMatchObject({ done: true, already: false });
    return port;
  }
  const status = (port: MemoryPort): Seen =>
    port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Status')] ?? null;

  test('gives its clubs a round of their own, and keeps what was measured before', async () => {
    const port = await closedJob();
    const measured = column(port, 'Reading');
    const end = await redoJob(port, JOB, ['7 iron']);
    expect(end).toEqual({ done: true, job: JOB, round: 2, clubs: ['7 iron'] });
    expect(sayRedo(end)).toContain('Nothing is charged');
    expect(status(port)).toBe('Open');
    expect(column(port, 'Club', 4)).toEqual(['Driver', '7 iron', 'Pitching wedge', '7 iron']);
    expect(column(port, 'Round', 4)).toEqual([null, null, null, 2]);
    expect(column(port, 'Reading')).toEqual(measured);
    // pressed twice: the job is open, and nothing more is begun
    const twice = await redoJob(port, JOB, ['7 iron']);
    expect(sayRedo(twice)).toContain('is not closed');
    expect(column(port, 'Club', 5)[4]).toBeNull();
    // only the new round is judged
    expect(await judgeCheckIn(port, JOB)).toMatchObject({
      done: true,
      closing: { closes: false, open: [{ name: '7 iron' }] },
    });
    expect(column(port, 'Standing', 4)).toEqual(['Accepted', 'Accepted', 'Accepted', 'Open']);
    expect(await startCheckIn(port, JOB)).toMatchObject({ added: 0 });
    type(port, 4, 'Reading', measured[1] ?? null);
    type(port, 4, 'Mass (g)', 422);
    type(port, 4, 'Decision', 'Accept');
    expect(await closeJob(port, JOB, TODAY + 30)).toMatchObject({ done: true, already: false });
    expect(port.tableSeen('Jobs')?.rows[0]?.[columnAt(port, 'Jobs', 'Closed')]).toBe(TODAY);
    expect(await redoJob(port, JOB, ['driver'])).toMatchObject({ round: 3, clubs: ['Driver'] });
  });

  test('cannot be quoted: nothing of it is charged', async () => {
    const port = await closedJob();
    await redoJob(port, JOB, ['7 iron']);
    const { quote, issues } = quoteJob((await readShop(port)).tables, { job: JOB, terms: { issued: TODAY } });
    expect(quote).toBeUndefined();
    expect(issues.map(sayIssue)).toEqual([
      'A quote for job 1042 does not fit: it is a redo under warranty, round 2 in Checkin, and nothing of it is charged. Its first quote stays as it is.',
    ]);
  });

  test('has a ticket and a slip of its own, which say that nothing is charged', async () => {
    const port = await closedJob();
    await redoJob(port, JOB, ['7 iron']);
    expect(await fillTicket(port, await readShop(port), { job: JOB })).toMatchObject({
      sheet: 'Ticket 1042 round 2',
      clubs: 1,
    });
    expect(port.shows('Ticket 1042 round 2', 1, 0)).toBe('Bench ticket: redo under warranty, nothing is charged');
    expect(port.shows('Ticket 1042 round 2', TICKET_HEAD_ROWS + 1, 1)).toBe('7 iron');
    expect(await fillSlip(port, await readShop(port), { job: JOB })).toMatchObject({ clubs: 1 });
    expect(port.shows('Pick-up 1042 round 2', 1, 0)).toContain('nothing is charged');
  });

  test('is refused where there is nothing to do again, and can be taken back', async () => {
    const port = await closedJob();
    expect(sayRedo(await redoJob(port, JOB, []))).toContain('No club is chosen');
    expect(sayRedo(await redoJob(port, JOB, ['2 iron']))).toContain('no 2 iron with a grip');
    expect(sayRedo(await redoJob(port, '1043', ['7 iron']))).toContain('is not closed');
    await redoJob(port, JOB, ['Driver']);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
    expect(status(port)).toBe('Done');
    expect(column(port, 'Club', 4)[3]).toBeNull();
  });

  test('a table without rounds is named', async () => {
    const port = await closedJob();
    const at = columnAt(port, 'Checkin', 'Round');
    port.type('Checkin', 0, at, 'Something else');
    expect(sayRedo(await redoJob(port, JOB, ['Driver']))).toContain('no column Round');
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true });
  });
});
