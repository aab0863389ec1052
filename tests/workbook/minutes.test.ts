/** The quote, the ticket and SETMINUTES tell the same time, whatever the set. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { benchTicket, RATE_USES } from '../../src/core/index';
import { asTable, type DemoRow } from '../../src/tryout/demo/table';
import { planJob } from '../../src/workbook/benchJob';
import type { Seen, TableSeen } from '../../src/workbook/port';
import { quoteJob } from '../../src/workbook/quoteScope';
import { readBench } from '../../src/workbook/readBench';
import {
  CLUBS,
  RATES,
  SETTINGS,
  STOCK,
  TAKE_OFFS,
  TAKE_OFFS_OF_CLUB,
  WEIGHTS,
  type TableSchema,
} from '../../src/workbook/schema';
import { setMinutes } from '../../src/workbook/setMinutes';
import { matrixOf, shopTables, type ShopTables } from '../../src/workbook/shop';
import { TABLES } from '../../src/workbook/schema';
import { RATE_USE_WORDS } from '../../src/words/moneyChoices';

function seen<T extends TableSchema>(schema: T, rows: readonly DemoRow<T>[]): TableSeen {
  const [headers = [], ...body] = asTable(schema, rows);
  return {
    name: schema.name,
    at: { sheet: schema.name, row: 0, column: 0, rows: body.length + 1, columns: headers.length },
    headers: headers.map(String),
    rows: body.map((row) => row.map((cell): Seen => (cell === '' ? null : cell))),
    protected: false,
    filtered: false,
  };
}

type Tables = Readonly<Partial<Record<keyof ShopTables, TableSeen>>>;

function tablesOf(some: Tables): ShopTables {
  return shopTables(TABLES.map(({ name }) => some[name as keyof ShopTables] ?? null));
}

function minutesBy(tables: ShopTables): { quote: number; ticket: number; set: number; clubs: number } {
  const planned = planJob(tables, 'J');
  if (!planned?.ok) throw new Error('not planned');
  const ticket = benchTicket(planned.value.plan, planned.value.input, readBench(tables).ask);
  const matrix = (name: keyof ShopTables) => tables[name] && matrixOf(tables[name]);
  const set = setMinutes(
    {
      clubs: matrix('Clubs') ?? [],
      stock: matrix('Stock'),
      weights: matrix('Weights'),
      settings: matrix('Settings'),
      tape: null,
      job: 'J',
    },
    matrix('Rates') ?? [],
  );
  if (!set.ok) throw new Error(JSON.stringify(set.issue));
  const { minutes } = quoteJob(tables, { job: 'J', terms: { issued: 46_000 } });
  return { quote: minutes.minutes, ticket: ticket.minutes.total, set: set.value, clubs: ticket.clubs.length };
}

const STOCKED = seen(STOCK, [
  { item: 'G', core: 0.6, mass: 60, length: 10.5, price: 5 },
  { item: 'H', core: 0.58, mass: 45, length: 10.5, price: 5 },
]);

const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: '' as const });

const clubArb: fc.Arbitrary<DemoRow<typeof CLUBS>> = fc.record({
  job: fc.constant('J'),
  club: fc.uuid(),
  kind: fc.constantFrom('Driver', 'Iron', 'Putter'),
  length: fc.constantFrom(35, 37, 44),
  butt: fc.constant(0.6),
  reading: maybe(fc.constantFrom('D0', 'D4')),
  mass: fc.constantFrom(400, 430),
  oldMass: fc.integer({ min: 40, max: 60 }),
  oldMassKnown: fc.constantFrom('Weighed', 'Catalogue', ''),
  bareReading: maybe(fc.constantFrom('E5', 'F0')),
  bareMass: maybe(fc.constantFrom(340, 350)),
  newItem: fc.constantFrom('G', 'H', 'G', 'H', 'theirs', ''),
  ownGrip: fc.constantFrom('Yes', 'No', ''),
  layers: maybe(fc.integer({ min: 0, max: 5 })),
  lowerLayers: maybe(fc.integer({ min: 0, max: 2 })),
  hold: fc.constantFrom('As it was', 'Nothing', ''),
  weighting: fc.constantFrom('Lead tape', 'Tip plug', ''),
  takeOff: fc.constantFrom('', '', ...TAKE_OFFS_OF_CLUB),
  lengthChange: fc.constantFrom('', '', 0.5),
});

const minutesArb = fc.integer({ min: 0, max: 80 }).map((quarters) => quarters / 4);
const priceArb = fc.constantFrom(0, 1.5, 1.5, '');

/** Every use has a row, so that no work is without a time; some have a row of their own for putters. */
const ratesArb: fc.Arbitrary<readonly DemoRow<typeof RATES>[]> = fc
  .tuple(
    fc.array(minutesArb, { minLength: 22, maxLength: 22 }),
    fc.subarray([...RATE_USES].filter((use) => use !== 'rebalancing' && use !== 'ownGrip' && use !== 'weight')),
    fc.boolean(),
    fc.integer({ min: 0, max: 2 }),
  )
  .map(([minutes, forPutters, hasRebalancing, includedLayers]) => {
    const uses = RATE_USES.filter((use) => use !== 'rebalancing' || hasRebalancing);
    const unit = (use: (typeof RATE_USES)[number]) =>
      use === 'buildUp' ? 'Layer' : use === 'weight' ? 'Gram' : use === 'everyJob' ? 'Job' : 'Club';
    const row = (use: (typeof RATE_USES)[number], at: number, kind: string) => ({
      work: `${RATE_USE_WORDS[use]} ${kind}`.trim(),
      unit: unit(use),
      use: RATE_USE_WORDS[use],
      price: 1,
      minutes: minutes[at] ?? 0,
      kind,
      includedLayers: use === 'fitting' ? includedLayers : ('' as const),
    });
    return [
      ...uses.map((use, at) => row(use, at, '')),
      ...forPutters.filter((use) => use !== 'everyJob').map((use, at) => row(use, at + 11, 'Putter')),
    ];
  });

