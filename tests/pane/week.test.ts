import { describe, expect, test } from 'vitest';
import type { Deed } from '../../src/pane/state/deed';
import { EMPTY_TOOLS, forAnotherSet } from '../../src/pane/state/tools';
import { batchDeed, weekDeed } from '../../src/pane/view/tools/weekDeeds';
import { jobLine, partHeading, quoteLine, shortLine } from '../../src/pane/view/tools/weekWords';
import { workOn } from '../../src/pane/workOn';
import { readShop } from '../../src/workbook/shop';
import { weekOf } from '../../src/workbook/week';
import type { MemoryPort } from '../workbook/memoryPort';
import { pricedWorkshop } from '../workbook/pricedWorkshop';

const TODAY = 46_000;

async function act(
  port: MemoryPort,
  deed: Deed,
  signal = new AbortController().signal,
  say: (text: string) => void = () => undefined,
) {
  const { shop } = await workOn(port).read();
  if (!shop) throw new Error('not read');
  return workOn(port).deed(shop, deed, null, { say, signal });
}

describe('the work ahead in the pane', () => {
  test('is written into its sheet', async () => {
    const port = await pricedWorkshop();
    expect(await act(port, weekDeed(TODAY))).toMatchObject({
      kind: 'done',
      title: 'Work ahead written',
      text: '2 open jobs listed in Week. Fill it again after a change.',
    });
  });

  test('reads as lines of a narrow list', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Stock', [{ 'On hand': 1 }]);
    const week = weekOf({ ...(await readShop(port)), today: TODAY });
    if (!week.ok) throw new Error(week.issue.code);
    const [part, last] = week.value.parts;
    const job = part?.jobs[0];
    if (!part || !job || !last) throw new Error('no job');
    expect(partHeading(part)).toMatch(/^Week of 2025-12-08 · \d+ min · 48\.60 EUR$/);
    expect(partHeading(last)).toMatch(/^Due on no day · \d+ min/);
    expect(jobLine(job)).toMatch(/^2025-12-09 · 3 clubs · \d+ min · 48\.60 EUR$/);
    expect(jobLine({ ...job, fitted: 2 })).toContain('2 of 3 clubs with a grip');
    expect([quoteLine(job, false), shortLine(job)]).toEqual(['Quote: not issued', 'Short: FERN-M × 2']);
  });

  test('jobs are worked through, what is to be looked at comes first, and every step is told', async () => {
    const port = await pricedWorkshop();
    port.fillTable('Stock', [{ 'On hand': 1 }]);
    const told: string[] = [];
    const asked = { jobs: ['1042', '1043'], quote: true, reserve: true, plan: true, today: TODAY };
    const outcome = await act(port, batchDeed(asked), undefined, (text) => told.push(text));
    expect(outcome).toMatchObject({ kind: 'done', title: 'Worked through, with something to look at', partly: true });
    expect(outcome.kind === 'done' && outcome.list).toContain('1042 lacks 2 of FERN-M.');
    expect(told).toEqual(
      expect.arrayContaining([
        'Quoting job 1 of 2…',
        'Reserving: job 2 of 2 looked at…',
        'Planning job 2 of 2…',
        'Writing the plans of 2 jobs…',
      ]),
    );
  });

  test('stopped before anything was written it says so', async () => {
    const port = await pricedWorkshop();
    const stop = new AbortController();
    stop.abort();
    const before = port.content();
    const asked = { jobs: ['1042'], quote: true, reserve: true, plan: true, today: TODAY };
    expect(await act(port, batchDeed(asked), stop.signal)).toMatchObject({
      title: 'Stopped',
      text: 'Stopped. Nothing was written.',
    });
    expect(port.content()).toEqual(before);
  });

  test('what is ticked stays when another job is looked at', () => {
    const tools = { ...EMPTY_TOOLS, week: { ...EMPTY_TOOLS.week, leftOut: ['1043'], plan: false } };
    expect(forAnotherSet(tools).week).toBe(tools.week);
  });
});
