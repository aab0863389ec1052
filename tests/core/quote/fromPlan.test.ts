import { describe, expect, it } from 'vitest';
import {
  linesFromPlan,
  mergeLines,
  minutesOf,
  quoteOf,
  type Club,
  type ClubWork,
  type PricedItem,
  type PricedWay,
  type QuoteLine,
  type Rate,
} from '../../../src/core/index';
import { aClub, aGrip, planOf, valueOf } from '../make';
import { aLine, plain, TERMS } from './terms';

/** What an invented shop charges. */
const RATES: readonly Rate[] = [
  { work: 'Fit a grip', use: 'fitting', per: 'club', price: 3.5, minutes: 8 },
  { work: 'Build-up tape', use: 'buildUp', per: 'layer', price: 0.4, minutes: 1 },
];
const STOCK: readonly PricedItem[] = [{ item: 'G', description: 'cord', price: 6.5, cost: 4 }];
const WAYS: readonly PricedWay[] = [{ name: 'Lead tape', price: 2, minutes: 3 }];

interface Made {
  readonly rates?: readonly Rate[];
  readonly stock?: readonly PricedItem[];
  readonly ways?: readonly PricedWay[];
  readonly work?: ReadonlyMap<number, ClubWork>;
}

function made(clubs: readonly Partial<Club>[], { rates = RATES, stock = STOCK, ways = WAYS, work }: Made = {}) {
  const plan = planOf(clubs.map((club, at) => aClub({ row: at + 1, name: `club ${at + 1}`, ...club })));
  return linesFromPlan(plan, rates, stock, ways, work ? { work } : {});
}

const brief = (lines: readonly QuoteLine[]) =>
  lines.map(({ class: kind, description, quantity }) => [kind, description, quantity]);

/** A club held as it was needs no weight where the grip weighs what the old one did; 10 g more do need some. */
const NOTHING_HELD: Partial<Club> = { hold: 'nothing' };

