import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fillOptions } from '../../src/workbook/fillOptions';
import { fillPlan } from '../../src/workbook/fillPlan';
import { issueQuote, voidQuote, type IssueRequest } from '../../src/workbook/issueQuote';
import type { BlockSeen, Cell, Seen, TableSeen, WorkbookPort } from '../../src/workbook/port';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import { sayIssued } from '../../src/words/quoteOutcomes';
import { RATE_ROWS, STOCK_PRICES, WAY_PRICES } from '../workbook/pricedWorkshop';
import { CLUB_ROWS, JOB_ROWS, STOCK_ROWS } from '../workbook/workshop';
import type { Bench } from './structureSuite';

const REQUEST: IssueRequest = { what: { job: '1042' }, terms: { issued: 46_000 }, shown: null };

async function tableOf(port: WorkbookPort, name: string): Promise<TableSeen> {
  const [seen] = await port.read([{ read: 'table', table: name }]);
  if (!seen) throw new Error(`there is no table ${name}`);
  return seen;
}

async function look(port: WorkbookPort, sheet: string): Promise<BlockSeen> {
  const [seen] = await port.read([{ read: 'block', at: { sheet, row: 0, column: 0, rows: 30, columns: 5 } }]);
  return seen;
}

/** Types rows into the body of a table, made longer where they do not fit. */
async function fill(
  port: WorkbookPort,
  name: string,
  rows: readonly Readonly<Record<string, unknown>>[],
): Promise<void> {
  const table = await tableOf(port, name);
  const more = rows.length - table.rows.length;
  const [below] = await port.read([
    { read: 'block', at: { ...table.at, row: table.at.row + table.at.rows, rows: Math.max(1, more) } },
  ]);
  const cells = rows.map((row) => table.headers.map((header) => row[header] as Cell | undefined));
  const at = { ...table.at, row: table.at.row + 1, rows: rows.length };
  await port.apply(
    [...(more > 0 ? [{ do: 'lengthen', table: name, rows: more } as const] : []), { do: 'write', at, cells }],
    [table, below],
    { label: 'rows' },
  );
}

async function prepare(port: WorkbookPort): Promise<void> {
  await setUp(port);
  await fill(
    port,
    'Stock',
    STOCK_ROWS.map((row, at) => ({ ...row, ...STOCK_PRICES[at] })),
  );
  await fill(port, 'Jobs', JOB_ROWS);
  await fill(port, 'Clubs', CLUB_ROWS);
  await fill(port, 'Rates', RATE_ROWS);
  await fill(port, 'Weights', WAY_PRICES);
  await fill(port, 'Taxes', [{ Tax: 'Sales', 'Percent (%)': 20 }]);
  const settings = (await tableOf(port, 'Settings')).rows.map(([name]) => name);
  await fill(
    port,
    'Settings',
    settings.map((name) => (name === 'Currency' ? { Value: 'EUR' } : {})),
  );
}

