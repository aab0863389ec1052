import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  entriesOf,
  happenTo,
  nextOrder,
  onOrderOf,
  orderOf,
  orderRows,
  placedOrders,
  sharesOf,
  pickList,
  releaseFor,
  reserveFor,
  stockState,
  takeFor,
  type Movement,
} from '../../../src/core/index';
import { asked, grip, jobOf, need, worldArb } from './shelves';

const stateOf = (...of: Parameters<typeof asked>) => stockState(asked(...of));
const lacksOf = (...of: Parameters<typeof asked>) => stateOf(...of).items[0]?.lacks;

/** The ledger with what reserving those jobs writes. */
function reserved(...[stocked, jobs, movements = []]: Parameters<typeof asked>): Movement[] {
  const rows = reserveFor(
    asked(stocked, jobs, movements),
    jobs.map(({ job }) => job),
  );
  return [...movements, ...rows];
}

describe('what is free and short', () => {
  const early = jobOf('early', 46001, need('FERN-M', 'Driver'), need('FERN-M', '7 iron'));
  const late = jobOf('late', 46002, need('FERN-M', 'Driver'), need('FERN-M', '7 iron'));
  const someday = jobOf('someday', undefined, need('FERN-M', 'Putter'));

  it('gives the earliest due first, and a job without a day last', () => {
    expect(lacksOf([grip('FERN-M', 3)], [someday, late, early])).toEqual([
      { job: 'late', due: 46002, quantity: 1, onOrder: 0 },
      { job: 'someday', due: undefined, quantity: 1, onOrder: 0 },
    ]);
    expect(lacksOf([grip('FERN-M', 5)], [someday, late, early])).toEqual([]);
  });

  it('keeps what is reserved for its job, also against one that is due earlier', () => {
    const ledger = reserved([grip('FERN-M', 2)], [late]);
    expect(ledger.map(({ kind, job, club, quantity }) => [kind, job, club, quantity])).toEqual([
      ['reserved', 'late', 'Driver', 1],
      ['reserved', 'late', '7 iron', 1],
    ]);
    expect(lacksOf([grip('FERN-M', 3)], [early, late], ledger)).toEqual([
      { job: 'early', due: 46001, quantity: 1, onOrder: 0 },
    ]);
  });

  it('lets all chosen jobs share by due date anew', () => {
    const ledger = reserved([grip('FERN-M', 2)], [late]);
    const again = reserved([grip('FERN-M', 2)], [early, late], ledger);
    expect(again.slice(ledger.length).map(({ kind, job, club }) => [kind, job, club])).toEqual([
      ['reserved', 'early', 'Driver'],
      ['reserved', 'early', '7 iron'],
      ['released', 'late', 'Driver'],
      ['released', 'late', '7 iron'],
    ]);
  });

  it('takes from the job due last where more is reserved than there is', () => {
    const ledger = reserved([grip('FERN-M', 4)], [early, late]);
    const [state] = stateOf([grip('FERN-M', 1)], [early, late], ledger).items;
    expect(state).toMatchObject({ onHand: 1, reserved: 4, free: -3, needed: 4, left: -3 });
    expect(state?.lacks).toEqual([
      { job: 'early', due: 46001, quantity: 1, onOrder: 0 },
      { job: 'late', due: 46002, quantity: 2, onOrder: 0 },
    ]);
  });

  it('names what no table lists and never calls short what is not counted', () => {
    const { items } = stateOf([grip('FERN-M', undefined)], [early, jobOf('J', 46000, need('ELM-X', 'Driver'))]);
    expect(items).toMatchObject([
      { item: 'FERN-M', free: undefined, lacks: [], low: false, needed: 2 },
      { item: 'ELM-X', stocked: undefined, needed: 1, low: false },
    ]);
    expect(orderOf(items)).toEqual([]);
  });

  it('finds reservations of jobs that are gone or done, and of clubs that get another grip now', () => {
    const ledger = reserved([grip('FERN-M', 9), grip('MOSS-S', 9)], [early, late]);
    const replanned = jobOf('late', 46002, need('FERN-M', 'Driver'), need('MOSS-S', '7 iron'));
    const { stranded, items } = stateOf([grip('FERN-M', 9)], [replanned], ledger, ['early']);
    expect(stranded.map(({ job, why, entries }) => [job, why, entries.map(({ club }) => club)])).toEqual([
      ['early', 'done', ['Driver', '7 iron']],
      ['late', 'unneeded', ['7 iron']],
    ]);
    expect(items[0]).toMatchObject({ onHand: 9, reserved: 4, free: 5 });
    const gone = stateOf([grip('FERN-M', 9)], [], ledger).stranded;
    expect(gone.map(({ job, why }) => [job, why])).toEqual([
      ['early', 'gone'],
      ['late', 'gone'],
    ]);
  });
});

