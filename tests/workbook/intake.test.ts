import { describe, expect, it, test } from 'vitest';
import { fillIntake } from '../../src/workbook/fillIntake';
import { fillReminders } from '../../src/workbook/fillReminders';
import { lastTimes } from '../../src/workbook/history';
import type { JobRequest } from '../../src/workbook/intakeOutcomes';
import { INTAKE_COLUMNS, INTAKE_HEAD_ROWS } from '../../src/workbook/intakeSheet';
import { jobCell, lastGivenAfter, namedJobs, nextJob } from '../../src/workbook/jobNumber';
import type { Seen } from '../../src/workbook/port';
import { dueReminders } from '../../src/workbook/reminders';
import { CHECKIN } from '../../src/workbook/schema';
import { readShop, type ShopTables } from '../../src/workbook/shop';
import { startJob } from '../../src/workbook/startJob';
import { tagsFrom } from '../../src/workbook/tags';
import { takeLast } from '../../src/workbook/takeLast';
import { undoLast } from '../../src/workbook/undo';
import { longDay, sayHeldBack, sayIntake, sayJob, sayLast, sayReminders } from '../../src/words/intake';
import type { MemoryPort } from './memoryPort';
import { workshop } from './workshop';

const TODAY = 46100;

const REQUEST: JobRequest = {
  job: null,
  suggested: '1044',
  customer: 'Ivo Brandt',
  due: 46110,
  today: TODAY,
  clubs: [
    { name: '7 iron', kind: 'Iron' },
    { name: 'Putter', kind: 'Putter' },
  ],
  hand: 'Left',
  firstTag: 'A09',
  authorisedBy: '',
  last: [],
};

/** Cells of a row under some headings; body rows from 1. */
function cells(port: MemoryPort, table: string, row: number, ...headers: string[]): Seen[] {
  const seen = port.tableSeen(table);
  return headers.map((header) => seen?.rows[row - 1]?.[seen.headers.indexOf(header)] ?? null);
}

function set(port: MemoryPort, table: string, row: number, values: Readonly<Record<string, Seen>>): void {
  const seen = port.tableSeen(table);
  if (!seen) throw new Error(`no table ${table}`);
  for (const [header, value] of Object.entries(values)) {
    const at = seen.headers.indexOf(header);
    if (at < 0) throw new Error(`no column ${header}`);
    port.type(seen.at.sheet, seen.at.row + row, seen.at.column + at, value);
  }
}

function fail(table: string): never {
  throw new Error(`no table ${table}`);
}

const tablesOf = async (port: MemoryPort): Promise<ShopTables> => (await readShop(port)).tables;

describe('the next job', () => {
  it.each<[readonly string[], string | null, string]>([
    [['R-205', 'R-206', 'Smith'], null, 'R-207'],
    [['0098', '0099'], null, '0100'],
    [['12', 'R-3'], null, 'R-4'],
    // the job of that number is gone, and its number is not given again
    [['R-205'], 'R-209', 'R-210'],
    [['R-205'], 'R-2', 'R-206'],
    [[], 'R-209', 'R-210'],
    [['Smith'], null, '1'],
    [[], null, '1'],
  ])('after %j, %s given last: %s', (jobs, given, next) => {
    expect(nextJob(jobs, given)).toBe(next);
  });

  it('what is kept never falls back within a series', () => {
    expect(lastGivenAfter('R-207', 'R-206')).toBe('R-207');
    expect(lastGivenAfter('R-100', 'R-206')).toBe('R-206');
    expect(lastGivenAfter('Smith', 'R-206')).toBe('R-206');
    expect(lastGivenAfter('W-1', 'R-206')).toBe('W-1');
  });

  it('counts jobs that only another table names', async () => {
    const port = await workshop();
    set(port, 'Quotes', 1, { Job: 1050 });
    expect(nextJob(namedJobs(await tablesOf(port)), null)).toBe('1051');
  });
});

test('a day is said with its weekday and the name of its month', () => {
  // ISO 8601 writes the same day 2026-05-15; 1 January 2024 was a Monday
  expect([longDay(46157), longDay(45292)]).toEqual(['Friday, 15 May 2026', 'Monday, 1 January 2024']);
});