describe('lines from a plan', () => {
  it('grips by item, fitting and layers; equal lines are one', () => {
    const { lines, issues } = made([
      NOTHING_HELD,
      { ...NOTHING_HELD, layers: 2 },
      { ...NOTHING_HELD, layers: 1, lowerLayers: 1 },
    ]);
    expect(issues).toEqual([]);
    expect(brief(lines)).toEqual([
      ['grip', 'G, cord', 3],
      ['fitting', 'Fit a grip', 3],
      ['buildUp', 'Build-up tape', 4],
    ]);
    expect(lines[0]).toMatchObject({ item: 'G', unitPrice: 6.5, unitCost: 4, rows: [1, 2, 3] });
    expect(lines[2]?.rows).toEqual([2, 3]);
    expect(plain(valueOf(quoteOf({ ...TERMS, lines })))).toMatchObject({ net: '31.60' });
  });

  it('layers beyond what fitting includes', () => {
    const rates = RATES.map((rate) => (rate.use === 'fitting' ? { ...rate, includedLayers: 2 } : rate));
    const { lines } = made(
      [
        { ...NOTHING_HELD, layers: 1 },
        { ...NOTHING_HELD, layers: 5 },
      ],
      { rates },
    );
    expect(brief(lines)).toContainEqual(['buildUp', 'Build-up tape', 3]);
  });

  it('weight by its way, for clubs that get some', () => {
    // 10 g more at the grip are 2 points less, outside a tolerance of 1 point
    const { lines, issues } = made([{}, { ...NOTHING_HELD }, {}]);
    expect(issues).toEqual([]);
    expect(brief(lines)).toContainEqual(['weight', 'Lead tape', 2]);
    expect(lines.find((line) => line.class === 'weight')).toMatchObject({ unitPrice: 2, rows: [1, 3] });
  });

  it('a way without a price is asked for, also where the work of rebalancing is charged; 0 is a price', () => {
    const rates: readonly Rate[] = [...RATES, { work: 'Put right', use: 'rebalancing', per: 'club', price: 2.5 }];
    expect(made([{}], { rates, ways: [{ name: 'Lead tape' }] }).issues).toMatchObject([
      { code: 'blank', field: 'Price of Lead tape in Weights' },
    ]);
    expect(made([{}], { rates, ways: [{ name: 'Lead tape', price: 0 }] }).issues).toEqual([]);
    const both = made([{}], { rates });
    expect(brief(both.lines).slice(-2)).toEqual([
      ['weight', 'Lead tape', 1],
      ['rebalancing', 'Put right', 1],
    ]);
    expect(made([{}], { ways: [{ name: 'Lead tape' }] }).issues).toMatchObject([
      { code: 'blank', field: 'Price of Lead tape in Weights' },
    ]);
    expect(made([{}], { rates, ways: [{ name: 'Lead tape', price: 'x' }] }).issues).toMatchObject([
      { code: 'notNumber', field: 'Price of Lead tape in Weights' },
    ]);
  });

  it('weight by the gram', () => {
    const rates: readonly Rate[] = [...RATES, { work: 'Lead', use: 'weight', per: 'gram', price: '0,35' }];
    const { lines, issues } = made([{}], { rates, ways: [{ name: 'Lead tape' }] });
    expect(issues).toEqual([]);
    const grams = lines.find((line) => line.description === 'Lead')?.quantity;
    // 2 points at 37 in: 2 × 49.61 / 23 = 4.3 g, in steps of half a gram (moments)
    expect(grams).toBe(4.5);
  });

  it('salvage where it is wanted, disposal else; a length change; weighing where a reading is held', () => {
    const rates: readonly Rate[] = [
      ...RATES,
      { work: 'Keep the old grip', use: 'salvage', per: 'club', price: 1.5 },
      { work: 'Cut off', use: 'disposal', per: 'club', price: 0 },
      { work: 'Weigh and read', use: 'reading', per: 'club', price: 1 },
      { work: 'Extend', use: 'length', per: 'club', price: 6 },
      { work: 'Clean', use: 'everyClub', per: 'club', price: 0.5 },
      { work: 'Look over', use: 'everyJob', per: 'job', price: 5 },
    ];
    const work = new Map<number, ClubWork>([[2, { takeOff: 'salvage', lengthChanged: true }]]);
    const { lines, issues } = made([NOTHING_HELD, NOTHING_HELD, {}], { rates, work });
    expect(issues).toEqual([]);
    expect(brief(lines)).toEqual([
      ['grip', 'G, cord', 3],
      ['fitting', 'Fit a grip', 3],
      ['salvage', 'Keep the old grip', 1],
      ['disposal', 'Cut off', 2],
      ['reading', 'Weigh and read', 1],
      ['weight', 'Lead tape', 1],
      ['length', 'Extend', 1],
      ['other', 'Clean', 3],
      ['other', 'Look over', 1],
    ]);
  });

  it('a grip that the client brings: labour only, by its own rate or that of a fitting', () => {
    const work = new Map<number, ClubWork>([[1, { ownGrip: true }]]);
    expect(brief(made([{ ...NOTHING_HELD, newItem: undefined }], { work }).lines)).toEqual([
      ['fitting', 'Fit a grip', 1],
    ]);
    const rates: readonly Rate[] = [...RATES, { work: 'Fit your own grip', use: 'ownGrip', per: 'club', price: 5 }];
    const { lines } = made([NOTHING_HELD, NOTHING_HELD], { rates, work });
    expect(brief(lines)).toEqual([
      ['grip', 'G, cord', 1],
      ['fitting', 'Fit your own grip', 1],
      ['fitting', 'Fit a grip', 1],
    ]);
  });

  it('a rate for a kind of club stands in for the one for all', () => {
    const rates: readonly Rate[] = [
      ...RATES,
      { work: 'Fit a putter', use: 'fitting', per: 'club', kind: 'putter', price: 5 },
    ];
    const { lines } = made([NOTHING_HELD, { ...NOTHING_HELD, kind: 'putter' }], { rates });
    expect(brief(lines)).toContainEqual(['fitting', 'Fit a putter', 1]);
    expect(brief(lines)).toContainEqual(['fitting', 'Fit a grip', 1]);
  });

  it('a club without a grip is not charged', () => {
    expect(made([{ newItem: undefined }]).lines).toEqual([]);
  });

  it('work that somebody puts on the quote by hand stays off it', () => {
    const rates: readonly Rate[] = [...RATES, { work: 'Engrave', use: undefined, per: 'club', price: 9 }];
    expect(brief(made([NOTHING_HELD], { rates }).lines)).toEqual([
      ['grip', 'G, cord', 1],
      ['fitting', 'Fit a grip', 1],
    ]);
  });
});