describe('using, and what happens otherwise', () => {
  const job = jobOf('J', 46000, need('FERN-M', 'Driver'), need('MOSS-S', '7 iron'));
  const shelves = [grip('FERN-M', 3), grip('MOSS-S', 1)];

  it('takes what the job used, once, and leaves nothing reserved', () => {
    const ledger = reserved(shelves, [job]);
    const taken = takeFor(asked(shelves, [job], ledger), job);
    if (!taken.ok) throw new Error('not taken');
    expect(taken.value.onHand.map(({ onHand }) => onHand)).toEqual([2, 0]);
    const after = [...ledger, ...taken.value.movements];
    expect([...entriesOf(after).values()].map(({ reserved: held, used }) => [held, used])).toEqual([
      [0, 1],
      [0, 1],
    ]);
    expect(takeFor(asked(shelves, [job], after), job)).toEqual({
      ok: true,
      value: { movements: [], onHand: [], renamed: [] },
    });
  });

  it('takes again for a redo, and no reservation of the job counts for it', () => {
    const ledger = reserved(shelves, [job]);
    const redo = takeFor(asked(shelves, [job], ledger), { ...job, round: 2, needs: [need('FERN-M', 'Driver')] });
    if (!redo.ok) throw new Error('not taken');
    expect(redo.value.movements).toMatchObject([{ kind: 'used', round: 2, club: 'Driver', quantity: 1 }]);
    expect([...entriesOf([...ledger, ...redo.value.movements]).values()].map((entry) => entry.reserved)).toEqual([
      1, 1, 0,
    ]);
  });

  it('does not take the piece of a renamed club twice, and takes that of a club which came since', () => {
    const taken = takeFor(asked(shelves, [job]), job);
    if (!taken.ok) throw new Error('not taken');
    const ledger = taken.value.movements;
    const renamed = jobOf('J', 46000, need('FERN-M', '1 wood'), need('MOSS-S', '7 iron'));
    expect(takeFor(asked(shelves, [renamed], ledger), renamed)).toEqual({
      ok: true,
      value: { movements: [], onHand: [], renamed: [{ was: 'Driver', now: '1 wood', shelf: 'grip', item: 'FERN-M' }] },
    });
    expect(stateOf(shelves, [renamed], ledger).items[0]).toMatchObject({ needed: 0 });
    const more = jobOf('J', 46000, ...renamed.needs, need('FERN-M', '8 iron'));
    const again = takeFor(asked(shelves, [more], ledger), more);
    expect(again.ok && again.value.movements.map(({ kind, club, quantity }) => [kind, club, quantity])).toEqual([
      ['used', '8 iron', 1],
    ]);
    // of another grip nothing was taken yet
    const other = jobOf('J', 46000, need('MOSS-S', '1 wood'), need('MOSS-S', '7 iron'));
    const both = takeFor(asked([grip('FERN-M', 3), grip('MOSS-S', 1)], [other], ledger), other);
    expect(both.ok && both.value.movements).toMatchObject([{ club: '1 wood', item: 'MOSS-S' }]);
  });

  it('gives up what was reserved for a grip that the club did not get', () => {
    const ledger: Movement[] = [
      { kind: 'reserved', job: 'J', club: 'Driver', shelf: 'grip', item: 'OAK-58', quantity: 1, round: 1 },
    ];
    const taken = takeFor(asked(shelves, [job], ledger), job);
    expect(taken.ok && taken.value.movements.map(({ kind, item }) => [kind, item])).toEqual([
      ['used', 'FERN-M'],
      ['used', 'MOSS-S'],
      ['released', 'OAK-58'],
    ]);
  });

  it('takes nothing at all where one thing is too few, listed nowhere or twice', () => {
    expect(takeFor(asked([grip('FERN-M', 3), grip('MOSS-S', 0)], [job]), job)).toEqual({
      ok: false,
      cannot: { issues: [], tooFew: [{ item: 'MOSS-S', shelf: 'grip', onHand: 0, wanted: 1 }] },
    });
    expect(takeFor(asked([grip('FERN-M', 3)], [job]), job)).toMatchObject({
      cannot: { issues: [{ code: 'unknownItem', got: 'MOSS-S' }] },
    });
    expect(takeFor(asked([...shelves, grip('fern-m', 8)], [job]), job)).toMatchObject({
      cannot: { issues: [{ code: 'duplicate', got: 'FERN-M' }] },
    });
  });

  it.each([
    [{ kind: 'arrived', quantity: 5 }, 8, 5],
    [{ kind: 'writtenOff', quantity: 2 }, 1, 2],
    [{ kind: 'sentBack', quantity: 2 }, 1, 2],
    [{ kind: 'broughtBack', quantity: 2 }, 5, 2],
    [{ kind: 'counted', quantity: 0 }, 0, -3],
    [{ kind: 'counted', quantity: 7 }, 7, 4],
  ] as const)('%j', (happening, onHand, quantity) => {
    expect(happenTo(grip('FERN-M', 3), happening)).toMatchObject({
      ok: true,
      value: { onHand, movement: { kind: happening.kind, quantity, job: '' } },
    });
  });

  it.each([
    [{ kind: 'arrived', quantity: -1 }, 'outOfRange'],
    [{ kind: 'arrived', quantity: 0 }, 'outOfRange'],
    [{ kind: 'arrived', quantity: 1.5 }, 'notWhole'],
    [{ kind: 'writtenOff', quantity: 4 }, 'outOfRange'],
    [{ kind: 'sentBack', quantity: 4 }, 'outOfRange'],
    [{ kind: 'broughtBack', quantity: 0.5 }, 'notWhole'],
    [{ kind: 'counted', quantity: -1 }, 'outOfRange'],
  ] as const)('refuses %j', (happening, code) => {
    expect(happenTo(grip('FERN-M', 3), happening)).toMatchObject({ ok: false, issue: { code } });
  });

  it('wants a count before anything else', () => {
    expect(happenTo(grip('FERN-M', undefined), { kind: 'arrived', quantity: 3 })).toMatchObject({ ok: false });
    expect(happenTo(grip('FERN-M', undefined), { kind: 'counted', quantity: 3 })).toMatchObject({ ok: true });
    expect(
      happenTo({ ...grip('Build-up tape', 10), shelf: 'tape' }, { kind: 'arrived', quantity: 36.5 }),
    ).toMatchObject({
      value: { onHand: 46.5 },
    });
  });
});

