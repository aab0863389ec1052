import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { compareGrips } from '../../src/core/index';
import type { Comparison, Filters } from '../../src/core/index';
import { COMPARE_COLUMNS } from '../../src/workbook/compareCells';
import { COMPARE_HEAD_ROWS } from '../../src/workbook/compareSheet';
import { judgeCheckIn, startCheckIn } from '../../src/workbook/checkInJobs';
import { closeJob } from '../../src/workbook/closeJob';
import { fillCompare } from '../../src/workbook/fillCompare';
import { fillLabels, fillSlip } from '../../src/workbook/fillHandOver';
import { fillPlan } from '../../src/workbook/fillPlan';
import { fillTicket } from '../../src/workbook/fillTicket';
import { freezePlan } from '../../src/workbook/freeze';
import { keepHand } from '../../src/workbook/keepHand';
import type { FillRequest } from '../../src/workbook/outcomes';
import { readClubList } from '../../src/workbook/clubList';
import { fillIntake } from '../../src/workbook/fillIntake';
import type { JobRequest } from '../../src/workbook/intakeOutcomes';
import { INTAKE_HEAD_ROWS } from '../../src/workbook/intakeSheet';
import { startJob } from '../../src/workbook/startJob';
import { takeConstant } from '../../src/workbook/takeConstant';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { planScope, scopeRows } from '../../src/workbook/planScope';
import { HEAD_ROWS } from '../../src/workbook/planSheet';
import type { BlockSeen, Cell, TableSeen, WorkbookPort } from '../../src/workbook/port';
import { redoJob } from '../../src/workbook/redoJob';
import { TABLES } from '../../src/workbook/schema';
import { setUp } from '../../src/workbook/setUp';
import { matrixOf, readShop } from '../../src/workbook/shop';
import type { Shop } from '../../src/workbook/shop';
import { keepingSteps, undoLast } from '../../src/workbook/undo';
import { CLUB_ROWS, JOB_ROWS, STOCK_ROWS } from '../workbook/workshop';
import type { Bench } from './structureSuite';

const JOB: FillRequest = { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'values' };
const SHEET = 'Plan 1042';

/** Puts rows into the body of a table that has room for them. */
export async function fillTable(port: WorkbookPort, name: string, rows: readonly Readonly<Record<string, unknown>>[]) {
  const [table] = await port.read([{ read: 'table', table: name }]);
  if (!table) throw new Error(`no table ${name}`);
  const cells = rows.map((row) => table.headers.map((header): Cell => (row[header] ?? null) as Cell));
  const at = { ...table.at, row: table.at.row + 1, rows: rows.length };
  await port.apply([{ do: 'write', at, cells }], [table], { label: 'rows' });
}

async function area(port: WorkbookPort, rows = HEAD_ROWS + 4): Promise<BlockSeen> {
  const at = { sheet: SHEET, row: 0, column: 0, rows, columns: PLAN_COLUMNS.length };
  const [seen] = await port.read([{ read: 'block', at }]);
  return seen;
}

async function clubs(port: WorkbookPort): Promise<TableSeen> {
  const [seen] = await port.read([{ read: 'table', table: 'Clubs' }]);
  if (!seen) throw new Error('no table Clubs');
  return seen;
}

/** Compares grips on the clubs of the job, as the pane does. */
export function comparing({ tables }: Shop, filters: Filters = {}): Comparison {
  const planned = tables.Clubs && planScope(tables, scopeRows(tables.Clubs, JOB.scope), {});
  if (!planned?.ok) throw new Error('cannot be planned');
  return compareGrips(planned.value.input, filters);
}

/** Fills in what `comparing` found. */
export async function compared(port: WorkbookPort, filters: Filters = {}) {
  const shop = await readShop(port);
  const comparison = comparing(shop, filters);
  return { comparison, end: await fillCompare(port, shop, { scope: JOB.scope, comparison, about: '=Three clubs.' }) };
}

async function comparison(port: WorkbookPort): Promise<BlockSeen> {
  const at = { sheet: 'Compare 1042', row: 0, column: 0, rows: COMPARE_HEAD_ROWS + 8, columns: COMPARE_COLUMNS.length };
  const [seen] = await port.read([{ read: 'block', at }]);
  return seen;
}

/** What a bench for jobs can do besides. */
export interface JobsBench extends Bench {
  /** Makes a table longer, as typing below it does. */
  lengthen?(table: string, rows: number): void;
}

