/** A grip that the client brings, from quote to closed job: fitted and charged as work, never sold and never taken from stock. */
import { describe, expect, test } from 'vitest';
import { benchTicket } from '../../src/core/index';
import { judgedJob, planJob } from '../../src/workbook/benchJob';
import { judgeCheckIn, startCheckIn } from '../../src/workbook/checkInJobs';
import { closeJob } from '../../src/workbook/closeJob';
import { fillLabels, fillSlip } from '../../src/workbook/fillHandOver';
import { fillPick } from '../../src/workbook/fillPick';
import { fillTicket } from '../../src/workbook/fillTicket';
import type { Seen } from '../../src/workbook/port';
import { quoteJob } from '../../src/workbook/quoteScope';
import { readBench } from '../../src/workbook/readBench';
import { readShop } from '../../src/workbook/shop';
import { needsOfJob } from '../../src/workbook/jobNeeds';
import { moneyText } from '../../src/words/money';
import type { MemoryPort } from './memoryPort';
import { pricedWorkshop } from './pricedWorkshop';

const JOB = '1042';
const TODAY = 46_200;

/** The driver's grip is the client's and nothing is known of it; it has three layers under it. */
async function brought(newGrip: Seen = null): Promise<MemoryPort> {
  const port = await pricedWorkshop();
  port.fillTable('Clubs', [{ 'Own grip': 'Yes', 'New grip': newGrip, Layers: 3 }]);
  return port;
}

async function lookAt(port: MemoryPort) {
  const { tables } = await readShop(port);
  const planned = planJob(tables, JOB);
  if (!planned?.ok) throw new Error('not planned');
  const { plan, input } = planned.value;
  return { tables, planned: planned.value, ticket: benchTicket(plan, input, readBench(tables).ask) };
}

async function textsOf(port: MemoryPort, sheet: string): Promise<readonly string[]> {
  const [seen] = await port.read([{ read: 'block', at: { sheet, row: 0, column: 0, rows: 60, columns: 14 } }]);
  return seen.values.flatMap((row) => row.map((cell) => String(cell ?? '')));
}