describe('ordering and picking', () => {
  it.each([
    // on hand, reorder at, pack → packs: derived by hand from the rule
    [2, 4, 10, 1],
    [4, 4, 1, 1],
    [5, 4, 1, 0],
    [0, 12, 6, 3],
    [0, undefined, 6, 0],
  ])('%s on hand, reorder at %s, packs of %s: %s packs', (onHand, reorderAt, pack, packs) => {
    const { items } = stateOf([grip('FERN-M', onHand, { reorderAt, pack })], []);
    expect(orderOf(items)[0]?.lines[0]?.packs ?? 0).toBe(packs);
  });

  it('orders what jobs lack and the reorder point besides, by supplier, with its cost', () => {
    const job = jobOf('J', 46000, need('FERN-M', 'Driver', 5), need('MOSS-S', '7 iron', 2));
    const shelves = [
      grip('FERN-M', 1, { reorderAt: 3, pack: 5, packCost: 10.1, supplier: 'Larch Supply' }),
      grip('MOSS-S', 1, { supplier: 'larch supply' }),
      grip('OAK-58', 0, { reorderAt: 0, packCost: 2 }),
    ];
    const orders = orderOf(stateOf(shelves, [job]).items);
    // FERN-M: 4 short, to stand above 3: 8 pieces are 2 packs of 5
    expect(orders).toMatchObject([
      {
        supplier: 'Larch Supply',
        cost: 20.2,
        unpriced: ['MOSS-S'],
        lines: [
          { item: 'FERN-M', packs: 2, quantity: 10, lacks: [{ job: 'J', quantity: 4 }] },
          { item: 'MOSS-S', packs: 1, quantity: 1, cost: undefined },
        ],
      },
      { supplier: '', cost: 2, lines: [{ item: 'OAK-58', packs: 1 }] },
    ]);
  });

  it('makes one list of all jobs, and says what is for which', () => {
    const list = pickList([
      jobOf('late', 46002, need('FERN-M', 'Driver'), need('FERN-M', '7 iron')),
      jobOf('early', 46001, need('fern-m', 'Driver'), need('ELM-X', 'Putter')),
    ]);
    expect(list).toMatchObject({
      jobs: [{ job: 'early' }, { job: 'late' }],
      twoWayStrips: 4,
      lines: [
        { item: 'ELM-X', quantity: 1, jobs: [{ job: 'early', quantity: 1 }] },
        {
          item: 'fern-m',
          quantity: 3,
          jobs: [
            { job: 'early', quantity: 1 },
            { job: 'late', quantity: 2 },
          ],
        },
      ],
    });
  });
});

