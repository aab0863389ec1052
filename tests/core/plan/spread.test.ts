import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../src/core/plan/spread';
import type { Club, Grip, ShopSettings } from '../../../src/core/index';
import { aClub, aGrip, P, planOf, planOne } from '../make';

const root = (...parts: number[]): number => Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0));
const spread = (club: Partial<Club>, grip: Partial<Grip> = {}, settings: Partial<ShopSettings> = {}) =>
  planOne(club, grip, { settings }).spreadPoints;

/** New grip: ± 2 g over 9.8 in, and 60 g whose balance point was tried: ± 0.1 in (practice). */
const FRESH = [(2 * 9.8) / P, (60 * 0.1) / P];
/** Old grip: ± 4 g by catalogue, 50 g, its balance point tried. */
const OLD = [(4 * 9.8) / P, (50 * 0.1) / P];
/** A layer of 10.5 in. */
const LAYER = 21 * 0.00064516 * 130;
/** The two-way strip. */
const STRIP = 21 * 0.00064516 * 133;

describe('± of a gap', () => {
  it('on an estimate held as it was: both grips, and no reading, since only the change counts', () => {
    expect(spread({})).toBeCloseTo(root(...FRESH, ...OLD), 10); // 0.898
  });

  it('catalogue ± 4 g alone is ± 0.8 point', () => {
    expect(OLD[0]).toBeCloseTo(0.8, 1);
  });

  it('weighed: ± ½ g', () => {
    expect(spread({ oldMassFrom: 'weighed' })).toBeCloseTo(root(...FRESH, (0.5 * 9.8) / P, (50 * 0.1) / P), 10);
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

  it('nothing held: the ± of the predicted reading, which hangs on the one it came with', () => {
    expect(spread({ hold: 'nothing' })).toBeCloseTo(root(...FRESH, ...OLD, 0.2), 10);
  });

  it('tape: a tenth of each side’s layers over 8.75 in', () => {
    const tape = (count: number) => (0.1 * count * LAYER * 8.75) / P;
    expect(spread({ layers: 4, oldLayers: 2 })).toBeCloseTo(root(...FRESH, tape(4), ...OLD, tape(2)), 10);
  });

  it('lower-hand tape is of the same roll: its tenth adds to that of the layers, over 6.25 in', () => {
    const lower = 2 * 5.5 * 2 * 0.00064516 * 130; // from 5 to 10.5 in, balancing at 7.75
    const tape = (0.1 * (3 * LAYER * 8.75 + lower * 6.25)) / P;
    expect(spread({ layers: 3, lowerLayers: 2 })).toBeCloseTo(root(...FRESH, tape, ...OLD), 10);
  });

  it('a guessed body: ± 80 g (practice) times how far it moves', () => {
    const guessed = { massGrams: undefined };
    const ruled = 374 / 32 / P; // a typical body made longer: ± 1/32 in (practice)
    expect(spread({ ...guessed })).toBeCloseTo(root(...FRESH, ...OLD), 10);
    expect(spread({ ...guessed, lengthChangeInches: 0.5 })).toBeCloseTo(root(...FRESH, ...OLD, 40 / P, ruled), 10);
    expect(spread({ ...guessed }, { capInches: 0.25 })).toBeCloseTo(root(...FRESH, ...OLD, 10 / P), 10);
    // from bare the whole new cap moves it
    expect(spread({ ...guessed, bareReading: 44, lengthChangeInches: 0.5 })).toBeCloseTo(
      root(...FRESH, 0.2, 0.2, (80 * 0.625) / P, ruled),
      10,
    );
  });

  it('a length change: ± 1/32 in (practice) of a body of 368 g', () => {
    const ruled = (420 - 50 - STRIP) / 32 / P; // 0.23
    const oldMass = (4 * (9.8 - 0.5)) / P; // a grip 4 g heavier leaves a body 4 g lighter
    const changed = root(...FRESH, oldMass, 5 / P, ruled);
    expect(spread({ lengthChangeInches: 0.5 })).toBeCloseTo(changed, 10);
    const cut = root(...FRESH, (4 * (9.8 + 0.5)) / P, 5 / P, ruled);
    expect(spread({ lengthChangeInches: -0.5 })).toBeCloseTo(cut, 10);
  });

  it('a body that is what is left of the whole club errs against the old grip and its tape', () => {
    const left = { lengthChangeInches: 1, oldLayers: 3 };
    const tape = (0.1 * 3 * LAYER * (8.75 - 1)) / P;
    const ruled = (grams: number) => grams / 32 / P;
    expect(spread(left)).toBeCloseTo(root(...FRESH, (4 * 8.8) / P, 5 / P, tape, ruled(370 - 3 * LAYER - STRIP)), 10);
    // weighed bare it does not
    const weighed = { ...left, bareGrams: 365 };
    expect(spread(weighed)).toBeCloseTo(root(...FRESH, ...OLD, (tape * 8.75) / 7.75, ruled(365)), 10);
    // read bare but weighed only as it arrived: the old grip counts by what the body moves, 1⅛ in
    const read = root(
      ...FRESH,
      (4 * 1.125) / P,
      (0.1 * 3 * LAYER * 1.125) / P,
      ruled(370 - 3 * LAYER - STRIP),
      0.2,
      0.2,
    );
    expect(spread({ ...left, bareReading: 44 })).toBeCloseTo(read, 10);
  });

  it('like another’s of its model: what one model scatters, as Stock or Settings say, and never surer than weighed', () => {
    // a balance point in the row of such a grip was reckoned, not tried
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
      const each = (420 - 50 - STRIP) / 16 / P;
      expect(spread({ oldCapInches: undefined }, unknown)).toBeCloseTo(root(...FRESH, ...OLD, each, each), 10);
    });

    it('caps of one item are alike, and move nothing', () => {
      const same = { oldCapInches: undefined, oldItem: 'g' };
      expect(spread(same, unknown)).toBeCloseTo(root(...FRESH, ...OLD), 10);
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
    expect(spread({}, { spreadGrams: 5 })).toBeCloseTo(root((5 * 9.8) / P, 6 / P, ...OLD), 10);
    expect(spread({}, { spreadGrams: undefined }, { newSpreadGrams: 3 })).toBeCloseTo(
      root((3 * 9.8) / P, 6 / P, ...OLD),
      10,
    );
  });

  it('the shop’s own habits', () => {
    const settings = { oldSpreadGrams: 1, balanceSpreadInches: 0.5, readingSpreadPoints: 0.4, tapeSpread: 0.2 };
    const untried = { target: 33, layers: 1, oldBalanceInches: undefined };
    expect(spread(untried, { balanceInches: undefined }, settings)).toBeCloseTo(
      root(FRESH[0] ?? NaN, 30 / P, (0.2 * LAYER * 8.75) / P, 9.8 / P, 25 / P, 0.4),
      10,
    );
  });

  describe('a balance point', () => {
    const fresh = (inches: number) => root((2 * 9.8) / P, (60 * inches) / P, ...OLD);
    const old = (inches: number) => root(...FRESH, (4 * 9.8) / P, (50 * inches) / P);
    const stocked = (club: Partial<Club>, balanceInches: number | undefined) =>
      planOf([aClub({ oldBalanceInches: undefined, ...club })], {
        stock: [aGrip(), aGrip({ item: 'old', balanceInches })],
      }).clubs[0]?.spreadPoints;

    it('of the new grip that was tried: ± 0.1 in (practice), one by its length: as Settings say', () => {
      expect(spread({})).toBeCloseTo(fresh(0.1), 10);
      expect(spread({}, { balanceInches: undefined })).toBeCloseTo(fresh(0.25), 10);
    });

    it('that was tried is never less sure than one that was not', () => {
      const settings = { balanceSpreadInches: 0.05 };
      expect(spread({}, {}, settings)).toBeCloseTo(
        root((2 * 9.8) / P, (60 * 0.05) / P, (4 * 9.8) / P, (50 * 0.05) / P),
        10,
      );
    });

    it('of the old grip: tried where its row or Stock has it', () => {
      expect(spread({ oldBalanceInches: undefined })).toBeCloseTo(old(0.25), 10);
      expect(stocked({}, 4.2)).toBeCloseTo(old(0.1), 10);
      expect(stocked({}, undefined)).toBeCloseTo(old(0.25), 10);
    });

    it('of one like another’s: tried where Stock has it, reckoned where only its row does', () => {
      const alike = (inches: number) => root(...FRESH, (2 * 9.8) / P, (50 * inches) / P);
      expect(stocked({ oldMassFrom: 'alike' }, 4.2)).toBeCloseTo(alike(0.1), 10);
      expect(stocked({ oldMassFrom: 'alike', oldBalanceInches: 4.2 }, 4.2)).toBeCloseTo(alike(0.25), 10);
    });
  });

  it('the very grip weighed: ± ½ g (practice) in place of the model’s scatter, about its own mass', () => {
    const weighed = root((0.5 * 9.8) / P, (63 * 0.1) / P, ...OLD);
    expect(spread({ newGripGrams: 63 })).toBeCloseTo(weighed, 10);
    expect(spread({ newGripGrams: 63 }, { spreadGrams: 5 })).toBeCloseTo(weighed, 10);
    expect(spread({ newGripGrams: 63 }, { gripGrams: undefined })).toBeCloseTo(weighed, 10);
  });

  it('is unknown where the old grip is, and so are its parts', () => {
    const plan = planOne({ oldGripGrams: undefined });
    expect(plan.spreadPoints).toBeUndefined();
    expect(plan.spreadParts).toBeUndefined();
  });
});

describe('what a ± is made of', () => {
  const NONE = {
    oldMass: 0,
    oldBalance: 0,
    newMass: 0,
    newBalance: 0,
    tape: 0,
    cap: 0,
    length: 0,
    body: 0,
    reading: 0,
  };
  const parts = (club: Partial<Club>, grip: Partial<Grip> = {}) => planOne(club, grip).spreadParts;
  const near = (points: number) => expect.closeTo(points, 10) as number;
  const grips = { newMass: near(19.6 / P), newBalance: near(6 / P) };

  it('both grips where the club is held as it was', () => {
    expect(parts({})).toEqual({ ...NONE, ...grips, oldMass: near(39.2 / P), oldBalance: near(5 / P) });
  });

  it('bare: the new grip and two readings', () => {
    expect(parts({ bareReading: 44, bareGrams: 368 })).toEqual({ ...NONE, ...grips, reading: near(0.2 * Math.SQRT2) });
  });

  it('everything at once; the ± is the root of their squares', () => {
    const club = { target: 33, layers: 2, massGrams: undefined, lengthChangeInches: -0.5 } as const;
    const plan = planOne(club, { capInches: undefined });
    expect(plan.spreadParts).toEqual({
      ...grips,
      oldMass: near(39.2 / P),
      oldBalance: near(5 / P),
      tape: near((0.1 * 2 * LAYER * 8.75) / P),
      cap: near(374 / 16 / P),
      length: near(374 / 32 / P),
      body: near(40 / P),
      reading: near(0.2),
    });
    expect(plan.spreadPoints).toBeCloseTo(root(...Object.values(plan.spreadParts ?? NONE)), 12);
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