/** What issuing does to a workbook, whoever holds it. */
export function quoteSuite(name: string, makeBench: () => Bench | Promise<Bench>): void {
  describe(`${name}: quotes`, () => {
    let bench: Bench;
    let port: WorkbookPort;
    beforeEach(async () => {
      bench = await makeBench();
      port = bench.port;
      await prepare(port);
    }, 60_000);
    afterEach(() => bench.dispose?.());

    const register = async (): Promise<readonly (readonly Seen[])[]> => (await tableOf(port, 'Quotes')).rows;
    const sheets = async (): Promise<string[]> => (await port.read([{ read: 'sheets' }]))[0].map((each) => each.name);

    it('are issued with a sheet and a row, and revised on another sheet', async () => {
      // By hand: 3 × (6.50 + 3.50 + 1.00 + 2.50) = 40.50, and a fifth of it.
      expect(await issueQuote(port, REQUEST)).toMatchObject({ done: true, number: 1, total: { minor: 4860n } });
      const before = (await look(port, 'Quote 1')).values;
      expect(before.find(([first]) => first === 'Total, EUR')?.[4]).toBe(48.6);
      await fill(port, 'Rates', [{ Price: 4 }]);
      expect(await issueQuote(port, REQUEST)).toMatchObject({ done: true, number: 1, revision: 2 });
      expect((await look(port, 'Quote 1')).values).toEqual(before);
      expect((await register()).slice(0, 3).map((row) => [row[0], row[1], row[2], row[8]])).toEqual([
        [1, 1, '1042', 'Issued'],
        [1, 2, '1042', 'Issued'],
        [null, null, null, null],
      ]);
    });

    it('stay when the fill before them is taken back', async () => {
      const shop = await readShop(port);
      await fillPlan(port, shop, { scope: { job: '1042' }, choices: {}, where: 'planSheet', as: 'values' });
      await issueQuote(port, REQUEST);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(await sheets()).not.toContain('Plan 1042');
      expect((await look(port, 'Quote 1')).values.flat()).toContain(48.6);
      expect((await register())[0]?.slice(0, 2)).toEqual([1, 1]);
    });

    it('make a full register longer', async () => {
      const rows = (await register()).length;
      const earlier = Array.from({ length: rows }, (_, at) => ({
        'No.': at + 1,
        Revision: 1,
        Job: `old ${at}`,
        Status: 'Issued',
      }));
      await fill(port, 'Quotes', earlier);
      expect(await issueQuote(port, REQUEST)).toMatchObject({ done: true, number: rows + 1 });
      const after = await register();
      expect(after.length).toBeGreaterThan(rows);
      expect(after[rows]?.slice(0, 3)).toEqual([rows + 1, 1, '1042']);
      expect(after.slice(0, rows).map(([number]) => number)).toEqual(earlier.map((each) => each['No.']));
    });

    it('are refused where something stands below a full register, and nothing is half written', async () => {
      const rows = (await register()).length;
      await fill(
        port,
        'Quotes',
        Array.from({ length: rows }, (_, at) => ({ 'No.': at + 1, Revision: 1, Job: 'x', Status: 'Issued' })),
      );
      await bench.person.type('Quotes', rows + 4, 0, 'my sum');
      const end = await issueQuote(port, REQUEST);
      expect(end).toMatchObject({ done: false, reason: 'port', error: { code: 'belowTable' } });
      expect(sayIssued(end)).toContain('Quotes');
      expect(await sheets()).not.toContain(`Quote ${rows + 1}`);
      expect(await register()).toHaveLength(rows);
    });

    it('are refused where the register is protected, without a sheet', async () => {
      await bench.person.protect('Quotes');
      expect(await issueQuote(port, REQUEST)).toMatchObject({ done: false, error: { code: 'protected' } });
      expect(await sheets()).not.toContain('Quote 1');
    });

    it('are void by their status alone', async () => {
      await issueQuote(port, REQUEST);
      const [before] = await register();
      expect(await voidQuote(port, { number: 1, revision: 1 })).toMatchObject({ done: true });
      expect((await register())[0]).toEqual(before?.map((cell) => (cell === 'Issued' ? 'Void' : cell)));
    });

    it('stand as options beside each other, rewritten in place, and can be taken back', async () => {
      const options = [
        { name: 'As it is', choices: {} },
        { name: 'With tape', choices: { layers: 3 } },
        { name: 'Other grip', choices: { newItem: 'MOSS-S' } },
      ];
      const request = { job: '1042', terms: REQUEST.terms, options };
      const end = await fillOptions(port, await readShop(port), request);
      expect(end).toMatchObject({ done: true, sheet: 'Options 1042', options: 3 });
      const total = (await look(port, 'Options 1042')).values.find(([first]) => first === 'Total, EUR');
      // By hand: two layers more at 0.40 on three clubs and a fifth of that is 2.88; MOSS-S is
      // 0.50 dearer, but as heavy as the old grip: 1.80 more, and 9.00 less for readings that need not be put right.
      expect(total?.slice(1, 4)).toEqual([48.6, 51.48, 41.4]);
      expect(await fillOptions(port, await readShop(port), { ...request, options: options.slice(0, 2) })).toMatchObject(
        {
          done: true,
          sheet: 'Options 1042',
        },
      );
      const again = (await look(port, 'Options 1042')).values;
      expect(again.find(([first]) => first === 'Total, EUR')?.slice(1, 4)).toEqual([48.6, 51.48, null]);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
    });
  });
}