/** A row of the ledger that belongs to an order. */
function rowOf(kind: Movement['kind'], order: string, quantity: number, item = 'FERN-M'): Movement {
  return { kind, job: '', club: '', shelf: 'grip', item, quantity, round: 1, order };
}

describe('what is on order', () => {
  const ledger = [
    rowOf('ordered', '9', 12),
    rowOf('arrived', '9', 5),
    rowOf('cancelled', '9', 2),
    rowOf('ordered', '10', 6),
    rowOf('ordered', '10', 3, 'MOSS-S'),
    { ...rowOf('arrived', '', 40), order: undefined },
  ];

  it('is what was ordered less what came of it and what was cancelled; what came without an order counts for none', () => {
    const orders = placedOrders(ledger);
    expect(orders.map(({ order, lines }) => [order, lines.map(({ outstanding }) => outstanding)])).toEqual([
      ['9', [5]],
      ['10', [6, 3]],
    ]);
    expect([...onOrderOf(orders).values()]).toEqual([11, 3]);
    expect(nextOrder(orders)).toBe('11');
    expect(nextOrder([{ order: 'A-7' }])).toBe('1');
  });

  it('counts for the order that was placed first, then for the next; what is beyond them for none', () => {
    const orders = placedOrders(ledger);
    const came = (quantity: number, only?: string) =>
      sharesOf({ shelf: 'grip', item: 'fern-m', quantity }, orders, only).map((share) => [
        share.order,
        share.quantity,
        share.outstanding,
      ]);
    expect(came(4)).toEqual([['9', 4, 1]]);
    expect(came(13)).toEqual([
      ['9', 5, 0],
      ['10', 6, 0],
      [undefined, 2, 0],
    ]);
    expect(came(4, '10')).toEqual([['10', 4, 2]]);
  });

  it('is waited for by the job that is due first, and is no reason to order again', () => {
    const early = jobOf('early', 46001, need('FERN-M', 'Driver', 2));
    const late = jobOf('late', 46002, need('FERN-M', 'Driver', 3));
    const onOrder = onOrderOf(placedOrders([rowOf('ordered', '1', 4)]));
    const state = stockState({ ...asked([grip('FERN-M', 0)], [late, early]), onOrder });
    expect(state.items[0]?.lacks).toEqual([
      { job: 'early', due: 46001, quantity: 2, onOrder: 2 },
      { job: 'late', due: 46002, quantity: 3, onOrder: 2 },
    ]);
    expect(orderOf(state.items)[0]?.lines).toMatchObject([{ quantity: 1, onOrder: 4 }]);
  });

  it('once an order is placed nothing is to be ordered, whatever stands on the shelves; the order of the rows does not matter', () => {
    fc.assert(
      fc.property(
        worldArb,
        fc.nat(9),
        fc.integer({ min: 1, max: 7 }),
        ({ stocked, jobs, movements }, reorderAt, pack) => {
          const shelves = stocked.map((each) => ({ ...each, reorderAt, pack }));
          const of = asked(shelves, jobs, movements);
          const rows = orderOf(stockState(of).items).flatMap((order, at) => orderRows(order, String(at + 1)));
          const onOrder = onOrderOf(placedOrders(rows));
          const { items } = stockState({ ...of, onOrder });
          expect(orderOf(items)).toEqual([]);
          expect(items.flatMap(({ lacks }) => lacks).every((lack) => lack.onOrder === lack.quantity)).toBe(
            // what is reserved beyond what there is may be more than is missing
            items.every(
              ({ lacks, onOrder: coming }) => lacks.reduce((sum, { quantity }) => sum + quantity, 0) <= coming,
            ),
          );
          expect(onOrderOf(placedOrders([...rows].reverse()))).toEqual(new Map([...onOrder].reverse()));
        },
      ),
    );
  });
});

