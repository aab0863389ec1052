import { describe, expect, test } from 'vitest';
import { drained } from '../../src/core/index';
import type { Deed } from '../../src/pane/state/deed';
import {
  cancelDeed,
  moveDeed,
  orderDeed,
  pickDeed,
  placeDeed,
  releaseDeed,
  reserveDeed,
  takeInDeed,
  thingDeed,
  useDeed,
} from '../../src/pane/view/tools/stockDeeds';
import { countables, jobOf, stockSeenSteps } from '../../src/pane/view/tools/stockSeen';
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

async function seen(port: MemoryPort) {
  const found = drained(stockSeenSteps(await readShop(port)));
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
    const shown = await seen(port);
    const { rows, lacks, low } = shown;
    expect(lacks).toEqual([`FERN-M: 1042 lacks 1 from ${dayWords(46000)}`, 'FERN-M: 1043 lacks 1']);
    expect(rows.slice(0, 2).map(({ cells }) => cells)).toEqual([
      ['FERN-M', '4', '2', '2', '−2', '–'],
      ['OAK-58', '0', '3', '3', '3', '–'],
    ]);
    expect(rows.map(({ cells }) => cells[0])).not.toContain('MOSS-S');
    expect(low).toBe(1);
    expect(jobOf(shown, '1042')).toEqual({ needs: true, holds: false });
    expect(jobOf(shown, null)).toEqual({ needs: false, holds: false });
  });

  test('reserves, releases and takes, each said', async () => {
    const port = await workshop();
    expect(await does(port, reserveDeed(['1042']))).toMatchObject({ kind: 'done', title: 'Reserved' });
    expect(await does(port, reserveDeed(['1042']))).toMatchObject({ kind: 'done', title: 'Nothing to reserve' });
    expect(jobOf(await seen(port), '1042')).toEqual({ needs: true, holds: true });
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
      'Larch Supply||||||||',
      `FERN-M||1|6 pieces|6 pieces|0 pieces||1042 lacks 1 from ${dayWords(46000)}; 1043 lacks 1|6.6`,
      'Together Larch Supply||||||||6.6',
      '||||||||',
    ]);
    port.type('Order', 6, 2, 'mine');
    expect(await does(port, orderDeed())).toMatchObject({ kind: 'occupied' });
  });

  test('fills the pick list of all jobs, and of one', async () => {
    const port = await workshop();
    expect(await does(port, pickDeed(null))).toMatchObject({ kind: 'done', title: 'Pick list filled' });
    const rows = page(port, 'Pick list', PICK_COLUMNS.length);
    expect(rows[2]).toBe(`For 1042 (${dayWords(46000)}), 1043|||||`);
    expect(rows).toContain('FERN-M||20 pieces|4 pieces||1042: 3; 1043: 1');
    expect(rows).toContain('Two-way strips|||4 strips||');
    // 15 ml for each grip (common practice, no source)
    expect(rows).toContain('Solvent|||60 ml||1042: 45 ml; 1043: 15 ml');
    await does(port, pickDeed(['1043']));
    const one = page(port, 'Pick list', PICK_COLUMNS.length);
    expect(one).toContain('FERN-M||20 pieces|1 piece||1043: 1');
    expect(one.join()).not.toContain('1042');
  });

  test('puts on order what is to be ordered, once; it is waited for, and is not ordered again', async () => {
    const port = await workshop();
    type(port, 'Stock', 1, 'On hand', 2);
    type(port, 'Stock', 1, 'Pack', 6);
    type(port, 'Stock', 1, 'Supplier', 'Larch Supply');
    const [shown] = (await seen(port)).orders;
    if (!shown) throw new Error('nothing to order');
    expect(await does(port, placeDeed(shown))).toMatchObject({
      kind: 'done',
      title: 'On order',
      text: 'Order 1 with Larch Supply: 6 pieces.',
    });
    expect(await does(port, placeDeed(shown))).toMatchObject({ kind: 'done', title: 'Nothing to order' });
    const after = await seen(port);
    expect(after.orders).toEqual([]);
    expect(after.lacks).toEqual([]);
    expect(after.waits).toEqual([
      `FERN-M: 1042 lacks 1 from ${dayWords(46000)}, on order`,
      'FERN-M: 1043 lacks 1, on order',
    ]);
    expect(after.rows[0]?.cells).toEqual(['FERN-M', '4', '2', '2', '−2', '6']);
    expect(after.low).toBe(0);
    expect(await does(port, orderDeed())).toMatchObject({ kind: 'done', text: expect.stringMatching(/^Nothing more/) });
    expect(page(port, 'Order', ORDER_COLUMNS.length).slice(5, 7)).toEqual([
      `On order: Order 1, Larch Supply, ${dayWords(dayOf(new Date()))}||||||||`,
      'FERN-M||||6 pieces||6 pieces||',
    ]);
  });

  test('takes in part of an order, then the rest, or gives the rest up, each once', async () => {
    const port = await workshop();
    const asked = { shelf: 'grip', item: 'FERN-M', note: '' } as const;
    const nothing = () => undefined;
    await does(port, thingDeed({ ...asked, kind: 'ordered', quantity: '12' }, nothing));
    expect(await does(port, moveDeed({ ...asked, kind: 'arrived', quantity: '5' }, nothing))).toMatchObject({
      text: 'FERN-M: 5 pieces arrived, 25 pieces on hand. Order 1: 5, 7 still to come.',
    });
    expect(await does(port, thingDeed({ ...asked, kind: 'cancelled', quantity: '3' }, nothing))).toMatchObject({
      text: 'FERN-M: 3 pieces of order 1 cancelled.',
    });
    expect(await does(port, takeInDeed('1'))).toMatchObject({ text: 'Order 1: 4 pieces arrived.' });
    expect(await does(port, takeInDeed('1'))).toMatchObject({ title: 'Nothing to come' });
    expect(await does(port, cancelDeed('1'))).toMatchObject({ title: 'Nothing to come' });
    expect((await seen(port)).placed).toEqual([]);
    await does(port, thingDeed({ ...asked, kind: 'ordered', quantity: '2' }, nothing));
    expect(await does(port, cancelDeed('2'))).toMatchObject({ text: 'Order 2: 2 pieces cancelled.' });
  });
});