test('tags are counted on, as wide as the first', () => {
  expect(tagsFrom('A09', 3)).toEqual(['A09', 'A10', 'A11']);
  expect(tagsFrom('red', 3)).toBeUndefined();
});

describe('beginning a job', () => {
  test('writes a row of Jobs and the clubs, and takes them back', async () => {
    const port = await workshop();
    const before = await tablesOf(port);
    const end = await startJob(port, REQUEST);
    expect(end).toEqual({ done: true, job: '1044', insteadOf: null, clubs: 2, takenOver: 0 });
    const headers = ['Job', 'Customer', 'Received', 'Due', 'Authorised by', 'Closed', 'Status'];
    expect(cells(port, 'Jobs', 3, ...headers)).toEqual(['1044', 'Ivo Brandt', TODAY, 46110, null, null, 'Open']);
    const club = ['Job', 'Club', 'Kind', 'Hand', 'Tag', 'New grip', 'Length (in)'];
    expect(cells(port, 'Clubs', 6, ...club)).toEqual(['1044', '7 iron', 'Iron', 'Left', 'A09', null, null]);
    expect(cells(port, 'Clubs', 7, ...club)).toEqual(['1044', 'Putter', 'Putter', 'Left', 'A10', null, null]);
    // what was there stays
    const after = await tablesOf(port);
    expect(after.Clubs?.rows.slice(0, 5)).toEqual(before.Clubs?.rows);
    expect(after.Jobs?.rows.slice(0, 2)).toEqual(before.Jobs?.rows);
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
    expect((await tablesOf(port)).Clubs?.rows.slice(0, 5)).toEqual(before.Clubs?.rows);
    expect(cells(port, 'Clubs', 6, 'Job')).toEqual([null]);
    // taken back, and yet its number may stand on paper: the one that was shown is not the one that is given
    const again = await startJob(port, REQUEST);
    expect(again).toMatchObject({ done: true, job: '1045', insteadOf: '1044' });
    expect(sayJob(again)).toContain('1044 was shown, but was given before and is not given twice.');
    // whoever types a number asked for that one
    expect(await startJob(port, { ...REQUEST, job: '2000', firstTag: '' })).toMatchObject({ insteadOf: null });
  });

  test('a number stays one where the table holds numbers, so that a shop’s own formulas find it', async () => {
    const port = await workshop();
    set(port, 'Jobs', 2, { Job: 1043 });
    set(port, 'Clubs', 4, { Job: 1043 });
    set(port, 'Clubs', 5, { Job: null });
    await startJob(port, REQUEST);
    expect([cells(port, 'Jobs', 3, 'Job'), cells(port, 'Clubs', 6, 'Job'), cells(port, 'Clubs', 7, 'Job')]).toEqual([
      [1044],
      [1044],
      [1044],
    ]);
    // it is one job with its clubs, however it is written
    expect((await readShop(port)).jobs.find(({ job }) => job === '1044')).toMatchObject({ clubs: 2 });
    await startJob(port, { ...REQUEST, job: '0099', firstTag: '' });
    expect(cells(port, 'Jobs', 4, 'Job')).toEqual(['0099']);
    // the row before it holds a text now
    await startJob(port, { ...REQUEST, job: '1050', firstTag: '' });
    expect(cells(port, 'Jobs', 5, 'Job')).toEqual(['1050']);
  });

  test('an empty table goes by Jobs', async () => {
    const port = await workshop();
    set(port, 'Jobs', 2, { Job: 1043 });
    const tables = await tablesOf(port);
    const checkin = tables.Checkin ?? fail('Checkin');
    expect([jobCell(tables, CHECKIN, checkin, '1042'), jobCell(tables, CHECKIN, checkin, 'R-1')]).toEqual([
      1042,
      'R-1',
    ]);
  });

  test('uses blank rows at the end before it makes a table longer', async () => {
    const port = await workshop();
    await startJob(port, REQUEST);
    await undoLast(port);
    const long = port.tableSeen('Clubs')?.rows.length;
    await startJob(port, REQUEST);
    expect(port.tableSeen('Clubs')?.rows.length).toBe(long);
  });

  test('leaves what stands below a table alone, and writes nothing', async () => {
    const port = await workshop();
    const clubs = port.tableSeen('Clubs');
    port.type('Clubs', (clubs?.at.row ?? 0) + (clubs?.at.rows ?? 0), 1, 'my totals');
    const end = await startJob(port, REQUEST);
    expect(end).toMatchObject({ done: false, reason: 'port', error: { code: 'belowTable' } });
    expect(port.tableSeen('Jobs')?.rows).toHaveLength(2);
  });

  test.each<[string, Partial<JobRequest>, RegExp]>([
    ['nobody', { customer: ' ' }, /^Customer is blank/],
    ['no clubs', { clubs: [] }, /^No clubs are named/],
    ['due yesterday', { due: TODAY - 1 }, /^Due is 2026-03-18, which is past: today is 2026-03-19/],
    ['a number that is there', { job: ' 1042 ' }, /^Job 1042 is there already/],
    ['a tag without a number', { firstTag: 'red' }, /does not end in a number/],
  ])('says what is wrong: %s', async (_, change, sentence) => {
    const port = await workshop();
    const before = JSON.stringify(await tablesOf(port));
    const end = await startJob(port, { ...REQUEST, ...change });
    expect(sayJob(end)).toMatch(sentence);
    expect(sayJob(end)).toContain('Nothing was written.');
    expect(JSON.stringify(await tablesOf(port))).toBe(before);
  });

  test('a tag on another club of the counter is not given again; that of a job that is done is', async () => {
    const port = await workshop();
    set(port, 'Clubs', 2, { Tag: 'a10' });
    expect(sayJob(await startJob(port, REQUEST))).toContain('Tag a10 is on 7 iron of job 1042 (Clubs row 3)');
    set(port, 'Jobs', 1, { Status: 'Done' });
    expect(await startJob(port, REQUEST)).toMatchObject({ done: true });
  });

  test('an older workbook gets what its columns hold', async () => {
    const port = await workshop();
    set(port, 'Jobs', 0, { Received: 'x', 'Authorised by': 'y' });
    set(port, 'Clubs', 0, { Tag: 'z' });
    expect(await startJob(port, REQUEST)).toMatchObject({ done: true, job: '1044' });
    expect(cells(port, 'Jobs', 3, 'Customer', 'x')).toEqual(['Ivo Brandt', null]);
  });
});

