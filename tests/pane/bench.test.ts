import { describe, expect, test } from 'vitest';
import type { Deed } from '../../src/pane/state/deed';
import { seenOf } from '../../src/pane/state/lookAt';
import { SCREEN_LINES, SCREENS } from '../../src/pane/state/tools';
import {
  closeDeed,
  judgeDeed,
  labelsDeed,
  redoDeed,
  slipDeed,
  startDeed,
  ticketDeed,
} from '../../src/pane/view/tools/benchDeeds';
import { benchSeen } from '../../src/pane/view/tools/benchSeen';
import { workOn } from '../../src/pane/workOn';
import { readShop, type Shop } from '../../src/workbook/shop';
import { workshop } from '../workbook/workshop';

const GOING = { say: () => undefined, signal: new AbortController().signal };
const shopOf = ({ shop }: { readonly shop: unknown }) => shop as Shop;

describe('the bench in the pane', () => {
  test('every screen has a tab, once', () => {
    expect(SCREEN_LINES.flat()).toEqual([...SCREENS]);
  });

  test('shows the ticket of a job, and a check-in once it is begun', async () => {
    const port = await workshop();
    const before = benchSeen(shopOf(seenOf(await readShop(port))), '1042');
    expect([before?.ticket.clubs.length, before?.checkIn]).toEqual([3, null]);
    expect(benchSeen(shopOf(seenOf(await readShop(port))), '77')).toBeNull();
    const work = workOn(port);
    const { shop } = await work.read();
    if (!shop) throw new Error('not read');
    expect(await work.deed(shop, startDeed('1042'), null, GOING)).toMatchObject({ kind: 'done' });
    const { shop: then } = await work.read();
    expect(then && benchSeen(shopOf(then), '1042')?.checkIn?.clubs).toHaveLength(3);
  });

  test('says whether Checkin says what is shown here, and judging twice changes nothing', async () => {
    const port = await workshop();
    const work = workOn(port);
    const look = async () => {
      const { shop } = await work.read();
      if (!shop) throw new Error('not read');
      return { shop, unjudged: benchSeen(shopOf(shop), '1042')?.unjudged };
    };
    await work.deed((await look()).shop, startDeed('1042'), null, GOING);
    const begun = await look();
    expect(begun.unjudged).toBeGreaterThan(0);
    const judged = await work.deed(begun.shop, judgeDeed('1042'), null, GOING);
    expect(judged).toMatchObject({ kind: 'done', title: 'Check-in judged' });
    const after = await look();
    expect(after.unjudged).toBe(0);
    const again = await work.deed(after.shop, judgeDeed('1042'), null, GOING);
    expect(again).toMatchObject({ kind: 'done', title: 'Judged already' });
    expect(again.kind === 'done' && again.text).toContain('Checkin says so already');
    const { headers = [], at } = port.tableSeen('Checkin') ?? {};
    port.type('Checkin', (at?.row ?? 0) + 1, headers.indexOf('Reading'), 'D9');
    expect((await look()).unjudged).toBeGreaterThan(0);
  });

  test('what would write over a person’s cells is asked first, and done with the agreement', async () => {
    const port = await workshop();
    const work = workOn(port);
    const { shop } = await work.read();
    if (!shop) throw new Error('not read');
    const ask: Deed = ticketDeed('1042');
    await work.deed(shop, ask, null, GOING);
    port.type('Ticket 1042', 2, 2, 'mine');
    const { shop: now } = await work.read();
    const asked = now && (await work.deed(now, ask, null, GOING));
    expect(asked).toMatchObject({ kind: 'occupied', again: { task: 'deed' } });
    if (asked?.kind !== 'occupied' || asked.again.task !== 'deed' || !now) throw new Error('not asked');
    expect(await work.deed(now, asked.again.deed, asked.again.agreed, GOING)).toMatchObject({
      kind: 'done',
      title: 'Ticket filled',
    });
  });

  test('a job whose clubs are open is not closed, and they are named', async () => {
    const port = await workshop();
    const work = workOn(port);
    const { shop } = await work.read();
    if (!shop) throw new Error('not read');
    const closed = await work.deed(shop, closeDeed('1042'), null, GOING);
    expect(closed).toMatchObject({ kind: 'failed', title: 'The job stays open' });
    expect('text' in closed && closed.text).toContain('Driver');
  });

  test('labels, slip and a redo of a job that is done, each as it ends', async () => {
    const port = await workshop();
    const work = workOn(port);
    const act = async (deed: Deed) => {
      const { shop } = await work.read();
      if (!shop) throw new Error('not read');
      return work.deed(shop, deed, null, GOING);
    };
    const seen = async () => benchSeen(await readShop(port), '1042');
    expect(await act(labelsDeed('1042'))).toMatchObject({ kind: 'done', title: 'Labels filled' });
    expect(await act(slipDeed('1042'))).toMatchObject({ kind: 'done', title: 'Pick-up slip filled' });
    expect(await act(redoDeed('1042', ['Driver']))).toMatchObject({ kind: 'failed', title: 'No redo was begun' });
    await act(startDeed('1042'));
    const at = (header: string): number => port.tableSeen('Checkin')?.headers.indexOf(header) ?? -1;
    for (const row of [1, 2, 3]) {
      port.type('Checkin', row, at('Decision'), 'Waive');
      port.type('Checkin', row, at('Reason'), 'agreed');
    }
    expect(await seen()).toMatchObject({ isDone: false, round: 1 });
    expect(await act(closeDeed('1042'))).toMatchObject({ kind: 'done', title: 'Job closed' });
    expect(await seen()).toMatchObject({ isDone: true, round: 1 });
    expect(await act(redoDeed('1042', ['Driver']))).toMatchObject({ kind: 'done', title: 'Redo begun' });
    const again = await seen();
    expect(again).toMatchObject({ isDone: false, round: 2, ticket: { isAgain: true } });
    expect(again?.checked.map(({ name, state }) => [name, state])).toEqual([['Driver', 'open']]);
    expect(again?.ticket.clubs.map(({ name }) => name)).toEqual(['Driver']);
  });

  test('judging over a person’s text is asked first, and rows that belong to no job are told', async () => {
    const port = await workshop();
    const work = workOn(port);
    const read = async () => {
      const { shop } = await work.read();
      if (!shop) throw new Error('not read');
      return shop;
    };
    await work.deed(await read(), startDeed('1042'), null, GOING);
    const column = port.tableSeen('Checkin')?.headers.indexOf('Standing') ?? -1;
    port.type('Checkin', 1, column, 'ask Ivo');
    port.type('Checkin', 4, 0, '1099');
    port.type('Checkin', 4, 1, 'Driver');
    const shop = await read();
    expect(benchSeen(shopOf(shop), '1042')?.problems).toEqual([
      expect.objectContaining({ field: 'Checkin row 5, Job', got: '1099' }),
    ]);
    const asked = await work.deed(shop, judgeDeed('1042'), null, GOING);
    if (asked.kind !== 'occupied' || asked.again.task !== 'deed') throw new Error('not asked');
    expect(await work.deed(shop, asked.again.deed, asked.again.agreed, GOING)).toMatchObject({
      kind: 'done',
      title: 'Check-in judged',
    });
    expect(port.shows('Checkin', 1, column)).toBe('Open');
  });
});