describe('whatever stands on the shelves', () => {
  it('what is reserved and what is free is what is on hand, and what is left is that less what is still wanted', () => {
    fc.assert(
      fc.property(worldArb, ({ stocked, jobs, movements }) => {
        for (const { onHand = 0, reserved: held, free = 0, left = 0, lacks, needed } of stateOf(
          stocked,
          jobs,
          movements,
        ).items) {
          expect(free + held).toBe(onHand);
          expect(left).toBeLessThanOrEqual(free);
          const lacking = lacks.reduce((sum, { quantity }) => sum + quantity, 0);
          expect(lacking).toBeLessThanOrEqual(needed);
          // with nothing reserved beyond what there is, exactly what is missing is lacked
          if (free >= 0) expect(lacking).toBe(Math.max(0, -left));
        }
      }),
    );
  });

  it('reserving all jobs gives out no more than there is, all of it before anyone lacks, and asked again changes nothing', () => {
    fc.assert(
      fc.property(worldArb, ({ stocked, jobs, movements }) => {
        const own = movements.filter(({ job }) => job !== 'gone' && jobs.some((each) => each.job === job));
        const after = reserved(stocked, jobs, own);
        expect(reserved(stocked, jobs, after)).toEqual(after);
        const { items, stranded } = stateOf(stocked, jobs, after);
        expect(stranded.filter(({ entries }) => entries.some(({ round }) => round === 1))).toEqual([]);
        for (const { free = 0, lacks } of items.filter((each) => each.stocked)) {
          if (own.every(({ round }) => round === 1)) expect(free).toBeGreaterThanOrEqual(0);
          if (lacks.length > 0) expect(free).toBeLessThanOrEqual(0);
        }
      }),
    );
  });

  it('releasing leaves nothing reserved; the order of the ledger does not matter', () => {
    fc.assert(
      fc.property(worldArb, fc.array(fc.nat(), { minLength: 12, maxLength: 12 }), ({ movements }, keys) => {
        const entries = entriesOf(movements);
        const all = [...movements, ...releaseFor(entries, ['J0', 'J1', 'J2', 'gone'])];
        expect([...entriesOf(all).values()].every(({ reserved: held }) => held === 0)).toBe(true);
        const shuffled = movements.map((each, at) => ({ each, key: keys[at] ?? 0 })).sort((a, b) => a.key - b.key);
        const again = entriesOf(shuffled.map(({ each }) => each));
        expect(new Map([...again].sort())).toEqual(new Map([...entries].sort()));
      }),
    );
  });

  it('what is taken comes off the shelf, all of it or nothing, and once', () => {
    fc.assert(
      fc.property(worldArb, ({ stocked, jobs, movements }) => {
        const [job] = jobs;
        if (!job) return;
        const taken = takeFor(asked(stocked, jobs, movements), job);
        if (!taken.ok) return void expect(taken.cannot.tooFew.length).toBeGreaterThan(0);
        const used = taken.value.movements.filter(({ kind }) => kind === 'used');
        const gone = taken.value.onHand.reduce(
          (sum, { stocked: { onHand = 0 }, onHand: now }) => sum + onHand - now,
          0,
        );
        expect(used.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(gone);
        const again = takeFor(asked(stocked, jobs, [...movements, ...taken.value.movements]), job);
        expect(again).toMatchObject({ ok: true, value: { movements: [], onHand: [] } });
      }),
    );
  });

  it('an order serves every job and leaves more than the reorder point, and a pack less would not', () => {
    fc.assert(
      fc.property(worldArb, fc.nat(9), fc.integer({ min: 1, max: 7 }), ({ stocked, jobs }, reorderAt, pack) => {
        const shelves = stocked.map((each) => ({ ...each, reorderAt, pack }));
        const lines = orderOf(stateOf(shelves, jobs).items).flatMap((order) => order.lines);
        for (const { left, quantity } of lines) {
          expect(left + quantity).toBeGreaterThan(reorderAt);
          expect(left + quantity - pack).toBeLessThanOrEqual(reorderAt);
        }
      }),
    );
  });
});