/** 1042 was closed in 2024, 1043 is open; both are of one customer by now. */
async function withPast(): Promise<MemoryPort> {
  const port = await workshop();
  set(port, 'Jobs', 1, { Customer: '  ivo  BRANDT', Status: 'Done', Closed: 45500 });
  set(port, 'Clubs', 2, { Club: '7  Iron', 'New grip': 'MOSS-S', Layers: 3, 'Lower layers': 2 });
  return port;
}

describe('same as last time', () => {
  test('is found by customer and club, whatever their capitals and blanks', async () => {
    const port = await withPast();
    const asked = { customer: 'Ivo Brandt', clubs: ['7 iron', 'Driver', 'Spoon'], besides: '1043' };
    const driver = { done: true, day: 45500, item: 'FERN-M', layers: 1, lowerLayers: undefined };
    expect(lastTimes(await tablesOf(port), asked)).toEqual([
      { ...driver, club: '7 iron', job: '1042', item: 'MOSS-S', layers: 3, lowerLayers: 2, targetDiameter: undefined },
      { ...driver, club: 'Driver', job: '1042', targetDiameter: undefined },
    ]);
  });

  test('a job that is done counts before one that is not, and the later one before the earlier', async () => {
    const port = await withPast();
    const last = async () => {
      const asked = { customer: 'Ivo Brandt', clubs: ['7 iron'], besides: null };
      return lastTimes(await tablesOf(port), asked).map(({ job }) => job);
    };
    set(port, 'Jobs', 2, { Due: 46200 });
    expect(await last()).toEqual(['1042']);
    set(port, 'Jobs', 2, { Status: 'Done', Closed: 45499 });
    expect(await last()).toEqual(['1042']);
    set(port, 'Jobs', 2, { Closed: 45501 });
    expect(await last()).toEqual(['1043']);
  });

  test('nobody is everybody', async () => {
    const port = await workshop();
    set(port, 'Jobs', 1, { Customer: null });
    expect(lastTimes(await tablesOf(port), { customer: '', clubs: ['7 iron'], besides: null })).toEqual([]);
  });

  test('goes into Clubs after a person’s choice was asked about, and back', async () => {
    const port = await withPast();
    const asked = await takeLast(port, '1043');
    expect(asked).toMatchObject({ reason: 'occupied' });
    if (!('inTheWay' in asked)) throw new Error('not asked');
    // grip and layers stand there; lower layers are blank and need no asking
    expect(asked.cells).toHaveLength(2);
    const end = await takeLast(port, '1043', asked.inTheWay);
    expect(end).toEqual({ done: true, job: '1043', clubs: 1, cells: 3 });
    expect(cells(port, 'Clubs', 4, 'New grip', 'Layers', 'Lower layers')).toEqual(['MOSS-S', 3, 2]);
    expect(sayLast(await takeLast(port, '1043'))).toContain('already');
    await undoLast(port);
    expect(cells(port, 'Clubs', 4, 'New grip', 'Layers', 'Lower layers')).toEqual(['FERN-M', 1, null]);
    expect(sayLast(await takeLast(port, '77'))).toContain('No earlier job');
  });

  test('comes with a new job', async () => {
    const port = await withPast();
    const last = lastTimes(await tablesOf(port), { customer: 'Ivo Brandt', clubs: ['7 iron'], besides: null });
    expect(await startJob(port, { ...REQUEST, last })).toMatchObject({ done: true, takenOver: 1 });
    expect(cells(port, 'Clubs', 6, 'Club', 'New grip', 'Layers')).toEqual(['7 iron', 'MOSS-S', 3]);
    expect(cells(port, 'Clubs', 7, 'Club', 'New grip', 'Layers')).toEqual(['Putter', null, null]);
  });
});

