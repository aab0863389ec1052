/** Sets and stocks for tests of choosing: small invented ones by hand, and random ones. */
import fc from 'fast-check';
import {
  DEFAULT_SETTINGS,
  DEFAULT_WAYS,
  type Club,
  type ClubKind,
  type Grip,
  type PlanInput,
  type ShopSettings,
} from '../../../src/core/index';
import { aClub, aGrip } from '../make';

/** Clubs numbered in their order. */
export function clubsOf(...clubs: readonly Partial<Club>[]): Club[] {
  return clubs.map((more, at) =>
    aClub({ row: at + 1, sheetRow: at + 2, name: `club ${at + 1}`, newItem: undefined, layers: undefined, ...more }),
  );
}

export function inputOf(
  clubs: readonly Partial<Club>[],
  stock: readonly Partial<Grip>[],
  settings: Partial<ShopSettings> = {},
): PlanInput {
  return {
    clubs: clubsOf(...clubs),
    stock: stock.map((more) => aGrip(more)),
    ways: DEFAULT_WAYS,
    settings: { ...DEFAULT_SETTINGS, ...settings },
  };
}

const KINDS: readonly (ClubKind | undefined)[] = [
  'driver',
  'wood',
  'hybrid',
  'iron',
  'wedge',
  'putter',
  'junior',
  undefined,
];
const maybe = <T>(value: fc.Arbitrary<T>, nil: T | undefined = undefined) =>
  fc.option(value, { nil, freq: 6 }) as fc.Arbitrary<T | undefined>;
const stepped = (low: number, high: number, step: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: Math.round((high - low) / step) }).map((count) => Number((low + count * step).toFixed(4)));

const someClub: fc.Arbitrary<Partial<Club>> = fc.record({
  kind: fc.constantFrom(...KINDS),
  lengthInches: maybe(stepped(33, 45, 0.5)),
  buttInches: maybe(fc.constantFrom(0.58, 0.59, 0.6, 0.62)),
  taperPerInch: fc.constantFrom(undefined, 0.007),
  reading: maybe(stepped(20, 40, 0.5)),
  massGrams: maybe(stepped(300, 480, 1)),
  oldGripGrams: fc.option(stepped(42, 58, 0.5), { nil: undefined, freq: 12 }),
  oldLayers: fc.integer({ min: 0, max: 3 }),
  bareReading: fc.option(stepped(40, 50, 0.5), { nil: undefined, freq: 1 }),
  layers: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined, freq: 1 }),
  lowerLayers: fc.integer({ min: 0, max: 1 }),
  targetInches: maybe(stepped(0.9, 0.97, 0.005)),
  hold: fc.constantFrom(undefined, undefined, 'asArrived' as const, 'nothing' as const),
  newItem: fc.constantFrom(undefined, 'G0', 'g1'),
  newGripGrams: fc.constantFrom(undefined, 52.5),
});

const someGrip: fc.Arbitrary<Partial<Grip>> = fc.record({
  model: fc.constantFrom('Alder', 'Alder', 'Birch', undefined),
  size: fc.constantFrom('Standard', 'Midsize', undefined),
  profile: fc.constantFrom('round', 'round', 'round', 'ribbed', undefined),
  texture: fc.constantFrom('cord', 'rubber', undefined),
  use: fc.constantFrom(undefined, undefined, undefined, 'clubs' as const, 'putters' as const, 'juniors' as const),
  coreInches: maybe(fc.constantFrom(0.58, 0.6, 0.62)),
  gripGrams: fc.option(stepped(40, 62, 0.5), { nil: undefined, freq: 12 }),
  upperInches: maybe(stepped(0.88, 0.95, 0.005)),
  onHand: maybe(fc.integer({ min: 0, max: 6 })),
  price: maybe(stepped(3, 12, 0.05)),
});

export const someFilters = fc.record(
  {
    profile: fc.constantFrom('round' as const, 'ribbed' as const),
    texture: fc.constantFrom('Cord'),
    coreInches: fc.constantFrom(0.58, 0.6),
    mostPrice: fc.constant(9),
    onHandOnly: fc.boolean(),
    items: fc.constant(['g0', 'G1', 'G2', 'G3', 'nobody has it']),
  },
  { requiredKeys: [] },
);

/** Random sets with holes in what is known of them. */
export const someInput: fc.Arbitrary<PlanInput> = fc
  .tuple(
    fc.array(someClub, { minLength: 1, maxLength: 6 }),
    fc.array(someGrip, { minLength: 1, maxLength: 9 }),
    fc.record({
      headLimitGrams: fc.constantFrom(2, 4, 8),
      putRight: fc.constantFrom('outOfTolerance' as const, 'always' as const),
      growth: fc.constantFrom('volume' as const, 'additive' as const),
      sizeToleranceInches: fc.constantFrom(0.005, 0.01, 0.02),
      mostLayers: fc.constantFrom(3, 6, 12),
    }),
  )
  .map(([clubs, grips, settings]) =>
    inputOf(
      clubs,
      grips.map((grip, at) => ({ item: `G${at}`, ...grip })),
      settings,
    ),
  );
