/** A large shop through the port: the real client library of Excel against a workbook in memory, whose own time is taken out. */
import { drained } from '../../src/core/index';
import type { Choices } from '../../src/workbook/choices';
import { connecting } from '../../src/workbook/connecting';
import { connectList } from '../../src/workbook/connect/connectList';
import { createExcelPort } from '../../src/workbook/excel/port';
import { fillPlan } from '../../src/workbook/fillPlan';
import { atEase } from '../../src/workbook/pace';
import { STOCK } from '../../src/workbook/schema';
import type { Block } from '../../src/workbook/port';
import { setUp } from '../../src/workbook/setUp';
import type { Shop } from '../../src/workbook/shop';
import { keepingSteps, undoLast } from '../../src/workbook/undo';
import { shopOf } from '../../src/pane/state/seen';
import type { ShopSeen } from '../../src/pane/state/work';
import { workOn } from '../../src/pane/workOn';
import { lay } from '../simulated/lay';
import { personAt } from '../simulated/person';
import { simulate, type Simulated } from '../simulated/simulated';
import { clubTable, stockTable } from './clubs';
import { list, matchesOf } from './connect';
import { collectGarbage, figures, printTable } from './measure';
import { watched } from './pieces';

const LARGE_STOCK = 40_000;
const LARGE_SET = 5000;
/** What connecting and planning may take of our own time, in core and port together. */
const MOST_SECONDS = 2;
/** How long typing may be kept waiting. */
const MOST_MS = 50;

/** A workbook of a large shop: all its clubs one job. */
async function largeShop(): Promise<Simulated> {
  const simulated = simulate({ answersLater: true });
  await setUp(createExcelPort(simulated.host));
  const [headers = [], ...grips] = stockTable();
  const item = headers.indexOf('Item');
  const stock = Array.from({ length: LARGE_STOCK }, (_, at) => {
    const row = [...(grips[at % grips.length] ?? [])];
    row[item] = at < grips.length ? row[item] : `Item no. ${at}`;
    return row;
  });
  lay(simulated, 'Stock', [headers, ...stock]);
  layClubs(simulated);
  return simulated;
}

function layClubs(simulated: Simulated): void {
  const [headers = [], ...set] = clubTable(LARGE_SET);
  const own = new Map([
    [headers.indexOf('Job'), () => 'big'],
    // Of clubs that are called alike nobody could tell which is which once they are taken back.
    [headers.indexOf('Club'), (at: number) => `Club ${at + 1}`],
  ]);
  const clubs = set.map((row, at) => row.map((cell, i) => own.get(i)?.(at) ?? cell));
  lay(simulated, 'Clubs', [headers, ...clubs]);
}

/** The same, its stock in a list of its own, under its own headings and in its own units. */
async function connectedShop(): Promise<Simulated> {
  const simulated = simulate({ answersLater: true });
  const port = createExcelPort(simulated.host);
  await setUp(port);
  const rows = list();
  const at = { sheet: 'Inventory', row: 0, column: 0, rows: 2, columns: rows[0]?.length ?? 0 };
  const [looked] = await port.read([{ read: 'block', at }]);
  const head = rows.slice(0, 2).map((row) => row.map((cell) => (typeof cell === 'object' ? null : cell)));
  await port.apply(
    [
      { do: 'sheet', name: at.sheet },
      { do: 'write', at, cells: head },
      { do: 'table', name: 'Inventory', at },
    ],
    [looked],
    { label: 'the list' },
  );
  lay(simulated, 'Inventory', rows);
  layClubs(simulated);
  const within = { ...at, rows: rows.length };
  const asked = { schema: STOCK, list: { table: 'Inventory', at: within }, within: null, matches: matchesOf(rows) };
  const end = await connectList(port, asked);
  if (!end.done) throw new Error(`not connected: ${JSON.stringify(end)}`);
  return simulated;
}

interface Measured {
  readonly name: string;
  /** Without the workbook's own. */
  readonly ms: number;
  readonly longestMs: number;
  readonly trips: number;
  readonly longest: number;
  readonly answered: number;
}

const name13 = 'preview of 13 clubs';

