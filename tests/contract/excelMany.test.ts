/** Much in one go: no request may grow over 5 MB by it, nor take the page long to put together. */
import { describe, expect, test } from 'vitest';
import { createExcelPort } from '../../src/workbook/excel/port';
import { PortError } from '../../src/workbook/port';
import { fillPlans } from '../../src/workbook/fillPlans';
import { LAST_FILL_KEY } from '../../src/workbook/planPlaces';
import { readShop } from '../../src/workbook/shop';
import { setUp } from '../../src/workbook/setUp';
import { undoLast } from '../../src/workbook/undo';
import { clubTable, stockTable } from '../bench/clubs';
import { lay } from '../simulated/lay';
import { personAt } from '../simulated/person';
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
  expect(contents(simulated.book.snapshot())).toEqual(contents(before));
});

describe('a write whose receipt is long', () => {
  const at = { sheet: 'Sheet1', row: 1, column: 1, rows: 1200, columns: 100 };
  const cells = Array.from({ length: at.rows }, (_, down) =>
    Array.from({ length: at.columns }, (_cell, across) => (down * at.columns + across) / 7),
  );

  async function begun() {
    const simulated = simulate();
    const port = createExcelPort(simulated.host);
    personAt(simulated.book).type('Sheet1', 1, 1, 'theirs');
    await port.remember(LAST_FILL_KEY, 'an earlier receipt');
    const [looked] = await port.read([{ read: 'block', at }]);
    const before = simulated.book.snapshot();
    const from = simulated.requests.length;
    const apply = () =>
      port.apply([{ do: 'write', at, cells }], [looked], { label: 'many cells', receiptKey: LAST_FILL_KEY });
    return { simulated, port, before, apply, sent: () => simulated.requests.slice(from) };
  }

  test('sends that ahead, and all of what it is of in one request after it', async () => {
    const { simulated, port, before, apply, sent } = await begun();
    await apply();
    const [ahead, rest, ...more] = sent();
    expect(more).toEqual([]);
    expect(ahead?.characters).toBeGreaterThan(1_000_000);
    expect(rest?.characters).toBeGreaterThan(JSON.stringify(cells).length);
    const undone = await undoLast(port);
    expect(undone.done && [undone.reverted.left, undone.reverted.restored]).toEqual([[], 120_000]);
    expect(contents(simulated.book.snapshot())).toEqual(contents(before));
  });

  test.each([
    ['the receipt is refused', 0, 'before'],
    ['the receipt fails on its way', 0, 3],
    ['the answer to the receipt is lost', 0, 'after'],
    ['the cells are refused', 1, 'before'],
    ['the cells fail on their way', 1, 20],
    ['the answer to the cells is lost', 1, 'after'],
  ] as const)('leaves everything as it was where %s', async (_what, request, place) => {
    const { simulated, before, apply } = await begun();
    simulated.trouble = (each) => (each === request ? { code: 'GeneralException', at: place } : null);
    await expect(apply()).rejects.toBeInstanceOf(PortError);
    simulated.trouble = null;
    expect(contents(simulated.book.snapshot())).toEqual(contents(before));
    expect(simulated.book.settings.get(LAST_FILL_KEY)).toBe('an earlier receipt');
  });

  test('leaves what a person typed after the receipt was sent, and writes nothing', async () => {
    const { simulated, before, apply } = await begun();
    simulated.trouble = (request) => {
      if (request === 1) personAt(simulated.book).type('Sheet1', 9, 9, 'meanwhile');
      return null;
    };
    await expect(apply()).rejects.toMatchObject({ code: 'notLookedAt', cells: ["'Sheet1'!J10"] });
    personAt(simulated.book).type('Sheet1', 9, 9, '');
    expect(contents(simulated.book.snapshot())).toEqual(contents(before));
    expect(simulated.book.settings.get(LAST_FILL_KEY)).toBe('an earlier receipt');
  });
});

function contents(snapshot: string): unknown {
  return (JSON.parse(snapshot) as { sheets: unknown }).sheets;
}
