import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, reaching, type ClubKind, type Grip, type ShopSettings } from '../../../src/core/index';
import { aGrip } from '../make';

const additive: ShopSettings = { ...DEFAULT_SETTINGS, growth: 'additive' };

function reached(stock: readonly Grip[], more: Partial<Parameters<typeof reaching>[0]> = {}) {
  return reaching({ targetInches: 0.92, buttInches: 0.6, lowerLayers: 0, stock, settings: additive, ...more });
}
const items = (stock: readonly Grip[], more: Partial<Parameters<typeof reaching>[0]> = {}): string[] =>
  reached(stock, more).found.map(({ grip }) => grip.item);

describe('grips that reach a size', () => {
  it('with the layers that bring them there, and what they measure and weigh', () => {
    const { found, nearest, why } = reached([aGrip()], { lowerLayers: 1 });
    expect(found).toHaveLength(1);
    const [only] = found;
    expect(only?.layers).toBe(2); // .900 + 2 × .010 (Eagar 2009)
    expect(only?.upper.inches).toBeCloseTo(0.92, 12);
    // by volume, the low end: √(.9² − .6² + .62²)
    expect(only?.upper.lowInches).toBeCloseTo(Math.sqrt(0.81 - 0.36 + 0.3844), 12);
    expect(only?.lower?.inches).toBeCloseTo(0.82 + 0.03, 12);
    // two layers of 1.7613 g, and one from 5 in to 10.5 in under the lower hand
    expect(only?.fittedGrams).toBeCloseTo(60 + 2 * 1.7612868 + (1.7612868 * 5.5) / 10.5, 6);
    expect(only?.errorInches).toBeCloseTo(0, 12);
    expect([nearest, why]).toEqual([undefined, undefined]);
  });

  it('fills a loose core first, and leaves out a tight one', () => {
    const loose = aGrip({ item: 'loose', coreInches: 0.62, upperInches: 0.92 });
    const tight = aGrip({ item: 'tight', coreInches: 0.56, upperInches: 0.88 });
    const { found } = reached([loose, tight]);
    expect(found.map(({ grip, layers }) => [grip.item, layers])).toEqual([['loose', 2]]);
    // .030 of stretch is not yet tight
    expect(items([aGrip({ item: 'just', coreInches: 0.57, upperInches: 0.89 })])).toEqual(['just']);
  });

  it('counts what lies within the shop’s size tolerance', () => {
    const off = aGrip({ item: 'off', upperInches: 0.928 }); // .008 over without a layer
    expect(items([off])).toEqual(['off']);
    expect(items([off], { settings: { ...additive, sizeToleranceInches: 0.005 } })).toEqual([]);
    // .930 − .920 is .010000000000000009
    expect(items([aGrip({ item: 'just', upperInches: 0.93 })])).toEqual(['just']);
  });

  it('goes by a shop’s own reading of a fitted grip', () => {
    // gauged .930 on a .600 butt with two layers, so .910 without: one layer makes .920
    const grip = aGrip({ fittedUpperInches: 0.93, fittedLayers: 2 });
    expect(reached([grip]).found[0]?.layers).toBe(1);
  });

  it.each<[ClubKind | undefined, string[]]>([
    ['putter', ['any', 'putters']],
    ['iron', ['any', 'clubs']],
    ['junior', ['any', 'clubs', 'juniors']],
    [undefined, ['any', 'clubs', 'juniors', 'putters']],
  ])('for a club of kind %s: %j', (kind, expected) => {
    const stock = [
      aGrip({ item: 'any' }),
      aGrip({ item: 'clubs', use: 'clubs' }),
      aGrip({ item: 'juniors', use: 'juniors' }),
      aGrip({ item: 'putters', use: 'putters' }),
    ];
    expect(items(stock, { kind })).toEqual(expected);
  });

  it('best first: by layers, then error, then mass', () => {
    const stock = [
      aGrip({ item: 'unweighed', upperInches: 0.92, gripGrams: undefined }),
      aGrip({ item: 'off', upperInches: 0.925 }),
      aGrip({ item: 'taped', upperInches: 0.9 }),
      aGrip({ item: 'heavy', upperInches: 0.92, gripGrams: 70 }),
      aGrip({ item: 'light', upperInches: 0.9201, gripGrams: 45 }), // a calliper tells half a thousandth apart
    ];
    const { found } = reached(stock);
    expect(found.map(({ grip }) => grip.item)).toEqual(['light', 'heavy', 'unweighed', 'off', 'taped']);
    expect(found[2]?.fittedGrams).toBeUndefined();
  });
});

describe('no grip that reaches a size', () => {
  it('of an empty stock', () => {
    expect(reached([])).toEqual({ found: [], nearest: undefined, why: 'noStock' });
  });

  it('names the nearest', () => {
    const stock = [aGrip({ item: 'large', upperInches: 0.97 }), aGrip({ item: 'larger', upperInches: 1.1 })];
    const { found, nearest, why } = reached(stock);
    expect([found, nearest?.grip.item, nearest?.layers, why]).toEqual([[], 'large', 0, 'none']);
    expect(nearest?.errorInches).toBeCloseTo(0.05, 12);
  });

  it('names the nearest with as many layers as the shop builds up, where these fall short', () => {
    const upTo = (mostLayers: number) => ({ settings: { ...additive, mostLayers } });
    const taped = aGrip({ upperInches: 0.87 });
    expect(items([taped], upTo(5))).toEqual([taped.item]);
    expect(reached([taped], upTo(3)).nearest?.layers).toBe(3);
    const { nearest } = reached([aGrip({ upperInches: 0.75 })], upTo(12));
    expect(nearest?.layers).toBe(12);
    expect(nearest?.errorInches).toBeCloseTo(0.75 + 0.12 - 0.92, 12);
    // within tolerance, yet more layers than anyone builds up: the plan refuses it too
    expect(reached([aGrip({ upperInches: 0.793 })], upTo(12)).found).toEqual([]);
  });

  it('has no nearest where none can be gauged', () => {
    const stock = [
      aGrip({ coreInches: undefined }),
      aGrip({ upperInches: undefined }),
      aGrip({ coreInches: 0.5 }),
      aGrip({ coreInches: 0.75 }), // fifteen layers to fill
      aGrip({ use: 'putters' }),
    ];
    expect(reached(stock, { kind: 'iron' })).toEqual({ found: [], nearest: undefined, why: 'none' });
  });
});
