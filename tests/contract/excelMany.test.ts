/** Many plans in one go: what dresses them is more than their cells, and no request may grow over 5 MB by it. */
import { expect, test } from 'vitest';
import { createExcelPort } from '../../src/workbook/excel/port';
import { fillPlans } from '../../src/workbook/fillPlans';
import { readShop } from '../../src/workbook/shop';
import { setUp } from '../../src/workbook/setUp';
import { undoLast } from '../../src/workbook/undo';
import { clubTable, stockTable } from '../bench/clubs';
import { lay } from '../simulated/lay';
import { simulate } from '../simulated/simulated';

const JOBS = 60;

test('sixty jobs are planned in one go and taken back, each request and each answer under 5 MB', async () => {
  const simulated = simulate();
  const port = createExcelPort(simulated.host);
  await setUp(port);
  lay(simulated, 'Stock', stockTable());
  const [headers = [], ...clubs] = clubTable(13 * JOBS);
  const job = headers.indexOf('Job');
  const named = clubs.map((row, at) => row.map((cell, i) => (i === job ? `J${Math.floor(at / 13)}` : cell)));
  lay(simulated, 'Clubs', [headers, ...named]);
  const before = simulated.book.snapshot();
  const from = simulated.requests.length;
  const jobs = Array.from({ length: JOBS }, (_, at) => `J${at}`);
  const end = await fillPlans(port, await readShop(port), { jobs, label: 'Plans of sixty jobs' });
  expect(end.done && end.filled.length).toBe(JOBS);
  const undone = await undoLast(port);
  expect(undone.done && undone.reverted.left).toEqual([]);
  const sizes = simulated.requests.slice(from).flatMap(({ characters, answered }) => [characters, answered]);
  expect(Math.max(...sizes)).toBeLessThan(5_000_000);
  const cells = (text: string): unknown => (JSON.parse(text) as { sheets: unknown }).sheets;
  expect(cells(simulated.book.snapshot())).toEqual(cells(before));
});