/** The jobs done on a workbook, through a port. `calculates` where the host computes our functions. */
export function jobsSuite(host: string, makeBench: () => JobsBench | Promise<JobsBench>, calculates: boolean): void {
  describe(`jobs on a workbook: ${host}`, () => {
    let bench: JobsBench;
    beforeEach(async () => {
      bench = await makeBench();
    });
    afterEach(async () => {
      await bench.dispose?.();
    });

    async function workshop(): Promise<WorkbookPort> {
      const { port } = bench;
      expect(await setUp(port)).toMatchObject({ done: true, blocked: [], kept: [] });
      for (const [name, rows] of Object.entries({ Stock: STOCK_ROWS, Jobs: JOB_ROWS, Clubs: CLUB_ROWS })) {
        bench.lengthen?.(name, rows.length);
        await fillTable(port, name, rows);
      }
      return port;
    }

    it('sets up once', async () => {
      const { port } = bench;
      const all = TABLES.map(({ name }) => name);
      expect(await setUp(port)).toEqual({ done: true, made: all, kept: [], blocked: [] });
      expect(await setUp(port)).toEqual({ done: true, made: [], kept: all, blocked: [] });
      const shop = await readShop(port);
      expect(shop.version).toBe(1);
      expect(shop.tables.Settings?.rows[1]).toEqual(['Tolerance', 1, 'pt', expect.any(String)]);
    });

    it('fills values with choices, fills again in place, and takes each back', async () => {
      const port = await workshop();
      const start = await clubs(port);
      const end = await fillPlan(port, await readShop(port), { ...JOB, choices: { newItem: 'OAK-58', layers: 2 } });
      expect(end).toMatchObject({ done: true, sheet: SHEET, clubs: 3, choicesWritten: 6 });
      const first = await area(port);
      expect(first.values.slice(HEAD_ROWS).map((row) => row.slice(0, 3))).toEqual([
        ['Club', 'New grip', 'Layers'],
        ['Driver', 'OAK-58', 2],
        ['7 iron', 'OAK-58', 2],
        ['Pitching wedge', 'OAK-58', 2],
      ]);
      expect(first.values.slice(2, 4).map((row) => row.slice(0, 2))).toEqual([
        ['Job', '1042'],
        ['Customer', 'Tamsin Orrell'],
      ]);
      const again = await fillPlan(port, await readShop(port), { ...JOB, choices: { newItem: 'MOSS-S' } });
      expect(again).toMatchObject({ done: true, sheet: SHEET, choicesWritten: 3 });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect((await area(port)).values).toEqual(first.values);
      expect(await fillPlan(port, await readShop(port), JOB)).toMatchObject({ done: true });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(matrixOf(await clubs(port))).not.toEqual(matrixOf(start));
    });

    it('takes back a plan after a page that was filled later, each as it was', async () => {
      const port = await workshop();
      const kept = keepingSteps(port);
      const start = matrixOf(await clubs(port));
      await fillPlan(kept, await readShop(port), { ...JOB, choices: { newItem: 'OAK-58' } });
      const planned = await area(port);
      await fillIntake(kept, await readShop(port), { job: '1042' });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] }, next: 'Plan of job 1042' });
      expect((await area(port)).values).toEqual(planned.values);
      expect((await readShop(port)).plans.map(({ key }) => key)).toEqual(['job:1042']);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] }, next: null });
      expect(matrixOf(await clubs(port))).toEqual(start);
      const [sheets] = await port.read([{ read: 'sheets' }]);
      expect(sheets.map(({ name }) => name)).not.toContain(SHEET);
      expect(await undoLast(port)).toMatchObject({ done: false, reason: 'nothingToUndo' });
    });

    it('takes a first fill back whole: clubs, sheet and place', async () => {
      const port = await workshop();
      const start = matrixOf(await clubs(port));
      await fillPlan(port, await readShop(port), { ...JOB, as: 'live', choices: { newItem: 'OAK-58' } });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(matrixOf(await clubs(port))).toEqual(start);
      const sheets = await port.read([{ read: 'sheets' }]);
      expect(sheets[0].map(({ name }) => name)).not.toContain(SHEET);
      expect((await readShop(port)).plans).toEqual([]);
    });

    it('names what a person typed over the plan, and writes over it when they agree', async () => {
      const port = await workshop();
      await fillPlan(port, await readShop(port), JOB);
      await bench.person.type(SHEET, 3, 1, 'call first');
      const asked = await fillPlan(port, await readShop(port), JOB);
      expect(asked).toMatchObject({ done: false, reason: 'occupied', cells: ["'Plan 1042'!B4"] });
      const agreed = 'inTheWay' in asked ? asked.inTheWay : undefined;
      const end = await fillPlan(port, await readShop(port), { ...JOB, agreed });
      expect(end).toMatchObject({ done: true });
      expect((await area(port)).values[3]?.[1]).toBe('Tamsin Orrell');
    });

    it('fills choices of single clubs, each beside those for all, and takes them back', async () => {
      const port = await workshop();
      const start = matrixOf(await clubs(port));
      const perClub = new Map([
        [1, { newMass: 60.5 }],
        [2, { newItem: 'MOSS-S', layers: 2 }],
      ]);
      const end = await fillPlan(port, await readShop(port), { ...JOB, choices: { newItem: 'OAK-58', perClub } });
      expect(end).toMatchObject({ done: true, clubs: 3, choicesWritten: 5 });
      const { headers, rows } = await clubs(port);
      const [item, mass, layers] = ['New grip', 'New grip mass (g)', 'Layers'].map((each) => headers.indexOf(each));
      expect(rows.slice(0, 4).map((row) => [row[item ?? 0], row[mass ?? 0], row[layers ?? 0]])).toEqual([
        ['OAK-58', 60.5, 1],
        ['MOSS-S', null, 2],
        ['OAK-58', null, 1],
        ['FERN-M', null, 1],
      ]);
      expect((await area(port)).values.slice(HEAD_ROWS + 1).map((row) => row[1])).toEqual([
        'OAK-58',
        'MOSS-S',
        'OAK-58',
      ]);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(matrixOf(await clubs(port))).toEqual(start);
    });

    it('keeps a hand in the row of its job, and takes it back', async () => {
      const port = await workshop();
      const hand = { handLength: 7.5, fingerLength: 3.15, lowerHandLength: null, lowerFingerLength: 3 };
      const jobs = async () => (await readShop(port)).tables.Jobs;
      const before = await jobs();
      const end = await keepHand(port, await readShop(port), { job: '1043', ...hand });
      expect(end).toEqual({ done: true, job: '1043', cells: 3 });
      const after = await jobs();
      const row = (after?.rows[1] ?? []).map((cell, at) => [after?.headers[at], cell]);
      expect(Object.fromEntries(row)).toMatchObject({
        Job: '1043',
        'Hand length (in)': 7.5,
        'Middle finger (in)': 3.15,
        'Lower hand length (in)': null,
        'Lower middle finger (in)': 3,
      });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { restored: 3, left: [] } });
      expect(await jobs()).toEqual(before);
    });

    it('fills a comparison, fills it again shorter, and takes each back', async () => {
      const port = await workshop();
      const { end, comparison: found } = await compared(port);
      const grips = found.tried.map(({ candidate }) => candidate.key);
      expect(end).toMatchObject({ done: true, sheet: 'Compare 1042', grips: grips.length });
      const first = await comparison(port);
      const listed = (seen: BlockSeen) => seen.values.slice(COMPARE_HEAD_ROWS + 1).flatMap((row) => row[1] ?? []);
      expect(listed(first).filter(Boolean)).toEqual(grips);
      expect(first.values[3]?.slice(0, 2)).toEqual(['Customer', 'Tamsin Orrell']);
      // what was compared is text, whatever it begins with
      expect([first.values[7]?.[1], first.formulas.flat().some(Boolean)]).toEqual(['=Three clubs.', false]);
      const again = await compared(port, { items: ['MOSS-S'] });
      expect(again.end).toMatchObject({ done: true, sheet: 'Compare 1042', grips: 1 });
      expect(listed(await comparison(port)).filter(Boolean)).toEqual(['MOSS-S']);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect((await comparison(port)).values).toEqual(first.values);
      expect((await compared(port)).end).toMatchObject({ done: true });
    });

    it('takes a first comparison back whole, and leaves a plan beside it alone', async () => {
      const port = await workshop();
      await fillPlan(port, await readShop(port), JOB);
      const plan = (await area(port)).values;
      const before = await readShop(port);
      await compared(port);
      expect((await readShop(port)).plans.map(({ key }) => key)).toEqual(['job:1042', 'compare:job:1042']);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      const [sheets] = await port.read([{ read: 'sheets' }]);
      expect(sheets.map(({ name }) => name)).not.toContain('Compare 1042');
      expect((await area(port)).values).toEqual(plan);
      expect((await readShop(port)).plans).toEqual(before.plans);
    });

    it('names what a person typed over a comparison, and leaves it', async () => {
      const port = await workshop();
      await compared(port);
      await bench.person.type('Compare 1042', 7, 1, 'ask him');
      expect((await compared(port)).end).toMatchObject({ reason: 'occupied', cells: ["'Compare 1042'!B8"] });
      expect((await comparison(port)).values[7]?.[1]).toBe('ask him');
    });

    it('fills a bench ticket, begins a check-in once, judges it, and takes it back', async () => {
      const port = await workshop();
      expect(await fillTicket(port, await readShop(port), { job: '1042' })).toMatchObject({ done: true, clubs: 3 });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(await startCheckIn(port, '1042')).toMatchObject({ done: true, added: 3 });
      expect(await startCheckIn(port, '1042')).toMatchObject({ done: true, added: 0 });
      const [table] = await port.read([{ read: 'table', table: 'Checkin' }]);
      const at = (header: string): number => table?.headers.indexOf(header) ?? -1;
      expect(table?.rows.slice(0, 4).map((row) => row[at('Club')] || null)).toEqual([
        'Driver',
        '7 iron',
        'Pitching wedge',
        null,
      ]);
      expect(await judgeCheckIn(port, '1042')).toMatchObject({ done: true, closing: { closes: false } });
      const [judged] = await port.read([{ read: 'table', table: 'Checkin' }]);
      expect(judged?.rows.slice(0, 3).map((row) => row[at('Standing')])).toEqual(['Open', 'Open', 'Open']);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      expect(await closeJob(port, '1042', 46200)).toMatchObject({ done: false, reason: 'open' });
    });

    it('asks before judging writes over what a person typed, then closes, and begins a redo', async () => {
      const port = await workshop();
      const checkin = async (): Promise<TableSeen> => {
        const [table] = await port.read([{ read: 'table', table: 'Checkin' }]);
        if (!table) throw new Error('no table Checkin');
        return table;
      };
      await startCheckIn(port, '1042');
      expect(await judgeCheckIn(port, '1042')).toMatchObject({ done: true });
      const { at, headers } = await checkin();
      const type = (row: number, header: string, value: string) =>
        bench.person.type('Checkin', at.row + row, at.column + headers.indexOf(header), value);
      await type(2, 'What next', 'ring him first');
      for (const row of [1, 2, 3]) {
        await type(row, 'Decision', 'Waive');
        await type(row, 'Reason', 'agreed');
      }
      const asked = await judgeCheckIn(port, '1042');
      expect(asked).toMatchObject({ done: false, reason: 'occupied', cells: [expect.stringContaining('Checkin!')] });
      const agreed = 'inTheWay' in asked ? asked.inTheWay : null;
      expect(await judgeCheckIn(port, '1042', agreed)).toMatchObject({ done: true, closing: { closes: true } });
      // what judging wrote is known again, whatever the host made of it
      expect(await judgeCheckIn(port, '1042')).toMatchObject({ done: true, cells: 0 });
      await type(1, 'Reading', 'D2.2');
      expect(await judgeCheckIn(port, '1042')).toMatchObject({ done: true });
      expect(await closeJob(port, '1042', 46200)).toMatchObject({ done: true, already: false });
      expect(await closeJob(port, '1042', 46201)).toMatchObject({ done: true, already: true });
      expect(await redoJob(port, '1042', ['Driver'])).toMatchObject({ done: true, round: 2 });
      const after = await checkin();
      const cell = (row: number, header: string) => after.rows[row]?.[after.headers.indexOf(header)];
      expect([cell(3, 'Club'), cell(3, 'Round'), cell(0, 'Reading')]).toEqual(['Driver', 2, 'D2.2']);
      const tables = (await readShop(port)).tables;
      const job = (header: string) => tables.Jobs?.rows[0]?.[tables.Jobs.headers.indexOf(header)];
      expect([job('Status'), job('Closed')]).toEqual(['Open', 46200]);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(await redoJob(port, '1042', ['Driver'])).toMatchObject({ done: true, round: 2 });
    });

    it('fills labels and a pick-up slip, again in place, and takes them back', async () => {
      const port = await workshop();
      for (const [fill, sheet] of [
        [fillLabels, 'Labels 1042'],
        [fillSlip, 'Pick-up 1042'],
      ] as const) {
        expect(await fill(port, await readShop(port), { job: '1042' })).toMatchObject({ done: true, sheet, clubs: 3 });
        expect(await fill(port, await readShop(port), { job: '1042' })).toMatchObject({ done: true, sheet });
        const [{ values }] = await port.read([
          { read: 'block', at: { sheet, row: 0, column: 0, rows: 12, columns: 5 } },
        ]);
        expect(values.flat()).toEqual(expect.arrayContaining(['Driver', '7 iron', 'Pitching wedge']));
        await bench.person.type(sheet, 1, 0, 'mine');
        const asked = await fill(port, await readShop(port), { job: '1042' });
        expect(asked).toMatchObject({ done: false, reason: 'occupied', cells: [`'${sheet}'!A2`] });
      }
    });

    it('begins a job in rows that hold nothing, fills its intake sheet, and takes each back', async () => {
      const port = await workshop();
      const before = await readShop(port);
      const request: JobRequest = {
        job: null,
        suggested: '1044',
        customer: '=Ivo Brandt',
        due: 46110,
        today: 46100,
        clubs: readClubList('3 wood, 8-PW').clubs,
        hand: 'Left',
        firstTag: '007',
        authorisedBy: '',
        last: [],
      };
      const end = await startJob(port, request);
      expect(end).toEqual({ done: true, job: '1044', insteadOf: null, clubs: 4, takenOver: 0 });
      const begun = await readShop(port);
      // whoever was there stands where they stood
      expect(matrixOf(begun.tables.Clubs as TableSeen).slice(0, 6)).toEqual(
        matrixOf(before.tables.Clubs as TableSeen).slice(0, 6),
      );
      const filled = await fillIntake(port, begun, { job: '1044' });
      expect(filled).toMatchObject({ done: true, sheet: 'Intake 1044', clubs: 4 });
      const at = { sheet: 'Intake 1044', row: 0, column: 0, rows: INTAKE_HEAD_ROWS + 5, columns: 10 };
      const [page] = await port.read([{ read: 'block', at }]);
      expect(page.values[3]?.[2]).toBe('=Ivo Brandt');
      expect(page.values.slice(INTAKE_HEAD_ROWS + 1).map((row) => row.slice(0, 3))).toEqual([
        ['007', '3 wood', 'Left'],
        ['008', '8 iron', 'Left'],
        ['009', '9 iron', 'Left'],
        ['010', 'PW', 'Left'],
      ]);
      expect(page.formulas.flat().some(Boolean)).toBe(false);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(await startJob(port, { ...request, firstTag: 'A1', customer: 'Ada Noll' })).toMatchObject({ job: '1045' });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect((await readShop(port)).jobs.map(({ job }) => job)).toEqual(['1042', '1043', '1044']);
    });

    it('takes over a constant of the shop’s own, and back', async () => {
      const port = await workshop();
      const balance = { field: 'balanceInches', item: 'MOSS-S', suggested: 4.4444, low: 4.4, high: 4.5 } as const;
      expect(await takeConstant(port, balance)).toMatchObject({ done: true, was: null, now: 4.44 });
      const { Stock } = (await readShop(port)).tables;
      expect(Stock?.rows[1]?.[Stock.headers.indexOf('Balance point (in)')]).toBe(4.44);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { restored: 1, left: [] } });
    });

    if (!calculates) return;

    it('fills a live plan that follows the tables, freezes it, and brings it back to life', async () => {
      const port = await workshop();
      const values = await fillPlan(port, await readShop(port), JOB);
      expect(values).toMatchObject({ done: true });
      const asValues = (await area(port)).values;
      expect(await fillPlan(port, await readShop(port), { ...JOB, as: 'live' })).toMatchObject({ as: 'live' });
      const live = await area(port);
      expect(tidy(live.values)).toEqual(tidy(asValues));
      expect(live.spills).toEqual([{ sheet: SHEET, row: HEAD_ROWS, column: 0, rows: 4, columns: PLAN_COLUMNS.length }]);
      const table = await clubs(port);
      await bench.person.type('Clubs', table.at.row + 1, table.headers.indexOf('New grip'), 'OAK-58');
      expect((await area(port)).values[HEAD_ROWS + 1]?.[1]).toBe('OAK-58');

      const shop = await readShop(port);
      const place = shop.plans[0];
      expect(place && (await freezePlan(port, shop, place))).toMatchObject({ done: true });
      const frozen = await area(port);
      expect([frozen.formulas.flat().some(Boolean), frozen.spills]).toEqual([false, undefined]);
      expect(frozen.values[HEAD_ROWS + 1]?.[1]).toBe('OAK-58');
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect((await area(port)).spills).toEqual(live.spills);
    });

    it('names the cell in the way of a live plan', async () => {
      const port = await workshop();
      await fillPlan(port, await readShop(port), { ...JOB, as: 'live' });
      await bench.person.type(SHEET, HEAD_ROWS + 2, 4, 'hm');
      const end = await fillPlan(port, await readShop(port), { ...JOB, as: 'live' });
      expect(end).toMatchObject({ done: false, reason: 'occupied', cells: ["'Plan 1042'!E12"] });
    });
  });
}

/** Blank cells and blank text look the same. */
function tidy(values: BlockSeen['values']): unknown {
  return values.map((row) => row.map((cell) => (cell === '' ? null : cell)));
}
