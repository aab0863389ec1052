import { describe, expect, test } from 'vitest';
import { asConnected, asked, beginMatch } from '../../../src/pane/view/tools/listsModel';
import { disconnectDeed, takeRowsInDeed } from '../../../src/pane/view/tools/listsDeeds';
import { connectedText } from '../../../src/pane/view/tools/listsWords';
import { connectedNow } from '../../../src/workbook/connect/connectedNow';
import { readConnections } from '../../../src/workbook/connect/connections';
import { readConnected } from '../../../src/workbook/connect/lists';
import { fillPlan } from '../../../src/workbook/fillPlan';
import type { Seen, TableSeen } from '../../../src/workbook/port';
import { STOCK } from '../../../src/workbook/schema';
import { readShop } from '../../../src/workbook/shop';
import { undoLast } from '../../../src/workbook/undo';
import { seenOf } from '../../../src/pane/state/lookAt';
import type { MemoryPort } from '../memoryPort';
import { connectedWorkshop, PLAIN, plainWorkshop } from './inventory';

const NEW: readonly Seen[] = ['YEW-58', 'Grip YEW-58', 14.732, 1.7, 23.2, 266, 3, 'left wall'];
/** Row of the sheet, from 0, right below the list's last grip: the sum stands there. */
const END = 6;

/** The list of plain cells is connected, its sum moved down as if a row had been put in above it, and this typed there. */
async function typedBelow(...rows: readonly (readonly Seen[])[]) {
  const { bare, port } = await connectedWorkshop(plainWorkshop, PLAIN);
  bare.typeRows('Lager', END, 1, [
    ...rows.map((row) => Array.from({ length: 8 }, (_, at) => row[at] ?? null)),
    ['Total', null, null, null, null, null, 46, null],
  ]);
  return { bare, port };
}

async function connected(bare: MemoryPort) {
  const headings = bare.tableSeen('Headings') as TableSeen;
  const read = readConnections([headings.headers, ...headings.rows]);
  const [now] = await connectedNow(bare, read.ok ? read.value : [], []);
  if (!now?.at) throw new Error('nothing is connected');
  return { ...now, at: now.at };
}

describe('rows typed right below a connected list of plain cells', () => {
  test('are told by the plan and by the tab, the sum below them not among them', async () => {
    const { bare, port } = await typedBelow(NEW, ['ZIR-58', ...NEW.slice(1)]);
    const shop = await readShop(port);
    expect(seenOf(shop).goingOn).toEqual([['Stock', 2]]);
    const { goesOn, broken } = await connected(bare);
    expect(connectedText(STOCK, 7, broken, goesOn)).toBe(
      '7 columns connected. 2 rows right below this list are not read: what stands for Stock ends above them.',
    );
  });

  test('take no further round trip to be seen, and seeing them writes nothing', async () => {
    const { bare, port } = await typedBelow(NEW);
    await readShop(port);
    const before = JSON.stringify(bare.everything());
    bare.reads = 0;
    await readShop(port);
    expect(bare.reads).toBe(2);
    expect(JSON.stringify(bare.everything())).toBe(before);
  });

  test.each<[string, readonly Seen[]]>([
    ['nothing', []],
    ['a blank row, then a row', [null]],
    ['a note', ['checked', null, null]],
    ['a sum without a word', [null, null, null, 12.5, null, null, 46]],
  ])('%s is none', async (_, cells) => {
    const { port } = await typedBelow(...(cells.length === 0 ? [] : [cells, NEW]));
    expect(seenOf(await readShop(port)).goingOn).toEqual([]);
  });

  test('are proposed by Change', async () => {
    const { bare } = await typedBelow(NEW);
    const { at, connection } = await connected(bare);
    const again = await readConnected(bare, at, connection);
    const match = again && beginMatch(again.read, 'Stock', again.taken);
    expect(match && asked(asConnected(match, connection)).within).toMatchObject({ row: 2, rows: at.at.rows + 1 });
  });

  test('are taken in by one button; Undo takes nothing out of the list that stands in it', async () => {
    const { bare, port } = await typedBelow(NEW);
    const { at, connection } = await connected(bare);
    const before = seenOf(await readShop(port)).grips.length;
    const end = await takeRowsInDeed(at, connection).run(port, await readShop(port), null, {
      say: () => undefined,
      signal: new AbortController().signal,
    });
    expect(end.end).toMatchObject({ done: true });
    const seen = seenOf(await readShop(port));
    expect(seen.grips.length).toBe(before + 1);
    expect(seen.grips.at(-1)?.item).toBe('YEW-58');
    expect(seen.goingOn).toEqual([]);
    expect(bare.shows('Lager', END, 1)).toBe('YEW-58');
    await undoLast(port);
    expect(bare.shows('Lager', END, 1)).toBe('YEW-58');
    expect(seenOf(await readShop(port)).grips.length).toBe(before + 1);
  });
});

test('the end of a connection names the live plans that read the list', async () => {
  const { port } = await connectedWorkshop(plainWorkshop, PLAIN);
  const going = { say: () => undefined, signal: new AbortController().signal };
  const shop = await readShop(port);
  await fillPlan(port, shop, { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'live' });
  const end = await disconnectDeed('Stock', () => undefined).run(port, await readShop(port), null, going);
  expect(end).toMatchObject({ end: { done: true }, partly: true });
  expect(end.list).toEqual([
    'The plan of job 1042 (Plan 1042) reads that list and shows an error now. Connect the list again, or fill the plan again once the table Stock holds what it needs.',
  ]);
});
