/** Client contract, simulated workbook: the pane is closed while a fill that takes several requests is on its way. */
import { expect, it } from 'vitest';
import { createExcelPort } from '../../src/workbook/excel/port';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY, PLANS_KEY } from '../../src/workbook/planPlaces';
import type { WorkbookPort } from '../../src/workbook/port';
import { keepingSteps, lastFill, undoLast } from '../../src/workbook/undo';
import { simulate, type Simulated } from '../simulated/simulated';
import { block, write } from './structureSuite';

const ROWS = 40;
const at = block('Sheet1', 2, 1, ROWS, 2);
const lines = (stem: string): string[][] =>
  Array.from({ length: ROWS }, (_, row) => [`${stem} ${row}`, `${stem} beside ${row}`]);

/** Writes under the same name as ever, into cells in which a person had typed before. */
async function fill(port: WorkbookPort, stem: string): Promise<void> {
  const [seen, page] = await port.read([
    { read: 'block', at },
    { read: 'block', at: block('Page', 0, 0, 1, 1) },
  ]);
  const places = (await port.recall(PLANS_KEY)) ?? '';
  await keepingSteps(port).apply(
    [
      write('Sheet1', 2, 1, lines(stem)),
      { do: 'sheet', name: 'Page' },
      write('Page', 0, 0, [[stem]]),
      { do: 'remember', key: PLANS_KEY, value: `places of ${stem}` },
      { do: 'remember', key: PLANS_BEFORE_KEY, value: places },
    ],
    [seen, page],
    { label: 'Fill', receiptKey: LAST_FILL_KEY },
  );
}

async function begin() {
  const simulated = simulate();
  lines('mine').forEach((line, row) =>
    line.forEach((text, column) => simulated.book.active.put(2 + row, 1 + column, text)),
  );
  const small = createExcelPort({ ...simulated.host, mostBytes: 1000 });
  const cells = () => JSON.stringify((JSON.parse(simulated.book.snapshot()) as { sheets: unknown }).sheets);
  return { simulated, small, cells, before: cells() };
}

/** From a request on nothing comes to the workbook any more. */
async function closedAt(simulated: Simulated, request: number, act: () => Promise<void>): Promise<boolean> {
  simulated.trouble = (each) => (each < request ? null : { code: 'GeneralException', at: 'before' });
  const isDone = await act().then(
    () => true,
    () => false,
  );
  simulated.trouble = null;
  return isDone;
}

it('is offered as what was begun, and what was written of it is taken back', async () => {
  let written = 0;
  for (let request = 2; ; request += 1) {
    const { simulated, small, cells, before } = await begin();
    // Two looks: at the cells, and at what is kept.
    if (await closedAt(simulated, request, () => fill(small, 'ours'))) break;
    const port = createExcelPort(simulated.host);
    const isKept = (await lastFill(port)) !== null;
    if (cells() !== before) written += 1;
    // Nothing is written before it is kept.
    if (!isKept) expect(cells(), `request ${request}`).toBe(before);
    else {
      expect(await undoLast(port), `request ${request}`).toMatchObject({ done: true, begun: true, next: null });
      expect(cells(), `request ${request}`).toBe(before);
      expect(await lastFill(port)).toBeNull();
    }
  }
  expect(written).toBeGreaterThan(2);
});

it('takes nothing back that was done before, or was not done', async () => {
  const { simulated, small, cells, before } = await begin();
  const port = createExcelPort(simulated.host);
  await fill(port, 'first');
  const first = cells();
  for (let request = 4; request < 7; request += 1) {
    expect(await closedAt(simulated, request, () => fill(small, 'second'))).toBe(false);
    expect(await undoLast(port)).toMatchObject({ done: true, begun: true, next: 'Fill' });
    expect(cells()).toBe(first);
    expect(simulated.book.settings.get(PLANS_KEY)).toBe('places of first');
  }
  const undone = await undoLast(port);
  expect(undone).toMatchObject({ done: true, next: null });
  expect(undone).not.toHaveProperty('begun');
  expect(cells()).toBe(before);
});
