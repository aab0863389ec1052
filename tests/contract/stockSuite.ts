import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Seen, TableSeen, WorkbookPort } from '../../src/workbook/port';
import { fillOrder } from '../../src/workbook/fillOrder';
import { fillPick } from '../../src/workbook/fillPick';
import { readShop } from '../../src/workbook/shop';
import { dayWords } from '../../src/words/intake';
import { setUp } from '../../src/workbook/setUp';
import { moveStock } from '../../src/workbook/moveStock';
import { cancelOrder, placeOrder, takeInOrder } from '../../src/workbook/orderJobs';
import { releaseJobs, reserveJobs, useStock } from '../../src/workbook/stockJobs';
import { undoLast } from '../../src/workbook/undo';
import { CLUB_ROWS, JOB_ROWS, STOCK_ROWS } from '../workbook/workshop';
import { fillTable, type JobsBench } from './jobsSuite';
import type { Person } from './structureSuite';

interface StockBench extends Pick<JobsBench, 'port' | 'dispose' | 'lengthen'> {
  readonly person: Pick<Person, 'type' | 'typeFormula'>;
}

const act = { today: 46000 };

/** Reserving, using and counting, through a port. `calculates` where the host computes formulas. */
export function stockSuite(host: string, makeBench: () => StockBench | Promise<StockBench>, calculates: boolean): void {
  describe(`the shelves: ${host}`, () => {
    let bench: StockBench;
    let port: WorkbookPort;
    beforeEach(async () => {
      bench = await makeBench();
      port = bench.port;
      await setUp(port);
      for (const [name, rows] of Object.entries({ Stock: STOCK_ROWS, Jobs: JOB_ROWS, Clubs: CLUB_ROWS })) {
        bench.lengthen?.(name, rows.length);
        await fillTable(port, name, rows);
      }
    });
    afterEach(() => bench.dispose?.());

    async function table(name: string): Promise<TableSeen> {
      const [seen] = await port.read([{ read: 'table', table: name }]);
      if (!seen) throw new Error(`no table ${name}`);
      return seen;
    }

    async function ledger(): Promise<string[]> {
      const { rows } = await table('Movements');
      return rows.filter((row) => row.some((cell) => cell !== null)).map((row) => row.slice(1, 7).join('|'));
    }

    async function onHand(row = 1): Promise<Seen> {
      const { headers, rows } = await table('Stock');
      return rows[row - 1]?.[headers.indexOf('On hand')] ?? null;
    }

    it('reserves, uses and takes back', async () => {
      expect(await reserveJobs(port, ['1042'], act)).toMatchObject({ done: true, jobs: ['1042'], lacks: [] });
      expect((await ledger()).slice(0, 3)).toEqual([
        'Reserved|1042|Driver|FERN-M|1|pc',
        'Reserved|1042|7 iron|FERN-M|1|pc',
        'Reserved|1042|Pitching wedge|FERN-M|1|pc',
      ]);
      const reserved = await ledger();
      expect(await reserveJobs(port, ['1042'], act)).toMatchObject({ done: true, movements: [] });
      expect(await useStock(port, '1042', act)).toMatchObject({ done: true });
      expect(await onHand()).toBe(17);
      expect(await useStock(port, '1042', act)).toMatchObject({ done: true, movements: [] });
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      expect(await onHand()).toBe(20);
      expect(await ledger()).toEqual(reserved);
      expect(await releaseJobs(port, ['1042'], act)).toMatchObject({ done: true, jobs: ['1042'] });
      expect((await ledger()).length).toBe(2 * reserved.length);
    });

    it('takes back what a job used as a whole, or nothing of it', async () => {
      await useStock(port, '1042', act);
      const used = await ledger();
      const { at, headers } = await table('Stock');
      const column = at.column + headers.indexOf('On hand');
      await bench.person.type('Stock', at.row + 1, column, 16);
      expect(await undoLast(port)).toMatchObject({ done: false, reason: 'changedSince', cells: [expect.any(String)] });
      expect(await ledger()).toEqual(used);
      expect(await onHand()).toBe(16);
      await bench.person.type('Stock', at.row + 1, column, 17);
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [], notFound: [] } });
      expect(await ledger()).toEqual([]);
      expect(await onHand()).toBe(20);
    });

    it('puts on order, takes in a part, cancels the rest, each once', async () => {
      await moveStock(port, { shelf: 'grip', item: 'FERN-M', kind: 'counted', quantity: '2', note: '' }, act);
      const asked = { supplier: '', lines: [{ shelf: 'grip', item: 'FERN-M', quantity: 2 }] } as const;
      expect(await placeOrder(port, asked, act)).toMatchObject({ done: true, order: '1' });
      expect(await placeOrder(port, asked, act)).toMatchObject({ done: true, order: null, movements: [] });
      const part = { shelf: 'grip', item: 'FERN-M', kind: 'arrived', quantity: '1', note: '' } as const;
      expect(await moveStock(port, part, act)).toMatchObject({ onHand: 3, shares: [{ order: '1', outstanding: 1 }] });
      expect(await takeInOrder(port, '1', act)).toMatchObject({ done: true, movements: [{ quantity: 1 }] });
      expect(await onHand()).toBe(4);
      expect(await undoLast(port)).toMatchObject({ done: true });
      expect(await cancelOrder(port, '1', act)).toMatchObject({ done: true, movements: [{ quantity: 1 }] });
      expect(await cancelOrder(port, '1', act)).toMatchObject({ done: true, movements: [] });
      expect((await ledger()).slice(1)).toEqual([
        'Ordered|||FERN-M|2|pc',
        'Arrived|||FERN-M|1|pc',
        'Cancelled|||FERN-M|1|pc',
      ]);
      expect(await onHand()).toBe(3);
    });

    it('counts, and asks before a formula of the shop’s own is written over', async () => {
      const { at, headers } = await table('Stock');
      const count = { shelf: 'grip', item: 'FERN-M', kind: 'counted', quantity: '18', note: '' } as const;
      expect(await moveStock(port, count, act)).toMatchObject({ done: true, onHand: 18 });
      expect(await ledger()).toEqual(['Counted|||FERN-M|-2|pc']);
      if (!calculates) return;
      await bench.person.typeFormula('Stock', at.row + 1, at.column + headers.indexOf('On hand'), '=19+1');
      expect(await onHand()).toBe(20);
      const end = await moveStock(port, { ...count, kind: 'arrived', quantity: '4' }, act);
      if (end.done || end.reason !== 'occupied') throw new Error('was not asked');
      expect(await ledger()).toHaveLength(1);
      expect(
        await moveStock(port, { ...count, kind: 'arrived', quantity: '4' }, { ...act, agreed: end.inTheWay }),
      ).toMatchObject({
        done: true,
        onHand: 24,
      });
      expect(await onHand()).toBe(24);
    });

    it('fills the order and the pick list, shorter ones in place, and takes them back', async () => {
      const cells = async (sheet: string): Promise<string[]> => {
        const at = { sheet, row: 0, column: 0, rows: 16, columns: 9 };
        const [{ values }] = await port.read([{ read: 'block', at }]);
        return values.map((row) => row.map((cell) => String(cell ?? '')).join('|'));
      };
      await moveStock(port, { shelf: 'grip', item: 'FERN-M', kind: 'counted', quantity: '2', note: '' }, act);
      expect(await fillPick(port, await readShop(port), {})).toMatchObject({ done: true, sheet: 'Pick list' });
      const all = await cells('Pick list');
      expect(all).toContain('FERN-M||2 pieces|4 pieces||1042: 3; 1043: 1|||');
      expect(await fillPick(port, await readShop(port), { jobs: ['1043'] })).toMatchObject({ done: true });
      expect(await cells('Pick list')).toContain('FERN-M||2 pieces|1 piece||1043: 1|||');
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      expect(await cells('Pick list')).toEqual(all);
      expect(await fillOrder(port, await readShop(port))).toMatchObject({ done: true, sheet: 'Order', lines: 1 });
      expect(await cells('Order')).toContain(
        `FERN-M||2|1 piece|2 pieces|0 pieces||1042 lacks 1 from ${dayWords(46000)}; 1043 lacks 1|`,
      );
      expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
      const [sheets] = await port.read([{ read: 'sheets' }]);
      expect(sheets.map(({ name }) => name)).not.toContain('Order');
    });

    it('a full ledger grows; where something stands below it, nothing is written', async () => {
      const full = Array.from({ length: (await table('Movements')).rows.length }, () => ({
        Date: 45000,
        Movement: 'Arrived',
        Item: 'OAK-58',
        Quantity: 1,
        Unit: 'pc',
      }));
      await fillTable(port, 'Movements', full);
      const { at } = await table('Movements');
      await bench.person.type('Movements', at.row + at.rows + 2, at.column, 'mine');
      expect(await reserveJobs(port, ['1042'], act)).toMatchObject({
        done: false,
        reason: 'port',
        error: { code: 'belowTable', cells: [`Movements!A${at.row + at.rows + 3}`] },
      });
      expect(await ledger()).toHaveLength(full.length);
      await bench.person.type('Movements', at.row + at.rows + 2, at.column, null);
      expect(await reserveJobs(port, ['1042'], act)).toMatchObject({ done: true });
      expect((await ledger()).slice(full.length, full.length + 1)).toEqual(['Reserved|1042|Driver|FERN-M|1|pc']);
    });
  });
}