describe('who is due', () => {
  test('counts from the last closed job, and leaves those with a job open', async () => {
    const port = await withPast();
    // 45500 is 2024-07-27; a year later is 45865
    expect(dueReminders(await tablesOf(port), TODAY)).toMatchObject({ due: [], open: 1, months: 12 });
    set(port, 'Jobs', 2, { Status: 'Done' });
    expect(dueReminders(await tablesOf(port), 45864)).toMatchObject({ due: [], later: 1 });
    const { due, undated } = dueReminders(await tablesOf(port), 45865);
    expect(due).toEqual([
      { customer: 'ivo  BRANDT', job: '1042', closed: 45500, clubs: 3, items: ['FERN-M', 'MOSS-S'], due: 45865 },
    ]);
    expect(undated).toEqual(['1043']);
  });

  test('names whom a forgotten job keeps from being due, with the job and how old it is', async () => {
    const port = await withPast();
    const held = async (today = TODAY) => dueReminders(await tablesOf(port), today).held.map(sayHeldBack);
    // not due yet, so that nobody is kept from it
    expect(await held(45864)).toEqual([]);
    expect(await held()).toEqual(['Ivo Brandt: job 1043, of which Jobs gives no day']);
    set(port, 'Jobs', 2, { Due: 46101 });
    expect(await held()).toEqual(['Ivo Brandt: job 1043 is due on 2026-03-20, in 1 day']);
    set(port, 'Jobs', 2, { Due: 45900 });
    expect(await held()).toEqual(['Ivo Brandt: job 1043 was due on 2025-08-31, 200 days ago']);
    set(port, 'Jobs', 2, { Received: 45890 });
    expect(await held()).toEqual(['Ivo Brandt: job 1043 came in on 2025-08-21, 210 days ago']);
    // of several the oldest is the one to look after
    await startJob(port, REQUEST);
    expect(await held()).toEqual(['Ivo Brandt: job 1043 came in on 2025-08-21, 210 days ago']);
    // a customer of whom no job was ever closed is due for nothing
    await startJob(port, { ...REQUEST, customer: 'Kim Vale', firstTag: '' });
    expect(await held()).toHaveLength(1);
  });

  test('they stand on the page below the list', async () => {
    const port = await withPast();
    for (const [at, customer] of ['Kim Vale', 'Kim Vale'].entries()) {
      await startJob(port, { ...REQUEST, customer, firstTag: '' });
      set(port, 'Jobs', 3 + at, at === 0 ? { Status: 'Done', Closed: 45000 } : {});
    }
    set(port, 'Jobs', 2, { Status: 'Done', Closed: 45501 });
    const end = await fillReminders(port, await readShop(port), { today: TODAY });
    expect(end).toMatchObject({ done: true, customers: 1, held: [{ customer: 'Kim Vale', job: '1045' }] });
    expect([5, 6, 7, 8].map((row) => port.shows('Reminders', row, 0))).toEqual([
      'Ivo Brandt',
      null,
      'Due as well, but left out because a job of theirs is not done:',
      'Kim Vale: job 1045 came in on 2026-03-19, today',
    ]);
    expect(sayReminders(end)).toContain('Kim Vale: job 1045 came in on 2026-03-19, today');
  });

  test.each([1, 40])('Clubs is read once, for %i customers as for any number', async (customers) => {
    const port = await workshop();
    const tables = await tablesOf(port);
    const jobs = tables.Jobs ?? fail('Jobs');
    const row = (number: number): Seen[] =>
      jobs.headers.map((header) =>
        header === 'Job'
          ? String(number)
          : header === 'Customer'
            ? `Customer ${number}`
            : header === 'Status'
              ? 'Done'
              : header === 'Closed'
                ? 45000
                : null,
      );
    const { rows, ...clubs } = tables.Clubs ?? fail('Clubs');
    let reads = 0;
    const counted = {
      ...clubs,
      get rows() {
        reads += 1;
        return rows;
      },
    };
    const many = { ...jobs, rows: Array.from({ length: customers }, (_, at) => row(1042 + at)) };
    const { due } = dueReminders({ ...tables, Jobs: many, Clubs: counted }, TODAY);
    expect([due.length, due[0]?.clubs, reads]).toEqual([customers, 3, 1]);
  });

  test('goes by the setting', async () => {
    const port = await withPast();
    set(port, 'Jobs', 2, { Status: 'Done' });
    const settings = port.tableSeen('Settings');
    const row = (settings?.rows.findIndex(([name]) => name === 'Remind after') ?? -1) + 1;
    set(port, 'Settings', row, { Value: 6 });
    expect(dueReminders(await tablesOf(port), 45690)).toMatchObject({ months: 6, due: [{ due: 45684 }] });
  });

  test('is written into a sheet, and says when nobody is', async () => {
    const port = await withPast();
    const none = await fillReminders(port, await readShop(port), { today: TODAY });
    expect(sayReminders(none)).toBe(
      'Nobody is due: no last job was closed 12 months ago or longer of a customer who has none open. ' +
        'Due as well, but left out because a job of theirs is not done: Ivo Brandt: job 1043, of which Jobs gives no day. ' +
        'Set Status in Jobs to Done where the job is, so that its customer is reminded. Nothing was written.',
    );
    set(port, 'Jobs', 2, { Status: 'Done' });
    const end = await fillReminders(port, await readShop(port), { today: TODAY });
    expect(end).toMatchObject({ done: true, sheet: 'Reminders', customers: 1 });
    expect([0, 1, 2, 3, 4, 5].map((at) => port.shows('Reminders', 5, at))).toEqual([
      'ivo  BRANDT',
      '1042',
      45500,
      3,
      'FERN-M, MOSS-S',
      45865,
    ]);
  });
});