async function measured(simulated: Simulated): Promise<Measured[]> {
  const port = connecting(createExcelPort(simulated.host));
  const work = workOn(port);
  const rows: Measured[] = [];
  const measure = async <T>(name: string, act: () => Promise<T> | T): Promise<T> => {
    collectGarbage();
    const trips = simulated.requests.length;
    // Computing, not waiting: a busy machine would count twice else.
    const { answer, ms, longestMs } = await watched(act, () => simulated.hostSpent);
    const asked = simulated.requests.slice(trips);
    const most = (pick: (each: (typeof asked)[number]) => number): number => Math.max(0, ...asked.map(pick));
    const sizes = { longest: most((r) => r.characters), answered: most((r) => r.answered) };
    rows.push({ name, ms, longestMs, trips: asked.length, ...sizes });
    return answer;
  };
  const look = async (): Promise<ShopSeen> => {
    const { shop, failed } = await work.read();
    if (!shop) throw new Error(JSON.stringify(failed));
    return shop;
  };
  const previewSteps = (seen: ShopSeen, clubs: readonly number[], choices: Choices) =>
    work.preview(seen, { by: 'job', job: 'big' }, clubs, choices);
  const preview = (seen: ShopSeen, clubs: readonly number[], choices: Choices) => () =>
    drained(previewSteps(seen, clubs, choices));
  const first = await measure('first look', look);
  const bag = (first.jobs.find(({ job }) => job === 'big')?.rows ?? []).slice(0, 13);
  await measure(name13, preview(first, bag, { layers: 3 }));
  await measure(`${name13}, as one types on`, preview(first, bag, { layers: 4 }));
  const seen = await measure('look after an edit', look);
  const big = seen.jobs.find(({ job }) => job === 'big')?.rows ?? [];
  await measure(`${name13} after that`, preview(seen, bag, { layers: 4 }));
  await measure(`preview of ${LARGE_SET} clubs`, () => atEase(previewSteps(seen, big, { layers: 3 })));
  const request = { scope: { job: 'big' }, choices: { layers: 3 }, where: 'planSheet', as: 'live' } as const;
  const keeping = keepingSteps(port);
  const write = async (shop: Shop): Promise<Block> => {
    const end = await fillPlan(keeping, shop, request);
    if (!end.done || end.clubs !== LARGE_SET) throw new Error(`the large set was not planned: ${JSON.stringify(end)}`);
    return end.block;
  };
  const takeBack = async (changed: number): Promise<void> => {
    const end = await undoLast(keeping);
    const left = end.done ? end.reverted.left.length + end.reverted.notFound.length : NaN;
    if (left !== changed) throw new Error(`${left} cells were left where ${changed} had been changed`);
  };
  await measure(`plan of ${LARGE_SET} clubs written`, () => write(shopOf(seen)));
  await measure('taken back', () => takeBack(0));
  const again = shopOf(await look());
  const { sheet, row, rows: all, column } = await write(again);
  // Every other cell of two columns, so that each is named by itself.
  const changed = Array.from({ length: LARGE_SET }, (_, at) => at);
  for (const at of changed) personAt(simulated.book).type(sheet, row + all - 1 - at, column + (at % 2), 'mine');
  await measure(`taken back, ${LARGE_SET} cells changed since`, () => takeBack(LARGE_SET));
  return rows;
}

function print(what: string, rows: readonly Measured[]): void {
  const total = rows.reduce((sum, { name, ms }) => (/^first|written$/.test(name) ? sum + ms : sum), 0);
  printTable(
    `${what} of ${LARGE_STOCK} rows and ${LARGE_SET} clubs, through the port: first look and plan ${figures(total / 1000)} s (limit ${MOST_SECONDS}),\n` +
      `no piece is to take more than ${MOST_MS} ms, no request or answer more than 5000 kB`,
    ['', 'ms', 'longest piece (ms)', 'round trips', 'longest request (kB)', 'longest answer (kB)'],
    rows.map(({ name, ms, longestMs, trips, longest, answered }) => {
      return [name, figures(ms), figures(longestMs), String(trips), figures(longest / 1000), figures(answered / 1000)];
    }),
  );
}

export async function benchLarge(): Promise<void> {
  print('Stock', await measured(await largeShop()));
  print('A connected list', await measured(await connectedShop()));
}
