import { describe, expect, test } from 'vitest';
import { planJob } from '../../src/workbook/benchJob';
import { mondayOf } from '../../src/workbook/days';
import { fillWeek } from '../../src/workbook/fillWeek';
import { issueQuote } from '../../src/workbook/issueQuote';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { weekOf, type Week } from '../../src/workbook/week';
import { WEEK_HEAD_ROWS } from '../../src/workbook/weekSheet';
import { shortItemsText } from '../../src/words/week';
import type { MemoryPort } from './memoryPort';
import { pricedWorkshop, set } from './pricedWorkshop';

/** Tuesday 9 December 2025. */
const TODAY = 46_000;

async function week(port: MemoryPort, today = TODAY): Promise<Week> {
  const found = weekOf({ ...(await readShop(port)), today });
  if (!found.ok) throw new Error(found.issue.code);
  return found.value;
}

const jobsOf = ({ parts }: Week) => parts.map(({ when, monday, jobs }) => [when, monday, jobs.map(({ job }) => job)]);

describe('weeks', () => {
  // ISO 8601: a week begins on Monday. Dates as any calendar gives them: day 45999 is Monday 8 December 2025, 45658 Wednesday 1 January.
  test.each([
    [45_999, 45_999],
    [46_000, 45_999],
    [46_005, 45_999],
    [46_005.99, 45_999],
    [46_006, 46_006],
    [45_658, 45_656],
  ])('day %d lies in the week of Monday %d', (day, monday) => {
    expect(mondayOf(day)).toBe(monday);
  });

  test('agree with the calendar of the language', () => {
    for (let day = 44_000; day < 44_400; day += 1) {
      const date = new Date((day - 25_569) * 86_400_000);
      expect(mondayOf(day)).toBe(day - ((date.getUTCDay() + 6) % 7));
    }
  });
});

describe('work ahead', () => {
  test('puts jobs into weeks: overdue first, then by the day they are due, last those of no day', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Jobs', [{ Due: TODAY + 6 }]);
    expect(jobsOf(await week(port))).toEqual([
      ['week', 46_006, ['1042']],
      ['noDay', undefined, ['1043']],
    ]);
    port.fillTable('Jobs', [{ Due: TODAY - 1 }, { Due: TODAY }]);
    expect(jobsOf(await week(port))).toEqual([
      ['overdue', undefined, ['1042']],
      ['week', 45_999, ['1043']],
    ]);
    port.fillTable('Jobs', [{ Due: TODAY + 3 }, { Due: TODAY + 1 }]);
    expect(jobsOf(await week(port))).toEqual([['week', 45_999, ['1043', '1042']]]);
  });

  test('leaves out what is done, and names jobs without clubs', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Jobs', [{ Status: 'Done' }]);
    port.fillTable('Clubs', [{}, {}, {}, { Job: '1042' }]);
    const { jobs, bare, parts } = await week(port);
    expect([jobs, bare, parts]).toEqual([0, ['1043'], []]);
  });

  test('counts a job’s minutes as its ticket does, and adds them up', async () => {
    const port = await pricedWorkshop();
    const { parts, minutes } = await week(port);
    const all = parts.flatMap(({ jobs }) => jobs);
    expect(minutes).toBe(all.reduce((sum, job) => sum + job.minutes, 0));
    expect(parts.reduce((sum, part) => sum + part.minutes, 0)).toBe(minutes);
    expect(all[0]?.minutes).toBeGreaterThan(0);
  });

  test('says what a job costs now, and the quote that stands', async () => {
    const port = await pricedWorkshop();
    const [before] = (await week(port)).parts.flatMap(({ jobs }) => jobs);
    // By hand, as in the test of issuing: 48.60 in all.
    expect([before?.money.now?.minor, before?.money.issued]).toEqual([4860n, undefined]);
    await issueQuote(port, { what: { job: '1042' }, terms: { issued: TODAY }, shown: null });
    const [after] = (await week(port)).parts.flatMap(({ jobs }) => jobs);
    expect(after?.money.issued).toMatchObject({ number: 1, revision: 1, total: 48.6, currency: 'EUR' });
  });

  test('without a currency a job has no money, and says why', async () => {
    const port = await pricedWorkshop();
    set(port, 'Currency', '');
    const { parts } = await week(port);
    expect(parts.map(({ money, unpriced }) => [money, unpriced])).toEqual([
      [undefined, 1],
      [undefined, 1],
    ]);
    expect(parts[0]?.jobs[0]?.money.issues.map(({ field }) => field)).toContain('Currency in Settings');
  });

  test('what stock lacks goes short for the job that is due last', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Stock', [{ 'On hand': 2 }]);
    port.fillTable('Clubs', [{}, {}, {}, { 'New grip': 'FERN-M' }]);
    port.fillTable('Jobs', [{ Due: TODAY + 6 }, { Due: TODAY + 1 }]);
    const jobs = (await week(port)).parts.flatMap((part) => part.jobs);
    expect(jobs.map(({ job, short }) => [job, shortItemsText(short)])).toEqual([
      ['1043', ''],
      ['1042', 'FERN-M × 2'],
    ]);
  });
});