describe('what a plan cannot be quoted from', () => {
  it('an item without a price is named once, and no quote is made of it', () => {
    const { lines, issues } = made([NOTHING_HELD, NOTHING_HELD], { stock: [{ item: 'G' }] });
    expect(issues).toEqual([{ code: 'blank', field: 'Price of G in Stock', expected: expect.any(String) }]);
    expect(quoteOf({ ...TERMS, lines }).ok).toBe(false);
  });

  it.each(['free', -1, '1,234'])('an item priced %s', (price) => {
    const [issue] = made([NOTHING_HELD], { stock: [{ item: 'G', price }] }).issues;
    expect(issue).toMatchObject({ field: 'Price of G in Stock', got: price });
  });

  it('an item that Stock does not list', () => {
    expect(made([NOTHING_HELD], { stock: [] }).issues).toMatchObject([{ code: 'unknownItem', got: 'G' }]);
  });

  it('an item that Stock lists twice: the first counts', () => {
    const { lines, issues } = made([NOTHING_HELD], {
      stock: [...STOCK, { item: 'g', price: 9 }, { item: 'H' }, { item: 'h' }],
    });
    expect(issues).toEqual([{ code: 'duplicate', field: 'Item in Stock', got: 'g' }]);
    expect(lines[0]?.unitPrice).toBe(6.5);
  });

  it('no rate for fitting, layers, salvage, length', () => {
    const work = new Map<number, ClubWork>([[1, { takeOff: 'salvage', lengthChanged: true }]]);
    const fields = made([{ ...NOTHING_HELD, layers: 1 }], { rates: [], work }).issues.map(({ field }) => field);
    expect(fields).toEqual([
      'Fitting a grip in Rates',
      'Build-up in Rates',
      'Old grip taken off whole in Rates',
      'Length change in Rates',
    ]);
  });

  it('a work that Rates lists twice, and one counted by what it has not got', () => {
    const rates: readonly Rate[] = [
      ...RATES,
      { work: 'fit a grip', use: 'fitting', per: 'club', price: 99 },
      { work: 'Salvage', use: 'salvage', per: 'gram', price: 1 },
    ];
    const { lines, issues } = made([NOTHING_HELD], { rates });
    expect(issues.map(({ code, field }) => [code, field])).toEqual([
      ['duplicate', 'Work in Rates'],
      ['contradiction', 'Per of Salvage in Rates'],
    ]);
    expect(lines.filter((line) => line.class === 'fitting')).toHaveLength(1);
  });

  it('a work without a price', () => {
    const rates: readonly Rate[] = [{ work: 'Fit a grip', use: 'fitting', per: 'club', price: null }];
    expect(made([NOTHING_HELD], { rates }).issues).toMatchObject([
      { code: 'blank', field: 'Price of Fit a grip in Rates' },
    ]);
  });
});

describe('merging', () => {
  it('adds quantities exactly, and takes 3.5 and "3,50" for one price', () => {
    const lines = mergeLines([
      aLine({ quantity: 0.1, unitPrice: 3.5, rows: [1] }),
      aLine({ quantity: 0.2, unitPrice: '3,50', rows: [2, 1] }),
      aLine({ quantity: 1, unitPrice: 4 }),
    ]);
    expect(lines.map(({ quantity }) => quantity)).toEqual([0.3, 1]);
    expect(lines[0]?.rows).toEqual([1, 2]);
  });

  it.each([
    { unitCost: 1 },
    { tax: 'Reduced' },
    { discount: { percent: 1 } },
    { description: 'Other' },
    { class: 'length' },
    { item: 'G' },
    { minutesEach: 1 },
    { unitPrice: 'x' },
  ] as const)('keeps a line with another %o', (other) => {
    expect(mergeLines([aLine(), aLine(other)])).toHaveLength(2);
  });

  it('keeps every line whose quantity cannot be read', () => {
    expect(mergeLines([aLine({ quantity: 'x' }), aLine({ quantity: 'x' })])).toHaveLength(2);
  });
});

describe('minutes', () => {
  it('are quantity × minutes of one, and say which work has none', () => {
    const { lines } = made([NOTHING_HELD, { layers: 1 }]);
    // 2 fitted at 8, a layer at 1, one way at 3
    expect(minutesOf(lines)).toEqual({ minutes: 20, missing: [] });
    expect(minutesOf([aLine(), aLine({ class: 'grip' }), aLine({ minutesEach: 0.1, quantity: 3 })])).toEqual({
      minutes: 0.3,
      missing: ['Work'],
    });
  });
});

it('the plan’s own stock and ways serve as price lists where they have prices', () => {
  const { issues } = linesFromPlan(planOf([aClub(NOTHING_HELD)]), RATES, [aGrip({ price: 6.5 })], []);
  expect(issues).toEqual([]);
});