const setArb = fc.record({
  clubs: fc.array(clubArb, { minLength: 1, maxLength: 8 }),
  rates: ratesArb,
  weights: fc.tuple(priceArb, priceArb, minutesArb, minutesArb).map(([lead, plug, leadMinutes, plugMinutes]) => [
    { way: 'Lead tape', end: 'Head', position: 0, step: 0.5, price: lead, minutes: leadMinutes },
    { way: 'Tip plug', end: 'Head', position: 2, step: 1, gripOff: 'Yes', price: plug, minutes: plugMinutes },
    { way: 'Butt plug', end: 'Butt', position: 1, step: 1, price: lead, minutes: plugMinutes },
  ]),
  takeOff: fc.constantFrom('', ...TAKE_OFFS),
});

describe('minutes', () => {
  test('of quote, ticket and SETMINUTES are the same on any set', () => {
    let told = 0;
    fc.assert(
      fc.property(setArb, ({ clubs, rates, weights, takeOff }) => {
        // a club that names no grip of Stock, and whose grip the client does not bring, cannot be planned: the quote is refused for it
        const sound = clubs.filter(({ newItem, ownGrip }) => newItem !== 'theirs' || ownGrip === 'Yes');
        fc.pre(sound.length > 0);
        const tables = tablesOf({
          Clubs: seen(CLUBS, sound),
          Stock: STOCKED,
          Rates: seen(RATES, rates),
          Weights: seen(WEIGHTS, weights as DemoRow<typeof WEIGHTS>[]),
          Settings: seen(SETTINGS, [
            { setting: 'Take off', value: takeOff },
            { setting: 'Head weighting', value: 'Lead tape' },
          ]),
        });
        const { quote, ticket, set, clubs: worked } = minutesBy(tables);
        expect(ticket).toBeCloseTo(quote, 9);
        expect(set).toBeCloseTo(quote, 9);
        if (worked > 0) told += 1;
      }),
      { numRuns: 150 },
    );
    expect(told).toBeGreaterThan(75);
  });
});
