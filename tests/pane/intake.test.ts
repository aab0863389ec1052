import { describe, expect, test } from 'vitest';
import { EMPTY_INTAKE, EMPTY_TOOLS, forAnotherSet, type IntakeForm } from '../../src/pane/state/tools';
import { takeConstantDeed } from '../../src/pane/view/tools/calibrateDeeds';
import { beginDeed, intakeDeed, remindersDeed, takeLastDeed } from '../../src/pane/view/tools/intakeDeeds';
import { customersOf, jobSeen, newJobSeen, suggestedJob } from '../../src/pane/view/tools/intakeSeen';
import { workOn } from '../../src/pane/workOn';
import { calibrateShop } from '../../src/workbook/calibrateShop';
import { readShop } from '../../src/workbook/shop';
import type { MemoryPort } from '../workbook/memoryPort';
import { demoPort } from './demoPane';

const GOING = { say: () => undefined, signal: new AbortController().signal };
/** 2026-05-11 */
const TODAY = 46153;
const FORM: IntakeForm = { ...EMPTY_INTAKE, customer: ' alex  MARSH', clubs: 'Driver, 8-9', due: '2026-05-20' };

const shopOf = async (port: MemoryPort) => readShop(port);

async function done(port: MemoryPort, deed: Parameters<ReturnType<typeof workOn>['deed']>[1]) {
  const work = workOn(port);
  const { shop } = await work.read();
  if (!shop) throw new Error('not read');
  return work.deed(shop, deed, null, GOING);
}

describe('a job that is being begun', () => {
  test('is read from what was typed: the customer as the shop spells it, and what the clubs got last time', async () => {
    const shop = await shopOf(demoPort());
    const seen = newJobSeen(shop, { ...FORM, asLast: true }, TODAY);
    expect(seen).toMatchObject({ dueFault: false, untouched: false, fault: undefined });
    expect(seen.request).toMatchObject({ customer: 'Alex Marsh', due: 46162, job: null, hand: null });
    expect(seen.request?.last.map(({ club, item, job }) => [club, item, job])).toEqual([
      ['Driver', 'TB-S60', 'R-143'],
      ['8 iron', 'OS-S60', 'R-143'],
      ['9 iron', 'OS-S60', 'R-143'],
    ]);
    expect(newJobSeen(shop, FORM, TODAY).request?.last).toEqual([]);
    expect(suggestedJob(shop)).toBe('R-207');
    expect(customersOf(shop)).toContain('Kim Vale');
  });

  test('is not begun from what cannot be read', async () => {
    const shop = await shopOf(demoPort());
    expect(newJobSeen(shop, EMPTY_INTAKE, TODAY)).toMatchObject({ untouched: true });
    expect(newJobSeen(shop, { ...FORM, clubs: 'Driver, spoon' }, TODAY).request).toBeNull();
    expect(newJobSeen(shop, { ...FORM, due: '20.5.2026' }, TODAY)).toMatchObject({ dueFault: true, request: null });
    expect(newJobSeen(shop, { ...FORM, job: 'r-201' }, TODAY).fault).toEqual({ why: 'jobUsed', job: 'r-201' });
    expect(newJobSeen(shop, { ...FORM, firstTag: '5' }, TODAY).fault).toBeUndefined();
    expect(newJobSeen(shop, { ...FORM, firstTag: '11' }, TODAY).fault).toMatchObject({ why: 'tagUsed', tag: '11' });
  });

  test('stays in its fields while another job is looked at', () => {
    expect(forAnotherSet({ ...EMPTY_TOOLS, intake: FORM }).intake).toEqual(FORM);
  });

  test('says its number when it is begun, and its sheet can be filled', async () => {
    const port = demoPort();
    const { request } = newJobSeen(await shopOf(port), FORM, TODAY);
    const numbers: string[] = [];
    const began =
      request &&
      (await done(
        port,
        beginDeed(request, (job) => numbers.push(job)),
      ));
    expect([numbers, began]).toEqual([['R-207'], expect.objectContaining({ kind: 'done', title: 'Job begun' })]);
    expect(await done(port, intakeDeed('R-207'))).toMatchObject({ kind: 'done', title: 'Intake sheet filled' });
    const again =
      request &&
      (await done(
        port,
        beginDeed({ ...request, job: 'R-207' }, (job) => numbers.push(job)),
      ));
    expect([numbers.length, again]).toEqual([1, expect.objectContaining({ kind: 'failed' })]);
  });
});

test('a job of the demo shows what its clubs got last time; another customer has no past', async () => {
  const shop = await shopOf(demoPort());
  expect(jobSeen(shop, 'R-201')).toMatchObject({ fault: undefined, customer: 'Alex Marsh' });
  expect(jobSeen(shop, 'R-201').last).toHaveLength(9);
  expect(jobSeen(shop, 'R-205').last).toEqual([]);
});

test('what was chosen is asked about before last time’s grips go over it', async () => {
  const port = demoPort();
  const asked = await done(port, takeLastDeed('R-201'));
  expect(asked).toMatchObject({ kind: 'occupied', again: { task: 'deed' } });
});

test('reminders and own constants are written', async () => {
  const port = demoPort();
  expect(await done(port, remindersDeed(TODAY))).toMatchObject({
    kind: 'done',
    text: '1 customer to be reminded, written into Reminders.',
  });
  const offer = calibrateShop((await shopOf(port)).tables).found?.offers[0];
  expect(offer && (await done(port, takeConstantDeed(offer)))).toMatchObject({ kind: 'done', title: 'Taken over' });
});