describe.each([
  ['no name', null],
  ['a name that Stock does not list', 'their cord grip'],
])('a client’s own grip with %s', (_, newGrip) => {
  test('is charged by its own rate, with layers and without a grip', async () => {
    const port = await brought(newGrip);
    const { tables } = await lookAt(port);
    const { quote, issues, uncharged } = quoteJob(tables, { job: JOB, terms: { issued: TODAY } });
    expect([issues, uncharged]).toEqual([[], []]);
    // By hand: 2 × (6.50 + 3.50), 5.00 for the client's own, 3 layers at 0.40 (its rate includes none), and what the other two have besides
    const lines = quote?.lines.map(({ description, full }) => [description, moneyText(full)]);
    expect(lines).toContainEqual(['FERN-M', '13.00 EUR']);
    expect(lines).toContainEqual(['Fit a client’s own grip', '5.00 EUR']);
    expect(lines).toContainEqual(['Build-up tape', '1.20 EUR']);
    expect(lines).toContainEqual(['Weigh and read before and after', '3.00 EUR']);
  });

  test('is on the ticket, after a club that is planned, with its tape and minutes', async () => {
    const port = await brought(newGrip);
    const { tables, ticket } = await lookAt(port);
    const club = ticket.clubs.find(({ name }) => name === 'Driver');
    // 10.5 in of tape a layer, as Settings has it
    expect(club).toMatchObject({ ownGrip: true, tape: { layers: 3, totalInches: 31.5 }, pilot: false });
    expect([ticket.left, ticket.unplanned]).toEqual([[], []]);
    expect(ticket.grips).toEqual([{ item: 'FERN-M', pieces: 2 }]);
    const { minutes } = quoteJob(tables, { job: JOB, terms: { issued: TODAY } });
    expect(ticket.minutes.total).toBe(minutes.minutes);
    await fillTicket(port, await readShop(port), { job: JOB });
    expect(await textsOf(port, `Ticket ${JOB}`)).toContain(newGrip ? `${newGrip}, client’s own` : 'client’s own');
  });

  test('needs tape and no grip of stock', async () => {
    const port = await brought(newGrip);
    const needs = needsOfJob((await readShop(port)).tables, JOB);
    if (!needs?.ok) throw new Error('no needs');
    const grips = needs.value.needs.filter(({ shelf }) => shelf === 'grip');
    expect(grips.map(({ item, club }) => [item, club])).toEqual([
      ['FERN-M', '7 iron'],
      ['FERN-M', 'Pitching wedge'],
    ]);
    const tape = needs.value.needs.find(({ item }) => item === 'Build-up tape');
    // 3 + 1 + 1 layers of 10.5 in, in yards
    expect(tape?.quantity).toBeCloseTo((5 * 10.5) / 36, 3);
    expect(needs.value.twoWayStrips).toBe(3);
    await fillPick(port, await readShop(port), { agreed: undefined });
    expect(await textsOf(port, 'Pick list')).not.toContain(newGrip ?? 'client’s own');
  });

  test('is checked in, stands on label and slip, and closes with the job', async () => {
    const port = await brought(newGrip);
    expect(await startCheckIn(port, JOB)).toMatchObject({ done: true, added: 3 });
    const headers = port.tableSeen('Checkin')?.headers ?? [];
    const type = (row: number, header: string, value: Seen) =>
      port.type('Checkin', row, headers.indexOf(header), value);
    // It arrived at D3 and is held at that.
    type(1, 'Reading', 'D3');
    type(1, 'Mass (g)', 310);
    const { tables, planned } = await lookAt(port);
    const driver = judgedJob(tables, JOB, planned).checkIn.clubs.find(({ name }) => name === 'Driver');
    expect(driver).toMatchObject({ verdict: 'within', issues: [] });
    [2, 3].forEach((row) => {
      type(row, 'Decision', 'Waive');
      type(row, 'Reason', 'not read');
    });
    type(1, 'Decision', 'Accept');
    expect(await judgeCheckIn(port, JOB)).toMatchObject({ done: true, closing: { closes: true } });
    const shop = await readShop(port);
    const theirs = newGrip ? `${newGrip}, client’s own` : 'client’s own';
    await fillLabels(port, shop, { job: JOB });
    expect(await textsOf(port, `Labels ${JOB}`)).toContain(`${theirs}, 3 layers`);
    await fillSlip(port, await readShop(port), { job: JOB });
    expect((await textsOf(port, `Pick-up ${JOB}`)).filter((text) => text === theirs)).toHaveLength(1);
    expect(await closeJob(port, JOB, TODAY)).toMatchObject({ done: true, already: false });
    const used = (port.tableSeen('Movements')?.rows ?? []).filter((row) => row.includes('Driver'));
    expect(used).toEqual([]);
  });
});

test('a set of clients’ own grips alone has a ticket, and a pilot', async () => {
  const port = await pricedWorkshop();
  port.fillTable('Clubs', Array(3).fill({ 'Own grip': 'Yes', 'New grip': null }) as Record<string, Seen>[]);
  const { ticket } = await lookAt(port);
  expect(ticket.clubs).toHaveLength(3);
  expect(ticket.pilot).toMatchObject({ why: 'first' });
  expect(ticket.grips).toEqual([]);
});

test('one that Stock lists is planned, and is neither short nor needed', async () => {
  const port = await brought('FERN-M');
  port.fillTable('Stock', [{ 'On hand': 2 }]);
  const { planned } = await lookAt(port);
  expect(planned.plan.needed.get('FERN-M')).toBe(2);
  expect(planned.plan.clubs.flatMap(({ notes }) => notes.map(({ note }) => note))).not.toContain('stockShort');
  expect(planned.plan.clubs[0]?.readingAfter).toBeDefined();
});
