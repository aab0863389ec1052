import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planSet, type Club, type Grip, type ShopSettings, type Way } from '../../../src/core/index';
import { sayBreach, sayNote } from '../../../src/words/notes';

/** Any number a caller could get past a check that was forgotten, and none at all. */
const anything = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, NaN, Infinity, -Infinity, 14, 1e308, -1e308, 1e-320),
  fc.integer(),
);
const maybe = fc.option(anything, { nil: undefined });
const word = fc.oneof(fc.constantFrom('G', '', 'Lead tape', '__proto__', 'constructor'), fc.string());
const maybeWord = fc.option(word, { nil: undefined });

const clubs: fc.Arbitrary<Club> = fc.record({
  row: fc.integer(),
  sheetRow: fc.integer(),
  job: maybeWord,
  name: word,
  kind: fc.constantFrom('driver', 'wood', 'hybrid', 'iron', 'wedge', 'putter', 'junior', undefined),
  lengthInches: maybe,
  buttInches: maybe,
  taperPerInch: maybe,
  reading: maybe,
  massGrams: maybe,
  oldItem: maybeWord,
  oldGripGrams: maybe,
  oldMassFrom: fc.constantFrom('estimate', 'weighed', 'alike'),
  oldLayers: anything,
  oldBalanceInches: maybe,
  oldCapInches: maybe,
  buttWeightGrams: anything,
  buttWeightLeaves: fc.boolean(),
  bareReading: maybe,
  bareGrams: maybe,
  newItem: maybeWord,
  layers: maybe,
  lowerLayers: anything,
  targetInches: maybe,
  hold: fc.constantFrom('asArrived', 'target', 'nothing', undefined),
  target: maybe,
  tolerancePoints: maybe,
  way: maybeWord,
  lengthChangeInches: anything,
  plugGrams: anything,
  issues: fc.constant([]),
});

const grips: fc.Arbitrary<Grip> = fc.record({
  item: word,
  description: maybeWord,
  coreInches: maybe,
  profile: fc.constantFrom('round', 'ribbed', undefined),
  gripGrams: maybe,
  spreadGrams: maybe,
  upperInches: maybe,
  lowerInches: maybe,
  lengthInches: maybe,
  balanceInches: maybe,
  capInches: maybe,
  onHand: maybe,
});

const ways: fc.Arbitrary<Way> = fc.record({
  name: word,
  end: fc.constantFrom('head', 'butt'),
  inches: anything,
  stepGrams: anything,
  gripOff: fc.boolean(),
  limitGrams: maybe,
});

const tape = fc.record({ stripInches: anything, gsm: anything, thicknessInches: anything });

const settings: fc.Arbitrary<ShopSettings> = fc.record({
  tolerancePoints: anything,
  putRight: fc.constantFrom('outOfTolerance', 'always'),
  headWay: word,
  buttWay: word,
  headLimitGrams: anything,
  leastGrams: anything,
  tapedInches: anything,
  buildUp: tape,
  twoWay: tape,
  twoWayUnderNew: fc.boolean(),
  capInches: anything,
  growth: fc.constantFrom('volume', 'additive'),
  sizeToleranceInches: anything,
  mostLayers: anything,
  lowerTapeStartInches: anything,
  oldSpreadGrams: anything,
  newSpreadGrams: anything,
  gripBalanceRatio: anything,
  balanceSpreadInches: anything,
  readingSpreadPoints: anything,
  tapeSpread: anything,
  competition46: fc.boolean(),
});

describe('whatever goes in', () => {
  it('a plan for each club comes out in its order, nothing throws, and every note can be said', () => {
    const input = fc.record({
      clubs: fc.array(clubs, { maxLength: 6 }),
      stock: fc.array(grips, { maxLength: 4 }),
      ways: fc.array(ways, { maxLength: 4 }),
      settings,
    });
    fc.assert(
      fc.property(input, (garbage) => {
        const plan = planSet(garbage);
        expect(plan.clubs.map(({ row }) => row)).toEqual(garbage.clubs.map(({ row }) => row));
        for (const club of plan.clubs) {
          for (const note of club.notes) expect(sayNote(note)).toBeTruthy();
          for (const breach of club.breaches) expect(sayBreach(breach)).toBeTruthy();
        }
      }),
      { numRuns: 300 },
    );
  });
});
