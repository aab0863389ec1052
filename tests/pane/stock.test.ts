import { describe, expect, test } from 'vitest';
import type { Deed } from '../../src/pane/state/deed';
import { moveDeed, orderDeed, pickDeed, releaseDeed, reserveDeed, useDeed } from '../../src/pane/view/tools/stockDeeds';
import { countables, stockSeen } from '../../src/pane/view/tools/stockSeen';
import { workOn } from '../../src/pane/workOn';
import { readShop } from '../../src/workbook/shop';
import { ORDER_COLUMNS } from '../../src/workbook/fillOrder';
import { PICK_COLUMNS } from '../../src/workbook/fillPick';
import { dayWords } from '../../src/words/intake';
import { dayOf } from '../../src/workbook/days';
import type { Seen } from '../../src/workbook/port';
import type { MemoryPort } from '../workbook/memoryPort';
import { workshop } from '../workbook/workshop';

const GOING = { say: () => undefined, signal: new AbortController().signal };

function type(port: MemoryPort, table: string, row: number, header: string, value: Seen): void {
  port.type(table, row, port.tableSeen(table)?.headers.indexOf(header) ?? -1, value);
}

async function does(port: MemoryPort, deed: Deed) {
  const work = workOn(port);
  const { shop } = await work.read();
  if (!shop) throw new Error('not read');
  return work.deed(shop, deed, null, GOING);
}

async function seen(port: MemoryPort, job: string | null = '1042') {
  const found = stockSeen(await readShop(port), job);
  if (!found.ok) throw new Error(found.issue.code);
  return found.value;
}

/** Rows of a page of ours, each as one text. */
function page(port: MemoryPort, sheet: string, columns: number): string[] {
  const { values } = port.blockSeen({ sheet, row: 0, column: 0, rows: 30, columns });
  return values.map((row) => row.map((cell) => String(cell ?? '')).join('|'));
}

describe('the shelves in the pane', () => {
  test('what is short stands first, with job and day', async () => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 2);
    type(port, 'Stock', 3, 'Reorder at', 5);
    const { rows, lacks, low, job } = await seen(port);
    expect(lacks).toEqual([`FERN-M: 1042 lacks 1 from ${dayWords(46000)}`, 'FERN-M: 1043 lacks 1']);
    expect(rows.slice(0, 2).map(({ cells }) => cells)).toEqual([
      ['FERN-M', '4', '2', '2', '−2'],
      ['OAK-58', '0', '3', '3', '3'],
    ]);
    expect(rows.map(({ cells }) => cells[0])).not.toContain('MOSS-S');
    expect(low).toBe(1);
    expect(job).toEqual({ needs: true, holds: false });
  });

  test('reserves, releases and takes, each said', async () => {
    const port = await workshop();
    expect(await does(port, reserveDeed(['1042']))).toMatchObject({ kind: 'done', title: 'Reserved' });
    expect(await does(port, reserveDeed(['1042']))).toMatchObject({ kind: 'done', title: 'Nothing to reserve' });
    expect((await seen(port)).job).toEqual({ needs: true, holds: true });
    expect(port.tableSeen('Movements')?.rows[0]?.[0]).toBe(dayOf(new Date()));
    expect(await does(port, releaseDeed(['1042']))).toMatchObject({ kind: 'done', title: 'Released' });
    expect(await does(port, useDeed('1042'))).toMatchObject({ kind: 'done', title: 'Taken from stock' });
    expect(await does(port, useDeed('1042'))).toMatchObject({ kind: 'done', title: 'Taken already' });
  });

  test('what jobs lack is listed, worth a second look', async () => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 3);
    expect(await does(port, reserveDeed(null))).toMatchObject({
      kind: 'done',
      partly: true,
      list: ['FERN-M: 1043 lacks 1'],
    });
  });

  test('enters what arrived, and empties its fields only then', async () => {
    const port = await workshop();
    let emptied = 0;
    const asked = { shelf: 'grip', item: 'FERN-M', kind: 'arrived', note: '' } as const;
    const enter = (quantity: string) =>
      does(
        port,
        moveDeed({ ...asked, quantity }, () => void (emptied += 1)),
      );
    expect(await enter('many')).toMatchObject({ title: 'It was not entered' });
    expect(emptied).toBe(0);
    expect(await enter('6')).toMatchObject({ kind: 'done', text: 'FERN-M: 6 pieces arrived, 26 pieces on hand.' });
    expect(emptied).toBe(1);
  });

  test('can count everything that has a count, each once', async () => {
    const port = await workshop();
    type(port, 'Stock', 2, 'Item', 'fern-m');
    const things = countables(await readShop(port)).map(({ text }) => text);
    expect(things.slice(0, 3)).toEqual(['FERN-M, 20 pieces', 'OAK-58, 3 pieces', 'Build-up tape, not counted']);
  });

  test('fills the order, which a person’s cells stop, and says when there is nothing to order', async () => {
    const port = await workshop();
    expect(await does(port, orderDeed())).toMatchObject({ title: 'The order was not filled' });
    type(port, 'Stock', 1, 'On hand', 2);
    type(port, 'Stock', 1, 'Pack', 6);
    type(port, 'Stock', 1, 'Cost', 1.1);
    type(port, 'Stock', 1, 'Supplier', 'Larch Supply');
    expect(await does(port, orderDeed())).toMatchObject({ kind: 'done', title: 'Order filled' });
    // 4 needed, 2 there: one pack of 6 for 6.60
    expect(page(port, 'Order', ORDER_COLUMNS.length).slice(4, 9)).toEqual([
      ORDER_COLUMNS.map(({ header }) => header).join('|'),
      'Larch Supply|||||||',
      `FERN-M||1|6 pieces|6 pieces|0 pieces|1042 lacks 1 from ${dayWords(46000)}; 1043 lacks 1|6.6`,
      'Together Larch Supply|||||||6.6',
      '|||||||',
    ]);
    port.type('Order', 6, 2, 'mine');
    expect(await does(port, orderDeed())).toMatchObject({ kind: 'occupied' });
  });

  test('fills the pick list of all jobs, and of one', async () => {
    const port = await workshop();
    expect(await does(port, pickDeed(null))).toMatchObject({ kind: 'done', title: 'Pick list filled' });
    const rows = page(port, 'Pick list', PICK_COLUMNS.length);
    expect(rows[2]).toBe(`For 1042 (${dayWords(46000)}), 1043|||||`);
    expect(rows).toContain('FERN-M||4 pieces|1042: 3; 1043: 1|20 pieces|');
    expect(rows).toContain('Two-way strips||4 strips|||');
    await does(port, pickDeed(['1043']));
    const one = page(port, 'Pick list', PICK_COLUMNS.length);
    expect(one).toContain('FERN-M||1 piece|1043: 1|20 pieces|');
    expect(one.join()).not.toContain('1042');
  });
});