describe('the intake sheet', () => {
  const column = (header: string): number => INTAKE_COLUMNS.findIndex((each) => each.header === header);
  const shows = (port: MemoryPort, row: number, header: string): Seen =>
    port.shows('Intake 1042', INTAKE_HEAD_ROWS + row, column(header));
  const fill = async (port: MemoryPort, job = '1042') => fillIntake(port, await readShop(port), { job });

  test('says what is known club by club, and leaves lines for the rest', async () => {
    const port = await workshop();
    set(port, 'Clubs', 1, { Tag: '41', Damage: '=rust', Logo: 'Down', 'Take off': 'Whole', 'Old layers': 2 });
    set(port, 'Clubs', 2, { Tag: '42', Rib: "5 o'clock", Hold: 'Target', 'Target reading': 'D4', 'Own grip': 'Yes' });
    set(port, 'Clubs', 3, { 'New grip': null, Layers: null, 'Length change (in)': -0.25 });
    set(port, 'Jobs', 1, { 'Authorised by': 'T. Orrell', Notes: 'Wants them firm.' });
    const end = await fill(port);
    expect(end).toMatchObject({ done: true, sheet: 'Intake 1042', clubs: 3 });
    const row = (at: number) => INTAKE_COLUMNS.map(({ header }) => shows(port, at, header));
    expect(row(1)).toEqual([
      '41',
      'Driver',
      null,
      null,
      'MOSS-S, 2 layers',
      '=rust',
      'Down',
      null,
      'Yes, off whole',
      'FERN-M, 1 layer',
    ]);
    expect(shows(port, 2, 'Rib')).toBe('5 o’clock');
    expect(shows(port, 2, 'Wanted')).toBe('FERN-M, the customer’s own, 1 layer; to read D4.0');
    expect(shows(port, 3, 'Wanted')).toBe('0.25 in shorter');
    const below = Array.from({ length: 8 }, (_, at) =>
      [0, 2, 4].map((across) => port.shows('Intake 1042', 10 + at, across)),
    );
    expect(below).toContainEqual(['Notes: Wants them firm.', null, null]);
    expect(below).toContainEqual(['Authorised by', 'T. Orrell', 'Signature']);
    // the shop gave no terms: nothing is said of what it answers for
    expect(JSON.stringify(below)).not.toContain('Terms');
  });

  test('the shop’s own terms stand at its foot', async () => {
    const port = await workshop();
    const settings = port.tableSeen('Settings');
    const row = (settings?.rows.findIndex(([name]) => name === 'Terms') ?? -1) + 1;
    set(port, 'Settings', row, { Value: 'Old grips are thrown away after a week.' });
    await fill(port);
    const below = Array.from({ length: 8 }, (_, at) => port.shows('Intake 1042', 10 + at, 0));
    expect(below.slice(below.indexOf('Terms'))).toEqual([
      'Terms',
      'Old grips are thrown away after a week.',
      ...Array<null>(below.length - below.indexOf('Terms') - 2).fill(null),
    ]);
  });

  test('what cannot be so is said, and nothing written', async () => {
    const port = await workshop();
    // due 46000 (2025-12-09)
    set(port, 'Jobs', 1, { Received: 46005 });
    expect(sayIntake(await fill(port))).toContain('before the clubs were received on 2025-12-14');
    set(port, 'Jobs', 1, { Received: 45990 });
    // promised for after it came in, or nobody knows when: that the day is past by now is no mistake
    expect(await fill(port)).toMatchObject({ done: true });
    set(port, 'Jobs', 1, { Received: null });
    expect(await fill(port)).toMatchObject({ done: true });
    set(port, 'Clubs', 1, { Tag: '41' });
    set(port, 'Clubs', 4, { Tag: ' 41' });
    expect(sayIntake(await fill(port))).toContain(
      'Two clubs have one tag: 41 on Driver of job 1042 (Clubs row 2) and on 7 iron of job 1043 (Clubs row 5).',
    );
    expect(sayIntake(await fill(port, '77'))).toContain('Jobs has no row for job 77');
    set(port, 'Clubs', 4, { Job: null, Tag: null });
    expect(sayIntake(await fill(port, '1043'))).toContain('Job 1043 has no clubs');
  });

  test('a line written by hand is asked about before it is written over', async () => {
    const port = await workshop();
    await fill(port);
    port.type('Intake 1042', INTAKE_HEAD_ROWS + 1, column('Damage seen'), 'rust at the hosel');
    expect(await fill(port)).toMatchObject({ reason: 'occupied', cells: ["'Intake 1042'!F8"] });
    expect(shows(port, 1, 'Damage seen')).toBe('rust at the hosel');
  });
});
