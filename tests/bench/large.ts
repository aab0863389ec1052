/** A large shop through the port: the real client library of Excel against a workbook in memory, whose own time is taken out. */
import { previewOf, seenOf } from '../../src/pane/state/lookAt';
import { createExcelPort } from '../../src/workbook/excel/port';
import { fillPlan } from '../../src/workbook/fillPlan';
import type { Matrix } from '../../src/workbook/records';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import { simulate, type Simulated } from '../simulated/simulated';
import { clubTable, stockTable } from './clubs';
import { collectGarbage, figures, printTable } from './measure';

export const LARGE_STOCK = 40_000;
export const LARGE_SET = 5000;
/** What connecting and planning may take of our own time, in core and port together. */
const MOST_SECONDS = 2;

/** Puts a matrix under the headings of a table, past the port, as if it had always stood there. */
export function lay({ book }: Simulated, name: string, matrix: Matrix): void {
  const table = book.tables.find((each) => each.name === name);
  if (!table) throw new Error(`no table ${name}`);
  matrix.slice(1).forEach((row, down) => {
    row.forEach((value, across) => {
      if (value === null || typeof value === 'object') return;
      const at = `${table.at.row + 1 + down},${table.at.column + across}`;
      table.sheet.cells.set(at, { value: value as string | number | boolean });
    });
  });
  Object.assign(table, { at: { ...table.at, rows: Math.max(table.at.rows, matrix.length) } });
}

/** A workbook of a large shop: all its clubs one job. */
export async function largeShop(stockRows = LARGE_STOCK, clubs = LARGE_SET): Promise<Simulated> {
  const simulated = simulate();
  await setUp(createExcelPort(simulated.host));
  const [headers = [], ...grips] = stockTable();
  const item = headers.indexOf('Item');
  const stock = Array.from({ length: stockRows }, (_, at) => {
    const row = [...(grips[at % grips.length] ?? [])];
    row[item] = at < grips.length ? row[item] : `Item no. ${at}`;
    return row;
  });
  lay(simulated, 'Stock', [headers, ...stock]);
  const set = clubTable(clubs);
  const job = set[0]?.indexOf('Job') ?? 0;
  lay(simulated, 'Clubs', [
    set[0] ?? [],
    ...set.slice(1).map((row) => row.map((cell, i) => (i === job ? 'big' : cell))),
  ]);
  return simulated;
}

interface Measured {
  readonly name: string;
  /** Without the workbook's own. */
  readonly ms: number;
  readonly trips: number;
  readonly longest: number;
  readonly answered: number;
}

export async function benchLarge(): Promise<void> {
  const simulated = await largeShop();
  const port = createExcelPort(simulated.host);
  const rows: Measured[] = [];
  const measure = async <T>(name: string, act: () => Promise<T> | T): Promise<T> => {
    collectGarbage();
    const [host, trips, start] = [simulated.hostMs, simulated.requests.length, process.cpuUsage()];
    const answer = await act();
    // Computing, not waiting: a busy machine would count twice else.
    const { user, system } = process.cpuUsage(start);
    const ms = (user + system) / 1000 - (simulated.hostMs - host);
    const asked = simulated.requests.slice(trips);
    const most = (pick: (each: (typeof asked)[number]) => number): number => Math.max(0, ...asked.map(pick));
    rows.push({ name, ms, trips: asked.length, longest: most((r) => r.characters), answered: most((r) => r.answered) });
    return answer;
  };
  const shop = await measure('look at the workbook', () => readShop(port));
  const seen = await measure('what the pane shows of it', () => seenOf(shop));
  const big = seen.jobs.find(({ job }) => job === 'big')?.rows ?? [];
  await measure('preview of 13 clubs', () => previewOf(shop, big.slice(0, 13), { layers: 3 }));
  await measure('preview of 13 clubs, as one types on', () => previewOf(shop, big.slice(0, 13), { layers: 4 }));
  await measure(`preview of ${LARGE_SET} clubs`, () => previewOf(shop, big, { layers: 3 }));
  const request = { scope: { job: 'big' }, choices: { layers: 3 }, where: 'planSheet', as: 'live' } as const;
  const end = await measure(`plan ${LARGE_SET} clubs from ${LARGE_STOCK} rows of stock`, () =>
    fillPlan(port, shop, request),
  );
  if (!end.done || end.clubs !== LARGE_SET) throw new Error('the large set was not planned');
  printTable(
    `A shop of ${LARGE_STOCK} rows of stock and ${LARGE_SET} clubs, through the port; the limit is ${MOST_SECONDS} s for looking and planning`,
    ['', 'ms', 'round trips', 'longest request (kB)', 'longest answer (kB)'],
    rows.map(({ name, ms, trips, longest, answered }) => {
      return [name, figures(ms), String(trips), figures(longest / 1000), figures(answered / 1000)];
    }),
  );
}