describe('the week’s page', () => {
  test('lists each week under its Monday with its sums, and is rewritten in place', async () => {
    const port = await pricedWorkshop();
    const end = await fillWeek(port, await readShop(port), { today: TODAY });
    expect(end).toMatchObject({ done: true, sheet: 'Week', jobs: 2 });
    const line = (row: number) =>
      Array.from({ length: 9 }, (_, column) => port.shows('Week', WEEK_HEAD_ROWS + row, column));
    expect(line(0).at(-1)).toBe('Total, EUR');
    expect(line(1).slice(0, 2)).toEqual(['Week of', 45_999]);
    expect(line(2).slice(0, 7)).toEqual([46_000, '1042', 'Tamsin Orrell', 'Open', null, 'not issued', 3]);
    expect(line(2).at(-1)).toBe(48.6);
    expect(line(1).at(-1)).toBe(48.6);
    expect(line(3)[0]).toBe('Due on no day');
    port.fillTable('Jobs', [{ Status: 'Done' }]);
    expect(await fillWeek(port, await readShop(port), { today: TODAY })).toMatchObject({ sheet: 'Week', jobs: 1 });
    expect(line(1)[0]).toBe('Due on no day');
    expect(line(3)).toEqual(Array(9).fill(null));
  });

  test('marks a total that the issued quote does not say', async () => {
    const port = await pricedWorkshop();
    await issueQuote(port, { what: { job: '1042' }, terms: { issued: TODAY }, shown: null });
    const quoted = async () => {
      await fillWeek(port, await readShop(port), { today: TODAY });
      return port.shows('Week', WEEK_HEAD_ROWS + 2, 5);
    };
    expect(await quoted()).toBe('1');
    port.fillTable('Stock', [{ Price: 7.5 }]);
    expect(await quoted()).toBe('1 *');
  });

  test('asks before it writes over what a person typed, and is taken back', async () => {
    const port = await pricedWorkshop();
    const before = port.content();
    await fillWeek(port, await readShop(port), { today: TODAY });
    expect(await undoLast(port)).toMatchObject({ done: true });
    expect(port.content()).toEqual(before);
    port.addSheet('Week');
    port.type('Week', 3, 2, 'mine');
    expect(await fillWeek(port, await readShop(port), { today: TODAY })).toMatchObject({ reason: 'occupied' });
  });

  test('one read and one write', async () => {
    const port = await pricedWorkshop();
    const shop = await readShop(port);
    [port.reads, port.applies] = [0, 0];
    await fillWeek(port, shop, { today: TODAY });
    expect([port.reads, port.applies]).toEqual([1, 1]);
    expect(planJob(shop.tables, '1042')?.ok).toBe(true);
  });
});
