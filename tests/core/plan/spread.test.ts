import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../src/core/plan/spread';
import type { Club, Grip, ShopSettings } from '../../../src/core/index';
import { aClub, aGrip, P, planOf, planOne } from '../make';

const root = (...parts: number[]): number => Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0));
const spread = (club: Partial<Club>, grip: Partial<Grip> = {}, settings: Partial<ShopSettings> = {}) =>
  planOne(club, grip, { settings }).spreadPoints;

/** New grip: ± 2 g over 9.8 in, and 60 g whose balance point is known to ± ¼ in. */
const FRESH = [(2 * 9.8) / P, (60 * 0.25) / P];
/** Old grip: ± 4 g by catalogue, 50 g. */
const OLD = [(4 * 9.8) / P, (50 * 0.25) / P];
/** A layer of 10.5 in. */
const LAYER = 21 * 0.00064516 * 130;
/** The two-way strip. */
const STRIP = 21 * 0.00064516 * 133;

describe('± of a gap', () => {
  it('on an estimate held as it was: both grips, and no reading, since only the change counts', () => {
    expect(spread({})).toBeCloseTo(root(...FRESH, ...OLD), 10); // 0.967
  });

  it('catalogue ± 4 g alone is ± 0.8 point', () => {
    expect(OLD[0]).toBeCloseTo(0.8, 1);
  });

  it('weighed: ± ½ g', () => {
    expect(spread({ oldMassFrom: 'weighed' })).toBeCloseTo(root(...FRESH, (0.5 * 9.8) / P, (50 * 0.25) / P), 10);
  });

  it('a target: the reading’s own ± counts once', () => {
    expect(spread({ target: 33 })).toBeCloseTo(root(...FRESH, ...OLD, 0.2), 10);
  });

  it('bare: nothing of the old grip; the reading counts twice where both readings are compared', () => {
    const bare = { bareReading: 44, bareGrams: 368 };
    expect(spread({ ...bare })).toBeCloseTo(root(...FRESH, 0.2, 0.2), 10);
    expect(spread({ ...bare, target: 33 })).toBeCloseTo(root(...FRESH, 0.2), 10);
    expect(spread({ ...bare, hold: 'nothing' })).toBeCloseTo(root(...FRESH, 0.2), 10);
  });

  it('tape: a tenth of each side’s layers over 8.75 in', () => {
    const tape = (count: number) => (0.1 * count * LAYER * 8.75) / P;
    expect(spread({ layers: 4, oldLayers: 2 })).toBeCloseTo(root(...FRESH, tape(4), ...OLD, tape(2)), 10);
  });

  it('a guessed body: ± 80 g (practice) times how far it moves', () => {
    const guessed = { massGrams: undefined };
    expect(spread({ ...guessed })).toBeCloseTo(root(...FRESH, ...OLD), 10);
    expect(spread({ ...guessed, lengthChangeInches: 0.5 })).toBeCloseTo(root(...FRESH, ...OLD, 40 / P), 10);
    expect(spread({ ...guessed }, { capInches: 0.25 })).toBeCloseTo(root(...FRESH, ...OLD, 10 / P), 10);
    // from bare the whole new cap moves it
    expect(spread({ ...guessed, bareReading: 44, lengthChangeInches: 0.5 })).toBeCloseTo(
      root(...FRESH, 0.2, 0.2, (80 * 0.625) / P),
      10,
    );
    expect(spread({ lengthChangeInches: 0.5 })).toBeCloseTo(root(...FRESH, ...OLD), 10);
  });

  it('like another’s of its model: what one model scatters, as Stock or Settings say, and never surer than weighed', () => {
    const alike = (more: number) => root(...FRESH, (more * 9.8) / P, (50 * 0.25) / P);
    const spreadAlike = (scatter: number | undefined, newSpreadGrams = 2) => {
      const stock = [aGrip(), aGrip({ item: 'old', spreadGrams: scatter })];
      return planOf([aClub({ oldMassFrom: 'alike' })], { stock, settings: { newSpreadGrams } }).clubs[0]?.spreadPoints;
    };
    expect(spread({ oldMassFrom: 'alike' })).toBeCloseTo(alike(2), 10);
    expect(spreadAlike(undefined, 3)).toBeCloseTo(alike(3), 10);
    expect(spreadAlike(5)).toBeCloseTo(alike(5), 10);
    expect(spreadAlike(1)).toBeCloseTo(alike(2), 10);
    expect(spreadAlike(undefined, 0)).toBeCloseTo(alike(0.5), 10);
  });

  describe('a cap that nobody measured: 1/16 in (practice) times the body, 370 g', () => {
    const cap = 370 / 16 / P;
    const unknown = { capInches: undefined };

    it('on an estimate or a weighed grip, where one of the two is known and the other is not', () => {
      expect(spread({}, unknown)).toBeCloseTo(root(...FRESH, ...OLD, (420 - 50 - STRIP) / 16 / P), 10);
      expect(spread({ oldCapInches: undefined })).toBeCloseTo(root(...FRESH, ...OLD, (420 - 50 - STRIP) / 16 / P), 10);
      expect(spread({ oldCapInches: undefined }, unknown)).toBeCloseTo(root(...FRESH, ...OLD), 10); // taken as alike
    });

    it('an old cap that Stock knows is known', () => {
      const stock = [aGrip(), aGrip({ item: 'old', capInches: 0.125 })];
      const [plan] = planOf([aClub({ oldCapInches: undefined })], { stock }).clubs;
      expect(plan?.spreadPoints).toBeCloseTo(root(...FRESH, ...OLD), 10);
    });

    it('from bare, the new one alone', () => {
      const bare = { bareReading: 44, bareGrams: 370 };
      expect(spread(bare, unknown)).toBeCloseTo(root(...FRESH, 0.2, 0.2, cap), 10);
      expect(spread({ ...bare, oldCapInches: undefined })).toBeCloseTo(root(...FRESH, 0.2, 0.2), 10);
      expect(spread({ ...bare, oldCapInches: undefined }, unknown)).toBeCloseTo(root(...FRESH, 0.2, 0.2, cap), 10);
    });

    it('then covers a cap that is 1/16 in off', () => {
      const bare = { bareReading: 44, bareGrams: 370 };
      const guessed = planOne(bare, unknown);
      const true16 = planOne(bare, { capInches: 0.0625 });
      const off = (guessed.readingGripped ?? NaN) - (true16.readingGripped ?? NaN);
      expect(off).toBeCloseTo(cap, 10); // 0.466 point
      expect(guessed.spreadPoints ?? NaN).toBeGreaterThan(off);
    });
  });

  it('what Stock says of a grip’s scatter goes before the shop’s habit', () => {
    expect(spread({}, { spreadGrams: 5 })).toBeCloseTo(root((5 * 9.8) / P, 15 / P, ...OLD), 10);
    expect(spread({}, { spreadGrams: undefined }, { newSpreadGrams: 3 })).toBeCloseTo(
      root((3 * 9.8) / P, 15 / P, ...OLD),
      10,
    );
  });

  it('the shop’s own habits', () => {
    const settings = { oldSpreadGrams: 1, balanceSpreadInches: 0.5, readingSpreadPoints: 0.4, tapeSpread: 0.2 };
    expect(spread({ target: 33, layers: 1 }, {}, settings)).toBeCloseTo(
      root(FRESH[0] ?? NaN, 30 / P, (0.2 * LAYER * 8.75) / P, 9.8 / P, 25 / P, 0.4),
      10,
    );
  });

  it('is unknown where the old grip is', () => {
    expect(spread({ oldGripGrams: undefined })).toBeUndefined();
  });
});

describe('verdict', () => {
  it.each([
    [0, 0.5, 'within'],
    [0.5, 0.5, 'within'], // just
    [-0.5, 0.5, 'within'],
    [0.51, 0.5, 'likely'],
    [-0.51, 0.5, 'likely'],
    [1, 0.5, 'likely'], // the tolerance itself is within it
    [1.01, 0.5, 'cannotTell'],
    [1.5, 0.5, 'cannotTell'], // the ± just reaches
    [1.51, 0.5, 'out'],
    [-1.51, 0.5, 'out'],
    [0.7 + 0.3, 0, 'within'], // whatever binary fractions say
    [1 + 1e-12, 0, 'within'],
    [1 + 1e-6, 0, 'out'],
    [undefined, 0.5, 'unknown'],
    [0, undefined, 'unknown'],
  ] as const)('a gap of %s ± %s within 1 point: %s', (gap, spreadPoints, verdict) => {
    expect(verdictOf(gap, spreadPoints, 1)).toBe(verdict);
  });
});
